//! Bringing the outbox to the desk, oldest first. A ticket that can't get through blocks none behind it.

use std::{
    io,
    sync::PoisonError,
    thread,
    time::{Duration, Instant},
};

use uuid::Uuid;

use super::{
    Kept, News, SendError,
    ask::Unanswered,
    outbox::Entry,
    shared::{DELIVERY_TIMEOUT, RETRY, Shared, Tried, lock},
    wire::Delivery,
};
use crate::ticket::{NotTaken, Receipt};

/// A ticket for which the desk is broken is tried again after at most this.
const LONGEST_PAUSE: Duration = Duration::from_secs(30);

/// How a try ended.
enum Ended {
    /// The desk said what becomes of the ticket.
    Answered,
    /// It never takes the ticket.
    SetAside,
    /// This one has to wait, others may go.
    Later,
    /// Nothing can go now.
    Away,
}

impl Shared {
    /// Delivers the outbox until the end.
    pub(super) fn deliver(&self) {
        let mut pause = Instant::now();
        while let Some(entry) = self.next_to_deliver(pause) {
            match self.deliver_one(&entry) {
                Ok(ended @ (Ended::Answered | Ended::SetAside)) => {
                    lock(&self.tries).remove(&entry.ticket.id);
                    if matches!(ended, Ended::SetAside) {
                        self.report();
                    }
                }
                Ok(Ended::Later) => {}
                Ok(Ended::Away) => pause = Instant::now() + RETRY,
                Err(error) => {
                    tracing::error!("the outbox can't be written: {error}");
                    thread::sleep(RETRY);
                }
            }
        }
    }

    /// Waits for the next ticket whose time has come; `None` at the end. Tickets whose number is given rest for `pause`.
    fn next_to_deliver(&self, pause: Instant) -> Option<Entry> {
        let mut outbox = lock(&self.outbox);
        loop {
            if self.ended() {
                return None;
            }
            // A guest who waits comes before tickets whose number is already given.
            if let Some(entry) = outbox.entries().find(|entry| !entry.number_given) {
                return Some(entry.clone());
            }
            let now = Instant::now();
            let next = {
                let tries = lock(&self.tries);
                let turn = |entry: &&Entry| {
                    let tried = tries.get(&entry.ticket.id);
                    (tried.map_or(now, |tried| tried.not_before.max(now)), tried.map_or(0, |tried| tried.times))
                };
                // Of those whose time has come the least tried, and of these the oldest.
                outbox.entries().min_by_key(turn).map(|entry| (turn(&entry).0, entry.clone()))
            };
            outbox = match next {
                None => self.outbox_changed.wait(outbox).unwrap_or_else(PoisonError::into_inner),
                Some((due, entry)) => {
                    // While the desk does not know this kiosk, nothing arrives.
                    let due = if self.is_let_go() { now + RETRY } else { due.max(pause) };
                    if due <= now {
                        return Some(entry);
                    }
                    let waited = self.outbox_changed.wait_timeout(outbox, due - now);
                    waited.map_or_else(|poisoned| poisoned.into_inner().0, |(outbox, _)| outbox)
                }
            };
        }
    }

    /// Tries once to deliver a ticket, and keeps what comes of it.
    fn deliver_one(&self, entry: &Entry) -> io::Result<Ended> {
        let kept = Kept { id: entry.ticket.id, number: entry.ticket.number };
        let delivery = Delivery { ticket: entry.ticket.clone(), refuse_if_short: !entry.number_given };
        let answer = self.ask::<Receipt>("/link/tickets", Some(&delivery), DELIVERY_TIMEOUT);
        let news = match answer {
            Ok(Receipt::Stored { short }) => {
                lock(&self.outbox).release(kept.id)?;
                News::Delivered { kept, short }
            }
            Ok(Receipt::Short { parts }) => {
                lock(&self.outbox).release(kept.id)?;
                News::Short { kept, parts }
            }
            // Whatever becomes of a ticket to practise with, nobody has to look after it later.
            Ok(Receipt::Refused { reason, .. }) if entry.ticket.practice => {
                lock(&self.outbox).release(kept.id)?;
                self.tell(News::Refused { kept, reason });
                return Ok(Ended::Answered);
            }
            Ok(Receipt::Practice) => {
                lock(&self.outbox).release(kept.id)?;
                self.tell_snapshot();
                // Whoever waits for the number is perhaps no one who practises, and sends the piece again.
                News::NotKept { id: kept.id, error: SendError::PracticeOver }
            }
            Ok(Receipt::Refused { reason, why }) => {
                lock(&self.outbox).set_aside(kept.id, reason.clone(), why)?;
                News::Refused { kept, reason }
            }
            Err(Unanswered::Status(status, said)) if never_gets_better(status) => {
                let why = NotTaken::Unreadable { status, said };
                let reason = why.to_string();
                lock(&self.outbox).set_aside(kept.id, reason.clone(), Some(why))?;
                News::Refused { kept, reason }
            }
            // No number has been shown: the guest keeps the piece and hears that it was not sent.
            Err(Unanswered::LetGo) if !entry.number_given => {
                lock(&self.outbox).release(kept.id)?;
                News::NotKept { id: kept.id, error: SendError::LetGo }
            }
            Err(reason) => {
                tracing::debug!("ticket {} waits: {reason:?}", kept.number);
                if !entry.number_given {
                    lock(&self.outbox).give_number(kept.id)?;
                    self.tell(News::Waiting(kept));
                    self.tell_snapshot();
                }
                return Ok(self.put_off(kept.id, reason));
            }
        };
        let ended = if matches!(news, News::Refused { .. }) { Ended::SetAside } else { Ended::Answered };
        self.tell(news);
        Ok(ended)
    }

    /// What a try without an answer means for this ticket and for the others.
    fn put_off(&self, id: Uuid, reason: Unanswered) -> Ended {
        let trouble = match reason {
            Unanswered::NotPaired | Unanswered::LetGo => return Ended::Away,
            // Where the desk answers otherwise, it is the ticket that does not get through.
            Unanswered::Away(reason) if lock(&self.desk).in_reach == Some(true) => NotTaken::NoAnswer { why: reason },
            Unanswered::Away(_) => return Ended::Away,
            // The desk says itself why it takes it later.
            Unanswered::Status(503, said) if !said.is_empty() => NotTaken::Later { said },
            Unanswered::Status(status, said) => NotTaken::DeskFailed { status, said },
        };
        let mut tries = lock(&self.tries);
        let times = tries.get(&id).map_or(1, |tried| tried.times + 1);
        let pause = LONGEST_PAUSE.min(RETRY * 2u32.saturating_pow(times - 1));
        tries.insert(id, Tried { times, not_before: Instant::now() + pause, trouble });
        Ended::Later
    }

    pub(super) fn give_pending_numbers(&self) {
        let pending: Vec<Kept> = lock(&self.outbox)
            .entries()
            .filter(|entry| !entry.number_given)
            .map(|entry| Kept { id: entry.ticket.id, number: entry.ticket.number })
            .collect();
        for kept in pending {
            let given = lock(&self.outbox).give_number(kept.id);
            match given {
                Ok(()) => self.tell(News::Waiting(kept)),
                Err(error) => tracing::error!("the outbox can't be written: {error}"),
            }
        }
    }
}

/// Whether a desk that answers so will answer so again: the message itself is at fault.
/// Source: RFC 9110, section 15.5 (from memory).
fn never_gets_better(status: u16) -> bool {
    matches!(status, 400 | 409 | 411 | 413 | 415 | 422)
}
