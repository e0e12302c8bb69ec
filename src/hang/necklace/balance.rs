//! Where the cluster comes to rest.

use super::Side;
use crate::hang::HangError;

/// The place of the first ring, within 0..=room, at which nothing pushes the cluster, or the end it lies against.
/// `push_at` gives the push at a place, positive to the right.
pub(super) fn balance(
    push_at: &mut impl FnMut(f64) -> Result<f64, HangError>,
    room: f64,
) -> Result<(f64, Option<Side>), HangError> {
    let middle = (room / 2.0, push_at(room / 2.0)?);
    if middle.1 == 0.0 {
        return Ok((middle.0, None));
    }
    let (end, side) = if middle.1 > 0.0 { (room, Side::Right) } else { (0.0, Side::Left) };
    let at_end = (end, push_at(end)?);
    if at_end.1 == 0.0 || (at_end.1 > 0.0) == (middle.1 > 0.0) {
        return Ok((end, Some(side)));
    }
    // (place, push) left and right of the balance. Regula falsi with the Illinois rule.
    let (mut low, mut high) = if middle.1 > 0.0 { (middle, at_end) } else { (at_end, middle) };
    let mut last = None;
    for round in 1..300 {
        let falsi = (low.0 * high.1 - high.0 * low.1) / (high.1 - low.1);
        // Where the push is a step rather than a slope, halving now and then keeps the search short.
        let place = if round % 8 == 0 { (low.0 + high.0) / 2.0 } else { falsi };
        if place <= low.0 || place >= high.0 || high.0 - low.0 <= 1e-14 * room {
            break;
        }
        let push = push_at(place)?;
        if push == 0.0 {
            return Ok((place, None));
        }
        let rightwards = push > 0.0;
        let share = if last == Some(rightwards) { 0.5 } else { 1.0 };
        last = Some(rightwards);
        if rightwards {
            low = (place, push);
            high.1 *= share;
        } else {
            high = (place, push);
            low.1 *= share;
        }
    }
    Ok((if low.1 < -high.1 { low.0 } else { high.0 }, None))
}
