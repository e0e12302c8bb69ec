//! Open pages that look on: each asks what is different whenever the desk says that something changed.

use std::{
    io::Read,
    sync::atomic::{AtomicBool, AtomicU64, Ordering},
    time::{Duration, Instant},
};

use ureq::Agent;

use crate::open_page::OpenPage;

/// A signed-in seller.
#[derive(Clone)]
pub struct Seller {
    pub agent: Agent,
    pub url: String,
    pub cookie: String,
}

impl Seller {
    fn ask(&self, page: &str, has: Option<&str>) -> (u16, String) {
        let request = self.agent.get(format!("{}{page}", self.url)).header("Cookie", &self.cookie);
        let request = request.header("x-live", "1");
        let request = if let Some(has) = has { request.header("x-has", has) } else { request };
        let mut answer = request.call().expect("an answer");
        let bytes = answer.body_mut().with_config().limit(64 << 20).read_to_vec().expect("a page");
        (answer.status().as_u16(), String::from_utf8(bytes).expect("text"))
    }

    /// How long a whole page takes, and its length.
    pub fn get(&self, page: &str) -> (Duration, usize) {
        let began = Instant::now();
        let (status, text) = self.ask(page, None);
        assert_eq!(status, 200, "{page}");
        (began.elapsed(), text.len())
    }

    /// Looks on as an open page does: whenever the desk says that something changed, it asks what is different from what
    /// it has.
    pub fn look_on(&self, page: &str, until: &AtomicBool, looks: &Looks) {
        let mut open = OpenPage::read(&self.ask(page, None).1);
        let request = self.agent.get(format!("{}/events", self.url)).header("Cookie", &self.cookie);
        let mut stream = request.call().expect("a stream").into_body().into_reader();
        let mut bytes = [0; 4096];
        while !until.load(Ordering::Relaxed) {
            match stream.read(&mut bytes) {
                Ok(0) | Err(_) => return,
                Ok(_) => {
                    let (status, text) = self.ask(page, Some(&open.has()));
                    looks.renewed.fetch_add(1, Ordering::Relaxed);
                    looks.bytes.fetch_add(text.len() as u64, Ordering::Relaxed);
                    match status {
                        204 => {
                            looks.nothing.fetch_add(1, Ordering::Relaxed);
                        }
                        _ => open.take(&text),
                    }
                }
            }
        }
    }
}

/// What the open pages were sent.
#[derive(Default)]
pub struct Looks {
    pub renewed: AtomicU64,
    /// How often nothing was different.
    pub nothing: AtomicU64,
    pub bytes: AtomicU64,
}
