//! A list of cuts that is followed at the bench: what was ticked off, and what is left on the spools by that.

use serde::{Deserialize, Serialize};

use crate::{
    catalog::{There, Workshop},
    prep::cuts::{CutJob, CutPlan, Tenths},
};

/// The kind of these pages in the workbook.
pub const CUT_LISTS: &str = "cuts";

/// One piece of stock and what is cut from it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CutLine {
    /// How long it is.
    pub from: Tenths,
    /// Lengths with how often each is cut.
    pub cuts: Vec<(Tenths, u32)>,
    /// What is left of it.
    pub left: Tenths,
    /// Whether that is worth keeping.
    pub kept: bool,
    /// Whether it is cut.
    pub done: bool,
}

/// A list that is kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CutList {
    /// Id of the part.
    pub part: String,
    /// The name that the maker gave it.
    pub name: String,
    /// Its lines, in the order in which they are followed.
    pub lines: Vec<CutLine>,
    /// It is put away.
    #[serde(default)]
    pub gone: bool,
}

/// What became of a tick.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ticked {
    /// The spools are other ones now.
    Moved,
    /// It was so already, or there is no such line.
    Same,
    /// What the line is cut from, or what was left of it, is not among the spools: it was cut elsewhere, or the spools were
    /// counted anew. Nothing is changed.
    NotThere(Tenths),
}

impl CutList {
    /// The list of a plan.
    pub fn of(part: &str, name: &str, job: &CutJob, plan: &CutPlan) -> Self {
        let mut lines = Vec::new();
        for cut in &plan.cuts {
            let cuts = job.wanted().iter().zip(&cut.counts).filter(|(_, n)| **n > 0);
            let line = CutLine {
                from: job.stock()[cut.stock].length,
                cuts: cuts.map(|(one, n)| (one.length, *n)).collect(),
                left: cut.left,
                kept: cut.kept,
                done: false,
            };
            lines.extend(std::iter::repeat_n(line, cut.times as usize));
        }
        Self { part: part.to_owned(), name: name.to_owned(), lines, gone: false }
    }

    /// Ticks a line off, or takes the tick back, and moves its piece on the spools along: nothing is cut from what is not
    /// there, and ticked twice it is cut once.
    pub fn tick(&mut self, at: usize, done: bool, spools: &mut Vec<Tenths>) -> Ticked {
        let Some(line) = self.lines.get_mut(at).filter(|line| line.done != done) else { return Ticked::Same };
        let rest = (line.kept && line.left > Tenths(0)).then_some(line.left);
        let (out, back) = if done { (Some(line.from), rest) } else { (rest, Some(line.from)) };
        if let Some(length) = out {
            let Some(place) = spools.iter().position(|one| *one == length) else { return Ticked::NotThere(length) };
            spools.remove(place);
        }
        line.done = done;
        spools.extend(back);
        spools.sort_by(|a, b| b.cmp(a));
        Ticked::Moved
    }

    /// What it is still going to be cut from.
    fn to_come(&self) -> impl Iterator<Item = Tenths> {
        let open = self.lines.iter().filter(|line| !line.done && !self.gone);
        open.map(|line| line.from)
    }
}

/// The workshop without what lists that are worked on are still going to cut, and how long each of that is: another plan
/// begins with none of it.
pub fn without_promised(mut workshop: Workshop, lists: &[CutList], part: &str) -> (Workshop, Vec<Tenths>) {
    let mut promised = Vec::new();
    let there = workshop.parts.iter_mut().find(|one| one.id == part).map(|one| &mut one.there);
    if let Some(There::Spools { lengths, .. }) = there {
        for from in lists.iter().filter(|list| list.part == part).flat_map(CutList::to_come) {
            if let Some(place) = lengths.iter().position(|one| *one == from) {
                promised.push(lengths.remove(place));
            }
        }
    }
    (workshop, promised)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::prep::cuts::{Stock, Wanted, quick_plan};

    #[test]
    fn what_is_ticked_off_leaves_its_rest_on_the_spool_once() {
        let stock = [(10_000, 2), (3_000, 1)].map(|(length, count)| Stock {
            length: Tenths(length),
            count,
            opening: Tenths(0),
        });
        let wanted = [Wanted { length: Tenths(2_500), count: 5 }];
        let job = CutJob::new(stock.to_vec(), &wanted, Tenths(0), Some(Tenths(1_000))).unwrap();
        let mut list = CutList::of("silk", "Silk", &job, &quick_plan(&job));
        let begun = vec![Tenths(10_000), Tenths(10_000), Tenths(3_000)];
        let mut spools = begun.clone();
        let before: u32 = spools.iter().map(|one| one.0).sum();
        for at in 0..list.lines.len() {
            assert_eq!(list.tick(at, true, &mut spools), Ticked::Moved);
            assert_eq!(list.tick(at, true, &mut spools), Ticked::Same, "ticked twice is cut once");
        }
        let cut: u32 = list.lines.iter().flat_map(|line| &line.cuts).map(|(length, n)| length.0 * n).sum();
        let lost: u32 = list.lines.iter().filter(|line| !line.kept).map(|line| line.left.0).sum();
        let after: u32 = spools.iter().map(|one| one.0).sum();
        assert_eq!((cut, before - after), (12_500, 12_500 + lost), "nothing comes from nowhere: {list:?}, {spools:?}");
        for at in 0..list.lines.len() {
            assert_eq!(list.tick(at, false, &mut spools), Ticked::Moved);
        }
        assert_eq!(spools, begun, "what was not cut after all lies there again");
        assert_eq!(list.tick(99, true, &mut spools), Ticked::Same);
        // What was cut elsewhere is cut no second time, and what was cut further is not whole again.
        let before = list.clone();
        assert_eq!(list.tick(0, true, &mut vec![Tenths(500)]), Ticked::NotThere(list.lines[0].from));
        assert_eq!(list, before);
        let few = [Wanted { length: Tenths(2_500), count: 3 }];
        let job = CutJob::new(stock.to_vec(), &few, Tenths(0), Some(Tenths(1_000))).unwrap();
        let mut list = CutList::of("silk", "Silk", &job, &quick_plan(&job));
        let at = list.lines.iter().position(|line| line.kept && line.left > Tenths(0)).unwrap();
        assert_eq!(list.tick(at, true, &mut spools), Ticked::Moved);
        let mut cut_further = vec![Tenths(3_000)];
        assert_eq!(list.tick(at, false, &mut cut_further), Ticked::NotThere(list.lines[at].left));
        assert_eq!(cut_further, [Tenths(3_000)]);
    }
}
