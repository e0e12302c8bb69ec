//! Changing the PIN.

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
    sign_in::{alert, is_pin, kept_pin, pin_input},
};
use crate::desk::{connections::Caller, pin_rules::fault_of, refusal::Refusal, seller::Seller, state::DeskState};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/pin", get(ask).post(change))
}

async fn ask(State(desk): State<Arc<DeskState>>, _seller: Seller) -> Response {
    page(&desk, Tab::Kiosks, "Change the PIN", &content(None)).into_response()
}

fn content(trouble: Option<&str>) -> Markup {
    html! {
        section.card.ask {
            h1 { "Change the PIN" }
            p { "Every other phone and laptop is signed out. A tablet that is out of reach goes on with the old PIN until the desk has told it the new one." }
            (alert(trouble))
            form.stack method="post" action="/pin" {
                label { "The PIN now" (pin_input("now", "current-password")) }
                label { "The new PIN, 6 to 12 digits without a pattern" (pin_input("pin", "new-password")) }
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
        Ok((status, page(&desk, Tab::Kiosks, "Change the PIN", &content(Some(words)))).into_response())
    };
    let kept = kept_pin(&desk).await?.unwrap_or_default();
    // A phone left lying about is signed in; whoever finds it must not be able to lock the seller out.
    if let Err((status, words)) = is_pin(&desk, &caller, &headers, form.now, &kept).await? {
        return again(status, &words);
    }
    if let Some(words) = fault_of(&form.pin) {
        return again(StatusCode::BAD_REQUEST, words);
    }
    if form.pin != form.again {
        return again(StatusCode::BAD_REQUEST, "The two are not the same. Type the new PIN twice.");
    }
    let hash = desk.auth.hash_pin(form.pin).await?;
    let token_hash = seller.token_hash.clone();
    desk.ledger.run_by(&seller, move |ledger, now| ledger.change_pin(&hash, &token_hash, now)).await?;
    Ok(Redirect::to("/kiosks").into_response())
}
