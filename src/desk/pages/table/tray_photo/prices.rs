//! Price, count and name of what a tray's photo shows, one compartment after the other. What is told stays with the photo, so
//! that another device, or the same one later, goes on where it stopped.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, Query, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;

use super::{
    lay::lay_form,
    pieces::picture,
    suggested::{sort_of, suggested_name},
    work::{Work, gone, with_drafts},
};
use crate::{
    craft::{Home, Sort},
    desk::{
        money_words::amount_words,
        pages::{
            frame::{Tab, page},
            table::{compartment::usual_prices, form::TableForm},
            typed::{count, typed_price},
            words,
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
        tray_drafts::{InPhoto, ShownAs, Told},
    },
    lang::{Texts, say},
};

/// So many prices are offered at a touch, beside the last one.
const MOST_PRICES: usize = 8;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/table/tray/{letter}/photo/{id}/prices", get(ask).post(tell))
}

#[derive(Deserialize)]
struct Asked {
    /// The compartment that is asked for.
    at: Option<Home>,
}

async fn ask(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Path((letter, id)): Path<(char, String)>,
    Query(asked): Query<Asked>,
) -> Result<Response, Refusal> {
    let work = Work::find(&desk, letter, id).await?;
    if work.draft.compartments.is_empty() {
        return Ok(Redirect::to(&work.address("")).into_response());
    }
    let all = work.to_price();
    let at = asked.at.filter(|home| all.iter().any(|one| one.home == *home)).or_else(|| unpriced(&all, None));
    Ok(prices_page(&work, seller.texts, at, None))
}

/// The next compartment without a price behind `after`, or else the first.
fn unpriced(all: &[&InPhoto], after: Option<Home>) -> Option<Home> {
    let open = || all.iter().filter(|one| one.told.price.is_none()).map(|one| one.home);
    after.and_then(|after| open().find(|home| *home > after)).or_else(|| open().next())
}

fn prices_page(work: &Work, texts: &'static Texts, at: Option<Home>, trouble: Option<&str>) -> Response {
    let all = work.to_price();
    let one = at.and_then(|home| all.iter().find(|one| one.home == home));
    let done = all.iter().filter(|one| one.told.price.is_some()).count();
    let title = say!(texts, "tray-photo-prices", letter = work.letter.to_string());
    let main = html! {
        h1 { (title) }
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        @match one {
            Some(one) => { (form(texts, work, &all, one)) }
            None => { p { (say!(texts, "tray-photo-all-priced", n = all.len())) } (lay_form(texts, work)) }
        }
        p { (say!(texts, "tray-photo-priced", n = done, of = all.len())) }
        ul.homes.row.wraps {
            @for other in &all {
                li {
                    a.button.quiet href={ (work.address("/prices?at=")) (other.home) } aria-current=[(Some(other.home) == at).then_some("true")] {
                        (other.home)
                        @if other.told.price.is_some() { " " span.sign aria-hidden="true" { "✓" } span.unseen { (say!(texts, "tray-photo-has-price")) } }
                    }
                }
            }
        }
        p { a.button.quiet href=(work.address("/pieces")) { (say!(texts, "tray-photo-to-pieces")) } }
    };
    let page = page(&work.desk, texts, Tab::Trays, &title, &main);
    let status = if trouble.is_some() { StatusCode::BAD_REQUEST } else { StatusCode::OK };
    (status, page).into_response()
}

fn form(texts: &Texts, work: &Work, all: &[&InPhoto], one: &InPhoto) -> Markup {
    let sort = sort_of(one);
    let name = one.told.name.clone().unwrap_or_else(|| suggested_name(texts, one));
    let counted = one.told.count.map(|count| count.to_string()).unwrap_or_default();
    html! {
        form.card.stack.priced method="post" action=(work.address("/prices")) data-key=(one.home) {
            input type="hidden" name="home" value=(one.home);
            div.row.wraps.beside {
                div.pictured { span.home { (one.home) } " " (picture(texts, work, one)) }
                div {
                    label for="name" { (say!(texts, "table-drop-name")) }
                    input #name name="name" value=(name) autocomplete="off" maxlength="60";
                    label for="sort" { (say!(texts, "table-sort")) }
                    select #sort name="sort" {
                        @for one in Sort::ALL {
                            option value=(one.name()) selected[*one == sort] { (texts.get(&format!("one-{}", one.name()))) }
                        }
                    }
                }
            }
            div {
                label for="count" { (say!(texts, "table-count-here")) }
                input #count name="count" value=(counted) inputmode="numeric" autocomplete="off" maxlength="6";
                div.keypad data-keypad="count" hidden {
                    @for digit in (1..=9).chain([0]) { button.key type="button" data-key={ "digit-" (digit) } { (digit) } }
                    button.key type="button" data-key="rub-out" aria-label=(say!(texts, "sale-rub-out")) { "⌫" }
                }
            }
            (prices(texts, work, all, one))
            div {
                label for="typed" { (say!(texts, "table-price")) }
                div.row {
                    input.amount #typed name="typed" inputmode="decimal" autocomplete="off" maxlength="12";
                    button { (say!(texts, "table-keep-next")) }
                }
            }
            button.quiet name="leave" value="1" { (say!(texts, "tray-photo-leave-out", home = one.home.to_string())) }
        }
    }
}

/// Prices, each a button that enters it; that of the compartment before comes first and largest.
fn prices(texts: &Texts, work: &Work, all: &[&InPhoto], one: &InPhoto) -> Markup {
    let currency = work.catalog().table.prices.currency;
    let before = all.iter().rev().filter(|other| other.home < one.home).find_map(|other| other.told.price);
    let last = one.told.price.or(before).or_else(|| all.iter().find_map(|other| other.told.price));
    let mut others: Vec<Decimal> = all.iter().filter_map(|one| one.told.price).collect();
    others.sort();
    others.dedup();
    for price in usual_prices(work.catalog()) {
        if others.len() < MOST_PRICES && !others.contains(&price) {
            others.push(price);
        }
    }
    others.sort();
    others.retain(|price| Some(*price) != last);
    html! {
        div.row.wraps.prices role="group" aria-label=(say!(texts, "table-prices-at-a-touch")) {
            @if let Some(last) = last {
                button.main name="price" value=(last) { (say!(texts, "tray-photo-same-price", price = words::money(texts, last, currency))) }
            }
            @for price in others.iter().take(MOST_PRICES) {
                button.quiet name="price" value=(price) { (words::money(texts, *price, currency)) }
            }
        }
    }
}

async fn tell(
    State(desk): State<Arc<DeskState>>,
    Path((letter, id)): Path<(char, String)>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let work = Work::find(&desk, letter, id).await?;
    let home: Home = form.text("home").parse().map_err(|_| gone())?;
    let one = work.draft.at(home).ok_or_else(gone)?;
    let leave = form.told("leave").is_some();
    let mut told = one.told.clone();
    if !leave {
        let read = read(texts, &work, &form, one);
        match read {
            Ok(read) => told = read,
            Err(words) => return Ok(prices_page(&work, texts, Some(home), Some(&words))),
        }
    }
    let asked = work.id.clone();
    let changed = with_drafts(&desk, move |drafts| {
        drafts.change(&asked, &[], |draft| {
            if let Some(one) = draft.at_mut(home) {
                one.told = told;
                if leave {
                    one.shown = ShownAs::Nothing;
                }
            }
        })
    });
    let work = Work { draft: changed.await?.ok_or_else(gone)?, ..work };
    let next = unpriced(&work.to_price(), Some(home));
    let behind = next.map_or_else(|| "/prices".to_owned(), |home| format!("/prices?at={home}"));
    Ok(Redirect::to(&work.address(&behind)).into_response())
}

/// What was told of one compartment, or what is wrong with it in words.
fn read(texts: &Texts, work: &Work, form: &TableForm, one: &InPhoto) -> Result<Told, String> {
    let currency = work.catalog().table.prices.currency;
    let typed = form.told("typed").or_else(|| form.told("price")).ok_or_else(|| say!(texts, "table-no-price"))?;
    let price = typed_price(currency, typed).map_err(|error| words::sentence(&amount_words(texts, &error)))?;
    let counted = count(texts, &say!(texts, "table-count-here"), form.text("count"))?;
    let mut told = one.told.clone();
    told.price = Some(price);
    told.count = form.told("count").map(|_| counted);
    // What suggested itself follows the sort; what was typed stays.
    let suggested = suggested_name(texts, one);
    told.name = form.told("name").filter(|name| *name != suggested).map(str::to_owned);
    let sort = Sort::ALL.iter().find(|sort| sort.name() == form.text("sort")).copied();
    told.sort = sort.filter(|sort| *sort != sort_of(one)).or(told.sort);
    Ok(told)
}
