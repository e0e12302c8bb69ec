//! Finding a sale again, from any show: by number, show, day, sum, or the home of something that was sold.

use jiff::Timestamp;
use rusqlite::{Connection, ToSql};
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::{
    craft::Home,
    ledger::{Ledger, LedgerError, rows::time},
    ticket::TicketNumber,
};

/// What is known of a sale that is looked for. Everything that is said has to be true of it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct SaleQuery {
    /// The number of a ticket on it, or its own.
    pub number: Option<TicketNumber>,
    /// The show in which it was paid.
    pub show: Option<i64>,
    /// Paid from this moment on, and before that one.
    pub paid: Option<(Timestamp, Timestamp)>,
    /// What it came to, or what was taken for it.
    pub sum: Option<Decimal>,
    /// Something from this home was on it.
    pub home: Option<Home>,
}

/// A sale that was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sale {
    /// Its bill, or the ticket of an earlier version, which kept no bills.
    pub id: SaleId,
    /// Its number.
    pub number: String,
    /// The show in which it was paid.
    pub show: i64,
    /// When it was paid, by the desk's clock.
    pub paid: Timestamp,
    /// What it comes to now.
    pub total: Decimal,
}

/// Where a sale stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SaleId {
    /// On this bill.
    Bill(Uuid),
    /// On this ticket alone.
    Ticket(Uuid),
}

/// A condition with what stands in its places.
#[derive(Default)]
struct Conditions {
    sql: String,
    values: Vec<Box<dyn ToSql>>,
}

impl Conditions {
    fn and(&mut self, sql: &str, values: impl IntoIterator<Item = Box<dyn ToSql>>) {
        self.sql.push_str(" AND ");
        self.sql.push_str(sql);
        self.values.extend(values);
    }
}

fn text(value: impl ToString) -> Box<dyn ToSql> {
    Box::new(value.to_string())
}

impl Ledger {
    /// The sales of which all that `query` says is true, newest first, at most `limit`.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn sales(&self, query: &SaleQuery, limit: usize) -> Result<Vec<Sale>, LedgerError> {
        let mut found = on_bills(&self.db, query, limit)?;
        found.extend(on_tickets_alone(&self.db, query, limit)?);
        found.sort_by_key(|sale| std::cmp::Reverse(sale.paid));
        found.truncate(limit);
        Ok(found)
    }
}

fn on_bills(db: &Connection, query: &SaleQuery, limit: usize) -> Result<Vec<Sale>, LedgerError> {
    let mut of = Conditions::default();
    if let Some(number) = query.number {
        let on_it = "(number = ? OR id IN (SELECT json_extract(ticket, '$.bill') FROM tickets
                     WHERE show IN (SELECT id FROM shows) AND number = ? AND json_valid(ticket)))";
        of.and(on_it, [text(number), text(number)]);
    }
    if let Some(show) = query.show {
        of.and("json_extract(bill, '$.settled[0]') = ?", [Box::new(show) as Box<dyn ToSql>]);
    }
    if let Some((from, before)) = query.paid {
        let milliseconds = |at: Timestamp| Box::new(at.as_millisecond()) as Box<dyn ToSql>;
        of.and("paid_ms >= ? AND paid_ms < ?", [milliseconds(from), milliseconds(before)]);
    }
    if let Some(sum) = query.sum {
        let taken = "(total = ? OR EXISTS (SELECT 1 FROM json_each(bill, '$.payments') AS paid
                     WHERE CAST(json_extract(paid.value, '$.amount') AS REAL) = CAST(? AS REAL)))";
        of.and(taken, [text(sum.normalize()), text(sum)]);
    }
    if let Some(home) = query.home {
        let on_it = "EXISTS (SELECT 1 FROM json_each(bill, '$.tickets') AS on_it
                     JOIN tickets ON tickets.id = json_extract(on_it.value, '$.id'), json_each(ticket, '$.lines') AS line
                     WHERE json_extract(line.value, '$.home') = ?)";
        of.and(on_it, [text(home)]);
    }
    let sql = format!(
        "SELECT id, number, coalesce(json_extract(bill, '$.settled[0]'), show), paid_ms, total FROM bills
         WHERE paid_ms IS NOT NULL{} ORDER BY paid_ms DESC LIMIT {limit}",
        of.sql
    );
    let mut all = db.prepare(&sql)?;
    let rows = all.query_map(rusqlite::params_from_iter(&of.values), |row| {
        let (id, total): (String, String) = (row.get(0)?, row.get(4)?);
        let paid = Timestamp::from_millisecond(row.get(3)?).unwrap_or(Timestamp::UNIX_EPOCH);
        Ok(Sale {
            id: SaleId::Bill(id.parse().unwrap_or_default()),
            number: row.get(1)?,
            show: row.get(2)?,
            paid,
            total: total.parse().unwrap_or_default(),
        })
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}

fn on_tickets_alone(db: &Connection, query: &SaleQuery, limit: usize) -> Result<Vec<Sale>, LedgerError> {
    let mut of = Conditions::default();
    if let Some(number) = query.number {
        of.and("number = ?", [text(number)]);
    }
    if let Some(show) = query.show {
        of.and("settled = ?", [Box::new(show) as Box<dyn ToSql>]);
    }
    if let Some((from, before)) = query.paid {
        // Compared as days' beginnings are written, to the second.
        of.and(
            "unixepoch(paid) >= ? AND unixepoch(paid) < ?",
            [Box::new(from.as_second()) as Box<dyn ToSql>, Box::new(before.as_second()) as Box<dyn ToSql>],
        );
    }
    if let Some(sum) = query.sum {
        let either = "(CAST(json_extract(ticket, '$.quote.total') AS REAL) = CAST(? AS REAL)
                      OR CAST(json_extract(ticket, '$.charged') AS REAL) = CAST(? AS REAL))";
        of.and(either, [text(sum), text(sum)]);
    }
    if let Some(home) = query.home {
        let on_it = "EXISTS (SELECT 1 FROM json_each(ticket, '$.lines') AS line
                     WHERE json_extract(line.value, '$.home') = ?)";
        of.and(on_it, [text(home)]);
    }
    let sql = format!(
        "SELECT id, number, settled, paid, json_extract(ticket, '$.quote.total') FROM (
             SELECT *, (SELECT max(at) FROM events WHERE events.ticket = tickets.id AND kind = 'rung_up') AS paid
             FROM tickets WHERE state IN ('rung_up', 'handed_over') AND json_valid(ticket)
             AND json_extract(ticket, '$.bill') IS NULL
         ) WHERE settled IS NOT NULL AND paid IS NOT NULL{} ORDER BY paid DESC LIMIT {limit}",
        of.sql
    );
    let mut all = db.prepare(&sql)?;
    let rows = all.query_map(rusqlite::params_from_iter(&of.values), |row| {
        let (id, paid, total): (String, String, String) = (row.get(0)?, row.get(3)?, row.get(4)?);
        Ok(Sale {
            id: SaleId::Ticket(id.parse().unwrap_or_default()),
            number: row.get(1)?,
            show: row.get(2)?,
            paid: time(&paid),
            total: total.parse().unwrap_or_default(),
        })
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}
