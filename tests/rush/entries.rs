//! A small model of the ledger: it does once more, and simply, what the entries say, and knows what must be true between
//! them.

use std::collections::{BTreeMap, BTreeSet};

use chatelaine::{
    catalog::Catalog,
    money::Tender,
    ticket::{SentTicket, State, TicketNumber},
};
use jiff::{SignedDuration, Timestamp};
use rust_decimal::{Decimal, RoundingStrategy};
use serde_json::Value;
use uuid::Uuid;

/// One entry as it stands in the ledger.
pub struct Entry {
    pub seq: i64,
    pub at: Timestamp,
    pub ticket: Option<Uuid>,
    pub kind: String,
    pub body: Value,
}

/// One part of a ticket; the first is the base.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    pub id: String,
    pub price: Decimal,
    pub held: bool,
    pub ticked: bool,
    pub removed: bool,
}

/// A ticket as the entries have it.
#[derive(Debug)]
pub struct Ticket {
    pub show: i64,
    pub number: TicketNumber,
    pub parts: Vec<Part>,
    pub state: State,
    pub paid: Option<(Tender, Decimal)>,
    pub settled: Option<i64>,
    /// When the seller last did something with it, and by which entry.
    moved: (i64, Timestamp),
}

impl Ticket {
    fn live(&self) -> impl Iterator<Item = &Part> {
        self.parts.iter().filter(|part| !part.removed)
    }

    fn holds_unticked(&self) -> bool {
        self.state.is_open() && self.live().any(|part| part.held && !part.ticked)
    }

    /// Marked prices with 6.25 % on top, half up: the test table's rule.
    pub fn total(&self) -> Decimal {
        let marked: Decimal = self.live().map(|part| part.price).sum();
        let tax = marked * Decimal::new(625, 4);
        marked + tax.round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero)
    }
}

/// How many of a part there are, and how many of them are held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Count {
    pub on_hand: u32,
    pub held: u32,
}

/// How long holds last in the part of the ledger in which the desk's clock was watched all the time.
pub struct Holds {
    /// From this entry on.
    pub after: i64,
    /// Up to this one: then the desk was started again, by a clock that was never set.
    pub until: i64,
    /// The table's time.
    pub lasts: SignedDuration,
    /// A hold may end so much earlier: a clock that is off by less was not set.
    pub earlier: SignedDuration,
    /// And so much later: until the next sweep, on a busy machine.
    pub later: SignedDuration,
}

impl Holds {
    /// Whether the desk watched its clock when it made this entry.
    fn was_watched(&self, entry: i64) -> bool {
        (self.after + 1..=self.until).contains(&entry)
    }
}

/// What the entries come to.
pub struct Model<'a> {
    catalog: &'a Catalog,
    holds: Holds,
    pub counts: BTreeMap<String, Count>,
    pub tickets: BTreeMap<Uuid, Ticket>,
    pub show: i64,
    /// What the payments of bills come to, by show and way to pay.
    pub payments: BTreeMap<(i64, Tender), Decimal>,
    /// By how much the clock was set so far, as the desk noticed it.
    pub clock_set_by: SignedDuration,
    /// Digits that were released in the running show.
    resting: BTreeSet<u8>,
    /// Digits that were given again while they rested.
    pub came_back: Vec<u8>,
    /// How many holds ended.
    pub ended: u32,
}

impl<'a> Model<'a> {
    pub fn new(catalog: &'a Catalog, holds: Holds) -> Self {
        Self {
            catalog,
            holds,
            counts: BTreeMap::new(),
            tickets: BTreeMap::new(),
            show: 0,
            payments: BTreeMap::new(),
            clock_set_by: SignedDuration::ZERO,
            resting: BTreeSet::new(),
            came_back: vec![],
            ended: 0,
        }
    }

    /// Does what an entry says.
    pub fn enter(&mut self, entry: &Entry) {
        match entry.ticket {
            Some(id) => self.of_ticket(id, entry),
            None => self.of_desk(entry),
        }
        if self.holds.was_watched(entry.seq) {
            self.no_hold_lasts_longer(entry);
        }
    }

    /// The time of an entry on a clock that nobody sets.
    fn time(&self, entry: &Entry) -> Timestamp {
        entry.at - self.clock_set_by
    }

    fn of_desk(&mut self, entry: &Entry) {
        match entry.kind.as_str() {
            "counted" => {
                let (id, on_hand): (String, u32) = read(&entry.body);
                assert!(self.counts.insert(id, Count { on_hand, held: 0 }).is_none(), "counted twice");
            }
            "show_opened" => self.show = read(&entry.body),
            "show_closed" => {
                assert!(self.tickets.values().all(|ticket| !ticket.state.is_open()), "an open ticket in a closed show");
                self.resting.clear();
            }
            "clock_set" => self.clock_set_by += read::<SignedDuration>(&entry.body),
            "kiosk_released" => _ = self.resting.insert(read(&entry.body["digit"])),
            "kiosk_paired" => {
                let digit = read(&entry.body);
                if self.resting.remove(&digit) {
                    self.came_back.push(digit);
                }
            }
            "catalog_read" | "signed_in" | "signed_out" | "show_told" => {}
            other => panic!("nobody made an entry of the kind {other}"),
        }
    }

    fn of_ticket(&mut self, id: Uuid, entry: &Entry) {
        match entry.kind.as_str() {
            "sent" => return self.sent(id, entry),
            "bill_begun" => return,
            "paid" => {
                let tender: Tender = read(&entry.body["tender"]);
                assert_eq!(read::<i64>(&entry.body["show"]), self.show, "money counts in the show in which it moves");
                *self.payments.entry((self.show, tender)).or_default() += read::<Decimal>(&entry.body["amount"]);
                return;
            }
            _ => {}
        }
        let time = self.time(entry);
        let mut ticket = self.tickets.remove(&id).expect("nothing is done with a ticket that was not sent");
        let body = &entry.body;
        match entry.kind.as_str() {
            "ticked" | "unticked" => self.tick(&mut ticket, body, entry.kind == "ticked"),
            "swapped" => self.swap(&mut ticket, body),
            "removed" => {
                let at = read::<usize>(body) + 1;
                self.free(&ticket.parts[at]);
                (ticket.parts[at].held, ticket.parts[at].removed) = (false, true);
                follow_ticks(&mut ticket);
            }
            "called" => {
                if ticket.state != State::Checked {
                    ticket.state = State::Called;
                }
            }
            "rung_up" => self.ring_up(&mut ticket, read(body)),
            "handed_over" => ticket.state = State::HandedOver,
            "let_go" => {
                ticket.parts.iter().for_each(|part| self.free(part));
                ticket.parts.iter_mut().for_each(|part| part.held = false);
                (ticket.state, ticket.settled) = (State::LetGo, Some(self.show));
            }
            "hold_ended" => self.end_hold(&mut ticket, entry),
            "told" | "hold_shortened" => {}
            other => panic!("nobody made an entry of the kind {other}"),
        }
        if !entry.kind.starts_with("hold_") {
            ticket.moved = (entry.seq, time);
        }
        self.tickets.insert(id, ticket);
    }

    fn sent(&mut self, id: Uuid, entry: &Entry) {
        let sent: SentTicket = read(&entry.body);
        let base = (sent.quote.base.id, sent.quote.base.price);
        let drops = sent.quote.drops.into_iter().map(|drop| (drop.id, drop.price));
        let parts = std::iter::once(base).chain(drops).map(|(id, price)| {
            let held = self.hold(&id);
            Part { id, price, held, ticked: false, removed: false }
        });
        let ticket = Ticket {
            parts: parts.collect(),
            show: sent.show,
            number: sent.number,
            state: State::Sent,
            paid: None,
            settled: None,
            moved: (entry.seq, self.time(entry)),
        };
        let same = |other: &Ticket| (other.show, other.number) == (ticket.show, ticket.number);
        assert!(!self.tickets.values().any(same), "{} twice in a show", ticket.number);
        assert!(self.tickets.insert(id, ticket).is_none(), "a ticket twice");
    }

    fn tick(&mut self, ticket: &mut Ticket, body: &Value, on: bool) {
        let (part, found): (Value, bool) = read(body);
        let at = if part == "Base" { 0 } else { read::<usize>(&part["Line"]) + 1 };
        let part = &mut ticket.parts[at];
        if on && !part.held && !self.hold(&part.id) {
            assert!(found, "{} was not there, and nobody found it", part.id);
            self.count(&part.id).on_hand += 1;
            assert!(self.hold(&part.id));
        }
        part.held |= on;
        part.ticked = on;
        follow_ticks(ticket);
    }

    fn swap(&mut self, ticket: &mut Ticket, body: &Value) {
        let (at, to): (usize, String) = read(body);
        assert!(self.hold(&to), "{to} was not there");
        self.free(&ticket.parts[at + 1]);
        let price = self.catalog.drop_kind(&to).expect("a drop").price;
        ticket.parts[at + 1] = Part { id: to, price, held: true, ticked: false, removed: false };
        follow_ticks(ticket);
    }

    fn ring_up(&mut self, ticket: &mut Ticket, tender: Tender) {
        assert!(ticket.state.is_open() && ticket.live().all(|part| part.ticked && part.held), "{}", ticket.number);
        for part in ticket.parts.iter_mut().filter(|part| !part.removed) {
            let count = self.count(&part.id);
            (count.on_hand, count.held, part.held) = (count.on_hand - 1, count.held - 1, false);
        }
        ticket.paid = Some((tender, ticket.total()));
        (ticket.state, ticket.settled) = (State::RungUp, Some(self.show));
    }

    /// What is ticked off is never freed, and nothing before its time.
    fn end_hold(&mut self, ticket: &mut Ticket, entry: &Entry) {
        assert!(ticket.holds_unticked(), "{} had nothing to free", ticket.number);
        self.ended += 1;
        let (moved_by, moved) = ticket.moved;
        if self.holds.was_watched(moved_by) && self.holds.was_watched(entry.seq) {
            let held = self.time(entry).duration_since(moved);
            assert!(held + self.holds.earlier >= self.holds.lasts, "{} was held for {held}", ticket.number);
        }
        for part in ticket.parts.iter_mut().filter(|part| part.held && !part.ticked && !part.removed) {
            self.count(&part.id).held -= 1;
            part.held = false;
        }
    }

    fn no_hold_lasts_longer(&self, entry: &Entry) {
        let now = self.time(entry);
        for ticket in self.tickets.values().filter(|ticket| self.holds.was_watched(ticket.moved.0)) {
            let held = now.duration_since(ticket.moved.1);
            let longest = self.holds.lasts + self.holds.later;
            assert!(held <= longest || !ticket.holds_unticked(), "{} is held for {held}", ticket.number);
        }
    }

    fn count(&mut self, id: &str) -> &mut Count {
        self.counts.get_mut(id).unwrap_or_else(|| panic!("{id} was never counted"))
    }

    fn hold(&mut self, id: &str) -> bool {
        let count = self.count(id);
        let is_free = count.held < count.on_hand;
        count.held += u32::from(is_free);
        is_free
    }

    fn free(&mut self, part: &Part) {
        if part.held && !part.removed {
            self.count(&part.id).held -= 1;
        }
    }
}

fn follow_ticks(ticket: &mut Ticket) {
    if ticket.live().all(|part| part.ticked) {
        ticket.state = State::Checked;
    } else if ticket.state == State::Checked {
        ticket.state = State::Called;
    }
}

fn read<T: serde::de::DeserializeOwned>(body: &Value) -> T {
    serde_json::from_value(body.clone()).unwrap_or_else(|error| panic!("{body}: {error}"))
}
