//! What a show is, in the ledger.

use chatelaine::{
    catalog::Catalog,
    ledger::{AboutShow, Closing, Ledger, LedgerError, ShowKind},
    money::{TaxRule, Tender},
};
use rust_decimal::Decimal;

use crate::book::{catalog, check_all, count, now, opened, sent};

fn d(text: &str) -> Decimal {
    text.parse().expect("a number")
}

fn fair() -> AboutShow {
    AboutShow {
        place: Some("Mill Lane".into()),
        kind: Some(ShowKind::Fair),
        tax: Some(TaxRule::Added { percent: d("8.875") }),
        fee: Some(d("45.00")),
        host: None,
        float: Some(d("50.00")),
    }
}

fn tell(ledger: &mut Ledger, catalog: &Catalog, show: i64, about: &AboutShow) -> Result<(), LedgerError> {
    ledger.set_about(show, about, catalog.table.prices.currency, now())
}

#[test]
fn a_show_is_told_while_it_runs_and_stays_as_it_was_once_it_is_closed() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let currency = catalog.table.prices.currency;
    assert_eq!(ledger.about_show(1).expect("read"), AboutShow::default(), "nobody told yet");
    let before = ledger.change().expect("a number");
    tell(&mut ledger, &catalog, 1, &fair()).expect("told");
    assert_eq!(ledger.change().expect("a number"), before + 1, "an entry");
    tell(&mut ledger, &catalog, 1, &fair()).expect("told");
    assert_eq!(ledger.change().expect("a number"), before + 1, "what is known is no news");
    let absurd = AboutShow { fee: Some(d("-3")), ..fair() };
    let refused = tell(&mut ledger, &catalog, 1, &absurd).expect_err("no fee").to_string();
    assert!(refused.contains("stall fee"), "{refused}");
    assert_eq!(ledger.about_show(1).expect("read"), fair());

    ledger.close_show(currency, now()).expect("closed");
    assert_eq!(ledger.about_show(2).expect("read"), AboutShow::default(), "the next one is not told what it is");
    let closed = tell(&mut ledger, &catalog, 1, &AboutShow::default()).expect_err("closed");
    assert!(matches!(closed, LedgerError::ShowClosed(1)), "{closed}");
    assert_eq!(ledger.closed_show(1).expect("read").expect("a close-out").end.about, fair());
    assert_eq!(ledger.last_of_kind(ShowKind::Fair, 2).expect("read"), Some(fair()), "the usual values of a fair");
    assert_eq!(ledger.last_of_kind(ShowKind::HomeParty, 2).expect("read"), None);
    let shows = ledger.shows(10).expect("read");
    assert_eq!(shows.iter().map(|show| (show.id, show.closed.is_some())).collect::<Vec<_>>(), [(2, false), (1, true)]);
    assert_eq!(shows[1].about, fair());
}

#[test]
fn the_end_of_a_show_notes_the_cash_what_is_left_and_what_the_parts_were() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let currency = catalog.table.prices.currency;
    tell(&mut ledger, &catalog, 1, &fair()).expect("told");
    let mut taken = Decimal::ZERO;
    for (sequence, tender) in [(0, Tender::Cash), (1, Tender::Card)] {
        let one = sent(&catalog, sequence, &["key-heart"]);
        ledger.receive(&one, false, &catalog, now()).expect("received");
        check_all(&mut ledger, one.id);
        let charged = ledger.ring_up(one.id, tender.clone(), now()).expect("rung up").charged.expect("charged");
        taken += if tender == Tender::Cash { charged } else { Decimal::ZERO };
    }
    let counted = d("50.00") + taken - d("1.25");
    let closing = Closing { counted: Some(counted), ..Closing::uncounted(currency) };
    ledger.close_counted(&closing, now()).expect("closed");
    let closed = ledger.closed_show(1).expect("read").expect("a close-out");
    assert_eq!(closed.end.should_be(&closed.sums), Some(d("50.00") + taken), "the float and what was taken in cash");
    assert_eq!(closed.end.difference(&closed.sums), Some(d("-1.25")), "so much is missing");
    assert_eq!(closed.end.left["key-heart"], count(&ledger, "key-heart").0);
    let key = catalog.drop_kind("key-heart").expect("a drop");
    let then = &closed.end.parts["key-heart"];
    assert_eq!((&then.name, then.home, then.sort), (&key.name, Some(key.home), Some(key.sort)));
    assert_eq!(closed.end.parts["chain-brass"].home, None);

    // The drop gets another name and another home; the closed show says what it was.
    let mut other = (*catalog).clone();
    for kind in other.drops.iter_mut().filter(|kind| kind.id == "key-heart") {
        kind.name = "Another name".into();
    }
    ledger.take_catalog(&other, "second", now()).expect("taken");
    assert_eq!(ledger.closed_show(1).expect("read").expect("a close-out"), closed);
}
