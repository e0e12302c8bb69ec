//! How the piece moves towards its rest: drops ease to their places and swing; a tugged base springs back.

use std::collections::HashMap;

use bevy::prelude::*;

use super::{
    super::{idle::Idle, known::Derived, pointer::Fingers, power::Awake, session::Screen, session::Session, theme},
    Flights, Hanger,
};
use crate::{craft::Token, hang::Point};

/// A critically damped approach is at 98 % after this many time constants.
const SETTLED: f32 = 5.8;
/// A drop's swing, in radians per second at rest: about that of a 40 mm pendulum, slowed to please the eye.
const SWING_RATE: f32 = 9.0;
/// How fast a swing dies, per second.
const SWING_LOSS: f32 = 2.2;
/// The base on its spring, as the drops.
const TUG_RATE: f32 = 7.5;
/// See [`SWING_LOSS`].
const TUG_LOSS: f32 = 3.4;
/// How far the base follows a finger, and at most, in pixels.
const TUG_SHARE: f32 = 0.75;
const TUG_MOST: f32 = 190.0;
/// The sample on Welcome sways so long after the last touch, then sleeps.
const SWAY_S: f32 = 24.0;
/// How far it sways, in pixels at scale 1.
const SWAY_PX: f32 = 16.0;

/// One drop as it moves. Millimetres of the piece.
#[derive(Debug, Clone, Default)]
pub(super) struct Body {
    pub at: Vec2,
    speed: Vec2,
    /// Radians from hanging straight down, positive to the right.
    pub lean: f32,
    spin: f32,
    /// Its place when last worked out, to tell a new one.
    known: bool,
}

/// The piece as it moves.
#[derive(Resource, Debug, Default)]
pub(super) struct Motion {
    pub chain: Vec<Vec2>,
    pub bodies: HashMap<Token, Body>,
    /// How far the lowest point is from its rest, in pixels of the window (y downwards).
    pub tug: Vec2,
    tug_speed: Vec2,
}

/// What is shown: the guest's drops, or the sample's with numbers of their own.
pub(super) fn shown(session: &Session, derived: &Derived) -> Vec<(Token, String)> {
    let own = &session.history.now().drops;
    match &derived.piece {
        Some(piece) if own.is_empty() => (0..).zip(piece.drops.iter().cloned()).collect(),
        Some(_) => own.iter().map(|hung| (hung.token, hung.kind.clone())).collect(),
        None => vec![],
    }
}

fn vec(p: &Point) -> Vec2 {
    Vec2::new(p.x_mm as f32, p.y_mm as f32)
}

/// One step of a critically damped approach to `goal`, exact for any step. Gives whether it is there.
fn approach(at: &mut Vec2, speed: &mut Vec2, goal: Vec2, seconds: f32) -> bool {
    let rate = SETTLED / theme::SETTLE_S;
    let (away, decay) = (*at - goal, (-rate * seconds).exp());
    let push = (*speed + away * rate) * seconds;
    *at = goal + (away + push) * decay;
    *speed = (*speed - push * rate) * decay;
    at.distance_squared(goal) < 1e-3 && speed.length_squared() < 1e-1
}

#[expect(clippy::too_many_arguments, reason = "a system's parameters are what it reads")]
pub(super) fn settle(
    mut motion: ResMut<Motion>,
    derived: Res<Derived>,
    session: Res<Session>,
    hanger: Res<Hanger>,
    fingers: Res<Fingers>,
    flights: Res<Flights>,
    idle: Res<Idle>,
    screen: Res<State<Screen>>,
    time: Res<Time<Real>>,
    mut awake: ResMut<Awake>,
) {
    let seconds = time.delta_secs().clamp(0.0, 0.05);
    let motion = &mut *motion;
    let Some(places) = &derived.places else {
        motion.chain.clear();
        motion.bodies.clear();
        return;
    };
    let mut still = true;

    // The chain: point by point, unless it has become another.
    let goals = places.chain.iter().map(vec);
    if motion.chain.len() == places.chain.len() {
        let step = 1.0 - (-SETTLED * seconds / theme::SETTLE_S).exp();
        for (at, goal) in motion.chain.iter_mut().zip(goals) {
            still &= at.distance_squared(goal) < 1e-3;
            *at += (goal - *at) * step;
        }
    } else {
        motion.chain = goals.collect();
        motion.bodies.clear();
    }

    // The tug.
    let pull = fingers.tug().map(|tug| Vec2::new(tug.x, tug.y * 0.5) * TUG_SHARE);
    let sway_left = (1.0 - idle.quiet_s() / SWAY_S).clamp(0.0, 1.0);
    let before = motion.tug;
    if let Some(pull) = pull {
        let step = 1.0 - (-18.0 * seconds).exp();
        motion.tug += (pull.clamp_length_max(TUG_MOST) - motion.tug) * step;
        motion.tug_speed = if seconds > 0.0 { (motion.tug - before) / seconds } else { Vec2::ZERO };
        still = false;
    } else if *screen.get() == Screen::Welcome && sway_left > 0.0 {
        let phase = idle.on_screen_s * 1.35;
        let goal = Vec2::new(phase.sin() * SWAY_PX * sway_left.sqrt(), 0.0);
        motion.tug += (goal - motion.tug) * (1.0 - (-4.0 * seconds).exp());
        motion.tug_speed = Vec2::ZERO;
        still = false;
    } else {
        let force = -motion.tug * TUG_RATE * TUG_RATE - motion.tug_speed * TUG_LOSS;
        motion.tug_speed += force * seconds;
        motion.tug += motion.tug_speed * seconds;
        if motion.tug.length() < 0.3 && motion.tug_speed.length() < 2.0 {
            (motion.tug, motion.tug_speed) = (Vec2::ZERO, Vec2::ZERO);
        } else {
            still = false;
        }
    }
    // The drops lag behind the base: what pushes them is its change of speed, roughly its offset.
    let push = (motion.tug - before).x / hanger.px_per_mm.max(0.1);

    let shown = shown(&session, &derived);
    for ((token, _), ring) in shown.iter().zip(&places.rings) {
        let goal = Vec2::new(ring.x_mm as f32, ring.y_mm as f32);
        let body = motion.bodies.entry(*token).or_default();
        if !body.known || fingers.sliding(*token).is_some() || flights.carries(*token) {
            let first = !body.known;
            *body = Body { at: goal, known: true, ..Body::default() };
            // What has just been hung swings a little.
            body.spin = if first && *screen.get() != Screen::Stage { 0.0 } else { 2.6 };
            still = false;
        }
        let was = body.at;
        still &= approach(&mut body.at, &mut body.speed, goal, seconds);
        if seconds > 0.0 {
            let shove = (body.at - was).x + push;
            body.spin -= shove * 0.32;
            body.spin += (-SWING_RATE * SWING_RATE * body.lean.sin() - SWING_LOSS * body.spin) * seconds;
            body.lean = (body.lean + body.spin * seconds).clamp(-1.2, 1.2);
        }
        if body.lean.abs() < 0.004 && body.spin.abs() < 0.02 {
            (body.lean, body.spin) = (0.0, 0.0);
        } else {
            still = false;
        }
    }
    motion.bodies.retain(|token, _| shown.iter().any(|(t, _)| t == token));
    if !still {
        awake.stir();
    }
}

impl Motion {
    /// How far a place of the piece is moved by the tug, in pixels: not at all at the hang points, fully at the lowest.
    pub fn tugged(&self, y_mm: f32, top_mm: f32, lowest_mm: f32) -> Vec2 {
        let share = ((y_mm - top_mm) / (lowest_mm - top_mm).max(1.0)).clamp(0.0, 1.0);
        Vec2::new(self.tug.x * share.powf(0.8), self.tug.y * share)
    }
}
