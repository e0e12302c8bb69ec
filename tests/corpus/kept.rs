//! The kept inputs: each is told as its list says. A folder's list is `told.txt`: file, place, words.

use std::{collections::BTreeMap, fs, path::PathBuf};

use chatelaine::{
    catalog::read_piece,
    craft::Length,
    guest::{Looks, Settings},
    lang::Lang,
    ron_tree::Mistakes,
    ticket::TicketNumber,
};

use crate::checks::{catalogue, is_one_line, tablet, text};

fn kept() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/corpus/kept")
}

/// A kept file: its name, its bytes, and what the list says of it.
struct Kept {
    name: String,
    bytes: Vec<u8>,
    place: String,
    words: String,
}

/// The files of a folder; each is on the list, and everything on the list is there.
fn folder(name: &str) -> Vec<Kept> {
    let folder = kept().join(name);
    let list = fs::read_to_string(folder.join("told.txt")).expect("the list");
    let all: Vec<Kept> = list
        .lines()
        .map(|line| {
            let parts: Vec<&str> = line.splitn(3, " | ").collect();
            let [file, place, words] = parts[..] else { panic!("{line}") };
            let bytes = fs::read(folder.join(file)).unwrap_or_else(|error| panic!("{name}/{file}: {error}"));
            Kept { name: file.to_owned(), bytes, place: place.to_owned(), words: words.to_owned() }
        })
        .collect();
    let lying = fs::read_dir(&folder).expect("a folder").count() - 1;
    assert_eq!(lying, all.len(), "{name}: each file is on the list");
    all
}

/// Says where a file is not told as its list has it.
fn is_told(kept: &Kept, told: Result<(), Mistakes>) -> Option<String> {
    match told {
        Ok(()) if kept.place == "taken" => None,
        Ok(()) => Some(format!("{} was taken", kept.name)),
        Err(mistakes) => {
            let place = format!(":{}: ", kept.place);
            let is_it = |line: &str| line.contains(&place) && line.contains(&kept.words);
            let all = mistakes.to_string();
            let missing = !all.lines().any(is_it);
            missing.then(|| {
                format!("{} should say {:?} at {}, told was\n{:.1500}", kept.name, kept.words, kept.place, all)
            })
        }
    }
}

fn are_told(faults: Vec<String>) {
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn kept_pieces_are_told_with_their_place() {
    let told = |one: &Kept| {
        text::piece(&one.bytes);
        is_told(one, read_piece("piece.ron", std::str::from_utf8(&one.bytes).expect("a text")).map(|_| ()))
    };
    are_told(folder("pieces").iter().filter_map(told).collect());
}

#[test]
fn kept_catalogue_files_are_told_with_their_place() {
    let mut faults = Vec::new();
    for (kind, file) in [
        ("table", "table.ron"),
        ("bases", "bases.ron"),
        ("tray", "trays/a.ron"),
        ("names", "names/de.ron"),
        ("rules", "rules/us.ron"),
    ] {
        for one in folder(kind) {
            catalogue::file(file, &one.bytes);
            let read = catalogue::with_file(file, &one.bytes).map(|_| ());
            faults.extend(is_told(&one, read).map(|fault| format!("{kind}/{fault}")));
        }
    }
    are_told(faults);
}

#[test]
fn kept_pictures_are_told_and_not_shown() {
    let mut faults = Vec::new();
    for one in folder("pictures") {
        catalogue::picture(&one.bytes);
        let name = if one.name.ends_with(".png") { "key.png" } else { "leaf.jpg" };
        match catalogue::with_file(&format!("pictures/{name}"), &one.bytes) {
            Ok(_) => faults.push(format!("{} was taken", one.name)),
            Err(Mistakes(mistakes)) => {
                let says = format!("pictures/{name} {}", one.words);
                let is_it = |file: &str, found: &str| file == "trays/a.ron" && found.contains(&says);
                if !mistakes.iter().any(|mistake| is_it(&mistake.file, mistake.found.english())) {
                    faults.push(format!("{} should say {says:?}, told was {mistakes:?}", one.name));
                }
            }
        }
    }
    are_told(faults);
}

#[test]
fn kept_files_of_a_tablet_are_moved_aside_or_left_as_they_are() {
    for one in folder("outbox") {
        assert!(!tablet::is_ticket(&one.bytes), "{} is a ticket", one.name);
    }
    assert!(tablet::is_ticket(tablet::GOOD_ENTRY));
    for one in folder("settings") {
        let Settings { lang, left_handed, looks, px_per_mm, .. } = tablet::settings_of(&one.bytes);
        let usual = (Lang::default(), false, Looks::default(), None);
        assert_eq!((lang, left_handed, looks, px_per_mm), usual, "{}", one.name);
    }
    assert_eq!(tablet::settings_of(tablet::GOOD_SETTINGS).lang, Lang::De);
    for one in folder("pairing") {
        assert!(!tablet::is_paired(&one.bytes), "{} is a pairing", one.name);
        tablet::kept(&one.bytes);
    }
    assert!(tablet::is_paired(tablet::GOOD_PAIRING));
}

#[test]
fn kept_quantities_are_no_quantities() {
    let json = fs::read(kept().join("quantities.json")).expect("the list");
    let all: BTreeMap<String, Vec<(String, String)>> = serde_json::from_slice(&json).expect("the list");
    assert_eq!(all.len(), text::QUANTITIES.len());
    for (kind, texts) in &all {
        for (odd, words) in texts {
            let Err(message) = text::quantity_as(kind, odd) else { panic!("{kind}: {odd:?} was taken") };
            is_one_line(&message);
            assert!(message.contains(words.as_str()), "{kind}: {odd:.100?} should say {words:?}, told was {message}");
            assert!(message.chars().count() < 250, "{kind}: {message}");
        }
    }
    // What lies at the ends of what is read.
    assert_eq!("100m".parse::<Length>().expect("a length").mm(), 100_000.0);
    assert_eq!("0mm".parse::<Length>().expect("a length").mm(), 0.0);
}

#[test]
fn kept_ticket_numbers_are_no_numbers() {
    let json = fs::read(kept().join("ticket-numbers.json")).expect("the list");
    let all: Vec<(String, String)> = serde_json::from_slice(&json).expect("the list");
    for (odd, words) in &all {
        text::ticket_number(odd.as_bytes());
        let told = odd.parse::<TicketNumber>().expect_err(odd).to_string();
        assert!(told.contains(words.as_str()) && told.chars().count() < 250, "{odd:.100?}: {told}");
    }
}
