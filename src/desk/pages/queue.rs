//! All tickets, in windows on the list, and finding one by its number.

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
        gallery::{PortraitSize, portrait_tag},
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    lang::{Lang, Texts, say},
    ledger::{Bill, Group, Ledger, LedgerError, Listed, Ticket},
    ticket::TicketNumber,
};

/// Tickets shown of a group on the page of all groups, and on a page of the group's own.
const SHOWN: usize = 40;
const DONE_SHOWN: usize = 12;
const SHOWN_ALONE: usize = 60;

const GROUPS: [Group; 3] = [Group::Waiting, Group::Checked, Group::Done];

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/tickets", get(queue)).route("/tickets/find", get(find))
}

/// A group's name in addresses, its heading, and what stands where it is empty.
const fn words_of(group: Group) -> (&'static str, &'static str, &'static str) {
    match group {
        Group::Waiting => ("waiting", "Waiting", "Nobody waits. Tickets from the kiosks appear here by themselves."),
        Group::Checked => ("checked", "Checked", "Nothing waits for the money."),
        Group::Done => ("done", "Done", "Nothing was rung up yet in this show."),
    }
}

/// What a page shows of one group.
struct Window {
    group: Group,
    tickets: Vec<Listed>,
    /// How many the group has in all.
    all: usize,
    /// Whether there are older ones than these.
    more: bool,
}

impl Window {
    fn read(ledger: &Ledger, group: Group, before: Option<i64>, limit: usize) -> Result<Self, LedgerError> {
        // One more than is shown says whether there are more.
        let mut tickets = ledger.window(group, before, limit + 1)?;
        let more = tickets.len() > limit;
        tickets.truncate(limit);
        Ok(Self { group, tickets, all: ledger.tally(group)?, more })
    }
}

/// What all cards of a page are drawn with.
struct View {
    loaded: Arc<Loaded>,
    show: i64,
    now: Timestamp,
}

#[derive(Deserialize)]
struct Wanted {
    /// One group alone.
    group: Option<String>,
    /// Only those that arrived before this place.
    before: Option<i64>,
}

async fn queue(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Refusal> {
    let alone = match &wanted.group {
        Some(name) => {
            let group = GROUPS.into_iter().find(|group| words_of(*group).0 == name);
            Some(group.ok_or_else(|| {
                Refusal::bad(format!("{name:?} is no group of tickets; it is one of waiting, checked and done"))
            })?)
        }
        None => None,
    };
    let main = content(&desk, alone, wanted.before, None).await?;
    Ok(page(&desk, Tab::Tickets, "Tickets", &main).into_response())
}

#[derive(Deserialize)]
struct Find {
    #[serde(default)]
    number: String,
}

async fn find(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Query(find): Query<Find>,
) -> Result<Response, Refusal> {
    let number = match find.number.parse::<TicketNumber>() {
        Ok(number) => number,
        Err(error) => {
            return not_found(&desk, StatusCode::BAD_REQUEST, &find.number, &words::sentence(&error.to_string())).await;
        }
    };
    let (found, show) =
        desk.ledger.look(move |ledger| Ok((ledger.tickets_numbered(number)?, ledger.show()?.id))).await?;
    // Numbers begin anew with every show: usually one ticket is meant, and its page names the others.
    let now: Vec<&Listed> = found.iter().filter(|one| one.settled.is_none_or(|settled| settled == show)).collect();
    match (&now[..], &found[..]) {
        ([], []) => {
            let words = format!("No ticket {number} has arrived at this desk yet.");
            not_found(&desk, StatusCode::NOT_FOUND, &find.number, &words).await
        }
        ([one], _) => Ok(Redirect::to(&format!("/tickets/{}", one.id)).into_response()),
        ([], [one]) => Ok(Redirect::to(&format!("/tickets/{}", one.id)).into_response()),
        _ => {
            let view = View { loaded: desk.catalog.loaded(), show, now: desk.clock.now() };
            let main = html! {
                h1 { "Tickets " (number) }
                p { "Several tickets have this number. Compare the piece." }
                section.queue aria-label="Found" { (view.cards(&found)) }
                p { a.button.quiet href="/tickets" { "To all tickets" } }
            };
            Ok(page(&desk, Tab::Tickets, "Tickets", &main).into_response())
        }
    }
}

async fn not_found(desk: &DeskState, status: StatusCode, typed: &str, words: &str) -> Result<Response, Refusal> {
    let main = content(desk, None, None, Some((typed, words))).await?;
    Ok((status, page(desk, Tab::Tickets, "Tickets", &main)).into_response())
}

async fn content(
    desk: &DeskState,
    alone: Option<Group>,
    before: Option<i64>,
    not_found: Option<(&str, &str)>,
) -> Result<Markup, Refusal> {
    let (windows, show, bills) = desk
        .ledger
        .look(move |ledger| {
            let windows = match alone {
                Some(group) => vec![Window::read(ledger, group, before, SHOWN_ALONE)?],
                None => GROUPS
                    .into_iter()
                    .map(|group| {
                        Window::read(ledger, group, None, if group == Group::Done { DONE_SHOWN } else { SHOWN })
                    })
                    .collect::<Result<_, _>>()?,
            };
            Ok((windows, ledger.show()?.id, ledger.open_bills()?))
        })
        .await?;
    let view = View { loaded: desk.catalog.loaded(), show, now: desk.clock.now() };
    let open_bills = waiting_bills(&bills);
    Ok(html! {
        h1.unseen { "Tickets" }
        p.no-print { a.button.main.wide href="/new" { "New sale" } }
        (open_bills)
        form.find method="get" action="/tickets/find" data-check-number {
            label for="number" { "Find by number" }
            div.row {
                input #number name="number" inputmode="numeric" autocomplete="off" placeholder="3-042-6"
                    value=[not_found.map(|(typed, _)| typed)] required;
                button { "Find" }
            }
            p.trouble role="alert" hidden[not_found.is_none()] data-says { (not_found.map_or("", |(_, words)| words)) }
        }
        p.no-print { a href="/sales" { "Find a paid sale" } }
        @for window in &windows { (view.section(window)) }
        @if alone.is_some() { p { a.button.quiet href="/tickets" { "To all tickets" } } }
    })
}

/// Bills that wait for more money: with several things on them, or paid in part.
fn waiting_bills(bills: &[Bill]) -> Markup {
    html! {
        @if bills.iter().any(Bill::is_shared) {
            section.queue aria-label="Open bills" data-key="bills" {
                h2 { "Open bills" }
                ul.links {
                    @for bill in bills.iter().filter(|bill| bill.is_shared()) {
                        li data-key=(bill.id) {
                            a href={ "/bills/" (bill.id) } {
                                "Bill " (bill.number) ", " (say!(Texts::of(Lang::En), "count-tickets", n = bill.tickets.len()))
                                @if !bill.payments.is_empty() { ", paid in part" }
                            }
                        }
                    }
                }
            }
        }
    }
}

impl View {
    fn section(&self, window: &Window) -> Markup {
        let (name, title, nothing) = words_of(window.group);
        let last = window.tickets.last().map(|ticket| ticket.arrival);
        html! {
            section.queue aria-label=(title) data-key=(name) {
                h2 { (title) " " span.tally { (window.all) } }
                @if window.tickets.is_empty() { p.faint { (nothing) } }
                (self.cards(&window.tickets))
                @if let (true, Some(last)) = (window.more, last) {
                    p { a.button.quiet href={ "/tickets?group=" (name) "&before=" (last) } { "Show older ones" } }
                }
            }
        }
    }

    fn cards(&self, tickets: &[Listed]) -> Markup {
        html! {
            ul.cards {
                @for one in tickets {
                    li data-key=(one.id) {
                        @match &one.ticket {
                            Ok(ticket) => { (self.card(ticket)) }
                            Err(_) => { (unread(one)) }
                        }
                    }
                }
            }
        }
    }

    fn card(&self, ticket: &Ticket) -> Markup {
        let (width, height) = PortraitSize::Small.px();
        let short = ticket.state.is_open() && ticket.live_lines().any(|(_, line)| !line.held);
        html! {
            a.card.ticket href={ "/tickets/" (ticket.id) } {
                img.portrait src=(portrait_address(ticket, &self.loaded, PortraitSize::Small)) width=(width)
                    height=(height) alt="" loading="lazy";
                div {
                    p.number { (ticket.number) }
                    p { (words::state(Texts::of(Lang::En), ticket.state)) " " span.faint { (words::ago(Texts::of(Lang::En), ticket.arrived, self.now)) } }
                    p { (say!(Texts::of(Lang::En), "count-drops", n = ticket.piece.drops.len())) " · " (words::wearer(Texts::of(Lang::En), ticket.piece.wearer)) }
                    @if ticket.show != self.show { p { "of show " (ticket.show) } }
                    @if !ticket.verdict.suitable { p.grave { "not suitable for this wearer" } }
                    @if short { p.grave { "a part is not held" } }
                    p.sum { (ticket.quote.currency.plain(ticket.charged.unwrap_or(ticket.quote.total))) }
                }
            }
        }
    }
}

/// A ticket that can't be read stands in its place all the same.
fn unread(one: &Listed) -> Markup {
    html! {
        a.card.ticket href={ "/tickets/" (one.id) } {
            div {
                p.number { (one.number) }
                p { (words::state(Texts::of(Lang::En), one.state)) }
                p.grave { "This ticket can’t be read" }
            }
        }
    }
}

/// Where the portrait of a ticket's piece is; changes with the piece.
pub(super) fn portrait_address(ticket: &Ticket, loaded: &Loaded, size: PortraitSize) -> String {
    let tag = portrait_tag(loaded, &ticket.piece, size);
    format!("/tickets/{}/picture.png?size={}&v={tag}", ticket.id, size.name())
}
