//! Whole numbers by and by: what is certain of the solution in parts is cut, and the rest is planned anew.

use super::{
    bound::{Pattern, bound},
    job::{CutError, CutJob},
    plan::CutPlan,
    quick::quick_plan,
    whole::in_parts,
};

/// A plan that begins with the `patterns` of the bound. Further patterns are added to them.
pub(super) fn dive(
    job: &CutJob,
    patterns: &mut Vec<Pattern>,
    go_on: &mut dyn FnMut() -> bool,
) -> Result<CutPlan, CutError> {
    let mut rest = job.clone();
    let mut pieces: Vec<(usize, Vec<u32>)> = Vec::new();
    let mut usable = patterns.clone();
    while go_on() && rest.wanted.iter().any(|one| one.count > 0) {
        let parts = in_parts(&rest, &usable)?;
        let mut cut: Vec<(usize, u32)> =
            parts.iter().enumerate().map(|(at, part)| (at, (part + 1e-6).floor() as u32)).collect();
        if cut.iter().all(|(_, times)| *times == 0) {
            let nearest = parts.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1));
            match nearest {
                Some((at, part)) if *part > 1e-6 => cut = vec![(at, 1)],
                // Nothing can be cut any more: the rest is missing.
                _ => break,
            }
        }
        for (at, times) in cut {
            for _ in 0..times {
                take(&mut rest, &usable[at], &mut pieces);
            }
        }
        let quick = quick_plan(&rest);
        if quick.cuts.is_empty() {
            break;
        }
        (_, usable) = bound(&rest, &quick, &mut |_| go_on())?;
        for pattern in &usable {
            if !patterns.contains(pattern) {
                patterns.push(pattern.clone());
            }
        }
    }
    for cut in quick_plan(&rest).cuts {
        pieces.extend((0..cut.times).map(|_| (cut.stock, cut.counts.clone())));
    }
    Ok(CutPlan::of(job, pieces))
}

/// Cuts a pattern once, as far as its lengths are still wanted.
fn take(rest: &mut CutJob, pattern: &Pattern, pieces: &mut Vec<(usize, Vec<u32>)>) {
    let counts: Vec<u32> = pattern.counts.iter().zip(&rest.wanted).map(|(n, one)| (*n).min(one.count)).collect();
    if rest.stock[pattern.stock].count == 0 || counts.iter().all(|n| *n == 0) {
        return;
    }
    rest.stock[pattern.stock].count -= 1;
    for (n, one) in counts.iter().zip(&mut rest.wanted) {
        one.count -= n;
    }
    pieces.push((pattern.stock, counts));
}
