//! The table itself: its name and place, its currency and tax, whose cautions hold. What is not told yet is suggested by
//! where its reader's browser is at home.

use std::sync::Arc;

use axum::{
    Router,
    extract::State,
    http::{HeaderMap, StatusCode, header},
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use maud::{Markup, html};
use rust_decimal::Decimal;

use super::{
    form::{TableForm, marks},
    refused::refused,
};
use crate::{
    catalog::{Act, Fields, Place, Table, TableGuess},
    desk::{
        editing,
        pages::{
            frame::{Tab, page},
            typed::{as_typed, tax},
        },
        refusal::Refusal,
        seller::Owner,
        state::DeskState,
    },
    lang::{Texts, say},
    money::{Currency, TaxRule},
    ron_tree::in_quotes,
};

/// The page's address.
const HERE: &str = "/table/facts";

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/table/facts", get(ask).post(tell)).route("/table/demo", post(like_the_demo))
}

/// What a place of the world suggests: the code of its currency, of its cautions' region, and its usual rate of tax on
/// jewellery with whether the marked prices contain it.
struct Suggested {
    currency: &'static str,
    region: &'static str,
    tax: Option<(&'static str, bool)>,
}

/// By the country that a browser names first with its language. Standard rates from memory, of 2025; in the United States the
/// rate is the town's.
fn suggested(headers: &HeaderMap) -> Suggested {
    let accepted = headers.get(header::ACCEPT_LANGUAGE).and_then(|value| value.to_str().ok()).unwrap_or_default();
    let first = accepted.split([',', ';']).next().unwrap_or_default().trim();
    let (language, country) = first.split_once('-').unwrap_or((first, ""));
    let country = country.to_ascii_uppercase();
    let country = match (country.as_str(), language) {
        ("", "de") => "DE",
        ("", "fr") => "FR",
        ("", "es") => "ES",
        (named, _) => named,
    };
    let euro = |percent| Suggested { currency: "EUR", region: "EU", tax: Some((percent, true)) };
    match country {
        "DE" | "CY" => euro("19"),
        "FR" | "AT" | "BG" => euro("20"),
        "ES" | "NL" | "BE" | "LV" => euro("21"),
        "IT" | "SI" => euro("22"),
        "IE" | "PT" => euro("23"),
        "FI" => euro("25.5"),
        "LU" => euro("17"),
        "GB" => Suggested { currency: "GBP", region: "UK", tax: Some(("20", true)) },
        "CH" => Suggested { currency: "CHF", region: "EU", tax: Some(("8.1", true)) },
        _ => Suggested { currency: "USD", region: "US", tax: None },
    }
}

/// The form as it is typed.
struct Typed {
    name: String,
    place: String,
    currency: String,
    region: String,
    tax: String,
    on_top: bool,
}

impl Typed {
    fn of(texts: &Texts, table: &Table, suggested: &Suggested) -> Self {
        let is_told = |guess| !table.guessed.contains(&guess);
        let (percent, on_top) = match table.prices.tax {
            TaxRule::Added { percent } => (Some(percent), true),
            TaxRule::Included { percent } => (Some(percent), false),
            TaxRule::None => (None, false),
        };
        let (percent, on_top) = match (is_told(TableGuess::Tax), suggested.tax) {
            (true, _) => (percent, on_top),
            (false, Some((percent, contained))) => (percent.parse().ok(), !contained),
            (false, None) => (None, true),
        };
        let told =
            |guess, told: &str, suggested: &str| if is_told(guess) { told.to_owned() } else { suggested.to_owned() };
        Self {
            name: told(TableGuess::Name, &table.name, ""),
            place: table.paper.head.first().cloned().unwrap_or_default(),
            currency: told(TableGuess::Currency, table.prices.currency.code, suggested.currency),
            region: told(TableGuess::Region, table.region.code(), suggested.region),
            tax: percent.map(|percent: Decimal| as_typed(texts, percent)).unwrap_or_default(),
            on_top,
        }
    }
}

async fn ask(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    headers: HeaderMap,
) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let typed = Typed::of(texts, &desk.catalog.loaded().catalog.table, &suggested(&headers));
    Ok(form_page(&desk, texts, &typed, None).await)
}

async fn form_page(desk: &Arc<DeskState>, texts: &Texts, typed: &Typed, trouble: Option<&str>) -> Response {
    let (files, loaded) = (editing::files(desk).await.ok(), desk.catalog.loaded());
    let title = say!(texts, "table-step-facts");
    let has_prices = !loaded.catalog.drops.is_empty() || !loaded.catalog.bases.is_empty();
    let main = html! {
        h1 { (title) }
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        form.card.stack method="post" action=(HERE) {
            (marks(files.as_ref(), &[Place::Table]))
            (field("name", &say!(texts, "table-name"), &typed.name, 60, true))
            (field("place", &say!(texts, "table-place"), &typed.place, 60, false))
            div {
                label for="currency" { (say!(texts, "table-currency")) }
                select #currency name="currency" {
                    @for code in Currency::codes() { option value=(code) selected[code == typed.currency] { (code) } }
                }
                @if has_prices { p.faint.hint { (say!(texts, "table-currency-hint")) } }
            }
            div {
                label for="region" { (say!(texts, "table-region")) }
                select #region name="region" {
                    @for rules in &loaded.rules {
                        option value=(rules.region.code()) selected[rules.region.code() == typed.region] { (texts.region(rules)) }
                    }
                }
            }
            fieldset {
                legend { (say!(texts, "table-tax")) }
                div.pair {
                    (field("tax", &say!(texts, "table-tax-percent"), &typed.tax, 8, false))
                    (choice("no", !typed.on_top, &say!(texts, "about-contained")))
                    (choice("yes", typed.on_top, &say!(texts, "about-on-top")))
                }
                p.faint.hint { (say!(texts, "table-tax-hint")) }
            }
            button.main { (say!(texts, "table-keep")) }
        }
        p { a.button.quiet href="/table" { (say!(texts, "go-back")) } }
    };
    page(desk, texts, Tab::Trays, &title, &main).into_response()
}

fn field(name: &str, label: &str, value: &str, longest: usize, required: bool) -> Markup {
    html! {
        div {
            label for=(name) { (label) }
            input #(name) name=(name) value=(value) maxlength=(longest) autocomplete="off" required[required]
                inputmode=[(name == "tax").then_some("decimal")];
        }
    }
}

fn choice(value: &str, chosen: bool, words: &str) -> Markup {
    html! { label.choose { input type="radio" name="on_top" value=(value) checked[chosen]; " " (words) } }
}

async fn tell(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let typed = Typed {
        name: form.text("name").to_owned(),
        place: form.text("place").to_owned(),
        currency: form.text("currency").to_owned(),
        region: form.text("region").to_owned(),
        tax: form.text("tax").to_owned(),
        on_top: form.text("on_top") == "yes",
    };
    let again = async |words: &str| {
        let page = form_page(&desk, texts, &typed, Some(words)).await;
        Ok((StatusCode::BAD_REQUEST, page).into_response())
    };
    let percent = match tax(texts, &typed.tax) {
        Ok(percent) => percent,
        Err(words) => return again(&words).await,
    };
    if typed.name.is_empty() {
        return again(&say!(texts, "table-no-name")).await;
    }
    let loaded = desk.catalog.loaded();
    let known = loaded.rules.iter().any(|rules| rules.region.code() == typed.region);
    if Currency::from_code(&typed.currency).is_none() || !known {
        return again(&say!(texts, "refused-not-read")).await;
    }
    let rule = match percent.filter(|percent| !percent.is_zero()) {
        None => "None".to_owned(),
        Some(percent) => {
            let kind = if typed.on_top { "Added" } else { "Included" };
            format!("{kind}(percent: {})", in_quotes(&percent.to_string()))
        }
    };
    let mut fields = Fields::new()
        .text("name", &typed.name)
        .text("currency", &typed.currency)
        .written("tax", rule)
        .written("region", typed.region.clone());
    // The first line below the name on receipts; what else stands on them is written in the file.
    if typed.place != loaded.catalog.table.paper.head.first().map_or("", String::as_str)
        && loaded.catalog.table.paper.care.is_empty()
    {
        fields = fields.written("paper", format!("(head: [{}])", in_quotes(&typed.place)));
    }
    let done = editing::change(&desk, vec![Act::Table { fields }], form.seen(), say!(texts, "table-did-facts")).await;
    Ok(match done {
        Ok(_) => Redirect::to("/table").into_response(),
        Err(error) => refused(&desk, &form, &error, (HERE, HERE)).await,
    })
}

async fn like_the_demo(State(desk): State<Arc<DeskState>>, form: TableForm) -> Result<Response, Refusal> {
    Ok(match editing::like_the_demo(&desk).await {
        Ok(()) => Redirect::to("/table").into_response(),
        Err(error) => refused(&desk, &form, &error, ("/table/demo", "/table")).await,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_suggested_follows_the_reader() {
        for (accepted, currency, region) in [
            ("de-DE,de;q=0.9,en;q=0.8", "EUR", "EU"),
            ("de-CH", "CHF", "EU"),
            ("en-GB,en;q=0.5", "GBP", "UK"),
            ("en-US,en", "USD", "US"),
            ("fr", "EUR", "EU"),
            ("es;q=0.9", "EUR", "EU"),
            ("", "USD", "US"),
            ("ü-,,;;", "USD", "US"),
        ] {
            let mut headers = HeaderMap::new();
            headers.insert(header::ACCEPT_LANGUAGE, accepted.parse().unwrap());
            let found = suggested(&headers);
            assert_eq!((found.currency, found.region), (currency, region), "{accepted}");
            assert!(Currency::from_code(found.currency).is_some());
        }
    }
}
