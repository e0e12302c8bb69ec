//! Judging single parts: small part, magnet.

use std::f64::consts::PI;

use serde::{Deserialize, Serialize};

use super::{
    Gauge, Size, Solid,
    gauge::{decide, fits},
};
use crate::craft::{Body, DropKind, Magnet, Material, Necklace};

/// How the parts of a drop stand to the test cylinder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct PartSize {
    /// Its ring alone.
    pub ring: Size,
    /// Its body alone.
    pub body: Size,
}

impl PartSize {
    /// Puts a drop's ring and its body into the cylinder.
    ///
    /// What consists of paper, silk or cotton alone is left out; where these are tied to something rigid, as a tassel to
    /// its cap, what is rigid is smaller than the whole by nobody knows how much. A ring or body without a usable size
    /// counts as small. Source of what is left out: 16 CFR 1501.4(b)(2).
    pub fn of(kind: &DropKind, gauge: Gauge) -> Self {
        let ring = Solid::of_ring(kind.ring).map_or(Size::Fits, |ring| decide(&ring, gauge));
        let all_left_out = !kind.materials.is_empty() && kind.materials.iter().all(|one| one.is_left_out());
        let tied = kind.materials.iter().any(|one| matches!(one, Material::Silk | Material::Cotton));
        let body = match () {
            () if all_left_out => Size::LeftOut,
            () => match decide(&Solid::of_body(&kind.body), gauge) {
                Size::TooLarge if tied => Size::Measure,
                size => size,
            },
        };
        Self { ring, body }
    }

    /// Whether the drop is a small part: its ring alone, its body alone, or both together fit, or may fit.
    ///
    /// Both together hold each of them, so they can fit only where each does: the two alone decide.
    pub fn is_small(self) -> bool {
        [self.ring, self.body].iter().any(|size| matches!(size, Size::Fits | Size::Measure))
    }

    /// What it is that fits, for the seller.
    pub const fn words(self) -> &'static str {
        use Size::{Fits, LeftOut, Measure, TooLarge};
        match (self.ring, self.body) {
            (Fits, Fits) => "Ring and body fit the test cylinder.",
            (Fits, Measure) => "The ring fits the test cylinder; the body is too close to call: measure it.",
            (Fits, TooLarge) => "The ring alone fits the test cylinder; the body does not.",
            (Fits, LeftOut) => "The ring fits the test cylinder; fabric and yarn are left out.",
            (_, Fits) => "The body alone fits the test cylinder; the ring does not.",
            (Measure, _) | (_, Measure) => "Too close to call: measure it against the test cylinder.",
            (_, TooLarge | LeftOut) => "Neither ring nor body fits the test cylinder.",
        }
    }
}

/// Whether a necklace without drops has small parts: its clasp, or the rings at its ends. Chain and cord are no rigid
/// bodies and are not tried: yarn and string are left out by the rule, and a metal chain goes in where its ends do.
pub fn has_small_ends(necklace: &Necklace, gauge: Gauge) -> bool {
    let rings = [necklace.end_ring, necklace.clasp.ring].map(Solid::of_ring);
    rings.into_iter().chain([Solid::of_clasp(&necklace.clasp)]).any(|part| part.is_none_or(|part| fits(&part, gauge)))
}

/// The smallest round hole, in millimetres, through which a round or egg-shaped body goes end first; `None` for bodies of
/// other forms, which are no balls. Source: 16 CFR 1500.19(a)(2) for the hole; that egg shapes count: from memory.
pub(super) fn ball_mm(body: &Body) -> Option<f64> {
    match *body {
        Body::Ball { diameter } => Some(diameter.mm()),
        // The solid of a rod no longer than it is thick is a ball.
        Body::Rod { diameter, length } if length <= diameter => Some(diameter.mm()),
        Body::Ellipsoid { width, depth, height } => {
            let mut axes = [width.mm(), depth.mm(), height.mm()];
            axes.sort_by(f64::total_cmp);
            Some(axes[1])
        }
        _ => None,
    }
}

/// (surface field in kG)² × pole area in mm². Source: ASTM F963-17 §8.25, which 16 CFR 1262.4 cites (its wording from
/// memory).
pub fn flux_index_kg2mm2(magnet: &Magnet) -> f64 {
    magnet.surface_kilogauss.powi(2) * PI / 4.0 * magnet.pole_diameter.mm().powi(2)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        caution::{Limit, Region, Rules},
        craft::Length,
    };

    /// Limits of 16 CFR 1262 with the index of ASTM F963; the values are computed from the formula.
    #[test]
    fn magnets_by_their_flux_index() {
        let us = Rules::of_region(Region::US).and_then(|rules| rules.of(crate::caution::CautionCode::Magnet)).unwrap();
        assert_eq!(us.limit, Limit::FluxBelow(50.0));
        let index = |surface_kilogauss, pole| {
            flux_index_kg2mm2(&Magnet { surface_kilogauss, pole_diameter: Length::from_mm(pole) })
        };
        println!("| kG | pole mm | index kG²mm² | hazardous |");
        for (kilogauss, pole, wanted, hazardous) in
            [(2.0, 3.0, 28.2743, false), (1.5, 5.0, 44.1786, false), (3.0, 5.0, 176.7146, true)]
        {
            let found = index(kilogauss, pole);
            println!("| {kilogauss} | {pole} | {found:.4} | {hazardous} |");
            assert!((found - wanted).abs() < 1e-4);
            assert_eq!(us.limit.is_broken_by(found), hazardous);
        }
        for (pole, limit) in [(5.0, 1.59577), (3.0, 2.65962)] {
            println!("| {limit} | {pole} | {:.4} | at the limit |", index(limit, pole));
            assert!(!us.limit.is_broken_by(index(limit - 1e-5, pole)));
            assert!(us.limit.is_broken_by(index(limit + 1e-5, pole)));
        }
    }
}
