//! What was made of which lots, put into its compartment, and what was checked at the bench before.

use std::{
    collections::{BTreeMap, BTreeSet},
    sync::Arc,
};

use axum::{
    Router,
    extract::State,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use uuid::Uuid;

use super::{bench_page, workshop};
use crate::{
    bench::{BenchCheck, LONGEST, MADE, Made},
    catalog::{Catalog, Workshop},
    desk::{approval::Posted, pages::words, refusal::Refusal, seller::Owner, state::DeskState},
    lang::{Texts, message, say},
    ledger::{KeptPage, written},
    quoting::excerpt,
};

/// The page's address.
const HERE: &str = "/bench/made";
/// Nobody makes more than this in one go.
const MOST: u32 = 9999;
/// Entries that are shown.
const SHOWN: usize = 40;
/// Stands between a part and its lot in a field.
const BETWEEN: char = '|';

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bench/made", get(made).post(keep))
}

async fn made(State(desk): State<Arc<DeskState>>, Owner(seller): Owner) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let pages = desk.ledger.look(|ledger| ledger.pages::<Made>(MADE)).await?;
    let (workshop, mistakes) = workshop(&desk, &loaded.catalog).await?;
    let main = html! {
        p { (say!(texts, "made-about")) }
        (form(texts, &loaded.catalog, workshop.as_ref()))
        (told(&desk, texts, &loaded.catalog, &pages))
    };
    Ok(bench_page(&desk, texts, HERE, mistakes.as_ref(), &main))
}

fn form(texts: &Texts, catalog: &Catalog, workshop: Option<&Workshop>) -> Markup {
    html! {
        form.card.stack method="post" action=(HERE) {
            input type="hidden" name="form" value=(Uuid::now_v7());
            div {
                label for="of" { (say!(texts, "made-what")) }
                select #of name="of" {
                    @for base in &catalog.bases { option value=(base.id) { (words::part_name(texts, catalog, &base.id)) } }
                    @for kind in &catalog.drops { option value=(kind.id) { (kind.home) " " (words::part_name(texts, catalog, &kind.id)) } }
                }
            }
            div {
                label for="count" { (say!(texts, "count-many")) }
                input #count name="count" inputmode="numeric" pattern="[0-9]{1,4}" autocomplete="off" required;
            }
            label.choose { input type="checkbox" name="put_in" value="1" checked; span { (say!(texts, "made-put-in")) } }
            fieldset {
                legend { (say!(texts, "made-checks")) }
                @for check in BenchCheck::ALL {
                    label.choose { input type="checkbox" name="check" value=(check.code()); span { (check_words(texts, check)) } }
                }
            }
            @if let Some(workshop) = workshop.filter(|workshop| !workshop.lots.is_empty()) {
                details {
                    summary { (say!(texts, "made-lots")) }
                    p.faint { (say!(texts, "made-lots-hint")) }
                    @for lot in &workshop.lots {
                        label.choose {
                            input type="checkbox" name="lot" value={ (lot.part) (BETWEEN) (lot.lot) };
                            span { (workshop.part(&lot.part).map_or(lot.part.as_str(), |part| &part.name)) " " b { (lot.lot) } }
                        }
                    }
                }
            }
            div {
                label for="note" { (say!(texts, "made-note")) }
                input #note name="note" maxlength=(LONGEST) autocomplete="off";
            }
            button.main { (say!(texts, "made-keep")) }
        }
    }
}

/// A check in words.
fn check_words(texts: &Texts, check: BenchCheck) -> String {
    texts.get(&format!("made-check-{}", check.code()))
}

fn told(desk: &DeskState, texts: &Texts, catalog: &Catalog, pages: &[KeptPage<Made>]) -> Markup {
    let now = desk.clock.now();
    html! {
        @if !pages.is_empty() {
            section.card aria-label=(say!(texts, "made-before")) {
                h2 { (say!(texts, "made-before")) }
                ul.differences {
                    @for kept in pages.iter().rev().take(SHOWN) {
                        @let made = &kept.page;
                        li {
                            strong { (made.count) " × " (words::part_name(texts, catalog, &made.of)) } " · "
                            (words::clock(texts, kept.at, now)) br;
                            span.faint {
                                @let lots: Vec<&str> = made.lots.values().flatten().map(String::as_str).collect();
                                @if !lots.is_empty() { (say!(texts, "made-of-lots", lots = lots.join(", "))) " " }
                                @let missing: Vec<String> = BenchCheck::ALL.into_iter().filter(|check| !made.checks.contains(check))
                                    .map(|check| check_words(texts, check)).collect();
                                @if missing.is_empty() { (say!(texts, "made-all-checked")) }
                                @else { (say!(texts, "made-not-checked", what = missing.join(", "))) }
                                @if !made.note.is_empty() { " " (made.note) }
                            }
                        }
                    }
                }
            }
        }
    }
}

async fn keep(State(desk): State<Arc<DeskState>>, posted: Posted<Vec<(String, String)>>) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-bench")).await?;
    let all = |name: &'static str| posted.form.iter().filter(move |(one, _)| one == name).map(|(_, text)| text.trim());
    let one = |name| all(name).next().unwrap_or_default();
    let form: Uuid = one("form").parse().map_err(|_| Refusal::wrong(message!("bench-no-form")))?;
    let loaded = desk.catalog.loaded();
    let of = one("of").to_owned();
    if loaded.catalog.drop_kind(&of).is_none() && loaded.catalog.base(&of).is_none() {
        return Err(Refusal::wrong(message!("refused-no-part", name = excerpt(&of))));
    }
    let count = one("count").parse().ok().filter(|count| (1..=MOST).contains(count));
    let wrong = || Refusal::wrong(message!("part-no-count", typed = excerpt(one("count")), most = MOST));
    let count: u32 = count.ok_or_else(wrong)?;
    let mut lots = BTreeMap::<String, BTreeSet<String>>::new();
    for (part, lot) in all("lot").filter_map(|text| text.split_once(BETWEEN)) {
        lots.entry(part.to_owned()).or_default().insert(lot.to_owned());
    }
    let note: String = one("note").chars().take(LONGEST).collect();
    let checks = all("check").filter_map(BenchCheck::from_code).collect();
    let put_in = (one("put_in") == "1").then_some((of.clone(), count));
    let page = written(&Made { of, count, lots, checks, note })?;
    let entered = move |ledger: &mut crate::ledger::Ledger, now| {
        let put_in = put_in.as_ref().map(|(part, more)| (part.as_str(), *more));
        ledger.keep_pages_and_put_in(form, &[(MADE, &form.to_string(), page)], put_in, now)
    };
    desk.ledger.enter_by(&seller, entered).await?;
    Ok(Redirect::to(HERE).into_response())
}
