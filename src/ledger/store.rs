//! Opening the book, and the small things every entry uses.

use std::path::Path;

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, Transaction, TransactionBehavior, params};
use serde::Serialize;
use uuid::Uuid;

use super::{CloseOut, LedgerError, Ticket, list::listed, reserve, schema, sums};

/// The book with its one writing connection.
pub struct Ledger {
    pub(super) db: Connection,
}

/// One event at which the table stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Show {
    /// Its number, from 1.
    pub id: i64,
    /// When it was opened.
    pub opened: Timestamp,
}

/// One entry of the book.
#[derive(Debug, Clone, PartialEq)]
pub struct Event {
    /// Its place in the book.
    pub seq: i64,
    /// When, by the desk's clock.
    pub at: Timestamp,
    /// What happened, in a word.
    pub kind: String,
    /// The particulars.
    pub body: serde_json::Value,
}

impl Ledger {
    /// Opens or makes the book at `path`, with a show running.
    pub fn open(path: &Path, now: Timestamp) -> Result<Self, LedgerError> {
        let open = || Self::prepared(Connection::open(path)?, now);
        match open() {
            Err(LedgerError::DiskFull) if reserve::give_up(path) => open(),
            // On the room that was given up the seller works first.
            opened => opened.inspect(|_| reserve::take(path)),
        }
    }

    /// A book in memory only, for trying things out.
    pub fn in_memory(now: Timestamp) -> Result<Self, LedgerError> {
        Self::prepared(Connection::open_in_memory()?, now)
    }

    fn prepared(mut db: Connection, now: Timestamp) -> Result<Self, LedgerError> {
        schema::prepare(&mut db)?;
        let mut ledger = Self { db };
        let tx = ledger.begin()?;
        match current_show(&tx)? {
            // An earlier version kept no sums.
            Some(show) => sums::keep(&tx, &sums::of(&tx, show.id)?)?,
            None => open_show(&tx, now)?,
        }
        tx.commit()?;
        Ok(ledger)
    }

    /// A transaction that takes the write lock at once.
    pub(super) fn begin(&mut self) -> Result<Transaction<'_>, LedgerError> {
        Ok(self.db.transaction_with_behavior(TransactionBehavior::Immediate)?)
    }

    /// Number of the last entry; it grows with every change.
    pub fn change(&self) -> Result<i64, LedgerError> {
        Ok(self.db.query_row("SELECT coalesce(max(seq), 0) FROM events", [], |row| row.get(0))?)
    }

    /// The running show.
    pub fn show(&self) -> Result<Show, LedgerError> {
        Ok(current_show(&self.db)?.ok_or(rusqlite::Error::QueryReturnedNoRows)?)
    }

    /// One ticket.
    pub fn ticket(&self, id: Uuid) -> Result<Ticket, LedgerError> {
        find(&self.db, id)?.ok_or(LedgerError::NoTicket(id))
    }

    /// Everything that happened to a ticket, oldest first.
    pub fn history(&self, id: Uuid) -> Result<Vec<Event>, LedgerError> {
        let mut all = self.db.prepare_cached("SELECT seq, at, kind, body FROM events WHERE ticket = ? ORDER BY seq")?;
        let mut rows = all.query([id.to_string()])?;
        let mut events = Vec::new();
        while let Some(row) = rows.next()? {
            events.push(Event {
                seq: row.get(0)?,
                at: time(&row.get::<_, String>(1)?),
                kind: row.get(2)?,
                body: serde_json::from_str(&row.get::<_, String>(3)?)?,
            });
        }
        Ok(events)
    }

    /// Whether the file reads without fault (SQLite's own integrity check).
    pub fn is_sound(&self) -> Result<bool, LedgerError> {
        let answer: String = self.db.query_row("PRAGMA integrity_check", [], |row| row.get(0))?;
        Ok(answer == "ok")
    }

    /// A setting of the desk.
    pub fn setting(&self, name: &str) -> Result<Option<String>, LedgerError> {
        Ok(self.db.query_row("SELECT value FROM settings WHERE name = ?", [name], |row| row.get(0)).optional()?)
    }

    /// Keeps a setting of the desk.
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
    db.query_row("SELECT id, opened FROM shows WHERE closed IS NULL ORDER BY id DESC LIMIT 1", [], |row| {
        Ok(Show { id: row.get(0)?, opened: time(&row.get::<_, String>(1)?) })
    })
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
    db.execute(
        "INSERT INTO events (at, ticket, kind, body) VALUES (?, ?, ?, ?)",
        params![now.to_string(), ticket.map(|id| id.to_string()), kind, serde_json::to_string(body)?],
    )?;
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
    db.execute(
        "UPDATE tickets SET state = ?, settled = ?, hold_until = ?, ticket = ? WHERE id = ?",
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
