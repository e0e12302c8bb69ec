//! Why a request is refused: the status and plain words. How that looks is not decided here: `refused` makes a page of it
//! for the seller and a message for a tablet.

use axum::{
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
};

use super::return_page::ReturnPage;
use crate::{ledger::LedgerError, quoting::one_line};

/// Why a request is not answered as asked.
#[derive(Debug)]
pub(super) enum Refusal {
    /// The ledger refuses.
    Ledger(LedgerError),
    /// Asked wrongly: the status and plain words.
    Request(StatusCode, String),
    /// Nobody is signed in; signing in leads back.
    SignIn(ReturnPage),
    /// Only the seller does this; their PIN is asked for.
    AskSeller(StatusCode, Box<SellerAsked>),
}

/// What the seller is asked to type their PIN for, on a helper's phone.
#[derive(Debug, Clone)]
pub(super) struct SellerAsked {
    /// What is to be done, as the beginning of a sentence.
    pub what: &'static str,
    /// Whose phone it is.
    pub helper: String,
    /// Where the form was sent, with these fields.
    pub action: String,
    pub fields: Vec<(String, String)>,
    /// The page on which it stood.
    pub back: String,
    /// What went wrong with an earlier PIN.
    pub trouble: Option<String>,
}

impl From<LedgerError> for Refusal {
    fn from(error: LedgerError) -> Self {
        Self::Ledger(error)
    }
}

impl Refusal {
    pub(super) fn bad(words: impl Into<String>) -> Self {
        Self::Request(StatusCode::BAD_REQUEST, words.into())
    }

    fn status_and_words(self) -> (StatusCode, String) {
        match self {
            Self::Request(status, words) => (status, words),
            Self::SignIn(_) => (StatusCode::UNAUTHORIZED, "sign in first".into()),
            Self::AskSeller(status, asked) => (status, format!("{} is the seller’s to do", asked.what)),
            Self::Ledger(error) => {
                let status = status_of(&error);
                if status.is_server_error() {
                    tracing::error!("{error}");
                }
                (status, error.to_string())
            }
        }
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

/// The words of a refusal, kept beside the answer until `refused` puts them into their form.
#[derive(Debug, Clone)]
pub(super) struct Words(pub String);

impl IntoResponse for Refusal {
    fn into_response(self) -> Response {
        if let Self::SignIn(back) = &self {
            return Redirect::to(&back.sign_in()).into_response();
        }
        let asked = if let Self::AskSeller(_, asked) = &self { Some(asked.clone()) } else { None };
        let (status, words) = self.status_and_words();
        let words = one_line(&words);
        let mut response = (status, words.clone()).into_response();
        if let Some(asked) = asked {
            response.extensions_mut().insert(*asked);
        }
        response.extensions_mut().insert(Words(words));
        response
    }
}
