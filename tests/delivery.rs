//! Deliveries that go wrong: a desk that does not know the tablet any more, one that can't take a ticket, one that is
//! broken. No guest gets a number in vain, nothing blocks what waits behind it, and the seller is told.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{
    collections::BTreeMap,
    path::Path,
    sync::{
        Arc, Mutex,
        atomic::{AtomicBool, AtomicUsize, Ordering},
    },
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    catalog::read_folder,
    craft::{Piece, Wearer},
    desk::Desk,
    ledger::{Ledger, LedgerError},
    link::{
        Draft, Kept, Link, LinkConfig, News, NewsReceiver, PairError, Pairing, SendError,
        wire::{CatalogContent, Delivery, DeskNews, KioskReport, TicketReport, WaitingNews},
    },
    money::Currency,
    ticket::Receipt,
};
use jiff::Timestamp;
use uuid::Uuid;

#[path = "delivery/copies.rs"]
mod copies;
#[path = "delivery/fake_desk.rs"]
mod fake_desk;
#[path = "desk/kit.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "delivery/lost_pairing.rs"]
mod lost_pairing;
#[path = "delivery/pairing.rs"]
mod pairing;
#[path = "desk/seller.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
#[path = "delivery/set_aside.rs"]
mod set_aside;
mod support;

use fake_desk::{Asked, FakeDesk, Told};
use kit::{Table, config};
use seller::Seller;

/// A tablet's line, with its news.
struct Tablet {
    link: Link,
    news: NewsReceiver,
}

impl Tablet {
    fn open(dir: &Path, pairing: Option<Pairing>) -> Self {
        let config = LinkConfig { dir: dir.to_owned(), pairing, wake: Arc::new(|| {}) };
        let (link, news) = Link::open(config).unwrap_or_else(|error| panic!("{error}"));
        Self { link, news }
    }

    /// Waits for the news that `wanted` looks for.
    fn hear<T>(&self, what: &str, mut wanted: impl FnMut(News) -> Option<T>) -> T {
        let end = Instant::now() + Duration::from_secs(30);
        loop {
            let left = end.saturating_duration_since(Instant::now());
            let news = self.news.recv_timeout(left).unwrap_or_else(|_| panic!("{what} was not heard"));
            if let Some(found) = wanted(news) {
                return found;
            }
        }
    }

    fn is_in_reach(&self) {
        self.hear("the desk in reach", |news| matches!(news, News::DeskInReach(true)).then_some(()));
    }

    fn draft(&self) -> Draft {
        let catalog = read_folder(&support::test_table()).expect("a good catalogue").catalog;
        let piece = Piece {
            base: "chain-brass".into(),
            length: None,
            wearer: Wearer::From13,
            neck: None,
            drops: vec!["key-heart".into()],
            looks: vec![],
        };
        Draft {
            id: Uuid::now_v7(),
            quote: catalog.quote(&piece).expect("a sum"),
            verdict: catalog.cautions(&piece).expect("cautions"),
            piece,
            grown_up_confirmed: false,
        }
    }

    fn send(&self) -> Kept {
        self.link.send(self.draft()).unwrap_or_else(|error| panic!("{error}"))
    }

    fn hear_arrived(&self, ticket: Kept) {
        self.hear("the arrival", |news| matches!(news, News::Delivered { kept, .. } if kept == ticket).then_some(()));
    }

    fn hear_waiting(&self, ticket: Kept) {
        self.hear("the number", |news| matches!(news, News::Waiting(kept) if kept == ticket).then_some(()));
    }
}

fn until(what: &str, mut holds: impl FnMut() -> bool) {
    let began = Instant::now();
    while !holds() {
        assert!(began.elapsed() < Duration::from_secs(30), "{what}");
        thread::sleep(Duration::from_millis(30));
    }
}

fn numbers(desk: &Desk) -> Vec<String> {
    let tickets = desk.with_ledger(|ledger| ledger.tickets()).expect("open").expect("tickets");
    let mut all: Vec<String> = tickets.iter().map(|ticket| ticket.number.to_string()).collect();
    all.sort();
    all
}

fn release(desk: &Desk, digit: u8) {
    desk.with_ledger(move |ledger| ledger.release_kiosk(digit, Timestamp::now())).expect("open").expect("released");
}

/// Six digits off the Kiosks page.
fn new_code(seller: &Seller) -> String {
    assert_eq!(seller.post("/kiosks/code", &[]).status, 303);
    let page = seller.get("/kiosks").text;
    page.split("class=\"code\">").nth(1).expect("a code").split('<').next().expect("a code").to_owned()
}

fn pair(tablet: &Tablet, desk: &Desk, code: String) -> Result<u8, PairError> {
    tablet.link.pair(desk.url(), code);
    tablet.hear("the pairing", |news| match news {
        News::Paired(outcome) => Some(outcome),
        _ => None,
    })
}

/// The desk of one test: news with the catalogue, and answers to deliveries as the test sets them.
fn fake(answers: Arc<Mutex<BTreeMap<Uuid, u16>>>, usual: Arc<Mutex<u16>>, order: Arc<Mutex<Vec<Uuid>>>) -> FakeDesk {
    FakeDesk::start(fake_answers(answers, usual, order))
}

fn fake_answers(
    answers: Arc<Mutex<BTreeMap<Uuid, u16>>>,
    usual: Arc<Mutex<u16>>,
    order: Arc<Mutex<Vec<Uuid>>>,
) -> impl Fn(&Asked) -> Told + Send + Sync + 'static {
    let loaded = read_folder(&support::test_table()).expect("a good catalogue");
    let available: BTreeMap<String, u32> = loaded.catalog.drops.iter().map(|kind| (kind.id.clone(), 9)).collect();
    let news = move |line: &str| DeskNews {
        practice: false,
        change: 1,
        show: 1,
        next_sequence: 0,
        revision: loaded.revision.clone(),
        available: available.clone(),
        content: (!line.contains(&loaded.revision))
            .then(|| CatalogContent { catalog: (*loaded.catalog).clone(), pictures: BTreeMap::new() }),
        wanted: vec![],
        put_away: vec![],
        waiting: WaitingNews::default(),
    };
    move |asked: &Asked| -> Told {
        if asked.line.starts_with("GET /link/news") {
            thread::sleep(Duration::from_millis(200));
            return Some((200, serde_json::to_string(&news(asked.line)).expect("news")));
        }
        if !asked.line.starts_with("POST /link/tickets") {
            return Some((404, String::new()));
        }
        let delivery: Delivery = serde_json::from_slice(asked.body).expect("a delivery");
        let id = delivery.ticket.id;
        match answers.lock().expect("answers").get(&id).copied().unwrap_or(*usual.lock().expect("usual")) {
            0 => None,
            200 => {
                order.lock().expect("order").push(id);
                Some((200, serde_json::to_string(&Receipt::Stored { short: vec![] }).expect("an answer")))
            }
            status => Some((status, String::new())),
        }
    }
}

#[test]
fn one_bad_delivery_blocks_nothing_behind_it() {
    let dir = tempfile::tempdir().expect("a folder");
    let (answers, usual, order) = (Arc::default(), Arc::new(Mutex::new(0)), Arc::default());
    let desk = fake(Arc::clone(&answers), Arc::clone(&usual), Arc::clone(&order));
    let pairing = Pairing { desk: format!("http://{}", desk.addr), key: "0".repeat(64), digit: 3 };
    let tablet = Tablet::open(dir.path(), Some(pairing));
    tablet.is_in_reach();
    // With the desk not answering, six guests get their numbers.
    let sent: Vec<Kept> = (0..6)
        .map(|_| {
            let kept = tablet.send();
            tablet.hear_waiting(kept);
            kept
        })
        .collect();
    let [too_large, nonsense, broken, dropped, good, last] = *sent.as_slice() else { panic!("six tickets") };
    for (kept, status) in [(too_large, 413), (nonsense, 422), (broken, 500), (dropped, 0)] {
        answers.lock().unwrap().insert(kept.id, status);
    }
    *usual.lock().unwrap() = 200;
    // In whatever order they come.
    let mut due = vec![too_large, nonsense, good, last];
    tablet.hear("what becomes of the rest", |news| {
        let of = match news {
            News::Refused { kept, reason } => {
                assert!([too_large, nonsense].contains(&kept), "{reason}");
                assert!(reason.contains(if kept == too_large { "413" } else { "422" }), "{reason}");
                kept
            }
            News::Delivered { kept, .. } => {
                assert!([good, last].contains(&kept));
                kept
            }
            _ => return None,
        };
        due.retain(|kept| *kept != of);
        due.is_empty().then_some(())
    });
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (2, 2));
    assert_eq!(*order.lock().unwrap(), [good.id, last.id], "the older one first");
    // A guest who sends now does not wait for the broken ones.
    let fresh = tablet.send();
    tablet.hear_arrived(fresh);
    // What can get better is tried until it does, also after a start.
    answers.lock().unwrap().insert(broken.id, 200);
    drop(tablet);
    let tablet = Tablet::open(dir.path(), None);
    assert_eq!(tablet.link.aside(), 2, "what was set aside is still there");
    tablet.hear_arrived(broken);
    answers.lock().unwrap().insert(dropped.id, 200);
    tablet.hear_arrived(dropped);
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 2));
}

/// A desk answers every few seconds, all day: where that is nothing new, the tablet's screen sleeps on and its disk rests.
#[test]
fn an_answer_with_nothing_new_neither_wakes_nor_writes() {
    let dir = tempfile::tempdir().expect("a folder");
    let asked = Arc::new(AtomicUsize::new(0));
    let (count, answers) = (Arc::clone(&asked), fake_answers(Arc::default(), Arc::default(), Arc::default()));
    let desk = FakeDesk::start(move |one| {
        count.fetch_add(usize::from(one.line.starts_with("GET /link/news")), Ordering::Relaxed);
        answers(one)
    });
    let pairing = Pairing { desk: format!("http://{}", desk.addr), key: "0".repeat(64), digit: 3 };
    let tablet = Tablet::open(dir.path(), Some(pairing));
    tablet.is_in_reach();
    let written = || dir.path().join("desk.json").metadata().and_then(|file| file.modified()).expect("kept");
    let (before, so_far) = (written(), asked.load(Ordering::Relaxed));
    until("five more answers", || asked.load(Ordering::Relaxed) > so_far + 5);
    let heard: Vec<News> = tablet.news.try_iter().collect();
    assert!(heard.is_empty(), "{heard:?}");
    assert_eq!(written(), before);
}

/// A part named once where two are gone makes the guest take one off, send, and hear the same again.
#[test]
fn everything_that_is_gone_is_named_as_often_as_it_is_gone() {
    let table = Table::new();
    let kiosk = table.kiosk();
    let [key, other] = [0, 1].map(|n| kiosk.fitting()[n].id.clone());
    for (id, left) in [(&key, 1), (&other, 0)] {
        let id = id.clone();
        table.desk.with_ledger(move |ledger| ledger.recount(&id, left, Timestamp::now())).unwrap().unwrap();
    }
    let ticket = kiosk.ticket(0, &[&key, &other, &key, &key], Wearer::From13);
    let Receipt::Short { parts } = kiosk.deliver(&ticket, true) else { panic!("there is not enough") };
    assert_eq!(parts, [other, key.clone(), key]);
    assert_eq!(numbers(&table.desk).len(), 0);
}

/// What earlier versions left behind: an outbox and set-aside tickets without a reason, and a release that noted the digit
/// alone.
#[test]
fn what_earlier_versions_wrote_is_read() {
    let Table { desk, dir: home } = Table::new();
    let (dir, addr) = (tempfile::tempdir().expect("a folder"), desk.addr());
    let tablet = Tablet::open(dir.path(), Some(desk.pair_local().expect("a digit")));
    tablet.is_in_reach();
    drop(desk);
    let (waits, lies) = (tablet.send(), tablet.send());
    tablet.hear_waiting(lies);
    drop(tablet);
    let path = |folder: &str, kept: Kept| dir.path().join(folder).join(format!("{}.json", kept.id));
    for kept in [waits, lies] {
        let text = std::fs::read_to_string(path("outbox", kept)).expect("an entry");
        let mut entry: serde_json::Value = serde_json::from_str(&text).expect("an entry");
        entry.as_object_mut().expect("an entry").remove("reason").expect("a reason");
        std::fs::write(path("outbox", kept), entry.to_string()).expect("written");
    }
    std::fs::rename(path("outbox", lies), path("refused", lies)).expect("moved");
    std::fs::write(dir.path().join("refused/half.json"), "{\"ticket\":").expect("written");
    let desk = Desk::start(chatelaine::desk::DeskConfig { listen: addr, ..config(home.path()) }).expect("again");
    let table = Table { desk, dir: home };
    let seller = table.seller();
    let tablet = Tablet::open(dir.path(), None);
    tablet.hear_arrived(waits);
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 1));
    until("it is told", || seller.get("/kiosks").text.contains(&lies.number.to_string()));
    assert!(seller.get("/kiosks").text.contains("1 file on this tablet should be a ticket"));
    // Nobody waits for it: it is put away, which is asked about first, and its file is kept.
    let put_away = format!("/kiosks/1/put-away/{}", lies.id);
    assert!(seller.get(&put_away).text.contains(&format!("Put ticket {} away?", lies.number)));
    assert_eq!(tablet.link.aside(), 1, "a look changes nothing");
    assert_eq!(seller.post(&put_away, &[]).status, 303);
    until("it is put away", || tablet.link.aside() == 0);
    until("nothing is said any more", || !seller.get("/kiosks").text.contains("not taken"));
    assert!(dir.path().join("refused/put-away").join(format!("{}.json", lies.id)).is_file());
    assert_eq!(numbers(&table.desk), [waits.number.to_string()]);
    drop(tablet);
    assert_eq!(Tablet::open(dir.path(), None).link.aside(), 0, "also after a start");
    drop(table);

    let now = Timestamp::now();
    let file = dir.path().join("old.sqlite");
    let mut ledger = Ledger::open(&file, now).expect("a ledger");
    assert_eq!(ledger.pair_kiosk("one", None, now).expect("a digit"), 1);
    ledger.release_kiosk(1, now).expect("released");
    drop(ledger);
    let db = rusqlite::Connection::open(&file).expect("the file");
    assert_eq!(db.execute("UPDATE events SET body = '1' WHERE kind = 'kiosk_released'", []).expect("changed"), 1);
    drop(db);
    let mut ledger = Ledger::open(&file, now).expect("a ledger");
    assert_eq!(ledger.pair_kiosk("two", Some("one"), now).expect("a digit"), 2, "its digit rests as well");
}
