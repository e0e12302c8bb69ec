//! A rigid body as the form of its convex hull: the test cylinder is convex, so the hull decides.

use std::{borrow::Cow, f64::consts::PI};

use super::{
    outline::hull,
    turn::{V3, dot},
};
use crate::craft::{Body, Clasp, Length, Ring};

/// No body is this large; what is said to be larger counts as this, and the arithmetic stays finite.
const FAR_MM: f64 = 1e6;
/// Points that are enough to rank poses.
const THIN: usize = 32;

/// A rigid body's convex hull, its middle at the origin.
#[derive(Debug, Clone, PartialEq)]
pub struct Solid {
    pub(super) form: Form,
    /// A ball of this radius rolls over the form, for round ends, in millimetres.
    pub(super) round_mm: f64,
}

/// What spans the hull. All figures in millimetres.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Form {
    /// Circles round the z axis; one of radius 0 is a point.
    Turned(Vec<Circle>),
    /// Points. `mirrored`: reflecting any axis changes nothing.
    Points { points: Vec<[f64; 3]>, mirrored: bool },
    /// An ellipsoid, by its half axes.
    Ellipsoid([f64; 3]),
}

/// A circle round the z axis, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Circle {
    pub z: f64,
    pub radius: f64,
}

/// Whether every size is a number from 0 up.
fn real(sizes: &[f64]) -> bool {
    sizes.iter().all(|size| *size >= 0.0)
}

/// A size in millimetres. (`min` would take "not a number" for the largest.)
fn mm(length: Length) -> f64 {
    length.mm().clamp(f64::NEG_INFINITY, FAR_MM)
}

impl Solid {
    /// The hull of `body`.
    ///
    /// `None` when there is nothing to go by: an outline whose picture was not read, no points, or a size that is no
    /// number from 0 up. A rod shorter than it is thick counts as a ball of its diameter.
    pub fn from_body(body: &Body) -> Option<Self> {
        match *body {
            Body::Ball { diameter } => Self::turned([mm(diameter), 0.0], &[(0.0, 0.0)], mm(diameter) / 2.0),
            Body::Rod { diameter, length } => {
                let (d, l) = (mm(diameter), mm(length));
                let half = (l - d).max(0.0) / 2.0;
                Self::turned([d, l], &[(-half, 0.0), (half, 0.0)], d / 2.0)
            }
            Body::Disc { diameter, thickness: height } | Body::Cylinder { diameter, height } => {
                Self::cylinder(mm(diameter), mm(height))
            }
            Body::Cone { diameter, height } => {
                let (d, h) = (mm(diameter), mm(height));
                Self::turned([d, h], &[(-h / 2.0, d / 2.0), (h / 2.0, 0.0)], 0.0)
            }
            Body::Box { width, depth, height } => Self::block(mm(width), mm(depth), mm(height)),
            Body::Ellipsoid { width, depth, height } => {
                let half = [width, depth, height].map(|axis| mm(axis) / 2.0);
                real(&half).then_some(Self { form: Form::Ellipsoid(half), round_mm: 0.0 })
            }
            Body::Outline { thickness, ref shape } => {
                let half = mm(thickness) / 2.0;
                let flat = hull(&shape.as_ref()?.hull_mm);
                let points = flat.iter().flat_map(|&(x, y)| [[x, y, -half], [x, y, half]]).collect();
                if real(&[half]) { Self::points(points) } else { None }
            }
            Body::Points { ref points_mm } => Self::points(points_mm.clone()),
        }
    }

    /// The hull of `body`. Where there is nothing to go by it is a point, which fits: the careful answer.
    pub fn of_body(body: &Body) -> Self {
        let point = || Self { form: Form::Turned(vec![Circle { z: 0.0, radius: 0.0 }]), round_mm: 0.0 };
        Self::from_body(body).unwrap_or_else(point)
    }

    /// A clasp: the box round it.
    pub(super) fn of_clasp(clasp: &Clasp) -> Option<Self> {
        Self::block(mm(clasp.width), mm(clasp.thickness), mm(clasp.length))
    }

    /// A closed ring: rigid, so it counts as its hull, a disc as thick as the wire. `None` for sizes that are no sizes.
    pub fn of_ring(ring: Ring) -> Option<Self> {
        Self::cylinder(mm(ring.outside), mm(ring.wire))
    }

    /// A box by its three sides.
    fn block(width: f64, depth: f64, height: f64) -> Option<Self> {
        let side = |i: usize, bit: usize, size: f64| if i >> bit & 1 == 0 { -size / 2.0 } else { size / 2.0 };
        let points = (0..8).map(|i| [side(i, 0, width), side(i, 1, depth), side(i, 2, height)]).collect();
        real(&[width, depth, height]).then_some(Self { form: Form::Points { points, mirrored: true }, round_mm: 0.0 })
    }

    fn cylinder(diameter: f64, height: f64) -> Option<Self> {
        let (r, half) = (diameter / 2.0, height / 2.0);
        Self::turned([diameter, height], &[(-half, r), (half, r)], 0.0)
    }

    /// The hull with only those of many points that reach farthest in evenly spread directions: never larger than the
    /// whole, so it only serves to tell good poses from bad ones.
    pub(super) fn thinned(&self) -> Cow<'_, Self> {
        let Form::Points { points, mirrored: false } = &self.form else { return Cow::Borrowed(self) };
        if points.len() <= THIN {
            return Cow::Borrowed(self);
        }
        let mut kept: Vec<V3> = Vec::new();
        for i in 0..THIN {
            // A spiral over the sphere, turning by the golden angle.
            let (s, c) = (i as f64 * PI * (3.0 - 5f64.sqrt())).sin_cos();
            let z = 1.0 - (2 * i + 1) as f64 / THIN as f64;
            let r = (1.0 - z * z).sqrt();
            let reach = |p: &V3| dot(*p, [r * c, r * s, z]);
            let most = points.iter().copied().max_by(|a, b| reach(a).total_cmp(&reach(b)));
            kept.extend(most.filter(|p| !kept.contains(p)));
        }
        Cow::Owned(Self { form: Form::Points { points: kept, mirrored: false }, round_mm: self.round_mm })
    }

    /// Circles as (z, radius), from sizes that must be real.
    fn turned(sizes: [f64; 2], circles: &[(f64, f64)], round_mm: f64) -> Option<Self> {
        let form = || Form::Turned(circles.iter().map(|&(z, radius)| Circle { z, radius }).collect());
        real(&sizes).then(|| Self { form: form(), round_mm })
    }

    fn points(mut points: Vec<[f64; 3]>) -> Option<Self> {
        if points.is_empty() || points.iter().flatten().any(|x| x.is_nan()) {
            return None;
        }
        // What is infinite counts as the largest number, so that there is a middle.
        points.iter_mut().flatten().for_each(|x| *x = x.clamp(f64::MIN, f64::MAX));
        for axis in 0..3 {
            let (low, high) = points
                .iter()
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), p| (low.min(p[axis]), high.max(p[axis])));
            let middle = low / 2.0 + high / 2.0;
            points.iter_mut().for_each(|p| p[axis] = (p[axis] - middle).clamp(-FAR_MM, FAR_MM));
        }
        Some(Self { form: Form::Points { points, mirrored: false }, round_mm: 0.0 })
    }
}
