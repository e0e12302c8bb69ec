//! The time that the desk goes by, and how it notices that somebody has set its clock: a second clock beside it only ever
//! goes on.

use std::{
    sync::Arc,
    time::{Duration, Instant},
};

use jiff::{SignedDuration, Timestamp};

/// By less than this a clock may be off the one that only goes on; it was not set then.
const SLACK: SignedDuration = SignedDuration::from_secs(10);

/// The desk's clock.
#[derive(Clone)]
pub struct Clock {
    shows: Arc<dyn Fn() -> Timestamp + Send + Sync>,
    began: Instant,
    speed: u32,
}

impl Clock {
    /// The machine's own.
    pub fn of_this_machine() -> Self {
        Self::showing(Timestamp::now, 1)
    }

    /// A clock that shows what `shows` says and goes `speed` times as fast as the machine's, as for trying out in a minute
    /// what takes an hour.
    pub fn showing(shows: impl Fn() -> Timestamp + Send + Sync + 'static, speed: u32) -> Self {
        Self { shows: Arc::new(shows), began: Instant::now(), speed }
    }

    /// What it shows.
    pub(super) fn now(&self) -> Timestamp {
        (self.shows)()
    }

    /// Waits until it has gone on by `by`.
    pub(super) async fn sleep(&self, by: Duration) {
        tokio::time::sleep(by / self.speed.max(1)).await;
    }

    /// Watches from now on whether it is set.
    pub(super) fn watched(self) -> WatchedClock {
        let from = Moment { shown: self.now(), passed: self.passed() };
        WatchedClock { clock: self, from }
    }

    /// How long it has gone on, whatever it shows. A computer that slept counts as one whose clock was set: nobody could be
    /// served meanwhile.
    fn passed(&self) -> Duration {
        self.began.elapsed() * self.speed
    }
}

/// What both clocks said at one moment.
#[derive(Debug, Clone, Copy)]
struct Moment {
    shown: Timestamp,
    passed: Duration,
}

/// A clock of which is known by how much it was set.
pub(super) struct WatchedClock {
    clock: Clock,
    from: Moment,
}

impl WatchedClock {
    /// What it shows, and by how much it was set since [`Self::was_taken_along`] was last told.
    pub(super) fn look(&self) -> (Timestamp, Option<SignedDuration>) {
        let now = Moment { shown: self.clock.now(), passed: self.clock.passed() };
        (now.shown, was_set(self.from, now))
    }

    /// Everything that goes by the clock was set by so much along with it.
    pub(super) fn was_taken_along(&mut self, by: SignedDuration) {
        self.from.shown = self.from.shown.saturating_add(by).unwrap_or(self.from.shown);
    }
}

/// By how much a clock was set between two moments.
fn was_set(from: Moment, to: Moment) -> Option<SignedDuration> {
    let passed = SignedDuration::try_from(to.passed.saturating_sub(from.passed)).unwrap_or(SignedDuration::MAX);
    let by = from.shown.duration_until(to.shown).checked_sub(passed)?;
    (by.abs() > SLACK).then_some(by)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_that_was_set_is_told_from_one_that_went_on() {
        let seconds = SignedDuration::from_secs;
        let from = Moment { shown: Timestamp::UNIX_EPOCH, passed: Duration::from_secs(3) };
        for (shown, by) in [(20, None), (21, None), (29, None), (11, None), (3620, Some(3600)), (-3580, Some(-3600))] {
            let to = Moment { shown: from.shown + seconds(shown), passed: from.passed + Duration::from_secs(20) };
            assert_eq!(was_set(from, to), by.map(seconds), "{shown}");
        }
    }

    #[test]
    fn what_was_taken_along_is_not_told_again_and_small_steps_add_up() {
        let off = Arc::new(std::sync::atomic::AtomicI64::new(0));
        let (for_clock, began) = (Arc::clone(&off), Timestamp::now());
        let set = |seconds| off.fetch_add(seconds, std::sync::atomic::Ordering::Relaxed);
        let shows = move || began + SignedDuration::from_secs(for_clock.load(std::sync::atomic::Ordering::Relaxed));
        let mut clock = Clock::showing(shows, 1).watched();
        assert_eq!(clock.look().1, None);
        set(-3600);
        let by = clock.look().1.unwrap();
        assert_eq!(by.as_secs(), -3600);
        clock.was_taken_along(by);
        assert_eq!(clock.look().1, None);
        set(8);
        assert_eq!(clock.look().1, None);
        set(8);
        assert!((14..=16).contains(&clock.look().1.unwrap().as_secs()));
    }
}
