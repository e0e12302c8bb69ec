//! Taking over a catalogue: counts, prices, and what it says of its parts.

use jiff::Timestamp;
use rusqlite::{OptionalExtension, params};

use super::{
    Ledger, LedgerError, facts, holds, prices,
    rows::{note, open_tickets, save},
    shared_commit::Change,
};
use crate::catalog::Catalog;

impl Ledger {
    /// Takes over a catalogue. Its counts: of parts never seen before, and of those whose figure in the file was edited
    /// since, or counted on another day, be it the same; a figure nobody touched leaves the ledger's own count alone. What it
    /// says of its parts, by which the open tickets are judged anew.
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then.
    pub fn take_catalog(&mut self, catalog: &Catalog, revision: &str, now: Timestamp) -> Result<(), LedgerError> {
        let counts = catalog
            .bases
            .iter()
            .map(|base| (base.id.as_str(), base.stock, base.counted))
            .chain(catalog.drops.iter().map(|kind| (kind.id.as_str(), kind.stock, kind.counted)));
        let tx = self.begin()?;
        for (id, stock, counted) in counts {
            let before: Option<u32> =
                tx.query_row("SELECT counted FROM stock WHERE id = ?", [id], |row| row.get(0)).optional()?;
            let counted_again = counted.is_some() && facts::counted(&tx, id)? != counted;
            if before == Some(stock) && !counted_again {
                continue;
            }
            tx.execute(
                "INSERT INTO stock (id, on_hand, held, counted) VALUES (?1, ?2, 0, ?2)
                 ON CONFLICT (id) DO UPDATE SET on_hand = max(?2, held), counted = ?2",
                params![id, stock],
            )?;
            note(&tx, now, None, "counted", &(id, stock))?;
        }
        facts::remember(&tx, catalog)?;
        prices::remember(&tx, catalog)?;
        holds::remember(&tx, catalog.table.hold_minutes)?;
        judge_open(&tx, catalog, now)?;
        note(&tx, now, None, "catalog_read", &revision)?;
        tx.commit()?;
        Ok(())
    }
}

/// Judges all open tickets by another catalogue. What that changes is noted as an entry of its own.
fn judge_open(tx: &Change<'_>, catalog: &Catalog, now: Timestamp) -> Result<(), LedgerError> {
    for mut ticket in open_tickets(tx)?.into_iter().filter_map(|one| one.ticket.ok()) {
        if ticket.judge(catalog, tx)? {
            note(tx, now, Some(ticket.id), "judged", &ticket.verdict)?;
            save(tx, &ticket)?;
        }
    }
    Ok(())
}
