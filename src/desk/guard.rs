//! What every request has to pass and every answer carries.

use std::{
    any::Any,
    net::{IpAddr, SocketAddr},
};

use axum::{
    extract::Request,
    http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header},
    middleware::Next,
    response::{IntoResponse, Response},
};

use super::error::Refusal;

/// Source: OWASP ASVS 5.0, chapter 3.4.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; \
                      connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

/// Refuses changes that another site's page asks for and names that are not this machine's; sets the answer's headers.
pub(super) async fn guard(request: Request, next: Next) -> Response {
    let mut response = match refusal(request.method(), request.headers()) {
        Some(words) => Refusal::Request(StatusCode::FORBIDDEN, words.to_owned()).into_response(),
        None => next.run(request).await,
    };
    let headers = response.headers_mut();
    headers.insert(header::CONTENT_SECURITY_POLICY, HeaderValue::from_static(POLICY));
    headers.insert(header::X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    // Other sites learn nothing. Plain "no-referrer" would also take the origin from the desk's own forms
    // (Fetch standard, "append a request Origin header"), and with it the check below.
    headers.insert(header::REFERRER_POLICY, HeaderValue::from_static("same-origin"));
    headers.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    response
}

/// The answer when a page's code panics.
pub(super) fn after_panic(_: Box<dyn Any + Send + 'static>) -> Response {
    let words = "something went wrong at the desk; what was entered before is safe";
    Refusal::Request(StatusCode::INTERNAL_SERVER_ERROR, words.into()).into_response()
}

/// The name or number in a `Host` header, without the port.
fn host_name(host: &str) -> String {
    if let Ok(addr) = host.parse::<SocketAddr>() {
        return addr.ip().to_string();
    }
    let name = host.rsplit_once(':').filter(|(_, port)| port.bytes().all(|b| b.is_ascii_digit()));
    let name = if host.ends_with(']') { host } else { name.map_or(host, |(name, _)| name) };
    name.trim_start_matches('[').trim_end_matches(']').to_ascii_lowercase()
}

fn refusal(method: &Method, headers: &HeaderMap) -> Option<&'static str> {
    let text = |name: HeaderName| headers.get(name).and_then(|value| value.to_str().ok());
    let host = text(header::HOST).unwrap_or_default();
    let name = host_name(host);
    // A page of another site can point its own name at this machine; only numbers and local names are ours.
    if name.parse::<IpAddr>().is_err() && name != "localhost" && !name.ends_with(".local") {
        return Some("open the desk by its number, as in http://192.168.4.1:7345");
    }
    if method == Method::GET || method == Method::HEAD {
        return None;
    }
    let same_origin = text(header::ORIGIN)
        .is_none_or(|origin| origin.split_once("://").is_some_and(|(_, of)| of.eq_ignore_ascii_case(host)));
    let same_site =
        text(HeaderName::from_static("sec-fetch-site")).is_none_or(|site| matches!(site, "same-origin" | "none"));
    (!same_origin || !same_site).then_some("this change was asked for by another site; nothing was changed")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn answer(method: Method, pairs: &[(&'static str, &'static str)]) -> bool {
        let headers =
            pairs.iter().map(|(name, value)| (HeaderName::from_static(name), HeaderValue::from_static(value)));
        refusal(&method, &headers.collect()).is_none()
    }

    #[test]
    fn only_numbers_and_local_names_are_ours() {
        for host in ["127.0.0.1:7345", "192.168.4.1", "[::1]:7345", "[fe80::1]", "localhost:80", "Table.local:7345"] {
            assert!(answer(Method::GET, &[("host", host)]), "{host}");
        }
        for host in ["", "shop.example", "127.0.0.1.example:7345", "localhost.example", "local"] {
            assert!(!answer(Method::GET, &[("host", host)]), "{host}");
        }
        assert!(!answer(Method::GET, &[]));
    }

    #[test]
    fn another_sites_change_is_refused() {
        let host = ("host", "192.168.4.1:7345");
        let post = |more: &[(&'static str, &'static str)]| answer(Method::POST, &[&[host], more].concat());
        assert!(post(&[]), "a kiosk sends no origin");
        assert!(post(&[("origin", "http://192.168.4.1:7345")]));
        assert!(post(&[("origin", "http://192.168.4.1:7345"), ("sec-fetch-site", "same-origin")]));
        assert!(!post(&[("origin", "null")]), "a sandboxed frame");
        assert!(!post(&[("origin", "http://192.168.4.1:80")]), "another port is another origin");
        assert!(!post(&[("origin", "http://shop.example")]));
        assert!(!post(&[("sec-fetch-site", "cross-site")]));
        assert!(!post(&[("sec-fetch-site", "same-site")]));
    }
}
