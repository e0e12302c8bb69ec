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

/// How far a held place may be from another place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Limit {
    grip: usize,
    from: From,
    most: f64,
}

/// What a limit is measured from.
#[derive(Debug, Clone, Copy)]
enum From {
    Place(V),
    Grip(usize),
}

/// A held place stays within this share of what the chain can reach; where it was taken further away, since the chain was
/// taut there, it gets no further.
pub(super) const REACH_SHARE: f64 = 0.99;
/// No held place is held further away than this share of the chain, so that the limit as it is kept stretches nothing.
const TAKEN_SHARE: f64 = 0.995;
/// A limit counts as kept when it is passed by less than this share of it.
const KEPT_SHARE: f64 = 0.004;
/// Rounds in which all limits are kept one after the other.
const ROUNDS: usize = 24;

impl Limit {
    /// From a place that stays, with so much chain between them.
    pub(super) fn to_place(held: &Grip, grip: usize, place: V, chain_mm: f64) -> Self {
        Self { grip, from: From::Place(place), most: most(chain_mm, held.before, place) }
    }

    /// Between two held places, with so much chain between them.
    pub(super) fn between((one, grip): (&Grip, usize), (two, other): (&Grip, usize), chain_mm: f64) -> Self {
        Self { grip, from: From::Grip(other), most: most(chain_mm, one.before, two.before) }
    }

    fn ends(&self, places: &[V]) -> (V, V) {
        let from = match self.from {
            From::Place(place) => place,
            From::Grip(other) => places[other],
        };
        (places[self.grip], from)
    }

    fn is_kept(&self, places: &[V]) -> bool {
        let (to, from) = self.ends(places);
        (to - from).length() <= self.most * (1.0 + KEPT_SHARE) + 1e-9
    }
}

fn most(chain_mm: f64, before: V, from: V) -> f64 {
    (REACH_SHARE * chain_mm).max((before - from).length().min(TAKEN_SHARE * chain_mm))
}

/// Moves the held places about as little as it takes to keep all limits, which they kept in the step before.
pub(super) fn within_limits(grips: &mut [Grip], limits: &[Limit]) {
    let mut places: Vec<V> = grips.iter().map(|grip| grip.now).collect();
    let are_kept = |places: &[V]| limits.iter().all(|limit| limit.is_kept(places));
    for _ in 0..ROUNDS {
        if are_kept(&places) {
            break;
        }
        for limit in limits {
            let (to, from) = limit.ends(&places);
            let over = (to - from) - (to - from).at_most(limit.most);
            match limit.from {
                From::Place(_) => places[limit.grip] = to - over,
                // Two fingers that pull apart meet in the middle.
                From::Grip(other) => {
                    places[limit.grip] = to - over * 0.5;
                    places[other] = from + over * 0.5;
                }
            }
        }
    }
    // What keeps all limits is convex. Where the step before is in it, the way from there is gone as far as it is too;
    // where it is not, every round was one towards it.
    let on_the_way = |share: f64| -> Vec<V> {
        grips.iter().zip(&places).map(|(grip, place)| grip.before.lerp(*place, share)).collect()
    };
    let mut kept = 1.0;
    if !are_kept(&places) && are_kept(&on_the_way(0.0)) {
        let mut broken = 1.0;
        kept = 0.0;
        for _ in 0..20 {
            let share = (kept + broken) / 2.0;
            *(if are_kept(&on_the_way(share)) { &mut kept } else { &mut broken }) = share;
        }
    }
    let places = on_the_way(kept);
    for (grip, place) in grips.iter_mut().zip(places) {
        grip.now = place;
    }
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

    fn grip(before: V, now: V) -> Grip {
        Grip { finger: 1, what: What::Base(0.0), offset: V::ZERO, goal: now, now, before }
    }

    #[test]
    fn a_place_is_brought_within_reach() {
        let ends = [v(0.0, 0.0), v(10.0, 0.0)];
        let within = |to: V| {
            let mut grips = [grip(v(5.0, 0.0), to)];
            let limits = ends.map(|end| Limit::to_place(&grips[0], 0, end, 6.0));
            within_limits(&mut grips, &limits);
            grips[0].now
        };
        assert_eq!(within(v(5.0, 1.0)), v(5.0, 1.0));
        let far = within(v(5.0, 60.0));
        assert!(ends.iter().all(|end| (far - *end).length() < 6.0 * 1.005), "{far:?}");
        assert!(far.y > 3.0, "it follows as far as it goes: {far:?}");
    }

    #[test]
    fn two_places_that_pull_apart_stay_within_reach_of_each_other_and_of_the_ends() {
        let ends = [v(0.0, 0.0), v(10.0, 0.0)];
        let mut grips = [grip(v(4.9, 2.0), v(-300.0, 90.0)), grip(v(5.1, 2.0), v(200.0, 400.0))];
        let mut limits = vec![Limit::between((&grips[0], 0), (&grips[1], 1), 0.3)];
        for (i, grip) in grips.iter().enumerate() {
            limits.extend(ends.map(|end| Limit::to_place(grip, i, end, 6.0)));
        }
        within_limits(&mut grips, &limits);
        let places = [grips[0].now, grips[1].now];
        assert!((places[0] - places[1]).length() < 0.3 * 1.005, "{places:?}");
        for place in places {
            assert!(ends.iter().all(|end| (place - *end).length() < 6.0 * 1.005), "{places:?}");
        }
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
