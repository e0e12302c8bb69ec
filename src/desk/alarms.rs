//! Saying in the log that somebody tries to get in, without secrets and without letting them fill the disk.

use std::{
    collections::HashMap,
    net::IpAddr,
    sync::{Mutex, PoisonError},
    time::{Duration, Instant},
};

/// Lines of one sort in a minute; what comes beyond is counted.
const LINES: u32 = 10;
const WINDOW: Duration = Duration::from_secs(60);
/// Characters of a stranger's own words.
const LONGEST: usize = 80;

/// What was said in this minute, by sort.
#[derive(Default)]
pub(super) struct Alarms {
    said: Mutex<HashMap<&'static str, (Instant, u32)>>,
}

impl Alarms {
    /// Notes `what` came `from` there; `words` is what a stranger wrote, never a secret.
    pub(super) fn note(&self, what: &'static str, from: IpAddr, words: &str) {
        let now = Instant::now();
        let mut said = self.said.lock().unwrap_or_else(PoisonError::into_inner);
        let (since, count) = said.entry(what).or_insert((now, 0));
        if now.saturating_duration_since(*since) >= WINDOW {
            if let Some(unsaid) = count.checked_sub(LINES).filter(|unsaid| *unsaid > 0) {
                tracing::warn!("{what}: {unsaid} more in the minute before");
            }
            (*since, *count) = (now, 0);
        }
        *count += 1;
        if *count > LINES {
            return;
        }
        if words.is_empty() {
            tracing::warn!("{what} from {from}");
        } else {
            // Quoted, so that no line of the log can be forged.
            let words: String = words.chars().take(LONGEST).collect();
            tracing::warn!("{what} from {from}: {words:?}");
        }
    }
}
