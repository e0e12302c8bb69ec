//! Beginning and ending practice.

use std::sync::Arc;

use axum::{
    Router,
    extract::State,
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use maud::{Markup, html};

use crate::{
    desk::{
        approval::{NoFields, Posted},
        pages::{
            confirm::{Question, ask},
            frame::{Tab, page},
        },
        practising,
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    lang::message,
    ledger::Group,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/practice", get(ask_begin))
        .route("/practice/begin", post(begin))
        .route("/practice/end", post(end))
        .route("/practice/seen", post(seen))
}

async fn ask_begin(State(desk): State<Arc<DeskState>>, seller: Seller) -> Result<Response, Refusal> {
    if desk.practice.is_on() {
        return Ok(Redirect::to("/show").into_response());
    }
    let open = desk.ledger.look(|ledger| Ok(ledger.tally(Group::Waiting)? + ledger.tally(Group::Checked)?)).await?;
    let open = match open {
        0 => String::new(),
        1 => " The ticket that is open waits until practice ends.".to_owned(),
        _ => format!(" The {open} tickets that are open wait until practice ends."),
    };
    let main = ask(&Question {
        texts: seller.texts,
        title: "Practise?".to_owned(),
        text: format!(
            "Everything works as it always does, on desk and tablets, and nothing of it counts: no stock is taken, no number \
             is used up, and every screen says “Practice”. For as long as it lasts nothing real can be sold.{open}"
        ),
        action: "/practice/begin".to_owned(),
        yes: "Begin to practise".to_owned(),
        field: None,
        back: "/show".to_owned(),
    });
    Ok(page(&desk, Tab::Show, "Practise?", &main).into_response())
}

async fn begin(State(desk): State<Arc<DeskState>>, posted: Posted<NoFields>) -> Result<Redirect, Refusal> {
    posted.by_the_seller(&desk, message!("act-practise")).await?;
    practising::begin(&desk).await?;
    Ok(Redirect::to("/tickets"))
}

/// The button by which practice ends.
pub(super) fn to_end() -> Markup {
    html! {
        form.card #end-practice method="post" action="/practice/end" {
            p { "All that was done since practice began is thrown away when it ends; then everything is as it was before." }
            button.main { "End practice" }
        }
    }
}

async fn end(State(desk): State<Arc<DeskState>>, posted: Posted<NoFields>) -> Result<Redirect, Refusal> {
    posted.by_the_seller(&desk, message!("act-end-practice")).await?;
    practising::end(&desk).await?;
    Ok(Redirect::to("/show"))
}

async fn seen(State(desk): State<Arc<DeskState>>, _seller: Seller) -> Redirect {
    desk.practice.cut_short_was_seen();
    desk.beat();
    Redirect::to("/show")
}
