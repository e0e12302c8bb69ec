//! The rooms' arrows point one way: which room may name which, read from the source.

use std::{
    collections::BTreeSet,
    fs,
    path::{Path, PathBuf},
};

/// A room, the rooms it may name besides itself, and the outside crates of the watched ones it may use.
const ROOMS: &[(&str, &[&str], &[&str])] = &[
    ("disk", &[], &["fs4", "sha2", "tempfile"]),
    ("ron_tree", &[], &[]),
    ("craft", &[], &[]),
    ("money", &["craft"], &[]),
    ("hang", &["craft"], &[]),
    ("caution", &["ron_tree", "craft"], &[]),
    ("catalog", &["disk", "ron_tree", "craft", "money", "hang", "caution"], &["image", "notify"]),
    ("portrait", &["craft", "hang", "catalog"], &["image", "tiny_skia"]),
    ("ticket", &["craft", "money", "caution"], &[]),
    ("ledger", &["disk", "craft", "money", "caution", "catalog", "ticket"], &["rusqlite", "jiff"]),
    ("lang", &["craft", "money", "caution", "catalog"], &[]),
    ("link", &["disk", "craft", "money", "caution", "catalog", "ticket"], &["ureq"]),
    (
        "desk",
        &[
            "disk", "ron_tree", "craft", "money", "hang", "caution", "catalog", "portrait", "lang", "ticket", "ledger",
            "link",
        ],
        &["axum", "tokio", "tokio_stream", "tower_http", "maud", "jiff", "image"],
    ),
    (
        "kiosk",
        &["disk", "craft", "money", "hang", "caution", "catalog", "lang", "ticket", "link"],
        &["bevy", "bevy_egui", "egui", "image"],
    ),
];

/// Crates that tie a room to an engine, a network, a clock or a disk.
const WATCHED: &[&str] = &[
    "axum",
    "bevy",
    "bevy_egui",
    "egui",
    "fs4",
    "image",
    "jiff",
    "maud",
    "notify",
    "rusqlite",
    "sha2",
    "tempfile",
    "tiny_skia",
    "tokio",
    "tokio_stream",
    "tower_http",
    "ureq",
];

/// What a pure room may not touch of the standard library.
const IMPURE: &[&str] = &["std::fs", "std::net", "std::time", "std::process", "std::env", "std::thread"];

fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder of the source").flatten() {
        let path = entry.path();
        if path.is_dir() {
            files(&path, found);
        } else if path.extension().is_some_and(|end| end == "rs") {
            found.push(path);
        }
    }
}

/// The names that follow `prefix` in `text`, also those in braces: `crate::{a::X, b}` gives a and b.
fn names_after(text: &str, prefix: &str) -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    for (at, _) in text.match_indices(prefix) {
        let rest = &text[at + prefix.len()..];
        let word = |text: &str| text.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect::<String>();
        if let Some(list) = rest.strip_prefix('{') {
            let (mut depth, mut start) = (0, true);
            for (i, c) in list.char_indices() {
                match c {
                    '{' => depth += 1,
                    '}' if depth == 0 => break,
                    '}' => depth -= 1,
                    ',' if depth == 0 => start = true,
                    c if start && !c.is_whitespace() => {
                        names.insert(word(&list[i..]));
                        start = false;
                    }
                    _ => {}
                }
            }
        } else {
            names.insert(word(rest));
        }
    }
    names
}

#[test]
fn every_room_keeps_to_its_arrows() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut faults = Vec::new();
    for (room, may_name, may_use) in ROOMS {
        if !src.join(room).is_dir() {
            continue;
        }
        let mut sources = Vec::new();
        files(&src.join(room), &mut sources);
        for path in sources {
            let text = fs::read_to_string(&path).expect("a source file");
            // A room's own tests may use what they like from outside, such as temporary folders.
            let text = text.split("#[cfg(test)]\nmod tests {").next().unwrap_or_default();
            let code: String =
                text.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n");
            let mut fault =
                |what: String| faults.push(format!("{}: {what}", path.strip_prefix(&src).unwrap_or(&path).display()));
            for name in names_after(&code, "crate::") {
                let is_room = ROOMS.iter().any(|(other, ..)| *other == name);
                if is_room && name != *room && !may_name.contains(&name.as_str()) {
                    fault(format!("{room} may not name {name}"));
                }
            }
            for krate in WATCHED.iter().filter(|krate| !may_use.contains(krate)) {
                let named = code.contains(&format!("use {krate}::")) || code.contains(&format!(" {krate}::"));
                if named {
                    fault(format!("{room} may not use {krate}"));
                }
            }
            if ["ron_tree", "craft", "money", "hang", "caution"].contains(room) {
                for impure in IMPURE.iter().filter(|impure| code.contains(*impure)) {
                    fault(format!("{room} is pure and may not use {impure}"));
                }
            }
        }
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn the_reading_itself_sees_forbidden_arrows() {
    let names = names_after("use crate::{ledger::X, craft::{A, B},\n money};\nuse crate::desk::Y;", "crate::");
    assert_eq!(names.into_iter().collect::<Vec<_>>(), ["craft", "desk", "ledger", "money"]);
}
