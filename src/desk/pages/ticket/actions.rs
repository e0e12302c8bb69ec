//! What the seller does with a ticket: one address for every act, all by plain forms.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect},
    routing::{get, post},
};
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;
use uuid::Uuid;

use super::{
    together::is_by_another,
    view::{with, with_changes, with_trouble},
};
use crate::{
    caution::CautionCode,
    craft::{Home, Length, PIECE_LENGTHS_MM, Wearer},
    desk::{
        approval::Posted,
        pages::{
            confirm::{Question, ask},
            frame::{Tab, page},
            on::{Answered, On},
            words,
        },
        refusal::{Refusal, status_of},
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::{Charge, Event, Ledger, LedgerError, Part, Ticket},
    quoting::quoted,
};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/tickets/{id}/call", post(call))
        .route("/tickets/{id}/tick", post(tick))
        .route("/tickets/{id}/all-here", post(all_here))
        .route("/tickets/{id}/add", post(add))
        .route("/tickets/{id}/base", post(base))
        .route("/tickets/{id}/length", post(length))
        .route("/tickets/{id}/wearer", post(wearer))
        .route("/tickets/{id}/remove", post(remove))
        .route("/tickets/{id}/told", post(told))
        .route("/tickets/{id}/confirm", post(confirm))
        .route("/tickets/{id}/sum", post(confirm_sum))
        .route("/tickets/{id}/hand-over", post(hand_over))
        .route("/tickets/{id}/let-go", get(ask_let_go).post(let_go))
}

/// Does something to ticket `id` and leads back to the place on its page; what the ledger refuses stands on that page. Where
/// somebody else has changed the ticket since it was looked at, nothing is done, and the page says what has changed.
pub(super) async fn act(
    on: &On,
    place: &str,
    work: impl FnOnce(&mut Ledger, Uuid, Timestamp) -> Result<Ticket, LedgerError> + Send + 'static,
) -> Answered {
    act_beside(on, place, |_| false, work).await
}

/// The same for what may be done beside some changes of others.
async fn act_beside(
    on: &On,
    place: &str,
    beside: impl Fn(&Event) -> bool + Send + 'static,
    work: impl FnOnce(&mut Ledger, Uuid, Timestamp) -> Result<Ticket, LedgerError> + Send + 'static,
) -> Answered {
    let id = on.id;
    match entered(on, beside, work).await {
        Ok(None) => Ok(Redirect::to(&format!("/tickets/{id}{place}")).into_response()),
        Ok(Some(since)) => with_changes(on, since).await,
        Err(Refusal::Ledger(error)) => refused(on, error).await,
        Err(refusal) => Err(refusal),
    }
}

/// Does something to the ticket, unless somebody else has changed it since it was looked at: then gives the last entry that
/// was seen.
async fn entered(
    on: &On,
    beside: impl Fn(&Event) -> bool + Send + 'static,
    work: impl FnOnce(&mut Ledger, Uuid, Timestamp) -> Result<Ticket, LedgerError> + Send + 'static,
) -> Result<Option<i64>, Refusal> {
    let (id, company) = (on.id, &on.desk.company);
    let (seen, own) = (company.seen(id, &on.seller), company.own(id, &on.seller));
    let done = on.desk.ledger.enter_by(&on.seller, move |ledger, now| {
        let before = ledger.history_since(id, seen.unwrap_or(i64::MAX))?;
        let is_in_the_way = before.iter().any(|event| is_by_another(event, &own) && !beside(event));
        if let Some(seen) = seen.filter(|_| is_in_the_way) {
            return Ok(Err(seen));
        }
        let last = ledger.change()?;
        work(ledger, id, now)?;
        Ok(Ok(last + 1..=ledger.change()?))
    });
    match done.await? {
        Ok(entries) => {
            company.wrote(id, &on.seller, entries);
            Ok(None)
        }
        Err(seen) => Ok(Some(seen)),
    }
}

/// What the ledger refuses stands on the ticket's page, unless the disk is at fault.
async fn refused(on: &On, error: LedgerError) -> Answered {
    if status_of(&error) != StatusCode::CONFLICT {
        return Err(error.into());
    }
    let words = words::trouble(on.texts(), &error, &on.desk.catalog.loaded().catalog);
    with_trouble(on, StatusCode::CONFLICT, &words).await
}

async fn call(on: On) -> Answered {
    act(&on, "", move |ledger, id, now| ledger.call(id, now)).await
}

#[derive(Deserialize)]
struct Tick {
    part: String,
    on: u8,
    #[serde(default)]
    found: u8,
}

async fn tick(on: On, Form(form): Form<Tick>) -> Answered {
    let (part, place) = match form.part.as_str() {
        "base" => (Part::Base, "#base".to_owned()),
        at => match at.parse() {
            Ok(at) => (Part::Line(at), format!("#line-{at}")),
            Err(_) => {
                return Err(Refusal::wrong(message!("refused-part", found = quoted(at))));
            }
        },
    };
    let (is_here, found) = (form.on == 1, form.found == 1);
    act_beside(
        &on,
        &place,
        move |event| goes_with_tick(event, part, is_here),
        move |ledger, id, now| ledger.tick(id, part, is_here, found, now),
    )
    .await
}

/// Two who check a piece together tick different parts of it, or say the same of one.
fn goes_with_tick(event: &Event, part: Part, is_here: bool) -> bool {
    let other_part = || serde_json::from_value::<(Part, bool)>(event.body.clone()).is_ok_and(|(of, _)| of != part);
    match event.kind.as_str() {
        "ticked" => is_here || other_part(),
        "unticked" => !is_here || other_part(),
        "all_ticked" => is_here,
        _ => false,
    }
}

async fn all_here(on: On) -> Answered {
    let beside = |event: &Event| matches!(event.kind.as_str(), "ticked" | "all_ticked");
    act_beside(&on, "#till", beside, move |ledger, id, now| ledger.tick_all(id, now)).await
}

#[derive(Deserialize)]
struct OneMore {
    home: String,
    #[serde(default)]
    found: u8,
}

async fn add(on: On, Form(form): Form<OneMore>) -> Answered {
    let (texts, loaded) = (on.texts(), on.desk.catalog.loaded());
    let home = form.home.trim().to_ascii_uppercase().parse::<Home>().ok();
    let Some(kind) = home.and_then(|home| loaded.catalog.drop_at(home)) else {
        let typed: String = form.home.chars().take(20).collect();
        let words = say!(texts, "change-no-home", typed = typed);
        return with_trouble(&on, StatusCode::BAD_REQUEST, &words).await;
    };
    let (kind, found, of) = (kind.id.clone(), form.found == 1, Arc::clone(&loaded));
    let added = kind.clone();
    let add = move |ledger: &mut Ledger, id, now: Timestamp| ledger.add_drop(id, &added, found, &of.catalog, now);
    match entered(&on, |_| false, add).await {
        Ok(None) => Ok(Redirect::to(&format!("/tickets/{}#add", on.id)).into_response()),
        Ok(Some(since)) => with_changes(&on, since).await,
        Err(Refusal::Ledger(LedgerError::NoneLeft(_))) => {
            let name = words::part_name(texts, &loaded.catalog, &kind);
            let question = is_it_here(texts, on.id, &form.home, &name);
            Ok((StatusCode::CONFLICT, with(&on, |_| Some(question)).await?).into_response())
        }
        Err(Refusal::Ledger(error)) => refused(&on, error).await,
        Err(refusal) => Err(refusal),
    }
}

/// The count says that none is left; the seller may have one in the hand all the same.
fn is_it_here(texts: &Texts, id: Uuid, home: &str, name: &str) -> Markup {
    html! {
        form.trouble method="post" action={ "/tickets/" (id) "/add" } role="alert" {
            p { (say!(texts, "change-none-left", name = name)) }
            input type="hidden" name="home" value=(home.trim());
            button name="found" value="1" { (say!(texts, "change-here")) }
        }
    }
}

#[derive(Deserialize)]
struct OtherBase {
    base: String,
}

async fn base(on: On, Form(form): Form<OtherBase>) -> Answered {
    let loaded = on.desk.catalog.loaded();
    act(&on, "#base", move |ledger, id, now| ledger.set_base(id, &form.base, &loaded.catalog, now)).await
}

#[derive(Deserialize)]
struct NewLength {
    mm: Option<f64>,
    to: Option<f64>,
}

async fn length(on: On, Form(form): Form<NewLength>) -> Answered {
    let Some(mm) = form.to.or(form.mm).filter(|mm| PIECE_LENGTHS_MM.contains(mm)) else {
        let (least, most) = (PIECE_LENGTHS_MM.start(), PIECE_LENGTHS_MM.end());
        return Err(Refusal::wrong(message!("refused-length", least = least.to_string(), most = most.to_string())));
    };
    let loaded = on.desk.catalog.loaded();
    act(&on, "#length", move |ledger, id, now| ledger.set_length(id, Length::from_mm(mm), &loaded.catalog, now)).await
}

#[derive(Deserialize)]
struct NewWearer {
    wearer: String,
}

async fn wearer(on: On, Form(form): Form<NewWearer>) -> Answered {
    let Some(wearer) = Wearer::from_code(&form.wearer) else {
        let codes = Wearer::ANSWERS.map(Wearer::code).join(", ");
        return Err(Refusal::wrong(message!("refused-wearer", found = quoted(&form.wearer), codes = codes)));
    };
    let loaded = on.desk.catalog.loaded();
    act(&on, "#wearer", move |ledger, id, now| ledger.set_wearer(id, wearer, &loaded.catalog, now)).await
}

#[derive(Deserialize)]
struct Line {
    line: usize,
}

async fn remove(on: On, Form(form): Form<Line>) -> Answered {
    let loaded = on.desk.catalog.loaded();
    act(&on, "", move |ledger, id, now| ledger.remove(id, form.line, &loaded.catalog, now)).await
}

#[derive(Deserialize)]
struct Told {
    told: u8,
}

async fn told(on: On, Form(form): Form<Told>) -> Answered {
    act(&on, "#told", move |ledger, id, now| ledger.set_told(id, form.told == 1, now)).await
}

#[derive(Deserialize)]
struct Confirm {
    code: CautionCode,
    on: u8,
}

async fn confirm(on: On, Form(form): Form<Confirm>) -> Answered {
    let (code, is_confirmed) = (form.code, form.on == 1);
    act(&on, "#told", move |ledger, id, now| ledger.confirm_hazard(id, code, is_confirmed, now)).await
}

#[derive(Deserialize)]
struct ConfirmSum {
    charge: String,
}

async fn confirm_sum(State(desk): State<Arc<DeskState>>, Path(id): Path<Uuid>, posted: Posted<ConfirmSum>) -> Answered {
    let (charge, seller) = match posted.form.charge.as_str() {
        // Whoever says that a sum of no list is charged sets a price.
        "seen" => (Charge::AsSeen, posted.by_the_seller(&desk, message!("act-other-sum")).await?),
        "today" => (Charge::Today, posted.seller.clone()),
        other => return Err(Refusal::wrong(message!("refused-charge", found = quoted(other)))),
    };
    let loaded = desk.catalog.loaded();
    act(&On { desk, seller, id }, "#till", move |ledger, id, now| ledger.confirm_sum(id, charge, &loaded.catalog, now))
        .await
}

async fn hand_over(on: On) -> Answered {
    act(&on, "#till", move |ledger, id, now| ledger.hand_over(id, now)).await
}

async fn ask_let_go(on: On) -> Answered {
    let (id, texts) = (on.id, on.texts());
    let ticket = on.desk.ledger.look(move |ledger| ledger.ticket(id)).await?;
    let main = ask(&Question {
        texts,
        title: say!(texts, "let-go-ask", number = ticket.number.to_string()),
        text: say!(texts, "let-go-text"),
        action: format!("/tickets/{id}/let-go"),
        yes: say!(texts, "let-go-yes"),
        field: None,
        back: format!("/tickets/{id}"),
    });
    Ok(page(&on.desk, texts, Tab::Tickets, &say!(texts, "let-go-title"), &main).into_response())
}

async fn let_go(on: On) -> Answered {
    act(&on, "", move |ledger, id, now| ledger.let_go(id, now)).await
}
