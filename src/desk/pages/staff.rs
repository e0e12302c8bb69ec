//! Who works at the desk: the seller's list of helpers, with their PINs made anew.
//!
//! A PIN of a helper is the desk's own, told once: nobody has to think one up at a table, none is an easy one, and the helper
//! can choose another.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::{Query, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;

use super::{
    confirm::{Question, ask},
    frame::{Tab, page},
    sign_in::alert,
    words,
};
use crate::{
    desk::{refusal::Refusal, seller::Owner, state::DeskState},
    lang::{Lang, Texts},
    ledger::{LedgerError, SELLER, Staff, StaffError},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/staff", get(people).post(add))
        .route("/staff/pin", get(ask_new_pin).post(new_pin))
        .route("/staff/remove", get(ask_remove).post(remove))
}

/// Whom it is about. Names stand in fields, which browsers code for addresses.
#[derive(Deserialize)]
struct Who {
    name: String,
}

async fn people(State(desk): State<Arc<DeskState>>, _owner: Owner) -> Result<Response, Refusal> {
    with_trouble(&desk, None, "").await
}

/// The page, with what went wrong over the field for a name.
async fn with_trouble(desk: &DeskState, trouble: Option<&str>, typed: &str) -> Result<Response, Refusal> {
    let (helpers, now) = desk.ledger.run(|ledger, now| Ok((ledger.staff()?, now))).await?;
    let main = html! {
        h1 { "People" }
        section.card aria-label="Who works here" {
            ul.lying.people {
                li.row {
                    span.what { strong { (SELLER) } " – you. Everything is yours to do." }
                    a.button.quiet href="/pin" { "Change your PIN" }
                }
                @for one in &helpers { (helper(one, now)) }
            }
            p.faint {
                "A helper checks pieces, rings them up and counts. Giving money back, taking much off, closing a show and pairing or "
                "releasing a tablet need your PIN, which you can type on the helper’s phone for that one time. This page and "
                "signing others out are yours alone."
            }
        }
        section.card aria-label="Add a helper" {
            h2 { "Add a helper" }
            (alert(trouble))
            form.stack method="post" action="/staff" {
                label {
                    "Name, as entries will say it"
                    input name="name" value=(typed) maxlength="30" autocomplete="off" autocapitalize="words" required;
                }
                button.main { "Add, and make a PIN" }
            }
        }
        p { a.button.quiet href="/kiosks" { "Go back" } }
    };
    Ok(page(desk, Tab::Kiosks, "People", &main).into_response())
}

fn helper(one: &Staff, now: Timestamp) -> Markup {
    let button = |action: &str, word: &str| {
        html! {
            form method="get" action=(action) {
                input type="hidden" name="name" value=(one.name);
                button.quiet aria-label={ (word) " – " (one.name) } { (word) }
            }
        }
    };
    html! {
        li.row {
            span.what { strong { (one.name) } " – helps since " (words::clock(Texts::of(Lang::En), one.since, now)) }
            (button("/staff/pin", "New PIN"))
            (button("/staff/remove", "Remove"))
        }
    }
}

async fn add(State(desk): State<Arc<DeskState>>, owner: Owner, Form(form): Form<Who>) -> Result<Response, Refusal> {
    let pin = a_pin(&desk)?;
    let (hash, name) = (desk.auth.hash_pin(pin.clone()).await?, form.name.clone());
    match desk.ledger.run_by(&owner.0, move |ledger, now| ledger.add_helper(&name, &hash, now)).await {
        Ok(name) => Ok(told_once(&desk, &name, &pin)),
        Err(Refusal::Ledger(LedgerError::Staff(why))) => {
            let status = match why {
                StaffError::Name(_) => StatusCode::BAD_REQUEST,
                _ => StatusCode::CONFLICT,
            };
            let words = words::sentence(&why.to_string());
            Ok((status, with_trouble(&desk, Some(&words), &form.name).await?).into_response())
        }
        Err(refusal) => Err(refusal),
    }
}

fn a_pin(desk: &DeskState) -> Result<String, Refusal> {
    desk.auth.new_pin().map_err(|error| Refusal::Request(StatusCode::INTERNAL_SERVER_ERROR, error.to_string()))
}

/// The only page on which a helper's PIN is ever shown.
fn told_once(desk: &DeskState, name: &str, pin: &str) -> Response {
    let main = html! {
        section.card.ask data-stands {
            h1 { "The PIN of " (name) }
            p.code { (pin[..3]) " " (pin[3..]) }
            p {
                "Tell " (name) " now: it is shown only this once. On their phone they open this desk, type their name and this PIN, "
                "and can choose another PIN on the page Kiosks."
            }
            p { a.button.main href="/staff" { "Done" } }
        }
    };
    page(desk, Tab::Kiosks, "A helper’s PIN", &main).into_response()
}

/// A question about one helper; somebody who is gone is no question any more.
async fn question(desk: &DeskState, name: String, of: fn(&str) -> Question<'static>) -> Result<Response, Refusal> {
    let found = desk.ledger.look(move |ledger| Ok(ledger.pin_of(&name)?.map(|_| name))).await?;
    match found.filter(|name| name != SELLER) {
        Some(name) => Ok(page(desk, Tab::Kiosks, "People", &ask(&of(&name))).into_response()),
        None => Ok(Redirect::to("/staff").into_response()),
    }
}

async fn ask_new_pin(
    State(desk): State<Arc<DeskState>>,
    _owner: Owner,
    Query(who): Query<Who>,
) -> Result<Response, Refusal> {
    question(&desk, who.name, |name| Question {
        title: format!("A new PIN for {name}?"),
        text: "The one they have opens nothing any more, and their phones are signed out.".to_owned(),
        action: "/staff/pin".to_owned(),
        yes: "Make a new PIN",
        field: Some(("name", name.to_owned())),
        back: "/staff".to_owned(),
    })
    .await
}

async fn new_pin(State(desk): State<Arc<DeskState>>, owner: Owner, Form(form): Form<Who>) -> Result<Response, Refusal> {
    if form.name == SELLER {
        return Err(Refusal::bad("the seller’s PIN is changed by who knows it"));
    }
    let pin = a_pin(&desk)?;
    let (hash, name) = (desk.auth.hash_pin(pin.clone()).await?, form.name.clone());
    desk.ledger.run_by(&owner.0, move |ledger, now| ledger.change_pin(&name, &hash, None, now)).await?;
    Ok(told_once(&desk, &form.name, &pin))
}

async fn ask_remove(
    State(desk): State<Arc<DeskState>>,
    _owner: Owner,
    Query(who): Query<Who>,
) -> Result<Response, Refusal> {
    question(&desk, who.name, |name| Question {
        title: format!("Remove {name}?"),
        text: "They are signed out everywhere and can’t sign in any more. What they entered keeps their name."
            .to_owned(),
        action: "/staff/remove".to_owned(),
        yes: "Remove",
        field: Some(("name", name.to_owned())),
        back: "/staff".to_owned(),
    })
    .await
}

async fn remove(State(desk): State<Arc<DeskState>>, owner: Owner, Form(form): Form<Who>) -> Result<Redirect, Refusal> {
    desk.ledger.run_by(&owner.0, move |ledger, now| ledger.remove_helper(&form.name, now)).await?;
    Ok(Redirect::to("/staff"))
}
