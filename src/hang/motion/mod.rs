//! How a piece moves: a chain or a bangle with its drops, under any number of fingers.
//!
//! Positions are predicted from speeds, corrected so that every length is kept, and give the new speeds, in many small
//! steps a frame (position-based dynamics with small steps: Macklin et al., "Small steps in physics simulation", SCA
//! 2019). All lengths of a chain are corrected together by one direct solution, the turning of the pulls with the links
//! included: heavy drops on a light chain need both. Steps have one size, so the motion does not depend on the frame
//! rate, and the same input gives the same motion.
//!
//! ```text
//! vector, ladder  the plane; the equations of a chain
//! slide, hung     rings side by side; a drop as it moves
//! grip            fingers
//! chain, hoop     the two kinds of base
//! dangle          a drop in the hand, off the base
//! landing         a drop that takes hold, and what is left when one is pulled off
//! plan            what moves
//! ```

mod chain;
mod dangle;
mod grip;
mod hoop;
mod hung;
mod ladder;
mod landing;
mod plan;
mod slide;
mod vector;

pub use chain::ChainPlan;
pub use dangle::Dangle;
pub use hoop::HoopPlan;
pub use hung::Hanging;
pub use plan::{MotionPlan, MovingBase};

use self::{
    chain::Chain,
    grip::{Grip, What},
    hoop::Hoop,
    hung::{Hung, Line, Work, keep_bodies_apart, slide},
    slide::{Slider, keep_apart},
    vector::{V, v},
};
use super::{G, HangError, Point, RingAt};
use crate::craft::Token;

/// Free fall in mm/s².
const GRAVITY: f64 = G * 1000.0;
/// Length of one step.
const STEP_S: f64 = 1.0 / 960.0;
/// A frame that took longer is taken as this long.
const LONGEST_FRAME_S: f64 = 0.1;
/// What is slower than this everywhere for so long is still.
const STILL_MM_S: f64 = 5.0;
const STILL_S: f64 = 0.25;

/// How air and friction slow everything.
#[derive(Debug, Clone, Copy)]
struct Feel {
    /// Share of its speed that everything loses a second, as a rate.
    air_per_s: f64,
    /// What dry friction takes from every speed, in mm/s²; it ends a swing that air would let go on for long.
    dry_mm_s2: f64,
    /// As `air_per_s`, for rings that slide.
    slide_per_s: f64,
}

impl Feel {
    /// A chain of metal in a room, to the eye. Common practice, no source.
    const ROOM: Self = Self { air_per_s: 2.5, dry_mm_s2: 12.0, slide_per_s: 3.0 };

    fn slowed(&self, velocity: V, h: f64) -> V {
        let speed = velocity.length();
        let kept = speed * (-self.air_per_s * h).exp() - self.dry_mm_s2 * h;
        if kept > 0.0 { velocity * (kept / speed) } else { V::ZERO }
    }
}

#[derive(Debug, Clone)]
enum Moving {
    Chain(Box<Chain>),
    Hoop(Box<Hoop>),
}

impl Moving {
    fn line(&self) -> &dyn Line {
        match self {
            Self::Chain(chain) => &**chain,
            Self::Hoop(hoop) => &**hoop,
        }
    }
}

/// A piece in motion. Places are those of [`super::PiecePlaces`]: a necklace's left hang point, or the middle of a
/// bangle at rest, is (0, 0).
#[derive(Debug, Clone)]
pub struct Motion {
    moving: Moving,
    /// The drops, left to right.
    hung: Vec<Hung>,
    work: Work,
    rho: f64,
    feel: Feel,
    grips: Vec<Grip>,
    push: V,
    owed_s: f64,
    still_s: f64,
}

impl Motion {
    /// The piece at rest.
    ///
    /// # Errors
    /// It does not hang; see [`super::necklace`] and [`super::bangle`].
    pub fn at_rest(plan: &MotionPlan) -> Result<Self, HangError> {
        let (moving, hung) = match plan.base {
            MovingBase::Chain(chain) => {
                let (chain, hung) = Chain::at_rest(chain, &plan.drops, plan.rho)?;
                (Moving::Chain(Box::new(chain)), hung)
            }
            MovingBase::Hoop(hoop) => {
                let (hoop, hung) = Hoop::at_rest(hoop, &plan.drops, plan.rho)?;
                (Moving::Hoop(Box::new(hoop)), hung)
            }
        };
        Ok(Self {
            moving,
            hung,
            work: Work::default(),
            rho: plan.rho,
            feel: Feel::ROOM,
            grips: Vec::new(),
            push: V::ZERO,
            owed_s: 0.0,
            still_s: STILL_S,
        })
    }

    /// The piece has become `plan`: drops that were there go on as they are, new ones hang at rest between their
    /// neighbours, and everything makes room for them. Another base starts at rest.
    ///
    /// # Errors
    /// The new piece does not hang; nothing has changed then.
    pub fn follow(&mut self, plan: &MotionPlan) -> Result<(), HangError> {
        let next = Self::at_rest(plan)?;
        let same = match (&self.moving, plan.base) {
            (Moving::Chain(chain), MovingBase::Chain(other)) => *chain.plan() == other,
            (Moving::Hoop(hoop), MovingBase::Hoop(other)) => *hoop.plan() == other,
            _ => false,
        };
        if !same {
            *self = next;
            return Ok(());
        }
        if let (Moving::Hoop(hoop), Moving::Hoop(other)) = (&mut self.moving, &next.moving) {
            hoop.rest_as(other);
        }
        let had = std::mem::take(&mut self.hung);
        let mut hung = next.hung;
        let mut changed = hung.len() != had.len();
        for one in &mut hung {
            match had.iter().find(|was| was.is == one.is) {
                Some(was) => *one = was.clone(),
                None => {
                    changed = true;
                    // Its ring is at its rest place of the new piece, on the base as it is now.
                    *one = Hung::at_rest(one.is, one.at, self.moving.line().at(one.at));
                }
            }
        }
        changed |= self.in_order(&mut hung, &had) | (self.rho != plan.rho);
        self.rho = plan.rho;
        self.grips.retain(|grip| match grip.what {
            What::Base(_) => true,
            What::Body(token) => hung.iter().any(|one| one.is.token == token),
        });
        self.hung = hung;
        if changed {
            self.still_s = 0.0;
        }
        Ok(())
    }

    /// Brings the rings of `hung` into their order: those that are out of it meet in the middle, each with its body. What
    /// is new gives way. Gives whether something moved.
    fn in_order(&self, hung: &mut [Hung], had: &[Hung]) -> bool {
        let light = |one: &Hung| if had.iter().any(|was| was.is == one.is) { 1.0 } else { 1e-6 };
        let mut sliders: Vec<Slider> =
            hung.iter().map(|one| Slider { at: one.at, mass: one.is.mass_g * light(one), gap: 0.0 }).collect();
        keep_apart(&mut sliders, f64::INFINITY, &mut Vec::new());
        let mut moved = false;
        for (one, slider) in hung.iter_mut().zip(&sliders) {
            if slider.at != one.at {
                moved = true;
                let by = self.moving.line().at(slider.at) - self.moving.line().at(one.at);
                one.place += by;
                one.at = slider.at;
            }
        }
        moved
    }

    /// A finger takes hold of the base where it is nearest to `at`, and of nothing else from then on.
    pub fn take_base(&mut self, finger: u64, at: Point) {
        let at = V::from(at);
        let (place, held) = match &self.moving {
            Moving::Chain(chain) => {
                let arc = chain.nearest(at);
                (arc, chain.at(arc))
            }
            Moving::Hoop(hoop) => hoop.grip(at),
        };
        self.take(finger, What::Base(place), at, held);
    }

    /// A finger takes hold of a drop. Nothing happens if it does not hang here, or another finger has it.
    pub fn take_drop(&mut self, finger: u64, token: Token, at: Point) {
        if let Some(held) = self.hung.iter().find(|one| one.is.token == token).map(|one| one.place) {
            self.take(finger, What::Body(token), at.into(), held);
        }
    }

    fn take(&mut self, finger: u64, what: What, at: V, held: V) {
        // A drop can't follow two fingers: the first one has it.
        let taken = matches!(what, What::Body(_)) && self.grips.iter().any(|grip| grip.what == what);
        if taken || !at.x.is_finite() || !at.y.is_finite() {
            return;
        }
        self.release(finger);
        self.grips.push(Grip { finger, what, offset: held - at, goal: held, now: held, before: held });
        self.still_s = 0.0;
    }

    /// The finger moves to `to`.
    pub fn pull(&mut self, finger: u64, to: Point) {
        let to = V::from(to);
        if let Some(grip) = self.grips.iter_mut().find(|grip| grip.finger == finger)
            && to.x.is_finite()
            && to.y.is_finite()
        {
            let goal = to + grip.offset;
            if grip.goal != goal {
                grip.goal = goal;
                self.still_s = 0.0;
            }
        }
    }

    /// The finger lets go.
    pub fn release(&mut self, finger: u64) {
        if self.holds(finger) {
            self.grips.retain(|grip| grip.finger != finger);
            self.still_s = 0.0;
        }
    }

    /// Every finger that is not among these lets go.
    pub fn release_all_but(&mut self, down: impl Fn(u64) -> bool) {
        let gone: Vec<u64> = self.grips.iter().map(|grip| grip.finger).filter(|finger| !down(*finger)).collect();
        for finger in gone {
            self.release(finger);
        }
    }

    /// Whether this finger holds something.
    pub fn holds(&self, finger: u64) -> bool {
        self.grips.iter().any(|grip| grip.finger == finger)
    }

    /// A steady push from the side, in mm/s²; zero ends it.
    pub fn breathe(&mut self, sideways_mm_s2: f64) {
        if self.push.x != sideways_mm_s2 {
            self.push = v(sideways_mm_s2, 0.0);
            self.still_s = 0.0;
        }
    }

    /// Moves everything on by `seconds`.
    pub fn advance(&mut self, seconds: f64) {
        if self.asleep() || !seconds.is_finite() {
            self.owed_s = 0.0;
            return;
        }
        self.owed_s += seconds.clamp(0.0, LONGEST_FRAME_S);
        // A hair less counts as a step, or rounding would make it depend on how the time was cut up.
        while self.owed_s > STEP_S - 1e-9 {
            self.owed_s -= STEP_S;
            self.step();
        }
    }

    fn step(&mut self) {
        let Self { moving, hung, work, grips, feel, push, rho, .. } = self;
        for grip in &mut *grips {
            grip.follow(STEP_S);
        }
        let most = match moving {
            Moving::Chain(chain) => {
                chain.restrain(grips, hung);
                chain::FASTEST_MM_S
            }
            Moving::Hoop(hoop) => {
                hoop.swing(hung, grips, feel, *push, STEP_S);
                hoop::FASTEST_MM_S
            }
        };
        slide(moving.line(), hung, grips, (-feel.slide_per_s * STEP_S).exp(), *rho, STEP_S, work);
        let fall = (*push + v(0.0, GRAVITY)) * STEP_S;
        for one in &mut *hung {
            one.fall(fall, STEP_S);
        }
        let base = match moving {
            Moving::Chain(chain) => {
                chain.step(hung, grips, feel, fall, STEP_S);
                chain.fastest()
            }
            Moving::Hoop(hoop) => {
                hoop.hold(hung, grips, STEP_S);
                hoop.fastest()
            }
        };
        keep_bodies_apart(moving.line(), hung, STEP_S);
        let mut fastest = base;
        for one in hung {
            let velocity = (one.place - one.before) * (1.0 / STEP_S);
            one.velocity = feel.slowed(velocity, STEP_S).at_most(most);
            fastest = fastest.max(one.velocity.length()).max(one.speed.abs());
        }
        let led = self.grips.iter().any(|grip| (grip.now - grip.before).length() > STILL_MM_S * STEP_S);
        self.still_s = if fastest < STILL_MM_S && !led { self.still_s + STEP_S } else { 0.0 };
        if self.still_s >= STILL_S {
            self.hush(0.0);
        }
    }

    /// Whether nothing moves, be it held or not.
    pub fn asleep(&self) -> bool {
        self.still_s >= STILL_S
    }

    /// The ends of every link that is drawn, left to right; none for a bangle.
    pub fn links(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        let (points, fine) = match &self.moving {
            Moving::Chain(chain) => chain.points(),
            Moving::Hoop(_) => (&[][..], 1),
        };
        (0..points.len().saturating_sub(1) / fine)
            .map(move |i| (points[i * fine].into(), points[(i + 1) * fine].into()))
    }

    /// Middle of the bangle and how far it is turned, in radians, positive towards the right at its lowest point.
    pub fn hoop(&self) -> Option<(Point, f64)> {
        match &self.moving {
            Moving::Hoop(hoop) => Some((hoop.middle().into(), hoop.turn_rad())),
            Moving::Chain(_) => None,
        }
    }

    /// Every drop with the place of its ring, left to right.
    pub fn rings(&self) -> impl Iterator<Item = (Token, RingAt)> + '_ {
        self.hung.iter().map(|one| {
            let ring = self.moving.line().at(one.at);
            let (left, right) = self.moving.line().directions(one.at);
            let (along, down) = (left + right, one.place - ring);
            let at = RingAt {
                x_mm: ring.x,
                y_mm: ring.y,
                slope_rad: along.y.atan2(along.x),
                lean_rad: down.x.atan2(down.y),
            };
            (one.is.token, at)
        })
    }
}

#[cfg(test)]
mod tests;
