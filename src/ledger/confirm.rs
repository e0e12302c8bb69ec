//! A sum that none of this table's price lists gives is charged only after the seller said so.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::{Ledger, LedgerError, SumDoubt, Ticket, edit::open};
use crate::catalog::{Catalog, PieceError};

/// What the seller charges for a ticket whose sum is in doubt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Charge {
    /// The sum that the guest saw.
    AsSeen,
    /// What the parts cost at this table today.
    Today,
}

impl Ledger {
    /// The seller says what is charged for ticket `id`.
    ///
    /// # Errors
    /// The ticket is done; its sum is in no doubt; the sum as seen is in a currency that the table does not take; a part has no price today.
    pub fn confirm_sum(
        &mut self,
        id: Uuid,
        charge: Charge,
        catalog: &Catalog,
        now: Timestamp,
    ) -> Result<Ticket, LedgerError> {
        self.change_ticket(id, now, "sum_confirmed", &charge, |_, ticket| {
            open(ticket)?;
            // Where there is no doubt, the guest pays what was on the screen.
            if ticket.sum_doubt.is_none() {
                return Err(LedgerError::SumStands);
            }
            match charge {
                Charge::AsSeen if ticket.sum_doubt == Some(SumDoubt::Currency) => {
                    let (found, taken) = (ticket.quote.currency, catalog.table.prices.currency);
                    return Err(LedgerError::OtherCurrency { found, taken });
                }
                Charge::AsSeen => {}
                Charge::Today => price_anew(ticket, catalog)?,
            }
            ticket.sum_doubt = None;
            Ok(())
        })
    }
}

/// Gives base and lines today's prices and sums them up by today's rules.
fn price_anew(ticket: &mut Ticket, catalog: &Catalog) -> Result<(), LedgerError> {
    let base = &ticket.piece.base;
    let price = catalog.base(base).map(|base| base.price);
    ticket.quote.base.price = price.ok_or_else(|| PieceError::NoBase { id: base.clone(), like: None })?;
    for line in ticket.lines.iter_mut().filter(|line| !line.removed) {
        let price = catalog.drop_kind(&line.id).map(|kind| kind.price);
        line.price = price.ok_or_else(|| PieceError::NoDrop { id: line.id.clone(), like: None })?;
    }
    ticket.rules = catalog.table.prices.clone();
    ticket.total_by_catalog = None;
    ticket.sum_up()
}
