//! Judging single parts: small part, magnet.

use std::f64::consts::PI;

use serde::{Deserialize, Serialize};

use super::{Gauge, Size, Solid, gauge::decide};
use crate::craft::{Base, BaseKind, Body, DropKind, Facts, Guess, Length, Look, Magnet, Ring};

/// How the rigid parts of a drop or base stand to the test cylinder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct PartSize {
    /// Its ring alone; of a necklace the smallest of its end rings.
    pub ring: Size,
    /// Its body alone; of a necklace its clasp, of a bangle the whole hoop.
    pub body: Size,
    /// The smallest of what can come off it, if anything can.
    #[serde(default)]
    pub off: Option<Size>,
}

impl PartSize {
    /// Puts a drop's ring, its body and what comes off it into the cylinder, as delivered.
    ///
    /// Soft things go in like rigid ones, without being squeezed: 16 CFR 1501.4(b)(1) tests the article as delivered and
    /// makes no exception for them. Where paper, silk, cotton or wool is part of a drop too large to fit, what is rigid in
    /// it, such as a tassel's cap, is smaller than the whole by nobody knows how much. Nor does anybody know how much
    /// smaller than its picture a drop is that was not cut out of it, or than a size that was guessed. A ring or body without
    /// a usable size counts as small.
    ///
    /// Of an assortment, any piece may be the one that hangs: the smallest decides, told by its body or seen in a look. A look
    /// of which the outline is not known is smaller than it seems by nobody knows how much.
    pub fn of(kind: &DropKind, gauge: Gauge) -> Self {
        let is_guess = |guesses: &[Guess]| guesses.iter().any(|guess| kind.guessed.contains(guess));
        let ring = Solid::of_ring(kind.ring).map_or(Size::Fits, |ring| decide(&ring, gauge));
        let ring = unless_told(ring, is_guess(&[Guess::Ring]));
        let soft = kind.facts.materials.iter().any(|one| one.is_soft());
        let not_cut_out = matches!(&kind.body, Body::Outline { shape: Some(shape), .. } if !shape.cut_out);
        let body = match decide(&Solid::of_body(&kind.body), gauge) {
            Size::TooLarge if soft || not_cut_out => Size::Measure,
            // The body of an assortment's smallest piece is no matter of how large the largest is.
            size if kind.is_assortment() => unless_told(size, is_guess(&[Guess::Body])),
            size => unless_told(size, is_guess(&[Guess::Body, Guess::Width, Guess::Height])),
        };
        // What is small already is not tried again: one piece is enough.
        let mut looks = kind.looks().iter().filter(|_| body == Size::TooLarge).map(|look| of_look(look, gauge));
        let body = looks.find(|size| *size != Size::TooLarge).unwrap_or(body);
        Self { ring, body, off: smallest_off(&kind.facts, gauge) }
    }

    /// Puts the rigid parts of a base into the cylinder. Of a necklace: its clasp, the rings at its ends and what comes
    /// off it. Chain and cord are no rigid bodies and are not tried: a metal chain goes in where its ends do. A bangle is
    /// rigid as a whole and counts as its hull.
    pub fn of_base(base: &Base, gauge: Gauge) -> Self {
        let size = |solid: Option<Solid>| solid.map_or(Size::Fits, |solid| decide(&solid, gauge));
        let is_guess = |guess| base.guessed.contains(&guess);
        let off = smallest_off(&base.facts, gauge);
        match &base.kind {
            BaseKind::Necklace(necklace) => {
                let rings = [necklace.end_ring, necklace.clasp.ring].map(|ring| size(Solid::of_ring(ring)));
                let ring = unless_told(rings[0].min(rings[1]), is_guess(Guess::EndRing) || is_guess(Guess::Clasp));
                let body = unless_told(size(Solid::of_clasp(&necklace.clasp)), is_guess(Guess::Clasp));
                Self { ring, body, off }
            }
            BaseKind::Bangle(bangle) => {
                let outside = Length::from_mm(bangle.inside.mm() + 2.0 * bangle.wire.mm());
                let hoop = size(Solid::of_ring(Ring { outside, wire: bangle.wire }));
                let hoop = unless_told(hoop, is_guess(Guess::Inside) || is_guess(Guess::Wire));
                Self { ring: hoop, body: hoop, off }
            }
        }
    }

    /// Whether it is a small part: its ring alone, its body alone, both together or what comes off fit, or may fit.
    ///
    /// Both together hold each of them, so they can fit only where each does: the two alone decide.
    pub fn is_small(self) -> bool {
        [Some(self.ring), Some(self.body), self.off].iter().flatten().any(|size| *size != Size::TooLarge)
    }

    /// What of a drop it is that fits, for the seller.
    pub fn words(self) -> String {
        let of = |size| match size {
            Size::Fits => "fits the test cylinder",
            Size::Measure => "is too close to call: measure it against the test cylinder",
            Size::TooLarge => "does not fit the test cylinder",
        };
        let whole = match self {
            Self { ring: Size::Fits, body: Size::Fits, .. } => "Ring and body fit the test cylinder.".to_owned(),
            Self { ring, body, .. } => format!("The ring {}; the body {}.", of(ring), of(body)),
        };
        match self.off {
            Some(off @ (Size::Fits | Size::Measure)) => format!("{whole} What comes off {}.", of(off)),
            _ => whole,
        }
    }
}

/// So thin, in millimetres, a piece is taken to be of which only the outline is known: it holds a sheet of that form, and what
/// is too large as a sheet is too large.
const SHEET: Length = Length::from_mm(0.1);

/// How a piece of an assortment stands to the cylinder, as far as its look tells.
fn of_look(look: &Look, gauge: Gauge) -> Size {
    match &look.shape {
        Some(shape) if shape.cut_out => {
            decide(&Solid::of_body(&Body::Outline { thickness: SHEET, shape: Some(shape.clone()) }), gauge)
        }
        _ => Size::Measure,
    }
}

/// What a size comes to where it `is_guess`: what seems too large may be smaller than that.
fn unless_told(size: Size, is_guess: bool) -> Size {
    if is_guess && size == Size::TooLarge { Size::Measure } else { size }
}

/// The smallest of what can come off a part, as it stands to the cylinder.
fn smallest_off(facts: &Facts, gauge: Gauge) -> Option<Size> {
    facts.comes_off.iter().map(|body| decide(&Solid::of_body(body), gauge)).min()
}

/// Whether a round or egg-shaped body is too large for the cylinder.
pub(super) fn is_ball_beyond_the_cylinder(body: &Body, gauge: Gauge) -> bool {
    ball_mm(body).is_some() && decide(&Solid::of_body(body), gauge) == Size::TooLarge
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

/// (surface field in kG)² × pole area in mm²; none where one of the two is not known. Source: ASTM F963-17 §8.25, which
/// 16 CFR 1262.4 cites (its wording from memory).
pub fn flux_index_kg2mm2(magnet: &Magnet) -> Option<f64> {
    let (surface_kilogauss, pole) = magnet.surface_kilogauss.zip(magnet.pole_diameter)?;
    Some(surface_kilogauss.powi(2) * PI / 4.0 * pole.mm().powi(2))
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
        use Size::{Fits, Measure, TooLarge};
        for ring in [Fits, Measure, TooLarge] {
            for body in [Fits, Measure, TooLarge] {
                let words = PartSize { ring, body, off: None }.words();
                let with_off = PartSize { ring, body, off: Some(Fits) };
                assert!(with_off.is_small() && with_off.words().contains("What comes off fits the test cylinder."));
                assert_eq!(PartSize { ring, body, off: Some(TooLarge) }.words(), words);
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
            flux_index_kg2mm2(&Magnet::measured(surface_kilogauss, Length::from_mm(pole))).unwrap()
        };
        assert_eq!(flux_index_kg2mm2(&Magnet::UNKNOWN), None);
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
