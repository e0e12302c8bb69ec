//! Who is at the desk: the signed-in one by the session, and who types a PIN by where they are.

use std::sync::Arc;

use axum::{
    extract::FromRequestParts,
    http::{HeaderMap, StatusCode, request::Parts},
};
use jiff::{Timestamp, ToSpan};

use super::{
    connections::Caller,
    cookies::{browser_of, session_of},
    guess_budgets::Guesser,
    language::InLanguage,
    refusal::Refusal,
    return_page::ReturnPage,
    state::DeskState,
};
use crate::{
    lang::message,
    ledger::{Role, Session},
};

pub(super) use super::signed_in::Seller;

/// In this header a page says which entry was the last that it shows of its ticket.
const SEEN: &str = "x-seen";

/// Who types a PIN into a page; `None` for the machine itself, which always can.
pub(super) async fn guesser(
    desk: &DeskState,
    caller: &Caller,
    headers: &HeaderMap,
) -> Result<Option<Guesser>, Refusal> {
    if caller.is_here {
        return Ok(None);
    }
    let stranger = Guesser::at(caller.ip);
    let Some(hash) = browser_of(headers) else { return Ok(Some(stranger)) };
    let known = desk.ledger.run(|ledger, _| ledger.browsers()).await?;
    let is_known = known.iter().any(|browser| browser.key_hash == hash);
    Ok(Some(if is_known { Guesser::Browser(hash) } else { stranger }))
}

/// A request of the seller in person. A helper is told that this is not theirs.
pub(super) struct Owner(pub Seller);

impl FromRequestParts<Arc<DeskState>> for Owner {
    type Rejection = Refusal;
    async fn from_request_parts(parts: &mut Parts, desk: &Arc<DeskState>) -> Result<Self, Refusal> {
        let seller = Seller::from_request_parts(parts, desk).await?;
        match seller.role {
            Role::Seller => Ok(Self(seller)),
            Role::Helper => {
                Err(Refusal::Said(StatusCode::FORBIDDEN, message!("refused-sellers", name = seller.name())))
            }
        }
    }
}

impl FromRequestParts<Arc<DeskState>> for Seller {
    type Rejection = Refusal;
    async fn from_request_parts(parts: &mut Parts, desk: &Arc<DeskState>) -> Result<Self, Refusal> {
        let sign_in = || Refusal::SignIn(ReturnPage::of(parts));
        let token_hash = session_of(&parts.headers).ok_or_else(sign_in)?;
        let hash = token_hash.clone();
        let now = desk.clock.now();
        // Only looked at, so that twenty pages that renew themselves keep no send waiting.
        let session = desk.ledger.peek(move |ledger| ledger.session(&hash)).await?;
        let Some(session) = session.filter(|session| is_running(session, now)) else { return Err(sign_in()) };
        // A page that only keeps itself up to date is no sign of the seller.
        let by_hand = !parts.headers.contains_key("x-live");
        // Once a minute is enough; every write waits for the disk.
        if by_hand && session.used + 1.minute() < now {
            let hash = token_hash.clone();
            if let Err(refusal) = desk.ledger.run(move |ledger, now| ledger.use_session(&hash, now)).await {
                // Also with a full disk the seller reads on.
                tracing::warn!("the seller's visit could not be noted: {refusal:?}");
            }
        }
        let is_here = Caller::from_request_parts(parts, desk).await?.is_here;
        let InLanguage(texts) = InLanguage::of(&parts.headers);
        let seen = parts.headers.get(SEEN).and_then(|seen| seen.to_str().ok()?.parse().ok());
        Ok(Self { token_hash, who: Some(session.who), role: session.role, texts, is_here, seen })
    }
}

/// Whether a session that began and was last used then goes on: 12 hours unused, 24 in all.
pub(super) fn is_running(session: &Session, now: Timestamp) -> bool {
    session.used + 12.hours() > now && session.began + 24.hours() > now
}
