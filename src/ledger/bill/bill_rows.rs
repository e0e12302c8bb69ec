//! Bills as they are read and written.

use rusqlite::{Connection, OptionalExtension, params};
use uuid::Uuid;

use super::{Bill, BillSum};
use crate::ledger::{LedgerError, Ticket, rows::find};

/// The bill with this id.
pub(super) fn find_bill(db: &Connection, id: Uuid) -> Result<Option<Bill>, LedgerError> {
    let text: Option<String> = db
        .prepare_cached("SELECT bill FROM bills WHERE id = ?")?
        .query_row([id.to_string()], |row| row.get(0))
        .optional()?;
    Ok(text.map(|text| serde_json::from_str(&text)).transpose()?)
}

/// The bill with this id, and its tickets.
pub(super) fn with_tickets(db: &Connection, id: Uuid) -> Result<(Bill, Vec<Ticket>), LedgerError> {
    let bill = find_bill(db, id)?.ok_or(LedgerError::NoBill(id))?;
    let tickets = tickets_of(db, &bill)?;
    Ok((bill, tickets))
}

/// The tickets of a bill, in its order.
pub(super) fn tickets_of(db: &Connection, bill: &Bill) -> Result<Vec<Ticket>, LedgerError> {
    let one = |id: Uuid| find(db, id)?.ok_or(LedgerError::NoTicket(id));
    bill.tickets.iter().map(|ticket| one(ticket.id)).collect()
}

/// Keeps a bill, new or changed, with what it comes to beside it, by which it is found.
pub(in crate::ledger) fn save_bill(db: &Connection, bill: &Bill, sum: &BillSum) -> Result<(), LedgerError> {
    let state = if sum.left.is_zero() && !sum.waits {
        // Nothing is to be paid for it: all of it is the guest's, or nothing is on it any more.
        "settled"
    } else if bill.payments.is_empty() {
        "open"
    } else {
        "part_paid"
    };
    db.prepare_cached(
        "INSERT INTO bills (id, show, number, arrival, state, total, paid_ms, bill) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)
         ON CONFLICT (id) DO UPDATE SET state = ?5, total = ?6, paid_ms = ?7, bill = ?8",
    )?
    .execute(params![
        bill.id.to_string(),
        bill.show,
        bill.number.to_string(),
        bill.arrival,
        state,
        sum.total.normalize().to_string(),
        bill.settled.map(|(_, at)| at.as_millisecond()),
        serde_json::to_string(bill)?
    ])?;
    Ok(())
}

/// Makes what stands beside the bill of a ticket follow, after that was let go. A bill that can't be read or added up stays
/// among those that somebody has to look at, and keeps no show from being closed.
pub(in crate::ledger) fn follow(db: &Connection, ticket: &Ticket) -> Result<(), LedgerError> {
    let Some(id) = ticket.bill else { return Ok(()) };
    let summed = with_tickets(db, id).and_then(|(bill, tickets)| {
        let sum = BillSum::of(&bill, &tickets)?;
        Ok((bill, sum))
    });
    match summed {
        Ok((bill, sum)) => save_bill(db, &bill, &sum),
        Err(error @ (LedgerError::Database(_) | LedgerError::DiskFull)) => Err(error),
        Err(_) => Ok(()),
    }
}

/// The bills on which something is to be paid or to be paid out, oldest first.
pub(in crate::ledger) fn open_bills(db: &Connection) -> Result<Vec<Bill>, LedgerError> {
    let mut all = db.prepare_cached("SELECT bill FROM bills WHERE state IN ('open', 'part_paid') ORDER BY arrival")?;
    let rows = all.query_map([], |row| row.get::<_, String>(0))?;
    let mut bills = Vec::new();
    for row in rows {
        bills.push(serde_json::from_str(&row?)?);
    }
    Ok(bills)
}
