//! The price lists that this table had. A tablet that was out of reach made its sums by an earlier one, and the sum on its
//! screen is the sum charged; a sum that no list of this table gives is one that the seller has to look at.

use std::collections::BTreeMap;

use rusqlite::{Connection, OptionalExtension};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::LedgerError;
use crate::{
    catalog::Catalog,
    money::{PriceRules, PricedDrop, PricedItem, Quote, quote},
};

/// So many of the newest lists are kept and looked through.
const LISTS: i64 = 64;

/// What everything cost, and by which rules it was summed.
#[derive(Serialize, Deserialize)]
struct PriceList {
    rules: PriceRules,
    bases: BTreeMap<String, Decimal>,
    drops: BTreeMap<String, Decimal>,
}

/// Keeps the price list of `catalog` as the newest one.
pub(super) fn remember(db: &Connection, catalog: &Catalog) -> Result<(), LedgerError> {
    let list = PriceList {
        rules: catalog.table.prices.clone(),
        bases: catalog.bases.iter().map(|base| (base.id.clone(), base.price)).collect(),
        drops: catalog.drops.iter().map(|kind| (kind.id.clone(), kind.price)).collect(),
    };
    let list = serde_json::to_string(&list)?;
    let newest: Option<String> =
        db.query_row("SELECT list FROM price_lists ORDER BY seq DESC LIMIT 1", [], |row| row.get(0)).optional()?;
    if newest.as_ref() != Some(&list) {
        db.execute("INSERT OR REPLACE INTO price_lists (list) VALUES (?)", [list])?;
        db.execute("DELETE FROM price_lists WHERE seq <= (SELECT max(seq) FROM price_lists) - ?", [LISTS])?;
    }
    Ok(())
}

/// The rules by which the parts of `seen` come to just that sum: those of `catalog`, or of the newest earlier list that
/// agrees; none where no list of this table ever gave it.
pub(super) fn agreeing(db: &Connection, catalog: &Catalog, seen: &Quote) -> Result<Option<PriceRules>, LedgerError> {
    let now = &catalog.table.prices;
    let base = catalog.base(&seen.base.id).map(|base| base.price);
    if agrees(now, base, |id| catalog.drop_kind(id).map(|kind| kind.price), seen) {
        return Ok(Some(now.clone()));
    }
    let mut lists = db.prepare_cached("SELECT list FROM price_lists ORDER BY seq DESC LIMIT ?")?;
    let mut rows = lists.query([LISTS])?;
    while let Some(row) = rows.next()? {
        // A list that an earlier version wrote down otherwise agrees with nothing.
        let Ok(list) = serde_json::from_str::<PriceList>(row.get_ref(0)?.as_str().unwrap_or_default()) else {
            continue;
        };
        if agrees(&list.rules, list.bases.get(&seen.base.id).copied(), |id| list.drops.get(id).copied(), seen) {
            return Ok(Some(list.rules));
        }
    }
    Ok(None)
}

/// Whether the parts of `seen`, at these prices and by these rules, come to just that sum.
fn agrees(rules: &PriceRules, base: Option<Decimal>, drop: impl Fn(&str) -> Option<Decimal>, seen: &Quote) -> bool {
    let Some(price) = base else { return false };
    let base = PricedItem { id: seen.base.id.clone(), price };
    let drops: Option<Vec<PricedDrop>> =
        seen.drops.iter().map(|one| Some(PricedDrop { price: drop(&one.id)?, ..one.clone() })).collect();
    drops.and_then(|drops| quote(rules, base, drops).ok()).is_some_and(|anew| anew == *seen)
}
