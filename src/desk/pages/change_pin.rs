//! Changing the PIN of who is signed in.

use std::sync::Arc;

use axum::{
    Extension, Form, Router,
    extract::State,
    http::{HeaderMap, StatusCode},
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use serde::Deserialize;

use super::{
    frame::{Tab, page},
    sign_in::{alert, kept_under, pin_field},
};
use crate::{
    desk::{
        answers::PinCame,
        check_pin::check_pin,
        connections::Caller,
        pin_rules::fault_of,
        refusal::Refusal,
        seller::{Seller, guesser},
        state::DeskState,
    },
    lang::{Message, message, say},
    ledger::Role,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/pin", get(ask).post(change))
}

async fn ask(State(desk): State<Arc<DeskState>>, seller: Seller) -> Response {
    with_trouble(&desk, &seller, None)
}

fn with_trouble(desk: &DeskState, seller: &Seller, trouble: Option<&Message>) -> Response {
    let main = content(seller, trouble);
    page(desk, seller.texts, Tab::Kiosks, &say!(seller.texts, "change-pin"), &main).into_response()
}

fn content(seller: &Seller, trouble: Option<&Message>) -> Markup {
    let texts = seller.texts;
    let is_sellers = seller.role == Role::Seller;
    html! {
        section.card.ask {
            h1 {
                @if is_sellers { (say!(texts, "change-pin")) }
                @else { (say!(texts, "change-pin-of", name = seller.name())) }
            }
            p {
                (say!(texts, "change-pin-about"))
                @if is_sellers { " " (say!(texts, "change-pin-tablets")) }
            }
            (alert(texts, trouble))
            form.stack method="post" action="/pin" {
                (kept_under(seller.name()))
                (pin_field(texts, &say!(texts, "pin-now"), "now", "current-password"))
                (pin_field(texts, &say!(texts, "pin-new"), "pin", "new-password"))
                (pin_field(texts, &say!(texts, "pin-new-again"), "again", "new-password"))
                div.row {
                    button.main { (say!(texts, "change-it")) }
                    a.button.quiet href="/kiosks" { (say!(texts, "go-back")) }
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
    Extension(pin_came): Extension<PinCame>,
    Form(form): Form<Change>,
) -> Result<Response, Refusal> {
    pin_came.with("/pin");
    let again = |status: StatusCode, trouble: &Message| {
        Ok((status, with_trouble(&desk, &seller, Some(trouble))).into_response())
    };
    // A phone left lying about is signed in; whoever finds it must not be able to lock its owner out.
    let guesser = guesser(&desk, &caller, &headers).await?;
    if let Err((status, why)) = check_pin(&desk, &caller, guesser.as_ref(), Some(seller.name()), form.now).await? {
        return again(status, &why);
    }
    if let Some(fault) = fault_of(&form.pin) {
        return again(StatusCode::BAD_REQUEST, &fault);
    }
    if form.pin != form.again {
        return again(StatusCode::BAD_REQUEST, &message!("new-pin-not-same"));
    }
    let hash = desk.auth.hash_pin(form.pin).await?;
    let (whose, here) = (seller.name().to_owned(), seller.token_hash.clone());
    desk.ledger.run_by(&seller, move |ledger, now| ledger.change_pin(&whose, &hash, Some(&here), now)).await?;
    Ok(Redirect::to("/kiosks").into_response())
}
