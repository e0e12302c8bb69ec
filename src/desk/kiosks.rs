//! What kiosks ask.

use std::{
    net::SocketAddr,
    sync::{Arc, PoisonError},
    time::{Duration, Instant},
};

use axum::{
    Json, Router,
    extract::{ConnectInfo, FromRequestParts, Path, Query, State},
    http::{HeaderMap, StatusCode, header, request::Parts},
    response::{IntoResponse, Response},
    routing::{get, post},
};
use jiff::Timestamp;
use serde::Deserialize;

use super::{
    auth::{random_key, sha256_hex},
    error::{DeskError, Refusal},
    gallery::content_type,
    server::House,
};
use crate::{
    ledger::{Ledger, Receipt},
    link::{
        Pairing, PinAnswer,
        wire::{CatalogContent, Delivery, DeliveryAnswer, DeskNews, PairRequest, PinQuestion},
    },
};

/// A question for news waits this long for some.
const NEWS_WAIT: Duration = Duration::from_secs(10);

pub(super) fn routes() -> Router<Arc<House>> {
    Router::new()
        .route("/link/pair", post(pair_by_code))
        .route("/link/news", get(news))
        .route("/link/picture/{name}", get(picture))
        .route("/link/tickets", post(deliver))
        .route("/link/pin", post(ask_pin))
}

/// A new kiosk's digit and key.
pub(super) fn pair(ledger: &mut Ledger, now: Timestamp) -> Result<(u8, String), DeskError> {
    let key = random_key()?;
    let digit = ledger.pair_kiosk(&sha256_hex(&key), now)?;
    Ok((digit, key))
}

/// A request of a paired kiosk.
struct Kiosk {
    digit: u8,
}

impl FromRequestParts<Arc<House>> for Kiosk {
    type Rejection = StatusCode;
    async fn from_request_parts(parts: &mut Parts, house: &Arc<House>) -> Result<Self, StatusCode> {
        let value = parts.headers.get(header::AUTHORIZATION).and_then(|value| value.to_str().ok());
        let key = value.and_then(|value| value.strip_prefix("Bearer ")).ok_or(StatusCode::UNAUTHORIZED)?;
        let hash = sha256_hex(key);
        match house.books.peek(move |ledger| ledger.kiosk_by_key(&hash)).await {
            Ok(Some(digit)) => {
                let mut heard = house.heard.lock().unwrap_or_else(PoisonError::into_inner);
                if let Some(heard) = heard.get_mut(usize::from(digit)) {
                    *heard = Some(Instant::now());
                }
                Ok(Self { digit })
            }
            Ok(None) => Err(StatusCode::UNAUTHORIZED),
            Err(_) => Err(StatusCode::SERVICE_UNAVAILABLE),
        }
    }
}

async fn pair_by_code(
    State(house): State<Arc<House>>,
    ConnectInfo(from): ConnectInfo<SocketAddr>,
    headers: HeaderMap,
    Json(request): Json<PairRequest>,
) -> Result<Json<Pairing>, Refusal> {
    let refused = |words: &str| Refusal::Request(StatusCode::FORBIDDEN, words.to_owned());
    house.auth.try_again(from.ip()).map_err(|_| refused("too many tries; wait a minute"))?;
    if !house.auth.take_pair_code(&request.code) {
        return Err(refused("this is not the code on the desk's Kiosks page"));
    }
    house.auth.was_right(from.ip());
    let paired = house.books.run(|ledger| Ok(pair(ledger, Timestamp::now()))).await?;
    let (digit, key) = paired.map_err(|error| refused(&error.to_string()))?;
    // The address by which the kiosk reached the desk is one that works from there.
    let host = headers.get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or_default();
    Ok(Json(Pairing { desk: format!("http://{host}"), key, digit }))
}

#[derive(Deserialize)]
struct Have {
    have: i64,
    #[serde(default)]
    revision: String,
}

async fn news(
    State(house): State<Arc<House>>,
    kiosk: Kiosk,
    Query(known): Query<Have>,
) -> Result<Json<DeskNews>, Refusal> {
    let mut changes = house.books.changes();
    let mut closing = house.closing.clone();
    // Another catalogue is news whatever the number of the last change says.
    let other_catalogue = house.shelf.loaded().revision != known.revision;
    tokio::select! {
        () = std::future::ready(()), if other_catalogue => {}
        _ = changes.wait_for(|change| *change > known.have) => {}
        _ = tokio::time::sleep(NEWS_WAIT) => {}
        _ = closing.wait_for(|closed| *closed) => {}
    }
    let loaded = house.shelf.loaded();
    let digit = kiosk.digit;
    let mut news = house
        .books
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
            })
        })
        .await?;
    if loaded.revision != known.revision {
        let pictures = loaded.pictures.iter().map(|(name, picture)| (name.clone(), picture.sha256.clone())).collect();
        news.content = Some(CatalogContent { catalog: (*loaded.catalog).clone(), pictures });
    }
    news.revision.clone_from(&loaded.revision);
    Ok(Json(news))
}

async fn picture(State(house): State<Arc<House>>, _kiosk: Kiosk, Path(name): Path<String>) -> Response {
    match house.shelf.loaded().pictures.get(&name) {
        Some(picture) => ([(header::CONTENT_TYPE, content_type(&name))], picture.bytes.to_vec()).into_response(),
        None => StatusCode::NOT_FOUND.into_response(),
    }
}

async fn deliver(
    State(house): State<Arc<House>>,
    kiosk: Kiosk,
    Json(delivery): Json<Delivery>,
) -> Result<Json<DeliveryAnswer>, Refusal> {
    if delivery.ticket.number.kiosk() != kiosk.digit {
        return Ok(Json(DeliveryAnswer::Refused { reason: "the number is another kiosk's".into() }));
    }
    let loaded = house.shelf.loaded();
    let receipt = house
        .books
        .enter(move |ledger| {
            ledger.receive(&delivery.ticket, delivery.refuse_if_short, &loaded.catalog, Timestamp::now())
        })
        .await?;
    Ok(Json(match receipt {
        Receipt::Stored { short } => DeliveryAnswer::Stored { short },
        Receipt::Short { parts } => DeliveryAnswer::Short { parts },
        Receipt::Refused { reason } => DeliveryAnswer::Refused { reason },
    }))
}

async fn ask_pin(
    State(house): State<Arc<House>>,
    ConnectInfo(from): ConnectInfo<SocketAddr>,
    _kiosk: Kiosk,
    Json(question): Json<PinQuestion>,
) -> Result<Json<PinAnswer>, Refusal> {
    let Some(kept) = house.books.run(|ledger| ledger.setting("pin")).await? else {
        return Ok(Json(PinAnswer::NotSet));
    };
    if let Err(seconds) = house.auth.try_again(from.ip()) {
        return Ok(Json(PinAnswer::Wait { seconds }));
    }
    if house.auth.is_pin(question.pin, &kept).await? {
        house.auth.was_right(from.ip());
        return Ok(Json(PinAnswer::Right));
    }
    Ok(Json(PinAnswer::Wrong))
}
