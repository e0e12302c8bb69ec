//! The paired tablets, and pairing another.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::{HeaderMap, StatusCode},
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
        not_taken_words::not_taken_words,
        outward::Reach,
        qr,
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
        tablets::{Tablet, Wish},
    },
    lang::{Texts, message, say},
    ledger::Kiosk,
    link::wire::TicketReport,
};

/// Kiosks ask for news all the time; one that is silent longer than this is off or out of reach.
const SILENT_SECONDS: u64 = 30;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/kiosks", get(kiosks))
        .route("/kiosks/code", post(new_code))
        .route("/kiosks/back", post(back_to_kiosk))
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
    let (texts, reach) = (seller.texts, Reach::of(&desk, &headers));
    let title = say!(texts, "tab-kiosks");
    let main = html! {
        h1.unseen { (title) }
        @if seller.is_here && desk.way_back.get().is_some() {
            form method="post" action="/kiosks/back" { button.main.wide { (say!(texts, "back-to-kiosk")) } }
        }
        div.ways-in {
            (pairing(&desk, &seller, &reach))
            (phone_till(texts, &reach))
        }
        section aria-label=(say!(texts, "kiosks-paired")) {
            h2 { (say!(texts, "kiosks-tally")) " " span.tally { (kiosks.len()) } }
            @if kiosks.is_empty() { p.faint { (say!(texts, "kiosks-none")) } }
            ul.cards {
                @for kiosk in &kiosks { (paired(texts, kiosk, &desk.tablets.get(kiosk.digit), now)) }
            }
        }
        (sessions::list(&browsers, &seller, alone, now))
    };
    Ok(page(&desk, texts, Tab::Kiosks, &title, &main).into_response())
}

/// Shows the kiosk's window again, where the desk was opened from it on the same machine.
async fn back_to_kiosk(State(desk): State<Arc<DeskState>>, seller: Seller) -> Result<Redirect, Refusal> {
    match desk.way_back.get().filter(|_| seller.is_here) {
        Some(way_back) => way_back(),
        None => return Err(Refusal::Said(StatusCode::CONFLICT, message!("refused-way-back"))),
    }
    Ok(Redirect::to("/kiosks"))
}

/// The code that a tablet is told, and the address.
fn pairing(desk: &DeskState, seller: &Seller, reach: &Reach) -> Markup {
    let texts = seller.texts;
    html! {
        section.card aria-label=(say!(texts, "pair-kiosk")) {
            h2 { (say!(texts, "pair-kiosk")) }
            @if let Some((code, minutes)) = desk.auth.pair_code(seller) {
                p { (say!(texts, "pair-type-code", n = minutes)) }
                p.code { (code[..3]) " " (code[3..]) }
                p { (say!(texts, "pair-desks-address")) }
                ul.addresses {
                    @match reach {
                        Reach::Network(all) => { @for address in all { li { code { (address) } } } }
                        Reach::Here(address) => {
                            li { code { (say!(texts, "pair-here-alone", address = address.as_str())) } }
                        }
                    }
                }
                form method="post" action="/kiosks/code" { button.quiet { (say!(texts, "pair-another-code")) } }
            } @else {
                p { (say!(texts, "pair-about")) }
                form method="post" action="/kiosks/code" { button.main { (say!(texts, "pair-new-code")) } }
            }
        }
    }
}

/// The addresses as codes that a phone's camera reads.
fn phone_till(texts: &Texts, reach: &Reach) -> Markup {
    let one = |address: &str| {
        html! {
            (qr::drawing(address, &say!(texts, "qr-of", address = address)))
            p { code { (address) } }
        }
    };
    html! {
        section.card.phone-till aria-label=(say!(texts, "phone-till")) {
            h2 { (say!(texts, "phone-till")) }
            @match reach {
                Reach::Here(address) => {
                    p.faint { (say!(texts, "phone-till-alone", address = address.as_str())) }
                }
                Reach::Network(all) => {
                    p { (say!(texts, "phone-till-scan")) }
                    @if let Some((likeliest, others)) = all.split_first() {
                        (one(likeliest))
                        @if !others.is_empty() {
                            details #other-addresses {
                                summary { (say!(texts, "phone-till-others")) }
                                @for address in others { (one(address)) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// One paired tablet: when it was last heard, and what lies on it.
fn paired(texts: &Texts, kiosk: &Kiosk, tablet: &Tablet, now: Timestamp) -> Markup {
    let report = &tablet.report;
    html! {
        li.card.kiosk data-key={ "kiosk-" (kiosk.digit) } {
            span.digit { (kiosk.digit) }
            div {
                p { (say!(texts, "kiosk-since", time = words::clock(texts, kiosk.paired, now))) }
                @match tablet.silent().map(|silent| silent.as_secs()) {
                    Some(0..SILENT_SECONDS) => p.good { (say!(texts, "kiosk-in-reach")) },
                    Some(seconds) => p.grave { (say!(texts, "kiosk-silent", n = (seconds / 60).max(1))) },
                    None => p.faint { (say!(texts, "kiosk-not-heard")) },
                }
                (version(texts, tablet))
                @if let Some(battery) = report.battery {
                    @if battery.plugged_in { p.faint { (say!(texts, "battery-charging", n = battery.percent)) } }
                    @else { p .grave[battery.is_low()] { (say!(texts, "battery-alone", n = battery.percent)) } }
                }
            }
            a.button.quiet href={ "/kiosks/" (kiosk.digit) "/release" } { (say!(texts, "kiosk-release")) }
            @if !report.waiting.is_empty() {
                div.lying {
                    p { strong { (say!(texts, "kiosk-waiting", n = report.waiting.len())) } }
                    ul { @for ticket in &report.waiting { li { (ticket.number) " " (lying(texts, ticket)) } } }
                }
            }
            @if !report.aside.is_empty() {
                div.lying {
                    p.grave {
                        strong { (say!(texts, "kiosk-not-taken", n = report.aside.len())) } ". "
                        (say!(texts, "kiosk-guest-waits"))
                    }
                    ul {
                        @for ticket in &report.aside {
                            li {
                                strong { (ticket.number) } " " (lying(texts, ticket))
                                (what_to_do(texts, kiosk.digit, ticket, tablet.wish(ticket.id)))
                            }
                        }
                    }
                }
            }
            @if report.unreadable > 0 {
                p.lying.grave { (say!(texts, "kiosk-unreadable", n = report.unreadable)) }
            }
            @if !tablet.renumbered.is_empty() {
                ul.lying {
                    @for (before, number) in &tablet.renumbered {
                        @let (before, number) = (before.to_string(), number.to_string());
                        li {
                            (say!(texts, "kiosk-renumbered-of", before = before.as_str())) " "
                            strong { (say!(texts, "kiosk-renumbered", before = before.as_str(), number = number)) } "."
                        }
                    }
                }
            }
        }
    }
}

/// Which version a tablet is, beside the desk's own. One of another version is served as far as the two understand each other.
fn version(texts: &Texts, tablet: &Tablet) -> Markup {
    let own = env!("CARGO_PKG_VERSION");
    html! {
        @match tablet.report.version.as_deref() {
            Some(version) if version == own => p.faint { (say!(texts, "kiosk-version", version = version)) },
            Some(version) => p.grave { (say!(texts, "kiosk-other-version", version = version, own = own)) },
            None if tablet.silent().is_some() => p.faint { (say!(texts, "kiosk-no-version", own = own)) },
            None => {}
        }
    }
}

fn what_to_do(texts: &Texts, digit: u8, ticket: &TicketReport, wish: Option<Wish>) -> Markup {
    html! {
        @match wish {
            Some(Wish::TakeIn) => p.faint { (say!(texts, "kiosk-comes-in")) },
            Some(Wish::PutAway) => p.faint { (say!(texts, "kiosk-goes-away")) },
            None => div.row {
                form method="post" action={ "/kiosks/" (digit) "/take-in/" (ticket.id) } { button { (say!(texts, "kiosk-take-in")) } }
                a.button.quiet href={ "/kiosks/" (digit) "/put-away/" (ticket.id) } { (say!(texts, "kiosk-put-away")) }
            },
        }
    }
}

fn lying(texts: &Texts, ticket: &TicketReport) -> Markup {
    html! {
        "· " (say!(texts, "count-drops", n = ticket.drops)) " · " (ticket.sum)
        @if !ticket.trouble.is_empty() {
            " · " span.grave { (not_taken_words(texts, ticket.why.as_ref(), &ticket.trouble)) }
        }
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
    Err(Refusal::Said(StatusCode::NOT_FOUND, message!("refused-no-such-ticket", digit = digit)))
}

async fn ask_put_away(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path((digit, id)): Path<(u8, Uuid)>,
) -> Response {
    let report = desk.tablets.get(digit).report;
    let number = report.aside.iter().find(|ticket| ticket.id == id).map(|ticket| ticket.number.to_string());
    let texts = seller.texts;
    let main = ask(&Question {
        texts,
        title: say!(texts, "put-away-ask", number = number.unwrap_or_default()),
        text: say!(texts, "put-away-text"),
        action: format!("/kiosks/{digit}/put-away/{id}"),
        yes: say!(texts, "kiosk-put-away"),
        field: None,
        back: "/kiosks".to_owned(),
    });
    page(&desk, texts, Tab::Kiosks, &say!(texts, "put-away-title"), &main).into_response()
}

async fn put_away(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Path((digit, id)): Path<(u8, Uuid)>,
) -> Result<Redirect, Refusal> {
    wish(&desk, digit, id, Wish::PutAway)
}

async fn new_code(State(desk): State<Arc<DeskState>>, posted: Posted<NoFields>) -> Result<Redirect, Refusal> {
    posted.by_the_seller(&desk, message!("act-pair")).await?;
    desk.auth.new_pair_code(posted.seller.name())?;
    Ok(Redirect::to("/kiosks"))
}

async fn ask_release(State(desk): State<Arc<DeskState>>, seller: Seller, Path(digit): Path<u8>) -> Response {
    let report = desk.tablets.get(digit).report;
    let keeps: Vec<String> =
        report.waiting.iter().chain(&report.aside).map(|ticket| ticket.number.to_string()).collect();
    let texts = seller.texts;
    let mut text = say!(texts, "release-text");
    if !keeps.is_empty() {
        text = format!("{text} {}", say!(texts, "release-keeps", n = keeps.len(), numbers = keeps.join(", ")));
    }
    let main = ask(&Question {
        texts,
        title: say!(texts, "release-ask", digit = digit),
        text,
        action: format!("/kiosks/{digit}/release"),
        yes: say!(texts, "release-yes"),
        field: None,
        back: "/kiosks".to_owned(),
    });
    page(&desk, texts, Tab::Kiosks, &say!(texts, "release-title"), &main).into_response()
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
