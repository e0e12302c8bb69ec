//! What arrives is quoted anew and must agree: with today's prices, or with those that the table had when a tablet that
//! was out of reach made the sum. What can be no sum is refused in words, what no list gives waits for the seller's word.

use chatelaine::{
    catalog::Catalog,
    ledger::{Charge, Ledger, LedgerError, SumDoubt},
    money::{Currency, PricedDrop, Quote, Tender, quote},
    ticket::{Receipt, SentTicket, State},
};
use jiff::ToSpan;
use rust_decimal::Decimal;

use crate::{
    book::{catalog, check_all, count, now, opened, sent},
    stored::written,
};

fn d(text: &str) -> Decimal {
    text.parse().expect("an amount")
}

/// The catalogue with all drops at twice the price.
fn dearer(catalog: &Catalog) -> Catalog {
    let mut dearer = catalog.clone();
    dearer.drops.iter_mut().for_each(|kind| kind.price *= Decimal::TWO);
    dearer
}

/// A ticket whose quote was tampered with.
fn with(catalog: &Catalog, sequence: u16, change: impl Fn(&mut SentTicket)) -> SentTicket {
    let mut ticket = sent(catalog, sequence, &["key-heart", "charm-moon"]);
    change(&mut ticket);
    ticket
}

/// The same parts with the first drop at another price, and everything that follows from it.
fn at_price(catalog: &Catalog, of: &Quote, price: &str) -> Quote {
    let mut drops: Vec<PricedDrop> = of.drops.clone();
    drops[0].price = d(price);
    quote(&catalog.table.prices, of.base.clone(), drops).expect("a quote")
}

#[test]
fn what_can_be_no_sum_is_refused_in_words() {
    let catalog = catalog();
    let huge = "79228162514264337593543950335";
    let mut n = 0;
    let mut refused = |words: &str, change: &dyn Fn(&mut SentTicket)| {
        for waits in [true, false] {
            let mut ledger = opened(&catalog);
            n += 1;
            let ticket = with(&catalog, n, change);
            match ledger.receive(&ticket, waits, &catalog, now()).expect("an answer") {
                Receipt::Refused { reason, .. } => assert!(reason.contains(words), "{reason}, not {words}"),
                other => panic!("{words}: {other:?}"),
            }
            assert_eq!(ledger.tickets().expect("tickets"), []);
            assert_eq!(count(&ledger, "key-heart").1, 0, "nothing is held");
        }
    };
    refused("larger than", &|t| t.quote.total = d(huge));
    refused("larger than", &|t| t.quote.subtotal = d(huge));
    refused("not that of its lines", &|t| t.quote.total = d("0.01"));
    refused("not that of its lines", &|t| t.quote.total = d("-50.00"));
    refused("not that of its lines", &|t| t.quote.discount = -d(huge));
    refused("not that of its lines", &|t| t.quote.discount = d("999"));
    refused("not that of its lines", &|t| t.quote.tax = d("3"));
    refused("between 0 and", &|t| t.quote.drops[1].price = d("0"));
    refused("between 0 and", &|t| t.quote.base.price = d("-14"));
    refused("between 0 and", &|t| t.quote.base.price = d(huge));
    refused("decimals", &|t| t.quote.drops[0].price = d("4.501"));
    refused("this table never took that", &|t| t.quote.currency = Currency::from_code("EUR").expect("a currency"));
    refused("same lines", &|t| t.piece.drops.push("key-heart".into()));
    refused("same lines", &|t| t.quote.base.id = "bangle-brass".into());
    refused("can't be made", &|t| t.piece.length = Some(chatelaine::craft::Length::from_mm(1e300)));
}

/// Prices change while a tablet is out of reach: the guest pays what was on the screen, and nobody has to ask.
#[test]
fn a_sum_by_an_earlier_price_list_stands() {
    let catalog = catalog();
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("ledger.sqlite");
    let mut ledger = Ledger::open(&file, now()).expect("a ledger");
    ledger.take_catalog(&catalog, "first", now()).expect("taken over");
    let newer = dearer(&catalog);
    ledger.take_catalog(&newer, "dearer", now()).expect("taken over");
    // Also after a restart and another show.
    drop(ledger);
    let mut ledger = Ledger::open(&file, now()).expect("the ledger again");
    ledger.close_show(catalog.table.prices.currency, now()).expect("closed");
    let ticket = sent(&catalog, 0, &["key-heart", "charm-moon"]);
    ledger.receive(&ticket, false, &newer, now()).expect("received");
    let kept = ledger.ticket(ticket.id).expect("a ticket");
    assert_eq!((kept.sum_doubt, &kept.quote), (None, &ticket.quote));
    assert_eq!(kept.total_by_catalog, Some(newer.quote(&ticket.piece).expect("a quote").total), "the seller sees both");
    for charge in [Charge::Today, Charge::AsSeen] {
        let refused = ledger.confirm_sum(ticket.id, charge, &newer, now());
        assert!(matches!(refused, Err(LedgerError::SumStands)), "no other sum than the guest saw: {refused:?}");
    }
    check_all(&mut ledger, ticket.id);
    let paid = ledger.ring_up(ticket.id, Tender::Card, now()).expect("rung up");
    assert_eq!(paid.charged, Some(ticket.quote.total));
}

/// Prices that are edited again and again fill no disk, and the newest lists are remembered.
#[test]
fn only_the_newest_price_lists_are_kept() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let priced = |cents: i64| {
        let mut other = catalog.as_ref().clone();
        other
            .drops
            .iter_mut()
            .filter(|kind| kind.id == "key-heart")
            .for_each(|kind| kind.price = Decimal::new(cents, 2));
        other
    };
    for cents in 1000..1070 {
        ledger.take_catalog(&priced(cents), "another", now()).expect("taken over");
    }
    let newest = priced(1069);
    let mut doubt = |cents: i64, sequence: u16| {
        let ticket = sent(&priced(cents), sequence, &["key-heart"]);
        ledger.receive(&ticket, false, &newest, now()).expect("received");
        ledger.ticket(ticket.id).expect("a ticket").sum_doubt
    };
    assert_eq!([doubt(1069, 0), doubt(1068, 1), doubt(1010, 2)], [None; 3]);
    assert_eq!(doubt(1001, 3), Some(SumDoubt::NotOurs), "so long ago that the seller has to say");
}

#[test]
fn a_sum_that_no_list_gives_waits_for_the_seller() {
    let catalog = catalog();
    for (charge, sequence) in [(Charge::AsSeen, 0), (Charge::Today, 1)] {
        let mut ledger = opened(&catalog);
        // In itself it is all right: only that the key never cost a cent here.
        let ticket = with(&catalog, sequence, |ticket| ticket.quote = at_price(&catalog, &ticket.quote, "0.01"));
        let today = catalog.quote(&ticket.piece).expect("a quote");
        assert_eq!(
            ledger.receive(&ticket, true, &catalog, now()).expect("received"),
            Receipt::Stored { short: vec![] }
        );
        let kept = ledger.ticket(ticket.id).expect("a ticket");
        assert_eq!((kept.sum_doubt, kept.total_by_catalog), (Some(SumDoubt::NotOurs), Some(today.total)));
        check_all(&mut ledger, ticket.id);
        for tender in [Tender::Cash, Tender::Card] {
            assert!(matches!(ledger.ring_up(ticket.id, tender, now()), Err(LedgerError::SumNotConfirmed)));
        }
        // A drop that is taken off does not settle it.
        ledger.remove(ticket.id, 1, &catalog, now()).expect("taken off");
        assert!(matches!(ledger.ring_up(ticket.id, Tender::Card, now()), Err(LedgerError::SumNotConfirmed)));
        let confirmed = ledger.confirm_sum(ticket.id, charge, &catalog, now()).expect("confirmed");
        assert_eq!(confirmed.state, State::Checked);
        let wanted = match charge {
            Charge::AsSeen => "14.89", // 14.00 and 0.01, 6.25 % on top, half up
            Charge::Today => "19.66",  // 14.00 and 4.50
        };
        let paid = ledger.ring_up(ticket.id, Tender::Card, now() + 1.minutes()).expect("rung up");
        assert_eq!(paid.charged, Some(d(wanted)), "{charge:?}");
        assert_eq!(ledger.so_far().expect("sums").card, d(wanted));
        assert!(matches!(
            ledger.confirm_sum(ticket.id, charge, &catalog, now()),
            Err(LedgerError::Closed(State::RungUp))
        ));
    }
}

/// A part that no catalogue here ever had comes with a price of the tablet's own.
#[test]
fn a_part_that_nobody_knows_waits_for_the_seller_and_has_no_price_today() {
    let catalog = catalog();
    let mut before = catalog.as_ref().clone();
    before.drops.iter_mut().filter(|kind| kind.id == "locket-oval").for_each(|kind| kind.id = "locket-lost".into());
    let mut ledger = opened(&catalog);
    let ticket = sent(&before, 0, &["locket-lost", "key-heart"]);
    ledger.receive(&ticket, false, &catalog, now()).expect("received");
    assert_eq!(ledger.ticket(ticket.id).expect("a ticket").sum_doubt, Some(SumDoubt::NotOurs));
    let refused = ledger.confirm_sum(ticket.id, Charge::Today, &catalog, now()).expect_err("no price");
    assert!(refused.to_string().contains("locket-lost"), "{refused}");
    ledger.swap(ticket.id, 0, "key-tiny", &catalog, now()).expect("swapped");
    let priced = ledger.confirm_sum(ticket.id, Charge::Today, &catalog, now()).expect("priced");
    assert_eq!(priced.quote, catalog.quote(&priced.piece).expect("a quote"));
}

/// The table takes another currency since the tablet was last in reach.
#[test]
fn a_sum_in_an_earlier_currency_is_priced_anew() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let mut newer = catalog.as_ref().clone();
    newer.table.prices.currency = Currency::from_code("EUR").expect("a currency");
    ledger.take_catalog(&newer, "euros", now()).expect("taken over");
    let ticket = sent(&catalog, 0, &["key-heart"]);
    ledger.receive(&ticket, false, &newer, now()).expect("received");
    assert_eq!(ledger.ticket(ticket.id).expect("a ticket").sum_doubt, Some(SumDoubt::Currency));
    check_all(&mut ledger, ticket.id);
    assert!(matches!(ledger.ring_up(ticket.id, Tender::Card, now()), Err(LedgerError::SumNotConfirmed)));
    let refused = ledger.confirm_sum(ticket.id, Charge::AsSeen, &newer, now());
    assert!(matches!(refused, Err(LedgerError::OtherCurrency { .. })), "{refused:?}");
    ledger.confirm_sum(ticket.id, Charge::Today, &newer, now()).expect("confirmed");
    let paid = ledger.ring_up(ticket.id, Tender::Card, now()).expect("rung up");
    assert_eq!(paid.quote.currency.code, "EUR");
    // Sums of two currencies are never added.
    let closed = ledger.close_show(newer.table.prices.currency, now()).expect("closed");
    assert_eq!((closed.currency.map(|currency| currency.code), closed.card), (Some("EUR"), paid.quote.total));
}

/// An earlier version took two tickets over 79228162514264337593543950335 by card, and could neither show nor close its
/// show afterwards.
#[test]
fn absurd_amounts_of_an_earlier_version_keep_no_show_from_closing() {
    let catalog = catalog();
    let folder = tempfile::tempdir().expect("a folder");
    let file = written(folder.path(), "absurd-amounts.sql", "");
    let mut ledger = Ledger::open(&file, now()).expect("the old book");
    let far = ledger.so_far().expect("sums");
    assert_eq!((far.sold, far.card, far.set_apart.len()), (3, d("19.66"), 2));
    assert!(far.set_apart[0].charged.contains("79228162514264337593543950335"), "{:?}", far.set_apart);
    let closed = ledger.close_show(catalog.table.prices.currency, now()).expect("closed");
    assert_eq!((closed.sold, closed.card, closed.set_apart.len()), (3, d("19.66"), 2));
    assert_eq!(ledger.so_far().expect("sums").sold, 0);
}

/// One of them is still open: it can be let go, and by no means rung up.
#[test]
fn an_absurd_ticket_of_an_earlier_version_can_only_be_let_go() {
    let catalog = catalog();
    let folder = tempfile::tempdir().expect("a folder");
    let reopen = "UPDATE tickets SET state = 'checked',
        ticket = replace(replace(ticket, '\"state\":\"RungUp\"', '\"state\":\"Checked\"'), '\"tender\":\"Card\"', '\"tender\":null');";
    let file = written(folder.path(), "absurd-amounts.sql", reopen);
    let mut ledger = Ledger::open(&file, now()).expect("the old book");
    ledger.take_catalog(&catalog, "newer", now()).expect("taken over");
    let absurd = ledger.tickets().expect("tickets").into_iter().find(|ticket| ticket.quote.total > d("1000000"));
    let absurd = absurd.expect("an open one").id;
    ledger.set_told(absurd, true, now()).expect("told");
    for tender in [Tender::Cash, Tender::Card] {
        let refused = ledger.ring_up(absurd, tender, now()).expect_err("absurd");
        assert!(refused.to_string().contains("no table takes"), "{refused}");
    }
    assert_eq!(ledger.let_go(absurd, now()).expect("let go").state, State::LetGo);
}
