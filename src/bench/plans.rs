//! What is planned: packing for a show, shows to come, custom orders. Plain fields that the maker fills in.

use std::collections::BTreeSet;

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use crate::{craft::Day, ledger::KeptPage};

/// The kinds of these pages in the workbook.
pub const PACKING: &str = "packing";
/// See [`PACKING`].
pub const PLANNED: &str = "planned";
/// See [`PACKING`].
pub const ORDERS: &str = "orders";

/// The longest line of words.
pub const LONGEST: usize = 200;
/// The longest number by which somebody who ordered is known: a telephone's has 15 digits at most. Source: ITU-T E.164.
pub const LONGEST_NUMBER: usize = 15;

/// One thing to pack.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct PackItem {
    /// What, with how many of it where that matters.
    pub what: String,
    /// It is a spare.
    #[serde(default)]
    pub spare: bool,
    /// It is in the bag.
    #[serde(default)]
    pub packed: bool,
    /// How often it was forgotten.
    #[serde(default)]
    pub forgotten: u32,
    /// It is off the list.
    #[serde(default)]
    pub gone: bool,
}

/// A show to come.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlannedShow {
    /// The day on which it begins.
    pub day: Day,
    /// The place, as the maker calls it.
    pub place: String,
    /// The stall's fee.
    #[serde(default)]
    pub fee: Option<Decimal>,
    /// By when one applies or pays.
    #[serde(default)]
    pub deadline: Option<Day>,
    /// The number of the permit.
    #[serde(default)]
    pub permit: String,
    /// Anything else, in the maker's words.
    #[serde(default)]
    pub note: String,
    /// It is off the calendar.
    #[serde(default)]
    pub gone: bool,
}

/// A custom order.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Order {
    /// By when it is wanted.
    pub due: Day,
    /// What was agreed.
    pub agreed: String,
    /// The number by which whoever ordered is known, and nothing else of them.
    #[serde(default)]
    pub number: String,
    /// It is done.
    #[serde(default)]
    pub done: bool,
    /// It is off the list.
    #[serde(default)]
    pub gone: bool,
}

/// What is packed first: what was forgotten most often, then as it was written down.
pub fn packing(mut pages: Vec<KeptPage<PackItem>>) -> Vec<KeptPage<PackItem>> {
    pages.retain(|kept| !kept.page.gone);
    pages.sort_by_key(|kept| std::cmp::Reverse(kept.page.forgotten));
    pages
}

/// A deadline or a day that comes next, for one who looks at the calendar.
pub fn by_day<T>(mut pages: Vec<KeptPage<T>>, day: impl Fn(&T) -> Day) -> Vec<KeptPage<T>> {
    pages.sort_by_key(|kept| {
        let day = day(&kept.page);
        (day.year, day.month, day.day)
    });
    pages
}

/// What of the usual things is not on the list yet.
pub fn not_listed<'a>(pages: &[KeptPage<PackItem>], usual: &'a [String]) -> Vec<&'a String> {
    let listed: BTreeSet<String> = pages.iter().map(|kept| kept.page.what.to_lowercase()).collect();
    usual.iter().filter(|what| !listed.contains(&what.to_lowercase())).collect()
}
