//! The cookies of a browser: the session, the key by which it is known later, its language, and during practice that its pages
//! are of that.

use std::time::Duration;

use axum::http::{HeaderMap, HeaderValue, header};

use crate::{disk::digest::sha256_hex, lang::Lang};

/// Carries the session.
const SESSION: &str = "seller";
/// Says that the pages in the browser are of a practice, and of which.
const PRACTICE: &str = "practice";
/// Carries the key by which a browser is known that was signed in before.
const BROWSER: &str = "browser";
/// Says in which language somebody wants the pages.
const LANGUAGE: &str = "language";
const SESSION_LASTS: Duration = Duration::from_secs(24 * 3600);
/// Browsers keep no cookie longer than this (RFC 6265bis, from memory).
const BROWSER_LASTS: Duration = Duration::from_secs(400 * 24 * 3600);

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

/// Of which practice the pages in a browser are; none where they are real.
pub(super) fn practice_of(headers: &HeaderMap) -> Option<String> {
    cookie(headers, PRACTICE).filter(|id| !id.is_empty())
}

/// The cookie of pages of a practice, or the one that ends it.
pub(super) fn practice_cookie(id: Option<&str>) -> HeaderValue {
    set_cookie(PRACTICE, id.unwrap_or_default(), id.map_or(Duration::ZERO, |_| SESSION_LASTS))
}

/// The cookie by which a browser is known later.
pub(super) fn browser_cookie(key: &str) -> HeaderValue {
    set_cookie(BROWSER, key, BROWSER_LASTS)
}

/// The code of the language that was chosen in a browser, if one was.
pub(super) fn language_of(headers: &HeaderMap) -> Option<String> {
    cookie(headers, LANGUAGE)
}

/// The cookie of a choice of language.
pub(super) fn language_cookie(lang: Lang) -> HeaderValue {
    set_cookie(LANGUAGE, lang.code(), BROWSER_LASTS)
}

fn set_cookie(name: &str, value: &str, lasts: Duration) -> HeaderValue {
    let text = format!("{name}={value}; HttpOnly; SameSite=Strict; Path=/; Max-Age={}", lasts.as_secs());
    // Keys are hexadecimal, so the text is always a header.
    HeaderValue::from_str(&text).unwrap_or(HeaderValue::from_static(""))
}
