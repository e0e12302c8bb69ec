//! The bench: before and after a show. All of it is the seller's alone; a helper who looks in is led to the counting.
//!
//! | file | look here for |
//! | --- | --- |
//! | `how_many` | how many of everything to make, and the shows to look back on |
//! | `plot` | a range, what is there and what to take, as one bar |
//! | `after` | what a show came to for the maker |
//! | `backup`, `files` | a copy of the ledger in one touch; files that are offered |
//! | `cuts`, `cut_list`, `kept_lists` | which spool is cut into what; the list that is ticked off; those that are worked on |
//! | `prices` | what everything costs and earns, few price points, what another price would do |
//! | `parts` | what a batch takes, what to buy, what stops when a part is gone |
//! | `lots`, `recalled`, `write_lot`, `made` | lots and the checklist for children; where one of them may be; one is written down; what was made and checked |
//! | `drawers`, `part_typed`, `begin` | what lies in drawers and on spools, counted, added to, written down; what was cut at the table; what was typed of a part; beginning parts.ron |
//! | `plans`, `packing` | shows to come and custom orders; what to pack |
//! | `year` | the year for the tax return, and the stock at cost |

mod after;
mod backup;
mod begin;
mod cut_list;
mod cuts;
mod drawers;
mod files;
mod how_many;
mod kept_lists;
mod lots;
mod made;
mod packing;
mod part_typed;
mod parts;
mod plans;
mod plot;
mod prices;
mod recalled;
mod write_lot;
mod year;

use std::sync::Arc;

use axum::{
    Router,
    response::{IntoResponse, Response},
};
use maud::{Markup, html};

use super::{
    frame::{Tab, page},
    mistakes,
};
use crate::{
    bench::{carried_on, parts_now},
    catalog::{Catalog, Workshop},
    desk::{refusal::Refusal, state::DeskState},
    lang::{Texts, say},
    ron_tree::Mistakes,
};

/// Shows that are looked back on.
const SHOWS: usize = 60;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .merge(how_many::routes())
        .merge(after::routes())
        .merge(cuts::routes())
        .merge(cut_list::routes())
        .merge(parts::routes())
        .merge(prices::routes())
        .merge(lots::routes())
        .merge(write_lot::routes())
        .merge(begin::routes())
        .merge(drawers::routes())
        .merge(made::routes())
        .merge(plans::routes())
        .merge(packing::routes())
        .merge(year::routes())
        .merge(backup::routes())
}

/// The bench's pages with the keys of their words.
const PAGES: [(&str, &str); 11] = [
    ("/bench", "bench-how-many"),
    ("/bench/parts", "parts-title"),
    ("/bench/prices", "prices-title"),
    ("/bench/cuts", "bench-cuts"),
    ("/bench/made", "made-title"),
    ("/bench/drawers", "drawers-title"),
    ("/bench/lots", "lots-title"),
    ("/bench/packing", "packing-title"),
    ("/bench/plans", "plans-title"),
    ("/bench/year", "year-title"),
    ("/bench/backup", "backup-title"),
];

/// A page of the bench: its heading, what is wrong with the workshop's file, its own, and the way to the others.
fn bench_page(desk: &DeskState, texts: &Texts, here: &str, mistakes: Option<&Mistakes>, main: &Markup) -> Response {
    let title = PAGES.iter().find(|(page, _)| *page == here).map_or("tab-bench", |(_, key)| key);
    titled(desk, texts, here, &texts.get(title), mistakes, main)
}

/// The same with a title of its own.
fn titled(
    desk: &DeskState,
    texts: &Texts,
    here: &str,
    title: &str,
    mistakes: Option<&Mistakes>,
    main: &Markup,
) -> Response {
    let main = html! {
        h1 { (title) }
        (mistakes_in(texts, mistakes))
        (main)
        nav.links.of-bench.no-print aria-label=(say!(texts, "tab-bench")) {
            ul {
                @for (page, key) in PAGES.iter().filter(|(page, _)| *page != here) {
                    li { a href=(page) { (texts.get(key)) } }
                }
                li { a href="/trays/count" { (say!(texts, "count-title")) } }
            }
        }
    };
    page(desk, texts, Tab::Bench, title, &main).into_response()
}

/// The workshop with its drawers and spools as cuts and sales have left them, and what is wrong with its file; then it is gone without.
async fn workshop(desk: &DeskState, catalog: &Catalog) -> Result<(Option<Workshop>, Option<Mistakes>), Refusal> {
    match desk.catalog.workshop(catalog) {
        Ok(None) => Ok((None, None)),
        Ok(Some(workshop)) => {
            let now = desk.ledger.look(parts_now).await?;
            Ok((Some(carried_on(workshop, &now)), None))
        }
        Err(mistakes) => Ok((None, Some(mistakes))),
    }
}

/// A name as part of an address: what is not plain is written by its bytes. Source: RFC 3986, section 2.1.
fn in_query(text: &str) -> String {
    let plain = |b: u8| b.is_ascii_alphanumeric() || b"-._~".contains(&b);
    text.bytes().map(|b| if plain(b) { char::from(b).to_string() } else { format!("%{b:02X}") }).collect()
}

/// What is wrong with the workshop's file, with every place.
fn mistakes_in(texts: &Texts, told: Option<&Mistakes>) -> Markup {
    html! {
        @if let Some(told) = told {
            section.card.mistakes aria-label=(say!(texts, "mistakes-title")) {
                h2 { (say!(texts, "bench-file-wrong")) }
                p { (say!(texts, "mistake-to-do")) }
                (mistakes::list(texts, told))
            }
        }
    }
}
