//! What the seller does to the price of a piece by hand.

use chatelaine::{
    caution::CautionCode,
    ledger::{Given, LedgerError},
    money::{MoneyError, Package, Reduction, Tender},
};
use rust_decimal::Decimal;

use crate::{
    book::{catalog, check_all, now, opened},
    counter::{adds_up, checked, d, goods, marked, taxed},
};

fn given(reduction: Reduction) -> Option<Given> {
    Some(Given { reduction, reason: "a friend".into() })
}

#[test]
fn a_reduction_is_charged_and_told_by_its_reason() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let drops = ["key-heart", "key-heart"];
    let ticket = checked(&mut ledger, &catalog, 1, &drops);
    let full = marked(&catalog, &drops);
    let ten = ledger.reduce(ticket, given(Reduction::Percent(d("10"))), now()).expect("reduced");
    let off = (full / d("10")).round_dp_with_strategy(2, rust_decimal::RoundingStrategy::MidpointAwayFromZero);
    assert_eq!((ten.quote.discount, ten.quote.total), (off, taxed(full - off)));
    let two = ledger.reduce(ticket, given(Reduction::Amount(d("2"))), now()).expect("another in its place");
    assert_eq!(two.quote.total, taxed(full - d("2")));
    let round = ledger.reduce(ticket, given(Reduction::ToSum(d("15"))), now()).expect("to a round sum");
    assert!(round.quote.total <= d("15") && round.quote.total > d("14.98"), "{}", round.quote.total);
    let above = ledger.reduce(ticket, given(Reduction::ToSum(d("500"))), now());
    assert!(matches!(above, Err(LedgerError::Money(MoneyError::AboveTotal { .. }))), "{above:?}");
    let silent = Given { reason: " ".into(), ..given(Reduction::Percent(d("5"))).unwrap() };
    assert!(matches!(ledger.reduce(ticket, Some(silent), now()), Err(LedgerError::NoReason)));
    let none = ledger.reduce(ticket, None, now()).expect("nothing any more");
    assert_eq!(none.quote.total, taxed(full));
    ledger.reduce(ticket, given(Reduction::Amount(d("2"))), now()).unwrap();
    ledger.ring_up(ticket, Tender::Card, now()).expect("rung up");
    assert!(matches!(ledger.reduce(ticket, None, now()), Err(LedgerError::Closed(_))));
    let sums = ledger.so_far().unwrap();
    assert_eq!((sums.given["a friend"], sums.discounts, sums.card), (d("2"), d("2"), taxed(full - d("2"))));
    adds_up(&sums);
}

#[test]
fn a_free_piece_is_handed_over_without_money() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let free = Given { reduction: Reduction::Percent(d("100")), reason: "the host's reward".into() };
    ledger.reduce(ticket, Some(free), now()).expect("reduced");
    let rung_up = ledger.ring_up(ticket, Tender::Cash, now()).expect("rung up");
    assert_eq!(rung_up.charged, Some(Decimal::ZERO));
    let sums = ledger.so_far().unwrap();
    assert_eq!((sums.sold, sums.totals), (1, Decimal::ZERO));
    assert_eq!(sums.given["the host's reward"], marked(&catalog, &["key-heart"]));
    adds_up(&sums);
}

#[test]
fn a_wish_that_the_piece_no_longer_reaches_comes_to_nothing() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart", "key-heart"]);
    let wish = ledger.ticket(ticket).unwrap().quote.total.trunc();
    ledger.reduce(ticket, given(Reduction::ToSum(wish)), now()).expect("reduced");
    let less = ledger.remove(ticket, 0, &catalog, now()).expect("removed");
    assert_eq!((less.given, less.quote.total), (None, taxed(marked(&catalog, &["key-heart"]))));
}

#[test]
fn a_party_pays_its_package() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let three = ["key-heart", "key-heart", "key-heart"];
    let ticket = checked(&mut ledger, &catalog, 1, &three);
    let one = catalog.drop_kind("key-heart").unwrap().price;
    let package = Package { name: "Party".into(), price: d("10"), drops: 2 };
    let party = ledger.set_package(ticket, Some(package), now()).expect("a package");
    assert_eq!(party.quote.total, taxed(d("10") + one), "a base and two drops, and one more at its price");
    let none = ledger.set_package(ticket, None, now()).expect("none any more");
    assert_eq!(none.quote.total, taxed(marked(&catalog, &three)));
}

#[test]
fn what_has_no_home_is_priced_and_counts_as_the_worst_that_is_usual() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let ticket = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let before = ledger.ticket(ticket).unwrap();
    let with = ledger.add_plain(ticket, &goods("Her own locket", "0"), &catalog, now()).expect("hung");
    assert_eq!(with.quote.total, before.quote.total, "her own costs nothing");
    let named = |code| {
        with.verdict.cautions.iter().any(|one| one.code == code && one.drop.as_deref() == Some("Her own locket"))
    };
    assert!(named(CautionCode::SmallPart) && named(CautionCode::UnknownMetal), "{:?}", with.verdict);
    assert!(!with.told, "what is new has to be told");
    assert!(matches!(ledger.ring_up(ticket, Tender::Card, now()), Err(LedgerError::NotTold)));
    let two = ledger.add_plain(ticket, &goods("From the mixed tray", "3"), &catalog, now()).expect("hung");
    assert_eq!(two.quote.total, taxed(marked(&catalog, &["key-heart"]) + d("3")));
    let one = ledger.remove_plain(ticket, 0, &catalog, now()).expect("taken off");
    assert_eq!(one.plain.len(), 1);
    for wrong in [goods("", "1"), goods("x\ny", "1"), goods(&"x".repeat(200), "1")] {
        assert!(matches!(ledger.add_plain(ticket, &wrong, &catalog, now()), Err(LedgerError::NoWords(_))), "{wrong:?}");
    }
    for wrong in ["-1", "0.001", "99999999"] {
        assert!(matches!(ledger.add_plain(ticket, &goods("x", wrong), &catalog, now()), Err(LedgerError::Money(_))));
    }
    check_all(&mut ledger, ticket);
    ledger.ring_up(ticket, Tender::Card, now()).expect("rung up");
    assert_eq!(ledger.so_far().unwrap().goods["From the mixed tray"].marked, d("3"));
    adds_up(&ledger.so_far().unwrap());
}
