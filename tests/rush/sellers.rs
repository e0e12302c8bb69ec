//! The people at the desk: browsers that sign in again by themselves, and what a seller and a helper do with the tickets.

use std::{
    collections::BTreeMap,
    sync::atomic::{AtomicBool, Ordering},
    thread,
    time::Duration,
};

use rust_decimal::Decimal;
use ureq::Agent;
use uuid::Uuid;

use crate::{
    kit::{PIN, agent},
    random::Random,
    tablets::DROPS,
};

/// Tickets for which the desk said that the money was taken, with the sums.
pub type Took = BTreeMap<Uuid, Decimal>;

/// A browser at the desk.
pub struct Browser {
    agent: Agent,
    url: String,
    cookie: String,
}

impl Browser {
    pub fn new(url: String) -> Self {
        Self { agent: agent(), url, cookie: String::new() }
    }

    pub fn url(&self) -> &str {
        &self.url
    }

    fn sign_in(&mut self) {
        let cookie = self.agent.post(format!("{}/sign-in", self.url)).send_form([("pin", PIN)]).ok();
        let cookie = cookie.as_ref().and_then(|answer| answer.headers().get("set-cookie")?.to_str().ok());
        self.cookie = cookie.and_then(|text| text.split(';').next()).unwrap_or_default().to_owned();
        if self.cookie.is_empty() {
            thread::sleep(Duration::from_millis(50));
        }
    }

    /// A page, unless the desk is away or wants the PIN, which is then given.
    pub fn get(&mut self, page: &str) -> Option<String> {
        let answer = self.agent.get(format!("{}{page}", self.url)).header("Cookie", &self.cookie).call().ok();
        let Some(mut answer) = answer else {
            thread::sleep(Duration::from_millis(50));
            return None;
        };
        match answer.status().as_u16() {
            200 => answer.body_mut().read_to_string().ok(),
            303 => {
                self.sign_in();
                None
            }
            _ => None,
        }
    }

    /// Whether the desk says that it has done what the form asks.
    pub fn post(&mut self, page: &str, fields: &[(&str, &str)]) -> bool {
        let request = self.agent.post(format!("{}{page}", self.url)).header("Cookie", &self.cookie);
        let Ok(answer) = request.send_form(fields.iter().copied()) else { return false };
        let leads_to = answer.headers().get("location").and_then(|to| to.to_str().ok()).unwrap_or_default();
        let signed_out = leads_to.starts_with("/sign-in");
        let status = answer.status().as_u16();
        assert!(status < 500 || status == 503, "{page} {fields:?}: {status}");
        if signed_out {
            self.sign_in();
        }
        status == 303 && !signed_out
    }
}

/// Somebody who works on the tickets.
pub struct Seller {
    browser: Browser,
    random: Random,
    took: Took,
}

impl Seller {
    pub fn new(browser: Browser, seed: u64) -> Self {
        Self { browser, random: Random(seed), took: Took::new() }
    }

    /// Works until the end, and closes the first show once that may be closed, if this is who closes it.
    pub fn work_until(mut self, end: &AtomicBool, closes_when: Option<&AtomicBool>) -> Took {
        let mut to_close = closes_when;
        while !end.load(Ordering::Relaxed) {
            if to_close.is_some_and(|may| may.load(Ordering::Relaxed))
                && self.browser.post("/show/close", &[("show", "1")])
            {
                to_close = None;
            }
            self.work();
        }
        assert!(to_close.is_none(), "the show was closed in the middle");
        self.took
    }

    /// Does something with one of the newest tickets; others may have done something with it meanwhile.
    fn work(&mut self) {
        let Some(list) = self.browser.get("/tickets") else { return };
        let mut ids: Vec<Uuid> =
            list.split("href=\"/tickets/").skip(1).filter_map(|rest| rest.get(..36)?.parse().ok()).collect();
        ids.dedup();
        // Some guests take their time and are hardly ever called: their holds end.
        let takes_time = |id: &Uuid| id.as_bytes()[15].is_multiple_of(3);
        if self.random.below(12) > 0 {
            ids.retain(|id| !takes_time(id));
        }
        ids.truncate(10);
        if ids.is_empty() {
            thread::sleep(Duration::from_millis(20));
            return;
        }
        let page = format!("/tickets/{}", ids[self.random.of(ids.len())]);
        let line = self.random.below(3).to_string();
        match self.random.below(100) {
            0..45 => self.take_money(&page),
            45..60 => _ = self.tick(&page, &line, true),
            60..68 => _ = self.tick(&page, &line, false),
            68..72 => _ = self.tick(&page, "base", false),
            72..78 => _ = self.browser.post(&format!("{page}/call"), &[]),
            78..83 => _ = self.browser.post(&format!("{page}/remove"), &[("line", &line)]),
            83..88 => {
                let to = DROPS[self.random.of(DROPS.len())];
                self.browser.post(&format!("{page}/missing/{line}"), &[("to", to)]);
            }
            88..94 => _ = self.browser.post(&format!("{page}/hand-over"), &[]),
            _ => _ = self.browser.post(&format!("{page}/let-go"), &[]),
        }
        thread::sleep(Duration::from_millis(20));
    }

    fn tick(&mut self, page: &str, part: &str, on: bool) -> bool {
        let found = if self.random.below(2) == 0 { "1" } else { "0" };
        self.browser
            .post(&format!("{page}/tick"), &[("part", part), ("on", if on { "1" } else { "0" }), ("found", found)])
    }

    /// Ticks everything off and takes the money.
    fn take_money(&mut self, page: &str) {
        for part in ["base", "0", "1", "2"] {
            self.tick(page, part, true);
        }
        self.browser.post(&format!("{page}/told"), &[("told", "1")]);
        let Some(text) = self.browser.get(page) else { return };
        let Some(total) = text.split("name=\"total\" value=\"").nth(1).and_then(|rest| rest.split('"').next()) else {
            return;
        };
        let tender = if self.random.below(2) == 0 { "cash" } else { "card" };
        if self.browser.post(&format!("{page}/ring-up"), &[("tender", tender), ("total", total)]) {
            let id = page.trim_start_matches("/tickets/").parse().expect("an id");
            self.took.insert(id, total.parse().expect("an amount"));
        }
    }
}
