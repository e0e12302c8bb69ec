//! Whether the desk practises, and what is kept of that in memory. How it begins and ends is in `practising`.

use std::sync::{
    PoisonError, RwLock,
    atomic::{AtomicBool, Ordering},
};

/// One practice that goes on.
#[derive(Debug, Clone)]
pub(super) struct Running {
    /// Tells its pages from those of another practice.
    pub(super) id: String,
    /// The catalogue with which it began.
    pub(super) revision: String,
}

/// Whether the desk practises.
pub(super) struct Practice {
    running: RwLock<Option<Running>>,
    /// Held by whoever enters something or tells a tablet what holds; and alone, while the one becomes the other.
    pub(super) gate: tokio::sync::RwLock<()>,
    /// An earlier run was ended during practice, and nobody has read that yet.
    cut_short: AtomicBool,
}

impl Practice {
    pub(super) fn new(cut_short: bool) -> Self {
        Self { running: RwLock::default(), gate: tokio::sync::RwLock::default(), cut_short: AtomicBool::new(cut_short) }
    }

    pub(super) fn running(&self) -> Option<Running> {
        self.running.read().unwrap_or_else(PoisonError::into_inner).clone()
    }

    pub(super) fn set(&self, running: Option<Running>) {
        *self.running.write().unwrap_or_else(PoisonError::into_inner) = running;
    }

    pub(super) fn is_on(&self) -> bool {
        self.running.read().unwrap_or_else(PoisonError::into_inner).is_some()
    }

    /// Keeps what is real and what is practice from changing places for as long as the answer is held.
    pub(super) async fn as_it_is(&self) -> tokio::sync::RwLockReadGuard<'_, ()> {
        self.gate.read().await
    }

    pub(super) fn was_cut_short(&self) -> bool {
        self.cut_short.load(Ordering::Relaxed)
    }

    pub(super) fn cut_short_was_seen(&self) {
        self.cut_short.store(false, Ordering::Relaxed);
    }
}
