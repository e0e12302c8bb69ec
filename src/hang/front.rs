//! Which drop of a piece hangs in front of which.

use crate::craft::DropKind;

/// The places of `kinds`, from the one at the back to the one in front: the smaller hangs before the larger, so that none
/// hides another, and of those of one size the one further to the right. The same piece looks the same everywhere:
/// on the stage, on the ticket and at the desk.
pub fn back_to_front(kinds: &[&DropKind]) -> Vec<usize> {
    let area_mm2 = |kind: &DropKind| kind.width.mm() * kind.height.mm();
    let mut places: Vec<usize> = (0..kinds.len()).collect();
    places.sort_by(|a, b| area_mm2(kinds[*b]).total_cmp(&area_mm2(kinds[*a])));
    places
}
