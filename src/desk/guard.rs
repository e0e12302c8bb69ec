//! What every request has to pass and every answer carries.

use std::{
    any::Any,
    fs,
    net::{IpAddr, SocketAddr},
    process::Command,
    sync::{Arc, LazyLock},
};

use axum::{
    extract::{Request, State},
    http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header},
    middleware::Next,
    response::{IntoResponse, Response},
};

use super::{connections::Caller, refusal::Refusal, state::DeskState};
use crate::lang::{Message, message};

/// Source: OWASP ASVS 5.0, chapter 3.4.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; \
                      connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

/// Refuses changes that another site's page asks for and names that are not this machine's; sets the answer's headers.
pub(super) async fn guard(
    State(desk): State<Arc<DeskState>>,
    caller: Caller,
    request: Request,
    next: Next,
) -> Response {
    let mut response = match refusal(request.method(), request.headers(), own_name()) {
        Some((alarm, header, why)) => {
            let theirs = request.headers().get(header).map(|value| String::from_utf8_lossy(value.as_bytes()));
            desk.alarms.note(alarm, caller.ip, theirs.as_deref().unwrap_or_default());
            Refusal::Said(StatusCode::FORBIDDEN, why).into_response()
        }
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
    Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("refused-panic")).into_response()
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

/// This machine's name, in small letters. Every system has the command that tells it.
fn own_name() -> &'static str {
    static NAME: LazyLock<String> = LazyLock::new(|| {
        let told = fs::read_to_string("/proc/sys/kernel/hostname").or_else(|_| {
            let told = Command::new("hostname").output()?;
            Ok::<_, std::io::Error>(String::from_utf8_lossy(&told.stdout).into_owned())
        });
        told.unwrap_or_default().trim().to_ascii_lowercase()
    });
    NAME.as_str()
}

/// Whether `name` is the machine called `own`: a number, or its name alone or as its network knows it. A page of another
/// site can point a name of its own at this machine (DNS rebinding); such a name is none of these.
fn is_ours(name: &str, own: &str) -> bool {
    let label = own.split('.').next().unwrap_or_default();
    // Where two machines of one name meet, the later one gets a number (RFC 6762, section 9).
    let renamed =
        |rest: &str| rest.strip_prefix('-').is_some_and(|n| !n.is_empty() && n.bytes().all(|b| b.is_ascii_digit()));
    let is_local = |name: &str| name.strip_prefix(label).is_some_and(|rest| rest.is_empty() || renamed(rest));
    name.parse::<IpAddr>().is_ok()
        || name == "localhost"
        || !label.is_empty() && (name == own || name == label || name.strip_suffix(".local").is_some_and(is_local))
}

/// What is wrong: for the log, the header at fault, and for whoever asks.
fn refusal(method: &Method, headers: &HeaderMap, own: &str) -> Option<(&'static str, HeaderName, Message)> {
    let text = |name: HeaderName| headers.get(name).and_then(|value| value.to_str().ok());
    let host = text(header::HOST).unwrap_or_default();
    if !is_ours(&host_name(host), own) {
        let why = message!("refused-other-name", address = "http://192.168.4.1:7345");
        return Some(("the desk was asked for under a foreign name", header::HOST, why));
    }
    if method == Method::GET || method == Method::HEAD {
        return None;
    }
    // Every one that there is counts, and one that can't be read is foreign.
    let all = |name: HeaderName, is_good: &dyn Fn(&str) -> bool| {
        headers.get_all(name).iter().all(|value| value.to_str().is_ok_and(is_good))
    };
    let same_origin =
        all(header::ORIGIN, &|origin| origin.split_once("://").is_some_and(|(_, of)| of.eq_ignore_ascii_case(host)));
    let same_site = all(HeaderName::from_static("sec-fetch-site"), &|site| matches!(site, "same-origin" | "none"));
    let why = message!("refused-other-site");
    (!same_origin || !same_site).then_some(("a change asked for by another site", header::ORIGIN, why))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn answer(method: Method, pairs: &[(&'static str, &'static str)]) -> bool {
        let headers =
            pairs.iter().map(|(name, value)| (HeaderName::from_static(name), HeaderValue::from_static(value)));
        refusal(&method, &headers.collect(), "table.example").is_none()
    }

    #[test]
    fn only_numbers_and_local_names_are_ours() {
        for host in ["127.0.0.1:7345", "192.168.4.1", "[::1]:7345", "[fe80::1]", "localhost:80", "Table.local:7345"] {
            assert!(answer(Method::GET, &[("host", host)]), "{host}");
        }
        for host in ["table", "table.example:7345", "TABLE-2.local"] {
            assert!(answer(Method::GET, &[("host", host)]), "{host}");
        }
        let foreign =
            ["", "shop.example", "127.0.0.1.example:7345", "localhost.example", "local", "other.local", ".local"];
        for host in foreign.into_iter().chain(["table.shop.example", "tables.local", "table-x.local", "table-.local"]) {
            assert!(!answer(Method::GET, &[("host", host)]), "{host}");
        }
        assert!(!answer(Method::GET, &[]));
        assert!(!is_ours("", "") && !is_ours(".local", "") && !is_ours("-2.local", ""), "a machine without a name");
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
        assert!(!post(&[("origin", "http://192.168.4.1:7345"), ("origin", "http://shop.example")]), "two of them");
        let unreadable = HeaderValue::from_bytes(b"http://shop.example\xff").unwrap();
        let headers = [(header::HOST, HeaderValue::from_static(host.1)), (header::ORIGIN, unreadable)];
        assert!(refusal(&Method::POST, &headers.into_iter().collect(), "").is_some(), "one that can't be read");
        assert!(!post(&[("sec-fetch-site", "same-site")]));
    }
}
