//! The paired tablets, and pairing another.

use std::{
    net::{IpAddr, SocketAddr, UdpSocket},
    sync::Arc,
};

use axum::{
    Router,
    extract::{Path, State},
    http::{HeaderMap, StatusCode, header},
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use jiff::Timestamp;
use maud::{Markup, html};
use uuid::Uuid;

use super::{
    confirm::{Question, ask},
    frame::{Tab, page},
    sessions, words,
};
use crate::{
    desk::{
        approval::{NoFields, Posted},
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
        tablets::{Tablet, Wish},
    },
    lang::{Lang, Texts, message, say},
    ledger::Kiosk,
    link::wire::TicketReport,
};

/// Kiosks ask for news all the time; one that is silent longer than this is off or out of reach.
const SILENT_SECONDS: u64 = 30;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/kiosks", get(kiosks))
        .route("/kiosks/code", post(new_code))
        .route("/kiosks/{digit}/release", get(ask_release).post(release))
        .route("/kiosks/{digit}/take-in/{id}", post(take_in))
        .route("/kiosks/{digit}/put-away/{id}", get(ask_put_away).post(put_away))
}

async fn kiosks(State(desk): State<Arc<DeskState>>, seller: Seller, headers: HeaderMap) -> Result<Response, Refusal> {
    let (kiosks, browsers, alone, now) = desk
        .ledger
        .run(move |ledger, now| {
            Ok((ledger.kiosks()?, sessions::running(ledger, now)?, ledger.staff()?.is_empty(), now))
        })
        .await?;
    let main = html! {
        h1.unseen { "Kiosks" }
        section.card aria-label="Pair a kiosk" {
            h2 { "Pair a kiosk" }
            @if let Some((code, minutes)) = desk.auth.pair_code(&seller) {
                p { "Type this on the tablet, within " (say!(Texts::of(Lang::En), "count-minutes", n = minutes as usize)) ":" }
                p.code { (code[..3]) " " (code[3..]) }
                p { "The desk’s address:" }
                ul.addresses { @for address in addresses(&desk, &headers) { li { code { (address) } } } }
                form method="post" action="/kiosks/code" { button.quiet { "Another code" } }
            } @else {
                p { "Each code pairs one tablet and is good for ten minutes." }
                form method="post" action="/kiosks/code" { button.main { "New pairing code" } }
            }
        }
        section aria-label="Paired kiosks" {
            h2 { "Paired " span.tally { (kiosks.len()) } }
            @if kiosks.is_empty() { p.faint { "No kiosk is paired yet." } }
            ul.cards {
                @for kiosk in &kiosks { (paired(kiosk, &desk.tablets.get(kiosk.digit), now)) }
            }
        }
        (sessions::list(&browsers, &seller, alone, now))
    };
    Ok(page(&desk, Tab::Kiosks, "Kiosks", &main).into_response())
}

/// One paired tablet: when it was last heard, and what lies on it.
fn paired(kiosk: &Kiosk, tablet: &Tablet, now: Timestamp) -> Markup {
    let report = &tablet.report;
    html! {
        li.card.kiosk data-key={ "kiosk-" (kiosk.digit) } {
            span.digit { (kiosk.digit) }
            div {
                p { "Paired " (words::clock(Texts::of(Lang::En), kiosk.paired, now)) }
                @match tablet.silent().map(|silent| silent.as_secs()) {
                    Some(0..SILENT_SECONDS) => p.good { "in reach" },
                    Some(seconds) => p.grave { "silent for " (say!(Texts::of(Lang::En), "count-minutes", n = (seconds / 60).max(1) as usize)) },
                    None => p.faint { "not heard since the desk started" },
                }
            }
            a.button.quiet href={ "/kiosks/" (kiosk.digit) "/release" } { "Release" }
            @if !report.waiting.is_empty() {
                div.lying {
                    p { strong { (say!(Texts::of(Lang::En), "count-tickets", n = report.waiting.len())) " on the way" } }
                    ul { @for ticket in &report.waiting { li { (ticket.number) " " (lying(ticket)) } } }
                }
            }
            @if !report.aside.is_empty() {
                div.lying {
                    p.grave {
                        strong {
                            (say!(Texts::of(Lang::En), "count-tickets", n = report.aside.len()))
                            @if report.aside.len() == 1 { " was" } @else { " were" }
                            " not taken"
                        }
                        ". The guest may wait with the number."
                    }
                    ul {
                        @for ticket in &report.aside {
                            li {
                                strong { (ticket.number) } " " (lying(ticket))
                                (what_to_do(kiosk.digit, ticket, tablet.wish(ticket.id)))
                            }
                        }
                    }
                }
            }
            @if report.unreadable > 0 {
                p.lying.grave {
                    (say!(Texts::of(Lang::En), "count-files", n = report.unreadable)) " on this tablet should be a ticket and can’t be read. It is kept in the folder “refused”."
                }
            }
            @if !tablet.renumbered.is_empty() {
                ul.lying {
                    @for (before, number) in &tablet.renumbered {
                        li { "Of the guest with " (before) ": " strong { (before) " came in as " (number) } "." }
                    }
                }
            }
        }
    }
}

fn what_to_do(digit: u8, ticket: &TicketReport, wish: Option<Wish>) -> Markup {
    html! {
        @match wish {
            Some(Wish::TakeIn) => p.faint { "It comes in as soon as the tablet answers." },
            Some(Wish::PutAway) => p.faint { "It is put away as soon as the tablet answers." },
            None => div.row {
                form method="post" action={ "/kiosks/" (digit) "/take-in/" (ticket.id) } { button { "Take it in" } }
                a.button.quiet href={ "/kiosks/" (digit) "/put-away/" (ticket.id) } { "Put it away" }
            },
        }
    }
}

fn lying(ticket: &TicketReport) -> Markup {
    html! {
        "· " (say!(Texts::of(Lang::En), "count-drops", n = ticket.drops)) " · " (ticket.sum)
        @if !ticket.trouble.is_empty() { " · " span.grave { (ticket.trouble) } }
    }
}

async fn take_in(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Path((digit, id)): Path<(u8, Uuid)>,
) -> Result<Redirect, Refusal> {
    wish(&desk, digit, id, Wish::TakeIn)
}

fn wish(desk: &DeskState, digit: u8, id: Uuid, wish: Wish) -> Result<Redirect, Refusal> {
    if desk.tablets.want(digit, id, wish) {
        return Ok(Redirect::to("/kiosks"));
    }
    let words = format!("no such ticket lies on kiosk {digit} any more; look at the Kiosks page again");
    Err(Refusal::Request(StatusCode::NOT_FOUND, words))
}

async fn ask_put_away(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Path((digit, id)): Path<(u8, Uuid)>,
) -> Response {
    let report = desk.tablets.get(digit).report;
    let number = report.aside.iter().find(|ticket| ticket.id == id).map(|ticket| ticket.number.to_string());
    let main = ask(&Question {
        title: format!("Put ticket {} away?", number.unwrap_or_default()),
        text: "It is not told any more and can’t be taken in. Its file stays on the tablet, in the folder “put-away”."
            .to_owned(),
        action: format!("/kiosks/{digit}/put-away/{id}"),
        yes: "Put it away",
        field: None,
        back: "/kiosks".to_owned(),
    });
    page(&desk, Tab::Kiosks, "Put a ticket away?", &main).into_response()
}

async fn put_away(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Path((digit, id)): Path<(u8, Uuid)>,
) -> Result<Redirect, Refusal> {
    wish(&desk, digit, id, Wish::PutAway)
}

/// The addresses under which tablets can reach this desk, the likeliest first.
fn addresses(desk: &DeskState, headers: &HeaderMap) -> Vec<String> {
    let bound = desk.addr;
    if !bound.ip().is_unspecified() {
        return vec![format!("http://{bound}")];
    }
    let mut all = Vec::new();
    // What this browser used works for others, unless it is this machine's name for itself.
    let used = headers.get(header::HOST).and_then(|host| host.to_str().ok());
    let loopback = |host: &str| {
        host.starts_with("localhost") || host.parse::<SocketAddr>().is_ok_and(|addr| addr.ip().is_loopback())
    };
    if let Some(host) = used.filter(|host| !loopback(host)) {
        all.push(format!("http://{host}"));
    }
    if let Some(ip) = outward() {
        let address = format!("http://{}", SocketAddr::new(ip, bound.port()));
        if !all.contains(&address) {
            all.push(address);
        }
    }
    if all.is_empty() {
        all.push(format!("http://localhost:{} (only on this machine: it is in no network)", bound.port()));
    }
    all
}

/// This machine's number in its network. Nothing is sent: choosing a peer only makes the system choose its own address.
fn outward() -> Option<IpAddr> {
    let socket = UdpSocket::bind(("0.0.0.0", 0)).ok()?;
    // An address reserved for documentation (RFC 5737).
    socket.connect(("192.0.2.1", 9)).ok()?;
    Some(socket.local_addr().ok()?.ip()).filter(|ip| !ip.is_loopback() && !ip.is_unspecified())
}

async fn new_code(State(desk): State<Arc<DeskState>>, posted: Posted<NoFields>) -> Result<Redirect, Refusal> {
    posted.by_the_seller(&desk, message!("act-pair")).await?;
    desk.auth
        .new_pair_code(posted.seller.name())
        .map_err(|error| Refusal::Request(StatusCode::INTERNAL_SERVER_ERROR, error.to_string()))?;
    Ok(Redirect::to("/kiosks"))
}

async fn ask_release(State(desk): State<Arc<DeskState>>, _seller: Seller, Path(digit): Path<u8>) -> Response {
    let report = desk.tablets.get(digit).report;
    let keeps: Vec<String> =
        report.waiting.iter().chain(&report.aside).map(|ticket| ticket.number.to_string()).collect();
    let keeps = if keeps.is_empty() {
        String::new()
    } else {
        format!(
            " It still keeps {}: {}.",
            say!(Texts::of(Lang::En), "count-tickets", n = keeps.len()),
            keeps.join(", ")
        )
    };
    let main = ask(&Question {
        title: format!("Release kiosk {digit}?"),
        text: format!(
            "It can send no tickets any more, not even those it still keeps, until it is paired again; then it has its \
             digit again, and they arrive. Another tablet gets the digit only after the show is closed.{keeps}"
        ),
        action: format!("/kiosks/{digit}/release"),
        yes: "Release it",
        field: None,
        back: "/kiosks".to_owned(),
    });
    page(&desk, Tab::Kiosks, "Release a kiosk?", &main).into_response()
}

async fn release(
    State(desk): State<Arc<DeskState>>,
    Path(digit): Path<u8>,
    posted: Posted<NoFields>,
) -> Result<Redirect, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-release")).await?;
    desk.ledger.run_by(&seller, move |ledger, now| ledger.release_kiosk(digit, now)).await?;
    desk.tablets.forget(digit);
    Ok(Redirect::to("/kiosks"))
}
