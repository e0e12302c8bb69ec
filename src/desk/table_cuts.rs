//! Lengths that are cut at the table: which bases come off a spool, and what a sale takes off it.

use std::sync::Arc;

use jiff::Timestamp;
use uuid::Uuid;

use super::state::DeskState;
use crate::{
    bench::{bases_on_spools, count_cuts},
    catalog::{Catalog, Workshop},
    ledger::{Ledger, LedgerError, Ticket},
};

/// Counts what was cut for those tickets of a bill that are sold. Where none was cut, nothing is read.
pub(super) fn count_of_bill(desk: &DeskState, ledger: &mut Ledger, bill: Uuid, now: Timestamp) {
    let tickets = ledger.bill(bill).map(|(_, tickets, _)| tickets).unwrap_or_default();
    if tickets.iter().any(|ticket| ticket.cut_to_length && ticket.state.is_sold()) {
        TableCuts::of(desk).count(ledger, &tickets, now);
    }
}

/// What is needed to count what a sale takes off the spools.
pub(super) struct TableCuts {
    catalog: Arc<Catalog>,
    workshop: Option<Workshop>,
}

impl TableCuts {
    /// By the files as they are now.
    pub(super) fn of(desk: &DeskState) -> Self {
        let catalog = Arc::clone(&desk.catalog.loaded().catalog);
        let workshop = desk.catalog.workshop(&catalog).ok().flatten();
        Self { catalog, workshop }
    }

    /// Lets the ledger know which bases come off a spool. A workshop's file that is wrong or not there changes nothing, since
    /// it may be half written.
    pub(super) fn tell(&self, ledger: &mut Ledger) -> Result<(), LedgerError> {
        match &self.workshop {
            Some(workshop) => ledger.keep_bases_on_spools(&bases_on_spools(&self.catalog, workshop)),
            None => Ok(()),
        }
    }

    /// Counts what was cut for those of `tickets` that are sold. The money was taken: what can't be counted is noted in the log
    /// and does not undo the sale.
    pub(super) fn count(&self, ledger: &mut Ledger, tickets: &[Ticket], now: Timestamp) {
        let Some(workshop) = &self.workshop else { return };
        if let Err(error) = count_cuts(ledger, &self.catalog, workshop, tickets, now) {
            tracing::error!("what was cut at the table could not be counted: {error}");
        }
    }
}
