//! Deliveries: a ticket as a tablet sends it, entered in a ledger in memory.

use chatelaine::{
    ledger::Ledger,
    link::wire::Delivery,
    money::Currency,
    ticket::{Receipt, State},
};
use jiff::Timestamp;

use super::{catalogue::catalog, is_one_line};

/// A delivery as a tablet writes it.
pub const GOOD: &[u8] = include_bytes!("../good/delivery.json");

fn now() -> Timestamp {
    "2026-06-06T10:00:00Z".parse().expect("a time")
}

/// What the ledger answers to a message; none to what is no delivery at all. Afterwards the ledger is sound, and what was
/// refused has changed nothing.
pub fn answer(data: &[u8]) -> Option<Receipt> {
    let delivery: Delivery = serde_json::from_slice(data).ok()?;
    let catalog = catalog();
    let mut ledger = Ledger::in_memory(now()).expect("a ledger");
    ledger.take_catalog(&catalog, "first", now()).expect("counts");
    let (change, counts) = (ledger.change().expect("read"), ledger.counts().expect("counts"));
    let receipt = ledger
        .receive(&delivery.ticket, delivery.refuse_if_short, &catalog, now())
        .unwrap_or_else(|error| panic!("{error}"));
    assert_eq!(ledger.faults().expect("read"), Vec::<String>::new());
    match &receipt {
        Receipt::Stored { .. } => {
            let ticket = ledger.ticket(delivery.ticket.id).unwrap_or_else(|error| panic!("{error}"));
            assert_eq!((ticket.state, ticket.number), (State::Sent, delivery.ticket.number));
            let again = ledger.receive(&delivery.ticket, delivery.refuse_if_short, &catalog, now()).expect("read");
            assert!(matches!(again, Receipt::Stored { .. }), "{again:?}");
            ledger.close_show(Currency::from_code("USD").expect("a currency"), now()).expect("closed");
        }
        Receipt::Short { .. } | Receipt::Refused { .. } | Receipt::Practice => {
            if let Receipt::Refused { reason, .. } = &receipt {
                is_one_line(reason);
            }
            assert_eq!((ledger.change().expect("read"), ledger.counts().expect("counts")), (change, counts));
            assert!(ledger.tickets().expect("tickets").is_empty());
        }
    }
    Some(receipt)
}

/// Enters a delivery, whatever it is.
pub fn delivery(data: &[u8]) {
    answer(data);
}
