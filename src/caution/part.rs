//! Judging one drop by itself: small part, magnet.

use std::f64::consts::PI;

use super::{Gauge, Solid, fits};
use crate::craft::{DropKind, Magnet};

/// A magnet from this index on is hazardous where it can be swallowed. Source: 16 CFR 1262.2(a).
const HAZARDOUS_FLUX_KG2MM2: f64 = 50.0;

/// Whether a drop is a small part: its body alone, its ring alone, or both together fit the cylinder.
///
/// Both together hold each of them, so they can fit only where each does: the two alone decide. An outline is taken as
/// the box round its picture, which is larger; the catalogue knows no finer outline. A body without a usable size
/// counts as small.
pub fn small_part(kind: &DropKind, gauge: Gauge) -> bool {
    Solid::of_ring(kind.ring).is_none_or(|ring| fits(&ring, gauge))
        || fits(&Solid::of_body(&kind.body, (kind.width.mm(), kind.height.mm())), gauge)
}

/// (surface field in kG)² × pole area in mm². Source: ASTM F963-17 §8.25, which 16 CFR 1262.4 cites (its wording from
/// memory).
pub fn flux_index_kg2mm2(magnet: &Magnet) -> f64 {
    magnet.surface_kilogauss.powi(2) * PI / 4.0 * magnet.pole_diameter.mm().powi(2)
}

/// Whether a magnet is hazardous, taking it that, once loose, it fits the cylinder, as magnets in drops do. A field or
/// pole that is no number counts as hazardous. Source: 16 CFR 1262.2(a).
pub fn is_hazardous(magnet: &Magnet) -> bool {
    let index = flux_index_kg2mm2(magnet);
    index.is_nan() || index >= HAZARDOUS_FLUX_KG2MM2
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::Length;

    /// Limits of 16 CFR 1262 with the index of ASTM F963; the values are computed from the formula.
    #[test]
    fn magnets_by_their_flux_index() {
        let magnet = |kilogauss, pole| Magnet { surface_kilogauss: kilogauss, pole_diameter: Length::from_mm(pole) };
        for (kilogauss, pole, index, hazardous) in
            [(2.0, 3.0, 28.2743, false), (1.5, 5.0, 44.1786, false), (3.0, 5.0, 176.7146, true)]
        {
            assert!((flux_index_kg2mm2(&magnet(kilogauss, pole)) - index).abs() < 1e-4);
            assert_eq!(is_hazardous(&magnet(kilogauss, pole)), hazardous);
        }
        for (pole, limit) in [(5.0, 1.59577), (3.0, 2.65962)] {
            assert!(!is_hazardous(&magnet(limit - 1e-5, pole)) && is_hazardous(&magnet(limit + 1e-5, pole)));
        }
        assert!(is_hazardous(&magnet(f64::NAN, 3.0)));
    }
}
