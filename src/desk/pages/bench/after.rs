//! What a show came to for the maker.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::StatusCode,
    response::Response,
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::Decimal;

use super::{SHOWS, titled, workshop};
use crate::{
    bench::{AfterShow, SoldOfSort, after_show, past_shows},
    catalog::Catalog,
    desk::{
        pages::words::{self, money},
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Texts, message, say},
    money::Currency,
    quoting::excerpt,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bench/shows/{id}", get(after))
}

async fn after(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Path(name): Path<String>,
) -> Result<Response, Refusal> {
    let nothing = || Refusal::Said(StatusCode::NOT_FOUND, message!("refused-nothing-called", name = excerpt(&name)));
    let id: i64 = name.parse().map_err(|_| nothing())?;
    let past = desk.ledger.look(|ledger| past_shows(ledger, SHOWS)).await?;
    let past = past.into_iter().find(|past| past.show == id).ok_or_else(nothing)?;
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let (workshop, mistakes) = workshop(&desk, &loaded.catalog).await?;
    let after = after_show(&loaded.catalog, workshop.as_ref(), &past);
    let told = Told { texts, catalog: &loaded.catalog, currency: past.currency, after: &after };
    let title = match &past.about.place {
        Some(place) => say!(texts, "show-name-at", show = id, place = place.as_str()),
        None => say!(texts, "show-name", show = id),
    };
    let main = html! {
        (told.sums())
        (told.by_sort())
        (told.by_home())
        p.links { a href={ "/shows/" (id) } { (say!(texts, "bench-close-out")) } }
    };
    Ok(titled(&desk, texts, "/bench/shows", &title, mistakes.as_ref(), &main))
}

/// A show with its reader.
struct Told<'a> {
    texts: &'static Texts,
    catalog: &'a Catalog,
    currency: Currency,
    after: &'a AfterShow,
}

impl Told<'_> {
    fn money(&self, amount: Decimal) -> String {
        money(self.texts, amount.round_dp(self.currency.digits), self.currency)
    }

    fn known(&self, amount: Option<Decimal>) -> String {
        amount.map_or_else(|| say!(self.texts, "sums-too-large"), |amount| self.money(amount))
    }

    fn sums(&self) -> Markup {
        let (texts, after) = (self.texts, self.after);
        let beyond = after.left_for_work.and_then(|left| left.checked_sub(after.costs.labour));
        html! {
            section.card aria-label=(say!(texts, "sums")) {
                dl.sums {
                    dt { (say!(texts, "after-net")) } dd { (self.known(after.net)) }
                    dt { (say!(texts, "after-parts")) } dd { (self.money(-after.costs.parts)) }
                    dt { (say!(texts, "after-fee")) } dd { (self.money(-after.fee)) }
                    @if !after.reward.is_zero() { dt { (say!(texts, "after-reward")) } dd { (self.money(-after.reward)) } }
                    dt.total { (say!(texts, "after-for-work")) } dd.total { (self.known(after.left_for_work)) }
                    dt { (say!(texts, "after-work")) } dd { (self.money(-after.costs.labour)) }
                    dt { (say!(texts, "after-beyond")) } dd { (self.known(beyond)) }
                }
                @if after.costs.without_cost > 0 { p.grave { (say!(texts, "after-without-cost", n = after.costs.without_cost)) } }
                p.faint { (say!(texts, "after-todays-costs")) }
            }
        }
    }

    fn by_sort(&self) -> Markup {
        let texts = self.texts;
        let most = self.after.sorts.iter().map(|one| one.sold).max().unwrap_or(1).max(1);
        let name = |one: &SoldOfSort| match one.sort {
            Some(sort) => texts.get(&format!("sort-{}", sort.name())),
            None => say!(texts, "trays-bases"),
        };
        html! {
            section.card aria-label=(say!(texts, "after-by-sort")) {
                h2 { (say!(texts, "after-by-sort")) }
                table.made {
                    thead {
                        tr {
                            th { (say!(texts, "after-sort")) }
                            th.figure { (say!(texts, "after-sold")) }
                            th.figure { (say!(texts, "after-margin")) }
                        }
                    }
                    tbody {
                        @for one in &self.after.sorts {
                            tr {
                                td {
                                    (name(one))
                                    svg.range viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true" {
                                        rect.there x="0" y="2" width=(one.sold * 100 / most) height="6" {}
                                    }
                                }
                                td.figure { (one.sold) }
                                td.figure { (self.money(one.margin)) }
                            }
                        }
                    }
                }
            }
        }
    }

    fn by_home(&self) -> Markup {
        let texts = self.texts;
        html! {
            section.card aria-label=(say!(texts, "after-by-home")) {
                h2 { (say!(texts, "after-by-home")) }
                table.made {
                    thead {
                        tr {
                            th { (say!(texts, "sold-home")) }
                            th { (say!(texts, "sold-part")) }
                            th.figure { (say!(texts, "after-sold")) }
                            th.figure { (say!(texts, "sold-left")) }
                        }
                    }
                    tbody {
                        @for one in &self.after.parts {
                            tr {
                                td { (one.home.map(|home| home.to_string()).unwrap_or_default()) }
                                td { (words::part_name(texts, self.catalog, &one.id)) }
                                td.figure { (one.sold) }
                                td.figure { (one.left.map(|left| left.to_string()).unwrap_or_default()) }
                            }
                        }
                    }
                }
            }
        }
    }
}
