//! In which language a request is answered: the one that was chosen in this browser, else the first that it asks for.

use std::convert::Infallible;

use axum::{
    Form, Router,
    extract::FromRequestParts,
    http::{HeaderMap, header, request::Parts},
    response::{IntoResponse, Redirect, Response},
    routing::post,
};
use serde::Deserialize;

use super::{
    cookies::{language_cookie, language_of},
    refusal::Refusal,
    return_page::ReturnPage,
};
use crate::lang::{Lang, Texts, message};

/// The texts in which a request is answered.
#[derive(Clone, Copy)]
pub(super) struct InLanguage(pub &'static Texts);

impl InLanguage {
    pub(super) fn of(headers: &HeaderMap) -> Self {
        let chosen = language_of(headers).and_then(|code| Lang::from_code(&code));
        let asked_for = || Lang::asked_for(headers.get(header::ACCEPT_LANGUAGE)?.to_str().ok()?);
        Self(Texts::of(chosen.or_else(asked_for).unwrap_or_default()))
    }
}

impl<S: Send + Sync> FromRequestParts<S> for InLanguage {
    type Rejection = Infallible;
    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        Ok(Self::of(&parts.headers))
    }
}

pub(super) fn routes<S: Clone + Send + Sync + 'static>() -> Router<S> {
    Router::new().route("/language", post(choose))
}

#[derive(Deserialize)]
struct Chosen {
    language: String,
}

/// Leads back to the page on which it was chosen.
async fn choose(led: ReturnPage, Form(chosen): Form<Chosen>) -> Result<Response, Refusal> {
    let lang = Lang::from_code(&chosen.language).ok_or_else(|| Refusal::wrong(message!("refused-language")))?;
    let mut response = Redirect::to(led.page()).into_response();
    response.headers_mut().append(header::SET_COOKIE, language_cookie(lang));
    Ok(response)
}
