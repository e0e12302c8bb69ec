//! The threads of the ledger. One writes, and two lines wait for it: what is entered, of which all that waits is entered
//! together with one commit, and other work, which comes after that. One only reads, so that nobody who looks waits for a
//! flush of the disk, nor a send for a page.

use std::{
    panic::{AssertUnwindSafe, catch_unwind},
    sync::{Arc, Mutex, PoisonError, mpsc},
    thread::{self, JoinHandle},
    time::Instant,
};

use jiff::Timestamp;
use tokio::sync::{oneshot, watch};

use super::{
    books::Books,
    clock::WatchedClock,
    error::DeskError,
    ledger_queue::{Entering, Next, Other, Queue},
    refusal::Refusal,
    signed_in::Seller,
};
use crate::{
    lang::message,
    ledger::{AfterCommit, Ledger, LedgerError, Work},
};

type Look = Box<dyn FnOnce(&mut Ledger) + Send>;

/// Sends work to the threads that own the ledger.
pub(super) struct LedgerThread {
    queue: Arc<Queue>,
    thread: Mutex<Option<JoinHandle<()>>>,
    /// None where the ledger can't be opened twice, and once the desk is closing.
    looks: Mutex<Option<mpsc::Sender<Look>>>,
    looking: Mutex<Option<JoinHandle<()>>>,
    /// For questions so small that asking another thread would take longer.
    at_hand: Mutex<Option<Ledger>>,
    change: watch::Receiver<i64>,
}

impl LedgerThread {
    pub(super) fn open(ledger: Ledger, clock: WatchedClock) -> Result<Self, DeskError> {
        let queue = Arc::new(Queue::default());
        let (tell, change) = watch::channel(ledger.change()?);
        let for_thread = Arc::clone(&queue);
        let spawn = |name: &str, work: Box<dyn FnOnce() + Send>| {
            let thread = thread::Builder::new().name(name.into()).spawn(work);
            thread.map_err(|error| DeskError::System(error.to_string()))
        };
        let beside = ledger.to_look_at().and_then(|beside| Ok((beside, ledger.to_look_at()?)));
        let (looks, looking, at_hand) = match beside {
            Ok((beside, at_hand)) => {
                let (looks, asked) = mpsc::channel();
                (Some(looks), Some(spawn("ledger look", Box::new(move || look(beside, &asked)))?), Some(at_hand))
            }
            Err(error) => {
                tracing::warn!("the ledger is read and written by one: {error}");
                (None, None, None)
            }
        };
        let thread = spawn("ledger", Box::new(move || keep(Books::new(ledger), &for_thread, &tell, clock)))?;
        Ok(Self {
            queue,
            thread: Mutex::new(Some(thread)),
            looks: Mutex::new(looks),
            looking: Mutex::new(looking),
            at_hand: Mutex::new(at_hand),
            change,
        })
    }

    /// Follows the number of the last entry.
    pub(super) fn changes(&self) -> watch::Receiver<i64> {
        self.change.clone()
    }

    /// Runs `work` before anything that is only read, and answers once it is kept. It shares its commit with what else
    /// waits to be entered.
    pub(super) async fn enter<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Ledger, Timestamp) -> Result<T, LedgerError> + Send + 'static,
    ) -> Result<T, Refusal> {
        let (answer, answered) = oneshot::channel();
        let work: Entering = Box::new(move |ledger, now| {
            let done = work(ledger, now);
            let tell: AfterCommit = Box::new(move |kept| {
                // Nobody waits any more when the request was given up; the work is done all the same.
                let _ = answer.send(done.and_then(|value| kept.map(|()| value)));
            });
            tell
        });
        self.queue.add(|lines| lines.entering.push_back(work));
        self.answer(answered.await)
    }

    /// The same for what somebody at the desk does: the entries have their name.
    pub(super) async fn enter_by<T: Send + 'static>(
        &self,
        seller: &Seller,
        work: impl FnOnce(&mut Ledger, Timestamp) -> Result<T, LedgerError> + Send + 'static,
    ) -> Result<T, Refusal> {
        let by = seller.who.clone();
        self.enter(move |ledger, now| ledger.acting(by, |ledger| work(ledger, now))).await
    }

    /// Answers a question of one row at once.
    pub(super) async fn peek<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Ledger) -> Result<T, LedgerError> + Send + 'static,
    ) -> Result<T, Refusal> {
        if let Some(ledger) = &*self.at_hand.lock().unwrap_or_else(PoisonError::into_inner) {
            return Ok(work(ledger)?);
        }
        self.run(move |ledger, _| work(ledger)).await
    }

    /// Lets `work` look at the ledger as it is at one moment, everything that was answered included.
    pub(super) async fn look<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Ledger) -> Result<T, LedgerError> + Send + 'static,
    ) -> Result<T, Refusal> {
        let looks = self.looks.lock().unwrap_or_else(PoisonError::into_inner).clone();
        let Some(looks) = looks else { return self.run(move |ledger, _| work(ledger)).await };
        let (answer, answered) = oneshot::channel();
        let sent = looks.send(Box::new(move |ledger| {
            let _ = answer.send(ledger.at_one_moment(work));
        }));
        drop(sent);
        self.answer(answered.await)
    }

    /// Runs `work` when nothing waits to be entered.
    pub(super) async fn run<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Ledger, Timestamp) -> Result<T, LedgerError> + Send + 'static,
    ) -> Result<T, Refusal> {
        let (answer, answered) = oneshot::channel();
        let other: Other = Box::new(move |books, now| {
            let _ = answer.send(work(books.in_use(), now));
        });
        self.queue.add(|lines| lines.other.push_back(other));
        self.answer(answered.await)
    }

    /// The same for what somebody at the desk does: the entries have their name.
    pub(super) async fn run_by<T: Send + 'static>(
        &self,
        seller: &Seller,
        work: impl FnOnce(&mut Ledger, Timestamp) -> Result<T, LedgerError> + Send + 'static,
    ) -> Result<T, Refusal> {
        let by = seller.who.clone();
        self.run(move |ledger, now| ledger.acting(by, |ledger| work(ledger, now))).await
    }

    /// The same for a thread that may block; `None` once the desk is closing, and where the work panicked.
    pub(super) fn run_blocking<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Ledger, Timestamp) -> T + Send + 'static,
    ) -> Option<T> {
        let (answer, answered) = mpsc::channel();
        let other: Other = Box::new(move |books, now| {
            let _ = answer.send(work(books.in_use(), now));
        });
        self.queue.add(|lines| lines.other.push_back(other));
        answered.recv().ok()
    }

    /// Work that panicked, and work that nobody does any more, gives no answer.
    fn answer<T>(&self, answered: Result<Result<T, LedgerError>, oneshot::error::RecvError>) -> Result<T, Refusal> {
        match answered {
            Ok(result) => Ok(result?),
            Err(_) => Err(self.unanswered()),
        }
    }

    fn unanswered(&self) -> Refusal {
        if self.queue.is_closed() {
            let status = axum::http::StatusCode::SERVICE_UNAVAILABLE;
            return Refusal::Said(status, message!("refused-closing"));
        }
        LedgerError::Panicked.into()
    }

    /// Lets `change` decide which ledger is worked on. Whoever looks afterwards looks at that one.
    pub(super) async fn switch(
        &self,
        change: impl FnOnce(&mut Books, Timestamp) -> Result<(), Refusal> + Send + 'static,
    ) -> Result<(), Refusal> {
        let (answer, answered) = oneshot::channel();
        let other: Other = Box::new(move |books, now| {
            let done = change(books, now);
            let ledger = books.in_use();
            let _ = answer.send((done, ledger.to_look_at().and_then(|beside| Ok((beside, ledger.to_look_at()?)))));
        });
        self.queue.add(|lines| lines.other.push_back(other));
        let (done, beside) = answered.await.map_err(|_| self.unanswered())?;
        let mut looks = self.looks.lock().unwrap_or_else(PoisonError::into_inner);
        let mut at_hand = self.at_hand.lock().unwrap_or_else(PoisonError::into_inner);
        match (beside, &*looks) {
            (Ok((beside, own)), Some(asked)) => {
                *at_hand = Some(own);
                let _ = asked.send(Box::new(|ledger| *ledger = beside));
            }
            (beside, _) => {
                if let Err(error) = beside {
                    tracing::warn!("the ledger is read and written by one: {error}");
                }
                (*looks, *at_hand) = (None, None);
            }
        }
        done
    }

    /// Finishes what was asked and closes the ledger.
    pub(super) fn close(&self) {
        // Whoever looks ends first: the last to close the file merges its write-ahead file.
        self.at_hand.lock().unwrap_or_else(PoisonError::into_inner).take();
        self.looks.lock().unwrap_or_else(PoisonError::into_inner).take();
        if let Some(thread) = self.looking.lock().unwrap_or_else(PoisonError::into_inner).take() {
            let _ = thread.join();
        }
        self.queue.close();
        if let Some(thread) = self.thread.lock().unwrap_or_else(PoisonError::into_inner).take() {
            let _ = thread.join();
        }
    }
}

/// Looks for as long as the desk runs. Who asked in a way that panics hears no answer.
fn look(mut ledger: Ledger, asked: &mpsc::Receiver<Look>) {
    while let Ok(look) = asked.recv() {
        let _ = catch_unwind(AssertUnwindSafe(|| look(&mut ledger)));
    }
}

/// Works for as long as the desk runs. A panic ends with the work that it came from; the ledger is opened anew after it.
fn keep(mut books: Books, queue: &Queue, tell: &watch::Sender<i64>, mut clock: WatchedClock) {
    loop {
        let next = queue.next();
        let now = time_of(&mut clock, &mut books);
        let panicked = match next {
            Next::Enter(works) => {
                let at_once = |work: Entering| -> Work { Box::new(move |ledger| work(ledger, now)) };
                let (many, began) = (works.len(), Instant::now());
                let panicked = books.in_use().together(works.into_iter().map(at_once).collect());
                queue.gather(many, began.elapsed());
                panicked
            }
            Next::Do(other) => catch_unwind(AssertUnwindSafe(|| other(&mut books, now))).is_err(),
            Next::End => break,
        };
        if panicked && let Err(error) = books.in_use().reopen() {
            tracing::error!("the ledger could not be opened anew: {error}");
        }
        match books.in_use().change() {
            Ok(change) => {
                tell.send_if_modified(|last| std::mem::replace(last, change) != change);
            }
            Err(error) => tracing::error!("{error}"),
        }
    }
    books.close();
}

/// The time of what is done next. Before anything has a time from after the clock was set, what is held goes along with it:
/// so no hold is ever taken along that was made after.
fn time_of(clock: &mut WatchedClock, books: &mut Books) -> Timestamp {
    let (now, by) = clock.look();
    if let Some(by) = by {
        match books.clock_was_set(by, now) {
            Ok(()) => clock.was_taken_along(by),
            // It is tried again with what is done next; a disk that refuses this refuses that as well.
            Err(error) => tracing::error!("holds could not be taken along with the clock: {error}"),
        }
    }
    now
}
