//! Finding a paid sale again, from any show, by what is known of it.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Query, State},
    http::StatusCode,
    response::{IntoResponse, Response},
    routing::get,
};
use jiff::{Timestamp, civil::Date, tz::TimeZone};
use maud::{Markup, html};
use serde::Deserialize;

use super::{
    frame::{Tab, page},
    paying::typed_price,
    words::{self, sentence},
};
use crate::{
    craft::Home,
    desk::{refusal::Refusal, seller::Seller, state::DeskState},
    lang::{Lang, Texts},
    ledger::{Sale, SaleId, SaleQuery},
    money::Currency,
    quoting::quoted,
    ticket::TicketNumber,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/sales", get(find))
}

/// So many are shown; who sees as many says more about the sale.
const SHOWN: usize = 50;

/// What is known of the sale, as it was typed.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Typed {
    number: String,
    show: String,
    day: String,
    sum: String,
    home: String,
}

impl Typed {
    fn query(&self, currency: Currency, zone: &TimeZone) -> Result<SaleQuery, String> {
        Ok(SaleQuery {
            number: read(&self.number, |text| {
                text.parse::<TicketNumber>().map_err(|error| sentence(&error.to_string()))
            })?,
            show: read(&self.show, |text| {
                text.parse().map_err(|_| format!("{} is no show; write its number, as in 3.", quoted(text)))
            })?,
            paid: read(&self.day, |text| day(text, zone))?,
            sum: read(&self.sum, |text| typed_price(currency, text).map_err(|error| sentence(&error.to_string())))?,
            home: read(&self.home, |text| {
                text.to_ascii_uppercase().parse::<Home>().map_err(|error| sentence(&error.to_string()))
            })?,
        })
    }
}

fn read<T>(typed: &str, read: impl Fn(&str) -> Result<T, String>) -> Result<Option<T>, String> {
    let typed = typed.trim();
    if typed.is_empty() { Ok(None) } else { read(typed).map(Some) }
}

/// From the beginning of a day to that of the next, where the desk stands.
fn day(text: &str, zone: &TimeZone) -> Result<(Timestamp, Timestamp), String> {
    let wrong = || format!("{} is no day; write it as in 2026-05-31.", quoted(text));
    let day: Date = text.parse().map_err(|_| wrong())?;
    let start = |day: Date| day.to_zoned_datetime(zone.clone()).map(|begins| begins.timestamp());
    let next = day.tomorrow().map_err(|_| wrong())?;
    Ok((start(day).map_err(|_| wrong())?, start(next).map_err(|_| wrong())?))
}

async fn find(
    State(desk): State<Arc<DeskState>>,
    _seller: Seller,
    Query(typed): Query<Typed>,
) -> Result<Response, Refusal> {
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    let (status, found) = match typed.query(currency, &TimeZone::system()) {
        Ok(query) => {
            let sales = desk.ledger.look(move |ledger| ledger.sales(&query, SHOWN)).await?;
            (StatusCode::OK, Ok(sales))
        }
        Err(words) => (StatusCode::BAD_REQUEST, Err(words)),
    };
    let main = content(&typed, &found, currency, desk.clock.now());
    Ok((status, page(&desk, Tab::Tickets, "Sales", &main)).into_response())
}

fn content(typed: &Typed, found: &Result<Vec<Sale>, String>, currency: Currency, now: Timestamp) -> Markup {
    let field = |name: &str, label: &str, value: &str, hint: &str, mode: &str| {
        html! {
            div {
                label for=(name) { (label) }
                input id=(name) name=(name) value=(value) placeholder=(hint) inputmode=(mode) autocomplete="off" maxlength="20";
            }
        }
    };
    html! {
        h1 { "Find a paid sale" }
        @if let Err(words) = found { p.trouble role="alert" { (words) } }
        form.card.sale-search method="get" action="/sales" {
            p.faint { "Fill in what you know of it." }
            div.fields {
                (field("number", "Number", &typed.number, "3-042-6", "numeric"))
                (field("sum", "Sum", &typed.sum, "23.50", "decimal"))
                div { label for="day" { "Day" } input #day name="day" type="date" value=(typed.day); }
                (field("home", "Home of a drop", &typed.home, "B3", "text"))
                (field("show", "Show", &typed.show, "3", "numeric"))
            }
            button.main.wide { "Find" }
        }
        @if let Ok(sales) = found {
            section.card data-key="found" aria-label="Found" {
                @if sales.is_empty() { p { "No paid sale is like that." } }
                ul.lines { @for sale in sales { (one(sale, currency, now)) } }
                @if sales.len() == SHOWN { p.faint { "The newest " (SHOWN) " are shown; say more about the sale to find an older one." } }
            }
        }
    }
}

fn one(sale: &Sale, currency: Currency, now: Timestamp) -> Markup {
    html! {
        li.line.billed data-key=(sale.number) {
            div.what {
                strong { (sale.number) }
                p.faint { "show " (sale.show) ", " (words::ago(Texts::of(Lang::En), sale.paid, now)) }
            }
            span.figure { (currency.plain(sale.total)) }
            div.acts {
                @match sale.id {
                    SaleId::Bill(id) => { a.button.quiet href={ "/bills/" (id) } { "Open" } }
                    SaleId::Ticket(id) => {
                        form method="post" action={ "/tickets/" (id) "/bill" } { button.quiet { "Open" } }
                    }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_typed_is_read_or_told() {
        let usd = Currency::from_code("USD").unwrap();
        let zone = TimeZone::get("America/New_York").expect("a zone of the IANA database");
        let typed = Typed { sum: "23,50".into(), day: "2026-03-08".into(), home: "b3".into(), ..Typed::default() };
        let query = typed.query(usd, &zone).unwrap();
        assert_eq!(query.sum.map(|sum| sum.to_string()).as_deref(), Some("23.50"));
        assert_eq!(query.home.map(|home| home.to_string()).as_deref(), Some("B3"));
        let (from, before) = query.paid.unwrap();
        // Clocks went forward that night: the day has 23 hours (IANA time zone database).
        assert_eq!(before.duration_since(from).as_hours(), 23);
        for wrong in [
            Typed { number: "3-042-7".into(), ..Typed::default() },
            Typed { show: "three".into(), ..Typed::default() },
            Typed { day: "31.5.2026".into(), ..Typed::default() },
            Typed { sum: "-1".into(), ..Typed::default() },
            Typed { home: "3B".into(), ..Typed::default() },
        ] {
            assert!(wrong.query(usd, &zone).is_err(), "{wrong:?}");
        }
    }
}
