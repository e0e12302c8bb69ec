//! Who is signed in, and signing out.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::{HeaderMap, StatusCode, header},
    response::{IntoResponse, Redirect, Response},
    routing::post,
};
use jiff::Timestamp;
use maud::{Markup, html};

use super::words;
use crate::{
    desk::{
        cookies::session_cookie,
        refusal::Refusal,
        seller::{Owner, Seller, is_running},
        signed_in::name_of,
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::{Browser, Ledger, LedgerError, Role},
};

/// Digits of a browser's key hash that stand in addresses.
const SHOWN: usize = 16;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/sign-out", post(sign_out))
        .route("/sign-out-all", post(sign_out_all))
        .route("/sessions/{browser}/end", post(end_one))
}

/// What stands between program and system in a browser's name, as the ledger has it.
const ON: &str = " on ";
/// The name of a browser that does not say what it is.
const UNNAMED: &str = "A browser";

/// What a browser calls itself, in two words. Source: the usual parts of `User-Agent`, from memory.
pub(super) fn browser_name(headers: &HeaderMap) -> String {
    let agent = headers.get(header::USER_AGENT).and_then(|agent| agent.to_str().ok()).unwrap_or_default();
    // The first that is found counts: later ones are named by others as well.
    let find =
        |names: &[(&str, &'static str)]| names.iter().find(|(part, _)| agent.contains(part)).map(|(_, name)| *name);
    let program = find(&[
        ("Edg", "Edge"),
        ("OPR/", "Opera"),
        ("Firefox", "Firefox"),
        ("FxiOS", "Firefox"),
        ("Chrom", "Chrome"),
        ("CriOS", "Chrome"),
        ("Safari", "Safari"),
    ]);
    let system = find(&[
        ("iPhone", "iPhone"),
        ("iPad", "iPad"),
        ("Android", "Android"),
        ("Windows", "Windows"),
        ("Mac OS X", "Mac"),
        ("Linux", "Linux"),
    ]);
    match (program, system) {
        (Some(program), Some(system)) => format!("{program}{ON}{system}"),
        (Some(one), None) | (None, Some(one)) => one.to_owned(),
        (None, None) => UNNAMED.to_owned(),
    }
}

/// The same in the reader's language.
fn name_in(texts: &Texts, name: &str) -> String {
    match name.split_once(ON) {
        Some((program, system)) => say!(texts, "browser-on", program = program, system = system),
        None if name == UNNAMED => say!(texts, "browser-unnamed"),
        None => name.to_owned(),
    }
}

/// The browsers whose session runs.
pub(super) fn running(ledger: &Ledger, now: Timestamp) -> Result<Vec<Browser>, LedgerError> {
    let mut running = Vec::new();
    for browser in ledger.browsers()? {
        let session = browser.session.as_deref().map(|hash| ledger.session(hash)).transpose()?.flatten();
        if session.is_some_and(|session| is_running(&session, now)) {
            running.push(browser);
        }
    }
    Ok(running)
}

/// The list of them, for the page of `seller`; a helper sees their own. Where the seller works `alone`, nobody is named.
pub(super) fn list(browsers: &[Browser], seller: &Seller, alone: bool, now: Timestamp) -> Markup {
    let (texts, is_sellers) = (seller.texts, seller.role == Role::Seller);
    let heading = if is_sellers { say!(texts, "devices") } else { say!(texts, "devices-own") };
    let shown: Vec<&Browser> = browsers.iter().filter(|one| is_sellers || one.whose() == seller.name()).collect();
    html! {
        section.card aria-label=(heading) {
            h2 { (heading) " " span.tally { (shown.len()) } }
            ul.lying {
                @for browser in shown {
                    li.row {
                        span.what {
                            @if is_sellers && !alone {
                                (say!(texts, "device-of", name = name_of(texts, browser.whose()))) " "
                            }
                            strong { (name_in(texts, &browser.name)) } " "
                            (say!(texts, "device-at", address = browser.address.as_str(), time = words::clock(texts, browser.last, now)))
                            @if browser.session.as_ref() == Some(&seller.token_hash) { span.good { (say!(texts, "device-this")) } }
                        }
                        form method="post" action={ "/sessions/" (&browser.key_hash[..SHOWN.min(browser.key_hash.len())]) "/end" } {
                            button.quiet { (say!(texts, "sign-out")) }
                        }
                    }
                }
            }
            div.row.wraps {
                @if is_sellers {
                    form method="post" action="/sign-out-all" {
                        button.quiet { @if alone { (say!(texts, "sign-out-everywhere")) } @else { (say!(texts, "sign-everybody-out")) } }
                    }
                    a.button.quiet href="/pin" { (say!(texts, "change-pin")) }
                    a.button.quiet href="/staff" { (say!(texts, "staff-title")) }
                } @else {
                    a.button.quiet href="/pin" { (say!(texts, "change-own-pin")) }
                }
            }
        }
    }
}

async fn end_one(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(shown): Path<String>,
) -> Result<Response, Refusal> {
    // Others' are the seller's to end; to a helper they are not there.
    let (is_sellers, own) = (seller.role == Role::Seller, seller.name().to_owned());
    let ended = desk
        .ledger
        .run_by(&seller, move |ledger, now| {
            let is_theirs = |browser: &Browser| is_sellers || browser.whose() == own;
            let of =
                |browser: &Browser| shown.len() >= SHOWN && browser.key_hash.starts_with(&shown) && is_theirs(browser);
            let session = running(ledger, now)?.into_iter().find(of).and_then(|browser| browser.session);
            if let Some(session) = &session {
                ledger.end_sessions(Some(session), now)?;
            }
            Ok(session)
        })
        .await?;
    match ended {
        Some(session) if session == seller.token_hash => Ok(signed_out()),
        Some(_) => Ok(Redirect::to("/kiosks").into_response()),
        None => Err(Refusal::Said(StatusCode::NOT_FOUND, message!("refused-no-device"))),
    }
}

async fn sign_out(State(desk): State<Arc<DeskState>>, seller: Seller) -> Result<Response, Refusal> {
    end(&desk, &seller, Some(seller.token_hash.clone())).await
}

async fn sign_out_all(State(desk): State<Arc<DeskState>>, owner: Owner) -> Result<Response, Refusal> {
    end(&desk, &owner.0, None).await
}

async fn end(desk: &DeskState, seller: &Seller, token_hash: Option<String>) -> Result<Response, Refusal> {
    desk.ledger.run_by(seller, move |ledger, now| ledger.end_sessions(token_hash.as_deref(), now)).await?;
    Ok(signed_out())
}

fn signed_out() -> Response {
    ([(header::SET_COOKIE, session_cookie(None))], Redirect::to("/sign-in")).into_response()
}

#[cfg(test)]
mod tests {
    use axum::http::HeaderValue;

    use super::*;
    use crate::lang::Lang;

    #[test]
    fn browsers_are_named_in_two_words() {
        for (agent, name) in [
            ("Mozilla/5.0 (Android 15; Mobile; rv:140.0) Gecko/140.0 Firefox/140.0", "Firefox on Android"),
            (
                "Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0 Safari/537.36",
                "Chrome on Linux",
            ),
            (
                "Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 Version/18.5 Safari/604.1",
                "Safari on iPhone",
            ),
            ("<script>", "A browser"),
            ("", "A browser"),
        ] {
            let headers = [(header::USER_AGENT, HeaderValue::from_static(agent))].into_iter().collect();
            assert_eq!(browser_name(&headers), name, "{agent}");
            assert_eq!(name_in(Texts::of(Lang::En), name), name);
            assert_ne!(name_in(Texts::of(Lang::De), name), name);
        }
    }
}
