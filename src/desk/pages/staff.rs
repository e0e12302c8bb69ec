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
    words,
};
use crate::{
    desk::{
        ledger_words::staff_words,
        refusal::Refusal,
        seller::{Owner, Seller},
        signed_in::{is_sellers_name, name_of},
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::{LONGEST_NAME, Ledger, LedgerError, SELLER, Staff, StaffError},
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

async fn people(State(desk): State<Arc<DeskState>>, owner: Owner) -> Result<Response, Refusal> {
    with_trouble(&desk, owner.0.texts, None, "").await
}

/// The page, with what went wrong over the field for a name.
async fn with_trouble(
    desk: &DeskState,
    texts: &Texts,
    trouble: Option<&str>,
    typed: &str,
) -> Result<Response, Refusal> {
    let (helpers, now) = desk.ledger.run(|ledger, now| Ok((ledger.staff()?, now))).await?;
    let title = say!(texts, "staff-title");
    let main = html! {
        h1 { (title) }
        section.card aria-label=(say!(texts, "staff-who")) {
            ul.lying.people {
                li.row {
                    span.what { strong { (name_of(texts, SELLER)) } " " (say!(texts, "staff-you")) }
                    a.button.quiet href="/pin" { (say!(texts, "change-own-pin")) }
                }
                @for one in &helpers { (helper(texts, one, now)) }
            }
            p.faint { (say!(texts, "staff-about")) }
        }
        section.card aria-label=(say!(texts, "staff-add")) {
            h2 { (say!(texts, "staff-add")) }
            @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
            form.stack method="post" action="/staff" {
                div {
                    label for="name" { (say!(texts, "staff-name")) }
                    input #name name="name" value=(typed) maxlength=(LONGEST_NAME) autocomplete="off" autocapitalize="words" required;
                }
                button.main { (say!(texts, "staff-add-yes")) }
            }
        }
        p { a.button.quiet href="/kiosks" { (say!(texts, "go-back")) } }
    };
    Ok(page(desk, texts, Tab::Kiosks, &title, &main).into_response())
}

fn helper(texts: &Texts, one: &Staff, now: Timestamp) -> Markup {
    let button = |action: &str, word: &str| {
        html! {
            form method="get" action=(action) {
                input type="hidden" name="name" value=(one.name);
                button.quiet aria-label=(say!(texts, "staff-act", act = word, name = one.name.as_str())) { (word) }
            }
        }
    };
    html! {
        li.row {
            span.what {
                strong { (one.name) } " " (say!(texts, "staff-since", time = words::clock(texts, one.since, now)))
            }
            (button("/staff/pin", &say!(texts, "staff-new-pin")))
            (button("/staff/remove", &say!(texts, "staff-remove")))
        }
    }
}

async fn add(State(desk): State<Arc<DeskState>>, owner: Owner, Form(form): Form<Who>) -> Result<Response, Refusal> {
    let (pin, texts) = (desk.auth.new_pin()?, owner.0.texts);
    let (hash, name) = (desk.auth.hash_pin(pin.clone()).await?, form.name.clone());
    let add = move |ledger: &mut Ledger, now| {
        // The ledger knows the seller by one name, and the pages say it in four languages.
        if is_sellers_name(&name) {
            return Err(StaffError::Sellers.into());
        }
        ledger.add_helper(&name, &hash, now)
    };
    match desk.ledger.run_by(&owner.0, add).await {
        Ok(name) => Ok(told_once(&desk, texts, &name, &pin)),
        Err(Refusal::Ledger(LedgerError::Staff(why))) => {
            let status = match why {
                StaffError::Name(_) => StatusCode::BAD_REQUEST,
                _ => StatusCode::CONFLICT,
            };
            let words = words::sentence(&staff_words(texts, &why));
            Ok((status, with_trouble(&desk, texts, Some(&words), &form.name).await?).into_response())
        }
        Err(refusal) => Err(refusal),
    }
}

/// The only page on which a helper's PIN is ever shown.
fn told_once(desk: &DeskState, texts: &Texts, name: &str, pin: &str) -> Response {
    let main = html! {
        section.card.ask data-stands {
            h1 { (say!(texts, "staff-pin-of", name = name)) }
            p.code { (pin[..3]) " " (pin[3..]) }
            p { (say!(texts, "staff-pin-told", name = name)) }
            p { a.button.main href="/staff" { (say!(texts, "done")) } }
        }
    };
    page(desk, texts, Tab::Kiosks, &say!(texts, "staff-pin-title"), &main).into_response()
}

/// A question about one helper; somebody who is gone is no question any more.
async fn question(
    desk: &DeskState,
    seller: &Seller,
    name: String,
    of: impl FnOnce(&str) -> Question<'_>,
) -> Result<Response, Refusal> {
    let found = desk.ledger.look(move |ledger| Ok(ledger.pin_of(&name)?.map(|_| name))).await?;
    match found.filter(|name| name != SELLER) {
        Some(name) => {
            let title = say!(seller.texts, "staff-title");
            Ok(page(desk, seller.texts, Tab::Kiosks, &title, &ask(&of(&name))).into_response())
        }
        None => Ok(Redirect::to("/staff").into_response()),
    }
}

async fn ask_new_pin(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Query(who): Query<Who>,
) -> Result<Response, Refusal> {
    let texts = seller.texts;
    question(&desk, &seller, who.name, |name| Question {
        texts,
        title: say!(texts, "staff-ask-pin", name = name),
        text: say!(texts, "staff-ask-pin-text"),
        action: "/staff/pin".to_owned(),
        yes: say!(texts, "staff-ask-pin-yes"),
        field: Some(("name", name.to_owned())),
        back: "/staff".to_owned(),
    })
    .await
}

async fn new_pin(State(desk): State<Arc<DeskState>>, owner: Owner, Form(form): Form<Who>) -> Result<Response, Refusal> {
    if form.name == SELLER {
        return Err(Refusal::wrong(message!("refused-sellers-pin")));
    }
    let pin = desk.auth.new_pin()?;
    let (hash, name) = (desk.auth.hash_pin(pin.clone()).await?, form.name.clone());
    desk.ledger.run_by(&owner.0, move |ledger, now| ledger.change_pin(&name, &hash, None, now)).await?;
    Ok(told_once(&desk, owner.0.texts, &form.name, &pin))
}

async fn ask_remove(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Query(who): Query<Who>,
) -> Result<Response, Refusal> {
    let texts = seller.texts;
    question(&desk, &seller, who.name, |name| Question {
        texts,
        title: say!(texts, "staff-ask-remove", name = name),
        text: say!(texts, "staff-ask-remove-text", name = name),
        action: "/staff/remove".to_owned(),
        yes: say!(texts, "staff-remove"),
        field: Some(("name", name.to_owned())),
        back: "/staff".to_owned(),
    })
    .await
}

async fn remove(State(desk): State<Arc<DeskState>>, owner: Owner, Form(form): Form<Who>) -> Result<Redirect, Refusal> {
    desk.ledger.run_by(&owner.0, move |ledger, now| ledger.remove_helper(&form.name, now)).await?;
    Ok(Redirect::to("/staff"))
}
