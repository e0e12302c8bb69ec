//! What tests of the book share: the table of the tests, a book on it, tickets as a tablet makes them.
#![allow(dead_code, reason = "not every test needs all of it")]

use std::path::Path;

use chatelaine::{
    catalog::{Catalog, read_folder},
    craft::{Piece, Wearer},
    ledger::{Ledger, Part},
    ticket::{SentTicket, TicketNumber},
};
use jiff::Timestamp;
use uuid::Uuid;

pub fn catalog() -> std::sync::Arc<Catalog> {
    read_folder(&Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/table")).expect("the catalogue").catalog
}

pub fn now() -> Timestamp {
    "2026-06-06T10:00:00Z".parse().expect("a time")
}

pub fn opened(catalog: &Catalog) -> Ledger {
    let mut ledger = Ledger::in_memory(now()).expect("a ledger");
    ledger.take_catalog(catalog, "first", now()).expect("counts");
    ledger
}

pub fn sent(catalog: &Catalog, sequence: u16, drops: &[&str]) -> SentTicket {
    let drops = drops.iter().map(|id| (*id).to_owned()).collect();
    let piece =
        Piece { base: "chain-brass".into(), length: None, wearer: Wearer::From13, neck: None, drops, looks: vec![] };
    SentTicket {
        id: Uuid::now_v7(),
        show: 1,
        number: TicketNumber::new(1, sequence).expect("a number"),
        quote: catalog.quote(&piece).expect("a quote"),
        verdict: catalog.cautions(&piece).expect("cautions"),
        piece,
        grown_up_confirmed: false,
        practice: false,
    }
}

pub fn count(ledger: &Ledger, id: &str) -> (u32, u32) {
    let count = ledger.counts().expect("counts")[id];
    (count.on_hand, count.held)
}

pub fn check_all(ledger: &mut Ledger, id: Uuid) {
    let ticket = ledger.tick(id, Part::Base, true, false, now()).expect("ticked");
    for (at, _) in ticket.live_lines() {
        ledger.tick(id, Part::Line(at), true, false, now()).expect("ticked");
    }
    ledger.set_told(id, true, now()).expect("told");
}
