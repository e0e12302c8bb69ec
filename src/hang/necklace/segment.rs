//! One piece of chain between two rings: a piece of catenary in closed form.

/// A piece of chain without a ring inside it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Segment {
    pub arc: f64,
    pub length: f64,
    pub x: f64,
    pub y: f64,
    /// Vertical part of the tension at its beginning, as a mass in grams; positive where the chain falls.
    pub v: f64,
    /// Horizontal part, as a mass in grams.
    pub h: f64,
    /// Chain mass per length.
    pub w: f64,
}

impl Segment {
    /// x and y after `s` of it.
    pub(super) fn at(&self, s: f64) -> (f64, f64) {
        let (dx, dy) = advance(self.h, self.v, self.w, s);
        (self.x + dx, self.y + dy)
    }
}

/// How far a piece of length `s` goes in x and y, with horizontal part `h` and vertical part `v` at its beginning.
pub(super) fn advance(h: f64, v: f64, w: f64, s: f64) -> (f64, f64) {
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
