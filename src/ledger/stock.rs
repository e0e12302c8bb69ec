//! Counts: how many of each part lie on the table, and how many of them are spoken for.

use std::collections::BTreeMap;

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, params};
use uuid::Uuid;

use super::{Ledger, LedgerError, rows::note};

/// The count of one part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Count {
    /// How many there are, those held included.
    pub on_hand: u32,
    /// How many of them open tickets hold.
    pub held: u32,
}

impl Count {
    /// How many can still be had.
    pub fn free(self) -> u32 {
        self.on_hand.saturating_sub(self.held)
    }
}

impl Ledger {
    /// All counts, by id.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn counts(&self) -> Result<BTreeMap<String, Count>, LedgerError> {
        let mut all = self.db.prepare_cached("SELECT id, on_hand, held FROM stock")?;
        let rows =
            all.query_map([], |row| Ok((row.get::<_, String>(0)?, Count { on_hand: row.get(1)?, held: row.get(2)? })))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The seller counted `free` of a part in its compartment; those held by tickets come on top.
    ///
    /// # Errors
    /// The ledger has no such part, or the disk refuses; nothing is entered then.
    pub fn recount(&mut self, id: &str, free: u32, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        let changed = tx.execute("UPDATE stock SET on_hand = held + ? WHERE id = ?", params![free, id])?;
        if changed == 0 {
            return Err(LedgerError::NoCount(id.to_owned()));
        }
        note(&tx, now, None, "recounted", &(id, free))?;
        tx.commit()?;
        Ok(())
    }

    /// So many `more` of a part were put into its compartment, whatever the figure in the catalogue's file is. `form` is the
    /// form in which it was said: sent twice, it counts once.
    ///
    /// # Errors
    /// The ledger has no such part, there would be more than any compartment holds, or the disk refuses; nothing is entered
    /// then.
    pub fn restock(&mut self, id: &str, more: u32, form: Uuid, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        let said = (id, more, form);
        let before: bool = tx.query_row(
            "SELECT EXISTS (SELECT 1 FROM events WHERE ticket IS NULL AND kind = 'restocked' AND body = ?)",
            [serde_json::to_string(&said)?],
            |row| row.get(0),
        )?;
        if before {
            return Ok(());
        }
        move_by(&tx, id, more.into())?;
        note(&tx, now, None, "restocked", &said)?;
        tx.commit()?;
        Ok(())
    }
}

/// No compartment holds more than this; more is a slip of the finger.
const MOST_ON_HAND: u32 = 100_000;

/// The count of a part.
pub(super) fn count_of(db: &Connection, id: &str) -> Result<Count, LedgerError> {
    let count = db
        .prepare_cached("SELECT on_hand, held FROM stock WHERE id = ?")?
        .query_row([id], |row| Ok(Count { on_hand: row.get(0)?, held: row.get(1)? }))
        .optional()?;
    count.ok_or_else(|| LedgerError::NoCount(id.to_owned()))
}

/// So many more of a part are there than the count said, or fewer where `by` is negative; what tickets hold stays there.
pub(super) fn move_by(db: &Connection, id: &str, by: i64) -> Result<(), LedgerError> {
    let count = count_of(db, id)?;
    let next = i64::from(count.on_hand).saturating_add(by);
    if next > i64::from(MOST_ON_HAND) {
        return Err(LedgerError::TooManyThere(MOST_ON_HAND));
    }
    if next < i64::from(count.held) {
        return Err(LedgerError::NoneLeft(id.to_owned()));
    }
    db.prepare_cached("UPDATE stock SET on_hand = ? WHERE id = ?")?.execute(params![next, id])?;
    Ok(())
}

/// Holds one of `id`, if one is free; whether it was.
pub(super) fn hold(db: &Connection, id: &str) -> Result<bool, LedgerError> {
    Ok(db.prepare_cached("UPDATE stock SET held = held + 1 WHERE id = ? AND on_hand > held")?.execute([id])? == 1)
}

/// Holds one of `id`; one that the count does not know of only if it `was_found` on the table, which counts it.
pub(super) fn hold_there(db: &Connection, id: &str, was_found: bool) -> Result<(), LedgerError> {
    if hold(db, id)? {
        return Ok(());
    }
    if !was_found {
        return Err(LedgerError::NoneLeft(id.to_owned()));
    }
    one_more(db, id)?;
    hold(db, id)?;
    Ok(())
}

/// Frees one held `id`.
pub(super) fn free(db: &Connection, id: &str) -> Result<(), LedgerError> {
    db.prepare_cached("UPDATE stock SET held = held - 1 WHERE id = ? AND held > 0")?.execute([id])?;
    Ok(())
}

/// Takes one held `id` off the table: it is sold.
pub(super) fn take(db: &Connection, id: &str) -> Result<(), LedgerError> {
    let taken = db.execute(
        "UPDATE stock SET held = held - 1, on_hand = on_hand - 1 WHERE id = ? AND held > 0 AND on_hand > 0",
        [id],
    )?;
    if taken == 1 { Ok(()) } else { Err(LedgerError::NoneLeft(id.to_owned())) }
}

/// One more of `id` is there than the count said: it was found, or lies in its home again after it was sold.
pub(super) fn one_more(db: &Connection, id: &str) -> Result<(), LedgerError> {
    db.execute(
        "INSERT INTO stock (id, on_hand, held, counted) VALUES (?, 1, 0, 0)
         ON CONFLICT (id) DO UPDATE SET on_hand = on_hand + 1",
        [id],
    )?;
    Ok(())
}
