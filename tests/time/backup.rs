//! The ledger in a safe place: a backup taken while the desk works, and a ledger that is whole after every orderly end.

use std::{
    fs,
    io::{BufRead, BufReader},
    path::Path,
    process::{Child, Command, Output, Stdio},
    time::{Duration, Instant},
};

use chatelaine::{craft::Wearer, desk::Desk, ledger::Ledger, link::Pairing, ticket::Receipt};

use crate::{
    book::now,
    kit::{Kiosk, Table, agent, config},
};

fn chatelaine(words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_chatelaine")).args(words).output().expect("it runs")
}

/// A desk in a process of its own, and its address.
fn desk(folder: &Path) -> (Child, String) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_chatelaine"))
        .args(["desk", "--listen", "127.0.0.1:0"])
        .arg("--catalog")
        .arg(folder.join("catalog"))
        .arg("--data")
        .arg(folder.join("data"))
        .stdout(Stdio::piped())
        .spawn()
        .expect("a desk");
    let mut line = String::new();
    BufReader::new(child.stdout.as_mut().expect("its words")).read_line(&mut line).expect("a line");
    let url = line.split_whitespace().find(|word| word.starts_with("http")).expect("an address").to_owned();
    (child, url)
}

#[cfg(unix)]
fn end(child: &mut Child, signal: &str) {
    Command::new("kill").args([signal, &child.id().to_string()]).status().expect("a signal");
    let began = Instant::now();
    loop {
        if let Some(status) = child.try_wait().expect("a state") {
            assert!(status.success(), "{signal}: {status}");
            return;
        }
        assert!(began.elapsed() < Duration::from_secs(20), "{signal} does not end the desk");
        std::thread::sleep(Duration::from_millis(10));
    }
}

/// A tablet whose desk is at `url`.
fn at(kiosk: &Kiosk, url: &str) -> Kiosk {
    let pairing = Pairing { desk: url.to_owned(), ..kiosk.pairing.clone() };
    Kiosk { agent: agent(), pairing, catalog: kiosk.catalog.clone() }
}

#[cfg(unix)]
#[test]
fn a_backup_has_everything_and_every_orderly_end_leaves_one_file() {
    let table = Table::new();
    let kiosk = table.kiosk();
    let Table { desk: first, dir } = table;
    first.stop();
    let data = dir.path().join("data");
    let file = data.join("ledger.sqlite");
    let drop_id = kiosk.fitting()[0].id.clone();
    for (n, signal) in ["-TERM", "-INT", "-HUP"].into_iter().enumerate() {
        let (mut child, url) = desk(dir.path());
        let kiosk = at(&kiosk, &url);
        let ticket = kiosk.ticket(n as u16, &[&drop_id], Wearer::From13);
        assert_eq!(kiosk.deliver(&ticket, true), Receipt::Stored { short: vec![] });
        // The ledger's own file alone lacks it, as long as the desk runs; a backup has it.
        let copy = dir.path().join(format!("copy-{n}.sqlite"));
        let (to, from) = (copy.to_str().expect("a name"), data.to_str().expect("a name"));
        let done = chatelaine(&["backup", "--to", to, "--data", from]);
        let said = String::from_utf8_lossy(&done.stdout).into_owned();
        assert!(done.status.success() && said.contains(&format!("{} tickets", n + 1)), "{said}{done:?}");
        let again = chatelaine(&["backup", "--to", to, "--data", from]);
        assert!(String::from_utf8_lossy(&again.stderr).contains("not overwritten"), "{again:?}");
        let whole = chatelaine(&["verify", to]);
        assert!(whole.status.success() && String::from_utf8_lossy(&whole.stdout).contains("is whole"), "{whole:?}");
        assert!(chatelaine(&["verify", "--data", from]).status.success());
        end(&mut child, signal);
        for beside in ["ledger.sqlite-wal", "ledger.sqlite-shm"] {
            assert!(!data.join(beside).exists(), "{signal} leaves {beside}");
        }
        for (name, bytes) in [("ledger", &file), ("backup", &copy)] {
            let folder = tempfile::tempdir().expect("a folder");
            let alone = folder.path().join("ledger.sqlite");
            fs::copy(bytes, &alone).expect("copied");
            let ledger = Ledger::open(&alone, now()).expect("opened");
            assert_eq!(ledger.tickets().expect("tickets").len(), n + 1, "{signal} {name}");
            assert_eq!(ledger.ticket(ticket.id).expect("a ticket").quote, ticket.quote);
        }
    }
    // What is lost with the ledger comes back with the backup.
    fs::remove_dir_all(&data).expect("lost");
    fs::create_dir_all(&data).expect("a folder");
    fs::copy(dir.path().join("copy-2.sqlite"), &file).expect("restored");
    let back = Desk::start(config(dir.path())).expect("the desk starts");
    assert_eq!(back.with_ledger(|ledger| ledger.tickets()).expect("open").expect("tickets").len(), 3);
    assert!(back.knows(&kiosk.pairing), "tablets need not be paired anew");
}

#[test]
fn what_cannot_be_copied_is_told() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = |name: &str| folder.path().join(name).to_str().expect("a name").to_owned();
    let said = |words: &[&str]| {
        let done = chatelaine(words);
        assert_eq!(done.status.code(), Some(2), "{done:?}");
        String::from_utf8_lossy(&done.stderr).into_owned()
    };
    assert!(said(&["backup", "--to", &at("copy"), "--data", &at("nowhere")]).contains("there is no ledger"));
    fs::create_dir_all(at("empty")).expect("a folder");
    fs::write(at("empty/ledger.sqlite"), "").expect("written");
    assert!(said(&["backup", "--to", &at("copy"), "--data", &at("empty")]).contains("there is no ledger"));
    fs::write(at("cat.sqlite"), "a picture of a cat, not a ledger at all").expect("written");
    assert!(said(&["verify", &at("cat.sqlite")]).contains("not whole"));
    let Table { desk, dir } = Table::new();
    desk.stop();
    let data = dir.path().join("data");
    let data = data.to_str().expect("a name");
    let no_folder = said(&["backup", "--to", &at("no/such/folder/copy"), "--data", data]);
    assert!(no_folder.contains("can't be written"), "{no_folder}");
    // A damaged ledger is copied by nobody as if it were whole.
    let file = dir.path().join("data/ledger.sqlite");
    let mut bytes = fs::read(&file).expect("the file");
    let (from, to) = (bytes.len() / 4, bytes.len() * 3 / 4);
    bytes[from..to].fill(0xA5);
    fs::write(&file, &bytes).expect("written");
    assert!(said(&["verify", "--data", data]).contains("not whole"));
    let refused = said(&["backup", "--to", &at("copy"), "--data", data]);
    assert!(!Path::new(&at("copy")).exists(), "{refused}");
}
