//! The bench: before and after a show. All of it is the seller's alone.
//!
//! | file | look here for |
//! | --- | --- |
//! | `how_many` | how many of everything to make, and the shows to look back on |
//! | `plot` | a range, what is there and what to take, as one bar |
//! | `after` | what a show came to for the maker |
//! | `backup` | a copy of the ledger in one touch |
//! | `cuts` | which spool is cut into what |

mod after;
mod backup;
mod cuts;
mod how_many;
mod plot;

use std::sync::Arc;

use axum::Router;
use maud::{Markup, html};

use super::words;
use crate::{
    catalog::{Catalog, Workshop},
    desk::state::DeskState,
    lang::{Texts, say},
    ron_tree::Mistakes,
};

/// Shows that are looked back on.
const SHOWS: usize = 60;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().merge(how_many::routes()).merge(after::routes()).merge(cuts::routes()).merge(backup::routes())
}

/// The workshop, and what is wrong with its file; then it is gone without.
fn workshop(desk: &DeskState, catalog: &Catalog) -> (Option<Workshop>, Option<Mistakes>) {
    match desk.catalog.workshop(catalog) {
        Ok(workshop) => (workshop, None),
        Err(mistakes) => (None, Some(mistakes)),
    }
}

/// What is wrong with the workshop's file, with every place.
fn mistakes_in(texts: &Texts, mistakes: Option<&Mistakes>) -> Markup {
    html! {
        @if let Some(mistakes) = mistakes {
            section.card.mistakes aria-label=(say!(texts, "mistakes-title")) {
                h2 { (say!(texts, "bench-file-wrong")) }
                ul {
                    @for mistake in &mistakes.0 {
                        li {
                            code {
                                (mistake.file)
                                @if mistake.line > 0 { (say!(texts, "mistake-at", line = mistake.line, column = mistake.column)) }
                            }
                            p { (words::sentence(&mistake.found)) " " (words::sentence(&mistake.expected)) }
                        }
                    }
                }
            }
        }
    }
}
