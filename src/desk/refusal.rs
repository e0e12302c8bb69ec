//! Why a request is refused: the status and plain words. How that looks is not decided here: `refused` makes a page of it
//! for the seller and a message for a tablet.

use std::sync::Arc;

use axum::{
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
};

use super::{error::DeskError, ledger_words::ledger_words, return_page::ReturnPage};
use crate::{
    lang::{Message, Texts, message, say},
    ledger::LedgerError,
    quoting::one_line,
};

/// Why a request is not answered as asked.
#[derive(Debug)]
pub(super) enum Refusal {
    /// The ledger refuses.
    Ledger(LedgerError),
    /// Asked wrongly: the status, and what is said of it.
    Said(StatusCode, Message),
    /// Nobody is signed in; signing in leads back.
    SignIn(ReturnPage),
    /// Only the seller does this; their PIN is asked for.
    AskSeller(StatusCode, Box<SellerAsked>),
}

/// What the seller is asked to type their PIN for, on a helper's phone.
#[derive(Debug, Clone)]
pub(super) struct SellerAsked {
    /// What is to be done, as the beginning of a sentence.
    pub what: Message,
    /// Whose phone it is.
    pub helper: String,
    /// Where the form was sent, with these fields.
    pub action: String,
    pub fields: Vec<(String, String)>,
    /// The page on which it stood.
    pub back: String,
    /// What went wrong with an earlier PIN.
    pub trouble: Option<Message>,
}

impl From<LedgerError> for Refusal {
    fn from(error: LedgerError) -> Self {
        Self::Ledger(error)
    }
}

impl From<DeskError> for Refusal {
    fn from(error: DeskError) -> Self {
        let why = match error {
            DeskError::Ledger(error) => return error.into(),
            DeskError::System(why) => why,
            other => other.to_string(),
        };
        Self::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("refused-system", why = why))
    }
}

impl Refusal {
    /// A request that makes no sense.
    pub(super) const fn wrong(message: Message) -> Self {
        Self::Said(StatusCode::BAD_REQUEST, message)
    }

    fn status(&self) -> StatusCode {
        match self {
            Self::Said(status, _) | Self::AskSeller(status, _) => *status,
            Self::SignIn(_) => StatusCode::UNAUTHORIZED,
            Self::Ledger(error) => status_of(error),
        }
    }

    /// Why, as the beginning of a sentence without a full stop, in one line.
    pub(super) fn words(&self, texts: &Texts) -> String {
        one_line(&match self {
            Self::Said(_, message) => texts.say(message),
            Self::SignIn(_) => say!(texts, "refused-sign-in"),
            Self::AskSeller(_, asked) => say!(texts, "sellers-to-do", what = texts.say(&asked.what)),
            Self::Ledger(error) => ledger_words(texts, error),
        })
    }
}

/// Whether the request is at fault, or the disk.
pub(super) const fn status_of(error: &LedgerError) -> StatusCode {
    match error {
        LedgerError::Database(_)
        | LedgerError::Damaged(_)
        | LedgerError::DamagedFile { .. }
        | LedgerError::Emptied(_)
        | LedgerError::FoundDamaged
        | LedgerError::NotKept(_)
        | LedgerError::Panicked
        | LedgerError::Unreadable { .. }
        | LedgerError::OldLibrary(_)
        | LedgerError::Newer { .. } => StatusCode::INTERNAL_SERVER_ERROR,
        LedgerError::DiskFull => StatusCode::INSUFFICIENT_STORAGE,
        LedgerError::NoTicket(_) | LedgerError::NoBill(_) => StatusCode::NOT_FOUND,
        _ => StatusCode::CONFLICT,
    }
}

impl IntoResponse for Refusal {
    fn into_response(self) -> Response {
        if let Self::SignIn(back) = &self {
            return Redirect::to(&back.sign_in()).into_response();
        }
        let status = self.status();
        if let (Self::Ledger(error), true) = (&self, status.is_server_error()) {
            tracing::error!("{error}");
        }
        let mut response = status.into_response();
        response.extensions_mut().insert(Arc::new(self));
        response
    }
}
