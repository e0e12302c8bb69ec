//! An open page tells the desk what it has, and the desk sends what is different: over real sockets, and in a browser.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{
    io::{BufRead, BufReader},
    sync::{Arc, mpsc},
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    craft::Wearer,
    ledger::{Group, Ledger, LedgerError, Part, Work},
    link::wire::KioskReport,
    money::Tender,
    ticket::SentTicket,
};
use jiff::Timestamp;
use uuid::Uuid;

#[path = "desk/driver.rs"]
#[expect(dead_code, reason = "the walk through all pages needs more of it")]
mod driver;
#[path = "changes/in_a_browser.rs"]
mod in_a_browser;
#[path = "desk/kit.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "support/open_page.rs"]
mod open_page;
#[path = "support/random.rs"]
mod random;
#[path = "attack/raw.rs"]
#[expect(dead_code, reason = "the attacks need more of it")]
mod raw;
#[path = "desk/seller.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
mod support;

use kit::{Kiosk, Table};
use open_page::{OpenPage, main_of, without_times};
use random::Random;
use seller::{Answer, Seller};

/// One card of the queue and the order of forty, in bytes.
const SMALL: usize = 4096;

/// A renewal by a page that says that it has `list`.
fn renewal(seller: &Seller, page: &str, list: &str) -> Answer {
    let request = seller.agent.get(format!("{}{page}", seller.url)).header("Cookie", &seller.cookie);
    request.header("x-live", "1").header("x-has", list).call().expect("an answer").into()
}

fn open(seller: &Seller, page: &str) -> OpenPage {
    let whole = seller.get(page);
    assert_eq!(whole.status, 200, "{page}");
    let open = OpenPage::read(&whole.text);
    assert_eq!(without_times(&open.main()), without_times(main_of(&whole.text)), "taken apart and put together");
    open
}

fn on<T: Send + 'static>(
    table: &Table,
    work: impl FnOnce(&mut Ledger) -> Result<T, LedgerError> + Send + 'static,
) -> T {
    table.desk.with_ledger(work).expect("open").unwrap_or_else(|error| panic!("{error}"))
}

/// Puts `count` tickets of `kiosks` into the ledger without the way over the network.
fn fill(table: &Table, kiosks: &[Kiosk], count: usize) {
    let first = kiosks[0].ticket(0, &[&kiosks[0].fitting()[0].id], Wearer::From13);
    let each = 900;
    for (kiosk, many) in kiosks.iter().zip((0..count).collect::<Vec<_>>().chunks(each)) {
        let works: Vec<Work> = (0..many.len() as u16)
            .map(|sequence| -> Work {
                let number = chatelaine::ticket::TicketNumber::new(kiosk.pairing.digit, sequence).expect("a number");
                let ticket = SentTicket { id: Uuid::now_v7(), number, ..first.clone() };
                let catalog = Arc::clone(&kiosk.catalog);
                Box::new(move |ledger| {
                    let receipt = ledger.receive(&ticket, false, &catalog, Timestamp::now());
                    Box::new(move |kept| assert!(receipt.is_ok() && kept.is_ok()))
                })
            })
            .collect();
        table.desk.with_ledger(move |ledger| ledger.together(works)).expect("open");
    }
}

#[test]
fn with_many_waiting_only_what_is_new_is_sent() {
    let table = Table::new();
    let (seller, kiosks) = (table.seller(), [(); 6].map(|()| table.kiosk()));
    fill(&table, &kiosks, 5000);
    let first = open(&seller, "/tickets");
    assert!(first.main().contains(">5000<"), "all of them are counted");
    // The end of the list, where those that come are added.
    let forty = on(&table, |ledger| ledger.window(Group::Waiting, None, 41));
    let end = format!("/tickets?group=waiting&after={}", forty[40].arrival);
    let mut page = open(&seller, &end);
    assert_eq!(page.main().matches("class=\"card ticket\"").count(), 40);
    let same = renewal(&seller, &end, &page.has());
    assert_eq!((same.status, same.text.as_str()), (204, ""));

    // One arrives: its card comes and the order, and nothing else.
    let kiosk = &kiosks[5];
    let sent = kiosk.ticket(950, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&sent, false);
    // Who looks at those that came first learns that there are more, and no card.
    let count = renewal(&seller, "/tickets", &first.has()).text;
    assert!(count.contains(">5001<") && !count.contains("class=\"card ticket\""), "{count}");
    let changes = renewal(&seller, &end, &page.has());
    assert_eq!(changes.status, 200);
    assert_eq!(changes.text.matches("class=\"card ticket\"").count(), 1, "{}", changes.text);
    assert!(
        changes.text.contains(&format!("/tickets/{}\"", sent.id)) && changes.text.len() < SMALL,
        "{}",
        changes.text.len()
    );
    page.take(&changes.text);
    let whole = seller.get(&end).text;
    assert_eq!(without_times(&page.main()), without_times(main_of(&whole)));
    println!("one arrival: {} bytes, the whole page: {}", changes.text.len(), whole.len());
    assert_eq!(renewal(&seller, &end, &page.has()).status, 204);
    // A page that only counts what was taken does not change by it.
    let show = open(&seller, "/show");
    kiosk.deliver(&kiosk.ticket(951, &[], Wearer::From13), false);
    assert_eq!(renewal(&seller, "/show", &show.has()).status, 204);
}

#[test]
fn a_tick_sends_what_it_changes() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let ids: Vec<&str> = kiosk.fitting().iter().take(6).map(|kind| kind.id.as_str()).collect();
    let sent = kiosk.ticket(0, &ids, Wearer::From13);
    kiosk.deliver(&sent, true);
    let address = format!("/tickets/{}", sent.id);
    let mut page = open(&seller, &address);
    let id = sent.id;
    on(&table, move |ledger| ledger.tick(id, Part::Line(2), true, false, Timestamp::now()));
    let changes = renewal(&seller, &address, &page.has()).text;
    let keys: Vec<&str> =
        changes.split("<template data-key=\"").skip(1).filter_map(|part| part.split('"').next()).collect();
    // The line, how many are ticked, what is still to do before the money and below the page, the entry, and that it is shown.
    let mut expected = vec!["line-2", "next", "parts", "past", "till", "company"];
    expected.sort_unstable();
    let mut found = keys.clone();
    found.sort_unstable();
    assert_eq!(found, expected);
    page.take(&changes);
    assert_eq!(without_times(&page.main()), without_times(main_of(&seller.get(&address).text)));
}

#[test]
fn who_says_nonsense_gets_the_whole_page() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    kiosk.deliver(&kiosk.ticket(0, &[], Wearer::From13), true);
    let whole = |answer: &str, what: &str| {
        assert!(answer.contains("<!DOCTYPE html><html") && answer.contains("</footer>"), "{what}: {answer}");
    };
    let page = open(&seller, "/tickets");
    // Digests of nothing that the desk has.
    let lies =
        page.has().split(',').map(|pair| format!("{}={:016x}", pair.split('=').next().unwrap(), 7)).collect::<Vec<_>>();
    let long = format!("{},{}", page.has(), vec!["x=0123456789abcdef"; 5000].join(","));
    let half = &page.has()[..page.has().len() - 1];
    for list in [&lies.join(","), "", " ", ",", "=", "main", "main=", "main=main", "*=", "*=0123456789abcdef", half] {
        let answer = renewal(&seller, "/tickets", list);
        assert_eq!(answer.status, 200, "{list:?}");
        whole(&answer.text, list);
    }
    let (cookie, to) = (format!("cookie: {}", seller.cookie), table.desk.addr());
    for headers in [
        vec![format!("x-has: {long}")],
        vec![format!("x-has: {}", page.has()), format!("x-has: {}", page.has())],
        vec!["x-has: main=\u{e4}\u{1f600}".to_owned()],
    ] {
        let lines: Vec<&str> = headers.iter().chain([&cookie]).map(String::as_str).collect();
        let told = raw::ask(1, to, "GET /tickets", &lines, "");
        assert_eq!(told.status, 200);
        whole(&told.body, "a header");
    }
    // Keys of no page say nothing; what else is had is had.
    assert_eq!(renewal(&seller, "/tickets", &format!("{},elsewhere=0123456789abcdef", page.has())).status, 204);
    // What leads nowhere, and what is no page, is answered as ever.
    assert_eq!(renewal(&seller, "/nowhere", &page.has()).status, 404);
    assert_eq!(renewal(&seller, "/tickets?group=none", &page.has()).status, 400);
    whole(&renewal(&seller, "/trays/cautions", &page.has()).text, "another page");
}

#[test]
fn pages_of_two_addresses_do_not_mix() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let ids: Vec<&str> = kiosk.fitting().iter().take(3).map(|kind| kind.id.as_str()).collect();
    let tickets = [0, 1].map(|sequence| kiosk.ticket(sequence, &ids, Wearer::From13));
    tickets
        .iter()
        .for_each(|ticket| assert!(matches!(kiosk.deliver(ticket, true), chatelaine::ticket::Receipt::Stored { .. })));
    let [one, other] = tickets.map(|ticket| format!("/tickets/{}", ticket.id));
    let addresses = [one.as_str(), &other, "/tickets", "/tickets?group=waiting", "/show", "/trays", "/kiosks"];
    for from in addresses {
        for to in addresses.iter().filter(|to| **to != from) {
            let mut page = open(&seller, from);
            let answer = renewal(&seller, to, &page.has());
            assert_eq!(answer.status, 200, "{from} is not {to}");
            page.take(&answer.text);
            let fresh = seller.get(to).text;
            assert_eq!(without_times(&page.main()), without_times(main_of(&fresh)), "from {from} to {to}");
        }
    }
}

#[test]
fn a_renewal_is_no_sign_of_the_seller_and_ends_with_the_session() {
    let table = Table::new();
    let seller = table.seller();
    let page = open(&seller, "/tickets");
    let session = || {
        on(&table, |ledger| {
            let hash = ledger.browsers()?[0].session.clone().expect("a session");
            Ok((ledger.session(&hash)?.expect("it runs"), hash))
        })
    };
    let (_, hash) = session();
    let hours_ago = Timestamp::now() - jiff::SignedDuration::from_hours(11);
    on(&table, move |ledger| ledger.use_session(&hash, hours_ago));
    let (before, hash) = session();
    assert_eq!(renewal(&seller, "/tickets", &page.has()).status, 204);
    assert_eq!(renewal(&seller, "/show", &page.has()).status, 200);
    assert_eq!(session().0.used, before.used, "eleven hours unused, and not a minute less");
    let too_long = Timestamp::now() - jiff::SignedDuration::from_hours(13);
    on(&table, move |ledger| ledger.use_session(&hash, too_long));
    for list in [page.has().as_str(), "nonsense"] {
        let answer = renewal(&seller, "/tickets", list);
        assert_eq!((answer.status, answer.location.as_str()), (303, "/sign-in"));
    }
    let answer = renewal(&seller, "/kiosks", &page.has());
    assert_eq!((answer.status, answer.location.as_str()), (303, "/sign-in?back=/kiosks"));
    on(&table, |ledger| ledger.end_sessions(None, Timestamp::now()));
    assert_eq!(renewal(&seller, "/show", &page.has()).location, "/sign-in?back=/show");
}

#[test]
fn open_pages_are_told_a_few_times_a_second_however_much_happens() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let request = seller.agent.get(format!("{}/events", seller.url)).header("Cookie", &seller.cookie);
    let stream = BufReader::new(request.call().expect("a stream").into_body().into_reader());
    let (tell, told) = mpsc::channel();
    thread::spawn(move || {
        for line in stream.lines().map_while(Result::ok) {
            let Some(beat) = line.strip_prefix("data: ").or(line.strip_prefix("data:")) else { continue };
            if tell.send((Instant::now(), beat.to_owned())).is_err() {
                return;
            }
        }
    });
    let patience = Duration::from_secs(10);
    told.recv_timeout(patience).expect("the beat as it is");
    // A tablet whose words are others each time is news each time.
    let began = Instant::now();
    for unreadable in 1..=150 {
        let report = KioskReport { unreadable, ..KioskReport::default() };
        let request = kiosk.agent.post(format!("{}/link/report", kiosk.pairing.desk));
        request.header("Authorization", kiosk.bearer()).send_json(report).expect("an answer");
        thread::sleep(Duration::from_millis(4));
    }
    let last = seller.get("/events/now").text;
    let mut beats = Vec::new();
    while beats.last().is_none_or(|(_, beat)| *beat != last) {
        beats.push(told.recv_timeout(patience).expect("the last one is told as well"));
    }
    let most = began.elapsed().as_millis() / 250 + 2;
    assert!(beats.len() as u128 <= most, "{} in {:?}", beats.len(), began.elapsed());
}

/// Whatever happens at the table, in any order: an open page that takes changes in is as one that was just opened.
#[test]
fn an_open_page_is_as_a_fresh_one_whatever_happens() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let mut random = Random(7);
    let mut sent: Vec<Uuid> = Vec::new();
    let mut pages: Vec<(String, OpenPage)> = ["/tickets", "/tickets?group=done", "/show", "/trays", "/kiosks"]
        .map(|page| (page.to_owned(), open(&seller, page)))
        .into();
    let (mut nothing, mut changes, mut whole) = (0, 0, 0);
    for step in 0..150 {
        if sent.is_empty() || random.of(4) == 0 {
            let ids: Vec<&str> = kiosk
                .fitting()
                .iter()
                .skip(random.of(9))
                .step_by(3)
                .take(random.of(5))
                .map(|kind| kind.id.as_str())
                .collect();
            let ticket = kiosk.ticket(step, &ids, [Wearer::From13, Wearer::Under3][random.of(2)]);
            kiosk.deliver(&ticket, false);
            sent.push(ticket.id);
            if sent.len().is_multiple_of(3) {
                let address = format!("/tickets/{}", ticket.id);
                pages.push((address.clone(), open(&seller, &address)));
            }
        } else {
            let (id, act, at) = (sent[random.of(sent.len())], random.of(8), random.of(4));
            let catalog = Arc::clone(&kiosk.catalog);
            // What can't be done is refused, and changes nothing.
            let _ = table.desk.with_ledger(move |ledger| {
                let now = Timestamp::now();
                match act {
                    0 | 1 => ledger.tick(id, Part::Line(at), at != 3, true, now).map(|_| ()),
                    2 => ledger.tick(id, Part::Base, true, true, now).map(|_| ()),
                    3 => ledger.set_told(id, at != 0, now).map(|_| ()),
                    4 => ledger.ring_up(id, Tender::Cash, now).map(|_| ()),
                    5 => ledger.let_go(id, now).map(|_| ()),
                    6 => ledger.remove(id, at, &catalog, now).map(|_| ()),
                    _ => {
                        let part = ledger.ticket(id)?.lines.get(at).map(|line| line.id.clone());
                        part.map_or(Ok(()), |part| ledger.recount(&part, at as u32, now).map(|_| ()))
                    }
                }
            });
        }
        for (address, page) in &mut pages {
            // Not every page asks after every change.
            if random.of(3) == 0 {
                continue;
            }
            let answer = renewal(&seller, address, &page.has());
            match answer.status {
                204 => nothing += 1,
                _ if answer.text.contains("<footer") => whole += 1,
                _ => changes += 1,
            }
            if answer.status != 204 {
                page.take(&answer.text);
            }
            let fresh = seller.get(address).text;
            assert_eq!(without_times(&page.main()), without_times(main_of(&fresh)), "{address} after step {step}");
        }
    }
    println!("{nothing} times nothing, {changes} times changes, {whole} times all");
    // A ticket that is let go may be another in all of its parts: then all of it is sent.
    assert!(nothing > 100 && changes > 100 && whole * 20 < changes, "{nothing}, {changes}, {whole}");
}
