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
    lang::{Texts, message, say},
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
    let texts = seller.texts;
    if desk.practice.is_on() {
        return Ok(Redirect::to("/show").into_response());
    }
    let open = desk.ledger.look(|ledger| Ok(ledger.tally(Group::Waiting)? + ledger.tally(Group::Checked)?)).await?;
    let mut text = say!(texts, "practice-ask-text");
    if open > 0 {
        text.push(' ');
        text.push_str(&say!(texts, "practice-open-wait", n = open));
    }
    let main = ask(&Question {
        texts,
        title: say!(texts, "practice-ask"),
        text,
        action: "/practice/begin".to_owned(),
        yes: say!(texts, "practice-begin"),
        field: None,
        back: "/show".to_owned(),
    });
    Ok(page(&desk, texts, Tab::Show, &say!(texts, "practice-ask"), &main).into_response())
}

async fn begin(State(desk): State<Arc<DeskState>>, posted: Posted<NoFields>) -> Result<Redirect, Refusal> {
    posted.by_the_seller(&desk, message!("act-practise")).await?;
    practising::begin(&desk).await?;
    Ok(Redirect::to("/tickets"))
}

/// The button by which practice ends.
pub(super) fn to_end(texts: &Texts) -> Markup {
    html! {
        form.card #end-practice method="post" action="/practice/end" {
            p { (say!(texts, "practice-end-text")) }
            button.main { (say!(texts, "practice-end")) }
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
