//! Chains that are cut at the table, in another length than lies ready: none of those that lie ready is held or sold for them.

use rusqlite::Connection;

use super::{
    Ledger, LedgerError, Ticket,
    rows::{keep_setting, setting},
    stock::{free, hold},
};
use crate::{catalog::Catalog, craft::Piece};

/// The setting that keeps which bases come off a spool.
const BASES: &str = "bases_on_spools";
/// Lengths that differ by less are one, in millimetres.
const ALIKE_MM: f64 = 0.05;

impl Ledger {
    /// Keeps which bases come off a spool, by id: of every other one a length is made from one that lies ready. Tickets that
    /// are there already stay as they are.
    ///
    /// # Errors
    /// The disk refuses.
    pub fn keep_bases_on_spools(&mut self, ids: &[String]) -> Result<(), LedgerError> {
        let text = serde_json::to_string(ids)?;
        if setting(&self.db, BASES)?.as_ref() == Some(&text) {
            return Ok(());
        }
        let tx = self.begin()?;
        keep_setting(&tx, BASES, &text)?;
        tx.commit()
    }
}

/// Whether a piece's chain is cut off a spool: its base comes off one, and its length is not the one that lies ready.
pub(super) fn is_cut(db: &Connection, piece: &Piece, catalog: &Catalog) -> Result<bool, LedgerError> {
    let usual = catalog.base(&piece.base).and_then(|base| base.usual_length());
    let (Some(length), Some(usual)) = (piece.length, usual) else { return Ok(false) };
    if (length.mm() - usual.mm()).abs() < ALIKE_MM {
        return Ok(false);
    }
    let bases = setting(db, BASES)?.and_then(|text| serde_json::from_str::<Vec<String>>(&text).ok());
    Ok(bases.is_some_and(|bases| bases.contains(&piece.base)))
}

/// Lets a ticket's chain be cut or be one that lies ready, as its piece says now: one that lies ready is held for it, or free
/// again.
pub(super) fn follow(db: &Connection, ticket: &mut Ticket, catalog: &Catalog) -> Result<(), LedgerError> {
    let cut = is_cut(db, &ticket.piece, catalog)?;
    if cut && ticket.base_held {
        free(db, &ticket.piece.base)?;
        ticket.base_held = false;
    }
    if !cut && ticket.cut_to_length {
        ticket.base_held = hold(db, &ticket.piece.base)?;
        if ticket.base_ticked && !ticket.base_held {
            return Err(LedgerError::NoneLeft(ticket.piece.base.clone()));
        }
    }
    ticket.cut_to_length = cut;
    Ok(())
}
