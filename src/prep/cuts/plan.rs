//! Which piece is cut into what, and what of it is lost.

use super::job::{CutJob, Tenths};

/// Pieces of one kind that are cut alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StockCut {
    /// Which kind, by its place among the job's.
    pub stock: usize,
    /// How many of the kind are cut so.
    pub times: u32,
    /// How often each length is cut from each, as the job's lengths follow each other.
    pub counts: Vec<u32>,
    /// What is left of each.
    pub left: Tenths,
    /// Whether that is worth keeping.
    pub kept: bool,
}

/// A plan of cuts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CutPlan {
    /// What is cut, the longest lengths first.
    pub cuts: Vec<StockCut>,
    /// How many of each length there is nothing to cut from.
    pub missing: Vec<u32>,
    pub(super) cost: u64,
    /// What is lost: ends too short to keep, and what each cut takes.
    pub lost: Tenths,
    /// What is taken off the spools in all: the lengths and what is lost.
    pub drawn: Tenths,
}

impl CutPlan {
    /// A plan of single pieces with their patterns, each at most as often as there are pieces.
    pub(super) fn of(job: &CutJob, pieces: Vec<(usize, Vec<u32>)>) -> Self {
        let pieces = without_surplus(job, pieces);
        let mut missing: Vec<u32> = job.wanted.iter().map(|one| one.count).collect();
        let mut cuts: Vec<StockCut> = Vec::new();
        let (mut drawn, mut wanted) = (0u64, 0u64);
        for (stock, counts) in pieces {
            for (item, n) in counts.iter().enumerate() {
                missing[item] = missing[item].saturating_sub(*n);
                wanted += u64::from(*n) * u64::from(job.wanted[item].length.0);
            }
            let left = job.left(stock, &counts);
            let kept = job.is_kept(left);
            drawn += u64::from(job.stock[stock].length.0 - if kept { left } else { 0 });
            match cuts.iter_mut().find(|cut| cut.stock == stock && cut.counts == counts) {
                Some(cut) => cut.times += 1,
                None => cuts.push(StockCut { stock, times: 1, counts, left: Tenths(left), kept }),
            }
        }
        cuts.sort_by(|a, b| b.counts.cmp(&a.counts).then(a.stock.cmp(&b.stock)));
        let short = missing.iter().map(|n| u64::from(*n)).sum::<u64>() * job.cost_of_missing();
        let cost = cuts.iter().map(|cut| u64::from(cut.times) * job.cost(cut.stock, &cut.counts)).sum::<u64>() + short;
        let tenths = |sum: u64| Tenths(u32::try_from(sum).unwrap_or(u32::MAX));
        Self { cuts, missing, cost, lost: tenths(drawn - wanted), drawn: tenths(drawn) }
    }

    /// Whether there is enough for all that is wanted.
    pub fn is_complete(&self) -> bool {
        self.missing.iter().all(|n| *n == 0)
    }

    /// How many spools and remnants are cut.
    pub fn pieces(&self) -> u32 {
        self.cuts.iter().map(|cut| cut.times).sum()
    }
}

/// Takes away what is cut more often than it is wanted, where that saves most, and pieces from which nothing is cut.
fn without_surplus(job: &CutJob, mut pieces: Vec<(usize, Vec<u32>)>) -> Vec<(usize, Vec<u32>)> {
    for item in 0..job.wanted.len() {
        let cut: u32 = pieces.iter().map(|(_, counts)| counts[item]).sum();
        for _ in job.wanted[item].count..cut {
            let saved = |(stock, counts): &(usize, Vec<u32>)| {
                let mut fewer = counts.clone();
                fewer[item] -= 1;
                job.cost(*stock, counts) - job.cost(*stock, &fewer)
            };
            let with = pieces.iter_mut().filter(|(_, counts)| counts[item] > 0);
            if let Some((_, counts)) = with.max_by_key(|piece| saved(piece)) {
                counts[item] -= 1;
            }
        }
    }
    pieces.retain(|(_, counts)| counts.iter().any(|n| *n > 0));
    pieces
}
