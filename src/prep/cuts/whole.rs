//! Whole numbers of patterns: which are cut how often.

use std::collections::HashSet;

use microlp::{ComparisonOp, OptimizationDirection, Problem, SolveOptions, SolveOutcome, TerminationReason, Variable};

use super::{
    bound::{Bound, Pattern},
    job::{CutError, CutJob},
    plan::CutPlan,
};

/// Branches that are followed between two looks at whether to go on.
const BRANCHES: u64 = 10;
/// Looks after which a search that has proven nothing gives up.
const MOST_LOOKS: u32 = 60;

/// A program over patterns, with how often each is cut.
struct Program {
    problem: Problem,
    times: Vec<Variable>,
}

impl Program {
    /// As little as can be lost, every length cut or missing; in whole numbers or in parts of patterns.
    fn new(job: &CutJob, patterns: &[Pattern], whole: bool) -> Self {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let variable = |problem: &mut Problem, cost: u64, most: u32| {
            if whole {
                problem.add_integer_var(cost as f64, (0, i32::try_from(most).unwrap_or(i32::MAX)))
            } else {
                problem.add_var(cost as f64, (0.0, f64::from(most)))
            }
        };
        let times: Vec<Variable> = patterns
            .iter()
            .map(|pattern| {
                let cost = job.cost(pattern.stock, &pattern.counts);
                variable(&mut problem, cost, job.stock[pattern.stock].count)
            })
            .collect();
        for (item, wanted) in job.wanted.iter().enumerate() {
            let missing = variable(&mut problem, job.cost_of_missing(), wanted.count);
            let cut = patterns.iter().zip(&times).filter(|(pattern, _)| pattern.counts[item] > 0);
            let mut row: Vec<_> = cut.map(|(pattern, var)| (*var, f64::from(pattern.counts[item]))).collect();
            row.push((missing, 1.0));
            problem.add_constraint(row.as_slice(), ComparisonOp::Ge, f64::from(wanted.count));
        }
        for (stock, one) in job.stock.iter().enumerate() {
            let of_kind = patterns.iter().zip(&times).filter(|(pattern, _)| pattern.stock == stock);
            let row: Vec<_> = of_kind.map(|(_, var)| (*var, 1.0)).collect();
            if !row.is_empty() {
                problem.add_constraint(row.as_slice(), ComparisonOp::Le, f64::from(one.count));
            }
        }
        Self { problem, times }
    }
}

fn solver(error: microlp::Error) -> CutError {
    CutError::Solver(error.to_string())
}

/// How often each pattern is cut where parts of patterns may be.
pub(super) fn in_parts(job: &CutJob, patterns: &[Pattern]) -> Result<Vec<f64>, CutError> {
    let program = Program::new(job, patterns, false);
    match program.problem.solve().map_err(solver)? {
        SolveOutcome::Solution(solution) => Ok(program.times.iter().map(|var| solution.var_value(*var)).collect()),
        SolveOutcome::Interrupted(_) => Ok(vec![0.0; patterns.len()]),
    }
}

/// The best plan of these patterns, or the best that was found while `go_on` said so, and whether none is better. A plan that
/// costs no more than `least` is good enough.
pub(super) fn whole_plan(
    job: &CutJob,
    patterns: &[Pattern],
    least: u64,
    go_on: &mut dyn FnMut() -> bool,
) -> Result<Option<(CutPlan, bool)>, CutError> {
    let program = Program::new(job, patterns, true);
    let mut options = SolveOptions::default();
    options.node_limit = Some(BRANCHES);
    let mut outcome = program.problem.solve_with(options).map_err(solver)?;
    for _ in 0..MOST_LOOKS {
        let good = outcome.solution().is_some_and(|found| found.objective() <= least as f64 + 0.5);
        if good || outcome.termination_reason() != TerminationReason::NodeLimit || !go_on() {
            break;
        }
        outcome = outcome.resume().map_err(solver)?;
    }
    let proven = outcome.is_optimal();
    let SolveOutcome::Solution(solution) = outcome else { return Ok(None) };
    let mut pieces = Vec::new();
    for (pattern, var) in patterns.iter().zip(&program.times) {
        for _ in 0..solution.var_value(*var).round().max(0.0) as u32 {
            pieces.push((pattern.stock, pattern.counts.clone()));
        }
    }
    Ok(Some((CutPlan::of(job, pieces), proven)))
}

/// Steps of the search after which it gives up.
const MOST_STEPS: u32 = 1_000_000;
/// Patterns that an integer program is still made of.
const MOST_PATTERNS: usize = 1_000;

/// Every pattern that costs at most `room` more than it is worth, beside those that are `known`. A plan that costs at most
/// that much more than the bound has no others. None where these are too many to look at.
pub(super) fn all_that_matter(
    job: &CutJob,
    bound: &Bound,
    room: f64,
    known: Vec<Pattern>,
    go_on: &mut dyn FnMut() -> bool,
) -> Option<Vec<Pattern>> {
    let mut search = Search { job, bound, room, steps: 0, seen: known.iter().cloned().collect(), found: known, go_on };
    for stock in 0..job.stock.len() {
        let mut counts = vec![0; job.wanted.len()];
        search.from(stock, 0, 0, 0.0, &mut counts)?;
    }
    Some(search.found)
}

struct Search<'a> {
    job: &'a CutJob,
    bound: &'a Bound,
    /// What a pattern may cost beyond its worth.
    room: f64,
    steps: u32,
    seen: HashSet<Pattern>,
    found: Vec<Pattern>,
    go_on: &'a mut dyn FnMut() -> bool,
}

impl Search<'_> {
    /// Follows all counts of the lengths from `item` on; none where it gives up.
    fn from(&mut self, stock: usize, item: usize, used: u32, worth: f64, counts: &mut Vec<u32>) -> Option<()> {
        self.steps += 1;
        if self.steps > MOST_STEPS || self.steps.is_multiple_of(4_096) && !(self.go_on)() {
            return None;
        }
        let job = self.job;
        let capacity = job.capacity(stock);
        if item == job.wanted.len() {
            let cost = job.cost(stock, counts) as f64 + self.bound.scarcity[stock];
            if cost - worth <= self.room && counts.iter().any(|n| *n > 0) {
                let pattern = Pattern { stock, counts: counts.clone() };
                if self.seen.insert(pattern.clone()) {
                    self.found.push(pattern);
                }
                if self.found.len() > MOST_PATTERNS {
                    return None;
                }
            }
            return Some(());
        }
        if !self.can_still_matter(stock, item, used, worth) {
            return Some(());
        }
        let weight = job.weight(item);
        let most = job.wanted[item].count.min((capacity - used) / weight);
        for n in (0..=most).rev() {
            counts[item] = n;
            self.from(stock, item + 1, used + n * weight, worth + f64::from(n) * self.bound.worth[item], counts)?;
        }
        counts[item] = 0;
        Some(())
    }

    /// Whether some filling of the rest can make the pattern cheap enough.
    fn can_still_matter(&self, stock: usize, item: usize, used: u32, worth: f64) -> bool {
        let job = self.job;
        let one = job.stock[stock];
        let fixed = f64::from(one.opening.0) + self.bound.scarcity[stock];
        let rate = |item: usize| self.bound.worth[item] / f64::from(job.weight(item));
        let best_rate = (item..job.wanted.len()).map(rate).fold(0.0, f64::max);
        let rest = f64::from(job.capacity(stock) - used);
        let all_lost = f64::from(one.length.0) + fixed - worth - best_rate * rest;
        let rest_kept = f64::from(used) + fixed - worth - (best_rate - 1.0).max(0.0) * rest;
        all_lost <= self.room || job.keep_from.is_some() && rest_kept <= self.room
    }
}
