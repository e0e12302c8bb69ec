//! Closing the show, and keeping what it came to.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::State,
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};

use super::{
    confirm::{Question, ask},
    frame::{Tab, page},
    words,
};
use crate::{
    desk::{auth::Seller, error::Refusal, server::House},
    ledger::{CloseOut, LedgerError},
    money::Currency,
};

pub(super) fn routes() -> Router<Arc<House>> {
    Router::new().route("/show/close", get(ask_close).post(close))
}

/// A close-out as it is kept for reading later; prices may be in another currency by then.
#[derive(Serialize, Deserialize)]
pub(super) struct Closed {
    /// When the show was closed.
    pub at: Timestamp,
    /// The currency of its amounts.
    pub currency: Currency,
    /// What it came to.
    pub sums: CloseOut,
}

/// Under this name a show's close-out is kept among the settings.
pub(super) fn setting_name(show: i64) -> String {
    format!("close-out-{show}")
}

/// The close-out of show `id`, if it was closed.
pub(super) async fn kept(house: &House, id: i64) -> Result<Option<Closed>, Refusal> {
    let read = move |ledger: &mut crate::ledger::Ledger| {
        ledger
            .setting(&setting_name(id))?
            .map(|text| serde_json::from_str(&text))
            .transpose()
            .map_err(LedgerError::from)
    };
    house.books.run(read).await
}

async fn ask_close(State(house): State<Arc<House>>, _seller: Seller) -> Result<Response, Refusal> {
    let (show, open) = house
        .books
        .run(|ledger| {
            let open = ledger.tickets()?.iter().filter(|ticket| ticket.state.is_open()).count();
            Ok((ledger.show()?.id, open))
        })
        .await?;
    let text = match open {
        0 => "No ticket is open.".to_owned(),
        1 => "1 ticket is still open; it is let go, and its drops are free again.".to_owned(),
        _ => format!("{open} tickets are still open; they are let go, and their drops are free again."),
    };
    let main = ask(&Question {
        title: format!("Close show {show}?"),
        text: format!("{text} The next show begins at once, and its numbers start anew."),
        action: "/show/close".to_owned(),
        yes: "Close the show",
        field: Some(("show", show.to_string())),
        back: "/show".to_owned(),
    });
    Ok(page(&house, Tab::Show, "Close the show?", &main).into_response())
}

#[derive(Deserialize)]
struct Close {
    show: i64,
}

async fn close(State(house): State<Arc<House>>, _seller: Seller, Form(form): Form<Close>) -> Result<Response, Refusal> {
    let currency = house.shelf.loaded().catalog.table.prices.currency;
    let asked = form.show;
    let closed = house
        .books
        .run(move |ledger| {
            let running = ledger.show()?.id;
            // A form sent twice must not close the next show as well.
            if running == asked {
                let at = Timestamp::now();
                let closed = Closed { at, currency, sums: ledger.close_show(at)? };
                ledger.set_setting(&setting_name(asked), &serde_json::to_string(&closed)?)?;
            }
            Ok(ledger.setting(&setting_name(asked))?.is_some())
        })
        .await?;
    if closed {
        return Ok(Redirect::to(&format!("/shows/{asked}")).into_response());
    }
    let words = words::sentence(&format!("show {asked} is not the running one"));
    Err(Refusal::Request(StatusCode::CONFLICT, words))
}
