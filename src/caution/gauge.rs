//! The small-parts test cylinder: does some rigid motion put the body entirely inside?
//!
//! The room inside is K = { x² + y² ≤ R², 0 ≤ z ≤ m + x }, z being the depth below the flat open top. For one
//! orientation, push the body up against the rim plane; the sloped floor then says how far towards the deep side it
//! has to lie, and what remains is whether a circle of radius R round a centre so limited covers its shadow. All
//! orientations are searched on a grid, upright and flat ones included, and the best are refined.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use serde::{Deserialize, Serialize};

use super::solid::Solid;

/// Which drawing of the cylinder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Gauge {
    /// 1.25 in across, 1.00 to 2.25 in deep. Source: 16 CFR 1501.4, figure 1; inch figures govern.
    Inch,
    /// 31.7 mm across, 25.4 to 57.1 mm deep. Source: Canada Toys Regulations SOR/2011-17, Schedule 1; EN 71-1 (clause
    /// 8.2) and ISO 8124-1 from memory.
    Metric,
}

impl Gauge {
    /// Inner radius and depth on the axis, in millimetres; the floor slopes at 45°.
    const fn sizes_mm(self) -> (f64, f64) {
        match self {
            Self::Inch => (15.875, 41.275),
            Self::Metric => (15.85, 41.25),
        }
    }
}

/// Whether the body fits the cylinder in some orientation.
pub fn fits(solid: &Solid, gauge: Gauge) -> bool {
    slack_mm(solid, gauge) >= 0.0
}

/// By how much the wall could be nearer in the body's best pose, in millimetres; negative when it does not fit.
pub fn slack_mm(solid: &Solid, gauge: Gauge) -> f64 {
    let mut search = Search { solid, gauge: gauge.sizes_mm(), points: Vec::new() };
    let spins = if solid.turned { 1 } else { 12 };
    let mut best: Vec<(f64, [f64; 3])> = Vec::new();
    for spin in 0..spins {
        for tilt in 0..=12 {
            for azimuth in 0..12 {
                let pose = [PI * f64::from(spin) / 12.0, PI * f64::from(tilt) / 12.0, TAU * f64::from(azimuth) / 12.0];
                best.push((search.slack(pose), pose));
            }
        }
    }
    best.sort_by(|a, b| b.0.total_cmp(&a.0));
    best.truncate(if solid.turned { 6 } else { 10 });
    // Poses that a grid's best can hide: flat and upright, along and across the slope.
    for pose in [[0.0; 3], [0.0, FRAC_PI_2, 0.0], [0.0, FRAC_PI_2, FRAC_PI_2], [FRAC_PI_2, FRAC_PI_2, 0.0]] {
        best.push((search.slack(pose), pose));
    }
    best.into_iter().map(|(slack, pose)| search.refine(slack, pose)).fold(f64::NEG_INFINITY, f64::max)
}

struct Search<'a> {
    solid: &'a Solid,
    gauge: (f64, f64),
    points: Vec<[f64; 3]>,
}

impl Search<'_> {
    fn slack(&mut self, [spin, tilt, azimuth]: [f64; 3]) -> f64 {
        let (radius, depth) = self.gauge;
        let mut points = std::mem::take(&mut self.points);
        self.solid.posed(spin, tilt, azimuth, &mut points);
        let round = self.solid.round_mm;
        let top = points.iter().map(|p| p[2]).fold(f64::INFINITY, f64::min) - round;
        let slope = points.iter().map(|p| p[2] - p[0]).fold(f64::NEG_INFINITY, f64::max) + round * 2f64.sqrt();
        // Pushed up by −top, the body is above the floor once it lies at least this far to the deep side.
        let least_x = slope - top - depth;
        let slack = radius - round - covering_radius(&points, least_x);
        self.points = points;
        slack
    }

    /// Pattern search in the three angles. The slack has creases, on which single angles get stuck, so pairs of
    /// angles are turned together as well.
    fn refine(&mut self, mut slack: f64, mut pose: [f64; 3]) -> f64 {
        let mut step = PI / 12.0;
        while step > 1e-4 {
            let mut better = false;
            for way in WAYS {
                let next = [pose[0] + step * way[0], pose[1] + step * way[1], pose[2] + step * way[2]];
                let there = self.slack(next);
                if there > slack + 1e-9 {
                    (slack, pose, better) = (there, next, true);
                }
            }
            if !better {
                step *= 0.5;
            }
        }
        slack
    }
}

const WAYS: [[f64; 3]; 18] = [
    [1.0, 0.0, 0.0],
    [-1.0, 0.0, 0.0],
    [0.0, 1.0, 0.0],
    [0.0, -1.0, 0.0],
    [0.0, 0.0, 1.0],
    [0.0, 0.0, -1.0],
    [1.0, 1.0, 0.0],
    [1.0, -1.0, 0.0],
    [-1.0, 1.0, 0.0],
    [-1.0, -1.0, 0.0],
    [1.0, 0.0, 1.0],
    [1.0, 0.0, -1.0],
    [-1.0, 0.0, 1.0],
    [-1.0, 0.0, -1.0],
    [0.0, 1.0, 1.0],
    [0.0, 1.0, -1.0],
    [0.0, -1.0, 1.0],
    [0.0, -1.0, -1.0],
];

/// Radius of the smallest circle round the points' shadow whose centre c allows a shift t = −c with t_x ≥ `least_x`.
fn covering_radius(points: &[[f64; 3]], least_x: f64) -> f64 {
    let (x, _, squared) = smallest_circle(points);
    if x <= -least_x {
        return squared.sqrt();
    }
    // The centre wants to lie further to the deep side than the floor allows: it lies on the limit, where the
    // reach is convex in y.
    let x = -least_x;
    let reach = |y: f64| points.iter().map(|p| (p[0] - x).powi(2) + (p[1] - y).powi(2)).fold(0.0, f64::max);
    let span = points.iter().map(|p| p[1].abs()).fold(0.0, f64::max);
    let (mut low, mut high) = (-span, span);
    for _ in 0..40 {
        let (a, b) = (low + (high - low) * 0.382, low + (high - low) * 0.618);
        if reach(a) < reach(b) { high = b } else { low = a }
    }
    reach((low + high) / 2.0).sqrt()
}

/// Centre and squared radius of the smallest circle round the shadow of the points.
/// Source: E. Welzl, Smallest enclosing disks, 1991, in its iterative form.
fn smallest_circle(points: &[[f64; 3]]) -> (f64, f64, f64) {
    let outside =
        |c: (f64, f64, f64), p: &[f64; 3]| (p[0] - c.0).powi(2) + (p[1] - c.1).powi(2) > c.2 * (1.0 + 1e-12) + 1e-12;
    let mut circle = (points[0][0], points[0][1], 0.0);
    for (i, p) in points.iter().enumerate() {
        if !outside(circle, p) {
            continue;
        }
        circle = (p[0], p[1], 0.0);
        for (j, q) in points[..i].iter().enumerate() {
            if !outside(circle, q) {
                continue;
            }
            circle = through_two(p, q);
            for r in &points[..j] {
                if outside(circle, r) {
                    circle = through_three(p, q, r).unwrap_or(circle);
                }
            }
        }
    }
    circle
}

fn through_two(p: &[f64; 3], q: &[f64; 3]) -> (f64, f64, f64) {
    let (x, y) = ((p[0] + q[0]) / 2.0, (p[1] + q[1]) / 2.0);
    (x, y, (p[0] - x).powi(2) + (p[1] - y).powi(2))
}

/// `None` for three points on a line.
fn through_three(p: &[f64; 3], q: &[f64; 3], r: &[f64; 3]) -> Option<(f64, f64, f64)> {
    let (ax, ay, bx, by) = (q[0] - p[0], q[1] - p[1], r[0] - p[0], r[1] - p[1]);
    let d = 2.0 * (ax * by - ay * bx);
    if d.abs() < 1e-12 {
        return None;
    }
    let (a, b) = (ax * ax + ay * ay, bx * bx + by * by);
    let (x, y) = ((by * a - ay * b) / d, (ax * b - bx * a) / d);
    Some((p[0] + x, p[1] + y, x * x + y * y))
}
