//! What the seller does with a whole piece: all of it is here, another drop onto it, another base under it.

use jiff::Timestamp;
use uuid::Uuid;

use super::{
    Ledger, LedgerError, Ticket, TicketLine,
    cut_to_length::is_cut,
    edit::{fits, follow_ticks, open},
    stock::{free, hold, hold_there},
};
use crate::catalog::{Catalog, PieceError};

impl Ledger {
    /// Ticks off everything that is not ticked off yet: it is all there. A part whose hold has ended is held again; where
    /// the count says that none is left, nothing is ticked, and [`LedgerError::NoneLeft`] says of which.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is closed, or the count says that of a part none is left.
    pub fn tick_all(&mut self, id: Uuid, now: Timestamp) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "all_ticked", &(), |db, ticket| {
            open(ticket)?;
            if !ticket.base_ticked {
                if !ticket.base_held && !ticket.cut_to_length {
                    hold_there(db, &ticket.piece.base, false)?;
                }
                (ticket.base_held, ticket.base_ticked) = (!ticket.cut_to_length, true);
            }
            for line in ticket.lines.iter_mut().filter(|line| !line.removed && !line.ticked) {
                if !line.held {
                    hold_there(db, &line.id, false)?;
                }
                (line.held, line.ticked) = (true, true);
            }
            follow_ticks(ticket);
            Ok(())
        })
    }

    /// Hangs another drop onto the piece, at today's price; sum and cautions follow. It lies before the seller, so it is
    /// ticked off; where the count says that none is left, [`LedgerError::NoneLeft`] asks whether it was `found`.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is closed, the drop is unknown, does not fit, or is not left.
    pub fn add_drop(
        &mut self,
        id: Uuid,
        kind: &str,
        was_found: bool,
        catalog: &Catalog,
        now: Timestamp,
    ) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "added", &(kind, was_found), |db, ticket| {
            open(ticket)?;
            let kind = catalog.drop_kind(kind).ok_or_else(|| PieceError::NoDrop { id: kind.to_owned(), like: None })?;
            if let Some(base) = catalog.base(&ticket.piece.base) {
                fits(base, kind)?;
            }
            hold_there(db, &kind.id, was_found)?;
            ticket.lines.push(TicketLine {
                id: kind.id.clone(),
                home: kind.home,
                price: kind.price,
                ticked: true,
                held: true,
                removed: false,
                instead_of: None,
                look: None,
            });
            ticket.take_a_look(ticket.lines.len() - 1);
            ticket.derive(catalog, db)
        })
    }

    /// Puts another base under the drops, at today's price; sum and cautions follow. A necklace keeps its length where the
    /// new base is made that long, and otherwise has its usual one. The new base has still to be ticked off.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is closed, the base is unknown or not left, or a drop does not go
    /// onto it.
    pub fn set_base(&mut self, id: Uuid, base: &str, catalog: &Catalog, now: Timestamp) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "base_changed", &base, |db, ticket| {
            open(ticket)?;
            let base = catalog.base(base).ok_or_else(|| PieceError::NoBase { id: base.to_owned(), like: None })?;
            if base.id == ticket.piece.base {
                return Ok(());
            }
            for (_, line) in ticket.live_lines() {
                if let Some(kind) = catalog.drop_kind(&line.id) {
                    fits(base, kind)?;
                }
            }
            if ticket.base_held {
                free(db, &ticket.piece.base)?;
            }
            ticket.piece.length = base.length_like(ticket.piece.length);
            ticket.piece.base.clone_from(&base.id);
            ticket.cut_to_length = is_cut(db, &ticket.piece, catalog)?;
            if !ticket.cut_to_length && !hold(db, &base.id)? {
                return Err(LedgerError::NoneLeft(base.id.clone()));
            }
            (ticket.base_held, ticket.base_ticked) = (!ticket.cut_to_length, false);
            ticket.quote.base.id.clone_from(&base.id);
            ticket.quote.base.price = base.price;
            follow_ticks(ticket);
            ticket.derive(catalog, db)
        })
    }
}
