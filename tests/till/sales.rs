//! A sale is found again, from any show.

use chatelaine::{
    ledger::{SaleId, SaleQuery},
    money::Tender,
};
use jiff::ToSpan;

use crate::{
    book::{catalog, now, opened},
    counter::{card, checked, d, goods, pay},
};

#[test]
fn a_sale_is_found_by_number_show_day_sum_and_home() {
    let catalog = catalog();
    let mut ledger = opened(&catalog);
    let first = checked(&mut ledger, &catalog, 1, &["key-heart"]);
    let alone = ledger.ring_up(first, Tender::Card, now()).expect("rung up");
    ledger.close_show(catalog.table.prices.currency, now()).expect("closed");
    let second = checked(&mut ledger, &catalog, 1, &["charm-moon"]);
    let third = checked(&mut ledger, &catalog, 2, &["charm-moon"]);
    let bill = ledger.bill_for(second, now()).unwrap().id;
    ledger.put_on_bill(bill, third, now()).unwrap();
    ledger.add_goods(bill, &goods("Gift box", "2.50"), now()).unwrap();
    let query = SaleQuery::default();
    assert_eq!(ledger.sales(&query, 10).unwrap().len(), 1, "what is not paid is no sale");
    pay(&mut ledger, bill, &card());
    let total = ledger.bill(bill).unwrap().2.total;
    let found = |query: SaleQuery| -> Vec<SaleId> {
        ledger.sales(&query, 10).expect("found").into_iter().map(|sale| sale.id).collect()
    };
    let (one, other) = (SaleId::Bill(alone.bill.unwrap()), SaleId::Bill(bill));
    let number = |id| Some(ledger.ticket(id).unwrap().number);
    assert_eq!(found(query.clone()).len(), 2);
    assert_eq!(found(SaleQuery { number: number(third), ..query.clone() }), [other], "by any ticket's number");
    assert_eq!(found(SaleQuery { number: number(first), ..query.clone() }).len(), 2, "numbers come again in each show");
    assert_eq!(found(SaleQuery { number: number(first), show: Some(1), ..query.clone() }), [one]);
    assert_eq!(found(SaleQuery { sum: Some(total), ..query.clone() }), [other]);
    assert_eq!(found(SaleQuery { sum: Some(d("0.01")), ..query.clone() }), []);
    let home = catalog.drop_kind("key-heart").unwrap().home;
    assert_eq!(found(SaleQuery { home: Some(home), ..query.clone() }), [one]);
    let day = |from: i64| Some((now() + from.hours(), now() + (from + 24).hours()));
    assert_eq!(found(SaleQuery { paid: day(-1), ..query.clone() }).len(), 2);
    assert_eq!(found(SaleQuery { paid: day(-24), ..query }), [], "the day before");
}
