//! Jump rings and bails: a round wire bent to a ring.

use std::f64::consts::PI;

use serde::{Deserialize, Serialize};

use super::Length;

/// A closed ring of round wire.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Ring {
    /// Outside diameter.
    pub outside: Length,
    /// Diameter of the wire.
    pub wire: Length,
}

/// Why two sizes are no ring.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error(
    "a ring {outside} across can't be made of {wire} wire: the wire must be thicker than nothing and thinner than half the ring"
)]
pub struct RingError {
    /// Outside diameter.
    pub outside: Length,
    /// Diameter of the wire.
    pub wire: Length,
}

impl Ring {
    /// A ring `outside` across, of round `wire`.
    ///
    /// # Errors
    /// The wire has no thickness, or leaves no opening.
    pub fn new(outside: Length, wire: Length) -> Result<Self, RingError> {
        if wire.mm() > 0.0 && outside.mm() > 2.0 * wire.mm() {
            Ok(Self { outside, wire })
        } else {
            Err(RingError { outside, wire })
        }
    }

    /// The free opening: outside less twice the wire.
    pub fn opening(self) -> Length {
        Length::from_mm(self.outside.mm() - 2.0 * self.wire.mm())
    }

    /// How far below the middle of what it hangs on its body begins, in millimetres: the ring goes over that with its wire,
    /// and the body hangs in the ring by an eye of wire as thick (common practice, no source), which goes over the ring's
    /// lower wire.
    pub fn hangs_mm(self) -> f64 {
        self.outside.mm() - 3.0 * self.wire.mm()
    }

    /// Volume of its wire, in cubic millimetres: a torus. Source: Pappus, area times the way of its middle.
    pub fn volume_mm3(self) -> f64 {
        PI / 4.0 * self.wire.mm().powi(2) * PI * (self.outside.mm() - self.wire.mm())
    }

    /// Inside diameter over wire diameter, the number by which rings are chosen for chain work.
    pub fn aspect_ratio(self) -> f64 {
        self.opening().mm() / self.wire.mm()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked examples published in chain-making tutorials: 6 mm outside in 20 AWG gives 4.38 mm inside, ratio 5.4;
    /// 5 mm inside in 16 AWG has 3.86 (rounded there on the way; exactly 3.8734); 4.8 mm inside in 20 AWG has 5.9.
    #[test]
    fn published_aspect_ratios() {
        println!("| ring | opening mm | ratio | published |");
        for (inside, wire, ratio, by) in
            [(4.376, "20awg", 5.4, 0.05), (5.0, "16awg", 3.86, 0.02), (4.8, "20awg", 5.9, 0.05)]
        {
            let wire: Length = wire.parse().unwrap();
            let ring = Ring::new(Length::from_mm(inside + 2.0 * wire.mm()), wire).unwrap();
            println!("| {inside} in {wire} | {:.3} | {:.4} | {ratio} |", ring.opening().mm(), ring.aspect_ratio());
            assert!((ring.aspect_ratio() - ratio).abs() < by && (ring.opening().mm() - inside).abs() < 1e-9);
        }
        let exact = Ring::new("7.58169mm".parse().unwrap(), "16awg".parse().unwrap()).unwrap();
        assert!((exact.aspect_ratio() - 3.8734).abs() < 5e-4);
    }

    /// A ring of 10 mm in 1 mm wire: 9π mm of wire of π/4 mm², worked by hand.
    #[test]
    fn a_published_ring() {
        let ring = Ring::new(Length::from_mm(10.0), Length::from_mm(1.0)).unwrap();
        assert!((ring.volume_mm3() - 22.206_610).abs() < 1e-6);
        let ring = Ring::new("6mm".parse().unwrap(), "20awg".parse().unwrap()).unwrap();
        assert!((ring.opening().mm() - 4.38).abs() < 0.005);
        assert!((ring.aspect_ratio() - 5.4).abs() < 0.05);
        assert!(Ring::new(Length::from_mm(2.0), Length::from_mm(1.0)).is_err());
        assert!(Ring::new(Length::from_mm(2.0), Length::from_mm(0.0)).is_err());
        assert!(Ring::new(Length::from_mm(f64::NAN), Length::from_mm(1.0)).is_err());
    }
}
