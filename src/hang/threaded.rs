//! How a ring that is threaded on a base is seen: nearly edge on, as an oval whose one half is behind the base and whose
//! other half is before it.

use crate::craft::{DropKind, Ring};

/// From how far a piece is looked at, in millimetres: arm's length. Common practice, no source.
const LOOKED_AT_FROM_MM: f64 = 500.0;
/// A ring hangs across the base, so from straight in front it would be a line; seen a little from the side it is an oval.
const SEEN_FROM_THE_SIDE_RAD: f64 = 0.40;
/// No two kinds hang quite alike: each is turned by at most so much more or less.
const UNLIKE_RAD: f64 = 0.10;
/// A drop that swings by some angle also turns about its own axis, by so much of it.
const TWIST: f64 = 0.9;

/// A ring as it is seen: the middle line of its wire is an oval, upright while the drop hangs straight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeenRing {
    /// Half of the oval's width in millimetres; below zero where the half before the base is the left one.
    pub half_width_mm: f64,
    /// Half of its height.
    pub half_height_mm: f64,
    /// How thick the wire is.
    pub wire_mm: f64,
}

impl SeenRing {
    /// A ring whose plane is turned by `turn_rad` from the line of sight: 0 is edge on, a quarter turn the whole circle.
    ///
    /// Looked at along parallel lines a circle of radius r is an ellipse of half axes r and r · sin(turn). Source: the
    /// orthographic projection of a circle, as in any text of descriptive geometry.
    pub fn turned(ring: Ring, turn_rad: f64) -> Self {
        let radius = (ring.outside.mm() - ring.wire.mm()) / 2.0;
        Self { half_width_mm: radius * turn_rad.sin(), half_height_mm: radius, wire_mm: ring.wire.mm() }
    }
}

/// The ring of `kind` where it hangs `x_mm` to the right of the middle of the piece and leans by `lean_rad`.
pub fn seen_ring(kind: &DropKind, x_mm: f64, lean_rad: f64) -> SeenRing {
    let aside = (x_mm / LOOKED_AT_FROM_MM).atan();
    let turn = SEEN_FROM_THE_SIDE_RAD + UNLIKE_RAD * unlike(&kind.id) + aside + TWIST * lean_rad;
    SeenRing::turned(kind.ring, turn)
}

/// A number from −1 to 1 that is a kind's own, the same on every device. FNV-1a with 32 bits; source: Fowler, Noll, Vo,
/// RFC 9923.
fn unlike(id: &str) -> f64 {
    let hash = id.bytes().fold(0x811c_9dc5_u32, |hash, byte| (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193));
    f64::from(hash) / f64::from(u32::MAX) * 2.0 - 1.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::Length;

    /// Points of the circle turned in space and looked at along z, against the closed form of its ellipse.
    #[test]
    fn a_turned_circle_is_the_ellipse_of_the_closed_form() {
        let ring = Ring::new(Length::from_mm(10.0), Length::from_mm(1.0)).unwrap();
        for turn in [0.0, 0.2, 0.4, 1.0, std::f64::consts::FRAC_PI_2, -0.7] {
            let seen = SeenRing::turned(ring, turn);
            for step in 0..72 {
                let around = f64::from(step) * std::f64::consts::TAU / 72.0;
                // The ring stands in the plane of y and z, then turns about y.
                let (y, z) = (4.5 * around.cos(), 4.5 * around.sin());
                let x = z * turn.sin();
                let on = if seen.half_width_mm == 0.0 {
                    x.abs()
                } else {
                    (x / seen.half_width_mm).powi(2) - around.sin().powi(2)
                };
                assert!(on.abs() < 1e-12 && (y / seen.half_height_mm - around.cos()).abs() < 1e-12);
            }
        }
        assert_eq!(SeenRing::turned(ring, 0.0).half_width_mm, 0.0);
        assert!((SeenRing::turned(ring, std::f64::consts::FRAC_PI_2).half_width_mm - 4.5).abs() < 1e-12);
    }

    /// The published test vectors of FNV-1a with 32 bits: "" and "a" and "foobar". Source: the reference by its authors.
    #[test]
    fn a_kinds_own_number_is_made_as_published() {
        for (text, hash) in [("", 0x811c_9dc5_u32), ("a", 0xe40c_292c), ("foobar", 0xbf9c_f968)] {
            assert_eq!(unlike(text), f64::from(hash) / f64::from(u32::MAX) * 2.0 - 1.0);
        }
    }
}
