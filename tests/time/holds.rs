//! How long a part is held: as long as somebody works on its ticket, for good once it is ticked off, and never longer
//! than the table says, whatever the clock does.

use crate::book::{catalog, check_all, count, now, opened, sent};
use chatelaine::{
    ledger::{Ledger, LedgerError, Part},
    money::Tender,
    ticket::Receipt,
};
use jiff::{SignedDuration, Timestamp, ToSpan};

/// After so long the test table's holds have ended: it holds for 45 minutes.
fn later(minutes: i64) -> Timestamp {
    now() + minutes.minutes()
}

#[test]
fn what_is_ticked_is_never_given_away() {
    let catalog = catalog();
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("ledger.sqlite");
    let mut ledger = Ledger::open(&file, now()).expect("a ledger");
    ledger.take_catalog(&catalog, "first", now()).expect("counts");
    let ticket = sent(&catalog, 0, &["found-token", "key-heart"]);
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    assert_eq!(ledger.end_holds(later(46)).expect("ended"), 1);
    assert_eq!(count(&ledger, "found-token"), (1, 0));

    ledger.tick(ticket.id, Part::Line(0), true, false, later(47)).expect("held again");
    for minutes in [47, 48, 95, 1000] {
        ledger.end_holds(later(minutes)).expect("a sweep");
        assert_eq!(count(&ledger, "found-token"), (1, 1), "after {minutes} minutes");
    }
    let other = sent(&catalog, 1, &["found-token"]);
    let gone = Receipt::Short { parts: vec!["found-token".into()] };
    assert_eq!(ledger.receive(&other, true, &catalog, later(1000)).expect("answered"), gone);
    let entries = ledger.change().expect("entries");
    assert_eq!(ledger.end_holds(later(1001)).expect("a sweep"), 0, "nothing is left to free");
    assert_eq!(ledger.change().expect("entries"), entries, "and nothing to note");

    // A restart, and the sweeps after it.
    drop(ledger);
    let mut ledger = Ledger::open(&file, later(2000)).expect("the ledger again");
    ledger.end_holds(later(2000)).expect("a sweep");
    assert_eq!(count(&ledger, "found-token"), (1, 1));
    ledger.let_go(ticket.id, later(2001)).expect("let go");
    assert_eq!(count(&ledger, "found-token"), (1, 0));
    let stored = Receipt::Stored { short: vec![] };
    assert_eq!(ledger.receive(&other, true, &catalog, later(2002)).expect("answered"), stored);
}

#[test]
fn a_checked_piece_waits_for_its_money_as_long_as_it_takes() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = sent(&catalog, 0, &["found-token"]);
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    check_all(&mut ledger, ticket.id);
    assert_eq!(ledger.end_holds(later(46)).expect("a sweep"), 0);
    assert_eq!(ledger.end_holds(later(600)).expect("a sweep"), 0);
    assert_eq!((count(&ledger, "found-token"), count(&ledger, "chain-brass").1), ((1, 1), 1));
    ledger.ring_up(ticket.id, Tender::Card, later(601)).expect("rung up");
    assert_eq!((count(&ledger, "found-token"), count(&ledger, "chain-brass").1), ((0, 0), 0));
}

/// The seller is at work on the ticket: what was not ticked yet is held on as well.
#[test]
fn every_act_of_the_seller_moves_the_hold() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = sent(&catalog, 0, &["found-token", "key-heart", "key-round"]);
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    ledger.tick(ticket.id, Part::Line(1), true, false, later(40)).expect("ticked");
    assert_eq!(ledger.end_holds(later(50)).expect("a sweep"), 0);
    assert_eq!(count(&ledger, "found-token"), (1, 1), "40 minutes old when the seller began");
    // A tick that is taken back holds the part for the usual time.
    ledger.tick(ticket.id, Part::Line(1), false, false, later(80)).expect("taken back");
    assert_eq!(ledger.end_holds(later(124)).expect("a sweep"), 0);
    assert_eq!(ledger.end_holds(later(126)).expect("a sweep"), 1);
    assert_eq!((count(&ledger, "found-token").1, count(&ledger, "key-heart").1), (0, 0));
    // What is hung in the place of another is held for the usual time, too.
    ledger.swap(ticket.id, 2, "locket-round", &catalog, later(130)).expect("swapped");
    assert_eq!(ledger.end_holds(later(131)).expect("a sweep"), 0);
    assert_eq!(count(&ledger, "locket-round").1, 1);
    assert_eq!(ledger.end_holds(later(176)).expect("a sweep"), 1);
    assert_eq!(count(&ledger, "locket-round").1, 0);
    // A part that somebody else holds by now is not there to be ticked.
    let other = sent(&catalog, 1, &["found-token"]);
    ledger.receive(&other, true, &catalog, later(177)).expect("received");
    let denied = ledger.tick(ticket.id, Part::Line(0), true, false, later(178));
    assert!(matches!(denied, Err(LedgerError::NoneLeft(_))), "{denied:?}");
}

/// The desk's clock was ten hours ahead when the ticket came, and is right after a restart.
#[test]
fn a_hold_made_with_the_clock_ahead_lasts_no_longer() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = sent(&catalog, 0, &["found-token"]);
    ledger.receive(&ticket, true, &catalog, later(600)).expect("received");
    assert_eq!(ledger.end_holds(later(1)).expect("a sweep"), 0);
    assert_eq!(ledger.end_holds(later(45)).expect("a sweep"), 0);
    assert_eq!(ledger.end_holds(later(47)).expect("a sweep"), 1);
    assert_eq!(count(&ledger, "found-token"), (1, 0));
}

/// A computer without a clock of its own hears the time from elsewhere in the middle of the show.
#[test]
fn a_clock_that_is_set_takes_no_holds_along() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = sent(&catalog, 0, &["found-token"]);
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    let (ahead, back) = (SignedDuration::from_hours(72), SignedDuration::from_hours(-72));
    ledger.clock_was_set(ahead, later(5) + ahead).expect("moved");
    assert_eq!(ledger.end_holds(later(44) + ahead).expect("a sweep"), 0);
    ledger.clock_was_set(back, later(44)).expect("moved back");
    assert_eq!(ledger.end_holds(later(44)).expect("a sweep"), 0);
    assert_eq!(ledger.end_holds(later(46)).expect("a sweep"), 1);
    assert_eq!(count(&ledger, "found-token"), (1, 0));
}
