//! A seller's browser without a screen: it keeps the cookie and follows no redirect.

use ureq::{Agent, Body, http::Response};

use crate::kit::{PIN, Table, agent};

impl Table {
    /// A seller who has just chosen the PIN.
    pub fn seller(&self) -> Seller {
        let mut seller = Seller { agent: agent(), url: self.desk.url(), cookie: String::new() };
        let answer = seller.post("/setup", &[("pin", PIN), ("again", PIN)]);
        assert_eq!(answer.status, 303, "{}", answer.text);
        seller.cookie = answer.cookie.expect("a session");
        seller
    }
}

/// What came back.
pub struct Answer {
    pub status: u16,
    pub text: String,
    pub location: String,
    pub cookie: Option<String>,
    pub headers: ureq::http::HeaderMap,
}

impl From<Response<Body>> for Answer {
    fn from(mut response: Response<Body>) -> Self {
        let headers = response.headers().clone();
        let header = |name| headers.get(name).and_then(|value| value.to_str().ok()).unwrap_or_default().to_owned();
        let cookie = header("set-cookie");
        Self {
            status: response.status().as_u16(),
            location: header("location"),
            cookie: cookie.split(';').next().filter(|pair| pair.contains('=')).map(str::to_owned),
            text: String::from_utf8_lossy(&response.body_mut().read_to_vec().expect("a body")).into_owned(),
            headers,
        }
    }
}

/// A seller's browser, without a screen.
pub struct Seller {
    pub agent: Agent,
    pub url: String,
    pub cookie: String,
}

impl Seller {
    pub fn get(&self, path: &str) -> Answer {
        let request = self.agent.get(format!("{}{path}", self.url)).header("Cookie", &self.cookie);
        request.call().expect("an answer").into()
    }

    /// Sends a form. Where it had a PIN in it and was refused, the browser is led to the reason.
    pub fn post(&self, path: &str, fields: &[(&str, &str)]) -> Answer {
        let answer = self.post_from(path, "", fields);
        if answer.status == 303 && answer.location.starts_with("/answers/") {
            self.get(&answer.location)
        } else {
            answer
        }
    }

    /// Sends a form that stands on a page of the desk, and goes nowhere by itself.
    pub fn post_from(&self, path: &str, page: &str, fields: &[(&str, &str)]) -> Answer {
        let request = self.agent.post(format!("{}{path}", self.url)).header("Cookie", &self.cookie);
        let request = if page.is_empty() { request } else { request.header("Referer", format!("{}{page}", self.url)) };
        request.send_form(fields.iter().copied()).expect("an answer").into()
    }
}
