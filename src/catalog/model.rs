//! A whole catalogue, read and checked.

use std::borrow::Cow;

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{names::Names, paper::Paper};
use crate::{
    caution::{self, PieceFacts, Region, Rules, Sizes, Verdict},
    craft::{Base, BaseKind, DropKind, Fit, Home, Length, Piece, Wearer, fit_on},
    money::{MoneyError, Package, PriceRules, PricedDrop, PricedItem, Quote, RewardRule, Tender, quote},
    quoting::quoted,
    ron_tree::nearest,
};

/// The rules and habits of one selling table.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Table {
    /// Its name, as guests read it.
    pub name: String,
    /// Everything about money.
    pub prices: PriceRules,
    /// What the till goes by.
    #[serde(default)]
    pub till: Till,
    /// What is wanted on paper, and where it is printed. That is the desk's alone: no tablet hears of it.
    #[serde(skip)]
    pub paper: Paper,
    /// Whose rules the cautions follow.
    pub region: Region,
    /// How far neighbouring bodies overlap like roof tiles: the share of their mean width they keep.
    pub rho: f64,
    /// Minutes for which a sent ticket holds its drops.
    pub hold_minutes: u32,
    /// Seconds without a touch before the kiosk warns.
    pub idle_seconds: u32,
    /// Seconds from the warning to the reset.
    pub idle_warning_seconds: u32,
    /// Who collects the drops of a sent piece and threads them.
    #[serde(default)]
    pub threaded_by: ThreadedBy,
    /// What of this nobody has told yet: a table that is only begun. That is the desk's alone.
    #[serde(skip)]
    pub guessed: Vec<TableGuess>,
}

/// What the desk asks for first of a table that is only begun.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TableGuess {
    /// Its name.
    Name,
    /// Its currency.
    Currency,
    /// Its tax.
    Tax,
    /// Whose rules its cautions follow.
    Region,
}

impl TableGuess {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Name, Self::Currency, Self::Tax, Self::Region];

    /// The field that is meant.
    pub const fn field(self) -> &'static str {
        match self {
            Self::Name => "name",
            Self::Currency => "currency",
            Self::Tax => "tax",
            Self::Region => "region",
        }
    }
}

/// Who collects the drops of a sent piece from their homes and threads them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum ThreadedBy {
    /// The guest, who brings the piece to the desk.
    Guest,
    /// The seller or a helper, who calls the number.
    #[default]
    Seller,
}

/// What the till of a table goes by.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Till {
    /// How guests pay, in the order of the buttons.
    pub ways_to_pay: Vec<Tender>,
    /// What parties can choose.
    pub packages: Vec<Package>,
    /// What a host gets.
    pub reward: Option<RewardRule>,
    /// Of what a piece costs as marked, how many percent a helper may take off by hand; for more the seller is asked.
    pub helper_reduction_percent: Decimal,
}

impl Default for Till {
    fn default() -> Self {
        Self {
            ways_to_pay: vec![Tender::Cash, Tender::Card],
            packages: vec![],
            reward: None,
            helper_reduction_percent: Decimal::TEN,
        }
    }
}

/// One tray as it lies on the table.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Tray {
    /// The letter on the table, from A.
    pub letter: char,
    /// Its name for people.
    pub name: String,
    /// Ids of the drops, row by row; `None` is an empty compartment.
    pub rows: Vec<Vec<Option<String>>>,
    /// Between its left and its right wall, where somebody has measured it: then one photo gives the size of what lies in it. That
    /// is the desk's alone.
    #[serde(skip)]
    pub inner_width: Option<Length>,
}

impl Tray {
    /// The compartments with their homes, row by row.
    pub fn compartments(&self) -> impl Iterator<Item = (Home, Option<&str>)> {
        let cells = self.rows.iter().flatten();
        cells.zip(1..).map(|(id, compartment)| (Home { tray: self.letter, compartment }, id.as_deref()))
    }
}

/// Everything a table sells and the rules it sells by.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Catalog {
    /// What table.ron says: prices, region, times.
    pub table: Table,
    /// The bases, in the order of the file.
    pub bases: Vec<Base>,
    /// The trays, by letter.
    pub trays: Vec<Tray>,
    /// The drops, in walking order of their homes.
    pub drops: Vec<DropKind>,
    /// What things are called in other languages.
    #[serde(default)]
    pub names: Names,
    /// The rules that the cautions follow.
    pub rules: Rules,
    /// How the drops stand to the test cylinder of these rules.
    pub sizes: Sizes,
}

/// Why a piece can't be made from a catalogue.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PieceError {
    /// The base is not in the catalogue.
    #[error("there is no base {} in the catalogue{}", quoted(.id), suggestion(.like))]
    NoBase {
        /// What was asked for.
        id: String,
        /// The nearest id there is.
        like: Option<String>,
    },
    /// A drop is not in the catalogue.
    #[error("there is no drop {} in the catalogue{}", quoted(.id), suggestion(.like))]
    NoDrop {
        /// What was asked for.
        id: String,
        /// The nearest id there is.
        like: Option<String>,
    },
    /// A drop's ring does not pass over the base's ends.
    #[error("the ring of {id:?} does not go onto {base:?} by hand: {fit}")]
    Fit {
        /// Id of the drop.
        id: String,
        /// Id of the base.
        base: String,
        /// Opening and widest place, in millimetres.
        fit: Fit,
    },
    /// The necklace is not made in this length.
    #[error("{base:?} is made from {shortest_mm:.0} mm to {longest_mm:.0} mm, not {length_mm:.0} mm")]
    Length {
        /// Id of the base.
        base: String,
        /// What was asked for.
        length_mm: f64,
        /// The shortest length that it is made in, in millimetres.
        shortest_mm: f64,
        /// The longest length that it is made in, in millimetres.
        longest_mm: f64,
    },
    /// A bangle has no length to choose, a necklace needs one.
    #[error("{base:?} is a bangle, which has no length; leave `length` out")]
    BangleLength {
        /// Id of the base.
        base: String,
    },
    /// The sum can't be made.
    #[error(transparent)]
    Money(#[from] MoneyError),
}

fn suggestion(like: &Option<String>) -> String {
    like.as_ref().map(|id| format!("; did you mean {id:?}?")).unwrap_or_default()
}

impl Catalog {
    /// The base with this id.
    pub fn base(&self, id: &str) -> Option<&Base> {
        self.bases.iter().find(|base| base.id == id)
    }

    /// The drop with this id.
    pub fn drop_kind(&self, id: &str) -> Option<&DropKind> {
        self.drops.iter().find(|kind| kind.id == id)
    }

    /// What the drop, base or tray `id` is called in a language; `own`, the seller's name, where there is none.
    pub fn called<'a>(&'a self, language: &str, id: &str, own: &'a str) -> &'a str {
        self.names.find(language, id).unwrap_or(own)
    }

    /// The drop that lives at `home`.
    pub fn drop_at(&self, home: Home) -> Option<&DropKind> {
        self.drops.iter().find(|kind| kind.home == home)
    }

    /// Base and drops of `piece`, if the catalogue has them all, the drops fit on the base, and it is made in that length.
    ///
    /// # Errors
    /// The catalogue does not have one of them, a drop does not go onto the base, or the base is not made in that length.
    pub fn parts<'a>(&'a self, piece: &Piece) -> Result<(&'a Base, Vec<&'a DropKind>), PieceError> {
        let base = self.base(&piece.base).ok_or_else(|| PieceError::NoBase {
            id: piece.base.clone(),
            like: nearest(&piece.base, self.bases.iter().map(|base| base.id.as_str())),
        })?;
        match (&base.kind, piece.length) {
            (BaseKind::Bangle(_), Some(_)) => {
                return Err(PieceError::BangleLength { base: base.id.clone() });
            }
            (BaseKind::Necklace(n), Some(length))
                if !(n.lengths.shortest.mm() - 0.5..=n.lengths.longest.mm() + 0.5).contains(&length.mm()) =>
            {
                return Err(PieceError::Length {
                    base: base.id.clone(),
                    length_mm: length.mm(),
                    shortest_mm: n.lengths.shortest.mm(),
                    longest_mm: n.lengths.longest.mm(),
                });
            }
            _ => {}
        }
        let mut kinds = Vec::with_capacity(piece.drops.len());
        for id in &piece.drops {
            let kind = self.drop_kind(id).ok_or_else(|| PieceError::NoDrop {
                id: id.clone(),
                like: nearest(id, self.drops.iter().map(|kind| kind.id.as_str())),
            })?;
            let fit = fit_on(base, kind.ring);
            if !fit.passes {
                return Err(PieceError::Fit { id: id.clone(), base: base.id.clone(), fit });
            }
            kinds.push(kind);
        }
        Ok((base, kinds))
    }

    /// Base and drops of `piece` as they hang: of an assortment, each with the look that it has on this piece. That is for
    /// seeing and placing them; prices and cautions are those of [`Self::parts`].
    ///
    /// # Errors
    /// As for [`Self::parts`].
    pub fn hung<'a>(&'a self, piece: &Piece) -> Result<(&'a Base, Vec<Cow<'a, DropKind>>), PieceError> {
        let (base, kinds) = self.parts(piece)?;
        Ok((base, kinds.into_iter().zip(piece.look_numbers()).map(|(kind, look)| kind.hung_as(look)).collect()))
    }

    /// The quote for `piece` at the catalogue's prices.
    ///
    /// # Errors
    /// As for [`Self::parts`]; or the sum is none that a table takes.
    pub fn quote(&self, piece: &Piece) -> Result<Quote, PieceError> {
        let (base, kinds) = self.parts(piece)?;
        let drops = kinds.iter().map(|kind| PricedDrop { id: kind.id.clone(), price: kind.price, home: kind.home });
        let base = PricedItem { id: base.id.clone(), price: base.price };
        Ok(quote(&self.table.prices, base, drops.collect())?)
    }

    /// The cautions for `piece` under the table's rules.
    ///
    /// # Errors
    /// As for [`Self::parts`].
    pub fn cautions(&self, piece: &Piece) -> Result<Verdict, PieceError> {
        self.cautions_under(piece, &self.rules)
    }

    /// The cautions for `piece` under other rules.
    ///
    /// # Errors
    /// As for [`Self::parts`].
    pub fn cautions_under(&self, piece: &Piece, rules: &Rules) -> Result<Verdict, PieceError> {
        let (base, kinds) = self.parts(piece)?;
        Ok(self.cautions_of(base, &kinds, piece, rules))
    }

    /// The cautions for `piece` made of `base` and `kinds`, also of what the catalogue does not have or would not make so.
    pub fn cautions_of(&self, base: &Base, kinds: &[&DropKind], piece: &Piece, rules: &Rules) -> Verdict {
        let length_mm = piece.length.or(base.usual_length()).map(|length| length.mm());
        let neck_mm = piece.neck.map(|neck| neck.mm());
        let other = Sizes::empty(rules.gauge);
        let sizes = if rules.gauge == self.sizes.gauge() { &self.sizes } else { &other };
        let wearer = piece.wearer;
        caution::cautions(&PieceFacts { base, length_mm, neck_mm, drops: kinds, sizes, wearer, rules })
    }

    /// Whether nothing speaks plainly against a drop for `wearer`.
    pub fn suits(&self, kind: &DropKind, wearer: Wearer) -> bool {
        caution::drop_suits(kind, &self.sizes, wearer, &self.rules)
    }

    /// Whether nothing speaks plainly against a base by itself in some length it is made in, and its size is that of the
    /// wearer's band: what can be offered to them.
    pub fn base_suits(&self, base: &Base, wearer: Wearer) -> bool {
        let lengths = match &base.kind {
            BaseKind::Necklace(necklace) => {
                vec![Some(necklace.lengths.shortest), Some(necklace.lengths.usual), Some(necklace.lengths.longest)]
            }
            // Too wide is grave by itself; too narrow is no danger, but nothing to offer either.
            BaseKind::Bangle(bangle) if wearer.is_child() && bangle.around_mm() < wearer.hand().large_mm => vec![],
            BaseKind::Bangle(_) => vec![None],
        };
        lengths.into_iter().any(|length| {
            let piece = Piece { base: base.id.clone(), length, wearer, neck: None, drops: vec![], looks: vec![] };
            self.cautions_of(base, &[], &piece, &self.rules).suitable
        })
    }

    /// The cautions of one drop by itself for `wearer`.
    pub fn drop_cautions(&self, kind: &DropKind, wearer: Wearer) -> Verdict {
        caution::drop_cautions(kind, &self.sizes, wearer, &self.rules)
    }
}
