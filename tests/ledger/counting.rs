//! Counting by hand: what lies there against what should, whatever is sold meanwhile.

use chatelaine::ledger::{CountLine, CountingError, Ledger, LedgerError, Part, Reason};
use chatelaine::money::Tender;
use uuid::Uuid;

use crate::book::{catalog, count, now, opened, sent};

fn line(part: &str, counted: u32) -> CountLine {
    CountLine { part: part.into(), counted: Some(counted), refilled: 0 }
}

/// Counts one part on a page that was shown at entry `seen`, and gives the difference.
fn counted(ledger: &mut Ledger, seen: i64, part: &str, n: u32) -> i64 {
    ledger.count_parts(Uuid::now_v7(), seen, &[line(part, n)], now()).expect("counted")[0].difference
}

fn seen(ledger: &Ledger) -> i64 {
    ledger.change().expect("an entry")
}

#[test]
fn a_count_is_an_entry_and_a_reason_another() {
    let mut ledger = opened(&catalog());
    ledger.recount("key-heart", 9, now()).expect("counted");
    let (page, form) = (seen(&ledger), Uuid::now_v7());
    let lines = [CountLine { part: "key-heart".into(), counted: Some(6), refilled: 4 }];
    for _ in 0..3 {
        let found = ledger.count_parts(form, page, &lines, now()).expect("counted");
        assert_eq!((found[0].low, found[0].high, found[0].difference), (9, 9, -3));
        assert_eq!(count(&ledger, "key-heart").0, 10, "six lay there and four were put in, however often it is sent");
    }
    let other = ledger.count_parts(form, page, &[line("key-heart", 5)], now());
    assert!(matches!(other, Err(LedgerError::Counting(CountingError::EnteredOtherwise))), "{other:?}");
    // Three are missing: two broke, one is not known.
    let [broke, again] = [Uuid::now_v7(), Uuid::now_v7()];
    for _ in 0..2 {
        ledger.explain_count(broke, "key-heart", Reason::Broken, 2, now()).expect("explained");
    }
    assert_eq!(count(&ledger, "key-heart").0, 10, "a reason changes no count");
    let too_many = ledger.explain_count(again, "key-heart", Reason::Stolen, 2, now());
    assert!(matches!(too_many, Err(LedgerError::Counting(CountingError::NotSoMany { found: 2, open: 1 }))));
    let wrong_way = ledger.explain_count(again, "key-heart", Reason::Found, 1, now());
    assert!(matches!(wrong_way, Err(LedgerError::Counting(CountingError::NotSoMany { found: 1, open: 0 }))));
    // Two strays come home: one had been missing, the other was never off the count.
    let stray = Uuid::now_v7();
    for _ in 0..2 {
        assert_eq!(ledger.stray_home(stray, "key-heart", 2, now()).expect("home"), 1);
        assert_eq!(count(&ledger, "key-heart").0, 11);
    }
    assert_eq!(ledger.last_counts().expect("counts")["key-heart"].missing, 0);
    // One breaks while nobody counts; more than there are can't.
    let broken = Uuid::now_v7();
    for _ in 0..2 {
        ledger.change_stock(broken, "key-heart", Reason::Broken, 1, now()).expect("broken");
    }
    assert_eq!(count(&ledger, "key-heart").0, 10);
    let gone = ledger.change_stock(Uuid::now_v7(), "key-heart", Reason::Stolen, 11, now());
    assert!(matches!(gone, Err(LedgerError::NoneLeft(_))), "{gone:?}");
    assert_eq!(ledger.counting_entries(99).expect("entries").len(), 4);
}

#[test]
fn a_slip_of_the_finger_enters_nothing_of_its_page() {
    let mut ledger = opened(&catalog());
    let before = (ledger.change().expect("an entry"), ledger.counts().expect("counts"));
    let page = before.0;
    for wrong in [line("key-hart", 3), line("key-heart", 10_000)] {
        let all = [line("charm-moon", 2), wrong];
        assert!(ledger.count_parts(Uuid::now_v7(), page, &all, now()).is_err());
    }
    for none in [0, 10_000] {
        assert!(ledger.change_stock(Uuid::now_v7(), "key-heart", Reason::Found, none, now()).is_err());
        assert!(ledger.stray_home(Uuid::now_v7(), "key-heart", none, now()).is_err());
    }
    assert!(ledger.explain_count(Uuid::now_v7(), "key-heart", Reason::Broken, 0, now()).is_err());
    assert_eq!((ledger.change().expect("an entry"), ledger.counts().expect("counts")), before);
    // A page with nothing typed is no entry.
    ledger.count_parts(Uuid::now_v7(), page, &[], now()).expect("nothing");
    assert_eq!(ledger.change().expect("an entry"), page);
}

#[test]
fn a_sale_while_she_counts_is_no_difference() {
    let catalog = catalog();
    for before_the_sale in [true, false] {
        let mut ledger = opened(&catalog);
        ledger.recount("key-heart", 5, now()).expect("counted");
        let page = seen(&ledger);
        let ticket = sent(&catalog, 0, &["key-heart"]);
        ledger.receive(&ticket, false, &catalog, now()).expect("received");
        crate::book::check_all(&mut ledger, ticket.id);
        ledger.ring_up(ticket.id, Tender::Card, now()).expect("rung up");
        assert_eq!(counted(&mut ledger, page, "key-heart", if before_the_sale { 5 } else { 4 }), 0);
        assert_eq!(count(&ledger, "key-heart"), (4, 0));
    }
    // One that is held lies there still, or in the guest's hand.
    let mut ledger = opened(&catalog);
    ledger.recount("key-heart", 5, now()).expect("counted");
    let ticket = sent(&catalog, 0, &["key-heart"]);
    ledger.receive(&ticket, false, &catalog, now()).expect("received");
    let page = seen(&ledger);
    for there in [4, 5] {
        assert_eq!(counted(&mut ledger, page, "key-heart", there), 0);
        assert_eq!(count(&ledger, "key-heart"), (5, 1));
    }
    assert_eq!(counted(&mut ledger, page, "key-heart", 0), -4, "what is held is held all the same");
    assert_eq!(count(&ledger, "key-heart"), (1, 1));
}

/// What happens between the page and its being sent.
#[derive(Debug, Clone, Copy)]
enum Meanwhile {
    Sent,
    RungUp,
    LetGo,
    PutIn,
}

/// Every way in which three things can happen while somebody counts, with the compartment itself as the second account: a
/// guest takes a piece out when it is sent, and what is let go is put back. Whenever she looked, nothing that was sold makes a
/// difference; and what was stolen before she opened the page is told to the piece where nothing happened meanwhile.
#[test]
fn no_order_of_sales_and_counting_makes_a_difference_of_its_own() {
    use Meanwhile::{LetGo, PutIn, RungUp, Sent};
    let catalog = catalog();
    let all = [Sent, RungUp, LetGo, PutIn];
    let mut cases = 0;
    for first in all {
        for second in all {
            for third in all {
                for looked_after in 0..=3 {
                    let happens = [first, second, third];
                    one_case(&catalog, &happens, looked_after);
                    cases += 1;
                }
            }
        }
    }
    assert_eq!(cases, 256);
    let mut ledger = opened(&catalog);
    ledger.recount("key-heart", 8, now()).expect("counted");
    for (there, difference) in [(8, 0), (5, -3), (6, 1), (0, -6), (2, 2)] {
        let page = seen(&ledger);
        assert_eq!(counted(&mut ledger, page, "key-heart", there), difference);
        assert_eq!(count(&ledger, "key-heart"), (there, 0));
    }
}

fn one_case(catalog: &chatelaine::catalog::Catalog, happens: &[Meanwhile], looked_after: usize) {
    let mut ledger = opened(catalog);
    ledger.recount("key-heart", 6, now()).expect("counted");
    let (page, mut lies_there, mut sequence) = (seen(&ledger), 6_u32, 0);
    let mut open: Vec<Uuid> = Vec::new();
    let mut looked = (looked_after == 0).then_some(lies_there);
    for (n, one) in happens.iter().enumerate() {
        match one {
            Meanwhile::Sent => {
                let ticket = sent(catalog, sequence, &["key-heart"]);
                sequence += 1;
                ledger.receive(&ticket, false, catalog, now()).expect("received");
                open.push(ticket.id);
                lies_there -= 1;
            }
            Meanwhile::RungUp => {
                let Some(id) = open.pop() else { continue };
                crate::book::check_all(&mut ledger, id);
                ledger.ring_up(id, Tender::Card, now()).expect("rung up");
            }
            Meanwhile::LetGo => {
                let Some(id) = open.pop() else { continue };
                ledger.tick(id, Part::Base, true, false, now()).expect("ticked");
                ledger.let_go(id, now()).expect("let go");
                lies_there += 1;
            }
            Meanwhile::PutIn => {
                ledger.restock("key-heart", 2, Uuid::now_v7(), now()).expect("put in");
                lies_there += 2;
            }
        }
        if looked_after == n + 1 {
            looked = Some(lies_there);
        }
    }
    let looked = looked.unwrap_or(lies_there);
    assert_eq!(counted(&mut ledger, page, "key-heart", looked), 0, "{happens:?}, looked after {looked_after}");
    let (on_hand, held) = count(&ledger, "key-heart");
    assert_eq!(on_hand - held, lies_there, "{happens:?}, looked after {looked_after}");
}

/// The counts of a day are those after its last entry, also when the clock was set back since.
#[test]
fn what_was_there_on_a_day_can_be_told_later() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let at = |text: &str| text.parse().expect("a time");
    ledger.recount("key-heart", 7, at("2026-06-30T21:59:59.4Z")).expect("counted");
    ledger.recount("key-heart", 5, at("2026-07-01T00:00:00.1Z")).expect("counted");
    ledger.restock("key-heart", 3, Uuid::now_v7(), at("2026-07-02T09:00:00Z")).expect("put in");
    let on = |end: &str| ledger.stock_before(at(end)).expect("counts").parts.get("key-heart").copied();
    assert_eq!(on("2026-07-01T00:00:00Z"), Some(7));
    assert_eq!(on("2026-07-02T00:00:00Z"), Some(5));
    assert_eq!(on("2026-08-01T00:00:00Z"), Some(8));
    assert_eq!(on("2026-01-01T00:00:00Z"), None, "before the ledger nothing is known");
}
