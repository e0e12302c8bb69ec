//! kill -9 of kiosk or desk at any moment of a send: no ticket lost, none doubled, the stock right.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

mod support;

use std::{
    collections::BTreeSet,
    fs,
    io::{BufRead, BufReader, Write},
    net::{SocketAddr, TcpListener},
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    sync::Arc,
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    craft::{Piece, Wearer},
    desk::{Desk, DeskConfig},
    ledger::Ledger,
    link::{Draft, Link, LinkConfig, News, NewsReceiver, Pairing},
};
use jiff::Timestamp;
use support::{copy, test_table};
use uuid::Uuid;

const TRIES: u64 = 200;
const SENDER: &str = "CHATELAINE_TEST_SENDER";

fn open(dir: PathBuf, pairing: Option<Pairing>) -> (Link, NewsReceiver) {
    Link::open(LinkConfig { dir, pairing, wake: Arc::new(|| {}) }).unwrap_or_else(|error| panic!("{error}"))
}

/// The kiosk that is killed: this test's own program, started again with a folder in its environment. Started without
/// one, as every run of all tests does, it has nobody to send for.
#[test]
fn sender() {
    let Some(dir) = std::env::var_os(SENDER) else { return };
    let (link, news) = open(PathBuf::from(dir), None);
    let snapshot = loop {
        if let News::Snapshot(snapshot) = news.recv().expect("news") {
            break snapshot;
        }
    };
    let piece = Piece {
        base: "chain-brass".into(),
        length: None,
        wearer: Wearer::From13,
        neck: None,
        drops: vec!["key-heart".into(), "key-heart".into()],
        looks: vec![],
    };
    let quote = snapshot.catalog.quote(&piece).expect("a quote");
    let verdict = snapshot.catalog.cautions(&piece).expect("cautions");
    // The harness swallows what a test prints; the parent reads a file instead.
    let mut told = fs::OpenOptions::new()
        .append(true)
        .create(true)
        .open(std::env::var("CHATELAINE_TEST_TOLD").expect("a file"))
        .expect("a file");
    let kept = link.send(Draft { id: Uuid::now_v7(), piece, quote, verdict, grown_up_confirmed: false }).expect("kept");
    writeln!(told, "{}", kept.id).expect("told");
    loop {
        match news.recv().expect("news") {
            News::Delivered { kept: of, .. } | News::Waiting(of) if of.id == kept.id => return,
            News::Short { .. } | News::Refused { .. } => panic!("the ticket was not taken"),
            _ => {}
        }
    }
}

/// A free port below the range from which the system takes ports for outgoing connections: a kiosk that calls a dead
/// desk in that range can be given the very port it calls, and then nobody else can answer there.
fn free_port() -> SocketAddr {
    let first = 20_000 + (std::process::id() % 8_000) as u16;
    (first..first + 500)
        .find_map(|port| TcpListener::bind(("127.0.0.1", port)).ok()?.local_addr().ok())
        .expect("a free port")
}

fn desk(catalog: &Path, data: &Path, listen: SocketAddr) -> Child {
    let mut child = Command::new(env!("CARGO_BIN_EXE_chatelaine"))
        .args(["desk", "--listen", &listen.to_string()])
        .arg("--catalog")
        .arg(catalog)
        .arg("--data")
        .arg(data)
        .stdout(Stdio::piped())
        .spawn()
        .expect("a desk");
    let mut line = String::new();
    BufReader::new(child.stdout.as_mut().expect("its words")).read_line(&mut line).expect("a line");
    assert!(line.contains("answers"), "the desk did not start: {line}{:?}", child.wait());
    child
}

#[test]
#[allow(clippy::too_many_lines, reason = "one story, in the order in which it happens")]
fn no_ticket_is_lost_or_doubled_by_kill_9() {
    let dir = tempfile::tempdir().expect("a folder");
    let (catalog, data, kiosk, told) =
        (dir.path().join("catalog"), dir.path().join("desk"), dir.path().join("kiosk"), dir.path().join("told"));
    copy(&test_table(), &catalog).expect("a copy");
    for (file, from) in [("bases.ron", "stock: 20"), ("trays/a.ron", "stock: 12")] {
        let text = fs::read_to_string(catalog.join(file)).expect("a file").replacen(from, "stock: 90000", 1);
        fs::write(catalog.join(file), text).expect("written");
    }
    let listen = free_port();
    let pairing = {
        let config = DeskConfig { catalog_dir: catalog.clone(), data_dir: data.clone(), listen };
        let desk = Desk::start(config).unwrap_or_else(|error| panic!("{error}"));
        desk.pair_local().unwrap_or_else(|error| panic!("{error}"))
    };
    // The first news have to arrive once, so that the kiosk can send without the desk afterwards.
    let mut server = desk(&catalog, &data, listen);
    {
        let (_link, news) = open(kiosk.clone(), Some(pairing));
        while !matches!(news.recv_timeout(Duration::from_secs(20)).expect("news"), News::DeskInReach(true)) {}
    }
    let mut seed = 20_261_125u64;
    let mut random = move |below: u64| {
        // Constants of Knuth's MMIX generator.
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) % below
    };
    for _ in 0..TRIES {
        let mut sender = Command::new(std::env::current_exe().expect("this program"))
            .args(["sender", "--exact", "--test-threads=1"])
            .env(SENDER, &kiosk)
            .env("CHATELAINE_TEST_TOLD", &told)
            .stdout(Stdio::null())
            .spawn()
            .expect("a kiosk");
        let victim = random(4);
        thread::sleep(Duration::from_micros(random(60_000)));
        if victim != 0 {
            sender.kill().expect("killed");
        }
        if victim != 1 {
            server.kill().expect("killed");
            server.wait().expect("gone");
            server = desk(&catalog, &data, listen);
        }
        let began = Instant::now();
        while sender.try_wait().expect("a state").is_none() {
            assert!(began.elapsed() < Duration::from_secs(20), "the kiosk hangs");
            thread::sleep(Duration::from_millis(5));
        }
    }
    // Everything that is still on the kiosk's disk arrives now.
    let (link, _news) = open(kiosk, None);
    let began = Instant::now();
    while link.waiting() > 0 {
        assert!(began.elapsed() < Duration::from_secs(60), "{} tickets never arrived", link.waiting());
        thread::sleep(Duration::from_millis(20));
    }
    drop(link);
    server.kill().expect("killed");
    server.wait().expect("gone");

    let ledger = Ledger::open(&data.join("ledger.sqlite"), Timestamp::now()).expect("the ledger");
    assert!(ledger.is_sound().expect("an answer"));
    let tickets = ledger.tickets().expect("tickets");
    let ids: BTreeSet<Uuid> = tickets.iter().map(|ticket| ticket.id).collect();
    let numbers: BTreeSet<_> = tickets.iter().map(|ticket| ticket.number).collect();
    assert_eq!((ids.len(), numbers.len()), (tickets.len(), tickets.len()), "a ticket or a number twice");
    let told = fs::read_to_string(told).expect("what was sent");
    let sent: BTreeSet<Uuid> = told.lines().filter_map(|line| line.parse().ok()).collect();
    assert!(sent.len() > TRIES as usize / 8, "only {} of {TRIES} kiosks lived to send", sent.len());
    let lost: Vec<_> = sent.difference(&ids).collect();
    assert!(lost.is_empty(), "lost: {lost:?}");
    let counts = ledger.counts().expect("counts");
    let key = counts["key-heart"];
    assert_eq!((key.on_hand, key.held as usize), (90_000, 2 * tickets.len()));
    println!("{TRIES} tries, {} sent, {} in the ledger", sent.len(), tickets.len());
}
