//! Files that the bench's pages offer.

use axum::{
    http::{StatusCode, header},
    response::{IntoResponse, Response},
};

use crate::{desk::refusal::Refusal, lang::message};

/// A file with its name.
pub(super) fn saved(name: &str, kind: &str, bytes: Vec<u8>) -> Response {
    let disposition = format!("attachment; filename=\"{name}\"");
    ([(header::CONTENT_TYPE, kind.to_owned()), (header::CONTENT_DISPOSITION, disposition)], bytes).into_response()
}

/// A file could not be made.
pub(super) fn failed(error: &dyn std::fmt::Display) -> Refusal {
    tracing::error!("a file could not be written: {error}");
    Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("refused-no-file"))
}
