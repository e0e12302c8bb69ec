//! What the next batch takes from the drawers, what to buy in whole lots, and what stops when a part is gone.

use std::{collections::BTreeMap, sync::Arc};

use axum::{
    Router,
    extract::{Query, State},
    http::StatusCode,
    response::Response,
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::{Decimal, prelude::ToPrimitive};
use serde::Deserialize;

use super::{SHOWS, bench_page, workshop};
use crate::{
    bench::{Batch, PartShort, batch, numbers, past_shows},
    catalog::Catalog,
    craft::Length,
    desk::{
        pages::words::{self, money},
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::ShowKind,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bench/parts", get(parts))
}

#[derive(Deserialize)]
struct Asked {
    /// What kind of show it is for.
    #[serde(default)]
    kind: String,
}

async fn parts(
    State(desk): State<Arc<DeskState>>,
    Query(asked): Query<Asked>,
    Owner(seller): Owner,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let catalog = &loaded.catalog;
    let (workshop, mistakes) = workshop(&desk, catalog).await?;
    let Some(workshop) = workshop else {
        let main = html! { p { (say!(texts, "bench-no-recipes")) } };
        return Ok(bench_page(&desk, texts, "/bench/parts", mistakes.as_ref(), &main));
    };
    let kind = ShowKind::from_code(&asked.kind);
    let (past, counts) = desk.ledger.look(|ledger| Ok((past_shows(ledger, SHOWS)?, ledger.counts()?))).await?;
    let numbers = numbers(catalog, Some(&workshop), &past, &counts, kind).map_err(|error| {
        tracing::warn!("no numbers: {error}");
        Refusal::Said(StatusCode::UNPROCESSABLE_ENTITY, message!("bench-no-numbers"))
    })?;
    let make: BTreeMap<String, u32> =
        numbers.iter().filter(|one| one.number.make > 0).map(|one| (one.id.clone(), one.number.make)).collect();
    let told = Told { texts, catalog, batch: batch(catalog, &workshop, &make) };
    let all: u32 = make.values().sum();
    let main = html! {
        p { (say!(texts, "parts-about", n = all)) }
        (told.to_buy())
        (told.drawers())
        (told.without())
    };
    Ok(bench_page(&desk, texts, "/bench/parts", mistakes.as_ref(), &main))
}

/// A batch with its reader.
struct Told<'a> {
    texts: &'static Texts,
    catalog: &'a Catalog,
    batch: Batch,
}

impl Told<'_> {
    fn money(&self, amount: Decimal) -> String {
        let currency = self.catalog.table.prices.currency;
        money(self.texts, amount.round_dp(currency.digits), currency)
    }

    /// How much of a part: pieces, or a length.
    fn amount(&self, part: &PartShort, amount: Decimal) -> String {
        if part.by_length {
            words::length(self.texts, Length::from_mm(amount.to_f64().unwrap_or_default()))
        } else {
            self.texts.lang.number(amount.normalize())
        }
    }

    fn names(&self, ids: &[String]) -> String {
        ids.iter().map(|id| words::part_name(self.texts, self.catalog, id)).collect::<Vec<_>>().join(", ")
    }

    fn to_buy(&self) -> Markup {
        let texts = self.texts;
        let short: Vec<&PartShort> = self.batch.parts.iter().filter(|part| part.short > Decimal::ZERO).collect();
        html! {
            section.card aria-label=(say!(texts, "parts-buy")) {
                h2 { (say!(texts, "parts-buy")) }
                @if short.is_empty() { p { (say!(texts, "parts-enough")) } }
                @else {
                    table.made.lengths {
                        thead { tr { th { (say!(texts, "sold-part")) } th.figure { (say!(texts, "parts-short")) } th.figure { (say!(texts, "parts-price")) } } }
                        tbody {
                            @for part in &short {
                                tr {
                                    td {
                                        strong { (part.name) } br;
                                        span.faint {
                                            @match &part.buy {
                                                Some(buy) => {
                                                    @let lots: u32 = buy.lots.iter().sum();
                                                    (say!(texts, "parts-lots", n = lots, amount = self.amount(part, buy.amount)))
                                                }
                                                None => (say!(texts, "parts-no-offer")),
                                            }
                                            " " (say!(texts, "parts-stops", what = self.names(&part.stops)))
                                        }
                                    }
                                    td.figure { (self.amount(part, part.short)) }
                                    td.figure { (part.buy.as_ref().map(|buy| self.money(buy.price)).unwrap_or_default()) }
                                }
                            }
                        }
                    }
                    dl.sums { dt.total { (say!(texts, "parts-in-all")) } dd.total { (self.money(self.batch.price)) } }
                }
            }
        }
    }

    /// The other side: what stops when a part is gone.
    fn drawers(&self) -> Markup {
        let texts = self.texts;
        html! {
            section.card aria-label=(say!(texts, "parts-drawers")) {
                h2 { (say!(texts, "parts-drawers")) }
                table.made.lengths {
                    thead { tr { th { (say!(texts, "sold-part")) } th.figure { (say!(texts, "parts-needed")) } th.figure { (say!(texts, "bench-there")) } } }
                    tbody {
                        @for part in &self.batch.parts {
                            tr {
                                td {
                                    (part.name) br;
                                    span.faint { (say!(texts, "parts-stops", what = self.names(&part.stops))) }
                                }
                                td.figure { (self.amount(part, part.needed)) }
                                td.figure { (self.amount(part, part.there)) }
                            }
                        }
                    }
                }
            }
        }
    }

    fn without(&self) -> Markup {
        let texts = self.texts;
        html! {
            @if !self.batch.without_recipe.is_empty() {
                p.grave { (say!(texts, "parts-without", what = self.names(&self.batch.without_recipe))) }
            }
        }
    }
}
