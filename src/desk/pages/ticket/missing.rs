//! A drop is missing: another one hangs in its place, or it comes off.

use std::{collections::BTreeMap, sync::Arc};

use axum::{
    Form, Router,
    extract::{Path, Query, State},
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use serde::Deserialize;
use uuid::Uuid;

use super::actions::act;
use crate::{
    catalog::{Catalog, Loaded},
    craft::{DropKind, Piece, Wearer},
    desk::{
        pages::{
            frame::{Tab, page},
            words,
        },
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    guest::{Filters, Standing, Trouble, places_of, standing},
    hang::HangError,
    lang::{Lang, Texts},
    ledger::{Count, Ticket, TicketLine},
};

/// Drops shown at once; with more, the search narrows them.
const SHOWN: usize = 240;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/tickets/{id}/missing/{line}", get(choose).post(swap))
}

#[derive(Deserialize)]
struct Search {
    #[serde(default)]
    q: String,
}

async fn choose(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Path((id, at)): Path<(Uuid, usize)>,
    Query(search): Query<Search>,
) -> Result<Response, Refusal> {
    let (ticket, counts) = desk.ledger.run(move |ledger, _| Ok((ledger.ticket(id)?, ledger.counts()?))).await?;
    let line = ticket.lines.get(at).filter(|line| !line.removed && ticket.state.is_open());
    let Some(line) = line else { return Ok(Redirect::to(&format!("/tickets/{id}")).into_response()) };
    let main = content(&desk.catalog.loaded(), &ticket, at, line, &counts, search.q.trim());
    Ok(page(&desk, Tab::Tickets, "A drop is missing", &main).into_response())
}

/// Whether the drop's name, home or sort has the searched word.
fn matches(kind: &DropKind, search: &str) -> bool {
    let search = search.to_lowercase();
    let colours = kind.colours.iter().map(|colour| colour.word());
    let words = [kind.name.as_str(), kind.sort.word()].into_iter().chain(colours);
    kind.home.to_string().to_lowercase() == search
        || words.into_iter().any(|word| word.to_lowercase().contains(&search))
}

fn content(
    loaded: &Loaded,
    ticket: &Ticket,
    at: usize,
    line: &TicketLine,
    counts: &BTreeMap<String, Count>,
    search: &str,
) -> Markup {
    let catalog = &loaded.catalog;
    let free = |kind: &DropKind| counts.get(&kind.id).map_or(0, |count| count.free());
    let fitting =
        instead(catalog, ticket, at, counts, |kind| kind.id != line.id && (search.is_empty() || matches(kind, search)));
    let currency = ticket.quote.currency;
    let shown = &fitting[..fitting.len().min(SHOWN)];
    html! {
        h1 { (words::part_name(Texts::of(Lang::En), catalog, &line.id)) " (" (line.home) ") is missing" }
        form method="post" action={ "/tickets/" (ticket.id) "/remove" } {
            input type="hidden" name="line" value=(at);
            div.row {
                button { "Take it off the piece" }
                a.button.quiet href={ "/tickets/" (ticket.id) "#line-" (at) } { "Go back" }
            }
        }
        h2.instead { "Or hang another one instead" }
        form.find method="get" {
            label for="q" { "Search by name, colour or home" }
            div.row { input #q name="q" value=(search) autocomplete="off" data-filters=".choice"; button { "Search" } }
        }
        @if shown.is_empty() { p.faint { "Nothing that fits and is in stock." } }
        @if shown.len() < fitting.len() { p.faint { "The first " (SHOWN) " of " (fitting.len()) "; search to see others." } }
        form method="post" {
            @for tray in &catalog.trays {
                @let here: Vec<&(&DropKind, bool)> = shown.iter().filter(|(kind, _)| kind.home.tray == tray.letter).collect();
                @if !here.is_empty() {
                    section.choices {
                        h2 { span.letter { (tray.letter) } " " (tray.name) }
                        div.cards {
                            @for (kind, suits) in here {
                                button.choice.card data-key=(kind.id) name="to" value=(kind.id)
                                    data-words={ (kind.name) " " (kind.sort.word()) " " (kind.home) " "
                                        @for colour in &kind.colours { (colour.word()) " " } } {
                                    (words::picture(Texts::of(Lang::En), loaded, &kind.id))
                                    span.what {
                                        strong { (kind.name) }
                                        span { (currency.plain(kind.price)) " · " (free(kind)) " free" }
                                        @if !suits { span.faint { "Not for this wearer" } }
                                    }
                                    span.home { (kind.home) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// What can hang in the place of line `at`, as the guest's own trays have it: in stock, its ring goes onto the base, and it
/// finds room there. With each whether it suits the wearer; those that do come first.
fn instead<'a>(
    catalog: &'a Catalog,
    ticket: &Ticket,
    at: usize,
    counts: &BTreeMap<String, Count>,
    wanted: impl Fn(&DropKind) -> bool,
) -> Vec<(&'a DropKind, bool)> {
    let others = ticket.live_lines().filter(|(line, _)| *line != at).map(|(_, line)| line.id.clone());
    let without = Piece { drops: others.collect(), ..ticket.piece.clone() };
    // What hangs on the piece is held for it and no longer free.
    let hung = |id: &str| without.drops.iter().filter(|drop| *drop == id).count() as u32;
    let available = |id: &str| counts.get(id).map_or(0, |count| count.free()) + hung(id);
    let wearer = Some(without.wearer).filter(|wearer| *wearer != Wearer::Unknown);
    let filters = Filters { suits: wearer, ..Filters::default() };
    let finds_room = |kind: &DropKind| {
        let mut with = without.clone();
        with.drops.insert(at.min(with.drops.len()), kind.id.clone());
        // A base or a drop that the catalogue has no more says nothing of room.
        !matches!(places_of(catalog, &with), Err(Trouble::Hang(HangError::NoRoom { .. })))
    };
    let mut found: Vec<(&DropKind, bool)> = catalog
        .drops
        .iter()
        .filter(|kind| wanted(kind))
        .filter_map(|kind| match standing(catalog, available, Some(&without), &filters, kind) {
            Standing::Open | Standing::Aside | Standing::TooDear => Some((kind, true)),
            Standing::NotFor => Some((kind, false)),
            Standing::NoFit | Standing::SoldOut => None,
        })
        .filter(|(kind, _)| finds_room(kind))
        .collect();
    found.sort_by_key(|(_, suits)| !suits);
    found
}

#[derive(Deserialize)]
struct Swap {
    to: String,
}

async fn swap(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path((id, at)): Path<(Uuid, usize)>,
    Form(form): Form<Swap>,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    act(&desk, &seller, id, &format!("#line-{at}"), move |ledger, now| {
        ledger.swap(id, at, &form.to, &loaded.catalog, now)
    })
    .await
}
