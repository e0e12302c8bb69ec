//! What a bill comes to.

use rust_decimal::Decimal;

use super::{Bill, Goods};
use crate::{
    ledger::{LedgerError, Ticket, ticket::share},
    money::{MoneyError, PlainLine, PlainSum, Reduction, quote_plain},
    ticket::State,
};

/// What a bill comes to now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BillSum {
    /// Everything on it, tax and all.
    pub total: Decimal,
    /// The tax in it.
    pub tax: Decimal,
    /// The goods without a home.
    pub goods: PlainSum,
    /// What of it is settled by money that moved.
    pub settled: Decimal,
    /// What is left to pay; where it is negative, what is to be paid out.
    pub left: Decimal,
    /// Whether something on it is not the guest's yet.
    pub waits: bool,
}

impl BillSum {
    /// What `bill` with its `tickets` comes to.
    ///
    /// # Errors
    /// The amounts can't be added.
    pub fn of(bill: &Bill, tickets: &[Ticket]) -> Result<Self, LedgerError> {
        let goods = goods_sum(bill, |_| true)?;
        let waits = tickets.iter().any(|ticket| ticket.state.is_open())
            || bill.live_goods().any(|(_, goods)| goods.sold.is_none());
        let (settled, left) = (Decimal::ZERO, Decimal::ZERO);
        let mut sum = Self { total: goods.total, tax: goods.tax, settled, left, waits, goods };
        for ticket in tickets.iter().filter(|ticket| counts(ticket)) {
            let quote = &ticket.quote;
            sum.total = sum.total.checked_add(quote.total).ok_or(MoneyError::TooLarge)?;
            sum.tax = sum.tax.checked_add(quote.tax).ok_or(MoneyError::TooLarge)?;
        }
        sum.settled = bill.settled_sum().ok_or(MoneyError::TooLarge)?;
        sum.left = sum.total.checked_sub(sum.settled).ok_or(MoneyError::TooLarge)?;
        Ok(sum)
    }
}

impl Bill {
    /// How many percent of what the goods cost as marked a reduction by hand takes off.
    ///
    /// # Errors
    /// The reduction is none: its message says why.
    pub fn goods_percent_off(&self, reduction: &Reduction) -> Result<Decimal, MoneyError> {
        let lines: Vec<PlainLine> = self.live_goods().map(|(_, goods)| goods.line.clone()).collect();
        let sum = quote_plain(&self.rules, &lines, Some(reduction))?;
        Ok(share(sum.discount, sum.subtotal))
    }
}

/// Whether a ticket is to be paid, or is paid, on its bill.
pub(super) fn counts(ticket: &Ticket) -> bool {
    !matches!(ticket.state, State::LetGo | State::TakenBack)
}

/// What those goods of a bill come to together for which `wanted` says so. Tax is rounded once for all of them.
pub(super) fn goods_sum(bill: &Bill, wanted: impl Fn(&Goods) -> bool) -> Result<PlainSum, MoneyError> {
    let lines: Vec<PlainLine> =
        bill.live_goods().filter(|(_, goods)| wanted(goods)).map(|(_, goods)| goods.line.clone()).collect();
    let given = bill.goods_given.as_ref().filter(|_| !lines.is_empty());
    quote_plain(&bill.rules, &lines, given.map(|given| &given.reduction))
}
