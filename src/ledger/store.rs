//! The ledger itself, and the small things every entry uses.

use std::path::PathBuf;

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, TransactionBehavior, params};
use serde::Serialize;
use uuid::Uuid;

use super::{CloseOut, LedgerError, Ticket, list::listed, shared_commit::Change, sums};

/// The ledger with its one writing connection.
pub struct Ledger {
    pub(super) db: Connection,
    /// Where it lies, unless it is in memory only.
    pub(super) file: Option<PathBuf>,
}

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
}

impl Ledger {
    /// A change of its own, with the write lock at once, or a part of what is entered together.
    pub(super) fn begin(&mut self) -> Result<Change<'_>, LedgerError> {
        if self.db.is_autocommit() {
            Ok(Change::Alone(self.db.transaction_with_behavior(TransactionBehavior::Immediate)?))
        } else {
            Ok(Change::Among(self.db.savepoint()?))
        }
    }

    /// Number of the last entry; it grows with every change.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn change(&self) -> Result<i64, LedgerError> {
        Ok(self.db.prepare_cached("SELECT coalesce(max(seq), 0) FROM events")?.query_row([], |row| row.get(0))?)
    }

    /// The running show.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn show(&self) -> Result<Show, LedgerError> {
        Ok(current_show(&self.db)?.ok_or(rusqlite::Error::QueryReturnedNoRows)?)
    }

    /// The ticket with this id.
    ///
    /// # Errors
    /// There is no such ticket, or it can't be read.
    pub fn ticket(&self, id: Uuid) -> Result<Ticket, LedgerError> {
        find(&self.db, id)?.ok_or(LedgerError::NoTicket(id))
    }

    /// Everything that happened to a ticket, oldest first.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn history(&self, id: Uuid) -> Result<Vec<Event>, LedgerError> {
        let mut all = self.db.prepare_cached("SELECT seq, at, kind, body FROM events WHERE ticket = ? ORDER BY seq")?;
        let mut rows = all.query([id.to_string()])?;
        let mut events = Vec::new();
        while let Some(row) = rows.next()? {
            events.push(Event {
                seq: row.get(0)?,
                at: time(&row.get::<_, String>(1)?),
                kind: row.get(2)?,
                // The rest of a ticket's past is told also where one entry can't be read.
                body: serde_json::from_str(&row.get::<_, String>(3)?).unwrap_or_default(),
            });
        }
        Ok(events)
    }

    /// A setting of the desk.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn setting(&self, name: &str) -> Result<Option<String>, LedgerError> {
        Ok(self.db.query_row("SELECT value FROM settings WHERE name = ?", [name], |row| row.get(0)).optional()?)
    }

    /// Keeps a setting of the desk.
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then.
    pub fn set_setting(&mut self, name: &str, value: &str) -> Result<(), LedgerError> {
        self.db.execute("INSERT OR REPLACE INTO settings (name, value) VALUES (?, ?)", [name, value])?;
        Ok(())
    }
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

pub(super) fn open_show(db: &Connection, now: Timestamp) -> Result<(), LedgerError> {
    db.execute("INSERT INTO shows (opened) VALUES (?)", [now.to_string()])?;
    let show = db.last_insert_rowid();
    sums::keep(db, &CloseOut::of_show(show))?;
    note(db, now, None, "show_opened", &show)?;
    Ok(())
}

/// Adds an entry and gives its number.
pub(super) fn note(
    db: &Connection,
    now: Timestamp,
    ticket: Option<Uuid>,
    kind: &str,
    body: &impl Serialize,
) -> Result<i64, LedgerError> {
    db.prepare_cached("INSERT INTO events (at, ticket, kind, body) VALUES (?, ?, ?, ?)")?.execute(params![
        now.to_string(),
        ticket.map(|id| id.to_string()),
        kind,
        serde_json::to_string(body)?
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
