//! The best filling of one piece, of every capacity at once.

use super::job::{CutJob, gcd};

/// The lengths of a job as they fill a piece, each at most as often as it is wanted.
pub(super) struct Knapsack {
    /// Tenths of a millimetre in a cell of the tables: all weights are multiples.
    unit: u32,
    /// The largest capacity in cells.
    cells: usize,
    /// Bundles of one length: which, how many, and how many cells they take.
    bundles: Vec<(usize, u32, usize)>,
    items: usize,
}

/// The best value for each capacity, and how it comes about.
pub(super) struct Filling<'a> {
    of: &'a Knapsack,
    best: Vec<f64>,
    taken: Vec<Vec<bool>>,
}

impl Knapsack {
    pub(super) fn new(job: &CutJob) -> Self {
        let items = job.wanted.len();
        let unit = (0..items).fold(0, |unit, item| gcd(unit, u64::from(job.weight(item)))).max(1) as u32;
        let largest = (0..job.stock.len()).map(|stock| job.capacity(stock)).max().unwrap_or_default();
        let mut bundles = Vec::new();
        for item in 0..items {
            let most = job.wanted[item].count.min(largest / job.weight(item));
            // Bundles of 1, 2, 4 … and the rest make every number up to the most.
            let (mut left, mut size) = (most, 1);
            while left > 0 {
                let times = size.min(left);
                bundles.push((item, times, (times * (job.weight(item) / unit)) as usize));
                left -= times;
                size *= 2;
            }
        }
        Self { unit, cells: (largest / unit) as usize, bundles, items }
    }

    /// The best fillings where each length is worth `values`; what is worth nothing is left out.
    pub(super) fn fill(&self, values: &[f64]) -> Filling<'_> {
        let mut best = vec![0.0; self.cells + 1];
        let mut taken = Vec::with_capacity(self.bundles.len());
        for &(item, times, weight) in &self.bundles {
            let mut row = Vec::new();
            let value = f64::from(times) * values[item];
            if value > 0.0 {
                row.resize(self.cells + 1, false);
                for cell in (weight..=self.cells).rev() {
                    let with = best[cell - weight] + value;
                    if with > best[cell] {
                        best[cell] = with;
                        row[cell] = true;
                    }
                }
            }
            taken.push(row);
        }
        Filling { of: self, best, taken }
    }
}

impl Filling<'_> {
    /// The best value of a piece that holds `capacity` tenths of a millimetre.
    pub(super) fn value(&self, capacity: u32) -> f64 {
        self.best[(capacity / self.of.unit) as usize]
    }

    /// The filling of that value.
    pub(super) fn counts(&self, capacity: u32) -> Vec<u32> {
        let mut counts = vec![0; self.of.items];
        let mut cell = (capacity / self.of.unit) as usize;
        for (&(item, times, weight), row) in self.of.bundles.iter().zip(&self.taken).rev() {
            if row.get(cell).copied().unwrap_or(false) {
                counts[item] += times;
                cell -= weight;
            }
        }
        counts
    }
}
