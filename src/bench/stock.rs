//! What lies there at cost, on a day.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use serde::Serialize;

use super::{parts::parts, prices::prices};
use crate::{
    catalog::{Catalog, Workshop},
    craft::Home,
    export::{Cell, DecimalMark, ExportError, csv},
};

/// What lies there of one drop, base or part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct StockLine {
    /// The id that it has in the catalogue.
    pub id: String,
    /// The name that the maker gave it.
    pub name: String,
    /// Where it lies; bases have no compartment.
    pub home: Option<Home>,
    /// How many there are.
    pub count: Decimal,
    /// What the parts in one cost, by all lots that were bought; none where that is not known.
    pub unit_cost: Option<Decimal>,
    /// All of them.
    pub value: Option<Decimal>,
}

/// The finished pieces at what their parts cost: the maker's own hours are not in it (common practice, no source). `counts`
/// is what was there.
pub fn stock_at_cost(catalog: &Catalog, workshop: Option<&Workshop>, counts: &BTreeMap<String, u32>) -> Vec<StockLine> {
    let priced = prices(catalog, workshop, Decimal::ZERO);
    let known: BTreeMap<&str, Option<Decimal>> = priced
        .iter()
        .map(|one| (one.id.as_str(), one.cost.as_ref().filter(|_| one.is_known()).map(|cost| cost.parts)))
        .collect();
    let there = counts.iter().filter(|(_, count)| **count > 0);
    let line = |(id, count): (&String, &u32)| {
        let part = parts(catalog).find(|part| part.id == id);
        let (count, unit_cost) = (Decimal::from(*count), known.get(id.as_str()).copied().flatten());
        StockLine {
            id: id.clone(),
            name: part.map_or(id.as_str(), |part| part.name).to_owned(),
            home: part.and_then(|part| part.home),
            count,
            unit_cost,
            value: unit_cost.and_then(|unit| unit.checked_mul(count)),
        }
    };
    let mut lines: Vec<StockLine> = there.map(line).collect();
    lines.sort_by(|a, b| (a.home, &a.id).cmp(&(b.home, &b.id)));
    lines
}

/// What the lines are worth together, and how many pieces are not in it, since their cost is not known.
pub fn worth_of_stock(lines: &[StockLine]) -> (Decimal, Decimal) {
    let worth = lines.iter().filter_map(|line| line.value).fold(Decimal::ZERO, Decimal::saturating_add);
    let unknown = lines.iter().filter(|line| line.value.is_none()).map(|line| line.count);
    (worth, unknown.fold(Decimal::ZERO, Decimal::saturating_add))
}

/// The lines as a table for a spreadsheet, in the currency called `code`.
///
/// # Errors
/// The table can't be written.
pub fn stock_table(lines: &[StockLine], code: &str, mark: DecimalMark) -> Result<Vec<u8>, ExportError> {
    let homes: Vec<String> =
        lines.iter().map(|line| line.home.map(|home| home.to_string()).unwrap_or_default()).collect();
    let (unit, value) = (format!("parts in one ({code})"), format!("value ({code})"));
    let rows = lines.iter().zip(&homes).map(|(line, home)| {
        let amount =
            |amount: Option<Decimal>| amount.map_or(Cell::Text("not known"), |one| Cell::Number(one.round_dp(4)));
        let words = [Cell::Text(&line.name), Cell::Text(&line.id), Cell::Text(home)];
        words
            .into_iter()
            .chain([Cell::Number(line.count), amount(line.unit_cost), amount(line.value)])
            .collect::<Vec<_>>()
    });
    csv(mark, &["part", "id", "home", "count", &unit, &value], rows)
}
