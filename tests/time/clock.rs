//! Somebody sets the desk's clock while a seller is at work: what the seller has just done counts from when it was done,
//! whichever way the clock was set. The desk's clock goes twenty times as fast here.

use std::{
    fs,
    sync::{
        Arc,
        atomic::{AtomicI64, Ordering},
    },
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    craft::Wearer,
    desk::{Clock, Desk},
};
use jiff::{SignedDuration, Timestamp};

use crate::{
    kit::{Table, config},
    support::{copy, test_table},
};

/// How fast the desk's clock goes.
const SPEED: u32 = 20;
/// The table's time to hold in this test, on the desk's clock.
const HOLD: Duration = Duration::from_secs(120);
/// What a hold may be off: half the slack of a clock that counts as not set, and what a busy machine needs.
const SHORTER: Duration = Duration::from_secs(20);
/// A sweep comes every 20 seconds of the desk's clock, and a busy machine takes its time.
const LONGER: Duration = Duration::from_secs(200);

/// A desk that holds for two minutes, and by how many seconds its clock is off.
fn table() -> (Table, Arc<AtomicI64>) {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&test_table(), &dir.path().join("catalog")).expect("a copy");
    let file = dir.path().join("catalog/table.ron");
    let text = fs::read_to_string(&file).expect("the table").replacen("hold_minutes: 45", "hold_minutes: 2", 1);
    fs::write(&file, text).expect("written");
    let off = Arc::new(AtomicI64::new(0));
    let (for_clock, from, began) = (Arc::clone(&off), Timestamp::now(), Instant::now());
    let shows = move || {
        let gone_on = SignedDuration::try_from(began.elapsed() * SPEED).expect("a duration");
        from + gone_on + SignedDuration::from_secs(for_clock.load(Ordering::Relaxed))
    };
    let desk = Desk::start_by(config(dir.path()), Clock::showing(shows, SPEED)).expect("the desk starts");
    (Table { desk, dir }, off)
}

/// Sets the clock by so many seconds, has the seller tick a part right before or right after that, and gives how long the
/// other part was held from then on, by the desk's clock.
fn held_for(set_by: &[i64], works_after: bool) -> Duration {
    let (table, off) = table();
    let (kiosk, seller) = (table.kiosk(), table.seller());
    let held = |id: &'static str| {
        table.desk.with_ledger(move |ledger| ledger.counts()).expect("open").expect("counts")[id].held
    };
    let ticket = kiosk.ticket(0, &["found-token", "key-heart"], Wearer::From13);
    kiosk.deliver(&ticket, true);
    // Some of the time to hold is over when the seller begins.
    thread::sleep(HOLD / SPEED / 3);
    let tick = || {
        let answer = seller.post(&format!("/tickets/{}/tick", ticket.id), &[("part", "1"), ("on", "1")]);
        assert_eq!(answer.status, 303, "{}", answer.text);
    };
    let began = Instant::now();
    if !works_after {
        tick();
    }
    for by in set_by {
        off.fetch_add(*by, Ordering::Relaxed);
        if works_after {
            tick();
        }
    }
    while held("found-token") > 0 {
        assert!(began.elapsed() * SPEED < HOLD * 5, "held without end");
        thread::sleep(Duration::from_millis(20));
    }
    assert_eq!(held("key-heart"), 1, "what is ticked stays held");
    began.elapsed() * SPEED
}

#[test]
fn what_the_seller_does_around_a_clock_that_is_set_holds_for_the_tables_time() {
    const HOUR: i64 = 3600;
    let cases: [&[i64]; 5] = [&[-HOUR], &[HOUR], &[-100], &[HOUR, -HOUR], &[-HOUR, HOUR]];
    thread::scope(|scope| {
        let all: Vec<_> = [true, false]
            .into_iter()
            .flat_map(|after| cases.map(|by| (by, after, scope.spawn(move || held_for(by, after)))))
            .collect();
        for (by, after, held) in all {
            let held = held.join().expect("a desk");
            assert!(
                held + SHORTER >= HOLD && held <= HOLD + LONGER,
                "held for {} s where the clock was set by {by:?} s and the seller worked after that: {after}",
                held.as_secs()
            );
        }
    });
}

/// The clock is set while the desk is still starting, as on a machine that asks for the time over a network which has just
/// come up: what was held before goes on being held.
#[test]
fn a_clock_that_is_set_while_the_desk_starts_ends_no_hold() {
    let (table, _) = table();
    let kiosk = table.kiosk();
    let ticket = kiosk.ticket(0, &["found-token"], Wearer::From13);
    kiosk.deliver(&ticket, true);
    let Table { desk, dir } = table;
    desk.stop();
    let (looks, from, began) = (AtomicI64::new(0), Timestamp::now(), Instant::now());
    let shows = move || {
        let set_by = if looks.fetch_add(1, Ordering::Relaxed) == 0 { 0 } else { 3 * 3600 };
        from + SignedDuration::try_from(began.elapsed() * SPEED).expect("a duration")
            + SignedDuration::from_secs(set_by)
    };
    let desk = Desk::start_by(config(dir.path()), Clock::showing(shows, SPEED)).expect("the desk starts");
    // Two sweeps, and time to spare before the hold is over.
    thread::sleep(HOLD / SPEED / 2);
    let counts = desk.with_ledger(|ledger| ledger.counts()).expect("open").expect("counts");
    assert_eq!(counts["found-token"].held, 1);
}
