//! A necklace at rest: an inextensible, perfectly flexible chain between two points, level or not, with a cluster
//! of drops that slides on it without friction.
//!
//! The tension at arc s is T = √(H² + V²) with one horizontal part H and a vertical part V that falls by the weight
//! passed. x and y follow in closed form (pieces of catenary). For a given place of the cluster, (H, V₀) is the
//! minimum of the convex function Φ(H, V₀) = ∫T ds − H·S − V₀·Y, with the right hang point at (S, Y), whose gradient is
//! the closing error: Newton's method with a line search finds it, and the minimum is the mass moment Σ m·(y − Y). The
//! cluster rests where its place has no influence on the energy any more, which is where the jumps of tension over its
//! rings add up to nothing.
//!
//! Sources: the pieces are the catenary with one horizontal tension of any textbook of statics (Beer & Johnston, Vector
//! Mechanics for Engineers, chapter 7; Irvine, Cable Structures, chapter 1, for a cable with point loads; both from
//! memory). Φ is Lagrange's: minus the energy, dual to the two closing conditions; derived here.

mod balance;
mod follow;
mod line;
mod segment;

use serde::{Deserialize, Serialize};

use self::{balance::balance, follow::Follow, line::Line, segment::Segment};
use super::{
    G, HangError,
    error::{finite, fitting, sound},
};

/// One drop on the chain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// Its mass in grams.
    pub mass_g: f64,
}

/// A chain with its drops.
#[derive(Debug, Clone, PartialEq)]
pub struct NecklaceLoad {
    /// Length of the chain between the hang points.
    pub front_length_mm: f64,
    /// Horizontal distance of the hang points.
    pub width_mm: f64,
    /// How much higher the right hang point is than the left one; below zero where it is lower.
    pub rise_mm: f64,
    /// Mass of the chain per length; may be zero only where drops hang.
    pub chain_g_per_mm: f64,
    /// The drops, left to right.
    pub loads: Vec<Load>,
    /// Arc distances of neighbouring rings.
    pub gaps_mm: Vec<f64>,
}

/// An end of the chain, or of a bangle's free arc.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Side {
    /// The left one.
    Left,
    /// The right one.
    Right,
}

/// A ring on the chain at rest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RingPlace {
    /// Arc from the left hang point, in millimetres.
    pub arc_mm: f64,
    /// How far to the right of that point, in millimetres.
    pub x_mm: f64,
    /// How far below that point, in millimetres.
    pub y_mm: f64,
    /// Mean slope dy/dx of the chain at the ring, positive when it falls to the right.
    pub slope: f64,
}

/// The rest shape.
#[derive(Debug, Clone, PartialEq)]
pub struct NecklaceRest {
    /// Length of the chain between the hang points.
    pub front_length_mm: f64,
    /// Horizontal distance of the hang points.
    pub width_mm: f64,
    /// Depth of the chain's lowest point below the lower hang point.
    pub sag_mm: f64,
    /// Depth of the chain's lowest point below the left hang point; the same as the sag between level hang points.
    pub lowest_mm: f64,
    /// The horizontal part of the tension, the same all along.
    pub horizontal_tension_mn: f64,
    /// The larger of the tensions at the hang points.
    pub end_tension_mn: f64,
    /// The rings, left to right.
    pub rings: Vec<RingPlace>,
    /// The end against which the cluster lies, if it found no balance between them. Its ring is then on the hang
    /// point itself, and the end's tension is that of the hang point, which carries the ring too.
    pub against: Option<Side>,
    segments: Vec<Segment>,
}

/// The rest shape of a necklace.
///
/// # Errors
/// Figures that are no lengths or weights, a chain that does not reach across, drops that have no room, a chain
/// without weight that would hang slack.
pub fn necklace(load: &NecklaceLoad) -> Result<NecklaceRest, HangError> {
    let length = sound("the chain's length", load.front_length_mm, false)?;
    let width = sound("the distance of the hang points", load.width_mm, false)?;
    let distance = width.hypot(finite("the rise of the hang points", load.rise_mm)?);
    let w = sound("the chain's weight", load.chain_g_per_mm, !load.loads.is_empty())?;
    let (loads, gaps) = (load.loads.len(), load.gaps_mm.len());
    if gaps != loads.saturating_sub(1) {
        return Err(HangError::Gaps { loads, gaps });
    }
    let mut mass = w * length;
    for one in &load.loads {
        mass += sound("a drop's weight", one.mass_g, false)?;
    }
    if length <= distance {
        return Err(HangError::TooShort { length_mm: length, distance_mm: distance });
    }
    let mut offsets = vec![0.0; loads];
    for (i, gap) in load.gaps_mm.iter().enumerate() {
        offsets[i + 1] = offsets[i] + sound("a gap", *gap, true)?;
    }
    let cluster = offsets.last().copied().unwrap_or(0.0);
    if cluster >= length {
        let fits = fitting(&load.gaps_mm, length);
        return Err(HangError::NoRoom { cluster_mm: cluster, room_mm: length, fits });
    }
    let line = Line { load, offsets: &offsets };
    let mut follow = Follow::new(&line, distance, mass);
    let (first, against) =
        if loads == 0 { (0.0, None) } else { balance(&mut |first| follow.push(first), length - cluster)? };
    let (h, v0) = follow.solve(first)?;
    Ok(shape(&line, first, h, v0, against))
}

fn shape(line: &Line<'_>, first: f64, h: f64, v0: f64, against: Option<Side>) -> NecklaceRest {
    let load = line.load;
    let w = load.chain_g_per_mm;
    let (mut arc, mut x, mut y, mut v) = (0.0, 0.0, 0.0, v0);
    let mut rings = Vec::with_capacity(load.loads.len());
    let mut segments = Vec::with_capacity(load.loads.len() + 1);
    // The left hang point is the lowest until a lower one is found.
    let mut lowest = 0.0f64;
    for (length, mass) in line.pieces(first) {
        let segment = Segment { arc, length, x, y, v, h, w };
        // The lowest point of a piece is where its vertical part vanishes.
        if v > 0.0 && v < w * length {
            lowest = lowest.max(segment.at(v / w).1);
        }
        (x, y) = segment.at(length);
        lowest = lowest.max(y);
        arc += length;
        segments.push(segment);
        let end = v - w * length;
        v = end - mass;
        if mass > 0.0 {
            rings.push(RingPlace { arc_mm: arc, x_mm: x, y_mm: y, slope: (end + v) / (2.0 * h) });
        }
    }
    let force = |grams: f64| grams * G;
    NecklaceRest {
        front_length_mm: load.front_length_mm,
        width_mm: load.width_mm,
        sag_mm: (lowest + load.rise_mm.min(0.0)).max(0.0),
        lowest_mm: lowest,
        horizontal_tension_mn: force(h),
        end_tension_mn: force(h.hypot(v0).max(h.hypot(v))),
        rings,
        against,
        segments,
    }
}

impl NecklaceRest {
    /// x and y of the chain after `arc_mm` from the left hang point.
    pub fn point_at(&self, arc_mm: f64) -> (f64, f64) {
        let arc = arc_mm.clamp(0.0, self.front_length_mm);
        let i = self.segments.partition_point(|segment| segment.arc + segment.length < arc);
        match self.segments.get(i).or(self.segments.last()) {
            Some(segment) => segment.at((arc - segment.arc).min(segment.length)),
            None => (0.0, 0.0),
        }
    }

    /// `n` points at even arcs along the whole front, hang points included.
    pub fn polyline(&self, n: usize) -> Vec<(f64, f64)> {
        let last = n.saturating_sub(1).max(1) as f64;
        (0..n).map(|i| self.point_at(self.front_length_mm * i as f64 / last)).collect()
    }
}

#[cfg(test)]
mod descent;
#[cfg(test)]
mod tests;
