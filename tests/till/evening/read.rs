//! A close-out of the ledger in the model's terms.

use std::collections::BTreeMap;

use chatelaine::ledger::{CloseOut, SoldLine};
use rust_decimal::Decimal;

use super::{
    arithmetic::{Lines, Sums},
    cents,
};

fn lines(lines: &BTreeMap<String, SoldLine>) -> Lines {
    lines.iter().map(|(name, line)| (name.clone(), (i64::from(line.count), cents(line.marked)))).collect()
}

/// A percentage in thousandths of a percent.
fn rate(percent: Decimal) -> i64 {
    (percent * Decimal::ONE_THOUSAND).normalize().try_into().expect("a rate")
}

pub fn sums(of: &CloseOut) -> Sums {
    assert!(of.set_apart.is_empty(), "{:?}", of.set_apart);
    let taken = [("cash", of.cash), ("card", of.card)].map(|(name, amount)| (name.to_owned(), cents(amount)));
    let others = of.other_ways.iter().map(|(name, amount)| (name.clone(), cents(*amount)));
    Sums {
        sold: i64::from(of.sold),
        let_go: i64::from(of.let_go),
        let_go_now: i64::from(of.let_go_now),
        prepaid_kept: i64::from(of.prepaid_kept),
        taken: taken.into_iter().chain(others).collect(),
        totals: cents(of.totals),
        tax: cents(of.tax),
        by_rate: of.tax_by_rate.rates().map(|(at, sums)| (rate(at), (cents(sums.net), cents(sums.tax)))).collect(),
        off: cents(of.discounts),
        by_hand: of.given.iter().map(|(reason, amount)| (reason.clone(), cents(*amount))).collect(),
        owing: cents(of.owing),
        paid_out: cents(of.paid_out),
        parts: lines(&of.parts),
        goods: lines(&of.goods),
        back_times: i64::from(of.taken_back.times),
        back_pieces: i64::from(of.taken_back.pieces),
        back: cents(of.taken_back.totals),
        back_tax: cents(of.taken_back.tax),
        back_parts: lines(&of.taken_back.parts),
        late_sold: i64::from(of.late.sold),
        late_taken: cents(of.late.taken),
        late_let_go: i64::from(of.late.let_go),
    }
    .plain()
}
