//! What is done to the price by hand: one address for each act.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect},
    routing::post,
};
use rust_decimal::Decimal;
use serde::Deserialize;
use uuid::Uuid;

use super::{actions::act, view::with_trouble};
use crate::{
    desk::{
        approval::Posted,
        pages::{
            on::{Answered, On},
            reduction::{Asked, who_takes_off},
            typed::plain_line,
        },
        seller::Seller,
        state::DeskState,
    },
    lang::say,
    quoting::quoted,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/tickets/{id}/bill", post(bill))
        .route("/tickets/{id}/reduce", post(reduce))
        .route("/tickets/{id}/package", post(package))
        .route("/tickets/{id}/plain", post(plain))
        .route("/tickets/{id}/plain/{at}/off", post(plain_off))
}

/// Leads to the ticket's bill, which is begun where there is none.
async fn bill(on: On) -> Answered {
    let id = on.id;
    let bill = on.desk.ledger.enter_by(&on.seller, move |ledger, now| ledger.bill_for(id, now)).await?;
    Ok(Redirect::to(&format!("/bills/{}", bill.id)).into_response())
}

async fn reduce(State(desk): State<Arc<DeskState>>, Path(id): Path<Uuid>, posted: Posted<Asked>) -> Answered {
    let on = |seller: Seller| On { desk: Arc::clone(&desk), seller, id };
    let given = match posted.form.given(&desk, posted.seller.texts) {
        Ok(given) => given,
        Err(words) => return with_trouble(&on(posted.seller.clone()), StatusCode::BAD_REQUEST, &words).await,
    };
    let ticket = desk.ledger.look(move |ledger| ledger.ticket(id)).await?;
    // What can't be taken off at all is told by the ledger, to whoever asks.
    let percent = given.as_ref().map_or(Ok(Decimal::ZERO), |given| ticket.percent_off(&given.reduction));
    let seller = who_takes_off(&desk, &posted, percent.unwrap_or_default()).await?;
    act(&on(seller), "#till", move |ledger, id, now| ledger.reduce(id, given, now)).await
}

#[derive(Deserialize)]
struct Chosen {
    package: String,
}

async fn package(on: On, Form(chosen): Form<Chosen>) -> Answered {
    let loaded = on.desk.catalog.loaded();
    let package = loaded.catalog.table.till.packages.iter().find(|package| package.name == chosen.package).cloned();
    if package.is_none() && !chosen.package.is_empty() {
        let words = say!(on.texts(), "price-package-gone", name = quoted(&chosen.package));
        return with_trouble(&on, StatusCode::BAD_REQUEST, &words).await;
    }
    act(&on, "#till", move |ledger, id, now| ledger.set_package(id, package, now)).await
}

#[derive(Deserialize)]
struct Plain {
    words: String,
    price: String,
}

async fn plain(on: On, Form(form): Form<Plain>) -> Answered {
    let loaded = on.desk.catalog.loaded();
    match plain_line(on.texts(), loaded.catalog.table.prices.currency, &form.words, &form.price) {
        Ok(line) => act(&on, "#till", move |ledger, id, now| ledger.add_plain(id, &line, &loaded.catalog, now)).await,
        Err(words) => with_trouble(&on, StatusCode::BAD_REQUEST, &words).await,
    }
}

async fn plain_off(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path((id, at)): Path<(Uuid, usize)>,
) -> Answered {
    let loaded = desk.catalog.loaded();
    act(&On { desk, seller, id }, "#till", move |ledger, id, now| ledger.remove_plain(id, at, &loaded.catalog, now))
        .await
}
