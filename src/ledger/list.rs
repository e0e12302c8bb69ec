//! Lists of tickets, read in windows: a page asks for as much as it shows.

use rusqlite::{Connection, Params, Row};
use uuid::Uuid;

use super::{Ledger, LedgerError, Ticket, close::closed_at, store::current_show};
use crate::ticket::{State, TicketNumber};

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

/// What belongs together on the seller's list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Not looked at yet, or called, of whichever show.
    Waiting,
    /// All ticked off, of whichever show.
    Checked,
    /// Rung up or let go in the running show.
    Done,
}

impl Group {
    /// The condition on a row of the table; each has an index of its own.
    const fn condition(self) -> &'static str {
        match self {
            Self::Waiting => "state IN ('sent', 'called')",
            Self::Checked => "state = 'checked'",
            Self::Done => "settled = (SELECT max(id) FROM shows)",
        }
    }
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

impl Ledger {
    /// The tickets settled in the running show and all open ones, newest first, apart from those that can't be read.
    ///
    /// # Errors
    /// The ledger or one of the tickets can't be read.
    pub fn tickets(&self) -> Result<Vec<Ticket>, LedgerError> {
        let Some(show) = current_show(&self.db)? else { return Ok(vec![]) };
        let all =
            listed(&self.db, "settled = ? OR state IN ('sent', 'called', 'checked') ORDER BY arrival DESC", [show.id])?;
        Ok(all.into_iter().filter_map(|one| Some(*one.ticket.ok()?)).collect())
    }

    /// At most `limit` tickets of a group, newest first, of those that arrived before place `before`.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn window(&self, group: Group, before: Option<i64>, limit: usize) -> Result<Vec<Listed>, LedgerError> {
        let rest = format!("{} AND arrival < ? ORDER BY arrival DESC LIMIT ?", group.condition());
        listed(&self.db, &rest, [before.unwrap_or(i64::MAX), i64::try_from(limit).unwrap_or(i64::MAX)])
    }

    /// How many tickets a group has.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn tally(&self, group: Group) -> Result<usize, LedgerError> {
        let count = format!("SELECT count(*) FROM tickets WHERE {}", group.condition());
        let count: i64 = self.db.prepare_cached(&count)?.query_row([], |row| row.get(0))?;
        Ok(usize::try_from(count).unwrap_or(0))
    }

    /// All tickets with this number, of whichever show, newest first.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn tickets_numbered(&self, number: TicketNumber) -> Result<Vec<Listed>, LedgerError> {
        // Show by show, as the table is ordered.
        let rest = "show IN (SELECT id FROM shows) AND number = ? ORDER BY arrival DESC";
        listed(&self.db, rest, [number.to_string()])
    }

    /// The tickets of a show that arrived when it was closed already, oldest first.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn came_after(&self, show: i64) -> Result<Vec<Listed>, LedgerError> {
        match closed_at(&self.db, show)? {
            Some(end) => listed(&self.db, "show = ? AND arrival > ? ORDER BY arrival", [show, end]),
            None => Ok(vec![]),
        }
    }
}
