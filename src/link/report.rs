//! Telling the desk what lies on this kiosk, and bringing in what the seller asks for.

use std::{
    io, thread,
    time::{Duration, Instant},
};

use uuid::Uuid;

use super::{
    outbox::Entry,
    shared::{DELIVERY_TIMEOUT, RETRY, Shared, lock},
    wire::{KioskReport, TicketReport},
};
use crate::{machine::Battery, ticket::Receipt};

/// The desk forgets reports when it ends, so they are repeated.
const REPORT_AGAIN: Duration = Duration::from_secs(20);
/// Tickets told of each sort. A desk refuses longer messages, and no seller reads longer lists.
const MOST: usize = 200;

impl Shared {
    /// Tells the desk what lies here, where it does not know yet.
    pub(super) fn report(&self) {
        // Kept locked, so that an older report never comes in after a newer one.
        let mut reported = lock(&self.reported);
        let report = self.what_lies_here();
        if reported.as_ref().is_some_and(|(told, when)| *told == report && when.elapsed() < REPORT_AGAIN) {
            return;
        }
        match self.ask::<()>("/link/report", Some(&report), DELIVERY_TIMEOUT) {
            Ok(()) => *reported = Some((report, Instant::now())),
            Err(reason) => tracing::debug!("nothing could be reported: {reason:?}"),
        }
    }

    fn what_lies_here(&self) -> KioskReport {
        let outbox = lock(&self.outbox);
        let tries = lock(&self.tries);
        let told = |entry: &Entry| {
            let tried = tries.get(&entry.ticket.id).map(|tried| tried.trouble.clone());
            let (trouble, why) = match (&entry.reason, tried) {
                (Some(reason), _) => (reason.clone(), entry.why.clone()),
                (None, Some(why)) => (why.to_string(), Some(why)),
                (None, None) => (String::new(), None),
            };
            TicketReport {
                id: entry.ticket.id,
                number: entry.ticket.number,
                drops: entry.ticket.piece.drops.len(),
                sum: entry.ticket.quote.currency.plain(entry.ticket.quote.total),
                trouble,
                why,
            }
        };
        KioskReport {
            waiting: outbox.entries().take(MOST).map(told).collect(),
            aside: outbox.aside().take(MOST).map(told).collect(),
            unreadable: outbox.unreadable(),
            battery: Battery::of_this_machine(),
            version: Some(env!("CARGO_PKG_VERSION").to_owned()),
        }
    }

    /// Brings in the tickets that the seller wants although the desk did not take them.
    pub(super) fn bring_in(&self, wanted: &[Uuid]) -> io::Result<()> {
        for id in wanted {
            let ticket = lock(&self.outbox).aside().find(|entry| entry.ticket.id == *id).map(|one| one.ticket.clone());
            let Some(ticket) = ticket else {
                // The desk hears with the next report that it does not lie here, and asks at once until then.
                thread::sleep(RETRY);
                continue;
            };
            match self.ask::<Receipt>("/link/take-in", Some(&ticket), DELIVERY_TIMEOUT) {
                Ok(Receipt::Stored { .. }) => lock(&self.outbox).release_aside(*id)?,
                Ok(Receipt::Refused { reason, why }) => lock(&self.outbox).aside_because(*id, reason, why)?,
                // A taken-in ticket is stored with whatever is there, so nothing is ever short.
                Ok(Receipt::Short { .. } | Receipt::Practice) => {}
                Err(reason) => {
                    tracing::warn!("ticket {} could not be brought in: {reason:?}", ticket.number);
                    // The desk goes on asking at once.
                    thread::sleep(RETRY);
                }
            }
        }
        Ok(())
    }
}
