//! Trays as grids of compartments.

use std::sync::Arc;

use axum::{
    Router,
    extract::State,
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use maud::html;

use super::{
    form::{TableForm, marks},
    refused::refused,
};
use crate::{
    catalog::{Act, Fields, Place},
    desk::{
        editing,
        pages::frame::{Tab, page},
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::say,
};

/// The page's address.
const HERE: &str = "/table/trays";

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/table/trays", get(ask).post(set_up))
        .route("/table/trays/name", post(name))
        .route("/table/trays/row", post(row))
}

async fn ask(State(desk): State<Arc<DeskState>>, Owner(seller): Owner) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let files = editing::files(&desk).await.ok();
    let trays = &loaded.catalog.trays;
    let free = ('A'..='Z').find(|letter| !trays.iter().any(|tray| tray.letter == *letter));
    // The next tray is mostly like the last one.
    let last = trays.last();
    let rows = last.map_or(4, |tray| tray.rows.len().max(1));
    let columns = last.and_then(|tray| tray.rows.first()).map_or(4, |row| row.len().max(1));
    let title = say!(texts, "table-step-trays");
    let main = html! {
        h1 { (title) }
        @if let Some(letter) = free {
            form.card.stack method="post" action=(HERE) {
                h2 { (say!(texts, "table-new-tray")) }
                input type="hidden" name="letter" value=(letter);
                div {
                    label for="name" { (say!(texts, "table-tray-name", letter = letter.to_string())) }
                    input #name name="name" maxlength="60" autocomplete="off" value=(say!(texts, "tray", letter = letter.to_string())) required;
                }
                div.row.wraps {
                    div {
                        label for="rows" { (say!(texts, "table-rows")) }
                        input #rows name="rows" inputmode="numeric" pattern="[0-9]{1,2}" value=(rows) required;
                    }
                    div {
                        label for="columns" { (say!(texts, "table-columns")) }
                        input #columns name="columns" inputmode="numeric" pattern="[0-9]{1,2}" value=(columns) required;
                    }
                }
                button.main { (say!(texts, "table-set-up")) }
            }
        }
        @for tray in trays {
            @let letter = tray.letter.to_string();
            section.card.stack aria-label=(say!(texts, "tray", letter = letter.as_str())) {
                h2 { span.letter { (letter) } " " (tray.name) }
                form.row.wraps method="post" action="/table/trays/name" {
                    input type="hidden" name="letter" value=(letter);
                    label for={ "name-" (letter) } { (say!(texts, "table-tray-name", letter = letter.as_str())) }
                    input id={ "name-" (letter) } name="name" maxlength="60" autocomplete="off" value=(tray.name) required;
                    button { (say!(texts, "table-keep")) }
                }
                form method="post" action="/table/trays/row" {
                    input type="hidden" name="letter" value=(letter);
                    (marks(files.as_ref(), &[Place::Tray(tray.letter)]))
                    button.quiet { (say!(texts, "table-add-row", letter = letter.as_str())) }
                }
                p.links { a href={ "/table/tray/" (letter) "/photo" } { (say!(texts, "tray-photo-title", letter = letter.as_str())) } }
            }
        }
        p { a.button.quiet href="/table" { (say!(texts, "go-back")) } }
    };
    Ok(page(&desk, texts, Tab::Trays, &title, &main).into_response())
}

/// The letter of a form's tray.
fn letter_of(form: &TableForm) -> char {
    form.text("letter").chars().next().filter(char::is_ascii_uppercase).unwrap_or('?')
}

async fn set_up(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let letter = letter_of(&form);
    let number = |name| form.text(name).parse().unwrap_or(0);
    let act =
        Act::NewTray { letter, name: form.text("name").to_owned(), rows: number("rows"), columns: number("columns") };
    let did = say!(form.seller.texts, "table-did-tray", letter = letter.to_string());
    finish(&desk, &form, act, did, (HERE, format!("/table/at/{letter}1"))).await
}

async fn name(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let letter = letter_of(&form);
    let did = say!(form.seller.texts, "table-did-name-tray", letter = letter.to_string());
    let act = Act::TellTray { letter, fields: Fields::new().text("name", form.text("name")) };
    finish(&desk, &form, act, did, ("/table/trays/name", HERE.to_owned())).await
}

async fn row(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let letter = letter_of(&form);
    let did = say!(form.seller.texts, "table-did-row", letter = letter.to_string());
    finish(&desk, &form, Act::AddRow { letter }, did, ("/table/trays/row", format!("/table#tray-{letter}"))).await
}

async fn finish(
    desk: &Arc<DeskState>,
    form: &TableForm,
    act: Act,
    did: String,
    (action, then): (&str, String),
) -> Result<Response, Refusal> {
    Ok(match editing::change(desk, vec![act], form.seen(), did).await {
        Ok(_) => Redirect::to(&then).into_response(),
        Err(error) => refused(desk, form, &error, (action, HERE)).await,
    })
}
