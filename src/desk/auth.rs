//! The secrets by which somebody comes in: PINs, the setup code and the pairing code, with a limit to guessing.

use std::{
    sync::{Mutex, PoisonError},
    time::{Duration, Instant},
};

use argon2::Argon2;
use axum::http::StatusCode;

use super::{
    error::DeskError,
    guess_budgets::{GuessBudgets, Guesser, Secret},
    pin_rules::fault_of,
    refusal::Refusal,
    signed_in::Seller,
};
use crate::{disk::digest::hex, lang::message, ledger::Role, link::wire::PairRefusal};

const PAIR_CODE_LASTS: Duration = Duration::from_secs(600);

/// What the desk keeps in memory about who may enter.
pub(super) struct Auth {
    setup_code: String,
    pair_code: Mutex<Option<PairCode>>,
    budgets: GuessBudgets,
    // One slow hash at a time: they take memory and a core each.
    hashing: tokio::sync::Mutex<()>,
}

/// A code that pairs one tablet.
struct PairCode {
    digits: String,
    since: Instant,
    /// The name of who asked for it.
    whose: String,
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
    pub(super) fn new() -> Result<Self, DeskError> {
        Ok(Self {
            setup_code: random_digits(8)?,
            pair_code: Mutex::new(None),
            budgets: GuessBudgets::default(),
            hashing: tokio::sync::Mutex::default(),
        })
    }

    /// The code by which the PIN can be set from another machine, for as long as there is none.
    pub(super) fn setup_code(&self) -> &str {
        &self.setup_code
    }

    /// A PIN for somebody, as hard to guess as one that is chosen well.
    pub(super) fn new_pin(&self) -> Result<String, DeskError> {
        loop {
            let pin = random_digits(6)?;
            if fault_of(&pin).is_none() {
                return Ok(pin);
            }
        }
    }

    /// A new pairing code for the person called `whose`; an earlier one is worth nothing any more.
    pub(super) fn new_pair_code(&self, whose: &str) -> Result<(), DeskError> {
        let code = PairCode { digits: random_digits(6)?, since: Instant::now(), whose: whose.to_owned() };
        *self.pair_code.lock().unwrap_or_else(PoisonError::into_inner) = Some(code);
        Ok(())
    }

    /// The pairing code that is good now, and for how many more whole minutes. The seller sees every one, a helper the one
    /// that the seller let them ask for.
    pub(super) fn pair_code(&self, seller: &Seller) -> Option<(String, u64)> {
        let code = self.pair_code.lock().unwrap_or_else(PoisonError::into_inner);
        let code = code.as_ref().filter(|code| seller.role == Role::Seller || code.whose == seller.name())?;
        let left = PAIR_CODE_LASTS.checked_sub(code.since.elapsed())?;
        Some((code.digits.clone(), left.as_secs().div_ceil(60)))
    }

    /// Uses the pairing code up, if it is this one and not older than ten minutes.
    pub(super) fn take_pair_code(&self, typed: &str) -> Result<(), PairRefusal> {
        let plain: String = typed.chars().filter(|c| !c.is_whitespace()).collect();
        let mut code = self.pair_code.lock().unwrap_or_else(PoisonError::into_inner);
        match &*code {
            Some(now) if now.since.elapsed() < PAIR_CODE_LASTS => {
                if now.digits != plain {
                    return Err(PairRefusal::WrongCode);
                }
                *code = None;
                Ok(())
            }
            _ => Err(PairRefusal::NoCode),
        }
    }

    /// Counts a try to guess `secret`; the seconds to wait where there were too many.
    pub(super) fn guess(&self, secret: &Secret, who: &Guesser) -> Result<(), u32> {
        self.budgets.guess(secret, who, Instant::now())
    }

    /// Who was right has the tries at this secret again.
    pub(super) fn was_right(&self, secret: &Secret, who: &Guesser) {
        self.budgets.was_right(secret, who);
    }

    /// The PIN as it is kept: salt and Argon2id hash in hexadecimal.
    pub(super) async fn hash_pin(&self, pin: String) -> Result<String, Refusal> {
        let salt = random_key()?[..32].to_owned();
        self.hashed(pin, salt).await
    }

    /// Whether `pin` is the one kept as `kept`.
    pub(super) async fn is_pin(&self, pin: String, kept: &str) -> Result<bool, Refusal> {
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
            _ => Err(Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("refused-pin-not-checked"))),
        }
    }
}
