//! Lists of tickets, read in windows: a page asks for as much as it shows.

use super::{
    Ledger, LedgerError, Listed, Ticket,
    rows::{closed_at, current_show, listed},
};
use crate::ticket::{State, TicketNumber};

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

    /// At most `limit` tickets of a group, oldest first, of those that arrived after place `after`.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn window_from(&self, group: Group, after: Option<i64>, limit: usize) -> Result<Vec<Listed>, LedgerError> {
        let rest = format!("{} AND arrival > ? ORDER BY arrival LIMIT ?", group.condition());
        listed(&self.db, &rest, [after.unwrap_or(i64::MIN), i64::try_from(limit).unwrap_or(i64::MAX)])
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

    /// The ticket with this number that somebody may be threading: the newest that was not let go or taken back, of the
    /// running show or carried over into it.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn ticket_to_thread(&self, number: TicketNumber) -> Result<Option<Box<Ticket>>, LedgerError> {
        let show = self.show()?.id;
        let is_here = |one: &Listed| {
            let stands = !matches!(one.state, State::LetGo | State::TakenBack);
            stands && one.settled.map_or(one.show == show || one.state.is_open(), |settled| settled == show)
        };
        Ok(self.tickets_numbered(number)?.into_iter().filter(is_here).find_map(|one| one.ticket.ok()))
    }

    /// The tickets that were let go in a show, oldest first.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn let_go_in(&self, show: i64) -> Result<Vec<Listed>, LedgerError> {
        listed(&self.db, "settled = ? AND state = 'let_go' ORDER BY arrival", [show])
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
