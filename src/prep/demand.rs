//! What is sold at the next show, from the shows so far and a guess.
//!
//! What a drop sells at a usual show is a Poisson number whose mean nobody knows; what is thought of the mean is a gamma
//! distribution. Counts of shows make it sharper, and the next count is then negative binomial. A show at which the last one
//! was sold tells only that at least so many were wanted. With such shows the mean has no closed form any more, and its
//! distribution is summed over a grid (`sold_out`).

use super::sold_out::{Belief, MOST_SOLD, TAIL, over_grid};

/// How small and how large a show can be beside a usual one.
const SIZES: std::ops::RangeInclusive<f64> = 0.05..=20.0;
/// What one drop did at one show.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outcome {
    /// How many were sold.
    pub sold: u32,
    /// Whether none was left.
    pub sold_out: bool,
    /// How large the show was; 1 is a usual one.
    pub size: f64,
}

/// How sure somebody is of a guess: the mean is off by a usual share of it. Common practice, no source.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sureness {
    /// By 70 percent.
    Hardly,
    /// By 40 percent.
    Fairly,
    /// By 25 percent.
    Quite,
}

/// What is thought of the mean at a usual show before it is known: a gamma distribution.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prior {
    /// Its shape.
    pub shape: f64,
    /// Its rate, in usual shows.
    pub rate: f64,
}

impl Prior {
    /// About `mean` at a usual show.
    pub fn about(mean: f64, sure: Sureness) -> Self {
        let shape = match sure {
            Sureness::Hardly => 2.0,
            Sureness::Fairly => 6.0,
            Sureness::Quite => 16.0,
        };
        Self { shape, rate: shape / mean }
    }
}

/// Why nothing can be foretold.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum DemandError {
    /// A count that no show has.
    #[error("{0} of one drop at one show are more than are planned for; at most {MOST_SOLD} can be")]
    Sold(u32),
    /// A show of no size.
    #[error("{0} is no size of a show; 1 is a usual one, {low} to {high} are taken", low = SIZES.start(), high = SIZES.end())]
    Size(f64),
    /// A guess that is none.
    #[error("this is no guess; guess more than 0 and at most {MOST_SOLD} at a usual show")]
    Guess,
}

/// How likely each count is.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    /// The chance of at most so many, from none on.
    at_most: Vec<f64>,
    /// The mean.
    pub mean: f64,
}

impl Forecast {
    /// The chance that at most `count` are wanted.
    pub fn chance_at_most(&self, count: u32) -> f64 {
        self.at_most.get(count as usize).copied().unwrap_or(1.0)
    }

    /// The chance that `count` or more are wanted, so that none of `count` is left.
    pub fn chance_sold_out(&self, count: u32) -> f64 {
        count.checked_sub(1).map_or(1.0, |below| 1.0 - self.chance_at_most(below))
    }

    /// The smallest count that suffices with a chance of `share`.
    pub fn enough_for(&self, share: f64) -> u32 {
        self.at_most.partition_point(|chance| *chance < share) as u32
    }

    /// How many of `count` are sold on average.
    pub fn sold_of(&self, count: u32) -> f64 {
        (0..count).map(|k| 1.0 - self.chance_at_most(k)).sum()
    }

    /// In eight of ten shows so many are wanted, from and to.
    pub fn plain_range(&self) -> (u32, u32) {
        (self.enough_for(0.1), self.enough_for(0.9))
    }

    /// The chance of exactly `count`.
    pub fn chance_of(&self, count: u32) -> f64 {
        count
            .checked_sub(1)
            .map_or(self.chance_at_most(0), |below| self.chance_at_most(count) - self.chance_at_most(below))
    }
}

/// What is wanted at a show of `size`, after the shows that were.
///
/// # Errors
/// A count, a size or a guess is none that there can be.
pub fn forecast(prior: Prior, shows: &[Outcome], size: f64) -> Result<Forecast, DemandError> {
    if let Some(wrong) = shows.iter().map(|show| show.size).chain([size]).find(|size| !SIZES.contains(size)) {
        return Err(DemandError::Size(wrong));
    }
    if let Some(wrong) = shows.iter().map(|show| show.sold).find(|sold| *sold > MOST_SOLD) {
        return Err(DemandError::Sold(wrong));
    }
    let (mut shape, mut rate) = (prior.shape, prior.rate);
    let mut at_least = Vec::new();
    for show in shows {
        if !show.sold_out {
            shape += f64::from(show.sold);
            rate += show.size;
        } else if show.sold > 0 {
            at_least.push((show.sold, show.size));
        }
    }
    let known = shape > 0.0 && rate > 0.0 && shape.is_finite() && rate.is_finite();
    if !known || shape / rate > f64::from(MOST_SOLD) {
        return Err(DemandError::Guess);
    }
    if at_least.is_empty() {
        return Ok(negative_binomial(shape, rate / (rate + size), shape / rate * size));
    }
    let (at_most, mean) = over_grid(&Belief { shape, rate, at_least }, size);
    Ok(Forecast { at_most, mean })
}

/// The distribution with `shape` successes of chance `p` each.
fn negative_binomial(shape: f64, p: f64, mean: f64) -> Forecast {
    let (mut log_chance, rest) = (shape * p.ln(), (1.0 - p).ln());
    let (mut sum, mut at_most, mut k) = (0.0, Vec::new(), 0.0);
    while at_most.len() <= 20 * MOST_SOLD as usize {
        sum += log_chance.exp();
        at_most.push(f64::min(sum, 1.0));
        if k > mean && (1.0 - sum < TAIL || log_chance < -60.0) {
            break;
        }
        log_chance += ((shape + k) / (k + 1.0)).ln() + rest;
        k += 1.0;
    }
    Forecast { at_most, mean }
}

#[cfg(test)]
mod tests {
    use statrs::distribution::{Continuous, Discrete, DiscreteCDF, Gamma, NegativeBinomial, Poisson};

    use super::*;

    fn sold(counts: &[u32]) -> Vec<Outcome> {
        counts.iter().map(|sold| Outcome { sold: *sold, sold_out: false, size: 1.0 }).collect()
    }

    /// Worked with a scientific library by the closed form of Gelman and others, Bayesian Data Analysis, 2.6 (the section is
    /// quoted from memory): prior, counts, size of the next show, mean, variance, and the quantiles of .5, .8, .9 and .95.
    #[test]
    fn the_next_count_is_as_worked_out_elsewhere() {
        /// Prior, counts, exposure, mean, variance, and the quantiles at .5, .8, .9, .95.
        type Case = ((f64, f64), &'static [u32], f64, f64, f64, [u32; 4]);
        let cases: [Case; 5] = [
            ((2.0, 0.05), &[40, 55, 46], 1.0, 46.885_245_90, 62.257_457_67, [47, 53, 57, 60]),
            ((8.0, 0.25), &[44, 51, 39, 58], 1.0, 47.058_823_53, 58.131_487_89, [47, 53, 57, 60]),
            ((3.0, 1.0), &[2, 4, 3, 5], 1.0, 3.4, 4.08, [3, 5, 6, 7]),
            ((1.0, 0.0), &[12, 9, 15], 1.0, 12.333_333_33, 16.444_444_44, [12, 16, 18, 19]),
            ((2.0, 0.05), &[40, 55, 46], 0.5, 23.442_622_95, 27.285_675_89, [23, 28, 30, 32]),
        ];
        for ((shape, rate), counts, size, mean, variance, quantiles) in cases {
            let next = forecast(Prior { shape, rate }, &sold(counts), size).unwrap();
            let chances: Vec<f64> = (0..400).map(|k| next.chance_of(k)).collect();
            let average: f64 = chances.iter().enumerate().map(|(k, chance)| k as f64 * chance).sum();
            let spread: f64 = chances.iter().enumerate().map(|(k, chance)| (k as f64 - mean).powi(2) * chance).sum();
            assert!((next.mean - mean).abs() < 1e-7 && (average - mean).abs() < 1e-7, "{next:?}");
            assert!((spread - variance).abs() < 1e-6, "{spread} instead of {variance}");
            assert_eq!([0.5, 0.8, 0.9, 0.95].map(|share| next.enough_for(share)), quantiles);
        }
        let next = |shape, rate, counts, size| forecast(Prior { shape, rate }, &sold(counts), size).unwrap();
        assert!((next(2.0, 0.05, &[40, 55, 46], 1.0).chance_of(46) - 0.050_741_690_2).abs() < 1e-10);
        assert!((next(2.0, 0.05, &[40, 55, 46], 1.0).chance_at_most(46) - 0.494_482_650_7).abs() < 1e-10);
        assert!((next(8.0, 0.25, &[44, 51, 39, 58], 1.0).chance_of(47) - 0.052_264_918_7).abs() < 1e-10);
        assert!((next(3.0, 1.0, &[2, 4, 3, 5], 1.0).chance_at_most(3) - 0.566_545_637_8).abs() < 1e-10);
        assert!((next(1.0, 0.0, &[12, 9, 15], 1.0).chance_of(12) - 0.098_988_222_2).abs() < 1e-10);
        assert!((next(2.0, 0.05, &[40, 55, 46], 0.5).chance_at_most(23) - 0.521_342_493_0).abs() < 1e-10);
    }

    /// Quantiles and chances as a scientific library gives them: a prior that is next to certain gives the Poisson number.
    #[test]
    fn known_means_give_poisson_numbers_and_priors_negative_binomial_ones() {
        let poisson = |mean: f64| forecast(Prior { shape: mean * 1e9, rate: 1e9 }, &[], 1.0).unwrap();
        for (mean, quantiles) in [
            (12.0, [12, 15, 17, 18, 21]),
            (20.0, [20, 24, 26, 28, 31]),
            (48.0, [48, 54, 57, 60, 65]),
            (100.0, [100, 108, 113, 117, 124]),
        ] {
            assert_eq!([0.5, 0.8, 0.9, 0.95, 0.99].map(|share| poisson(mean).enough_for(share)), quantiles);
        }
        assert!((poisson(48.0).chance_at_most(53) - 0.789_026_319_5).abs() < 1e-6);
        assert!((poisson(48.0).chance_at_most(59) - 0.947_671_738_1).abs() < 1e-6);
        for (shape, quantiles) in [
            (2.0, [40, 72, 94, 115, 162]),
            (5.0, [45, 65, 78, 90, 115]),
            (10.0, [46, 61, 70, 78, 94]),
            (20.0, [47, 58, 65, 71, 82]),
            (48.0, [47, 56, 61, 65, 73]),
        ] {
            let next = forecast(Prior { shape, rate: shape / 48.0 }, &[], 1.0).unwrap();
            assert_eq!([0.5, 0.8, 0.9, 0.95, 0.99].map(|share| next.enough_for(share)), quantiles, "{shape}");
        }
    }

    #[test]
    fn a_statistics_library_gives_the_same_chances() {
        for (shape, rate, size) in [(2.5, 0.3, 1.0), (40.0, 2.0, 1.5), (900.0, 3.0, 1.0), (0.7, 0.1, 0.3)] {
            let ours = forecast(Prior { shape, rate }, &[], size).unwrap();
            let theirs = NegativeBinomial::new(shape, rate / (rate + size)).unwrap();
            for k in (0..600_u32).step_by(7) {
                assert!((ours.chance_of(k) - theirs.pmf(u64::from(k))).abs() < 1e-9, "{shape} {k}");
                assert!((ours.chance_at_most(k) - theirs.cdf(u64::from(k))).abs() < 1e-8, "{shape} {k}");
            }
        }
    }

    /// The same with sold-out shows, by way of the library's distributions on a fine grid of means, one after another.
    #[test]
    fn shows_that_sold_out_are_at_least_so_many() {
        let shows = [
            Outcome { sold: 9, sold_out: false, size: 1.0 },
            Outcome { sold: 12, sold_out: true, size: 1.0 },
            Outcome { sold: 5, sold_out: true, size: 0.5 },
            Outcome { sold: 0, sold_out: true, size: 1.0 },
        ];
        let prior = Prior { shape: 3.0, rate: 0.25 };
        let ours = forecast(prior, &shows, 1.2).unwrap();
        let before = Gamma::new(prior.shape, prior.rate).unwrap();
        let (mut weights, mut chances) = (0.0, vec![0.0; 60]);
        for step in 1..12_000 {
            let mean = f64::from(step) * 0.005;
            let at_least = |k: u64, size: f64| 1.0 - Poisson::new(mean * size).unwrap().cdf(k - 1);
            let weight = before.pdf(mean) * Poisson::new(mean).unwrap().pmf(9) * at_least(12, 1.0) * at_least(5, 0.5);
            weights += weight;
            let next = Poisson::new(mean * 1.2).unwrap();
            chances.iter_mut().enumerate().for_each(|(k, chance)| *chance += weight * next.pmf(k as u64));
        }
        for (k, chance) in chances.iter().enumerate() {
            assert!((ours.chance_of(k as u32) - chance / weights).abs() < 1e-6, "{k}");
        }
        let as_if_enough = shows.map(|show| Outcome { sold_out: show.sold_out && show.sold == 0, ..show });
        assert!(ours.mean > forecast(prior, &as_if_enough, 1.2).unwrap().mean, "more was wanted than was there");
    }

    #[test]
    fn many_large_shows_and_odd_figures_come_to_an_end() {
        let large = [Outcome { sold: 5_000, sold_out: true, size: 1.0 }; 3];
        let next = forecast(Prior::about(4_000.0, Sureness::Fairly), &large, 1.0).unwrap();
        assert!(next.mean > 5_000.0 && next.mean < 9_000.0, "{}", next.mean);
        assert!((next.chance_at_most(u32::MAX) - 1.0).abs() < 1e-9);
        let small = forecast(Prior::about(0.02, Sureness::Hardly), &[], 1.0).unwrap();
        assert!((small.chance_at_most(0) - 0.98).abs() < 0.01);
        for wrong in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e9] {
            assert!(forecast(Prior::about(wrong, Sureness::Quite), &[], 1.0).is_err(), "{wrong}");
            assert!(forecast(Prior::about(1.0, Sureness::Quite), &[], wrong).is_err(), "{wrong}");
        }
        let told = forecast(Prior::about(1.0, Sureness::Quite), &sold(&[10_001]), 1.0).unwrap_err();
        assert!(told.to_string().starts_with("10001 of one drop"), "{told}");
    }
}
