//! A small story of two shows, told to a ledger: what fixtures of the ledger's layouts hold. Each was written by a version of
//! its layout, and today's is written anew by the test that compares the two.

use chatelaine::{
    catalog::Catalog,
    craft::{Piece, Wearer},
    ledger::{Ledger, Part, Visitor},
    money::{PriceRules, TaxRule, Tender},
    ticket::{SentTicket, TicketNumber},
};
use jiff::{Timestamp, ToSpan};
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::book::now;

/// The parts of the story's catalogue, with prices and counts.
const PARTS: [(&str, &str, u32); 6] = [
    ("key-heart", "4.50", 12),
    ("locket-round", "12.00", 6),
    ("charm-moon", "3.00", 15),
    ("bead-jade", "3.00", 18),
    ("vial-stars", "6.50", 2),
    ("found-gear", "7.00", 1),
];

pub fn id(n: u8) -> Uuid {
    format!("01990000-0000-7000-8000-0000000000{n:02}").parse().expect("an id")
}

pub fn d(text: &str) -> Decimal {
    text.parse().expect("an amount")
}

/// What the story needs of the demo catalogue, at the story's prices.
fn storys(catalog: &Catalog) -> Catalog {
    let mut catalog = catalog.clone();
    catalog.bases.retain(|base| base.id == "chain-brass");
    (catalog.bases[0].price, catalog.bases[0].stock) = (d("14.00"), 20);
    catalog.drops.retain(|kind| PARTS.iter().any(|(id, ..)| kind.id == *id));
    for kind in &mut catalog.drops {
        let (_, price, stock) = PARTS.iter().find(|(id, ..)| kind.id == *id).expect("a part");
        (kind.price, kind.stock) = (d(price), *stock);
    }
    catalog.table.prices = PriceRules {
        tax: TaxRule::Added { percent: d("6.25") },
        cash_step: d("0.01"),
        discounts: vec![],
        ..catalog.table.prices
    };
    catalog
}

struct Teller<'a> {
    ledger: &'a mut Ledger,
    catalog: &'a Catalog,
}

impl Teller<'_> {
    fn send(&mut self, n: u8, show: i64, sequence: u16, drops: &[&str], at: Timestamp) {
        let drops = drops.iter().map(|id| (*id).to_owned()).collect();
        let piece = Piece { base: "chain-brass".into(), length: None, wearer: Wearer::From13, neck: None, drops };
        let sent = SentTicket {
            id: id(n),
            show,
            number: TicketNumber::new(1, sequence).expect("a number"),
            quote: self.catalog.quote(&piece).expect("a sum"),
            verdict: self.catalog.cautions(&piece).expect("cautions"),
            piece,
            grown_up_confirmed: false,
            practice: false,
        };
        self.ledger.receive(&sent, false, self.catalog, at).expect("received");
    }

    fn tick(&mut self, n: u8, part: Part, at: Timestamp) {
        self.ledger.tick(id(n), part, true, false, at).expect("ticked");
    }

    fn check_and_take(&mut self, n: u8, tender: Tender, at: Timestamp) {
        for part in [Part::Base, Part::Line(0), Part::Line(1)] {
            self.tick(n, part, at);
        }
        self.ledger.set_told(id(n), true, at).expect("told");
        self.ledger.ring_up(id(n), tender, at).expect("rung up");
    }
}

/// Tells the story.
pub fn tell(ledger: &mut Ledger, catalog: &Catalog) {
    let catalog = &storys(catalog);
    let at = |minutes: i64| now() + minutes.minutes();
    ledger.take_catalog(catalog, "first", at(0)).expect("counts");
    ledger.pair_kiosk("aa", None, at(0)).expect("a digit");
    let browser = Visitor { key_hash: "cc".into(), name: "Phone".into(), address: "192.168.4.2".into(), who: None };
    ledger.begin_session("bb", &browser, at(0)).expect("a session");
    ledger.set_setting("pin", "0102:0304").expect("kept");
    let mut teller = Teller { ledger, catalog };
    teller.send(1, 1, 0, &["key-heart", "charm-moon"], at(1));
    teller.check_and_take(1, Tender::Cash, at(1));
    teller.ledger.hand_over(id(1), at(1)).expect("handed over");
    teller.send(2, 1, 1, &["vial-stars", "bead-jade"], at(2));
    teller.ledger.swap(id(2), 1, "locket-round", catalog, at(2)).expect("swapped");
    teller.check_and_take(2, Tender::Card, at(2));
    teller.send(3, 1, 2, &["key-heart"], at(3));
    teller.ledger.close_show(catalog.table.prices.currency, at(3)).expect("closed");
    teller.send(4, 1, 3, &["charm-moon", "charm-moon"], at(4));
    teller.check_and_take(4, Tender::Card, at(4));
    teller.send(5, 1, 4, &["found-gear"], at(5));
    teller.send(6, 2, 0, &["key-heart", "key-heart"], at(6));
    teller.check_and_take(6, Tender::Cash, at(6));
    teller.send(7, 2, 4, &["bead-jade"], at(7));
    teller.tick(7, Part::Line(0), at(7));
    teller.ledger.end_holds(at(127)).expect("a sweep");
    teller.tick(7, Part::Base, at(127));
}
