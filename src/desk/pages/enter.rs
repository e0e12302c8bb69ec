//! Setting the PIN, signing in and out.

use std::{net::SocketAddr, sync::Arc};

use axum::{
    Form, Router,
    extract::{ConnectInfo, State},
    http::{StatusCode, header},
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;

use super::frame::plain_page;
use crate::desk::{
    auth::{Seller, is_pin_shape, random_key, set_cookie, sha256_hex},
    error::Refusal,
    server::House,
};

pub(super) fn routes() -> Router<Arc<House>> {
    Router::new()
        .route("/setup", get(setup_page).post(set_up))
        .route("/sign-in", get(sign_in_page).post(sign_in))
        .route("/sign-out", post(sign_out))
        .route("/sign-out-all", post(sign_out_all))
}

async fn kept_pin(house: &House) -> Result<Option<String>, Refusal> {
    house.books.run(|ledger| ledger.setting("pin")).await
}

async fn setup_page(
    State(house): State<Arc<House>>,
    ConnectInfo(from): ConnectInfo<SocketAddr>,
) -> Result<Response, Refusal> {
    if kept_pin(&house).await?.is_some() {
        return Ok(Redirect::to("/sign-in").into_response());
    }
    Ok(plain_page("Choose a PIN", &setup_form(from.ip().is_loopback(), None)).into_response())
}

fn setup_form(here: bool, trouble: Option<&str>) -> Markup {
    html! {
        h1 { "Choose the seller’s PIN" }
        p { "6 to 12 digits. It opens this desk, and the settings of every kiosk." }
        (alert(trouble))
        form.stack method="post" action="/setup" {
            @if !here {
                label { "Setup code, as the desk’s terminal shows it"
                    input name="code" inputmode="numeric" autocomplete="off" required;
                }
            }
            label { "PIN" (pin_input("pin", "new-password")) }
            label { "The PIN again" (pin_input("again", "new-password")) }
            button.main { "Keep this PIN" }
        }
    }
}

fn pin_input(name: &str, autocomplete: &str) -> Markup {
    html! {
        // A password keeper wants a name to keep the PIN under.
        @if name == "pin" { input type="text" name="user" autocomplete="username" value="seller" hidden; }
        input type="password" name=(name) inputmode="numeric" pattern="[0-9]{6,12}" title="6 to 12 digits"
            autocomplete=(autocomplete) required;
    }
}

fn alert(trouble: Option<&str>) -> Markup {
    html! { @if let Some(words) = trouble { p.trouble role="alert" { (words) } } }
}

#[derive(Deserialize)]
struct Setup {
    #[serde(default)]
    code: String,
    pin: String,
    again: String,
}

async fn set_up(
    State(house): State<Arc<House>>,
    ConnectInfo(from): ConnectInfo<SocketAddr>,
    Form(form): Form<Setup>,
) -> Result<Response, Refusal> {
    if kept_pin(&house).await?.is_some() {
        return Ok(Redirect::to("/sign-in").into_response());
    }
    let here = from.ip().is_loopback();
    let again =
        |status, words: &str| Ok((status, plain_page("Choose a PIN", &setup_form(here, Some(words)))).into_response());
    if !here {
        if let Err(seconds) = house.auth.try_again(from.ip()) {
            return again(StatusCode::TOO_MANY_REQUESTS, &format!("Too many tries. Wait {seconds} seconds."));
        }
        if form.code.trim() != house.auth.setup_code() {
            return again(StatusCode::FORBIDDEN, "This is not the code that the desk’s terminal shows.");
        }
        house.auth.was_right(from.ip());
    }
    if !is_pin_shape(&form.pin) {
        return again(StatusCode::BAD_REQUEST, "A PIN has 6 to 12 digits and nothing else.");
    }
    if form.pin != form.again {
        return again(StatusCode::BAD_REQUEST, "The two are not the same. Type the PIN twice.");
    }
    let hash = house.auth.hash_pin(form.pin).await?;
    let is_first = house
        .books
        .run(move |ledger| {
            // Two browsers may have had the page open.
            let is_first = ledger.setting("pin")?.is_none();
            if is_first {
                ledger.set_setting("pin", &hash)?;
            }
            Ok(is_first)
        })
        .await?;
    if is_first { begin(&house).await } else { Ok(Redirect::to("/sign-in").into_response()) }
}

async fn sign_in_page(State(house): State<Arc<House>>) -> Result<Response, Refusal> {
    if kept_pin(&house).await?.is_none() {
        return Ok(Redirect::to("/setup").into_response());
    }
    Ok(plain_page("Sign in", &sign_in_form(&house, None)).into_response())
}

fn sign_in_form(house: &House, trouble: Option<&str>) -> Markup {
    html! {
        h1 { (house.shelf.loaded().catalog.table.name) }
        p { "The seller’s desk" }
        (alert(trouble))
        form.stack method="post" action="/sign-in" {
            label { "PIN" (pin_input("pin", "current-password")) }
            button.main { "Sign in" }
        }
    }
}

#[derive(Deserialize)]
struct SignIn {
    pin: String,
}

async fn sign_in(
    State(house): State<Arc<House>>,
    ConnectInfo(from): ConnectInfo<SocketAddr>,
    Form(form): Form<SignIn>,
) -> Result<Response, Refusal> {
    let Some(kept) = kept_pin(&house).await? else { return Ok(Redirect::to("/setup").into_response()) };
    let again =
        |status, words: &str| Ok((status, plain_page("Sign in", &sign_in_form(&house, Some(words)))).into_response());
    if let Err(seconds) = house.auth.try_again(from.ip()) {
        return again(StatusCode::TOO_MANY_REQUESTS, &format!("Too many tries. Wait {seconds} seconds."));
    }
    if !is_pin_shape(&form.pin) || !house.auth.is_pin(form.pin, &kept).await? {
        tracing::warn!("a wrong PIN from {}", from.ip());
        return again(StatusCode::FORBIDDEN, "This is not the PIN.");
    }
    house.auth.was_right(from.ip());
    begin(&house).await
}

/// Begins a session and leads to the tickets.
async fn begin(house: &House) -> Result<Response, Refusal> {
    let token = random_key().map_err(|error| Refusal::Request(StatusCode::INTERNAL_SERVER_ERROR, error.to_string()))?;
    let hash = sha256_hex(&token);
    house.books.run(move |ledger| ledger.begin_session(&hash, Timestamp::now())).await?;
    Ok(([(header::SET_COOKIE, set_cookie(Some(&token)))], Redirect::to("/tickets")).into_response())
}

async fn sign_out(State(house): State<Arc<House>>, seller: Seller) -> Result<Response, Refusal> {
    end(&house, Some(seller.token_hash)).await
}

async fn sign_out_all(State(house): State<Arc<House>>, _seller: Seller) -> Result<Response, Refusal> {
    end(&house, None).await
}

async fn end(house: &House, token_hash: Option<String>) -> Result<Response, Refusal> {
    house.books.run(move |ledger| ledger.end_sessions(token_hash.as_deref(), Timestamp::now())).await?;
    Ok(([(header::SET_COOKIE, set_cookie(None))], Redirect::to("/sign-in")).into_response())
}
