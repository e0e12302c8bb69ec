//! A body as the points of its convex hull: the test cylinder is convex, so the hull decides.

use std::f64::consts::TAU;

use crate::craft::{Body, Ring};

/// Points on each round rim. A rim of n points is short of its circle by 1 − cos(π/n); the points lie half way
/// between inside and outside it, which leaves less than 0.02 mm for these sizes.
const RIM: usize = 48;

/// A rigid body's hull.
#[derive(Debug, Clone, PartialEq)]
pub struct Solid {
    /// Points, x, y, z in millimetres, the body's own axis along z.
    pub points: Vec<[f64; 3]>,
    /// A ball round every point, for round ends, in millimetres.
    pub round_mm: f64,
    /// Whether turning about z changes nothing.
    pub turned: bool,
}

fn rim(diameter: f64, z: f64) -> impl Iterator<Item = [f64; 3]> {
    // Half way between inscribed and circumscribed.
    let radius = diameter / 2.0 * (1.0 + 1.0 / (std::f64::consts::PI / RIM as f64).cos()) / 2.0;
    (0..RIM).map(move |i| {
        let angle = TAU * i as f64 / RIM as f64;
        [radius * angle.cos(), radius * angle.sin(), z]
    })
}

impl Solid {
    /// The hull of a body; `outline_mm` are its picture's width and height, which an outline body needs.
    pub fn of_body(body: &Body, outline_mm: (f64, f64)) -> Self {
        let box_of = |a: f64, b: f64, c: f64| {
            let corner = |i: usize, size: f64, bit: usize| if i >> bit & 1 == 0 { -size / 2.0 } else { size / 2.0 };
            let points = (0..8).map(|i| [corner(i, a, 0), corner(i, b, 1), corner(i, c, 2)]).collect();
            Self { points, round_mm: 0.0, turned: false }
        };
        let turned = |points: Vec<[f64; 3]>, round_mm: f64| Self { points, round_mm, turned: true };
        match *body {
            Body::Ball { diameter } => turned(vec![[0.0; 3]], diameter.mm() / 2.0),
            Body::Rod { diameter, length } => {
                let half = (length.mm() - diameter.mm()).max(0.0) / 2.0;
                turned(vec![[0.0, 0.0, -half], [0.0, 0.0, half]], diameter.mm() / 2.0)
            }
            Body::Disc { diameter, thickness: height } | Body::Cylinder { diameter, height } => {
                let half = height.mm() / 2.0;
                turned(rim(diameter.mm(), -half).chain(rim(diameter.mm(), half)).collect(), 0.0)
            }
            Body::Cone { diameter, height } => {
                turned(rim(diameter.mm(), 0.0).chain([[0.0, 0.0, height.mm()]]).collect(), 0.0)
            }
            Body::Box { width, depth, height } => box_of(width.mm(), depth.mm(), height.mm()),
            Body::Ellipsoid { width, depth, height } => {
                let (a, b, c) = (width.mm() / 2.0, depth.mm() / 2.0, height.mm() / 2.0);
                let bands = 17;
                let points = (0..=bands)
                    .flat_map(|i| {
                        let polar = std::f64::consts::PI * f64::from(i) / f64::from(bands);
                        (0..24).map(move |j| {
                            let angle = TAU * f64::from(j) / 24.0;
                            [a * polar.sin() * angle.cos(), b * polar.sin() * angle.sin(), c * polar.cos()]
                        })
                    })
                    .collect();
                Self { points, round_mm: 0.0, turned: a == b }
            }
            Body::Outline { thickness } => box_of(outline_mm.0, thickness.mm(), outline_mm.1),
            Body::Points { ref points_mm } => Self { points: points_mm.clone(), round_mm: 0.0, turned: false },
        }
    }

    /// A closed ring: a rigid ring counts as its hull, a disc of the wire's thickness.
    pub fn of_ring(ring: Ring) -> Self {
        let half = ring.wire.mm() / 2.0;
        let points = rim(ring.outside.mm(), -half).chain(rim(ring.outside.mm(), half)).collect();
        Self { points, round_mm: 0.0, turned: true }
    }

    /// Turned by `spin` about its own axis, tilted, then turned by `azimuth` about the cylinder's axis.
    pub(super) fn posed(&self, spin: f64, tilt: f64, azimuth: f64, out: &mut Vec<[f64; 3]>) {
        let ((s1, c1), (s2, c2), (s3, c3)) = (spin.sin_cos(), tilt.sin_cos(), azimuth.sin_cos());
        out.clear();
        out.extend(self.points.iter().map(|&[x, y, z]| {
            let (x, y) = (c1 * x - s1 * y, s1 * x + c1 * y);
            let (x, z) = (c2 * x + s2 * z, c2 * z - s2 * x);
            [c3 * x - s3 * y, s3 * x + c3 * y, z]
        }));
    }
}
