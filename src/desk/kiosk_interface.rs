//! What kiosks ask.

use std::{sync::Arc, time::Duration};

use axum::{
    Json, Router,
    extract::{FromRequestParts, Path, Query, State},
    http::{HeaderMap, StatusCode, header, request::Parts},
    response::{IntoResponse, Response},
    routing::{get, post},
};
use jiff::Timestamp;
use serde::Deserialize;

use super::{
    auth::random_key,
    connections::Caller,
    error::DeskError,
    gallery::{content_type, whole},
    guess_budgets::{Guesser, Secret},
    refusal::Refusal,
    state::DeskState,
    tablets::Wish,
};
use crate::{
    catalog::Catalog,
    disk::digest::sha256_hex,
    lang::{Message, message},
    ledger::{Ledger, LedgerError, SELLER},
    link::{
        Pairing, PinAnswer,
        wire::{
            CatalogContent, Delivery, DeskNews, KioskReport, PairRefusal, PairRequest, PieceToThread, PinQuestion,
            WaitingNews,
        },
    },
    quoting::excerpt,
    ticket::{NotTaken, Receipt, SentTicket, TicketNumber},
    waiting::{Line, minutes_shown},
};

/// A question for news waits this long for some.
const NEWS_WAIT: Duration = Duration::from_secs(10);

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .route("/link/pair", post(pair_by_code))
        .route("/link/news", get(news))
        .route("/link/picture/{name}", get(picture))
        .route("/link/tickets", post(deliver))
        .route("/link/report", post(report))
        .route("/link/take-in", post(take_in))
        .route("/link/pin", post(ask_pin))
        .route("/link/piece/{number}", get(piece_to_thread))
}

/// A kiosk's digit and key: its own, where it made one, or a new one; `before` is the key that it had, if it had one.
pub(super) fn pair(
    ledger: &mut Ledger,
    own: Option<String>,
    before: Option<&str>,
    now: Timestamp,
) -> Result<(u8, String), DeskError> {
    let key = own.map_or_else(random_key, Ok)?;
    let before = before.map(sha256_hex);
    let digit = ledger.pair_kiosk(&sha256_hex(&key), before.as_deref(), now)?;
    Ok((digit, key))
}

fn key_of(headers: &HeaderMap) -> Option<&str> {
    headers.get(header::AUTHORIZATION)?.to_str().ok()?.strip_prefix("Bearer ")
}

/// A request of a paired kiosk.
struct Kiosk {
    digit: u8,
}

impl FromRequestParts<Arc<DeskState>> for Kiosk {
    type Rejection = Refusal;
    async fn from_request_parts(parts: &mut Parts, desk: &Arc<DeskState>) -> Result<Self, Refusal> {
        let unknown = || Refusal::Said(StatusCode::UNAUTHORIZED, message!("refused-tablet-unknown"));
        let hash = sha256_hex(key_of(&parts.headers).ok_or_else(unknown)?);
        match desk.ledger.peek(move |ledger| ledger.kiosk_by_key(&hash)).await {
            Ok(Some(digit)) => {
                desk.tablets.heard(digit);
                Ok(Self { digit })
            }
            Ok(None) => {
                if let Ok(caller) = Caller::from_request_parts(parts, desk).await {
                    desk.alarms.note("an unknown key", caller.ip, "");
                }
                Err(unknown())
            }
            // It is the desk that can't look now; the key may be good.
            Err(_) => Err(Refusal::Said(StatusCode::SERVICE_UNAVAILABLE, message!("refused-tablets-not-looked-up"))),
        }
    }
}

async fn pair_by_code(
    State(desk): State<Arc<DeskState>>,
    caller: Caller,
    headers: HeaderMap,
    Json(request): Json<PairRequest>,
) -> Response {
    if request.key.as_deref().is_some_and(|key| !is_key(key)) {
        return Refusal::wrong(message!("refused-own-key")).into_response();
    }
    match pair_with(&desk, &caller, &headers, request).await {
        Ok(pairing) => Json(pairing).into_response(),
        Err(refusal) => (StatusCode::FORBIDDEN, Json(refusal)).into_response(),
    }
}

/// Whether a kiosk may have made this key: as long, and so as hard to guess, as one of the desk's.
fn is_key(key: &str) -> bool {
    key.len() == 64 && key.bytes().all(|byte| byte.is_ascii_hexdigit())
}

async fn pair_with(
    desk: &DeskState,
    caller: &Caller,
    headers: &HeaderMap,
    request: PairRequest,
) -> Result<Pairing, PairRefusal> {
    // The address by which the kiosk reached the desk is one that works from there.
    let host = headers.get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or_default();
    let paired_as = |key: String, digit: u8| Pairing { desk: format!("http://{host}"), key, digit };
    if let Some(key) = &request.key {
        let hash = sha256_hex(key);
        let known = desk.ledger.peek(move |ledger| ledger.kiosk_by_key(&hash)).await;
        // It is paired and has not heard the answer. The code was used up then; the key says more than another.
        if let Some(digit) = known.map_err(|_| PairRefusal::DeskFailed)? {
            return Ok(paired_as(key.clone(), digit));
        }
    }
    let who = Guesser::at(caller.ip);
    desk.auth.guess(&Secret::PairCode, &who).map_err(|seconds| PairRefusal::Wait { seconds })?;
    desk.auth.take_pair_code(&request.code).inspect_err(|_| desk.alarms.note("a wrong pairing code", caller.ip, ""))?;
    let before = key_of(headers).map(str::to_owned);
    let paired = desk.ledger.run(move |ledger, now| Ok(pair(ledger, request.key, before.as_deref(), now))).await;
    let (digit, key) = match paired {
        Ok(Ok(paired)) => paired,
        Ok(Err(DeskError::Ledger(LedgerError::NineKiosks))) => return Err(PairRefusal::NoDigit),
        Ok(Err(error)) => {
            tracing::error!("no kiosk could be paired: {error}");
            return Err(PairRefusal::DeskFailed);
        }
        Err(_) => return Err(PairRefusal::DeskFailed),
    };
    desk.auth.was_right(&Secret::PairCode, &who);
    desk.tablets.forget(digit);
    Ok(paired_as(key, digit))
}

/// The piece of a ticket that somebody threads with the tablet's help: its number is known to whoever has it, and nothing but
/// the piece is told.
async fn piece_to_thread(
    State(desk): State<Arc<DeskState>>,
    _kiosk: Kiosk,
    Path(number): Path<String>,
) -> Result<Json<PieceToThread>, Refusal> {
    let number: TicketNumber = number.parse().map_err(|_| Refusal::wrong(message!("refused-number")))?;
    let found = desk.ledger.look(move |ledger| ledger.ticket_to_thread(number)).await?;
    let ticket = found.ok_or_else(|| Refusal::Said(StatusCode::NOT_FOUND, message!("refused-no-number")))?;
    Ok(Json(PieceToThread { piece: ticket.piece }))
}

#[derive(Deserialize)]
struct Have {
    have: i64,
    #[serde(default)]
    revision: String,
    /// Whether the tablet practises; one of an earlier version does not know what that is.
    practice: Option<bool>,
}

async fn news(
    State(desk): State<Arc<DeskState>>,
    kiosk: Kiosk,
    Query(known): Query<Have>,
) -> Result<Json<DeskNews>, Refusal> {
    let mut changes = desk.ledger.changes();
    let mut closing = desk.closing.clone();
    let mut asked = desk.tablets.asked();
    // Another catalogue is news whatever the number of the last change says.
    let other_catalogue = desk.catalog.loaded().revision != known.revision;
    let other_sort = known.practice.is_some_and(|practice| practice != desk.practice.is_on());
    tokio::select! {
        () = std::future::ready(()), if other_catalogue || other_sort || desk.tablets.has_wishes(kiosk.digit) => {}
        _ = asked.changed() => {}
        _ = changes.wait_for(|change| *change > known.have) => {}
        _ = tokio::time::sleep(NEWS_WAIT) => {}
        _ = closing.wait_for(|closed| *closed) => {}
    }
    let _as_it_is = desk.practice.as_it_is().await;
    let practice = desk.practice.is_on();
    if practice && known.practice.is_none() {
        // It would send what is real.
        return Err(waits(message!("refused-practice-old-tablet")));
    }
    let loaded = desk.catalog.loaded();
    let digit = kiosk.digit;
    let now = desk.clock.now().as_millisecond();
    let mut news = desk
        .ledger
        .look(move |ledger| {
            let show = ledger.show()?.id;
            let counts = ledger.counts()?;
            Ok(DeskNews {
                change: ledger.change()?,
                show,
                next_sequence: ledger.next_sequence(show, digit)?,
                revision: String::new(),
                available: counts.into_iter().map(|(id, count)| (id, count.free())).collect(),
                content: None,
                wanted: vec![],
                put_away: vec![],
                practice,
                waiting: waiting_at(&ledger.waiting()?, now),
            })
        })
        .await?;
    if loaded.revision != known.revision {
        let pictures = loaded.pictures.iter().map(|(name, picture)| (name.clone(), picture.sha256.clone())).collect();
        news.content = Some(CatalogContent { catalog: (*loaded.catalog).clone(), pictures });
    }
    news.revision.clone_from(&loaded.revision);
    if !practice {
        news.wanted = desk.tablets.wishes(digit, Wish::TakeIn);
        news.put_away = desk.tablets.wishes(digit, Wish::PutAway);
    }
    Ok(Json(news))
}

/// Who is called to a seat, and how long a guest waits who takes a number now.
pub(super) async fn waiting_news(desk: &DeskState) -> Result<WaitingNews, Refusal> {
    let line = desk.ledger.look(|ledger| ledger.waiting()).await?;
    Ok(waiting_at(&line, desk.clock.now().as_millisecond()))
}

/// What guests are told of the line at a moment, in milliseconds since 1970.
fn waiting_at(line: &Line, now_ms: i64) -> WaitingNews {
    let ahead = line.waiting().len();
    WaitingNews {
        seats: line.seats(),
        free: line.free(),
        called: line.called().to_vec(),
        waiting: ahead,
        minutes: (line.seats() > 0).then(|| minutes_shown(line.wait(ahead, now_ms))),
    }
}

/// Why a tablet has to wait.
const fn waits(why: Message) -> Refusal {
    Refusal::Said(StatusCode::SERVICE_UNAVAILABLE, why)
}

async fn picture(
    State(desk): State<Arc<DeskState>>,
    _kiosk: Kiosk,
    Path(name): Path<String>,
) -> Result<Response, Refusal> {
    let picture = desk.catalog.loaded().pictures.get(&name).cloned();
    let bytes = match &picture {
        Some(picture) => whole(picture).await,
        None => None,
    };
    match bytes {
        Some(bytes) => Ok(([(header::CONTENT_TYPE, content_type(&name))], bytes).into_response()),
        None => Err(Refusal::Said(StatusCode::NOT_FOUND, message!("refused-no-picture", name = excerpt(&name)))),
    }
}

async fn deliver(
    State(desk): State<Arc<DeskState>>,
    kiosk: Kiosk,
    Json(delivery): Json<Delivery>,
) -> Result<Json<Receipt>, Refusal> {
    if delivery.ticket.number.kiosk() != kiosk.digit {
        return Ok(Json(Receipt::refused(NotTaken::OtherDigit)));
    }
    match (delivery.ticket.practice, desk.practice.is_on()) {
        // Neither is ever entered among the others: the one counts for nothing, the other waits on its tablet.
        (true, false) => return Ok(Json(Receipt::Practice)),
        (false, true) => return Err(waits(message!("refused-practice-waits"))),
        _ => {}
    }
    let loaded = desk.catalog.loaded();
    let receipt = desk
        .ledger
        .enter(move |ledger, now| ledger.receive(&delivery.ticket, delivery.refuse_if_short, &loaded.catalog, now))
        .await?;
    Ok(Json(receipt))
}

async fn report(State(desk): State<Arc<DeskState>>, kiosk: Kiosk, Json(report): Json<KioskReport>) -> Json<()> {
    if desk.tablets.reported(kiosk.digit, report) {
        desk.beat();
    }
    Json(())
}

/// Takes a ticket in that was refused before, since the seller wants it.
async fn take_in(
    State(desk): State<Arc<DeskState>>,
    kiosk: Kiosk,
    Json(sent): Json<SentTicket>,
) -> Result<Json<Receipt>, Refusal> {
    if desk.practice.is_on() {
        return Err(waits(message!("refused-practice-waits")));
    }
    let (digit, id, before) = (kiosk.digit, sent.id, sent.number);
    if !desk.tablets.wishes(digit, Wish::TakeIn).contains(&id) {
        return Ok(Json(Receipt::refused(NotTaken::NotAsked)));
    }
    let loaded = desk.catalog.loaded();
    let (receipt, number) =
        desk.ledger.run(move |ledger, now| enter_late(ledger, sent, digit, &loaded.catalog, now)).await?;
    let renumbered = number.filter(|number| *number != before).map(|number| (before, number));
    desk.tablets.answered(digit, id, renumbered);
    desk.beat();
    Ok(Json(receipt))
}

/// Enters a ticket of another desk, another show or another tablet in the running show. It keeps the guest's number where
/// nobody else can have that, and gets the next of kiosk `digit` where somebody can.
fn enter_late(
    ledger: &mut Ledger,
    mut sent: SentTicket,
    digit: u8,
    catalog: &Catalog,
    now: Timestamp,
) -> Result<(Receipt, Option<TicketNumber>), LedgerError> {
    match ledger.ticket(sent.id) {
        // The answer to an earlier delivery was lost.
        Ok(known) => return Ok((Receipt::Stored { short: vec![] }, Some(known.number))),
        Err(LedgerError::NoTicket(_)) => {}
        Err(error) => return Err(error),
    }
    sent.show = ledger.show()?.id;
    let of = sent.number.kiosk();
    let is_anothers = of != digit && ledger.kiosks()?.iter().any(|other| other.digit == of);
    if is_anothers || ledger.tickets_numbered(sent.number)?.iter().any(|other| other.show == sent.show) {
        sent.number = TicketNumber::new(digit, ledger.next_sequence(sent.show, digit)?)?;
    }
    let receipt = ledger.receive(&sent, false, catalog, now)?;
    Ok((receipt, Some(sent.number)))
}

async fn ask_pin(
    State(desk): State<Arc<DeskState>>,
    caller: Caller,
    kiosk: Kiosk,
    Json(question): Json<PinQuestion>,
) -> Result<Json<PinAnswer>, Refusal> {
    // A tablet's settings are the seller's: no helper's PIN opens them.
    let who = Guesser::Tablet(kiosk.digit);
    let Some(kept) = desk.ledger.run(|ledger, _| ledger.pin_of(SELLER)).await? else {
        // Whoever finds the tablet before the seller has chosen a PIN must not get at its settings.
        if let Err(seconds) = desk.auth.guess(&Secret::SetupCode, &who) {
            return Ok(Json(PinAnswer::Wait { seconds }));
        }
        if question.pin.trim() == desk.auth.setup_code() {
            desk.auth.was_right(&Secret::SetupCode, &who);
            return Ok(Json(PinAnswer::SetupCode));
        }
        desk.alarms.note("a wrong setup code at a tablet", caller.ip, "");
        return Ok(Json(PinAnswer::NotSet));
    };
    if let Err(seconds) = desk.auth.guess(&Secret::sellers_pin(), &who) {
        return Ok(Json(PinAnswer::Wait { seconds }));
    }
    if desk.auth.is_pin(question.pin, &kept).await? {
        desk.auth.was_right(&Secret::sellers_pin(), &who);
        return Ok(Json(PinAnswer::Right));
    }
    desk.alarms.note("a wrong PIN at a tablet", caller.ip, "");
    Ok(Json(PinAnswer::Wrong))
}
