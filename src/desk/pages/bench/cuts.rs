//! Which spool is cut into what: a plan at once, and a better one where there is time.

use std::{sync::Arc, time::Duration};

use axum::{
    Form, Router,
    extract::{Query, State},
    http::{HeaderMap, StatusCode},
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use maud::{Markup, html};
use rust_decimal::Decimal;
use uuid::Uuid;

use super::{
    bench_page, in_query,
    kept_lists::{kept_lists, links_to},
    workshop,
};
use crate::{
    bench::{CutList, chains, without_promised},
    catalog::{There, Workshop},
    craft::Length,
    desk::{cut_search::CutSearch, pages::words, refusal::Refusal, seller::Owner, state::DeskState},
    lang::{Message, Texts, message, say},
    prep::cuts::{BetterPlan, CutJob, CutPlan, Tenths, Wanted, quick_plan},
    quoting::excerpt,
};

/// So long one waits for a better plan before being told how far it is.
const AT_ONCE: Duration = Duration::from_secs(2);
/// So long one waits for a search that was stopped.
const STOPPED: Duration = Duration::from_secs(5);
/// Lines of the form; what is left empty is not cut.
const LINES: usize = 8;
/// Lengths that the form begins with (common practice, no source).
const USUAL: [&str; 6] = ["14in", "16in", "18in", "20in", "24in", "30in"];

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/bench/cuts", get(cuts)).route("/bench/cuts/stop", post(stop))
}

/// What was asked for, as it was typed.
#[derive(Default)]
pub(super) struct Asked {
    pub(super) part: String,
    /// Lengths with their counts.
    lines: Vec<(String, String)>,
    /// Whether there is time for a better plan.
    pub(super) better: bool,
}

impl Asked {
    pub(super) fn read(fields: Vec<(String, String)>) -> Self {
        let mut asked = Self::default();
        let mut length = None;
        for (name, value) in fields {
            match name.as_str() {
                "part" => asked.part = value,
                "better" => asked.better = true,
                "length" => length = Some(value),
                "count" => asked.lines.extend(length.take().map(|length| (length, value))),
                _ => {}
            }
        }
        asked.lines.truncate(LINES);
        asked
    }

    /// The lines that say something, as lengths and counts.
    fn wanted(&self) -> Result<Vec<Wanted>, Message> {
        let mut wanted = Vec::new();
        for (length, count) in &self.lines {
            let (length, count) = (length.trim(), count.trim());
            if count.is_empty() || count == "0" {
                continue;
            }
            let read: Length = length.parse().map_err(|_| message!("cuts-no-length", found = excerpt(length)))?;
            let count = count.parse().ok().filter(|count| (1..=10_000).contains(count));
            let count = count.ok_or_else(|| message!("cuts-no-count", length = excerpt(length)))?;
            wanted.push(Wanted { length: Tenths::no_shorter(read), count });
        }
        Ok(wanted)
    }
}

/// A plan, and what is known of better ones where they were looked for.
pub(super) struct Planned {
    pub(super) job: CutJob,
    pub(super) plan: CutPlan,
    better: Option<BetterPlan>,
    /// The search for a better one, where it has not ended.
    search: Option<Arc<CutSearch>>,
    /// What lists that are worked on are going to cut, so that it is left out.
    promised: Vec<Tenths>,
}

impl Planned {
    /// What a plan says, short: whether it is still the one that was looked at.
    pub(super) fn mark(&self, plan: &CutPlan) -> String {
        let cuts = plan.cuts.iter();
        cuts.map(|cut| format!("{}x{}:{:?}", cut.times, self.job.stock()[cut.stock].length.0, cut.counts)).collect()
    }
}

async fn cuts(
    State(desk): State<Arc<DeskState>>,
    Query(fields): Query<Vec<(String, String)>>,
    headers: HeaderMap,
    Owner(seller): Owner,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let asked = Asked::read(fields);
    let (workshop, mistakes) = workshop(&desk, &loaded.catalog).await?;
    let lists = kept_lists(&desk).await?;
    let planned = match &workshop {
        Some(workshop) => planned(&desk, workshop, &asked).await?,
        None => None,
    };
    // A page that renews itself looks on and begins nothing.
    let planned = match planned {
        Some(planned) if asked.better && !headers.contains_key("x-has") => Some(planned.searched(&desk).await),
        planned => planned,
    };
    let main = html! {
        @match &workshop {
            Some(workshop) => (form(texts, workshop, &asked)),
            None => p { (say!(texts, "bench-no-recipes")) },
        }
        @if let Some(planned) = &planned { (list(texts, planned, &asked)) }
        (links_to(texts, &lists))
    };
    Ok(bench_page(&desk, texts, "/bench/cuts", mistakes.as_ref(), &main))
}

/// The plan for what was asked; none where nothing was.
pub(super) async fn planned(desk: &DeskState, workshop: &Workshop, asked: &Asked) -> Result<Option<Planned>, Refusal> {
    let refused = |said: Message| Refusal::Said(StatusCode::UNPROCESSABLE_ENTITY, said);
    let wanted = asked.wanted().map_err(refused)?;
    if wanted.is_empty() {
        return Ok(None);
    }
    let part = workshop.part(&asked.part).map_or_else(|| excerpt(&asked.part), |part| part.name.clone());
    let impossible = move || refused(message!("cuts-impossible", part = part));
    let lists: Vec<CutList> = kept_lists(desk).await?.into_iter().map(|kept| kept.page).collect();
    let (workshop, promised) = without_promised(workshop.clone(), &lists, &asked.part);
    let job = chains(&workshop, &asked.part, &wanted).map_err(|_| impossible())?.job;
    let planned = Planned { plan: quick_plan(&job), job, better: None, search: None, promised };
    let search = if asked.better { desk.cut_searches.of(&planned.job) } else { None };
    Ok(Some(planned.with(search)))
}

impl Planned {
    /// The same with what a search has found, or with how far it is.
    fn with(self, search: Option<Arc<CutSearch>>) -> Self {
        let Some(search) = search else { return self };
        match search.far().ended {
            Some(Some(better)) => Self { plan: better.plan.clone(), better: Some(better), search: None, ..self },
            Some(None) => self,
            None => Self { search: Some(search), ..self },
        }
    }

    /// Begins to look for a better plan, and waits a moment for it.
    async fn searched(self, desk: &Arc<DeskState>) -> Self {
        let pages = Arc::clone(desk);
        let search = desk.cut_searches.begin(&self.job, move || {
            pages.beat();
            !*pages.closing.borrow()
        });
        search.wait(AT_ONCE).await;
        self.with(Some(search))
    }
}

/// Ends a search; its best plan so far stands on the page then.
async fn stop(
    State(desk): State<Arc<DeskState>>,
    Owner(_): Owner,
    Form(fields): Form<Vec<(String, String)>>,
) -> Result<Response, Refusal> {
    let query = as_query(&fields);
    let asked = Asked::read(fields);
    let (workshop, _) = workshop(&desk, &desk.catalog.loaded().catalog).await?;
    let planned = match &workshop {
        Some(workshop) => planned(&desk, workshop, &asked).await?,
        None => None,
    };
    if let Some(search) = planned.and_then(|planned| planned.search) {
        search.stop();
        search.wait(STOPPED).await;
    }
    Ok(Redirect::to(&format!("/bench/cuts?{query}")).into_response())
}

/// The fields of a form as an address has them.
fn as_query(fields: &[(String, String)]) -> String {
    let each = fields.iter().map(|(name, value)| format!("{}={}", in_query(name), in_query(value)));
    each.collect::<Vec<_>>().join("&")
}

/// The fields that say what is asked.
fn asked_fields(asked: &Asked) -> Markup {
    html! {
        input type="hidden" name="part" value=(asked.part);
        @for (length, count) in &asked.lines {
            input type="hidden" name="length" value=(length);
            input type="hidden" name="count" value=(count);
        }
        @if asked.better { input type="hidden" name="better" value="1"; }
    }
}

/// How far a search is, with the way to stop it.
fn searching(texts: &Texts, asked: &Asked, search: &CutSearch) -> Markup {
    let percent = search.far().progress.filter(|far| far.at_least > 0.0);
    let percent = percent.map(|far| above(texts, (far.cost - far.at_least).max(0.0) / far.at_least));
    html! {
        form.card.no-print method="post" action="/bench/cuts/stop" {
            p role="status" {
                @match percent {
                    Some(percent) => (say!(texts, "cuts-searching-so-far", n = search.seconds(), percent = percent)),
                    None => (say!(texts, "cuts-searching", n = search.seconds())),
                }
            }
            (asked_fields(asked))
            button { (say!(texts, "cuts-stop")) }
        }
    }
}

/// The plan is kept as a list that is ticked off: the form says what was asked, and the plan is made again.
fn keep_form(asked: &Asked, texts: &Texts, planned: &Planned) -> Markup {
    html! {
        form.no-print method="post" action="/bench/cuts" {
            input type="hidden" name="form" value=(Uuid::now_v7());
            input type="hidden" name="seen" value=(planned.mark(&planned.plan));
            (asked_fields(asked))
            button.main { (say!(texts, "cuts-keep")) }
        }
    }
}

fn form(texts: &Texts, workshop: &Workshop, asked: &Asked) -> Markup {
    let cut = workshop.parts.iter().filter(|part| matches!(part.there, There::Spools { .. }));
    let usual = USUAL.iter().map(|length| ((*length).to_owned(), String::new()));
    let mut lines: Vec<(String, String)> = if asked.lines.is_empty() { usual.collect() } else { asked.lines.clone() };
    lines.resize(LINES, (String::new(), String::new()));
    html! {
        form.card.no-print method="get" action="/bench/cuts" {
            label {
                (say!(texts, "cuts-from"))
                select name="part" {
                    @for part in cut {
                        option value=(part.id) selected[part.id == asked.part] { (part.name) }
                    }
                }
            }
            @for (length, count) in &lines {
                div.row {
                    label { (say!(texts, "cuts-length")) input name="length" value=(length) size="6" autocomplete="off"; }
                    label {
                        (say!(texts, "cuts-count"))
                        input name="count" value=(count) size="4" inputmode="numeric" autocomplete="off";
                    }
                }
            }
            p.faint { (say!(texts, "cuts-hint")) }
            div.row.wraps {
                button { (say!(texts, "cuts-plan")) }
                button.quiet name="better" value="1" { (say!(texts, "cuts-better")) }
            }
        }
    }
}

fn list(texts: &Texts, planned: &Planned, asked: &Asked) -> Markup {
    let (job, plan) = (&planned.job, &planned.plan);
    let length = |tenths: Tenths| words::length(texts, Length::from_mm(tenths.mm()));
    let missing: Vec<String> = job
        .wanted()
        .iter()
        .zip(&plan.missing)
        .filter(|(_, n)| **n > 0)
        .map(|(one, n)| say!(texts, "cuts-times", n = *n, length = length(one.length)))
        .collect();
    html! {
        @if let Some(search) = &planned.search { (searching(texts, asked, search)) }
        section.card aria-label=(say!(texts, "cuts-list")) {
            h2 { (say!(texts, "cuts-list")) }
            @if !planned.promised.is_empty() {
                p { (say!(texts, "cuts-promised", n = planned.promised.len(), what = planned.promised.iter().copied().map(length).collect::<Vec<_>>().join(", "))) }
            }
            @if !missing.is_empty() { p.grave { (say!(texts, "cuts-missing", what = missing.join(", "))) } }
            ul.cuts {
                @for cut in &plan.cuts {
                    @for _ in 0..cut.times {
                        li {
                            strong { (say!(texts, "cuts-spool", length = length(job.stock()[cut.stock].length))) } " "
                            @for (one, n) in job.wanted().iter().zip(&cut.counts).filter(|(_, n)| **n > 0) {
                                span.line { (say!(texts, "cuts-times", n = *n, length = length(one.length))) }
                            }
                            span.faint {
                                @if cut.kept { (say!(texts, "cuts-stays", length = length(cut.left))) }
                                @else { (say!(texts, "cuts-lost", length = length(cut.left))) }
                            }
                        }
                    }
                }
            }
            p { (say!(texts, "cuts-sum", drawn = length(plan.drawn), lost = length(plan.lost))) }
            @if let Some(better) = &planned.better { p.faint { (how_good(texts, better)) } }
            (keep_form(asked, texts, planned))
        }
    }
}

/// What is known of better plans.
fn how_good(texts: &Texts, better: &BetterPlan) -> String {
    if better.proven {
        return say!(texts, "cuts-proven");
    }
    say!(texts, "cuts-gap", percent = above(texts, better.gap))
}

/// A share above the bound in percent, to tenths, never told smaller than it is.
fn above(texts: &Texts, gap: f64) -> String {
    texts.lang.number(Decimal::new((gap * 1000.0).ceil().clamp(1.0, 1e6) as i64, 1))
}
