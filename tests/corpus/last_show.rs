//! The last number that a show can have.

use chatelaine::{ledger::Ledger, money::Currency};
use jiff::Timestamp;

use crate::checks::{catalogue::catalog, is_one_line};

/// A ledger whose running show is the last that there can be: nothing overflows, and closing it is refused in words.
#[test]
fn no_show_follows_the_last_one() {
    let dir = tempfile::tempdir().expect("a folder");
    let file = dir.path().join("ledger.sqlite");
    let now: Timestamp = "2026-06-06T10:00:00Z".parse().expect("a time");
    drop(Ledger::open(&file, now).expect("a ledger"));
    let db = rusqlite::Connection::open(&file).expect("the file");
    db.execute_batch(
        "PRAGMA foreign_keys = OFF;
         UPDATE shows SET id = 9223372036854775807;
         UPDATE sums SET show = 9223372036854775807, body = replace(body, '\"show\":1', '\"show\":9223372036854775807');
         UPDATE events SET body = '9223372036854775807' WHERE kind = 'show_opened';",
    )
    .expect("changed");
    drop(db);
    let mut ledger = Ledger::open(&file, now).expect("a ledger");
    ledger.take_catalog(&catalog(), "first", now).expect("counts");
    assert_eq!(ledger.show().expect("a show").id, i64::MAX);
    assert_eq!(ledger.closed_show(i64::MAX).expect("read"), None);
    assert_eq!(ledger.came_after(i64::MAX).expect("read"), []);
    let before = ledger.change().expect("read");
    let refused = ledger.close_show(Currency::from_code("USD").expect("a currency"), now).expect_err("the last one");
    is_one_line(&refused.to_string());
    assert!(refused.to_string().contains("9223372036854775807") && refused.to_string().contains("Begin a new ledger"));
    assert_eq!((ledger.change().expect("read"), ledger.show().expect("a show").id), (before, i64::MAX));
    assert!(ledger.is_sound().expect("read"));
    assert_eq!(ledger.closed_show(i64::MIN).expect("read"), None);
}
