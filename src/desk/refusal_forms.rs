//! How a refusal looks: a page for the seller, a message in JSON for a tablet.

use std::sync::Arc;

use axum::{
    Json,
    body::{Body, to_bytes},
    extract::Request,
    http::header,
    middleware::Next,
    response::{Html, IntoResponse, Response},
};
use maud::html;

use super::{
    language::InLanguage,
    pages::{ask_seller, plain_page, sentence},
    refusal::Refusal,
};
use crate::{
    lang::{Lang, Texts, say},
    link::wire::Refused,
    quoting::one_line,
};

/// What tablets ask begins with this.
pub(super) const OF_TABLETS: &str = "/link/";
/// No refusal has more words than this, in bytes.
const LONGEST_WORDS: usize = 64 * 1024;

/// Puts every refusal into the form and the language that whoever asked can read. It has to see the answers of everything
/// else.
pub(super) async fn put_into_form(request: Request, next: Next) -> Response {
    let of_a_tablet = request.uri().path().starts_with(OF_TABLETS);
    let InLanguage(texts) = InLanguage::of(request.headers());
    let mut response = next.run(request).await;
    let refusal = response.extensions_mut().remove::<Arc<Refusal>>();
    if let Some(Refusal::AskSeller(_, asked)) = refusal.as_deref() {
        return with_body_of(response, ask_seller(texts, asked).into_response());
    }
    let is_refused = response.status().is_client_error() || response.status().is_server_error();
    let kind = response.headers().get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok()).unwrap_or_default();
    let is_in_form = if of_a_tablet { kind == "application/json" } else { !kind.starts_with("text/plain") };
    if !is_refused || (refusal.is_none() && is_in_form) {
        return response;
    }
    let (parts, body) = response.into_parts();
    // What reads messages and forms refuses in its own words, which say where one is wrong and repeat what stands there.
    let reason = match refusal {
        // A tablet words what it tells its guest itself, and the log and a technician read English.
        Some(refusal) if of_a_tablet => refusal.words(Texts::of(Lang::En)),
        Some(refusal) => refusal.words(texts),
        None => {
            let words = to_bytes(body, LONGEST_WORDS).await.unwrap_or_default();
            let why = one_line(&String::from_utf8_lossy(&words));
            match (of_a_tablet, why.is_empty()) {
                (true, _) => why,
                (false, true) => say!(texts, "refused-not-read"),
                (false, false) => say!(texts, "refused-not-read-because", why = why),
            }
        }
    };
    let form =
        if of_a_tablet { Json(Refused { reason }).into_response() } else { not_done(texts, &reason).into_response() };
    with_body_of(Response::from_parts(parts, Body::empty()), form)
}

/// Status and headers of the one, body of the other.
fn with_body_of(response: Response, other: Response) -> Response {
    let (mut parts, _) = response.into_parts();
    let (others, body) = other.into_parts();
    // The length is that of the body that goes.
    parts.headers.remove(header::CONTENT_LENGTH);
    for name in [header::CONTENT_TYPE, header::CONTENT_LENGTH] {
        if let Some(value) = others.headers.get(&name) {
            parts.headers.insert(name, value.clone());
        }
    }
    Response::from_parts(parts, body)
}

/// Says why a request was refused, and leads back.
fn not_done(texts: &Texts, words: &str) -> Html<String> {
    plain_page(
        texts,
        &say!(texts, "not-done-title"),
        &html! {
            h1 { (say!(texts, "not-done")) }
            p.trouble role="alert" { (sentence(words)) }
            p { a.button href="/tickets" { (say!(texts, "to-tickets")) } }
        },
    )
}
