//! The book: once, in order, never below zero.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "support/book.rs"]
mod book;
#[path = "ledger/counting.rs"]
mod counting;
#[path = "ledger/counts.rs"]
mod counts;
#[path = "support/magnet.rs"]
mod magnet;
#[path = "ledger/staff.rs"]
mod staff;

use book::{catalog, check_all, count, now, opened, sent};
use chatelaine::{
    catalog::Catalog,
    caution::{Caution, CautionCode},
    craft::Wearer,
    ledger::{Ledger, LedgerError, Part},
    money::Tender,
    ticket::{Receipt, State},
};
use jiff::ToSpan;
use magnet::{MAGNET, with_magnet};
use uuid::Uuid;

#[test]
fn a_ticket_delivered_again_is_the_same_ticket() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = sent(&catalog, 0, &["key-heart", "key-heart"]);
    for _ in 0..3 {
        let receipt = ledger.receive(&ticket, true, &catalog, now()).expect("received");
        assert_eq!(receipt, Receipt::Stored { short: vec![] });
    }
    assert_eq!(ledger.tickets().expect("tickets").len(), 1);
    assert_eq!(count(&ledger, "key-heart").1, 2);
    let mut other = ticket.clone();
    other.grown_up_confirmed = true;
    assert!(
        matches!(ledger.receive(&other, true, &catalog, now()), Ok(Receipt::Refused { .. })),
        "same id, other ticket"
    );
    let mut same_number = sent(&catalog, 0, &["key-heart"]);
    same_number.number = ticket.number;
    assert!(matches!(ledger.receive(&same_number, false, &catalog, now()), Ok(Receipt::Refused { .. })));
}

/// A ticket for a child of six whose grown-up read the cautions, received and told.
fn read_and_told(ledger: &mut Ledger, catalog: &Catalog, by: &Catalog, drops: &[&str]) -> Uuid {
    let mut ticket = sent(catalog, 0, drops);
    ticket.piece.wearer = Wearer::From6To12;
    ticket.verdict = catalog.cautions(&ticket.piece).expect("cautions");
    ticket.grown_up_confirmed = true;
    ledger.receive(&ticket, true, by, now()).expect("received");
    ledger.set_told(ticket.id, true, now()).expect("told");
    ticket.id
}

#[test]
fn what_was_read_and_told_does_not_outlive_the_cautions() {
    let catalog = with_magnet(&catalog());
    let mut ledger = opened(&catalog);
    let id = read_and_told(&mut ledger, &catalog, &catalog, &["vial-stars", "key-heart", "key-round"]);
    let same = ledger.swap(id, 1, "key-trefoil", &catalog, now()).expect("swapped");
    assert!(same.grown_up_confirmed && same.told, "a key for a key is nothing new");
    let other = ledger.swap(id, 2, MAGNET, &catalog, now()).expect("swapped");
    assert!(!other.grown_up_confirmed && !other.told && !other.verdict.suitable);
}

#[test]
fn a_drop_that_has_left_the_catalogue_hides_no_caution() {
    let catalog = with_magnet(&catalog());
    let mut ledger = opened(&catalog);
    let id = read_and_told(&mut ledger, &catalog, &catalog, &["vial-stars", "key-heart"]);
    let without = |id: &str| Catalog {
        drops: catalog.drops.iter().filter(|kind| kind.id != id).cloned().collect(),
        ..catalog.clone()
    };
    let ticket = ledger.swap(id, 1, MAGNET, &without("vial-stars"), now()).expect("swapped");
    let of = |drop: &str| ticket.verdict.cautions.iter().any(|one| one.drop.as_deref() == Some(drop));
    assert!(of("vial-stars") && of(MAGNET) && !ticket.told && !ticket.verdict.suitable, "{:?}", ticket.verdict);
}

/// The parts of a grown-up's piece leave the catalogue, and then it is for a toddler after all.
#[test]
fn what_has_left_the_catalogue_is_judged_as_it_was_known() {
    let catalog = catalog();
    let with_all = |wearer| {
        let mut ledger = opened(&catalog);
        let ticket = sent(&catalog, 0, &["key-heart", "found-gear"]);
        ledger.receive(&ticket, true, &catalog, now()).expect("received");
        ledger.set_wearer(ticket.id, wearer, &catalog, now()).expect("changed").verdict
    };
    for (bases, drops) in [(&[][..], &["found-gear"][..]), (&["chain-brass"], &["found-gear", "key-heart"])] {
        let mut ledger = opened(&catalog);
        let ticket = sent(&catalog, 0, &["key-heart", "found-gear"]);
        ledger.receive(&ticket, true, &catalog, now()).expect("received");
        check_all(&mut ledger, ticket.id);
        let mut less = catalog.as_ref().clone();
        less.bases.retain(|base| !bases.contains(&base.id.as_str()));
        less.drops.retain(|kind| !drops.contains(&kind.id.as_str()));
        ledger.take_catalog(&less, "less", now()).expect("taken over");
        for wearer in [Wearer::Under3, Wearer::From13, Wearer::From6To12] {
            let found = ledger.set_wearer(ticket.id, wearer, &less, now()).expect("changed");
            assert_eq!(found.verdict, with_all(wearer), "{wearer:?} without {drops:?} {bases:?}");
        }
        let toddlers = ledger.set_wearer(ticket.id, Wearer::Under3, &less, now()).expect("changed");
        assert!(!toddlers.verdict.suitable && !toddlers.told);
        assert!(matches!(ledger.ring_up(ticket.id, Tender::Card, now()), Err(LedgerError::NotTold)));
    }
}

/// A piece that is not for its wearer is not sold by the ordinary tick: the seller names each hazard, which is kept, or
/// changes piece or wearer. What may not be sold to anybody has no such way.
#[test]
fn what_is_not_for_its_wearer_is_sold_only_by_the_name_of_the_hazard() {
    let catalog = with_magnet(&catalog());
    let mut ledger = opened(&catalog);
    let mut ticket = sent(&catalog, 0, &["vial-stars"]);
    ticket.piece.wearer = Wearer::Under3;
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    let id = ticket.id;
    check_all(&mut ledger, id);
    let refused = |ledger: &mut Ledger| match ledger.ring_up(id, Tender::Cash, now()) {
        Err(LedgerError::NotSuitable(open)) => open,
        other => panic!("{other:?}"),
    };
    let open = refused(&mut ledger);
    assert!(open.contains(&CautionCode::SmallPart) && open.contains(&CautionCode::Glass), "{open:?}");
    for (n, code) in open.iter().enumerate() {
        assert_eq!(refused(&mut ledger).len(), open.len() - n);
        ledger.confirm_hazard(id, *code, true, now()).expect("confirmed");
    }
    assert!(matches!(ledger.confirm_hazard(id, CautionCode::Magnet, true, now()), Err(LedgerError::NoHazard)));
    // Taken back, it counts no more; another piece is another question.
    ledger.confirm_hazard(id, open[0], false, now()).expect("taken back");
    assert_eq!(refused(&mut ledger), [open[0]]);
    ledger.confirm_hazard(id, open[0], true, now()).expect("confirmed");
    let other = ledger.set_wearer(id, Wearer::From3To5, &catalog, now()).expect("changed");
    assert!(other.confirmed.is_empty() && !other.told);
    ledger.set_wearer(id, Wearer::Under3, &catalog, now()).expect("changed");
    ledger.set_told(id, true, now()).expect("told");
    assert_eq!(refused(&mut ledger), open);
    for code in &open {
        ledger.confirm_hazard(id, *code, true, now()).expect("confirmed");
    }
    let before = ledger.ticket(id).expect("a ticket");
    let sold = ledger.ring_up(id, Tender::Cash, now()).expect("rung up");
    assert_eq!((sold.confirmed.len(), before.unconfirmed().len()), (open.len(), 0));
    let history = ledger.history(id).expect("events");
    let kept = history.iter().filter(|event| event.kind == "sold_for_grown_up").count();
    assert!(kept >= 2 * open.len(), "each is an entry: {kept}");
    assert!(matches!(ledger.confirm_hazard(id, open[0], true, now()), Err(LedgerError::Closed(_))));

    // A strong magnet: for a grown-up as well, and with everything confirmed that can be.
    let ticket = sent(&catalog, 1, &[MAGNET]);
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    check_all(&mut ledger, ticket.id);
    let forbidden = ledger.ring_up(ticket.id, Tender::Card, now());
    assert!(
        matches!(&forbidden, Err(LedgerError::Forbidden(codes)) if codes == &[CautionCode::Magnet]),
        "{forbidden:?}"
    );
    assert!(forbidden.unwrap_err().to_string().contains("may not be sold to anybody (magnet)"));
    assert!(matches!(ledger.confirm_hazard(ticket.id, CautionCode::Magnet, true, now()), Err(LedgerError::NoHazard)));
    ledger.remove(ticket.id, 0, &catalog, now()).expect("taken off");
    ledger.set_told(ticket.id, true, now()).expect("told");
    ledger.ring_up(ticket.id, Tender::Card, now()).expect("rung up without it");
}

/// A tablet with an older catalogue sends what the desk has never heard of.
#[test]
fn what_nobody_knows_is_careful() {
    let catalog = catalog();
    let mut before = catalog.as_ref().clone();
    let ticket = {
        before.drops.iter_mut().filter(|kind| kind.id == "locket-oval").for_each(|kind| kind.id = "locket-lost".into());
        let mut ticket = sent(&before, 0, &["locket-lost"]);
        ticket.piece.wearer = Wearer::Under3;
        ticket
    };
    let mut ledger = opened(&catalog);
    ledger.receive(&ticket, false, &catalog, now()).expect("received");
    let verdict = ledger.ticket(ticket.id).expect("a ticket").verdict;
    for code in [CautionCode::SmallPart, CautionCode::UnknownMetal] {
        let lost = |one: &&Caution| one.code == code && one.drop.as_deref() == Some("locket-lost");
        assert!(verdict.cautions.iter().any(|one| lost(&one)), "{code:?}: {verdict:?}");
    }
}

/// The seller writes a drop's button cell into the catalogue while a piece with it lies at the till.
#[test]
fn open_tickets_follow_the_catalogue() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let id = read_and_told(&mut ledger, &catalog, &catalog, &["vial-stars", "key-heart"]);
    let paid = sent(&catalog, 1, &["key-heart"]);
    ledger.receive(&paid, true, &catalog, now()).expect("received");
    check_all(&mut ledger, paid.id);
    let paid = ledger.ring_up(paid.id, Tender::Card, now()).expect("rung up");
    let mut newer = catalog.as_ref().clone();
    newer.drops.iter_mut().filter(|kind| kind.id == "key-heart").for_each(|kind| kind.facts.coin_cell = true);
    ledger.take_catalog(&newer, "newer", now()).expect("taken over");
    let ticket = ledger.ticket(id).expect("a ticket");
    assert!(ticket.verdict.cautions.iter().any(|one| one.code == CautionCode::CoinCell));
    assert!(!ticket.told && !ticket.grown_up_confirmed);
    assert_eq!(ledger.history(id).expect("events").last().expect("one").kind, "judged");
    assert_eq!(ledger.ticket(paid.id).expect("a ticket"), paid, "what is paid is done");
    let events = ledger.history(id).expect("events").len();
    ledger.take_catalog(&newer, "again", now()).expect("taken over");
    assert_eq!(ledger.history(id).expect("events").len(), events, "nothing new, nothing noted");
}

#[test]
fn the_desk_judges_by_its_own_catalogue() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let mut newer = catalog.as_ref().clone();
    newer.drops.iter_mut().filter(|kind| kind.id == "key-heart").for_each(|kind| kind.facts.sharp = true);
    let id = read_and_told(&mut ledger, &catalog, &newer, &["vial-stars", "key-heart"]);
    let ticket = ledger.ticket(id).expect("a ticket");
    assert!(ticket.verdict.cautions.iter().any(|one| one.code == CautionCode::Sharp));
    assert!(!ticket.grown_up_confirmed, "a grown-up read others");
}

/// An earlier version wrote tickets down with fewer fields; the tablet delivers them again in its own form.
#[test]
fn a_ticket_of_an_earlier_version_is_the_same_ticket() {
    let catalog = catalog();
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("ledger.sqlite");
    let mut ticket = sent(&catalog, 0, &["vial-stars"]);
    ticket.piece.wearer = Wearer::From6To12;
    ticket.verdict = catalog.cautions(&ticket.piece).expect("cautions");
    for caution in &mut ticket.verdict.cautions {
        (caution.title, caution.status, caution.number) = (String::new(), None, None);
        caution.dated = Default::default();
    }
    assert!(!ticket.verdict.cautions.is_empty());
    let mut ledger = Ledger::open(&file, now()).expect("a ledger");
    ledger.take_catalog(&catalog, "first", now()).expect("counts");
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    drop(ledger);
    let mut old = serde_json::to_value(&ticket).expect("a document");
    for caution in old["verdict"]["cautions"].as_array_mut().expect("cautions") {
        let fields = caution.as_object_mut().expect("fields");
        fields.retain(|name, _| !["title", "dated", "status", "number"].contains(&name.as_str()));
    }
    let db = rusqlite::Connection::open(&file).expect("the book's file");
    db.execute("UPDATE tickets SET sent = ?", [old.to_string()]).expect("as it was written then");
    drop(db);
    let mut ledger = Ledger::open(&file, now()).expect("a ledger");
    let receipt = ledger.receive(&ticket, true, &catalog, now()).expect("received");
    assert_eq!(receipt, Receipt::Stored { short: vec![] });
}

#[test]
fn the_last_one_is_held_once_and_a_late_ticket_says_what_is_short() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let first = sent(&catalog, 0, &["found-gear"]);
    assert_eq!(ledger.receive(&first, true, &catalog, now()).expect("received"), Receipt::Stored { short: vec![] });
    let before = count(&ledger, "chain-brass");
    let second = sent(&catalog, 1, &["found-gear"]);
    let short = Receipt::Short { parts: vec!["found-gear".into()] };
    assert_eq!(ledger.receive(&second, true, &catalog, now()).expect("received"), short);
    assert_eq!(count(&ledger, "chain-brass"), before, "a refused ticket holds nothing");
    let stored = Receipt::Stored { short: vec!["found-gear".into()] };
    assert_eq!(ledger.receive(&second, false, &catalog, now()).expect("received"), stored);
    assert!(matches!(ledger.tick(second.id, Part::Line(0), true, false, now()), Err(LedgerError::NoneLeft(_))));
    ledger.tick(second.id, Part::Line(0), true, true, now()).expect("found all the same");
    assert_eq!(count(&ledger, "found-gear"), (2, 2));
}

#[test]
fn the_seller_swaps_checks_and_rings_up_and_the_sum_follows() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = sent(&catalog, 0, &["key-heart", "charm-moon", "bead-jade"]);
    let (id, on_hand) = (ticket.id, count(&ledger, "key-heart").0);
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    assert!(matches!(ledger.ring_up(id, Tender::Card, now()), Err(LedgerError::NotTicked(4))));
    let swapped = ledger.swap(id, 1, "locket-round", &catalog, now()).expect("swapped");
    assert_eq!(swapped.quote, catalog.quote(&swapped.piece).expect("a quote"));
    assert_eq!(count(&ledger, "charm-moon").1, 0);
    let removed = ledger.remove(id, 2, &catalog, now()).expect("removed");
    assert_eq!(removed.piece.drops, ["key-heart", "locket-round"]);
    check_all(&mut ledger, id);
    let paid = ledger.ring_up(id, Tender::Card, now()).expect("rung up");
    assert_eq!((paid.state, paid.charged), (State::RungUp, Some(paid.quote.total)));
    assert_eq!(count(&ledger, "key-heart"), (on_hand - 1, 0));
    assert!(matches!(ledger.let_go(id, now()), Err(LedgerError::State { .. })));
    assert!(matches!(ledger.remove(id, 0, &catalog, now()), Err(LedgerError::Closed(State::RungUp))));
    assert!(ledger.history(id).expect("history").len() >= 8, "every change is an event");
    let currency = catalog.table.prices.currency;
    let close = ledger.close_show(currency, now()).expect("closed");
    let kept = ledger.closed_show(1).expect("read").expect("a close-out");
    assert_eq!((kept.currency, &kept.sums), (currency, &close));
    assert_eq!(ledger.closed_show(2).expect("read"), None);
    assert_eq!((close.sold, close.card), (1, paid.quote.total));
    assert_eq!(ledger.show().expect("a show").id, 2);
}

#[test]
fn holds_end_with_their_time_and_letting_go_frees() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let (a, b) = (sent(&catalog, 0, &["found-token"]), sent(&catalog, 1, &["key-round"]));
    ledger.receive(&a, true, &catalog, now()).expect("received");
    ledger.receive(&b, true, &catalog, now()).expect("received");
    ledger.let_go(b.id, now()).expect("let go");
    assert_eq!(count(&ledger, "key-round").1, 0);
    assert_eq!(ledger.end_holds(now() + 44.minutes()).expect("ended"), 0);
    assert_eq!(ledger.end_holds(now() + 46.minutes()).expect("ended"), 1);
    assert_eq!(count(&ledger, "found-token"), (1, 0));
    ledger.tick(a.id, Part::Line(0), true, false, now()).expect("held again");
    assert_eq!(count(&ledger, "found-token"), (1, 1));
}

/// The number is called once more from a page that was open before the last tick.
#[test]
fn a_checked_piece_that_is_called_can_be_rung_up() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = sent(&catalog, 0, &["key-heart"]);
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    check_all(&mut ledger, ticket.id);
    assert_eq!(ledger.call(ticket.id, now()).expect("called").state, State::Checked);
    assert_eq!(ledger.ring_up(ticket.id, Tender::Card, now()).expect("rung up").state, State::RungUp);
}
