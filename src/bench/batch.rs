//! What a batch takes from the drawers, what is short, what to buy.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use serde::Serialize;

use super::parts::{Part, parts};
use crate::{
    catalog::{Catalog, Workshop},
    prep::{Makeable, Purchase, Recipe, can_be_made, needs_of, stopped_by, whole_lots},
};

/// One part of a batch.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PartShort {
    /// Id of the part.
    pub part: String,
    /// The name that the maker gave it.
    pub name: String,
    /// Whether it is measured in millimetres.
    pub by_length: bool,
    /// How much the batch takes.
    pub needed: Decimal,
    /// How much lies there.
    pub there: Decimal,
    /// How much is short.
    pub short: Decimal,
    /// What to buy; none where no lots are offered.
    pub buy: Option<Purchase>,
    /// What can't be made any more when it is gone, by id.
    pub stops: Vec<String>,
}

/// What a batch comes to.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Batch {
    /// The parts that it takes.
    pub parts: Vec<PartShort>,
    /// What has to be bought, in all, as far as it is offered.
    pub price: Decimal,
    /// What of the batch has no recipe, by id: its parts are not in it.
    pub without_recipe: Vec<String>,
    /// How many of each thing of the batch can be made from the drawers alone, were nothing else made.
    pub makeable: BTreeMap<String, Makeable>,
}

/// What `make`, counts by the ids of bases and drops, takes beyond the drawers.
pub fn batch(catalog: &Catalog, workshop: &Workshop, make: &BTreeMap<String, u32>) -> Batch {
    let recipe = |id: &str| workshop.recipe(catalog, id);
    let wanted = || make.iter().filter(|(_, count)| **count > 0);
    let needs = needs_of(wanted().filter_map(|(id, count)| Some((recipe(id)?, *count))));
    let recipes: Vec<(&str, &Recipe)> = parts(catalog).filter_map(|Part { id, .. }| Some((id, recipe(id)?))).collect();
    let drawers = workshop.drawers();
    let short_of = |(id, needed): (&String, &Decimal)| {
        let part = workshop.part(id)?;
        let there = part.there.amount();
        let short = needed.saturating_sub(there).max(Decimal::ZERO);
        Some(PartShort {
            part: id.clone(),
            name: part.name.clone(),
            by_length: !matches!(part.there, crate::catalog::There::Pieces(_)),
            needed: *needed,
            there,
            short,
            buy: whole_lots(short, &part.offers),
            stops: stopped_by(id, recipes.iter().copied()).into_iter().map(str::to_owned).collect(),
        })
    };
    let parts: Vec<PartShort> = needs.iter().filter_map(short_of).collect();
    let price = parts.iter().filter_map(|part| part.buy.as_ref()).map(|buy| buy.price);
    Batch {
        price: price.fold(Decimal::ZERO, Decimal::saturating_add),
        parts,
        without_recipe: wanted().filter(|(id, _)| recipe(id).is_none()).map(|(id, _)| id.clone()).collect(),
        makeable: wanted().filter_map(|(id, _)| Some((id.clone(), can_be_made(recipe(id)?, &drawers)?))).collect(),
    }
}
