//! How the drops of a ticket look, where they are of an assortment: each keeps the number with which it came, whatever the
//! seller does with the others.

use super::{Ticket, TicketLine};
use crate::craft::{LookNumber, free_look};

impl Ticket {
    /// The number of the look of line `at`.
    pub fn look_of(&self, at: usize) -> LookNumber {
        self.lines.get(at).and_then(|line| line.look).unwrap_or_else(|| self.usual_look(at))
    }

    /// The number of a line that keeps none: as many as came before it of what it is. What was swapped counts as what it was,
    /// and what was removed as if it were there, so that nothing moves the others.
    fn usual_look(&self, at: usize) -> LookNumber {
        let Some(this) = self.lines.get(at) else { return 0 };
        let is_like = |line: &&TicketLine| line.instead_of.as_ref().unwrap_or(&line.id) == &this.id;
        LookNumber::try_from(self.lines.iter().take(at).filter(is_like).count()).unwrap_or_default()
    }

    /// Gives the lines the numbers with which the piece came.
    pub(super) fn keep_looks(&mut self, looks: &[LookNumber]) {
        for (at, look) in looks.iter().enumerate() {
            self.keep_look(at, *look);
        }
    }

    /// Gives what was hung as line `at` just now the lowest number that none like it has.
    pub(super) fn take_a_look(&mut self, at: usize) {
        let Some(this) = self.lines.get(at) else { return };
        let others = self.live_lines().filter(|(i, line)| *i != at && line.id == this.id);
        self.keep_look(at, free_look(others.map(|(i, _)| self.look_of(i))));
    }

    fn keep_look(&mut self, at: usize, look: LookNumber) {
        let usual = self.usual_look(at);
        if let Some(line) = self.lines.get_mut(at) {
            line.look = Some(look).filter(|look| *look != usual);
        }
    }

    /// Makes the drops of the piece follow from the lines. What is no assortment needs no numbers.
    pub(super) fn hang_lines(&mut self, is_assortment: impl Fn(&str) -> bool) {
        let mut drops: Vec<(String, LookNumber)> = Vec::new();
        for (at, line) in self.live_lines() {
            let look = if is_assortment(&line.id) {
                self.look_of(at)
            } else {
                LookNumber::try_from(drops.iter().filter(|(id, _)| *id == line.id).count()).unwrap_or_default()
            };
            drops.push((line.id.clone(), look));
        }
        self.piece = self.piece.clone().with_drops(drops);
    }
}
