//! What is put right after it was paid. Each is an entry of its own, with a reason, and counts in the running show: what an
//! earlier show came to stays as it is.

use jiff::Timestamp;
use rust_decimal::Decimal;
use serde::Serialize;
use uuid::Uuid;

use super::{
    Bill, BillSum, Corrected, Correction, Payment, Why,
    bill_rows::{save_bill, with_tickets},
    bill_sum::goods_sum,
    open_bill::reason_of,
    pay::{Paying, pay},
    sums_of_bills::ShowSums,
};
use crate::{
    ledger::{
        Ledger, LedgerError, Ticket,
        rows::{current_show, note, save},
        sell::{take_back, take_line_back},
        shared_commit::Change,
    },
    money::Tender,
};

/// What is taken back of a bill.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TakeBack {
    /// A piece, a line of one, or goods.
    pub what: Corrected,
    /// Whether the parts lie in their homes again.
    pub parts_home: bool,
    /// Why.
    pub reason: String,
}

impl Ledger {
    /// Takes something back that was paid. The bill comes to less then, and the difference is to be paid out, or to be set off
    /// against what else comes onto the bill; `pay_out` says in which way it is paid out at once.
    ///
    /// # Errors
    /// There is no such bill, the thing is not on it or was not paid, there is no reason, or the disk refuses. Nothing is
    /// entered then.
    pub fn take_back(
        &mut self,
        id: Uuid,
        back: &TakeBack,
        pay_out: Option<&Tender>,
        now: Timestamp,
    ) -> Result<Bill, LedgerError> {
        let tx = self.begin()?;
        let bill = take_back_in(&tx, id, back, pay_out, now)?;
        tx.commit()?;
        Ok(bill)
    }

    /// By how much the bill's sum would be less; nothing is entered.
    ///
    /// # Errors
    /// As for [`Ledger::take_back`].
    pub fn worth_of(&mut self, id: Uuid, back: &TakeBack, now: Timestamp) -> Result<Decimal, LedgerError> {
        let tx = self.begin()?;
        let bill = take_back_in(&tx, id, back, None, now)?;
        Ok(bill.corrections.last().map_or(Decimal::ZERO, |one| one.worth))
    }

    /// Says that payment `at` was in another way than was noted: a counter-entry and the right one. By card the exact sum
    /// was taken, in cash what the coins allow.
    ///
    /// # Errors
    /// There is no such bill or payment, it was put right before, it was in that way, or there is no reason.
    pub fn other_tender(
        &mut self,
        id: Uuid,
        at: usize,
        to: &Tender,
        reason: &str,
        now: Timestamp,
    ) -> Result<Bill, LedgerError> {
        reason_of(reason)?;
        let tx = self.begin()?;
        let show = current_show(&tx)?.ok_or(rusqlite::Error::QueryReturnedNoRows)?.id;
        let (mut bill, mut tickets) = with_tickets(&tx, id)?;
        let was = bill.payments.get(at).cloned().ok_or(LedgerError::NoLine)?;
        if bill.is_corrected(at) || was.tender == *to {
            return Err(LedgerError::RightAlready);
        }
        let of_now = |payment: Payment| Payment { at: now, show, by: tx.by.clone(), given: None, ..payment };
        let counter = Payment { amount: -was.amount, settles: -was.settles, ..was.clone() };
        let counter = of_now(Payment { why: Why::NotThisWay { of: at }, ..counter });
        let amount = bill.due(was.settles, to)?;
        let right = of_now(Payment { tender: to.clone(), amount, why: Why::ThisWay { of: at }, ..was.clone() });
        let mut sums = ShowSums::of(&tx, show, &bill)?;
        for payment in [counter, right] {
            sums.paid(&payment);
            note(&tx, now, Some(id), "paid", &payment)?;
            bill.payments.push(payment);
        }
        sums.keep(&tx, now)?;
        // A piece that was alone on the bill was paid first; what was paid later was for something else.
        let of_the_piece = bill.first_of(at) == 0;
        let paid_so =
            |ticket: &&mut Ticket| ticket.tender.as_ref() == Some(&was.tender) && ticket.charged == Some(was.amount);
        for ticket in tickets.iter_mut().filter(paid_so).filter(|_| of_the_piece) {
            (ticket.tender, ticket.charged) = (Some(to.clone()), Some(amount));
            save(&tx, ticket)?;
        }
        note(&tx, now, Some(id), "other_tender", &(at, to, reason))?;
        bill.corrections.push(Correction {
            at: now,
            show,
            by: tx.by.clone(),
            what: Corrected::Payment(at),
            reason: reason.trim().to_owned(),
            worth: Decimal::ZERO,
            parts_home: false,
        });
        save_bill(&tx, &bill, &BillSum::of(&bill, &tickets)?)?;
        tx.commit()?;
        Ok(bill)
    }
}

/// The ticket with this id among those of a bill.
fn on_bill(tickets: &mut [Ticket], id: Uuid) -> Result<&mut Ticket, LedgerError> {
    tickets.iter_mut().find(|ticket| ticket.id == id).ok_or(LedgerError::NotOnBill)
}

/// Takes something back within a change that may be given up again.
fn take_back_in(
    tx: &Change<'_>,
    id: Uuid,
    back: &TakeBack,
    pay_out: Option<&Tender>,
    now: Timestamp,
) -> Result<Bill, LedgerError> {
    reason_of(&back.reason)?;
    let show = current_show(tx)?.ok_or(rusqlite::Error::QueryReturnedNoRows)?.id;
    let (mut bill, mut tickets) = with_tickets(tx, id)?;
    let mut sums = ShowSums::of(tx, show, &bill)?;
    let worth = match back.what {
        Corrected::Ticket(ticket) => {
            let ticket = on_bill(&mut tickets, ticket)?;
            let (before, off) = (ticket.quote.clone(), ticket.given_off()?);
            take_back(tx, ticket, back.parts_home)?;
            note(tx, now, Some(ticket.id), "taken_back", &(back.parts_home, &back.reason))?;
            save(tx, ticket)?;
            sums.taken_back(ticket, &before, None, (off, Decimal::ZERO), back.parts_home)
        }
        Corrected::Line { ticket, at } => {
            let ticket = on_bill(&mut tickets, ticket)?;
            let (before, off) = (ticket.quote.clone(), ticket.given_off()?);
            let (drop, lives) = take_line_back(tx, ticket, at, back.parts_home)?;
            note(tx, now, Some(ticket.id), "line_taken_back", &(at, drop, lives, back.parts_home, &back.reason))?;
            save(tx, ticket)?;
            let off = (off, ticket.given_off()?);
            sums.taken_back(ticket, &before, Some(&ticket.quote), off, back.parts_home)
        }
        Corrected::Goods(at) => {
            let before = goods_sum(&bill, |goods| goods.sold.is_some())?;
            let goods = bill.goods.get_mut(at).filter(|goods| !goods.gone).ok_or(LedgerError::NoLine)?;
            if goods.sold.is_none() {
                return Err(LedgerError::NotPaid);
            }
            goods.gone = true;
            let goods = goods.clone();
            let after = goods_sum(&bill, |goods| goods.sold.is_some())?;
            sums.goods_taken_back(&bill, &before, &after, &goods)
        }
        Corrected::Payment(_) => return Err(LedgerError::NoLine),
    };
    sums.keep(tx, now)?;
    note(tx, now, Some(id), "corrected", back)?;
    bill.corrections.push(Correction {
        at: now,
        show,
        by: tx.by.clone(),
        what: back.what,
        reason: back.reason.trim().to_owned(),
        worth,
        parts_home: back.parts_home,
    });
    let sum = BillSum::of(&bill, &tickets)?;
    match pay_out {
        Some(tender) if sum.left.is_sign_negative() && !sum.left.is_zero() => {
            bill = pay(tx, bill, &mut tickets, &Paying::all(tender.clone()), now)?;
        }
        _ => save_bill(tx, &bill, &sum)?,
    }
    Ok(bill)
}
