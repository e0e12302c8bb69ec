//! Changing the PIN of who is signed in.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::State,
    http::{HeaderMap, StatusCode},
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use serde::Deserialize;

use super::{
    frame::{Tab, page},
    sign_in::{alert, kept_under, pin_input},
};
use crate::{
    desk::{
        check_pin::check_pin,
        connections::Caller,
        pin_rules::fault_of,
        refusal::Refusal,
        seller::{Seller, guesser},
        state::DeskState,
    },
    ledger::Role,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/pin", get(ask).post(change))
}

async fn ask(State(desk): State<Arc<DeskState>>, seller: Seller) -> Response {
    page(&desk, Tab::Kiosks, "Change the PIN", &content(&seller, None)).into_response()
}

fn content(seller: &Seller, trouble: Option<&str>) -> Markup {
    let is_sellers = seller.role == Role::Seller;
    html! {
        section.card.ask {
            h1 { @if is_sellers { "Change the PIN" } @else { "Change the PIN of " (seller.name()) } }
            p {
                "Every other phone and laptop on which you are signed in is signed out."
                @if is_sellers {
                    " A tablet that is out of reach goes on with the old PIN until the desk has told it the new one."
                }
            }
            (alert(trouble))
            form.stack method="post" action="/pin" {
                label { "The PIN now" (pin_input("now", "current-password")) }
                label { "The new PIN, 6 to 12 digits without a pattern" (kept_under(seller.name())) (pin_input("pin", "new-password")) }
                label { "The new PIN again" (pin_input("again", "new-password")) }
                div.row {
                    button.main { "Change it" }
                    a.button.quiet href="/kiosks" { "Go back" }
                }
            }
        }
    }
}

#[derive(Deserialize)]
struct Change {
    now: String,
    pin: String,
    again: String,
}

async fn change(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    caller: Caller,
    headers: HeaderMap,
    Form(form): Form<Change>,
) -> Result<Response, Refusal> {
    let again = |status: StatusCode, words: &str| {
        Ok((status, page(&desk, Tab::Kiosks, "Change the PIN", &content(&seller, Some(words)))).into_response())
    };
    // A phone left lying about is signed in; whoever finds it must not be able to lock its owner out.
    let guesser = guesser(&desk, &caller, &headers).await?;
    if let Err((status, words)) = check_pin(&desk, &caller, guesser.as_ref(), Some(seller.name()), form.now).await? {
        return again(status, &words);
    }
    if let Some(words) = fault_of(&form.pin) {
        return again(StatusCode::BAD_REQUEST, words);
    }
    if form.pin != form.again {
        return again(StatusCode::BAD_REQUEST, "The two are not the same. Type the new PIN twice.");
    }
    let hash = desk.auth.hash_pin(form.pin).await?;
    let (whose, here) = (seller.name().to_owned(), seller.token_hash.clone());
    desk.ledger.run_by(&seller, move |ledger, now| ledger.change_pin(&whose, &hash, Some(&here), now)).await?;
    Ok(Redirect::to("/kiosks").into_response())
}
