//! Counting all trays on one page, by phone: what lies there against what should, and why it differs. Helpers count as well.

mod entries;
mod view;

use std::sync::Arc;

use axum::{
    Router,
    extract::State,
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use serde::Deserialize;
use uuid::Uuid;

use super::{
    frame::{Tab, page},
    typed::unless_empty,
};
use crate::{
    catalog::Catalog,
    craft::Home,
    desk::{approval::Posted, refusal::Refusal, seller::Seller, state::DeskState},
    lang::{Message, Texts, message, say},
    ledger::{CountLine, LedgerError, Reason},
    quoting::excerpt,
};
use entries::told;
use view::{Shown, Typed, whole};

/// The page's address.
const HERE: &str = "/trays/count";
/// Nobody counts more than this in one compartment.
const MOST: u32 = 9999;
/// Entries that are told at the end of the page.
const TOLD: usize = 40;
/// Before a part's id, the field for what lies there and the one for what was put in.
const COUNTED: &str = "n-";
const REFILLED: &str = "r-";

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/trays/count", get(count).post(keep))
        .route("/trays/count/reason", post(explain))
        .route("/trays/count/change", post(change))
}

async fn count(State(desk): State<Arc<DeskState>>, seller: Seller) -> Result<Response, Refusal> {
    count_page(&desk, seller.texts, &Typed::default(), None).await
}

/// The page with what was typed before and could not be entered, and why.
async fn count_page(
    desk: &DeskState,
    texts: &'static Texts,
    typed: &Typed,
    trouble: Option<&Message>,
) -> Result<Response, Refusal> {
    let (seen, counts, last, entries) = desk
        .ledger
        .run(|ledger, _| {
            Ok((ledger.change()?, ledger.counts()?, ledger.last_counts()?, ledger.counting_entries(TOLD)?))
        })
        .await?;
    let loaded = desk.catalog.loaded();
    let shown = Shown { texts, catalog: &loaded.catalog, seen, counts, last, now: desk.clock.now() };
    let title = say!(texts, "count-title");
    let main = whole(&shown, typed, &told(&shown, &entries), trouble);
    let status = if trouble.is_some() { StatusCode::BAD_REQUEST } else { StatusCode::OK };
    Ok((status, page(desk, texts, Tab::Trays, &title, &main)).into_response())
}

async fn keep(State(desk): State<Arc<DeskState>>, posted: Posted<Vec<(String, String)>>) -> Result<Response, Refusal> {
    let typed = Typed::read(&posted.form);
    let lines = match lines(&typed) {
        Ok(lines) => lines,
        Err(why) => return count_page(&desk, posted.seller.texts, &typed, Some(&why)).await,
    };
    let (Some(form), Some(seen)) = (typed.form, typed.seen) else {
        return Err(Refusal::wrong(message!("count-no-form")));
    };
    desk.ledger.enter_by(&posted.seller, move |ledger, now| ledger.count_parts(form, seen, &lines, now)).await?;
    Ok(Redirect::to(HERE).into_response())
}

/// What was typed, as counts. A field that was left empty was not counted.
fn lines(typed: &Typed) -> Result<Vec<CountLine>, Message> {
    let mut lines: Vec<CountLine> = Vec::new();
    for (name, value) in &typed.fields {
        let (part, is_count) = match (name.strip_prefix(COUNTED), name.strip_prefix(REFILLED)) {
            (Some(part), _) => (part, true),
            (_, Some(part)) => (part, false),
            _ => continue,
        };
        let number = unless_empty(value, |typed| typed.parse().ok().filter(|n: &u32| *n <= MOST).ok_or(()));
        let number = number.map_err(|()| message!("part-no-count", typed = excerpt(value), most = MOST))?;
        let Some(number) = number else { continue };
        let at = lines.iter().position(|line| line.part == part).unwrap_or_else(|| {
            lines.push(CountLine { part: part.to_owned(), counted: None, refilled: 0 });
            lines.len() - 1
        });
        if is_count {
            lines[at].counted = Some(number);
        } else {
            lines[at].refilled = number;
        }
    }
    Ok(lines)
}

/// A reason for what differs.
#[derive(Deserialize)]
struct Explained {
    #[serde(default)]
    form: Uuid,
    #[serde(default)]
    part: String,
    #[serde(default)]
    reason: String,
    #[serde(default)]
    many: String,
}

async fn explain(State(desk): State<Arc<DeskState>>, posted: Posted<Explained>) -> Result<Response, Refusal> {
    let said = &posted.form;
    let (Some(reason), Some(many)) = (Reason::from_code(&said.reason), number(&said.many)) else {
        let why = message!("part-no-count", typed = excerpt(&said.many), most = MOST);
        return count_page(&desk, posted.seller.texts, &Typed::default(), Some(&why)).await;
    };
    let (form, part) = (said.form, said.part.clone());
    let entered = move |ledger: &mut crate::ledger::Ledger, now| ledger.explain_count(form, &part, reason, many, now);
    desk.ledger.enter_by(&posted.seller, entered).await?;
    Ok(Redirect::to(HERE).into_response())
}

/// Something that became of parts while nobody counted.
#[derive(Deserialize)]
struct Changed {
    #[serde(default)]
    form: Uuid,
    #[serde(default)]
    home: String,
    #[serde(default)]
    what: String,
    #[serde(default)]
    many: String,
}

async fn change(State(desk): State<Arc<DeskState>>, posted: Posted<Changed>) -> Result<Response, Refusal> {
    let said = &posted.form;
    let loaded = desk.catalog.loaded();
    let texts = posted.seller.texts;
    let why = match (part_of(&loaded.catalog, texts, &said.home), number(&said.many)) {
        (None, _) => message!("count-no-home", found = excerpt(&said.home)),
        (_, None) => message!("part-no-count", typed = excerpt(&said.many), most = MOST),
        (Some(part), Some(many)) => {
            let (form, reason) = (said.form, Reason::from_code(&said.what));
            let entered = move |ledger: &mut crate::ledger::Ledger, now| -> Result<(), LedgerError> {
                match reason {
                    Some(reason) => ledger.change_stock(form, &part, reason, many, now),
                    None => ledger.stray_home(form, &part, many, now).map(drop),
                }
            };
            desk.ledger.enter_by(&posted.seller, entered).await?;
            return Ok(Redirect::to(HERE).into_response());
        }
    };
    count_page(&desk, texts, &Typed::default(), Some(&why)).await
}

fn number(typed: &str) -> Option<u32> {
    typed.trim().parse().ok().filter(|number| (1..=MOST).contains(number))
}

/// What lives in a compartment, or has this name or id.
fn part_of(catalog: &Catalog, texts: &Texts, typed: &str) -> Option<String> {
    let typed = typed.trim();
    if let Ok(home) = typed.to_uppercase().parse::<Home>() {
        return catalog.drops.iter().find(|kind| kind.home == home).map(|kind| kind.id.clone());
    }
    let drops = catalog.drops.iter().map(|kind| (&kind.id, &kind.name));
    let mut all = drops.chain(catalog.bases.iter().map(|base| (&base.id, &base.name)));
    let is_it = |(id, name): &(&String, &String)| {
        let called = catalog.called(texts.lang.code(), id, name).to_lowercase();
        [id.to_lowercase(), name.to_lowercase(), called].contains(&typed.to_lowercase())
    };
    all.find(is_it).map(|(id, _)| id.clone())
}
