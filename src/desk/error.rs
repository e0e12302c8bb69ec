//! Why the desk does not start, and how a request is refused.

use std::{io, net::SocketAddr, path::PathBuf};

use axum::{
    http::StatusCode,
    response::{IntoResponse, Response},
};

use super::back::Back;
use crate::{catalog::Mistakes, ledger::LedgerError};

/// Why the desk does not start.
#[derive(Debug, thiserror::Error)]
pub enum DeskError {
    /// The address is taken or not ours.
    #[error("the desk can't answer at {0}: {1}; close the other desk or choose another address with --listen")]
    Listen(SocketAddr, io::Error),
    /// Another desk uses the folder.
    #[error("another desk is running on {0}; close it first or choose another folder with --data")]
    InUse(PathBuf),
    /// The folder can't be used.
    #[error("the desk's folder {0} can't be used: {1}")]
    Data(PathBuf, io::Error),
    /// The catalogue has mistakes and there is no earlier good one.
    #[error("the catalogue in {0} has mistakes:\n{1}")]
    Catalog(PathBuf, Mistakes),
    /// The ledger does not open.
    #[error(transparent)]
    Ledger(#[from] LedgerError),
    /// The system refuses a thread or a watch.
    #[error("the desk can't start: {0}")]
    System(String),
}

/// Why a request is not answered as asked.
#[derive(Debug)]
pub(super) enum Refusal {
    /// The book refuses.
    Ledger(LedgerError),
    /// Asked wrongly: the status and plain words.
    Request(StatusCode, String),
    /// Nobody is signed in; signing in leads back.
    SignIn(Back),
}

impl From<LedgerError> for Refusal {
    fn from(error: LedgerError) -> Self {
        Self::Ledger(error)
    }
}

impl Refusal {
    pub fn bad(words: impl Into<String>) -> Self {
        Self::Request(StatusCode::BAD_REQUEST, words.into())
    }

    fn status_and_words(self) -> (StatusCode, String) {
        match self {
            Self::Request(status, words) => (status, words),
            Self::SignIn(_) => (StatusCode::UNAUTHORIZED, "sign in first".into()),
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
        LedgerError::NoTicket(_) => StatusCode::NOT_FOUND,
        _ => StatusCode::CONFLICT,
    }
}

impl IntoResponse for Refusal {
    fn into_response(self) -> Response {
        if let Self::SignIn(back) = &self {
            return axum::response::Redirect::to(&back.sign_in()).into_response();
        }
        let (status, words) = self.status_and_words();
        super::pages::refused(status, &words)
    }
}
