//! An ellipse in the plane: the shadow of a circle or of an ellipsoid.

use std::f64::consts::FRAC_PI_2;

/// An ellipse, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Oval {
    pub centre: [f64; 2],
    /// Unit vector of the long axis.
    pub along: [f64; 2],
    /// Long half axis.
    pub long: f64,
    /// Short half axis, at most as long.
    pub short: f64,
}

impl Oval {
    /// The point of the ellipse farthest from `from`.
    ///
    /// In the ellipse's own axes, with (S, T) ≥ 0 the centre seen from the point, (S + a cos φ)² + (T + b sin φ)² is
    /// greatest where −aS sin φ + bT cos φ − (a² − b²) sin φ cos φ = 0. Divided by sin φ cos φ the left side only
    /// falls, so there is one root in the quarter turn.
    pub(super) fn farthest(&self, from: [f64; 2]) -> [f64; 2] {
        let Self { centre, along: [ax, ay], long, short } = *self;
        if long == 0.0 {
            return centre;
        }
        let (x, y) = (centre[0] - from[0], centre[1] - from[1]);
        let (s, t) = (x * ax + y * ay, y * ax - x * ay);
        let (p, q, r) = (long * s.abs(), short * t.abs(), long * long - short * short);
        let (mut low, mut high) = (0.0, FRAC_PI_2);
        let mut phi = if p + q > 0.0 { f64::atan2(q, p + r) } else { 0.0 };
        for _ in 0..60 {
            let (sin, cos) = phi.sin_cos();
            let value = -p * sin + q * cos - r * sin * cos;
            if value > 0.0 {
                low = phi
            } else {
                high = phi
            }
            let steep = -p * cos - q * sin - r * (cos * cos - sin * sin);
            let newton = phi - value / steep;
            let next = if newton > low && newton < high { newton } else { (low + high) / 2.0 };
            let moved = (next - phi).abs();
            phi = next;
            // Newton's next step would be as small as the square of this one.
            if moved < 1e-5 {
                break;
            }
        }
        let (sin, cos) = phi.sin_cos();
        let (u, v) = ((long * cos).copysign(s), (short * sin).copysign(t));
        [centre[0] + u * ax - v * ay, centre[1] + u * ay + v * ax]
    }
}
