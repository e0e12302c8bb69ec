//! Pieces that were threaded by hand and what is put right afterwards: bills, change, reductions, deposits, refunds.

use chatelaine::{
    ledger::{Corrected, Given, Paying, Ticket},
    money::{PlainLine, Reduction, Tender, change, given_suggestions},
};
use jiff::Timestamp;
use rust_decimal::Decimal;
use uuid::Uuid;

use super::{super::Told, agree, till::Till};

/// A friend of the table pays so many percent less.
const LESS_PERCENT: Decimal = Decimal::TEN;

/// What a deposit was paid for, until the rest is paid.
pub(super) struct Deposit {
    pub(super) bill: Uuid,
    pub(super) ticket: Ticket,
}

/// Plays all of it; the deposit waits for the next show.
pub(super) fn play(till: &mut Till<'_>) -> Result<Deposit, Told> {
    say!("Threaded by hand, and put right:");
    let first = till.threads("A piece that lies before the seller", 3)?;
    let first_bill = till.bill_for(&first)?;
    till.pays(first_bill, Paying::all(Tender::Cash))?;
    let wrong = move |ledger: &mut chatelaine::ledger::Ledger| {
        ledger.other_tender(first_bill, 0, &Tender::Card, "it was a card", Timestamp::now())
    };
    let right = till.at_bill(first_bill, wrong)?;
    agree("the payments after the way was put right", &right.payments.len(), &3)?;
    say!("  bill {} was paid by card after all: two entries more, none is overwritten", right.number);

    let together = two_and_a_box(till)?;
    reduced(till)?;
    let deposit = deposit(till)?;

    let left_over = Corrected::Line { ticket: first.id, at: 0 };
    till.takes_back(first_bill, left_over, true, Some(Tender::Card))?;
    say!("  one drop of {} comes back into its home and is paid out by card", first.number);
    let broken = till.threads("A piece with a clasp that will not close", 2)?;
    let broken_bill = till.bill_for(&broken)?;
    till.pays(broken_bill, Paying::all(Tender::Cash))?;
    till.takes_back(broken_bill, Corrected::Ticket(broken.id), false, Some(Tender::Cash))?;
    agree("what is left of a bill that was paid back", &till.left(broken_bill)?, &Decimal::ZERO)?;
    say!("  {} is taken back whole and paid out in cash; its parts are not fit for their homes", broken.number);

    let (bill, exchanged) = together;
    till.takes_back(bill, Corrected::Ticket(exchanged), true, None)?;
    let instead = till.threads("Another piece in exchange for one of the two", 5)?;
    till.puts_on(bill, &instead)?;
    till.pays(bill, Paying::all(Tender::Card))?;
    agree("what is left after the exchange", &till.left(bill)?, &Decimal::ZERO)?;
    Ok(deposit)
}

/// Two pieces and a box on one bill, paid with more cash than is due; gives the bill and its second piece.
fn two_and_a_box(till: &mut Till<'_>) -> Result<(Uuid, Uuid), Told> {
    let one = till.threads("Two sisters; the first", 4)?;
    let other = till.threads("The second", 2)?;
    let bill = till.bill_for(&one)?;
    till.puts_on(bill, &other)?;
    let currency = one.quote.currency;
    // Two and a half in most currencies, 250 where there is nothing smaller than one.
    let price = if currency.digits == 0 { Decimal::from(250) } else { Decimal::new(25, 1) };
    let line = PlainLine { words: "Gift box".to_owned(), price };
    till.at_bill(bill, move |ledger| ledger.add_goods(bill, &line, Timestamp::now()))?;
    let due = till.story.on_ledger(move |ledger| {
        let (bill, _, sum) = ledger.bill(bill)?;
        Ok(bill.due(sum.left, &Tender::Cash)?)
    })?;
    let given = given_suggestions(due, currency).into_iter().find(|sum| *sum > due);
    let paid = till.pays(bill, Paying { given, ..Paying::all(Tender::Cash) })?;
    if let (Some(given), Some(back)) = (given, paid.payments.last().and_then(|payment| payment.change())) {
        agree("the change", &back, &change(due, given, currency)?.amount)?;
        say!("  {} given, {} change", currency.plain(given), currency.plain(back));
    }
    Ok((bill, other.id))
}

/// A reduction by hand, with its reason.
fn reduced(till: &mut Till<'_>) -> Result<(), Told> {
    let ticket = till.threads("A friend of the table", 3)?;
    let given = Given { reduction: Reduction::Percent(LESS_PERCENT), reason: "a friend".to_owned() };
    let id = ticket.id;
    let less = till.story.on_ledger(move |ledger| ledger.reduce(id, Some(given), Timestamp::now()))?;
    let off = less.quote.discount - ticket.quote.discount;
    till.account.gave(off);
    say!("  {} less for {}", less.quote.currency.plain(off), less.number);
    let bill = till.bill_for(&less)?;
    till.pays(bill, Paying::all(Tender::Card))?;
    Ok(())
}

fn deposit(till: &mut Till<'_>) -> Result<Deposit, Told> {
    let ticket = till.threads("A piece that is fetched another day", 3)?;
    let bill = till.bill_for(&ticket)?;
    // A third of the sum, in whole units.
    let amount = (till.left(bill)? / Decimal::from(3)).trunc().max(Decimal::ONE);
    till.pays(bill, Paying { amount: Some(amount), ..Paying::all(Tender::Card) })?;
    say!("  the rest of {} is paid when it is fetched", ticket.number);
    Ok(Deposit { bill, ticket })
}
