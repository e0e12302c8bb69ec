//! A solid in one orientation: how far it reaches, and its shadow seen along the cylinder's axis.

use std::f64::consts::FRAC_PI_2;

use super::{
    oval::Oval,
    solid::{Circle, Form, Solid},
    turn::{Turn, V3, cross, dot, scaled, sum},
};

/// A turned solid, its middle at the origin of the room; the ball that rounds it is left out.
pub(super) struct Posed<'a> {
    shape: Shape<'a>,
    turn: Turn,
    /// Least z: how near it comes to the rim plane, in millimetres.
    pub top: f64,
    /// Greatest z − x: how far it reaches towards the sloped floor, in millimetres.
    pub slope: f64,
}

/// The form with its shadow.
enum Shape<'a> {
    Points(Vec<V3>),
    Turned(&'a [Circle], Vec<Oval>),
    Ellipsoid(V3, [Oval; 1]),
}

/// Towards the sloped floor.
pub(super) const FLOOR: V3 = [-1.0, 0.0, 1.0];
/// Towards the rim plane.
pub(super) const RIM: V3 = [0.0, 0.0, -1.0];

impl<'a> Posed<'a> {
    pub(super) fn new(solid: &'a Solid, turn: Turn) -> Self {
        let shape = match &solid.form {
            Form::Points { points, .. } => Shape::Points(points.iter().map(|p| turn.apply(*p)).collect()),
            Form::Turned(circles) => Shape::Turned(circles, circle_shadows(circles, turn.columns()[2])),
            Form::Ellipsoid(half) => Shape::Ellipsoid(*half, [ellipsoid_shadow(*half, &turn)]),
        };
        let mut posed = Self { shape, turn, top: 0.0, slope: 0.0 };
        posed.top = -dot(posed.support(RIM), RIM);
        posed.slope = dot(posed.support(FLOOR), FLOOR);
        posed
    }

    /// The point that reaches farthest in a direction of the room.
    pub(super) fn support(&self, direction: V3) -> V3 {
        let reach = |p: &V3| dot(*p, direction);
        match &self.shape {
            Shape::Points(points) => farthest(points.iter().copied(), reach),
            Shape::Turned(circles, _) => {
                let axis = self.turn.columns()[2];
                // Two cross products stay across the axis to the last digit, also where the direction is nearly along it.
                let across = cross(axis, cross(direction, axis));
                let length = dot(across, across).sqrt();
                let unit = if length > 1e-14 { scaled(across, 1.0 / length) } else { self.turn.columns()[0] };
                farthest(circles.iter().map(|c| sum(scaled(axis, c.z), scaled(unit, c.radius))), reach)
            }
            Shape::Ellipsoid(half, _) => {
                let d = self.turn.back(direction);
                let most = (0..3).map(|i| (half[i] * d[i]).powi(2)).sum::<f64>().sqrt().max(f64::MIN_POSITIVE);
                self.turn.apply([0, 1, 2].map(|i| half[i] * half[i] * d[i] / most))
            }
        }
    }

    /// The shadow's point farthest from `centre`, and how far it is.
    pub(super) fn farthest(&self, centre: [f64; 2]) -> ([f64; 2], f64) {
        let squared = |p: &[f64; 2]| (p[0] - centre[0]).powi(2) + (p[1] - centre[1]).powi(2);
        let of_ovals = |ovals: &[Oval]| farthest(ovals.iter().map(|oval| oval.farthest(centre)), squared);
        let point = match &self.shape {
            Shape::Points(points) => farthest(points.iter().map(|p| [p[0], p[1]]), squared),
            Shape::Turned(_, ovals) => of_ovals(ovals),
            Shape::Ellipsoid(_, oval) => of_ovals(oval),
        };
        (point, squared(&point).sqrt())
    }

    /// Points that touch first when the body is turned a little: all of a few points, else where it reaches farthest
    /// towards rim, floor and wall, `towards` (directions across) among them.
    pub(super) fn witnesses(&self, towards: &[[f64; 2]]) -> Vec<V3> {
        if let Shape::Points(points) = &self.shape
            && points.len() <= 24
        {
            return points.clone();
        }
        let around = |normal: V3, lean: f64| {
            let side = if normal[0] == 0.0 { [1.0, 0.0, 0.0] } else { [0.0, 1.0, 0.0] };
            let other = cross(normal, side);
            (0..6).map(move |i| {
                let (s, c) = (f64::from(i) * FRAC_PI_2 * 2.0 / 3.0).sin_cos();
                sum(normal, scaled(sum(scaled(side, c), scaled(other, s)), lean))
            })
        };
        let wall = (0..16).map(|i| {
            let (s, c) = (f64::from(i) * FRAC_PI_2 / 4.0).sin_cos();
            [c, s, 0.0]
        });
        let mut found: Vec<V3> = Vec::new();
        let directions = towards.iter().map(|d| [d[0], d[1], 0.0]).chain([RIM, FLOOR]).chain(wall);
        for direction in directions.chain([0.1, 0.5].into_iter().flat_map(|l| around(RIM, l).chain(around(FLOOR, l)))) {
            let point = self.support(direction);
            if !found.contains(&point) {
                found.push(point);
            }
        }
        found
    }
}

/// The one of `all` (never empty) that `measure` finds greatest.
#[allow(clippy::expect_used, reason = "a solid has at least one point or circle")]
fn farthest<T: Copy>(mut all: impl Iterator<Item = T>, measure: impl Fn(&T) -> f64) -> T {
    let first = all.next().expect("a solid has at least one point or circle");
    let start = (measure(&first), first);
    all.fold(start, |best, one| {
        let reach = measure(&one);
        if reach > best.0 { (reach, one) } else { best }
    })
    .1
}

fn circle_shadows(circles: &[Circle], axis: V3) -> Vec<Oval> {
    let lean = axis[0].hypot(axis[1]);
    let along = if lean > 1e-12 { [-axis[1] / lean, axis[0] / lean] } else { [1.0, 0.0] };
    let oval = |c: &Circle| Oval {
        centre: [axis[0] * c.z, axis[1] * c.z],
        along,
        long: c.radius,
        short: c.radius * axis[2].abs().min(1.0),
    };
    circles.iter().map(oval).collect()
}

/// The shadow of an ellipsoid is the ellipse of the matrix P diag(half²) Pᵀ.
fn ellipsoid_shadow(half: V3, turn: &Turn) -> Oval {
    let columns = turn.columns();
    let entry = |i: usize, j: usize| (0..3).map(|k| half[k] * half[k] * columns[k][i] * columns[k][j]).sum::<f64>();
    let (xx, xy, yy) = (entry(0, 0), entry(0, 1), entry(1, 1));
    let (middle, spread) = ((xx + yy) / 2.0, ((xx - yy) / 2.0).hypot(xy));
    let (s, c) = (f64::atan2(2.0 * xy, xx - yy) / 2.0).sin_cos();
    Oval { centre: [0.0; 2], along: [c, s], long: (middle + spread).sqrt(), short: (middle - spread).max(0.0).sqrt() }
}
