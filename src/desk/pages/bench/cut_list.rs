//! A list of cuts that is kept and ticked off; what is left of each spool is what the next plan begins with.

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

use super::{
    cuts::{Asked, planned},
    kept_lists::kept_lists,
    titled, workshop,
};
use crate::{
    bench::{CUT_LISTS, CutLine, CutList, PartNow, SPOOLS, Ticked, parts_now},
    catalog::PartCount,
    craft::Length,
    desk::{approval::Posted, pages::words, refusal::Refusal, seller::Owner, state::DeskState},
    lang::{Texts, message, say},
    ledger::written,
    prep::cuts::{Tenths, quick_plan},
    quoting::excerpt,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bench/cuts", post(keep)).route("/bench/cuts/{id}", get(list).post(tick))
}

async fn keep(State(desk): State<Arc<DeskState>>, posted: Posted<Vec<(String, String)>>) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-bench")).await?;
    let text = |name: &str| posted.form.iter().find(|(one, _)| one == name).map(|(_, text)| text.clone());
    let asked = Asked::read(posted.form.clone());
    let form: Uuid = text("form").and_then(|form| form.parse().ok()).ok_or_else(no_form)?;
    let id = form.to_string();
    let address = format!("/bench/cuts/{id}");
    if kept_lists(&desk).await?.iter().any(|kept| kept.id == id) {
        return Ok(Redirect::to(&address).into_response());
    }
    let loaded = desk.catalog.loaded();
    let (workshop, _) = workshop(&desk, &loaded.catalog).await?;
    let planned = match &workshop {
        Some(workshop) => planned(&desk, workshop, &asked).await?,
        None => None,
    };
    let planned = planned.ok_or_else(no_form)?;
    // What is kept is what was looked at: the plan that was there at once, or the one that a search has found since.
    let plans = [planned.plan.clone(), quick_plan(&planned.job)];
    let plan = plans.into_iter().find(|plan| text("seen").is_none_or(|seen| seen == planned.mark(plan)));
    let plan = plan.ok_or_else(|| Refusal::Said(StatusCode::CONFLICT, message!("cuts-changed")))?;
    let name = workshop.as_ref().and_then(|workshop| workshop.part(&asked.part)).map_or("", |part| &part.name);
    let list = written(&CutList::of(&asked.part, name, &planned.job, &plan))?;
    let kept = move |ledger: &mut crate::ledger::Ledger, now| ledger.keep_pages(form, &[(CUT_LISTS, &id, list)], now);
    desk.ledger.enter_by(&seller, kept).await?;
    Ok(Redirect::to(&address).into_response())
}

fn no_form() -> Refusal {
    Refusal::wrong(message!("bench-no-form"))
}

fn nothing(name: &str) -> Refusal {
    Refusal::Said(StatusCode::NOT_FOUND, message!("refused-nothing-called", name = excerpt(name)))
}

async fn list(
    State(desk): State<Arc<DeskState>>,
    Owner(seller): Owner,
    Path(id): Path<String>,
) -> Result<Response, Refusal> {
    let texts = seller.texts;
    let lists = kept_lists(&desk).await?;
    let kept = lists.iter().find(|kept| kept.id == id).ok_or_else(|| nothing(&id))?;
    let main = html! {
        p.faint { (say!(texts, "cuts-follow")) }
        ul.cuts { @for (at, line) in kept.page.lines.iter().enumerate() { (one(texts, &id, at, line)) } }
        form.no-print method="post" action={ "/bench/cuts/" (id) } {
            input type="hidden" name="form" value=(Uuid::now_v7());
            button.quiet name="away" value="1" { (say!(texts, "cuts-away")) }
        }
        button.no-print data-prints hidden { (say!(texts, "card-print")) }
    };
    let title = format!("{}: {}", say!(texts, "cuts-list"), kept.page.name);
    Ok(titled(&desk, texts, "/bench/cuts/list", &title, None, &main))
}

fn one(texts: &Texts, id: &str, at: usize, line: &CutLine) -> Markup {
    let length = |tenths: Tenths| words::length(texts, Length::from_mm(tenths.mm()));
    let from = length(line.from);
    html! {
        li {
            form.row.tick-form method="post" action={ "/bench/cuts/" (id) } {
                input type="hidden" name="form" value=(Uuid::now_v7());
                input type="hidden" name="line" value=(at);
                button.step data-switch="" name="on" value=(if line.done { "0" } else { "1" }) aria-pressed=(line.done)
                    aria-label=(say!(texts, "cuts-tick", n = at + 1)) { @if line.done { "✓" } @else { (at + 1) } }
                span {
                    strong { (say!(texts, "cuts-spool", length = from)) } " "
                    @for (one, n) in &line.cuts { span.line { (say!(texts, "cuts-times", n = *n, length = length(*one))) } }
                    span.faint {
                        @if line.kept { (say!(texts, "cuts-stays", length = length(line.left))) }
                        @else { (say!(texts, "cuts-lost", length = length(line.left))) }
                    }
                }
            }
        }
    }
}

#[derive(Deserialize)]
struct Tick {
    #[serde(default)]
    form: Uuid,
    line: Option<usize>,
    #[serde(default)]
    on: String,
    #[serde(default)]
    away: String,
}

async fn tick(
    State(desk): State<Arc<DeskState>>,
    Path(id): Path<String>,
    posted: Posted<Tick>,
) -> Result<Response, Refusal> {
    let seller = posted.by_the_seller(&desk, message!("act-bench")).await?;
    let (form, line, on, away) =
        (posted.form.form, posted.form.line, posted.form.on == "1", !posted.form.away.is_empty());
    let found = kept_lists(&desk).await?.into_iter().find(|kept| kept.id == id).ok_or_else(|| nothing(&id))?;
    let file = desk.catalog.workshop(&desk.catalog.loaded().catalog).ok().flatten();
    let entered = move |ledger: &mut crate::ledger::Ledger, now| {
        // As it is now: another phone may have ticked meanwhile.
        let lists = ledger.pages::<CutList>(CUT_LISTS)?;
        let mut list = lists.into_iter().find(|kept| kept.id == found.id).map_or(found.page, |kept| kept.page);
        if away {
            list.gone = true;
            ledger.keep_pages(form, &[(CUT_LISTS, &found.id, written(&list)?)], now)?;
            return Ok(Ticked::Moved);
        }
        let pages = parts_now(ledger)?;
        let before = file.as_ref().and_then(|workshop| PartNow::of(workshop, &list.part, &pages));
        let mut spools = before.as_ref().map(|now| now.spools().to_vec()).unwrap_or_default();
        let ticked = list.tick(line.unwrap_or(usize::MAX), on, &mut spools);
        let (Ticked::Moved, Some(before)) = (ticked, before) else { return Ok(ticked) };
        let (part, left) = (list.part.clone(), PartNow { now: PartCount::Spools(spools), ..before });
        let pages = [(CUT_LISTS, found.id.as_str(), written(&list)?), (SPOOLS, part.as_str(), written(&left)?)];
        ledger.keep_pages(form, &pages, now)?;
        Ok(ticked)
    };
    if let Ticked::NotThere(length) = desk.ledger.enter_by(&seller, entered).await? {
        let length = words::length(seller.texts, Length::from_mm(length.mm()));
        let said =
            if on { message!("cuts-not-there", length = length) } else { message!("cuts-rest-gone", length = length) };
        return Err(Refusal::Said(StatusCode::CONFLICT, said));
    }
    let to = if away { "/bench/cuts".to_owned() } else { format!("/bench/cuts/{id}") };
    Ok(Redirect::to(&to).into_response())
}
