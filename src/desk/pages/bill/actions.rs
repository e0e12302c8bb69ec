//! What the seller does with a bill: one address for every act, all by plain forms.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect},
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
            on::{Answered, On},
            paying::{amount_of, way_called},
            reduction::{Asked, who_takes_off},
            typed::{plain_line, typed_number},
            words,
        },
        refusal::{Refusal, status_of},
        seller::Seller,
        state::DeskState,
        table_cuts,
    },
    lang::{message, say},
    ledger::{Bill, Ledger, LedgerError, Listed, Paying, Seen},
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

/// Does something to a bill and leads back to the place on its page; what the ledger refuses stands on that page.
pub(super) async fn act(
    on: &On,
    place: &str,
    work: impl FnOnce(&mut Ledger, Uuid, Timestamp) -> Result<Bill, LedgerError> + Send + 'static,
) -> Answered {
    let (id, desk) = (on.id, Arc::clone(&on.desk));
    let done = on.desk.ledger.enter_by(&on.seller, move |ledger, now| {
        let bill = work(ledger, id, now)?;
        table_cuts::count_of_bill(&desk, ledger, id, now);
        Ok(bill)
    });
    match done.await {
        Ok(_) => Ok(Redirect::to(&format!("/bills/{id}{place}")).into_response()),
        Err(Refusal::Ledger(error)) if status_of(&error) == StatusCode::CONFLICT => {
            let words = words::trouble(on.texts(), &error, &on.desk.catalog.loaded().catalog);
            with_trouble(on, StatusCode::CONFLICT, &words).await
        }
        Err(refusal) => Err(refusal),
    }
}

#[derive(Deserialize)]
struct Begin {
    /// Makes one bill of a form that is sent twice.
    id: Uuid,
}

/// Begins a bill for goods alone.
async fn begin(State(desk): State<Arc<DeskState>>, seller: Seller, Form(form): Form<Begin>) -> Answered {
    let loaded = desk.catalog.loaded();
    let work = move |ledger: &mut Ledger, now| ledger.begin_bill(form.id, &loaded.catalog.table.prices, now);
    let bill = desk.ledger.enter_by(&seller, work).await?;
    Ok(Redirect::to(&format!("/bills/{}", bill.id)).into_response())
}

#[derive(Deserialize)]
struct ByNumber {
    number: String,
}

async fn add_ticket(on: On, Form(form): Form<ByNumber>) -> Answered {
    let texts = on.texts();
    let number = match typed_number(&form.number) {
        Ok(number) => number,
        Err(error) => {
            let words = words::sentence(&ledger_words(texts, &error.into()));
            return with_trouble(&on, StatusCode::BAD_REQUEST, &words).await;
        }
    };
    let found = on.desk.ledger.look(move |ledger| ledger.tickets_numbered(number)).await?;
    let open: Vec<&Listed> = found.iter().filter(|one| one.state.is_open()).collect();
    if let [one] = open[..] {
        let ticket = one.id;
        return act(&on, "", move |ledger, id, now| ledger.put_on_bill(id, ticket, now)).await;
    }
    let number = number.to_string();
    let words = if found.is_empty() {
        say!(texts, "bill-no-such-ticket", number = number)
    } else if open.is_empty() {
        say!(texts, "bill-ticket-not-open", number = number)
    } else {
        say!(texts, "bill-tickets-alike", number = number)
    };
    with_trouble(&on, StatusCode::BAD_REQUEST, &words).await
}

#[derive(Deserialize)]
struct OfTicket {
    ticket: Uuid,
    #[serde(default)]
    gift: u8,
}

async fn take_off(on: On, Form(form): Form<OfTicket>) -> Answered {
    act(&on, "", move |ledger, id, now| ledger.take_off_bill(id, form.ticket, now)).await
}

async fn gift(on: On, Form(form): Form<OfTicket>) -> Answered {
    act(&on, "", move |ledger, id, now| ledger.set_gift(id, form.ticket, form.gift == 1, now)).await
}

#[derive(Deserialize)]
struct Goods {
    words: String,
    price: String,
}

async fn add_goods(on: On, Form(form): Form<Goods>) -> Answered {
    let currency = on.desk.catalog.loaded().catalog.table.prices.currency;
    match plain_line(on.texts(), currency, &form.words, &form.price) {
        Ok(line) => act(&on, "", move |ledger, id, now| ledger.add_goods(id, &line, now)).await,
        Err(words) => with_trouble(&on, StatusCode::BAD_REQUEST, &words).await,
    }
}

async fn goods_off(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path((id, at)): Path<(Uuid, usize)>,
) -> Answered {
    act(&On { desk, seller, id }, "", move |ledger, id, now| ledger.remove_goods(id, at, now)).await
}

async fn reduce(State(desk): State<Arc<DeskState>>, Path(id): Path<Uuid>, posted: Posted<Asked>) -> Answered {
    let on = |seller: Seller| On { desk: Arc::clone(&desk), seller, id };
    let given = match posted.form.given(&desk, posted.seller.texts) {
        Ok(given) => given,
        Err(words) => return with_trouble(&on(posted.seller.clone()), StatusCode::BAD_REQUEST, &words).await,
    };
    let (bill, ..) = desk.ledger.look(move |ledger| ledger.bill(id)).await?;
    // What can't be taken off at all is told by the ledger, to whoever asks.
    let percent = given.as_ref().map_or(Ok(Decimal::ZERO), |given| bill.goods_percent_off(&given.reduction));
    let seller = who_takes_off(&desk, &posted, percent.unwrap_or_default()).await?;
    act(&on(seller), "#till", move |ledger, id, now| ledger.reduce_goods(id, given, now)).await
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

async fn pay(on: On, Form(form): Form<Pay>) -> Answered {
    let tender = way_called(&on.desk, &form.tender)?;
    let (amount, given) = match (amount_of(&on.desk, &form.amount), amount_of(&on.desk, &form.given)) {
        (Ok(amount), Ok(given)) => (amount, given),
        (Err(refusal), _) | (_, Err(refusal)) => {
            return with_trouble(&on, StatusCode::BAD_REQUEST, &words::sentence(&refusal.words(on.texts()))).await;
        }
    };
    let paying = Paying { tender, amount, given };
    let seen = Seen { left: form.left, payments: form.payments };
    act(&on, "#till", move |ledger, id, now| ledger.pay(id, &paying, seen, now)).await
}

#[derive(Deserialize)]
struct OtherWay {
    payment: usize,
    tender: String,
    reason: String,
}

async fn other_way(State(desk): State<Arc<DeskState>>, Path(id): Path<Uuid>, posted: Posted<OtherWay>) -> Answered {
    let seller = posted.by_the_seller(&desk, message!("act-other-way")).await?;
    let form = posted.form;
    let to = way_called(&desk, &form.tender)?;
    act(&On { desk, seller, id }, "", move |ledger, id, now| {
        ledger.other_tender(id, form.payment, &to, &form.reason, now)
    })
    .await
}
