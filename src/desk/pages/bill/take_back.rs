//! Refunds and exchanges: what is taken back of a bill that is paid, why, whether its parts lie in their homes again, and how
//! the money is paid out.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, Query, State},
    response::{IntoResponse, Response},
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;
use uuid::Uuid;

use super::actions::act;
use crate::{
    catalog::Catalog,
    desk::{
        approval::Posted,
        pages::{
            frame::{Tab, page},
            on::On,
            paying::{way_called, way_words},
            words,
        },
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::{Bill, Corrected, LedgerError, TakeBack, Ticket},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bills/{id}/take-back", get(ask).post(take_back))
}

/// Why something comes back, as it is said most; common practice, no source.
const REASONS: [&str; 5] =
    ["back-reason-mind", "back-reason-broke", "back-reason-too-much", "back-reason-size", "back-reason-present"];

#[derive(Deserialize)]
struct Asked {
    ticket: Option<Uuid>,
    goods: Option<usize>,
}

/// What can be taken back, with what each would give.
struct Choice {
    code: String,
    name: String,
    worth: Decimal,
    has_home: bool,
}

async fn ask(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let loaded = desk.catalog.loaded();
    let of = Arc::clone(&loaded);
    let (bill, choices) = desk
        .ledger
        .run(move |ledger, now| {
            let (bill, tickets, _) = ledger.bill(id)?;
            let mut choices = Vec::new();
            for (what, name) in possible(texts, &bill, &tickets, &asked, &of.catalog) {
                let back = TakeBack { what, parts_home: true, reason: "to see what it gives".to_owned() };
                let worth = ledger.worth_of(id, &back, now)?;
                choices.push(Choice { code: code(what), name, worth, has_home: !matches!(what, Corrected::Goods(_)) });
            }
            Ok((bill, choices))
        })
        .await?;
    if choices.is_empty() {
        return Err(LedgerError::NotOnBill.into());
    }
    let main = form(texts, &bill, &choices, &loaded.catalog);
    Ok(page(&desk, texts, Tab::Tickets, &say!(texts, "bill-take-back"), &main).into_response())
}

/// The piece as a whole and each of its drops, or the goods.
fn possible(
    texts: &Texts,
    bill: &Bill,
    tickets: &[Ticket],
    asked: &Asked,
    catalog: &Catalog,
) -> Vec<(Corrected, String)> {
    let ticket = asked.ticket.and_then(|id| tickets.iter().find(|ticket| ticket.id == id && ticket.state.is_sold()));
    if let Some(ticket) = ticket {
        let name = say!(texts, "back-whole-piece", number = ticket.number.to_string());
        let whole = (Corrected::Ticket(ticket.id), name);
        let lines = ticket.live_lines().map(|(at, line)| {
            let name = format!("{}, {}", words::piece_name(texts, catalog, &line.id), line.home);
            (Corrected::Line { ticket: ticket.id, at }, name)
        });
        return std::iter::once(whole).chain(lines).collect();
    }
    let goods = asked.goods.and_then(|at| Some((at, bill.goods.get(at)?)));
    let sold = goods.filter(|(_, goods)| goods.sold.is_some() && !goods.gone);
    sold.map(|(at, goods)| (Corrected::Goods(at), goods.line.words.clone())).into_iter().collect()
}

fn code(what: Corrected) -> String {
    match what {
        Corrected::Ticket(id) => format!("ticket:{id}"),
        Corrected::Line { ticket, at } => format!("line:{ticket}:{at}"),
        Corrected::Goods(at) => format!("goods:{at}"),
        Corrected::Payment(at) => format!("payment:{at}"),
    }
}

fn read_code(code: &str) -> Option<Corrected> {
    let mut parts = code.split(':');
    let what = match (parts.next()?, parts.next()?, parts.next()) {
        ("ticket", id, None) => Corrected::Ticket(id.parse().ok()?),
        ("line", id, Some(at)) => Corrected::Line { ticket: id.parse().ok()?, at: at.parse().ok()? },
        ("goods", at, None) => Corrected::Goods(at.parse().ok()?),
        _ => return None,
    };
    Some(what)
}

fn form(texts: &Texts, bill: &Bill, choices: &[Choice], catalog: &Catalog) -> Markup {
    let has_home = choices.iter().any(|choice| choice.has_home);
    html! {
        section.card.ask {
            h1 { (say!(texts, "bill-take-back")) }
            p.faint { (say!(texts, "back-of-bill", number = bill.number.to_string())) }
            form.stack method="post" action={ "/bills/" (bill.id) "/take-back" } {
                fieldset.choices {
                    legend { (say!(texts, "back-what")) }
                    @for (n, choice) in choices.iter().enumerate() {
                        label.option {
                            input type="radio" name="what" value=(choice.code) checked[n == 0] required;
                            span { (choice.name) }
                            strong.figure { (words::money(texts, choice.worth, bill.rules.currency)) }
                        }
                    }
                }
                @if has_home { (whereabouts(texts)) }
                div {
                    label for="reason" { (say!(texts, "bill-why")) }
                    input #reason name="reason" list="reasons" maxlength="80" placeholder=(texts.get(REASONS[0])) required;
                    datalist #reasons { @for reason in REASONS { option value=(texts.get(reason)) {} } }
                }
                div {
                    p.label { (say!(texts, "back-pay-out")) }
                    div.row {
                        @for way in &catalog.table.till.ways_to_pay {
                            button.main name="tender" value=(way.name()) { (way_words(texts, way)) }
                        }
                    }
                    p.aside { button.quiet.wide name="tender" value="" { (say!(texts, "back-not-yet")) } }
                }
            }
            p.aside { a.button.quiet href={ "/bills/" (bill.id) } { (say!(texts, "go-back")) } }
        }
    }
}

/// What became of the parts.
fn whereabouts(texts: &Texts) -> Markup {
    html! {
        fieldset.choices {
            legend { (say!(texts, "back-parts")) }
            label.option { input type="radio" name="home" value="1" checked; span { (say!(texts, "back-parts-home")) } }
            label.option { input type="radio" name="home" value="0"; span { (say!(texts, "back-parts-gone")) } }
        }
    }
}

#[derive(Deserialize)]
struct Sent {
    what: String,
    #[serde(default = "home")]
    home: u8,
    reason: String,
    tender: String,
}

fn home() -> u8 {
    1
}

async fn take_back(
    State(desk): State<Arc<DeskState>>,
    Path(id): Path<Uuid>,
    posted: Posted<Sent>,
) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-take-back")).await?;
    let form = posted.form;
    let Some(what) = read_code(&form.what) else {
        return Err(Refusal::wrong(message!("refused-back")));
    };
    let out = match form.tender.as_str() {
        "" => None,
        name => Some(way_called(&desk, name)?),
    };
    let back = TakeBack { what, parts_home: form.home == 1, reason: form.reason };
    act(&On { desk, seller, id }, "#till", move |ledger, id, now| ledger.take_back(id, &back, out.as_ref(), now)).await
}
