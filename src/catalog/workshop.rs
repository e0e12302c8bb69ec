//! What `parts.ron` says: what drops and bases are made of, what lies in the drawers, what was bought. Guests never see it.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::Catalog;
use crate::{
    craft::{Day, Sort},
    prep::{Bought, Offer, Rates, Recipe, cuts::Tenths, unit_cost},
};

/// A part that is bought: by the piece, as a jump ring, or by the length, as chain and ribbon.
#[derive(Debug, Clone, PartialEq)]
pub struct BoughtPart {
    /// Its name in files.
    pub id: String,
    /// Its name for people.
    pub name: String,
    /// The lots in which it is sold: pieces, or millimetres of a spool.
    pub offers: Vec<Offer>,
    /// What lies there.
    pub there: There,
}

/// What lies in a drawer or on the bench.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum There {
    /// So many pieces.
    Pieces(u32),
    /// Spools, part spools and remnants.
    Spools {
        /// How long each is.
        lengths: Vec<Tenths>,
        /// How long a whole spool is.
        whole: Tenths,
        /// What each cut takes, as the link that is opened.
        kerf: Tenths,
        /// From which length on a remnant is kept.
        keep_from: Tenths,
    },
}

/// How much of a part there is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum PartCount {
    /// So many pieces in its drawer.
    Pieces(u32),
    /// Spools and remnants, each so long.
    Spools(Vec<Tenths>),
}

impl PartCount {
    /// What lies there of a part.
    pub fn of(there: &There) -> Self {
        match there {
            There::Pieces(count) => Self::Pieces(*count),
            There::Spools { lengths, .. } => Self::Spools(lengths.clone()),
        }
    }
}

impl There {
    /// How many pieces or millimetres that is.
    pub fn amount(&self) -> Decimal {
        match self {
            Self::Pieces(count) => Decimal::from(*count),
            Self::Spools { lengths, .. } => lengths.iter().map(|length| Decimal::new(i64::from(length.0), 1)).sum(),
        }
    }
}

/// A lot that was bought, with the supplier's paper.
#[derive(Debug, Clone, PartialEq)]
pub struct BoughtLot {
    /// Id of the part.
    pub part: String,
    /// What the supplier calls the lot.
    pub lot: String,
    /// When it came.
    pub day: Day,
    /// How much came, what of it was broken, what it cost.
    pub bought: Bought,
    /// Where the supplier's test report or declaration lies, in words.
    pub paper: Option<String>,
}

/// By what a lot is known: nobody writes the same lot of a part down twice on one day.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct LotKey {
    /// Id of the part.
    pub part: String,
    /// What the supplier calls the lot.
    pub lot: String,
    /// The day on which it came, as the file has it.
    pub day: String,
}

impl BoughtLot {
    /// By what it is known.
    pub fn key(&self) -> LotKey {
        LotKey { part: self.part.clone(), lot: self.lot.clone(), day: self.day.to_string() }
    }
}

/// All of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Workshop {
    /// What an hour of work counts.
    pub hour: Decimal,
    /// How many times its cost a thing should be sold for.
    pub factor: Decimal,
    /// The step between prices that read well on a small mark.
    pub price_step: Decimal,
    /// What is left of the cost of one that was not sold, in percent.
    pub leftover_percent: Decimal,
    /// The parts, in the order of the file.
    pub parts: Vec<BoughtPart>,
    /// The lots, in the order of the file.
    pub lots: Vec<BoughtLot>,
    /// What everything of a sort is made of.
    pub of_sorts: BTreeMap<Sort, Recipe>,
    /// What single drops and bases are made of, by id; this goes before their sort's.
    pub of_single: BTreeMap<String, Recipe>,
}

impl Workshop {
    /// What a drop or base is made of, if it was written down.
    pub fn recipe(&self, catalog: &Catalog, id: &str) -> Option<&Recipe> {
        let of_sort = || self.of_sorts.get(&catalog.drop_kind(id)?.sort);
        self.of_single.get(id).or_else(of_sort)
    }

    /// What a piece or millimetre of each part costs, by id, of those that were bought.
    pub fn unit_costs(&self) -> BTreeMap<String, Decimal> {
        let lots_of = |part: &str| -> Vec<Bought> {
            self.lots.iter().filter(|lot| lot.part == part).map(|lot| lot.bought).collect()
        };
        self.parts.iter().filter_map(|part| Some((part.id.clone(), unit_cost(&lots_of(&part.id))?))).collect()
    }

    /// What lies in the drawers, by id.
    pub fn drawers(&self) -> BTreeMap<String, Decimal> {
        self.parts.iter().map(|part| (part.id.clone(), part.there.amount())).collect()
    }

    /// The rates, with `stall` on every piece.
    pub fn rates(&self, stall: Decimal) -> Rates {
        Rates { hour: self.hour, stall }
    }

    /// The part called `id`.
    pub fn part(&self, id: &str) -> Option<&BoughtPart> {
        self.parts.iter().find(|part| part.id == id)
    }
}
