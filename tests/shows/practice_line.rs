//! Practice on a real tablet's line: real tickets wait, practice uses up no number, and the screen is told.

use std::{
    fs,
    path::Path,
    sync::Arc,
    time::{Duration, Instant},
};

use chatelaine::{
    craft::{Piece, Wearer},
    guest::{Guest, Settings},
    link::{Draft, Kept, Link, LinkConfig, News, NewsReceiver, Pairing},
    ticket::SentTicket,
};
use uuid::Uuid;

use crate::{book, kit::Table};

/// Opens a tablet's line; without a pairing it has the one that it keeps.
fn open(dir: &Path, pairing: Option<Pairing>) -> (Link, NewsReceiver) {
    Link::open(LinkConfig { dir: dir.to_owned(), pairing, wake: Arc::new(|| {}) })
        .unwrap_or_else(|error| panic!("{error}"))
}

/// Waits for the news that `wanted` looks for.
fn hear<T>(news: &NewsReceiver, what: &str, mut wanted: impl FnMut(News) -> Option<T>) -> T {
    let end = Instant::now() + Duration::from_secs(40);
    loop {
        let left = end.saturating_duration_since(Instant::now());
        let one = news.recv_timeout(left).unwrap_or_else(|_| panic!("{what} was not heard"));
        if let Some(found) = wanted(one) {
            return found;
        }
    }
}

fn draft() -> Draft {
    let catalog = book::catalog();
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

fn arrives(news: &NewsReceiver, kept: Kept) {
    hear(news, "its arrival", |news| matches!(news, News::Delivered { kept: of, .. } if of == kept).then_some(()));
}

#[test]
fn real_tickets_wait_for_the_end_of_practice_and_practice_uses_up_no_number() {
    let (table, dir) = (Table::new(), tempfile::tempdir().expect("a folder"));
    let mut seller = table.seller();
    let (link, news) = open(dir.path(), Some(table.desk.pair_local().expect("a digit")));
    hear(&news, "the desk", |news| matches!(news, News::DeskInReach(true)).then_some(()));
    let first = link.send(draft()).expect("kept");
    arrives(&news, first);
    assert_eq!(first.number.to_string(), "1-001-9");
    drop((link, news));
    // A ticket that was given its number while the desk was away.
    let waiting =
        SentTicket { number: "1-002-4".parse().expect("a number"), ..book::sent(&book::catalog(), 1, &["key-heart"]) };
    let entry = serde_json::json!({ "ticket": waiting, "number_given": true });
    assert!(!entry.to_string().contains("practice"), "what is real has the form that it always had");
    fs::write(dir.path().join(format!("outbox/{}.json", waiting.id)), entry.to_string()).expect("written");
    let numbers = || fs::read_to_string(dir.path().join("numbers.json")).expect("numbers");
    let before = numbers();

    seller.post("/practice/begin", &[]);
    let (link, news) = open(dir.path(), None);
    hear(&news, "that the desk practises", |news| (news == News::Practice(true)).then_some(()));
    for number in ["1-001-9", "1-002-4"] {
        let practised = link.send(draft()).expect("kept");
        assert_eq!(practised.number.to_string(), number, "numbers of its own");
        arrives(&news, practised);
    }
    assert_eq!(link.waiting(), 1, "the real one waits");
    assert_eq!(numbers(), before, "no real number is used up");
    // The seller sees why it waits.
    let end = Instant::now() + Duration::from_secs(40);
    while !seller.get("/kiosks").text.contains("the desk practises now") {
        assert!(Instant::now() < end, "nobody said why it waits");
        std::thread::sleep(Duration::from_millis(200));
    }
    drop((link, news));
    let (link, news) = open(dir.path(), None);
    hear(&news, "it from what is kept", |news| (news == News::Practice(true)).then_some(()));

    seller.open("/show");
    assert_eq!(seller.post("/practice/end", &[]).status, 303);
    let mut guest = Guest::new(Settings::default(), 1);
    let _ = guest.hear(News::Practice(true));
    assert!(guest.known().practice);
    let (mut over, mut arrived) = (false, false);
    hear(&news, "the end, and the arrival of what waited", |news| {
        over |= news == News::Practice(false);
        arrived |= matches!(&news, News::Delivered { kept, .. } if kept.id == waiting.id);
        let _ = guest.hear(news);
        (over && arrived).then_some(())
    });
    assert!(!guest.known().practice);
    let next = link.send(draft()).expect("kept");
    assert_eq!(next.number.to_string(), "1-003-5", "the number after the last real one");
    arrives(&news, next);
}

#[test]
fn a_ticket_of_practice_that_comes_after_its_end_is_thrown_away() {
    let (table, dir) = (Table::new(), tempfile::tempdir().expect("a folder"));
    let _seller = table.seller();
    let ticket = SentTicket { practice: true, show: 2, ..book::sent(&book::catalog(), 0, &["key-heart"]) };
    fs::create_dir_all(dir.path().join("outbox")).expect("a folder");
    let entry = serde_json::json!({ "ticket": ticket, "number_given": true });
    fs::write(dir.path().join(format!("outbox/{}.json", ticket.id)), entry.to_string()).expect("written");
    let (link, news) = open(dir.path(), Some(table.desk.pair_local().expect("a digit")));
    hear(&news, "that practice is over", |news| {
        matches!(news, News::NotKept { id, .. } if id == ticket.id).then_some(())
    });
    assert_eq!((link.waiting(), link.aside()), (0, 0));
    assert_eq!(fs::read_dir(dir.path().join("outbox")).expect("a folder").count(), 0);
    let tickets = table.desk.with_ledger(|ledger| ledger.tickets()).unwrap().unwrap();
    assert!(tickets.is_empty(), "no real desk takes it in");
}
