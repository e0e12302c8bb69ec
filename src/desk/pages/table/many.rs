//! New prices for many compartments at once: a row, a tray, a sort, or all, to one price or by a rule. They are shown before
//! they are entered.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Query, State},
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;

use super::{
    form::{TableForm, marks},
    refused::refused,
};
use crate::{
    catalog::{Act, Catalog, Fields, Place},
    craft::{DropKind, Sort},
    desk::{
        editing,
        money_words::amount_words,
        pages::{
            frame::{Tab, page},
            typed::{typed_price, typed_signed},
            words,
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Texts, say},
    money::PriceRule,
};

/// The page's address.
const HERE: &str = "/table/prices";

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/table/prices", get(ask).post(enter))
}

/// What is asked for: which compartments, and how their prices become others.
#[derive(Default, Deserialize)]
#[serde(default)]
struct Asked {
    which: String,
    how: String,
    amount: String,
    step: String,
}

impl Asked {
    /// The drops that are meant: `all`, `tray-B`, `row-B-2` or `sort-Key`.
    fn drops<'a>(&self, catalog: &'a Catalog) -> Vec<&'a DropKind> {
        let parts: Vec<&str> = self.which.split('-').collect();
        let in_row = |letter: &str, row: &str| -> Vec<&'a DropKind> {
            let tray = catalog.trays.iter().find(|tray| tray.letter.to_string() == letter);
            let row = row.parse::<usize>().ok().and_then(|row| tray?.rows.get(row.checked_sub(1)?));
            row.into_iter().flatten().flatten().filter_map(|id| catalog.drop_kind(id)).collect()
        };
        match parts.as_slice() {
            ["all"] => catalog.drops.iter().collect(),
            ["tray", letter] => catalog.drops.iter().filter(|kind| kind.home.tray.to_string() == *letter).collect(),
            ["row", letter, row] => in_row(letter, row),
            ["sort", sort] => catalog.drops.iter().filter(|kind| kind.sort.name() == *sort).collect(),
            _ => vec![],
        }
    }

    /// The rule, or what is wrong with it in words.
    fn rule(&self, texts: &Texts, catalog: &Catalog) -> Result<PriceRule, String> {
        let currency = catalog.table.prices.currency;
        let price =
            |typed: &str| typed_price(currency, typed).map_err(|error| words::sentence(&amount_words(texts, &error)));
        let signed =
            || typed_signed(&self.amount).ok_or_else(|| say!(texts, "table-no-measure", found = self.amount.as_str()));
        match self.how.as_str() {
            "by" => signed().map(PriceRule::By),
            "percent" => {
                let step = if self.step.trim().is_empty() { currency.minor_unit() } else { price(&self.step)? };
                signed().map(|percent| PriceRule::Percent { percent, step })
            }
            _ => price(&self.amount).map(PriceRule::To),
        }
    }

    /// The drops whose prices become others, with the new ones.
    fn changes<'a>(&self, texts: &Texts, catalog: &'a Catalog) -> Result<Vec<(&'a DropKind, Decimal)>, String> {
        let (rule, currency) = (self.rule(texts, catalog)?, catalog.table.prices.currency);
        let changed = self.drops(catalog).into_iter().map(|kind| {
            let next = rule.of(kind.price, currency);
            let next =
                next.map_err(|error| format!("{}: {}", kind.home, words::sentence(&amount_words(texts, &error))))?;
            Ok((kind, next))
        });
        let changed: Vec<_> = changed.collect::<Result<_, String>>()?;
        Ok(changed.into_iter().filter(|(kind, next)| kind.price != *next).collect())
    }
}

async fn ask(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Query(asked): Query<Asked>,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let catalog = &loaded.catalog;
    let shown = (!asked.amount.is_empty()).then(|| asked.changes(texts, catalog));
    let files = editing::files(&desk).await.ok();
    let title = say!(texts, "table-prices");
    let main = html! {
        h1 { (title) }
        @if let Some(Err(words)) = &shown { p.trouble role="alert" { (words) } }
        form.card.stack method="get" action=(HERE) {
            div {
                label for="which" { (say!(texts, "table-which")) }
                select #which name="which" { (choices(texts, catalog, &asked.which)) }
            }
            div {
                label for="how" { (say!(texts, "table-how")) }
                select #how name="how" {
                    @for (value, key) in [("to", "table-how-to"), ("by", "table-how-by"), ("percent", "table-how-percent")] {
                        option value=(value) selected[asked.how == value] { (texts.get(key)) }
                    }
                }
            }
            div {
                label for="amount" { (say!(texts, "table-amount")) }
                input #amount name="amount" value=(asked.amount) autocomplete="off" maxlength="12" required;
            }
            div {
                label for="step" { (say!(texts, "table-step")) }
                input #step name="step" value=(asked.step) inputmode="decimal" autocomplete="off" maxlength="12";
            }
            button.main { (say!(texts, "table-show-prices")) }
        }
        @if let Some(Ok(changes)) = &shown {
            section.card.stack {
                h2 { (say!(texts, "table-new-prices", n = changes.len())) }
                @if !changes.is_empty() {
                    ul {
                        @for (kind, next) in changes {
                            li {
                                (kind.home) " " (words::part_name(texts, catalog, &kind.id)) ": "
                                (words::money(texts, kind.price, catalog.table.prices.currency)) " → "
                                strong { (words::money(texts, *next, catalog.table.prices.currency)) }
                            }
                        }
                    }
                    form method="post" action=(HERE) {
                        @for (name, value) in [("which", &asked.which), ("how", &asked.how), ("amount", &asked.amount), ("step", &asked.step)] {
                            input type="hidden" name=(name) value=(value);
                        }
                        @let places: Vec<Place> = changes.iter().map(|(kind, _)| Place::Home(kind.home)).collect();
                        (marks(files.as_ref(), &places))
                        button.main { (say!(texts, "table-enter-prices")) }
                    }
                }
            }
        }
        p { a.button.quiet href="/table" { (say!(texts, "go-back")) } }
    };
    Ok(page(&desk, texts, Tab::Trays, &title, &main).into_response())
}

/// All, each tray with its rows, each sort.
fn choices(texts: &Texts, catalog: &Catalog, chosen: &str) -> Markup {
    let option = |value: String, words: String| html! { option value=(value) selected[chosen == value] { (words) } };
    html! {
        (option("all".to_owned(), say!(texts, "table-all")))
        @for tray in &catalog.trays {
            (option(format!("tray-{}", tray.letter), format!("{} {}", tray.letter, words::tray_name(texts, catalog, tray))))
            @for row in 1..=tray.rows.len() {
                (option(format!("row-{}-{row}", tray.letter), say!(texts, "table-row-of", letter = tray.letter.to_string(), n = row)))
            }
        }
        @for sort in Sort::ALL.iter().filter(|sort| catalog.drops.iter().any(|kind| kind.sort == **sort)) {
            (option(format!("sort-{}", sort.name()), texts.get(&format!("sort-{}", sort.name()))))
        }
    }
}

async fn enter(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let loaded = desk.catalog.loaded();
    let text = |name| form.text(name).to_owned();
    let asked = Asked { which: text("which"), how: text("how"), amount: text("amount"), step: text("step") };
    let changes = match asked.changes(texts, &loaded.catalog) {
        Ok(changes) => changes,
        Err(_) => return Ok(Redirect::to(HERE).into_response()),
    };
    let acts: Vec<Act> = changes
        .iter()
        .map(|(kind, next)| Act::Tell { home: kind.home, fields: Fields::new().text("price", &next.to_string()) })
        .collect();
    let did = say!(texts, "table-did-prices", n = acts.len());
    Ok(match editing::change(&desk, acts, form.seen(), did).await {
        Ok(_) => Redirect::to("/table").into_response(),
        Err(error) => refused(&desk, &form, &error, (HERE, HERE)).await,
    })
}
