//! A rush over real sockets. Three tablets are programs of their own that are killed with -9 and started again; their lines
//! are cut, slow and late, and say again what was said before. A seller and a helper work on the same tickets, each signed
//! in in a browser of their own. First the desk is killed with -9 again and again, a show is closed, and a tablet is let go
//! and paired again; then the desk's clock is set to and fro while holds last seconds. At the end every promise is looked
//! up in the ledger, against a small model that does its entries once more. `CHATELAINE_RUSH=minutes` for longer.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "support/bad_line.rs"]
mod bad_line;
#[path = "rush/entries.rs"]
mod entries;
#[path = "desk/kit.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "rush/look_up.rs"]
mod look_up;
#[path = "rush/office.rs"]
mod office;
#[path = "support/random.rs"]
mod random;
#[path = "rush/sellers.rs"]
mod sellers;
mod support;
#[path = "rush/tablets.rs"]
mod tablets;

use std::{
    fs,
    io::{BufRead, BufReader},
    net::{SocketAddr, TcpListener},
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    sync::{
        Arc, Mutex,
        atomic::{AtomicBool, AtomicI64, Ordering},
    },
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    desk::{Clock, Desk, DeskConfig},
    ledger::Ledger,
    link::{Link, LinkConfig, Pairing},
};
use jiff::{SignedDuration, Timestamp};

use bad_line::BadLine;
use kit::{PIN, agent};
use office::Released;
use random::Random;
use sellers::{Browser, Seller, Took};
use tablets::Tablet;

/// How fast the desk's clock goes while it is set to and fro: the table's minute is three seconds.
const SPEED: u32 = 20;

/// A rush lasts so many minutes, both halves together.
fn minutes() -> f64 {
    std::env::var("CHATELAINE_RUSH").ok().and_then(|text| text.parse().ok()).unwrap_or(0.6)
}

/// A free port below those that the system gives to outgoing connections, so that nobody else gets it while the desk is
/// away.
fn free_port() -> SocketAddr {
    let first = 10_000 + (std::process::id() % 8_000) as u16;
    (first..first + 500)
        .find_map(|port| TcpListener::bind(("127.0.0.1", port)).ok()?.local_addr().ok())
        .expect("a free port")
}

/// Where the rush takes place.
struct Place {
    dir: tempfile::TempDir,
    listen: SocketAddr,
}

impl Place {
    /// A table with many chains and few drops, which holds for a minute.
    fn new() -> Self {
        let dir = tempfile::tempdir().expect("a folder");
        let catalog = dir.path().join("catalog");
        support::copy(&support::test_table(), &catalog).expect("a copy");
        for (file, from, to) in
            [("bases.ron", "stock: 20", "stock: 3000"), ("table.ron", "hold_minutes: 45", "hold_minutes: 1")]
        {
            let text = fs::read_to_string(catalog.join(file)).expect("a file");
            assert!(text.contains(from), "{file} has no {from:?}");
            fs::write(catalog.join(file), text.replacen(from, to, 1)).expect("written");
        }
        Self { dir, listen: free_port() }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.dir.path().join(name)
    }

    fn config(&self) -> DeskConfig {
        DeskConfig { catalog_dir: self.path("catalog"), data_dir: self.path("data"), listen: self.listen }
    }

    fn url(&self) -> String {
        format!("http://{}", self.listen)
    }

    /// The desk as a program of its own.
    fn desk(&self) -> Child {
        let mut child = Command::new(env!("CARGO_BIN_EXE_chatelaine"))
            .args(["desk", "--listen", &self.listen.to_string()])
            .arg("--catalog")
            .arg(self.path("catalog"))
            .arg("--data")
            .arg(self.path("data"))
            .stdout(Stdio::piped())
            .spawn()
            .expect("a desk");
        let mut line = String::new();
        BufReader::new(child.stdout.as_mut().expect("its words")).read_line(&mut line).expect("a line");
        assert!(line.contains("answers"), "the desk did not start: {line}{:?}", child.wait());
        child
    }

    fn ledger(&self) -> PathBuf {
        self.path("data/ledger.sqlite")
    }

    /// Number of the ledger's last entry.
    fn last_entry(&self) -> i64 {
        Ledger::open(&self.ledger(), Timestamp::now()).and_then(|ledger| ledger.change()).expect("a number")
    }

    /// Chooses the PIN and pairs three tablets, each with a bad line of its own.
    fn set_up(&self, end: &Arc<AtomicBool>) -> Vec<Tablet> {
        let first = Desk::start(self.config()).unwrap_or_else(|error| panic!("{error}"));
        agent().post(format!("{}/setup", first.url())).send_form([("pin", PIN), ("again", PIN)]).expect("a PIN");
        (0..3)
            .map(|n| {
                let line = BadLine::new(self.listen, 100 + n, Arc::clone(end));
                let pairing = first.pair_local().unwrap_or_else(|error| panic!("{error}"));
                let pairing = Pairing { desk: format!("http://{}", line.addr), ..pairing };
                Tablet::new(self.path(&format!("tablet-{n}")), pairing, n)
            })
            .collect()
    }
}

/// What is going on around the desk.
struct Rush<'a> {
    place: &'a Place,
    tablets: &'a Mutex<Vec<Tablet>>,
    end: &'a AtomicBool,
}

impl Rush<'_> {
    /// Kills tablets and starts them again.
    fn kill_tablets(&self) -> u32 {
        let mut random = Random(77);
        let mut kills = 0;
        while !self.end.load(Ordering::Relaxed) {
            thread::sleep(Duration::from_millis(300 + random.below(1500)));
            let mut tablets = self.tablets.lock().expect("tablets");
            let n = random.of(tablets.len());
            tablets[n].kill();
            tablets[n].start();
            kills += 1;
        }
        kills
    }

    /// The desk is killed again and again, at the end as well.
    fn kill_desk(&self, lasts: Duration) -> u32 {
        let mut random = Random(20_261_126);
        let (began, mut kills) = (Instant::now(), 0);
        while began.elapsed() < lasts {
            let mut desk = self.place.desk();
            thread::sleep(Duration::from_millis(400 + random.below(2500)));
            desk.kill().expect("killed");
            desk.wait().expect("gone");
            kills += 1;
        }
        kills
    }

    /// A desk whose clock is set to and fro; by how many seconds in all.
    fn set_clock(&self, lasts: Duration) -> i64 {
        let off = Arc::new(AtomicI64::new(0));
        let (for_clock, from, began) = (Arc::clone(&off), Timestamp::now(), Instant::now());
        let shows = move || {
            let gone_on = SignedDuration::try_from(began.elapsed() * SPEED).expect("a duration");
            from + gone_on + SignedDuration::from_secs(for_clock.load(Ordering::Relaxed))
        };
        let desk = Desk::start_by(self.place.config(), Clock::showing(shows, SPEED)).expect("a desk");
        let mut random = Random(1_126);
        while began.elapsed() < lasts {
            thread::sleep(Duration::from_millis(200 + random.below(1800)));
            // Up to nine hours either way: in the end sessions run out as well.
            off.fetch_add(random.below(64_800) as i64 - 32_400, Ordering::Relaxed);
        }
        // What was set last is noticed with the next work; then holds have their time once more.
        thread::sleep(Duration::from_secs(5));
        self.end.store(true, Ordering::Relaxed);
        desk.stop();
        off.load(Ordering::Relaxed)
    }
}

/// The tablet that is killed: this test's own program, started again with a folder in its environment. Started without
/// one, as every run of all tests does, it has no guests.
#[test]
fn tablet() {
    if let Some(dir) = std::env::var_os(tablets::FOLDER) {
        tablets::work(&PathBuf::from(dir));
    }
}

/// Ends the rush for everybody, also where somebody in it panics.
struct Ending<'a>(&'a AtomicBool);

impl Drop for Ending<'_> {
    fn drop(&mut self) {
        self.0.store(true, Ordering::Relaxed);
    }
}

/// What everybody was told and did, to be compared with the ledger.
struct Told {
    /// What the two at the desk took money for.
    took: Took,
    released: Released,
    /// The ledger's last entry before the clock was set.
    before_clock: i64,
    /// And its last one before a desk was started by a clock that nobody sets.
    after_clock: i64,
    /// By how many seconds the clock was set in all.
    clock_set_by: i64,
}

#[test]
fn every_promise_holds_in_a_rush() {
    let place = Place::new();
    let (end, may_close) = (Arc::new(AtomicBool::new(false)), AtomicBool::new(false));
    let tablets = Mutex::new(place.set_up(&end));
    tablets.lock().expect("tablets").iter_mut().for_each(Tablet::start);
    let half = Duration::from_secs_f64(minutes() * 30.0);
    let began = Instant::now();
    let rush = Rush { place: &place, tablets: &tablets, end: &end };
    let told = thread::scope(|scope| {
        let _ending = Ending(&end);
        let seller = scope.spawn(|| Seller::new(Browser::new(place.url()), 42).work_until(&end, Some(&may_close)));
        let helper = scope.spawn(|| Seller::new(Browser::new(place.url()), 43).work_until(&end, None));
        let switch = scope.spawn(|| rush.kill_tablets());
        let office = scope.spawn(|| {
            let released = office::release_and_pair(Browser::new(place.url()), rush.tablets, half / 4);
            thread::sleep((began + half * 6 / 10).saturating_duration_since(Instant::now()));
            may_close.store(true, Ordering::Relaxed);
            released
        });
        let desk_kills = rush.kill_desk(half);
        let before_clock = place.last_entry();
        let clock_set_by = rush.set_clock(half);
        let after_clock = place.last_entry();
        let mut took = seller.join().expect("the seller");
        took.extend(helper.join().expect("the helper"));
        let released = office.join().expect("the office");
        println!("killed: the desk {desk_kills} times, tablets {} times", switch.join().expect("the switch"));
        Told { took, released, before_clock, after_clock, clock_set_by }
    });
    let mut tablets = tablets.into_inner().expect("tablets");
    tablets.iter_mut().for_each(Tablet::kill);
    bring_the_rest(&place, &tablets);
    look_up::look_up(&place.ledger(), &tablets, &told);
    println!("{} s", began.elapsed().as_secs());
}

/// What is left in the outboxes arrives over a good line.
fn bring_the_rest(place: &Place, tablets: &[Tablet]) {
    let mut desk = place.desk();
    for tablet in tablets {
        let kept = chatelaine::link::kept_pairing(&tablet.dir).expect("a pairing");
        let pairing = Some(Pairing { desk: place.url(), ..kept });
        let (link, _news) = Link::open(LinkConfig { dir: tablet.dir.clone(), pairing, wake: Arc::new(|| {}) })
            .unwrap_or_else(|error| panic!("{error}"));
        let began = Instant::now();
        while link.waiting() > 0 {
            assert!(began.elapsed() < Duration::from_secs(60), "{} tickets never arrived", link.waiting());
            thread::sleep(Duration::from_millis(20));
        }
        assert_eq!(link.aside(), 0, "nothing was refused");
    }
    desk.kill().expect("killed");
    desk.wait().expect("gone");
    assert!(Path::new(&place.ledger()).exists());
}
