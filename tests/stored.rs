//! What earlier versions have written on a tablet's disk opens, and keeps every figure: `tests/fixtures` has settings,
//! pairing and outbox in every form that they ever had. What is written today has the form of its fixture, so that the next
//! change of a form is noticed; then the fixture becomes that of an earlier version, and today's form gets one of its own.
//! The ledger's own are in `tests/time/stored.rs`.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "delivery/fake_desk.rs"]
#[allow(dead_code, reason = "the deliveries' own tests look at what is asked")]
mod fake_desk;
#[path = "desk/kit.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "stored/outbox.rs"]
mod outbox;
#[path = "stored/pairing.rs"]
mod pairing;
#[path = "stored/settings.rs"]
mod settings;
mod support;

use std::{
    fs,
    path::{Path, PathBuf},
    sync::Arc,
    time::{Duration, Instant},
};

use chatelaine::link::{Link, LinkConfig, News, NewsReceiver, Pairing};
use serde_json::Value;

fn fixture(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures").join(name)
}

/// A copy of a fixture's folder.
fn copied(name: &str) -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    support::copy(&fixture(name), dir.path()).expect("a copy");
    dir
}

fn json(file: &Path) -> Value {
    serde_json::from_slice(&fs::read(file).unwrap_or_else(|error| panic!("{}: {error}", file.display()))).expect("JSON")
}

fn open(dir: &Path, pairing: Option<Pairing>) -> (Link, NewsReceiver) {
    let config = LinkConfig { dir: dir.to_owned(), pairing, wake: Arc::new(|| {}) };
    Link::open(config).unwrap_or_else(|error| panic!("{error}"))
}

fn hear<T>(news: &NewsReceiver, what: &str, mut wanted: impl FnMut(News) -> Option<T>) -> T {
    let end = Instant::now() + Duration::from_secs(30);
    loop {
        let left = end.saturating_duration_since(Instant::now());
        if let Some(found) = wanted(news.recv_timeout(left).unwrap_or_else(|_| panic!("{what} was not heard"))) {
            return found;
        }
    }
}
