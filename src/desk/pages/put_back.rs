//! Where a stray drop belongs: its picture is touched, and its home is told and shown among the others. For helpers' phones,
//! which come here by a code that lies on the table.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Query, State},
    response::{IntoResponse, Response},
    routing::get,
};
use maud::{Markup, html};
use serde::Deserialize;

use super::{
    frame::{Tab, page},
    words,
};
use crate::{
    catalog::{Loaded, Tray},
    craft::{DropKind, Home},
    desk::{signed_in::Seller, state::DeskState},
    lang::{Texts, say},
};

/// Tables wider than this wrap like text.
const WIDEST: usize = 12;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/put-back", get(put_back))
}

#[derive(Deserialize)]
struct Asked {
    /// The home of what was touched.
    #[serde(default)]
    home: String,
}

async fn put_back(State(desk): State<Arc<DeskState>>, seller: Seller, Query(asked): Query<Asked>) -> Response {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let found = asked.home.parse::<Home>().ok().and_then(|home| loaded.catalog.drop_at(home));
    let title = say!(texts, "put-back");
    let main = html! {
        h1 { (title) }
        @if loaded.catalog.drops.is_empty() {
            p { (say!(texts, "put-back-none")) }
        } @else if let Some(kind) = found {
            section.card.belongs role="status" {
                (words::picture(texts, &loaded, &kind.id))
                p.big { (say!(texts, "put-back-at", name = words::piece_name(texts, &loaded.catalog, &kind.id).into_owned(), home = kind.home.to_string())) }
            }
        } @else {
            p { (say!(texts, "put-back-hint")) }
        }
        @for tray in &loaded.catalog.trays { (grid(texts, &loaded, tray, found)) }
    };
    page(&desk, texts, Tab::Trays, &title, &main).into_response()
}

/// A tray as it lies on the table, each picture to be touched, with the home that was looked for marked.
fn grid(texts: &Texts, loaded: &Loaded, tray: &Tray, found: Option<&DropKind>) -> Markup {
    let columns = tray.rows.iter().map(Vec::len).max().unwrap_or(1).clamp(1, WIDEST);
    let letter = tray.letter.to_string();
    html! {
        section.tray aria-label=(say!(texts, "tray", letter = letter.as_str())) {
            h2 { span.letter { (letter) } " " (words::tray_name(texts, &loaded.catalog, tray)) }
            div class={ "grid columns-" (columns) } {
                @let mut homes = tray.compartments();
                @for row in &tray.rows {
                    @for (home, id) in homes.by_ref().take(row.len()) {
                        @match id {
                            Some(id) => {
                                @let is_found = found.is_some_and(|kind| kind.home == home);
                                div.cell.found[is_found] id={ "at-" (home) } {
                                    a href={ "/put-back?home=" (home) } aria-current=[is_found.then_some("true")] {
                                        span.home { @if is_found { "→ " } (home) } " "
                                        (words::picture(texts, loaded, id))
                                        span.name { (words::piece_name(texts, &loaded.catalog, id)) }
                                    }
                                }
                            }
                            None => { div.cell.empty { span.home { (home) } } }
                        }
                    }
                    @for _ in row.len()..columns { div {} }
                }
            }
        }
    }
}
