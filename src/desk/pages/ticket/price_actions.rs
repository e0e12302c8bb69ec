//! What is done to the price by hand: one address for each act.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
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
            reduction::{Asked, who_takes_off},
            typed::plain_line,
        },
        refusal::Refusal,
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
async fn bill(State(desk): State<Arc<DeskState>>, seller: Seller, Path(id): Path<Uuid>) -> Result<Response, Refusal> {
    let bill = desk.ledger.enter_by(&seller, move |ledger, now| ledger.bill_for(id, now)).await?;
    Ok(Redirect::to(&format!("/bills/{}", bill.id)).into_response())
}

async fn reduce(
    State(desk): State<Arc<DeskState>>,
    Path(id): Path<Uuid>,
    posted: Posted<Asked>,
) -> Result<Response, Refusal> {
    let given = match posted.form.given(&desk, posted.seller.texts) {
        Ok(given) => given,
        Err(words) => {
            return Ok(
                (StatusCode::BAD_REQUEST, with_trouble(&desk, posted.seller.texts, id, &words).await?).into_response()
            );
        }
    };
    let ticket = desk.ledger.look(move |ledger| ledger.ticket(id)).await?;
    // What can't be taken off at all is told by the ledger, to whoever asks.
    let percent = given.as_ref().map_or(Ok(Decimal::ZERO), |given| ticket.percent_off(&given.reduction));
    let seller = who_takes_off(&desk, &posted, percent.unwrap_or_default()).await?;
    act(&desk, &seller, id, "#till", move |ledger, now| ledger.reduce(id, given, now)).await
}

#[derive(Deserialize)]
struct Chosen {
    package: String,
}

async fn package(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(chosen): Form<Chosen>,
) -> Result<Response, Refusal> {
    let packages = &desk.catalog.loaded().catalog.table.till.packages;
    let package = match chosen.package.as_str() {
        "" => None,
        name => match packages.iter().find(|package| package.name == name) {
            Some(package) => Some(package.clone()),
            None => {
                let words = say!(seller.texts, "price-package-gone", name = quoted(name));
                return Ok(
                    (StatusCode::BAD_REQUEST, with_trouble(&desk, seller.texts, id, &words).await?).into_response()
                );
            }
        },
    };
    act(&desk, &seller, id, "#till", move |ledger, now| ledger.set_package(id, package, now)).await
}

#[derive(Deserialize)]
struct Plain {
    words: String,
    price: String,
}

async fn plain(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<Plain>,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    match plain_line(seller.texts, loaded.catalog.table.prices.currency, &form.words, &form.price) {
        Ok(line) => {
            act(&desk, &seller, id, "#till", move |ledger, now| ledger.add_plain(id, &line, &loaded.catalog, now)).await
        }
        Err(words) => {
            Ok((StatusCode::BAD_REQUEST, with_trouble(&desk, seller.texts, id, &words).await?).into_response())
        }
    }
}

async fn plain_off(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path((id, at)): Path<(Uuid, usize)>,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    act(&desk, &seller, id, "#till", move |ledger, now| ledger.remove_plain(id, at, &loaded.catalog, now)).await
}
