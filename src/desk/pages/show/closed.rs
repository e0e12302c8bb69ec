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
    sheet::{Sheet, about_line, costs, name_then},
};
use crate::{
    catalog::Catalog,
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
    lang::{Texts, message, say},
    ledger::{AboutShow, Listed, ShowEnd, ShowKind},
    quoting::excerpt,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/shows/{id}", get(closed)).route("/shows/{id}/{table}", get(table))
}

fn nothing(name: &str) -> Refusal {
    Refusal::Said(StatusCode::NOT_FOUND, message!("refused-nothing-called", name = excerpt(name)))
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
    seller: Seller,
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
        return Err(Refusal::Said(StatusCode::NOT_FOUND, message!("refused-not-closed", show = id)));
    };
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let when = words::clock(texts, closed.at, desk.clock.now());
    let about = &closed.end.about;
    let sheet = Sheet {
        texts,
        sums: &closed.sums,
        currency: closed.currency,
        about,
        end: Some(&closed.end),
        reward: closed.end.reward.as_ref(),
        catalog: &loaded.catalog,
        costs: costs(&desk, &seller, &loaded.catalog, &closed.sums),
    };
    let main = html! {
        h1 { (heading(texts, id, about)) }
        p.faint { (say!(texts, "closed-when", table = loaded.catalog.table.name.as_str(), when = when)) }
        @if let Some(line) = about_line(texts, about, closed.currency) { p { (line) } }
        (sheet.markup())
        (were_let_go(texts, &let_go))
        (after_closing(texts, &came_after))
        (left(texts, &loaded.catalog, &closed.end))
        (files::links(texts, id))
        div.row.ends.no-print {
            button data-prints hidden { (say!(texts, "closed-print")) }
            a.button.quiet href="/show" { (say!(texts, "closed-to-running")) }
        }
    };
    Ok(page(&desk, texts, Tab::Show, &say!(texts, "closed-title", show = id), &main).into_response())
}

fn heading(texts: &Texts, show: i64, about: &AboutShow) -> String {
    match &about.place {
        _ if about.kind == Some(ShowKind::Practice) => say!(texts, "closed-practice"),
        Some(place) => say!(texts, "closed-title-at", show = show, place = place.as_str()),
        None => say!(texts, "closed-title", show = show),
    }
}

/// The tickets that came to nothing.
fn were_let_go(texts: &Texts, tickets: &[Listed]) -> Markup {
    html! {
        @if !tickets.is_empty() {
            section.card aria-label=(say!(texts, "sums-let-go")) {
                h2 { (say!(texts, "sums-let-go")) " " span.tally { (tickets.len()) } }
                ul.links.many { @for one in tickets { li { a href={ "/tickets/" (one.id) } { (one.number) } } } }
            }
        }
    }
}

/// The tickets of a closed show that arrived afterwards; they count elsewhere.
fn after_closing(texts: &Texts, tickets: &[Listed]) -> Markup {
    html! {
        @if !tickets.is_empty() {
            section.card aria-label=(say!(texts, "closed-came-late")) {
                h2 { (say!(texts, "closed-came-after")) " " span.tally { (tickets.len()) } }
                p.faint { (say!(texts, "closed-came-after-hint")) }
                ul.links {
                    @for one in tickets {
                        li {
                            a href={ "/tickets/" (one.id) } { (one.number) } " " (what_became(texts, one))
                        }
                    }
                }
            }
        }
    }
}

/// What became of a ticket, and where.
fn what_became(texts: &Texts, ticket: &Listed) -> String {
    let state = words::state_word(texts, ticket.state);
    match ticket.settled {
        Some(show) => say!(texts, "closed-came-to", state = state, show = show),
        None => state,
    }
}

/// Everything that was left when the show was closed, by home.
fn left(texts: &Texts, catalog: &Catalog, end: &ShowEnd) -> Markup {
    let mut lines: Vec<(Option<Home>, String, u32)> = end
        .left
        .iter()
        .filter_map(|(id, left)| {
            let part = end.parts.get(id)?;
            Some((part.home, name_then(texts, catalog, id, &part.name), *left))
        })
        .collect();
    lines.sort();
    html! {
        @if !lines.is_empty() {
            details.card #left {
                summary { (say!(texts, "closed-left")) " " span.tally { (lines.len()) } }
                table {
                    thead {
                        tr {
                            th { (say!(texts, "sold-home")) }
                            th { (say!(texts, "sold-part")) }
                            th.figure { (say!(texts, "sold-left")) }
                        }
                    }
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
