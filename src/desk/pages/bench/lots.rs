//! Lots with their papers, where one of them may be, and what a maker of children's pieces has to ask for.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Query, State},
    http::StatusCode,
    response::Response,
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::{Decimal, prelude::ToPrimitive};
use serde::Deserialize;

use super::{
    bench_page,
    files::{failed, saved},
    in_query, recalled, workshop,
};
use crate::{
    bench::{Recall, recall},
    catalog::{BoughtLot, Catalog, There, VersionListed, Workshop},
    craft::Length,
    desk::{
        editing,
        pages::words::{self, money},
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Texts, message, say},
    quoting::excerpt,
};

/// The page's address.
const HERE: &str = "/bench/lots";

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bench/lots", get(lots)).route("/bench/lots/recall.csv", get(file))
}

#[derive(Deserialize)]
struct Asked {
    /// The lot that is looked for.
    #[serde(default)]
    lot: String,
    /// How many of its sold pieces were shown before.
    #[serde(default)]
    from: usize,
    /// What was just undone.
    undone: Option<u64>,
}

async fn lots(
    State(desk): State<Arc<DeskState>>,
    Query(asked): Query<Asked>,
    Owner(seller): Owner,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let (workshop, mistakes) = workshop(&desk, &loaded.catalog).await?;
    let Some(workshop) = workshop else {
        let main = html! { p { (say!(texts, "bench-no-recipes")) } (for_children(texts)) };
        return Ok(bench_page(&desk, texts, HERE, mistakes.as_ref(), &main));
    };
    let wanted = asked.lot.trim().to_owned();
    let found = if wanted.is_empty() { None } else { Some(found(&desk, &workshop, &wanted).await?) };
    let changes = editing::changes(&desk).await;
    let main = html! {
        (back(texts, &changes, asked.undone, HERE))
        form.row.wraps.ask-for.no-print method="get" action=(HERE) {
            label for="lot" { (say!(texts, "lots-find")) }
            input #lot name="lot" value=(wanted) autocomplete="off" required;
            button { (say!(texts, "lots-look")) }
        }
        @if let Some(recall) = &found { (recalled::card(texts, &loaded.catalog, recall, asked.from)) }
        (bought(texts, &loaded.catalog, &workshop))
        (for_children(texts))
    };
    Ok(bench_page(&desk, texts, HERE, mistakes.as_ref(), &main))
}

/// Where a lot may be; a refusal where there is none of that name.
async fn found(desk: &DeskState, workshop: &Workshop, wanted: &str) -> Result<Recall, Refusal> {
    let catalog = Arc::clone(&desk.catalog.loaded().catalog);
    let (bought, lot) = (workshop.clone(), wanted.to_owned());
    let found = desk.ledger.look(move |ledger| recall(&catalog, &bought, ledger, &lot)).await?;
    found.ok_or_else(|| Refusal::Said(StatusCode::NOT_FOUND, message!("lots-none", found = excerpt(wanted))))
}

/// All sold pieces that may have a lot, as a file.
async fn file(
    State(desk): State<Arc<DeskState>>,
    Query(asked): Query<Asked>,
    Owner(_): Owner,
) -> Result<Response, Refusal> {
    let (workshop, _) = workshop(&desk, &desk.catalog.loaded().catalog).await?;
    let none = || Refusal::Said(StatusCode::NOT_FOUND, message!("lots-none", found = excerpt(asked.lot.trim())));
    let recall = found(&desk, &workshop.ok_or_else(none)?, asked.lot.trim()).await?;
    let bytes = recall.table().map_err(|error| failed(&error))?;
    Ok(saved("recall.csv", "text/csv; charset=utf-8", bytes))
}

fn bought(texts: &Texts, catalog: &Catalog, workshop: &Workshop) -> Markup {
    let currency = catalog.table.prices.currency;
    html! {
        section.card aria-label=(say!(texts, "lots-bought")) {
            h2 { (say!(texts, "lots-bought")) }
            p.no-print { a.button href="/bench/lots/write" { (say!(texts, "lot-write")) } }
            ul.differences {
                @for lot in newest_first(workshop) {
                    li {
                        strong { (workshop.part(&lot.part).map_or(lot.part.as_str(), |part| &part.name)) } " · "
                        a href={ (HERE) "?lot=" (in_query(&lot.lot)) } { (lot.lot) } br;
                        span.faint {
                            (lot.day) " · " (amount(texts, workshop, lot)) " · " (money(texts, lot.bought.price, currency)) " · "
                            @match &lot.paper {
                                Some(paper) => (say!(texts, "lots-paper", paper = paper.as_str())),
                                None => (say!(texts, "lots-no-paper")),
                            }
                            " "
                            @let key = lot.key();
                            a.no-print href={
                                (HERE) "/change?part=" (in_query(&key.part)) "&lot=" (in_query(&key.lot)) "&day=" (in_query(&key.day))
                            } { (say!(texts, "lot-change", lot = lot.lot.as_str())) }
                        }
                    }
                }
            }
            p.faint { (say!(texts, "lots-about")) }
        }
    }
}

/// The lots, the newest first.
fn newest_first(workshop: &Workshop) -> Vec<&BoughtLot> {
    let mut lots: Vec<&BoughtLot> = workshop.lots.iter().collect();
    lots.sort_by_key(|lot| std::cmp::Reverse(lot.day.to_string()));
    lots
}

/// The way back from the last change, and what was taken back.
pub(super) fn back(texts: &Texts, changes: &[VersionListed], undone: Option<u64>, here: &str) -> Markup {
    let undone = undone.and_then(|number| changes.iter().find(|one| one.number == number));
    let last = changes.iter().find(|one| !one.is_undone && one.takes_back.is_none());
    html! {
        @if let Some(undone) = undone {
            p.done-note role="status" { (say!(texts, "table-undone", what = undone.words.as_str())) }
        }
        @if let Some(last) = last {
            form.row.wraps.own-undo.no-print method="post" action="/table/undo" {
                input type="hidden" name="number" value=(last.number);
                input type="hidden" name="back" value=(here);
                button.quiet { (say!(texts, "table-undo", what = last.words.as_str())) }
            }
        }
    }
}

/// How much came, and what of it was broken.
fn amount(texts: &Texts, workshop: &Workshop, lot: &BoughtLot) -> String {
    let by_length = workshop.part(&lot.part).is_some_and(|part| matches!(part.there, There::Spools { .. }));
    let said = |amount: Decimal| {
        if by_length {
            words::length(texts, Length::from_mm(amount.to_f64().unwrap_or_default()))
        } else {
            texts.lang.number(amount.normalize())
        }
    };
    let all = said(lot.bought.amount);
    if lot.bought.broken.is_zero() {
        all
    } else {
        say!(texts, "lots-broken", all = all, broken = said(lot.bought.broken))
    }
}

/// What a maker of pieces for children has to ask for: a list, and who says what of it applies.
fn for_children(texts: &Texts) -> Markup {
    let all = ["age", "test", "certificate", "label", "small-parts", "records"];
    html! {
        section.card aria-label=(say!(texts, "lots-children")) {
            h2 { (say!(texts, "lots-children")) }
            p { (say!(texts, "lots-children-about")) }
            ul { @for one in all { li { (texts.get(&format!("lots-children-{one}"))) } } }
            p.grave { (say!(texts, "lots-children-who")) }
        }
    }
}
