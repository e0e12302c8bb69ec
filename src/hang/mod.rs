//! How it hangs: chain and bangle at rest, and where everything of a piece is.
//!
//! A pure room: lengths in millimetres, masses in grams, forces in millinewtons, x to the right, y downwards.

mod bangle;
mod error;
mod necklace;
mod piece;

pub use bangle::{BangleLoad, BangleRest, bangle};
pub use error::HangError;
pub use necklace::{Load, NecklaceLoad, NecklaceRest, RingPlace, Side, necklace};
pub use piece::{BangleAt, Bounds, PiecePlaces, Point, RingAt, neck_mm, place_piece};

/// Standard acceleration of free fall in m/s². Source: 3rd CGPM, 1901.
pub const G: f64 = 9.80665;

/// Front length and width between the hang points of a necklace `length_mm` long on a neck of this circumference:
/// the back of the chain lies on half of the neck, the front hangs between the ends of its diameter.
///
/// # Errors
/// The front would not reach across the neck.
pub fn front_of_body(length_mm: f64, neck_mm: f64) -> Result<(f64, f64), HangError> {
    let (front, width) = (length_mm - neck_mm / 2.0, neck_mm / std::f64::consts::PI);
    if !(front.is_finite() && width.is_finite() && width > 0.0) {
        return Err(HangError::Nonsense { what: "the necklace's length or the neck", value: length_mm.min(neck_mm) });
    }
    if front <= width {
        return Err(HangError::TooShortForNeck { length_mm, neck_mm, missing_mm: width - front });
    }
    Ok((front, width))
}

/// Arc distance that neighbouring rings keep: their wires touch, or their bodies overlap like roof tiles by `rho`.
///
/// `items` are the drops' (ring wire, body width), left to right, both in millimetres.
pub fn cluster_gaps(items: &[(f64, f64)], rho: f64) -> Vec<f64> {
    items
        .windows(2)
        .map(|pair| {
            let [(wire_a, width_a), (wire_b, width_b)] = [pair[0], pair[1]];
            ((wire_a + wire_b) / 2.0).max(rho * (width_a + width_b) / 2.0)
        })
        .collect()
}
