//! What everything costs and earns: few price points, margin by price and by drop, how many pieces earn the stall, and what
//! another price would do.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Query, State},
    http::StatusCode,
    response::Response,
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;

use super::{SHOWS, bench_page, workshop};
use crate::{
    bench::{PriceChange, PriceList, PriceRow, StallCosts, past_shows, price_change, price_list},
    catalog::Catalog,
    desk::{
        money_words::amount_words,
        pages::{
            typed::{amount, typed_price, unless_empty},
            words::{self, money},
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Message, Texts, message, say},
    money::Currency,
    quoting::excerpt,
};

/// The page's address.
const HERE: &str = "/bench/prices";
/// So many prices can be kept in mind, where nothing else is asked for (common practice, no source).
const USUAL_POINTS: usize = 5;
const MOST_POINTS: usize = 30;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bench/prices", get(prices))
}

#[derive(Deserialize)]
struct Asked {
    #[serde(default)]
    stall: String,
    #[serde(default)]
    travel: String,
    #[serde(default)]
    pieces: String,
    #[serde(default)]
    points: String,
    /// What gets another price.
    #[serde(default)]
    of: String,
    /// The other price.
    #[serde(default)]
    to: String,
}

fn refused(said: Message) -> Refusal {
    Refusal::Said(StatusCode::UNPROCESSABLE_ENTITY, said)
}

impl Asked {
    fn stall(&self, texts: &Texts, currency: Currency) -> Result<StallCosts, Refusal> {
        let read = |typed: &str| {
            amount(texts, "typed-no-fee", typed, currency)
                .map(Option::unwrap_or_default)
                .map_err(|_| refused(message!("plans-no-fee", found = excerpt(typed))))
        };
        let all = read(&self.stall)? + read(&self.travel)?;
        let pieces = unless_empty(&self.pieces, |typed| {
            typed.parse().ok().filter(|pieces| (1..=100_000).contains(pieces)).ok_or_else(|| excerpt(typed))
        });
        let pieces = pieces.map_err(|found| refused(message!("prices-no-pieces", found = found)))?;
        Ok(StallCosts { all, pieces })
    }

    fn points(&self) -> Result<usize, Refusal> {
        let read = unless_empty(&self.points, |typed| {
            typed.parse().ok().filter(|points| (1..=MOST_POINTS).contains(points)).ok_or_else(|| excerpt(typed))
        });
        let read = read.map_err(|found| refused(message!("prices-no-points", found = found, most = MOST_POINTS)))?;
        Ok(read.unwrap_or(USUAL_POINTS))
    }

    /// What the price that was asked about would do; none where none was.
    fn change(&self, texts: &Texts, catalog: &Catalog, list: &PriceList) -> Result<Option<PriceChange>, Refusal> {
        if self.to.trim().is_empty() {
            return Ok(None);
        }
        let to = typed_price(catalog.table.prices.currency, &self.to).map_err(|error| {
            refused(message!("prices-no-price", why = words::sentence(&amount_words(texts, &error))))
        })?;
        let change = price_change(catalog, list, &self.of, to);
        let name = words::part_name(texts, catalog, &self.of).into_owned();
        change.map(Some).ok_or_else(|| refused(message!("prices-no-cost", name = excerpt(&name))))
    }
}

async fn prices(
    State(desk): State<Arc<DeskState>>,
    Query(asked): Query<Asked>,
    Owner(seller): Owner,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let catalog = &loaded.catalog;
    let currency = catalog.table.prices.currency;
    let (workshop, mistakes) = workshop(&desk, catalog).await?;
    let past = desk.ledger.look(|ledger| past_shows(ledger, SHOWS)).await?;
    let list = price_list(catalog, workshop.as_ref(), &past, asked.stall(texts, currency)?, asked.points()?);
    let change = asked.change(texts, catalog, &list)?;
    let told = Told { texts, catalog, currency, list: &list };
    let main = html! {
        @if workshop.is_none() && mistakes.is_none() { p { (say!(texts, "bench-no-recipes")) } }
        @if let Some(change) = &change { (told.change(change)) }
        (told.by_price())
        (told.form(&asked))
        (told.rows())
    };
    Ok(bench_page(&desk, texts, HERE, mistakes.as_ref(), &main))
}

/// A price list with its reader.
struct Told<'a> {
    texts: &'static Texts,
    catalog: &'a Catalog,
    currency: Currency,
    list: &'a PriceList,
}

impl Told<'_> {
    fn money(&self, amount: Decimal) -> String {
        money(self.texts, amount.round_dp(self.currency.digits), self.currency)
    }

    fn known(&self, amount: Option<Decimal>) -> String {
        amount.map_or_else(|| "?".to_owned(), |amount| self.money(amount))
    }

    fn name(&self, id: &str) -> String {
        words::part_name(self.texts, self.catalog, id).into_owned()
    }

    fn form(&self, asked: &Asked) -> Markup {
        let texts = self.texts;
        let field = |name: &str, label: String, value: &str, mode: &str| {
            html! {
                div {
                    label for=(name) { (label) }
                    input #(name) name=(name) value=(value) inputmode=(mode) maxlength="12" autocomplete="off";
                }
            }
        };
        html! {
            form.card.stack.no-print method="get" action=(HERE) {
                (field("stall", say!(texts, "plans-fee"), &asked.stall, "decimal"))
                (field("travel", say!(texts, "prices-travel"), &asked.travel, "decimal"))
                (field("pieces", say!(texts, "prices-pieces"), &asked.pieces, "numeric"))
                (field("points", say!(texts, "prices-points"), &asked.points, "numeric"))
                div {
                    label for="of" { (say!(texts, "prices-of")) }
                    select #of name="of" {
                        @for row in &self.list.rows {
                            option value=(row.priced.id) selected[row.priced.id == asked.of] { (self.name(&row.priced.id)) }
                        }
                    }
                }
                (field("to", say!(texts, "prices-to", currency = self.currency.code), &asked.to, "decimal"))
                button.main { (say!(texts, "prices-reckon")) }
            }
        }
    }

    fn change(&self, change: &PriceChange) -> Markup {
        let texts = self.texts;
        html! {
            section.card #change aria-label=(say!(texts, "prices-change")) {
                h2 { (self.name(&change.id)) ": " (self.money(change.from)) " → " (self.money(change.to)) }
                p { (say!(texts, "prices-earns", then = self.money(change.margin_then), now = self.money(change.margin_now))) }
                p {
                    strong {
                        @match change.sold_for_the_same {
                            _ if change.margin_now <= Decimal::ZERO => (say!(texts, "prices-at-a-loss", loss = self.money(-change.margin_now))),
                            Some(n) => (say!(texts, "prices-same", n = n, sold = change.sold, earned = self.money(change.earned))),
                            None => (say!(texts, "prices-never", earned = self.money(change.earned))),
                        }
                    }
                }
            }
        }
    }

    fn by_price(&self) -> Markup {
        let (texts, list) = (self.texts, self.list);
        let points: Vec<String> = list.points.iter().map(|point| self.money(*point)).collect();
        html! {
            section.card aria-label=(say!(texts, "prices-by-price")) {
                h2 { (say!(texts, "prices-by-price")) }
                @if !points.is_empty() { p { (say!(texts, "prices-suggested", n = points.len(), points = points.join(", "))) } }
                @if let Some(even) = list.break_even.filter(|even| even.stall > Decimal::ZERO) {
                    p {
                        strong {
                            @match even.pieces {
                                Some(n) => (say!(texts, "prices-even", n = n, stall = self.money(even.stall), earned = self.money(even.earned))),
                                None => (say!(texts, "prices-never-even", stall = self.money(even.stall))),
                            }
                        }
                    }
                }
                table.made {
                    thead {
                        tr {
                            th { (say!(texts, "prices-price")) }
                            th.figure { (say!(texts, "prices-margin")) }
                        }
                    }
                    tbody {
                        @for at in &list.prices {
                            tr {
                                td {
                                    strong { (self.money(at.price)) } br;
                                    span.faint { (say!(texts, "prices-at", n = at.kinds, sold = texts.lang.number(at.sold.round_dp(1).normalize()))) }
                                    @if let Some(least) = at.least.filter(|least| at.margin.is_some_and(|margin| *least < margin)) {
                                        br; span.faint { (say!(texts, "prices-least", amount = self.money(least))) }
                                    }
                                }
                                td.figure { (self.known(at.margin)) }
                            }
                        }
                    }
                }
            }
        }
    }

    fn rows(&self) -> Markup {
        let texts = self.texts;
        html! {
            section.card aria-label=(say!(texts, "prices-each")) {
                h2 { (say!(texts, "prices-each")) }
                p.faint { (say!(texts, "prices-about")) }
                table.made {
                    thead {
                        tr {
                            th { (say!(texts, "sold-part")) }
                            th.figure { (say!(texts, "prices-margin")) }
                        }
                    }
                    tbody { @for row in &self.list.rows { (self.row(row)) } }
                }
            }
        }
    }

    fn row(&self, row: &PriceRow) -> Markup {
        let (texts, one) = (self.texts, &row.priced);
        let cost = one.cost.as_ref().filter(|_| one.is_known()).map(crate::prep::Cost::total);
        html! {
            tr {
                td {
                    (self.name(&one.id)) br;
                    span.faint { (say!(texts, "prices-costs", price = self.money(one.price), cost = self.known(cost))) }
                    @if let Some(point) = row.point.filter(|point| *point != one.price) {
                        br; span.faint { (say!(texts, "prices-point", point = self.money(point))) }
                    }
                    @if let Some(longest) = row.longest { br; span.faint { (say!(texts, "prices-longest", cost = self.money(longest))) } }
                }
                td.figure { @if one.margin.is_some_and(|margin| margin < Decimal::ZERO) { strong.grave { (self.known(one.margin)) } } @else { (self.known(one.margin)) } }
            }
        }
    }
}
