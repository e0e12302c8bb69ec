//! A drop as it moves.

use super::{
    grip::{Grip, What},
    slide::{Slider, keep_apart},
    vector::{V, v},
};
use crate::{
    craft::{DropKind, Token},
    hang::{cluster_gaps, gap_between},
};

/// A drop's figures for its motion.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hanging {
    /// Which one it is.
    pub token: Token,
    /// Its mass in grams.
    pub mass_g: f64,
    /// The wire of its ring.
    pub wire_mm: f64,
    /// Width of its body.
    pub width_mm: f64,
    /// From the base's line to where its mass would swing as a point.
    pub swing_mm: f64,
}

impl Hanging {
    /// The drop of this kind.
    ///
    /// Body and ring swing as a rod of the body's height whose upper end is the ring's depth below the line:
    /// l = a + h²/(12 a), a being the depth of its middle; for a rod that hangs by its very end that is 2h/3.
    /// Source: the physical pendulum's reduced length, I/(m a).
    pub fn new(token: Token, kind: &DropKind) -> Self {
        let height = kind.height.mm();
        let middle = kind.ring.hangs_mm() + height / 2.0;
        Self {
            token,
            mass_g: kind.weight.g(),
            wire_mm: kind.ring.wire.mm(),
            width_mm: kind.width.mm(),
            swing_mm: middle + height * height / (12.0 * middle),
        }
    }
}

/// What the rings of `drops`, left to right, keep from each other.
pub(super) fn gaps_mm(drops: &[Hanging], rho: f64) -> Vec<f64> {
    let items: Vec<(f64, f64)> = drops.iter().map(|drop| (drop.wire_mm, drop.width_mm)).collect();
    cluster_gaps(&items, rho)
}

/// A drop on the base: its ring slides along the line, its body swings below.
#[derive(Debug, Clone)]
pub(super) struct Hung {
    pub is: Hanging,
    /// Place of the ring along the line, in millimetres, and its speed.
    pub at: f64,
    pub speed: f64,
    /// Where the body is, in millimetres; at rest straight below the ring.
    pub place: V,
    pub before: V,
    pub velocity: V,
    /// What the body pulls at its ring with, in micronewtons.
    pub pull: f64,
    /// Whether it hangs on its ring; thrown up it is free.
    pub taut: bool,
    /// Where a finger holds the ring along the line, and whether it is being moved past others.
    pub held: Option<Held>,
}

/// A ring in a finger.
#[derive(Debug, Clone, Copy)]
pub(super) struct Held {
    /// Where the finger wants it.
    pub goal: f64,
    /// It is on its way: neighbours let it pass.
    pub passing: bool,
}

/// Rings that overlap (one has just been hung between two others) part no faster than this, in mm/s.
const PART_MM_S: f64 = 260.0;
/// No ring slides faster than this, in mm/s.
const SLIDE_MM_S: f64 = 3000.0;
/// A held ring follows its finger no faster than this, in mm/s.
const CARRY_MM_S: f64 = 1500.0;
/// A held ring that is slower than this makes its neighbours give way, in mm/s.
const RESTING_MM_S: f64 = 12.0;

impl Hung {
    /// At rest below `ring`.
    pub(super) fn at_rest(is: Hanging, at: f64, ring: V) -> Self {
        let place = ring + v(0.0, is.swing_mm);
        let pull = is.mass_g * super::GRAVITY;
        Self { is, at, speed: 0.0, place, before: place, velocity: V::ZERO, pull, taut: true, held: None }
    }

    /// Falls freely for `h` seconds, `fall` faster than before.
    pub(super) fn fall(&mut self, fall: V, h: f64) {
        self.before = self.place;
        self.place += (self.velocity + fall) * h;
    }

    /// The part of the body's pull that moves the ring along, as an acceleration in mm/s². `left` and `right` are the
    /// directions of the line on both sides of the ring, `down` that from the ring to the body.
    ///
    /// The ring is free of friction, so what moves it is the jump of the line's tension: with the balance of the two
    /// tensions and the pull, pull·(left + right)/(1 + left·right).
    pub(super) fn drive(&self, left: V, right: V, down: V) -> f64 {
        let pull = self.pull.clamp(0.0, 4.0 * self.is.mass_g * super::GRAVITY);
        pull / self.is.mass_g * down.dot(left + right) / (1.0 + left.dot(right)).max(0.25)
    }
}

/// How hard a ring that rests in a finger is to move.
const HELD_G: f64 = 1e6;

/// Memory that is kept from step to step.
#[derive(Debug, Clone, Default)]
pub(super) struct Work {
    drives: Vec<f64>,
    sliders: Vec<Slider>,
    /// For each slider whose it is and where it came from.
    who: Vec<(usize, f64)>,
    pools: Vec<(f64, f64, usize)>,
}

/// What rings slide along. Places are counted in millimetres from its left end.
pub(super) trait Line {
    /// Where it ends.
    fn length(&self) -> f64;
    /// The point at a place.
    fn at(&self, place: f64) -> V;
    /// Its directions to both sides of a ring there.
    fn directions(&self, place: f64) -> (V, V);
    /// The place nearest to a point.
    fn nearest(&self, p: V) -> f64;
}

/// Slides all rings for `h` seconds along `line`: by the pull of their bodies, or after the fingers that hold them. Gives
/// them their order anew where a held one has passed another. `keep` is the share of its speed that a ring keeps.
pub(super) fn slide(line: &dyn Line, hung: &mut [Hung], grips: &[Grip], keep: f64, rho: f64, h: f64, work: &mut Work) {
    let length = line.length();
    work.drives.clear();
    for one in &mut *hung {
        let grip = grips.iter().find(|grip| grip.what == What::Body(one.is.token));
        // The ring follows the finger along the base, whatever hangs in between.
        let goal = grip.map(|grip| line.nearest(grip.now - v(0.0, one.is.swing_mm)));
        let was = one.held.take();
        one.held = goal.map(|goal| Held { goal, passing: was.is_some_and(|was| was.passing) });
        let (left, right) = line.directions(one.at);
        let down = (one.place - line.at(one.at)).split().0;
        work.drives.push(one.drive(left, right, down));
    }
    work.sliders.clear();
    work.who.clear();
    for i in 0..hung.len() {
        let (left, one) = hung.split_at_mut(i);
        let one = &mut one[0];
        let from = one.at;
        let mass = match &mut one.held {
            Some(held) => {
                one.at = (one.at + (held.goal - one.at).clamp(-CARRY_MM_S * h, CARRY_MM_S * h)).clamp(0.0, length);
                // A slow mean: a finger that turns back is not at rest.
                one.speed += ((one.at - from) / h - one.speed) * 0.02;
                held.passing = one.speed.abs() > RESTING_MM_S;
                if held.passing {
                    continue;
                }
                HELD_G
            }
            None => {
                one.speed = (one.speed + work.drives[i] * h) * keep;
                one.at += one.speed * h;
                one.is.mass_g
            }
        };
        let gap = work.who.last().map_or(0.0, |&(neighbour, was)| {
            (from - was + PART_MM_S * h).clamp(0.0, gap_mm(&left[neighbour].is, &one.is, rho))
        });
        work.sliders.push(Slider { at: one.at, mass, gap });
        work.who.push((i, from));
    }
    keep_apart(&mut work.sliders, length, &mut work.pools);
    for (&(i, from), slider) in work.who.iter().zip(&work.sliders) {
        hung[i].at = slider.at;
        if hung[i].held.is_none() {
            hung[i].speed = ((slider.at - from) / h).clamp(-SLIDE_MM_S, SLIDE_MM_S);
        }
    }
    hung.sort_by(|a, b| a.at.total_cmp(&b.at));
}

/// What two neighbours' rings keep from each other.
pub(super) fn gap_mm(left: &Hanging, right: &Hanging, rho: f64) -> f64 {
    gap_between((left.wire_mm, left.width_mm), (right.wire_mm, right.width_mm), rho)
}

/// Bodies that swing against each other keep this share of their rings' distance.
const BODY_SHARE: f64 = 0.55;

/// Keeps neighbouring bodies from swinging through each other, each moved by its share of the mass.
pub(super) fn keep_bodies_apart(line: &dyn Line, hung: &mut [Hung], h: f64) {
    for i in 1..hung.len() {
        let [left, right] = &mut hung[i - 1..=i] else { continue };
        let passing = |one: &Hung| one.held.is_some_and(|held| held.passing);
        let apart = line.at(right.at).x - line.at(left.at).x;
        let overlap = BODY_SHARE * apart - (right.place.x - left.place.x);
        if overlap > 0.0 && apart > 0.0 && !passing(left) && !passing(right) {
            let overlap = overlap.min(PART_MM_S * h);
            let share = right.is.mass_g / (left.is.mass_g + right.is.mass_g);
            left.place.x -= overlap * share;
            right.place.x += overlap * (1.0 - share);
        }
    }
}
