//! Taking the money for this piece alone, in one touch.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Response},
    routing::post,
};
use rust_decimal::Decimal;
use serde::Deserialize;
use uuid::Uuid;

use super::{actions::act, view::with_trouble};
use crate::{
    desk::{
        pages::{
            paying::{amount_of, way_called},
            words,
        },
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    lang::say,
    ledger::Paying,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/tickets/{id}/ring-up", post(ring_up))
}

#[derive(Deserialize)]
struct RingUp {
    tender: String,
    total: Decimal,
    /// What was given in cash, from which change is due.
    #[serde(default)]
    given: String,
}

async fn ring_up(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<RingUp>,
) -> Result<Response, Refusal> {
    let tender = way_called(&desk, &form.tender)?;
    let given = amount_of(&desk, &form.given)?;
    // Somebody else may have changed the piece while this seller looked at the sum.
    let before = desk.ledger.look(move |ledger| ledger.ticket(id)).await?;
    if before.state.is_open() && before.quote.total != form.total {
        let texts = seller.texts;
        let sum = words::money(texts, before.quote.total, before.quote.currency);
        let words = say!(texts, "sum-changed", sum = sum);
        return Ok((StatusCode::CONFLICT, with_trouble(&desk, texts, id, &words).await?).into_response());
    }
    let paying = Paying { tender, amount: None, given };
    act(&desk, &seller, id, "#till", move |ledger, now| {
        let ticket = ledger.ticket(id)?;
        // A second touch on the same button means the first: the money was taken, once.
        if ticket.state.is_sold() && ticket.tender.as_ref() == Some(&paying.tender) && ticket.quote.total == form.total
        {
            return Ok(ticket);
        }
        ledger.ring_up_from(id, &paying, now)
    })
    .await
}
