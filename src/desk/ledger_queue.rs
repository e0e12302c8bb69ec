//! What waits for the ledger's thread: two lines, and how many of the first are entered together.

use std::{
    collections::VecDeque,
    sync::{Condvar, Mutex, MutexGuard, PoisonError},
    time::{Duration, Instant},
};

use jiff::Timestamp;

use super::books::Books;
use crate::ledger::{AfterCommit, Ledger};

/// So many changes share a commit at most.
const TOGETHER: usize = 64;
/// Where many send at once and a flush takes long, the next commit waits for those who were just answered, no longer than
/// this share of the commit before, and never longer than that: so they share a flush instead of taking turns.
const GATHERING_SHARE: u32 = 4;
const GATHERING_AT_MOST: Duration = Duration::from_millis(2);
/// After so many commits in a row other work gets its turn, whoever else wants to enter something.
const COMMITS_IN_A_ROW: u32 = 8;

/// Work that enters something, which has the time that is given to it.
pub(super) type Entering = Box<dyn FnOnce(&mut Ledger, Timestamp) -> AfterCommit + Send>;
pub(super) type Other = Box<dyn FnOnce(&mut Books, Timestamp) + Send>;

/// What waits for the ledger's thread.
#[derive(Default)]
pub(super) struct Lines {
    pub(super) entering: VecDeque<Entering>,
    pub(super) other: VecDeque<Other>,
    closed: bool,
    /// Commits since other work had its turn.
    in_a_row: u32,
    /// For how many the next commit waits, and until when.
    gathering: Option<(usize, Instant)>,
}

impl Lines {
    /// A commit of `many` has taken so long until `now`.
    fn gather(&mut self, many: usize, took: Duration, now: Instant) {
        let patience = (took / GATHERING_SHARE).min(GATHERING_AT_MOST);
        self.gathering = Some((self.entering.len() + many, now + patience));
    }

    /// How long the next commit still waits for those who were just answered.
    fn patience(&self, now: Instant) -> Option<Duration> {
        let (wanted, until) = self.gathering.filter(|_| !self.closed)?;
        let left = until.checked_duration_since(now).filter(|left| !left.is_zero())?;
        (self.entering.len() < wanted.min(TOGETHER)).then_some(left)
    }
}

/// What is done next.
pub(super) enum Next {
    Enter(Vec<Entering>),
    Do(Other),
    End,
}

#[derive(Default)]
pub(super) struct Queue {
    lines: Mutex<Lines>,
    changed: Condvar,
}

impl Queue {
    fn lines(&self) -> MutexGuard<'_, Lines> {
        self.lines.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Adds to the lines, unless the desk is closing.
    pub(super) fn add(&self, add: impl FnOnce(&mut Lines)) {
        let mut lines = self.lines();
        if !lines.closed {
            add(&mut lines);
            // Whoever is woken wants the lines at once.
            drop(lines);
            self.changed.notify_one();
        }
    }

    /// A commit of `many` has taken so long. Whoever was answered may have more to enter soon; who waits already, waits for
    /// them a little. Alone, nobody waits.
    pub(super) fn gather(&self, many: usize, took: Duration) {
        self.lines().gather(many, took, Instant::now());
    }

    /// Nothing more is taken; what waits is done.
    pub(super) fn close(&self) {
        self.lines().closed = true;
        self.changed.notify_all();
    }

    pub(super) fn is_closed(&self) -> bool {
        self.lines().closed
    }

    /// Waits for something to do; what waits is done before the end.
    pub(super) fn next(&self) -> Next {
        let mut lines = self.lines();
        loop {
            let turn = lines.in_a_row >= COMMITS_IN_A_ROW && !lines.other.is_empty();
            if !lines.entering.is_empty() && !turn {
                if let Some(left) = lines.patience(Instant::now()) {
                    lines = self.changed.wait_timeout(lines, left).unwrap_or_else(PoisonError::into_inner).0;
                    continue;
                }
                lines.gathering = None;
                lines.in_a_row += 1;
                let many = lines.entering.len().min(TOGETHER);
                return Next::Enter(lines.entering.drain(..many).collect());
            }
            if let Some(other) = lines.other.pop_front() {
                lines.in_a_row = 0;
                return Next::Do(other);
            }
            if lines.closed {
                return Next::End;
            }
            lines = self.changed.wait(lines).unwrap_or_else(PoisonError::into_inner);
        }
    }
}

#[cfg(test)]
mod tests {
    use std::{
        sync::{Arc, mpsc},
        thread,
    };

    use super::*;

    fn one() -> Entering {
        Box::new(|_, _| Box::new(|_| {}))
    }

    fn waiting(entering: usize) -> Lines {
        Lines { entering: (0..entering).map(|_| one()).collect(), ..Lines::default() }
    }

    const fn ms(of: u64) -> Duration {
        Duration::from_millis(of)
    }

    #[test]
    fn the_next_commit_waits_for_those_who_were_answered_and_not_long() {
        let began = Instant::now();
        // Sixteen shared a flush of 6 ms; one of them is back, and the others may be about to send again.
        let mut lines = waiting(0);
        assert_eq!(lines.patience(began), None, "nothing was entered before");
        lines.gather(16, ms(6), began);
        lines.entering.push_back(one());
        assert_eq!(lines.patience(began), Some(Duration::from_micros(1500)), "a quarter of the commit before");
        assert_eq!(lines.patience(began + ms(1)), Some(Duration::from_micros(500)));
        assert_eq!(lines.patience(began + ms(2)), None, "whoever does not come is not waited for");
        lines.entering.extend((0..15).map(|_| one()));
        assert_eq!(lines.patience(began), None, "all are back");
        // Those who waited already are counted as well: there are three of them, and two were answered.
        let mut lines = waiting(3);
        lines.gather(2, ms(6), began);
        lines.entering.push_back(one());
        assert!(lines.patience(began).is_some());
        lines.entering.push_back(one());
        assert_eq!(lines.patience(began), None);
        // However long a flush takes, and however many there are.
        let mut lines = waiting(1);
        lines.gather(8, ms(500), began);
        assert_eq!(lines.patience(began), Some(GATHERING_AT_MOST));
        let mut lines = waiting(TOGETHER);
        lines.gather(TOGETHER, ms(500), began);
        assert_eq!(lines.patience(began), None, "no more have room in a commit");
        // Alone, nobody waits, and a desk that closes waits for nobody.
        let mut lines = waiting(0);
        lines.gather(1, ms(500), began);
        lines.entering.push_back(one());
        assert_eq!(lines.patience(began), None);
        let mut lines = waiting(1);
        lines.gather(8, ms(500), began);
        lines.closed = true;
        assert_eq!(lines.patience(began), None);
    }

    /// Whether two share a commit, of whom one comes a fifth of a millisecond after the other, where the commit before took so
    /// long.
    fn shared(took: Duration) -> bool {
        let queue = Arc::new(Queue::default());
        queue.gather(2, took);
        queue.add(|lines| lines.entering.push_back(one()));
        let (go, gone) = mpsc::channel();
        let late = {
            let queue = Arc::clone(&queue);
            thread::spawn(move || {
                gone.recv().expect("told");
                thread::sleep(Duration::from_micros(200));
                queue.add(|lines| lines.entering.push_back(one()));
            })
        };
        go.send(()).expect("heard");
        let Next::Enter(works) = queue.next() else { panic!("something waits to be entered") };
        late.join().expect("no panic");
        works.len() == 2
    }

    /// On a busy machine a fifth of a millisecond may be far more than two; not always.
    #[test]
    fn whoever_comes_a_little_later_shares_the_commit_where_a_flush_takes_long() {
        let tries = (0..4_000).filter(|_| shared(Duration::from_millis(40))).take(3).count();
        assert_eq!(tries, 3, "of 4,000 tries");
    }
}
