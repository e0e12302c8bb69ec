//! Beginning the file that says what drops and bases are made of, without a text editor.

use std::sync::Arc;

use axum::{
    Router,
    extract::State,
    http::StatusCode,
    response::{IntoResponse, Response},
    routing::post,
};
use maud::{Markup, html};
use rust_decimal::Decimal;

use super::bench_page;
use crate::{
    catalog::Act,
    desk::{
        pages::{
            table::{form::TableForm, refused::done_or_refused},
            typed::price_for_a_file,
        },
        refusal::Refusal,
        state::DeskState,
    },
    lang::{Texts, say},
    money::Currency,
};

/// The page on which it is begun.
const HERE: &str = "/bench/drawers";
const BEGIN: &str = "/bench/drawers/begin";
/// As long as a typed sum can be.
const LONGEST_SUM: usize = 16;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bench/drawers/begin", post(begin))
}

/// What is asked before there is such a file; the sums are as typed.
pub(super) fn form(texts: &Texts, currency: Currency, hour: &str, step: &str) -> Markup {
    let sum = |name: &str, label: String, value: &str| {
        html! {
            div {
                label for=(name) { (label) }
                input id=(name) name=(name) value=(value) inputmode="decimal" maxlength=(LONGEST_SUM) autocomplete="off" required;
            }
        }
    };
    html! {
        p { (say!(texts, "bench-no-recipes")) }
        form.card.stack method="post" action=(BEGIN) {
            h2 { (say!(texts, "begin-parts")) }
            (sum("hour", say!(texts, "begin-hour", currency = currency.code), hour))
            (sum("step", say!(texts, "begin-step", currency = currency.code), step))
            button.main { (say!(texts, "begin-parts-do")) }
            p.faint { (say!(texts, "begin-parts-about")) }
        }
    }
}

async fn begin(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    let read = |name: &str| sum_of(texts, currency, form.text(name));
    match read("hour").and_then(|hour| Ok((hour, read("step")?))) {
        Ok((hour, price_step)) => {
            let act = Act::BeginWorkshop { hour, price_step };
            let did = say!(texts, "begin-did");
            Ok(done_or_refused(&desk, &form, act, did, (BEGIN, HERE)).await)
        }
        Err(told) => {
            let main = html! {
                p.trouble role="alert" { (told) }
                (self::form(texts, currency, form.text("hour"), form.text("step")))
            };
            Ok((StatusCode::BAD_REQUEST, bench_page(&desk, texts, HERE, None, &main)).into_response())
        }
    }
}

/// A sum above nothing, as the file writes it; otherwise what is wrong with it, in words.
fn sum_of(texts: &Texts, currency: Currency, typed: &str) -> Result<Decimal, String> {
    let sum = price_for_a_file(texts, currency, typed)?;
    if sum.is_zero() { Err(say!(texts, "begin-nothing")) } else { Ok(sum) }
}
