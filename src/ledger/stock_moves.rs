//! How each count moved, with the number of the entry by which: what lay there at an entry, since one, and on a day.

use std::collections::BTreeMap;

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, params};
use serde::Serialize;
use uuid::Uuid;

use super::{
    Ledger, LedgerError, Listed,
    rows::{listed, time},
    stock::count_of,
};
use crate::ticket::State;

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

/// A piece that was sold.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SoldTicket {
    /// Id of its ticket.
    pub id: Uuid,
    /// Its number.
    pub number: String,
    /// The show in which it was sold.
    pub show: i64,
    /// The entry of the sale.
    pub seq: i64,
    /// When, by the desk's clock.
    pub at: Timestamp,
    /// Where it is now.
    pub state: State,
    /// Its base and drops, by id.
    pub parts: Vec<String>,
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
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn moves_of(&self, part: &str) -> Result<Vec<StockMove>, LedgerError> {
        let mut all = self.db.prepare_cached(
            "SELECT stock_moves.seq, at, on_hand FROM stock_moves LEFT JOIN events ON events.seq = stock_moves.seq
             WHERE part = ? AND stock_moves.seq IS NOT NULL ORDER BY move",
        )?;
        let rows = all.query_map([part], |row| {
            let at = row.get::<_, Option<String>>(1)?.map_or(Timestamp::UNIX_EPOCH, |text| time(&text));
            Ok(StockMove { seq: row.get(0)?, at, on_hand: row.get(2)? })
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Every piece that was sold, with what is in it, in the order in which they were sold; what was taken back again
    /// included.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn sold_pieces(&self) -> Result<Vec<SoldTicket>, LedgerError> {
        let mut entries = self.db.prepare_cached(
            "SELECT ticket, min(seq), at FROM events WHERE kind = 'rung_up' AND ticket IS NOT NULL GROUP BY ticket",
        )?;
        let rows =
            entries.query_map([], |row| Ok((row.get::<_, String>(0)?, (row.get(1)?, row.get::<_, String>(2)?))))?;
        let entries: BTreeMap<String, (i64, String)> = rows.collect::<Result<_, _>>()?;
        let sold = listed(&self.db, "state IN ('rung_up', 'handed_over', 'taken_back') ORDER BY arrival", [])?;
        let told = |one: Listed| {
            let (seq, at) = entries.get(&one.id.to_string())?;
            let ticket = one.ticket.ok()?;
            let drops = ticket.live_lines().map(|(_, line)| line.id.clone());
            let parts = std::iter::once(ticket.piece.base.clone()).chain(drops).collect();
            Some(SoldTicket {
                id: one.id,
                number: one.number,
                show: one.settled.unwrap_or(one.show),
                seq: *seq,
                at: time(at),
                state: one.state,
                parts,
            })
        };
        let mut all: Vec<SoldTicket> = sold.into_iter().filter_map(told).collect();
        all.sort_by_key(|one| one.seq);
        Ok(all)
    }
}
