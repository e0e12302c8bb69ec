//! Fingers on the piece.

use super::vector::V;
use crate::craft::Token;

/// A finger is followed with this delay, in seconds: what is held moves, it does not jump.
const FOLLOW_S: f64 = 0.028;
/// No held place moves faster than this, in mm/s, however wild the finger.
const FASTEST_MM_S: f64 = 2500.0;

/// What a finger holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum What {
    /// A place of the base: arc along a chain, or angle on a bangle as it was made.
    Base(f64),
    /// The body of a drop.
    Body(Token),
}

/// One finger that holds something.
#[derive(Debug, Clone)]
pub(super) struct Grip {
    pub finger: u64,
    pub what: What,
    /// From the finger to the held place when it took hold.
    pub offset: V,
    /// Where the finger wants the held place.
    pub goal: V,
    /// Where the held place is asked to be now, and was in the step before.
    pub now: V,
    pub before: V,
}

impl Grip {
    /// Follows the finger for `h` seconds.
    pub(super) fn follow(&mut self, h: f64) {
        self.before = self.now;
        let step = (self.goal - self.now) * (1.0 - (-h / FOLLOW_S).exp());
        self.now += step.at_most(FASTEST_MM_S * h);
    }
}

/// Moves `place` as little as it takes to be within all discs (centre, radius), as far as a few rounds reach.
pub(super) fn within(mut place: V, discs: &[(V, f64)]) -> V {
    for _ in 0..12 {
        for &(centre, radius) in discs {
            place = centre + (place - centre).at_most(radius);
        }
    }
    place
}

/// Draws `place` towards the middle of `a` and `b` until its distances to them add up to `sum` at most.
pub(super) fn within_oval(place: V, a: V, b: V, sum: f64) -> V {
    let (middle, far) = (a.lerp(b, 0.5), |p: V| (p - a).length() + (p - b).length());
    if far(place) <= sum {
        return place;
    }
    let (mut inside, mut outside) = (0.0, 1.0);
    for _ in 0..20 {
        let share = (inside + outside) / 2.0;
        let held = if far(middle.lerp(place, share)) <= sum { &mut inside } else { &mut outside };
        *held = share;
    }
    middle.lerp(place, inside)
}

#[cfg(test)]
mod tests {
    use super::{super::vector::v, *};

    #[test]
    fn a_place_is_brought_within_reach() {
        let discs = [(v(0.0, 0.0), 6.0), (v(10.0, 0.0), 6.0)];
        assert_eq!(within(v(5.0, 1.0), &discs), v(5.0, 1.0));
        let far = within(v(5.0, 60.0), &discs);
        assert!(discs.iter().all(|&(centre, radius)| (far - centre).length() < radius + 0.1), "{far:?}");
    }

    #[test]
    fn a_place_is_brought_within_an_oval() {
        let (a, b) = (v(-3.0, 0.0), v(3.0, 0.0));
        assert_eq!(within_oval(v(4.0, 1.0), a, b, 10.0), v(4.0, 1.0));
        // The half axes of that oval are 5 and 4.
        assert!((within_oval(v(0.0, 90.0), a, b, 10.0) - v(0.0, 4.0)).length() < 1e-3);
        assert!((within_oval(v(-50.0, 0.0), a, b, 10.0) - v(-5.0, 0.0)).length() < 1e-3);
    }

    #[test]
    fn a_finger_is_followed_but_not_at_any_speed() {
        let mut grip = Grip {
            finger: 1,
            what: What::Base(0.0),
            offset: V::ZERO,
            goal: v(3.0, 0.0),
            now: V::ZERO,
            before: V::ZERO,
        };
        for _ in 0..1000 {
            grip.follow(0.001);
        }
        assert!((grip.now.x - 3.0).abs() < 1e-9);
        grip.goal = v(1e9, 0.0);
        grip.follow(0.001);
        assert!((grip.now.x - 5.5).abs() < 1e-9, "{:?}", grip.now);
    }
}
