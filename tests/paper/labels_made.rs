//! Paper for the table from the terminal and from the desk, and what of it is new since the last print.

use std::{
    fs,
    path::Path,
    process::{Command, Output},
};

use serde_json::Value;

use crate::{
    kit::Table,
    pdf_reader::{has_poppler, lines},
    scene::file,
    support::{copy, test_table},
};

fn run(folder: &Path, arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_chatelaine"));
    command.arg("labels").args(arguments).current_dir(folder);
    command.output().expect("the program runs")
}

/// What it answers in JSON.
fn asked(folder: &Path, arguments: &[&str]) -> Value {
    let out = run(folder, &[arguments, &["--json"]].concat());
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    serde_json::from_slice(&out.stdout).expect("JSON")
}

fn refused(folder: &Path, arguments: &[&str]) -> String {
    let out = run(folder, arguments);
    assert_eq!(out.status.code(), Some(2), "{arguments:?}");
    String::from_utf8(out.stderr).expect("UTF-8")
}

fn change(folder: &Path, from: &str, to: &str) {
    let file = folder.join("catalog/trays/a.ron");
    let text = fs::read_to_string(&file).expect("a tray");
    assert!(text.contains(from));
    fs::write(file, text.replacen(from, to, 1)).expect("a tray");
}

#[test]
fn the_terminal_makes_what_is_new_since_the_last_print() {
    let dir = tempfile::tempdir().unwrap();
    let folder = dir.path();
    copy(&test_table(), &folder.join("catalog")).unwrap();
    let all = asked(folder, &["--out", "all.pdf"]);
    let drops = all["printed"].as_array().unwrap().len();
    assert!(drops > 60 && all["noted"] == true, "{all}");
    assert!(fs::read(folder.join("all.pdf")).unwrap().starts_with(b"%PDF-"));
    let none = asked(folder, &["--out", "none.pdf", "--changed"]);
    assert_eq!((&none["file"], none["pages"].as_u64()), (&Value::Null, Some(0)));
    assert!(!folder.join("none.pdf").exists());
    change(folder, "price: \"4.50\"", "price: \"5.00\"");
    let new = asked(folder, &["--out", "new.pdf", "--changed", "--only", "marks"]);
    assert_eq!(new["printed"], serde_json::json!(["A1"]));
    if has_poppler() {
        let words = lines(&fs::read(folder.join("new.pdf")).unwrap()).join(" ");
        assert!(words.contains("A1") && words.contains("$5.00") && !words.contains("A2"), "{words}");
    }
    // Another language is another paper.
    assert_eq!(
        asked(folder, &["--out", "de.pdf", "--changed", "--language", "de"])["printed"].as_array().unwrap().len(),
        drops
    );
    // A broken note is none: all of it comes again, and the next one is whole.
    fs::write(folder.join("catalog/printed.json"), "{\"marks\": {\"A1").unwrap();
    assert_eq!(asked(folder, &["--out", "again.pdf", "--changed"])["printed"].as_array().unwrap().len(), drops);
    assert_eq!(asked(folder, &["--out", "none.pdf", "--changed"])["pages"], 0);
    // The table itself reads as before, with the note beside its files.
    let check = Command::new(env!("CARGO_BIN_EXE_chatelaine")).arg("check").current_dir(folder).output().unwrap();
    assert!(check.status.success());
}

#[test]
fn what_can_not_be_made_is_told_and_overwrites_nothing() {
    let dir = tempfile::tempdir().unwrap();
    let folder = dir.path();
    copy(&test_table(), &folder.join("catalog")).unwrap();
    fs::write(folder.join("mine.pdf"), "mine").unwrap();
    assert!(refused(folder, &["--out", "mine.pdf"]).contains("mine.pdf can't be made"));
    assert_eq!(fs::read(folder.join("mine.pdf")).unwrap(), b"mine");
    assert!(!folder.join("catalog/printed.json").exists(), "what was not made is not noted");
    for (arguments, told) in [
        (["--grid", "four"], "4x14"),
        (["--grid", "10x28"], "20 × 10 mm"),
        (["--margin", "wide"], "10mm"),
        (["--paper", "A3"], "A4 and Letter"),
        (["--tray", "Q"], "no tray"),
        (["--only", "mark"], "marks"),
        (["--language", "tlh"], "en, es, fr, de"),
        (["--desk", "192.168.4.1"], "http://"),
        (["--catalog", "nowhere"], "table.ron: the file is missing"),
    ] {
        let words = refused(folder, &[&["--out", "new.pdf"][..], &arguments].concat());
        assert!(words.contains(told), "{arguments:?}: {words}");
        assert!(!folder.join("new.pdf").exists());
    }
    assert!(refused(folder, &["--out", "gone/new.pdf"]).contains("can't be made"));
    // The note can't be kept where a folder of its name lies; the paper is made all the same, and that is told.
    fs::create_dir(folder.join("catalog/printed.json")).unwrap();
    let out = run(folder, &["--out", "told.pdf"]);
    assert!(out.status.success() && folder.join("told.pdf").exists());
    assert!(String::from_utf8_lossy(&out.stderr).contains("could not be noted"));
}

#[test]
fn at_the_desk_marks_are_printed_once_and_come_again_when_they_change() {
    let table = Table::new();
    let seller = table.seller();
    let page = |path: &str| seller.get(path).text;
    assert!(page("/table/paper").contains("No marks were printed yet."));
    let pdf = file(&seller, "/table/paper/labels.pdf?what=marks");
    assert!(pdf.starts_with(b"%PDF-"));
    assert!(page("/table/paper").contains("No marks were printed yet."), "looking at it is not printing it");
    let revision = |text: &str| {
        let after = text.split("name=\"revision\" value=\"").nth(1).expect("the page's catalogue");
        after.split('"').next().unwrap().to_owned()
    };
    let seen = revision(&page("/table/paper"));
    let say = |seen: &str| seller.post("/table/paper/printed", &[("revision", seen), ("language", "en")]).location;
    assert_eq!(say(&seen), "/table/paper?noted=1");
    assert_eq!(say(&seen), "/table/paper?noted=1", "said twice it is the same");
    assert!(page("/table/paper?noted=1").contains("All marks are as they were printed last."));
    assert_eq!(seller.get("/table/paper/labels.pdf?what=marks&changed=1").status, 409);
    change(table.dir.path(), "price: \"4.50\"", "price: \"5.00\"");
    for _ in 0..100 {
        if revision(&page("/table/paper")) != seen {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(50));
    }
    assert!(page("/table/paper").contains("1 mark is new since the last print: A1"), "{}", page("/table/paper"));
    assert_eq!(say(&seen), "/table/paper?stale=1", "the page that says so has not seen the new price");
    assert!(page("/table/paper?stale=1").contains("Make the PDF again"));
    if has_poppler() {
        let words = lines(&file(&seller, "/table/paper/labels.pdf?what=marks&changed=1")).join(" ");
        assert!(words.contains("A1") && words.contains("$5.00") && !words.contains("A2"), "{words}");
    }
    assert_eq!(say(&revision(&page("/table/paper"))), "/table/paper?noted=1");
    assert!(page("/table/paper").contains("All marks are as they were printed last."));
}

#[test]
fn a_stray_drop_is_led_home() {
    let table = Table::new();
    let seller = table.seller();
    let all = seller.get("/put-back").text;
    assert!(all.contains("Touch the picture of what you have found.") && all.contains("href=\"/put-back?home=A1\""));
    let found = seller.get("/put-back?home=A1").text;
    assert!(found.contains("Heart-bow key belongs in A1."));
    assert_eq!(found.matches("cell found").count(), 1);
    for stray in ["/put-back?home=Z9", "/put-back?home=%3Cscript%3E", "/put-back?home="] {
        let text = seller.get(stray).text;
        assert!(text.contains("Touch the picture") && !text.contains("<script>"), "{stray}");
    }
    assert_eq!(
        seller.agent.get(format!("{}/put-back", seller.url)).call().unwrap().headers()["location"],
        "/sign-in?back=/put-back"
    );
}
