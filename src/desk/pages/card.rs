//! The cautions of everything on the table, as a card to print and lay beside the trays.

use std::sync::Arc;

use axum::{
    Router,
    extract::State,
    response::{IntoResponse, Response},
    routing::get,
};
use maud::{Markup, html};

use super::{
    frame::{Tab, page},
    signs, words,
};
use crate::{
    catalog::{Catalog, Tray},
    caution::{DEFERRAL, Status, Verdict},
    craft::{Base, Home, Piece, Wearer},
    desk::{auth::Seller, error::Refusal, server::House},
};

pub(super) fn routes() -> Router<Arc<House>> {
    Router::new().route("/trays/cautions", get(card))
}

async fn card(State(house): State<Arc<House>>, _seller: Seller) -> Result<Response, Refusal> {
    let loaded = house.shelf.loaded();
    let catalog = &loaded.catalog;
    let main = html! {
        div.caution-card {
            h1 { (catalog.table.name) ": who can wear it?" }
            p { "Cautions under the rules of the " (catalog.rules.name) ", one by one. What hangs together can weigh too much or "
                "be too long; the ticket says so." }
            p.row.no-print {
                button type="button" data-prints hidden { "Print this card" }
                a.button.quiet href="/trays" { "To the trays" }
            }
            @for tray in &catalog.trays { (of_tray(catalog, tray)) }
            (of_bases(catalog))
            (rules(catalog))
            p.deferral { strong { (DEFERRAL) } }
        }
    };
    Ok(page(&house, Tab::Trays, "Cautions", &main).into_response())
}

fn of_tray(catalog: &Catalog, tray: &Tray) -> Markup {
    let cells = tray.compartments().filter_map(|(home, id)| Some((home, catalog.drop_kind(id?)?)));
    table(
        &format!("Tray {}", tray.letter),
        &tray.name,
        "Drop",
        cells.map(|(home, kind)| {
            let verdicts = Wearer::ANSWERS.map(|wearer| catalog.drop_cautions(kind, wearer));
            (Some(home), kind.name.as_str(), verdicts)
        }),
    )
}

fn of_bases(catalog: &Catalog) -> Markup {
    let alone = |base: &Base, wearer| {
        let piece = Piece { base: base.id.clone(), length: None, wearer, drops: vec![] };
        // A base of the catalogue by itself is always a piece of it.
        catalog.cautions(&piece).unwrap_or_default()
    };
    let rows = catalog.bases.iter().map(|base| {
        let verdicts = Wearer::ANSWERS.map(|wearer| alone(base, wearer));
        (None, base.name.as_str(), verdicts)
    });
    table("Bases", "without drops, at the length that lies ready", "Base", rows)
}

/// One table; what has no home on a tray, like a base, has no column for it.
fn table<'a>(
    title: &str,
    of: &str,
    what: &str,
    rows: impl Iterator<Item = (Option<Home>, &'a str, [Verdict; 4])>,
) -> Markup {
    let rows: Vec<_> = rows.collect();
    let homes = rows.iter().any(|(home, ..)| home.is_some());
    html! {
        section aria-label=(title) {
            h2 { (title) " " span.faint { (of) } }
            table {
                thead {
                    tr {
                        @if homes { th {} }
                        th { (what) }
                        @for wearer in Wearer::ANSWERS { th { (title_of(wearer)) } }
                    }
                }
                tbody {
                    @for (home, name, verdicts) in rows {
                        tr {
                            @if homes { td.home { @if let Some(home) = home { (home) } } }
                            th scope="row" { (name) }
                            @for (verdict, wearer) in verdicts.iter().zip(Wearer::ANSWERS) {
                                td data-band=(title_of(wearer)) { (band(verdict)) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// A wearer as a heading.
fn title_of(wearer: Wearer) -> String {
    words::sentence(words::wearer(wearer)).trim_end_matches('.').to_owned()
}

/// One drop for one wearer: whether it suits, and why not or what to mind.
fn band(verdict: &Verdict) -> Markup {
    html! {
        (signs::standing(verdict))
        @if !verdict.cautions.is_empty() {
            ul {
                @for one in &verdict.cautions {
                    li .grave[one.grave] { (signs::caution(one.code)) (one.code.word()) }
                }
            }
        }
    }
}

fn rules(catalog: &Catalog) -> Markup {
    html! {
        section.rules aria-label="The rules" {
            h2 { "What the signs mean and where they come from" }
            dl {
                @for rule in &catalog.rules.rules {
                    dt { (signs::caution(rule.code)) (rule.code.word()) }
                    dd {
                        (rule.code.meaning()) " "
                        span.faint {
                            (rule.cited()) ": " (rule.figure) "."
                            @if rule.within.is_some() { " Below it: " (Status::Practice.word()) "." }
                        }
                    }
                }
            }
        }
    }
}
