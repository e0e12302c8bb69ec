//! Acts that need the seller, also where a helper holds the phone: the seller types the PIN there, for this one act.
//!
//! A handler takes [`Posted`] as its last argument, in place of `Seller` and `Form`, and asks for the seller where the act
//! needs them, always or only above a limit:
//!
//! ```text
//! async fn refund(State(desk): …, Path(id): …, posted: Posted<Refund>) -> Result<Response, Refusal> {
//!     let seller = posted.by_the_seller(&desk, message!("act-take-back")).await?;
//!     let form = posted.form;
//!     desk.ledger.enter_by(&seller, move |ledger, now| …).await
//! }
//! ```
//!
//! For the seller that is all. A helper gets a page (403) that repeats the form's fields unseen and asks for the seller's PIN,
//! posting to the same address. With the right PIN the act is entered as "Mia, approved by the seller", and the phone stays
//! Mia's. What is refused after a PIN came is led away from (`answers`). Wrong ones count for the helper, wherever they are signed in. `posted.seller` is who sent the form, for acts that
//! need nobody else; what the act is called begins its sentence: "Giving money back is the seller's to do."

use std::sync::Arc;

use axum::{
    Form, RequestExt,
    body::{Body, Bytes},
    extract::{FromRequest, FromRequestParts, Request},
    http::{HeaderValue, StatusCode, header},
    response::{IntoResponse, Response},
};
use serde::{Deserialize, de::DeserializeOwned};

use super::{
    answers::PinCame,
    check_pin::check_pin,
    connections::Caller,
    guess_budgets::Guesser,
    refusal::{Refusal, SellerAsked},
    return_page::ReturnPage,
    seller::Seller,
    state::DeskState,
};
use crate::{
    lang::Message,
    ledger::{Role, SELLER},
};

/// The field with the seller's PIN.
pub(super) const SELLER_PIN: &str = "seller_pin";
/// The field with the page that the form stood on before the seller was asked.
pub(super) const STOOD_ON: &str = "stood_on";

/// A form that says everything by its address.
#[derive(Deserialize)]
pub(super) struct NoFields {}

/// A form that somebody at the desk has sent.
pub(super) struct Posted<T> {
    /// Who sent it.
    pub seller: Seller,
    pub form: T,
    caller: Caller,
    /// Where it was sent, and every field but the seller's PIN.
    action: String,
    fields: Vec<(String, String)>,
    seller_pin: Option<String>,
    back: ReturnPage,
}

impl<T: DeserializeOwned + 'static> FromRequest<Arc<DeskState>> for Posted<T> {
    type Rejection = Response;

    async fn from_request(request: Request, desk: &Arc<DeskState>) -> Result<Self, Response> {
        let (mut parts, body) = request.into_parts();
        let seller = Seller::from_request_parts(&mut parts, desk).await.map_err(IntoResponse::into_response)?;
        let caller = Caller::from_request_parts(&mut parts, desk).await.map_err(IntoResponse::into_response)?;
        let body: Bytes =
            Request::from_parts(parts.clone(), body).extract().await.map_err(IntoResponse::into_response)?;
        if body.is_empty() {
            // Whoever sends no fields need not say in which form they are.
            let form = HeaderValue::from_static("application/x-www-form-urlencoded");
            parts.headers.insert(header::CONTENT_TYPE, form);
        }
        let again = || Request::from_parts(parts.clone(), Body::from(body.clone()));
        let Form(mut fields): Form<Vec<(String, String)>> =
            again().extract().await.map_err(IntoResponse::into_response)?;
        let Form(form) = again().extract().await.map_err(IntoResponse::into_response)?;
        let seller_pin = fields.iter().find(|(name, _)| name == SELLER_PIN).map(|(_, pin)| pin.clone());
        let stood_on = fields.iter().find(|(name, _)| name == STOOD_ON).map(|(_, page)| ReturnPage::to(page));
        let back = stood_on.unwrap_or_else(|| ReturnPage::of(&parts));
        fields.retain(|(name, _)| ![SELLER_PIN, STOOD_ON].contains(&name.as_str()));
        if let (Some(_), Some(came)) = (&seller_pin, parts.extensions.get::<PinCame>()) {
            came.with(back.page());
        }
        let action = parts.uri.path_and_query().map_or_else(|| parts.uri.path().to_owned(), ToString::to_string);
        Ok(Self { seller, form, caller, action, fields, seller_pin, back })
    }
}

impl<T> Posted<T> {
    /// Who the act is entered under: the seller, or a helper of whom the seller approves with their PIN.
    pub(super) async fn by_the_seller(&self, desk: &DeskState, what: Message) -> Result<Seller, Refusal> {
        if self.seller.role == Role::Seller {
            return Ok(self.seller.clone());
        }
        let helper = self.seller.name().to_owned();
        let ask = |status, trouble| {
            let asked = SellerAsked {
                what: what.clone(),
                helper: helper.clone(),
                action: self.action.clone(),
                fields: self.fields.clone(),
                back: self.back.page().to_owned(),
                trouble,
            };
            Refusal::AskSeller(status, Box::new(asked))
        };
        let Some(pin) = self.seller_pin.clone() else { return Err(ask(StatusCode::FORBIDDEN, None)) };
        let guesser = Guesser::Helper(helper.clone());
        match check_pin(desk, &self.caller, Some(&guesser), Some(SELLER), pin).await? {
            Ok(()) => Ok(self.seller.approved()),
            Err((status, why)) => Err(ask(status, Some(why))),
        }
    }
}
