//! Forms that had a PIN in them and were refused. A browser keeps what it sent until it has gone on to another address: a
//! page that is loaded anew, or gone back to, would send the PIN again. So such an answer is kept here for a moment, for the
//! session that got it, and the browser is led to it. What a page's script sends leaves no trace in the browser and is
//! answered at once.

use std::{
    sync::{Arc, OnceLock},
    time::Instant,
};

use axum::{
    Router,
    body::{Body, to_bytes},
    extract::{Path, Request, State},
    http::{HeaderMap, HeaderValue, StatusCode, header},
    middleware::Next,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};

use super::{
    auth::random_key, cookies::session_of, kept_answers::Kept, return_page::path_of_address, seller::Seller,
    state::DeskState,
};

/// Addresses of kept answers begin with this.
const ADDRESS: &str = "/answers/";
/// What the pages' script says when it sends a form in place.
const IN_PLACE: &str = "x-in-place";
/// No page is longer.
const LONGEST: usize = 4 * 1024 * 1024;
/// Where a form without an address of its own to return to stood.
const TICKETS: &str = "/tickets";

/// What a handler leaves on its request where a PIN came with it: the page to return to.
#[derive(Clone, Default)]
pub(super) struct PinCame(Arc<OnceLock<String>>);

impl PinCame {
    /// A PIN came with this request, from a form that belongs to `page`.
    pub(super) fn with(&self, page: &str) {
        // Said twice, it is the same page.
        let _ = self.0.set(page.to_owned());
    }
}

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/answers/{key}", get(answer))
}

/// The answer once more; the page that it belongs to where that renews itself, and where the answer is gone.
async fn answer(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(key): Path<String>,
    headers: HeaderMap,
) -> Response {
    let renews = headers.contains_key("x-live");
    let told = desk.answers.look(&key, &seller.token_hash, |kept| {
        if renews {
            return Redirect::to(&kept.page).into_response();
        }
        let mut response = (kept.status, Body::from(kept.body.clone())).into_response();
        if let Some(kind) = &kept.kind {
            response.headers_mut().insert(header::CONTENT_TYPE, kind.clone());
        }
        response
    });
    told.unwrap_or_else(|| Redirect::to(TICKETS).into_response())
}

/// Leads a browser away from a form that had a PIN in it, also where that was refused. It has to see answers as they go out.
pub(super) async fn lead_away_from_pins(
    State(desk): State<Arc<DeskState>>,
    mut request: Request,
    next: Next,
) -> Response {
    let session = session_of(request.headers());
    if let Some(session) = &session {
        stand_on_its_page(&desk, request.headers_mut(), session);
    }
    let is_in_place = request.headers().contains_key(IN_PLACE);
    let pin_came = PinCame::default();
    request.extensions_mut().insert(pin_came.clone());
    let response = next.run(request).await;
    let is_refused = response.status().is_client_error() || response.status().is_server_error();
    match (session, pin_came.0.get(), random_key()) {
        (Some(session), Some(page), Ok(key)) if is_refused && !is_in_place => {
            kept(&desk, session, key, page.clone(), response).await
        }
        _ => response,
    }
}

/// A form on a kept answer stands, for whoever asks where it came from, on the page that the answer belongs to.
fn stand_on_its_page(desk: &DeskState, headers: &mut HeaderMap, session: &str) {
    let from = headers.get(header::REFERER).and_then(|from| from.to_str().ok());
    let Some(path) = from.and_then(path_of_address) else { return };
    let Some(key) = path.strip_prefix(ADDRESS) else { return };
    let page = desk.answers.look(key, session, |kept| HeaderValue::from_str(&kept.page).ok()).flatten();
    headers.insert(header::REFERER, page.unwrap_or(HeaderValue::from_static(TICKETS)));
}

async fn kept(desk: &DeskState, session: String, key: String, page: String, response: Response) -> Response {
    let (mut parts, body) = response.into_parts();
    let mut address = page.clone();
    if let Ok(body) = to_bytes(body, LONGEST).await {
        address = format!("{ADDRESS}{key}");
        let kind = parts.headers.get(header::CONTENT_TYPE).cloned();
        let since = Instant::now();
        desk.answers.keep(Kept { key, session, since, status: parts.status, kind, body, page });
    }
    parts.status = StatusCode::SEE_OTHER;
    parts.headers.remove(header::CONTENT_TYPE);
    parts.headers.remove(header::CONTENT_LENGTH);
    if let Ok(address) = HeaderValue::from_str(&address) {
        parts.headers.insert(header::LOCATION, address);
    }
    Response::from_parts(parts, Body::empty())
}
