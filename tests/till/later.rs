//! What is left of a bill after something else happened to it.

use chatelaine::{
    ledger::{Corrected, Given, LedgerError, Paying, TakeBack},
    money::{Reduction, Tender},
};
use uuid::Uuid;

use crate::{
    book::{catalog, check_all, now, opened},
    counter::{adds_up, card, cash, checked, d, goods, left, part, pay, seen},
};

fn back(what: Corrected) -> TakeBack {
    TakeBack { what, parts_home: true, reason: "changed her mind".into() }
}

#[test]
fn a_piece_that_comes_back_brings_its_plain_lines() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    ledger.add_plain(ticket, &goods("From the mixed tray", "3"), &catalog, now()).unwrap();
    check_all(&mut ledger, ticket);
    ledger.ring_up(ticket, Tender::Card, now()).expect("rung up");
    let bill = ledger.bill_for(ticket, now()).unwrap().id;
    ledger.take_back(bill, &back(Corrected::Ticket(ticket)), Some(&Tender::Card), now()).expect("taken back");
    let sums = ledger.so_far().unwrap();
    let line = &sums.taken_back.parts["From the mixed tray"];
    assert_eq!((line.count, line.marked), (1, d("3")));
    adds_up(&sums);
}

#[test]
fn another_way_for_later_goods_is_none_for_the_piece() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let rung_up = ledger.ring_up(ticket, Tender::Card, now()).expect("rung up");
    let bill = ledger.bill_for(ticket, now()).unwrap().id;
    ledger.add_goods(bill, &goods("Gift box", "2.50"), now()).unwrap();
    pay(&mut ledger, bill, &cash());
    ledger.other_tender(bill, 1, &Tender::Named("Voucher".into()), "it was a voucher", now()).expect("put right");
    let after = ledger.ticket(ticket).unwrap();
    assert_eq!((after.tender, after.charged), (rung_up.tender, rung_up.charged), "the piece was paid by card");
    ledger.other_tender(bill, 0, &Tender::Cash, "in cash", now()).expect("put right");
    assert_eq!(ledger.ticket(ticket).unwrap().tender, Some(Tender::Cash));
}

#[test]
fn a_round_sum_for_goods_that_went_is_none_for_others() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let bill = ledger.begin_bill(Uuid::now_v7(), &catalog.table.prices, now()).unwrap().id;
    ledger.add_goods(bill, &goods("Ear wires", "12"), now()).unwrap();
    let given = Given { reduction: Reduction::ToSum(d("10")), reason: "a friend".into() };
    ledger.reduce_goods(bill, Some(given), now()).unwrap();
    ledger.remove_goods(bill, 0, now()).unwrap();
    ledger.add_goods(bill, &goods("Box", "3"), now()).expect("it costs less than the round sum was");
    // 3.00 and 6.25 % of it, half up.
    assert_eq!(left(&ledger, bill), d("3.19"));
}

#[test]
fn a_part_is_no_second_touch_on_the_whole() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let bill = ledger.begin_bill(Uuid::now_v7(), &catalog.table.prices, now()).unwrap().id;
    ledger.add_goods(bill, &goods("Mending", "20"), now()).unwrap();
    let before = seen(&ledger, bill);
    ledger.pay(bill, &card(), before, now()).expect("all of it");
    let other = ledger.pay(bill, &part(Tender::Card, "5"), before, now());
    assert!(matches!(other, Err(LedgerError::BillChanged(_))), "somebody else took all of it: {other:?}");
    let same = Paying { amount: Some(d("21.25")), ..card() };
    ledger.pay(bill, &same, before, now()).expect("the whole sum is the whole");
}

#[test]
fn what_costs_nothing_is_handed_over_once() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let free = Given { reduction: Reduction::Percent(d("100")), reason: "the host's reward".into() };
    ledger.reduce(ticket, Some(free), now()).unwrap();
    let bill = ledger.bill_for(ticket, now()).unwrap().id;
    let before = seen(&ledger, bill);
    let first = ledger.pay(bill, &cash(), before, now()).expect("handed over");
    assert_eq!(ledger.pay(bill, &cash(), before, now()).expect("the same touch again"), first);
    assert_eq!(ledger.so_far().unwrap().sold, 1);
}

#[test]
fn a_bill_of_what_was_let_go_waits_for_nobody() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let first = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let second = checked(&mut ledger, &catalog, 2, &["key-heart"]);
    let bill = ledger.bill_for(first, now()).unwrap().id;
    ledger.put_on_bill(bill, second, now()).unwrap();
    assert_eq!(ledger.open_bills().unwrap().len(), 1);
    ledger.let_go(first, now()).unwrap();
    assert_eq!(ledger.open_bills().unwrap().len(), 1, "one still waits");
    ledger.close_show(catalog.table.prices.currency, now()).expect("closed");
    assert!(ledger.open_bills().unwrap().is_empty(), "nothing is to be paid for it any more");
    let paid = checked(&mut ledger, &catalog, 3, &["key-heart"]);
    let bill = ledger.bill_for(paid, now()).unwrap().id;
    pay(&mut ledger, bill, &part(Tender::Card, "5"));
    ledger.let_go(paid, now()).unwrap();
    assert_eq!(ledger.open_bills().unwrap().len(), 1, "the deposit is to be paid out");
    pay(&mut ledger, bill, &card());
    assert!(ledger.open_bills().unwrap().is_empty());
    adds_up(&ledger.so_far().unwrap());
}
