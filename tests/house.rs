//! Rules of the house that are read from the source: small files, and a map where there are many.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{
    fs,
    path::{Path, PathBuf},
};

/// Lines of a file at most.
const LONGEST: usize = 400;

/// Longer files, each with the reason why.
const LONG: &[(&str, &str)] =
    &[("tests/renewal.rs", "one browser goes through all of it, since starting one takes long")];

/// A folder with more files than this has a map in its module's docs.
const WITHOUT_A_MAP: usize = 5;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every folder below `folder` with its Rust files.
fn folders(folder: &Path, found: &mut Vec<(PathBuf, Vec<PathBuf>)>) {
    let mut here = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder").flatten() {
        let path = entry.path();
        if path.is_dir() {
            folders(&path, found);
        } else if path.extension().is_some_and(|end| end == "rs") {
            here.push(path);
        }
    }
    here.sort();
    found.push((folder.to_owned(), here));
}

fn name(path: &Path) -> String {
    path.strip_prefix(root()).unwrap_or(path).to_string_lossy().replace('\\', "/")
}

#[test]
fn no_file_is_long_without_a_reason() {
    let mut faults = Vec::new();
    for path in rust_files() {
        let lines = fs::read_to_string(&path).expect("a source file").lines().count();
        let name = name(&path);
        if lines > LONGEST && !LONG.iter().any(|(long, _)| *long == name) {
            faults.push(format!("{name} has {lines} lines, more than {LONGEST}: split it"));
        }
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn a_folder_with_many_files_has_a_map() {
    let mut found = Vec::new();
    folders(&root().join("src"), &mut found);
    let mut faults = Vec::new();
    for (folder, files) in found {
        let is_test = |stem: &str| stem == "tests" || stem.ends_with("_tests");
        let stem = |path: &Path| path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        let stems: Vec<String> =
            files.iter().map(|path| stem(path)).filter(|stem| stem != "mod" && !is_test(stem)).collect();
        let exempt = folder == root().join("src");
        if exempt || stems.len() <= WITHOUT_A_MAP {
            continue;
        }
        let module = [folder.join("mod.rs"), folder.with_extension("rs")].into_iter().find(|path| path.exists());
        let text = module.and_then(|path| fs::read_to_string(path).ok()).unwrap_or_default();
        let map: String = text.lines().filter_map(|line| line.strip_prefix("//!")).collect::<Vec<_>>().join("\n");
        let words: Vec<&str> = map.split(|c: char| !c.is_alphanumeric() && c != '_').collect();
        for stem in stems.iter().filter(|stem| !words.contains(&stem.as_str())) {
            faults.push(format!("{}: the map in its module's docs does not say what {stem} is for", name(&folder)));
        }
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

/// Every Rust file below `src` and `tests`, by its path from the top.
fn rust_files() -> Vec<PathBuf> {
    let mut found = Vec::new();
    folders(&root().join("src"), &mut found);
    folders(&root().join("tests"), &mut found);
    found.into_iter().flat_map(|(_, files)| files).collect()
}

/// What is written in `text` between single backquotes.
fn quoted(text: &str) -> impl Iterator<Item = &str> {
    text.split('`').skip(1).step_by(2)
}

#[test]
fn the_files_and_tests_named_for_contributors_are_there() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).expect("DEVELOPERS.md");
    let mut faults = Vec::new();
    for path in quoted(&text).filter(|path| path.ends_with(".rs") && !path.contains('*')) {
        let places = [root().join("src").join(path), root().join(path)];
        if !places.iter().any(|place| place.exists()) {
            faults.push(format!("there is no file {path}"));
        }
    }
    let tests: Vec<(String, String)> =
        rust_files().iter().map(|path| (name(path), fs::read_to_string(path).expect("a source file"))).collect();
    let words = text.split(|c: char| !c.is_alphanumeric() && c != '_' && c != ':');
    let named: Vec<(&str, &str)> = words.filter_map(|word| word.split_once("::")).collect();
    let of_tests = |file: &str| tests.iter().any(|(path, _)| *path == format!("tests/{file}.rs"));
    let named: Vec<_> = named.into_iter().filter(|(file, test)| of_tests(file) && test.contains('_')).collect();
    assert!(named.len() > 60, "only {} tests are named", named.len());
    for (file, test) in named {
        let (whole, folder) = (format!("tests/{file}.rs"), format!("tests/{file}/"));
        let is_there = |text: &str| {
            let head = text.split_once(&format!("\nfn {test}(")).map(|(before, _)| before.rsplit("\n\n").next());
            head.flatten().is_some_and(|attributes| attributes.contains("#[test]"))
        };
        if !tests.iter().any(|(path, text)| (*path == whole || path.starts_with(&folder)) && is_there(text)) {
            faults.push(format!("there is no test {file}::{test}"));
        }
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}
