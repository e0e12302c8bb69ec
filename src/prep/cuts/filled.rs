//! Where whatever is left of a piece is lost, a plan is as good as the pieces that it begins: few of them, filled to the brim.

use super::{
    job::{CutJob, Wanted},
    knapsack::Knapsack,
    plan::CutPlan,
};

/// More choices of pieces than are looked at.
const MOST_CHOICES: usize = 50_000;
/// Choices that are tried to be filled, the cheapest first.
const TRIED: usize = 40;

/// What follows from the pieces alone.
pub(super) struct Filled {
    /// A plan that fills the cheapest pieces that it could; none where none could be filled.
    pub(super) plan: Option<CutPlan>,
    /// What no plan costs less than: that many pieces have to be begun.
    pub(super) at_least: u64,
}

/// A choice of pieces: how many of each kind, and what they cost.
struct Choice {
    counts: Vec<u32>,
    cost: u64,
}

/// The pieces with room for all that is wanted, the cheapest tried first; none where rests are kept, or where there are too
/// many choices, or not enough pieces.
pub(super) fn filled(job: &CutJob, cheaper_than: u64, go_on: &mut dyn FnMut() -> bool) -> Option<Filled> {
    if job.keep_from.is_some() || !missing_costs_more(job) {
        return None;
    }
    let all: Vec<u32> = job.wanted.iter().map(|one| one.count).collect();
    let mut choices = choices(job, job.used(&all))?;
    choices.sort_by_key(|choice| choice.cost);
    let at_least = choices.first()?.cost;
    for choice in choices.iter().take(TRIED).take_while(|choice| choice.cost < cheaper_than) {
        if !go_on() {
            break;
        }
        if let Some(pieces) = fill(job, choice) {
            return Some(Filled { plan: Some(CutPlan::of(job, pieces)), at_least });
        }
    }
    Some(Filled { plan: None, at_least })
}

/// Whether a plan in which something is missing always costs more than the pieces that it would be cut from: then the
/// cheapest pieces with room for everything are a bound. A length that is missing counts twice the largest piece and itself;
/// pieces with room for it cost its length, one piece more, and at most all that beginning them counts.
fn missing_costs_more(job: &CutJob) -> bool {
    let opening: u64 = job.stock.iter().map(|one| u64::from(one.count) * u64::from(one.opening.0)).sum();
    job.stock.iter().any(|one| opening <= u64::from(one.length.0))
}

/// Every choice of pieces that hold at least `weight`.
fn choices(job: &CutJob, weight: u64) -> Option<Vec<Choice>> {
    let many = job.stock.iter().try_fold(1_usize, |many, one| many.checked_mul(one.count as usize + 1));
    many.filter(|many| *many <= MOST_CHOICES)?;
    let mut found = vec![Choice { counts: vec![], cost: 0 }];
    for one in &job.stock {
        let each = u64::from(one.length.0) + u64::from(one.opening.0);
        found = found
            .into_iter()
            .flat_map(|choice| {
                (0..=one.count).map(move |n| Choice {
                    counts: choice.counts.iter().copied().chain([n]).collect(),
                    cost: choice.cost + u64::from(n) * each,
                })
            })
            .collect();
    }
    let holds = |choice: &Choice| {
        let pieces = choice.counts.iter().enumerate();
        pieces.map(|(stock, n)| u64::from(*n) * u64::from(job.capacity(stock))).sum::<u64>() >= weight
    };
    found.retain(holds);
    Some(found)
}

/// Fills the shortest pieces first, each as full as it gets; what is left over has to fit into the last. None where it does
/// not.
fn fill(job: &CutJob, choice: &Choice) -> Option<Vec<(usize, Vec<u32>)>> {
    let mut pieces: Vec<usize> =
        choice.counts.iter().enumerate().flat_map(|(stock, n)| std::iter::repeat_n(stock, *n as usize)).collect();
    pieces.sort_by_key(|stock| job.capacity(*stock));
    let mut left: Vec<u32> = job.wanted.iter().map(|one| one.count).collect();
    let room: u64 = pieces.iter().map(|stock| u64::from(job.capacity(*stock))).sum();
    let mut spare = room.checked_sub(job.used(&left))?;
    let mut plan = Vec::new();
    for stock in pieces {
        let counts = fullest(job, stock, &left);
        // More than may be lost in all is lost here already.
        spare = spare.checked_sub(u64::from(job.capacity(stock)).checked_sub(job.used(&counts))?)?;
        left.iter_mut().zip(&counts).for_each(|(left, n)| *left -= n);
        if counts.iter().any(|n| *n > 0) {
            plan.push((stock, counts));
        }
    }
    left.iter().all(|n| *n == 0).then_some(plan)
}

/// The fullest filling of a piece with what is still wanted.
fn fullest(job: &CutJob, stock: usize, left: &[u32]) -> Vec<u32> {
    let items: Vec<usize> = (0..left.len()).filter(|item| left[*item] > 0).collect();
    let mut counts = vec![0; left.len()];
    if items.is_empty() {
        return counts;
    }
    let wanted = items.iter().map(|item| Wanted { count: left[*item], ..job.wanted[*item] }).collect();
    let rest = CutJob { stock: vec![job.stock[stock]], wanted, ..job.clone() };
    let values: Vec<f64> = (0..items.len()).map(|item| f64::from(rest.weight(item))).collect();
    let knapsack = Knapsack::new(&rest);
    let filling = knapsack.fill(&values);
    for (item, n) in items.iter().zip(filling.counts(rest.capacity(0))) {
        counts[*item] = n;
    }
    counts
}
