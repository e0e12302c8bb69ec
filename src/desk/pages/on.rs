//! What somebody at the desk does to one thing by a form of its page: who it is, and to which.

use std::sync::Arc;

use axum::{
    RequestPartsExt,
    extract::{FromRequestParts, Path, rejection::PathRejection},
    http::request::Parts,
    response::{IntoResponse, Response},
};
use uuid::Uuid;

use crate::{
    desk::{refusal::Refusal, seller::Seller, state::DeskState},
    lang::Texts,
};

/// What a page answers.
pub(super) type Answered = Result<Response, Refusal>;

/// Who does something, and to which ticket or bill.
pub(super) struct On {
    pub(super) desk: Arc<DeskState>,
    pub(super) seller: Seller,
    pub(super) id: Uuid,
}

impl On {
    /// The texts of who does it.
    pub(super) const fn texts(&self) -> &'static Texts {
        self.seller.texts
    }
}

impl FromRequestParts<Arc<DeskState>> for On {
    type Rejection = Response;
    async fn from_request_parts(parts: &mut Parts, desk: &Arc<DeskState>) -> Result<Self, Response> {
        let seller = Seller::from_request_parts(parts, desk).await.map_err(IntoResponse::into_response)?;
        let id = parts.extract::<Path<Uuid>>().await;
        let Path(id) = id.map_err(|error: PathRejection| error.into_response())?;
        Ok(Self { desk: Arc::clone(desk), seller, id })
    }
}
