//! All tickets, and finding one by its number.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Query, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;

use super::{
    frame::{Tab, page},
    words,
};
use crate::{
    catalog::Loaded,
    desk::{
        auth::Seller,
        error::Refusal,
        gallery::{PortraitSize, portrait_tag},
        server::House,
    },
    ledger::Ticket,
    ticket::{State as TicketState, TicketNumber},
};

/// Done tickets shown unless all are asked for.
const DONE_SHOWN: usize = 12;

pub(super) fn routes() -> Router<Arc<House>> {
    Router::new().route("/tickets", get(queue)).route("/tickets/find", get(find))
}

#[derive(Deserialize)]
struct Wanted {
    done: Option<String>,
}

async fn queue(
    State(house): State<Arc<House>>,
    _seller: Seller,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Refusal> {
    let main = content(&house, wanted.done.as_deref() == Some("all"), None).await?;
    Ok(page(&house, Tab::Tickets, "Tickets", &main).into_response())
}

#[derive(Deserialize)]
struct Find {
    #[serde(default)]
    number: String,
}

async fn find(State(house): State<Arc<House>>, _seller: Seller, Query(find): Query<Find>) -> Result<Response, Refusal> {
    let (status, words) = match find.number.parse::<TicketNumber>() {
        Ok(number) => match house.books.run(move |ledger| ledger.ticket_by_number(number)).await? {
            Some(ticket) => return Ok(Redirect::to(&format!("/tickets/{}", ticket.id)).into_response()),
            None => (StatusCode::NOT_FOUND, format!("No ticket {number} has arrived at this desk yet.")),
        },
        Err(error) => (StatusCode::BAD_REQUEST, words::sentence(&error.to_string())),
    };
    let main = content(&house, false, Some((&find.number, &words))).await?;
    Ok((status, page(&house, Tab::Tickets, "Tickets", &main)).into_response())
}

async fn content(house: &House, all_done: bool, not_found: Option<(&str, &str)>) -> Result<Markup, Refusal> {
    let tickets = house.books.run(|ledger| ledger.tickets()).await?;
    let loaded = house.shelf.loaded();
    let now = Timestamp::now();
    let of = |states: &[TicketState]| -> Vec<&Ticket> {
        tickets.iter().filter(|ticket| states.contains(&ticket.state)).collect()
    };
    let waiting = of(&[TicketState::Sent, TicketState::Called]);
    let checked = of(&[TicketState::Checked]);
    let done = of(&[TicketState::RungUp, TicketState::HandedOver, TicketState::LetGo]);
    let shown = if all_done { done.len() } else { done.len().min(DONE_SHOWN) };
    Ok(html! {
        h1.unseen { "Tickets" }
        form.find method="get" action="/tickets/find" data-check-number {
            label for="number" { "Find by number" }
            div.row {
                input #number name="number" inputmode="numeric" autocomplete="off" placeholder="3-042-6"
                    value=[not_found.map(|(typed, _)| typed)] required;
                button { "Find" }
            }
            p.trouble role="alert" hidden[not_found.is_none()] data-says { (not_found.map_or("", |(_, words)| words)) }
        }
        (section("Waiting", &waiting, &loaded, now, "Nobody waits. Tickets from the kiosks appear here by themselves."))
        (section("Checked", &checked, &loaded, now, "Nothing waits for the money."))
        (section("Done", &done[..shown], &loaded, now, "Nothing was rung up yet in this show."))
        @if shown < done.len() {
            p { a.button.quiet href="/tickets?done=all" { "Show all " (done.len()) " done" } }
        }
    })
}

fn section(title: &str, tickets: &[&Ticket], loaded: &Loaded, now: Timestamp, nothing: &str) -> Markup {
    html! {
        section.queue aria-label=(title) {
            h2 { (title) " " span.tally { (tickets.len()) } }
            @if tickets.is_empty() { p.faint { (nothing) } }
            ul.cards {
                @for ticket in tickets { li { (card(ticket, loaded, now)) } }
            }
        }
    }
}

fn card(ticket: &Ticket, loaded: &Loaded, now: Timestamp) -> Markup {
    let (width, height) = PortraitSize::Small.px();
    let short = ticket.state.is_open() && ticket.live_lines().any(|(_, line)| !line.held);
    html! {
        a.card.ticket href={ "/tickets/" (ticket.id) } {
            img.portrait src=(portrait_address(ticket, loaded, PortraitSize::Small)) width=(width) height=(height)
                alt="" loading="lazy";
            div {
                p.number { (ticket.number) }
                p { (words::state(ticket.state)) " " span.faint { (words::ago(ticket.arrived, now)) } }
                p { (words::count(ticket.piece.drops.len(), "drop")) " · " (words::wearer(ticket.piece.wearer)) }
                @if !ticket.verdict.suitable { p.grave { "not suitable for this wearer" } }
                @if short { p.grave { "a part is not held" } }
                p.sum { (ticket.quote.currency.plain(ticket.charged.unwrap_or(ticket.quote.total))) }
            }
        }
    }
}

/// Where the portrait of a ticket's piece is; changes with the piece.
pub(super) fn portrait_address(ticket: &Ticket, loaded: &Loaded, size: PortraitSize) -> String {
    let tag = portrait_tag(loaded, &ticket.piece, size);
    format!("/tickets/{}/picture.png?size={}&v={tag}", ticket.id, size.name())
}
