//! Paying together, in parts, in several ways, with change.

use chatelaine::{
    catalog::Catalog,
    ledger::{Given, Ledger, LedgerError, Paying, Seen, Why},
    money::{Reduction, Tender},
    ticket::State,
};
use jiff::ToSpan;
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::{
    book::{catalog, check_all, count, now, opened, sent},
    counter::{adds_up, card, cash, checked, d, goods, left, marked, part, pay, seen, taxed},
};

#[test]
fn two_pieces_and_other_goods_are_paid_together() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let first = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let second = checked(&mut ledger, &catalog, 2, &["key-heart", "key-heart"]);
    let before = count(&ledger, "key-heart");
    let bill = ledger.bill_for(first, now()).expect("a bill");
    assert_eq!(bill.number, ledger.ticket(first).unwrap().number, "a bill has the number of its first ticket");
    ledger.put_on_bill(bill.id, second, now()).expect("put on");
    ledger.set_gift(bill.id, second, true, now()).expect("a gift");
    ledger.add_goods(bill.id, &goods("Gift box", "2.50"), now()).expect("goods");
    ledger.add_goods(bill.id, &goods("Polishing cloth", "1.65"), now()).expect("goods");
    // Each ticket's tax is rounded by itself, and once for all goods together.
    let pieces = taxed(marked(&catalog, &["key-heart"])) + taxed(marked(&catalog, &["key-heart", "key-heart"]));
    let total = pieces + taxed(d("4.15"));
    assert_eq!(left(&ledger, bill.id), total);
    let paid = pay(&mut ledger, bill.id, &card());
    assert_eq!((paid.payments.len(), paid.settled.map(|(show, _)| show)), (1, Some(1)));
    for id in [first, second] {
        let ticket = ledger.ticket(id).unwrap();
        assert_eq!((ticket.state, ticket.settled), (State::RungUp, Some(1)));
    }
    assert_eq!(count(&ledger, "key-heart"), (before.0 - 3, before.1 - 3), "the parts left the stock");
    let sums = ledger.so_far().unwrap();
    assert_eq!((sums.sold, sums.card, sums.totals, sums.owing), (2, total, total, Decimal::ZERO));
    assert_eq!((sums.goods["Gift box"].count, sums.goods["Gift box"].marked), (1, d("2.50")));
    adds_up(&sums);
}

#[test]
fn goods_alone_are_a_sale_with_a_number_of_the_desks_own() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let (one, other) = (Uuid::now_v7(), Uuid::now_v7());
    let bill = ledger.begin_bill(one, &catalog.table.prices, now()).expect("a bill");
    assert_eq!(ledger.begin_bill(one, &catalog.table.prices, now()).unwrap(), bill, "begun twice, it is one bill");
    let next = ledger.begin_bill(other, &catalog.table.prices, now()).expect("another");
    let numbers = [bill.number.to_string(), next.number.to_string()];
    assert!(
        numbers[0].starts_with("0-001-") && numbers[1].starts_with("0-002-"),
        "each has one of its own: {numbers:?}"
    );
    assert!(matches!(
        ledger.pay(one, &cash(), Seen { left: Decimal::ZERO, payments: 0 }, now()),
        Err(LedgerError::NothingToPay)
    ));
    ledger.add_goods(one, &goods("Mending", "6"), now()).expect("goods");
    pay(&mut ledger, one, &Paying { given: Some(d("10")), ..cash() });
    let paid = ledger.bill(one).unwrap().0;
    // 6.00 and 6.25 % of it.
    assert_eq!((paid.payments[0].amount, paid.payments[0].change()), (d("6.38"), Some(d("3.62"))));
    adds_up(&ledger.so_far().unwrap());
}

#[test]
fn a_part_by_card_and_the_rest_in_cash() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let total = taxed(marked(&catalog, &["key-heart"]));
    let bill = ledger.bill_for(ticket, now()).unwrap().id;
    let paid = pay(&mut ledger, bill, &part(Tender::Card, "5"));
    assert_eq!((paid.payments[0].why, paid.settled), (Why::Part, None));
    assert_eq!(ledger.ticket(ticket).unwrap().state, State::Checked, "a part is not all of it");
    assert_eq!(ledger.so_far().unwrap().owing, d("5"));
    adds_up(&ledger.so_far().unwrap());
    for wrong in ["0", "-1", "0.001", "1000"] {
        let now_seen = seen(&ledger, bill);
        let refused = ledger.pay(bill, &part(Tender::Cash, wrong), now_seen, now());
        assert!(matches!(refused, Err(LedgerError::NoPart { .. })), "{wrong}: {refused:?}");
    }
    let now_seen = seen(&ledger, bill);
    let little = Paying { given: Some(d("0.10")), ..cash() };
    assert!(matches!(ledger.pay(bill, &little, now_seen, now()), Err(LedgerError::GivenTooLittle { .. })));
    pay(&mut ledger, bill, &cash());
    let sums = ledger.so_far().unwrap();
    assert_eq!((sums.sold, sums.card, sums.cash, sums.owing), (1, d("5"), total - d("5"), Decimal::ZERO));
    assert_eq!(ledger.ticket(ticket).unwrap().state, State::RungUp);
    adds_up(&sums);
}

#[test]
fn a_second_touch_pays_nothing_and_a_changed_bill_is_asked_again() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let bill = ledger.bill_for(ticket, now()).unwrap().id;
    let before = seen(&ledger, bill);
    ledger.add_goods(bill, &goods("Gift box", "2.50"), now()).unwrap();
    assert!(matches!(ledger.pay(bill, &card(), before, now()), Err(LedgerError::BillChanged(_))));
    let before = seen(&ledger, bill);
    let first = ledger.pay(bill, &card(), before, now()).expect("paid");
    let second = ledger.pay(bill, &card(), before, now()).expect("the same touch again");
    assert_eq!(first, second);
    assert!(
        matches!(ledger.pay(bill, &cash(), before, now()), Err(LedgerError::BillChanged(_))),
        "another way is another"
    );
    assert_eq!(ledger.so_far().unwrap().sold, 1);
    let split = ledger.begin_bill(Uuid::now_v7(), &catalog.table.prices, now()).unwrap().id;
    ledger.add_goods(split, &goods("Mending", "20"), now()).unwrap();
    let before = seen(&ledger, split);
    for _ in 0..2 {
        ledger.pay(split, &part(Tender::Card, "5"), before, now()).expect("a part");
    }
    assert_eq!(left(&ledger, split), d("16.25"), "20.00 and 1.25 tax less 5.00, once");
}

#[test]
fn a_deposit_keeps_the_piece_over_the_night_and_counts_in_each_show() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let mut ticket = sent(&catalog, 1, &["key-heart"]);
    ticket.show = 1;
    ledger.receive(&ticket, true, &catalog, now()).expect("received");
    let other = checked(&mut ledger, &catalog, 2, &["key-heart"]);
    let held = count(&ledger, "key-heart");
    let bill = ledger.bill_for(ticket.id, now()).unwrap().id;
    // Nothing is ticked off yet: the piece is still to be made.
    pay(&mut ledger, bill, &part(Tender::Cash, "10"));
    assert!(matches!(ledger.take_off_bill(bill, ticket.id, now()), Err(LedgerError::PaidAlready)));
    ledger.end_holds(now() + 24.hours()).expect("swept");
    assert_eq!(count(&ledger, "key-heart"), held, "what was paid for is not swept");
    let first = ledger.close_show(catalog.table.prices.currency, now() + 24.hours()).expect("closed");
    assert_eq!((first.let_go_now, first.prepaid_kept, first.cash, first.owing), (1, 1, d("10"), d("10")));
    assert_eq!(ledger.ticket(other).unwrap().state, State::LetGo);
    assert_eq!(count(&ledger, "key-heart").1, 1, "one is still held");
    adds_up(&first);
    assert_eq!(ledger.open_bills().unwrap().len(), 1, "the desk sees what waits for its rest");
    check_all(&mut ledger, ticket.id);
    pay(&mut ledger, bill, &card());
    let second = ledger.so_far().unwrap();
    let total = taxed(marked(&catalog, &["key-heart"]));
    assert_eq!((second.sold, second.late.sold, second.card, second.totals), (1, 1, total - d("10"), total));
    assert_eq!(second.owing, d("-10"), "paid in the show before");
    adds_up(&second);
    assert!(ledger.open_bills().unwrap().is_empty());
}

#[test]
fn a_round_sum_for_goods_is_for_those_goods() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let bill = ledger.begin_bill(Uuid::now_v7(), &catalog.table.prices, now()).unwrap().id;
    ledger.add_goods(bill, &goods("Ear wires", "12"), now()).unwrap();
    ledger.add_goods(bill, &goods("Box", "3"), now()).unwrap();
    let to = |sum| Some(Given { reduction: Reduction::ToSum(d(sum)), reason: "a friend".into() });
    ledger.reduce_goods(bill, to("15"), now()).expect("reduced");
    assert_eq!(left(&ledger, bill), d("15"));
    ledger.remove_goods(bill, 1, now()).expect("taken off");
    assert_eq!(left(&ledger, bill), d("12.75"), "less than the wish: as marked, with tax");
    ledger.reduce_goods(bill, to("10"), now()).expect("reduced");
    pay(&mut ledger, bill, &card());
    ledger.add_goods(bill, &goods("Cloth", "1.60"), now()).expect("more");
    assert_eq!(left(&ledger, bill), d("1.70"), "at its own price");
    pay(&mut ledger, bill, &cash());
    adds_up(&ledger.so_far().unwrap());
}

/// Cash to the nearest five cents, as where the smaller coins are gone.
fn five_cents() -> Catalog {
    let mut catalog = (*catalog()).clone();
    catalog.table.prices.cash_step = d("0.05");
    catalog
}

#[test]
fn only_what_is_left_in_cash_is_rounded() {
    let catalog = five_cents();
    let mut ledger = opened(&catalog);
    let bill = ledger.begin_bill(Uuid::now_v7(), &catalog.table.prices, now()).unwrap().id;
    // 4.63 and 0.29 tax are 4.92: the sum in Canada's Budget 2012, which is 4.90 in cash.
    ledger.add_goods(bill, &goods("Clasp", "4.63"), now()).unwrap();
    assert_eq!(left(&ledger, bill), d("4.92"));
    let now_seen = seen(&ledger, bill);
    let odd = ledger.pay(bill, &part(Tender::Cash, "1.02"), now_seen, now());
    assert!(matches!(odd, Err(LedgerError::NoPart { .. })), "there are no such coins: {odd:?}");
    pay(&mut ledger, bill, &part(Tender::Card, "2.01"));
    let paid = pay(&mut ledger, bill, &cash());
    assert_eq!((paid.payments[1].amount, paid.payments[1].settles), (d("2.90"), d("2.91")));
    let sums = ledger.so_far().unwrap();
    assert_eq!((sums.cash_rounding(), sums.owing), (Some(d("-0.01")), Decimal::ZERO));
    adds_up(&sums);
}

#[test]
fn nothing_is_paid_that_may_not_be_sold_yet() {
    let catalog = catalog();
    let mut ledger: Ledger = opened(&catalog);
    let first = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let mut open = sent(&catalog, 2, &["key-heart"]);
    open.show = 1;
    ledger.receive(&open, true, &catalog, now()).unwrap();
    let bill = ledger.bill_for(first, now()).unwrap().id;
    ledger.put_on_bill(bill, open.id, now()).unwrap();
    let before = (ledger.so_far().unwrap(), count(&ledger, "key-heart"));
    let now_seen = seen(&ledger, bill);
    assert!(matches!(ledger.pay(bill, &card(), now_seen, now()), Err(LedgerError::NotTicked(2))));
    assert_eq!((ledger.so_far().unwrap(), count(&ledger, "key-heart")), before, "nothing of it is entered");
    assert_eq!(ledger.ticket(first).unwrap().state, State::Checked);
    assert!(matches!(ledger.ring_up(first, Tender::Card, now()), Err(LedgerError::WithOthers)));
    ledger.take_off_bill(bill, open.id, now()).unwrap();
    ledger.ring_up(first, Tender::Card, now()).expect("alone again");
}
