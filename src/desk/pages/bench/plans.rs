//! Shows to come with fee, deadline and permit, and custom orders with a date and what was agreed.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use jiff::tz::TimeZone;
use maud::{Markup, html};
use serde::Deserialize;
use uuid::Uuid;

use super::bench_page;
use crate::{
    bench::{LONGEST, LONGEST_NUMBER, ORDERS, Order, PLANNED, PlannedShow, by_day},
    craft::Day,
    desk::{
        approval::Posted,
        pages::{typed, words::money},
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Message, Texts, message, say},
    ledger::{KeptPage, Ledger, LedgerError, written},
    money::Currency,
    quoting::excerpt,
};

/// The page's address.
const HERE: &str = "/bench/plans";

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/bench/plans", get(plans))
        .route("/bench/plans/shows", post(add_show))
        .route("/bench/plans/orders", post(add_order))
        .route("/bench/plans/{kind}/{id}", post(change))
}

async fn plans(State(desk): State<Arc<DeskState>>, Owner(seller): Owner) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let look = |ledger: &Ledger| Ok((ledger.pages::<PlannedShow>(PLANNED)?, ledger.pages::<Order>(ORDERS)?));
    let (mut shows, mut orders) = desk.ledger.look(look).await?;
    shows.retain(|kept| !kept.page.gone);
    orders.retain(|kept| !kept.page.gone);
    let (shows, orders) = (by_day(shows, |show| show.day), by_day(orders, |order| order.due));
    let today = desk.clock.now().to_zoned_datetime(TimeZone::system()).date().to_string();
    let told = Told { texts, today, currency: desk.catalog.loaded().catalog.table.prices.currency };
    let main = html! {
        section.card aria-label=(say!(texts, "plans-shows")) {
            h2 { (say!(texts, "plans-shows")) }
            @if shows.is_empty() { p { (say!(texts, "plans-no-shows")) } }
            ul.differences { @for kept in &shows { (told.show(kept)) } }
            (told.show_form())
        }
        section.card aria-label=(say!(texts, "plans-orders")) {
            h2 { (say!(texts, "plans-orders")) }
            @if orders.is_empty() { p { (say!(texts, "plans-no-orders")) } }
            ul.differences { @for kept in &orders { (told.order(kept)) } }
            (told.order_form())
        }
    };
    Ok(bench_page(&desk, texts, HERE, None, &main))
}

/// Plans with their reader.
struct Told {
    texts: &'static Texts,
    /// As ISO 8601 has it, so that days can be compared as they are written.
    today: String,
    currency: Currency,
}

fn form_field() -> Markup {
    html! { input type="hidden" name="form" value=(Uuid::now_v7()); }
}

fn field(id: &str, kind: &str, label: &str, is_required: bool) -> Markup {
    html! {
        div {
            label for=(id) { (label) }
            input id=(id) name=(id) type=(kind) maxlength=[(kind == "text").then_some(LONGEST)] autocomplete="off" required[is_required];
        }
    }
}

impl Told {
    fn passed(&self, day: Day) -> bool {
        day.to_string() < self.today
    }

    fn show(&self, kept: &KeptPage<PlannedShow>) -> Markup {
        let (texts, show) = (self.texts, &kept.page);
        html! {
            li {
                strong { (show.day) " · " (show.place) }
                @if self.passed(show.day) { " " span.faint { (say!(texts, "plans-passed")) } }
                br;
                @if let Some(fee) = show.fee { (say!(texts, "plans-is-fee", fee = money(texts, fee, self.currency))) " " }
                @if let Some(deadline) = show.deadline {
                    @let words = say!(texts, "plans-is-deadline", day = deadline.to_string());
                    @if self.passed(deadline) { span.faint { (words) } } @else { strong { (words) } } " "
                }
                @if !show.permit.is_empty() { (say!(texts, "plans-is-permit", permit = show.permit.as_str())) " " }
                (show.note)
                (self.acts("shows", &kept.id, false))
            }
        }
    }

    fn order(&self, kept: &KeptPage<Order>) -> Markup {
        let (texts, order) = (self.texts, &kept.page);
        html! {
            li {
                strong { (order.due) } " · " (order.agreed)
                @if !order.number.is_empty() { " · " (order.number) }
                @if order.done { " " span.faint { (say!(texts, "plans-done")) } }
                @else if self.passed(order.due) { " " strong.grave { (say!(texts, "plans-late")) } }
                (self.acts("orders", &kept.id, !order.done))
            }
        }
    }

    fn acts(&self, kind: &str, id: &str, can_be_done: bool) -> Markup {
        html! {
            form.row.wraps.no-print method="post" action={ (HERE) "/" (kind) "/" (id) } {
                (form_field())
                @if can_be_done { button name="act" value="done" { (say!(self.texts, "plans-is-done")) } }
                button.quiet name="act" value="gone" { (say!(self.texts, "bench-off-list")) }
            }
        }
    }

    fn show_form(&self) -> Markup {
        let texts = self.texts;
        html! {
            form.stack.no-print method="post" action={ (HERE) "/shows" } {
                (form_field())
                (field("day", "date", &say!(texts, "plans-day"), true))
                (field("place", "text", &say!(texts, "plans-place"), true))
                (field("fee", "text", &say!(texts, "plans-fee"), false))
                (field("deadline", "date", &say!(texts, "plans-deadline"), false))
                (field("permit", "text", &say!(texts, "plans-permit"), false))
                (field("note", "text", &say!(texts, "plans-note"), false))
                button.main { (say!(texts, "plans-add-show")) }
            }
        }
    }

    fn order_form(&self) -> Markup {
        let texts = self.texts;
        html! {
            form.stack.no-print method="post" action={ (HERE) "/orders" } {
                (form_field())
                (field("due", "date", &say!(texts, "plans-due"), true))
                (field("agreed", "text", &say!(texts, "plans-agreed"), true))
                div {
                    label for="number" { (say!(texts, "plans-number")) }
                    input #number name="number" inputmode="numeric" maxlength=(LONGEST_NUMBER) autocomplete="off";
                    p.faint.hint { (say!(texts, "plans-number-hint")) }
                }
                button.main { (say!(texts, "plans-add-order")) }
            }
        }
    }
}

/// Words in one line, cut to what is kept.
fn words_of(typed: &str) -> String {
    typed.trim().chars().filter(|c| !c.is_control()).take(LONGEST).collect()
}

/// A whole day as a browser writes it.
fn day_of(typed: &str) -> Result<Day, Message> {
    let day = Day::from_iso(typed.trim()).filter(|day| day.day.is_some());
    day.ok_or_else(|| message!("year-no-day", found = excerpt(typed)))
}

#[derive(Deserialize)]
struct NewShow {
    #[serde(default)]
    form: Uuid,
    #[serde(default)]
    day: String,
    #[serde(default)]
    place: String,
    #[serde(default)]
    fee: String,
    #[serde(default)]
    deadline: String,
    #[serde(default)]
    permit: String,
    #[serde(default)]
    note: String,
}

async fn add_show(State(desk): State<Arc<DeskState>>, posted: Posted<NewShow>) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-bench")).await?;
    let said = &posted.form;
    let place = words_of(&said.place);
    if place.is_empty() {
        return Err(Refusal::wrong(message!("plans-no-place")));
    }
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    let fee = typed::amount(seller.texts, "typed-no-fee", &said.fee, currency)
        .map_err(|_| Refusal::wrong(message!("plans-no-fee", found = excerpt(&said.fee))))?;
    let deadline =
        if said.deadline.trim().is_empty() { None } else { Some(day_of(&said.deadline).map_err(Refusal::wrong)?) };
    let day = day_of(&said.day).map_err(Refusal::wrong)?;
    let (permit, note) = (words_of(&said.permit), words_of(&said.note));
    let page = written(&PlannedShow { day, place, fee, deadline, permit, note, gone: false })?;
    keep(&desk, &seller, said.form, PLANNED, page).await
}

#[derive(Deserialize)]
struct NewOrder {
    #[serde(default)]
    form: Uuid,
    #[serde(default)]
    due: String,
    #[serde(default)]
    agreed: String,
    #[serde(default)]
    number: String,
}

async fn add_order(State(desk): State<Arc<DeskState>>, posted: Posted<NewOrder>) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-bench")).await?;
    let said = &posted.form;
    let agreed = words_of(&said.agreed);
    if agreed.is_empty() {
        return Err(Refusal::wrong(message!("plans-nothing-agreed")));
    }
    let number: String =
        said.number.chars().filter(|c| !c.is_whitespace() && !['-', '/', '(', ')', '.'].contains(c)).collect();
    let digits = number.strip_prefix('+').unwrap_or(&number);
    if digits.len() > LONGEST_NUMBER || !digits.bytes().all(|b| b.is_ascii_digit()) {
        return Err(Refusal::wrong(message!("plans-no-number", found = excerpt(&said.number))));
    }
    let due = day_of(&said.due).map_err(Refusal::wrong)?;
    let page = written(&Order { due, agreed, number, done: false, gone: false })?;
    keep(&desk, &seller, said.form, ORDERS, page).await
}

async fn keep(
    desk: &DeskState,
    seller: &crate::desk::signed_in::Seller,
    form: Uuid,
    kind: &'static str,
    page: serde_json::Value,
) -> Result<Response, Refusal> {
    let kept = move |ledger: &mut Ledger, now| ledger.keep_pages(form, &[(kind, &form.to_string(), page)], now);
    desk.ledger.enter_by(seller, kept).await?;
    Ok(Redirect::to(HERE).into_response())
}

#[derive(Deserialize)]
struct Act {
    #[serde(default)]
    form: Uuid,
    #[serde(default)]
    act: String,
}

async fn change(
    State(desk): State<Arc<DeskState>>,
    Path((kind, id)): Path<(String, String)>,
    posted: Posted<Act>,
) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-bench")).await?;
    let (form, is_done, name) = (posted.form.form, posted.form.act == "done", id.clone());
    let entered = move |ledger: &mut Ledger, now| -> Result<bool, LedgerError> {
        let page = if kind == "shows" {
            let found = ledger.pages::<PlannedShow>(PLANNED)?.into_iter().find(|kept| kept.id == id);
            found.map(|kept| written(&PlannedShow { gone: true, ..kept.page })).transpose()?.map(|page| (PLANNED, page))
        } else {
            let found = ledger.pages::<Order>(ORDERS)?.into_iter().find(|kept| kept.id == id);
            let changed = found.map(|kept| Order { done: kept.page.done || is_done, gone: !is_done, ..kept.page });
            changed.map(|order| written(&order)).transpose()?.map(|page| (ORDERS, page))
        };
        let Some((kind, page)) = page else { return Ok(false) };
        ledger.keep_pages(form, &[(kind, &id, page)], now)?;
        Ok(true)
    };
    if !desk.ledger.enter_by(&seller, entered).await? {
        return Err(Refusal::Said(StatusCode::NOT_FOUND, message!("refused-nothing-called", name = excerpt(&name))));
    }
    Ok(Redirect::to(HERE).into_response())
}
