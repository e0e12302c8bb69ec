//! Books as earlier versions wrote them open and keep every figure. The fixture of layout 2 was written by a version of
//! that layout; layout 1 had no table of what the catalogue last said of its parts, and its cautions had fewer fields.

use std::path::{Path, PathBuf};

use chatelaine::{
    ledger::{Ledger, SoldLine},
    ticket::{State, Tender},
};
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::book::{catalog, check_all, count, now};

/// The file of a book, written from the statements of fixture `name` with `more` after them.
pub fn written(folder: &Path, name: &str, more: &str) -> PathBuf {
    let statements = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/ledger").join(name);
    let statements = std::fs::read_to_string(statements).expect("a fixture");
    let file = folder.join("ledger.sqlite");
    let db = rusqlite::Connection::open(&file).expect("a file");
    db.execute_batch(&format!("{statements}{more}")).expect("written");
    file
}

fn id(n: u8) -> Uuid {
    format!("01990000-0000-7000-8000-0000000000{n:02}").parse().expect("an id")
}

fn d(text: &str) -> Decimal {
    text.parse().expect("an amount")
}

/// Takes away what the first layout did not have.
fn make_layout_1(file: &Path) {
    let db = rusqlite::Connection::open(file).expect("the file");
    db.execute_batch("DROP TABLE facts; PRAGMA user_version = 1;").expect("fewer tables");
    let mut taken = 0;
    for column in ["ticket", "sent"] {
        let mut rows = db.prepare(&format!("SELECT id, {column} FROM tickets")).expect("rows");
        let rows = rows.query_map([], |row| Ok((row.get::<_, String>(0)?, row.get::<_, String>(1)?))).expect("rows");
        for (id, text) in rows.map(|row| row.expect("a row")) {
            let mut document: serde_json::Value = serde_json::from_str(&text).expect("a document");
            for caution in document["verdict"]["cautions"].as_array_mut().expect("cautions") {
                let fields = caution.as_object_mut().expect("fields");
                fields.retain(|name, _| ["code", "drop", "rule", "text", "grave"].contains(&name.as_str()));
                taken += 1;
            }
            let sql = format!("UPDATE tickets SET {column} = ? WHERE id = ?");
            db.execute(&sql, [document.to_string(), id]).expect("as it was written then");
        }
    }
    assert!(taken > 0, "the fixture has cautions");
}

/// What the version that wrote the fixture said of it, and what it left out: ticket 4 of show 1 came late, was rung up
/// in show 2 for 21.25, and stood in no close-out.
#[test]
fn a_book_of_an_earlier_layout_keeps_every_figure() {
    for layout in [2, 1] {
        let folder = tempfile::tempdir().expect("a folder");
        let file = written(folder.path(), "layout-2.sql", "");
        if layout == 1 {
            make_layout_1(&file);
        }
        for start in ["first", "again"] {
            let ledger = Ledger::open(&file, now()).expect("the old book");
            assert!(ledger.is_sound().expect("an answer"));
            let closed = ledger.closed_show(1).expect("read").expect("a close-out").sums;
            assert_eq!((closed.sold, closed.let_go, closed.let_go_now), (2, 1, 1), "{layout} {start}");
            assert_eq!(
                (closed.cash, closed.card, closed.totals, closed.tax),
                (d("22.84"), d("34.53"), d("57.37"), d("3.37"))
            );
            assert_eq!(closed.parts["locket-round"], SoldLine { count: 1, marked: d("12.00") });
            assert_eq!(ledger.closed_show(2).expect("read"), None);
            let counts =
                [("chain-brass", (16, 1)), ("charm-moon", (12, 0)), ("key-heart", (9, 0)), ("vial-stars", (1, 0))];
            for (part, wanted) in counts {
                assert_eq!(count(&ledger, part), wanted, "{layout} {start} {part}");
            }
            let far = ledger.so_far().expect("sums");
            assert_eq!((far.show, far.sold, far.cash, far.card), (2, 2, d("24.44"), d("21.25")), "{layout} {start}");
            assert_eq!((far.late.sold, far.late.taken), (1, d("21.25")));
            let came = ledger.came_after(1).expect("read");
            assert_eq!(
                came.iter().map(|one| (one.id, one.state, one.settled)).collect::<Vec<_>>(),
                [(id(4), State::RungUp, Some(2)), (id(5), State::Sent, None)]
            );
            let settled = |n| ledger.ticket(id(n)).expect("a ticket").settled;
            assert_eq!([1, 2, 3, 6].map(settled), [Some(1), Some(1), Some(1), Some(2)]);
            assert_eq!(ledger.setting("pin").expect("read").as_deref(), Some("0102:0304"));
            assert_eq!(ledger.kiosk_by_key("aa").expect("read"), Some(1));
            assert!(ledger.session("bb").expect("read").is_some());
            assert_eq!(ledger.history(id(2)).expect("entries").len(), 7);
        }
        // And on it goes: the checked ticket is rung up, the late one let go.
        let mut ledger = Ledger::open(&file, now()).expect("the old book");
        ledger.take_catalog(&catalog(), "newer", now()).expect("taken over");
        check_all(&mut ledger, id(7));
        ledger.ring_up(id(7), Tender::Card, now()).expect("rung up");
        let second = ledger.close_show(catalog().table.prices.currency, now()).expect("closed");
        assert_eq!((second.sold, second.let_go_now, second.late.let_go), (3, 1, 1));
        assert_eq!((second.card, second.cash), (d("39.31"), d("24.44")));
    }
}
