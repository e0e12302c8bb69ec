//! A disk that fills up: announced before, refused in plain words, everything stored still readable, and on it goes
//! without a restart once there is room. On real small disks in memory (Linux, with the right to mount them).

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "desk/kit.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "desk/seller.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
mod support;

use std::{
    fs,
    io::Write,
    path::{Path, PathBuf},
    process::Command,
    sync::Arc,
    time::{Duration, Instant},
};

use chatelaine::{
    craft::{Piece, Wearer},
    desk::{Desk, DeskConfig},
    link::{Draft, Kept, Link, LinkConfig, News, NewsReceiver, Pairing, SendError, Snapshot},
};
use kit::{Table, config};
use uuid::Uuid;

/// A small disk in memory, gone with this value.
struct SmallDisk(PathBuf);

impl SmallDisk {
    /// One of 10 MiB, of which the table's pictures take most, over the empty folder `at`; `None` where this user may not
    /// mount one. A build server must.
    fn over(at: &Path) -> Option<Self> {
        fs::create_dir_all(at).expect("a folder");
        let mounted = Command::new("mount").args(["-t", "tmpfs", "-o", "size=10m", "small-disk"]).arg(at).output();
        let mounted = mounted.is_ok_and(|output| output.status.success());
        assert!(mounted || std::env::var_os("CI").is_none(), "a build server must be able to mount a small disk");
        mounted.then(|| Self(at.to_owned()))
    }

    /// Leaves no byte free.
    fn fill(&self) {
        let mut ballast =
            fs::OpenOptions::new().create(true).append(true).open(self.0.join("ballast")).expect("a file");
        for size in [64 * 1024, 4096, 1] {
            while ballast.write_all(&vec![0; size]).is_ok() {}
        }
    }

    fn make_room(&self) {
        fs::remove_file(self.0.join("ballast")).expect("removed");
    }
}

impl Drop for SmallDisk {
    fn drop(&mut self) {
        // Also while somebody still has a file open there.
        let _ = Command::new("umount").arg("--lazy").arg(&self.0).status();
    }
}

/// A kiosk's line, with what it has heard.
struct Line {
    link: Link,
    news: NewsReceiver,
    snapshot: Arc<Snapshot>,
    /// Whether it was said before the first catalogue that the disk is nearly full.
    warned: bool,
}

impl Line {
    fn open(dir: &Path, pairing: Option<Pairing>) -> Self {
        let config = LinkConfig { dir: dir.to_owned(), pairing, wake: Arc::new(|| {}) };
        let (link, news) = Link::open(config).unwrap_or_else(|error| panic!("{error}"));
        let mut warned = false;
        let snapshot = hear(&news, |news| match news {
            News::DiskNearlyFull(now) => {
                warned = now;
                None
            }
            News::Snapshot(snapshot) => Some(snapshot),
            _ => None,
        });
        Self { link, news, snapshot, warned }
    }

    fn draft(&self) -> Draft {
        let drops = vec!["key-heart".into()];
        let piece = Piece {
            base: "chain-brass".into(),
            length: None,
            wearer: Wearer::From13,
            neck: None,
            drops,
            looks: vec![],
        };
        let quote = self.snapshot.catalog.quote(&piece).expect("a sum");
        let verdict = self.snapshot.catalog.cautions(&piece).expect("cautions");
        Draft { id: Uuid::now_v7(), piece, quote, verdict, grown_up_confirmed: false }
    }

    /// Sends a piece; whether it arrived at once.
    fn send(&self) -> (Kept, bool) {
        let kept = self.link.send(self.draft()).expect("kept");
        let arrived = hear(&self.news, |news| match news {
            News::Delivered { kept: of, .. } if of.id == kept.id => Some(true),
            News::Waiting(of) if of.id == kept.id => Some(false),
            _ => None,
        });
        (kept, arrived)
    }

    fn hear_arrived(&self, ticket: Kept) {
        hear(&self.news, |news| matches!(news, News::Delivered { kept, .. } if kept.id == ticket.id).then_some(()));
    }
}

fn hear<T>(news: &NewsReceiver, mut wanted: impl FnMut(News) -> Option<T>) -> T {
    let end = Instant::now() + Duration::from_secs(30);
    loop {
        let left = end.saturating_duration_since(Instant::now());
        if let Some(found) = wanted(news.recv_timeout(left).expect("news in time")) {
            return found;
        }
    }
}

fn ids(desk: &Desk) -> Vec<Uuid> {
    let tickets = desk.with_ledger(|ledger| ledger.tickets()).expect("an open ledger").expect("tickets");
    tickets.iter().map(|ticket| ticket.id).collect()
}

#[test]
fn a_tablet_whose_disk_is_full_refuses_and_keeps_what_it_has() {
    let folder = tempfile::tempdir().expect("a folder");
    let Some(disk) = SmallDisk::over(&folder.path().join("disk")) else { return };
    let dir = folder.path().join("disk/kiosk");
    let Table { desk, dir: home } = Table::new();
    let (addr, pairing) = (desk.addr(), desk.pair_local().expect("a digit"));
    let line = Line::open(&dir, Some(pairing.clone()));
    assert!(line.warned);
    let (first, arrived) = line.send();
    assert!(arrived);
    drop(desk);
    let (second, arrived) = line.send();
    assert!(!arrived);

    disk.fill();
    let refused = line.link.send(line.draft()).expect_err("a full disk");
    assert!(matches!(refused, SendError::Disk(_)));
    assert!(refused.to_string().starts_with("the ticket could not be written to this tablet's disk"), "{refused}");
    let aside = line.draft();
    let id = aside.id;
    line.link.send_aside(aside);
    hear(&line.news, |news| matches!(news, News::NotKept { id: of, .. } if of == id).then_some(()));
    assert_eq!(line.link.waiting(), 1);

    // What is stored can be read, also after a start on the full disk.
    drop(line);
    let line = Line::open(&dir, Some(pairing));
    assert_eq!(line.link.waiting(), 1);
    disk.make_room();
    let desk = Desk::start(DeskConfig { listen: addr, ..config(home.path()) }).expect("the desk again");
    line.hear_arrived(second);
    let (third, arrived) = line.send();
    assert!(arrived);
    assert_eq!(ids(&desk), [third.id, second.id, first.id]);
}

#[test]
fn a_desk_whose_disk_is_full_enters_nothing_and_shows_everything() {
    let Table { desk, dir: home } = Table::new();
    drop(desk);
    let data = home.path().join("data");
    fs::remove_dir_all(&data).expect("removed");
    let Some(disk) = SmallDisk::over(&data) else { return };
    let table = Table { desk: Desk::start(config(home.path())).expect("the desk starts"), dir: home };
    let (addr, stock) = (table.desk.addr(), table.catalog().drop_kind("key-heart").expect("a key").stock);
    let seller = table.seller();
    let page = seller.get("/tickets");
    assert!(page.text.contains("disk is nearly full"), "{}", page.text);
    let folder = tempfile::tempdir().expect("a folder");
    let line = Line::open(folder.path(), Some(table.desk.pair_local().expect("a digit")));
    let (first, arrived) = line.send();
    assert!(arrived);
    let mut sent = vec![first];

    disk.fill();
    // The ledger may have a little room of its own left.
    let late = loop {
        let (kept, arrived) = line.send();
        sent.push(kept);
        if !arrived {
            break kept;
        }
        assert!(sent.len() < 5, "a full disk takes everything");
    };
    let ticket = format!("/tickets/{}", first.id);
    let reads = |when: &str| {
        for (path, words) in [("/tickets", first.number.to_string()), (&ticket, first.number.to_string())] {
            let page = seller.get(path);
            assert_eq!(page.status, 200, "{when} {path}: {}", page.text);
            assert!(page.text.contains(&words), "{when} {path}: {}", page.text);
        }
        let refused = seller.post(&format!("{ticket}/call"), &[]);
        assert_eq!(refused.status, 507, "{when}: {}", refused.text);
        assert!(refused.text.contains("disk is full"), "{when}: {}", refused.text);
    };
    reads("as it fills up");

    let Table { desk, dir: home } = table;
    drop(desk);
    let desk = Desk::start(DeskConfig { listen: addr, ..config(home.path()) }).expect("a start with a full disk");
    disk.fill();
    reads("after a start");

    disk.make_room();
    line.hear_arrived(late);
    assert_eq!(seller.post(&format!("{ticket}/call"), &[]).status, 303);
    sent.reverse();
    assert_eq!(ids(&desk), sent.iter().map(|kept| kept.id).collect::<Vec<_>>());
    let counts = desk.with_ledger(|ledger| ledger.counts()).expect("open").expect("counts");
    let keys = counts["key-heart"];
    assert_eq!((keys.on_hand, keys.held), (stock, sent.len() as u32));
    assert!(desk.with_ledger(|ledger| ledger.is_sound()).expect("open").expect("read"));

    // Closed with room to tidy up, the ledger needs a little to be opened again: what was reserved for that.
    drop(desk);
    disk.fill();
    let desk = Desk::start(DeskConfig { listen: addr, ..config(home.path()) }).expect("a start on the reserve");
    assert_eq!(ids(&desk).len(), sent.len());
    assert_eq!(seller.get(&ticket).status, 200);
}
