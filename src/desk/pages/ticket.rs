//! One ticket: check the piece, tell the guest, take the money.

use std::{collections::BTreeMap, sync::Arc};

use axum::{
    Router,
    extract::{Path, Query, State},
    http::HeaderMap,
    response::{IntoResponse, Response},
    routing::get,
};
use jiff::Timestamp;
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;
use uuid::Uuid;

use super::{
    doubt,
    frame::{Tab, page},
    queue::portrait_address,
    unread::Unread,
    words,
};
use crate::{
    catalog::{Catalog, Loaded},
    caution::CautionCode,
    craft::{BaseKind, Length, Wearer},
    desk::{gallery::PortraitSize, refusal::Refusal, seller::Seller, state::DeskState},
    ledger::{Charge, Count, Event, LedgerError, Listed, Part, Ticket, TicketLine},
    money::{TaxRule, cash_total},
    ticket::{State as TicketState, Tender},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/tickets/{id}", get(show)).route("/tickets/{id}/picture.png", get(portrait))
}

/// Everything the page shows.
pub(super) struct View {
    pub(super) ticket: Ticket,
    pub(super) history: Vec<Event>,
    /// The other tickets with its number.
    pub(super) others: Vec<Listed>,
    pub(super) counts: BTreeMap<String, Count>,
    pub(super) loaded: Arc<Loaded>,
    pub(super) now: Timestamp,
}

async fn show(State(house): State<Arc<DeskState>>, _seller: Seller, Path(id): Path<Uuid>) -> Result<Response, Refusal> {
    with_trouble(&house, id, None).await
}

/// The ticket's page, with what went wrong on top.
pub(super) async fn with_trouble(house: &DeskState, id: Uuid, trouble: Option<&str>) -> Result<Response, Refusal> {
    let read = house
        .books
        .look(move |ledger| {
            let ticket = match ledger.ticket(id) {
                Err(LedgerError::Unreadable { number, why }) => {
                    return Ok(Err(Unread { number, why, history: ledger.history(id)? }));
                }
                read => read?,
            };
            let mut others = ledger.tickets_numbered(ticket.number)?;
            others.retain(|other| other.id != id);
            Ok(Ok((ticket, ledger.history(id)?, others, ledger.counts()?)))
        })
        .await?;
    let (ticket, history, others, counts) = match read {
        Ok(read) => read,
        Err(unread) => return Ok(unread.page(house)),
    };
    let title = format!("Ticket {}", ticket.number);
    let view = View { ticket, history, others, counts, loaded: house.shelf.loaded(), now: Timestamp::now() };
    Ok(page(house, Tab::Tickets, &title, &view.content(trouble)).into_response())
}

#[derive(Deserialize)]
struct Wanted {
    #[serde(default)]
    size: String,
}

async fn portrait(
    State(house): State<Arc<DeskState>>,
    _seller: Seller,
    Path(id): Path<Uuid>,
    Query(wanted): Query<Wanted>,
    headers: HeaderMap,
) -> Result<Response, Refusal> {
    let piece = house.books.look(move |ledger| Ok(ledger.ticket(id)?.piece)).await?;
    let size = PortraitSize::ALL.into_iter().find(|size| size.name() == wanted.size).unwrap_or(PortraitSize::Large);
    Ok(house.gallery.portrait(house.shelf.loaded(), piece, size, &headers).await)
}

impl View {
    pub(super) fn catalog(&self) -> &Catalog {
        &self.loaded.catalog
    }

    pub(super) fn open(&self) -> bool {
        self.ticket.state.is_open()
    }

    fn money(&self, amount: Decimal) -> String {
        self.ticket.quote.currency.plain(amount)
    }

    pub(super) fn action(&self, verb: &str) -> String {
        format!("/tickets/{}/{verb}", self.ticket.id)
    }

    fn content(&self, trouble: Option<&str>) -> Markup {
        let ticket = &self.ticket;
        let (width, height) = PortraitSize::Large.px();
        html! {
            @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
            div.bench {
                section.card.piece aria-label="The piece" {
                    div.head {
                        h1.number { (ticket.number) }
                        p { (words::state(ticket.state)) " " span.faint { "came " (words::ago(ticket.arrived, self.now)) ", in show " (ticket.show) } }
                    }
                    div.views {
                        img.portrait src=(portrait_address(ticket, &self.loaded, PortraitSize::Large)) width=(width)
                            height=(height) alt="The piece as it should look";
                        @if self.hangs_low() {
                            img.close src=(portrait_address(ticket, &self.loaded, PortraitSize::Close)) alt="Its drops, nearer";
                        }
                    }
                    p.who { strong { (words::wearer(ticket.piece.wearer)) } " · " (words::count(ticket.piece.drops.len(), "drop")) }
                    (self.wearers())
                    @if ticket.state == TicketState::Sent {
                        form method="post" action=(self.action("call")) { button { "Number called" } }
                    }
                    (self.lengths())
                }
                div.work {
                    (self.lines())
                    (self.cautions())
                    (self.sums())
                }
            }
            (self.past())
            (self.same_number())
            @if self.open() {
                a.bar href="#till" {
                    span { (ticket.number) }
                    span {
                        @if ticket.unticked() > 0 { (ticket.unticked()) " to tick" }
                        @else if self.must_tell() { "tell the guest" }
                        @else { "ready" }
                    }
                    strong { (self.money(ticket.quote.total)) }
                }
            }
        }
    }

    /// Whether a nearer look at the drops shows more: on a necklace they are small beside the chain.
    fn hangs_low(&self) -> bool {
        let piece = &self.ticket.piece;
        let base = self.catalog().base(&piece.base);
        !piece.drops.is_empty() && base.is_some_and(|base| matches!(base.kind, BaseKind::Necklace(_)))
    }

    /// Who it is for, where that turns out to be somebody else at the table.
    fn wearers(&self) -> Markup {
        let now = self.ticket.piece.wearer;
        if !self.open() {
            return html! {};
        }
        html! {
            form.length #wearer method="post" action=(self.action("wearer")) data-repeats {
                label for="who" { "Who it is for; the cautions follow" }
                div.row {
                    select #who name="wearer" data-submits {
                        @if now == Wearer::Unknown { option value=(now.code()) selected { (words::wearer(now)) } }
                        @for one in Wearer::ANSWERS {
                            option value=(one.code()) selected[one == now] { (words::wearer(one)) }
                        }
                    }
                    button.no-script { "Set" }
                }
            }
        }
    }

    /// The lengths the base is made in, an inch apart. A length in between stays as it is.
    fn lengths(&self) -> Markup {
        let piece = &self.ticket.piece;
        let (Some(length), Some(base)) = (piece.length, self.catalog().base(&piece.base)) else { return html! {} };
        let BaseKind::Necklace(necklace) = &base.kind else { return html! {} };
        if !self.open() {
            return html! { p { "Length " strong { (words::length(length)) } } };
        }
        let steps: Vec<Length> = (1..=200)
            .map(|inches| Length::from_inches(f64::from(inches)))
            .filter(|step| {
                (necklace.lengths.shortest.mm() - 0.5..=necklace.lengths.longest.mm() + 0.5).contains(&step.mm())
            })
            .collect();
        let same = |step: &Length| (step.mm() - length.mm()).abs() < 0.5;
        let shorter = steps.iter().rev().find(|step| step.mm() < length.mm() - 0.5);
        let longer = steps.iter().find(|step| step.mm() > length.mm() + 0.5);
        html! {
            // A form of their own: Enter in the list must not press one of them.
            form #length-steps method="post" action=(self.action("length")) data-repeats {}
            form.length #length method="post" action=(self.action("length")) data-repeats {
                label for="mm" { "Length, free of charge" }
                div.row {
                    button.step form="length-steps" data-key="shorter" name="to" value=[shorter.map(|step| step.mm())] disabled[shorter.is_none()]
                        aria-label="an inch shorter" { "−" }
                    select #mm name="mm" data-submits {
                        @if !steps.iter().any(same) { option value=(length.mm()) selected { (words::length(length)) } }
                        @for step in &steps {
                            option value=(step.mm()) selected[same(step)] { (words::length(*step)) }
                        }
                    }
                    button.step form="length-steps" data-key="longer" name="to" value=[longer.map(|step| step.mm())] disabled[longer.is_none()]
                        aria-label="an inch longer" { "+" }
                    button.no-script { "Set" }
                }
            }
        }
    }

    fn lines(&self) -> Markup {
        let ticket = &self.ticket;
        let mut walk: Vec<(usize, &TicketLine)> = ticket.live_lines().collect();
        walk.sort_by_key(|(at, line)| (line.home, *at));
        html! {
            section.card aria-label="Tick off" {
                h2 { "Tick off " span.tally { (ticket.piece.drops.len() + 1 - ticket.unticked()) " of " (ticket.piece.drops.len() + 1) } }
                ol.lines {
                    (self.base_line())
                    @for (at, line) in walk { (self.line(at, line)) }
                    @for line in ticket.lines.iter().filter(|line| line.removed) {
                        li.line.off {
                            (words::picture(&self.loaded, &line.id))
                            div.what { s { (words::part_name(self.catalog(), &line.id)) } p.faint { "taken off" } }
                        }
                    }
                }
            }
        }
    }

    fn base_line(&self) -> Markup {
        let ticket = &self.ticket;
        let base = self.catalog().base(&ticket.piece.base);
        html! {
            li.line #base .ticked[ticket.base_ticked] {
                @if let Some(base) = base { (words::base_sign(&base.kind, base.finish)) }
                div.what {
                    strong { (words::part_name(self.catalog(), &ticket.piece.base)) }
                    p {
                        (self.money(ticket.quote.base.price))
                        @if let Some(length) = ticket.piece.length { " · " (words::length(length)) }
                    }
                }
                span.home { "base" }
                (self.tick(Part::Base, &ticket.piece.base, ticket.base_ticked, ticket.base_held))
            }
        }
    }

    fn line(&self, at: usize, line: &TicketLine) -> Markup {
        html! {
            li.line id={ "line-" (at) } .ticked[line.ticked] {
                (words::picture(&self.loaded, &line.id))
                div.what {
                    strong { (words::part_name(self.catalog(), &line.id)) }
                    @if let Some(before) = &line.instead_of {
                        p.faint { "instead of " (words::part_name(self.catalog(), before)) }
                    }
                    p.cost {
                        (self.money(line.price))
                        @if self.open() && !line.ticked {
                            a.missing href={ (self.action("missing")) "/" (at) } { "Missing?" }
                        }
                    }
                }
                span.home { (line.home) }
                (self.tick(Part::Line(at), &line.id, line.ticked, line.held))
            }
        }
    }

    /// The big tick; where the count says that none is left, the question instead.
    fn tick(&self, part: Part, id: &str, ticked: bool, held: bool) -> Markup {
        let name = words::part_name(self.catalog(), id);
        let field = match part {
            Part::Base => "base".to_owned(),
            Part::Line(at) => at.to_string(),
        };
        let none_left = !held && !ticked && self.counts.get(id).is_none_or(|count| count.free() == 0);
        html! {
            @if !self.open() {
                @if ticked { span.tick.done aria-label="ticked off" { (tick_sign()) } }
            } @else {
                // Counting one more is not the same when it is said twice.
                form.tick-form method="post" action=(self.action("tick")) data-repeats[!none_left] {
                    input type="hidden" name="part" value=(field);
                    @if none_left {
                        input type="hidden" name="found" value="1";
                        button.tick.ask name="on" value="1" aria-label={ (name) " is here: count one more" } {
                            "It is here: count one more"
                        }
                        p.grave { "The count says none is left." }
                    } @else if ticked {
                        button.tick.done data-switch name="on" value="0" aria-pressed="true" aria-label={ (name) ", ticked off" } { (tick_sign()) }
                    } @else {
                        button.tick data-switch name="on" value="1" aria-pressed="false" aria-label={ "tick off " (name) } { (tick_sign()) }
                    }
                }
            }
        }
    }

    fn sums(&self) -> Markup {
        let ticket = &self.ticket;
        let quote = &ticket.quote;
        let tax_word = match ticket.rules.tax {
            TaxRule::Included { .. } => "Tax, contained",
            TaxRule::Added { .. } | TaxRule::None => "Tax",
        };
        html! {
            section.card.till #till aria-label="The sum" {
                dl.sums {
                    dt { "Subtotal" } dd { (self.money(quote.subtotal)) }
                    @if !quote.discount.is_zero() { dt { "Discount" } dd { "−" (self.money(quote.discount)) } }
                    @if !quote.tax.is_zero() { dt { (tax_word) } dd { (self.money(quote.tax)) } }
                    dt.total { "Total" } dd.total data-total { (self.money(quote.total)) }
                }
                @if let (None, Some(today)) = (ticket.sum_doubt, ticket.total_by_catalog) {
                    p.faint { "Prices changed since the guest saw this sum: the piece as sent would be " (self.money(today))
                        " now. The guest pays what was on the screen." }
                }
                (self.next_step())
            }
        }
    }

    fn next_step(&self) -> Markup {
        let ticket = &self.ticket;
        match (ticket.state, ticket.tender, ticket.charged) {
            (TicketState::RungUp, tender, charged) => html! {
                p.paid { "Paid " (self.money(charged.unwrap_or(ticket.quote.total))) " " (tender.map_or("", words::tender)) "." }
                form method="post" action=(self.action("hand-over")) { button.main.wide { "Handed over" } }
            },
            (TicketState::HandedOver, tender, charged) => html! {
                p.paid { "Paid " (self.money(charged.unwrap_or(ticket.quote.total))) " " (tender.map_or("", words::tender))
                    " and handed over." }
            },
            (TicketState::LetGo, ..) => html! { p { "This ticket came to nothing; its drops are free again." } },
            (TicketState::Sent | TicketState::Called | TicketState::Checked, ..) => self.ring_up(),
        }
    }

    fn must_tell(&self) -> bool {
        !self.ticket.verdict.cautions.is_empty() && !self.ticket.told
    }

    /// Why the money can't be taken yet.
    fn not_yet(&self) -> Option<String> {
        let ticket = &self.ticket;
        if !ticket.quote.is_plausible() {
            return Some("No table takes such a sum. Let the ticket go.".to_owned());
        }
        if ticket.sum_doubt.is_some() {
            return Some("Say first what is charged.".to_owned());
        }
        let mut open = Vec::new();
        if ticket.unticked() > 0 {
            open.push(format!("tick off {}", words::count(ticket.unticked(), "more part")));
        }
        if self.must_tell() {
            open.push("tell the guest of the cautions".to_owned());
        }
        if !ticket.forbidden().is_empty() {
            open.push("take off what may not be sold".to_owned());
        } else if !ticket.unconfirmed().is_empty() {
            let names: Vec<String> = ticket.unconfirmed().iter().map(|code| code.words()).collect();
            let names = names.join(", ");
            open.push(format!("change the piece or its wearer, or confirm as sold for a grown-up: {names}"));
        }
        (!open.is_empty()).then(|| words::sentence(&format!("{} first", open.join(" and "))))
    }

    fn ring_up(&self) -> Markup {
        let ticket = &self.ticket;
        let total = ticket.quote.total;
        let cash = cash_total(&ticket.rules, total).unwrap_or(total);
        let not_yet = self.not_yet();
        html! {
            (doubt::question(ticket))
            form method="post" action=(self.action("ring-up")) {
                input type="hidden" name="total" value=(total);
                div.row.pay {
                    button.main name="tender" value="cash" disabled[not_yet.is_some()] {
                        "Cash " strong { (self.money(cash)) }
                    }
                    button.main name="tender" value="card" disabled[not_yet.is_some()] {
                        "Card " strong { (self.money(total)) }
                    }
                }
                @if cash != total { p.faint { "Cash is rounded to the nearest " (self.money(ticket.rules.cash_step)) "." } }
                @if let Some(reason) = not_yet { p.reason { (reason) } }
            }
            p.aside { a.quiet.button href=(self.action("let-go")) { "Let the ticket go" } }
        }
    }

    /// Numbers begin anew with every show.
    fn same_number(&self) -> Markup {
        html! {
            @if !self.others.is_empty() {
                details.past {
                    summary { "Other tickets with this number" }
                    ul {
                        @for other in &self.others {
                            li { a href={ "/tickets/" (other.id) } { "of show " (other.show) ", " (other.state.word()) } }
                        }
                    }
                }
            }
        }
    }

    fn past(&self) -> Markup {
        html! {
            details.past {
                summary { "What happened so far" }
                ol {
                    @for event in &self.history {
                        li { span.faint { (words::clock(event.at, self.now)) } " " (self.happened(event)) }
                    }
                }
            }
        }
    }

    fn happened(&self, event: &Event) -> String {
        let name = |id: &str| words::part_name(self.catalog(), id).to_owned();
        let line_name = |at: usize| self.ticket.lines.get(at).map(|line| name(&line.id)).unwrap_or_default();
        let part = |body: &serde_json::Value| match serde_json::from_value(body.clone()) {
            Ok((Part::Line(at), found)) => (line_name(at), found),
            Ok((Part::Base, found)) => (name(&self.ticket.piece.base), found),
            Err(_) => (String::new(), false),
        };
        match event.kind.as_str() {
            "sent" => "sent by the guest".to_owned(),
            "called" => "called".to_owned(),
            "ticked" => match part(&event.body) {
                (name, true) => format!("{name}: ticked off, one more counted"),
                (name, false) => format!("{name}: ticked off"),
            },
            "unticked" => format!("{}: tick taken back", part(&event.body).0),
            "swapped" => match serde_json::from_value::<(usize, String)>(event.body.clone()) {
                Ok((_, to)) => format!("a drop swapped for {}", name(&to)),
                Err(_) => "a drop swapped".to_owned(),
            },
            "removed" => match serde_json::from_value(event.body.clone()) {
                Ok(at) => format!("{}: taken off", line_name(at)),
                Err(_) => "a drop taken off".to_owned(),
            },
            "length" => match serde_json::from_value(event.body.clone()) {
                Ok(length) => format!("made {}", words::length(length)),
                Err(_) => "another length".to_owned(),
            },
            "judged" => "the catalogue changed, and with it the cautions".to_owned(),
            "wearer" => match serde_json::from_value(event.body.clone()) {
                Ok(Wearer::Unknown) => "nobody knows who it is for".to_owned(),
                Ok(one) => format!("it is {}", words::wearer(one)),
                Err(_) => "for somebody else".to_owned(),
            },
            "sold_for_grown_up" => match serde_json::from_value::<(CautionCode, bool)>(event.body.clone()) {
                Ok((code, true)) => format!("sold for a grown-up: {}", code.words()),
                Ok((code, false)) => format!("not sold for a grown-up after all: {}", code.words()),
                Err(_) => "sold for a grown-up".to_owned(),
            },
            "sum_confirmed" => match serde_json::from_value::<Charge>(event.body.clone()) {
                Ok(Charge::Today) => "today’s prices are charged".to_owned(),
                Ok(Charge::AsSeen) | Err(_) => "the sum that the guest saw is charged".to_owned(),
            },
            "told" if event.body == true => "the guest was told of the cautions".to_owned(),
            "told" => "not told of the cautions after all".to_owned(),
            "rung_up" => match serde_json::from_value::<Tender>(event.body.clone()) {
                Ok(tender) => format!("rung up, paid {}", words::tender(tender)),
                Err(_) => "rung up".to_owned(),
            },
            "handed_over" => "handed over".to_owned(),
            "let_go" => "let go".to_owned(),
            "hold_ended" => "what was not ticked off is not held any more: it waited too long".to_owned(),
            "hold_shortened" => "held no longer than usual: it came while the clock was ahead".to_owned(),
            other => other.replace('_', " "),
        }
    }
}

pub(super) fn tick_sign() -> Markup {
    html! { svg.tick-sign viewBox="0 0 24 24" aria-hidden="true" { path d="M4 13l5 5L20 6" {} } }
}
