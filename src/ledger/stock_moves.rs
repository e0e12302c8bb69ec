//! How each count moved, with the number of the entry by which: what lay there at an entry, since one, and on a day.

use std::collections::BTreeMap;

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, params};

use super::{Ledger, LedgerError, rows::time, stock::count_of};

/// What was there at the end of a day.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct StockOn {
    /// How many there were of each part, by id, those held included.
    pub parts: BTreeMap<String, u32>,
    /// Since when counts are kept with their moves; what was before is not known.
    pub known_since: Option<Timestamp>,
}

/// One move of a count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StockMove {
    /// The entry by which.
    pub seq: i64,
    /// When, by the desk's clock.
    pub at: Timestamp,
    /// How many there were after it, those held included.
    pub on_hand: u32,
}

/// The fewest that were free of a part, and the most that were there, at entry `seen` and ever since.
pub(super) fn between(db: &Connection, part: &str, seen: i64) -> Result<(u32, u32), LedgerError> {
    let now = count_of(db, part)?;
    let mut range = db.prepare_cached(
        "SELECT min(on_hand - held), max(on_hand) FROM stock_moves WHERE part = ?1 AND move >= coalesce(
             (SELECT max(move) FROM stock_moves WHERE part = ?1 AND seq <= ?2), 0)",
    )?;
    let (low, high): (Option<u32>, Option<u32>) =
        range.query_row(params![part, seen], |row| Ok((row.get(0)?, row.get(1)?)))?;
    Ok((low.unwrap_or_else(|| now.free()).min(now.free()), high.unwrap_or(now.on_hand).max(now.on_hand)))
}

impl Ledger {
    /// What was there of each part after the last entry before `end`.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn stock_before(&self, end: Timestamp) -> Result<StockOn, LedgerError> {
        let known_since: Option<String> = self
            .db
            .query_row(
                "SELECT at FROM events WHERE seq = (SELECT seq FROM stock_moves ORDER BY move LIMIT 1)",
                [],
                |row| row.get(0),
            )
            .optional()?;
        // Clocks are set and go wrong: the last entry by number that has a time before `end` is the end of the day. Whole
        // seconds are compared as they are written.
        let last: Option<i64> = self
            .db
            .prepare_cached("SELECT max(seq) FROM events WHERE substr(at, 1, 19) < substr(?, 1, 19)")?
            .query_row([end.to_string()], |row| row.get(0))?;
        let Some(last) = last else {
            return Ok(StockOn { known_since: known_since.as_deref().map(time), ..StockOn::default() });
        };
        // The last move of each part by then, looked for from its end: after many shows there are very many of them.
        let mut all = self.db.prepare_cached(
            "SELECT id, (SELECT on_hand FROM stock_moves WHERE part = stock.id AND seq <= ?
                         ORDER BY move DESC LIMIT 1) FROM stock",
        )?;
        let rows = all.query_map([last], |row| Ok((row.get(0)?, row.get::<_, Option<u32>>(1)?)))?;
        let all = rows.collect::<Result<Vec<(String, Option<u32>)>, _>>()?;
        let parts = all.into_iter().filter_map(|(id, count)| Some((id, count?))).collect();
        Ok(StockOn { parts, known_since: known_since.as_deref().map(time) })
    }

    /// How the count of a part moved, oldest first: the entry by which, when that was, and how many there were after it.
    /// Where one was only held or freed, there are as many as before, and nothing moved.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn moves_of(&self, part: &str) -> Result<Vec<StockMove>, LedgerError> {
        let mut all = self.db.prepare_cached(
            "SELECT stock_moves.seq, at, on_hand FROM stock_moves LEFT JOIN events ON events.seq = stock_moves.seq
             WHERE part = ? AND stock_moves.seq IS NOT NULL ORDER BY move",
        )?;
        let mut rows = all.query([part])?;
        let mut moves: Vec<StockMove> = Vec::new();
        while let Some(row) = rows.next()? {
            let on_hand = row.get(2)?;
            if moves.last().is_none_or(|last| last.on_hand != on_hand) {
                let at = row.get_ref(1)?.as_str_or_null().ok().flatten().map_or(Timestamp::UNIX_EPOCH, time);
                moves.push(StockMove { seq: row.get(0)?, at, on_hand });
            }
        }
        Ok(moves)
    }
}
