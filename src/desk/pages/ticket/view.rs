//! Reading a ticket with all that its page shows, and the page as a whole.

use std::{borrow::Cow, collections::BTreeMap, sync::Arc};

use axum::{
    Router,
    extract::{Path, Query, State},
    http::{HeaderMap, StatusCode},
    response::{IntoResponse, Response},
    routing::get,
};
use jiff::Timestamp;
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;
use uuid::Uuid;

use super::unreadable::Unreadable;
use crate::{
    catalog::{Catalog, Loaded},
    desk::{
        gallery::{PortraitSize, shows_drops},
        pages::{
            frame::{Tab, page},
            inset::{HERE, inset},
            on::{Answered, On},
            paper,
            queue::portrait_address,
            words,
        },
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    lang::{Texts, say},
    ledger::{Bill, BillSum, Count, Event, LedgerError, Listed, Ticket},
    ticket::State as TicketState,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/tickets/{id}", get(show)).route("/tickets/{id}/picture.png", get(portrait))
}

/// Everything the page shows.
pub(super) struct View {
    pub(super) texts: &'static Texts,
    pub(super) ticket: Ticket,
    pub(super) history: Vec<Event>,
    /// The other tickets with its number.
    pub(super) others: Vec<Listed>,
    pub(super) counts: BTreeMap<String, Count>,
    /// The bill on which it stands, and what that comes to.
    pub(super) bill: Option<(Bill, BillSum)>,
    pub(super) loaded: Arc<Loaded>,
    pub(super) now: Timestamp,
    /// Whether the seller works alone, so that nobody has to be named.
    pub(super) alone: bool,
    /// Receipt and slip.
    pub(super) paper: Markup,
    /// Who else has the ticket open.
    pub(super) company: Vec<String>,
    /// By which name the reader is known.
    pub(super) own_name: String,
}

async fn show(on: On) -> Answered {
    with(&on, |_| None).await
}

/// The ticket's page, with what went wrong on top.
pub(super) async fn with_trouble(on: &On, status: StatusCode, trouble: &str) -> Answered {
    let trouble = html! { p.trouble role="alert" { (trouble) } };
    Ok((status, with(on, |_| Some(trouble)).await?).into_response())
}

/// The ticket's page, with what others changed after entry `since` on top, since what was asked for was not done.
pub(super) async fn with_changes(on: &On, since: i64) -> Answered {
    let own = on.desk.company.own(on.id, &on.seller);
    let page = with(on, |view| Some(view.changed(since, &own))).await?;
    Ok((StatusCode::CONFLICT, page).into_response())
}

/// The ticket's page, with something on top.
pub(super) async fn with(on: &On, on_top: impl FnOnce(&View) -> Option<Markup>) -> Result<Response, Refusal> {
    let (desk, texts, id) = (&on.desk, on.texts(), on.id);
    let read = desk
        .ledger
        .look(move |ledger| {
            let ticket = match ledger.ticket(id) {
                Err(LedgerError::Unreadable { number, why }) => {
                    return Ok(Err(Unreadable { number, why, history: ledger.history(id)? }));
                }
                read => read?,
            };
            let mut others = ledger.tickets_numbered(ticket.number)?;
            others.retain(|other| other.id != id);
            let bill = match ticket.bill {
                Some(bill) => ledger.bill(bill).map(|(bill, _, sum)| Some((bill, sum)))?,
                None => None,
            };
            Ok(Ok((ticket, ledger.history(id)?, others, ledger.counts()?, bill, ledger.staff()?.is_empty())))
        })
        .await?;
    let (ticket, history, others, counts, bill, alone) = match read {
        Ok(read) => read,
        Err(unreadable) => return Ok(unreadable.page(desk, texts)),
    };
    let title = say!(texts, "ticket-title", number = ticket.number.to_string());
    let (loaded, now) = (desk.catalog.loaded(), desk.clock.now());
    let paper = paper::of_ticket(desk, texts, &ticket, bill.as_ref().map(|(bill, _)| bill));
    desk.company.show(id, &on.seller, history.last().map_or(0, |event| event.seq));
    let company = desk.company.others(id, &on.seller);
    let own_name = on.seller.name().to_owned();
    let view = View { texts, ticket, history, others, counts, bill, loaded, now, alone, paper, company, own_name };
    let on_top = on_top(&view);
    Ok(page(desk, texts, Tab::Tickets, &title, &view.content(on_top.as_ref())).into_response())
}

#[derive(Deserialize)]
struct Wanted {
    #[serde(default)]
    size: String,
}

async fn portrait(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Path(id): Path<Uuid>,
    Query(wanted): Query<Wanted>,
    headers: HeaderMap,
) -> Result<Response, Refusal> {
    let piece = desk.ledger.look(move |ledger| Ok(ledger.ticket(id)?.piece)).await?;
    let size = PortraitSize::ALL.into_iter().find(|size| size.name() == wanted.size).unwrap_or(PortraitSize::Large);
    Ok(desk.gallery.portrait(desk.catalog.loaded(), piece, size, &headers).await)
}

impl View {
    /// The catalogue as it is now.
    pub(super) fn catalog(&self) -> &Catalog {
        &self.loaded.catalog
    }

    /// Whether the ticket can still be changed.
    pub(super) fn open(&self) -> bool {
        self.ticket.state.is_open()
    }

    /// An amount in the ticket's own currency.
    pub(super) fn money(&self, amount: Decimal) -> String {
        words::money(self.texts, amount, self.ticket.quote.currency)
    }

    /// What a part is called.
    pub(super) fn name(&self, id: &str) -> Cow<'_, str> {
        words::piece_name(self.texts, self.catalog(), id)
    }

    /// The address of something that is done to the ticket.
    pub(super) fn action(&self, verb: &str) -> String {
        format!("/tickets/{}/{verb}", self.ticket.id)
    }

    fn content(&self, on_top: Option<&Markup>) -> Markup {
        html! {
            @if let Some(on_top) = on_top { (on_top) }
            (self.together())
            div.bench {
                (self.piece())
                div.work {
                    (self.lines())
                    (self.cautions())
                    (self.sums())
                    (self.paper)
                }
                div.changing { (self.more()) (self.price()) }
            }
            p.no-print { a.button.quiet href={ "/new?from=" (self.ticket.id) } { (say!(self.texts, "ticket-one-more")) } }
            (self.past())
            (self.same_number())
            (self.bar())
        }
    }

    /// The number, who it is for, and how the piece should look.
    fn piece(&self) -> Markup {
        let (texts, ticket) = (self.texts, &self.ticket);
        let (width, height) = PortraitSize::Large.px();
        let came = say!(texts, "ticket-came", ago = HERE, show = ticket.show);
        html! {
            section.card.piece aria-label=(say!(texts, "ticket-piece")) data-key="piece" {
                div.head {
                    h1.number { (ticket.number) }
                    p { (words::state(texts, ticket.state)) " "
                        span.faint { (inset(&came, &words::ago(texts, ticket.arrived, self.now))) } }
                }
                p.who {
                    strong { (words::wearer(texts, ticket.piece.wearer)) } " · "
                    (say!(texts, "count-drops", n = ticket.piece.drops.len()))
                    @if let Some(length) = ticket.piece.length { " · " (words::length(texts, length)) }
                }
                div.views {
                    img.portrait src=(portrait_address(ticket, &self.loaded, PortraitSize::Large)) width=(width)
                        height=(height) alt=(say!(texts, "ticket-as-it-should"));
                    @if shows_drops(&self.loaded, &ticket.piece) {
                        img.close src=(portrait_address(ticket, &self.loaded, PortraitSize::Close))
                            alt=(say!(texts, "ticket-drops-nearer"));
                    }
                }
                @if ticket.state == TicketState::Sent {
                    form method="post" action=(self.action("call")) { button.quiet { (say!(texts, "ticket-number-called")) } }
                }
            }
        }
    }

    /// Whether the guest has still to be told of a caution.
    pub(super) fn must_tell(&self) -> bool {
        !self.ticket.verdict.cautions.is_empty() && !self.ticket.told
    }
}

/// The tick on a button, and beside what is done.
pub(super) fn tick_sign() -> Markup {
    html! { svg.tick-sign viewBox="0 0 24 24" aria-hidden="true" { path d="M4 13l5 5L20 6" {} } }
}
