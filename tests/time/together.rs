//! What is entered together: one commit, each with an answer of its own, given when it is kept.

use std::sync::mpsc;

use chatelaine::{
    ledger::{Ledger, LedgerError, Work},
    ticket::Receipt,
};
use rusqlite::Connection;

use crate::book::{catalog, count, now, sent};

#[test]
fn each_is_kept_or_taken_back_by_itself_and_answered_when_it_is_kept() {
    let catalog = catalog();
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("ledger.sqlite");
    let mut ledger = Ledger::open(&file, now()).expect("a ledger");
    ledger.take_catalog(&catalog, "first", now()).expect("taken over");
    let tickets = [0, 1].map(|n| sent(&catalog, n, &["key-heart"]));
    let last = sent(&catalog, 2, &["found-token", "found-token"]);
    let (tell, told) = mpsc::channel();
    let answers = |name: &'static str, tell: &mpsc::Sender<(&'static str, bool, i64)>| {
        let (tell, file) = (tell.clone(), file.clone());
        move |done: bool| {
            // Whoever is answered finds everything on the disk already.
            let db = Connection::open(file).expect("the file");
            let rows = db.query_row("SELECT count(*) FROM tickets", [], |row| row.get(0)).expect("a count");
            tell.send((name, done, rows)).expect("heard");
        }
    };
    let mut works: Vec<Work> = Vec::new();
    for (name, ticket) in ["first", "second"].into_iter().zip(tickets.clone()) {
        let (catalog, answer) = (catalog.clone(), answers(name, &tell));
        works.push(Box::new(move |ledger| {
            let receipt = ledger.receive(&ticket, true, &catalog, now());
            Box::new(move |kept| answer(receipt.is_ok() && kept.is_ok()))
        }));
    }
    let panics = answers("panics", &tell);
    works.insert(
        1,
        Box::new(move |ledger| {
            ledger.set_setting("half", "done").expect("set");
            if ledger.setting("half").expect("read").is_some() {
                panic!("as a fault in the program would");
            }
            Box::new(move |kept| panics(kept.is_ok()))
        }),
    );
    let (short, answer) = (catalog.clone(), answers("short", &tell));
    works.push(Box::new(move |ledger| {
        let receipt = ledger.receive(&last, true, &short, now()).expect("an answer");
        Box::new(move |kept| answer(matches!(receipt, Receipt::Short { .. }) && kept.is_ok()))
    }));
    let (fails, id) = (answers("fails", &tell), tickets[0].id);
    works.push(Box::new(move |ledger| {
        let refused = ledger.hand_over(id, now());
        Box::new(move |_| fails(matches!(refused, Err(LedgerError::State { .. }))))
    }));
    assert!(ledger.together(works), "one of them panicked");
    drop(tell);
    let all: Vec<_> = told.iter().collect();
    assert_eq!(all, [("first", true, 2), ("second", true, 2), ("short", true, 2), ("fails", true, 2)]);
    ledger.reopen().expect("opened anew");
    assert_eq!(ledger.setting("half").expect("read"), None, "of what panicked nothing is left");
    assert_eq!((count(&ledger, "key-heart").1, count(&ledger, "found-token").1), (2, 0));
    assert_eq!(ledger.tickets().expect("tickets").len(), 2);
}
