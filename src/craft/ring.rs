//! Jump rings and bails: a round wire bent to a ring.

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
    outside: Length,
    wire: Length,
}

impl Ring {
    /// A ring `outside` across, of round `wire`.
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

    /// Inside diameter over wire diameter, the number by which rings are chosen for chain work.
    pub fn aspect_ratio(self) -> f64 {
        self.opening().mm() / self.wire.mm()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked example published in chain-making tutorials: 6 mm outside in 20 AWG gives 4.38 mm inside, ratio 5.4.
    #[test]
    fn a_published_ring() {
        let ring = Ring::new("6mm".parse().unwrap(), "20awg".parse().unwrap()).unwrap();
        assert!((ring.opening().mm() - 4.38).abs() < 0.005);
        assert!((ring.aspect_ratio() - 5.4).abs() < 0.05);
        assert!(Ring::new(Length::from_mm(2.0), Length::from_mm(1.0)).is_err());
        assert!(Ring::new(Length::from_mm(2.0), Length::from_mm(0.0)).is_err());
        assert!(Ring::new(Length::from_mm(f64::NAN), Length::from_mm(1.0)).is_err());
    }
}
