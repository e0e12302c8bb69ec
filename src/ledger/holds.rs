//! How long parts are held: what is ticked off for good, the rest for as long as the table says, counted from the last
//! thing that the seller did with the ticket. Holds are the one thing here that a clock decides, so a clock that is set
//! must neither end them all at once nor make them last.

use jiff::{SignedDuration, Timestamp};
use rusqlite::Connection;
use uuid::Uuid;

use super::{
    Ledger, LedgerError, Ticket,
    rows::{find, keep_setting, note, save, setting, time},
    stock::free,
};

/// The setting that keeps the table's figure, in minutes.
const MINUTES: &str = "hold_minutes";
/// The figure until a catalogue was taken over.
const USUAL_MINUTES: i64 = 45;

/// Keeps how long this table holds, in minutes.
pub(super) fn remember(db: &Connection, minutes: u32) -> Result<(), LedgerError> {
    keep_setting(db, MINUTES, &minutes.to_string())
}

/// When a hold ends that is made or moved `now`.
pub(super) fn until(db: &Connection, now: Timestamp) -> Result<Timestamp, LedgerError> {
    let minutes = setting(db, MINUTES)?.and_then(|text| text.parse().ok()).unwrap_or(USUAL_MINUTES);
    Ok(now.saturating_add(SignedDuration::from_mins(minutes)).unwrap_or(Timestamp::MAX))
}

impl Ledger {
    /// Frees the parts of open tickets whose time is over, apart from those that are ticked off; gives how many tickets
    /// lost parts. The tickets stay; a part is held again when it is ticked off. A hold that was made with the clock
    /// ahead ends as if it were made now.
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then.
    pub fn end_holds(&mut self, now: Timestamp) -> Result<usize, LedgerError> {
        let tx = self.begin()?;
        let latest = until(&tx, now)?;
        let mut ended = 0;
        for (id, hold_until) in holding(&tx)? {
            if (now..=latest).contains(&hold_until) {
                continue;
            }
            let Some(mut ticket) = readable(find(&tx, id))? else { continue };
            if hold_until > latest {
                ticket.hold_until = latest;
                note(&tx, now, Some(id), "hold_shortened", &latest)?;
            } else if free_unticked(&tx, &mut ticket)? {
                note(&tx, now, Some(id), "hold_ended", &())?;
                ended += 1;
            }
            save(&tx, &ticket)?;
        }
        tx.commit()?;
        Ok(ended)
    }

    /// The desk's clock was set while it ran, by so much: all holds go along, and last as long as they would have.
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then.
    pub fn clock_was_set(&mut self, by: SignedDuration, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        note(&tx, now, None, "clock_set", &by)?;
        for (id, hold_until) in holding(&tx)? {
            let Some(mut ticket) = readable(find(&tx, id))? else { continue };
            ticket.hold_until = hold_until.saturating_add(by).unwrap_or(hold_until);
            save(&tx, &ticket)?;
        }
        tx.commit()?;
        Ok(())
    }
}

/// The tickets that hold something which a sweep may free, with the ends of their holds.
fn holding(db: &Connection) -> Result<Vec<(Uuid, Timestamp)>, LedgerError> {
    let mut all =
        db.prepare_cached("SELECT id, hold_until FROM tickets WHERE hold_until IS NOT NULL ORDER BY arrival")?;
    let rows = all.query_map([], |row| Ok((row.get::<_, String>(0)?, row.get::<_, String>(1)?)))?;
    let mut holding = Vec::new();
    for row in rows {
        let (id, until) = row?;
        holding.extend(id.parse().ok().map(|id| (id, time(&until))));
    }
    Ok(holding)
}

/// A ticket that can't be read keeps what it holds until the show is closed, and no other from being swept.
fn readable(found: Result<Option<Ticket>, LedgerError>) -> Result<Option<Ticket>, LedgerError> {
    match found {
        Err(LedgerError::Unreadable { .. }) => Ok(None),
        found => found,
    }
}

/// Frees what is held and not ticked off; whether there was anything.
fn free_unticked(db: &Connection, ticket: &mut Ticket) -> Result<bool, LedgerError> {
    let any = ticket.holds_unticked();
    if ticket.base_held && !ticket.base_ticked {
        free(db, &ticket.piece.base)?;
        ticket.base_held = false;
    }
    for line in ticket.lines.iter_mut().filter(|line| line.held && !line.removed && !line.ticked) {
        free(db, &line.id)?;
        line.held = false;
    }
    Ok(any)
}
