//! Judging single parts: small part, magnet.

use std::f64::consts::PI;

use serde::{Deserialize, Serialize};

use super::{Gauge, Size, Solid, gauge::decide};
use crate::craft::{Bangle, Body, DropKind, Length, Magnet, Necklace, Ring};

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
    /// its cap, what is rigid is smaller than the whole by nobody knows how much. Nor does anybody know how much smaller
    /// than its picture a drop is that was not cut out of it. A ring or body without a usable size counts as small. Source of what is left out: 16 CFR 1501.4(b)(2).
    pub fn of(kind: &DropKind, gauge: Gauge) -> Self {
        let ring = Solid::of_ring(kind.ring).map_or(Size::Fits, |ring| decide(&ring, gauge));
        let all_left_out = !kind.materials.is_empty() && kind.materials.iter().all(|one| one.is_left_out());
        let tied = kind.materials.iter().any(|one| one.is_left_out());
        let not_cut_out = matches!(&kind.body, Body::Outline { shape: Some(shape), .. } if !shape.cut_out);
        let body = match () {
            () if all_left_out => Size::LeftOut,
            () => match decide(&Solid::of_body(&kind.body), gauge) {
                Size::TooLarge if tied || not_cut_out => Size::Measure,
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
    pub fn words(self) -> String {
        let of = |size| match size {
            Size::Fits => "fits the test cylinder",
            Size::Measure => "is too close to call: measure it against the test cylinder",
            Size::TooLarge => "does not fit the test cylinder",
            Size::LeftOut => "is left out, as paper, fabric and yarn are",
        };
        match self {
            Self { ring: Size::Fits, body: Size::Fits } => "Ring and body fit the test cylinder.".to_owned(),
            Self { ring, body } => format!("The ring {}; the body {}.", of(ring), of(body)),
        }
    }
}

/// How the rigid parts of a necklace without drops stand to the cylinder, its clasp and the rings at its ends: as the
/// smallest of them does. Chain and cord are no rigid bodies and are not tried: yarn and string are left out by the rule,
/// and a metal chain goes in where its ends do.
pub(super) fn size_of_ends(necklace: &Necklace, gauge: Gauge) -> Size {
    let rings = [necklace.end_ring, necklace.clasp.ring].map(Solid::of_ring);
    let parts = rings.into_iter().chain([Solid::of_clasp(&necklace.clasp)]);
    let sizes: Vec<Size> = parts.map(|part| part.map_or(Size::Fits, |part| decide(&part, gauge))).collect();
    let smallest = [Size::Fits, Size::Measure].into_iter().find(|size| sizes.contains(size));
    smallest.unwrap_or(Size::TooLarge)
}

/// How a bangle stands to the cylinder: rigid, so it counts as its hull.
pub(super) fn size_of_hoop(bangle: &Bangle, gauge: Gauge) -> Size {
    let outside = Length::from_mm(bangle.inside.mm() + 2.0 * bangle.wire.mm());
    Solid::of_ring(Ring { outside, wire: bangle.wire }).map_or(Size::Fits, |hoop| decide(&hoop, gauge))
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

    #[test]
    fn the_seller_is_told_which_part_fits() {
        use Size::{Fits, LeftOut, Measure, TooLarge};
        for ring in [Fits, Measure, TooLarge, LeftOut] {
            for body in [Fits, Measure, TooLarge, LeftOut] {
                let words = PartSize { ring, body }.words();
                println!("{ring:?} {body:?}: {words}");
                if (ring, body) == (Fits, Fits) {
                    assert_eq!(words, "Ring and body fit the test cylinder.");
                    continue;
                }
                let (of_ring, of_body) = words.split_once("; the body ").unwrap();
                for (size, said) in [(ring, of_ring), (body, of_body)] {
                    assert_eq!(said.contains(" fits ") || said.starts_with("fits "), size == Fits, "{words}");
                    assert_eq!(said.contains("measure it"), size == Measure, "{words}");
                    assert_eq!(said.contains("does not fit"), size == TooLarge, "{words}");
                    assert_eq!(said.contains("left out"), size == LeftOut, "{words}");
                }
            }
        }
    }

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
