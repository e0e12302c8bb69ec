//! Practice: the desk works on a copy of the ledger, and nothing of it counts. What is real and what is practice never meet:
//! no request is under way while the one becomes the other, and what was begun on a page of the one is not done in the other.

use std::sync::Arc;

use axum::{
    extract::{Request, State},
    http::{HeaderMap, Method, StatusCode, header},
    middleware::Next,
    response::{IntoResponse, Response},
};

use super::{
    auth::random_key,
    cookies::{practice_cookie, practice_of},
    practice::Running,
    refusal::Refusal,
    state::DeskState,
};
use crate::{lang::message, ledger::BackupError};

/// What begins with this may be asked from any page: it is the same in both, or tells the two apart itself.
const IN_BOTH: [&str; 6] = ["/language", "/sign-in", "/sign-out", "/sign-out-all", "/sessions/", "/link/"];
/// What begins and ends practice waits for everything else.
const OWN: &str = "/practice/";
/// What would be lost when practice ends, and is missed by who relies on it.
const NOT_IN_PRACTICE: [&str; 5] = ["/pin", "/setup", "/kiosks/", "/staff", "/link/pair"];

/// The desk works on a copy from now on.
pub(super) async fn begin(desk: &DeskState) -> Result<(), Refusal> {
    let _alone = desk.practice.gate.write().await;
    if desk.practice.is_on() {
        return Ok(());
    }
    let id = random_key()?;
    let loaded = desk.catalog.loaded();
    let currency = loaded.catalog.table.prices.currency;
    desk.ledger.switch(move |books, now| books.begin_practice(currency, now).map_err(not_begun)).await?;
    desk.company.forget_entries();
    desk.practice.set(Some(Running { id, revision: loaded.revision.clone() }));
    desk.keep_data_private();
    desk.tablets.ask_again();
    desk.beat();
    Ok(())
}

fn not_begun(error: BackupError) -> Refusal {
    match error {
        BackupError::Ledger(error) => error.into(),
        BackupError::Busy => Refusal::Said(StatusCode::INSUFFICIENT_STORAGE, message!("refused-practice-busy")),
        error => {
            let why = message!("refused-practice-not-begun", why = error.to_string());
            Refusal::Said(StatusCode::INSUFFICIENT_STORAGE, why)
        }
    }
}

/// The copy is thrown away, and the desk works on the ledger again.
pub(super) async fn end(desk: &Arc<DeskState>) -> Result<(), Refusal> {
    let _alone = desk.practice.gate.write().await;
    let Some(running) = desk.practice.running() else { return Ok(()) };
    let for_ledger = Arc::clone(desk);
    let ended = desk.ledger.switch(move |books, now| {
        books.end_practice(now);
        let ledger = books.in_use();
        for_ledger.catalog.show_is(ledger.about_show(ledger.show()?.id)?);
        let loaded = for_ledger.catalog.loaded();
        // What was edited meanwhile, the ledger has not heard of yet.
        if loaded.revision != running.revision {
            ledger.take_catalog(&loaded.catalog, &loaded.revision, now)?;
        }
        Ok(())
    });
    if let Err(refusal) = ended.await {
        // The ledger is worked on again all the same; what it has not heard comes with the next start.
        tracing::error!("practice ended, but the catalogue could not be taken over: {refusal:?}");
    }
    desk.company.forget_entries();
    desk.practice.set(None);
    // Whoever looks has left the copy by now.
    desk.ledger.look(|_| Ok(())).await?;
    desk.ledger
        .run(|ledger, _| {
            ledger.throw_practice_away();
            Ok(())
        })
        .await?;
    desk.tablets.ask_again();
    desk.beat();
    Ok(())
}

/// Keeps real and practice apart: what changes something is done only from a page that was shown in the same of the two.
pub(super) async fn keep_apart(State(desk): State<Arc<DeskState>>, request: Request, next: Next) -> Response {
    let path = request.uri().path();
    let looks_only = matches!(*request.method(), Method::GET | Method::HEAD);
    if !looks_only && !path.starts_with(OWN) {
        let _as_it_is = desk.practice.as_it_is().await;
        return match refused(desk.practice.running().as_ref(), path, request.headers()) {
            Some(refusal) => refusal.into_response(),
            None => next.run(request).await,
        };
    }
    // Looked at before the page is made: a page that is newer than that is not believed, and asked for again.
    let id = desk.practice.running().map(|running| running.id);
    let known = practice_of(request.headers());
    let mut response = next.run(request).await;
    let kind = response.headers().get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok());
    if looks_only && known != id && kind.is_some_and(|kind| kind.starts_with("text/html")) {
        response.headers_mut().append(header::SET_COOKIE, practice_cookie(id.as_deref()));
    }
    response
}

/// Why something is not done now.
fn refused(running: Option<&Running>, path: &str, headers: &HeaderMap) -> Option<Refusal> {
    let begins = |with: &str| path.starts_with(with);
    if running.is_some() && NOT_IN_PRACTICE.into_iter().any(begins) {
        let status = if begins("/link/") { StatusCode::SERVICE_UNAVAILABLE } else { StatusCode::CONFLICT };
        return Some(Refusal::Said(status, message!("refused-lost-in-practice")));
    }
    if IN_BOTH.into_iter().any(begins) || practice_of(headers).as_deref() == running.map(|one| one.id.as_str()) {
        return None;
    }
    let why = match running {
        Some(_) => message!("refused-practice-began"),
        None => message!("refused-practice-ended"),
    };
    Some(Refusal::Said(StatusCode::CONFLICT, why))
}

#[cfg(test)]
mod tests {
    use axum::http::HeaderValue;

    use super::*;

    fn status(running: Option<&str>, path: &str, cookie: &'static str) -> Option<StatusCode> {
        let running = running.map(|id| Running { id: id.to_owned(), revision: String::new() });
        let cookie = (!cookie.is_empty()).then(|| (header::COOKIE, HeaderValue::from_static(cookie)));
        refused(running.as_ref(), path, &cookie.into_iter().collect()).map(|refusal| match refusal {
            Refusal::Said(status, _) => status,
            other => panic!("{other:?}"),
        })
    }

    #[test]
    fn what_was_begun_in_the_one_is_not_done_in_the_other() {
        let conflict = Some(StatusCode::CONFLICT);
        assert_eq!(status(None, "/tickets/1/ring-up", ""), None);
        assert_eq!(status(Some("one"), "/tickets/1/ring-up", "seller=1; practice=one"), None);
        assert_eq!(status(Some("one"), "/tickets/1/ring-up", "seller=1"), conflict, "a real page after practice began");
        assert_eq!(status(None, "/tickets/1/ring-up", "practice=one"), conflict, "a page of practice after it ended");
        assert_eq!(status(Some("two"), "/tickets/1/ring-up", "practice=one"), conflict, "of an earlier practice");
        assert_eq!(status(Some("one"), "/link/tickets", ""), None, "tablets say themselves which of the two it is");
        for path in ["/sign-in", "/sign-out", "/sessions/12/end"] {
            assert_eq!(status(Some("one"), path, ""), None, "{path}");
        }
        for path in ["/pin", "/kiosks/code", "/kiosks/3/release", "/staff/helper", "/setup"] {
            assert_eq!(status(Some("one"), path, "practice=one"), conflict, "{path}");
        }
        assert_eq!(status(Some("one"), "/link/pair", ""), Some(StatusCode::SERVICE_UNAVAILABLE));
    }
}
