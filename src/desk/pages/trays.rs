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
    words,
};
use crate::{
    catalog::{Catalog, Loaded, Tray},
    craft::Home,
    desk::{refusal::Refusal, seller::Seller, state::DeskState},
    lang::{Lang, Texts},
    ledger::Count,
    quoting::{excerpt, quoted},
};

/// Nobody counts more than this in one compartment; a larger figure is a slip of the finger.
const MOST: u32 = 9999;
/// Tables wider than this wrap like text.
const WIDEST: usize = 12;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/trays", get(trays)).route("/parts/{id}", get(part).post(recount))
}

async fn trays(State(desk): State<Arc<DeskState>>, _seller: Seller) -> Result<Response, Refusal> {
    let counts = desk.ledger.run(|ledger, _| ledger.counts()).await?;
    let loaded = desk.catalog.loaded();
    let main = html! {
        h1.unseen { "Trays" }
        (mistakes(&desk, &loaded))
        p.links { a href="/trays/cautions" { "Who can wear what: the card of cautions, to print" } }
        @for one in &loaded.catalog.trays { (tray(one, &loaded, &counts)) }
        section.tray aria-label="Bases" {
            h2 { "Bases" }
            div.bases {
                @for base in &loaded.catalog.bases {
                    (cell(&Cell {
                        id: &base.id, name: &base.name, price: base.price, home: None,
                        picture: words::base_sign(&base.kind, base.finish), loaded: &loaded, counts: &counts,
                    }))
                }
            }
        }
    };
    Ok(page(&desk, Tab::Trays, "Trays", &main).into_response())
}

fn mistakes(desk: &DeskState, loaded: &Loaded) -> Markup {
    html! {
        @if let Some(mistakes) = desk.catalog.mistakes() {
            section.card.mistakes #mistakes aria-label="Mistakes in the catalogue" {
                h2 { "Mistakes in the catalogue" }
                p { "The last good catalogue stays in use until they are mended; this page follows by itself." }
                ul {
                    @for mistake in &mistakes.0 {
                        li {
                            code {
                                (mistake.file)
                                @if mistake.line > 0 { ", line " (mistake.line) ", column " (mistake.column) }
                            }
                            p { (words::sentence(&mistake.found)) " " (words::sentence(&mistake.expected)) }
                        }
                    }
                }
            }
        }
        @if !loaded.remarks.is_empty() {
            section.card aria-label="Remarks" {
                h2 { "Worth a look" }
                ul { @for remark in &loaded.remarks { li { (words::sentence(remark)) } } }
            }
        }
    }
}

fn tray(tray: &Tray, loaded: &Loaded, counts: &BTreeMap<String, Count>) -> Markup {
    let columns = tray.rows.iter().map(Vec::len).max().unwrap_or(1).clamp(1, WIDEST);
    html! {
        section.tray aria-label={ "Tray " (tray.letter) } {
            h2 { span.letter { (tray.letter) } " " (tray.name) }
            div class={ "grid columns-" (columns) } {
                @let mut homes = tray.compartments();
                @for row in &tray.rows {
                    @for (home, id) in homes.by_ref().take(row.len()) {
                        @match id.and_then(|id| loaded.catalog.drop_kind(id)) {
                            Some(kind) => {
                                (cell(&Cell {
                                    id: &kind.id, name: &kind.name, price: kind.price, home: Some(home),
                                    picture: words::picture(Texts::of(Lang::En), loaded, &kind.id), loaded, counts,
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

struct Cell<'a> {
    id: &'a str,
    name: &'a str,
    price: Decimal,
    home: Option<Home>,
    picture: Markup,
    loaded: &'a Loaded,
    counts: &'a BTreeMap<String, Count>,
}

fn count_of(counts: &BTreeMap<String, Count>, id: &str) -> Count {
    counts.get(id).copied().unwrap_or(Count { on_hand: 0, held: 0 })
}

fn cell(cell: &Cell<'_>) -> Markup {
    let count = count_of(cell.counts, cell.id);
    let price = cell.loaded.catalog.table.prices.currency.plain(cell.price);
    html! {
        div.cell id={ "part-" (cell.id) } .out[count.free() == 0] {
            a href={ "/parts/" (cell.id) } aria-label={ (cell.name) ", " (words::free(Texts::of(Lang::En), count)) ": change the count" } {
                @if let Some(home) = cell.home { span.home { (home) } }
                (cell.picture)
                span.name { (cell.name) }
                span.price { (price) }
                span.free { (words::free(Texts::of(Lang::En), count)) }
                @if count.held > 0 { span.held { (count.held) " held" } }
            }
        }
    }
}

async fn part(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Path(id): Path<String>,
) -> Result<Response, Refusal> {
    part_page(&desk, &id, None).await
}

/// What the catalogue knows of a drop or a base.
fn known(catalog: &Catalog, id: &str) -> Option<(String, Decimal, Option<Home>)> {
    let drop = catalog.drop_kind(id).map(|kind| (kind.name.clone(), kind.price, Some(kind.home)));
    drop.or_else(|| catalog.base(id).map(|base| (base.name.clone(), base.price, None)))
}

async fn part_page(desk: &DeskState, id: &str, trouble: Option<&str>) -> Result<Response, Refusal> {
    let counts = desk.ledger.run(|ledger, _| ledger.counts()).await?;
    let loaded = desk.catalog.loaded();
    let Some((name, price, home)) = known(&loaded.catalog, id) else {
        return Err(Refusal::Request(
            StatusCode::NOT_FOUND,
            format!("nothing in the catalogue is called {}", quoted(id)),
        ));
    };
    let count = count_of(&counts, id);
    let free = count.free();
    let base = loaded.catalog.base(id);
    let main = html! {
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        section.card.part {
            div.head {
                @match base { Some(base) => (words::base_sign(&base.kind, base.finish)), None => (words::picture(Texts::of(Lang::En), &loaded, id)) }
                div {
                    h1 { (name) }
                    p { @if let Some(home) = home { span.home { (home) } " " } (loaded.catalog.table.prices.currency.plain(price)) }
                }
            }
            dl.sums {
                dt { "Free" } dd.big { (free) }
                dt { "Held for tickets" } dd { (count.held) }
                dt { "On hand" } dd { (count.on_hand) }
            }
            // A form of their own: Enter in the field keeps what was typed there.
            form #steps method="post" {}
            form.stack method="post" {
                label for="free" { "How many lie in the compartment, free to take?" }
                div.row {
                    button.step form="steps" data-key="less" name="to" value=(free.saturating_sub(1)) disabled[free == 0] aria-label="one less" { "−" }
                    input #free name="free" inputmode="numeric" pattern="[0-9]{1,4}" autocomplete="off" value=(free) required;
                    button.step form="steps" data-key="more" name="to" value=(free + 1) aria-label="one more" { "+" }
                }
                div.row {
                    button.main { "Keep this count" }
                    button.grave form="steps" data-key="sold-out" name="to" value="0" disabled[free == 0] { "Mark sold out" }
                }
            }
        }
        p { a.button.quiet href={ "/trays#part-" (id) } { "To the trays" } }
    };
    Ok(page(desk, Tab::Trays, &name, &main).into_response())
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
        let words = format!("“{}” is no count; type a number from 0 to {MOST}.", excerpt(&form.free));
        return Ok((StatusCode::BAD_REQUEST, part_page(&desk, &id, Some(&words)).await?).into_response());
    };
    let part = id.clone();
    desk.ledger.run_by(&seller, move |ledger, now| ledger.recount(&part, free, now)).await?;
    Ok(Redirect::to(&format!("/parts/{id}")).into_response())
}
