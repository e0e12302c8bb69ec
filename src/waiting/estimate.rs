//! How long a guest is going to wait: a range, honest about how little a day has shown.
//!
//! Whoever sits at the table leaves it after a time that nobody knows beforehand. As long as nothing better is known, a sitting
//! is taken to end at any moment as likely as at any other, at a rate μ. After n sittings that ended in T minutes of seats in
//! use, those that go on included, what is known of μ is a gamma distribution of shape a = 2 + n and rate b = 2 · 15 min + T: a
//! usual sitting counts like two that were seen. With c seats in use, as many sittings end within t minutes as a negative
//! binomial distribution of a and b / (b + c t) says, and a guest with k before them waits no longer than t if k + 1 or more do.
//! Source: the gamma prior of a Poisson rate and its predictive distribution, as in Gelman and others, Bayesian Data Analysis,
//! third edition, section 2.6 (from memory).
//!
//! Real sittings vary less than that, so the range is rather too wide than too narrow.

/// A usual sitting: choosing, threading, paying. Common practice, no source.
const USUAL_MINUTES: f64 = 15.0;
/// So many sittings the usual one counts for.
const USUAL_COUNTS: f64 = 2.0;
/// One guest of ten waits less than the range says, and one of ten more.
const TAILS: (f64, f64) = (0.1, 0.9);

/// Nobody waits longer than this many times what a day has shown.
const MOST_RATES: f64 = 1e12;
/// So often the range between two times is halved: to less than a second of a day.
const HALVINGS: usize = 60;

/// What a day has shown so far.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Seen {
    /// Sittings that have ended.
    pub ended: u32,
    /// Minutes of seats in use, all seats together.
    pub seat_minutes: f64,
}

/// From when to when a guest is likely to be called, in minutes from now.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaitRange {
    /// Nine of ten wait longer.
    pub from_minutes: f64,
    /// Nine of ten wait less.
    pub to_minutes: f64,
}

/// How long a guest waits who has `ahead` others before them, where `free` of the `seats` can be taken at once.
pub fn wait_range(ahead: usize, free: usize, seats: usize, seen: Seen) -> WaitRange {
    let now = WaitRange { from_minutes: 0.0, to_minutes: 0.0 };
    if ahead < free || seats == 0 {
        return now;
    }
    let until = ahead - free + 1;
    let shape = USUAL_COUNTS + f64::from(seen.ended);
    let rate_minutes = USUAL_COUNTS * USUAL_MINUTES + seen.seat_minutes.max(0.0);
    let at = |share: f64| {
        // Looked for in sittings of the usual rate, so that the bounds hold for every day.
        let minutes = |x: f64| x * rate_minutes / seats as f64;
        let (mut low, mut high) = (0.0, 1.0);
        while called_within(until, shape, high) < share && high < MOST_RATES {
            high *= 2.0;
        }
        for _ in 0..HALVINGS {
            let middle = (low + high) / 2.0;
            if called_within(until, shape, middle) < share { low = middle } else { high = middle }
        }
        minutes(high)
    };
    WaitRange { from_minutes: at(TAILS.0), to_minutes: at(TAILS.1) }
}

/// How likely `until` or more sittings have ended when seats were in use for `x` times what was seen before.
fn called_within(until: usize, shape: f64, x: f64) -> f64 {
    // The chance of none, and from one number of them to the next.
    let mut chance = (-shape * x.ln_1p()).exp();
    let mut fewer = 0.0;
    for n in 0..until {
        fewer += chance;
        chance *= (shape + n as f64) / (n as f64 + 1.0) * x / (1.0 + x);
    }
    1.0 - fewer
}

/// The range as it is told: whole five minutes, rounded so that it becomes no narrower.
pub fn minutes_shown(range: WaitRange) -> (u32, u32) {
    let fives = |minutes: f64| (minutes / 5.0).clamp(0.0, 1e6);
    ((fives(range.from_minutes).floor() as u32) * 5, (fives(range.to_minutes).ceil() as u32) * 5)
}
