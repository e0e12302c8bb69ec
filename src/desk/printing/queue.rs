//! What is printed, one after the other, and what became of it.

use std::{
    collections::VecDeque,
    panic::{AssertUnwindSafe, catch_unwind},
    sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError},
    thread,
};

use uuid::Uuid;

use super::send::{Fault, send};
use crate::{catalog::Printer, desk::error::DeskError};

/// So many wait at most.
const WAITING: usize = 8;
/// So many are remembered, with what became of them.
const REMEMBERED: usize = 16;

/// Which paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::desk) enum What {
    /// A bill's receipt.
    Receipt,
    /// A ticket's slip.
    Slip,
}

/// The bytes of a print, made when its turn comes.
enum Bytes {
    ToMake(Box<dyn FnOnce() -> Vec<u8> + Send>),
    Made(Vec<u8>),
}

/// Something to print.
pub(in crate::desk) struct Job {
    what: What,
    /// The ticket or bill.
    of: Uuid,
    /// Its number.
    number: String,
    bytes: Bytes,
}

impl Job {
    /// The paper of a ticket or bill; `make` makes its bytes, off the threads that answer.
    pub(in crate::desk) fn new(
        what: What,
        of: Uuid,
        number: String,
        make: impl FnOnce() -> Vec<u8> + Send + 'static,
    ) -> Self {
        Self { what, of, number, bytes: Bytes::ToMake(Box::new(make)) }
    }

    /// Whether both are the same paper.
    fn is_same(&self, other: &Self) -> bool {
        (self.what, self.of) == (other.what, other.of)
    }

    /// The name of its file, where the printer is a folder.
    fn name(&self) -> String {
        match self.what {
            What::Receipt => format!("receipt-{}", self.number),
            What::Slip => format!("slip-{}", self.number),
        }
    }
}

/// What became of a print: none while it waits or is being printed.
pub(in crate::desk) type BecameOf = Option<Result<(), Fault>>;

/// A print as a page tells of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::desk) struct Printed {
    /// By which it is tried again.
    pub id: u64,
    pub what: What,
    pub of: Uuid,
    pub number: String,
    pub became: BecameOf,
}

struct Entry {
    id: u64,
    job: Job,
    printer: Printer,
}

#[derive(Default)]
struct Lines {
    next: u64,
    waiting: VecDeque<Entry>,
    /// What the thread holds just now.
    printing: Option<Printed>,
    done: VecDeque<(Entry, Result<(), Fault>)>,
    closed: bool,
}

struct Queue {
    lines: Mutex<Lines>,
    changed: Condvar,
    /// Lets pages look again.
    tell: Box<dyn Fn() + Send + Sync>,
}

/// The line to the printer.
pub(in crate::desk) struct Printing(Arc<Queue>);

impl Printing {
    /// Begins with nothing to print; `tell` is called whenever something else became of a print.
    pub(in crate::desk) fn open(tell: impl Fn() + Send + Sync + 'static) -> Result<Self, DeskError> {
        let queue = Arc::new(Queue { lines: Mutex::default(), changed: Condvar::new(), tell: Box::new(tell) });
        let for_thread = Arc::clone(&queue);
        thread::Builder::new()
            .name("printing".into())
            .spawn(move || for_thread.work())
            .map_err(|error| DeskError::System(error.to_string()))?;
        Ok(Self(queue))
    }

    /// Puts a print into the line. What waits or is being printed already is not printed twice.
    pub(in crate::desk) fn add(&self, job: Job, printer: Printer) {
        self.0.put(job, printer);
    }

    /// Puts print `id`, from which something kept the printer, into the line again.
    pub(in crate::desk) fn again(&self, id: u64, printer: Printer) {
        let job = self.0.lines().take_done(id);
        if let Some(job) = job {
            self.0.put(job, printer);
        }
    }

    /// Nothing more is told of print `id`.
    pub(in crate::desk) fn leave(&self, id: u64) {
        let left = self.0.lines().take_done(id);
        if left.is_some() {
            (self.0.tell)();
        }
    }

    /// All that is known, the oldest first.
    pub(in crate::desk) fn all(&self) -> Vec<Printed> {
        let lines = self.0.lines();
        let done = lines.done.iter().map(|(entry, became)| entry.told(Some(became.clone())));
        let waiting = lines.waiting.iter().map(|entry| entry.told(None));
        done.chain(lines.printing.clone()).chain(waiting).collect()
    }

    /// Ends the thread, after what it has in hand.
    pub(in crate::desk) fn close(&self) {
        self.0.lines().closed = true;
        self.0.changed.notify_all();
    }
}

impl Entry {
    fn told(&self, became: BecameOf) -> Printed {
        let Job { what, of, number, .. } = &self.job;
        Printed { id: self.id, what: *what, of: *of, number: number.clone(), became }
    }
}

impl Lines {
    fn take_done(&mut self, id: u64) -> Option<Job> {
        let at = self.done.iter().position(|(entry, _)| entry.id == id)?;
        self.done.remove(at).map(|(entry, _)| entry.job)
    }

    /// Whether this paper waits or is being printed.
    fn has(&self, job: &Job) -> bool {
        let in_hand = self.printing.as_ref().is_some_and(|one| (one.what, one.of) == (job.what, job.of));
        in_hand || self.waiting.iter().any(|entry| entry.job.is_same(job))
    }

    /// Remembers what became of a print, in the place of what became of the same before.
    fn is_done(&mut self, entry: Entry, became: Result<(), Fault>) {
        self.done.retain(|(other, _)| !other.job.is_same(&entry.job));
        if self.done.len() >= REMEMBERED {
            self.done.pop_front();
        }
        self.done.push_back((entry, became));
    }
}

impl Queue {
    fn lines(&self) -> MutexGuard<'_, Lines> {
        self.lines.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn put(&self, job: Job, printer: Printer) {
        let mut lines = self.lines();
        // A second touch on the button prints nothing twice.
        if lines.has(&job) {
            return;
        }
        let id = lines.next;
        lines.next += 1;
        let entry = Entry { id, job, printer };
        if lines.waiting.len() >= WAITING {
            lines.is_done(entry, Err(Fault::Busy));
        } else {
            lines.done.retain(|(other, _)| !other.job.is_same(&entry.job));
            lines.waiting.push_back(entry);
        }
        drop(lines);
        self.changed.notify_one();
        (self.tell)();
    }

    /// Waits for the next print; none when the desk closes.
    fn next(&self) -> Option<Entry> {
        let mut lines = self.lines();
        loop {
            if lines.closed {
                return None;
            }
            if let Some(entry) = lines.waiting.pop_front() {
                lines.printing = Some(entry.told(None));
                return Some(entry);
            }
            lines = self.changed.wait(lines).unwrap_or_else(PoisonError::into_inner);
        }
    }

    fn work(&self) {
        while let Some(Entry { id, job, printer }) = self.next() {
            let name = job.name();
            let Job { what, of, number, bytes } = job;
            let made = match bytes {
                Bytes::Made(bytes) => Ok(bytes),
                Bytes::ToMake(make) => catch_unwind(AssertUnwindSafe(make)),
            };
            let (bytes, became) = match made {
                Ok(bytes) => {
                    let became = send(&printer, &name, &bytes);
                    (bytes, became)
                }
                Err(_) => (vec![], Err(Fault::Other("it could not be made".into()))),
            };
            if let Err(fault) = &became {
                tracing::warn!("{name} is not printed: {fault:?}");
            }
            let job = Job { what, of, number, bytes: Bytes::Made(bytes) };
            let mut lines = self.lines();
            lines.printing = None;
            lines.is_done(Entry { id, job, printer }, became);
            drop(lines);
            (self.tell)();
        }
    }
}

#[cfg(test)]
mod tests {
    use std::{
        path::PathBuf,
        sync::mpsc,
        time::{Duration, Instant},
    };

    use super::*;

    fn until(printing: &Printing, what: &str, is: impl Fn(&[Printed]) -> bool) -> Vec<Printed> {
        let end = Instant::now() + Duration::from_secs(10);
        loop {
            let all = printing.all();
            if is(&all) {
                return all;
            }
            assert!(Instant::now() < end, "{what}: {all:?}");
            thread::sleep(Duration::from_millis(5));
        }
    }

    fn job(number: u32, bytes: &'static [u8]) -> Job {
        Job::new(What::Receipt, Uuid::from_u128(u128::from(number)), number.to_string(), || bytes.to_vec())
    }

    #[test]
    fn what_went_wrong_is_tried_again_where_the_printer_is_now() {
        let folder = tempfile::tempdir().unwrap();
        let printing = Printing::open(|| {}).unwrap();
        printing.add(job(1, b"one"), Printer::Folder(folder.path().join("gone")));
        let all = until(&printing, "a fault", |all| all.iter().any(|one| one.became.is_some()));
        assert_eq!(all[0].became, Some(Err(Fault::Missing)));
        printing.again(all[0].id, Printer::Folder(folder.path().to_owned()));
        let all = until(&printing, "printed", |all| all.iter().any(|one| one.became == Some(Ok(()))));
        assert_eq!(all.len(), 1, "told once: {all:?}");
        assert_eq!(std::fs::read(folder.path().join("receipt-1.bin")).unwrap(), b"one");
        printing.leave(all[0].id);
        assert_eq!(printing.all(), []);
        printing.again(all[0].id, Printer::Folder(PathBuf::new()));
        assert_eq!(printing.all(), [], "what is not known any more is not printed");
    }

    #[test]
    fn a_line_that_is_full_takes_no_more_and_a_paper_waits_once() {
        let folder = tempfile::tempdir().unwrap();
        let to = || Printer::Folder(folder.path().to_owned());
        let printing = Printing::open(|| {}).unwrap();
        let (go, wait) = mpsc::channel::<()>();
        let first = Job::new(What::Slip, Uuid::nil(), "0".into(), move || {
            let _ = wait.recv();
            panic!("a page that can't be made");
        });
        printing.add(first, to());
        until(&printing, "in hand", |_| printing.0.lines().printing.is_some());
        for number in 1..=8 {
            printing.add(job(number, b"x"), to());
            printing.add(job(number, b"x"), to());
        }
        printing.add(job(9, b"x"), to());
        let all = printing.all();
        let busy: Vec<&str> = all.iter().filter(|one| one.became.is_some()).map(|one| one.number.as_str()).collect();
        assert_eq!((all.len(), busy), (10, vec!["9"]), "{all:?}");
        drop(go);
        let all = until(&printing, "all done", |all| all.iter().all(|one| one.became.is_some()));
        assert_eq!(all.iter().filter(|one| one.became == Some(Ok(()))).count(), 8, "{all:?}");
        assert!(matches!(all.iter().find(|one| one.number == "0").unwrap().became, Some(Err(Fault::Other(_)))));
        printing.close();
    }
}
