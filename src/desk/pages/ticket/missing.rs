//! A drop is missing: another one hangs in its place, or it comes off.

use std::{borrow::Cow, collections::BTreeMap, sync::Arc};

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
    craft::{DropKind, Wearer},
    desk::{
        pages::{
            frame::{Tab, page},
            on::On,
            words,
        },
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    guest::{Filters, Standing, Trouble, places_of, standing},
    hang::HangError,
    lang::{Texts, say},
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
    Seller { texts, .. }: Seller,
    Path((id, at)): Path<(Uuid, usize)>,
    Query(search): Query<Search>,
) -> Result<Response, Refusal> {
    let (ticket, counts) = desk.ledger.run(move |ledger, _| Ok((ledger.ticket(id)?, ledger.counts()?))).await?;
    let line = ticket.lines.get(at).filter(|line| !line.removed && ticket.state.is_open());
    let Some(line) = line else { return Ok(Redirect::to(&format!("/tickets/{id}")).into_response()) };
    let view = View { texts, loaded: &desk.catalog.loaded(), ticket: &ticket, at, line, counts: &counts };
    let main = view.content(search.q.trim());
    Ok(page(&desk, texts, Tab::Tickets, &say!(texts, "missing-page"), &main).into_response())
}

/// What the page is drawn from.
struct View<'a> {
    texts: &'static Texts,
    loaded: &'a Loaded,
    ticket: &'a Ticket,
    /// The line that is missing, and its place.
    at: usize,
    line: &'a TicketLine,
    counts: &'a BTreeMap<String, Count>,
}

impl View<'_> {
    fn name(&self, id: &str) -> Cow<'_, str> {
        words::piece_name(self.texts, &self.loaded.catalog, id)
    }

    /// By which words a drop is found: its names, its home, its sort and its colours, in the reader's language and as the
    /// maker and the table have them.
    fn found_by(&self, kind: &DropKind) -> String {
        let sort = self.texts.get(&format!("sort-{}", kind.sort.name()));
        let colours = kind
            .colours
            .iter()
            .flat_map(|colour| [self.texts.get(&format!("colour-{}", colour.name())), colour.word().to_owned()]);
        let mut all = vec![self.name(&kind.id).into_owned(), kind.name.clone(), kind.sort.word().to_owned(), sort];
        all.extend(colours);
        all.push(kind.home.to_string());
        all.join(" ").to_lowercase()
    }

    /// Whether the searched word is that of the drop's home, or in one of its words.
    fn matches(&self, kind: &DropKind, search: &str) -> bool {
        let search = search.to_lowercase();
        search.is_empty() || self.found_by(kind).contains(&search)
    }

    fn content(&self, search: &str) -> Markup {
        let (texts, catalog, at) = (self.texts, &self.loaded.catalog, self.at);
        let wanted = |kind: &DropKind| kind.id != self.line.id && self.matches(kind, search);
        let fitting = instead(catalog, self.ticket, at, self.counts, wanted);
        let shown = &fitting[..fitting.len().min(SHOWN)];
        let title = say!(texts, "missing-title", name = self.name(&self.line.id), home = self.line.home.to_string());
        html! {
            h1 { (title) }
            form method="post" action={ "/tickets/" (self.ticket.id) "/remove" } {
                input type="hidden" name="line" value=(at);
                div.row.wraps {
                    button { (say!(texts, "missing-take-off")) }
                    a.button.quiet href={ "/tickets/" (self.ticket.id) "#line-" (at) } { (say!(texts, "go-back")) }
                }
            }
            h2.instead { (say!(texts, "missing-instead")) }
            form.find method="get" {
                label for="q" { (say!(texts, "missing-search")) }
                div.row {
                    input #q name="q" value=(search) autocomplete="off" data-filters=".choice";
                    button { (say!(texts, "missing-search-do")) }
                }
            }
            @if shown.is_empty() { p.faint { (say!(texts, "missing-nothing")) } }
            @if shown.len() < fitting.len() {
                p.faint { (say!(texts, "missing-first", shown = SHOWN, all = fitting.len())) }
            }
            form method="post" {
                @for tray in &catalog.trays {
                    @let here: Vec<&(&DropKind, bool)> = shown.iter().filter(|(kind, _)| kind.home.tray == tray.letter).collect();
                    @if !here.is_empty() {
                        section.choices {
                            h2 { span.letter { (tray.letter) } " " (words::tray_name(texts, catalog, tray)) }
                            div.cards { @for (kind, suits) in here { (self.choice(kind, *suits)) } }
                        }
                    }
                }
            }
        }
    }

    fn choice(&self, kind: &DropKind, suits: bool) -> Markup {
        let texts = self.texts;
        let free = self.counts.get(&kind.id).map_or(0, |count| count.free());
        let price = words::money(texts, kind.price, self.ticket.quote.currency);
        html! {
            button.choice.card data-key=(kind.id) name="to" value=(kind.id) data-words=(self.found_by(kind)) {
                (words::picture(texts, self.loaded, &kind.id))
                span.what {
                    strong { (self.name(&kind.id)) }
                    span { (say!(texts, "missing-price-free", price = price, free = free)) }
                    @if !suits { span.faint { (say!(texts, "missing-not-for")) } }
                }
                span.home { (kind.home) }
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
    let others =
        ticket.live_lines().filter(|(line, _)| *line != at).map(|(i, line)| (line.id.clone(), ticket.look_of(i)));
    let without = ticket.piece.clone().with_drops(others.collect::<Vec<_>>());
    // What hangs on the piece is held for it and no longer free.
    let hung = |id: &str| without.drops.iter().filter(|drop| *drop == id).count() as u32;
    let available = |id: &str| counts.get(id).map_or(0, |count| count.free()) + hung(id);
    let wearer = Some(without.wearer).filter(|wearer| *wearer != Wearer::Unknown);
    let filters = Filters { suits: wearer, ..Filters::default() };
    let finds_room = |kind: &DropKind| {
        // A base or a drop that the catalogue has no more says nothing of room.
        !matches!(places_of(catalog, &without.with(&kind.id, at)), Err(Trouble::Hang(HangError::NoRoom { .. })))
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
    act(&On { desk, seller, id }, &format!("#line-{at}"), move |ledger, id, now| {
        ledger.swap(id, at, &form.to, &loaded.catalog, now)
    })
    .await
}
