//! The seller's pages. Each file has one page with its routes; `frame` is what they share.

mod card;
mod caution_signs;
mod close;
mod confirm;
mod enter;
mod frame;
mod kiosks;
mod pin;
mod queue;
mod sessions;
mod show;
mod ticket;
mod trays;
mod words;

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::{HeaderMap, StatusCode, Uri},
    response::{IntoResponse, Redirect, Response},
    routing::get,
};

use super::{refusal::Refusal, seller::Seller, state::DeskState};
pub(super) use frame::plain_page;
pub(super) use words::sentence;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/", get(async || Redirect::to("/tickets")))
        .route("/pictures/{name}", get(picture))
        .merge(enter::routes())
        .merge(pin::routes())
        .merge(sessions::routes())
        .merge(queue::routes())
        .merge(ticket::routes())
        .merge(trays::routes())
        .merge(card::routes())
        .merge(show::routes())
        .merge(close::routes())
        .merge(kiosks::routes())
}

/// An address that leads nowhere.
pub(super) async fn nowhere(uri: Uri) -> Refusal {
    Refusal::Request(StatusCode::NOT_FOUND, format!("there is no page {} at this desk", uri.path()))
}

async fn picture(
    State(house): State<Arc<DeskState>>,
    _seller: Seller,
    Path(name): Path<String>,
    headers: HeaderMap,
) -> Response {
    match house.shelf.loaded().pictures.get(&name) {
        Some(picture) => house.gallery.drop_picture(&name, picture, &headers).await,
        None => StatusCode::NOT_FOUND.into_response(),
    }
}
