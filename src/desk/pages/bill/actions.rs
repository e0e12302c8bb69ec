//! What the seller does with a bill: one address for every act, all by plain forms.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::post,
};
use jiff::Timestamp;
use rust_decimal::Decimal;
use serde::Deserialize;
use uuid::Uuid;

use super::view::with_trouble;
use crate::{
    desk::{
        approval::Posted,
        ledger_words::ledger_words,
        pages::{
            paying::{amount_of, way_called},
            reduction::{Asked, who_takes_off},
            typed::plain_line,
            words,
        },
        refusal::{Refusal, status_of},
        seller::Seller,
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::{Bill, Ledger, LedgerError, Listed, Paying, Seen},
    ticket::TicketNumber,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/bills", post(begin))
        .route("/bills/{id}/ticket", post(add_ticket))
        .route("/bills/{id}/off", post(take_off))
        .route("/bills/{id}/gift", post(gift))
        .route("/bills/{id}/goods", post(add_goods))
        .route("/bills/{id}/goods/{at}/off", post(goods_off))
        .route("/bills/{id}/reduce", post(reduce))
        .route("/bills/{id}/pay", post(pay))
        .route("/bills/{id}/other-way", post(other_way))
}

/// Does something to bill `id` and leads back to the place on its page; what the ledger refuses stands on that page.
pub(super) async fn act(
    desk: &DeskState,
    seller: &Seller,
    id: Uuid,
    place: &str,
    work: impl FnOnce(&mut Ledger, Timestamp) -> Result<Bill, LedgerError> + Send + 'static,
) -> Result<Response, Refusal> {
    match desk.ledger.enter_by(seller, work).await {
        Ok(_) => Ok(Redirect::to(&format!("/bills/{id}{place}")).into_response()),
        Err(Refusal::Ledger(error)) if status_of(&error) == StatusCode::CONFLICT => {
            let words = words::trouble(seller.texts, &error, &desk.catalog.loaded().catalog);
            Ok((StatusCode::CONFLICT, with_trouble(desk, seller.texts, id, Some(&words)).await?).into_response())
        }
        Err(refusal) => Err(refusal),
    }
}

/// The bill's page with what is wrong with a form.
async fn wrong(desk: &DeskState, texts: &'static Texts, id: Uuid, words: &str) -> Result<Response, Refusal> {
    Ok((StatusCode::BAD_REQUEST, with_trouble(desk, texts, id, Some(words)).await?).into_response())
}

#[derive(Deserialize)]
struct Begin {
    /// Makes one bill of a form that is sent twice.
    id: Uuid,
}

/// Begins a bill for goods alone.
async fn begin(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Form(form): Form<Begin>,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    let work = move |ledger: &mut Ledger, now| ledger.begin_bill(form.id, &loaded.catalog.table.prices, now);
    let bill = desk.ledger.enter_by(&seller, work).await?;
    Ok(Redirect::to(&format!("/bills/{}", bill.id)).into_response())
}

#[derive(Deserialize)]
struct ByNumber {
    number: String,
}

async fn add_ticket(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<ByNumber>,
) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let number = match form.number.parse::<TicketNumber>() {
        Ok(number) => number,
        Err(error) => return wrong(&desk, texts, id, &words::sentence(&ledger_words(texts, &error.into()))).await,
    };
    let found = desk.ledger.look(move |ledger| ledger.tickets_numbered(number)).await?;
    let open: Vec<&Listed> = found.iter().filter(|one| one.state.is_open()).collect();
    if let [one] = open[..] {
        let ticket = one.id;
        return act(&desk, &seller, id, "", move |ledger, now| ledger.put_on_bill(id, ticket, now)).await;
    }
    let number = number.to_string();
    let words = if found.is_empty() {
        say!(texts, "bill-no-such-ticket", number = number)
    } else if open.is_empty() {
        say!(texts, "bill-ticket-not-open", number = number)
    } else {
        say!(texts, "bill-tickets-alike", number = number)
    };
    wrong(&desk, texts, id, &words).await
}

#[derive(Deserialize)]
struct OfTicket {
    ticket: Uuid,
    #[serde(default)]
    gift: u8,
}

async fn take_off(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<OfTicket>,
) -> Result<Response, Refusal> {
    act(&desk, &seller, id, "", move |ledger, now| ledger.take_off_bill(id, form.ticket, now)).await
}

async fn gift(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<OfTicket>,
) -> Result<Response, Refusal> {
    act(&desk, &seller, id, "", move |ledger, now| ledger.set_gift(id, form.ticket, form.gift == 1, now)).await
}

#[derive(Deserialize)]
struct Goods {
    words: String,
    price: String,
}

async fn add_goods(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<Goods>,
) -> Result<Response, Refusal> {
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    match plain_line(seller.texts, currency, &form.words, &form.price) {
        Ok(line) => act(&desk, &seller, id, "", move |ledger, now| ledger.add_goods(id, &line, now)).await,
        Err(words) => wrong(&desk, seller.texts, id, &words).await,
    }
}

async fn goods_off(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path((id, at)): Path<(Uuid, usize)>,
) -> Result<Response, Refusal> {
    act(&desk, &seller, id, "", move |ledger, now| ledger.remove_goods(id, at, now)).await
}

async fn reduce(
    State(desk): State<Arc<DeskState>>,
    Path(id): Path<Uuid>,
    posted: Posted<Asked>,
) -> Result<Response, Refusal> {
    let texts = posted.seller.texts;
    let given = match posted.form.given(&desk, texts) {
        Ok(given) => given,
        Err(words) => return wrong(&desk, texts, id, &words).await,
    };
    let (bill, ..) = desk.ledger.look(move |ledger| ledger.bill(id)).await?;
    // What can't be taken off at all is told by the ledger, to whoever asks.
    let percent = given.as_ref().map_or(Ok(Decimal::ZERO), |given| bill.goods_percent_off(&given.reduction));
    let seller = who_takes_off(&desk, &posted, percent.unwrap_or_default()).await?;
    act(&desk, &seller, id, "#till", move |ledger, now| ledger.reduce_goods(id, given, now)).await
}

#[derive(Deserialize)]
struct Pay {
    tender: String,
    left: Decimal,
    payments: usize,
    #[serde(default)]
    amount: String,
    #[serde(default)]
    given: String,
}

async fn pay(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<Pay>,
) -> Result<Response, Refusal> {
    let tender = way_called(&desk, &form.tender)?;
    let (amount, given) = match (amount_of(&desk, &form.amount), amount_of(&desk, &form.given)) {
        (Ok(amount), Ok(given)) => (amount, given),
        (Err(refusal), _) | (_, Err(refusal)) => {
            return wrong(&desk, seller.texts, id, &words::sentence(&refusal.words(seller.texts))).await;
        }
    };
    let paying = Paying { tender, amount, given };
    let seen = Seen { left: form.left, payments: form.payments };
    act(&desk, &seller, id, "#till", move |ledger, now| ledger.pay(id, &paying, seen, now)).await
}

#[derive(Deserialize)]
struct OtherWay {
    payment: usize,
    tender: String,
    reason: String,
}

async fn other_way(
    State(desk): State<Arc<DeskState>>,
    Path(id): Path<Uuid>,
    posted: Posted<OtherWay>,
) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-other-way")).await?;
    let form = posted.form;
    let to = way_called(&desk, &form.tender)?;
    act(&desk, &seller, id, "", move |ledger, now| ledger.other_tender(id, form.payment, &to, &form.reason, now)).await
}
