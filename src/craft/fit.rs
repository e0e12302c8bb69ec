//! Whether a drop's ring passes over the closed end of a base by hand.

use serde::{Deserialize, Serialize};

use super::{Base, Length, Ring};

/// The end of a base that a ring has to pass over.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum ClosedEnd {
    /// A closed ring or a ball of this outside diameter. A flat ring goes through edge on,
    /// and the smallest circle round it is its own outside.
    Round(Length),
    /// A clasp or hook of this section; the smallest circle round a rectangle has its diagonal as diameter.
    Flat {
        /// Widest place.
        width: Length,
        /// Thickest place.
        thickness: Length,
    },
}

impl ClosedEnd {
    /// Diameter of the smallest round hole it goes through.
    pub fn needs_mm(self) -> f64 {
        match self {
            Self::Round(outside) => outside.mm(),
            Self::Flat { width, thickness } => width.mm().hypot(thickness.mm()),
        }
    }
}

/// The answer for one drop on one base.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Fit {
    /// Whether the ring goes on over the easier end.
    pub passes: bool,
    /// Opening less what that end needs, in millimetres.
    pub clearance_mm: f64,
    /// The ring's free opening in millimetres.
    pub opening_mm: f64,
    /// What the easier end needs, in millimetres.
    pub needs_mm: f64,
}

/// Free opening of `ring` less what `end` needs, in millimetres; the ring passes when it is above zero.
pub fn clearance_mm(ring: Ring, end: ClosedEnd) -> f64 {
    ring.opening().mm() - end.needs_mm()
}

/// Whether a drop's `ring` can be put on `base` by hand, over the easier of its ends.
pub fn fit_on(base: &Base, ring: Ring) -> Fit {
    let needs_mm = base.closed_ends().into_iter().map(ClosedEnd::needs_mm).fold(f64::INFINITY, f64::min);
    let opening_mm = ring.opening().mm();
    let clearance_mm = opening_mm - needs_mm;
    Fit { passes: clearance_mm > 0.0, clearance_mm, opening_mm, needs_mm }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Common practice, no source: a 10 mm ring goes by hand over a 5 mm end ring; a 6 mm ring in 20 AWG does not.
    #[test]
    fn the_usual_rings_at_the_table() {
        let ring = |outside: &str, wire: &str| Ring::new(outside.parse().unwrap(), wire.parse().unwrap()).unwrap();
        let end = ClosedEnd::Round(Length::from_mm(5.0));
        assert!((clearance_mm(ring("10mm", "1mm"), end) - 3.0).abs() < 1e-12);
        assert!(clearance_mm(ring("6mm", "20awg"), end) < 0.0);
        let hook = ClosedEnd::Flat { width: Length::from_mm(3.0), thickness: Length::from_mm(4.0) };
        assert!((hook.needs_mm() - 5.0).abs() < 1e-12);
    }
}
