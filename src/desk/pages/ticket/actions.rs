//! What the seller does with a ticket: one address for every act, all by plain forms.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::{Path, State},
    http::StatusCode,
    response::{IntoResponse, Redirect, Response},
    routing::{get, post},
};
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;
use uuid::Uuid;

use super::view::{with, with_trouble};
use crate::{
    caution::CautionCode,
    craft::{Home, Length, PIECE_LENGTHS_MM, Wearer},
    desk::{
        pages::{
            confirm::{Question, ask},
            frame::{Tab, page},
            words,
        },
        refusal::{Refusal, status_of},
        seller::Seller,
        state::DeskState,
    },
    lang::{Texts, message, say},
    ledger::{Charge, Ledger, LedgerError, Part, Ticket},
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

/// Does something to ticket `id` and leads back to the place on its page; what the ledger refuses stands on that page.
pub(super) async fn act(
    desk: &DeskState,
    seller: &Seller,
    id: Uuid,
    place: &str,
    work: impl FnOnce(&mut Ledger, Timestamp) -> Result<Ticket, LedgerError> + Send + 'static,
) -> Result<Response, Refusal> {
    match desk.ledger.enter_by(seller, work).await {
        Ok(_) => Ok(Redirect::to(&format!("/tickets/{id}{place}")).into_response()),
        Err(Refusal::Ledger(error)) => refused(desk, seller.texts, id, error).await,
        Err(refusal) => Err(refusal),
    }
}

/// What the ledger refuses stands on the ticket's page, unless the disk is at fault.
async fn refused(desk: &DeskState, texts: &'static Texts, id: Uuid, error: LedgerError) -> Result<Response, Refusal> {
    if status_of(&error) != StatusCode::CONFLICT {
        return Err(error.into());
    }
    let words = words::trouble(texts, &error, &desk.catalog.loaded().catalog);
    Ok((StatusCode::CONFLICT, with_trouble(desk, texts, id, &words).await?).into_response())
}

async fn call(State(desk): State<Arc<DeskState>>, seller: Seller, Path(id): Path<Uuid>) -> Result<Response, Refusal> {
    act(&desk, &seller, id, "", move |ledger, now| ledger.call(id, now)).await
}

#[derive(Deserialize)]
struct Tick {
    part: String,
    on: u8,
    #[serde(default)]
    found: u8,
}

async fn tick(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<Tick>,
) -> Result<Response, Refusal> {
    let (part, place) = match form.part.as_str() {
        "base" => (Part::Base, "#base".to_owned()),
        at => match at.parse() {
            Ok(at) => (Part::Line(at), format!("#line-{at}")),
            Err(_) => {
                return Err(Refusal::wrong(message!("refused-part", found = quoted(at))));
            }
        },
    };
    let (on, found) = (form.on == 1, form.found == 1);
    act(&desk, &seller, id, &place, move |ledger, now| ledger.tick(id, part, on, found, now)).await
}

async fn all_here(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
) -> Result<Response, Refusal> {
    act(&desk, &seller, id, "#till", move |ledger, now| ledger.tick_all(id, now)).await
}

#[derive(Deserialize)]
struct OneMore {
    home: String,
    #[serde(default)]
    found: u8,
}

async fn add(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<OneMore>,
) -> Result<Response, Refusal> {
    let (texts, loaded) = (seller.texts, desk.catalog.loaded());
    let home = form.home.trim().to_ascii_uppercase().parse::<Home>().ok();
    let Some(kind) = home.and_then(|home| loaded.catalog.drop_at(home)) else {
        let typed: String = form.home.chars().take(20).collect();
        let words = say!(texts, "change-no-home", typed = typed);
        return Ok((StatusCode::BAD_REQUEST, with_trouble(&desk, texts, id, &words).await?).into_response());
    };
    let (kind, found, of) = (kind.id.clone(), form.found == 1, Arc::clone(&loaded));
    let done = desk.ledger.enter_by(&seller, {
        let kind = kind.clone();
        move |ledger, now| ledger.add_drop(id, &kind, found, &of.catalog, now)
    });
    match done.await {
        Ok(_) => Ok(Redirect::to(&format!("/tickets/{id}#add")).into_response()),
        Err(Refusal::Ledger(LedgerError::NoneLeft(_))) => {
            let name = words::part_name(texts, &loaded.catalog, &kind);
            let question = is_it_here(texts, id, &form.home, &name);
            Ok((StatusCode::CONFLICT, with(&desk, texts, id, Some(&question)).await?).into_response())
        }
        Err(Refusal::Ledger(error)) => refused(&desk, texts, id, error).await,
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

async fn base(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<OtherBase>,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    act(&desk, &seller, id, "#base", move |ledger, now| ledger.set_base(id, &form.base, &loaded.catalog, now)).await
}

#[derive(Deserialize)]
struct NewLength {
    mm: Option<f64>,
    to: Option<f64>,
}

async fn length(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<NewLength>,
) -> Result<Response, Refusal> {
    let Some(mm) = form.to.or(form.mm).filter(|mm| PIECE_LENGTHS_MM.contains(mm)) else {
        let (least, most) = (PIECE_LENGTHS_MM.start(), PIECE_LENGTHS_MM.end());
        return Err(Refusal::wrong(message!("refused-length", least = least.to_string(), most = most.to_string())));
    };
    let loaded = desk.catalog.loaded();
    act(&desk, &seller, id, "#length", move |ledger, now| {
        ledger.set_length(id, Length::from_mm(mm), &loaded.catalog, now)
    })
    .await
}

#[derive(Deserialize)]
struct NewWearer {
    wearer: String,
}

async fn wearer(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<NewWearer>,
) -> Result<Response, Refusal> {
    let Some(wearer) = Wearer::from_code(&form.wearer) else {
        let codes = Wearer::ANSWERS.map(Wearer::code).join(", ");
        return Err(Refusal::wrong(message!("refused-wearer", found = quoted(&form.wearer), codes = codes)));
    };
    let loaded = desk.catalog.loaded();
    act(&desk, &seller, id, "#wearer", move |ledger, now| ledger.set_wearer(id, wearer, &loaded.catalog, now)).await
}

#[derive(Deserialize)]
struct Line {
    line: usize,
}

async fn remove(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<Line>,
) -> Result<Response, Refusal> {
    let loaded = desk.catalog.loaded();
    act(&desk, &seller, id, "", move |ledger, now| ledger.remove(id, form.line, &loaded.catalog, now)).await
}

#[derive(Deserialize)]
struct Told {
    told: u8,
}

async fn told(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<Told>,
) -> Result<Response, Refusal> {
    act(&desk, &seller, id, "#told", move |ledger, now| ledger.set_told(id, form.told == 1, now)).await
}

#[derive(Deserialize)]
struct Confirm {
    code: CautionCode,
    on: u8,
}

async fn confirm(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<Confirm>,
) -> Result<Response, Refusal> {
    let (code, on) = (form.code, form.on == 1);
    act(&desk, &seller, id, "#told", move |ledger, now| ledger.confirm_hazard(id, code, on, now)).await
}

#[derive(Deserialize)]
struct ConfirmSum {
    charge: String,
}

async fn confirm_sum(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
    Form(form): Form<ConfirmSum>,
) -> Result<Response, Refusal> {
    let charge = match form.charge.as_str() {
        "seen" => Charge::AsSeen,
        "today" => Charge::Today,
        other => return Err(Refusal::wrong(message!("refused-charge", found = quoted(other)))),
    };
    let loaded = desk.catalog.loaded();
    act(&desk, &seller, id, "#till", move |ledger, now| ledger.confirm_sum(id, charge, &loaded.catalog, now)).await
}

async fn hand_over(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Path(id): Path<Uuid>,
) -> Result<Response, Refusal> {
    act(&desk, &seller, id, "#till", move |ledger, now| ledger.hand_over(id, now)).await
}

async fn ask_let_go(
    State(desk): State<Arc<DeskState>>,
    Seller { texts, .. }: Seller,
    Path(id): Path<Uuid>,
) -> Result<Response, Refusal> {
    let ticket = desk.ledger.look(move |ledger| ledger.ticket(id)).await?;
    let main = ask(&Question {
        texts,
        title: say!(texts, "let-go-ask", number = ticket.number.to_string()),
        text: say!(texts, "let-go-text"),
        action: format!("/tickets/{id}/let-go"),
        yes: say!(texts, "let-go-yes"),
        field: None,
        back: format!("/tickets/{id}"),
    });
    Ok(page(&desk, texts, Tab::Tickets, &say!(texts, "let-go-title"), &main).into_response())
}

async fn let_go(State(desk): State<Arc<DeskState>>, seller: Seller, Path(id): Path<Uuid>) -> Result<Response, Refusal> {
    act(&desk, &seller, id, "", move |ledger, now| ledger.let_go(id, now)).await
}
