//! What the seller does to the price of a piece by hand: a reduction with its reason, a party's package, lines for what hangs
//! on it and has no home. The sum follows through the one quote.

use jiff::Timestamp;
use uuid::Uuid;

use super::{
    Given, Ledger, LedgerError, Ticket,
    bill::{checked_line, reason_of},
    edit::open,
};
use crate::{
    catalog::Catalog,
    money::{Package, PlainLine},
};

/// No piece has more plain lines; more is a slip.
const MOST_PLAIN_LINES: usize = 40;

impl Ledger {
    /// Takes something off a piece, or nothing any more.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is done, there is no reason, or the reduction is none: its message says
    /// why.
    pub fn reduce(&mut self, id: Uuid, given: Option<Given>, now: Timestamp) -> Result<Ticket, LedgerError> {
        let noted = given.clone();
        self.change_ticket(id, now, "reduced", &noted, |_, ticket| {
            open(ticket)?;
            ticket.sum_stands()?;
            if let Some(given) = &given {
                reason_of(&given.reason)?;
                // Also a wish above the sum is told here, which otherwise comes to nothing.
                ticket.quoted(Some(&given.reduction))?;
            }
            ticket.given = given;
            ticket.sum_up()?;
            Ok(())
        })
    }

    /// Makes a piece part of a party's package, or none any more.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is done, or the package's price is none that a table takes.
    pub fn set_package(&mut self, id: Uuid, package: Option<Package>, now: Timestamp) -> Result<Ticket, LedgerError> {
        let noted = package.clone();
        self.change_ticket(id, now, "package", &noted, |_, ticket| {
            open(ticket)?;
            ticket.sum_stands()?;
            ticket.package = package;
            ticket.sum_up()?;
            Ok(())
        })
    }

    /// Hangs something onto a piece that has no home: one of an assortment, or the guest's own at no price. Nobody knows what
    /// it is, so that it counts as small and not tested.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is done, the words are none or too long, or the price is none that a
    /// table takes.
    pub fn add_plain(
        &mut self,
        id: Uuid,
        line: &PlainLine,
        catalog: &Catalog,
        now: Timestamp,
    ) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "plain_added", line, |db, ticket| {
            open(ticket)?;
            ticket.sum_stands()?;
            if ticket.plain.len() >= MOST_PLAIN_LINES {
                return Err(LedgerError::LongBill(MOST_PLAIN_LINES));
            }
            checked_line(&ticket.rules, line)?;
            ticket.plain.push(line.clone());
            ticket.derive(catalog, db)
        })
    }

    /// Takes such a line off again.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is done, or it has no such line.
    pub fn remove_plain(
        &mut self,
        id: Uuid,
        at: usize,
        catalog: &Catalog,
        now: Timestamp,
    ) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "plain_removed", &at, |db, ticket| {
            open(ticket)?;
            if at >= ticket.plain.len() {
                return Err(LedgerError::NoLine);
            }
            ticket.plain.remove(at);
            ticket.derive(catalog, db)
        })
    }
}
