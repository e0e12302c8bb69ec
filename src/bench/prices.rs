//! What everything costs and earns, and what it should cost.

use rust_decimal::Decimal;
use serde::Serialize;

use super::parts::parts;
use crate::{
    catalog::{Catalog, Workshop},
    money::TaxRule,
    prep::{Cost, cost_of, margin, price_from_cost},
};

/// One base or drop with its cost.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Priced {
    /// The id that it has in the catalogue.
    pub id: String,
    /// The name that the maker gave it.
    pub name: String,
    /// Its price as marked.
    pub price: Decimal,
    /// Its price without the tax in it.
    pub net_price: Decimal,
    /// What it costs, if its recipe is known.
    pub cost: Option<Cost>,
    /// What one earns, where all of its cost is known.
    pub margin: Option<Decimal>,
    /// What it should be sold for by its cost, where all of that is known.
    pub price_from_cost: Option<Decimal>,
}

impl Priced {
    /// Whether all of its cost is known.
    pub fn is_known(&self) -> bool {
        self.cost.as_ref().is_some_and(|cost| cost.unknown.is_empty())
    }

    /// Its cost; half its price where that is not known.
    pub(super) fn cost_or_half(&self) -> Decimal {
        match &self.cost {
            Some(cost) if cost.unknown.is_empty() => cost.total(),
            _ => self.net_price / Decimal::TWO,
        }
    }
}

/// Every base and drop in the catalogue's order, with `stall` of stall and travel on each piece.
pub fn prices(catalog: &Catalog, workshop: Option<&Workshop>, stall: Decimal) -> Vec<Priced> {
    let units = workshop.map(Workshop::unit_costs).unwrap_or_default();
    let tax = catalog.table.prices.tax;
    let priced = parts(catalog).map(|part| {
        let recipe = workshop.and_then(|workshop| Some((workshop, workshop.recipe(catalog, part.id)?)));
        let cost = recipe.map(|(workshop, recipe)| cost_of(recipe, &units, &workshop.rates(stall)));
        let net_price = net_of(part.price, tax);
        let known = cost.as_ref().filter(|cost| cost.unknown.is_empty()).map(Cost::total);
        let from_cost = known.zip(workshop).and_then(|(cost, workshop)| {
            price_from_cost(with_tax(cost, tax), workshop.factor, workshop.price_step).ok()
        });
        Priced {
            id: part.id.to_owned(),
            name: part.name.to_owned(),
            price: part.price,
            net_price,
            margin: known.map(|cost| margin(net_price, cost)),
            price_from_cost: from_cost,
            cost,
        }
    });
    priced.collect()
}

/// What one should be sold for by its cost, before that is rounded to any step; none where its cost is not known.
pub(super) fn wished(one: &Priced, workshop: &Workshop, tax: TaxRule) -> Option<Decimal> {
    let cost = one.cost.as_ref().filter(|cost| cost.unknown.is_empty())?.total();
    with_tax(cost, tax).checked_mul(workshop.factor)
}

/// What of a marked price is the seller's: the tax is not, where the price contains it.
pub(super) fn net_of(price: Decimal, tax: TaxRule) -> Decimal {
    match tax {
        TaxRule::Included { percent } => price * Decimal::ONE_HUNDRED / (Decimal::ONE_HUNDRED + percent),
        _ => price,
    }
}

/// What has to stand on the mark so that `net` is the seller's.
fn with_tax(net: Decimal, tax: TaxRule) -> Decimal {
    match tax {
        TaxRule::Included { percent } => net.saturating_mul((Decimal::ONE_HUNDRED + percent) / Decimal::ONE_HUNDRED),
        _ => net,
    }
}
