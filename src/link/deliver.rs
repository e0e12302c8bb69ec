//! Bringing the outbox to the desk, oldest first.

use std::{io, sync::PoisonError, thread};

use super::{
    Kept, News,
    outbox::Entry,
    talk::{DELIVERY_TIMEOUT, RETRY, Shared, lock},
    wire::{Delivery, DeliveryAnswer},
};

impl Shared {
    /// Delivers the outbox until the end, oldest first.
    pub(super) fn deliver(&self) {
        let mut failed = false;
        loop {
            let entry = {
                let mut outbox = lock(&self.outbox);
                loop {
                    if self.ended() {
                        return;
                    }
                    // A guest who waits comes before tickets whose number is already given.
                    let waiting =
                        outbox.entries().find(|entry| !entry.number_given).or(outbox.entries().next()).cloned();
                    match waiting {
                        Some(entry) if !failed || !entry.number_given => break entry,
                        Some(_) => {
                            failed = false;
                            outbox = self
                                .outbox_changed
                                .wait_timeout(outbox, RETRY)
                                .map(|(outbox, _)| outbox)
                                .unwrap_or_else(|poisoned| poisoned.into_inner().0);
                        }
                        None => {
                            outbox = self.outbox_changed.wait(outbox).unwrap_or_else(PoisonError::into_inner);
                        }
                    }
                }
            };
            match self.deliver_one(&entry) {
                Ok(delivered) => failed = !delivered,
                Err(error) => {
                    tracing::error!("the outbox can't be written: {error}");
                    failed = true;
                    thread::sleep(RETRY);
                }
            }
        }
    }

    /// One try; whether the desk answered.
    fn deliver_one(&self, entry: &Entry) -> io::Result<bool> {
        let kept = Kept { id: entry.ticket.id, number: entry.ticket.number };
        let delivery = Delivery { ticket: entry.ticket.clone(), refuse_if_short: !entry.number_given };
        let answer = self.ask::<DeliveryAnswer>("/link/tickets", Some(&delivery), DELIVERY_TIMEOUT);
        let news = match answer {
            Ok(DeliveryAnswer::Stored { short }) => {
                lock(&self.outbox).release(kept.id)?;
                News::Delivered { kept, short }
            }
            Ok(DeliveryAnswer::Short { parts }) => {
                lock(&self.outbox).release(kept.id)?;
                News::Short { kept, parts }
            }
            Ok(DeliveryAnswer::Refused { reason }) => {
                lock(&self.outbox).set_aside(kept.id)?;
                News::Refused { kept, reason }
            }
            Err(reason) => {
                tracing::debug!("ticket {} waits: {reason:?}", kept.number);
                if !entry.number_given {
                    lock(&self.outbox).give_number(kept.id)?;
                    self.tell(News::Waiting(kept));
                    self.tell_snapshot();
                }
                return Ok(false);
            }
        };
        self.tell(news);
        Ok(true)
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
