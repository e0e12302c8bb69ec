//! Beginning a bill, and what is put onto it and taken off as long as that is not paid.

use jiff::Timestamp;
use rusqlite::Connection;
use uuid::Uuid;

use super::{
    Bill, BillSum, BilledTicket, Given, Goods, Payment, Why,
    bill_rows::{find_bill, save_bill, tickets_of, with_tickets},
    bill_sum::goods_sum,
};
use crate::{
    ledger::{
        Ledger, LedgerError, Ticket,
        by_hand::next_number,
        rows::{current_show, find, note, save, time},
        shared_commit::Change,
    },
    money::{MoneyError, PlainLine, PriceRules, Reduction, Tender, quote_plain},
    quoting::one_line,
};

/// No bill has more tickets or lines; more is a slip.
const MOST: usize = 100;
/// The longest words for a line or a reason.
const LONGEST_WORDS: usize = 80;

impl Ledger {
    /// The bill with this id, its tickets in its order, and what it comes to.
    ///
    /// # Errors
    /// There is no such bill, or it or one of its tickets can't be read.
    pub fn bill(&self, id: Uuid) -> Result<(Bill, Vec<Ticket>, BillSum), LedgerError> {
        let (bill, tickets) = with_tickets(&self.db, id)?;
        let sum = BillSum::of(&bill, &tickets)?;
        Ok((bill, tickets, sum))
    }

    /// The bills on which something is to be paid or to be paid out, oldest first.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn open_bills(&self) -> Result<Vec<Bill>, LedgerError> {
        super::open_bills(&self.db)
    }

    /// The bill on which ticket `id` stands; where it stands on none, one is begun for it. What was paid by an earlier
    /// version, which kept no bills, is on it as a payment.
    ///
    /// # Errors
    /// There is no such ticket or it can't be read, it was let go, or the disk refuses; nothing is entered then.
    pub fn bill_for(&mut self, id: Uuid, now: Timestamp) -> Result<Bill, LedgerError> {
        let tx = self.begin()?;
        let mut ticket = find(&tx, id)?.ok_or(LedgerError::NoTicket(id))?;
        let bill = bill_of(&tx, &mut ticket, now)?;
        tx.commit()?;
        Ok(bill)
    }

    /// Begins a bill without a ticket, for goods alone, by `rules`. Begun twice, it is the same bill: `id` makes it so.
    ///
    /// # Errors
    /// The desk has no number left, or the disk refuses; nothing is entered then.
    pub fn begin_bill(&mut self, id: Uuid, rules: &PriceRules, now: Timestamp) -> Result<Bill, LedgerError> {
        let tx = self.begin()?;
        if let Some(bill) = find_bill(&tx, id)? {
            return Ok(bill);
        }
        let show = current_show(&tx)?.ok_or(rusqlite::Error::QueryReturnedNoRows)?.id;
        let number = next_number(&tx, show, now)?;
        let bill = Bill {
            id,
            number,
            show,
            arrival: 0,
            begun: now,
            rules: rules.clone(),
            tickets: vec![],
            goods: vec![],
            goods_given: None,
            payments: vec![],
            corrections: vec![],
            settled: None,
        };
        let bill = begun(&tx, bill, &[], now)?;
        tx.commit()?;
        Ok(bill)
    }

    /// Puts a ticket onto a bill. It comes off another that is not paid.
    ///
    /// # Errors
    /// The ticket is done, or money was taken for it; it is in another currency; the bill is as long as bills get.
    pub fn put_on_bill(&mut self, bill: Uuid, ticket: Uuid, now: Timestamp) -> Result<Bill, LedgerError> {
        let tx = self.begin()?;
        let mut one = find(&tx, ticket)?.ok_or(LedgerError::NoTicket(ticket))?;
        let (mut onto, _) = with_tickets(&tx, bill)?;
        if onto.tickets.iter().any(|on| on.id == ticket) {
            return Ok(onto);
        }
        if !one.state.is_open() {
            return Err(LedgerError::Closed(one.state));
        }
        if one.rules.currency != onto.rules.currency {
            return Err(LedgerError::OtherCurrency { found: one.rules.currency, taken: onto.rules.currency });
        }
        if onto.tickets.len() >= MOST {
            return Err(LedgerError::LongBill(MOST));
        }
        if let Some(before) = one.bill {
            let (mut before, _) = with_tickets(&tx, before)?;
            take_off(&tx, &mut before, &mut one, now)?;
        }
        onto.tickets.push(BilledTicket { id: ticket, gift: false });
        one.bill = Some(bill);
        save(&tx, &one)?;
        note(&tx, now, Some(bill), "put_on_bill", &ticket)?;
        keep(&tx, &onto)?;
        tx.commit()?;
        Ok(onto)
    }

    /// Takes a ticket off a bill again; it waits to be paid by itself.
    ///
    /// # Errors
    /// It is not on the bill, it is paid, or a part of the bill is.
    pub fn take_off_bill(&mut self, bill: Uuid, ticket: Uuid, now: Timestamp) -> Result<Bill, LedgerError> {
        let tx = self.begin()?;
        let (mut from, _) = with_tickets(&tx, bill)?;
        let mut one = find(&tx, ticket)?.ok_or(LedgerError::NoTicket(ticket))?;
        take_off(&tx, &mut from, &mut one, now)?;
        save(&tx, &one)?;
        tx.commit()?;
        Ok(from)
    }

    /// Says whether a ticket of a bill is a gift.
    ///
    /// # Errors
    /// It is not on the bill, or the disk refuses.
    pub fn set_gift(&mut self, bill: Uuid, ticket: Uuid, gift: bool, now: Timestamp) -> Result<Bill, LedgerError> {
        self.change_bill(bill, now, "gift", &(ticket, gift), |bill| {
            let one = bill.tickets.iter_mut().find(|on| on.id == ticket).ok_or(LedgerError::NotOnBill)?;
            one.gift = gift;
            Ok(())
        })
    }

    /// Puts goods without a home onto a bill.
    ///
    /// # Errors
    /// The words are none or too long, the price is none that a table takes, or the bill is as long as bills get.
    pub fn add_goods(&mut self, bill: Uuid, line: &PlainLine, now: Timestamp) -> Result<Bill, LedgerError> {
        self.change_bill(bill, now, "goods_added", line, |bill| {
            if bill.goods.len() >= MOST {
                return Err(LedgerError::LongBill(MOST));
            }
            checked_line(&bill.rules, line)?;
            bill.goods.push(Goods { line: line.clone(), sold: None, gone: false });
            Ok(())
        })
    }

    /// Takes goods off a bill that are not paid.
    ///
    /// # Errors
    /// There are no such goods on it, or they are paid: then they are taken back.
    pub fn remove_goods(&mut self, bill: Uuid, at: usize, now: Timestamp) -> Result<Bill, LedgerError> {
        self.change_bill(bill, now, "goods_removed", &at, |bill| {
            let goods = bill.goods.get_mut(at).filter(|goods| !goods.gone).ok_or(LedgerError::NoLine)?;
            if goods.sold.is_some() {
                return Err(LedgerError::PaidAlready);
            }
            goods.gone = true;
            // Less is on the bill than was to be paid for it, or none of what that was: there is nothing to take off any
            // more.
            let a_sum_for_nothing = bill.live_goods().next().is_none()
                && matches!(bill.goods_given, Some(Given { reduction: Reduction::ToSum(_), .. }));
            if a_sum_for_nothing || matches!(goods_sum(bill, |_| true), Err(MoneyError::AboveTotal { .. })) {
                bill.goods_given = None;
            }
            Ok(())
        })
    }

    /// Takes something off the goods of a bill by hand, or nothing any more.
    ///
    /// # Errors
    /// Goods are paid already, there is no reason, or the reduction is none.
    pub fn reduce_goods(&mut self, bill: Uuid, given: Option<Given>, now: Timestamp) -> Result<Bill, LedgerError> {
        let noted = given.clone();
        self.change_bill(bill, now, "goods_reduced", &noted, |bill| {
            if bill.goods.iter().any(|goods| goods.sold.is_some()) {
                return Err(LedgerError::PaidAlready);
            }
            if let Some(given) = &given {
                reason_of(&given.reason)?;
            }
            bill.goods_given = given;
            Ok(())
        })
    }

    fn change_bill(
        &mut self,
        id: Uuid,
        now: Timestamp,
        kind: &str,
        body: &impl serde::Serialize,
        change: impl FnOnce(&mut Bill) -> Result<(), LedgerError>,
    ) -> Result<Bill, LedgerError> {
        let tx = self.begin()?;
        let mut bill = find_bill(&tx, id)?.ok_or(LedgerError::NoBill(id))?;
        change(&mut bill)?;
        note(&tx, now, Some(id), kind, body)?;
        keep(&tx, &bill)?;
        tx.commit()?;
        Ok(bill)
    }
}

/// The bill of a ticket, which is begun where there is none; the ticket is kept with it.
pub(super) fn bill_of(tx: &Change<'_>, ticket: &mut Ticket, now: Timestamp) -> Result<Bill, LedgerError> {
    if let Some(id) = ticket.bill {
        return find_bill(tx, id)?.ok_or(LedgerError::NoBill(id));
    }
    if !ticket.state.is_open() && !ticket.state.is_sold() {
        return Err(LedgerError::Closed(ticket.state));
    }
    let show = current_show(tx)?.ok_or(rusqlite::Error::QueryReturnedNoRows)?.id;
    let paid_before = ticket.settled.filter(|_| ticket.state.is_sold());
    let payments = match paid_before {
        Some(show) => vec![paid_before_bills(tx, ticket, show)?],
        None => vec![],
    };
    let bill = Bill {
        id: Uuid::now_v7(),
        number: ticket.number,
        show: paid_before.unwrap_or(show),
        arrival: 0,
        begun: now,
        rules: ticket.rules.clone(),
        tickets: vec![BilledTicket { id: ticket.id, gift: false }],
        goods: vec![],
        goods_given: None,
        settled: paid_before.map(|show| (show, payments.first().map_or(now, |one| one.at))),
        payments,
        corrections: vec![],
    };
    ticket.bill = Some(bill.id);
    save(tx, ticket)?;
    begun(tx, bill, std::slice::from_ref(ticket), now)
}

/// What was taken for a ticket by an earlier version, which kept no bills.
fn paid_before_bills(db: &Connection, ticket: &Ticket, show: i64) -> Result<Payment, LedgerError> {
    let rung_up: String = db.query_row(
        "SELECT coalesce(max(at), ?2) FROM events WHERE ticket = ?1 AND kind = 'rung_up'",
        [ticket.id.to_string(), ticket.arrived.to_string()],
        |row| row.get(0),
    )?;
    Ok(Payment {
        at: time(&rung_up),
        show,
        by: None,
        tender: ticket.tender.clone().unwrap_or(Tender::Card),
        amount: ticket.charged.unwrap_or(ticket.quote.total),
        settles: ticket.quote.total,
        given: None,
        why: Why::Sale,
    })
}

fn begun(tx: &Change<'_>, mut bill: Bill, tickets: &[Ticket], now: Timestamp) -> Result<Bill, LedgerError> {
    bill.arrival = note(tx, now, Some(bill.id), "bill_begun", &bill)?;
    save_bill(tx, &bill, &BillSum::of(&bill, tickets)?)?;
    Ok(bill)
}

/// Keeps a changed bill, if its amounts are some that a table takes.
fn keep(db: &Connection, bill: &Bill) -> Result<(), LedgerError> {
    save_bill(db, bill, &BillSum::of(bill, &tickets_of(db, bill)?)?)
}

/// Takes a ticket that is not paid off its bill.
fn take_off(tx: &Change<'_>, bill: &mut Bill, ticket: &mut Ticket, now: Timestamp) -> Result<(), LedgerError> {
    if !ticket.state.is_open() {
        return Err(LedgerError::Closed(ticket.state));
    }
    if ticket.prepaid {
        return Err(LedgerError::PaidAlready);
    }
    if !bill.tickets.iter().any(|on| on.id == ticket.id) {
        return Err(LedgerError::NotOnBill);
    }
    bill.tickets.retain(|on| on.id != ticket.id);
    ticket.bill = None;
    note(tx, now, Some(bill.id), "taken_off_bill", &ticket.id)?;
    keep(tx, bill)
}

/// Refuses a line without words, and a price that no table takes; nothing is a price.
pub(in crate::ledger) fn checked_line(rules: &PriceRules, line: &PlainLine) -> Result<(), LedgerError> {
    words_of(&line.words)?;
    quote_plain(rules, std::slice::from_ref(line), None)?;
    Ok(())
}

/// Refuses an empty or a very long reason.
pub(in crate::ledger) fn reason_of(reason: &str) -> Result<(), LedgerError> {
    if reason.trim().is_empty() {
        return Err(LedgerError::NoReason);
    }
    words_of(reason)
}

fn words_of(words: &str) -> Result<(), LedgerError> {
    let fits = !words.trim().is_empty() && words.chars().count() <= LONGEST_WORDS && one_line(words) == words;
    if fits { Ok(()) } else { Err(LedgerError::NoWords(LONGEST_WORDS)) }
}
