//! A backup takes the ledger's place, also when that is cut short.

use std::{
    fs,
    path::{Path, PathBuf},
    process::Command,
};

use chatelaine::{
    desk::Desk,
    ledger::{Ledger, back_up, restore_at_next_start, restore_now, restore_waits},
};
use tempfile::TempDir;

use crate::{
    book::{catalog, count, now},
    kit::{Table, config},
};

/// A ledger with seven heart keys in its backup, and three by now.
fn seven_then_three() -> (TempDir, PathBuf, PathBuf) {
    let dir = tempfile::tempdir().expect("a folder");
    let (ledger, backup) = (dir.path().join("ledger.sqlite"), dir.path().join("elsewhere.sqlite"));
    let mut book = Ledger::open(&ledger, now()).expect("a ledger");
    book.take_catalog(&catalog(), "first", now()).expect("counts");
    book.recount("key-heart", 7, now()).expect("counted");
    back_up(&ledger, &backup).expect("a backup");
    book.recount("key-heart", 3, now()).expect("counted");
    drop(book);
    (dir, ledger, backup)
}

fn keys(ledger: &Path) -> u32 {
    count(&Ledger::open(ledger, now()).expect("a ledger"), "key-heart").0
}

#[test]
fn a_backup_takes_the_ledgers_place_and_what_it_replaces_is_kept() {
    let (_dir, ledger, backup) = seven_then_three();
    assert_eq!(restore_now(&ledger).expect("nothing to do"), None);
    restore_at_next_start(&backup, &ledger, now()).expect("noted");
    assert!(restore_waits(&ledger).is_some() && keys(&ledger) == 3, "nothing has happened yet");
    let kept = restore_now(&ledger).expect("restored").expect("a folder");
    assert_eq!((keys(&ledger), keys(&kept.join("ledger.sqlite"))), (7, 3));
    assert_eq!(restore_now(&ledger).expect("once"), None);
    assert_eq!(keys(&ledger), 7);
}

/// The states in which a power cut can leave it, each finished at the next start.
#[test]
fn a_restore_that_is_cut_short_is_finished_at_the_next_start() {
    for cut in ["a half copy", "a whole copy", "half moved away", "all moved away", "all but the note"] {
        let (dir, ledger, backup) = seven_then_three();
        restore_at_next_start(&backup, &ledger, now()).expect("noted");
        let kept = dir.path().join("replaced-20260606-100000");
        let coming = dir.path().join("restoring.sqlite");
        match cut {
            "a half copy" => fs::write(&coming, &fs::read(&backup).expect("read")[..5000]).expect("written"),
            _ => drop(fs::copy(&backup, &coming).expect("copied")),
        }
        if ["half moved away", "all moved away", "all but the note"].contains(&cut) {
            fs::create_dir(&kept).expect("a folder");
            fs::rename(&ledger, kept.join("ledger.sqlite")).expect("moved");
        }
        if ["all moved away", "all but the note"].contains(&cut) {
            for entry in fs::read_dir(dir.path()).expect("a folder").flatten() {
                let name = entry.file_name();
                if name.to_str().is_some_and(|name| name.starts_with("ledger.")) {
                    fs::rename(entry.path(), kept.join(name)).expect("moved");
                }
            }
        }
        if cut == "all but the note" {
            fs::rename(&coming, &ledger).expect("moved");
        }
        let found = restore_now(&ledger).expect(cut).expect("a folder");
        assert_eq!((keys(&ledger), keys(&found.join("ledger.sqlite"))), (7, 3), "{cut}");
        assert!(!coming.exists() && restore_waits(&ledger).is_none(), "{cut}");
    }
}

#[test]
fn what_is_no_whole_backup_changes_nothing() {
    let (dir, ledger, backup) = seven_then_three();
    let broken = dir.path().join("broken.sqlite");
    let mut bytes = fs::read(&backup).expect("read");
    for byte in &mut bytes[4096..9000] {
        *byte = 0xA5;
    }
    fs::write(&broken, bytes).expect("written");
    let other = dir.path().join("other.sqlite");
    rusqlite::Connection::open(&other).expect("a file").execute_batch("CREATE TABLE a (b)").expect("a table");
    for wrong in [broken, other, dir.path().join("none.sqlite")] {
        assert!(restore_at_next_start(&wrong, &ledger, now()).is_err(), "{}", wrong.display());
        assert!(restore_waits(&ledger).is_none());
    }
    assert_eq!(keys(&ledger), 3);
    // A backup that has gone when it is wanted: the note stays, and so does what is there.
    restore_at_next_start(&backup, &ledger, now()).expect("noted");
    fs::rename(&backup, dir.path().join("gone")).expect("moved");
    assert!(restore_now(&ledger).is_err() && restore_waits(&ledger).is_some() && ledger.exists());
    fs::rename(dir.path().join("gone"), &backup).expect("moved");
    restore_now(&ledger).expect("restored");
    assert_eq!(keys(&ledger), 7);
}

/// One JSON object of a command on the ledger in `dir`.
fn object(dir: &Path, words: &[&str]) -> serde_json::Value {
    let mut command = Command::new(env!("CARGO_BIN_EXE_chatelaine"));
    command.args(words).args(["--json".as_ref(), "--data".as_ref(), dir.join("data").as_os_str()]);
    let done = command.output().expect("it runs");
    assert!(done.status.success(), "{words:?}: {}", String::from_utf8_lossy(&done.stderr));
    serde_json::from_slice(&done.stdout).expect("one JSON object")
}

fn terminal(dir: &Path, from: &Path) -> std::process::Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_chatelaine"));
    command.args(["restore".as_ref(), "--from".as_ref(), from.as_os_str()]);
    command.args(["--data".as_ref(), dir.join("data").as_os_str()]);
    command.output().expect("it runs")
}

#[test]
fn a_copy_of_the_page_is_restored_at_the_next_start_and_by_the_command() {
    let table = Table::new();
    let seller = table.seller();
    table.desk.with_ledger(|ledger| ledger.recount("key-heart", 7, now())).expect("the ledger").expect("counted");
    assert_eq!(seller.post("/bench/backup", &[]).status, 303);
    let page = seller.get("/bench/backup").text;
    let (_, rest) = page.split_once("/bench/backup/ledger-").expect("a copy on the page");
    let name = format!("ledger-{}", rest.split_once('"').expect("the end of the address").0);
    table.desk.with_ledger(|ledger| ledger.recount("key-heart", 3, now())).expect("the ledger").expect("counted");
    let copy = table.dir.path().join("data/backups").join(&name);
    let refused = terminal(table.dir.path(), &copy);
    assert_eq!(refused.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&refused.stderr).contains("a desk is running"), "{refused:?}");
    // Asked for, not after all, and asked for again.
    let address = format!("/bench/backup/{name}");
    assert_eq!(seller.post("/bench/backup/ledger-20200101-000000.sqlite", &[]).status, 404);
    assert_eq!(seller.post(&address, &[]).status, 303);
    assert!(seller.get("/bench/backup").text.contains("takes the ledger’s place"));
    assert_eq!(seller.post("/bench/restore", &[]).status, 303);
    assert!(!seller.get("/bench/backup").text.contains("What is entered until then"));
    assert_eq!(seller.post(&address, &[]).status, 303);
    let Table { desk, dir } = table;
    desk.stop();
    let desk = Desk::start(config(dir.path())).expect("the desk starts");
    let counts = desk.with_ledger(|ledger| ledger.counts()).expect("the ledger").expect("counts");
    assert_eq!(counts["key-heart"].on_hand, 7);
    desk.with_ledger(|ledger| ledger.recount("key-heart", 2, now())).expect("the ledger").expect("counted");
    desk.stop();
    let done = terminal(dir.path(), &copy);
    assert!(done.status.success(), "{}", String::from_utf8_lossy(&done.stderr));
    assert!(String::from_utf8_lossy(&done.stdout).contains("replaced-"), "{done:?}");
    assert_eq!(keys(&dir.path().join("data/ledger.sqlite")), 7);
    // The same in JSON: copied, and put back.
    let other = dir.path().join("other.sqlite");
    let other = other.to_str().expect("a name");
    let copied = object(dir.path(), &["backup", "--to", other]);
    assert!(copied["entries"].as_i64() > Some(0) && copied["faults"] == serde_json::json!([]), "{copied}");
    let back = object(dir.path(), &["restore", "--from", other]);
    assert!(Path::new(back["kept"].as_str().expect("a folder")).is_dir(), "{back}");
    assert_eq!(object(dir.path(), &["verify"])["whole"], true);
    assert_eq!(keys(&dir.path().join("data/ledger.sqlite")), 7);
}
