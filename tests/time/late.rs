//! Tickets that arrive after their show was closed: they count where they are rung up, can be found, and are let go by the
//! next closing.

use crate::book::{catalog, check_all, count, now, opened, sent};
use chatelaine::{
    ledger::{Ledger, LedgerError},
    money::Tender,
    ticket::{Receipt, SentTicket, State},
};
use uuid::Uuid;

fn close(ledger: &mut Ledger) -> chatelaine::ledger::CloseOut {
    let currency = catalog().table.prices.currency;
    ledger.close_show(currency, now()).expect("closed")
}

fn receive(ledger: &mut Ledger, ticket: &SentTicket) {
    let receipt = ledger.receive(ticket, false, &catalog(), now()).expect("received");
    assert!(matches!(receipt, Receipt::Stored { .. }), "{receipt:?}");
}

fn ring_up(ledger: &mut Ledger, id: Uuid, tender: Tender) -> rust_decimal::Decimal {
    check_all(ledger, id);
    ledger.ring_up(id, tender, now()).expect("rung up").charged.expect("charged")
}

#[test]
fn a_late_ticket_counts_in_the_show_in_which_it_is_rung_up() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let first = sent(&catalog, 0, &["key-heart"]);
    receive(&mut ledger, &first);
    let in_first = ring_up(&mut ledger, first.id, Tender::Card);
    let closed = close(&mut ledger);
    assert_eq!((closed.sold, closed.card, closed.late.sold), (1, in_first, 0));

    // Sent in show 1 by a tablet that was out of reach until show 2.
    let late = sent(&catalog, 1, &["charm-moon", "key-heart"]);
    receive(&mut ledger, &late);
    let mut own = sent(&catalog, 0, &["bead-jade"]);
    own.show = 2;
    receive(&mut ledger, &own);
    let (taken_late, taken) = (ring_up(&mut ledger, late.id, Tender::Cash), ring_up(&mut ledger, own.id, Tender::Cash));
    let far = ledger.so_far().expect("sums");
    assert_eq!((far.show, far.sold, far.cash, far.card), (2, 2, taken_late + taken, rust_decimal::Decimal::ZERO));
    assert_eq!((far.late.sold, far.late.taken), (1, taken_late));
    assert_eq!(far.parts["chain-brass"].count, 2);
    assert_eq!(far.parts["key-heart"].count, 1);
    assert!(ledger.tickets().expect("tickets").iter().any(|ticket| ticket.id == late.id), "on the list of this show");

    assert_eq!(close(&mut ledger), far);
    assert_eq!(ledger.closed_show(2).expect("read").expect("a close-out").sums, far);
    assert_eq!(ledger.closed_show(1).expect("read").expect("a close-out").sums, closed, "a close-out never changes");
    let came = ledger.came_after(1).expect("read");
    assert_eq!(
        came.iter().map(|one| (one.id, one.state, one.settled)).collect::<Vec<_>>(),
        [(late.id, State::RungUp, Some(2))]
    );
    assert_eq!(ledger.came_after(2).expect("read"), []);
    let nothing = ledger.so_far().expect("sums");
    assert_eq!((nothing.show, nothing.sold, nothing.late.sold), (3, 0, 0));
}

#[test]
fn the_next_closing_lets_a_late_ticket_go() {
    let catalog = catalog();
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("ledger.sqlite");
    let mut ledger = Ledger::open(&file, now()).expect("a ledger");
    ledger.take_catalog(&catalog, "first", now()).expect("counts");
    close(&mut ledger);
    let late = sent(&catalog, 1, &["found-token"]);
    receive(&mut ledger, &late);
    assert_eq!(count(&ledger, "found-token"), (1, 1));
    // Also after a restart, and checked as it may be.
    check_all(&mut ledger, late.id);
    drop(ledger);
    let mut ledger = Ledger::open(&file, now()).expect("the ledger again");
    let second = close(&mut ledger);
    assert_eq!((second.let_go, second.let_go_now, second.late.let_go, second.sold), (1, 1, 1, 0));
    assert_eq!(count(&ledger, "found-token"), (1, 0));
    assert_eq!(ledger.ticket(late.id).expect("a ticket").state, State::LetGo);
    assert!(matches!(ledger.ring_up(late.id, Tender::Card, now()), Err(LedgerError::Closed(State::LetGo))));
    // Delivered once more, it stays what it is and holds nothing.
    receive(&mut ledger, &late);
    assert_eq!(count(&ledger, "found-token"), (1, 0));
    let third = close(&mut ledger);
    assert_eq!((third.let_go, third.let_go_now), (0, 0), "once is enough");
}

#[test]
fn all_tickets_of_a_number_are_found() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    close(&mut ledger);
    let late = sent(&catalog, 4, &["key-heart"]);
    let mut own = sent(&catalog, 4, &["key-heart"]);
    own.show = 2;
    receive(&mut ledger, &late);
    receive(&mut ledger, &own);
    assert_eq!(late.number, own.number);
    let found = |ledger: &Ledger| -> Vec<Uuid> {
        ledger.tickets_numbered(own.number).expect("tickets").iter().map(|ticket| ticket.id).collect()
    };
    assert_eq!(found(&ledger), [own.id, late.id]);
    close(&mut ledger);
    assert_eq!(found(&ledger), [own.id, late.id], "also when they are done");
    assert_eq!(ledger.tickets_numbered("3-042-6".parse().expect("a number")).expect("tickets"), []);
}

/// A ticket that is let go counts in the show in which that happened.
#[test]
fn letting_go_counts_where_it_happened() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let open = sent(&catalog, 0, &["key-heart"]);
    receive(&mut ledger, &open);
    ledger.let_go(open.id, now()).expect("let go");
    let first = close(&mut ledger);
    assert_eq!((first.let_go, first.let_go_now), (1, 0));
    let late = sent(&catalog, 1, &["key-heart"]);
    receive(&mut ledger, &late);
    ledger.let_go(late.id, now()).expect("let go");
    let second = close(&mut ledger);
    assert_eq!((second.let_go, second.let_go_now, second.late.let_go), (1, 0, 1));
}
