//! How many of everything to make for the next show.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use serde::Serialize;

use super::{
    history::{PastShow, size_of_kind},
    parts::{Part, parts},
    prices::{Priced, prices},
};
use crate::{
    catalog::{Catalog, Workshop},
    craft::{Home, Sort},
    ledger::{Count, ShowKind},
    prep::{DemandError, HowMany, Outcome, Prior, Sureness, Worth, forecast, how_many},
};

/// What a number rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// Shows at which it was there.
    Shows,
    /// Shows at which others of its sort were there.
    Sort,
    /// The count in the catalogue, as a guess.
    Guess,
}

/// How many of one drop or base to make.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Number {
    /// The id that it has in the catalogue.
    pub id: String,
    /// The name that the maker gave it.
    pub name: String,
    /// Where it lies; a base has no compartment.
    pub home: Option<Home>,
    /// How many are there.
    pub on_hand: u32,
    /// What the number rests on.
    pub basis: Basis,
    /// How many shows it was at, and at how many of these it was sold out.
    pub shows: (u32, u32),
    /// Whether its cost is known; otherwise half its price is taken for it (common practice, no source).
    pub cost_known: bool,
    /// How many to make, with the range and the chances.
    #[serde(flatten)]
    pub number: HowMany,
}

/// What is left of the cost of one that was not sold, in percent, where the workshop does not say so: most of it, since it is
/// taken to the next show (common practice, no source).
const LEFTOVER_PERCENT: u32 = 75;

/// How many of every base and drop to make for a show of `kind`, in the catalogue's order.
///
/// # Errors
/// A count of the ledger or the catalogue is none that is planned for.
pub fn numbers(
    catalog: &Catalog,
    workshop: Option<&Workshop>,
    past: &[PastShow],
    counts: &BTreeMap<String, Count>,
    kind: Option<ShowKind>,
) -> Result<Vec<Number>, DemandError> {
    let size = size_of_kind(kind, past);
    let sizes: Vec<f64> = past.iter().map(|show| show.size_among(past)).collect();
    let outcomes = |id: &str| -> Vec<Outcome> {
        past.iter().zip(&sizes).filter_map(|(show, size)| show.outcome(id, *size)).collect()
    };
    let all: Vec<(Part<'_>, Vec<Outcome>)> = parts(catalog).map(|part| (part, outcomes(part.id))).collect();
    let priced = prices(catalog, workshop, Decimal::ZERO);
    let sorts = sold_by_sort(&all);
    let mut numbers = Vec::new();
    for ((part, shows), priced) in all.iter().zip(&priced) {
        let (prior, mut basis) = prior(part, &sorts);
        if !shows.is_empty() {
            basis = Basis::Shows;
        }
        let next = forecast(prior, shows, size)?;
        let on_hand = counts.get(part.id).map_or(0, |count| count.on_hand);
        let sold_out = shows.iter().filter(|show| show.sold_out).count();
        numbers.push(Number {
            id: part.id.to_owned(),
            name: part.name.to_owned(),
            home: part.home,
            on_hand,
            basis,
            shows: (shows.len() as u32, sold_out as u32),
            cost_known: priced.is_known(),
            number: how_many(&next, &worth(priced, workshop), on_hand),
        });
    }
    Ok(numbers)
}

/// How many of each sort were sold, and at shows of which size in all; bases have no sort.
type SoldBySort = BTreeMap<Option<Sort>, (f64, f64)>;

fn sold_by_sort(all: &[(Part<'_>, Vec<Outcome>)]) -> SoldBySort {
    let mut sorts = SoldBySort::new();
    for (part, shows) in all {
        let (sold, sizes) = sorts.entry(part.sort).or_default();
        for show in shows {
            *sold += f64::from(show.sold);
            *sizes += show.size;
        }
    }
    sorts
}

/// What is thought of a part before its own shows: as its sort sells, or as many as the catalogue counts.
fn prior(part: &Part<'_>, sorts: &SoldBySort) -> (Prior, Basis) {
    let (sold, sizes) = sorts.get(&part.sort).copied().unwrap_or_default();
    // One more show at which half of one was sold keeps a sort of which none was sold from being thought to sell never.
    if sizes > 0.0 {
        return (Prior::about((sold + 0.5) / (sizes + 1.0), Sureness::Hardly), Basis::Sort);
    }
    (Prior::about(f64::from(part.stock.clamp(1, 10_000)), Sureness::Hardly), Basis::Guess)
}

/// What one is worth when it is sold and when it is left.
fn worth(priced: &Priced, workshop: Option<&Workshop>) -> Worth {
    let cost = priced.cost_or_half();
    let percent = workshop.map_or(Decimal::from(LEFTOVER_PERCENT), |workshop| workshop.leftover_percent);
    Worth { price: priced.net_price, cost, leftover: cost.saturating_mul(percent) / Decimal::ONE_HUNDRED }
}
