//! One connection: what it is at, and until when something has to come.

use std::{
    net::IpAddr,
    sync::{
        Arc, Mutex, MutexGuard, PoisonError,
        atomic::{AtomicBool, Ordering},
    },
    task::Waker,
    time::{Duration, Instant},
};

/// A request's head has to be there within this.
const HEAD: Duration = Duration::from_secs(10);

/// What a connection is at.
#[derive(Debug, Clone, Copy)]
pub(super) enum Activity {
    /// The head of a request has to come, or its answer be fetched, since then.
    Waiting { since: Instant, within: Duration },
    /// A request is being answered.
    Busy,
}

/// A connection from its beginning to its end, whoever looks at it.
#[derive(Debug)]
pub(super) struct Visit {
    /// The other side's address.
    pub ip: IpAddr,
    now: Mutex<(Activity, Option<Waker>)>,
    turned_away: AtomicBool,
}

impl Visit {
    /// A connection that has just begun.
    pub(super) fn new(ip: IpAddr) -> Arc<Self> {
        let state = Activity::Waiting { since: Instant::now(), within: HEAD };
        Arc::new(Self { ip, now: Mutex::new((state, None)), turned_away: false.into() })
    }

    /// What it is at, and who is to be woken when it is turned away.
    pub(super) fn lock(&self) -> MutexGuard<'_, (Activity, Option<Waker>)> {
        self.now.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Since when it waits; `None` while a request is being answered.
    pub(super) fn waits_since(&self) -> Option<Instant> {
        match self.lock().0 {
            Activity::Waiting { since, .. } => Some(since),
            Activity::Busy => None,
        }
    }

    /// Until when something has to be read; `None` while a request is being answered. `waker` is woken when it is turned
    /// away.
    pub(super) fn deadline(&self, waker: &Waker) -> Option<Instant> {
        let mut now = self.lock();
        now.1 = Some(waker.clone());
        match now.0 {
            Activity::Waiting { since, within } => Some(since + within),
            Activity::Busy => None,
        }
    }

    /// Some of the answer went out.
    pub(super) fn written(&self) {
        if let Activity::Waiting { since, .. } = &mut self.lock().0 {
            *since = Instant::now();
        }
    }

    /// Whether it has to go.
    pub(super) fn is_turned_away(&self) -> bool {
        self.turned_away.load(Ordering::Relaxed)
    }

    /// Lets it go; whoever reads from it is woken.
    pub(super) fn turn_away(&self) {
        self.turned_away.store(true, Ordering::Relaxed);
        if let Some(waker) = self.lock().1.take() {
            waker.wake();
        }
    }
}
