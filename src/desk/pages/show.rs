//! The running show and the ones that are closed.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Response},
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::Decimal;

use super::{
    frame::{Tab, page},
    words,
};
use crate::{
    catalog::Catalog,
    desk::{refusal::Refusal, seller::Seller, state::DeskState},
    ledger::{CloseOut, Listed},
    money::Currency,
};

/// Earlier shows that are listed; those before them still have their pages.
const EARLIER_SHOWN: usize = 200;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/show", get(running)).route("/shows/{id}", get(closed))
}

async fn running(State(desk): State<Arc<DeskState>>, _seller: Seller) -> Result<Response, Refusal> {
    let (show, sums) = desk.ledger.look(|ledger| Ok((ledger.show()?, ledger.so_far()?))).await?;
    let loaded = desk.catalog.loaded();
    let currency = sums.currency.unwrap_or(loaded.catalog.table.prices.currency);
    let main = html! {
        h1 { "Show " (show.id) }
        p.faint { "Running since " (words::clock(show.opened, desk.clock.now())) }
        (sheet(&sums, currency, &loaded.catalog))
        p { a.button.grave href="/show/close" { "Close the show" } }
        // Every show before the running one is closed: closing one is what opens the next.
        @if show.id > 1 {
            h2 { "Earlier shows" }
            ul.links { @for id in (1..show.id).rev().take(EARLIER_SHOWN) { li { a href={ "/shows/" (id) } { "Show " (id) } } } }
        }
    };
    Ok(page(&desk, Tab::Show, "Show", &main).into_response())
}

async fn closed(State(desk): State<Arc<DeskState>>, _seller: Seller, Path(id): Path<i64>) -> Result<Response, Refusal> {
    let (closed, came_after) =
        desk.ledger.look(move |ledger| Ok((ledger.closed_show(id)?, ledger.came_after(id)?))).await?;
    let Some(closed) = closed else {
        return Err(Refusal::Request(StatusCode::NOT_FOUND, format!("show {id} has not been closed at this desk")));
    };
    let loaded = desk.catalog.loaded();
    let main = html! {
        h1 { "Close-out of show " (id) }
        p.faint { (loaded.catalog.table.name) ", closed " (words::clock(closed.at, desk.clock.now())) }
        (sheet(&closed.sums, closed.currency, &loaded.catalog))
        (after_closing(&came_after))
        p.no-print { button data-prints hidden { "Print" } " " a.button.quiet href="/show" { "To the running show" } }
    };
    Ok(page(&desk, Tab::Show, &format!("Close-out of show {id}"), &main).into_response())
}

/// The tickets of a closed show that arrived afterwards; they count elsewhere.
fn after_closing(tickets: &[Listed]) -> Markup {
    html! {
        @if !tickets.is_empty() {
            section.card aria-label="Came late" {
                h2 { "Came after it was closed " span.tally { (tickets.len()) } }
                p.faint { "These are not in the sums above. Each counts in the show in which it was rung up." }
                ul.links {
                    @for one in tickets {
                        li {
                            a href={ "/tickets/" (one.id) } { (one.number) } " " (one.state.word())
                            @if let Some(show) = one.settled { " in show " (show) }
                        }
                    }
                }
            }
        }
    }
}

/// An amount, where it could be made out.
fn plain(currency: Currency, amount: Option<Decimal>) -> String {
    amount.map_or_else(|| "too large to be added".to_owned(), |amount| currency.plain(amount))
}

/// The sums and what was sold.
fn sheet(sums: &CloseOut, currency: Currency, catalog: &Catalog) -> Markup {
    let mut parts: Vec<_> = sums.parts.iter().collect();
    parts.sort_by(|a, b| b.1.count.cmp(&a.1.count).then_with(|| a.0.cmp(b.0)));
    html! {
        section.card aria-label="Sums" data-key="sums" {
            dl.sums {
                dt { "Tickets rung up" } dd { (sums.sold) }
                dt { "Let go" }
                dd { (sums.let_go) @if sums.let_go_now > 0 { ", " (sums.let_go_now) " of them at closing" } }
                dt { "In cash" } dd { (currency.plain(sums.cash)) }
                dt { "By card" } dd { (currency.plain(sums.card)) }
                dt { "Tax in it" } dd { (currency.plain(sums.tax)) }
                @if !sums.discounts.is_zero() { dt { "Discounts given" } dd { (currency.plain(sums.discounts)) } }
                @if sums.cash_rounding() != Some(Decimal::ZERO) {
                    dt { "Cash rounding" } dd { (plain(currency, sums.cash_rounding())) }
                }
                dt.total { "Taken" } dd.total { (plain(currency, sums.taken())) }
                @if sums.late.sold > 0 {
                    dt { "Of this late, from earlier shows" }
                    dd { (words::count(sums.late.sold as usize, "ticket")) ", " (currency.plain(sums.late.taken)) }
                }
                @if sums.late.let_go > 0 {
                    dt { "Let go, from earlier shows" } dd { (sums.late.let_go) }
                }
            }
            @for one in &sums.set_apart {
                p.grave {
                    "Ticket " (one.number) " was charged " (one.charged) ", which is in none of these sums: it is in another "
                    "currency, or no table takes as much."
                }
            }
        }
        @if !parts.is_empty() {
            section.card aria-label="Sold" data-key="sold" {
                h2 { "Sold" }
                table {
                    thead { tr { th { "Part" } th { "Home" } th.figure { "How many" } th.figure { "As marked" } } }
                    tbody {
                        @for (id, line) in parts {
                            tr data-key=(id) {
                                td { (words::part_name(catalog, id)) }
                                td { (catalog.drop_kind(id).map(|kind| kind.home.to_string()).unwrap_or_default()) }
                                td.figure { (line.count) }
                                td.figure { (currency.plain(line.marked)) }
                            }
                        }
                    }
                }
            }
        }
    }
}
