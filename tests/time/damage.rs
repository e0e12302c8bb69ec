//! Damage: of one ticket, which hides nothing else; of the file, which is told with what to do; a panic, which ends with
//! the work that it came from.

use std::{fs, path::Path};

use chatelaine::{
    craft::Wearer,
    desk::{Desk, DeskError},
    ledger::{Group, Ledger, LedgerError},
    ticket::{Receipt, State},
};
use rusqlite::Connection;

use crate::{
    book::{catalog, count, now, sent},
    kit::{Table, config},
};

fn book(file: &Path) -> Ledger {
    let mut ledger = Ledger::open(file, now()).expect("a ledger");
    ledger.take_catalog(&catalog(), "first", now()).expect("taken over");
    ledger
}

#[test]
fn one_ticket_that_cannot_be_read_hides_nothing() {
    let catalog = catalog();
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("ledger.sqlite");
    let mut ledger = book(&file);
    let [bad, good] = [0, 1].map(|n| sent(&catalog, n, &["found-token", "key-heart"]));
    for ticket in [&bad, &good] {
        ledger.receive(ticket, false, &catalog, now()).expect("received");
    }
    drop(ledger);
    let db = Connection::open(&file).expect("the file");
    db.execute("UPDATE tickets SET ticket = '{\"id\":' WHERE id = ?", [bad.id.to_string()]).expect("damaged");
    drop(db);

    let mut ledger = book(&file);
    let waiting = ledger.window(Group::Waiting, None, 10).expect("a list");
    assert_eq!(
        waiting.iter().map(|one| (one.id, one.ticket.is_ok())).collect::<Vec<_>>(),
        [(good.id, true), (bad.id, false)]
    );
    assert_eq!(waiting[1].number, bad.number.to_string());
    assert_eq!(ledger.tally(Group::Waiting).expect("a count"), 2);
    let refused = ledger.ticket(bad.id).expect_err("damaged");
    assert!(refused.to_string().contains(&bad.number.to_string()), "{refused}");
    assert_eq!(ledger.tickets_numbered(bad.number).expect("found").len(), 1);
    let faults = ledger.faults().expect("read through");
    assert!(faults.len() == 1 && faults[0].contains(&bad.number.to_string()), "{faults:?}");
    // Sent once more, it is still in the book; the sweep and the catalogue pass by it.
    assert!(matches!(ledger.receive(&bad, false, &catalog, now()), Ok(Receipt::Stored { .. })));
    let later = now() + jiff::SignedDuration::from_hours(2);
    assert_eq!(ledger.end_holds(later).expect("a sweep"), 1);
    ledger.clock_was_set(jiff::SignedDuration::from_hours(1), later).expect("moved");
    ledger.call(good.id, later).expect("called");
    // Closing lets it go with all others, and nothing stays held.
    let closed = ledger.close_show(catalog.table.prices.currency, later).expect("closed");
    assert_eq!((closed.let_go, closed.let_go_now), (2, 2));
    assert_eq!((count(&ledger, "found-token"), count(&ledger, "key-heart").1), ((1, 0), 0));
    let again = ledger.tickets_numbered(bad.number).expect("found");
    assert_eq!((again[0].state, again[0].settled), (State::LetGo, Some(1)));
}

#[test]
fn the_desk_shows_a_ticket_that_cannot_be_read() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let [bad, good] = [0, 1].map(|n| kiosk.ticket(n, &[&kiosk.fitting()[0].id], Wearer::From13));
    for ticket in [&bad, &good] {
        kiosk.deliver(ticket, true);
    }
    let Table { desk, dir } = table;
    desk.stop();
    let db = Connection::open(dir.path().join("data/ledger.sqlite")).expect("the file");
    db.execute("UPDATE tickets SET ticket = '\"\"' WHERE id = ?", [bad.id.to_string()]).expect("damaged");
    drop(db);
    let desk = Desk::start(config(dir.path())).expect("the desk starts all the same");
    let seller = crate::seller::Seller { url: desk.url(), ..seller };
    let list = seller.get("/tickets");
    assert_eq!(list.status, 200);
    for words in [bad.number.to_string(), good.number.to_string(), "This ticket can’t be read".into()] {
        assert!(list.text.contains(&words), "{words}");
    }
    let page = seller.get(&format!("/tickets/{}", bad.id));
    assert!(page.status == 200 && page.text.contains("its entry in the ledger is damaged"), "{}", page.text);
    assert!(page.text.contains(&bad.number.to_string()) && page.text.contains("What happened so far"));
    assert_eq!(seller.post(&format!("/tickets/{}/call", bad.id), &[]).status, 500);
    assert_eq!(seller.post(&format!("/tickets/{}/call", good.id), &[]).status, 303);
}

/// What the desk says instead of starting.
fn refusal(folder: &Path) -> String {
    match Desk::start(config(folder)) {
        Err(DeskError::Ledger(error)) => error.to_string(),
        Err(other) => panic!("another refusal: {other}"),
        Ok(_) => panic!("the desk starts"),
    }
}

#[test]
fn a_damaged_ledger_is_told_with_what_to_do() {
    let Table { desk, dir } = Table::new();
    desk.stop();
    let file = dir.path().join("data/ledger.sqlite");
    let whole = fs::read(&file).expect("the file");
    // Its middle overwritten; cut in half; something else altogether.
    let mut spoilt = whole.clone();
    let (from, to) = (spoilt.len() / 4, spoilt.len() * 3 / 4);
    spoilt[from..to].fill(0xA5);
    for bytes in [&spoilt[..], &whole[..whole.len() / 2], b"a picture of a cat, not a ledger at all".as_slice()] {
        fs::write(&file, bytes).expect("written");
        let words = refusal(dir.path());
        for wanted in ["is damaged", "chatelaine backup", "a new ledger begins", "is lost", "ledger.sqlite"] {
            assert!(words.contains(wanted), "{wanted} in {words}");
        }
        assert_eq!(fs::read(&file).expect("the file"), bytes, "nothing was changed in it");
    }
    // As it says: the files moved away, a copy from before put in their place.
    for entry in fs::read_dir(dir.path().join("data")).expect("the folder").flatten() {
        if entry.file_name().to_string_lossy().starts_with("ledger.") {
            fs::remove_file(entry.path()).expect("moved away");
        }
    }
    fs::write(&file, &whole).expect("restored");
    Desk::start(config(dir.path())).expect("the desk starts again").stop();
}

#[test]
fn an_empty_ledger_in_a_used_folder_opens_no_fresh_set_up() {
    let table = Table::new();
    table.seller();
    let Table { desk, dir } = table;
    desk.stop();
    let data = dir.path().join("data");
    let file = data.join("ledger.sqlite");
    assert!(!data.join("ledger.sqlite-wal").exists(), "an orderly end leaves one file");
    let whole = fs::read(&file).expect("the file");
    // Emptied; gone; begun by another program without any table in it.
    fs::write(&file, b"").expect("emptied");
    let words = refusal(dir.path());
    assert!(words.contains("empty or gone") && words.contains("a new ledger begins"), "{words}");
    fs::remove_file(&file).expect("removed");
    assert!(refusal(dir.path()).contains("empty or gone"));
    let db = Connection::open(&file).expect("a file");
    db.execute_batch("PRAGMA journal_mode = WAL; VACUUM;").expect("a file with nothing in it");
    drop(db);
    assert!(refusal(dir.path()).contains("empty or gone"));
    fs::write(&file, whole).expect("restored");
    let desk = Desk::start(config(dir.path())).expect("the desk starts");
    let stranger = crate::seller::Seller { agent: crate::kit::agent(), url: desk.url(), cookie: String::new() };
    assert_eq!(stranger.get("/setup").location, "/sign-in", "the PIN is as it was");
}

/// Work that panics in the middle of a change is answered with an error, leaves nothing behind, and the desk works on.
#[test]
fn a_panic_ends_with_the_work_it_came_from() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let first = kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&first, true);
    let before = table.desk.with_ledger(|ledger| ledger.change()).expect("open").expect("a number");
    for _ in 0..3 {
        let nothing = table.desk.with_ledger(|ledger| -> Result<(), LedgerError> {
            ledger.set_setting("half", "done")?;
            panic!("as a fault in the program would");
        });
        assert!(nothing.is_none());
        assert_eq!(seller.get("/tickets").status, 200, "the desk works on");
    }
    let after = table.desk.with_ledger(|ledger| ledger.change()).expect("open").expect("a number");
    assert_eq!(after, before);
    let second = kiosk.ticket(1, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&second, true);
    assert_eq!(table.desk.with_ledger(|ledger| ledger.tickets()).expect("open").expect("tickets").len(), 2);
}
