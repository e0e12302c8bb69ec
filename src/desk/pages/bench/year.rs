//! The year for the tax return, and what lies there at cost on a day: on the page and as files.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, Query, State},
    http::StatusCode,
    response::Response,
    routing::get,
};
use jiff::{Timestamp, civil::Date, tz::TimeZone};
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;

use super::{
    bench_page,
    files::{failed, saved},
    workshop,
};
use crate::{
    bench::{StockLine, stock_at_cost, stock_table, worth_of_stock},
    desk::{
        pages::{paying::way_words, words::money},
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    export::DecimalMark,
    lang::{Texts, message, say},
    ledger::{StockOn, Year, YearTable},
    money::{Currency, Tender},
    quoting::excerpt,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/bench/year", get(page))
        .route("/bench/year/{file}", get(file))
        .route("/bench/stock/{file}", get(stock_file))
}

#[derive(Deserialize)]
struct Asked {
    #[serde(default)]
    year: String,
    /// The day at whose end the stock is told.
    #[serde(default)]
    on: String,
}

#[derive(Deserialize)]
struct Written {
    #[serde(default)]
    decimal: String,
}

impl Written {
    fn mark(&self) -> DecimalMark {
        if self.decimal == "comma" { DecimalMark::Comma } else { DecimalMark::Point }
    }
}

/// The moment at which a day has ended at this machine.
fn end_of(day: Date) -> Option<Timestamp> {
    Some(day.tomorrow().ok()?.to_zoned_datetime(TimeZone::system()).ok()?.timestamp())
}

/// The year that was typed, or the running one.
fn year_of(desk: &DeskState, typed: &str) -> Result<i16, Refusal> {
    if typed.trim().is_empty() {
        return Ok(desk.clock.now().to_zoned_datetime(TimeZone::system()).year());
    }
    let year = typed.trim().parse().ok().filter(|year| (1900..=9998).contains(year));
    year.ok_or_else(|| Refusal::wrong(message!("year-no-year", found = excerpt(typed))))
}

/// The day that was typed, or today.
fn day_of(desk: &DeskState, typed: &str) -> Result<Date, Refusal> {
    if typed.trim().is_empty() {
        return Ok(desk.clock.now().to_zoned_datetime(TimeZone::system()).date());
    }
    typed.trim().parse().map_err(|_| Refusal::wrong(message!("year-no-day", found = excerpt(typed))))
}

async fn stock_on(desk: &DeskState, day: Date) -> Result<StockOn, Refusal> {
    let Some(end) = end_of(day) else { return Ok(StockOn::default()) };
    desk.ledger.look(move |ledger| ledger.stock_before(end)).await
}

async fn page(
    State(desk): State<Arc<DeskState>>,
    Query(asked): Query<Asked>,
    Owner(seller): Owner,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let (year, day) = (year_of(&desk, &asked.year)?, day_of(&desk, &asked.on)?);
    let told = desk.ledger.look(move |ledger| ledger.year(year)).await?;
    let stock = stock_on(&desk, day).await?;
    let (workshop, mistakes) = workshop(&desk, &loaded.catalog).await?;
    let lines = stock_at_cost(&loaded.catalog, workshop.as_ref(), &stock.parts);
    let currency = loaded.catalog.table.prices.currency;
    let main = html! {
        form.row.wraps.ask-for.no-print method="get" action="/bench/year" {
            label for="year" { (say!(texts, "year-which")) }
            input.few #year name="year" value=(year) inputmode="numeric" pattern="[0-9]{4}" autocomplete="off";
            label for="on" { (say!(texts, "year-stock-on")) }
            input #on name="on" type="date" value=(day);
            button.quiet { (say!(texts, "year-show")) }
        }
        @if told.shows.is_empty() { p { (say!(texts, "year-nothing", year = year.to_string())) } }
        @else { (year_tables(texts, &told)) }
        (stock_card(texts, day, &stock, &lines, currency))
    };
    Ok(bench_page(&desk, texts, "/bench/year", mistakes.as_ref(), &main))
}

fn year_tables(texts: &Texts, year: &Year) -> Markup {
    let apart: Vec<String> =
        year.set_apart().map(|(show, one)| format!("{show}: {}, {}", one.number, one.charged)).collect();
    html! {
        p.faint { (say!(texts, "year-about")) }
        @if year.shows.iter().any(|one| one.by_closing) { p { (say!(texts, "year-by-closing")) } }
        @if !apart.is_empty() { p.grave { (say!(texts, "year-set-apart", what = apart.join("; "))) } }
        (tax(texts, year))
        (payments(texts, year))
        (reductions(texts, year))
        section.card.no-print aria-label=(say!(texts, "files")) {
            h2 { (say!(texts, "files")) }
            p.faint { (say!(texts, "files-hint")) }
            ul.links {
                @for table in YearTable::ALL {
                    @let address = format!("/bench/year/{}-{}.csv", year.year, table.name());
                    li.row {
                        span { (texts.get(&format!("year-{}", table.name()))) }
                        a href=(address) download { "8.50" }
                        a href={ (address) "?decimal=comma" } download { "8,50" }
                    }
                }
                li { a href={ "/bench/year/" (year.year) ".json" } download { (say!(texts, "files-all")) } }
            }
        }
    }
}

/// An amount in the currency called `code`.
fn amount(texts: &Texts, code: &str, amount: Decimal) -> String {
    Currency::from_code(code)
        .map_or_else(|| format!("{amount} {code}"), |currency| money(texts, amount.round_dp(currency.digits), currency))
}

fn tax(texts: &Texts, year: &Year) -> Markup {
    html! {
        section.card aria-label=(say!(texts, "year-tax")) {
            h2 { (say!(texts, "year-tax")) }
            table.made {
                thead {
                    tr {
                        th { (say!(texts, "year-quarter")) }
                        th.figure { (say!(texts, "year-net")) }
                        th.figure { (say!(texts, "year-the-tax")) }
                    }
                }
                tbody {
                    @for line in year.tax() {
                        tr {
                            td {
                                (say!(texts, "year-q", n = line.quarter)) " · "
                                (line.place.unwrap_or_else(|| say!(texts, "year-no-place"))) " · "
                                @match line.rate {
                                    Some(rate) => (say!(texts, "year-rate", percent = texts.lang.number(rate.normalize()))),
                                    None => (say!(texts, "year-rate-unknown")),
                                }
                            }
                            td.figure { (amount(texts, line.currency, line.net)) }
                            td.figure { (amount(texts, line.currency, line.tax)) }
                        }
                    }
                }
            }
        }
    }
}

fn payments(texts: &Texts, year: &Year) -> Markup {
    html! {
        section.card aria-label=(say!(texts, "year-payments")) {
            h2 { (say!(texts, "year-payments")) }
            table.made {
                thead { tr { th { (say!(texts, "year-quarter")) } th.figure { (say!(texts, "year-taken")) } } }
                tbody {
                    @for line in year.payments() {
                        tr {
                            td { (say!(texts, "year-q", n = line.quarter)) " · " (way_words(texts, &Tender::called(&line.way))) }
                            td.figure { (amount(texts, line.currency, line.amount)) }
                        }
                    }
                }
            }
        }
    }
}

fn reductions(texts: &Texts, year: &Year) -> Markup {
    let lines = year.reductions();
    html! {
        @if !lines.is_empty() {
            section.card aria-label=(say!(texts, "year-reductions")) {
                h2 { (say!(texts, "year-reductions")) }
                table.made {
                    thead { tr { th { (say!(texts, "year-quarter")) } th.figure { (say!(texts, "year-amount")) } } }
                    tbody {
                        @for line in lines {
                            tr {
                                td {
                                    (say!(texts, "year-q", n = line.quarter)) " · "
                                    (texts.get(&format!("year-off-{}", line.what.code())))
                                    @if !line.reason.is_empty() { ": " (line.reason) }
                                }
                                td.figure { (amount(texts, line.currency, line.amount)) }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn stock_card(texts: &Texts, day: Date, stock: &StockOn, lines: &[StockLine], currency: Currency) -> Markup {
    let (worth, unknown) = worth_of_stock(lines);
    let shown = day.strftime("%Y-%m-%d").to_string();
    html! {
        section.card aria-label=(say!(texts, "year-stock")) {
            h2 { (say!(texts, "year-stock")) }
            @if lines.is_empty() {
                p { (say!(texts, "year-stock-unknown", day = shown.as_str())) }
            } @else {
                p { (say!(texts, "year-stock-worth", day = shown.as_str(), worth = money(texts, worth.round_dp(currency.digits), currency))) }
                @if !unknown.is_zero() { p.grave { (say!(texts, "year-stock-no-cost", n = texts.lang.number(unknown))) } }
                p.faint { (say!(texts, "year-stock-about")) }
                @if let Some(since) = stock.known_since {
                    p.faint { (say!(texts, "year-stock-since", day = crate::desk::pages::words::day(texts, since))) }
                }
                p.row.wraps {
                    @let address = format!("/bench/stock/{shown}.csv");
                    a href=(address) download { (say!(texts, "year-stock")) " 8.50" }
                    a href={ (address) "?decimal=comma" } download { (say!(texts, "year-stock")) " 8,50" }
                }
            }
        }
    }
}

fn nothing(name: &str) -> Refusal {
    Refusal::Said(StatusCode::NOT_FOUND, message!("refused-nothing-called", name = excerpt(name)))
}

async fn file(
    State(desk): State<Arc<DeskState>>,
    Owner(_): Owner,
    Path(name): Path<String>,
    Query(written): Query<Written>,
) -> Result<Response, Refusal> {
    let (stem, end) = name.split_once('.').ok_or_else(|| nothing(&name))?;
    let (year, table) = match (stem.split_once('-'), end) {
        (Some((year, table)), "csv") => (year, Some(YearTable::from_name(table).ok_or_else(|| nothing(&name))?)),
        (None, "json") => (stem, None),
        _ => return Err(nothing(&name)),
    };
    let year = year_of(&desk, year)?;
    let told = desk.ledger.look(move |ledger| ledger.year(year)).await?;
    let Some(table) = table else {
        let text = serde_json::to_string_pretty(&told.whole()).map_err(|error| failed(&error))?;
        return Ok(saved(&format!("year-{year}.json"), "application/json", (text + "\n").into_bytes()));
    };
    let bytes = told.table(table, written.mark()).map_err(|error| failed(&error))?;
    Ok(saved(&format!("year-{year}-{}.csv", table.name()), "text/csv; charset=utf-8", bytes))
}

async fn stock_file(
    State(desk): State<Arc<DeskState>>,
    Owner(_): Owner,
    Path(name): Path<String>,
    Query(written): Query<Written>,
) -> Result<Response, Refusal> {
    let day = name.strip_suffix(".csv").ok_or_else(|| nothing(&name))?;
    let day = day_of(&desk, day)?;
    let stock = stock_on(&desk, day).await?;
    let loaded = desk.catalog.loaded();
    let (workshop, _) = workshop(&desk, &loaded.catalog).await?;
    let lines = stock_at_cost(&loaded.catalog, workshop.as_ref(), &stock.parts);
    let code = loaded.catalog.table.prices.currency.code;
    let bytes = stock_table(&lines, code, written.mark()).map_err(|error| failed(&error))?;
    Ok(saved(&format!("stock-{day}.csv"), "text/csv; charset=utf-8", bytes))
}
