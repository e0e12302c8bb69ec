//! A small story of two shows, told to a ledger: what fixtures of the ledger's layouts hold. Each was written by a version of
//! its layout, and today's is written anew by the test that compares the two.

use chatelaine::{
    catalog::Catalog,
    craft::{Piece, Wearer},
    ledger::{AboutShow, Corrected, CountLine, Given, Ledger, Part, Paying, Reason, Seen, ShowKind, TakeBack, Visitor},
    money::{Package, PlainLine, PriceRules, Reduction, TaxRule, Tender},
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

/// What the story needs of the test table, at the story's prices.
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
        let piece = Piece {
            base: "chain-brass".into(),
            length: None,
            wearer: Wearer::From13,
            neck: None,
            drops,
            looks: vec![],
        };
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

/// What the till knows besides: a helper, what a show is, a bill of two tickets and goods that is paid in parts, and what was
/// put right on it.
pub fn tell_of_the_till(ledger: &mut Ledger, catalog: &Catalog) {
    let catalog = &storys(catalog);
    let at = |minutes: i64| now() + (200 + minutes).minutes();
    ledger.add_helper("Mia", "0506:0708", at(0)).expect("a helper");
    let about = AboutShow {
        place: Some("Mill Lane".into()),
        kind: Some(ShowKind::HomeParty),
        tax: Some(TaxRule::Added { percent: Decimal::new(625, 2) }),
        fee: Some(Decimal::from(40)),
        host: Some("Host at Mill Lane".into()),
        float: Some(Decimal::from(100)),
    };
    ledger.set_about(2, &about, catalog.table.prices.currency, at(0)).expect("told");
    let mut teller = Teller { ledger, catalog };
    for (n, sequence) in [(8, 5), (9, 6)] {
        teller.send(n, 2, sequence, &["charm-moon", "charm-moon"], at(1));
        for part in [Part::Base, Part::Line(0), Part::Line(1)] {
            teller.tick(n, part, at(1));
        }
        teller.ledger.set_told(id(n), true, at(1)).expect("told");
    }
    teller.ledger.acting(Some("Mia".into()), |ledger| by_mia(ledger, catalog, at(2)));
}

fn by_mia(ledger: &mut Ledger, catalog: &Catalog, at: Timestamp) {
    let given = |reduction| Some(Given { reduction, reason: "a friend".into() });
    let line = |words: &str, price| PlainLine { words: words.into(), price: Decimal::from(price) };
    let package = Package { name: "Party".into(), price: Decimal::from(15), drops: 1 };
    ledger.set_package(id(8), Some(package), at).expect("a package");
    ledger.reduce(id(8), given(Reduction::Percent(Decimal::TEN)), at).expect("reduced");
    ledger.add_plain(id(9), &line("From the mixed tray", 3), catalog, at).expect("hung");
    ledger.set_told(id(9), true, at).expect("told");
    let bill = ledger.bill_for(id(8), at).expect("a bill").id;
    ledger.put_on_bill(bill, id(9), at).expect("put on");
    ledger.set_gift(bill, id(9), true, at).expect("a gift");
    ledger.add_goods(bill, &line("Gift box", 2), at).expect("goods");
    ledger.add_goods(bill, &line("Cloth", 3), at).expect("goods");
    ledger.reduce_goods(bill, given(Reduction::Amount(Decimal::ONE)), at).expect("reduced");
    let mut pay = |paying: &Paying| {
        let (of, _, sum) = ledger.bill(bill).expect("a bill");
        ledger.pay(bill, paying, Seen { left: sum.left, payments: of.payments.len() }, at).expect("paid");
    };
    pay(&Paying { amount: Some(Decimal::from(20)), ..Paying::all(Tender::Named("Voucher".into())) });
    pay(&Paying { given: Some(Decimal::from(200)), ..Paying::all(Tender::Cash) });
    let back = |what| TakeBack { what, parts_home: true, reason: "it did not suit".into() };
    for what in [Corrected::Line { ticket: id(9), at: 0 }, Corrected::Goods(1), Corrected::Ticket(id(8))] {
        ledger.take_back(bill, &back(what), Some(&Tender::Cash), at).expect("taken back");
    }
    ledger.other_tender(bill, 0, &Tender::Card, "a card after all", at).expect("put right");
}

/// What the bench knows besides: parts are counted, one that is missing is explained, a stray goes home, something breaks.
pub fn tell_of_the_bench(ledger: &mut Ledger) {
    let at = |minutes: i64| now() + (300 + minutes).minutes();
    let seen = ledger.change().expect("an entry");
    let line = |part: &str, counted, refilled| CountLine { part: part.into(), counted, refilled };
    // Of nine heart keys seven lie there, and five are put in; the moons are only put in.
    let lines = [line("key-heart", Some(7), 5), line("charm-moon", None, 2)];
    ledger.count_parts(id(20), seen, &lines, at(0)).expect("counted");
    ledger.explain_count(id(21), "key-heart", Reason::Broken, 1, at(1)).expect("explained");
    ledger.stray_home(id(22), "key-heart", 1, at(2)).expect("home");
    let page = [("made", "one", serde_json::json!({ "of": "key-heart", "count": 2 }))];
    ledger.keep_pages_and_put_in(id(24), &page, Some(("key-heart", 2)), at(2)).expect("kept");
    ledger.change_stock(id(23), "charm-moon", Reason::GivenAway, 1, at(3)).expect("given away");
}
