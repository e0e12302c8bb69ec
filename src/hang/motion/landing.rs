//! A drop that takes hold of the base, and what is left when one is pulled off.

use super::{Motion, Moving, vector::v};
use crate::{craft::Token, hang::Point};

impl Motion {
    /// A drop that hangs takes hold where the base is nearest to `at`, between its neighbours, with its body as fast as
    /// this sideways and down; from there it slides to its rest. Without a place it is where it is. Nothing if it does not
    /// hang.
    pub fn take_hold(&mut self, token: Token, at: Option<Point>, sideways_mm_s: f64, down_mm_s: f64) {
        let Some(number) = self.hung.iter().position(|one| one.is.token == token) else { return };
        if let Some(at) = at.filter(|at| at.x_mm.is_finite() && at.y_mm.is_finite()) {
            let line = self.moving.line();
            let left = number.checked_sub(1).map_or(0.0, |left| self.hung[left].at);
            let right = self.hung.get(number + 1).map_or(line.length(), |right| right.at);
            let place = line.nearest(at.into()).clamp(left.min(right), right.max(left));
            let by = line.at(place) - line.at(self.hung[number].at);
            let one = &mut self.hung[number];
            one.at = place;
            one.place += by;
        }
        self.hung[number].velocity += v(sideways_mm_s, down_mm_s);
        self.still_s = 0.0;
    }

    /// Takes all but this share of every speed away: what a hand lets go of does not fling the rest about.
    pub fn hush(&mut self, kept: f64) {
        match &mut self.moving {
            Moving::Chain(chain) => chain.slow(kept),
            Moving::Hoop(hoop) => hoop.slow(kept),
        }
        for one in &mut self.hung {
            (one.velocity, one.speed) = (one.velocity * kept, one.speed * kept);
        }
    }
}
