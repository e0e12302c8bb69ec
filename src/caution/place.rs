//! Where a turned body lies best: the shift that leaves the most room.
//!
//! Let a be the body's least z, b its greatest z − x, and c the point of its shadow that comes to lie on the cylinder's
//! axis. Pushed up to leave μ under the rim plane, it leaves (m + a − b − c_x) / (1 + √2) = μ above the sloped floor,
//! which is 45° steep, and R − ρ(c) to the wall, ρ(c) being the distance of the shadow's farthest point from c. What is
//! sought is the smallest ρ with |p − c| ≤ ρ for each p of the shadow and c_x ≤ A + (1 + √2) ρ, where
//! A = m + a − b − (1 + √2) R: a smallest enclosing circle with one more condition, which two or three points decide.

use super::{cylinder::Room, posed::Posed};

/// Rim and floor together: 1 to the rim, √2 to the floor along z − x.
const STEEP: f64 = 1.0 + std::f64::consts::SQRT_2;
/// What rounding may do to a contact, in millimetres.
const ROUNDING_MM: f64 = 1e-8;

/// The best shift of one orientation.
pub(super) struct Place {
    /// Least distance to wall, rim plane and floor, in millimetres; negative outside.
    pub margin: f64,
    /// The shadow's point that lies on the axis.
    pub centre: [f64; 2],
    /// Directions from there to the points that touch the wall first.
    pub towards: Vec<[f64; 2]>,
}

#[derive(Clone, Copy)]
struct Disc {
    centre: [f64; 2],
    radius: f64,
}

/// Finds it to within `exact_mm`.
pub(super) fn place(posed: &Posed<'_>, room: Room, exact_mm: f64) -> Place {
    let limit = room.depth + posed.top - posed.slope;
    let a = limit - STEEP * room.radius;
    let first = posed.farthest([0.0; 2]).0;
    let mut basis = Basis { points: [first; 3], len: 1 };
    let mut disc = at_point(first, a);
    let mut best = (f64::NEG_INFINITY, disc.centre);
    // Each turn takes in the point that sticks out farthest, so the circle only grows; a few turns are enough.
    for _ in 0..60 {
        let (far, distance) = posed.farthest(disc.centre);
        let margin = (room.radius - distance).min((limit - disc.centre[0]) / STEEP);
        if margin > best.0 {
            best = (margin, disc.centre);
        }
        if distance <= disc.radius + exact_mm {
            break;
        }
        let Some((next, grown)) = basis.exchange(far, a) else { break };
        (disc, basis) = (next, grown);
    }
    let (margin, centre) = best;
    let towards = basis.points().iter().map(|p| [p[0] - centre[0], p[1] - centre[1]]).collect();
    Place { margin, centre, towards }
}

/// The points that decide the circle.
#[derive(Clone, Copy)]
struct Basis {
    points: [[f64; 2]; 3],
    len: usize,
}

impl Basis {
    fn points(&self) -> &[[f64; 2]] {
        &self.points[..self.len]
    }

    fn of(points: &[[f64; 2]]) -> Self {
        let mut all = [points[0]; 3];
        all[..points.len()].copy_from_slice(points);
        Self { points: all, len: points.len() }
    }

    /// The smallest circle that takes in `far` too, and the points that decide it; `far` is one of them.
    fn exchange(&self, far: [f64; 2], a: f64) -> Option<(Disc, Self)> {
        let old = self.points();
        let mut best: Option<(Disc, Self)> = None;
        let mut offer = |disc: Option<Disc>, by: &[[f64; 2]]| {
            let Some(disc) = disc.filter(|d| best.is_none_or(|(b, _)| d.radius < b.radius)) else { return };
            let inside = |p: &[f64; 2]| distance(*p, disc.centre) <= disc.radius + ROUNDING_MM;
            if disc.centre[0] <= a + STEEP * disc.radius + ROUNDING_MM && old.iter().chain([&far]).all(inside) {
                best = Some((disc, Self::of(by)));
            }
        };
        offer(Some(at_point(far, a)), &[far]);
        for (i, p) in old.iter().enumerate() {
            offer(Some(between(far, *p)), &[far, *p]);
            for disc in at_limit(far, *p, a) {
                offer(disc, &[far, *p]);
            }
            for q in &old[..i] {
                offer(around(far, *p, *q), &[far, *p, *q]);
            }
        }
        best
    }
}

fn distance(p: [f64; 2], q: [f64; 2]) -> f64 {
    (p[0] - q[0]).hypot(p[1] - q[1])
}

/// The smallest circle for one point: a point, unless the floor pushes it off; then the centre goes straight to the
/// shallow side.
fn at_point(p: [f64; 2], a: f64) -> Disc {
    let radius = ((p[0] - a) / (1.0 + STEEP)).max(0.0);
    Disc { centre: [p[0] - radius, p[1]], radius }
}

fn between(p: [f64; 2], q: [f64; 2]) -> Disc {
    Disc { centre: [(p[0] + q[0]) / 2.0, (p[1] + q[1]) / 2.0], radius: distance(p, q) / 2.0 }
}

/// The circles through two points whose centre lies on the floor's limit: with the centre s along the bisector,
/// mid_x + s n_x = A + (1 + √2) √(h² + s²), squared.
fn at_limit(p: [f64; 2], q: [f64; 2], a: f64) -> [Option<Disc>; 2] {
    let mid = between(p, q);
    let h = mid.radius;
    if h == 0.0 {
        return [None; 2];
    }
    let n = [-(q[1] - p[1]) / (2.0 * h), (q[0] - p[0]) / (2.0 * h)];
    let w = mid.centre[0] - a;
    let k = STEEP * STEEP;
    // (k − n_x²) s² − 2 w n_x s + k h² − w² = 0
    let (two, one, none) = (k - n[0] * n[0], w * n[0], k * h * h - w * w);
    let under = one * one - two * none;
    if under < 0.0 {
        return [None; 2];
    }
    [-1.0, 1.0].map(|sign| {
        let s = (one + sign * under.sqrt()) / two;
        let centre = [mid.centre[0] + s * n[0], mid.centre[1] + s * n[1]];
        Some(Disc { centre, radius: h.hypot(s) })
    })
}

/// The circle through three points; none when they lie on a line.
fn around(p: [f64; 2], q: [f64; 2], r: [f64; 2]) -> Option<Disc> {
    let (ax, ay, bx, by) = (q[0] - p[0], q[1] - p[1], r[0] - p[0], r[1] - p[1]);
    let d = 2.0 * (ax * by - ay * bx);
    let (a, b) = (ax * ax + ay * ay, bx * bx + by * by);
    if d.abs() <= 1e-12 * a.max(b) {
        return None;
    }
    let (x, y) = ((by * a - ay * b) / d, (ax * b - bx * a) / d);
    Some(Disc { centre: [p[0] + x, p[1] + y], radius: x.hypot(y) })
}
