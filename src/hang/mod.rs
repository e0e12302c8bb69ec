//! How it hangs: chain and bangle at rest, where everything of a piece is, and where it falls on the body.
//!
//! A pure room: lengths in millimetres, masses in grams, forces in millinewtons, x to the right, y downwards.
//!
//! | file | look here for |
//! | --- | --- |
//! | `necklace` | a chain with its cluster of drops, at rest |
//! | `bangle` | a bangle on a wrist, at rest |
//! | `piece` | where everything of a piece is, for every drawing |
//! | `front`, `threaded`, `shadow` | which drop hangs in front of which; how a ring round the base is seen; where shadows fall |
//! | `body` | from a neck to hang points, and where a length falls |
//! | `motion` | the same in the hand |
//! | `error` | why something does not hang |
//! | `seeded` | numbers from a seed, for the tests |

mod bangle;
mod body;
mod error;
mod front;
mod motion;
mod necklace;
mod piece;
#[cfg(test)]
mod seeded;
mod shadow;
mod threaded;

pub use bangle::{BangleLoad, BangleRest, WRIST_GRIP, bangle};
pub use body::{BodyFalls, falls, front_of_body, worn_neck_mm};
pub use error::HangError;
pub use front::back_to_front;
pub use motion::{ChainPlan, Dangle, Hanging, HoopPlan, Motion, MotionPlan, MovingBase};
pub use necklace::{Load, NecklaceLoad, NecklaceRest, RingPlace, Side, necklace};
pub use piece::{BangleAt, Bounds, PiecePlaces, Point, RingAt, bangle_load, necklace_load, place_piece, reach_mm};
pub use shadow::Shadow;
pub use threaded::{SeenRing, seen_ring};

/// Standard acceleration of free fall in m/s². Source: 3rd CGPM, 1901.
pub const G: f64 = 9.80665;

/// Arc distance that neighbouring rings keep: their wires touch, or their bodies overlap like roof tiles by `rho`.
///
/// `items` are the drops' (ring wire, body width), left to right, both in millimetres.
pub fn cluster_gaps(items: &[(f64, f64)], rho: f64) -> Vec<f64> {
    items.windows(2).map(|pair| gap_between(pair[0], pair[1], rho)).collect()
}

/// The same for two neighbours.
fn gap_between((wire_a, width_a): (f64, f64), (wire_b, width_b): (f64, f64), rho: f64) -> f64 {
    ((wire_a + wire_b) / 2.0).max(rho * (width_a + width_b) / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gaps_are_the_wires_or_the_overlapping_bodies() {
        // 0.6 · (10 + 14)/2 = 7.2; thin bodies leave the wires, (1.2 + 2.0)/2.
        assert_eq!(cluster_gaps(&[(1.0, 10.0), (1.2, 14.0)], 0.6), [0.6 * 24.0 / 2.0]);
        assert_eq!(cluster_gaps(&[(1.2, 1.0), (2.0, 1.0), (2.0, 9.0)], 0.6), [1.6, 3.0]);
        assert!(cluster_gaps(&[(1.0, 10.0)], 0.6).is_empty() && cluster_gaps(&[], 0.6).is_empty());
    }
}
