//! The till: how long taking the money takes until it is durable, beside bare commits; and a ticket's and a bill's page.

use std::{
    sync::Arc,
    time::{Duration, Instant},
};

use chatelaine::{
    catalog::Catalog,
    ledger::{Ledger, LedgerError, Paying, Seen},
    money::Tender,
    ticket::SentTicket,
};
use jiff::Timestamp;
use uuid::Uuid;

use super::{Bench, ROUNDS, Seller, bare_file, bare_rate, print_looks, quantile};

/// Payments in a round.
const EACH: usize = 40;
/// A ticket is rung up within so many times of what a bare commit takes.
const WANTED: f64 = 3.0;

/// Receives these tickets, checks them and puts them onto one bill; gives its id.
fn on_a_bill(ledger: &mut Ledger, tickets: &[SentTicket], catalog: &Catalog) -> Result<Uuid, LedgerError> {
    let now = Timestamp::now();
    for ticket in tickets {
        ledger.receive(ticket, true, catalog, now)?;
        ledger.tick_all(ticket.id, now)?;
        ledger.set_told(ticket.id, true, now)?;
    }
    let bill = ledger.bill_for(tickets[0].id, now)?.id;
    for ticket in &tickets[1..] {
        ledger.put_on_bill(bill, ticket.id, now)?;
    }
    Ok(bill)
}

/// How long each of some payments took until it was durable: of a ticket alone, or of a bill with so many.
fn payments(bench: &Bench, together: usize) -> Vec<Duration> {
    let tickets: Vec<SentTicket> = (0..EACH * together).map(|n| bench.ticket(n)).collect();
    let catalog = Arc::clone(&bench.catalog);
    let work = move |ledger: &mut Ledger| -> Result<Vec<Duration>, LedgerError> {
        let mut bills = Vec::new();
        for tickets in tickets.chunks(together) {
            bills.push((tickets[0].id, on_a_bill(ledger, tickets, &catalog)?));
        }
        let mut times = Vec::new();
        for (ticket, bill) in bills {
            let (of, _, sum) = ledger.bill(bill)?;
            let seen = Seen { left: sum.left, payments: of.payments.len() };
            let began = Instant::now();
            if together == 1 {
                ledger.ring_up(ticket, Tender::Card, Timestamp::now())?;
            } else {
                ledger.pay(bill, &Paying::all(Tender::Card), seen, Timestamp::now())?;
            }
            times.push(began.elapsed());
        }
        Ok(times)
    };
    bench.desk.with_ledger(work).expect("open").expect("paid")
}

/// Payments beside bare commits, both in each round.
pub fn ringing_up() {
    let bench = Bench::new();
    let file = bare_file(bench.dir.path());
    println!("\n| taken, durable | median | p99 | a bare commit, p99 | ratio of p99 | wanted |");
    println!("| --- | --- | --- | --- | --- | --- |");
    for (name, together) in [("one ticket rung up", 1), ("a bill of three paid", 3)] {
        let (mut bare, mut ours) = (Vec::new(), Vec::new());
        for _ in 0..ROUNDS {
            bare.extend((0..EACH).map(|_| Duration::from_secs_f64(1.0 / bare_rate(&file, 1))));
            ours.extend(payments(&bench, together));
        }
        let (bare, median, p99) = (quantile(bare, 0.99), quantile(ours.clone(), 0.5), quantile(ours, 0.99));
        let ratio = p99.as_secs_f64() / bare.as_secs_f64();
        println!("| {name} | {median:.1?} | {p99:.1?} | {bare:.1?} | {ratio:.2} | {WANTED} |");
    }
}

/// A ticket's and a bill's page, in a show that has many tickets.
pub fn pages(bench: &Bench, seller: &Seller) {
    let tickets: Vec<SentTicket> = (0..3).map(|n| bench.ticket(n)).collect();
    let (ids, catalog) = (tickets.iter().map(|ticket| ticket.id).collect::<Vec<_>>(), Arc::clone(&bench.catalog));
    let bill = bench.desk.with_ledger(move |ledger| on_a_bill(ledger, &tickets, &catalog));
    let bill = bill.expect("open").expect("a bill");
    print_looks(seller, "a ticket (under 20 ms)", &format!("/tickets/{}", ids[0]));
    print_looks(seller, "a bill of three (under 20 ms)", &format!("/bills/{bill}"));
    // Each of them is rung up by itself afterwards.
    let alone = move |ledger: &mut Ledger| {
        ids[1..].iter().try_for_each(|id| ledger.take_off_bill(bill, *id, Timestamp::now()).map(|_| ()))
    };
    bench.desk.with_ledger(alone).expect("open").expect("taken off");
}
