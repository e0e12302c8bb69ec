//! The quick plan made better, as long as it may go on.

use super::{
    bound::{Bound, Pattern, bound},
    dive::dive,
    filled::filled,
    job::{CutError, CutJob, Tenths},
    plan::CutPlan,
    quick::quick_plan,
    whole::{all_that_matter, whole_plan},
};

/// How far it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Progress {
    /// What the best plan so far costs, in tenths of a millimetre.
    pub cost: f64,
    /// What no plan costs less than, as far as is known.
    pub at_least: f64,
}

/// A plan with what is known of better ones.
#[derive(Debug, Clone, PartialEq)]
pub struct BetterPlan {
    /// The best plan that was found.
    pub plan: CutPlan,
    /// What no plan can take off the spools less than, beginning them included.
    pub at_least: Tenths,
    /// How much more than that this plan takes, as a share: 0.01 is one percent.
    pub gap: f64,
    /// Whether no plan is better.
    pub proven: bool,
}

/// Makes a plan, better and better while `go_on` answers yes; what was best so far is given when it says no.
///
/// # Errors
/// The solver could not work with the figures.
pub fn better_plan(job: &CutJob, go_on: &mut dyn FnMut(Progress) -> bool) -> Result<BetterPlan, CutError> {
    let mut best = quick_plan(job);
    let cost = best.cost as f64;
    let by_pieces = filled(job, best.cost, &mut || go_on(Progress { cost, at_least: 0.0 }));
    if let Some(plan) = by_pieces.as_ref().and_then(|found| found.plan.as_ref()).filter(|plan| plan.cost < best.cost) {
        best = plan.clone();
    }
    let cost = best.cost as f64;
    let (bound, patterns) = bound(job, &best, &mut |at_least| go_on(Progress { cost, at_least }))?;
    let step = job.step();
    // What costs less than the bound rounded up to the next step is no plan.
    let least = ((bound.at_least - 1e-3) / step as f64).ceil().max(0.0) as u64 * step;
    let least = by_pieces.map_or(least, |found| least.max(found.at_least));
    let mut proven = best.cost <= least;
    if !proven {
        proven = improve(job, &mut best, patterns, least, &bound, go_on)?;
    }
    let at_least = if proven { best.cost } else { least };
    Ok(BetterPlan {
        gap: if at_least == 0 { 0.0 } else { (best.cost - at_least) as f64 / at_least as f64 },
        at_least: Tenths(u32::try_from(at_least).unwrap_or(u32::MAX)),
        plan: best,
        proven,
    })
}

/// What is certain of the bound first, then whole numbers of its patterns, then of every pattern that can still make a
/// difference; where these are too many, of the closest.
fn improve(
    job: &CutJob,
    best: &mut CutPlan,
    mut patterns: Vec<Pattern>,
    least: u64,
    bound: &Bound,
    go_on: &mut dyn FnMut(Progress) -> bool,
) -> Result<bool, CutError> {
    let may_go_on = |cost: u64, go_on: &mut dyn FnMut(Progress) -> bool| {
        go_on(Progress { cost: cost as f64, at_least: least as f64 })
    };
    let cost = best.cost;
    let dived = dive(job, &mut patterns, &mut || may_go_on(cost, go_on))?;
    if dived.cost < best.cost {
        *best = dived;
    }
    for part in [0.0, 1.0, 0.25, 0.06, 0.015] {
        let cost = best.cost;
        if cost <= least {
            return Ok(true);
        }
        if !may_go_on(cost, go_on) {
            return Ok(false);
        }
        let room = ((cost - job.step()) as f64 + 1e-3 - bound.at_least) * part;
        let close = if part == 0.0 {
            Some(patterns.clone())
        } else {
            all_that_matter(job, bound, room, patterns.clone(), &mut || may_go_on(cost, go_on))
        };
        let Some(close) = close else { continue };
        let Some((plan, proven)) = whole_plan(job, &close, least, &mut || may_go_on(cost, go_on))? else { continue };
        if plan.cost < best.cost {
            *best = plan;
        }
        if part == 1.0 {
            return Ok(proven || best.cost <= least);
        }
    }
    Ok(best.cost <= least)
}
