//! What lies in the drawers and on the spools: every part with its count, one counted anew, added to, written down or struck
//! out; and what was cut at the table.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, Query, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use maud::{Markup, html};
use serde::Deserialize;

use super::{
    begin,
    lots::back,
    part_typed::{self, TypedPart},
    titled, workshop,
    write_lot::{at_the_bench, used_since},
};
use crate::{
    bench::{TABLE_CUTS, TableCut},
    catalog::{Act, BoughtPart, Catalog, PartCount, Place, PutAway, There, Workshop},
    craft::Length,
    desk::{
        editing,
        pages::{
            table::{
                form::{TableForm, marks},
                refused::{done_or_refused, refused},
            },
            words,
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::KeptPage,
    prep::cuts::Tenths,
    quoting::excerpt,
};

/// The page with all parts.
const HERE: &str = "/bench/drawers";
/// So many lengths that were cut at the table are shown.
const CUTS_SHOWN: usize = 50;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/bench/drawers", get(all))
        .route("/bench/drawers/new", get(empty).post(new))
        .route("/bench/drawers/part/{id}", get(part))
        .route("/bench/drawers/part/{id}/count", post(count))
        .route("/bench/drawers/part/{id}/add", post(add))
        .route("/bench/drawers/part/{id}/strike", post(strike))
}

#[derive(Deserialize)]
struct Asked {
    /// What was just undone.
    undone: Option<u64>,
}

async fn all(
    State(desk): State<Arc<DeskState>>,
    Query(asked): Query<Asked>,
    Owner(seller): Owner,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let (workshop, mistakes) = workshop(&desk, &loaded.catalog).await?;
    let changes = editing::changes(&desk).await;
    let Some(workshop) = workshop else {
        let currency = loaded.catalog.table.prices.currency;
        let main = html! {
            (back(texts, &changes, asked.undone, HERE))
            @if mistakes.is_none() { (begin::form(texts, currency, "", "1")) }
        };
        return Ok(super::bench_page(&desk, texts, HERE, mistakes.as_ref(), &main));
    };
    let cuts = desk.ledger.look(|ledger| ledger.pages::<TableCut>(TABLE_CUTS)).await?;
    let main = html! {
        (back(texts, &changes, asked.undone, HERE))
        section.card aria-label=(say!(texts, "drawers-title")) {
            p.no-print { a.button href="/bench/drawers/new" { (say!(texts, "part-new")) } }
            ul.differences {
                @for part in &workshop.parts {
                    li {
                        a href={ (HERE) "/part/" (part.id) } { (part.name) } br;
                        span.faint { (there(texts, &part.there)) }
                    }
                }
            }
            p.faint { (say!(texts, "drawers-about")) }
        }
        (cut_at_the_table(texts, &loaded.catalog, &workshop, &cuts))
    };
    Ok(super::bench_page(&desk, texts, HERE, mistakes.as_ref(), &main))
}

fn length(texts: &Texts, tenths: Tenths) -> String {
    words::length(texts, Length::from_mm(tenths.mm()))
}

/// What lies there of a part, in words: pieces, or each spool and all of them together.
fn there(texts: &Texts, there: &There) -> String {
    match there {
        There::Pieces(count) => say!(texts, "drawers-pieces", n = *count),
        There::Spools { lengths, .. } if lengths.is_empty() => say!(texts, "drawers-no-spools"),
        There::Spools { lengths, .. } => {
            let each: Vec<String> = lengths.iter().map(|one| length(texts, *one)).collect();
            let all = Tenths(lengths.iter().fold(0, |sum, one| sum.saturating_add(one.0)));
            say!(texts, "drawers-spools", each = each.join(", "), all = length(texts, all))
        }
    }
}

/// What came off spools and out of drawers for lengths that lay not ready, the newest first.
fn cut_at_the_table(texts: &Texts, catalog: &Catalog, workshop: &Workshop, cuts: &[KeptPage<TableCut>]) -> Markup {
    let part = |id: &str| workshop.part(id).map_or(id, |part| &part.name).to_owned();
    html! {
        section.card aria-label=(say!(texts, "table-cuts-title")) {
            h2 { (say!(texts, "table-cuts-title")) }
            p.faint { (say!(texts, "table-cuts-about")) }
            ul.differences {
                @for kept in cuts.iter().rev().take(CUTS_SHOWN) {
                    @let cut = &kept.page;
                    li {
                        a href={ "/tickets/" (kept.id) } { (cut.number) } " · " (words::day(texts, kept.at)) " · "
                        (words::part_name(texts, catalog, &cut.base)) ", " (words::length(texts, cut.length)) br;
                        span.faint {
                            @for off in &cut.off {
                                span.line {
                                    (say!(texts, "table-cuts-off", part = part(&off.part), cut = length(texts, off.cut), from = length(texts, off.from))) " "
                                    @if off.kept { (say!(texts, "cuts-stays", length = length(texts, off.left))) }
                                    @else { (say!(texts, "cuts-lost", length = length(texts, off.left))) }
                                }
                            }
                            @for (id, n) in &cut.pieces { span.line { (n) " × " (part(id)) } }
                        }
                        @for id in &cut.missing { p.grave { (say!(texts, "table-cuts-missing", part = part(id))) } }
                    }
                }
            }
        }
    }
}

async fn empty(State(desk): State<Arc<DeskState>>, Owner(seller): Owner) -> Result<Response, Refusal> {
    at_the_bench(&desk).await?;
    Ok(new_page(&desk, seller.texts, &TypedPart::default(), None))
}

fn new_page(desk: &DeskState, texts: &Texts, typed: &TypedPart, trouble: Option<&str>) -> Response {
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    let main = html! {
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        form.card.stack method="post" action="/bench/drawers/new" {
            (typed.fields(texts, currency))
            button.main { (say!(texts, "lot-keep")) }
        }
        p.no-print { a.button.quiet href=(HERE) { (say!(texts, "go-back")) } }
    };
    titled(desk, texts, "/bench/drawers/new", &say!(texts, "part-new"), None, &main)
}

async fn new(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let workshop = at_the_bench(&desk).await?;
    let typed = TypedPart::of_form(&form);
    let told = match typed.read(texts, &workshop, desk.catalog.loaded().catalog.table.prices.currency) {
        Ok(told) => told,
        Err(words) => {
            let page = new_page(&desk, texts, &typed, Some(&words));
            return Ok((StatusCode::BAD_REQUEST, page).into_response());
        }
    };
    let did = say!(texts, "part-did-new", part = told.name.as_str());
    Ok(done_or_refused(&desk, &form, Act::NewPart { told }, did, ("/bench/drawers/new", HERE)).await)
}

fn nothing(id: &str) -> Refusal {
    Refusal::Said(StatusCode::NOT_FOUND, message!("part-none", part = excerpt(id)))
}

async fn part(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Path(id): Path<String>,
) -> Result<Response, Refusal> {
    let workshop = at_the_bench(&desk).await?;
    let part = workshop.part(&id).ok_or_else(|| nothing(&id))?;
    Ok(part_page(&desk, seller.texts, &workshop, part, None).await)
}

async fn part_page(
    desk: &Arc<DeskState>,
    texts: &Texts,
    workshop: &Workshop,
    part: &BoughtPart,
    trouble: Option<&str>,
) -> Response {
    let files = editing::files(desk).await.ok();
    let seen = marks(files.as_ref(), &[Place::Part(part.id.clone())]);
    let address = format!("{HERE}/part/{}", part.id);
    let by_length = matches!(part.there, There::Spools { .. });
    let main = html! {
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        p { (there(texts, &part.there)) }
        @if used_since(desk, workshop, &part.id).is_some() { p.faint { (say!(texts, "part-less-than-file")) } }
        form.card.stack method="post" action={ (address) "/add" } {
            h2 { (say!(texts, "part-add")) }
            (seen)
            div {
                label for="more" { @if by_length { (say!(texts, "part-add-spools")) } @else { (say!(texts, "part-add-pieces")) } }
                input #more name="more" autocomplete="off" required maxlength=(part_typed::LONGEST_LIST);
            }
            button.main { (say!(texts, "part-add-do")) }
        }
        form.card.stack method="post" action={ (address) "/count" } {
            h2 { (say!(texts, "part-count")) }
            (seen)
            div {
                label for="there" { @if by_length { (say!(texts, "part-count-spools")) } @else { (say!(texts, "part-count-pieces")) } }
                input #there name="there" value=(part_typed::as_typed(&PartCount::of(&part.there))) autocomplete="off"
                    maxlength=(part_typed::LONGEST_LIST);
            }
            button { (say!(texts, "lot-keep")) }
        }
        form method="post" action={ (address) "/strike" } { (seen) button.grave { (say!(texts, "part-strike")) } }
        p.no-print { a.button.quiet href=(HERE) { (say!(texts, "go-back")) } }
    };
    let title = format!("{} · {}", say!(texts, "drawers-title"), part.name);
    titled(desk, texts, &address, &title, None, &main)
}

async fn count(
    State(desk): State<Arc<DeskState>>,
    Path(id): Path<String>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let workshop = at_the_bench(&desk).await?;
    let part = workshop.part(&id).ok_or_else(|| nothing(&id))?;
    let there = match part_typed::counted(texts, part, form.text("there")) {
        Ok(there) => there,
        Err(words) => {
            let page = part_page(&desk, texts, &workshop, part, Some(&words)).await;
            return Ok((StatusCode::BAD_REQUEST, page).into_response());
        }
    };
    let did = say!(texts, "part-did-count", part = part.name.as_str());
    let act = Act::CountPart { id: id.clone(), there: there.clone() };
    let action = format!("{HERE}/part/{id}/count");
    Ok(match editing::count_part(&desk, act, form.seen(), did, (id, there)).await {
        Ok(_) => Redirect::to(HERE).into_response(),
        Err(error) => refused(&desk, &form, &error, (&action, HERE)).await,
    })
}

async fn add(State(desk): State<Arc<DeskState>>, Path(id): Path<String>, form: TableForm) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let workshop = at_the_bench(&desk).await?;
    let part = workshop.part(&id).ok_or_else(|| nothing(&id))?;
    let more = match part_typed::counted(texts, part, form.text("more")) {
        Ok(PartCount::Pieces(0)) => Err(say!(texts, "lot-no-amount", part = part.name.as_str())),
        Ok(PartCount::Spools(more)) if more.is_empty() => Err(say!(texts, "cuts-no-length", found = "")),
        read => read,
    };
    let more = match more {
        Ok(more) => PutAway::of(more, used_since(&desk, &workshop, &id)),
        Err(words) => {
            let page = part_page(&desk, texts, &workshop, part, Some(&words)).await;
            return Ok((StatusCode::BAD_REQUEST, page).into_response());
        }
    };
    let did = say!(texts, "part-did-add", part = part.name.as_str());
    let action = format!("{HERE}/part/{id}/add");
    Ok(done_or_refused(&desk, &form, Act::AddToPart { id, more }, did, (&action, HERE)).await)
}

async fn strike(
    State(desk): State<Arc<DeskState>>,
    Path(id): Path<String>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let workshop = at_the_bench(&desk).await?;
    let name = workshop.part(&id).map_or(id.as_str(), |part| &part.name);
    let did = say!(form.seller.texts, "part-did-strike", part = name);
    let action = format!("{HERE}/part/{id}/strike");
    Ok(done_or_refused(&desk, &form, Act::StrikePart { id: id.clone() }, did, (&action, HERE)).await)
}
