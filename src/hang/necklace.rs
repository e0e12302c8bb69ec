//! A necklace at rest: an inextensible, perfectly flexible chain between two level points, with a cluster of drops
//! that slides on it without friction.
//!
//! The tension at arc s is T = √(H² + V²) with one horizontal part H and a vertical part V that falls by the weight
//! passed. x and y follow in closed form (pieces of catenary). For a given place of the cluster, (H, V₀) is the
//! minimum of the convex function Φ(H, V₀) = ∫T ds − H·S, whose gradient is the closing error: Newton's method with
//! a line search finds it. The cluster rests where its place has no influence on the energy any more, which is where
//! the jumps of tension over its rings add up to nothing.

use super::{
    G, HangError,
    error::{fitting, sound},
};

/// One drop on the chain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// Its mass.
    pub mass_g: f64,
}

/// A chain with its drops.
#[derive(Debug, Clone, PartialEq)]
pub struct NecklaceLoad {
    /// Length of the chain between the hang points.
    pub front_length_mm: f64,
    /// Distance of the hang points.
    pub width_mm: f64,
    /// Mass of the chain per length; may be zero only where drops hang.
    pub chain_g_per_mm: f64,
    /// The drops, left to right.
    pub loads: Vec<Load>,
    /// Arc distances of neighbouring rings.
    pub gaps_mm: Vec<f64>,
}

/// An end of the chain.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The left hang point.
    Left,
    /// The right hang point.
    Right,
}

/// A ring on the chain at rest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RingPlace {
    /// Arc from the left hang point.
    pub arc_mm: f64,
    /// To the right of it.
    pub x_mm: f64,
    /// Below it.
    pub y_mm: f64,
    /// Mean slope dy/dx of the chain at the ring, positive when it falls to the right.
    pub slope: f64,
}

/// The rest shape.
#[derive(Debug, Clone, PartialEq)]
pub struct NecklaceRest {
    /// Length of the chain between the hang points.
    pub front_length_mm: f64,
    /// Distance of the hang points.
    pub width_mm: f64,
    /// Depth of the lowest point of the chain.
    pub sag_mm: f64,
    /// The horizontal part of the tension, the same all along.
    pub horizontal_tension_mn: f64,
    /// The larger of the tensions at the hang points.
    pub end_tension_mn: f64,
    /// The rings, left to right.
    pub rings: Vec<RingPlace>,
    /// The end against which the cluster lies, if it found no balance between them.
    pub against: Option<Side>,
    segments: Vec<Segment>,
}

/// A piece of chain without a ring inside it.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Segment {
    arc: f64,
    length: f64,
    x: f64,
    y: f64,
    /// Vertical part of the tension at its beginning, as a mass in grams; positive where the chain falls.
    v: f64,
    /// Horizontal part, as a mass in grams.
    h: f64,
    /// Chain mass per length.
    w: f64,
}

impl Segment {
    /// x and y after `s` of it.
    fn at(&self, s: f64) -> (f64, f64) {
        let (dx, dy) = advance(self.h, self.v, self.w, s);
        (self.x + dx, self.y + dy)
    }
}

/// How far a piece of length `s` goes in x and y, with horizontal part `h` and vertical part `v` at its beginning.
fn advance(h: f64, v: f64, w: f64, s: f64) -> (f64, f64) {
    let end = v - w * s;
    let (t0, t1) = (h.hypot(v), h.hypot(end));
    let total = t0 + t1;
    if total == 0.0 {
        return (0.0, 0.0);
    }
    // (T₀ − T₁)/w and (asinh(V₀/H) − asinh(V₁/H))·H/w, written so that a light chain loses no digits.
    let dy = s * (v + end) / total;
    let chord = w * s / total;
    // asinh a − asinh b = 2 atanh(Δ/(…)); with T₀ + T₁ the identity is tanh((A − B)/2) = (V₀ − V₁)/(T₀ + T₁).
    let dx = if chord.abs() < 1e-5 {
        2.0 * h * s / total * (1.0 + chord * chord / 3.0)
    } else {
        2.0 * h / w * chord.atanh()
    };
    (dx, dy)
}

/// Rings and chain for one place of the cluster.
struct Line<'a> {
    load: &'a NecklaceLoad,
    /// Arcs of the rings relative to the first.
    offsets: &'a [f64],
}

/// Gradient and curvature of Φ.
struct Closing {
    x: f64,
    y: f64,
    hh: f64,
    hv: f64,
    vv: f64,
    /// ∫T ds
    energy: f64,
}

impl Line<'_> {
    /// Every piece of chain as (length, mass passed at its end).
    fn pieces(&self, first: f64) -> impl Iterator<Item = (f64, f64)> + '_ {
        let n = self.offsets.len();
        let arc = move |i: usize| first + self.offsets[i];
        (0..=n).map(move |i| {
            let start = if i == 0 { 0.0 } else { arc(i - 1) };
            let end = if i == n { self.load.front_length_mm } else { arc(i) };
            let mass = if i == n { 0.0 } else { self.load.loads[i].mass_g };
            (end - start, mass)
        })
    }

    fn closing(&self, first: f64, h: f64, v0: f64) -> Closing {
        let w = self.load.chain_g_per_mm;
        let mut c = Closing { x: 0.0, y: 0.0, hh: 0.0, hv: 0.0, vv: 0.0, energy: 0.0 };
        let mut v = v0;
        for (s, mass) in self.pieces(first) {
            let end = v - w * s;
            let (t0, t1) = (h.hypot(v), h.hypot(end));
            let (dx, dy) = advance(h, v, w, s);
            c.x += dx;
            c.y += dy;
            // Second derivatives: ∫ V²/T³, −∫ HV/T³, ∫ H²/T³ ds.
            let (a, b, hh) = if w * s > 1e-6 * (t0 + t1) {
                // ∫ H²/T³ ds = (V₀/T₀ − V₁/T₁)/w, ∫ HV/T³ ds = H (1/T₁ − 1/T₀)/w, ∫ V²/T³ = ∫ 1/T − ∫ H²/T³
                let a = (v / t0 - end / t1) / w;
                (a, h * (1.0 / t1 - 1.0 / t0) / w, dx / h - a)
            } else {
                // Nearly straight: the middle's value, whose error is of the second order in w s / T.
                let (t, mid) = ((t0 + t1) / 2.0, (v + end) / 2.0);
                let share = s / (t * t * t);
                (share * h * h, share * h * mid, share * mid * mid)
            };
            c.vv += a;
            c.hv -= b;
            c.hh += hh;
            c.energy += tension_integral(h, v, end, t0, t1, s, dx);
            v = end - mass;
        }
        c
    }

    /// (H, V₀) for the cluster at `first`, from a guess.
    fn solve(&self, first: f64, guess: (f64, f64)) -> Result<(f64, f64), HangError> {
        let span = self.load.width_mm;
        let (mut h, mut v) = guess;
        let mut now = self.closing(first, h, v);
        let done = 1e-13 * self.load.front_length_mm;
        for _ in 0..200 {
            let (gx, gy) = (now.x - span, now.y);
            if gx.abs() <= done && gy.abs() <= done {
                return Ok((h, v));
            }
            let det = now.hh * now.vv - now.hv * now.hv;
            if !(det.is_finite() && det > 0.0) {
                return Err(HangError::NoShape);
            }
            let (dh, dv) = ((gy * now.hv - gx * now.vv) / det, (gx * now.hv - gy * now.hh) / det);
            let slope = gx * dh + gy * dv;
            let phi = now.energy - h * span;
            let mut step = 1.0;
            // H stays above zero: a chain does not push.
            while h + step * dh <= 0.0 {
                step *= 0.5;
            }
            let mut moved = false;
            for _ in 0..60 {
                let (h1, v1) = (h + step * dh, v + step * dv);
                let next = self.closing(first, h1, v1);
                // Φ falls; or, where its last digits no longer tell, the closing error does.
                let error = (next.x - span).abs() + next.y.abs();
                if next.energy - h1 * span < phi + 1e-4 * step * slope || error < 0.5 * (gx.abs() + gy.abs()) {
                    (h, v, now, moved) = (h1, v1, next, true);
                    break;
                }
                step *= 0.5;
            }
            if !moved {
                break;
            }
        }
        // The last digits may not be reachable where forces differ by many orders; a thousandth of a hair is enough.
        let close = 1e-10 * self.load.front_length_mm;
        if (now.x - span).abs() <= close && now.y.abs() <= close { Ok((h, v)) } else { Err(HangError::NoShape) }
    }

    /// Sum of the tension's jumps over the rings: what pushes the cluster to the right.
    fn push(&self, first: f64, h: f64, v0: f64) -> f64 {
        let w = self.load.chain_g_per_mm;
        let mut v = v0;
        let mut sum = 0.0;
        for (s, mass) in self.pieces(first) {
            let end = v - w * s;
            let after = end - mass;
            // T after − T before, without cancellation.
            let (t0, t1) = (h.hypot(end), h.hypot(after));
            sum += (after - end) * (after + end) / (t0 + t1);
            v = after;
        }
        -sum
    }
}

/// ∫T ds over a piece, for the line search only.
fn tension_integral(h: f64, v: f64, end: f64, t0: f64, t1: f64, s: f64, dx: f64) -> f64 {
    // ∫T ds = (V₀T₀ − V₁T₁)/(2w) + H·dx/2, and V₀ − V₁ = w s.
    let drop = v - end;
    if drop.abs() > 1e-6 * (t0 + t1) {
        s * (v * t0 - end * t1) / (2.0 * drop) + h * dx / 2.0
    } else {
        s * (t0 + t1) / 2.0
    }
}

/// The rest shape of a necklace.
///
/// # Errors
/// Figures that are no lengths or weights, a chain that does not reach across, drops that have no room.
pub fn necklace(load: &NecklaceLoad) -> Result<NecklaceRest, HangError> {
    let length = sound("the chain's length", load.front_length_mm, false)?;
    let width = sound("the distance of the hang points", load.width_mm, false)?;
    let w = sound("the chain's weight", load.chain_g_per_mm, !load.loads.is_empty())?;
    let (loads, gaps) = (load.loads.len(), load.gaps_mm.len());
    if gaps != loads.saturating_sub(1) {
        return Err(HangError::Gaps { loads, gaps });
    }
    let mut mass = w * length;
    for one in &load.loads {
        mass += sound("a drop's weight", one.mass_g, false)?;
    }
    if length <= width {
        return Err(HangError::TooShort { length_mm: length, width_mm: width });
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
    // Half the weight on either side, at the angle of a taut V.
    let leg = width / (length * length - width * width).sqrt();
    let fresh = (mass / 2.0 * leg.clamp(1e-3, 1e3), mass / 2.0);
    let mut guess = fresh;
    let mut push_at = |first: f64| -> Result<f64, HangError> {
        // The last solution is near the next one; where it leads astray, start afresh.
        guess = line.solve(first, guess).or_else(|_| line.solve(first, fresh))?;
        Ok(line.push(first, guess.0, guess.1))
    };
    let (first, against) = if loads == 0 { (0.0, None) } else { balance(&mut push_at, length - cluster)? };
    let (h, v0) = line.solve(first, guess).or_else(|_| line.solve(first, fresh))?;
    Ok(shape(&line, first, h, v0, against))
}

/// The place of the first ring at which nothing pushes the cluster, or the end it lies against.
///
/// Far to one side a leg would have to push, and there is no shape with tension throughout; there the cluster
/// slides back towards the places where there is one.
fn balance(
    push_at: &mut impl FnMut(f64) -> Result<f64, HangError>,
    room: f64,
) -> Result<(f64, Option<Side>), HangError> {
    let mut start = None;
    for share in [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8] {
        if let Ok(push) = push_at(share * room) {
            start = Some((share * room, push));
            break;
        }
    }
    let (start, push) = start.ok_or(HangError::NoShape)?;
    // A ring at the very hang point has no chain on one side; a hundred-thousandth beside it is as good.
    let edge = room * 1e-5;
    let (mut low, mut high) = (edge, room - edge);
    let (mut at_low, mut at_high) = (f64::INFINITY, f64::NEG_INFINITY);
    let mut last = 0i8;
    let (mut mid, mut push) = (start, push);
    for _ in 0..300 {
        if push > 0.0 {
            (low, at_low) = (mid, push);
            at_high *= if last == 1 { 0.5 } else { 1.0 };
            last = 1;
        } else {
            (high, at_high) = (mid, push);
            at_low *= if last == -1 { 0.5 } else { 1.0 };
            last = -1;
        }
        if push == 0.0 || high - low <= 1e-14 * room {
            break;
        }
        // Regula falsi with the Illinois rule once both ends are known, halving before.
        mid = if at_low.is_finite() && at_high.is_finite() {
            ((low * at_high - high * at_low) / (at_high - at_low)).clamp(low, high)
        } else {
            (low + high) / 2.0
        };
        if mid <= low || mid >= high {
            break;
        }
        push = push_at(mid).unwrap_or(if mid < start { f64::INFINITY } else { f64::NEG_INFINITY });
    }
    let against = match (mid <= 2.0 * edge, mid >= room - 2.0 * edge) {
        (true, _) => Some(Side::Left),
        (_, true) => Some(Side::Right),
        _ => None,
    };
    Ok((mid, against))
}

fn shape(line: &Line<'_>, first: f64, h: f64, v0: f64, against: Option<Side>) -> NecklaceRest {
    let load = line.load;
    let w = load.chain_g_per_mm;
    let (mut arc, mut x, mut y, mut v) = (0.0, 0.0, 0.0, v0);
    let mut rings = Vec::with_capacity(load.loads.len());
    let mut segments = Vec::with_capacity(load.loads.len() + 1);
    let mut sag = 0.0f64;
    for (length, mass) in line.pieces(first) {
        let segment = Segment { arc, length, x, y, v, h, w };
        // The lowest point of a piece is where its vertical part vanishes.
        if v > 0.0 && v < w * length {
            sag = sag.max(segment.at(v / w).1);
        }
        (x, y) = segment.at(length);
        sag = sag.max(y);
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
        sag_mm: sag,
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
mod tests;
