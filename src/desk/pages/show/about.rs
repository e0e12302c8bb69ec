//! What the running show is: place, kind, tax of the place, fee, host, float.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Query, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use rust_decimal::Decimal;
use serde::Deserialize;

use super::sheet::kind_words;
use crate::{
    desk::{
        approval::Posted,
        ledger_words::ledger_words,
        pages::{
            frame::{Tab, page},
            typed::{amount, as_typed, tax},
            words,
        },
        refusal::Refusal,
        seller::Seller,
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::{AboutShow, ShowKind},
    money::{Currency, TaxRule},
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/show/about", get(ask).post(tell))
}

#[derive(Deserialize)]
struct Asked {
    kind: Option<String>,
}

/// The form as it is typed.
#[derive(Default, Deserialize)]
#[serde(default)]
struct Typed {
    show: i64,
    kind: String,
    place: String,
    tax: String,
    /// Where the table itself has no tax: whether the place's comes on top of the marked prices.
    on_top: String,
    fee: String,
    host: String,
    float: String,
}

impl Typed {
    fn of(texts: &Texts, show: i64, about: &AboutShow) -> Self {
        let number = |amount: Option<Decimal>| amount.map(|amount| as_typed(texts, amount)).unwrap_or_default();
        let (percent, on_top) = match about.tax {
            Some(TaxRule::Added { percent }) => (Some(percent), true),
            Some(TaxRule::Included { percent }) => (Some(percent), false),
            Some(TaxRule::None) => (Some(Decimal::ZERO), true),
            None => (None, true),
        };
        Self {
            show,
            kind: about.kind.map(|kind| kind.code().to_owned()).unwrap_or_default(),
            place: about.place.clone().unwrap_or_default(),
            tax: number(percent),
            on_top: if on_top { "yes" } else { "no" }.to_owned(),
            fee: number(about.fee),
            host: about.host.clone().unwrap_or_default(),
            float: number(about.float),
        }
    }

    /// What it says, or what is wrong with it in words.
    fn read(&self, texts: &Texts, table: TaxRule, currency: Currency) -> Result<AboutShow, String> {
        let name = |typed: &str| Some(typed.trim().to_owned()).filter(|name| !name.is_empty());
        let on_top = match table {
            TaxRule::Added { .. } => true,
            TaxRule::Included { .. } => false,
            TaxRule::None => self.on_top != "no",
        };
        let rule = |percent| if on_top { TaxRule::Added { percent } } else { TaxRule::Included { percent } };
        let about = AboutShow {
            place: name(&self.place),
            kind: ShowKind::from_code(&self.kind),
            tax: tax(texts, &self.tax)?.map(rule),
            fee: amount(texts, "typed-no-fee", &self.fee, currency)?,
            host: name(&self.host),
            float: amount(texts, "typed-no-float", &self.float, currency)?,
        };
        about.check(currency).map_err(|error| words::sentence(&ledger_words(texts, &error.into())))?;
        Ok(about)
    }
}

async fn ask(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Query(asked): Query<Asked>,
) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let kind = asked.kind.as_deref().and_then(ShowKind::from_code);
    let typed = desk
        .ledger
        .look(move |ledger| {
            let show = ledger.show()?.id;
            let about = ledger.about_show(show)?;
            let about = match kind {
                // A show of which nothing is known begins with what was usual the last time; the host is another one.
                Some(kind) if about.kind.is_none() => {
                    let usual = ledger.last_of_kind(kind, show)?.unwrap_or(AboutShow { kind: Some(kind), ..about });
                    AboutShow { host: None, ..usual }
                }
                Some(kind) => AboutShow { kind: Some(kind), ..about },
                None => about,
            };
            Ok(Typed::of(texts, show, &about))
        })
        .await?;
    Ok(form(&desk, texts, &typed, None))
}

/// The form, with what is wrong in it above.
fn form(desk: &DeskState, texts: &Texts, typed: &Typed, trouble: Option<&str>) -> Response {
    let loaded = desk.catalog.loaded();
    let currency = loaded.catalog.table.prices.currency.code;
    let own = desk.catalog.own_tax();
    let kind = ShowKind::from_code(&typed.kind);
    let is_party = matches!(kind, Some(ShowKind::HomeParty | ShowKind::ChildrensParty));
    let main = html! {
        h1 { (say!(texts, "about-ask", show = typed.show)) }
        @if let Some(words) = trouble { p.trouble role="alert" { (words) } }
        form.card.stack.about-show method="post" action="/show/about" {
            input type="hidden" name="show" value=(typed.show);
            div {
                label for="kind" { (say!(texts, "about-kind")) }
                select #kind name="kind" {
                    option value="" selected[kind.is_none()] { (say!(texts, "about-not-told")) }
                    @for one in ShowKind::REAL {
                        option value=(one.code()) selected[kind == Some(one)] { (kind_words(texts, one)) }
                    }
                }
            }
            (field("place", &say!(texts, "about-place"), &typed.place, "text", &say!(texts, "about-place-hint")))
            div {
                (field("tax", &say!(texts, "about-tax"), &typed.tax, "decimal", &own_tax_words(texts, own)))
                @if own == TaxRule::None {
                    div.pair {
                        (choice("on_top", "yes", typed.on_top != "no", &say!(texts, "about-on-top")))
                        (choice("on_top", "no", typed.on_top == "no", &say!(texts, "about-contained")))
                    }
                }
            }
            (field("float", &say!(texts, "about-float", currency = currency), &typed.float, "decimal", &say!(texts, "about-float-hint")))
            (field("fee", &say!(texts, "about-fee", currency = currency), &typed.fee, "decimal", &say!(texts, "about-fee-hint")))
            @if is_party || !typed.host.is_empty() {
                (field("host", &say!(texts, "about-host"), &typed.host, "text", &say!(texts, "about-host-hint")))
            }
            div.row {
                button.main { (say!(texts, "about-keep")) }
                a.button.quiet href="/show" { (say!(texts, "go-back")) }
            }
        }
        p.faint { (say!(texts, "about-hint")) }
    };
    page(desk, texts, Tab::Show, &say!(texts, "about-title"), &main).into_response()
}

/// What holds where the place has no tax of its own.
fn own_tax_words(texts: &Texts, own: TaxRule) -> String {
    let number = |percent: Decimal| texts.lang.number(percent.normalize());
    match own {
        TaxRule::None => say!(texts, "about-own-none"),
        TaxRule::Added { percent } => say!(texts, "about-own-added", percent = number(percent)),
        TaxRule::Included { percent } => say!(texts, "about-own-included", percent = number(percent)),
    }
}

fn field(name: &str, label: &str, value: &str, mode: &str, hint: &str) -> Markup {
    html! {
        div {
            label for=(name) { (label) }
            input #(name) name=(name) value=(value) inputmode=(mode) maxlength="60" autocomplete="off"
                aria-describedby={ (name) "-hint" };
            p.faint.hint #{ (name) "-hint" } { (hint) }
        }
    }
}

fn choice(name: &str, value: &str, chosen: bool, words: &str) -> Markup {
    html! {
        label.choose { input type="radio" name=(name) value=(value) checked[chosen]; " " (words) }
    }
}

async fn tell(State(desk): State<Arc<DeskState>>, posted: Posted<Typed>) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-about-show")).await?;
    let (texts, typed) = (seller.texts, posted.form);
    let currency = desk.catalog.loaded().catalog.table.prices.currency;
    let about = match typed.read(texts, desk.catalog.own_tax(), currency) {
        Ok(about) => about,
        Err(words) => return Ok((StatusCode::BAD_REQUEST, form(&desk, texts, &typed, Some(&words))).into_response()),
    };
    let (for_ledger, show) = (Arc::clone(&desk), typed.show);
    desk.ledger
        .run_by(&seller, move |ledger, now| {
            let before = ledger.about_show(show)?;
            // Practice stays practice, whatever else is told of it.
            let kind = if before.kind == Some(ShowKind::Practice) { before.kind } else { about.kind };
            ledger.set_about(show, &AboutShow { kind, ..about }, currency, now)?;
            for_ledger.catalog.follow_show(ledger, now)
        })
        .await?;
    Ok(Redirect::to("/show").into_response())
}
