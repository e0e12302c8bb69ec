//! An address that leads nowhere: mistyped, or of something that is gone.

use std::sync::Arc;

use axum::{
    extract::{FromRequestParts, Request, State},
    http::{HeaderMap, Method, StatusCode, header, request::Parts},
    middleware::Next,
    response::{IntoResponse, Response},
};
use maud::html;

use super::frame::{Tab, page, plain_page};
use crate::{
    desk::{language::InLanguage, refusal::Refusal, refusal_forms::OF_TABLETS, seller::Seller, state::DeskState},
    lang::{message, say},
    quoting::excerpt,
};

/// What no route has.
pub(in crate::desk) async fn nowhere(State(desk): State<Arc<DeskState>>, request: Request) -> Response {
    answer(&desk, request.into_parts().0).await
}

/// Lets an address that a route has but can't read lead to the same page, as one with a number where a ticket's name should
/// be, or one that only a form is sent to.
pub(in crate::desk) async fn mistyped(State(desk): State<Arc<DeskState>>, request: Request, next: Next) -> Response {
    // What is asked behind the path is not a matter of the address.
    let looks = matches!(*request.method(), Method::GET | Method::HEAD)
        && request.uri().query().is_none()
        && !request.uri().path().starts_with(OF_TABLETS);
    let (parts, body) = request.into_parts();
    let asked = looks.then(|| parts.clone());
    let response = next.run(Request::from_parts(parts, body)).await;
    match asked {
        Some(parts) if is_unread(&response) => answer(&desk, parts).await,
        _ => response,
    }
}

/// Whether what reads addresses has refused one in its own words.
fn is_unread(response: &Response) -> bool {
    let is_page = |headers: &HeaderMap| {
        headers.get(header::CONTENT_TYPE).is_some_and(|kind| !kind.as_bytes().starts_with(b"text/plain"))
    };
    matches!(response.status(), StatusCode::BAD_REQUEST | StatusCode::METHOD_NOT_ALLOWED)
        && response.extensions().get::<Arc<Refusal>>().is_none()
        && !is_page(response.headers())
}

/// The page, with the navigation for whoever is signed in.
async fn answer(desk: &Arc<DeskState>, mut parts: Parts) -> Response {
    let path = excerpt(parts.uri.path());
    if path.starts_with(OF_TABLETS) {
        return Refusal::Said(StatusCode::NOT_FOUND, message!("refused-nowhere", path = path)).into_response();
    }
    let InLanguage(texts) = InLanguage::of(&parts.headers);
    let title = say!(texts, "nowhere");
    let main = html! {
        section.card.ask {
            h1 { (title) }
            p role="alert" { (say!(texts, "nowhere-text", path = path)) }
            p { a.button href="/tickets" { (say!(texts, "to-tickets")) } }
        }
    };
    match Seller::from_request_parts(&mut parts, desk).await {
        Ok(_) => (StatusCode::NOT_FOUND, page(desk, texts, Tab::Nowhere, &title, &main)).into_response(),
        Err(_) => (StatusCode::NOT_FOUND, plain_page(texts, &title, &main)).into_response(),
    }
}
