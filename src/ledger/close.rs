//! The end of a show.

use std::collections::BTreeMap;

use jiff::Timestamp;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{
    Ledger, LedgerError, Ticket,
    edit::release,
    store::{current_show, in_show, note, open_show, save, time},
};
use crate::{
    money::Currency,
    ticket::{State, Tender},
};

/// How many of one part were sold, and for how much as marked.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct SoldLine {
    /// How many.
    pub count: u32,
    /// Their marked prices together.
    pub marked: Decimal,
}

/// What a show came to.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct CloseOut {
    /// The show.
    pub show: i64,
    /// Tickets rung up.
    pub sold: u32,
    /// Tickets let go.
    pub let_go: u32,
    /// Of these, let go by closing the show.
    pub let_go_now: u32,
    /// Taken in cash.
    pub cash: Decimal,
    /// Taken by card.
    pub card: Decimal,
    /// Totals of the tickets rung up, before cash rounding.
    pub totals: Decimal,
    /// Tax in these totals.
    pub tax: Decimal,
    /// Discounts given.
    pub discounts: Decimal,
    /// What was sold, by id.
    pub parts: BTreeMap<String, SoldLine>,
}

/// A show that is closed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClosedShow {
    /// When it was closed, by the desk's clock.
    pub at: Timestamp,
    /// The currency of its amounts; the table may have another by now.
    pub currency: Currency,
    /// What it came to.
    pub sums: CloseOut,
}

impl CloseOut {
    fn add(&mut self, ticket: &Ticket) {
        self.sold += 1;
        let charged = ticket.charged.unwrap_or(ticket.quote.total);
        match ticket.tender {
            Some(Tender::Cash) => self.cash += charged,
            Some(Tender::Card) | None => self.card += charged,
        }
        self.totals += ticket.quote.total;
        self.tax += ticket.quote.tax;
        self.discounts += ticket.quote.discount;
        let base = std::iter::once((&ticket.quote.base.id, ticket.quote.base.price));
        for (id, price) in base.chain(ticket.quote.drops.iter().map(|drop| (&drop.id, drop.price))) {
            let line = self.parts.entry(id.clone()).or_default();
            line.count += 1;
            line.marked += price;
        }
    }
}

impl Ledger {
    /// What the running show came to so far.
    pub fn so_far(&self) -> Result<CloseOut, LedgerError> {
        let show = self.show()?.id;
        let mut sum = CloseOut { show, ..CloseOut::default() };
        for ticket in in_show(&self.db, show, &[State::RungUp, State::HandedOver])? {
            sum.add(&ticket);
        }
        sum.let_go = in_show(&self.db, show, &[State::LetGo])?.len() as u32;
        Ok(sum)
    }

    /// The close-out of show `show`, once it is closed.
    pub fn closed_show(&self, show: i64) -> Result<Option<ClosedShow>, LedgerError> {
        let mut all = self.db.prepare_cached("SELECT at, body FROM events WHERE kind = 'show_closed'")?;
        let rows = all.query_map([], |row| Ok((row.get::<_, String>(0)?, row.get::<_, String>(1)?)))?;
        for row in rows {
            let (at, body) = row?;
            let (currency, sums): (Currency, CloseOut) = serde_json::from_str(&body)?;
            if sums.show == show {
                return Ok(Some(ClosedShow { at: time(&at), currency, sums }));
            }
        }
        Ok(None)
    }

    /// Lets all open tickets go, closes the show, whose amounts are in `currency`, and opens the next one.
    pub fn close_show(&mut self, currency: Currency, now: Timestamp) -> Result<CloseOut, LedgerError> {
        let mut sum = self.so_far()?;
        let tx = self.begin()?;
        let Some(show) = current_show(&tx)? else { return Err(rusqlite::Error::QueryReturnedNoRows.into()) };
        for mut ticket in in_show(&tx, show.id, &[State::Sent, State::Called, State::Checked])? {
            release(&tx, &mut ticket)?;
            note(&tx, now, Some(ticket.id), "let_go", &"show closed")?;
            save(&tx, &ticket)?;
            sum.let_go += 1;
            sum.let_go_now += 1;
        }
        tx.execute("UPDATE shows SET closed = ? WHERE id = ?", rusqlite::params![now.to_string(), show.id])?;
        note(&tx, now, None, "show_closed", &(currency, &sum))?;
        open_show(&tx, now)?;
        tx.commit()?;
        Ok(sum)
    }
}
