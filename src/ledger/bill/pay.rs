//! Taking money for a bill, all of it or a part, and paying out; what becomes the guest's by that.

use jiff::Timestamp;
use rust_decimal::Decimal;
use uuid::Uuid;

use super::{
    Bill, BillSum, Given, Goods, Payment, Why,
    bill_rows::{save_bill, with_tickets},
    bill_sum::goods_sum,
    open_bill::bill_of,
    sums_of_bills::ShowSums,
};
use crate::{
    ledger::{
        Ledger, LedgerError, Ticket, holds,
        rows::{current_show, find, note, save},
        sell::{may_be_sold, sell},
        shared_commit::Change,
    },
    money::{MAX_AMOUNT, Reduction, Tender},
};

/// How a bill is paid.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Paying {
    /// In which way.
    pub tender: Tender,
    /// How much; none is all that is left. Less is a part, as a deposit or the first of two ways.
    pub amount: Option<Decimal>,
    /// What was given in cash, from which change is due.
    pub given: Option<Decimal>,
}

impl Paying {
    /// All that is left, in one way.
    pub fn all(tender: Tender) -> Self {
        Self { tender, amount: None, given: None }
    }
}

/// The bill as it was seen by whoever pays: somebody else may have changed it meanwhile.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Seen {
    /// What was left to pay.
    pub left: Decimal,
    /// How many payments it had.
    pub payments: usize,
}

impl Ledger {
    /// Takes the money for a ticket that is alone on its bill: all of it, in one way. Its parts leave the stock. A piece that
    /// is not for its wearer is rung up only when each hazard was confirmed by its name, and never with a part that may not be
    /// sold.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it is done, it stands on a bill with others, a part is not ticked off, the
    /// guest was not told, a hazard is not confirmed or forbids the sale, or the sum has to be confirmed first.
    pub fn ring_up(&mut self, id: Uuid, tender: Tender, now: Timestamp) -> Result<Ticket, LedgerError> {
        self.ring_up_from(id, &Paying::all(tender), now)
    }

    /// The same with what was given in cash.
    ///
    /// # Errors
    /// As for [`Ledger::ring_up`]; or less was given than is due.
    pub fn ring_up_from(&mut self, id: Uuid, paying: &Paying, now: Timestamp) -> Result<Ticket, LedgerError> {
        let tx = self.begin()?;
        let mut ticket = find(&tx, id)?.ok_or(LedgerError::NoTicket(id))?;
        may_be_sold(&ticket)?;
        let bill = bill_of(&tx, &mut ticket, now)?;
        if bill.is_shared() {
            return Err(LedgerError::WithOthers);
        }
        let mut tickets = vec![ticket];
        pay(&tx, bill, &mut tickets, paying, now)?;
        tx.commit()?;
        tickets.pop().ok_or(LedgerError::NoTicket(id))
    }

    /// Takes money for bill `id`, or pays out where more was paid than it comes to. Once all of it is paid, everything on
    /// it is the guest's. Said twice, as by two touches on a button, it is done once: `seen` makes it so.
    ///
    /// # Errors
    /// There is no such bill; it is another than was seen; nothing is left to pay; the amount is more than is left, or
    /// can't be paid in cash; less was given than is due; something on it may not be sold, or not yet. Nothing is entered
    /// then.
    pub fn pay(&mut self, id: Uuid, paying: &Paying, seen: Seen, now: Timestamp) -> Result<Bill, LedgerError> {
        let tx = self.begin()?;
        let (bill, mut tickets) = with_tickets(&tx, id)?;
        let sum = BillSum::of(&bill, &tickets)?;
        if is_second_touch(&bill, &sum, paying, seen) {
            return Ok(bill);
        }
        if (sum.left, bill.payments.len()) != (seen.left, seen.payments) {
            return Err(LedgerError::BillChanged(bill.rules.currency.plain(sum.left)));
        }
        let bill = pay(&tx, bill, &mut tickets, paying, now)?;
        tx.commit()?;
        Ok(bill)
    }
}

/// Whether just this payment was made already. What costs nothing is paid without a payment.
fn is_second_touch(bill: &Bill, sum: &BillSum, paying: &Paying, seen: Seen) -> bool {
    let Some(next) = bill.payments.get(seen.payments) else {
        let nothing_moves = seen.left.is_zero() && sum.left.is_zero() && bill.payments.len() == seen.payments;
        return nothing_moves && !sum.waits && bill.settled.is_some();
    };
    let whole = next.settles == seen.left;
    let as_much = match paying.amount {
        Some(amount) => next.amount == amount || (whole && amount == seen.left),
        None => whole,
    };
    as_much && next.tender == paying.tender && next.given == paying.given && !next.puts_right()
}

/// Takes or pays out what `paying` says, and lets what is paid be the guest's.
pub(super) fn pay(
    tx: &Change<'_>,
    mut bill: Bill,
    tickets: &mut [Ticket],
    paying: &Paying,
    now: Timestamp,
) -> Result<Bill, LedgerError> {
    let show = current_show(tx)?.ok_or(rusqlite::Error::QueryReturnedNoRows)?.id;
    let sum = BillSum::of(&bill, tickets)?;
    if sum.left.is_zero() && !sum.waits {
        return Err(LedgerError::NothingToPay);
    }
    let payment = payment(&bill, sum.left, paying, show, tx.by.clone(), now)?;
    let mut sums = ShowSums::of(tx, show, &bill)?;
    if !payment.amount.is_zero() || !payment.settles.is_zero() {
        sums.paid(&payment);
        note(tx, now, Some(bill.id), "paid", &payment)?;
        bill.payments.push(payment.clone());
    }
    if payment.settles == sum.left {
        let alone = tickets.len() == 1 && bill.live_goods().next().is_none() && bill.payments.len() <= 1;
        for ticket in tickets.iter_mut().filter(|ticket| ticket.state.is_open()) {
            sell(tx, ticket)?;
            ticket.settled = Some(show);
            if alone {
                (ticket.tender, ticket.charged) = (Some(payment.tender.clone()), Some(payment.amount));
            }
            sums.sold(ticket)?;
            note(tx, now, Some(ticket.id), "rung_up", &payment.tender)?;
            save(tx, ticket)?;
        }
        sell_goods(&mut bill, &mut sums, show)?;
        bill.settled.get_or_insert((show, now));
    } else {
        for ticket in tickets.iter_mut().filter(|ticket| ticket.state.is_open()) {
            ticket.prepaid = true;
            ticket.hold_until = holds::until(tx, now)?;
            save(tx, ticket)?;
        }
    }
    sums.keep(tx, now)?;
    save_bill(tx, &bill, &BillSum::of(&bill, tickets)?)?;
    Ok(bill)
}

/// The payment that `paying` asks for, where `left` is left to pay.
fn payment(
    bill: &Bill,
    left: Decimal,
    paying: &Paying,
    show: i64,
    by: Option<String>,
    now: Timestamp,
) -> Result<Payment, LedgerError> {
    let due = bill.due(left, &paying.tender)?;
    let (amount, settles, why) = match paying.amount {
        Some(amount) if amount != due && amount != left => {
            let currency = bill.rules.currency;
            let whole = bill.due(amount, &paying.tender)? == amount && amount.normalize().scale() <= currency.digits;
            if amount <= Decimal::ZERO || amount > left || !whole {
                return Err(LedgerError::NoPart { amount, due: currency.plain(due) });
            }
            (amount, amount, Why::Part)
        }
        _ if left < Decimal::ZERO => (due, left, Why::PaidOut),
        _ => (due, left, Why::Sale),
    };
    let given = paying.given.filter(|_| paying.tender == Tender::Cash && amount > Decimal::ZERO);
    if let Some(given) = given
        && (given < amount || given > MAX_AMOUNT)
    {
        return Err(LedgerError::GivenTooLittle {
            given: bill.rules.currency.plain(given),
            due: bill.rules.currency.plain(amount),
        });
    }
    Ok(Payment { at: now, show, by, tender: paying.tender.clone(), amount, settles, given, why })
}

/// Goods that waited are the guest's.
fn sell_goods(bill: &mut Bill, sums: &mut ShowSums, show: i64) -> Result<(), LedgerError> {
    let before = goods_sum(bill, |goods| goods.sold.is_some())?;
    let waiting: Vec<Goods> =
        bill.live_goods().filter(|(_, goods)| goods.sold.is_none()).map(|(_, goods)| goods.clone()).collect();
    if waiting.is_empty() {
        return Ok(());
    }
    bill.goods.iter_mut().filter(|goods| !goods.gone && goods.sold.is_none()).for_each(|goods| goods.sold = Some(show));
    let after = goods_sum(bill, |_| true)?;
    sums.goods_sold(bill, &before, &after, &waiting);
    // A wish for a round sum was for these goods; whatever comes onto the bill later has its own price.
    if let Some(Given { reduction: reduction @ Reduction::ToSum(_), .. }) = &mut bill.goods_given {
        *reduction = Reduction::Amount(after.discount);
    }
    Ok(())
}
