//! What parts cost by the lots that were bought, and what a drop costs by its recipe.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

/// Of one part, what one purchase was.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Bought {
    /// How many pieces, or millimetres.
    pub amount: Decimal,
    /// How many of these came broken or were spoiled.
    pub broken: Decimal,
    /// What all of it cost.
    pub price: Decimal,
}

/// What one piece or millimetre costs on average over the lots, what is broken paid for by the rest; none where nothing
/// usable was bought.
pub fn unit_cost(lots: &[Bought]) -> Option<Decimal> {
    let usable: Decimal = lots
        .iter()
        .try_fold(Decimal::ZERO, |sum, lot| sum.checked_add(lot.amount.checked_sub(lot.broken)?.max(Decimal::ZERO)))?;
    let paid = lots.iter().try_fold(Decimal::ZERO, |sum, lot| sum.checked_add(lot.price))?;
    if usable > Decimal::ZERO { paid.checked_div(usable) } else { None }
}

/// How much of a part one piece takes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Need {
    /// Id of the part.
    pub part: String,
    /// How many pieces, or millimetres.
    pub amount: Decimal,
}

/// What a drop or a base is made of.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Recipe {
    /// The parts.
    pub needs: Vec<Need>,
    /// How long it takes, in minutes.
    pub minutes: Decimal,
}

/// What is reckoned beside the parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Rates {
    /// An hour of work.
    pub hour: Decimal,
    /// What stall and travel come to for each piece, over those that are expected to be sold.
    pub stall: Decimal,
}

/// What one costs.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Cost {
    /// Its parts.
    pub parts: Decimal,
    /// The work.
    pub labour: Decimal,
    /// Its share of stall and travel.
    pub stall: Decimal,
    /// Parts of which no lot was entered, by id: what they cost is not in it.
    pub unknown: Vec<String>,
}

impl Cost {
    /// All of it.
    pub fn total(&self) -> Decimal {
        self.parts.saturating_add(self.labour).saturating_add(self.stall)
    }
}

/// What one costs by its recipe, where `units` says what a piece or millimetre of each part costs.
pub fn cost_of(recipe: &Recipe, units: &BTreeMap<String, Decimal>, rates: &Rates) -> Cost {
    let mut cost = Cost {
        labour: rates.hour.saturating_mul(recipe.minutes) / Decimal::from(60),
        stall: rates.stall,
        ..Cost::default()
    };
    for need in &recipe.needs {
        match units.get(&need.part) {
            Some(unit) => cost.parts = cost.parts.saturating_add(unit.saturating_mul(need.amount)),
            None => cost.unknown.push(need.part.clone()),
        }
    }
    cost
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn bought(amount: &str, broken: &str, price: &str) -> Bought {
        Bought { amount: d(amount), broken: d(broken), price: d(price) }
    }

    /// Worked by hand.
    #[test]
    fn what_came_broken_is_paid_for_by_the_rest() {
        assert_eq!(unit_cost(&[bought("100", "4", "9.60")]), Some(d("0.1")));
        assert_eq!(unit_cost(&[bought("100", "0", "8"), bought("50", "10", "6")]), Some(d("0.1")));
        assert_eq!(unit_cost(&[bought("5", "5", "3")]), None);
        assert_eq!(unit_cost(&[bought("5", "7", "3"), bought("10", "0", "2")]), Some(d("0.5")));
        assert_eq!(unit_cost(&[]), None);
    }

    /// Worked by hand: a vial with a ring, a screw eye, a cork and 60 mm of ribbon, four minutes at 15 an hour.
    #[test]
    fn a_recipe_comes_to_its_parts_its_minutes_and_its_share() {
        let need = |part: &str, amount: &str| Need { part: part.to_owned(), amount: d(amount) };
        let recipe = Recipe {
            needs: vec![need("ring-10", "2"), need("screw-eye", "1"), need("ribbon", "60"), need("sand", "1")],
            minutes: d("4"),
        };
        let units = [("ring-10", "0.05"), ("screw-eye", "0.12"), ("ribbon", "0.0015")];
        let units = units.iter().map(|(part, unit)| ((*part).to_owned(), d(unit))).collect();
        let cost = cost_of(&recipe, &units, &Rates { hour: d("15"), stall: d("0.40") });
        assert_eq!((cost.parts, cost.labour, cost.stall), (d("0.31"), d("1"), d("0.40")));
        assert_eq!((cost.total(), cost.unknown), (d("1.71"), vec!["sand".to_owned()]));
    }
}
