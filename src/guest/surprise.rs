//! "Surprise me": a balanced piece of what is in stock, within the budget.

use super::{
    chance::Chance,
    places::places_of,
    session::Filters,
    standing::{Standing, standing},
};
use crate::{
    craft::{Piece, Wearer},
    link::Snapshot,
};

/// As many drops as look well together. Common practice, no source.
const DROPS: usize = 5;

/// Drops for `bare` (its own are put aside): different ones that suit its wearer, the longest in the middle. The same `seed` gives the same drops.
pub fn surprise(snapshot: &Snapshot, bare: &Piece, filters: &Filters, seed: u64) -> Vec<String> {
    let catalog = &snapshot.catalog;
    let mut chance = Chance(seed);
    let mut piece = Piece { drops: vec![], looks: vec![], ..bare.clone() };
    let mut left: Vec<_> = catalog.drops.iter().collect();
    while piece.drops.len() < DROPS && !left.is_empty() {
        let kind = left.swap_remove(chance.below(left.len()));
        let same_sort =
            piece.drops.iter().filter_map(|id| catalog.drop_kind(id)).filter(|hung| hung.sort == kind.sort).count();
        let suits = bare.wearer == Wearer::Unknown || catalog.suits(kind, bare.wearer);
        if same_sort >= 2
            || !suits
            || standing(&snapshot.catalog, |id| snapshot.available(id), Some(&piece), filters, kind) != Standing::Open
        {
            continue;
        }
        piece.drops.push(kind.id.clone());
        if places_of(catalog, &piece).is_err() {
            piece.drops.pop();
        }
    }
    let height = |id: &String| catalog.drop_kind(id).map_or(0.0, |kind| kind.height.mm());
    piece.drops.sort_by(|a, b| height(b).total_cmp(&height(a)));
    let (mut balanced, mut right) = (std::collections::VecDeque::new(), true);
    for id in piece.drops {
        if right {
            balanced.push_back(id)
        } else {
            balanced.push_front(id)
        }
        right = !right;
    }
    balanced.into()
}
