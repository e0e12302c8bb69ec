//! The chain with its cluster at a given place: tension, closing error, and what pushes the cluster.

use super::{NecklaceLoad, segment::advance};
use crate::hang::HangError;

/// Rings and chain for one place of the cluster.
pub(super) struct Line<'a> {
    pub load: &'a NecklaceLoad,
    /// Arcs of the rings relative to the first.
    pub offsets: &'a [f64],
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
    pub(super) fn pieces(&self, first: f64) -> impl Iterator<Item = (f64, f64)> + '_ {
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
    pub(super) fn solve(&self, first: f64, guess: (f64, f64)) -> Result<(f64, f64), HangError> {
        let (span, end) = (self.load.width_mm, -self.load.rise_mm);
        let (mut h, mut v) = guess;
        let mut now = self.closing(first, h, v);
        let done = 1e-13 * self.load.front_length_mm;
        for _ in 0..200 {
            let (gx, gy) = (now.x - span, now.y - end);
            if gx.abs() <= done && gy.abs() <= done {
                return Ok((h, v));
            }
            let det = now.hh * now.vv - now.hv * now.hv;
            if !(det.is_finite() && det > 0.0) {
                return Err(HangError::NoShape);
            }
            let (dh, dv) = ((gy * now.hv - gx * now.vv) / det, (gx * now.hv - gy * now.hh) / det);
            let slope = gx * dh + gy * dv;
            let phi = now.energy - h * span - v * end;
            let mut step = 1.0;
            // H stays above zero: a chain does not push.
            while h + step * dh <= 0.0 {
                step *= 0.5;
            }
            let mut moved = None;
            for _ in 0..8 {
                let (h1, v1) = (h + step * dh, v + step * dv);
                let next = self.closing(first, h1, v1);
                // Φ falls; or, where its last digits no longer tell, the closing error does.
                let error = (next.x - span).abs() + (next.y - end).abs();
                if next.energy - h1 * span - v1 * end < phi + 1e-4 * step * slope || error < 0.5 * (gx.abs() + gy.abs())
                {
                    moved = Some((h1, v1, next));
                    break;
                }
                step *= 0.5;
            }
            // Where the tension of a piece nearly vanishes, Φ is a cone's tip and Newton's steps lead into it. A step of
            // g/∫ds/T never leads up nor to H ≤ 0 (Weiszfeld's, for sums of distances), and out of the tip.
            if step < 0.3 {
                let trace = now.hh + now.vv;
                let (h1, v1) = (h - gx / trace, v - gy / trace);
                let next = self.closing(first, h1, v1);
                let lower = next.energy - h1 * span - v1 * end;
                let so_far =
                    moved.as_ref().map_or(phi, |(h, v, next): &(f64, f64, Closing)| next.energy - h * span - v * end);
                if lower < so_far {
                    moved = Some((h1, v1, next));
                }
            }
            match moved {
                Some(next) => (h, v, now) = next,
                None => break,
            }
        }
        // The last digits may not be reachable where forces differ by many orders; a thousandth of a hair is enough.
        let close = 1e-10 * self.load.front_length_mm;
        if (now.x - span).abs() <= close && (now.y - end).abs() <= close { Ok((h, v)) } else { Err(HangError::NoShape) }
    }

    /// For a chain of (nearly) no weight: the push on the cluster where a piece of chain hangs slack, and no shape
    /// has tension throughout; `None` where one has.
    ///
    /// Without horizontal tension Φ is Σ s|V| − V₀·Y, least at the weighted median of the masses passed, shifted by Y/2;
    /// the median's piece k is the slack one. It is longer than needed if s_k² ≥ S² + D², D being what the other pieces,
    /// falling minus rising, are deeper than the right hang point; for one load between level hang points this is the
    /// well-known l₂² > S² + l₁².
    pub(super) fn slack_push(&self, first: f64) -> Option<f64> {
        let (length, end) = (self.load.front_length_mm, -self.load.rise_mm);
        let half = (length + end) / 2.0;
        let total: f64 = self.load.loads.iter().map(|one| one.mass_g).sum();
        let (mut arc, mut passed) = (0.0, 0.0);
        for (s, mass) in self.pieces(first) {
            if arc + s >= half {
                let others = arc - (length - arc - s);
                // The tension is `passed` at the left hang point and the rest of the weight at the right one.
                return (s >= self.load.width_mm.hypot(others - end)).then_some(2.0 * passed - total);
            }
            (arc, passed) = (arc + s, passed + mass);
        }
        None
    }

    /// Sum of the tension's jumps over the rings: what pushes the cluster to the right.
    pub(super) fn push(&self, first: f64, h: f64, v0: f64) -> f64 {
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
