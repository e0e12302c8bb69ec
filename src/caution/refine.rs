//! From a good orientation to the best one near it.

use super::{
    cylinder::Room,
    place::{Place, place},
    posed::Posed,
    simplex::{Contact, best_step},
    solid::Solid,
    turn::{Turn, V3, cross, dot},
};

/// Millimetres of shift that a step allows per radian of turn.
const SHIFT_PER_TURN: f64 = 25.0;
/// Contacts that a step looks at: more than can matter at once.
const CONTACTS: usize = 36;
/// How exactly a climb places the body, in millimetres.
const EXACT_MM: f64 = 1e-7;
/// What a step must promise to be tried, in millimetres.
const WORTH_MM: f64 = 2e-5;

/// A pose and how much room it leaves, in millimetres.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pose {
    pub turn: Turn,
    /// The shift after the turn.
    pub shift: V3,
    pub margin: f64,
}

impl Pose {
    /// The best pose of one orientation to within `exact_mm`, for the form without its rounding ball.
    pub(super) fn of(solid: &Solid, room: Room, turn: Turn, exact_mm: f64) -> Self {
        let posed = Posed::new(solid, turn);
        Self::placed(&posed, turn, &place(&posed, room, exact_mm))
    }

    fn placed(posed: &Posed<'_>, turn: Turn, place: &Place) -> Self {
        let [x, y] = place.centre;
        Self { turn, shift: [-x, -y, place.margin - posed.top], margin: place.margin }
    }
}

/// Climbs by straight-line steps: near a pose each contact's distance changes linearly, and a small linear program
/// finds the turn and shift that open the tightest most. Steps that promise more than they keep are cut short; after so
/// many `steps` it ends.
pub(super) fn refine(solid: &Solid, room: Room, turn: Turn, steps: usize) -> Pose {
    let mut posed = Posed::new(solid, turn);
    let mut best = place(&posed, room, EXACT_MM);
    let mut pose = Pose::placed(&posed, turn, &best);
    let mut reach = 0.2;
    for _ in 0..steps {
        let contacts = contacts(&posed, &best, &pose, room, reach);
        let (step, promised) = best_step(&contacts);
        if promised < pose.margin + WORTH_MM {
            break;
        }
        let turn = pose.turn.spun([step[0] * reach, step[1] * reach, step[2] * reach]);
        let next = Posed::new(solid, turn);
        let found = place(&next, room, EXACT_MM);
        let kept = (found.margin - pose.margin) / (promised - pose.margin);
        if kept > 0.0 {
            pose = Pose::placed(&next, turn, &found);
            (posed, best) = (next, found);
        }
        if kept < 0.3 {
            reach *= 0.35;
        } else if kept > 0.75 {
            reach = (reach * 1.6_f64).min(0.4);
        }
        if reach < 1e-6 {
            break;
        }
    }
    pose
}

/// Distances of the touching points to wall, rim plane and floor, with their change per unit step.
fn contacts(posed: &Posed<'_>, best: &Place, pose: &Pose, room: Room, reach: f64) -> Vec<Contact> {
    let mut all: Vec<Contact> = Vec::new();
    let slope = std::f64::consts::FRAC_1_SQRT_2;
    for point in posed.witnesses(&best.towards) {
        let [x, y, z] = std::array::from_fn(|i| point[i] + pose.shift[i]);
        let out = x.hypot(y).max(1e-9);
        let sides = [
            (room.radius - out, [-x / out, -y / out, 0.0]),
            (z, [0.0, 0.0, 1.0]),
            ((room.depth + x - z) * slope, [slope, 0.0, -slope]),
        ];
        // Within one step a point moves at most by its lever and the shift.
        let most = reach * (dot(point, point).sqrt() + SHIFT_PER_TURN) * 2.0;
        for (distance, inward) in sides.into_iter().filter(|(distance, _)| *distance < pose.margin + 2.0 * most) {
            let turning = cross(point, inward);
            let rates = std::array::from_fn(|i| match i {
                0..3 => turning[i] * reach,
                _ => inward[i - 3] * reach * SHIFT_PER_TURN,
            });
            all.push(Contact { room: distance, rates });
        }
    }
    if all.len() > CONTACTS {
        all.select_nth_unstable_by(CONTACTS, |a, b| a.room.total_cmp(&b.room));
        all.truncate(CONTACTS);
    }
    all
}
