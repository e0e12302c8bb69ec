//! Deliveries that go wrong: a desk that does not know the tablet any more, one that can't take a ticket, one that is
//! broken. No guest gets a number in vain, nothing blocks what waits behind it, and the seller is told.

use std::{
    collections::BTreeMap,
    path::Path,
    sync::{
        Arc, Mutex,
        atomic::{AtomicBool, Ordering},
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
        wire::{CatalogContent, Delivery, DeskNews, KioskReport, TicketReport},
    },
    money::Currency,
    ticket::Receipt,
};
use jiff::Timestamp;
use uuid::Uuid;

#[path = "delivery/fake_desk.rs"]
mod fake_desk;
#[path = "desk/kit.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "desk/seller.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
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
        let catalog = read_folder(&support::demo_catalog()).expect("a good catalogue").catalog;
        let piece = Piece {
            base: "chain-brass".into(),
            length: None,
            wearer: Wearer::From13,
            neck: None,
            drops: vec!["key-heart".into()],
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
    let loaded = read_folder(&support::demo_catalog()).expect("a good catalogue");
    let available: BTreeMap<String, u32> = loaded.catalog.drops.iter().map(|kind| (kind.id.clone(), 9)).collect();
    let news = move |line: &str| DeskNews {
        change: 1,
        show: 1,
        next_sequence: 0,
        revision: loaded.revision.clone(),
        available: available.clone(),
        content: (!line.contains(&loaded.revision))
            .then(|| CatalogContent { catalog: (*loaded.catalog).clone(), pictures: BTreeMap::new() }),
        wanted: vec![],
        put_away: vec![],
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

#[test]
fn a_tablet_that_was_let_go_gives_no_numbers_and_says_so() {
    let (table, dir) = (Table::new(), tempfile::tempdir().expect("a folder"));
    let pairing = table.desk.pair_local().expect("a digit");
    let tablet = Tablet::open(dir.path(), Some(pairing.clone()));
    tablet.is_in_reach();
    let first = tablet.send();
    tablet.hear_arrived(first);
    release(&table.desk, pairing.digit);
    // The guest who sends before the tablet has noticed: nothing is sent, and no number is shown.
    let draft = tablet.draft();
    let id = draft.id;
    tablet.link.send_aside(draft);
    let error = tablet.hear("what became of the piece", |news| match news {
        News::NotKept { id: of, error } if of == id => Some(error),
        News::Waiting(kept) | News::Delivered { kept, .. } => panic!("{} was given", kept.number),
        _ => None,
    });
    assert_eq!(error, SendError::LetGo);
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 0));
    // And whoever comes later, also after a start with the desk away.
    assert_eq!(tablet.link.send(tablet.draft()).expect_err("no number"), SendError::LetGo);
    assert!(tablet.link.is_let_go());
    drop(tablet);
    drop(table);
    let tablet = Tablet::open(dir.path(), None);
    tablet.hear("being let go", |news| (news == News::LetGo(true)).then_some(()));
    assert_eq!(tablet.link.send(tablet.draft()).expect_err("no number"), SendError::LetGo);
}

#[test]
fn paired_again_it_delivers_under_its_own_digit() {
    let Table { desk, dir: home } = Table::new();
    let (dir, other_dir) = (tempfile::tempdir().expect("a folder"), tempfile::tempdir().expect("a folder"));
    let pairing = desk.pair_local().expect("a digit");
    let addr = desk.addr();
    let tablet = Tablet::open(dir.path(), Some(pairing.clone()));
    tablet.is_in_reach();
    drop(desk);
    let kept = tablet.send();
    tablet.hear_waiting(kept);
    let desk = Desk::start(chatelaine::desk::DeskConfig { listen: addr, ..config(home.path()) }).expect("again");
    // Let go before it could deliver; the next tablet does not get the digit.
    release(&desk, pairing.digit);
    let table = Table { desk, dir: home };
    let seller = table.seller();
    let other = Tablet::open(other_dir.path(), None);
    assert_eq!(pair(&other, &table.desk, new_code(&seller)), Ok(pairing.digit + 1));
    other.is_in_reach();
    let of_other = other.send();
    other.hear_arrived(of_other);
    assert_ne!(of_other.number, kept.number);

    tablet.hear("being let go", |news| (news == News::LetGo(true)).then_some(()));
    assert_eq!(pair(&tablet, &table.desk, new_code(&seller)), Ok(pairing.digit), "its own digit again");
    tablet.hear_arrived(kept);
    assert!(!tablet.link.is_let_go());
    let late = tablet.send();
    tablet.hear_arrived(late);
    let mut all = [kept, of_other, late].map(|kept| kept.number.to_string());
    all.sort();
    assert_eq!(numbers(&table.desk), all);
}

#[test]
fn a_released_digit_rests_until_the_show_closes() {
    let now = Timestamp::now();
    let mut ledger = Ledger::in_memory(now).expect("a ledger");
    assert_eq!(ledger.pair_kiosk("one", None, now).expect("a digit"), 1);
    assert_eq!(ledger.pair_kiosk("two", None, now).expect("a digit"), 2);
    ledger.release_kiosk(1, now).expect("released");
    assert_eq!(ledger.pair_kiosk("three", None, now).expect("a digit"), 3, "the first rests");
    assert_eq!(ledger.pair_kiosk("stranger", Some("guess"), now).expect("a digit"), 4, "who does not know its key");
    assert_eq!(ledger.pair_kiosk("again", Some("one"), now).expect("a digit"), 1, "who comes back has it again");
    // Released and back, over and over, it stays the same tablet.
    ledger.release_kiosk(1, now).expect("released");
    assert_eq!(ledger.pair_kiosk("once more", Some("again"), now).expect("a digit"), 1);
    // A tablet that is still paired and pairs anew keeps its digit, too, and its old key is worth nothing.
    assert_eq!(ledger.pair_kiosk("changed", Some("once more"), now).expect("a digit"), 1);
    assert_eq!(ledger.kiosk_by_key("once more").expect("read"), None);
    for n in 5..=10 {
        ledger.pair_kiosk(&format!("more {n}"), None, now).expect("a digit");
    }
    ledger.release_kiosk(7, now).expect("released");
    assert!(matches!(ledger.pair_kiosk("late", None, now), Err(LedgerError::TenKiosks)), "all are given or rest");
    ledger.close_show(Currency::from_code("USD").expect("a currency"), now).expect("closed");
    assert_eq!(ledger.pair_kiosk("late", None, now).expect("a digit"), 7);
}

#[test]
fn what_a_tablet_keeps_is_shown_at_the_desk_and_can_be_taken_in() {
    let dir = tempfile::tempdir().expect("a folder");
    let first = Table::new();
    let tablet = Tablet::open(dir.path(), Some(first.desk.pair_local().expect("a digit")));
    tablet.is_in_reach();
    drop(first);
    let (clash, free) = (tablet.send(), tablet.send());
    tablet.hear_waiting(free);

    // Another desk, which does not know the tablet and has given its digit away.
    let table = Table::new();
    let seller = table.seller();
    let other = table.kiosk();
    other.deliver(&other.ticket(clash.number.sequence(), &["key-heart"], Wearer::From13), false);
    assert_eq!(pair(&tablet, &table.desk, new_code(&seller)), Ok(2));
    until("both are set aside", || tablet.link.aside() == 2);
    let shows = |words: &str| until(words, || seller.get("/kiosks").text.contains(words));
    shows("2 tickets were not taken");
    let page = seller.get("/kiosks").text;
    for words in [&free.number.to_string(), &clash.number.to_string(), "another tablet’s digit", "Take it in"] {
        assert!(page.contains(words), "{words}: {page}");
    }
    assert!(seller.get("/tickets").text.contains("2 tickets on the tablets were not taken"), "said on every page");
    assert_eq!(numbers(&table.desk).len(), 1, "nothing comes in unasked");
    assert!(seller.get("/kiosks/2/release").text.contains(&free.number.to_string()), "said before it is released");

    // Somebody else may not.
    let nobody = Seller { agent: kit::agent(), url: table.desk.url(), cookie: String::new() };
    assert!(nobody.post(&format!("/kiosks/2/take-in/{}", free.id), &[]).location.starts_with("/sign-in"));
    let take_in = |kept: Kept| seller.post(&format!("/kiosks/2/take-in/{}", kept.id), &[]).status;
    let of = |kept: Kept| table.desk.with_ledger(move |ledger| ledger.ticket(kept.id)).expect("open").expect("there");
    // The other tablet has the digit and may have given the number, too: this guest gets a new one.
    assert_eq!(take_in(clash), 303);
    until("the first is in", || numbers(&table.desk).len() == 2);
    assert_eq!((of(clash).number.kiosk(), of(clash).show), (2, 1));
    // With that tablet gone nobody else can have the number.
    release(&table.desk, 1);
    until("it is still there", || take_in(free) == 303);
    until("both are in", || numbers(&table.desk).len() == 3);
    assert_eq!(of(free).number, free.number);
    until("nothing is left on the tablet", || tablet.link.aside() == 0);
    until("nothing is said any more", || !seller.get("/tickets").text.contains("not taken"));
    until("nothing is left on the page", || !seller.get("/kiosks").text.contains("not taken"));
    shows(&format!("{} came in as {}", clash.number, of(clash).number));
    // The tablet's own numbers go on behind.
    let next = tablet.send();
    tablet.hear_arrived(next);
    assert!(numbers(&table.desk).contains(&next.number.to_string()));
}

#[test]
fn a_pairing_is_refused_for_what_is_really_wrong() {
    let (table, dir) = (Table::new(), tempfile::tempdir().expect("a folder"));
    let seller = table.seller();
    let tablet = Tablet::open(dir.path(), None);
    assert_eq!(pair(&tablet, &table.desk, "123456".into()), Err(PairError::NoCode));
    let code = new_code(&seller);
    let wrong: String = code.chars().filter(|c| !c.is_whitespace()).rev().collect::<String>() + "1";
    assert_eq!(pair(&tablet, &table.desk, wrong), Err(PairError::WrongCode));
    for _ in 0..9 {
        table.desk.pair_local().expect("a digit");
    }
    table.desk.pair_local().expect("the tenth");
    assert_eq!(pair(&tablet, &table.desk, new_code(&seller)), Err(PairError::NoDigit));
    let no_desk = FakeDesk::start(|_: &Asked| Some((200, "[]".into())));
    tablet.link.pair(format!("http://{}", no_desk.addr), "123456".into());
    let answer = tablet.hear("the pairing", |news| match news {
        News::Paired(outcome) => Some(outcome),
        _ => None,
    });
    assert!(matches!(answer, Err(PairError::NotADesk { .. })), "{answer:?}");
    tablet.link.pair("127.0.0.1:1".into(), "123456".into());
    let answer = tablet.hear("the pairing", |news| match news {
        News::Paired(outcome) => Some(outcome),
        _ => None,
    });
    assert!(matches!(&answer, Err(PairError::NotReached { desk, .. }) if desk.contains("127.0.0.1:1")), "{answer:?}");
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

#[test]
fn a_tablets_words_are_no_more_than_words() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let report = |count: usize, trouble: &str| {
        let number = kiosk.ticket(0, &[], Wearer::From13).number;
        let one =
            TicketReport { id: Uuid::now_v7(), number, drops: 1, sum: "<b>$1</b>".into(), trouble: trouble.into() };
        let report = KioskReport { waiting: vec![], aside: vec![one; count], unreadable: usize::MAX };
        let request = kiosk.agent.post(format!("{}/link/report", kiosk.pairing.desk));
        request.header("Authorization", kiosk.bearer()).send_json(report).expect("an answer").status().as_u16()
    };
    assert_eq!(report(2, "<script>alert(1)</script>"), 200);
    let page = seller.get("/kiosks").text;
    assert!(page.contains("&lt;script&gt;alert(1)&lt;/script&gt;") && !page.contains("<script>alert"), "{page}");
    assert!(page.contains("&lt;b&gt;$1&lt;/b&gt;"));
    assert_eq!(report(1, &"long ".repeat(40_000)), 200);
    assert!(seller.get("/kiosks").text.len() < 20_000, "a long story is cut");
    assert_eq!(report(20_000, ""), 413);
    assert_eq!(report(1, ""), 200);
    // What does not lie on the tablet can't be asked for, and what nobody asked for does not come in.
    assert_eq!(seller.post(&format!("/kiosks/1/take-in/{}", Uuid::now_v7()), &[]).status, 404);
    assert_eq!(seller.post(&format!("/kiosks/7/take-in/{}", Uuid::now_v7()), &[]).status, 404);
    let ticket = kiosk.ticket(3, &[], Wearer::From13);
    let request = kiosk.agent.post(format!("{}/link/take-in", kiosk.pairing.desk));
    let mut answer = request.header("Authorization", kiosk.bearer()).send_json(&ticket).expect("an answer");
    let answer: Receipt = answer.body_mut().read_json().expect("an answer");
    assert!(matches!(answer, Receipt::Refused { .. }), "{answer:?}");
    assert!(numbers(&table.desk).is_empty());
}

/// Another desk under the address, or one that was put back to an older day, may not know the tablet for a while.
#[test]
fn a_tablet_that_is_known_again_goes_on_by_itself() {
    let dir = tempfile::tempdir().expect("a folder");
    let (answers, usual, order) = (Arc::default(), Arc::new(Mutex::new(0)), Arc::default());
    let knows = Arc::new(AtomicBool::new(true));
    let inner = fake_answers(answers, Arc::clone(&usual), Arc::clone(&order));
    let known = Arc::clone(&knows);
    let desk = FakeDesk::start(
        move |asked: &Asked| {
            if known.load(Ordering::Relaxed) { inner(asked) } else { Some((401, String::new())) }
        },
    );
    let pairing = Pairing { desk: format!("http://{}", desk.addr), key: "0".repeat(64), digit: 3 };
    let tablet = Tablet::open(dir.path(), Some(pairing));
    tablet.is_in_reach();
    let kept = tablet.send();
    tablet.hear_waiting(kept);
    *usual.lock().unwrap() = 200;
    knows.store(false, Ordering::Relaxed);
    tablet.hear("being let go", |news| (news == News::LetGo(true)).then_some(()));
    assert_eq!(tablet.link.send(tablet.draft()).expect_err("no number"), SendError::LetGo);
    assert_eq!(tablet.link.waiting(), 1, "what has a number is kept");
    knows.store(true, Ordering::Relaxed);
    tablet.hear_arrived(kept);
    until("it gives numbers again", || !tablet.link.is_let_go());
    let next = tablet.send();
    tablet.hear_arrived(next);
    assert_ne!(next.number, kept.number);
}

/// kill -9 between setting a ticket aside and taking it off the outbox leaves it in both.
#[test]
fn a_ticket_that_lies_in_both_places_is_told_once_and_delivered_once() {
    let dir = tempfile::tempdir().expect("a folder");
    let (answers, usual, order) =
        (Arc::<Mutex<BTreeMap<Uuid, u16>>>::default(), Arc::new(Mutex::new(422)), Arc::default());
    let desk = fake(Arc::clone(&answers), Arc::clone(&usual), Arc::clone(&order));
    let pairing = Pairing { desk: format!("http://{}", desk.addr), key: "0".repeat(64), digit: 3 };
    let tablet = Tablet::open(dir.path(), Some(pairing));
    tablet.is_in_reach();
    let kept = tablet.send();
    tablet.hear("the refusal", |news| matches!(news, News::Refused { .. }).then_some(()));
    drop(tablet);
    let file = format!("{}.json", kept.id);
    std::fs::copy(dir.path().join("refused").join(&file), dir.path().join("outbox").join(&file)).expect("a copy");
    // Refused once more it is one, ...
    let tablet = Tablet::open(dir.path(), None);
    tablet.hear("the refusal", |news| matches!(news, News::Refused { .. }).then_some(()));
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 1));
    drop(tablet);
    // ... and taken it is none.
    std::fs::copy(dir.path().join("refused").join(&file), dir.path().join("outbox").join(&file)).expect("a copy");
    *usual.lock().unwrap() = 200;
    let tablet = Tablet::open(dir.path(), None);
    tablet.hear_arrived(kept);
    assert_eq!((tablet.link.waiting(), tablet.link.aside()), (0, 0));
    assert_eq!(*order.lock().unwrap(), [kept.id]);
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
