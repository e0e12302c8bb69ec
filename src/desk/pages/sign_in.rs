//! Choosing the first PIN, and signing in.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::{Query, State},
    http::{HeaderMap, StatusCode, header},
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use serde::Deserialize;

use super::{frame::plain_page, sessions::browser_name};
use crate::{
    desk::{
        auth::random_key,
        check_pin::{check_pin, has_pin, too_many},
        connections::Caller,
        cookies::{browser_cookie, browser_of, session_cookie, session_of},
        guess_budgets::{Guesser, Secret},
        language::InLanguage,
        pin_rules::fault_of,
        refusal::Refusal,
        return_page::ReturnPage,
        seller::guesser,
        signed_in::name_of,
        state::DeskState,
    },
    disk::digest::sha256_hex,
    lang::{Message, Texts, message, say},
    ledger::{SELLER, Visitor},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/setup", get(setup_page).post(set_up)).route("/sign-in", get(sign_in_page).post(sign_in))
}

async fn setup_page(
    State(desk): State<Arc<DeskState>>,
    InLanguage(texts): InLanguage,
    caller: Caller,
) -> Result<Response, Refusal> {
    if has_pin(&desk).await? {
        return Ok(Redirect::to("/sign-in").into_response());
    }
    Ok(plain_page(texts, &say!(texts, "setup-title"), &setup_form(texts, caller.is_here, None)).into_response())
}

fn setup_form(texts: &Texts, here: bool, trouble: Option<&Message>) -> Markup {
    html! {
        h1 { (say!(texts, "setup-heading")) }
        p { (say!(texts, "setup-about")) }
        (alert(texts, trouble))
        form.stack method="post" action="/setup" {
            @if !here {
                div {
                    label for="code" { (say!(texts, "setup-code")) }
                    input #code name="code" inputmode="numeric" autocomplete="off" required;
                }
            }
            (kept_under(SELLER))
            (pin_field(texts, &say!(texts, "pin-field"), "pin", "new-password"))
            (pin_field(texts, &say!(texts, "pin-again"), "again", "new-password"))
            button.main { (say!(texts, "setup-keep")) }
        }
    }
}

/// A field for a PIN, with what it is called above it.
pub(super) fn pin_field(texts: &Texts, label: &str, name: &str, autocomplete: &str) -> Markup {
    html! {
        div {
            label for=(name) { (label) }
            input id=(name) type="password" name=(name) inputmode="numeric" pattern="[0-9]{6,12}"
                title=(say!(texts, "pin-shape")) autocomplete=(autocomplete) required;
        }
    }
}

/// A password keeper wants a name to keep the PIN under.
pub(super) fn kept_under(who: &str) -> Markup {
    html! { input type="text" name="user" autocomplete="username" value=(who.to_lowercase()) hidden; }
}

/// What went wrong.
pub(super) fn alert(texts: &Texts, trouble: Option<&Message>) -> Markup {
    html! { @if let Some(trouble) = trouble { p.trouble role="alert" { (texts.say(trouble)) } } }
}

#[derive(Deserialize)]
struct Setup {
    #[serde(default)]
    code: String,
    pin: String,
    again: String,
}

async fn set_up(
    State(desk): State<Arc<DeskState>>,
    InLanguage(texts): InLanguage,
    caller: Caller,
    headers: HeaderMap,
    Form(form): Form<Setup>,
) -> Result<Response, Refusal> {
    if has_pin(&desk).await? {
        return Ok(Redirect::to("/sign-in").into_response());
    }
    let here = caller.is_here;
    let again = |status, trouble: &Message| {
        let form = setup_form(texts, here, Some(trouble));
        Ok((status, plain_page(texts, &say!(texts, "setup-title"), &form)).into_response())
    };
    if !here {
        let who = Guesser::at(caller.ip);
        if let Err(seconds) = desk.auth.guess(&Secret::SetupCode, &who) {
            return again(StatusCode::TOO_MANY_REQUESTS, &too_many(seconds));
        }
        if form.code.trim() != desk.auth.setup_code() {
            desk.alarms.note("a wrong setup code", caller.ip, "");
            return again(StatusCode::FORBIDDEN, &message!("setup-not-the-code"));
        }
        desk.auth.was_right(&Secret::SetupCode, &who);
    }
    if let Some(fault) = fault_of(&form.pin) {
        return again(StatusCode::BAD_REQUEST, &fault);
    }
    if form.pin != form.again {
        return again(StatusCode::BAD_REQUEST, &message!("pin-not-same"));
    }
    let hash = desk.auth.hash_pin(form.pin).await?;
    let is_first = desk
        .ledger
        .run(move |ledger, _| {
            // Two browsers may have had the page open.
            let is_first = ledger.pin_of(SELLER)?.is_none();
            if is_first {
                ledger.set_setting("pin", &hash)?;
            }
            Ok(is_first)
        })
        .await?;
    if is_first {
        // Who begins with nothing is led through laying out a table.
        let is_bare = desk.catalog.loaded().catalog.bases.is_empty();
        let first = if is_bare { ReturnPage::to("/table") } else { ReturnPage::default() };
        begin(&desk, &caller, &headers, None, &first).await
    } else {
        Ok(Redirect::to("/sign-in").into_response())
    }
}

#[derive(Deserialize, Default)]
struct Led {
    #[serde(default)]
    back: String,
    #[serde(default)]
    lost: String,
}

async fn sign_in_page(
    State(desk): State<Arc<DeskState>>,
    InLanguage(texts): InLanguage,
    headers: HeaderMap,
    Query(led): Query<Led>,
) -> Result<Response, Refusal> {
    if !has_pin(&desk).await? {
        return Ok(Redirect::to("/setup").into_response());
    }
    let lost = (led.lost == "1").then(|| message!("sign-in-lost"));
    let people = people(&desk, &headers).await?;
    let form = sign_in_form(&desk, texts, &people, &ReturnPage::to(&led.back), lost.as_ref());
    Ok(plain_page(texts, &say!(texts, "sign-in"), &form).into_response())
}

/// Who may sign in, as far as this browser learns of it.
enum People {
    /// The seller, who works alone.
    Seller,
    /// The seller and helpers. Strangers are not told their names: they type one.
    Unnamed,
    /// A browser in which somebody was signed in before has their names as buttons; the last one is chosen already.
    Named(Vec<String>, String),
}

async fn people(desk: &DeskState, headers: &HeaderMap) -> Result<People, Refusal> {
    let hash = browser_of(headers);
    desk.ledger
        .look(move |ledger| {
            let helpers = ledger.staff()?;
            if helpers.is_empty() {
                return Ok(People::Seller);
            }
            let known = ledger.browsers()?.into_iter().find(|browser| Some(&browser.key_hash) == hash.as_ref());
            Ok(match known {
                Some(browser) => {
                    let names = helpers.into_iter().map(|one| one.name);
                    People::Named([SELLER.to_owned()].into_iter().chain(names).collect(), browser.whose().to_owned())
                }
                None => People::Unnamed,
            })
        })
        .await
}

fn sign_in_form(
    desk: &DeskState,
    texts: &Texts,
    people: &People,
    back: &ReturnPage,
    trouble: Option<&Message>,
) -> Markup {
    html! {
        h1 { (desk.catalog.loaded().catalog.table.name) }
        p { @if matches!(people, People::Seller) { (say!(texts, "sign-in-sellers-desk")) } @else { (say!(texts, "sign-in-desk")) } }
        (alert(texts, trouble))
        form.stack method="post" action="/sign-in" {
            input type="hidden" name="back" value=(back.page());
            @match people {
                People::Seller => (kept_under(SELLER)),
                People::Unnamed => div {
                    label for="who" { (say!(texts, "sign-in-name")) " " span.faint { (say!(texts, "sign-in-name-hint")) } }
                    input #who name="who" autocomplete="username" autocapitalize="words" spellcheck="false";
                },
                People::Named(names, last) => fieldset.who {
                    legend { (say!(texts, "sign-in-who")) }
                    @for name in names {
                        label { input type="radio" name="who" value=(name) checked[name == last]; span { (name_of(texts, name)) } }
                    }
                },
            }
            (pin_field(texts, &say!(texts, "pin-field"), "pin", "current-password"))
            button.main { (say!(texts, "sign-in")) }
        }
    }
}

#[derive(Deserialize)]
struct SignIn {
    pin: String,
    #[serde(default)]
    who: String,
    #[serde(default)]
    back: String,
}

async fn sign_in(
    State(desk): State<Arc<DeskState>>,
    InLanguage(texts): InLanguage,
    caller: Caller,
    headers: HeaderMap,
    Form(form): Form<SignIn>,
) -> Result<Response, Refusal> {
    if !has_pin(&desk).await? {
        return Ok(Redirect::to("/setup").into_response());
    }
    let (back, typed) = (ReturnPage::to(&form.back), form.who.clone());
    let who = desk.ledger.look(move |ledger| ledger.who_is(&typed)).await?;
    let guesser = guesser(&desk, &caller, &headers).await?;
    match (check_pin(&desk, &caller, guesser.as_ref(), who.as_deref(), form.pin).await?, who) {
        (Ok(()), who) => begin(&desk, &caller, &headers, who.filter(|who| who != SELLER), &back).await,
        (Err((status, trouble)), _) => {
            let mut people = people(&desk, &headers).await?;
            if let People::Named(_, chosen) = &mut people {
                *chosen = form.who;
            }
            // Nobody learns here which names there are.
            let trouble = match (&people, status) {
                (People::Unnamed, StatusCode::FORBIDDEN) => message!("sign-in-no-match"),
                _ => trouble,
            };
            let form = sign_in_form(&desk, texts, &people, &back, Some(&trouble));
            Ok((status, plain_page(texts, &say!(texts, "sign-in"), &form)).into_response())
        }
    }
}

/// Begins a session of helper `who`, or of the seller, which ends an earlier one of this browser, and leads on.
async fn begin(
    desk: &DeskState,
    caller: &Caller,
    headers: &HeaderMap,
    who: Option<String>,
    back: &ReturnPage,
) -> Result<Response, Refusal> {
    let (token, new_browser) = (random_key()?, random_key()?);
    let hash = sha256_hex(&token);
    let (before, claimed) = (session_of(headers), browser_of(headers));
    let (name, address, new_hash) = (browser_name(headers), caller.ip.to_string(), sha256_hex(&new_browser));
    let is_known = desk
        .ledger
        .run(move |ledger, now| {
            let by = who.clone().unwrap_or_else(|| SELLER.to_owned());
            let known = ledger.browsers()?;
            let key_hash = claimed.filter(|hash| known.iter().any(|browser| browser.key_hash == *hash));
            if let Some(before) = before.filter(|before| ledger.session(before).is_ok_and(|found| found.is_some())) {
                ledger.end_sessions(Some(&before), now)?;
            }
            let is_known = key_hash.is_some();
            let visitor = Visitor { key_hash: key_hash.unwrap_or(new_hash), name, address, who };
            ledger.acting(Some(by), |ledger| ledger.begin_session(&hash, &visitor, now))?;
            Ok(is_known)
        })
        .await?;
    let mut response = Redirect::to(back.page()).into_response();
    response.headers_mut().append(header::SET_COOKIE, session_cookie(Some(&token)));
    // A key that the desk has not given itself is not taken over.
    if !is_known {
        response.headers_mut().append(header::SET_COOKIE, browser_cookie(&new_browser));
    }
    Ok(response)
}
