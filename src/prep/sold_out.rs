//! What is thought of a mean after shows that sold out: at least so many were wanted, which has no closed form, so that it is
//! summed over a grid.

/// The largest count of a show, and the largest guess.
pub(super) const MOST_SOLD: u32 = 10_000;
/// What is left out of a distribution at its upper end.
pub(super) const TAIL: f64 = 1e-12;
/// Points of the grid: for one smooth hill that falls to nothing at both ends, sums over points a third of its width apart
/// are right to more digits than are asked for (the trapezoidal rule; any textbook of numerical analysis, from memory).
const POINTS: usize = 73;
/// From this mean on the chance of none, with its weight, comes near the smallest float.
const LARGE_MEAN: f64 = 500.0;
/// Where the logarithm of a density is so far below its highest that nothing is left of it.
const FAR_BELOW: f64 = 36.0;

/// What is thought of the mean after the shows: a gamma distribution, and shows that sold out.
pub(super) struct Belief {
    /// The gamma distribution's shape.
    pub shape: f64,
    /// Its rate, in usual shows.
    pub rate: f64,
    /// Shows that sold out: how many were sold, and how large each was.
    pub at_least: Vec<(u32, f64)>,
}

impl Belief {
    /// The logarithm of its density over the logarithm of the mean, but for a constant.
    fn log_density(&self, log_mean: f64, log_factorials: &[f64]) -> f64 {
        let mean = log_mean.exp();
        let sold_out = self.at_least.iter().map(|(count, size)| log_at_least(*count, mean * size, log_factorials));
        self.shape * log_mean - self.rate * mean + sold_out.sum::<f64>()
    }
}

/// The logarithm of the chance that a Poisson number of this mean is `count` or more.
fn log_at_least(count: u32, mean: f64, log_factorials: &[f64]) -> f64 {
    let chance_of = |k: u32| (f64::from(k) * mean.ln() - mean - log_factorials[k as usize]).exp();
    if mean >= f64::from(count) {
        let (mut term, mut below) = (chance_of(count - 1), 0.0);
        for k in (0..count).rev() {
            below += term;
            term *= f64::from(k) / mean;
            if term < below * 1e-16 {
                break;
            }
        }
        return (-below).ln_1p();
    }
    let (mut term, mut rest, mut k) = (1.0, 0.0, f64::from(count));
    while term > rest * 1e-16 {
        rest += term;
        k += 1.0;
        term *= mean / k;
    }
    f64::from(count) * mean.ln() - mean - log_factorials[count as usize] + rest.ln()
}

/// The chances of the next count, of at most so many from none on, summed over a grid of means; and its own mean.
pub(super) fn over_grid(belief: &Belief, size: f64) -> (Vec<f64>, f64) {
    let most = belief.at_least.iter().map(|(count, _)| *count).max().unwrap_or_default();
    let mut log_factorials = vec![0.0];
    for k in 1..=most {
        log_factorials.push(log_factorials[k as usize - 1] + f64::from(k).ln());
    }
    let density = |log_mean: f64| belief.log_density(log_mean, &log_factorials);
    let sold: f64 = belief.at_least.iter().map(|(count, _)| f64::from(*count)).sum();
    let sizes: f64 = belief.at_least.iter().map(|(_, size)| size).sum();
    let about = ((belief.shape + sold) / (belief.rate + sizes)).ln();
    let highest = highest_of(&density, about - 6.0, about + 6.0);
    let top = density(highest);
    let far = |direction: f64| {
        let mut step = 0.02;
        while top - density(highest + direction * step) < FAR_BELOW && step < 40.0 {
            step *= 1.3;
        }
        highest + direction * step
    };
    let (low, high) = (far(-1.0), far(1.0));
    let logs = (0..POINTS).map(|n| low + (high - low) * n as f64 / (POINTS - 1) as f64);
    let mut points: Vec<(f64, f64)> = logs.map(|log| (log.exp() * size, (density(log) - top).exp())).collect();
    let total: f64 = points.iter().map(|(_, weight)| weight).sum();
    points.iter_mut().for_each(|(_, weight)| *weight /= total);
    points.retain(|(_, weight)| *weight > 1e-15);
    mixture(&points)
}

/// The golden section, by which one of two points in a shrinking span is looked at once more.
const GOLDEN: f64 = 0.618_033_988_749_894_9;

/// About where a function of one hill is highest: to a hundredth of a percent of the span.
fn highest_of(of: &dyn Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    let (mut left, mut right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut at_left, mut at_right) = (of(left), of(right));
    for _ in 0..20 {
        if at_left < at_right {
            (low, left, at_left) = (left, right, at_right);
            right = low + GOLDEN * (high - low);
            at_right = of(right);
        } else {
            (high, right, at_right) = (right, left, at_left);
            left = high - GOLDEN * (high - low);
            at_left = of(left);
        }
    }
    (low + high) / 2.0
}

/// Poisson numbers of several means with their weights: the chances of at most so many, and the mean of all.
fn mixture(points: &[(f64, f64)]) -> (Vec<f64>, f64) {
    let mean = points.iter().map(|(mean, weight)| mean * weight).sum();
    // The chance of none falls below what a float holds where the mean is large: logarithms hold it.
    let (small, large): (Vec<_>, Vec<_>) = points.iter().copied().partition(|(mean, _)| *mean < LARGE_MEAN);
    let mut chances: Vec<(f64, f64)> = small.iter().map(|(mean, weight)| (weight * (-mean).exp(), *mean)).collect();
    let mut logs: Vec<(f64, f64)> = large.iter().map(|(mean, weight)| (weight.ln() - mean, mean.ln())).collect();
    let (mut sum, mut at_most, mut k) = (0.0, Vec::new(), 0.0_f64);
    while at_most.len() <= 20 * MOST_SOLD as usize {
        let (next, share) = ((k + 1.0).ln(), 1.0 / (k + 1.0));
        let mut chance = 0.0;
        for (one, mean) in &mut chances {
            chance += *one;
            *one *= *mean * share;
        }
        for (log, log_mean) in &mut logs {
            if *log > -60.0 {
                chance += log.exp();
            }
            *log += *log_mean - next;
        }
        sum += chance;
        at_most.push(f64::min(sum, 1.0));
        if k > mean && (1.0 - sum < TAIL || chance < 1e-18) {
            break;
        }
        k += 1.0;
    }
    (at_most, mean)
}
