//! A ticket arrives: once, whatever happens to its answer.

use jiff::{Timestamp, ToSpan};
use rusqlite::{OptionalExtension, params};

use super::{
    Ledger, LedgerError, Ticket, TicketLine,
    stock::hold,
    store::{find, note},
};
use crate::{
    catalog::Catalog,
    ticket::{SentTicket, State},
};

/// What became of an arriving ticket.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Receipt {
    /// It is in the book, now or since an earlier delivery; `short` names parts that are not held.
    Stored {
        /// Ids of parts that could not be held.
        short: Vec<String>,
    },
    /// Nothing was entered, since these parts are gone and the guest can still choose again.
    Short {
        /// Ids of the parts.
        parts: Vec<String>,
    },
    /// It can never be entered.
    Refused {
        /// Why, for the log and the seller.
        reason: String,
    },
}

impl Ledger {
    /// Enters `sent` and holds its parts. With `refuse_if_short`, a part that is gone means that nothing is entered;
    /// otherwise the ticket is entered and the part's line says that it is not held.
    pub fn receive(
        &mut self,
        sent: &SentTicket,
        refuse_if_short: bool,
        catalog: &Catalog,
        now: Timestamp,
    ) -> Result<Receipt, LedgerError> {
        let refused = |reason: &str| Ok(Receipt::Refused { reason: reason.to_owned() });
        let quoted: Vec<&str> = sent.quote.drops.iter().map(|drop| drop.id.as_str()).collect();
        if sent.quote.base.id != sent.piece.base || quoted != sent.piece.drops {
            return refused("the sum and the piece do not have the same lines");
        }
        let tx = self.begin()?;
        let document = serde_json::to_string(sent)?;
        if let Some(known) = find(&tx, sent.id)? {
            let before: String =
                tx.query_row("SELECT sent FROM tickets WHERE id = ?", [sent.id.to_string()], |row| row.get(0))?;
            // Compared as tickets: what an earlier version wrote down has other fields.
            if serde_json::from_str::<SentTicket>(&before).ok().as_ref() != Some(sent) {
                return refused("another ticket was delivered under the same id");
            }
            return Ok(Receipt::Stored { short: known.not_held().into_iter().map(str::to_owned).collect() });
        }
        let show: Option<i64> =
            tx.query_row("SELECT id FROM shows WHERE id = ?", [sent.show], |row| row.get(0)).optional()?;
        if show.is_none() {
            return refused("the ticket belongs to a show that this desk does not know");
        }
        let number_taken: bool = tx.query_row(
            "SELECT EXISTS (SELECT 1 FROM tickets WHERE show = ? AND number = ?)",
            params![sent.show, sent.number.to_string()],
            |row| row.get(0),
        )?;
        if number_taken {
            return refused("another ticket of the show has the number");
        }

        let mut short = Vec::new();
        let mut hold_one = |id: &str| -> Result<bool, LedgerError> {
            let held = hold(&tx, id)?;
            if !held {
                short.push(id.to_owned());
            }
            Ok(held)
        };
        let base_held = hold_one(&sent.piece.base)?;
        let mut lines = Vec::with_capacity(sent.quote.drops.len());
        for drop in &sent.quote.drops {
            lines.push(TicketLine {
                id: drop.id.clone(),
                home: drop.home,
                price: drop.price,
                ticked: false,
                held: hold_one(&drop.id)?,
                removed: false,
                instead_of: None,
            });
        }
        if refuse_if_short && !short.is_empty() {
            // The transaction is rolled back with its holds. A part of which several are gone is named as often.
            return Ok(Receipt::Short { parts: short });
        }
        let arrival = note(&tx, now, Some(sent.id), "sent", sent)?;
        let today = catalog.quote(&sent.piece).ok().map(|quote| quote.total);
        let hold_until = now.checked_add(i64::from(catalog.table.hold_minutes).minutes()).unwrap_or(Timestamp::MAX);
        let mut ticket = Ticket {
            id: sent.id,
            show: sent.show,
            number: sent.number,
            arrival,
            arrived: now,
            state: State::Sent,
            piece: sent.piece.clone(),
            base_ticked: false,
            base_held,
            lines,
            quote: sent.quote.clone(),
            rules: catalog.table.prices.clone(),
            verdict: sent.verdict.clone(),
            grown_up_confirmed: sent.grown_up_confirmed,
            told: false,
            total_by_catalog: today.filter(|total| *total != sent.quote.total),
            tender: None,
            charged: None,
            hold_until,
        };
        // The tablet may have judged by an older catalogue; the entry of the delivery keeps what the guest saw.
        ticket.judge(catalog, &tx)?;
        tx.execute(
            "INSERT INTO tickets (id, show, number, arrival, state, hold_until, sent, ticket)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
            params![
                sent.id.to_string(),
                sent.show,
                sent.number.to_string(),
                arrival,
                State::Sent.code(),
                hold_until.to_string(),
                document,
                serde_json::to_string(&ticket)?
            ],
        )?;
        tx.commit()?;
        Ok(Receipt::Stored { short })
    }

    /// The first number of kiosk `digit` that the book has not seen in show `show`.
    pub fn next_sequence(&self, show: i64, digit: u8) -> Result<u16, LedgerError> {
        let last: Option<String> = self.db.query_row(
            "SELECT max(number) FROM tickets WHERE show = ? AND number LIKE ?",
            params![show, format!("{digit}-%")],
            |row| row.get(0),
        )?;
        let last = last.and_then(|text| text.parse::<crate::ticket::TicketNumber>().ok());
        Ok(last.map_or(0, |number| number.sequence() + 1))
    }
}
