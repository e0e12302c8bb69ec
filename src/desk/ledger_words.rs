//! Why the ledger refuses, in the language of whoever reads it.

use crate::{lang::Texts, ledger::LedgerError};

/// The refusal as the beginning of a sentence, without a full stop.
pub(super) fn ledger_words(_texts: &Texts, error: &LedgerError) -> String {
    error.to_string()
}
