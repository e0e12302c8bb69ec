//! Who has which ticket open, and what each has seen of it: two people on one ticket know of each other, and whoever acts is
//! told first what another has changed since. It is known while the desk runs; after a restart a page says itself what it
//! shows.

use std::{
    collections::HashMap,
    ops::RangeInclusive,
    sync::{Arc, Mutex, MutexGuard, PoisonError},
};

use tokio::sync::watch;
use uuid::Uuid;

use super::signed_in::Seller;

/// So many tickets are kept in mind that nobody has open; more are forgotten, and then a page without its script is believed
/// to show what there is.
const MOST: usize = 512;

/// Everybody's open tickets.
#[derive(Debug, Default)]
pub(super) struct Company(Mutex<Known>);

#[derive(Debug, Default)]
struct Known {
    tickets: HashMap<Uuid, OpenTicket>,
    /// The number of the next page that opens.
    next: u64,
}

/// What is known of one ticket. Whoever acts is known by the hash of their session.
#[derive(Debug, Default)]
struct OpenTicket {
    looking: Vec<Looking>,
    /// The last entry that each was shown.
    shown: HashMap<String, i64>,
    /// Who made which entries, latest last.
    wrote: Vec<(RangeInclusive<i64>, String)>,
}

/// An open page.
#[derive(Debug)]
struct Looking {
    page: u64,
    session: String,
    name: String,
}

/// Acts on one ticket of which is kept who they were by.
const ACTS: usize = 64;

impl Company {
    fn known(&self) -> MutexGuard<'_, Known> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Who else has the ticket open: names, each once. A page of the same session is no company.
    pub(super) fn others(&self, ticket: Uuid, seller: &Seller) -> Vec<String> {
        let known = self.known();
        let looking = known.tickets.get(&ticket).into_iter().flat_map(|open| &open.looking);
        let mut names: Vec<String> =
            looking.filter(|one| one.session != seller.token_hash).map(|one| one.name.clone()).collect();
        names.sort();
        names.dedup();
        names
    }

    /// Notes that the ticket was shown to somebody as it was after entry `last`.
    pub(super) fn show(&self, ticket: Uuid, seller: &Seller, last: i64) {
        let mut known = self.known();
        if known.tickets.len() >= MOST {
            known.tickets.retain(|_, open| !open.looking.is_empty());
        }
        known.tickets.entry(ticket).or_default().shown.insert(seller.token_hash.clone(), last);
    }

    /// The last entry that somebody who acts has seen: by what their page says, else by what was shown to them.
    pub(super) fn seen(&self, ticket: Uuid, seller: &Seller) -> Option<i64> {
        seller.seen.or_else(|| self.known().tickets.get(&ticket)?.shown.get(&seller.token_hash).copied())
    }

    /// Notes who made these entries.
    pub(super) fn wrote(&self, ticket: Uuid, seller: &Seller, entries: RangeInclusive<i64>) {
        let mut known = self.known();
        let wrote = &mut known.tickets.entry(ticket).or_default().wrote;
        wrote.push((entries, seller.token_hash.clone()));
        if wrote.len() > ACTS {
            wrote.remove(0);
        }
    }

    /// The entries that somebody made themselves.
    pub(super) fn own(&self, ticket: Uuid, seller: &Seller) -> Vec<RangeInclusive<i64>> {
        let known = self.known();
        let wrote = known.tickets.get(&ticket).into_iter().flat_map(|open| &open.wrote);
        wrote.filter(|(_, session)| *session == seller.token_hash).map(|(entries, _)| entries.clone()).collect()
    }

    /// Forgets what was seen and done: another ledger is worked on from now on, with numbers of its own.
    pub(super) fn forget_entries(&self) {
        for open in self.known().tickets.values_mut() {
            open.shown.clear();
            open.wrote.clear();
        }
    }
}

/// A page that somebody has open on a ticket; it is closed when this is dropped. Other pages look again both times.
pub(super) struct Present {
    company: Arc<Company>,
    pulse: watch::Sender<u64>,
    ticket: Uuid,
    page: u64,
}

impl Present {
    /// Somebody opens a ticket.
    pub(super) fn on(company: &Arc<Company>, pulse: &watch::Sender<u64>, ticket: Uuid, seller: &Seller) -> Self {
        let mut known = company.known();
        let page = known.next;
        known.next += 1;
        let (session, name) = (seller.token_hash.clone(), seller.name().to_owned());
        known.tickets.entry(ticket).or_default().looking.push(Looking { page, session, name });
        drop(known);
        pulse.send_modify(|beat| *beat += 1);
        Self { company: Arc::clone(company), pulse: pulse.clone(), ticket, page }
    }
}

impl Drop for Present {
    fn drop(&mut self) {
        if let Some(open) = self.company.known().tickets.get_mut(&self.ticket) {
            open.looking.retain(|one| one.page != self.page);
        }
        self.pulse.send_modify(|beat| *beat += 1);
    }
}
