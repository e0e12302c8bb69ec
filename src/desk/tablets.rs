//! What the paired tablets last said, and what the seller wants of them. Nothing of it outlives the desk: tablets say it
//! again.

use std::{
    collections::BTreeMap,
    sync::{Mutex, MutexGuard, PoisonError},
    time::{Duration, Instant},
};

use tokio::sync::watch;
use uuid::Uuid;

use crate::{
    link::wire::{KioskReport, TicketReport},
    machine::Battery,
    quoting::{excerpt, one_line},
    ticket::TicketNumber,
};

/// Tickets kept of each sort of a report; a tablet tells fewer.
const MOST: usize = 500;
/// Characters kept of a tablet's words.
const LONGEST_WORDS: usize = 200;

/// What shall become of a ticket that was set aside on a tablet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Wish {
    /// It comes in all the same.
    TakeIn,
    /// It is not told any more.
    PutAway,
}

/// What is known of one tablet.
#[derive(Debug, Clone, Default)]
pub(super) struct Tablet {
    heard: Option<Instant>,
    /// What lies on it.
    pub report: KioskReport,
    wishes: BTreeMap<Uuid, Wish>,
    /// Tickets that came in under another number than the guest has: the guest's, and the new one.
    pub renumbered: Vec<(TicketNumber, TicketNumber)>,
}

impl Tablet {
    /// How long ago it was last heard.
    pub(super) fn silent(&self) -> Option<Duration> {
        self.heard.map(|then| then.elapsed())
    }

    /// What the seller wants done with this ticket, which is not done yet.
    pub(super) fn wish(&self, id: Uuid) -> Option<Wish> {
        self.wishes.get(&id).copied()
    }
}

/// The tablets by digit.
pub(super) struct Tablets {
    all: Mutex<BTreeMap<u8, Tablet>>,
    asked: watch::Sender<u64>,
}

impl Default for Tablets {
    fn default() -> Self {
        Self { all: Mutex::default(), asked: watch::Sender::new(0) }
    }
}

impl Tablets {
    fn lock(&self) -> MutexGuard<'_, BTreeMap<u8, Tablet>> {
        self.all.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// What is known of the tablet with this digit.
    pub(super) fn get(&self, digit: u8) -> Tablet {
        self.lock().get(&digit).cloned().unwrap_or_default()
    }

    /// How many tickets lie on tablets since the desk did not take them.
    pub(super) fn not_taken(&self) -> usize {
        self.lock().values().map(|tablet| tablet.report.aside.len()).sum()
    }

    /// The tablets whose battery is nearly empty, by digit.
    pub(super) fn nearly_empty(&self) -> Vec<(u8, Battery)> {
        let all = self.lock();
        let told = all.iter().filter_map(|(digit, tablet)| Some((*digit, tablet.report.battery?)));
        told.filter(|(_, battery)| battery.is_low()).collect()
    }

    /// It has said something.
    pub(super) fn heard(&self, digit: u8) {
        self.lock().entry(digit).or_default().heard = Some(Instant::now());
    }

    /// It says what lies on it; whether that is news.
    pub(super) fn reported(&self, digit: u8, mut report: KioskReport) -> bool {
        for list in [&mut report.waiting, &mut report.aside] {
            list.truncate(MOST);
            list.iter_mut().for_each(shorten);
        }
        report.version = report.version.map(|version| excerpt(&version));
        let mut all = self.lock();
        let tablet = all.entry(digit).or_default();
        // With what is not set aside there any more nothing has to be done.
        tablet.wishes.retain(|id, _| report.aside.iter().any(|ticket| ticket.id == *id));
        std::mem::replace(&mut tablet.report, report.clone()) != report
    }

    /// The seller wants something done with a ticket that lies aside there; whether it lies there.
    pub(super) fn want(&self, digit: u8, id: Uuid, wish: Wish) -> bool {
        let mut all = self.lock();
        let Some(tablet) = all.get_mut(&digit) else { return false };
        let lies_there = tablet.report.aside.iter().any(|ticket| ticket.id == id);
        if lies_there {
            tablet.wishes.insert(id, wish);
            self.asked.send_modify(|n| *n += 1);
        }
        lies_there
    }

    /// The tickets with which the seller wants this done.
    pub(super) fn wishes(&self, digit: u8, wish: Wish) -> Vec<Uuid> {
        let all = self.lock();
        let of_it = all.get(&digit).into_iter().flat_map(|tablet| &tablet.wishes);
        of_it.filter(|(_, one)| **one == wish).map(|(id, _)| *id).collect()
    }

    /// Whether the seller wants anything of it.
    pub(super) fn has_wishes(&self, digit: u8) -> bool {
        self.lock().get(&digit).is_some_and(|tablet| !tablet.wishes.is_empty())
    }

    /// A wanted ticket has been answered, perhaps with another number.
    pub(super) fn answered(&self, digit: u8, id: Uuid, renumbered: Option<(TicketNumber, TicketNumber)>) {
        let mut all = self.lock();
        let tablet = all.entry(digit).or_default();
        tablet.wishes.remove(&id);
        tablet.renumbered.extend(renumbered);
    }

    /// The tablet with this digit was released, or another one has it now.
    pub(super) fn forget(&self, digit: u8) {
        self.lock().remove(&digit);
    }

    /// Lets every tablet that waits for news have some at once.
    pub(super) fn ask_again(&self) {
        self.asked.send_modify(|n| *n += 1);
    }

    /// Follows the seller's wishes.
    pub(super) fn asked(&self) -> watch::Receiver<u64> {
        self.asked.subscribe()
    }
}

fn shorten(ticket: &mut TicketReport) {
    for words in [&mut ticket.sum, &mut ticket.trouble] {
        *words = one_line(words).chars().take(LONGEST_WORDS).collect();
    }
}
