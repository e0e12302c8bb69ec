//! What the tests of the till share: checked tickets, and what a close-out has to say whatever was done.

use chatelaine::{
    catalog::Catalog,
    ledger::{Bill, CloseOut, Ledger, Paying, Seen},
    money::{PlainLine, Tender},
};
use rust_decimal::Decimal;
use uuid::Uuid;

use crate::book::{check_all, now, sent};

pub fn d(text: &str) -> Decimal {
    text.parse().expect("a decimal")
}

pub fn card() -> Paying {
    Paying::all(Tender::Card)
}

pub fn cash() -> Paying {
    Paying::all(Tender::Cash)
}

pub fn part(tender: Tender, amount: &str) -> Paying {
    Paying { amount: Some(d(amount)), ..Paying::all(tender) }
}

pub fn goods(words: &str, price: &str) -> PlainLine {
    PlainLine { words: words.into(), price: d(price) }
}

/// A ticket with these drops, received, checked and told.
pub fn checked(ledger: &mut Ledger, catalog: &Catalog, sequence: u16, drops: &[&str]) -> Uuid {
    let mut ticket = sent(catalog, sequence, drops);
    ticket.show = ledger.show().expect("a show").id;
    ledger.receive(&ticket, true, catalog, now()).expect("received");
    check_all(ledger, ticket.id);
    ticket.id
}

/// Marked prices of a brass chain and these drops.
pub fn marked(catalog: &Catalog, drops: &[&str]) -> Decimal {
    let base = catalog.base("chain-brass").expect("a base").price;
    base + drops.iter().map(|id| catalog.drop_kind(id).expect("a drop").price).sum::<Decimal>()
}

/// With the test table's tax on top: 6.25 %, half up.
pub fn taxed(marked: Decimal) -> Decimal {
    let tax = marked * d("0.0625");
    marked + tax.round_dp_with_strategy(2, rust_decimal::RoundingStrategy::MidpointAwayFromZero)
}

/// Pays as the bill is now.
pub fn pay(ledger: &mut Ledger, bill: Uuid, paying: &Paying) -> Bill {
    let seen = seen(ledger, bill);
    ledger.pay(bill, paying, seen, now()).expect("paid")
}

pub fn seen(ledger: &Ledger, bill: Uuid) -> Seen {
    let (bill, _, sum) = ledger.bill(bill).expect("a bill");
    Seen { left: sum.left, payments: bill.payments.len() }
}

pub fn left(ledger: &Ledger, bill: Uuid) -> Decimal {
    ledger.bill(bill).expect("a bill").2.left
}

/// What is true of every close-out: what was taken is what was sold, with what coins round and what is owed; the tax is that
/// of its rates.
pub fn adds_up(sums: &CloseOut) {
    let taken = sums.cash + sums.card + sums.other_ways.values().sum::<Decimal>();
    assert_eq!(Some(taken), sums.taken());
    assert_eq!(taken, sums.totals + sums.cash_rounding().expect("a sum") + sums.owing, "{sums:?}");
    let by_rate: Decimal = sums.tax_by_rate.rates().map(|(_, at)| at.tax).sum();
    let net: Decimal = sums.tax_by_rate.rates().map(|(_, at)| at.net).sum();
    assert_eq!((by_rate, by_rate + net), (sums.tax, sums.totals), "{sums:?}");
}
