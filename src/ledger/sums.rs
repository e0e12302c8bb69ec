//! What a show comes to: kept beside the tickets and moved by each one that is rung up or let go.

use std::collections::BTreeMap;

use rusqlite::{Connection, OptionalExtension, params};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{LedgerError, Ticket, rows::listed};
use crate::{
    money::{Currency, Quote, TaxByRate, Tender},
    ticket::State,
};

/// How many of one part were sold, and for how much as marked.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct SoldLine {
    /// How many were sold.
    pub count: u32,
    /// Their marked prices together.
    pub marked: Decimal,
}

/// What was taken back after it was paid.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct TakenBack {
    /// How often something was taken back.
    pub times: u32,
    /// How many whole pieces that were.
    pub pieces: u32,
    /// What all of it had cost, tax and all.
    pub totals: Decimal,
    /// The tax in that.
    pub tax: Decimal,
    /// The parts, by id.
    pub parts: BTreeMap<String, SoldLine>,
    /// How many of these parts did not go back into their homes, by id: they broke, or stayed with the guest. Earlier versions
    /// did not keep them apart.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub lost: BTreeMap<String, u32>,
}

/// Of a show's tickets, those of earlier shows that arrived late.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct LateSums {
    /// How many tickets were rung up.
    pub sold: u32,
    /// Taken for them, in cash and by card.
    pub taken: Decimal,
    /// How many tickets were let go.
    pub let_go: u32,
}

/// A ticket whose amount can't be added to the others: no table ever took it, or it is in another currency.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SetApart {
    /// The ticket's number.
    pub number: String,
    /// What was charged, with its currency.
    pub charged: String,
}

/// What a show came to.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct CloseOut {
    /// Number of the show.
    pub show: i64,
    /// Tickets rung up.
    pub sold: u32,
    /// Tickets let go.
    pub let_go: u32,
    /// Of these, let go by closing the show.
    pub let_go_now: u32,
    /// Tickets that stayed when the show was closed, since a part of their sum is paid.
    #[serde(default)]
    pub prepaid_kept: u32,
    /// Taken in cash.
    pub cash: Decimal,
    /// Taken by card.
    pub card: Decimal,
    /// Taken in each other way of the table's own list.
    #[serde(default)]
    pub other_ways: BTreeMap<String, Decimal>,
    /// Totals of what was sold, before cash rounding, less what was taken back.
    pub totals: Decimal,
    /// Tax in these totals.
    pub tax: Decimal,
    /// The tax by its rate in percent. Earlier versions did not keep it apart.
    #[serde(default)]
    pub tax_by_rate: TaxByRate,
    /// What was taken off by discounts and by hand, in all.
    pub discounts: Decimal,
    /// What of it was taken off by hand, by the reason.
    #[serde(default)]
    pub given: BTreeMap<String, Decimal>,
    /// What was paid for things that are not sold yet, less what was sold of what was paid in an earlier show, and less what
    /// was taken back and not paid out yet.
    #[serde(default)]
    pub owing: Decimal,
    /// What was paid out again.
    #[serde(default)]
    pub paid_out: Decimal,
    /// What was taken back.
    #[serde(default)]
    pub taken_back: TakenBack,
    /// Goods without a home that were sold, by what they were called.
    #[serde(default)]
    pub goods: BTreeMap<String, SoldLine>,
    /// What was sold, by id.
    pub parts: BTreeMap<String, SoldLine>,
    /// What of this came late.
    #[serde(default)]
    pub late: LateSums,
    /// The currency of the amounts, once there are any.
    #[serde(default)]
    pub currency: Option<Currency>,
    /// Tickets rung up that are counted above, while their amounts are not in the sums.
    #[serde(default)]
    pub set_apart: Vec<SetApart>,
}

impl CloseOut {
    /// The sums of a show that begins.
    pub(super) fn of_show(show: i64) -> Self {
        Self { show, ..Self::default() }
    }

    /// What was taken, in all ways; none where that is too large to be added.
    pub fn taken(&self) -> Option<Decimal> {
        let known = self.cash.checked_add(self.card)?;
        self.other_ways.values().try_fold(known, |sum, one| sum.checked_add(*one))
    }

    /// What cash rounding added to the totals, or took from them.
    pub fn cash_rounding(&self) -> Option<Decimal> {
        self.taken()?.checked_sub(self.totals)?.checked_sub(self.owing)
    }

    /// Counts a ticket that was let go, or rung up by an earlier version, which kept no bills.
    pub(super) fn count(&mut self, ticket: &Ticket) {
        let late = ticket.show < self.show;
        if ticket.state == State::LetGo {
            self.let_go += 1;
            self.late.let_go += u32::from(late);
            return;
        }
        self.sold += 1;
        self.late.sold += u32::from(late);
        if let Some(sums) = self.with(ticket, late) {
            *self = sums;
        } else {
            let charged = ticket.quote.currency.plain(ticket.charged.unwrap_or(ticket.quote.total));
            self.set_apart.push(SetApart { number: ticket.number.to_string(), charged });
        }
    }

    /// The sums with the amounts of a ticket; none where they can't be added.
    fn with(&self, ticket: &Ticket, late: bool) -> Option<Self> {
        let quote = &ticket.quote;
        let charged = ticket.charged.unwrap_or(quote.total);
        let same_currency = self.currency.is_none_or(|currency| currency == quote.currency);
        if !same_currency || !quote.is_plausible() {
            return None;
        }
        let mut sums = self.clone();
        sums.currency = Some(quote.currency);
        sums.take(ticket.tender.as_ref().unwrap_or(&Tender::Card), charged)?;
        if late {
            add(&mut sums.late.taken, charged)?;
        }
        add(&mut sums.totals, quote.total)?;
        add(&mut sums.tax, quote.tax)?;
        add(&mut sums.discounts, quote.discount)?;
        add_parts(&mut sums.parts, quote)?;
        Some(sums)
    }

    /// Adds what was taken in one way; what was paid out is negative.
    pub(super) fn take(&mut self, tender: &Tender, amount: Decimal) -> Option<()> {
        match tender {
            Tender::Cash => add(&mut self.cash, amount),
            Tender::Card => add(&mut self.card, amount),
            Tender::Named(name) => add(self.other_ways.entry(name.clone()).or_default(), amount),
        }
    }
}

/// Adds an amount, where the sum is one.
pub(super) fn add(to: &mut Decimal, amount: Decimal) -> Option<()> {
    *to = to.checked_add(amount)?;
    Some(())
}

/// Adds base and drops of a quote.
pub(super) fn add_parts(to: &mut BTreeMap<String, SoldLine>, quote: &Quote) -> Option<()> {
    let base = std::iter::once((&quote.base.id, quote.base.price));
    for (id, price) in base.chain(quote.drops.iter().map(|drop| (&drop.id, drop.price))) {
        add_line(to, id, price)?;
    }
    Some(())
}

/// Adds one of what is called `name`.
pub(super) fn add_line(to: &mut BTreeMap<String, SoldLine>, name: &str, price: Decimal) -> Option<()> {
    let line = to.entry(name.to_owned()).or_default();
    line.count += 1;
    add(&mut line.marked, price)
}

/// What is kept of the sums of a show, if it can be read.
fn kept(db: &Connection, show: i64) -> Result<Option<CloseOut>, LedgerError> {
    let text: Option<String> =
        db.prepare_cached("SELECT body FROM sums WHERE show = ?")?.query_row([show], |row| row.get(0)).optional()?;
    Ok(text.and_then(|text| serde_json::from_str(&text).ok()))
}

/// Begins to keep the sums of a show, where that was not done yet.
pub(super) fn begin(db: &Connection, show: i64) -> Result<(), LedgerError> {
    match kept(db, show)? {
        Some(_) => Ok(()),
        None => keep(db, &of(db, show)?),
    }
}

/// The sums of a show so far; counted from its tickets where an earlier version kept none.
pub(super) fn of(db: &Connection, show: i64) -> Result<CloseOut, LedgerError> {
    if let Some(sums) = kept(db, show)? {
        return Ok(sums);
    }
    let mut sums = CloseOut::of_show(show);
    for one in listed(db, "settled = ? ORDER BY arrival", [show])? {
        if let Ok(ticket) = &one.ticket {
            sums.count(ticket);
        }
    }
    Ok(sums)
}

/// Keeps the sums of their show.
pub(super) fn keep(db: &Connection, sums: &CloseOut) -> Result<(), LedgerError> {
    db.prepare_cached("INSERT INTO sums (show, body) VALUES (?1, ?2) ON CONFLICT (show) DO UPDATE SET body = ?2")?
        .execute(params![sums.show, serde_json::to_string(sums)?])?;
    Ok(())
}

/// Counts a ticket that was just let go in show `show`.
pub(super) fn settle(db: &Connection, ticket: &mut Ticket, show: i64) -> Result<(), LedgerError> {
    let mut sums = of(db, show)?;
    ticket.settled = Some(show);
    sums.count(ticket);
    keep(db, &sums)
}
