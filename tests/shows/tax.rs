//! The tax of the place: one rate for the desk's sums and the tablets', and what is on its way keeps the sum that the guest
//! saw.

use std::sync::Arc;

use chatelaine::{
    craft::Wearer,
    desk::Desk,
    money::{Quote, TaxRule},
    ticket::{Receipt, SentTicket},
};
use rust_decimal::{Decimal, RoundingStrategy};

use crate::kit::{Kiosk, Table, config};

fn d(text: &str) -> Decimal {
    text.parse().expect("a number")
}

/// The tax on `net` at 8.875 %, worked out here: 0.08875 of it, to whole cents with halves up (Streamlined Sales and Use Tax
/// Agreement, section 324).
fn tax_on(net: Decimal) -> Decimal {
    (net * d("0.08875")).round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero)
}

fn stands(table: &Table, sent: &SentTicket) -> Quote {
    let id = sent.id;
    let ticket = table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap();
    assert_eq!(ticket.sum_doubt, None, "nobody has to look at the sum");
    ticket.quote
}

#[test]
fn the_rate_of_the_place_is_that_of_every_sum_and_what_is_on_its_way_keeps_its_own() {
    let table = Table::new();
    let (seller, old) = (table.seller(), table.kiosk());
    let own = table.catalog().table.prices.tax;
    assert!(matches!(own, TaxRule::Added { .. }), "the test table's tax comes on top");
    let before = old.news(-1, "");
    let drops = [old.fitting()[0].id.clone(), old.fitting()[1].id.clone()];
    let drops: Vec<&str> = drops.iter().map(String::as_str).collect();
    // Made before the tablet has heard of the place.
    let on_its_way = old.ticket(0, &drops, Wearer::From13);

    let told =
        [("show", "1"), ("kind", "fair"), ("place", "Mill Lane"), ("tax", "8,875"), ("fee", "45"), ("float", "50")];
    assert_eq!(seller.post("/show/about", &told).location, "/show");
    let news = old.news(-1, &before.revision);
    assert_ne!(news.revision, before.revision, "tablets fetch it");
    let content = news.content.expect("another catalogue");
    assert_eq!(content.catalog.table.prices.tax, TaxRule::Added { percent: d("8.875") });
    assert_eq!(content.pictures, before.content.expect("a catalogue").pictures, "no picture is fetched again");
    assert!(old.news(-1, &news.revision).content.is_none(), "once");

    let new = Kiosk { catalog: Arc::new(content.catalog), agent: old.agent.clone(), pairing: old.pairing.clone() };
    let there = new.ticket(1, &drops, Wearer::From13);
    let net = there.quote.subtotal - there.quote.discount;
    assert_eq!((there.quote.tax, there.quote.total), (tax_on(net), net + tax_on(net)));
    assert_ne!(there.quote.total, on_its_way.quote.total);
    for sent in [&there, &on_its_way] {
        assert_eq!(new.deliver(sent, true), Receipt::Stored { short: vec![] });
        assert_eq!(stands(&table, sent), sent.quote, "the sum on the screen is the sum charged");
    }
    // A piece threaded by hand is quoted by the same rate.
    let homes = format!("{} {}", old.fitting()[0].home, old.fitting()[1].home);
    let currency = there.quote.currency;
    let page = seller.get(&format!("/new?homes={}", homes.replace(' ', "+"))).text;
    assert!(page.contains(&currency.plain(there.quote.total)), "{page}");

    // Started anew, the desk still stands where it stood.
    let Table { desk, dir } = table;
    drop(desk);
    let desk = Desk::start(config(dir.path())).expect("again");
    let table = Table { desk, dir };
    let mut again = Kiosk { catalog: old.catalog.clone(), ..new };
    again.pairing.desk = table.desk.url();
    assert_eq!(again.news(-1, "").revision, news.revision);

    // The next show is told nothing yet, so the table's own rate holds; a ticket of the first show that comes late keeps the
    // sum that its guest saw.
    let mut late = there.clone();
    late.id = uuid::Uuid::now_v7();
    late.number = chatelaine::ticket::TicketNumber::new(again.pairing.digit, 2).expect("a number");
    let seller = crate::seller::Seller { url: table.desk.url(), ..seller };
    assert_eq!(seller.post("/show/close", &[("show", "1")]).location, "/shows/1");
    let next = again.news(-1, "");
    assert_eq!((next.show, next.content.expect("a catalogue").catalog.table.prices.tax), (2, own));
    assert_eq!(next.revision, before.revision);
    assert_eq!(again.deliver(&late, false), Receipt::Stored { short: vec![] });
    assert_eq!(stands(&table, &late), there.quote);
}

#[test]
fn an_edit_of_the_catalogue_keeps_the_rate_of_the_place() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    assert_eq!(seller.post("/show/about", &[("show", "1"), ("tax", "8.875")]).status, 303);
    let before = kiosk.news(-1, "");
    let file = table.catalog_file("table.ron");
    let text = std::fs::read_to_string(&file).expect("a file");
    std::fs::write(&file, text.replacen("name: \"", "name: \"Another ", 1)).expect("an edit");
    let end = std::time::Instant::now() + std::time::Duration::from_secs(20);
    let news = loop {
        let news = kiosk.news(before.change, &before.revision);
        if news.revision != before.revision {
            break news;
        }
        assert!(std::time::Instant::now() < end, "the edit was never heard of");
    };
    let table = news.content.expect("a catalogue").catalog.table;
    assert!(table.name.starts_with("Another "), "{}", table.name);
    assert_eq!(table.prices.tax, TaxRule::Added { percent: d("8.875") });
}
