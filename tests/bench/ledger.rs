//! Sends, over HTTP to a real desk, and payments, beside bare SQLite commits with the same settings in the same run; pages
//! with many tickets; and what a send takes while they look on. A ratio of rates is the median of several rounds.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "looking_on.rs"]
mod looking_on;
#[path = "../support/open_page.rs"]
#[expect(dead_code, reason = "what a page shows is compared in the tests")]
mod open_page;
#[path = "../support/mod.rs"]
mod support;

#[path = "slow_disk.rs"]
mod slow_disk;
#[path = "till.rs"]
mod till;

use std::{
    fs,
    path::Path,
    sync::{
        Arc, Barrier,
        atomic::{AtomicBool, AtomicU16, Ordering},
    },
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    catalog::{Catalog, read_folder},
    craft::{Piece, Wearer},
    desk::{Desk, DeskConfig},
    ledger::{Part, Work},
    link::{Pairing, wire::Delivery},
    money::Tender,
    ticket::{Receipt, SentTicket, TicketNumber},
};
use jiff::Timestamp;
use looking_on::{Looks, Seller};
use tempfile::TempDir;
use ureq::Agent;
use uuid::Uuid;

const PIN: &str = "482913";
/// Many short rounds: what else the disk has to do changes from second to second.
const ROUNDS: usize = 15;

fn agent() -> Agent {
    let config = Agent::config_builder().http_status_as_error(false).max_redirects(0).max_redirects_will_error(false);
    config.build().new_agent()
}

/// A desk with enough of everything, and nine tablets.
struct Bench {
    desk: Desk,
    catalog: Arc<Catalog>,
    tablets: Vec<Pairing>,
    /// The next number of each tablet.
    next: Vec<AtomicU16>,
    show: i64,
    dir: TempDir,
}

impl Bench {
    fn new() -> Self {
        let dir = tempfile::tempdir().expect("a folder");
        let catalog_dir = dir.path().join("catalog");
        support::copy(&support::test_table(), &catalog_dir).expect("a copy");
        for (file, from) in [("bases.ron", "stock: 20"), ("trays/a.ron", "stock: 12")] {
            let text = fs::read_to_string(catalog_dir.join(file)).expect("a file").replacen(from, "stock: 90000", 1);
            fs::write(catalog_dir.join(file), text).expect("written");
        }
        let catalog = read_folder(&catalog_dir).expect("a catalogue").catalog;
        let config = DeskConfig { catalog_dir, data_dir: dir.path().join("data"), listen: ([127, 0, 0, 1], 0).into() };
        let desk = Desk::start(config).expect("a desk");
        let tablets: Vec<Pairing> = (0..9).map(|_| desk.pair_local().expect("a digit")).collect();
        Self { desk, catalog, tablets, next: (0..9).map(|_| AtomicU16::new(0)).collect(), show: 1, dir }
    }

    /// The next ticket of one of the tablets.
    fn ticket(&self, tablet: usize) -> SentTicket {
        let tablet = tablet % self.tablets.len();
        let drops = vec!["key-heart".to_owned(), "key-heart".to_owned()];
        let piece = Piece {
            base: "chain-brass".into(),
            length: None,
            wearer: Wearer::From13,
            neck: None,
            drops,
            looks: vec![],
        };
        let sequence = self.next[tablet].fetch_add(1, Ordering::Relaxed);
        SentTicket {
            id: Uuid::now_v7(),
            show: self.show,
            number: TicketNumber::new(self.tablets[tablet].digit, sequence).expect("numbers left"),
            quote: self.catalog.quote(&piece).expect("a quote"),
            verdict: self.catalog.cautions(&piece).expect("cautions"),
            piece,
            grown_up_confirmed: false,
            practice: false,
        }
    }

    /// The next ticket of `tablet` as it is sent.
    fn delivery(&self, tablet: usize) -> Delivery {
        Delivery { ticket: self.ticket(tablet), refuse_if_short: true }
    }

    /// Sends one ticket of `tablet`; how long it took until it was durable and answered.
    fn send(&self, agent: &Agent, tablet: usize) -> Duration {
        let delivery = self.delivery(tablet);
        let began = Instant::now();
        self.deliver(agent, tablet, &delivery);
        began.elapsed()
    }

    fn deliver(&self, agent: &Agent, tablet: usize, delivery: &Delivery) {
        let pairing = &self.tablets[tablet % self.tablets.len()];
        let request = agent.post(format!("{}/link/tickets", pairing.desk));
        let mut answer =
            request.header("Authorization", format!("Bearer {}", pairing.key)).send_json(delivery).expect("an answer");
        let answer: Receipt = answer.body_mut().read_json().expect("an answer");
        assert_eq!(answer, Receipt::Stored { short: vec![] });
    }

    /// Sends a second from `senders` at once, `each` tickets each. What a tablet reckons before it sends is no part of that.
    fn rate(&self, senders: usize, each: usize) -> f64 {
        let ready = Barrier::new(senders + 1);
        let took = thread::scope(|scope| {
            for sender in 0..senders {
                let ready = &ready;
                scope.spawn(move || {
                    // The first one opens the connection.
                    let agent = agent();
                    self.send(&agent, sender);
                    let deliveries: Vec<Delivery> = (0..each).map(|_| self.delivery(sender)).collect();
                    ready.wait();
                    deliveries.iter().for_each(|delivery| self.deliver(&agent, sender, delivery));
                    ready.wait();
                });
            }
            ready.wait();
            let began = Instant::now();
            ready.wait();
            began.elapsed()
        });
        (senders * each) as f64 / took.as_secs_f64()
    }

    /// Tickets a second entered one by one without the way over the network.
    fn rate_without_network(&self, count: usize) -> f64 {
        let tickets: Vec<SentTicket> = (0..count).map(|_| self.ticket(1)).collect();
        let catalog = Arc::clone(&self.catalog);
        let work = move |ledger: &mut chatelaine::ledger::Ledger| {
            let began = Instant::now();
            for ticket in &tickets {
                ledger.receive(ticket, true, &catalog, Timestamp::now()).expect("received");
            }
            count as f64 / began.elapsed().as_secs_f64()
        };
        self.desk.with_ledger(work).expect("open")
    }

    /// The next show, with numbers from the first.
    fn next_show(&mut self) {
        let currency = self.catalog.table.prices.currency;
        let close = move |ledger: &mut chatelaine::ledger::Ledger| ledger.close_show(currency, Timestamp::now());
        self.desk.with_ledger(close).expect("open").expect("closed");
        self.show += 1;
        self.next.iter().for_each(|next| next.store(0, Ordering::Relaxed));
    }

    /// Puts `count` tickets into the ledger without the way over the network.
    fn fill(&self, count: usize) {
        let tickets: Vec<SentTicket> = (0..count).map(|n| self.ticket(n)).collect();
        for many in tickets.chunks(500) {
            let (many, catalog) = (many.to_vec(), Arc::clone(&self.catalog));
            let works = many.into_iter().map(move |ticket| -> Work {
                let catalog = Arc::clone(&catalog);
                Box::new(move |ledger| {
                    let receipt = ledger.receive(&ticket, true, &catalog, Timestamp::now());
                    Box::new(move |kept| assert!(receipt.is_ok() && kept.is_ok()))
                })
            });
            let works: Vec<Work> = works.collect();
            self.desk.with_ledger(move |ledger| ledger.together(works)).expect("open");
        }
    }

    fn seller(&self) -> Seller {
        let (agent, url) = (agent(), self.desk.url());
        let post = |page: &str, fields: &[(&str, &str)]| {
            agent.post(format!("{url}{page}")).send_form(fields.iter().copied()).expect("an answer")
        };
        let mut answer = post("/setup", &[("pin", PIN), ("again", PIN)]);
        if !answer.headers().contains_key("set-cookie") {
            answer = post("/sign-in", &[("pin", PIN)]);
        }
        let cookie = answer.headers()["set-cookie"].to_str().expect("a cookie");
        let cookie = cookie.split(';').next().expect("a cookie").to_owned();
        Seller { agent, url, cookie }
    }
}

/// A bare file with the ledger's settings, whose write-ahead file has its full length already.
fn bare_file(folder: &Path) -> rusqlite::Connection {
    let file = folder.join(format!("bare-{}.sqlite", Uuid::now_v7()));
    let db = rusqlite::Connection::open(file).expect("a file");
    db.execute_batch(
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = OFF; CREATE TABLE rows (id INTEGER PRIMARY KEY, body TEXT);",
    )
    .expect("a table");
    bare_rate(&db, 2000);
    db.execute_batch("PRAGMA synchronous = FULL;").expect("set");
    db
}

/// Bare commits a second, of a row as large as a ticket's entry.
fn bare_rate(db: &rusqlite::Connection, commits: usize) -> f64 {
    let body = "x".repeat(800);
    let began = Instant::now();
    for _ in 0..commits {
        db.prepare_cached("INSERT INTO rows (body) VALUES (?)").expect("sql").execute([&body]).expect("a commit");
    }
    commits as f64 / began.elapsed().as_secs_f64()
}

fn quantile(mut times: Vec<Duration>, part: f64) -> Duration {
    times.sort();
    times[((times.len() - 1) as f64 * part).round() as usize]
}

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

/// The median ratio of `ours` to bare commits, both measured in each round.
fn against_bare(name: &str, wanted: f64, bare: impl Fn() -> f64, mut ours: impl FnMut() -> f64) {
    let rounds: Vec<(f64, f64)> = (0..ROUNDS).map(|_| (bare(), ours())).collect();
    let ratio = median(rounds.iter().map(|(bare, ours)| ours / bare).collect());
    let (bare, ours) =
        (median(rounds.iter().map(|round| round.0).collect()), median(rounds.iter().map(|round| round.1).collect()));
    println!("| {name} | {ours:.0} a second | {bare:.0} a second | {ratio:.2} | {wanted} |");
}

fn resident_mib() -> f64 {
    let status = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmRSS:"));
    let kib: f64 = line.and_then(|line| line.trim().trim_end_matches(" kB").parse().ok()).unwrap_or(f64::NAN);
    kib / 1024.0
}

fn sends() {
    println!("| sends | rate | bare commits | ratio | wanted |\n| --- | --- | --- | --- | --- |");
    let mut bench = Bench::new();
    let file = bare_file(bench.dir.path());
    let bare = |commits| bare_rate(&file, commits);
    against_bare("one sender", 0.4, || bare(50), || bench.rate(1, 50));
    against_bare("the same without the network", 0.4, || bare(50), || bench.rate_without_network(50));
    bench.next_show();
    against_bare("sixteen senders", 1.0, || bare(50), || bench.rate(16, 15));
    bench.next_show();
    slow_disk::flush_takes(Duration::from_millis(5));
    let bench = Bench::new();
    let file = bare_file(bench.dir.path());
    let bare = |commits| bare_rate(&file, commits);
    against_bare("sixteen senders, a flush takes 5 ms", 7.0, || bare(20), || bench.rate(16, 25));
    slow_disk::flush_takes(Duration::ZERO);
}

/// Prints how long a page takes that is looked at again and again.
fn print_looks(seller: &Seller, name: &str, page: &str) {
    let looks: Vec<(Duration, usize)> = (0..60).map(|_| seller.get(page)).collect();
    let times: Vec<Duration> = looks.iter().map(|look| look.0).collect();
    println!(
        "| {name} | {:.1?} | {:.1?} | {} KiB |",
        quantile(times.clone(), 0.5),
        quantile(times, 0.99),
        looks[0].1 / 1024
    );
}

#[allow(clippy::too_many_lines, reason = "one row of measurements after the other")]
fn pages() {
    let mut bench = Bench::new();
    bench.fill(5000);
    let seller = bench.seller();
    println!("\n| with 5000 waiting tickets | median | p99 | size |\n| --- | --- | --- | --- |");
    for page in ["/tickets", "/show", "/tickets?group=waiting", "/show/close"] {
        print_looks(&seller, page, page);
    }
    till::pages(&bench, &seller);
    let lone: Vec<Duration> = (0..200).map(|n| bench.send(&seller.agent, n)).collect();
    let (done, all_looks) = (AtomicBool::new(false), Looks::default());
    let began = Instant::now();
    let times = thread::scope(|scope| {
        for n in 0..20 {
            let (seller, done, looks) = (Seller { agent: agent(), ..seller.clone() }, &done, &all_looks);
            scope.spawn(move || seller.look_on(if n % 4 == 3 { "/show" } else { "/tickets" }, done, looks));
        }
        thread::sleep(Duration::from_millis(500));
        let times: Vec<Duration> = (0..400)
            .map(|n| {
                // Guests don't send all at once.
                thread::sleep(Duration::from_millis(10));
                bench.send(&seller.agent, n)
            })
            .collect();
        done.store(true, Ordering::Relaxed);
        // One more change wakes who looks on.
        bench.send(&seller.agent, 0);
        times
    });
    println!("\n| a send with 5000 waiting tickets | median | p99 |\n| --- | --- | --- |");
    println!("| alone | {:.1?} | {:.1?} |", quantile(lone.clone(), 0.5), quantile(lone, 0.99));
    println!("| 20 pages looking on | {:.1?} | {:.1?} |", quantile(times.clone(), 0.5), quantile(times, 0.99));
    let [renewed, nothing, bytes] =
        [&all_looks.renewed, &all_looks.nothing, &all_looks.bytes].map(|count| count.load(Ordering::Relaxed) as f64);
    println!(
        "pages renewed {:.0} times a second, {:.0} % of them unchanged, {:.1} KiB each",
        renewed / began.elapsed().as_secs_f64(),
        100.0 * nothing / renewed,
        bytes / renewed / 1024.0
    );

    // A show like that rung up, and the sums of it.
    let ids = bench.desk.with_ledger(|ledger| ledger.tickets()).expect("open").expect("tickets");
    for ids in ids.chunks(500).map(|many| many.iter().map(|ticket| ticket.id).collect::<Vec<_>>()) {
        let works = ids.into_iter().map(|id| -> Work {
            Box::new(move |ledger| {
                let now = Timestamp::now();
                let done = (|| {
                    let ticket = ledger.tick(id, Part::Base, true, false, now)?;
                    for (at, _) in ticket.live_lines() {
                        ledger.tick(id, Part::Line(at), true, false, now)?;
                    }
                    ledger.set_told(id, true, now)?;
                    ledger.ring_up(id, Tender::Card, now)
                })();
                Box::new(move |kept| assert!(done.is_ok() && kept.is_ok(), "{done:?}"))
            })
        });
        let works: Vec<Work> = works.collect();
        bench.desk.with_ledger(move |ledger| ledger.together(works)).expect("open");
    }
    println!("\n| with as many rung up | median | p99 | size |\n| --- | --- | --- | --- |");
    for page in ["/tickets", "/show"] {
        print_looks(&seller, page, page);
    }
    bench.next_show();
    let before = resident_mib();
    bench.fill(5000);
    for _ in 0..20 {
        seller.get("/tickets");
    }
    println!("\nmemory: {before:.0} MiB after 5600 tickets, {:.0} MiB after 10600", resident_mib());
}

/// With `-- sends` or `-- till` behind the command only the sends or the payments are measured.
fn main() {
    // Cargo names the benchmark it wants, and asks for a list of them; there is one.
    if std::env::args().any(|word| word == "--list") {
        println!("ledger: benchmark");
        return;
    }
    let only = |part: &str| std::env::args().any(|word| word == part);
    if !only("till") {
        sends();
    }
    if !only("sends") {
        till::ringing_up();
    }
    if !only("sends") && !only("till") {
        pages();
    }
}
