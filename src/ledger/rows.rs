//! Rows of the ledger as they are read and written: shows, entries, tickets. Everything else here is built on these.

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, Params, Row, params};
use serde::Serialize;
use uuid::Uuid;

use super::{LedgerError, Ticket, shared_commit::Change};
use crate::ticket::State;

/// One event at which the table stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Show {
    /// Its number, from 1.
    pub id: i64,
    /// When it was opened.
    pub opened: Timestamp,
}

/// One entry of the ledger.
#[derive(Debug, Clone, PartialEq)]
pub struct Event {
    /// Its place in the ledger.
    pub seq: i64,
    /// When, by the desk's clock.
    pub at: Timestamp,
    /// What happened, in a word.
    pub kind: String,
    /// What belongs to the entry, in a form of its kind.
    pub body: serde_json::Value,
    /// Who did it, by name, where that is known: a tablet, the desk itself and earlier versions have none.
    pub by: Option<String>,
}

/// A ticket on a list, by what stands beside its document in the ledger: so it is listed also where that can't be read.
#[derive(Debug, Clone, PartialEq)]
pub struct Listed {
    /// Id of the ticket.
    pub id: Uuid,
    /// The show it was sent in.
    pub show: i64,
    /// Its number, as a guest reads it.
    pub number: String,
    /// Its place in the order of arrival.
    pub arrival: i64,
    /// Where it is in its life.
    pub state: State,
    /// The show in which it was rung up or let go.
    pub settled: Option<i64>,
    /// The ticket, or why it can't be read.
    pub ticket: Result<Box<Ticket>, String>,
}

impl Listed {
    const COLUMNS: &str = "id, show, number, arrival, state, settled, ticket";

    fn read(row: &Row<'_>) -> rusqlite::Result<Self> {
        let settled: Option<i64> = row.get(5)?;
        let state = row.get_ref(4)?.as_str().ok().and_then(State::from_code);
        let ticket = match row.get_ref(6)?.as_str().map(serde_json::from_str::<Box<Ticket>>) {
            Ok(Ok(mut ticket)) => {
                ticket.settled = settled;
                Ok(ticket)
            }
            Ok(Err(error)) => Err(error.to_string()),
            Err(error) => Err(error.to_string()),
        };
        Ok(Self {
            id: row.get_ref(0)?.as_str().ok().and_then(|text| text.parse().ok()).unwrap_or_default(),
            show: row.get(1)?,
            number: String::from_utf8_lossy(row.get_ref(2)?.as_bytes().unwrap_or_default()).into_owned(),
            arrival: row.get(3)?,
            // A word that nobody knows leaves it among those that somebody has to look at.
            state: state.unwrap_or(State::Sent),
            settled,
            ticket,
        })
    }
}

/// The tickets for which `rest` of the question holds, in its order.
pub(super) fn listed(db: &Connection, rest: &str, of: impl Params) -> Result<Vec<Listed>, LedgerError> {
    let mut all = db.prepare_cached(&format!("SELECT {} FROM tickets WHERE {rest}", Listed::COLUMNS))?;
    let rows = all.query_map(of, Listed::read)?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Every ticket on which the seller still works, of whichever show, oldest first.
pub(super) fn open_tickets(db: &Connection) -> Result<Vec<Listed>, LedgerError> {
    listed(db, "state IN ('sent', 'called', 'checked') ORDER BY arrival", [])
}

/// Reads a stored time; a time that does not read is the beginning of time, which only ever ends a hold early.
pub(super) fn time(text: &str) -> Timestamp {
    text.parse().unwrap_or(Timestamp::UNIX_EPOCH)
}

pub(super) fn current_show(db: &Connection) -> Result<Option<Show>, rusqlite::Error> {
    db.prepare_cached("SELECT id, opened FROM shows WHERE closed IS NULL ORDER BY id DESC LIMIT 1")?
        .query_row([], |row| Ok(Show { id: row.get(0)?, opened: time(&row.get::<_, String>(1)?) }))
        .optional()
}

/// A setting of the desk.
pub(super) fn setting(db: &Connection, name: &str) -> Result<Option<String>, LedgerError> {
    let mut one = db.prepare_cached("SELECT value FROM settings WHERE name = ?")?;
    Ok(one.query_row([name], |row| row.get(0)).optional()?)
}

/// Keeps a setting of the desk.
pub(super) fn keep_setting(db: &Connection, name: &str, value: &str) -> Result<(), LedgerError> {
    db.prepare_cached("INSERT OR REPLACE INTO settings (name, value) VALUES (?, ?)")?.execute([name, value])?;
    Ok(())
}

/// Adds an entry about a ticket or a bill, or about the desk where there is none, and gives its number.
pub(super) fn note(
    change: &Change<'_>,
    now: Timestamp,
    about: Option<Uuid>,
    kind: &str,
    body: &impl Serialize,
) -> Result<i64, LedgerError> {
    note_written(change, now, about, kind, &serde_json::to_string(body)?)
}

/// The same where the body is written down already.
pub(super) fn note_written(
    change: &Change<'_>,
    now: Timestamp,
    about: Option<Uuid>,
    kind: &str,
    body: &str,
) -> Result<i64, LedgerError> {
    enter(change, change.by.as_deref(), now, about, kind, body)
}

/// The same for what the desk does by itself.
pub(super) fn note_by_itself(
    db: &Connection,
    now: Timestamp,
    kind: &str,
    body: &impl Serialize,
) -> Result<i64, LedgerError> {
    enter(db, None, now, None, kind, &serde_json::to_string(body)?)
}

fn enter(
    db: &Connection,
    by: Option<&str>,
    now: Timestamp,
    about: Option<Uuid>,
    kind: &str,
    body: &str,
) -> Result<i64, LedgerError> {
    db.prepare_cached("INSERT INTO events (at, ticket, kind, body, by) VALUES (?, ?, ?, ?, ?)")?.execute(params![
        now.to_string(),
        about.map(|id| id.to_string()),
        kind,
        body,
        by
    ])?;
    Ok(db.last_insert_rowid())
}

pub(super) fn find(db: &Connection, id: Uuid) -> Result<Option<Ticket>, LedgerError> {
    let Some(found) = listed(db, "id = ?", [id.to_string()])?.pop() else { return Ok(None) };
    match found.ticket {
        Ok(ticket) => Ok(Some(*ticket)),
        Err(why) => Err(LedgerError::Unreadable { number: found.number, why }),
    }
}

/// Keeps a changed ticket.
pub(super) fn save(db: &Connection, ticket: &Ticket) -> Result<(), LedgerError> {
    let holds = ticket.state.is_open() && ticket.holds_unticked();
    db.prepare_cached("UPDATE tickets SET state = ?, settled = ?, hold_until = ?, ticket = ? WHERE id = ?")?.execute(
        params![
            ticket.state.code(),
            ticket.settled,
            holds.then(|| ticket.hold_until.to_string()),
            serde_json::to_string(ticket)?,
            ticket.id.to_string()
        ],
    )?;
    Ok(())
}

/// The entry by which show `show` was closed. Shows are closed in the order of their numbers, and each closing opens
/// the next show in the same breath.
pub(super) fn closed_at(db: &Connection, show: i64) -> Result<Option<i64>, LedgerError> {
    // No show follows the last one, so it was never closed.
    let Some(following) = show.checked_add(1) else { return Ok(None) };
    let next = db
        .prepare_cached("SELECT seq FROM events WHERE ticket IS NULL AND kind = 'show_opened' AND body = ?")?
        .query_row([following.to_string()], |row| row.get::<_, i64>(0))
        .optional()?;
    let Some(next) = next else { return Ok(None) };
    let end = db
        .prepare_cached("SELECT max(seq) FROM events WHERE ticket IS NULL AND kind = 'show_closed' AND seq < ?")?
        .query_row([next], |row| row.get::<_, Option<i64>>(0))?;
    Ok(end)
}
