//! The rooms' arrows point one way: which room may name which, read from the source.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::{Path, PathBuf},
};

/// A room, the rooms it may name besides itself and those for all, and the outside crates of the watched ones it may use.
const ROOMS: &[(&str, &[&str], &[&str])] = &[
    ("quoting", &[], &[]),
    ("qr", &[], &["qrcode"]),
    ("disk", &[], &["fs4", "sha2", "tempfile"]),
    ("machine", &[], &["tempfile"]),
    ("ron_tree", &[], &[]),
    ("craft", &[], &[]),
    ("waiting", &[], &[]),
    ("money", &["craft"], &[]),
    ("export", &["craft"], &["csv"]),
    ("hang", &["craft"], &[]),
    ("prep", &["craft", "money"], &["microlp"]),
    ("caution", &["ron_tree", "craft"], &[]),
    ("catalog", &["disk", "ron_tree", "craft", "money", "hang", "prep", "caution"], &["image", "notify"]),
    ("photo", &["craft"], &["image", "imageproc"]),
    ("portrait", &["craft", "hang", "catalog"], &["image", "tiny_skia"]),
    ("ticket", &["craft", "money", "caution"], &[]),
    (
        "ledger",
        &["disk", "ron_tree", "craft", "money", "export", "caution", "catalog", "ticket", "waiting"],
        &["rusqlite", "jiff"],
    ),
    ("bench", &["craft", "money", "export", "prep", "catalog", "ticket", "ledger"], &["jiff"]),
    ("lang", &["ron_tree", "craft", "money", "caution", "catalog"], &[]),
    ("link", &["disk", "machine", "craft", "money", "caution", "catalog", "ticket"], &["ureq"]),
    ("paper", &["qr", "craft", "money", "caution", "catalog", "lang"], &["image", "krilla", "rustybuzz"]),
    ("guest", &["disk", "craft", "money", "hang", "caution", "catalog", "lang", "ticket", "link"], &[]),
    (
        "desk",
        &[
            "disk", "machine", "ron_tree", "craft", "money", "export", "hang", "photo", "prep", "caution", "catalog",
            "portrait", "bench", "lang", "ticket", "ledger", "link", "guest", "paper", "qr", "waiting",
        ],
        &["axum", "tokio", "tokio_stream", "tower_http", "maud", "jiff", "image"],
    ),
    (
        "kiosk",
        &["qr", "disk", "craft", "money", "hang", "caution", "catalog", "lang", "ticket", "link", "guest"],
        &["bevy", "bevy_egui", "egui", "image"],
    ),
];

/// Rooms that every room may name.
const FOR_ALL: &[&str] = &["quoting"];

/// Crates that tie a room to an engine, a network, a clock or a disk.
const WATCHED: &[&str] = &[
    "axum",
    "bevy",
    "bevy_egui",
    "csv",
    "egui",
    "fs4",
    "image",
    "imageproc",
    "jiff",
    "krilla",
    "maud",
    "microlp",
    "notify",
    "qrcode",
    "rusqlite",
    "rustybuzz",
    "sha2",
    "tempfile",
    "tiny_skia",
    "tokio",
    "tokio_stream",
    "tower_http",
    "ureq",
];

/// Rooms without files, clocks and threads.
const PURE: &[&str] =
    &["quoting", "qr", "ron_tree", "waiting", "craft", "money", "export", "hang", "photo", "prep", "caution"];

/// What a pure room may not touch of the standard library.
const IMPURE: &[&str] = &["std::fs", "std::net", "std::time", "std::process", "std::env", "std::thread"];

/// What lies in `src` beside the rooms: the map, and the command line, which may name every room.
const BESIDE: &[&str] = &["lib", "main", "commands"];

fn source() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src")
}

/// Every source file below `folder`.
fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder of the source").flatten() {
        let path = entry.path();
        if path.is_dir() {
            found.extend(files(&path));
        } else if path.extension().is_some_and(|end| end == "rs") {
            found.push(path);
        }
    }
    found
}

/// A file's code without remarks and without the tests at its end, which may use what they like from outside.
fn code_of(path: &Path) -> String {
    let text = fs::read_to_string(path).expect("a source file");
    let text = text.split("#[cfg(test)]\nmod tests {").next().unwrap_or_default();
    text.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n")
}

/// The paths that follow `prefix` in `text`, braces taken apart: `crate::{a::{X, Y}, b}` gives a::X, a::Y and b.
fn paths_after(text: &str, prefix: &str) -> Vec<Vec<String>> {
    let mut paths = Vec::new();
    for (at, _) in text.match_indices(prefix) {
        read_path(&text[at + prefix.len()..], &mut Vec::new(), &mut paths);
    }
    paths
}

/// Reads one path, or all those in braces, and gives what stands behind it.
fn read_path<'t>(text: &'t str, so_far: &mut Vec<String>, paths: &mut Vec<Vec<String>>) -> &'t str {
    let text = text.trim_start();
    if let Some(mut list) = text.strip_prefix('{') {
        let depth = so_far.len();
        loop {
            list = list.trim_start_matches(|c: char| c == ',' || c.is_whitespace());
            if list.is_empty() {
                return list;
            }
            if let Some(rest) = list.strip_prefix('}') {
                return rest;
            }
            list = read_path(list, so_far, paths);
            so_far.truncate(depth);
            // What stands before the next comma is another name for the same.
            list = &list[list.find([',', '}']).unwrap_or(list.len())..];
        }
    }
    let end = text.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(text.len());
    so_far.push(text[..end].to_owned());
    match text[end..].strip_prefix("::") {
        Some(rest) => read_path(rest, so_far, paths),
        None => {
            paths.push(so_far.clone());
            &text[end..]
        }
    }
}

/// The first words of the paths that follow `prefix`.
fn names_after(text: &str, prefix: &str) -> BTreeSet<String> {
    paths_after(text, prefix).into_iter().filter_map(|path| path.into_iter().next()).collect()
}

#[test]
fn every_room_keeps_to_its_arrows() {
    let src = source();
    let mut faults = Vec::new();
    for (room, may_name, may_use) in ROOMS {
        if !src.join(room).is_dir() {
            continue;
        }
        for path in files(&src.join(room)) {
            let code = code_of(&path);
            let mut fault =
                |what: String| faults.push(format!("{}: {what}", path.strip_prefix(&src).unwrap_or(&path).display()));
            for name in names_after(&code, "crate::") {
                let is_room = ROOMS.iter().any(|(other, ..)| *other == name);
                let may = may_name.contains(&name.as_str()) || FOR_ALL.contains(&name.as_str());
                if is_room && name != *room && !may {
                    fault(format!("{room} may not name {name}"));
                }
            }
            for krate in WATCHED.iter().filter(|krate| !may_use.contains(krate)) {
                let named = code.contains(&format!("use {krate}::")) || code.contains(&format!(" {krate}::"));
                if named {
                    fault(format!("{room} may not use {krate}"));
                }
            }
            if PURE.contains(room) {
                for impure in IMPURE.iter().filter(|impure| code.contains(*impure)) {
                    fault(format!("{room} is pure and may not use {impure}"));
                }
            }
            if code.contains("super::super") {
                fault("write the path from crate:: instead of super::super".to_owned());
            }
        }
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn every_room_is_known() {
    let mut faults = Vec::new();
    for entry in fs::read_dir(source()).expect("the source").flatten() {
        let path = entry.path();
        let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        if !ROOMS.iter().any(|(room, ..)| *room == name) && !BESIDE.contains(&name.as_str()) {
            faults.push(format!("{name} is no room of this test: say which rooms and crates it may name"));
        }
    }
    let map = fs::read_to_string(source().join("lib.rs")).expect("the map");
    for (room, ..) in ROOMS.iter().filter(|(room, ..)| source().join(room).is_dir()) {
        if !map.contains(&format!("//! {room} ")) {
            faults.push(format!("{room} is missing from the map in lib.rs"));
        }
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

/// The files of a room by their module paths, but for those that only gather others.
fn modules_of(room: &str) -> BTreeMap<Vec<String>, PathBuf> {
    let src = source();
    let module = |path: PathBuf| {
        let inner = path.strip_prefix(&src).ok()?.with_extension("");
        let names: Vec<String> = inner.iter().map(|name| name.to_string_lossy().into_owned()).collect();
        (names.last()? != "mod").then_some((names, path))
    };
    files(&src.join(room)).into_iter().filter_map(module).collect()
}

/// The modules that the file of module `from` names.
fn named_by(from: &[String], code: &str, modules: &BTreeMap<Vec<String>, PathBuf>) -> BTreeSet<Vec<String>> {
    let beside = &from[..from.len() - 1];
    let by_super = paths_after(code, "super::").into_iter().map(|path| [beside, &path].concat());
    let all = by_super.chain(paths_after(code, "crate::"));
    let module =
        |path: Vec<String>| (1..=path.len()).rev().map(|n| path[..n].to_vec()).find(|m| modules.contains_key(m));
    all.filter_map(module).filter(|to| to != from && !from.starts_with(to)).collect()
}

#[test]
fn files_of_a_room_name_each_other_in_no_circle() {
    for (room, ..) in ROOMS.iter().filter(|(room, ..)| source().join(room).is_dir()) {
        let modules = modules_of(room);
        let mut left: BTreeMap<Vec<String>, BTreeSet<Vec<String>>> =
            modules.iter().map(|(from, path)| (from.clone(), named_by(from, &code_of(path), &modules))).collect();
        // What names nothing that is left is in no circle.
        loop {
            let free: Vec<_> = left.iter().filter(|(_, to)| to.is_empty()).map(|(from, _)| from.clone()).collect();
            if free.is_empty() {
                break;
            }
            left.retain(|from, _| !free.contains(from));
            left.values_mut().for_each(|to| to.retain(|to| !free.contains(to)));
        }
        let circle: Vec<String> = left.iter().map(|(from, to)| format!("{from:?} names {to:?}")).collect();
        assert!(circle.is_empty(), "\n{}\n", circle.join("\n"));
    }
}

#[test]
fn the_reading_itself_sees_forbidden_arrows() {
    let names = names_after("use crate::{ledger::X, craft::{A, B},\n money};\nuse crate::desk::Y;", "crate::");
    assert_eq!(names.into_iter().collect::<Vec<_>>(), ["craft", "desk", "ledger", "money"]);
    let paths = paths_after("use super::{a::{X as Z, Y}, b, c::d::E};", "super::");
    let paths: Vec<String> = paths.iter().map(|path| path.join("::")).collect();
    assert_eq!(paths, ["a::X", "a::Y", "b", "c::d::E"]);
    let modules = ["gate", "stream"].map(|name| (vec!["room".to_owned(), name.to_owned()], PathBuf::new())).into();
    let named = named_by(&["room".to_owned(), "gate".to_owned()], "use super::{gate::G, stream::S};", &modules);
    assert_eq!(named, [vec!["room".to_owned(), "stream".to_owned()]].into());
}
