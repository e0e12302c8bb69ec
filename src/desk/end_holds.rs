//! Ends holds whose time is over, for as long as the desk runs.

use std::{
    sync::Arc,
    time::{Duration, Instant},
};

use jiff::{SignedDuration, Timestamp};

use super::state::DeskState;

/// Holds end within this of their time.
const EVERY: Duration = Duration::from_secs(20);
/// What two sweeps may take longer by the clock than they took: more, and the clock was set meanwhile.
const SLACK: SignedDuration = SignedDuration::from_secs(30);

/// Frees the parts of tickets whose time is over.
pub(super) async fn end_holds(desk: Arc<DeskState>) {
    let mut last = (Instant::now(), Timestamp::now());
    loop {
        tokio::time::sleep(EVERY).await;
        let now = (Instant::now(), Timestamp::now());
        let by = clock_was_set(last.1.duration_until(now.1), now.0 - last.0);
        last = now;
        let swept = desk
            .ledger
            .run(move |ledger| {
                if let Some(by) = by {
                    ledger.clock_was_set(by, now.1)?;
                }
                ledger.end_holds(now.1)
            })
            .await;
        if let Err(refusal) = swept {
            tracing::error!("holds could not be ended: {refusal:?}");
        }
    }
}

/// By how much the clock was set while it went on by `by_clock` and `passed` really passed. A computer that slept counts
/// as one whose clock was set: nobody could be served meanwhile.
fn clock_was_set(by_clock: SignedDuration, passed: Duration) -> Option<SignedDuration> {
    let passed = SignedDuration::try_from(passed).unwrap_or(SignedDuration::MAX);
    let by = by_clock.checked_sub(passed)?;
    (by.abs() > SLACK).then_some(by)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_that_was_set_is_told_from_one_that_went_on() {
        let seconds = SignedDuration::from_secs;
        let passed = Duration::from_secs(20);
        for (by_clock, by) in [(20, None), (21, None), (49, None), (0, None), (3620, Some(3600)), (-3580, Some(-3600))]
        {
            assert_eq!(clock_was_set(seconds(by_clock), passed), by.map(seconds), "{by_clock}");
        }
    }
}
