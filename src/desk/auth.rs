//! The seller's PIN, sessions, and the codes by which others come in.

use std::{
    collections::HashMap,
    net::IpAddr,
    sync::{Arc, Mutex, PoisonError},
    time::{Duration, Instant},
};

use argon2::Argon2;
use axum::{
    extract::FromRequestParts,
    http::{HeaderMap, HeaderValue, StatusCode, header, request::Parts},
};
use jiff::{Timestamp, ToSpan};
use sha2::{Digest, Sha256};

use super::{
    error::{DeskError, Refusal},
    server::House,
};
use crate::{catalog::hex, link::wire::PairRefusal};

const COOKIE: &str = "seller";
/// Tries in a minute from one address and from all together.
const TRIES_PER_ADDRESS: usize = 5;
const TRIES_IN_ALL: usize = 20;
const PAIR_CODE_LASTS: Duration = Duration::from_secs(600);
const WINDOW: Duration = Duration::from_secs(60);

/// What the desk keeps in memory about who may enter.
pub(super) struct Auth {
    setup_code: String,
    pair_code: Mutex<Option<(String, Instant)>>,
    tries: Mutex<HashMap<IpAddr, Vec<Instant>>>,
    // One slow hash at a time: they take memory and a core each.
    hashing: tokio::sync::Mutex<()>,
}

/// A random number of `digits` digits, as text.
fn random_digits(digits: u32) -> Result<String, DeskError> {
    let mut bytes = [0; 8];
    getrandom::fill(&mut bytes).map_err(|error| DeskError::System(error.to_string()))?;
    let number = u64::from_le_bytes(bytes) % 10u64.pow(digits);
    Ok(format!("{number:0width$}", width = digits as usize))
}

/// 32 random bytes in hexadecimal.
pub(super) fn random_key() -> Result<String, DeskError> {
    let mut bytes = [0; 32];
    getrandom::fill(&mut bytes).map_err(|error| DeskError::System(error.to_string()))?;
    Ok(hex(&bytes))
}

/// Keys and tokens are kept only as this.
pub(super) fn sha256_hex(text: &str) -> String {
    hex(&Sha256::digest(text.as_bytes()))
}

impl Auth {
    pub fn new() -> Result<Self, DeskError> {
        Ok(Self {
            setup_code: random_digits(8)?,
            pair_code: Mutex::new(None),
            tries: Mutex::default(),
            hashing: tokio::sync::Mutex::default(),
        })
    }

    /// The code by which the PIN can be set from another machine, for as long as there is none.
    pub fn setup_code(&self) -> &str {
        &self.setup_code
    }

    /// A new pairing code; an earlier one is worth nothing any more.
    pub fn new_pair_code(&self) -> Result<String, DeskError> {
        let code = random_digits(6)?;
        *self.pair_code.lock().unwrap_or_else(PoisonError::into_inner) = Some((code.clone(), Instant::now()));
        Ok(code)
    }

    /// The pairing code that is good now, and for how many more whole minutes.
    pub fn pair_code(&self) -> Option<(String, u64)> {
        let code = self.pair_code.lock().unwrap_or_else(PoisonError::into_inner);
        let (code, since) = code.as_ref()?;
        let left = PAIR_CODE_LASTS.checked_sub(since.elapsed())?;
        Some((code.clone(), left.as_secs().div_ceil(60)))
    }

    /// Uses the pairing code up, if it is this one and not older than ten minutes.
    pub fn take_pair_code(&self, typed: &str) -> Result<(), PairRefusal> {
        let plain: String = typed.chars().filter(|c| !c.is_whitespace()).collect();
        let mut code = self.pair_code.lock().unwrap_or_else(PoisonError::into_inner);
        match &*code {
            Some((now, since)) if since.elapsed() < PAIR_CODE_LASTS => {
                if *now != plain {
                    return Err(PairRefusal::WrongCode);
                }
                *code = None;
                Ok(())
            }
            _ => Err(PairRefusal::NoCode),
        }
    }

    /// Counts a try; the seconds to wait where there were too many.
    pub fn try_again(&self, from: IpAddr) -> Result<(), u32> {
        let now = Instant::now();
        let mut tries = self.tries.lock().unwrap_or_else(PoisonError::into_inner);
        tries.values_mut().for_each(|times| times.retain(|time| now - *time < WINDOW));
        tries.retain(|_, times| !times.is_empty());
        let all: usize = tries.values().map(Vec::len).sum();
        let mine = tries.entry(from).or_default();
        if mine.len() >= TRIES_PER_ADDRESS || all >= TRIES_IN_ALL {
            let oldest = mine.first().copied().unwrap_or(now);
            return Err((WINDOW.saturating_sub(now - oldest)).as_secs() as u32 + 1);
        }
        mine.push(now);
        Ok(())
    }

    /// A right PIN wipes the tries of its address.
    pub fn was_right(&self, from: IpAddr) {
        self.tries.lock().unwrap_or_else(PoisonError::into_inner).remove(&from);
    }

    /// The PIN as it is kept: salt and Argon2id hash in hexadecimal.
    pub async fn hash_pin(&self, pin: String) -> Result<String, Refusal> {
        let salt = random_key().map_err(|error| Refusal::bad(error.to_string()))?[..32].to_owned();
        self.hashed(pin, salt).await
    }

    /// Whether `pin` is the one kept as `kept`.
    pub async fn is_pin(&self, pin: String, kept: &str) -> Result<bool, Refusal> {
        let salt = kept.split(':').next().unwrap_or_default().to_owned();
        Ok(self.hashed(pin, salt).await? == kept)
    }

    async fn hashed(&self, pin: String, salt: String) -> Result<String, Refusal> {
        let _one_at_a_time = self.hashing.lock().await;
        let work = tokio::task::spawn_blocking(move || {
            let mut hash = [0; 32];
            // The library's defaults are Argon2id with 19 MiB and two passes.
            Argon2::default()
                .hash_password_into(pin.as_bytes(), salt.as_bytes(), &mut hash)
                .map(|()| format!("{salt}:{}", hex(&hash)))
        });
        match work.await {
            Ok(Ok(kept)) => Ok(kept),
            _ => Err(Refusal::Request(StatusCode::INTERNAL_SERVER_ERROR, "the PIN could not be checked".into())),
        }
    }
}

/// What may stand as a PIN.
pub(super) fn is_pin_shape(pin: &str) -> bool {
    (6..=12).contains(&pin.len()) && pin.bytes().all(|b| b.is_ascii_digit())
}

/// A request of the signed-in seller.
pub(super) struct Seller {
    pub token_hash: String,
}

impl FromRequestParts<Arc<House>> for Seller {
    type Rejection = Refusal;
    async fn from_request_parts(parts: &mut Parts, house: &Arc<House>) -> Result<Self, Refusal> {
        let token = cookie(&parts.headers).ok_or(Refusal::SignIn)?;
        let token_hash = sha256_hex(&token);
        let hash = token_hash.clone();
        let now = Timestamp::now();
        // A page that only keeps itself up to date is no sign of the seller.
        let by_hand = !parts.headers.contains_key("x-live");
        let known = house
            .books
            .run(move |ledger| {
                let Some((began, used)) = ledger.session(&hash)? else { return Ok(false) };
                let good = used + 12.hours() > now && began + 24.hours() > now;
                // Once a minute is enough; every write waits for the disk.
                if good
                    && by_hand
                    && used + 1.minute() < now
                    && let Err(error) = ledger.use_session(&hash, now)
                {
                    // Also with a full disk the seller reads on.
                    tracing::warn!("the seller's visit could not be noted: {error}");
                }
                Ok(good)
            })
            .await?;
        if known { Ok(Self { token_hash }) } else { Err(Refusal::SignIn) }
    }
}

fn cookie(headers: &HeaderMap) -> Option<String> {
    let all = headers.get(header::COOKIE)?.to_str().ok()?;
    all.split(';').find_map(|one| one.trim().strip_prefix(COOKIE)?.strip_prefix('=').map(str::to_owned))
}

/// The cookie of a new session, or the one that ends it.
pub(super) fn set_cookie(token: Option<&str>) -> HeaderValue {
    let text = match token {
        Some(token) => format!("{COOKIE}={token}; HttpOnly; SameSite=Strict; Path=/; Max-Age=86400"),
        None => format!("{COOKIE}=; HttpOnly; SameSite=Strict; Path=/; Max-Age=0"),
    };
    // The token is hexadecimal, so the text is always a header.
    HeaderValue::from_str(&text).unwrap_or(HeaderValue::from_static(""))
}
