//! Counts: the file's figures, what is put in, and what is held.

use chatelaine::{catalog::Catalog, craft::Day, ledger::LedgerError};
use uuid::Uuid;

use crate::book::{catalog, count, now, opened, sent};

#[test]
fn counts_follow_the_file_only_where_it_was_edited() {
    let mut catalog = (*catalog()).clone();
    let mut ledger = opened(&catalog);
    ledger.recount("key-heart", 3, now()).expect("recounted");
    ledger.take_catalog(&catalog, "again", now()).expect("counts");
    assert_eq!(count(&ledger, "key-heart").0, 3, "an untouched figure leaves the book alone");
    let kind = catalog.drops.iter_mut().find(|kind| kind.id == "key-heart").expect("the key");
    kind.stock = 30;
    ledger.take_catalog(&catalog, "edited", now()).expect("counts");
    assert_eq!(count(&ledger, "key-heart").0, 30);
}

/// She sold some and fills the compartment up to the figure that stands in the file: by another day of the count it counts.
#[test]
fn the_same_count_on_another_day_counts() {
    let mut catalog = (*catalog()).clone();
    let mut ledger = opened(&catalog);
    let figure = count(&ledger, "key-heart").0;
    ledger.recount("key-heart", 1, now()).expect("recounted");
    let counted = |catalog: &mut Catalog, day: Option<&str>| {
        let kind = catalog.drops.iter_mut().find(|kind| kind.id == "key-heart").expect("the key");
        kind.counted = day.and_then(Day::from_iso);
        assert_eq!(kind.counted.is_some(), day.is_some());
    };
    for (day, wanted) in [
        (Some("2026-11-27"), figure),
        (Some("2026-11-27"), 1),
        (Some("2026-11-28"), figure),
        (None, 1),
        (Some("2026-11-28"), figure),
    ] {
        counted(&mut catalog, day);
        ledger.take_catalog(&catalog, "edited", now()).expect("counts");
        assert_eq!(count(&ledger, "key-heart").0, wanted, "{day:?}");
        ledger.recount("key-heart", 1, now()).expect("recounted");
    }
}

/// What is put in is added to what is there, whatever the file says and whatever is held; the same form counts once.
#[test]
fn restocking_adds_to_what_is_there() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = sent(&catalog, 0, &["key-heart"]);
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    ledger.recount("key-heart", 0, now()).expect("sold out");
    assert_eq!(count(&ledger, "key-heart"), (1, 1));
    let form = Uuid::now_v7();
    for _ in 0..3 {
        ledger.restock("key-heart", 12, form, now()).expect("restocked");
        assert_eq!(count(&ledger, "key-heart"), (13, 1), "the same form once");
    }
    ledger.take_catalog(&catalog, "again", now()).expect("counts");
    assert_eq!(count(&ledger, "key-heart"), (13, 1), "the file's figure was not touched");
    ledger.restock("key-heart", 12, Uuid::now_v7(), now()).expect("restocked");
    assert_eq!(count(&ledger, "key-heart"), (25, 1));
    assert!(matches!(ledger.restock("none", 1, Uuid::now_v7(), now()), Err(LedgerError::NoCount(_))));
    for much in [100_000, u32::MAX] {
        let refused = ledger.restock("key-heart", much, Uuid::now_v7(), now());
        assert!(matches!(refused, Err(LedgerError::TooManyThere(_))), "{refused:?}");
    }
    assert_eq!(count(&ledger, "key-heart"), (25, 1));
}
