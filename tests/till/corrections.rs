//! What is put right after it was paid: counter-entries, in the running show.

use chatelaine::{
    ledger::{Corrected, Ledger, LedgerError, TakeBack, Why},
    money::Tender,
    ticket::State,
};
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::{
    book::{catalog, count, now, opened},
    counter::{adds_up, card, cash, checked, d, goods, left, marked, pay, taxed},
};

fn back(what: Corrected, parts_home: bool) -> TakeBack {
    TakeBack { what, parts_home, reason: "changed her mind".into() }
}

#[test]
fn a_whole_piece_is_taken_back_in_a_later_show() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart", "key-heart"]);
    let before = count(&ledger, "key-heart");
    ledger.ring_up(ticket, Tender::Cash, now()).expect("rung up");
    let first = ledger.close_show(catalog.table.prices.currency, now()).expect("closed");
    let total = taxed(marked(&catalog, &["key-heart", "key-heart"]));
    let bill = ledger.bill_for(ticket, now()).unwrap().id;
    let no_reason = TakeBack { reason: "  ".into(), ..back(Corrected::Ticket(ticket), true) };
    assert!(matches!(ledger.take_back(bill, &no_reason, None, now()), Err(LedgerError::NoReason)));
    let act = back(Corrected::Ticket(ticket), true);
    let after = ledger
        .acting(Some("Mia".into()), |ledger| ledger.take_back(bill, &act, Some(&Tender::Card), now()))
        .expect("taken back");
    assert_eq!(after.corrections.len(), 1);
    assert_eq!((after.corrections[0].by.as_deref(), after.corrections[0].worth), (Some("Mia"), total));
    let out = after.payments.last().unwrap();
    assert_eq!(
        (out.amount, out.why, &out.tender, out.by.as_deref()),
        (-total, Why::PaidOut, &Tender::Card, Some("Mia"))
    );
    assert_eq!(ledger.ticket(ticket).unwrap().state, State::TakenBack);
    assert_eq!(count(&ledger, "key-heart"), (before.0, before.1 - 2), "the keys lie in their home again");
    let second = ledger.so_far().unwrap();
    assert_eq!((second.sold, second.totals, second.card, second.paid_out), (0, -total, -total, total));
    assert_eq!((second.taken_back.times, second.taken_back.pieces, second.taken_back.totals), (1, 1, total));
    assert_eq!(second.taken_back.parts["key-heart"].count, 2);
    assert!(second.taken_back.lost.is_empty(), "all of it lies in its home again");
    assert_eq!(ledger.closed_show(1).unwrap().unwrap().sums, first, "what is closed stays");
    adds_up(&second);
    assert!(matches!(
        ledger.take_back(bill, &act, Some(&Tender::Card), now()),
        Err(LedgerError::State { from: State::TakenBack, .. })
    ));
    assert_eq!(ledger.so_far().unwrap(), second, "once");
}

#[test]
fn lines_taken_back_one_by_one_come_to_what_was_paid() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart", "key-heart", "key-heart"]);
    let on_hand = count(&ledger, "key-heart").0;
    ledger.ring_up(ticket, Tender::Card, now()).expect("rung up");
    let bill = ledger.bill_for(ticket, now()).unwrap().id;
    let total = ledger.bill(bill).unwrap().2.total;
    let mut out = Decimal::ZERO;
    for (at, home) in [(1, true), (0, false)] {
        let what = Corrected::Line { ticket, at };
        let after = ledger.take_back(bill, &back(what, home), Some(&Tender::Cash), now()).expect("taken back");
        out -= after.payments.last().unwrap().amount;
        assert!(matches!(ledger.take_back(bill, &back(what, home), None, now()), Err(LedgerError::NoLine)), "once");
        adds_up(&ledger.so_far().unwrap());
    }
    assert_eq!(left(&ledger, bill), Decimal::ZERO);
    assert_eq!(ledger.ticket(ticket).unwrap().quote.total, taxed(marked(&catalog, &["key-heart"])));
    assert_eq!(count(&ledger, "key-heart").0, on_hand - 2, "one came home, one is broken, one is sold");
    let after = ledger.take_back(bill, &back(Corrected::Ticket(ticket), true), Some(&Tender::Cash), now()).unwrap();
    out -= after.payments.last().unwrap().amount;
    assert_eq!(out, total, "however often tax is rounded, all of it comes to what was paid");
    let sums = ledger.so_far().unwrap();
    assert_eq!((sums.totals, sums.tax, sums.card, sums.cash), (Decimal::ZERO, Decimal::ZERO, total, -total));
    assert_eq!((sums.sold, sums.taken_back.times, sums.taken_back.pieces), (1, 3, 1));
    assert_eq!(
        sums.taken_back.lost,
        [("key-heart".to_owned(), 1)].into(),
        "what broke is told apart, since it has cost something"
    );
    adds_up(&sums);
}

#[test]
fn an_exchange_pays_the_difference() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let first = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    ledger.ring_up(first, Tender::Card, now()).expect("rung up");
    let bill = ledger.bill_for(first, now()).unwrap().id;
    let other = checked(&mut ledger, &catalog, 2, &["key-heart", "key-heart", "key-heart"]);
    ledger.take_back(bill, &back(Corrected::Ticket(first), true), None, now()).expect("taken back");
    let credit = taxed(marked(&catalog, &["key-heart"]));
    assert_eq!(left(&ledger, bill), -credit);
    assert_eq!(ledger.so_far().unwrap().owing, credit, "owed to the guest until it is set off");
    adds_up(&ledger.so_far().unwrap());
    ledger.put_on_bill(bill, other, now()).expect("onto the same bill");
    let dearer = taxed(marked(&catalog, &["key-heart", "key-heart", "key-heart"])) - credit;
    assert_eq!(left(&ledger, bill), dearer);
    let paid = pay(&mut ledger, bill, &cash());
    assert_eq!(paid.payments.last().unwrap().amount, dearer);
    assert_eq!(ledger.ticket(other).unwrap().state, State::RungUp);
    let sums = ledger.so_far().unwrap();
    assert_eq!((sums.owing, sums.cash, sums.card), (Decimal::ZERO, dearer, credit));
    adds_up(&sums);
}

#[test]
fn an_exchange_of_equal_pieces_moves_no_money() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let first = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    ledger.ring_up(first, Tender::Card, now()).expect("rung up");
    let bill = ledger.bill_for(first, now()).unwrap().id;
    let other = checked(&mut ledger, &catalog, 2, &["key-heart"]);
    ledger.take_back(bill, &back(Corrected::Ticket(first), false), None, now()).expect("taken back");
    ledger.put_on_bill(bill, other, now()).expect("onto the same bill");
    assert_eq!(left(&ledger, bill), Decimal::ZERO);
    let paid = pay(&mut ledger, bill, &cash());
    assert_eq!(paid.payments.len(), 1);
    assert_eq!(ledger.ticket(other).unwrap().state, State::RungUp, "and yet it is hers");
    adds_up(&ledger.so_far().unwrap());
}

#[test]
fn the_wrong_way_to_pay_is_put_right_by_two_entries() {
    let mut catalog = (*catalog()).clone();
    catalog.table.prices.cash_step = d("0.05");
    let mut ledger: Ledger = opened(&catalog);
    let bill = ledger.begin_bill(Uuid::now_v7(), &catalog.table.prices, now()).unwrap().id;
    ledger.add_goods(bill, &goods("Clasp", "4.63"), now()).unwrap();
    pay(&mut ledger, bill, &cash());
    assert_eq!(ledger.so_far().unwrap().cash, d("4.90"), "4.92 in cash");
    let voucher = Tender::Named("Voucher".into());
    assert!(matches!(ledger.other_tender(bill, 0, &Tender::Cash, "typed", now()), Err(LedgerError::RightAlready)));
    assert!(matches!(ledger.other_tender(bill, 0, &voucher, "", now()), Err(LedgerError::NoReason)));
    let after = ledger.other_tender(bill, 0, &voucher, "it was a voucher", now()).expect("put right");
    let moved: Vec<_> = after.payments.iter().map(|one| (one.tender.name(), one.amount, one.settles)).collect();
    let expected = [("cash", "4.90", "4.92"), ("cash", "-4.90", "-4.92"), ("Voucher", "4.92", "4.92")];
    assert_eq!(moved, expected.map(|(name, amount, settles)| (name, d(amount), d(settles))));
    assert!(matches!(ledger.other_tender(bill, 0, &Tender::Card, "again", now()), Err(LedgerError::RightAlready)));
    ledger.other_tender(bill, 2, &Tender::Card, "no, by card", now()).expect("the right one can be wrong as well");
    let sums = ledger.so_far().unwrap();
    assert_eq!((sums.cash, sums.card, sums.other_ways["Voucher"]), (d("0"), d("4.92"), d("0")));
    assert_eq!((sums.paid_out, sums.totals, sums.cash_rounding()), (d("0"), d("4.92"), Some(d("0"))));
    adds_up(&sums);
}

#[test]
fn goods_and_what_was_never_sold() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let bill = ledger.bill_for(ticket, now()).unwrap().id;
    ledger.add_goods(bill, &goods("Gift box", "2.50"), now()).unwrap();
    ledger.add_goods(bill, &goods("Cloth", "1.65"), now()).unwrap();
    for what in [Corrected::Ticket(ticket), Corrected::Line { ticket, at: 0 }, Corrected::Goods(0)] {
        let refused = ledger.take_back(bill, &back(what, true), None, now());
        assert!(refused.is_err(), "{what:?} is not paid: {refused:?}");
    }
    pay(&mut ledger, bill, &card());
    let before = ledger.bill(bill).unwrap().2.total;
    assert!(matches!(ledger.remove_goods(bill, 0, now()), Err(LedgerError::PaidAlready)));
    ledger.take_back(bill, &back(Corrected::Goods(0), false), Some(&Tender::Cash), now()).expect("taken back");
    // The tax of both was rounded together: 4.15 at 6.25 % is 0.26, of 1.65 alone 0.10.
    assert_eq!(before - ledger.bill(bill).unwrap().2.total, d("4.41") - d("1.75"));
    let unknown = back(Corrected::Ticket(Uuid::now_v7()), true);
    assert!(matches!(ledger.take_back(bill, &unknown, None, now()), Err(LedgerError::NotOnBill)));
    adds_up(&ledger.so_far().unwrap());
}
