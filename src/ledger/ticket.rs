//! A ticket as the desk works on it.

use std::{borrow::Cow, collections::BTreeSet};

use jiff::Timestamp;
use rusqlite::Connection;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::{LedgerError, bill::Given, facts};
use crate::{
    catalog::Catalog,
    caution::{Caution, CautionCode, Verdict},
    craft::{Body, DropKind, Facts, Home, Length, LookNumber, Mass, Material, Piece, Plating, Ring, Sort},
    money::{MoneyError, Package, PlainLine, PriceRules, PricedDrop, PricedItem, Quote, Reduction, Tender, quote_with},
    ticket::{State, TicketNumber},
};

/// One part of the piece on a ticket.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Part {
    /// What the drops hang on.
    Base,
    /// A line, counted from 0; removed lines keep their place.
    Line(usize),
}

/// One drop of the piece, as it is checked.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TicketLine {
    /// Id of the drop.
    pub id: String,
    /// Where it lives.
    pub home: Home,
    /// Its price, as the guest saw it.
    pub price: Decimal,
    /// Found on the piece and ticked off.
    pub ticked: bool,
    /// One of it is held in the stock for this ticket.
    pub held: bool,
    /// Taken off the piece at the desk.
    pub removed: bool,
    /// What hung there before it was swapped.
    pub instead_of: Option<String>,
    /// Of an assortment, the number by which it keeps its look, where that is not the usual one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub look: Option<LookNumber>,
}

/// Why the seller has to say what is charged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum SumDoubt {
    /// No price list of this table gives the sum that was sent.
    NotOurs,
    /// The sum is in a currency that the table took earlier.
    Currency,
}

/// A ticket with everything that happened to it so far.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Ticket {
    /// The id that makes every delivery of it the same one.
    pub id: Uuid,
    /// The show in which it was sent.
    pub show: i64,
    /// The number that the guest has.
    pub number: TicketNumber,
    /// Its place in the order of arrival.
    pub arrival: i64,
    /// When it arrived, by the desk's clock.
    pub arrived: Timestamp,
    /// Where it is in its life.
    pub state: State,
    /// The piece as it is now.
    pub piece: Piece,
    /// Whether the base is ticked off.
    pub base_ticked: bool,
    /// Whether the base is held in the stock.
    pub base_held: bool,
    /// Whether its chain is cut off a spool at the table: none of those that lie ready is held or sold for it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub cut_to_length: bool,
    /// The drops, left to right, removed ones included.
    pub lines: Vec<TicketLine>,
    /// The sum as it is now.
    pub quote: Quote,
    /// The price rules it is summed by, as they were when it arrived.
    pub rules: PriceRules,
    /// Its cautions as they are now.
    pub verdict: Verdict,
    /// Whether a grown-up confirmed the cautions on the kiosk.
    pub grown_up_confirmed: bool,
    /// Whether the seller ticked that the guest was told.
    pub told: bool,
    /// The hazards that the seller confirmed by name: the piece is sold for a grown-up.
    #[serde(default)]
    pub confirmed: BTreeSet<CautionCode>,
    /// Total at the catalogue's prices on arrival, where the guest saw another (prices changed with the desk away).
    pub total_by_catalog: Option<Decimal>,
    /// Why the seller has to say what is charged, until that is said.
    #[serde(default)]
    pub sum_doubt: Option<SumDoubt>,
    /// What hangs on the piece and has no home: from an assortment, or the guest's own.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub plain: Vec<PlainLine>,
    /// The party's package that it is a part of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub package: Option<Package>,
    /// What the seller took off by hand.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub given: Option<Given>,
    /// The bill on which it stands, since somebody began one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bill: Option<Uuid>,
    /// A part of the sum was paid before: all of it stays held until the rest is paid, whatever the clock and the show.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub prepaid: bool,
    /// How it was paid, where that was in one way and for nothing else.
    pub tender: Option<Tender>,
    /// What was taken for it then, after cash rounding.
    pub charged: Option<Decimal>,
    /// The show in which it was rung up or let go; not the show it was sent in where it came late.
    #[serde(default)]
    pub settled: Option<i64>,
    /// Until when its parts are held that are not ticked off.
    pub hold_until: Timestamp,
}

impl Ticket {
    /// The lines that still belong to the piece, with their places.
    pub fn live_lines(&self) -> impl Iterator<Item = (usize, &TicketLine)> {
        self.lines.iter().enumerate().filter(|(_, line)| !line.removed)
    }

    /// The hazards that speak against the piece and have not been confirmed.
    pub fn unconfirmed(&self) -> Vec<CautionCode> {
        let grave = self.verdict.cautions.iter().filter(|one| one.grave && !one.forbidden).map(|one| one.code);
        let open: BTreeSet<CautionCode> = grave.filter(|code| !self.confirmed.contains(code)).collect();
        open.into_iter().collect()
    }

    /// What of the piece may not be sold to anybody.
    pub fn forbidden(&self) -> Vec<CautionCode> {
        let all: BTreeSet<_> = self.verdict.cautions.iter().filter(|one| one.forbidden).map(|one| one.code).collect();
        all.into_iter().collect()
    }

    /// How many parts are not ticked off yet.
    pub fn unticked(&self) -> usize {
        usize::from(!self.base_ticked) + self.live_lines().filter(|(_, line)| !line.ticked).count()
    }

    /// Ids of parts that are not held in the stock.
    pub fn not_held(&self) -> Vec<&str> {
        let base = (!self.base_held && !self.cut_to_length).then_some(self.piece.base.as_str());
        let lines = self.live_lines().filter(|(_, line)| !line.held).map(|(_, line)| line.id.as_str());
        base.into_iter().chain(lines).collect()
    }

    /// Ids of everything held for it.
    pub(super) fn held_parts(&self) -> Vec<String> {
        let base = self.base_held.then(|| self.piece.base.clone());
        let lines = self.lines.iter().filter(|line| line.held && !line.removed).map(|line| line.id.clone());
        base.into_iter().chain(lines).collect()
    }

    /// Refuses a sum that can't be charged, or not yet.
    pub(super) fn sum_stands(&self) -> Result<(), LedgerError> {
        if !self.quote.is_plausible() {
            return Err(MoneyError::Absurd(self.quote.total).into());
        }
        if self.sum_doubt.is_some() { Err(LedgerError::SumNotConfirmed) } else { Ok(()) }
    }

    /// Whether something is held for it that is not ticked off: what a sweep may free.
    pub(super) fn holds_unticked(&self) -> bool {
        if self.prepaid {
            return false;
        }
        let line = |line: &TicketLine| line.held && !line.removed && !line.ticked;
        (self.base_held && !self.base_ticked) || self.lines.iter().any(line)
    }

    /// Makes piece, sum and cautions follow from the lines.
    pub(super) fn derive(&mut self, catalog: &Catalog, db: &Connection) -> Result<(), LedgerError> {
        self.hang_lines(|id| catalog.drop_kind(id).is_some_and(DropKind::is_assortment));
        self.sum_up()?;
        self.judge(catalog, db)?;
        Ok(())
    }

    /// Makes the sum follow from base, lines and rules.
    pub(super) fn sum_up(&mut self) -> Result<(), LedgerError> {
        match self.quoted(self.given.as_ref().map(|given| &given.reduction)) {
            // Less is on the piece than was to be paid for it: there is nothing to take off any more.
            Err(MoneyError::AboveTotal { .. }) if self.given.is_some() => {
                self.given = None;
                self.quote = self.quoted(None)?;
            }
            quote => self.quote = quote?,
        }
        Ok(())
    }

    /// What of its discount was taken off by hand.
    ///
    /// # Errors
    /// Its sum can't be made.
    pub fn given_off(&self) -> Result<Decimal, MoneyError> {
        match &self.given {
            Some(_) => Ok(self.quote.discount - self.quoted(None)?.discount),
            None => Ok(Decimal::ZERO),
        }
    }

    /// How many percent of what the piece costs as marked a reduction by hand takes off.
    ///
    /// # Errors
    /// The reduction is none: its message says why.
    pub fn percent_off(&self, reduction: &Reduction) -> Result<Decimal, MoneyError> {
        let off = self.quoted(Some(reduction))?.discount - self.quoted(None)?.discount;
        Ok(share(off, self.quote.subtotal))
    }

    /// The sum with this reduction by hand.
    pub(super) fn quoted(&self, reduction: Option<&Reduction>) -> Result<Quote, MoneyError> {
        let drops = self
            .live_lines()
            .map(|(_, line)| PricedDrop { id: line.id.clone(), price: line.price, home: line.home })
            .collect();
        let base = PricedItem { id: self.quote.base.id.clone(), price: self.quote.base.price };
        quote_with(&self.rules, base, drops, self.plain.clone(), self.package.as_ref(), reduction)
    }

    /// Makes the cautions follow from the piece. Others than those that were said have to be said, and read, anew: gives
    /// whether they are others.
    pub(super) fn judge(&mut self, catalog: &Catalog, db: &Connection) -> Result<bool, LedgerError> {
        let verdict = self.verdict_by(catalog, db)?;
        let same = verdict.says_the_same_as(&self.verdict);
        self.told &= same;
        self.grown_up_confirmed &= same;
        if !same {
            self.confirmed.clear();
        }
        self.verdict = verdict;
        Ok(!same)
    }

    /// The cautions by this catalogue; of what has left it, by what it last said. A part that it never had keeps the
    /// cautions it came with, and as nobody knows what it is, it counts as small and not tested.
    fn verdict_by(&self, catalog: &Catalog, db: &Connection) -> Result<Verdict, LedgerError> {
        let mut kinds = Vec::with_capacity(self.piece.drops.len());
        let mut strange = Vec::new();
        for (_, line) in self.live_lines() {
            let known = match catalog.drop_kind(&line.id) {
                Some(kind) => Some(Cow::Borrowed(kind)),
                None => facts::part(db, &line.id)?.map(Cow::Owned),
            };
            kinds.push(known.unwrap_or_else(|| {
                strange.push(line.id.as_str());
                Cow::Owned(strange_drop(&line.id, line.price, Some(line.home)))
            }));
        }
        kinds.extend(self.plain.iter().map(|line| Cow::Owned(strange_drop(&line.words, line.price, None))));
        let base = match catalog.base(&self.piece.base) {
            Some(base) => Some(Cow::Borrowed(base)),
            None => facts::part(db, &self.piece.base)?.map(Cow::Owned),
        };
        let mut cautions: Vec<Caution> = match &base {
            Some(base) => {
                let kinds: Vec<&DropKind> = kinds.iter().map(AsRef::as_ref).collect();
                catalog.cautions_of(base, &kinds, &self.piece, &catalog.rules).cautions
            }
            None => kinds.iter().flat_map(|kind| catalog.drop_cautions(kind, self.piece.wearer).cautions).collect(),
        };
        let kept = self.verdict.cautions.iter().filter(|one| match &one.drop {
            Some(id) => strange.contains(&id.as_str()),
            None => base.is_none(),
        });
        for one in kept {
            if !cautions.iter().any(|said| (said.code, &said.drop) == (one.code, &one.drop)) {
                cautions.push(one.clone());
            }
        }
        Ok(Verdict::of(cautions))
    }
}

/// `off` in percent of `of`.
pub(super) fn share(off: Decimal, of: Decimal) -> Decimal {
    (off * Decimal::ONE_HUNDRED).checked_div(of).unwrap_or_default()
}

/// What nobody knows: no size, and metal that was not tested.
fn strange_drop(name: &str, price: Decimal, home: Option<Home>) -> DropKind {
    DropKind {
        id: name.to_owned(),
        name: name.to_owned(),
        sort: Sort::Found,
        finish: None,
        colours: vec![],
        facts: Facts { plating: Plating::Unknown, ..Facts::of([Material::UnknownMetal]) },
        body: Body::Points { points_mm: vec![] },
        width: Length::from_mm(0.0),
        height: Length::from_mm(0.0),
        ring: Ring { outside: Length::from_mm(0.0), wire: Length::from_mm(0.0) },
        weight: Mass::from_g(0.0),
        price,
        stock: 0,
        // No compartment has the number 0.
        home: home.unwrap_or(Home { tray: 'A', compartment: 0 }),
        picture: String::new(),
        assortment: None,
        counted: None,
        guessed: vec![],
    }
}
