//! The bench's pages after many shows: `CHATELAINE_SHOWS=20x500 cargo test --release --test evenings many -- --nocapture`
//! measures as many as were promised for; without it there are few, and what is held is that every page answers.

use std::time::{Duration, Instant};

use chatelaine::{
    ledger::{Part, Work},
    money::Tender,
    ticket::SentTicket,
};
use jiff::Timestamp;
use uuid::Uuid;

use crate::{book::sent, kit::Table, seller::Seller};

/// How many shows of how many tickets.
fn size() -> (u16, u16) {
    let asked = std::env::var("CHATELAINE_SHOWS").ok();
    let read = asked.as_deref().and_then(|text| {
        let (shows, tickets) = text.split_once('x')?;
        Some((shows.parse().ok()?, tickets.parse().ok()?))
    });
    read.unwrap_or((3, 60))
}

/// Sells `count` tickets of three drops in the running show and closes it.
fn a_show(table: &Table, show: i64, count: u16) {
    let catalog = table.catalog();
    let drops: Vec<&str> = ["key-heart", "charm-moon", "bead-jade"].to_vec();
    let tickets: Vec<SentTicket> = (0..count).map(|n| SentTicket { show, ..sent(&catalog, n, &drops) }).collect();
    for many in tickets.chunks(250) {
        let works = many.iter().cloned().map(|ticket| -> Work {
            let catalog = std::sync::Arc::clone(&catalog);
            Box::new(move |ledger| {
                let now = Timestamp::now();
                let done = (|| {
                    for part in ["key-heart", "charm-moon", "bead-jade", "chain-brass"] {
                        ledger.restock(part, 1, Uuid::now_v7(), now)?;
                    }
                    ledger.receive(&ticket, false, &catalog, now)?;
                    ledger.tick(ticket.id, Part::Base, true, false, now)?;
                    for at in 0..3 {
                        ledger.tick(ticket.id, Part::Line(at), true, false, now)?;
                    }
                    ledger.set_told(ticket.id, true, now)?;
                    ledger.ring_up(ticket.id, Tender::Card, now)
                })();
                Box::new(move |kept| assert!(done.is_ok() && kept.is_ok(), "{done:?}"))
            })
        });
        let works: Vec<Work> = works.collect();
        assert_eq!(table.desk.with_ledger(move |ledger| ledger.together(works)), Some(false));
    }
    let currency = catalog.table.prices.currency;
    let closed = table.desk.with_ledger(move |ledger| ledger.close_show(currency, Timestamp::now()));
    assert_eq!(u32::from(count), closed.expect("the ledger").expect("closed").sold);
}

/// The pages of a recall name every piece once, the oldest first, and the file names all of them.
fn each_is_named_once(seller: &Seller, all: usize) {
    let mut named = Vec::new();
    for from in (0..all).step_by(100) {
        let page = seller.get(&format!("/bench/lots?lot=K-26-1&from={from}")).text;
        assert!(page.contains(&format!("{all} sold pieces")), "{page}");
        let ids = page.split("href=\"/tickets/").skip(1).map(|rest| rest[..36].to_owned());
        let ids: Vec<String> = ids.collect();
        assert_eq!(ids.len(), 100.min(all - from), "from {from}");
        assert_eq!(page.contains(&format!("from={}#recall", from + 100)), from + 100 < all, "the way on from {from}");
        named.extend(ids);
    }
    let mut once = named.clone();
    once.sort();
    once.dedup();
    assert_eq!((once.len(), named.len()), (all, all));
    let file = seller.get("/bench/lots/recall.csv?lot=k-26-1").text;
    assert_eq!(file.lines().count(), all + 1, "a head and every piece");
    assert_eq!(seller.get("/bench/lots?lot=K-26-1&from=99999999").status, 200);
}

#[test]
fn every_page_answers_after_many_shows() {
    let (shows, tickets) = size();
    let table = Table::new();
    let seller = table.seller();
    for show in 1..=shows {
        a_show(&table, show.into(), tickets);
    }
    let all = [
        "/trays/count",
        "/bench",
        "/bench/parts",
        "/bench/prices",
        "/bench/drawers",
        "/bench/cuts",
        "/bench/made",
        "/bench/lots",
        "/bench/lots/write",
        "/bench/lots?lot=K-26-1",
        "/bench/lots?lot=K-26-1&from=100",
        "/bench/lots/recall.csv?lot=K-26-1",
        "/bench/packing",
        "/bench/plans",
        "/bench/year",
        "/bench/backup",
        "/bench/shows/1",
    ];
    println!("{shows} shows of {tickets} tickets");
    for page in all {
        let times: Vec<Duration> = (0..5)
            .map(|_| {
                let began = Instant::now();
                assert_eq!(seller.get(page).status, 200, "{page}");
                began.elapsed()
            })
            .collect();
        let best = times.iter().min().expect("times");
        println!("{page}: {best:.1?}, at most {:.1?}", times.iter().max().expect("times"));
        // Where other programs are at work and nothing is made fast, a page may take longer than was promised.
        assert!(*best < Duration::from_secs(5), "{page}: {times:?}");
    }
    each_is_named_once(&seller, usize::from(shows) * usize::from(tickets));
}
