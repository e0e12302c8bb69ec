//! The search for a better plan of cuts: it has a thread of its own, tells how far it is, and ends when somebody stops it.

use std::{
    sync::{
        Arc, Mutex, PoisonError,
        atomic::{AtomicBool, Ordering},
    },
    time::{Duration, Instant},
};

use tokio::sync::Notify;

use crate::prep::cuts::{BetterPlan, CutJob, Progress, better_plan};

/// A search ends by itself after so long: nobody at a bench waits longer.
const LONGEST: Duration = Duration::from_secs(60);
/// So often open pages are told how far it is.
const TOLD_EVERY: Duration = Duration::from_millis(500);

/// The last search that was begun. Another one ends it.
#[derive(Default)]
pub(super) struct CutSearches(Mutex<Option<Arc<CutSearch>>>);

/// One search.
pub(super) struct CutSearch {
    job: CutJob,
    began: Instant,
    stop: AtomicBool,
    far: Mutex<Far>,
    ended: Notify,
}

/// How far a search is.
#[derive(Debug, Clone, Default)]
pub(super) struct Far {
    /// The last that it told.
    pub progress: Option<Progress>,
    /// It has ended: with its best plan, or with none where the figures were too much for it.
    pub ended: Option<Option<BetterPlan>>,
}

impl CutSearches {
    /// The search for a job, running or ended.
    pub(super) fn of(&self, job: &CutJob) -> Option<Arc<CutSearch>> {
        let last = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        last.as_ref().filter(|search| search.job == *job).map(Arc::clone)
    }

    /// Begins one, unless there is one for this job that runs or has ended with a plan. An earlier one ends. `told` hears of
    /// news now and then, and whether it may go on is its answer.
    pub(super) fn begin(&self, job: &CutJob, told: impl Fn() -> bool + Send + 'static) -> Arc<CutSearch> {
        let mut last = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(search) = last.as_ref() {
            let failed = matches!(search.far().ended, Some(None));
            if search.job == *job && !failed {
                return Arc::clone(search);
            }
            search.stop();
        }
        let search = Arc::new(CutSearch {
            job: job.clone(),
            began: Instant::now(),
            stop: AtomicBool::new(false),
            far: Mutex::default(),
            ended: Notify::new(),
        });
        *last = Some(Arc::clone(&search));
        let running = Arc::clone(&search);
        tokio::task::spawn_blocking(move || running.run(&told));
        search
    }
}

impl CutSearch {
    fn run(&self, told: &dyn Fn() -> bool) {
        let (mut last, mut may_go_on) = (Instant::now(), true);
        let found = better_plan(&self.job, &mut |progress| {
            self.far.lock().unwrap_or_else(PoisonError::into_inner).progress = Some(progress);
            if last.elapsed() > TOLD_EVERY {
                last = Instant::now();
                may_go_on = told();
            }
            may_go_on && !self.stop.load(Ordering::Relaxed) && self.began.elapsed() < LONGEST
        });
        if let Err(error) = &found {
            tracing::warn!("no better plan: {error}");
        }
        self.far.lock().unwrap_or_else(PoisonError::into_inner).ended = Some(found.ok());
        self.ended.notify_waiters();
        told();
    }

    /// Ends it; the best plan so far is what it found.
    pub(super) fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// How far it is.
    pub(super) fn far(&self) -> Far {
        self.far.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// For how long it has been running.
    pub(super) fn seconds(&self) -> u64 {
        self.began.elapsed().as_secs()
    }

    /// Waits until it has ended, and for so long at most.
    pub(super) async fn wait(&self, at_most: Duration) {
        let ended = self.ended.notified();
        if self.far().ended.is_none() {
            let _ = tokio::time::timeout(at_most, ended).await;
        }
    }
}
