//! What to pack for a show, with spares; what was forgotten last time comes first.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use maud::{Markup, html};
use serde::Deserialize;
use uuid::Uuid;

use super::bench_page;
use crate::{
    bench::{LONGEST, PACKING, PackItem, not_listed, packing},
    desk::{approval::Posted, refusal::Refusal, seller::Owner, state::DeskState},
    lang::{Texts, message, say},
    ledger::{KeptPage, Ledger, LedgerError, written},
    quoting::excerpt,
};

/// The page's address.
const HERE: &str = "/bench/packing";
/// What most shows need (common practice, no source).
const USUAL: [&str; 12] = [
    "chain", "tools", "clasps", "drops", "bases", "float", "tablets", "chargers", "reader", "lights", "paper",
    "cautions",
];

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bench/packing", get(list).post(add)).route("/bench/packing/{id}", post(change))
}

async fn list(State(desk): State<Arc<DeskState>>, Owner(seller): Owner) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let items = packing(desk.ledger.look(|ledger| ledger.pages::<PackItem>(PACKING)).await?);
    let usual = usual(texts);
    let left = items.iter().filter(|kept| !kept.page.packed).count();
    let main = html! {
        p { (say!(texts, "packing-about", n = left)) }
        @if !items.is_empty() {
            ul.differences { @for kept in &items { (item(texts, kept)) } }
            form.no-print method="post" action={ (HERE) "/all" } {
                (form_field())
                button.quiet name="act" value="again" { (say!(texts, "packing-again")) }
            }
        }
        form.card.stack.no-print method="post" action=(HERE) {
            (form_field())
            div {
                label for="what" { (say!(texts, "packing-what")) }
                input #what name="what" maxlength=(LONGEST) autocomplete="off";
            }
            label.choose { input type="checkbox" name="spare" value="1"; span { (say!(texts, "packing-spare")) } }
            div.row.wraps {
                button.main { (say!(texts, "packing-add")) }
                @if !not_listed(&items, &usual).is_empty() {
                    button.quiet name="usual" value="1" { (say!(texts, "packing-usual")) }
                }
            }
        }
        button.no-print data-prints hidden { (say!(texts, "card-print")) }
    };
    Ok(bench_page(&desk, texts, HERE, None, &main))
}

/// What is usual, in the language of the page: it becomes the maker's own words.
fn usual(texts: &Texts) -> Vec<String> {
    USUAL.iter().map(|one| texts.get(&format!("packing-usual-{one}"))).collect()
}

fn form_field() -> Markup {
    html! { input type="hidden" name="form" value=(Uuid::now_v7()); }
}

fn item(texts: &Texts, kept: &KeptPage<PackItem>) -> Markup {
    let one = &kept.page;
    html! {
        li {
            form.row.wraps.tick-form method="post" action={ (HERE) "/" (kept.id) } {
                (form_field())
                button.step data-switch="" name="act" value=(if one.packed { "unpacked" } else { "packed" }) aria-pressed=(one.packed)
                    aria-label=(say!(texts, "packing-pack", what = one.what.as_str())) { @if one.packed { "✓" } @else { "·" } }
                span.what {
                    (one.what)
                    @if one.spare { " " span.faint { (say!(texts, "packing-is-spare")) } }
                    @if one.forgotten > 0 { " " strong { (say!(texts, "packing-forgotten", n = one.forgotten)) } }
                }
                button.quiet name="act" value="forgotten" { (say!(texts, "packing-forgot")) }
                button.quiet name="act" value="gone" { (say!(texts, "bench-off-list")) }
            }
        }
    }
}

#[derive(Deserialize)]
struct Added {
    #[serde(default)]
    form: Uuid,
    #[serde(default)]
    what: String,
    #[serde(default)]
    spare: String,
    #[serde(default)]
    usual: String,
}

async fn add(State(desk): State<Arc<DeskState>>, posted: Posted<Added>) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-bench")).await?;
    let said = &posted.form;
    let what: String = said.what.trim().chars().filter(|c| !c.is_control()).take(LONGEST).collect();
    let (form, spare, wants_usual) = (said.form, said.spare == "1", said.usual == "1");
    if what.is_empty() && !wants_usual {
        return Err(Refusal::wrong(message!("packing-nothing")));
    }
    let usual = usual(seller.texts);
    let entered = move |ledger: &mut Ledger, now| -> Result<(), LedgerError> {
        let listed = packing(ledger.pages::<PackItem>(PACKING)?);
        let items: Vec<PackItem> = if wants_usual {
            let missing = not_listed(&listed, &usual).into_iter();
            missing.map(|what| PackItem { what: what.clone(), ..PackItem::default() }).collect()
        } else {
            vec![PackItem { what, spare, ..PackItem::default() }]
        };
        let named = items.iter().enumerate().map(|(n, item)| Ok((format!("{form}-{n}"), written(item)?)));
        let named: Vec<(String, serde_json::Value)> = named.collect::<Result<_, LedgerError>>()?;
        let pages: Vec<_> = named.iter().map(|(id, page)| (PACKING, id.as_str(), page.clone())).collect();
        ledger.keep_pages(form, &pages, now)
    };
    desk.ledger.enter_by(&seller, entered).await?;
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
    Path(id): Path<String>,
    posted: Posted<Act>,
) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-bench")).await?;
    let (form, act) = (posted.form.form, posted.form.act.clone());
    let items = packing(desk.ledger.look(|ledger| ledger.pages::<PackItem>(PACKING)).await?);
    let all = act == "again";
    if !all && !items.iter().any(|kept| kept.id == id) {
        return Err(Refusal::Said(StatusCode::NOT_FOUND, message!("refused-nothing-called", name = excerpt(&id))));
    }
    let entered = move |ledger: &mut Ledger, now| -> Result<(), LedgerError> {
        let mut items = packing(ledger.pages::<PackItem>(PACKING)?);
        items.retain(|kept| all || kept.id == id);
        let mut pages = Vec::new();
        for kept in &mut items {
            match act.as_str() {
                "packed" => kept.page.packed = true,
                "unpacked" | "again" => kept.page.packed = false,
                "forgotten" => kept.page.forgotten = kept.page.forgotten.saturating_add(1),
                "gone" => kept.page.gone = true,
                _ => return Ok(()),
            }
            pages.push((PACKING, kept.id.as_str(), written(&kept.page)?));
        }
        ledger.keep_pages(form, &pages, now)
    };
    desk.ledger.enter_by(&seller, entered).await?;
    Ok(Redirect::to(HERE).into_response())
}
