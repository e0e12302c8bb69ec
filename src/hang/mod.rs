//! How it hangs: chain and bangle at rest, and where everything of a piece is.
//!
//! A pure room: lengths in millimetres, masses in grams, forces in millinewtons, x to the right, y downwards.

mod bangle;
mod error;
mod motion;
mod necklace;
mod piece;

pub use bangle::{BangleLoad, BangleRest, bangle};
pub use error::HangError;
pub use motion::{ChainPlan, Hanging, HoopPlan, Motion, MotionPlan, MovingBase};
pub use necklace::{Load, NecklaceLoad, NecklaceRest, RingPlace, Side, necklace};
pub use piece::{BangleAt, Bounds, PiecePlaces, Point, RingAt, neck_mm, place_piece};

/// Standard acceleration of free fall in m/s². Source: 3rd CGPM, 1901.
pub const G: f64 = 9.80665;

/// Front length and width between the hang points of a necklace `length_mm` long on a neck of this circumference:
/// the back of the chain lies on half of the neck, the front hangs between the ends of its diameter.
///
/// # Errors
/// Figures that are no lengths, or a front that would not reach across the neck.
pub fn front_of_body(length_mm: f64, neck_mm: f64) -> Result<(f64, f64), HangError> {
    error::sound("the necklace's length", length_mm, false)?;
    error::sound("the neck", neck_mm, false)?;
    let (front, width) = (length_mm - neck_mm / 2.0, neck_mm / std::f64::consts::PI);
    if front <= width {
        return Err(HangError::TooShortForNeck { length_mm, neck_mm, missing_mm: width - front });
    }
    Ok((front, width))
}

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

    /// S = C/π and L_front = L − C/2, from the half circle behind the neck; computed by hand for C = 100π.
    #[test]
    fn the_front_of_a_body() {
        let half = 50.0 * std::f64::consts::PI;
        let (front, width) = front_of_body(half + 130.0, 2.0 * half).unwrap();
        assert!((front - 130.0).abs() < 1e-9 && (width - 100.0).abs() < 1e-9);
        let refused = front_of_body(half + 70.0, 2.0 * half).unwrap_err();
        let HangError::TooShortForNeck { missing_mm, .. } = refused else { panic!("{refused}") };
        assert!((missing_mm - 30.0).abs() < 1e-9, "{refused}");
        assert!(refused.to_string().contains("30.0 mm too short"), "{refused}");
        for (length, neck) in [(f64::NAN, 360.0), (600.0, f64::INFINITY), (-1.0, 360.0), (600.0, 0.0)] {
            assert!(matches!(front_of_body(length, neck), Err(HangError::Nonsense { .. })), "{length} {neck}");
        }
    }

    #[test]
    fn gaps_are_the_wires_or_the_overlapping_bodies() {
        // 0.6 · (10 + 14)/2 = 7.2; thin bodies leave the wires, (1.2 + 2.0)/2.
        assert_eq!(cluster_gaps(&[(1.0, 10.0), (1.2, 14.0)], 0.6), [0.6 * 24.0 / 2.0]);
        assert_eq!(cluster_gaps(&[(1.2, 1.0), (2.0, 1.0), (2.0, 9.0)], 0.6), [1.6, 3.0]);
        assert!(cluster_gaps(&[(1.0, 10.0)], 0.6).is_empty() && cluster_gaps(&[], 0.6).is_empty());
    }
}
