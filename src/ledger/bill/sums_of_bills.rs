//! What a bill adds to the sums of the running show: money when it moves, goods when they become the guest's, and what is
//! taken back when it is.

use jiff::Timestamp;
use rusqlite::Connection;
use rust_decimal::Decimal;

use super::{Bill, Goods, Payment};
use crate::{
    ledger::{
        CloseOut, LedgerError, SetApart, Ticket,
        moved::note_moved,
        sums::{self, add, add_line, add_parts},
    },
    money::{PlainSum, PriceRules, Quote},
};

/// The sums of show `show` while a bill changes them.
pub(super) struct ShowSums {
    sums: CloseOut,
    /// What they were before.
    before: CloseOut,
    /// The number and the currency of the bill.
    bill: String,
    rules: PriceRules,
}

impl ShowSums {
    pub(super) fn of(db: &Connection, show: i64, bill: &Bill) -> Result<Self, LedgerError> {
        let sums = sums::of(db, show)?;
        Ok(Self { before: sums.clone(), sums, bill: bill.number.to_string(), rules: bill.rules.clone() })
    }

    pub(super) fn keep(self, db: &Connection, now: Timestamp) -> Result<(), LedgerError> {
        note_moved(db, self.sums.show, now, &self.before, &self.sums)?;
        sums::keep(db, &self.sums)
    }

    /// Does `change`, unless its amounts can't be added to the others; then `amount` is set apart.
    fn change(&mut self, amount: Decimal, change: impl FnOnce(&mut CloseOut) -> Option<()>) {
        let currency = self.rules.currency;
        let mut sums = self.sums.clone();
        let same_currency = sums.currency.is_none_or(|taken| taken == currency);
        if same_currency && change(&mut sums).is_some() {
            sums.currency = Some(currency);
            self.sums = sums;
        } else {
            self.sums.set_apart.push(SetApart { number: self.bill.clone(), charged: currency.plain(amount) });
        }
    }

    /// Money moved.
    pub(super) fn paid(&mut self, payment: &Payment) {
        self.change(payment.amount, |sums| {
            sums.take(&payment.tender, payment.amount)?;
            if payment.amount < Decimal::ZERO && !payment.puts_right() {
                add(&mut sums.paid_out, -payment.amount)?;
            }
            add(&mut sums.owing, payment.settles)
        });
    }

    /// A piece became the guest's.
    pub(super) fn sold(&mut self, ticket: &Ticket) -> Result<(), LedgerError> {
        let late = ticket.show < self.sums.show;
        self.sums.sold += 1;
        self.sums.late.sold += u32::from(late);
        let off = ticket.given_off()?;
        let quote = &ticket.quote;
        self.change(quote.total, |sums| {
            if late {
                add(&mut sums.late.taken, quote.total)?;
            }
            add_sale(sums, &ticket.rules, &Amounts::of(quote), Decimal::ONE)?;
            add_parts(&mut sums.parts, quote)?;
            for line in &quote.plain {
                add_line(&mut sums.goods, &line.words, line.price)?;
            }
            add_given(sums, ticket.given.as_ref().map(|given| given.reason.as_str()), off)
        });
        Ok(())
    }

    /// Goods without a home became the guest's: `before` is what those were together that had been sold already.
    pub(super) fn goods_sold(&mut self, bill: &Bill, before: &PlainSum, after: &PlainSum, goods: &[Goods]) {
        let more = Amounts::of_plain(after).less(&Amounts::of_plain(before));
        self.change(more.total, |sums| {
            add_sale(sums, &bill.rules, &more, Decimal::ONE)?;
            for one in goods {
                add_line(&mut sums.goods, &one.line.words, one.line.price)?;
            }
            add_given(sums, bill.goods_given.as_ref().map(|given| given.reason.as_str()), more.discount)
        });
    }

    /// A piece was taken back, all of it or one line: the sums before and after, and what was taken off by hand before and
    /// after. The cost of what does not go back into its home stays with the show.
    pub(super) fn taken_back(
        &mut self,
        ticket: &Ticket,
        before: &Quote,
        after: Option<&Quote>,
        off: (Decimal, Decimal),
        parts_home: bool,
    ) -> Decimal {
        let left = after.map(Amounts::of).unwrap_or_default();
        let less = Amounts::of(before).less(&left);
        self.change(less.total, |sums| {
            add_sale(sums, &ticket.rules, &less, -Decimal::ONE)?;
            add_given(sums, ticket.given.as_ref().map(|given| given.reason.as_str()), off.1 - off.0)?;
            let back = &mut sums.taken_back;
            back.times += 1;
            back.pieces += u32::from(after.is_none());
            add(&mut back.totals, less.total)?;
            add(&mut back.tax, less.tax)?;
            if !parts_home {
                for id in gone_ids(before, after) {
                    *back.lost.entry(id.to_owned()).or_default() += 1;
                }
            }
            match after {
                None => {
                    add_parts(&mut back.parts, before)?;
                    before.plain.iter().try_for_each(|line| add_line(&mut back.parts, &line.words, line.price))
                }
                Some(after) => {
                    let gone = gone(before, after);
                    gone.map_or(Some(()), |(id, price)| add_line(&mut back.parts, id, price))
                }
            }
        });
        less.total
    }

    /// Goods without a home were taken back.
    pub(super) fn goods_taken_back(
        &mut self,
        bill: &Bill,
        before: &PlainSum,
        after: &PlainSum,
        goods: &Goods,
    ) -> Decimal {
        let less = Amounts::of_plain(before).less(&Amounts::of_plain(after));
        self.change(less.total, |sums| {
            add_sale(sums, &bill.rules, &less, -Decimal::ONE)?;
            add_given(sums, bill.goods_given.as_ref().map(|given| given.reason.as_str()), -less.discount)?;
            let back = &mut sums.taken_back;
            back.times += 1;
            add(&mut back.totals, less.total)?;
            add(&mut back.tax, less.tax)?;
            add_line(&mut back.parts, &goods.line.words, goods.line.price)
        });
        less.total
    }
}

/// Total, tax and discount of something.
#[derive(Debug, Clone, Copy, Default)]
struct Amounts {
    total: Decimal,
    tax: Decimal,
    discount: Decimal,
}

impl Amounts {
    fn of(quote: &Quote) -> Self {
        Self { total: quote.total, tax: quote.tax, discount: quote.discount }
    }

    fn of_plain(sum: &PlainSum) -> Self {
        Self { total: sum.total, tax: sum.tax, discount: sum.discount }
    }

    fn less(self, other: &Self) -> Self {
        Self { total: self.total - other.total, tax: self.tax - other.tax, discount: self.discount - other.discount }
    }
}

/// Adds a sale, or takes one from the sums where `sign` is negative.
fn add_sale(sums: &mut CloseOut, rules: &PriceRules, of: &Amounts, sign: Decimal) -> Option<()> {
    add(&mut sums.totals, sign * of.total)?;
    add(&mut sums.owing, -sign * of.total)?;
    add(&mut sums.tax, sign * of.tax)?;
    add(&mut sums.discounts, sign * of.discount)?;
    sums.tax_by_rate.add(rules.tax, sign * of.total, sign * of.tax).ok()
}

fn add_given(sums: &mut CloseOut, reason: Option<&str>, off: Decimal) -> Option<()> {
    match reason {
        Some(reason) if !off.is_zero() => add(sums.given.entry(reason.to_owned()).or_default(), off),
        _ => Some(()),
    }
}

/// The base and the drops that `before` has and `after` has not.
fn gone_ids<'a>(before: &'a Quote, after: Option<&Quote>) -> Vec<&'a str> {
    match after {
        None => std::iter::once(&before.base.id)
            .chain(before.drops.iter().map(|drop| &drop.id))
            .map(String::as_str)
            .collect(),
        Some(after) => gone(before, after).map(|(id, _)| id).into_iter().collect(),
    }
}

/// The one drop that `before` has and `after` has not.
fn gone<'a>(before: &'a Quote, after: &Quote) -> Option<(&'a str, Decimal)> {
    let mut left = after.drops.iter();
    let mut next = left.next();
    for drop in &before.drops {
        if next == Some(drop) {
            next = left.next();
        } else {
            return Some((&drop.id, drop.price));
        }
    }
    None
}
