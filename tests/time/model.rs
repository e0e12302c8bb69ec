//! A small model of the book: what must be held, sold, refused and summed up, written down a second time and simply.

use std::collections::BTreeMap;

use chatelaine::{money::Tender, ticket::State};
use jiff::{SignedDuration, Timestamp};
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::counts::Counting;

/// The test table holds for 45 minutes.
const HOLD: SignedDuration = SignedDuration::from_mins(45);

/// One part of a ticket; the first is the base.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Slot {
    pub id: String,
    pub price: Decimal,
    pub held: bool,
    pub ticked: bool,
    pub removed: bool,
}

#[derive(Debug, Clone)]
pub struct Ticket {
    pub id: Uuid,
    pub show: i64,
    pub state: State,
    pub slots: Vec<Slot>,
    pub settled: Option<i64>,
    pub paid: Option<Tender>,
    pub hold_until: Timestamp,
}

impl Ticket {
    fn live(&self) -> impl Iterator<Item = &Slot> {
        self.slots.iter().filter(|slot| !slot.removed)
    }

    /// Marked prices with 6.25 % on top, half up: the test table's rule.
    pub fn total(&self) -> Decimal {
        let marked: Decimal = self.live().map(|slot| slot.price).sum();
        let tax = marked * Decimal::new(625, 4);
        marked + tax.round_dp_with_strategy(2, rust_decimal::RoundingStrategy::MidpointAwayFromZero)
    }

    fn follow_ticks(&mut self) {
        if self.live().all(|slot| slot.ticked) {
            self.state = State::Checked;
        } else if self.state == State::Checked {
            self.state = State::Called;
        }
    }
}

/// What a show came to.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Sums {
    pub sold: u32,
    pub let_go: u32,
    pub late_sold: u32,
    pub late_let_go: u32,
    pub cash: Decimal,
    pub card: Decimal,
}

/// The whole book.
#[derive(Debug)]
pub struct Model {
    pub now: Timestamp,
    pub show: i64,
    /// How many of each part there are.
    pub on_hand: BTreeMap<String, u32>,
    pub tickets: Vec<Ticket>,
    /// What is counted by hand.
    pub counting: Counting,
}

impl Model {
    pub fn held(&self, id: &str) -> u32 {
        let open = self.tickets.iter().filter(|ticket| ticket.state.is_open());
        open.flat_map(|ticket| &ticket.slots).filter(|slot| slot.held && !slot.removed && slot.id == id).count() as u32
    }

    pub fn free(&self, id: &str) -> u32 {
        self.on_hand[id] - self.held(id)
    }

    /// Whether the ticket is entered.
    pub fn receive(&mut self, id: Uuid, show: i64, parts: &[(String, Decimal)], refuse_if_short: bool) -> bool {
        if self.tickets.iter().any(|ticket| ticket.id == id) {
            return true;
        }
        let slot = |(id, price): &(String, Decimal)| Slot {
            id: id.clone(),
            price: *price,
            held: false,
            ticked: false,
            removed: false,
        };
        let slots: Vec<Slot> = parts.iter().map(slot).collect();
        let count = slots.len();
        let hold_until = self.now + HOLD;
        self.tickets.push(Ticket { id, show, state: State::Sent, slots, settled: None, paid: None, hold_until });
        let last = self.tickets.len() - 1;
        for at in 0..count {
            let held = self.free(&self.tickets[last].slots[at].id.clone()) > 0;
            self.tickets[last].slots[at].held = held;
            if !held && refuse_if_short {
                self.tickets.pop();
                return false;
            }
        }
        true
    }

    /// Whether the seller may do `act` to the ticket at place `n`; if so, it is done.
    pub fn act(&mut self, n: usize, act: &Act) -> bool {
        let allowed = self.may(n, act);
        if allowed {
            self.done(n, act);
        }
        allowed
    }

    /// Whether the seller may do `act` to the ticket at place `n`.
    pub fn may(&self, n: usize, act: &Act) -> bool {
        let ticket = &self.tickets[n];
        let slot = |at: usize| ticket.slots.get(at).filter(|slot| !slot.removed).cloned();
        let open = ticket.state.is_open();
        match act {
            Act::Call => matches!(ticket.state, State::Sent | State::Checked),
            Act::Tick { at, on, found } => {
                open && slot(*at).is_some_and(|slot| !on || slot.held || *found || self.free(&slot.id) > 0)
            }
            Act::Swap { at, to, .. } => open && *at > 0 && slot(*at).is_some() && self.free(to) > 0,
            Act::Remove { at } => open && *at > 0 && slot(*at).is_some(),
            Act::RingUp(_) => {
                let ticked = ticket.live().all(|slot| slot.ticked);
                open && ticked
            }
            Act::HandOver => ticket.state == State::RungUp,
            Act::LetGo => open,
        }
    }

    fn done(&mut self, n: usize, act: &Act) {
        if let Act::Tick { at, on: true, found: true } = act {
            let slot = self.tickets[n].slots[*at].clone();
            if !slot.held && self.free(&slot.id) == 0 {
                *self.on_hand.get_mut(&slot.id).expect("a count") += 1;
            }
        }
        let (now, show) = (self.now, self.show);
        let ticket = &mut self.tickets[n];
        ticket.hold_until = now + HOLD;
        match act {
            // What is checked stays so.
            Act::Call if ticket.state == State::Checked => {}
            Act::Call => ticket.state = State::Called,
            Act::Tick { at, on, .. } => {
                ticket.slots[*at].ticked = *on;
                ticket.slots[*at].held |= *on;
                ticket.follow_ticks();
            }
            Act::Swap { at, to, price } => {
                ticket.slots[*at] = Slot { id: to.clone(), price: *price, held: true, ticked: false, removed: false };
                ticket.follow_ticks();
            }
            Act::Remove { at } => {
                ticket.slots[*at].removed = true;
                ticket.slots[*at].held = false;
                ticket.follow_ticks();
            }
            Act::RingUp(tender) => {
                (ticket.state, ticket.paid, ticket.settled) = (State::RungUp, Some(tender.clone()), Some(show));
                for slot in ticket.slots.iter_mut().filter(|slot| !slot.removed) {
                    slot.held = false;
                    *self.on_hand.get_mut(&slot.id).expect("a count") -= 1;
                }
            }
            Act::HandOver => ticket.state = State::HandedOver,
            Act::LetGo => let_go(ticket, show),
        }
    }

    /// Ends holds; what is ticked off stays held, and nothing is held longer than usual from now.
    pub fn sweep(&mut self) {
        for ticket in self.tickets.iter_mut().filter(|ticket| ticket.state.is_open()) {
            if ticket.hold_until > self.now + HOLD {
                ticket.hold_until = self.now + HOLD;
            } else if ticket.hold_until < self.now {
                ticket.slots.iter_mut().filter(|slot| !slot.ticked).for_each(|slot| slot.held = false);
            }
        }
    }

    /// The clock is set by so much, and the desk notices.
    pub fn set_clock(&mut self, by: SignedDuration) {
        self.now += by;
        self.tickets.iter_mut().for_each(|ticket| ticket.hold_until += by);
    }

    /// Closes the show; what it came to.
    pub fn close(&mut self) -> Sums {
        for ticket in self.tickets.iter_mut().filter(|ticket| ticket.state.is_open()) {
            let_go(ticket, self.show);
        }
        let sums = self.sums(self.show);
        self.show += 1;
        sums
    }

    pub fn sums(&self, show: i64) -> Sums {
        let mut sums = Sums::default();
        for ticket in self.tickets.iter().filter(|ticket| ticket.settled == Some(show)) {
            let late = u32::from(ticket.show < show);
            match &ticket.paid {
                Some(tender) => {
                    sums.sold += 1;
                    sums.late_sold += late;
                    *if *tender == Tender::Cash { &mut sums.cash } else { &mut sums.card } += ticket.total();
                }
                None => {
                    sums.let_go += 1;
                    sums.late_let_go += late;
                }
            }
        }
        sums
    }
}

fn let_go(ticket: &mut Ticket, show: i64) {
    (ticket.state, ticket.settled) = (State::LetGo, Some(show));
    ticket.slots.iter_mut().for_each(|slot| slot.held = false);
}

/// What a seller does with a ticket; slot 0 is the base.
#[derive(Debug, Clone)]
pub enum Act {
    Call,
    Tick { at: usize, on: bool, found: bool },
    Swap { at: usize, to: String, price: Decimal },
    Remove { at: usize },
    RingUp(Tender),
    HandOver,
    LetGo,
}
