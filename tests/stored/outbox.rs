//! Tickets on their way, tickets that were set aside, and the numbers given.

use std::{
    fs, thread,
    time::{Duration, Instant},
};

use chatelaine::{
    craft::{Length, Wearer},
    desk::Desk,
    ledger::Ticket,
    link::{Draft, News},
    ticket::{SentTicket, TicketNumber},
};
use rust_decimal::Decimal;
use uuid::Uuid;

use super::{copied, fixture, hear, json, kit::Table, open};

fn id(n: u8) -> Uuid {
    format!("01990000-0000-7000-8000-0000000000{n:02}").parse().expect("an id")
}

fn until(what: &str, mut holds: impl FnMut() -> bool) {
    let began = Instant::now();
    while !holds() {
        assert!(began.elapsed() < Duration::from_secs(30), "{what}");
        thread::sleep(Duration::from_millis(30));
    }
}

fn ticket(desk: &Desk, n: u8) -> Ticket {
    desk.with_ledger(move |ledger| ledger.ticket(id(n))).expect("open").unwrap_or_else(|error| panic!("{n}: {error}"))
}

/// Number, sum, drops, wearer, and how long it is, as the ledger has them.
type Figures = (String, Decimal, Vec<String>, Wearer, Option<Length>);

fn figures(ticket: &Ticket) -> Figures {
    let drops = ticket.lines.iter().map(|line| format!("{} {} {}", line.home, line.id, line.price)).collect();
    (ticket.number.to_string(), ticket.quote.total, drops, ticket.piece.wearer, ticket.piece.length)
}

fn wanted(n: usize) -> Figures {
    let all = [
        ("1-000-8", "22.84", &["A1 key-heart 4.50", "B1 charm-moon 3.00"][..], Wearer::From13, Some(450.0)),
        ("1-001-9", "24.97", &["C16 vial-stars 6.50", "C2 bead-jade 3.00"], Wearer::From6To12, None),
        ("1-002-4", "19.66", &["A1 key-heart 4.50"], Wearer::From13, None),
    ];
    let (number, total, drops, wearer, length) = all[n];
    let drops = drops.iter().map(|drop| (*drop).to_owned()).collect();
    (number.to_owned(), total.parse().expect("a sum"), drops, wearer, length.map(Length::from_mm))
}

#[test]
fn outboxes_of_every_version_arrive_with_every_figure() {
    for version in ["first", "second", "third", "today"] {
        let (table, dir) = (Table::new(), copied(&format!("outbox/{version}")));
        let pairing = table.desk.pair_local().expect("a digit");
        let (link, news) = open(dir.path(), Some(pairing));
        until("both arrive", || link.waiting() == 0);
        for n in [1, 2] {
            let ticket = ticket(&table.desk, n);
            assert_eq!(figures(&ticket), wanted(usize::from(n) - 1), "{version}");
            assert_eq!(ticket.show, 1, "{version}");
        }
        // What the guest was told is what the entry of the delivery keeps.
        let history = table.desk.with_ledger(|ledger| ledger.history(id(2))).expect("open").expect("entries");
        let sent = &history[0].body;
        assert_eq!(sent["verdict"]["cautions"][0]["code"], "glass", "{version}");
        assert_eq!((&sent["verdict"]["suitable"], &sent["grown_up_confirmed"]), (&true.into(), &true.into()));
        // The one that was not taken lies there still, as it was, and the next number is the next.
        assert_eq!(link.aside(), 1, "{version}");
        let name = format!("refused/{}.json", id(3));
        assert_eq!(json(&dir.path().join(&name)), json(&fixture(&format!("outbox/{version}/{name}"))));
        hear(&news, "the desk in reach", |news| matches!(news, News::DeskInReach(true)).then_some(()));
        let draft: SentTicket = from_fixture("today", "refused", 3);
        let next = link.send(Draft { id: Uuid::now_v7(), ..draft_of(draft) }).expect("kept");
        assert_eq!(next.number.to_string(), "1-003-5", "{version}");
    }
}

fn from_fixture(version: &str, folder: &str, n: u8) -> SentTicket {
    let entry = json(&fixture(&format!("outbox/{version}/{folder}/{}.json", id(n))));
    serde_json::from_value(entry["ticket"].clone()).expect("a ticket")
}

fn draft_of(sent: SentTicket) -> Draft {
    let SentTicket { id, piece, quote, verdict, grown_up_confirmed, .. } = sent;
    Draft { id, piece, quote, verdict, grown_up_confirmed }
}

#[test]
fn an_outbox_is_written_in_the_form_of_its_fixture() {
    let (table, dir) = (Table::new(), tempfile::tempdir().expect("a folder"));
    let (link, news) = open(dir.path(), Some(table.desk.pair_local().expect("a digit")));
    hear(&news, "the desk in reach", |news| matches!(news, News::DeskInReach(true)).then_some(()));
    drop(table);
    for n in [1, 2] {
        link.send(draft_of(from_fixture("today", "outbox", n))).expect("kept");
        hear(&news, "its number", |news| matches!(news, News::Waiting(kept) if kept.id == id(n)).then_some(()));
        let name = format!("outbox/{}.json", id(n));
        let mut wanted = json(&fixture(&format!("outbox/today/{name}")));
        wanted["number_given"] = true.into();
        let written = json(&dir.path().join(name));
        // The first ticket of a show was number 000 then; the form of a number is the same.
        wanted["ticket"]["number"] = written["ticket"]["number"].clone();
        assert_eq!(written, wanted);
        assert!(written["ticket"]["number"].as_str().is_some_and(|number| number.parse::<TicketNumber>().is_ok()));
    }
    let mut numbers = json(&fixture("outbox/today/numbers.json"));
    numbers["next"] = 3.into();
    assert_eq!(json(&dir.path().join("numbers.json")), numbers);
    assert_eq!(fs::read_dir(dir.path().join("refused")).expect("a folder").count(), 0);
}
