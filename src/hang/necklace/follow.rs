//! The shape as the cluster moves along the chain.

use super::line::Line;
use crate::hang::HangError;

/// Solutions as the cluster moves, each from a guess that the ones before it make.
pub(super) struct Follow<'a> {
    line: &'a Line<'a>,
    /// The guess that needs nothing.
    fresh: (f64, f64),
    /// The last two solutions, the latest first, with the place of the cluster.
    known: [Option<(f64, (f64, f64))>; 2],
}

impl<'a> Follow<'a> {
    /// Nothing solved yet; `distance` is that of the hang points in a straight line, `mass` everything's.
    pub(super) fn new(line: &'a Line<'a>, distance: f64, mass: f64) -> Self {
        // Half the weight on either side of the chord, at the angle of a taut V.
        let (length, span, rise) = (line.load.front_length_mm, line.load.width_mm, line.load.rise_mm);
        let leg = span / ((length - distance) * (length + distance)).sqrt();
        let h = mass / 2.0 * leg.clamp(1e-3, 1e4);
        Self { line, fresh: (h, mass / 2.0 - h * rise / span), known: [None; 2] }
    }

    /// (H, V₀) with the cluster at `first`; none where a piece without weight hangs slack.
    pub(super) fn solve(&mut self, first: f64) -> Result<(f64, f64), HangError> {
        if self.line.load.chain_g_per_mm == 0.0 && self.line.slack_push(first).is_some() {
            return Err(HangError::NoShape);
        }
        let guess = match self.known {
            [Some((a, (h, v))), Some((b, (h_b, v_b)))] if a != b => {
                let share = (first - a) / (a - b);
                // Half of a positive guess is as low as a straight line is trusted.
                ((h + share * (h - h_b)).max(h / 2.0), v + share * (v - v_b))
            }
            [Some((_, last)), _] => last,
            _ => self.fresh,
        };
        // Where the solutions before lead astray, start afresh.
        let found = self.line.solve(first, guess).or_else(|_| self.line.solve(first, self.fresh))?;
        self.known = [Some((first, found)), self.known[0]];
        Ok(found)
    }

    /// What pushes the cluster to the right at `first`.
    pub(super) fn push(&mut self, first: f64) -> Result<f64, HangError> {
        match self.solve(first) {
            Ok((h, v0)) => Ok(self.line.push(first, h, v0)),
            // Far to one side a leg of no weight hangs slack, and one of nearly none as good as slack.
            Err(error) => self.line.slack_push(first).ok_or(error),
        }
    }
}
