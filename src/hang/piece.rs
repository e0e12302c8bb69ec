//! Where everything of a piece is: what the stage, the picture on a ticket and the desk all draw from.

use serde::{Deserialize, Serialize};

use super::{
    BangleLoad, HangError, Load, NecklaceLoad, Side, WRIST_GRIP, bangle, cluster_gaps, front_of_body, necklace,
};
use crate::craft::{Bangle, Base, BaseKind, DropKind, Length, Necklace};

/// A place in millimetres: x to the right, y downwards. A necklace's left hang point, or the middle of a bangle, is (0, 0).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Point {
    /// How far to the right, in millimetres.
    pub x_mm: f64,
    /// How far down, in millimetres.
    pub y_mm: f64,
}

/// Where a drop's ring sits on the base.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct RingAt {
    /// The chain's or wire's centre line under the ring, to the right.
    pub x_mm: f64,
    /// The same, downwards.
    pub y_mm: f64,
    /// Slope of the base there, in radians, positive when it falls to the right.
    pub slope_rad: f64,
    /// How far the drop leans from hanging straight down, in radians; it is zero at rest.
    pub lean_rad: f64,
}

/// The smallest upright rectangle round a piece.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Bounds {
    /// The leftmost x, in millimetres.
    pub left_mm: f64,
    /// The topmost y, in millimetres.
    pub top_mm: f64,
    /// The rightmost x, in millimetres.
    pub right_mm: f64,
    /// The lowest y, in millimetres.
    pub bottom_mm: f64,
}

/// Where a bangle is.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct BangleAt {
    /// The middle of the ring.
    pub centre: Point,
    /// Inside radius in millimetres.
    pub inside_radius_mm: f64,
    /// Diameter of its wire.
    pub wire_mm: f64,
}

/// A whole piece at rest.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PiecePlaces {
    /// The front of the chain, a point for every link's pitch, left to right; empty for a bangle.
    pub chain: Vec<Point>,
    /// The chain behind the neck, from the right hang point round to the left one; empty for a bangle.
    pub back: Vec<Point>,
    /// The rings, in the order of the drops.
    pub rings: Vec<RingAt>,
    /// Everything, drops included.
    pub bounds: Bounds,
    /// The bangle, if it is one.
    pub bangle: Option<BangleAt>,
    /// The lowest point of chain or drops.
    pub lowest_mm: f64,
    /// The end that the drops lie against where they found no balance between the ends: a hang point of the chain, or
    /// the end of a bangle's free arc.
    pub against: Option<Side>,
    /// How far a bangle has turned, as [`super::BangleRest::turn_deg`] counts it; zero for a necklace.
    pub turn_deg: f64,
}

/// Places `kinds`, left to right, on `base`.
///
/// `length` is a necklace's whole length (its usual one if `None`), `neck_mm` the neck it hangs on, `rho` how far
/// neighbouring bodies overlap.
///
/// # Errors
/// The necklace is too short for the neck, or the drops are more than the base has room for.
pub fn place_piece(
    base: &Base,
    length: Option<Length>,
    kinds: &[&DropKind],
    neck_mm: f64,
    rho: f64,
) -> Result<PiecePlaces, HangError> {
    match &base.kind {
        BaseKind::Necklace(n) => {
            let front_and_width = front_of_body(length.unwrap_or(n.lengths.usual).mm(), neck_mm)?;
            place_necklace(n, kinds, &necklace_load(n, kinds, rho, front_and_width))
        }
        BaseKind::Bangle(b) => place_bangle(b, kinds, rho),
    }
}

/// How far below the base's centre line, under its ring, a drop's lowest point is.
pub fn reach_mm(kind: &DropKind) -> f64 {
    kind.ring.hangs_mm() + kind.height.mm()
}

fn gaps(kinds: &[&DropKind], rho: f64) -> Vec<f64> {
    let items: Vec<(f64, f64)> = kinds.iter().map(|kind| (kind.ring.wire.mm(), kind.width.mm())).collect();
    cluster_gaps(&items, rho)
}

/// `kinds` on a chain whose front and width between level hang points, in millimetres, are these.
pub fn necklace_load(base: &Necklace, kinds: &[&DropKind], rho: f64, (front, width): (f64, f64)) -> NecklaceLoad {
    NecklaceLoad {
        front_length_mm: front,
        width_mm: width,
        rise_mm: 0.0,
        chain_g_per_mm: base.chain.g_per_mm(),
        loads: kinds.iter().map(|kind| Load { mass_g: kind.weight.g() }).collect(),
        gaps_mm: gaps(kinds, rho),
    }
}

/// `kinds` on a bangle on a wrist.
pub fn bangle_load(base: &Bangle, kinds: &[&DropKind], rho: f64) -> BangleLoad {
    BangleLoad {
        inside_mm: base.inside.mm(),
        free_arc_deg: base.free_arc_deg,
        ring_g: base.weight.g(),
        hook_g: base.hook_weight.g(),
        grip: WRIST_GRIP,
        masses_g: kinds.iter().map(|kind| kind.weight.g()).collect(),
        gaps_mm: gaps(kinds, rho),
    }
}

fn around(points: impl Iterator<Item = Point>, rings: &[RingAt], kinds: &[&DropKind], margin_mm: f64) -> Bounds {
    let mut b = Bounds {
        left_mm: f64::INFINITY,
        top_mm: f64::INFINITY,
        right_mm: f64::NEG_INFINITY,
        bottom_mm: f64::NEG_INFINITY,
    };
    let mut take = |left: f64, top: f64, right: f64, bottom: f64| {
        b.left_mm = b.left_mm.min(left);
        b.top_mm = b.top_mm.min(top);
        b.right_mm = b.right_mm.max(right);
        b.bottom_mm = b.bottom_mm.max(bottom);
    };
    for p in points {
        take(p.x_mm - margin_mm, p.y_mm - margin_mm, p.x_mm + margin_mm, p.y_mm + margin_mm);
    }
    for (ring, kind) in rings.iter().zip(kinds) {
        let half = kind.width.mm().max(kind.ring.outside.mm()) / 2.0;
        take(ring.x_mm - half, ring.y_mm - kind.ring.wire.mm(), ring.x_mm + half, ring.y_mm + reach_mm(kind));
    }
    b
}

/// How many links a chain's front has.
pub(super) fn links_in(base: &Necklace, front_length_mm: f64) -> usize {
    (front_length_mm / base.pitch_mm()).round().max(8.0) as usize
}

fn place_necklace(base: &Necklace, kinds: &[&DropKind], load: &NecklaceLoad) -> Result<PiecePlaces, HangError> {
    let rest = necklace(load)?;
    let links = links_in(base, load.front_length_mm);
    let pitch_mm = load.front_length_mm / links as f64;
    let chain: Vec<Point> = rest.polyline(links + 1).into_iter().map(|(x_mm, y_mm)| Point { x_mm, y_mm }).collect();
    let rings: Vec<RingAt> = rest
        .rings
        .iter()
        .map(|ring| RingAt { x_mm: ring.x_mm, y_mm: ring.y_mm, slope_rad: ring.slope.atan(), lean_rad: 0.0 })
        .collect();
    // Behind the neck the chain lies on half of it; from the front that half is a flat arc.
    let radius = load.width_mm / 2.0;
    let back_links = (2.2 * radius / pitch_mm).round().max(8.0) as u32;
    let back: Vec<Point> = (0..=back_links)
        .map(|i| std::f64::consts::PI * f64::from(i) / f64::from(back_links))
        .map(|angle| Point { x_mm: radius + radius * angle.cos(), y_mm: -0.22 * radius * angle.sin() })
        .collect();
    let bounds = around(chain.iter().chain(&back).copied(), &rings, kinds, base.link_width.mm() / 2.0);
    let (lowest_mm, against) = (bounds.bottom_mm, rest.against);
    Ok(PiecePlaces { chain, back, rings, bounds, bangle: None, lowest_mm, against, turn_deg: 0.0 })
}

fn place_bangle(base: &Bangle, kinds: &[&DropKind], rho: f64) -> Result<PiecePlaces, HangError> {
    let inside_radius_mm = base.inside.mm() / 2.0;
    let rest = bangle(&bangle_load(base, kinds, rho))?;
    let line = inside_radius_mm + base.wire.mm() / 2.0;
    let rings: Vec<RingAt> = rest
        .angles_deg
        .iter()
        .map(|degrees| degrees.to_radians())
        .map(|angle| RingAt { x_mm: line * angle.sin(), y_mm: line * angle.cos(), slope_rad: -angle, lean_rad: 0.0 })
        .collect();
    let outside = line + base.wire.mm() / 2.0;
    let corners = [Point { x_mm: -outside, y_mm: -outside }, Point { x_mm: outside, y_mm: outside }];
    let bounds = around(corners.into_iter(), &rings, kinds, 0.0);
    let bangle = BangleAt { centre: Point { x_mm: 0.0, y_mm: 0.0 }, inside_radius_mm, wire_mm: base.wire.mm() };
    Ok(PiecePlaces {
        chain: vec![],
        back: vec![],
        rings,
        bounds,
        bangle: Some(bangle),
        lowest_mm: bounds.bottom_mm,
        against: rest.against,
        turn_deg: rest.turn_deg,
    })
}

#[cfg(test)]
mod tests;
