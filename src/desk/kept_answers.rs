//! Answers that are kept for a moment, for the session that got each.

use std::{
    collections::VecDeque,
    sync::{Mutex, PoisonError},
    time::{Duration, Instant},
};

use axum::{
    body::Bytes,
    http::{HeaderValue, StatusCode},
};

/// An answer is looked at once, and perhaps loaded anew.
const KEPT_FOR: Duration = Duration::from_secs(600);
/// More than all phones of a table get in that time.
const MOST: usize = 100;

/// An answer that somebody is being led to.
pub(super) struct Kept {
    pub(super) key: String,
    pub(super) session: String,
    pub(super) since: Instant,
    pub(super) status: StatusCode,
    pub(super) kind: Option<HeaderValue>,
    pub(super) body: Bytes,
    /// The page that it belongs to.
    pub(super) page: String,
}

/// The answers that are kept.
#[derive(Default)]
pub(super) struct Answers(Mutex<VecDeque<Kept>>);

impl Answers {
    /// Keeps an answer for a moment.
    pub(super) fn keep(&self, kept: Kept) {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        all.retain(|one| one.since.elapsed() < KEPT_FOR);
        if all.len() == MOST {
            all.pop_front();
        }
        all.push_back(kept);
    }

    /// What is told of the answer called `key` to the session that got it.
    pub(super) fn look<T>(&self, key: &str, session: &str, tell: impl FnOnce(&Kept) -> T) -> Option<T> {
        let all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let found = all.iter().find(|one| one.key == key && one.session == session);
        found.filter(|one| one.since.elapsed() < KEPT_FOR).map(tell)
    }
}
