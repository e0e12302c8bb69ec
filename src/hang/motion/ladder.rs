//! The equations of a chain: every point has to do with its two neighbours alone.

use super::vector::{V, v};

/// A symmetric matrix of two rows.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Sym {
    xx: f64,
    xy: f64,
    yy: f64,
}

impl Sym {
    /// The same stiffness `all` in every direction.
    pub(super) const fn even(all: f64) -> Self {
        Self { xx: all, xy: 0.0, yy: all }
    }

    /// Stiffness `along` a direction and `across` it.
    pub(super) fn along(direction: V, along: f64, across: f64) -> Self {
        let more = along - across;
        Self {
            xx: across + more * direction.x * direction.x,
            xy: more * direction.x * direction.y,
            yy: across + more * direction.y * direction.y,
        }
    }

    pub(super) fn plus(self, other: Self) -> Self {
        Self { xx: self.xx + other.xx, xy: self.xy + other.xy, yy: self.yy + other.yy }
    }

    pub(super) fn times(self, by: f64) -> Self {
        Self { xx: self.xx * by, xy: self.xy * by, yy: self.yy * by }
    }

    pub(super) fn on(self, to: V) -> V {
        v(self.xx * to.x + self.xy * to.y, self.xy * to.x + self.yy * to.y)
    }

    /// The inverse of a positive matrix.
    pub(super) fn inverse(self) -> Self {
        let by = 1.0 / (self.xx * self.yy - self.xy * self.xy);
        Self { xx: self.yy * by, xy: -self.xy * by, yy: self.xx * by }
    }

    /// `self · middle · self`.
    pub(super) fn around(self, middle: Self) -> Self {
        let first = middle.on(v(self.xx, self.xy));
        let second = middle.on(v(self.xy, self.yy));
        Self {
            xx: self.xx * first.x + self.xy * first.y,
            xy: self.xx * second.x + self.xy * second.y,
            yy: self.xy * second.x + self.yy * second.y,
        }
    }
}

/// One system: `own[i]·x[i] + next[i-1]·x[i-1] + next[i]·x[i+1] = right[i]`, positive as a whole.
#[derive(Debug, Clone, Default)]
pub(super) struct Ladder {
    pub own: Vec<Sym>,
    pub next: Vec<Sym>,
    pub right: Vec<V>,
}

impl Ladder {
    /// Makes room for `points`, each with the stiffness `own` in every direction and nothing else.
    pub(super) fn clear(&mut self, points: usize, own: f64) {
        self.own.clear();
        self.own.resize(points, Sym::even(own));
        self.next.clear();
        self.next.resize(points, Sym::default());
        self.right.clear();
        self.right.resize(points, V::ZERO);
    }

    /// Adds what pulls between the points `left` and `left + 1`, at `share` of the way: how stiff it is, and its pull.
    pub(super) fn add(&mut self, left: usize, share: f64, stiff: Sym, pull: V) {
        self.own[left] = self.own[left].plus(stiff.times((1.0 - share) * (1.0 - share)));
        self.own[left + 1] = self.own[left + 1].plus(stiff.times(share * share));
        self.next[left] = self.next[left].plus(stiff.times(share * (1.0 - share)));
        self.right[left] += pull * (1.0 - share);
        self.right[left + 1] += pull * share;
    }

    /// Nothing moves point `i`.
    pub(super) fn fix(&mut self, i: usize) {
        (self.own[i], self.right[i], self.next[i]) = (Sym::even(1.0), V::ZERO, Sym::default());
        if i > 0 {
            self.next[i - 1] = Sym::default();
        }
    }

    /// Replaces `right` by the answer: elimination from one end to the other and back.
    pub(super) fn solve(&mut self) {
        let points = self.own.len();
        for i in 0..points {
            if i > 0 {
                let step = self.next[i - 1];
                self.own[i] = self.own[i].plus(step.around(self.own[i - 1]).times(-1.0));
                let carried = step.on(self.own[i - 1].on(self.right[i - 1]));
                self.right[i] -= carried;
            }
            // What is needed of it from here on is its inverse.
            self.own[i] = self.own[i].inverse();
        }
        for i in (0..points).rev() {
            let after = if i + 1 < points { self.next[i].on(self.right[i + 1]) } else { V::ZERO };
            self.right[i] = self.own[i].on(self.right[i] - after);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The answer put into the equations it is to solve.
    #[test]
    fn the_answer_solves_the_equations() {
        let mut ladder = Ladder::default();
        ladder.clear(6, 0.0);
        for i in 0..6 {
            let direction = v((i as f64).cos(), (i as f64).sin());
            let stiff = Sym::along(direction, 1e3, 30.0);
            ladder.own[i] = ladder.own[i].plus(Sym::even(20.0)).plus(stiff);
            if i < 5 {
                ladder.own[i + 1] = ladder.own[i + 1].plus(stiff);
                ladder.next[i] = stiff.times(-1.0);
            }
            ladder.right[i] = v(i as f64, 3.0 - i as f64);
        }
        ladder.fix(0);
        let given = ladder.clone();
        ladder.solve();
        for i in 0..6 {
            let mut sum = given.own[i].on(ladder.right[i]);
            if i > 0 {
                sum += given.next[i - 1].on(ladder.right[i - 1]);
            }
            if i < 5 {
                sum += given.next[i].on(ladder.right[i + 1]);
            }
            assert!((sum - given.right[i]).length() < 1e-8, "{i}: {sum:?}");
        }
        assert_eq!(ladder.right[0], V::ZERO);
    }

    #[test]
    fn a_matrix_between_two_others() {
        let a = Sym::along(v(0.6, 0.8), 5.0, 2.0);
        let b = Sym::along(v(0.8, -0.6), 3.0, 1.0);
        let to = v(0.3, -0.7);
        assert!((a.around(b).on(to) - a.on(b.on(a.on(to)))).length() < 1e-12);
        assert!((a.inverse().on(a.on(to)) - to).length() < 1e-12);
        assert!((a.on(v(0.6, 0.8)) - v(3.0, 4.0)).length() < 1e-12);
    }
}
