//! The table as its maker sees it: what is still to be done, the trays, what is guessed, and the way back.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Query, State},
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use maud::{Markup, html};
use serde::Deserialize;

use super::{form::TableForm, guesses, refused::refused};
use crate::{
    catalog::{Catalog, Loaded, Tray},
    craft::{DropKind, Home},
    desk::{
        editing,
        pages::{
            frame::{Tab, page},
            words,
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Texts, say},
};

/// So many guessed parts are listed; the worst come first.
const MOST_LISTED: usize = 40;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/table", get(overview)).route("/table/undo", post(undo))
}

#[derive(Deserialize)]
struct Asked {
    /// What was just undone.
    undone: Option<u64>,
}

async fn overview(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Query(asked): Query<Asked>,
) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let loaded = desk.catalog.loaded();
    let changes = editing::changes(&desk).await;
    let last = changes.iter().find(|one| !one.is_undone && one.takes_back.is_none());
    let undone = asked.undone.and_then(|number| changes.iter().find(|one| one.number == number));
    let title = say!(texts, "table-title");
    let main = html! {
        h1 { (title) }
        @if let Some(undone) = undone {
            p.done-note role="status" { (say!(texts, "table-undone", what = undone.words.as_str())) }
        }
        (steps(texts, &loaded.catalog))
        p.links.row.wraps {
            a href="/table/one-off" { (say!(texts, "table-one-off")) }
            a href="/table/prices" { (say!(texts, "table-prices")) }
            a href="/table/paper" { (say!(texts, "labels-page")) }
            a href="/trays" { (say!(texts, "to-trays")) }
        }
        @if let Some(last) = last {
            form.row.wraps.own-undo method="post" action="/table/undo" {
                input type="hidden" name="number" value=(last.number);
                button.quiet { (say!(texts, "table-undo", what = last.words.as_str())) }
            }
        }
        @for tray in &loaded.catalog.trays { (grid(texts, &loaded, tray)) }
        (guessed(texts, &loaded.catalog))
    };
    Ok(page(&desk, texts, Tab::Trays, &title, &main).into_response())
}

/// What a table needs before guests can come, each with whether it is there.
fn steps(texts: &Texts, catalog: &Catalog) -> Markup {
    let compartments: usize = catalog.trays.iter().map(|tray| tray.compartments().count()).sum();
    let (laid, bases) = (catalog.drops.len(), catalog.bases.len());
    let is_bare = bases == 0 && catalog.trays.is_empty();
    let step = |done: bool, address: &str, words: String, state: String| {
        html! {
            li.step {
                span.sign aria-hidden="true" { @if done { "✓" } @else { "○" } } " "
                a href=(address) { (words) } " "
                span.faint { (state) }
            }
        }
    };
    let told = catalog.table.guessed.is_empty();
    html! {
        section.card aria-label=(say!(texts, "table-steps")) {
            h2 { (say!(texts, "table-steps")) }
            ol.steps {
                (step(told, "/table/facts", say!(texts, "table-step-facts"), if told { catalog.table.name.clone() } else { say!(texts, "table-not-told") }))
                (step(bases > 0, "/table/bases", say!(texts, "table-step-bases"), say!(texts, "table-count", n = bases)))
                (step(!catalog.trays.is_empty(), "/table/trays", say!(texts, "table-step-trays"), say!(texts, "table-count", n = catalog.trays.len())))
                (step(laid > 0, &first_empty(catalog, None).map_or_else(|| "/table/trays".to_owned(), |home| format!("/table/at/{home}")),
                    say!(texts, "table-step-lay"), say!(texts, "table-laid", n = laid, of = compartments)))
            }
            @if is_bare && editing::demo().is_some() {
                form.stack method="post" action="/table/demo" {
                    p.faint { (say!(texts, "table-demo-hint")) }
                    button.quiet { (say!(texts, "table-demo")) }
                }
            }
        }
    }
}

/// The next empty compartment behind `after` in its tray, or else the first of the table.
pub(super) fn first_empty(catalog: &Catalog, after: Option<Home>) -> Option<Home> {
    let empty =
        || catalog.trays.iter().flat_map(Tray::compartments).filter(|(_, id)| id.is_none()).map(|(home, _)| home);
    let behind = after.and_then(|after| empty().find(|home| home.tray == after.tray && *home > after));
    behind.or_else(|| empty().next())
}

/// A tray, each compartment a way to its page.
fn grid(texts: &Texts, loaded: &Loaded, tray: &Tray) -> Markup {
    let columns = tray.rows.iter().map(Vec::len).max().unwrap_or(1).clamp(1, 12);
    let letter = tray.letter.to_string();
    html! {
        section.tray id={ "tray-" (letter) } aria-label=(say!(texts, "tray", letter = letter.as_str())) {
            h2 { span.letter { (letter) } " " (words::tray_name(texts, &loaded.catalog, tray)) }
            p.links { a href={ "/table/tray/" (letter) "/photo" } { (say!(texts, "tray-photo-title", letter = letter.as_str())) } }
            div class={ "grid own columns-" (columns) } {
                @let mut homes = tray.compartments();
                @for row in &tray.rows {
                    @for (home, id) in homes.by_ref().take(row.len()) {
                        (cell(texts, loaded, home, id.and_then(|id| loaded.catalog.drop_kind(id))))
                    }
                    @for _ in row.len()..columns { div {} }
                }
            }
        }
    }
}

fn cell(texts: &Texts, loaded: &Loaded, home: Home, kind: Option<&DropKind>) -> Markup {
    html! {
        div.cell id={ "at-" (home) } {
            a href={ "/table/at/" (home) } {
                span.home { (home) } " "
                @match kind {
                    Some(kind) => {
                        (words::picture(texts, loaded, &kind.id))
                        span.name { (words::part_name(texts, &loaded.catalog, &kind.id)) } " "
                        span.price { (words::money(texts, kind.price, loaded.catalog.table.prices.currency)) }
                        @if !kind.guessed.is_empty() {
                            " "
                            span.faint aria-hidden="true" { "≈ " (kind.guessed.len()) }
                            span.unseen { (say!(texts, "table-guesses", n = kind.guessed.len())) }
                        }
                    }
                    None => { span.faint { (say!(texts, "table-lay-here")) } }
                }
            }
        }
    }
}

fn guessed(texts: &Texts, catalog: &Catalog) -> Markup {
    let all = guesses::all(catalog);
    html! {
        @if !all.is_empty() {
            section.card #guessed aria-label=(say!(texts, "table-guessed-title")) {
                h2 { (say!(texts, "table-guessed-title")) " " span.tally { (all.len()) } }
                p.faint { (say!(texts, "table-guessed-hint")) }
                ul.links {
                    @for one in all.iter().take(MOST_LISTED) {
                        @let address = one.home.map_or_else(|| format!("/table/bases/{}", one.id), |home| format!("/table/at/{home}"));
                        li {
                            a href=(address) { @if let Some(home) = one.home { (home) " " } (words::part_name(texts, catalog, one.id)) } " "
                            span.faint { (guesses::words(texts, one.guesses)) }
                        }
                    }
                }
                @if all.len() > MOST_LISTED { p.faint { (say!(texts, "table-guessed-more", n = all.len() - MOST_LISTED)) } }
            }
        }
    }
}

async fn undo(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    // Sent twice it must not take back what was done before.
    let asked: u64 = form.text("number").parse().unwrap_or(0);
    // The bench's lots and parts are written by the same editor.
    let pages = ["/bench/lots", "/bench/drawers"];
    let back = pages.into_iter().find(|page| form.text("back") == *page).unwrap_or("/table");
    let changes = editing::changes(&desk).await;
    let last = changes.iter().find(|one| !one.is_undone && one.takes_back.is_none());
    if last.is_none_or(|last| last.number != asked) {
        return Ok(Redirect::to(back).into_response());
    }
    Ok(match editing::undo(&desk).await {
        Ok(undone) => Redirect::to(&format!("{back}?undone={}", undone.number)).into_response(),
        Err(error) => refused(&desk, &form, &error, ("/table/undo", back)).await,
    })
}
