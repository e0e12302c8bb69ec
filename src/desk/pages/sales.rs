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
use rust_decimal::Decimal;
use serde::Deserialize;

use super::{
    frame::{Tab, page},
    typed::{typed_number, typed_price, unless_empty},
    words::{self, sentence},
};
use crate::{
    craft::Home,
    desk::{ledger_words::ledger_words, money_words::amount_words, refusal::Refusal, seller::Seller, state::DeskState},
    lang::{Texts, say},
    ledger::{Sale, SaleId, SaleQuery},
    money::Currency,
    quoting::excerpt,
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
    fn query(&self, texts: &Texts, currency: Currency, zone: &TimeZone) -> Result<SaleQuery, String> {
        let number = |text: &str| typed_number(text).map_err(|error| sentence(&ledger_words(texts, &error.into())));
        let sum = |text: &str| typed_price(currency, text).map_err(|error| sentence(&amount_words(texts, &error)));
        let show = |text: &str| text.parse().map_err(|_| say!(texts, "sales-no-show", found = excerpt(text)));
        let home = |text: &str| {
            let home = text.to_ascii_uppercase().parse::<Home>();
            home.map_err(|_| say!(texts, "sales-no-home", found = excerpt(text)))
        };
        Ok(SaleQuery {
            number: unless_empty(&self.number, number)?,
            show: unless_empty(&self.show, show)?,
            paid: unless_empty(&self.day, |text| {
                day(text, zone).ok_or_else(|| say!(texts, "sales-no-day", found = excerpt(text)))
            })?,
            sum: unless_empty(&self.sum, sum)?,
            home: unless_empty(&self.home, home)?,
        })
    }
}

/// From the beginning of a day to that of the next, where the desk stands.
fn day(text: &str, zone: &TimeZone) -> Option<(Timestamp, Timestamp)> {
    let day: Date = text.parse().ok()?;
    let start = |day: Date| day.to_zoned_datetime(zone.clone()).map(|begins| begins.timestamp());
    Some((start(day).ok()?, start(day.tomorrow().ok()?).ok()?))
}

async fn find(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Query(typed): Query<Typed>,
) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    let (status, found) = match typed.query(texts, currency, &TimeZone::system()) {
        Ok(query) => {
            let sales = desk.ledger.look(move |ledger| ledger.sales(&query, SHOWN)).await?;
            (StatusCode::OK, Ok(sales))
        }
        Err(words) => (StatusCode::BAD_REQUEST, Err(words)),
    };
    let one = |sale: &Sale| line(texts, sale, currency, desk.clock.now());
    let main = html! {
        h1 { (say!(texts, "sales-find")) }
        @if let Err(words) = &found { p.trouble role="alert" { (words) } }
        (form(texts, &typed))
        @if let Ok(sales) = &found {
            section.card data-key="found" aria-label=(say!(texts, "sales-found")) {
                @if sales.is_empty() { p { (say!(texts, "sales-none")) } }
                ul.lines { @for sale in sales { (one(sale)) } }
                @if sales.len() == SHOWN { p.faint { (say!(texts, "sales-newest", n = SHOWN)) } }
            }
        }
    };
    Ok((status, page(&desk, texts, Tab::Tickets, &say!(texts, "sales-title"), &main)).into_response())
}

fn form(texts: &Texts, typed: &Typed) -> Markup {
    let field = |name: &str, label: &str, value: &str, hint: &str, mode: &str| {
        html! {
            div {
                label for=(name) { (label) }
                input id=(name) name=(name) value=(value) placeholder=(hint) inputmode=(mode) autocomplete="off" maxlength="120";
            }
        }
    };
    let sum = texts.lang.number(Decimal::new(2350, 2));
    html! {
        form.card.sale-search method="get" action="/sales" {
            p.faint { (say!(texts, "sales-fill-in")) }
            div.fields {
                (field("number", &say!(texts, "sales-number"), &typed.number, "3-042-6", "numeric"))
                (field("sum", &say!(texts, "sales-sum"), &typed.sum, &sum, "decimal"))
                div {
                    label for="day" { (say!(texts, "sales-day")) }
                    input #day name="day" type="date" value=(typed.day);
                }
                (field("home", &say!(texts, "sales-home"), &typed.home, "B3", "text"))
                (field("show", &say!(texts, "sales-show"), &typed.show, "3", "numeric"))
            }
            button.main.wide { (say!(texts, "sales-search")) }
        }
    }
}

fn line(texts: &Texts, sale: &Sale, currency: Currency, now: Timestamp) -> Markup {
    let open = say!(texts, "sales-open");
    html! {
        li.line.billed data-key=(sale.number) {
            div.what {
                strong { (sale.number) }
                p.faint { (say!(texts, "sales-in-show", show = sale.show)) ", " (words::ago(texts, sale.paid, now)) }
            }
            span.figure { (words::money(texts, sale.total, currency)) }
            div.acts {
                @match sale.id {
                    SaleId::Bill(id) => { a.button.quiet href={ "/bills/" (id) } { (open) } }
                    SaleId::Ticket(id) => {
                        form method="post" action={ "/tickets/" (id) "/bill" } { button.quiet { (open) } }
                    }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lang::Lang;

    #[test]
    fn what_is_typed_is_read_or_told() {
        let usd = Currency::from_code("USD").unwrap();
        let zone = TimeZone::get("America/New_York").expect("a zone of the IANA database");
        let typed = Typed { sum: "23,50".into(), day: "2026-03-08".into(), home: "b3".into(), ..Typed::default() };
        let texts = Texts::of(Lang::En);
        let query = typed.query(texts, usd, &zone).unwrap();
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
            assert!(wrong.query(texts, usd, &zone).is_err(), "{wrong:?}");
        }
    }
}
