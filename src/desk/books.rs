//! The ledger that is worked on: the real one, or while somebody practises a copy beside it.

use jiff::{SignedDuration, Timestamp};

use crate::{
    ledger::{BackupError, Ledger, LedgerError},
    money::Currency,
};

/// The real ledger, and the copy of it on which somebody practises.
pub(super) struct Books {
    real: Ledger,
    practice: Option<Ledger>,
}

impl Books {
    pub(super) fn new(real: Ledger) -> Self {
        Self { real, practice: None }
    }

    /// The one that is worked on.
    pub(super) fn in_use(&mut self) -> &mut Ledger {
        self.practice.as_mut().unwrap_or(&mut self.real)
    }

    /// From now on a copy is worked on.
    pub(super) fn begin_practice(&mut self, currency: Currency, now: Timestamp) -> Result<(), BackupError> {
        if self.practice.is_none() {
            self.practice = Some(self.real.begin_practice(currency, now)?);
        }
        Ok(())
    }

    /// From now on the real one is worked on again.
    pub(super) fn end_practice(&mut self, now: Timestamp) {
        if let Some(practised) = self.practice.take() {
            self.real.end_practice(&practised, now);
        }
    }

    /// The clock was set: what is held in either goes along with it.
    pub(super) fn clock_was_set(&mut self, by: SignedDuration, now: Timestamp) -> Result<(), LedgerError> {
        self.real.clock_was_set(by, now)?;
        self.practice.as_mut().map_or(Ok(()), |practice| practice.clock_was_set(by, now))
    }

    /// Closes the ledgers. Copied then, the real one's file is all of it; a copy that is there tells the next start that
    /// practice was cut short.
    pub(super) fn close(self) {
        if let Err(error) = self.real.merge() {
            tracing::warn!("the ledger's write-ahead file could not be merged: {error}");
        }
    }
}
