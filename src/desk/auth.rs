//! The seller's PIN, sessions, and the codes by which others come in.

use std::{
    sync::{Arc, Mutex, PoisonError},
    time::{Duration, Instant},
};

use argon2::Argon2;
use axum::{
    extract::FromRequestParts,
    http::{HeaderMap, HeaderValue, StatusCode, header, request::Parts},
};
use jiff::{Timestamp, ToSpan};

use super::{
    back::Back,
    budgets::{Budgets, Guesser, Secret},
    error::{DeskError, Refusal},
    gate::Caller,
    server::House,
};
use crate::{
    disk::digest::{hex, sha256_hex},
    link::wire::PairRefusal,
};

/// Carries the session.
const SESSION: &str = "seller";
/// Carries the key by which a browser is known that was signed in before.
const BROWSER: &str = "browser";
const SESSION_LASTS: Duration = Duration::from_secs(24 * 3600);
/// Browsers keep no cookie longer than this (RFC 6265bis, from memory).
const BROWSER_LASTS: Duration = Duration::from_secs(400 * 24 * 3600);
const PAIR_CODE_LASTS: Duration = Duration::from_secs(600);

/// What the desk keeps in memory about who may enter.
pub(super) struct Auth {
    setup_code: String,
    pair_code: Mutex<Option<(String, Instant)>>,
    budgets: Budgets,
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

impl Auth {
    pub fn new() -> Result<Self, DeskError> {
        Ok(Self {
            setup_code: random_digits(8)?,
            pair_code: Mutex::new(None),
            budgets: Budgets::default(),
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

    /// Counts a try to guess `secret`; the seconds to wait where there were too many.
    pub fn guess(&self, secret: Secret, who: &Guesser) -> Result<(), u32> {
        self.budgets.guess(secret, who, Instant::now())
    }

    /// Who was right has all tries again.
    pub fn was_right(&self, secret: Secret, who: &Guesser) {
        self.budgets.was_right(secret, who);
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

/// Who types a PIN into a page; `None` for the machine itself, which always can.
pub(super) async fn guesser(house: &House, caller: &Caller, headers: &HeaderMap) -> Result<Option<Guesser>, Refusal> {
    if caller.is_here {
        return Ok(None);
    }
    let stranger = Guesser::at(caller.ip);
    let Some(hash) = browser_of(headers) else { return Ok(Some(stranger)) };
    let known = house.books.run(|ledger| ledger.browsers()).await?;
    let is_known = known.iter().any(|browser| browser.key_hash == hash);
    Ok(Some(if is_known { Guesser::Browser(hash) } else { stranger }))
}

/// A request of the signed-in seller.
pub(super) struct Seller {
    pub token_hash: String,
}

impl FromRequestParts<Arc<House>> for Seller {
    type Rejection = Refusal;
    async fn from_request_parts(parts: &mut Parts, house: &Arc<House>) -> Result<Self, Refusal> {
        let sign_in = || Refusal::SignIn(Back::of(parts));
        let token = cookie(&parts.headers, SESSION).ok_or_else(sign_in)?;
        let token_hash = sha256_hex(&token);
        let hash = token_hash.clone();
        let now = Timestamp::now();
        // A page that only keeps itself up to date is no sign of the seller.
        let by_hand = !parts.headers.contains_key("x-live");
        let known = house
            .books
            .run(move |ledger| {
                let Some(session) = ledger.session(&hash)? else { return Ok(false) };
                let used = session.1;
                let good = is_running(session, now);
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
        if known { Ok(Self { token_hash }) } else { Err(sign_in()) }
    }
}

/// Whether a session that began and was last used then goes on: 12 hours unused, 24 in all.
pub(super) fn is_running((began, used): (Timestamp, Timestamp), now: Timestamp) -> bool {
    used + 12.hours() > now && began + 24.hours() > now
}

fn cookie(headers: &HeaderMap, name: &str) -> Option<String> {
    let all = headers.get(header::COOKIE)?.to_str().ok()?;
    all.split(';').find_map(|one| one.trim().strip_prefix(name)?.strip_prefix('=').map(str::to_owned))
}

/// The hash of the session's token that a request carries, good or not.
pub(super) fn session_of(headers: &HeaderMap) -> Option<String> {
    cookie(headers, SESSION).map(|token| sha256_hex(&token))
}

/// The hash of the key by which a browser says that it was signed in before.
pub(super) fn browser_of(headers: &HeaderMap) -> Option<String> {
    cookie(headers, BROWSER).map(|key| sha256_hex(&key))
}

/// The cookie of a new session, or the one that ends it.
pub(super) fn session_cookie(token: Option<&str>) -> HeaderValue {
    set_cookie(SESSION, token.unwrap_or_default(), token.map_or(Duration::ZERO, |_| SESSION_LASTS))
}

/// The cookie by which a browser is known later.
pub(super) fn browser_cookie(key: &str) -> HeaderValue {
    set_cookie(BROWSER, key, BROWSER_LASTS)
}

fn set_cookie(name: &str, value: &str, lasts: Duration) -> HeaderValue {
    let text = format!("{name}={value}; HttpOnly; SameSite=Strict; Path=/; Max-Age={}", lasts.as_secs());
    // Keys are hexadecimal, so the text is always a header.
    HeaderValue::from_str(&text).unwrap_or(HeaderValue::from_static(""))
}
