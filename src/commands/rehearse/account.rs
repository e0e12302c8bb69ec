//! The rehearsal's own running account, by which each close-out is checked: what was seen at every bill before and after.

use std::collections::BTreeMap;

use chatelaine::{
    ledger::{Bill, BillSum, CloseOut, Count, Ticket},
    money::Tender,
};
use rust_decimal::Decimal;

use super::{super::Told, agree};

/// A bill with its tickets and what it comes to.
pub(super) type Seen = (Bill, Vec<Ticket>, BillSum);

/// What the running show should come to.
#[derive(Debug, Default)]
pub(super) struct Account {
    ways: BTreeMap<String, Decimal>,
    settled: Decimal,
    sold: u32,
    late: u32,
    totals: Decimal,
    tax: Decimal,
    taken_back: u32,
    by_hand: Decimal,
}

/// What of a bill is the guest's: total, tax and what was taken off by hand.
fn sold_of((bill, tickets, sum): &Seen) -> (Decimal, Decimal) {
    let goods = bill.live_goods().all(|(_, goods)| goods.sold.is_some());
    let start = if goods { (sum.goods.total, sum.goods.tax) } else { (Decimal::ZERO, Decimal::ZERO) };
    let sold = tickets.iter().filter(|ticket| ticket.state.is_sold());
    sold.fold(start, |(total, tax), ticket| (total + ticket.quote.total, tax + ticket.quote.tax))
}

impl Account {
    /// Something was done with a bill.
    pub(super) fn saw(&mut self, before: &Seen, after: &Seen, show: i64) {
        for payment in after.0.payments.iter().skip(before.0.payments.len()) {
            *self.ways.entry(payment.tender.name().to_owned()).or_default() += payment.amount;
            self.settled += payment.settles;
        }
        let was_sold = |id| before.1.iter().any(|ticket| ticket.id == id && ticket.state.is_sold());
        for ticket in after.1.iter().filter(|ticket| ticket.state.is_sold() && !was_sold(ticket.id)) {
            self.sold += 1;
            self.late += u32::from(ticket.show < show);
        }
        let ((total_before, tax_before), (total, tax)) = (sold_of(before), sold_of(after));
        self.totals += total - total_before;
        self.tax += tax - tax_before;
        let back = |bill: &Bill| bill.corrections.iter().filter(|one| !one.worth.is_zero()).count();
        self.taken_back += (back(&after.0) - back(&before.0)) as u32;
    }

    /// A ticket was rung up alone.
    pub(super) fn rang_up(&mut self, ticket: &Ticket) {
        let (charged, total) = (ticket.charged.unwrap_or_default(), ticket.quote.total);
        let way = ticket.tender.as_ref().map_or("card", Tender::name);
        *self.ways.entry(way.to_owned()).or_default() += charged;
        self.settled += total;
        self.sold += 1;
        self.totals += total;
        self.tax += ticket.quote.tax;
    }

    /// So much was taken off by hand.
    pub(super) fn gave(&mut self, amount: Decimal) {
        self.by_hand += amount;
    }

    /// What was sold, without the tax.
    pub(super) fn net(&self) -> Decimal {
        self.totals - self.tax
    }

    /// Compares a close-out with the account.
    pub(super) fn agrees_with(&self, close: &CloseOut) -> Result<(), Told> {
        agree("the number rung up", &close.sold, &self.sold)?;
        agree("the number that came late", &close.late.sold, &self.late)?;
        let way = |name: &str| self.ways.get(name).copied().unwrap_or_default();
        agree("what was taken in cash", &close.cash, &way("cash"))?;
        agree("what was taken by card", &close.card, &way("card"))?;
        agree("what was taken in all", &close.taken(), &Some(self.ways.values().sum()))?;
        agree("what was sold", &close.totals, &self.totals)?;
        agree("the tax", &close.tax, &self.tax)?;
        agree("what is owing", &close.owing, &(self.settled - self.totals))?;
        agree("how often something was taken back", &close.taken_back.times, &self.taken_back)?;
        agree("what was taken off by hand", &close.given.values().sum::<Decimal>(), &self.by_hand)
    }
}

/// Compares the counts with those before: what was sold is gone, what was put back is there, and nothing is held but for what
/// a part was paid.
pub(super) fn counts_agree(
    before: &BTreeMap<String, Count>,
    after: &BTreeMap<String, Count>,
    close: &CloseOut,
    back_home: &BTreeMap<String, u32>,
    held: &BTreeMap<String, u32>,
) -> Result<(), Told> {
    for (id, count) in before {
        let gone = close.parts.get(id).map_or(0, |line| line.count);
        let of = |parts: &BTreeMap<String, u32>| parts.get(id).copied().unwrap_or_default();
        let wanted = (count.on_hand + of(back_home) - gone, of(held));
        let now = after.get(id).map(|now| (now.on_hand, now.held));
        agree(&format!("the count of {id}"), &now, &Some(wanted))?;
    }
    Ok(())
}
