//! A bill as it is kept.

use jiff::Timestamp;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use crate::{
    money::{MoneyError, PlainLine, PriceRules, Reduction, Tender, cash_total},
    ticket::TicketNumber,
};

/// A reduction that somebody gave by hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Given {
    /// What is taken off.
    pub reduction: Reduction,
    /// Why, in the seller's words.
    pub reason: String,
}

/// A ticket on a bill.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct BilledTicket {
    /// Id of the ticket.
    pub id: Uuid,
    /// It is a gift: wrapped apart, with a slip that has no prices.
    #[serde(default)]
    pub gift: bool,
}

/// Something without a home on a bill: other goods of the booth.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Goods {
    /// What it is and costs.
    pub line: PlainLine,
    /// The show in which it was paid.
    #[serde(default)]
    pub sold: Option<i64>,
    /// Taken off before it was paid, or taken back after.
    #[serde(default)]
    pub gone: bool,
}

/// Why money moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Why {
    /// For what is on the bill, all of it or the rest.
    Sale,
    /// A part of the sum, before the rest.
    Part,
    /// Paid out again.
    PaidOut,
    /// The counter-entry of payment `of`, which was noted as another way to pay.
    NotThisWay {
        /// Its place among the payments.
        of: usize,
    },
    /// The right entry in the place of payment `of`.
    ThisWay {
        /// Its place among the payments.
        of: usize,
    },
}

/// Money that moved for a bill. Payments are only ever added.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Payment {
    /// When, by the desk's clock.
    pub at: Timestamp,
    /// The show in whose close-out it counts.
    pub show: i64,
    /// Who took or paid it, by name.
    #[serde(default)]
    pub by: Option<String>,
    /// How.
    pub tender: Tender,
    /// What moved: taken is positive, paid out is negative.
    pub amount: Decimal,
    /// How much of the bill's sum that settles; another amount only where cash is rounded.
    pub settles: Decimal,
    /// What a guest gave in cash, from which change was due.
    #[serde(default)]
    pub given: Option<Decimal>,
    /// Why it moved.
    pub why: Why,
}

impl Payment {
    /// Whether it is a counter-entry, or the right entry after one: no money moved at that moment.
    pub fn puts_right(&self) -> bool {
        matches!(self.why, Why::NotThisWay { .. } | Why::ThisWay { .. })
    }

    /// What the guest got back of the cash that was given.
    pub fn change(&self) -> Option<Decimal> {
        self.given?.checked_sub(self.amount)
    }
}

/// What was put right after it was paid. Nothing is overwritten: the entry of the sale stays as it was.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Correction {
    /// When, by the desk's clock.
    pub at: Timestamp,
    /// The show in whose close-out it counts.
    pub show: i64,
    /// Who did it, by name.
    #[serde(default)]
    pub by: Option<String>,
    /// What it is about.
    pub what: Corrected,
    /// Why, in the seller's words.
    pub reason: String,
    /// By how much the bill's sum was less after it.
    pub worth: Decimal,
    /// Whether the parts went back into their homes.
    #[serde(default)]
    pub parts_home: bool,
}

/// What a correction is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Corrected {
    /// A whole piece was taken back.
    Ticket(Uuid),
    /// One drop of a piece was taken back: line `at` of `ticket`.
    Line {
        /// Id of the ticket.
        ticket: Uuid,
        /// Place among its lines.
        at: usize,
    },
    /// Goods without a home, by their place on the bill, were taken back.
    Goods(usize),
    /// Payment, by its place, was in another way.
    Payment(usize),
}

/// What is paid together: tickets, and lines for what has no home.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Bill {
    /// Its id; a form that is sent twice is one bill.
    pub id: Uuid,
    /// That of its first ticket; a bill that begins without one has a number of the desk's own.
    pub number: TicketNumber,
    /// The show in which it was begun.
    pub show: i64,
    /// Its place in the order of entries.
    pub arrival: i64,
    /// When it was begun, by the desk's clock.
    pub begun: Timestamp,
    /// The rules for goods and cash, as they were when it was begun.
    pub rules: PriceRules,
    /// The tickets, in the order in which they were put on.
    pub tickets: Vec<BilledTicket>,
    /// Goods without a home.
    #[serde(default)]
    pub goods: Vec<Goods>,
    /// What was taken off the goods by hand.
    #[serde(default)]
    pub goods_given: Option<Given>,
    /// Money that moved.
    #[serde(default)]
    pub payments: Vec<Payment>,
    /// What was put right.
    #[serde(default)]
    pub corrections: Vec<Correction>,
    /// The show in which it was first paid in full, and when.
    #[serde(default)]
    pub settled: Option<(i64, Timestamp)>,
}

impl Bill {
    /// The goods that are on it, with their places.
    pub fn live_goods(&self) -> impl Iterator<Item = (usize, &Goods)> {
        self.goods.iter().enumerate().filter(|(_, goods)| !goods.gone)
    }

    /// Whether it has more on it than one ticket for which nothing was taken yet.
    pub fn is_shared(&self) -> bool {
        self.tickets.len() > 1 || self.live_goods().next().is_some() || !self.payments.is_empty()
    }

    /// Of the bill's sum, how much is settled by money that moved; none where that can't be added.
    pub fn settled_sum(&self) -> Option<Decimal> {
        self.payments.iter().try_fold(Decimal::ZERO, |sum, one| sum.checked_add(one.settles))
    }

    /// Whether payment `at` was put right already, or is itself such an entry's counterpart.
    pub fn is_corrected(&self, at: usize) -> bool {
        let of_this = |one: &Payment| matches!(one.why, Why::NotThisWay { of } if of == at);
        self.payments.iter().any(of_this)
            || self.payments.get(at).is_some_and(|one| matches!(one.why, Why::NotThisWay { .. }))
    }

    /// The place of the payment that was put right, once or several times, until it was payment `at`; `at` itself where
    /// nothing was put right.
    pub fn first_of(&self, at: usize) -> usize {
        let before = |at: &usize| match self.payments.get(*at)?.why {
            // A counter-entry stands behind what it puts right.
            Why::ThisWay { of } if of < *at => Some(of),
            _ => None,
        };
        std::iter::successors(Some(at), before).last().unwrap_or(at)
    }

    /// What is to be paid for `left` in this way: cash goes to the nearest step.
    ///
    /// # Errors
    /// The amount is too large to be counted in steps.
    pub fn due(&self, left: Decimal, tender: &Tender) -> Result<Decimal, MoneyError> {
        match tender {
            Tender::Cash => cash_total(&self.rules, left),
            Tender::Card | Tender::Named(_) => Ok(left),
        }
    }
}
