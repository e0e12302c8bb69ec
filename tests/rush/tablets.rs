//! A tablet as a program of its own, with guests at it, and what it tells of them.

use std::{
    collections::BTreeMap,
    fs::{self, OpenOptions},
    io::Write,
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    sync::{Arc, mpsc::RecvTimeoutError},
    time::{Duration, Instant},
};

use chatelaine::{
    catalog::Catalog,
    craft::{Piece, Wearer},
    link::{Draft, Link, LinkConfig, News, Pairing, kept_pairing},
    ticket::TicketNumber,
};
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::random::Random;

/// The environment's name for the tablet's folder.
pub const FOLDER: &str = "CHATELAINE_TEST_TABLET";
/// And for what its guests' choices begin with.
const SEED: &str = "CHATELAINE_TEST_SEED";

/// What guests want; there are few of each, and found things only once.
pub const DROPS: [&str; 5] = ["key-heart", "key-round", "charm-moon", "bead-jade", "found-token"];
pub const BASE: &str = "chain-brass";

/// A tablet, switched on or off.
pub struct Tablet {
    pub dir: PathBuf,
    pub digit: u8,
    seed: u64,
    child: Option<Child>,
}

/// What a tablet told of its guests.
#[derive(Default)]
pub struct Guests {
    /// The sums on the screen of all that was sent.
    pub sent: BTreeMap<Uuid, Decimal>,
    /// The numbers that were shown.
    pub shown: BTreeMap<Uuid, TicketNumber>,
    /// What the desk refused, with its words.
    pub refused: Vec<String>,
    /// The digits of the pairings that were made at the tablet.
    pub paired: Vec<u8>,
}

impl Tablet {
    /// A tablet that is paired and switched off.
    pub fn new(dir: PathBuf, pairing: Pairing, n: u64) -> Self {
        let digit = pairing.digit;
        let config = LinkConfig { dir: dir.clone(), pairing: Some(pairing), wake: Arc::new(|| {}) };
        drop(Link::open(config).unwrap_or_else(|error| panic!("{error}")));
        Self { dir, digit, seed: 1 + n, child: None }
    }

    /// Switches it on.
    pub fn start(&mut self) {
        self.seed += 1000;
        let child = Command::new(std::env::current_exe().expect("this program"))
            .args(["tablet", "--exact", "--test-threads=1"])
            .env(FOLDER, &self.dir)
            .env(SEED, self.seed.to_string())
            .stdout(Stdio::null())
            .spawn();
        self.child = Some(child.expect("a tablet"));
    }

    /// kill -9.
    pub fn kill(&mut self) {
        if let Some(mut child) = self.child.take() {
            if let Some(status) = child.try_wait().expect("a state") {
                panic!("the tablet ended by itself: {status}");
            }
            child.kill().expect("killed");
            child.wait().expect("gone");
        }
    }

    /// A code is typed on it.
    pub fn type_code(&self, code: &str) {
        fs::write(self.dir.join("code.new"), code).expect("written");
        fs::rename(self.dir.join("code.new"), self.dir.join("code")).expect("renamed");
    }

    pub fn guests(&self) -> Guests {
        let mut guests = Guests::default();
        let text = fs::read_to_string(self.dir.join("told")).unwrap_or_default();
        for line in text.lines() {
            let words: Vec<&str> = line.split(' ').collect();
            match *words.as_slice() {
                ["sent", id, total] => {
                    guests.sent.insert(id.parse().expect("an id"), total.parse().expect("a sum"));
                }
                ["shown", id, number] => {
                    guests.shown.insert(id.parse().expect("an id"), number.parse().expect("a number"));
                }
                ["paired", digit] => guests.paired.push(digit.parse().expect("a digit")),
                ["refused", ..] => guests.refused.push(line.to_owned()),
                _ => {}
            }
        }
        guests
    }
}

impl Drop for Tablet {
    fn drop(&mut self) {
        if let Some(mut child) = self.child.take() {
            let _ = child.kill();
            let _ = child.wait();
        }
    }
}

/// The tablet's own side: guests who send, until it is killed.
pub fn work(dir: &Path) {
    let seed = std::env::var(SEED).ok().and_then(|text| text.parse().ok()).expect("a seed");
    let (link, news) = Link::open(LinkConfig { dir: dir.to_owned(), pairing: None, wake: Arc::new(|| {}) })
        .unwrap_or_else(|error| panic!("{error}"));
    let mut told = OpenOptions::new().append(true).create(true).open(dir.join("told")).expect("a file");
    // One write for each line, so that none is half there when the tablet is killed.
    let mut tell = move |line: String| told.write_all(format!("{line}\n").as_bytes()).expect("told");
    let mut random = Random(seed);
    let (mut catalog, mut waits): (Option<Arc<Catalog>>, Option<Uuid>) = (None, None);
    let mut next = Instant::now();
    loop {
        let heard = match news.recv_timeout(Duration::from_millis(20)) {
            Ok(heard) => Some(heard),
            Err(RecvTimeoutError::Timeout) => None,
            Err(RecvTimeoutError::Disconnected) => panic!("the line is gone"),
        };
        let done = match heard {
            Some(News::Snapshot(snapshot)) => {
                catalog = Some(Arc::clone(&snapshot.catalog));
                None
            }
            Some(News::Delivered { kept, .. } | News::Waiting(kept)) => {
                tell(format!("shown {} {}", kept.id, kept.number));
                Some(kept.id)
            }
            Some(News::Short { kept, .. }) => Some(kept.id),
            Some(News::NotKept { id, .. }) => Some(id),
            Some(News::Refused { kept, reason }) => {
                tell(format!("refused {} {reason}", kept.number));
                Some(kept.id)
            }
            Some(News::Paired(outcome)) => {
                tell(outcome.map_or_else(|error| format!("not-paired {error}"), |digit| format!("paired {digit}")));
                None
            }
            _ => None,
        };
        if done.is_some() && done == waits {
            waits = None;
            next = Instant::now() + Duration::from_millis(20 + random.below(100));
        }
        if let Ok(code) = fs::read_to_string(dir.join("code")) {
            fs::remove_file(dir.join("code")).expect("removed");
            link.pair(kept_pairing(dir).expect("a pairing").desk, code);
        }
        if let Some(catalog) = catalog.as_ref().filter(|_| waits.is_none() && Instant::now() >= next) {
            let draft = draft(catalog, &mut random);
            tell(format!("sent {} {}", draft.id, draft.quote.total));
            let id = draft.id;
            next = Instant::now() + Duration::from_millis(200);
            waits = link.send(draft).is_ok().then_some(id);
        }
    }
}

fn draft(catalog: &Catalog, random: &mut Random) -> Draft {
    let drops = (0..random.below(4)).map(|_| DROPS[random.of(DROPS.len())].to_owned()).collect();
    let piece = Piece { base: BASE.into(), length: None, wearer: Wearer::From13, neck: None, drops, looks: vec![] };
    let (quote, verdict) = (catalog.quote(&piece).expect("a sum"), catalog.cautions(&piece).expect("cautions"));
    Draft { id: Uuid::now_v7(), piece, quote, verdict, grown_up_confirmed: false }
}
