//! Bills as they come about at a full table, over the seller's pages.

use chatelaine::craft::Wearer;
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::{
    kit::{Kiosk, Table},
    seller::{Answer, Seller},
};

/// A piece opened by hand, for a grown-up, told: ready for the till.
pub fn ready(table: &Table, seller: &Seller, homes: &str) -> Uuid {
    let opened = seller.post("/new", &[("id", &Uuid::now_v7().to_string()), ("homes", homes), ("wearer", "from13")]);
    let id: Uuid = opened.location.strip_prefix("/tickets/").expect("a ticket's page").parse().expect("an id");
    seller.post(&format!("/tickets/{id}/told"), &[("told", "1")]);
    for code in table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap().unconfirmed() {
        let code = serde_json::to_value(code).unwrap();
        seller.post(&format!("/tickets/{id}/confirm"), &[("code", code.as_str().unwrap()), ("on", "1")]);
    }
    id
}

pub fn bill_of(answer: &Answer) -> Uuid {
    assert_eq!(answer.status, 303, "{}", answer.text);
    let place = answer.location.strip_prefix("/bills/").expect("a bill's page");
    place.split('#').next().unwrap().parse().expect("an id")
}

pub fn homes(table: &Table) -> Vec<String> {
    let catalog = table.catalog();
    let kiosk = table.kiosk();
    let fitting = kiosk.fitting();
    fitting.iter().filter(|kind| catalog.suits(kind, Wearer::From13)).map(|kind| kind.home.to_string()).collect()
}

/// A bill that is paid in three ways with change, put right twice and open again; one with a piece that waits; an empty one.
pub fn pages(table: &Table, seller: &Seller, kiosk: &Kiosk, look: impl Fn(&str)) -> Vec<String> {
    let homes = homes(table);
    let (first, second) = (ready(table, seller, &homes[0]), ready(table, seller, &homes[1]));
    let id = bill_of(&seller.post(&format!("/tickets/{first}/bill"), &[]));
    let act = |verb: &str, fields: &[(&str, &str)]| {
        let answer = seller.post(&format!("/bills/{id}/{verb}"), fields);
        assert_eq!(answer.status, 303, "{verb} {fields:?}: {}", answer.text);
    };
    let left = || table.desk.with_ledger(move |ledger| ledger.bill(id)).unwrap().unwrap().2.left;
    let number = table.desk.with_ledger(move |ledger| ledger.ticket(second)).unwrap().unwrap().number.to_string();
    act("ticket", &[("number", &number)]);
    act("goods", &[("words", "Etui 1"), ("price", "12.50")]);
    act("goods", &[("words", "Etui 2"), ("price", "2.50")]);
    act("gift", &[("ticket", &second.to_string()), ("gift", "1")]);
    act("reduce", &[("how", "amount"), ("amount", "1"), ("reason", "Zoë")]);
    act("pay", &[("tender", "card"), ("left", &left().to_string()), ("payments", "0"), ("amount", "5")]);
    let paid_in_part = format!("/bills/{id}");
    look(&paid_in_part);
    act("pay", &[("tender", "Voucher"), ("left", &left().to_string()), ("payments", "1"), ("amount", "4")]);
    let given = (left() + Decimal::from(37)).to_string();
    act("pay", &[("tender", "cash"), ("left", &left().to_string()), ("payments", "2"), ("given", &given)]);
    look(&paid_in_part);
    act("other-way", &[("payment", "0"), ("tender", "Voucher"), ("reason", "Zoë")]);
    let line = format!("line:{second}:0");
    act("take-back", &[("what", &line), ("home", "0"), ("reason", "Zoë"), ("tender", "cash")]);
    act("take-back", &[("what", "goods:0"), ("reason", "Zoë"), ("tender", "")]);
    act("take-back", &[("what", &format!("ticket:{first}")), ("home", "1"), ("reason", "Zoë"), ("tender", "")]);

    let sent = kiosk.ticket(1, &[&kiosk.fitting()[0].id], Wearer::Under3);
    kiosk.deliver(&sent, true);
    let waits = bill_of(&seller.post(&format!("/tickets/{}/bill", sent.id), &[]));
    let empty = Uuid::now_v7();
    seller.post("/bills", &[("id", &empty.to_string())]);
    let take_back = format!("/bills/{id}/take-back?");
    vec![
        paid_in_part,
        format!("{take_back}ticket={second}"),
        format!("{take_back}goods=1"),
        format!("{take_back}goods=9"),
        format!("/bills/{waits}"),
        format!("/bills/{empty}"),
        format!("/bills/{}", Uuid::nil()),
    ]
}
