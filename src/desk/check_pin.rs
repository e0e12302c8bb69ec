//! Checking a PIN that somebody types: their own, or the seller's.

use axum::http::StatusCode;

use super::{
    connections::Caller,
    guess_budgets::{Guesser, Secret},
    pin_rules::has_shape,
    refusal::Refusal,
    state::DeskState,
};
use crate::{
    lang::{Message, message},
    ledger::SELLER,
};

/// Stands where nobody has the name that was typed: no PIN has this hash, and looking takes as long.
const NOBODYS: &str = "00000000000000000000000000000000:";

/// Whether the seller has chosen a PIN.
pub(super) async fn has_pin(desk: &DeskState) -> Result<bool, Refusal> {
    Ok(desk.ledger.run(|ledger, _| ledger.pin_of(SELLER)).await?.is_some())
}

/// Whether `pin` is that of `who`; else the status and what whoever typed it is told. Nobody's PIN is never right.
///
/// `guesser` is whose tries this counts among, and `None` for the machine itself, which can always.
pub(super) async fn check_pin(
    desk: &DeskState,
    caller: &Caller,
    guesser: Option<&Guesser>,
    who: Option<&str>,
    pin: String,
) -> Result<Result<(), (StatusCode, Message)>, Refusal> {
    let secret = Secret::Pin(who.unwrap_or_default().to_owned());
    if let Some(Err(seconds)) = guesser.map(|guesser| desk.auth.guess(&secret, guesser)) {
        return Ok(Err((StatusCode::TOO_MANY_REQUESTS, too_many(seconds))));
    }
    let kept = match who.map(str::to_owned) {
        Some(who) => desk.ledger.run(move |ledger, _| ledger.pin_of(&who)).await?,
        None => None,
    };
    if !has_shape(&pin) || !desk.auth.is_pin(pin, kept.as_deref().unwrap_or(NOBODYS)).await? {
        desk.alarms.note("a wrong PIN", caller.ip, "");
        return Ok(Err((StatusCode::FORBIDDEN, message!("pin-not-right"))));
    }
    if let Some(guesser) = guesser {
        desk.auth.was_right(&secret, guesser);
    }
    Ok(Ok(()))
}

/// What whoever guesses too often is told.
pub(super) fn too_many(seconds: u32) -> Message {
    message!("pin-too-many", n = seconds)
}
