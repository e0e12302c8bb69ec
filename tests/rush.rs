//! A rush over real sockets: tablets whose line is cut, slow, and repeats itself; a seller who rings up all the while; a
//! desk that is killed with -9 again and again; a show that is closed in the middle. At the end every promise is looked
//! up in the ledger. Half a minute here, `CHATELAINE_RUSH=minutes` for longer.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "desk/kit.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
mod support;

#[path = "support/bad_line.rs"]
mod bad_line;
#[path = "support/random.rs"]
mod random;

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    io::{BufRead, BufReader},
    net::{SocketAddr, TcpListener},
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    sync::{
        Arc, Mutex,
        atomic::{AtomicBool, Ordering},
    },
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    catalog::Catalog,
    craft::{Piece, Wearer},
    desk::{Desk, DeskConfig},
    ledger::{Ledger, Ticket},
    link::{Draft, Link, LinkConfig, News, NewsReceiver, Pairing},
    ticket::{State, Tender},
};
use jiff::Timestamp;
use rust_decimal::Decimal;
use ureq::Agent;
use uuid::Uuid;

use bad_line::BadLine;
use kit::{PIN, agent};
use random::Random;

const DROPS: [&str; 4] = ["key-heart", "key-round", "charm-moon", "bead-jade"];

/// A free port below those that the system gives to outgoing connections, so that nobody else gets it while the desk is
/// away.
fn free_port() -> SocketAddr {
    let first = 10_000 + (std::process::id() % 8_000) as u16;
    (first..first + 500)
        .find_map(|port| TcpListener::bind(("127.0.0.1", port)).ok()?.local_addr().ok())
        .expect("a free port")
}

fn desk(dir: &Path, listen: SocketAddr) -> Child {
    let mut child = Command::new(env!("CARGO_BIN_EXE_chatelaine"))
        .args(["desk", "--listen", &listen.to_string()])
        .arg("--catalog")
        .arg(dir.join("catalog"))
        .arg("--data")
        .arg(dir.join("data"))
        .stdout(Stdio::piped())
        .spawn()
        .expect("a desk");
    let mut line = String::new();
    BufReader::new(child.stdout.as_mut().expect("its words")).read_line(&mut line).expect("a line");
    assert!(line.contains("answers"), "the desk did not start: {line}{:?}", child.wait());
    child
}

/// What a tablet was told of its tickets: the sums of all that were kept and not given back.
type Kept = Arc<Mutex<BTreeMap<Uuid, Decimal>>>;

/// Guests at one tablet, which is switched off and on again now and then.
fn guests(dir: PathBuf, pairing: Option<Pairing>, seed: u64, end: &AtomicBool, kept: &Kept) {
    let mut random = Random(seed);
    let mut pairing = pairing;
    while !end.load(Ordering::Relaxed) {
        let (link, news) = open(dir.clone(), pairing.take());
        let Some(catalog) = hear_catalog(&news) else { continue };
        for _ in 0..3 + random.below(12) {
            if end.load(Ordering::Relaxed) {
                break;
            }
            let drops = (0..random.below(4)).map(|_| DROPS[random.below(4) as usize].to_owned()).collect();
            let piece = Piece { base: "chain-brass".into(), length: None, wearer: Wearer::From13, neck: None, drops };
            let quote = catalog.quote(&piece).expect("a sum");
            let verdict = catalog.cautions(&piece).expect("cautions");
            let (id, total) = (Uuid::now_v7(), quote.total);
            if link.send(Draft { id, piece, quote, verdict, grown_up_confirmed: false }).is_err() {
                break;
            }
            kept.lock().expect("kept").insert(id, total);
            // Usually the guest waits for the number; sometimes the tablet is switched off first.
            if random.below(5) == 0 {
                break;
            }
            hear_of(&news, id, kept);
        }
        // What a guest got back just before the tablet was switched off.
        drop(link);
        while let Ok(heard) = news.try_recv() {
            if let News::Short { kept: of, .. } = heard {
                kept.lock().expect("kept").remove(&of.id);
            }
        }
    }
}

fn open(dir: PathBuf, pairing: Option<Pairing>) -> (Link, NewsReceiver) {
    Link::open(LinkConfig { dir, pairing, wake: Arc::new(|| {}) }).unwrap_or_else(|error| panic!("{error}"))
}

fn hear_catalog(news: &NewsReceiver) -> Option<Arc<Catalog>> {
    let end = Instant::now() + Duration::from_secs(20);
    while let Ok(news) = news.recv_timeout(end.saturating_duration_since(Instant::now())) {
        if let News::Snapshot(snapshot) = news {
            return Some(Arc::clone(&snapshot.catalog));
        }
    }
    None
}

/// Waits for what became of a ticket; one that came back to the guest is none any more.
fn hear_of(news: &NewsReceiver, id: Uuid, kept: &Kept) {
    while let Ok(heard) = news.recv_timeout(Duration::from_secs(15)) {
        match heard {
            News::Delivered { kept: of, .. } | News::Waiting(of) if of.id == id => return,
            News::Short { kept: of, .. } => {
                kept.lock().expect("kept").remove(&of.id);
                if of.id == id {
                    return;
                }
            }
            News::Refused { kept: of, reason } => panic!("{} was refused: {reason}", of.number),
            _ => {}
        }
    }
    panic!("nothing was heard of a ticket");
}

/// The seller at the desk's pages. Gives what was certainly rung up: the answer said so.
struct Seller {
    agent: Agent,
    url: String,
    cookie: String,
    rung_up: BTreeMap<Uuid, Decimal>,
}

impl Seller {
    fn get(&self, page: &str) -> Option<String> {
        let answer = self.agent.get(format!("{}{page}", self.url)).header("Cookie", &self.cookie).call();
        answer.ok().filter(|answer| answer.status() == 200)?.body_mut().read_to_string().ok()
    }

    fn post(&self, page: &str, fields: &[(&str, &str)]) -> Option<u16> {
        let request = self.agent.post(format!("{}{page}", self.url)).header("Cookie", &self.cookie);
        request.send_form(fields.iter().copied()).ok().map(|answer| answer.status().as_u16())
    }

    /// Takes one of the waiting tickets through to the money, or lets it go.
    fn work(&mut self, random: &mut Random) {
        let Some(list) = self.get("/tickets?group=waiting") else { return };
        let ids: Vec<Uuid> =
            list.split("href=\"/tickets/").skip(1).filter_map(|rest| rest.get(..36)?.parse().ok()).collect();
        if ids.is_empty() {
            thread::sleep(Duration::from_millis(20));
            return;
        }
        let id = ids[random.of(ids.len())];
        let page = format!("/tickets/{id}");
        if random.below(12) == 0 {
            self.post(&format!("{page}/let-go"), &[]);
            return;
        }
        let parts = std::iter::once("base".to_owned()).chain((0..4).map(|at| at.to_string()));
        for part in parts {
            self.post(&format!("{page}/tick"), &[("part", &part), ("on", "1"), ("found", "1")]);
        }
        let Some(text) = self.get(&page) else { return };
        let Some(total) = text.split("name=\"total\" value=\"").nth(1).and_then(|rest| rest.split('"').next()) else {
            return;
        };
        let tender = if random.below(2) == 0 { "cash" } else { "card" };
        if self.post(&format!("{page}/ring-up"), &[("tender", tender), ("total", total)]) == Some(303) {
            self.rung_up.insert(id, total.parse().expect("an amount"));
        }
    }
}

/// Signs a seller in; closes the show once in the middle; works until the end.
fn seller(url: String, end: &AtomicBool, close_at: Instant) -> BTreeMap<Uuid, Decimal> {
    let mut seller = Seller { agent: agent(), url, cookie: String::new(), rung_up: BTreeMap::new() };
    let mut random = Random(42);
    let mut closed = false;
    while !end.load(Ordering::Relaxed) {
        if seller.cookie.is_empty() {
            let request = seller.agent.post(format!("{}/sign-in", seller.url));
            let cookie = request.send_form([("pin", PIN)]).ok();
            let cookie = cookie.as_ref().and_then(|answer| answer.headers().get("set-cookie")?.to_str().ok());
            seller.cookie = cookie.and_then(|text| text.split(';').next()).unwrap_or_default().to_owned();
            thread::sleep(Duration::from_millis(50));
            continue;
        }
        if !closed && Instant::now() > close_at {
            closed = seller.post("/show/close", &[("show", "1")]) == Some(303);
        }
        seller.work(&mut random);
    }
    assert!(closed, "the show was closed in the middle");
    seller.rung_up
}

#[test]
fn every_promise_holds_in_a_rush() {
    let dir = tempfile::tempdir().expect("a folder");
    support::copy(&support::demo_catalog(), &dir.path().join("catalog")).expect("a copy");
    let bases = dir.path().join("catalog/bases.ron");
    let text = fs::read_to_string(&bases).expect("a file").replacen("stock: 20", "stock: 900", 1);
    fs::write(&bases, text).expect("written");
    let minutes = std::env::var("CHATELAINE_RUSH").ok().and_then(|text| text.parse::<f64>().ok()).unwrap_or(0.4);
    let listen = free_port();
    // The PIN and the pairings come first.
    let config = DeskConfig { catalog_dir: dir.path().join("catalog"), data_dir: dir.path().join("data"), listen };
    let first = Desk::start(config).unwrap_or_else(|error| panic!("{error}"));
    let url = first.url();
    agent().post(format!("{url}/setup")).send_form([("pin", PIN), ("again", PIN)]).expect("a PIN");
    let end = Arc::new(AtomicBool::new(false));
    let pairings: Vec<Pairing> = (0..3)
        .map(|n| {
            let line = BadLine::new(listen, 100 + n, Arc::clone(&end));
            let pairing = first.pair_local().unwrap_or_else(|error| panic!("{error}"));
            Pairing { desk: format!("http://{}", line.addr), ..pairing }
        })
        .collect();
    first.stop();

    let kept: Kept = Kept::default();
    let began = Instant::now();
    let lasts = Duration::from_secs_f64(minutes * 60.0);
    let (rung_up, kills) = thread::scope(|scope| {
        for (n, pairing) in pairings.iter().enumerate() {
            let (end, kept, dir) = (&end, &kept, dir.path().join(format!("tablet-{n}")));
            scope.spawn(move || guests(dir, Some(pairing.clone()), 1 + n as u64, end, kept));
        }
        let (for_seller, ended) = (url.clone(), &end);
        let till = scope.spawn(move || seller(for_seller, ended, began + lasts / 2));
        let mut random = Random(20_261_126);
        let mut kills = 0;
        while began.elapsed() < lasts {
            let mut desk = desk(dir.path(), listen);
            thread::sleep(Duration::from_millis(400 + random.below(2500)));
            desk.kill().expect("killed");
            desk.wait().expect("gone");
            kills += 1;
        }
        let mut last = desk(dir.path(), listen);
        end.store(true, Ordering::Relaxed);
        let rung_up = till.join().expect("the seller");
        last.kill().expect("killed");
        last.wait().expect("gone");
        (rung_up, kills)
    });
    look_up(dir.path(), listen, &pairings, &kept, &rung_up);
    println!("{kills} times killed, {} tickets, {} rung up", kept.lock().expect("kept").len(), rung_up.len());
}

/// What is left in the outboxes arrives over a good line; then the ledger is compared with what everybody was told.
fn look_up(dir: &Path, listen: SocketAddr, pairings: &[Pairing], kept: &Kept, rung_up: &BTreeMap<Uuid, Decimal>) {
    let mut last = desk(dir, listen);
    for (n, pairing) in pairings.iter().enumerate() {
        let good = Pairing { desk: format!("http://{listen}"), ..pairing.clone() };
        let (link, news) = open(dir.join(format!("tablet-{n}")), Some(good));
        let began = Instant::now();
        while link.waiting() > 0 {
            assert!(began.elapsed() < Duration::from_secs(60), "{} tickets never arrived", link.waiting());
            while let Ok(heard) = news.try_recv() {
                if let News::Short { kept: of, .. } = heard {
                    kept.lock().expect("kept").remove(&of.id);
                }
            }
            thread::sleep(Duration::from_millis(20));
        }
        assert_eq!(fs::read_dir(dir.join(format!("tablet-{n}/refused"))).expect("a folder").count(), 0, "set aside");
    }
    last.kill().expect("killed");
    last.wait().expect("gone");

    let mut ledger = Ledger::open(&dir.join("data/ledger.sqlite"), Timestamp::now()).expect("the ledger");
    assert_eq!(ledger.faults().expect("read"), Vec::<String>::new());
    let kept = kept.lock().expect("kept");
    let mut tickets: BTreeMap<Uuid, Ticket> = BTreeMap::new();
    for (id, total) in kept.iter() {
        let ticket = ledger.ticket(*id).unwrap_or_else(|error| panic!("a sent ticket is lost: {error}"));
        assert_eq!(ticket.quote.total, *total, "the sum on the screen");
        tickets.insert(*id, ticket);
    }
    let numbers: BTreeSet<_> = tickets.values().map(|ticket| (ticket.show, ticket.number)).collect();
    assert_eq!(numbers.len(), tickets.len(), "a number twice");
    for (id, total) in rung_up {
        let ticket = ledger.ticket(*id).expect("a ticket");
        assert!(matches!(ticket.state, State::RungUp | State::HandedOver), "{}: {:?}", ticket.number, ticket.state);
        assert_eq!(ticket.charged, Some(*total), "the sum charged");
    }
    // Counts: every part was there at the beginning, was found by the seller, or is gone with a ticket.
    let counts = ledger.counts().expect("counts");
    let held = |id: &str| {
        let open = tickets.values().filter(|ticket| ticket.state.is_open());
        open.flat_map(|ticket| ticket.live_lines().map(|(_, line)| line).filter(|line| line.held && line.id == id))
            .count()
    };
    for id in DROPS {
        assert_eq!(counts[id].held as usize, held(id), "{id}");
    }
    // The close-outs of both shows are the sums of their tickets.
    let closed = ledger.closed_show(1).expect("read").expect("closed").sums;
    let currency = ledger.ticket(*kept.keys().next().expect("one")).expect("a ticket").quote.currency;
    let second = ledger.close_show(currency, Timestamp::now()).expect("closed");
    for sums in [closed, second] {
        let of = |tender| -> Decimal {
            let paid =
                tickets.values().filter(|ticket| ticket.settled == Some(sums.show) && ticket.tender == Some(tender));
            paid.map(|ticket| ticket.charged.expect("charged")).sum()
        };
        assert_eq!((sums.cash, sums.card), (of(Tender::Cash), of(Tender::Card)), "show {}", sums.show);
    }
    assert!(ledger.counts().expect("counts").values().all(|count| count.held == 0), "nothing stays held");
}
