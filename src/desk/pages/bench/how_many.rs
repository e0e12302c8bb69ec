//! How many of everything to make for the next show, and the shows to look back on.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Query, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use serde::Deserialize;

use super::{SHOWS, backup, bench_page, plot, workshop};
use crate::{
    bench::{Basis, Number, PastShow, numbers, past_shows},
    catalog::Catalog,
    desk::{pages::words, refusal::Refusal, seller::Seller, state::DeskState},
    lang::{Texts, message, say},
    ledger::{Role, ShowKind},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bench", get(how_many))
}

#[derive(Deserialize)]
struct Asked {
    /// What kind of show it is for.
    #[serde(default)]
    kind: String,
}

async fn how_many(
    State(desk): State<Arc<DeskState>>,
    Query(asked): Query<Asked>,
    seller: Seller,
) -> Result<Response, Refusal> {
    // What a helper does at the bench is to count.
    if seller.role == Role::Helper {
        return Ok(Redirect::to("/trays/count").into_response());
    }
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let catalog = &loaded.catalog;
    let kind = ShowKind::from_code(&asked.kind);
    let (past, counts) = desk.ledger.look(|ledger| Ok((past_shows(ledger, SHOWS)?, ledger.counts()?))).await?;
    let (workshop, mistakes) = workshop(&desk, catalog).await?;
    let numbers = numbers(catalog, workshop.as_ref(), &past, &counts, kind).map_err(|error| {
        tracing::warn!("no numbers: {error}");
        Refusal::Said(StatusCode::UNPROCESSABLE_ENTITY, message!("bench-no-numbers"))
    })?;
    let main = html! {
        @if !past.is_empty() { (backup::reminder(&desk, texts)) }
        p { (say!(texts, "bench-from-shows", n = past.len())) }
        (for_which(texts, kind))
        (tables(texts, catalog, &numbers))
        p.faint { (say!(texts, "bench-how-reckoned")) }
        @if workshop.is_none() && mistakes.is_none() { p.faint { (say!(texts, "bench-no-recipes")) } }
        (looking_back(texts, &past))
    };
    Ok(bench_page(&desk, texts, "/bench", mistakes.as_ref(), &main))
}

/// For which kind of show: each as large as shows of its kind were.
fn for_which(texts: &Texts, kind: Option<ShowKind>) -> Markup {
    html! {
        p.row.wraps.no-print {
            a.button.quiet href="/bench" aria-current=[kind.is_none().then_some("true")] { (say!(texts, "bench-usual-show")) }
            @for one in ShowKind::REAL {
                a.button.quiet href={ "/bench?kind=" (one.code()) } aria-current=[(kind == Some(one)).then_some("true")] {
                    (words::capital(&texts.get(&format!("show-kind-{}", one.code()))))
                }
            }
        }
    }
}

/// What is to be made first, and folded away what there is enough of.
fn tables(texts: &Texts, catalog: &Catalog, numbers: &[Number]) -> Markup {
    let scale = plot::scale(numbers.iter().map(|one| (&one.number, one.on_hand)));
    let (make, enough): (Vec<&Number>, Vec<&Number>) = numbers.iter().partition(|one| one.number.make > 0);
    html! {
        p.faint.legend {
            span.sample.usual {} (say!(texts, "bench-legend-usual")) " "
            span.sample.there {} (say!(texts, "bench-legend-there")) " "
            span.sample.take {} (say!(texts, "bench-legend-take"))
        }
        @if make.is_empty() { p { (say!(texts, "bench-nothing-to-make")) } }
        @else { (table(texts, catalog, &make, scale)) }
        @if !enough.is_empty() {
            details.card #enough {
                summary { (say!(texts, "bench-enough")) " " span.tally { (enough.len()) } }
                (table(texts, catalog, &enough, scale))
            }
        }
    }
}

fn table(texts: &Texts, catalog: &Catalog, numbers: &[&Number], scale: u32) -> Markup {
    html! {
        table.made {
            thead {
                tr {
                    th.short { (say!(texts, "sold-home")) }
                    th { (say!(texts, "sold-part")) }
                    th.figure { (say!(texts, "bench-there")) }
                    th.figure { (say!(texts, "bench-make")) }
                }
            }
            tbody {
                @for one in numbers {
                    tr {
                        td { (one.home.map(|home| home.to_string()).unwrap_or_default()) }
                        td {
                            (words::part_name(texts, catalog, &one.id))
                            (plot::bar(&one.number, one.on_hand, scale))
                            span.faint { (in_words(texts, one)) }
                        }
                        td.figure { (one.on_hand) }
                        td.figure { strong { (one.number.make) } }
                    }
                }
            }
        }
    }
}

/// The bar in words, and what it rests on.
fn in_words(texts: &Texts, one: &Number) -> String {
    let number = &one.number;
    let percent = (number.chance_sold_out * 100.0).round() as u32;
    let usual = say!(texts, "bench-usually", from = number.usually_from, to = number.usually_to, percent = percent);
    let basis = match one.basis {
        Basis::Shows if one.shows.1 > 0 => say!(texts, "bench-basis-sold-out", n = one.shows.0, out = one.shows.1),
        Basis::Shows => say!(texts, "bench-basis-shows", n = one.shows.0),
        Basis::Sort => say!(texts, "bench-basis-sort"),
        Basis::Guess => say!(texts, "bench-basis-guess"),
    };
    format!("{usual} {basis}")
}

/// The shows with what they came to for the maker.
fn looking_back(texts: &Texts, past: &[PastShow]) -> Markup {
    html! {
        @if !past.is_empty() {
            h2 { (say!(texts, "bench-after")) }
            ul.links.shows {
                @for show in past {
                    li {
                        a href={ "/bench/shows/" (show.show) } {
                            @match &show.about.place {
                                Some(place) => (say!(texts, "show-name-at", show = show.show, place = place.as_str())),
                                None => (say!(texts, "show-name", show = show.show)),
                            }
                        }
                    }
                }
            }
        }
    }
}
