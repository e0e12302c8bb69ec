//! Counting the cash and closing the show.

use std::{collections::HashMap, sync::Arc};

use axum::{
    Router,
    extract::State,
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;

use super::sheet::{cash_before, sum_words};
use crate::{
    desk::{
        approval::Posted,
        pages::{
            frame::{Tab, page},
            typed::{amount, count},
            words::money,
        },
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::{AboutShow, CloseOut, Closing, Group},
    money::{Currency, coins, notes},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/show/close", get(ask_close).post(close))
}

/// The form as it is typed.
#[derive(Deserialize)]
struct Typed {
    show: i64,
    #[serde(flatten)]
    counted: Counted,
}

/// What was counted: the sum, and how many there are of each note and coin.
type Counted = HashMap<String, String>;

/// What the page tells before the show is closed.
struct Before {
    show: i64,
    open: usize,
    about: AboutShow,
    sums: CloseOut,
}

async fn before(desk: &DeskState) -> Result<Before, Refusal> {
    desk.ledger
        .look(|ledger| {
            let show = ledger.show()?.id;
            let open = ledger.tally(Group::Waiting)? + ledger.tally(Group::Checked)?;
            Ok(Before { show, open, about: ledger.about_show(show)?, sums: ledger.so_far()? })
        })
        .await
}

async fn ask_close(State(desk): State<Arc<DeskState>>, seller: Seller) -> Result<Response, Refusal> {
    question(&desk, seller.texts, &Counted::new(), None).await
}

/// The page that asks, with what is wrong in what was typed above it.
async fn question(
    desk: &DeskState,
    texts: &Texts,
    typed: &Counted,
    trouble: Option<&str>,
) -> Result<Response, Refusal> {
    let before = before(desk).await?;
    let currency = before.sums.currency.unwrap_or(desk.catalog.loaded().catalog.table.prices.currency);
    let float = before.about.float.unwrap_or_default();
    let should_be = float.checked_add(before.sums.cash);
    let main = html! {
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        form.card.ask.stack method="post" action="/show/close" {
            h1 { (say!(texts, "close-ask", show = before.show)) }
            p { (say!(texts, "close-open", n = before.open)) " " (say!(texts, "close-next")) }
            input type="hidden" name="show" value=(before.show);
            h2 { (say!(texts, "close-cash")) }
            dl.sums data-key="cash" {
                (cash_before(texts, before.about.float, before.sums.cash, currency))
                dt.total { (say!(texts, "cash-should-be")) } dd.total { (sum_words(texts, currency, should_be)) }
            }
            (counting(texts, typed, currency))
            div.row {
                button.grave { (say!(texts, "show-close")) }
                a.button.quiet href="/show" { (say!(texts, "go-back")) }
            }
        }
    };
    Ok(page(desk, texts, Tab::Show, &say!(texts, "close-title"), &main).into_response())
}

/// The fields for what was counted.
fn counting(texts: &Texts, typed: &Counted, currency: Currency) -> Markup {
    let value = |name: &str| typed.get(name).map(String::as_str).unwrap_or_default();
    html! {
        div {
            label for="counted" { (say!(texts, "close-counted", currency = currency.code)) }
            input #counted name="counted" value=(value("counted")) inputmode="decimal" maxlength="20" autocomplete="off"
                aria-describedby="counted-hint";
            p.faint.hint #counted-hint { (say!(texts, "close-counted-hint")) }
        }
        @if pieces(currency).next().is_some() {
            details.pieces open[pieces(currency).any(|piece| !value(&field_of(piece)).is_empty())] {
                summary { (say!(texts, "close-pieces")) }
                div.counts {
                    @for piece in pieces(currency) {
                        @let name = field_of(piece);
                        label { span { (money(texts, piece, currency)) " ×" }
                            input name=(name) value=(value(&name)) inputmode="numeric" maxlength="6" autocomplete="off";
                        }
                    }
                }
            }
        }
    }
}

/// The notes and coins of a currency, the largest first.
fn pieces(currency: Currency) -> impl Iterator<Item = Decimal> {
    notes(currency).iter().rev().chain(coins(currency).iter().rev()).copied()
}

/// The field for how many there are of a note or coin.
fn field_of(piece: Decimal) -> String {
    format!("n{}", piece.normalize())
}

/// What was counted, or what is wrong with it in words.
fn counted(texts: &Texts, typed: &Counted, currency: Currency) -> Result<Option<Decimal>, String> {
    let value = |name: &str| typed.get(name).map(String::as_str).unwrap_or_default();
    let sum = amount(texts, "typed-no-sum", value("counted"), currency)?;
    let mut by_piece = None;
    for piece in pieces(currency) {
        let field = value(&field_of(piece));
        if !field.trim().is_empty() {
            let many = Decimal::from(count(texts, &money(texts, piece, currency), field)?);
            by_piece = Some(by_piece.unwrap_or(Decimal::ZERO) + piece * many);
        }
    }
    match (sum, by_piece) {
        (Some(sum), Some(by_piece)) if sum != by_piece => Err(say!(
            texts,
            "close-not-alike",
            pieces = money(texts, by_piece, currency),
            sum = money(texts, sum, currency)
        )),
        (sum, by_piece) => Ok(sum.or(by_piece)),
    }
}

async fn close(State(desk): State<Arc<DeskState>>, posted: Posted<Typed>) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-close-show")).await?;
    let (texts, typed) = (seller.texts, posted.form);
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    let asked = typed.show;
    let counted = match counted(texts, &typed.counted, currency) {
        Ok(counted) => counted,
        Err(words) => {
            let page = question(&desk, texts, &typed.counted, Some(&words)).await?;
            return Ok((StatusCode::BAD_REQUEST, page).into_response());
        }
    };
    let loaded = desk.catalog.loaded();
    let reward = loaded.catalog.table.till.reward.clone().map(|rule| (rule, loaded.catalog.table.prices.clone()));
    let closing = Closing { currency, counted, reward };
    let for_ledger = Arc::clone(&desk);
    let closed = desk
        .ledger
        .run_by(&seller, move |ledger, now| {
            let running = ledger.show()?.id;
            // A form sent twice must not close the next show as well.
            if running == asked {
                ledger.close_counted(&closing, now)?;
                for_ledger.catalog.follow_show(ledger, now)?;
            }
            Ok(ledger.closed_show(asked)?.is_some())
        })
        .await?;
    if closed {
        return Ok(Redirect::to(&format!("/shows/{asked}")).into_response());
    }
    Err(Refusal::Said(StatusCode::CONFLICT, message!("refused-not-running", show = asked)))
}
