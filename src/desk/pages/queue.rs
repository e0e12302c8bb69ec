//! All tickets, in windows on the list, and finding one by its number.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, Query, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;

use super::{
    frame::{Tab, page},
    typed::typed_number,
    words,
};
use crate::{
    catalog::Loaded,
    desk::{
        gallery::{PortraitSize, portrait_tag, shows_drops},
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::{Bill, Group, Ledger, LedgerError, Listed, Ticket},
    quoting::quoted,
};

/// Tickets shown of a group on the page of all groups, and on a page of the group's own.
const SHOWN: usize = 40;
const DONE_SHOWN: usize = 12;
const SHOWN_ALONE: usize = 60;

const GROUPS: [Group; 3] = [Group::Waiting, Group::Checked, Group::Done];

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/tickets", get(queue))
        .route("/tickets/find", get(find))
        // What a camera reads from a slip; signing in leads back to it.
        .route("/number/{number}", get(scanned))
}

/// A group's name in addresses, and in the keys of its heading and of what stands where it is empty.
const fn name_of(group: Group) -> &'static str {
    match group {
        Group::Waiting => "waiting",
        Group::Checked => "checked",
        Group::Done => "done",
    }
}

/// Whether who came first stands first. What is done is looked at again soon after, or never.
const fn is_queue(group: Group) -> bool {
    matches!(group, Group::Waiting | Group::Checked)
}

/// What a page shows of one group.
struct Window {
    group: Group,
    tickets: Vec<Listed>,
    /// How many the group has in all.
    all: usize,
    /// Whether there are more after these.
    more: bool,
}

/// Where a page of one group begins: behind a place in the order of arrival, in the direction in which it is read.
#[derive(Clone, Copy, Default)]
struct Beginning {
    before: Option<i64>,
    after: Option<i64>,
}

impl Window {
    fn read(ledger: &Ledger, group: Group, from: Beginning, limit: usize) -> Result<Self, LedgerError> {
        // One more than is shown says whether there are more.
        let mut tickets = if is_queue(group) {
            ledger.window_from(group, from.after, limit + 1)?
        } else {
            ledger.window(group, from.before, limit + 1)?
        };
        let more = tickets.len() > limit;
        tickets.truncate(limit);
        Ok(Self { group, tickets, all: ledger.tally(group)?, more })
    }
}

/// What all cards of a page are drawn with.
struct View {
    texts: &'static Texts,
    loaded: Arc<Loaded>,
    show: i64,
    now: Timestamp,
}

#[derive(Deserialize)]
struct Wanted {
    /// One group alone.
    group: Option<String>,
    /// Only those that arrived before this place, of a group that is read backwards.
    before: Option<i64>,
    /// Only those that arrived after this place.
    after: Option<i64>,
}

async fn queue(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Refusal> {
    let alone = match &wanted.group {
        Some(name) => {
            let group = GROUPS.into_iter().find(|group| name_of(*group) == name);
            Some(group.ok_or_else(|| Refusal::wrong(message!("refused-no-group", name = quoted(name))))?)
        }
        None => None,
    };
    let from = Beginning { before: wanted.before, after: wanted.after };
    let main = content(&desk, seller.texts, alone, from, None).await?;
    Ok(page(&desk, seller.texts, Tab::Tickets, &say!(seller.texts, "tab-tickets"), &main).into_response())
}

#[derive(Deserialize)]
struct Find {
    #[serde(default)]
    number: String,
}

async fn find(
    State(desk): State<Arc<DeskState>>,
    Seller { texts, .. }: Seller,
    Query(find): Query<Find>,
) -> Result<Response, Refusal> {
    found(&desk, texts, &find.number).await
}

async fn scanned(
    State(desk): State<Arc<DeskState>>,
    Seller { texts, .. }: Seller,
    Path(number): Path<String>,
) -> Result<Response, Refusal> {
    found(&desk, texts, &number).await
}

/// The ticket with the number that was typed or scanned; all of them where several have it.
async fn found(desk: &DeskState, texts: &'static Texts, typed: &str) -> Result<Response, Refusal> {
    let number = match typed_number(typed) {
        Ok(number) => number,
        Err(error) => {
            let words = words::no_number(texts, &error);
            return not_found(desk, texts, StatusCode::BAD_REQUEST, typed, &words).await;
        }
    };
    let (found, show) =
        desk.ledger.look(move |ledger| Ok((ledger.tickets_numbered(number)?, ledger.show()?.id))).await?;
    // Numbers begin anew with every show: usually one ticket is meant, and its page names the others.
    let now: Vec<&Listed> = found.iter().filter(|one| one.settled.is_none_or(|settled| settled == show)).collect();
    match (&now[..], &found[..]) {
        ([], []) => {
            let words = say!(texts, "queue-none-arrived", number = number.to_string());
            not_found(desk, texts, StatusCode::NOT_FOUND, typed, &words).await
        }
        ([one], _) => Ok(Redirect::to(&format!("/tickets/{}", one.id)).into_response()),
        ([], [one]) => Ok(Redirect::to(&format!("/tickets/{}", one.id)).into_response()),
        _ => {
            let view = View { texts, loaded: desk.catalog.loaded(), show, now: desk.clock.now() };
            let main = html! {
                h1 { (say!(texts, "queue-numbered", number = number.to_string())) }
                p { (say!(texts, "queue-several")) }
                section.queue aria-label=(say!(texts, "queue-found")) { (view.cards(&found)) }
                p { a.button.quiet href="/tickets" { (say!(texts, "queue-all")) } }
            };
            Ok(page(desk, texts, Tab::Tickets, &say!(texts, "tab-tickets"), &main).into_response())
        }
    }
}

async fn not_found(
    desk: &DeskState,
    texts: &'static Texts,
    status: StatusCode,
    typed: &str,
    words: &str,
) -> Result<Response, Refusal> {
    let main = content(desk, texts, None, Beginning::default(), Some((typed, words))).await?;
    Ok((status, page(desk, texts, Tab::Tickets, &say!(texts, "tab-tickets"), &main)).into_response())
}

async fn content(
    desk: &DeskState,
    texts: &'static Texts,
    alone: Option<Group>,
    from: Beginning,
    not_found: Option<(&str, &str)>,
) -> Result<Markup, Refusal> {
    let (windows, show, bills) = desk
        .ledger
        .look(move |ledger| {
            let windows = match alone {
                Some(group) => vec![Window::read(ledger, group, from, SHOWN_ALONE)?],
                None => GROUPS
                    .into_iter()
                    .map(|group| {
                        let limit = if is_queue(group) { SHOWN } else { DONE_SHOWN };
                        Window::read(ledger, group, Beginning::default(), limit)
                    })
                    .collect::<Result<_, _>>()?,
            };
            Ok((windows, ledger.show()?.id, ledger.open_bills()?))
        })
        .await?;
    let view = View { texts, loaded: desk.catalog.loaded(), show, now: desk.clock.now() };
    let open_bills = waiting_bills(texts, &bills);
    Ok(html! {
        h1.unseen { (say!(texts, "tab-tickets")) }
        p.no-print { a.button.main.wide href="/new" { (say!(texts, "queue-new-sale")) } }
        (open_bills)
        form.find method="get" action="/tickets/find" data-check-number {
            label for="number" { (say!(texts, "queue-find")) }
            div.row {
                input #number name="number" inputmode="numeric" autocomplete="off" placeholder="3-042-6"
                    value=[not_found.map(|(typed, _)| typed)] required;
                button { (say!(texts, "queue-find-do")) }
            }
            p.trouble role="alert" hidden[not_found.is_none()] data-says { (not_found.map_or("", |(_, words)| words)) }
        }
        p.no-print.row.wraps {
            a href="/sales" { (say!(texts, "queue-paid-sale")) }
            a href="/waiting" { (say!(texts, "waiting-title")) }
        }
        @for window in &windows { (view.section(window)) }
        @if alone.is_some() { p { a.button.quiet href="/tickets" { (say!(texts, "queue-all")) } } }
    })
}

/// Bills that wait for more money: with several things on them, or paid in part.
fn waiting_bills(texts: &Texts, bills: &[Bill]) -> Markup {
    let words = |bill: &Bill| {
        let (number, n) = (bill.number.to_string(), bill.tickets.len());
        if bill.payments.is_empty() {
            say!(texts, "queue-bill", number = number, n = n)
        } else {
            say!(texts, "queue-bill-part", number = number, n = n)
        }
    };
    html! {
        @if bills.iter().any(Bill::is_shared) {
            section.queue aria-label=(say!(texts, "queue-bills")) data-key="bills" {
                h2 { (say!(texts, "queue-bills")) }
                ul.links {
                    @for bill in bills.iter().filter(|bill| bill.is_shared()) {
                        li data-key=(bill.id) {
                            a href={ "/bills/" (bill.id) } { (words(bill)) }
                        }
                    }
                }
            }
        }
    }
}

impl View {
    fn section(&self, window: &Window) -> Markup {
        let (texts, name) = (self.texts, name_of(window.group));
        let title = texts.get(&format!("queue-{name}"));
        let last = window.tickets.last().map(|ticket| ticket.arrival).filter(|_| window.more);
        html! {
            section.queue aria-label=(title) data-key=(name) {
                h2 { (title) " " span.tally { (window.all) } }
                @if window.tickets.is_empty() { p.faint { (texts.get(&format!("queue-{name}-none"))) } }
                (self.cards(&window.tickets))
                @if let Some(last) = last {
                    p {
                        @if is_queue(window.group) {
                            a.button.quiet href={ "/tickets?group=" (name) "&after=" (last) } { (say!(texts, "queue-later")) }
                        } @else {
                            a.button.quiet href={ "/tickets?group=" (name) "&before=" (last) } { (say!(texts, "queue-older")) }
                        }
                    }
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
                            Err(_) => { (self.unread(one)) }
                        }
                    }
                }
            }
        }
    }

    fn card(&self, ticket: &Ticket) -> Markup {
        let texts = self.texts;
        let short = ticket.state.is_open() && ticket.live_lines().any(|(_, line)| !line.held);
        html! {
            a.card.ticket href={ "/tickets/" (ticket.id) } {
                (thumbnail(ticket, &self.loaded))
                div {
                    p.number { (ticket.number) }
                    p { (words::state(texts, ticket.state)) " " span.faint { (words::ago(texts, ticket.arrived, self.now)) } }
                    p { (say!(texts, "count-drops", n = ticket.piece.drops.len())) " · " (words::wearer(texts, ticket.piece.wearer)) }
                    @if ticket.show != self.show { p { (say!(texts, "queue-of-show", show = ticket.show)) } }
                    @if !ticket.verdict.suitable { p.grave { (say!(texts, "queue-not-suitable")) } }
                    @if short { p.grave { (say!(texts, "queue-not-held")) } }
                    p.sum { (words::money(texts, ticket.charged.unwrap_or(ticket.quote.total), ticket.quote.currency)) }
                }
            }
        }
    }

    /// A ticket that can't be read stands in its place all the same.
    fn unread(&self, one: &Listed) -> Markup {
        html! {
            a.card.ticket href={ "/tickets/" (one.id) } {
                div {
                    p.number { (one.number) }
                    p { (words::state(self.texts, one.state)) }
                    p.grave { (say!(self.texts, "queue-unreadable")) }
                }
            }
        }
    }
}

/// A small picture of a ticket's piece: its drops rather than bare chain.
pub(super) fn thumbnail(ticket: &Ticket, loaded: &Loaded) -> Markup {
    let size = if shows_drops(loaded, &ticket.piece) { PortraitSize::Near } else { PortraitSize::Small };
    html! {
        img.portrait src=(portrait_address(ticket, loaded, size)) width="96" height="112" alt="" loading="lazy";
    }
}

/// Where the portrait of a ticket's piece is; changes with the piece.
pub(super) fn portrait_address(ticket: &Ticket, loaded: &Loaded, size: PortraitSize) -> String {
    let tag = portrait_tag(loaded, &ticket.piece, size);
    format!("/tickets/{}/picture.png?size={}&v={tag}", ticket.id, size.name())
}
