//! What is read of a closed show. Nothing of it can be changed.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, Query, State},
    http::StatusCode,
    response::{IntoResponse, Response},
    routing::get,
};
use maud::{Markup, html};

use super::{
    files::{self, File, Written},
    sheet::{Sheet, about_line, name_of},
};
use crate::{
    craft::Home,
    desk::{
        pages::{
            frame::{Tab, page},
            words,
        },
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    lang::{Lang, Texts},
    ledger::{Listed, ShowEnd},
    quoting::quoted,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/shows/{id}", get(closed)).route("/shows/{id}/{table}", get(table))
}

fn nothing(name: &str) -> Refusal {
    Refusal::Request(StatusCode::NOT_FOUND, format!("there is nothing called {} at this desk", quoted(name)))
}

async fn table(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Path((show, name)): Path<(i64, String)>,
    Query(written): Query<Written>,
) -> Result<Response, Refusal> {
    files::file(&desk, show, File::table(&name).ok_or_else(|| nothing(&name))?, &written).await
}

async fn closed(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Path(name): Path<String>,
    Query(written): Query<Written>,
) -> Result<Response, Refusal> {
    if let Some((show, file)) = File::of_show(&name) {
        return files::file(&desk, show, file, &written).await;
    }
    let id: i64 = name.parse().map_err(|_| nothing(&name))?;
    let (closed, came_after, let_go) = desk
        .ledger
        .look(move |ledger| Ok((ledger.closed_show(id)?, ledger.came_after(id)?, ledger.let_go_in(id)?)))
        .await?;
    let Some(closed) = closed else {
        return Err(Refusal::Request(StatusCode::NOT_FOUND, format!("show {id} has not been closed at this desk")));
    };
    let loaded = desk.catalog.loaded();
    let about = &closed.end.about;
    let sheet = Sheet {
        sums: &closed.sums,
        currency: closed.currency,
        about,
        end: Some(&closed.end),
        reward: closed.end.reward.as_ref(),
        catalog: &loaded.catalog,
    };
    let main = html! {
        h1 { "Close-out of " (name_of("show", id, about)) }
        p.faint { (loaded.catalog.table.name) ", closed " (words::clock(Texts::of(Lang::En), closed.at, desk.clock.now())) }
        @if let Some(line) = about_line(about, closed.currency) { p { (line) } }
        (sheet.markup())
        (were_let_go(&let_go))
        (after_closing(&came_after))
        (left(&closed.end))
        (files::links(id))
        div.row.ends.no-print {
            button data-prints hidden { "Print" }
            a.button.quiet href="/show" { "To the running show" }
        }
    };
    Ok(page(&desk, Tab::Show, &format!("Close-out of show {id}"), &main).into_response())
}

/// The tickets that came to nothing.
fn were_let_go(tickets: &[Listed]) -> Markup {
    html! {
        @if !tickets.is_empty() {
            section.card aria-label="Let go" {
                h2 { "Let go " span.tally { (tickets.len()) } }
                ul.links.many { @for one in tickets { li { a href={ "/tickets/" (one.id) } { (one.number) } } } }
            }
        }
    }
}

/// The tickets of a closed show that arrived afterwards; they count elsewhere.
fn after_closing(tickets: &[Listed]) -> Markup {
    html! {
        @if !tickets.is_empty() {
            section.card aria-label="Came late" {
                h2 { "Came after it was closed " span.tally { (tickets.len()) } }
                p.faint { "These are not in the sums above. Each counts in the show in which it was rung up." }
                ul.links {
                    @for one in tickets {
                        li {
                            a href={ "/tickets/" (one.id) } { (one.number) } " " (one.state.word())
                            @if let Some(show) = one.settled { " in show " (show) }
                        }
                    }
                }
            }
        }
    }
}

/// Everything that was left when the show was closed, by home.
fn left(end: &ShowEnd) -> Markup {
    let mut lines: Vec<(Option<Home>, &str, u32)> = end
        .left
        .iter()
        .filter_map(|(id, left)| end.parts.get(id).map(|part| (part.home, part.name.as_str(), *left)))
        .collect();
    lines.sort();
    html! {
        @if !lines.is_empty() {
            details.card #left {
                summary { "Everything that was left " span.tally { (lines.len()) } }
                table {
                    thead { tr { th { "Home" } th { "Part" } th.figure { "Left" } } }
                    tbody {
                        @for (home, name, left) in &lines {
                            tr { td { (home.map(|home| home.to_string()).unwrap_or_default()) } td { (name) } td.figure { (left) } }
                        }
                    }
                }
            }
        }
    }
}
