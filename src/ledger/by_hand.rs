//! A ticket opened at the desk, for a piece that was threaded by hand and lies before the seller.

use jiff::Timestamp;
use rusqlite::Connection;
use uuid::Uuid;

use super::{
    Ledger, LedgerError, Ticket,
    access::digit_for_the_desk,
    cut_to_length::is_cut,
    receive::{arrived, insert, last_sequence},
    rows::{current_show, find, note},
    stock::hold_there,
};
use crate::{
    catalog::Catalog,
    craft::Piece,
    ticket::{SentTicket, State, TicketNumber},
};

impl Ledger {
    /// Opens a ticket for `piece` at today's prices, with a number of the desk's own digit. Everything of it lies before
    /// the seller, so it is held and ticked off at once. Where the count says that a part is gone,
    /// [`LedgerError::NoneLeft`] asks whether it was `found` all the same. Said twice, it is the same ticket: `id` makes
    /// it so.
    ///
    /// # Errors
    /// The piece can't be made of this catalogue, a part is not left by the count, another piece was opened under the same
    /// id, the desk has no digit or no number left, or the disk refuses. Nothing is entered then.
    pub fn open_by_hand(
        &mut self,
        id: Uuid,
        piece: &Piece,
        was_found: bool,
        catalog: &Catalog,
        now: Timestamp,
    ) -> Result<Ticket, LedgerError> {
        let tx = self.begin()?;
        if let Some(ticket) = find(&tx, id)? {
            return if opened_with(&tx, id)? == Some(piece.clone()) {
                Ok(ticket)
            } else {
                Err(LedgerError::OpenedOtherwise)
            };
        }
        let show = current_show(&tx)?.ok_or(rusqlite::Error::QueryReturnedNoRows)?.id;
        let quote = catalog.quote(piece)?;
        let verdict = catalog.cautions(piece)?;
        let number = next_number(&tx, show, now)?;
        let sent = SentTicket {
            id,
            show,
            number,
            piece: piece.clone(),
            quote,
            verdict,
            grown_up_confirmed: false,
            practice: false,
        };
        let arrival = note(&tx, now, Some(id), "opened_by_hand", &(&sent, was_found))?;
        let mut ticket = arrived(&sent, arrival, now, catalog.table.prices.clone());
        ticket.hold_until = super::holds::until(&tx, now)?;
        ticket.cut_to_length = is_cut(&tx, piece, catalog)?;
        if !ticket.cut_to_length {
            hold_there(&tx, &ticket.piece.base, was_found)?;
        }
        (ticket.base_held, ticket.base_ticked) = (!ticket.cut_to_length, true);
        for line in &mut ticket.lines {
            hold_there(&tx, &line.id, was_found)?;
            (line.held, line.ticked) = (true, true);
        }
        ticket.state = State::Checked;
        insert(&tx, &serde_json::to_string(&sent)?, &ticket)?;
        tx.commit()?;
        Ok(ticket)
    }
}

/// The piece that ticket `id` was opened with.
fn opened_with(db: &Connection, id: Uuid) -> Result<Option<Piece>, LedgerError> {
    let sent: String = db.query_row("SELECT sent FROM tickets WHERE id = ?", [id.to_string()], |row| row.get(0))?;
    Ok(serde_json::from_str::<SentTicket>(&sent).ok().map(|sent| sent.piece))
}

/// The next number of the desk's own in show `show`.
pub(super) fn next_number(db: &Connection, show: i64, now: Timestamp) -> Result<TicketNumber, LedgerError> {
    let digit = digit_for_the_desk(db, now)?;
    let last = last_sequence(db, show, digit)?;
    Ok(TicketNumber::new(digit, last.map_or(TicketNumber::FIRST, |last| last + 1))?)
}
