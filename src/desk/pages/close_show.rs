//! Closing the show.

use std::sync::Arc;

use axum::{
    Router,
    extract::State,
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use serde::Deserialize;

use super::{
    confirm::{Question, ask},
    frame::{Tab, page},
    words,
};
use crate::{
    desk::{approval::Posted, refusal::Refusal, seller::Seller, state::DeskState},
    ledger::Group,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/show/close", get(ask_close).post(close))
}

async fn ask_close(State(desk): State<Arc<DeskState>>, _seller: Seller) -> Result<Response, Refusal> {
    let (show, open) = desk
        .ledger
        .look(|ledger| {
            let open = ledger.tally(Group::Waiting)? + ledger.tally(Group::Checked)?;
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
    Ok(page(&desk, Tab::Show, "Close the show?", &main).into_response())
}

#[derive(Deserialize)]
struct Close {
    show: i64,
}

async fn close(State(desk): State<Arc<DeskState>>, posted: Posted<Close>) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, "Closing a show").await?;
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    let asked = posted.form.show;
    let closed = desk
        .ledger
        .run_by(&seller, move |ledger, now| {
            let running = ledger.show()?.id;
            // A form sent twice must not close the next show as well.
            if running == asked {
                ledger.close_show(currency, now)?;
            }
            Ok(ledger.closed_show(asked)?.is_some())
        })
        .await?;
    if closed {
        return Ok(Redirect::to(&format!("/shows/{asked}")).into_response());
    }
    let words = words::sentence(&format!("show {asked} is not the running one"));
    Err(Refusal::Request(StatusCode::CONFLICT, words))
}
