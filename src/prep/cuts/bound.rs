//! What no plan can cost less than, and the patterns that come close.
//!
//! The linear program over all patterns is solved from its dual side: each length has a price, each kind of piece one for
//! being scarce, and no pattern may be worth more than it costs. Patterns that are come in one by one, found by filling a
//! piece as well as the prices allow. Whatever the prices, adding to the scarcity what a pattern is worth too much makes them
//! admissible, so that every round gives a bound.

use microlp::{ComparisonOp, OptimizationDirection, Problem};

use super::{
    job::{CutError, CutJob},
    knapsack::Knapsack,
    plan::CutPlan,
};

/// A pattern of cuts from one kind of piece.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub(super) struct Pattern {
    pub(super) stock: usize,
    pub(super) counts: Vec<u32>,
}

/// A bound with the prices that prove it. Prices and bound are in tenths of a millimetre.
#[derive(Debug, Clone)]
pub(super) struct Bound {
    pub(super) at_least: f64,
    /// What each length is worth.
    pub(super) worth: Vec<f64>,
    /// What each kind of piece is worth beyond what it costs.
    pub(super) scarcity: Vec<f64>,
}

/// What counts as nothing, in tenths of a millimetre.
const NOTHING: f64 = 1e-4;
/// More rounds than any job of a bench has needed.
const MOST_ROUNDS: usize = 2_000;

/// The bound, and the patterns that were found on the way, those of `plan` first. `go_on` is asked between rounds with the
/// bound so far.
pub(super) fn bound(
    job: &CutJob,
    plan: &CutPlan,
    go_on: &mut dyn FnMut(f64) -> bool,
) -> Result<(Bound, Vec<Pattern>), CutError> {
    let mut patterns: Vec<Pattern> =
        plan.cuts.iter().map(|cut| Pattern { stock: cut.stock, counts: cut.counts.clone() }).collect();
    let mut best = Bound { at_least: 0.0, worth: vec![0.0; job.wanted.len()], scarcity: vec![0.0; job.stock.len()] };
    let knapsack = Knapsack::new(job);
    for _ in 0..MOST_ROUNDS {
        if !go_on(best.at_least) {
            break;
        }
        let (worth, mut scarcity) = prices(job, &patterns)?;
        let found = worth_too_much(job, &knapsack, &worth, &mut scarcity);
        let at_least = job.wanted.iter().zip(&worth).map(|(one, worth)| f64::from(one.count) * worth).sum::<f64>()
            - job.stock.iter().zip(&scarcity).map(|(one, price)| f64::from(one.count) * price).sum::<f64>();
        if at_least > best.at_least {
            best = Bound { at_least, worth, scarcity };
        }
        let before = patterns.len();
        for pattern in found {
            if !patterns.contains(&pattern) {
                patterns.push(pattern);
            }
        }
        if patterns.len() == before {
            break;
        }
    }
    Ok((best, patterns))
}

/// The dual prices of the patterns that are known.
fn prices(job: &CutJob, patterns: &[Pattern]) -> Result<(Vec<f64>, Vec<f64>), CutError> {
    let mut dual = Problem::new(OptimizationDirection::Maximize);
    let most = job.cost_of_missing() as f64;
    let worth: Vec<_> = job.wanted.iter().map(|one| dual.add_var(f64::from(one.count), (0.0, most))).collect();
    let scarcity: Vec<_> =
        job.stock.iter().map(|one| dual.add_var(-f64::from(one.count), (0.0, f64::INFINITY))).collect();
    for pattern in patterns {
        let mut row: Vec<_> = worth.iter().zip(&pattern.counts).map(|(var, n)| (*var, f64::from(*n))).collect();
        row.push((scarcity[pattern.stock], -1.0));
        row.retain(|(_, factor)| *factor != 0.0);
        dual.add_constraint(row.as_slice(), ComparisonOp::Le, job.cost(pattern.stock, &pattern.counts) as f64);
    }
    let no_answer = |why: String| CutError::Solver(why);
    let solved = dual.solve().map_err(|error| no_answer(error.to_string()))?;
    let solved = solved.into_solution().map_err(|_| no_answer("it was interrupted".to_owned()))?;
    let value = |var: &microlp::Variable| solved.var_value(*var).max(0.0);
    Ok((worth.iter().map(value).collect(), scarcity.iter().map(value).collect()))
}

/// For each kind of piece the pattern that is worth most beyond what it costs, where one is; adds that to its scarcity.
fn worth_too_much(job: &CutJob, knapsack: &Knapsack, worth: &[f64], scarcity: &mut [f64]) -> Vec<Pattern> {
    let all_lost = knapsack.fill(worth);
    let beyond: Vec<f64> = worth.iter().enumerate().map(|(item, worth)| worth - f64::from(job.weight(item))).collect();
    let rest_kept = job.keep_from.map(|from| (from.0.max(1), knapsack.fill(&beyond)));
    let mut found = Vec::new();
    for (stock, one) in job.stock.iter().enumerate() {
        let opening = f64::from(one.opening.0);
        let capacity = job.capacity(stock);
        let mut best = (all_lost.value(capacity) - f64::from(one.length.0) - opening, &all_lost, capacity);
        if let Some((from, kept)) = &rest_kept
            && let Some(room) = one.length.0.checked_sub(*from)
            && kept.value(room) - opening > best.0
        {
            best = (kept.value(room) - opening, kept, room);
        }
        let too_much = best.0 - scarcity[stock];
        if too_much > NOTHING {
            found.push(Pattern { stock, counts: best.1.counts(best.2) });
        }
        scarcity[stock] += too_much.max(0.0);
    }
    found
}
