//! The trays as they lie on the table, with their counts, and the catalogue's mistakes.

use std::{collections::BTreeMap, sync::Arc};

use axum::{
    Form, Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;

use super::{
    frame::{Tab, page},
    mistakes,
    sign_in::alert,
    words,
};
use crate::{
    catalog::{Catalog, Loaded, Tray},
    craft::Home,
    desk::{refusal::Refusal, seller::Seller, state::DeskState},
    lang::{Message, Texts, message, say},
    ledger::{Count, Role},
    quoting::excerpt,
};

/// Nobody counts more than this in one compartment; a larger figure is a slip of the finger.
const MOST: u32 = 9999;
/// Tables wider than this wrap like text.
const WIDEST: usize = 12;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/trays", get(trays)).route("/parts/{id}", get(part).post(recount))
}

async fn trays(State(desk): State<Arc<DeskState>>, seller: Seller) -> Result<Response, Refusal> {
    let counts = desk.ledger.run(|ledger, _| ledger.counts()).await?;
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let table = Table { texts, loaded: &loaded, counts: &counts };
    let title = say!(texts, "tab-trays");
    let main = html! {
        h1.unseen { (title) }
        (what_is_wrong(texts, &desk, &loaded))
        p.links.row.wraps {
            a href="/trays/count" { (say!(texts, "count-title")) }
            a href="/trays/cautions" { (say!(texts, "trays-card")) }
            a href="/table/paper" { (say!(texts, "labels-page")) }
            a href="/put-back" { (say!(texts, "put-back")) }
            @if seller.role == Role::Seller { a href="/table" { (say!(texts, "trays-change")) } }
        }
        @for one in &loaded.catalog.trays { (table.tray(one)) }
        section.tray aria-label=(say!(texts, "trays-bases")) {
            h2 { (say!(texts, "trays-bases")) }
            div.bases {
                @for base in &loaded.catalog.bases {
                    (table.cell(&Cell {
                        id: &base.id, name: &base.name, price: base.price, home: None,
                        picture: words::base_sign(&base.kind, base.finish),
                    }))
                }
            }
        }
    };
    Ok(page(&desk, texts, Tab::Trays, &title, &main).into_response())
}

fn what_is_wrong(texts: &Texts, desk: &DeskState, loaded: &Loaded) -> Markup {
    html! {
        @if let Some(told) = desk.catalog.mistakes() {
            section.card.mistakes #mistakes aria-label=(say!(texts, "mistakes-title")) {
                h2 { (say!(texts, "mistakes-title")) }
                p { (say!(texts, "mistakes-about")) " " (say!(texts, "mistake-to-do")) }
                (mistakes::list(texts, &told))
            }
        }
        @if !loaded.remarks.is_empty() {
            section.card aria-label=(say!(texts, "remarks")) {
                h2 { (say!(texts, "remarks-title")) }
                ul { @for remark in &loaded.remarks { li { (mistakes::detail(texts, remark)) } } }
            }
        }
    }
}

/// What the table looks like to its reader.
struct Table<'a> {
    texts: &'static Texts,
    loaded: &'a Loaded,
    counts: &'a BTreeMap<String, Count>,
}

struct Cell<'a> {
    id: &'a str,
    name: &'a str,
    price: Decimal,
    home: Option<Home>,
    picture: Markup,
}

impl Table<'_> {
    fn tray(&self, tray: &Tray) -> Markup {
        let (texts, catalog) = (self.texts, &self.loaded.catalog);
        let columns = tray.rows.iter().map(Vec::len).max().unwrap_or(1).clamp(1, WIDEST);
        let letter = tray.letter.to_string();
        html! {
            section.tray aria-label=(say!(texts, "tray", letter = letter.as_str())) {
                h2 { span.letter { (letter) } " " (words::tray_name(texts, catalog, tray)) }
                div class={ "grid columns-" (columns) } {
                    @let mut homes = tray.compartments();
                    @for row in &tray.rows {
                        @for (home, id) in homes.by_ref().take(row.len()) {
                            @match id.and_then(|id| catalog.drop_kind(id)) {
                                Some(kind) => {
                                    (self.cell(&Cell {
                                        id: &kind.id, name: &kind.name, price: kind.price, home: Some(home),
                                        picture: words::picture(texts, self.loaded, &kind.id),
                                    }))
                                }
                                None => { div.cell.empty { span.home { (home) } } }
                            }
                        }
                        // A row that is shorter than the tray leaves its places open.
                        @for _ in row.len()..columns { div {} }
                    }
                }
            }
        }
    }

    fn cell(&self, cell: &Cell<'_>) -> Markup {
        let (texts, catalog) = (self.texts, &self.loaded.catalog);
        let count = count_of(self.counts, cell.id);
        let name = catalog.called(texts.lang.code(), cell.id, cell.name);
        let free = words::free(texts, count);
        html! {
            div.cell id={ "part-" (cell.id) } .out[count.free() == 0] {
                a href={ "/parts/" (cell.id) } {
                    @if let Some(home) = cell.home { span.home { (home) } " " }
                    (cell.picture)
                    span.name { (name) } " "
                    span.price { (words::money(texts, cell.price, catalog.table.prices.currency)) } " "
                    span.free { (free) } " "
                    span.unseen { (say!(texts, "cell-change")) }
                    @if count.held > 0 { " " span.held { (say!(texts, "cell-held", n = count.held)) } }
                }
            }
        }
    }
}

fn count_of(counts: &BTreeMap<String, Count>, id: &str) -> Count {
    counts.get(id).copied().unwrap_or(Count { on_hand: 0, held: 0 })
}

async fn part(State(desk): State<Arc<DeskState>>, seller: Seller, Path(id): Path<String>) -> Result<Response, Refusal> {
    part_page(&desk, seller.texts, &id, None).await
}

/// What the catalogue knows of a drop or a base.
fn known<'a>(catalog: &'a Catalog, texts: &Texts, id: &'a str) -> Option<(&'a str, Decimal, Option<Home>)> {
    let drop = catalog.drop_kind(id).map(|kind| (kind.name.as_str(), kind.price, Some(kind.home)));
    let (own, price, home) = drop.or_else(|| catalog.base(id).map(|base| (base.name.as_str(), base.price, None)))?;
    Some((catalog.called(texts.lang.code(), id, own), price, home))
}

async fn part_page(desk: &DeskState, texts: &Texts, id: &str, trouble: Option<&Message>) -> Result<Response, Refusal> {
    let counts = desk.ledger.run(|ledger, _| ledger.counts()).await?;
    let loaded = desk.catalog.loaded();
    let Some((name, price, home)) = known(&loaded.catalog, texts, id) else {
        return Err(Refusal::Said(StatusCode::NOT_FOUND, message!("refused-no-part", name = excerpt(id))));
    };
    let count = count_of(&counts, id);
    let free = count.free();
    let base = loaded.catalog.base(id);
    let main = html! {
        (alert(texts, trouble))
        section.card.part {
            div.head {
                @match base { Some(base) => (words::base_sign(&base.kind, base.finish)), None => (words::picture(texts, &loaded, id)) }
                div {
                    h1 { (name) }
                    p { @if let Some(home) = home { span.home { (home) } " " } (words::money(texts, price, loaded.catalog.table.prices.currency)) }
                }
            }
            dl.sums {
                dt { (say!(texts, "part-free")) } dd.big { (free) }
                dt { (say!(texts, "part-held")) } dd { (count.held) }
                dt { (say!(texts, "part-on-hand")) } dd { (count.on_hand) }
            }
            // A form of their own: Enter in the field keeps what was typed there.
            form #steps method="post" {}
            form.stack method="post" {
                label for="free" { (say!(texts, "part-how-many")) }
                div.row {
                    button.step form="steps" data-key="less" name="to" value=(free.saturating_sub(1)) disabled[free == 0] aria-label=(say!(texts, "part-one-less")) { "−" }
                    input #free name="free" inputmode="numeric" pattern="[0-9]{1,4}" autocomplete="off" value=(free) required;
                    button.step form="steps" data-key="more" name="to" value=(free + 1) aria-label=(say!(texts, "part-one-more")) { "+" }
                }
                div.row {
                    button.main { (say!(texts, "part-keep")) }
                    button.grave form="steps" data-key="sold-out" name="to" value="0" disabled[free == 0] { (say!(texts, "part-sold-out")) }
                }
            }
        }
        p { a.button.quiet href={ "/trays#part-" (id) } { (say!(texts, "to-trays")) } }
    };
    Ok(page(desk, texts, Tab::Trays, name, &main).into_response())
}

#[derive(Deserialize)]
struct Recount {
    #[serde(default)]
    free: String,
    to: Option<u32>,
}

async fn recount(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<String>,
    Form(form): Form<Recount>,
) -> Result<Response, Refusal> {
    let typed = form.to.or_else(|| form.free.trim().parse().ok()).filter(|free| *free <= MOST);
    let Some(free) = typed else {
        let why = message!("part-no-count", typed = excerpt(&form.free), most = MOST);
        return Ok((StatusCode::BAD_REQUEST, part_page(&desk, seller.texts, &id, Some(&why)).await?).into_response());
    };
    let part = id.clone();
    desk.ledger.run_by(&seller, move |ledger, now| ledger.recount(&part, free, now)).await?;
    Ok(Redirect::to(&format!("/parts/{id}")).into_response())
}
