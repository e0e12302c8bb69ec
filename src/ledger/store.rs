//! The ledger itself, and what is asked of it most.

use std::path::PathBuf;

use rusqlite::{Connection, TransactionBehavior, params};
use uuid::Uuid;

use super::{
    Event, LedgerError, Show, Ticket,
    rows::{current_show, find, keep_setting, setting, time},
    shared_commit::{Change, Within},
};

/// The ledger with its one writing connection.
pub struct Ledger {
    pub(super) db: Connection,
    /// Where it lies, unless it is in memory only.
    pub(super) file: Option<PathBuf>,
    /// Who does what is done now, by name.
    pub(super) by: Option<String>,
}

impl Ledger {
    /// A change of its own, with the write lock at once, or a part of what is entered together.
    pub(super) fn begin(&mut self) -> Result<Change<'_>, LedgerError> {
        let within = if self.db.is_autocommit() {
            Within::Alone(self.db.transaction_with_behavior(TransactionBehavior::Immediate)?)
        } else {
            Within::Among(self.db.savepoint()?)
        };
        Ok(Change { within, by: self.by.clone() })
    }

    /// Lets somebody at the desk work: every entry of `work` has their name.
    pub fn acting<T>(&mut self, by: Option<String>, work: impl FnOnce(&mut Self) -> T) -> T {
        self.by = by;
        let done = work(self);
        self.by = None;
        done
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
        self.history_since(id, 0)
    }

    /// What happened to a ticket after entry `seen`, oldest first.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn history_since(&self, id: Uuid, seen: i64) -> Result<Vec<Event>, LedgerError> {
        let mut all = self
            .db
            .prepare_cached("SELECT seq, at, kind, body, by FROM events WHERE ticket = ? AND seq > ? ORDER BY seq")?;
        let mut rows = all.query(params![id.to_string(), seen])?;
        let mut events = Vec::new();
        while let Some(row) = rows.next()? {
            events.push(Event {
                seq: row.get(0)?,
                at: time(&row.get::<_, String>(1)?),
                kind: row.get(2)?,
                // The rest of a ticket's past is told also where one entry can't be read.
                body: serde_json::from_str(&row.get::<_, String>(3)?).unwrap_or_default(),
                by: row.get(4)?,
            });
        }
        Ok(events)
    }

    /// A setting of the desk.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn setting(&self, name: &str) -> Result<Option<String>, LedgerError> {
        setting(&self.db, name)
    }

    /// Keeps a setting of the desk.
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then.
    pub fn set_setting(&mut self, name: &str, value: &str) -> Result<(), LedgerError> {
        keep_setting(&self.db, name, value)
    }
}
