//! Every promise is looked up in the ledger, against what everybody was told and against the model of its entries.

use std::path::Path;

use chatelaine::{
    catalog::read_folder,
    ledger::{CloseOut, Ledger, Ticket},
    money::Tender,
    ticket::State,
};
use jiff::{SignedDuration, Timestamp};
use rusqlite::Connection;

use crate::{
    Told,
    entries::{Entry, Holds, Model, Part},
    support::test_table,
    tablets::{Guests, Tablet},
};

fn entries(file: &Path) -> Vec<Entry> {
    let db = Connection::open(file).expect("the ledger");
    let mut all = db.prepare("SELECT seq, at, ticket, kind, body FROM events ORDER BY seq").expect("entries");
    let rows = all.query_map([], |row| {
        Ok(Entry {
            seq: row.get(0)?,
            at: row.get::<_, String>(1)?.parse().expect("a time"),
            ticket: row.get::<_, Option<String>>(2)?.map(|id| id.parse().expect("an id")),
            kind: row.get(3)?,
            body: serde_json::from_str(&row.get::<_, String>(4)?).expect("JSON"),
        })
    });
    rows.expect("entries").map(|entry| entry.expect("an entry")).collect()
}

fn tickets(file: &Path) -> i64 {
    let db = Connection::open(file).expect("the ledger");
    db.query_row("SELECT count(*) FROM tickets", [], |row| row.get(0)).expect("a number")
}

pub fn look_up(file: &Path, tablets: &[Tablet], told: &Told) {
    let catalog = read_folder(&test_table()).expect("a good catalogue").catalog;
    let mut ledger = Ledger::open(file, Timestamp::now()).expect("the ledger");
    assert_eq!(ledger.faults().expect("read"), Vec::<String>::new());
    let seconds = SignedDuration::from_secs;
    let holds = Holds {
        after: told.before_clock,
        until: told.after_clock,
        lasts: seconds(60),
        earlier: seconds(22),
        later: seconds(20 + 22 + 300),
    };
    let mut model = Model::new(&catalog, holds);
    let all = entries(file);
    all.iter().for_each(|entry| model.enter(entry));

    assert_eq!(tickets(file), model.tickets.len() as i64, "a ticket without an entry");
    the_guests(&ledger, tablets);
    the_sellers(&ledger, told);
    the_tickets(&ledger, &model);
    the_digits(&ledger, &model, tablets, told);
    let noticed = model.clock_set_by.as_secs();
    assert!((noticed - told.clock_set_by).abs() <= 22, "the clock was set by {} s, not {noticed}", told.clock_set_by);
    println!(
        "{} entries, {} tickets, {} of them rung up, {} holds ended",
        all.len(),
        model.tickets.len(),
        told.took.len(),
        model.ended
    );
    assert!(model.ended > 0 && !told.took.is_empty(), "a rush in which something happened");
    the_sums(&mut ledger, &model);
}

/// No number that was shown is lost, and what was on the screen is in the ledger.
fn the_guests(ledger: &Ledger, tablets: &[Tablet]) {
    for tablet in tablets {
        let Guests { sent, shown, refused, .. } = tablet.guests();
        assert_eq!(refused, Vec::<String>::new());
        assert!(!shown.is_empty(), "a tablet without guests");
        for (id, number) in shown {
            let ticket = ledger.ticket(id).unwrap_or_else(|error| panic!("{number} is lost: {error}"));
            assert_eq!(ticket.number, number);
            let entry = &ledger.history(id).expect("entries")[0];
            let total = entry.body["quote"]["total"].as_str().expect("a sum");
            assert_eq!(total, sent[&id].to_string(), "the sum on the screen");
        }
    }
}

/// The money that the desk said it had taken was taken, and no other.
fn the_sellers(ledger: &Ledger, told: &Told) {
    for (id, total) in &told.took {
        let ticket = ledger.ticket(*id).expect("a ticket");
        assert!(matches!(ticket.state, State::RungUp | State::HandedOver), "{}: {:?}", ticket.number, ticket.state);
        assert_eq!(ticket.charged, Some(*total), "the sum charged");
    }
}

/// Every ticket and every count is as the model has it: what is ticked off is held, and no part is held twice.
fn the_tickets(ledger: &Ledger, model: &Model) {
    for (id, wanted) in &model.tickets {
        let ticket = ledger.ticket(*id).unwrap_or_else(|error| panic!("{}: {error}", wanted.number));
        assert_eq!((ticket.show, ticket.number), (wanted.show, wanted.number));
        assert_eq!((ticket.state, ticket.settled), (wanted.state, wanted.settled), "{}", ticket.number);
        assert_eq!(parts(&ticket), wanted.parts, "{}", ticket.number);
        assert_eq!(ticket.quote.total, wanted.total(), "{}", ticket.number);
        assert_eq!(ticket.tender.zip(ticket.charged), wanted.paid, "the sum on the ticket is the sum charged");
        let is_kept =
            !wanted.state.is_open() || wanted.parts.iter().all(|part| part.removed || !part.ticked || part.held);
        assert!(is_kept, "{} has a ticked part that is not held", ticket.number);
    }
    let counts = ledger.counts().expect("counts");
    for (id, wanted) in &model.counts {
        assert_eq!((counts[id].on_hand, counts[id].held), (wanted.on_hand, wanted.held), "{id}");
        assert!(wanted.held <= wanted.on_hand, "{id}");
        let open = model.tickets.values().filter(|ticket| ticket.state.is_open());
        let held = open.flat_map(|ticket| &ticket.parts).filter(|part| part.held && !part.removed && part.id == *id);
        assert_eq!(held.count() as u32, wanted.held, "{id}");
    }
}

fn parts(ticket: &Ticket) -> Vec<Part> {
    let base = Part {
        id: ticket.piece.base.clone(),
        price: ticket.quote.base.price,
        held: ticket.base_held,
        ticked: ticket.base_ticked,
        removed: false,
    };
    let lines = ticket.lines.iter().map(|line| Part {
        id: line.id.clone(),
        price: line.price,
        held: line.held,
        ticked: line.ticked,
        removed: line.removed,
    });
    std::iter::once(base).chain(lines).collect()
}

/// A released digit rests, and only the tablet that had it gets it back.
fn the_digits(ledger: &Ledger, model: &Model, tablets: &[Tablet], told: &Told) {
    let released = &told.released;
    assert_ne!(released.strangers, released.digit, "the digit rests");
    assert!(model.came_back.iter().all(|digit| *digit == released.digit), "{:?}", model.came_back);
    let mut paired = tablets[1].guests().paired;
    paired.dedup();
    assert_eq!(paired, [released.digit], "its own digit again");
    let digits: Vec<u8> = ledger.kiosks().expect("kiosks").iter().map(|kiosk| kiosk.digit).collect();
    assert_eq!(digits, [1, 2, 3, 4], "each tablet is one tablet");
    for tablet in tablets {
        assert!(tablet.guests().shown.values().all(|number| number.kiosk() == tablet.digit));
    }
}

/// The close-outs of both shows are the sums of their tickets.
fn the_sums(ledger: &mut Ledger, model: &Model) {
    let first = ledger.closed_show(1).expect("read").expect("closed").sums;
    let running = ledger.so_far().expect("sums");
    assert_eq!((model.show, running.show), (2, 2));
    let of = |sums: &CloseOut| {
        let settled = || model.tickets.values().filter(|ticket| ticket.settled == Some(sums.show));
        let paid =
            |tender| settled().filter_map(|one| one.paid.clone()).filter(|one| one.0 == tender).map(|one| one.1).sum();
        let sold = settled().filter(|ticket| ticket.paid.is_some()).count() as u32;
        (sold, settled().count() as u32 - sold, paid(Tender::Cash), paid(Tender::Card))
    };
    for sums in [&first, &running] {
        assert_eq!((sums.sold, sums.let_go, sums.cash, sums.card), of(sums), "show {}", sums.show);
        let paid = |tender| model.payments.get(&(sums.show, tender)).copied().unwrap_or_default();
        assert_eq!((sums.cash, sums.card), (paid(Tender::Cash), paid(Tender::Card)), "each ticket was paid once");
    }
    let open = model.tickets.values().filter(|ticket| ticket.state.is_open()).count() as u32;
    let currency = running.currency.unwrap_or_else(|| panic!("nothing was taken in the second show"));
    let second = ledger.close_show(currency, Timestamp::now()).expect("closed");
    assert_eq!((second.cash, second.card, second.let_go_now), (running.cash, running.card, open));
    assert!(ledger.counts().expect("counts").values().all(|count| count.held == 0), "nothing stays held");
}
