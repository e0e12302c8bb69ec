//! A bangle with its drops, as it moves.
//!
//! It hangs by the inside of its upper edge, as on a peg: it swings about that place and slips round on it. Its drops
//! slide along the inside.

use super::{
    Feel, GRAVITY,
    grip::{Grip, What},
    hung::{Hanging, Hung, Line, gaps_mm},
    vector::{V, v},
};
use crate::hang::{BangleLoad, HangError, WRIST_GRIP, bangle};

/// How fast a lifted bangle falls back onto its peg: its swing up and down, in 1/s².
const LIFT_PER_S2: f64 = 500.0;
/// How fast a turned bangle turns back, in 1/s², and what slows it, in 1/s.
const TURN_PER_S2: f64 = 30.0;
const TURN_LOSS_PER_S: f64 = 4.0;
/// What slows the swing up and down beyond air, in 1/s: the peg.
const LIFT_LOSS_PER_S: f64 = 18.0;
/// How far its middle can be pulled, as a share of its inside radius.
const REACH_SHARE: f64 = 1.2;
/// How much a finger gives, in mm per µN.
const FINGER_GIVE: f64 = 2e-7;
/// No part of it moves faster than this, in mm/s.
pub(super) const FASTEST_MM_S: f64 = 3000.0;

/// What a bangle is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoopPlan {
    /// Inside diameter in millimetres.
    pub inside_mm: f64,
    /// Diameter of its wire.
    pub wire_mm: f64,
    /// Its weight, hook included.
    pub mass_g: f64,
    /// What its hook weighs beyond plain wire.
    pub hook_g: f64,
    /// How much of it drops can hang on, its middle opposite the hook.
    pub free_arc_deg: f64,
}

/// The bangle in motion. A ring's place is counted along the inside from the left end of the free arc.
#[derive(Debug, Clone)]
pub(super) struct Hoop {
    plan: HoopPlan,
    middle: V,
    velocity: V,
    turn: f64,
    /// How far it is turned at rest.
    rest_turn: f64,
    spin: f64,
}

impl Hoop {
    /// At rest, with its drops.
    pub(super) fn at_rest(plan: HoopPlan, drops: &[Hanging], rho: f64) -> Result<(Self, Vec<Hung>), HangError> {
        let rest = bangle(&BangleLoad {
            inside_mm: plan.inside_mm,
            free_arc_deg: plan.free_arc_deg,
            ring_g: plan.mass_g,
            hook_g: plan.hook_g,
            grip: WRIST_GRIP,
            masses_g: drops.iter().map(|drop| drop.mass_g).collect(),
            gaps_mm: gaps_mm(drops, rho),
        })?;
        let turn = rest.turn_deg.to_radians();
        let hoop = Self { plan, middle: V::ZERO, velocity: V::ZERO, turn, rest_turn: turn, spin: 0.0 };
        let places = rest.angles_deg.iter().map(|angle| hoop.place_of(angle.to_radians()));
        let hung = drops.iter().zip(places).map(|(is, at)| Hung::at_rest(*is, at, hoop.at(at))).collect();
        Ok((hoop, hung))
    }

    pub(super) const fn plan(&self) -> &HoopPlan {
        &self.plan
    }

    /// Rests as `other` does from now on.
    pub(super) const fn rest_as(&mut self, other: &Self) {
        self.rest_turn = other.rest_turn;
    }

    pub(super) const fn middle(&self) -> V {
        self.middle
    }

    pub(super) const fn turn_rad(&self) -> f64 {
        self.turn
    }

    fn inside(&self) -> f64 {
        self.plan.inside_mm / 2.0
    }

    /// Radius of the wire's centre line.
    fn line(&self) -> f64 {
        (self.plan.inside_mm + self.plan.wire_mm) / 2.0
    }

    fn half_arc(&self) -> f64 {
        self.plan.free_arc_deg.min(360.0).to_radians() / 2.0
    }

    /// Angle of a place from straight down, positive to the right.
    fn angle_of(&self, at: f64) -> f64 {
        at / self.inside() - self.half_arc() + self.turn
    }

    fn place_of(&self, angle: f64) -> f64 {
        (angle - self.turn + self.half_arc()) * self.inside()
    }

    fn point(&self, angle: f64) -> V {
        self.middle + v(angle.sin(), angle.cos()) * self.line()
    }

    fn angle_towards(&self, p: V) -> f64 {
        let out = p - self.middle;
        out.x.atan2(out.y)
    }

    /// Where a finger at `p` takes hold: the angle on the bangle as it was made, and the place.
    pub(super) fn grip(&self, p: V) -> (f64, V) {
        let angle = self.angle_towards(p);
        (angle - self.turn, self.point(angle))
    }

    /// Brings the bodies to where they hang on their rings, or are in a finger.
    pub(super) fn hold(&self, hung: &mut [Hung], grips: &[Grip], h: f64) {
        for one in hung {
            if let Some(grip) = grips.iter().find(|grip| grip.what == What::Body(one.is.token)) {
                one.place = grip.now;
            }
            let (down, length) = (one.place - self.at(one.at)).split();
            // Thrown up, a drop is free.
            let over = (length - one.is.swing_mm).max(0.0);
            one.place -= down * over;
            one.pull = over * one.is.mass_g / (h * h);
        }
    }

    /// The bangle itself, whose middle swings as a ring on a peg does: its square of the rate is g/(2R). Source: the
    /// physical pendulum, a thin ring's moment about its own edge being 2 m R².
    pub(super) fn swing(&mut self, hung: &mut [Hung], grips: &[Grip], feel: &Feel, push: V, h: f64) {
        let (was, was_turned) = (self.middle, self.turn);
        let sideways = GRAVITY / (2.0 * self.inside());
        self.velocity.x += (push.x - sideways * self.middle.x) * h;
        self.velocity.y += (-LIFT_PER_S2 * self.middle.y - LIFT_LOSS_PER_S * self.velocity.y) * h;
        self.spin += (-TURN_PER_S2 * (self.turn - self.rest_turn) - TURN_LOSS_PER_S * self.spin) * h;
        self.middle += self.velocity * h;
        self.turn += self.spin * h;
        let (inverse, give) = (1.0 / self.plan.mass_g, FINGER_GIVE / (h * h));
        for _ in 0..2 {
            for grip in grips {
                let What::Base(angle) = grip.what else { continue };
                for axis in [v(1.0, 0.0), v(0.0, 1.0)] {
                    let angle = angle + self.turn;
                    // A thin ring's moment is m R²: turning and shifting weigh alike.
                    let along = v(angle.cos(), -angle.sin()).dot(axis);
                    // What it can't follow at once it follows in the next steps.
                    let off = (self.point(angle) - grip.now).dot(axis).clamp(-FASTEST_MM_S * h, FASTEST_MM_S * h);
                    let pull = -off / (inverse * (1.0 + along * along) + give);
                    self.middle += axis * (inverse * pull);
                    self.turn += inverse * along * pull / self.line();
                }
            }
        }
        self.middle = self.middle.at_most(REACH_SHARE * self.inside());
        let most = FASTEST_MM_S * h / self.line();
        self.turn = was_turned + (self.turn - was_turned).clamp(-most, most);
        self.velocity = feel.slowed((self.middle - was) * (1.0 / h), h);
        self.spin = (self.turn - was_turned) / h;
        if self.spin.abs() * self.line() < feel.dry_mm_s2 * h
            && ((self.turn - self.rest_turn) * TURN_PER_S2).abs() * self.line() < feel.dry_mm_s2
        {
            self.spin = 0.0;
        }
        let turned = self.turn - was_turned;
        // Once round is as it was.
        self.turn -= std::f64::consts::TAU * (self.turn / std::f64::consts::TAU).round();
        // Rings stay where they are while the bangle turns beneath them.
        for one in hung {
            one.at -= turned * (self.plan.inside_mm / 2.0);
        }
    }

    /// The fastest of its wire, in mm/s.
    pub(super) fn fastest(&self) -> f64 {
        self.velocity.length().max(self.spin.abs() * self.line())
    }

    /// Takes all its speed away, so that it stops where it is.
    /// Takes all but this share of its speed away.
    pub(super) fn slow(&mut self, kept: f64) {
        (self.velocity, self.spin) = (self.velocity * kept, self.spin * kept);
    }
}

impl Line for Hoop {
    fn length(&self) -> f64 {
        2.0 * self.half_arc() * self.inside()
    }

    fn at(&self, at: f64) -> V {
        self.point(self.angle_of(at))
    }

    fn directions(&self, at: f64) -> (V, V) {
        let angle = self.angle_of(at);
        let along = v(angle.cos(), -angle.sin());
        (along, along)
    }

    /// The place of the free arc nearest to `p`.
    fn nearest(&self, p: V) -> f64 {
        let from_middle = (self.angle_towards(p) - self.turn + std::f64::consts::PI).rem_euclid(std::f64::consts::TAU);
        let angle = from_middle - std::f64::consts::PI;
        (angle.clamp(-self.half_arc(), self.half_arc()) + self.half_arc()) * self.inside()
    }
}
