//! The small-parts test cylinder: does some rigid motion put the body entirely inside?
//!
//! The room inside is K = { x² + y² ≤ R², 0 ≤ z ≤ m + x }, z being the depth below the flat open top. For one
//! orientation the best shift is found exactly (`place`). Orientations are searched on a grid that holds the upright and
//! flat ones, reduced by the symmetries of body and cylinder, and the best are climbed from (`refine`).

use std::f64::consts::{FRAC_PI_2, PI};

use serde::{Deserialize, Serialize};

use super::{
    cylinder::{Gauge, Room},
    place::place,
    posed::Posed,
    refine::{Pose, refine},
    solid::{Form, Solid},
    turn::{Turn, V3, dot},
};

/// What the cylinder says of a body.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct GaugeResult {
    /// Whether it fits entirely inside in some pose.
    pub fits: bool,
    /// Distance to the nearest of wall, rim plane and floor in the pose where that is greatest, in millimetres; negative
    /// when it does not fit.
    pub margin_mm: f64,
    /// Whether the margin is wide enough (0.05 mm) to trust the answer.
    pub certain: bool,
}

/// Margins below this, in millimetres, are within what measuring a body and searching its poses can decide.
const SURE_MM: f64 = 0.05;

/// Puts a body into the cylinder in every way.
pub fn gauge(solid: &Solid, gauge: Gauge) -> GaugeResult {
    let margin_mm = best_pose(solid, gauge.room(), f64::INFINITY).margin - solid.round_mm;
    GaugeResult { fits: margin_mm >= 0.0, margin_mm, certain: margin_mm.abs() >= SURE_MM }
}

/// How the body stands to the cylinder: as [`gauge`] says, but done with the first pose that fits for certain.
pub(super) fn decide(solid: &Solid, gauge: Gauge) -> Size {
    let margin_mm = best_pose(solid, gauge.room(), solid.round_mm + SURE_MM).margin - solid.round_mm;
    if margin_mm >= SURE_MM {
        Size::Fits
    } else if margin_mm > -SURE_MM {
        Size::Measure
    } else {
        Size::TooLarge
    }
}

/// How a rigid part stands to the cylinder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Size {
    /// It fits: a small part.
    Fits,
    /// Too close to call, or not known: only measuring it decides, and until then it counts as a small part.
    Measure,
    /// It does not fit.
    TooLarge,
}

/// The best pose of the form without its rounding ball; the first one found that leaves `enough`.
pub(super) fn best_pose(solid: &Solid, room: Room, enough: f64) -> Pose {
    let rough = solid.thinned();
    let mut directions: Vec<(f64, Vec<Turn>)> =
        directions(&solid.form).into_iter().map(|turns| (most(&rough, room, turns[0]), turns)).collect();
    directions.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut tried: Vec<Pose> = Vec::new();
    let mut best_tried = f64::NEG_INFINITY;
    for (most, turns) in directions {
        if most < best_tried - WORSE_MM {
            break;
        }
        for turn in turns {
            let pose = Pose::of(&rough, room, turn, GRID_EXACT_MM);
            if pose.margin >= enough {
                let whole = Pose::of(solid, room, turn, GRID_EXACT_MM);
                if whole.margin >= enough {
                    return whole;
                }
            }
            best_tried = best_tried.max(pose.margin);
            tried.push(pose);
        }
    }
    let mut found = starts(&solid.form, tried);
    if matches!(solid.form, Form::Points { mirrored: false, .. }) {
        for (steps, keep) in ROUNDS {
            found = round(&rough, room, &found, steps, keep);
        }
    }
    let mut best: Option<Pose> = None;
    for start in found {
        let pose = refine(solid, room, start.turn, TO_THE_TOP);
        if best.is_none_or(|best| pose.margin > best.margin) {
            best = Some(pose);
        }
        if pose.margin >= enough {
            break;
        }
    }
    best.unwrap_or_else(|| refine(solid, room, Turn::of_axis(0.0, 0.0), TO_THE_TOP))
}

/// A direction is left out when it can't come within this of the best pose of the grid, in millimetres.
const WORSE_MM: f64 = 1.5;
/// Steps after which a climb has arrived.
const TO_THE_TOP: usize = 60;
/// Points without symmetry have many false tops: all starts climb a few steps, the better ones a few more, and only the
/// best to the top. So many steps, so many kept. Against climbing from all 40, 800 random bodies of points lost nothing
/// above 0.05 mm.
const ROUNDS: [(usize, usize); 2] = [(2, 16), (3, 7)];
/// Climbs that have come as near as this to a better one (cosine of the angle) end at the same top.
const SAME_TOP: f64 = 0.9995;

/// Climbs a few steps from all `starts` and keeps the best of the tops that differ.
fn round(solid: &Solid, room: Room, starts: &[Pose], steps: usize, keep: usize) -> Vec<Pose> {
    let mut climbed: Vec<Pose> = starts.iter().map(|start| refine(solid, room, start.turn, steps)).collect();
    climbed.sort_by(|a, b| b.margin.total_cmp(&a.margin));
    let mut kept: Vec<Pose> = Vec::new();
    for pose in climbed {
        if kept.len() < keep && !kept.iter().any(|other| pose.turn.nearness(&other.turn) > SAME_TOP) {
            kept.push(pose);
        }
    }
    kept
}

/// What no pose with the same direction downwards exceeds: the shadow has to lie within the wall, and a body `height`
/// high needs μ under the rim plane and √2 μ over the floor, whose deepest point is μ from the wall.
fn most(solid: &Solid, room: Room, turn: Turn) -> f64 {
    let posed = Posed::new(solid, turn);
    let bottomless = Room { depth: 1e5, ..room };
    let across = place(&posed, bottomless, GRID_EXACT_MM).margin + GRID_EXACT_MM;
    let height = posed.support(DOWN)[2] - posed.top;
    across.min((room.depth + room.radius - height) / (2.0 + 2f64.sqrt()))
}

/// Straight down the cylinder.
const DOWN: V3 = [0.0, 0.0, 1.0];

/// The grid, turns with the same direction downwards together.
fn directions(form: &Form) -> Vec<Vec<Turn>> {
    let mut all: Vec<Vec<Turn>> = Vec::new();
    for turn in orientations(form) {
        match all.last_mut() {
            Some(last) if dot(last[0].back(DOWN), turn.back(DOWN)) > 0.999_99 => last.push(turn),
            _ => all.push(vec![turn]),
        }
    }
    all
}

/// How exactly a pose of the grid is placed, in millimetres: enough to rank them.
const GRID_EXACT_MM: f64 = 0.02;

/// How many climbs a form needs: against 80 climbs, 400 random bodies of each kind lost nothing above 0.003 mm (200, 800 for
/// points without symmetry).
const fn climbs(form: &Form) -> usize {
    match form {
        Form::Turned(_) => 4,
        Form::Ellipsoid(_) => 6,
        Form::Points { mirrored: true, .. } => 12,
        Form::Points { mirrored: false, .. } => 40,
    }
}

/// Climbs begin here: the best of the grid, no two of them close together.
fn starts(form: &Form, mut tried: Vec<Pose>) -> Vec<Pose> {
    let near = |a: &Turn, b: &Turn| match form {
        // A spin about its own axis changes nothing.
        Form::Turned(_) => dot(a.columns()[2], b.columns()[2]) > (PI / 12.0).cos(),
        _ => a.nearness(b) > (PI / 9.0).cos(),
    };
    tried.sort_by(|a, b| b.margin.total_cmp(&a.margin));
    let mut kept: Vec<Pose> = Vec::new();
    for pose in tried {
        if kept.len() == climbs(form) {
            break;
        }
        if !kept.iter().any(|other| near(&pose.turn, &other.turn)) {
            kept.push(pose);
        }
    }
    kept
}

/// The grid. Reflecting y maps the cylinder to itself, so a body that reflections map to itself needs an eighth of all
/// orientations, and a solid of revolution the half sphere of directions of its axis.
fn orientations(form: &Form) -> Vec<Turn> {
    match form {
        Form::Turned(circles) if circles.iter().all(|c| c.z == 0.0 && c.radius == 0.0) => vec![Turn::of_axis(0.0, 0.0)],
        Form::Turned(circles) => {
            let turned_over = circles.iter().all(|c| circles.iter().any(|d| d.z == -c.z && d.radius == c.radius));
            let rings = if turned_over { 12 } else { 24 };
            sphere(rings, PI / 24.0, PI).map(|(tilt, azimuth)| Turn::of_axis(tilt, azimuth)).collect()
        }
        Form::Points { mirrored: true, .. } | Form::Ellipsoid(_) => spun(6, FRAC_PI_2),
        Form::Points { mirrored: false, .. } => spun(12, 2.0 * PI),
    }
}

/// Directions of the body that go straight down, by 15°, each turned all round by 15°.
fn spun(rings: u32, around: f64) -> Vec<Turn> {
    let step = PI / 12.0;
    sphere(rings, step, around)
        .flat_map(|(polar, azimuth)| (0..24).map(move |i| Turn::of_depth(polar, azimuth, step * f64::from(i))))
        .collect()
}

/// Directions `step` apart: polar angles 0 to `rings` steps, azimuths 0 to `around`, both ends included.
fn sphere(rings: u32, step: f64, around: f64) -> impl Iterator<Item = (f64, f64)> {
    (0..=rings).flat_map(move |ring| {
        let polar = step * f64::from(ring);
        let parts = (around * polar.sin() / step).round() as u32;
        (0..=parts).map(move |i| (polar, around * f64::from(i) / f64::from(parts.max(1))))
    })
}
