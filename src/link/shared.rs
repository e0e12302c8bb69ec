//! What the handle of a line shares with the threads that talk to the desk.

use std::{
    collections::HashMap,
    path::PathBuf,
    sync::{
        Arc, Condvar, Mutex, MutexGuard, PoisonError,
        atomic::{AtomicBool, Ordering},
        mpsc,
    },
    time::{Duration, Instant},
};

use uuid::Uuid;

use super::{
    News, Pairing,
    outbox::Outbox,
    pin_memory::PinMemory,
    wire::{CatalogContent, DeskNews, KioskReport},
};
use crate::ticket::NotTaken;

/// A guest waits for the number no longer than this; then it is given without the desk.
pub(super) const DELIVERY_TIMEOUT: Duration = Duration::from_millis(2500);
/// Longer than the desk lets a question for news wait.
pub(super) const NEWS_TIMEOUT: Duration = Duration::from_secs(25);
/// Pause after a failed try; the guest is not waiting any more.
pub(super) const RETRY: Duration = Duration::from_secs(1);

/// What the handle and the threads of one line share.
pub(super) struct Shared {
    /// The kiosk's folder.
    pub dir: PathBuf,
    pub(super) news: Mutex<mpsc::Sender<News>>,
    pub(super) wake: Arc<dyn Fn() + Send + Sync>,
    pub pairing: Mutex<Option<Pairing>>,
    pub desk: Mutex<Desk>,
    pub outbox: Mutex<Outbox>,
    pub outbox_changed: Condvar,
    pub(super) pin: Mutex<PinMemory>,
    pub disk_nearly_full: AtomicBool,
    /// The desk does not know this kiosk's key.
    pub let_go: AtomicBool,
    /// What went wrong so far with tickets in the outbox.
    pub tries: Mutex<Tries>,
    /// The last report that the desk has.
    pub reported: Mutex<Option<(KioskReport, Instant)>>,
    pub(super) ended: AtomicBool,
}

/// What is known of the desk.
#[derive(Default)]
pub(super) struct Desk {
    pub state: Option<DeskNews>,
    pub content: Option<Arc<CatalogContent>>,
    pub catalog: Option<Arc<crate::catalog::Catalog>>,
    pub in_reach: Option<bool>,
}

impl Desk {
    /// Whether the desk practises, as far as is known.
    pub(super) fn practises(&self) -> bool {
        self.state.as_ref().is_some_and(|state| state.practice)
    }
}

pub(super) fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

/// What went wrong so far, by ticket.
pub(super) type Tries = HashMap<Uuid, Tried>;

/// Tries of one ticket that the desk answered, but not with what becomes of it.
pub(super) struct Tried {
    /// How often it was tried.
    pub times: u32,
    /// When it is tried again.
    pub not_before: Instant,
    /// What is in the way.
    pub trouble: NotTaken,
}

impl Shared {
    /// Whether the desk does not know this kiosk any more.
    pub(super) fn is_let_go(&self) -> bool {
        self.let_go.load(Ordering::Relaxed)
    }

    /// Whether the line has to end.
    pub(super) fn ended(&self) -> bool {
        self.ended.load(Ordering::Relaxed)
    }

    /// Gives news to whoever holds the receiving end, and wakes the screen.
    pub(super) fn tell(&self, news: News) {
        // The receiver is gone only when the kiosk ends.
        let _ = lock(&self.news).send(news);
        (self.wake)();
    }
}
