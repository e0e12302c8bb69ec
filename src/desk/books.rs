//! The one thread that writes the ledger.

use std::{
    sync::{Mutex, PoisonError, mpsc},
    thread::{self, JoinHandle},
};

use tokio::sync::{oneshot, watch};

use super::error::{DeskError, Refusal};
use crate::ledger::{Ledger, LedgerError};

type Job = Box<dyn FnOnce(&mut Ledger) + Send>;

/// Sends work to the thread that owns the ledger.
pub(super) struct Books {
    jobs: Mutex<Option<mpsc::Sender<Job>>>,
    thread: Mutex<Option<JoinHandle<()>>>,
    change: watch::Receiver<i64>,
}

impl Books {
    pub fn open(ledger: Ledger) -> Result<Self, DeskError> {
        let (jobs, work) = mpsc::channel::<Job>();
        let (tell, change) = watch::channel(ledger.change()?);
        let thread = thread::Builder::new()
            .name("ledger".into())
            .spawn(move || keep(ledger, &work, &tell))
            .map_err(|error| DeskError::System(error.to_string()))?;
        Ok(Self { jobs: Mutex::new(Some(jobs)), thread: Mutex::new(Some(thread)), change })
    }

    /// Follows the number of the last entry.
    pub fn changes(&self) -> watch::Receiver<i64> {
        self.change.clone()
    }

    fn send(&self, job: Job) -> bool {
        let jobs = self.jobs.lock().unwrap_or_else(PoisonError::into_inner);
        jobs.as_ref().is_some_and(|jobs| jobs.send(job).is_ok())
    }

    /// Runs `work` on the ledger's thread.
    pub async fn run<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Ledger) -> Result<T, LedgerError> + Send + 'static,
    ) -> Result<T, Refusal> {
        let (answer, answered) = oneshot::channel();
        self.send(Box::new(move |ledger| {
            // Nobody waits any more when the request was given up; the work is done all the same.
            let _ = answer.send(work(ledger));
        }));
        match answered.await {
            Ok(result) => Ok(result?),
            Err(_) => Err(Refusal::Request(axum::http::StatusCode::SERVICE_UNAVAILABLE, "the desk is closing".into())),
        }
    }

    /// The same for a thread that may block; `None` once the desk is closing.
    pub fn run_blocking<T: Send + 'static>(&self, work: impl FnOnce(&mut Ledger) -> T + Send + 'static) -> Option<T> {
        let (answer, answered) = mpsc::channel();
        self.send(Box::new(move |ledger| {
            let _ = answer.send(work(ledger));
        }));
        answered.recv().ok()
    }

    /// Finishes what was asked and closes the ledger.
    pub fn close(&self) {
        self.jobs.lock().unwrap_or_else(PoisonError::into_inner).take();
        if let Some(thread) = self.thread.lock().unwrap_or_else(PoisonError::into_inner).take() {
            let _ = thread.join();
        }
    }
}

fn keep(mut ledger: Ledger, work: &mpsc::Receiver<Job>, tell: &watch::Sender<i64>) {
    while let Ok(job) = work.recv() {
        job(&mut ledger);
        match ledger.change() {
            Ok(change) => {
                tell.send_if_modified(|last| std::mem::replace(last, change) != change);
            }
            Err(error) => tracing::error!("{error}"),
        }
    }
}
