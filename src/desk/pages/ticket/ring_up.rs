//! Taking the money for this piece alone, in one touch.

use std::sync::Arc;

use axum::{Form, Router, http::StatusCode, routing::post};
use rust_decimal::Decimal;
use serde::Deserialize;

use super::{actions::act, view::with_trouble};
use crate::{
    desk::{
        pages::{
            on::{Answered, On},
            paying::{amount_of, way_called},
            words,
        },
        state::DeskState,
        table_cuts::TableCuts,
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

async fn ring_up(on: On, Form(form): Form<RingUp>) -> Answered {
    let tender = way_called(&on.desk, &form.tender)?;
    let given = amount_of(&on.desk, &form.given)?;
    let id = on.id;
    // Somebody else may have changed the piece while this seller looked at the sum.
    let before = on.desk.ledger.look(move |ledger| ledger.ticket(id)).await?;
    if before.state.is_open() && before.quote.total != form.total {
        let texts = on.texts();
        let sum = words::money(texts, before.quote.total, before.quote.currency);
        let words = say!(texts, "sum-changed", sum = sum);
        return with_trouble(&on, StatusCode::CONFLICT, &words).await;
    }
    let paying = Paying { tender, amount: None, given };
    let cuts = before.cut_to_length.then(|| TableCuts::of(&on.desk));
    act(&on, "#till", move |ledger, id, now| {
        let ticket = ledger.ticket(id)?;
        // A second touch on the same button means the first: the money was taken, once.
        if ticket.state.is_sold() && ticket.tender.as_ref() == Some(&paying.tender) && ticket.quote.total == form.total
        {
            return Ok(ticket);
        }
        let sold = ledger.ring_up_from(id, &paying, now)?;
        if let Some(cuts) = &cuts {
            cuts.count(ledger, std::slice::from_ref(&sold), now);
        }
        Ok(sold)
    })
    .await
}
