//! What is said of the maker's files says the same in the code and in the four languages.

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::{Path, PathBuf},
};

use super::{Lang, Stretch, Texts, keys, language::NBSP};
use crate::ron_tree::{Detail, Part, detail, what};

/// A page writes what the terminal writes with other signs.
fn plain(text: &str) -> String {
    text.replace(NBSP, " ").replace('’', "'")
}

fn sources(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    entries.flat_map(|path| if path.is_dir() { sources(&path) } else { vec![path] }).collect()
}

/// The text in quotes with which `code` begins, as the compiler reads it, and what follows.
fn quoted(code: &str) -> Option<(String, &str)> {
    let mut text = String::new();
    let mut rest = code.strip_prefix('"')?;
    loop {
        let c = rest.chars().next()?;
        rest = &rest[c.len_utf8()..];
        match c {
            '"' => return Some((text, rest)),
            // A line that goes on: the blanks before its next word are none of it.
            '\\' if rest.starts_with('\n') => rest = rest.trim_start(),
            '\\' => {
                let c = rest.chars().next()?;
                rest = &rest[c.len_utf8()..];
                text.push(c);
            }
            c => text.push(c),
        }
    }
}

/// Every detail of the program: its key, and its English with its places as the texts write them.
fn of_the_code() -> BTreeMap<String, String> {
    let mut all = BTreeMap::new();
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let is_read = |path: &PathBuf| !path.ends_with("detail_tests.rs") && !path.ends_with("ron_tree/detail.rs");
    for path in sources(&src).into_iter().filter(is_read) {
        let code = fs::read_to_string(&path).unwrap();
        for start in ["detail!(", " what(", "(what("] {
            for (at, _) in code.match_indices(start) {
                let inside = code[at + start.len()..].trim_start();
                let Some((key, rest)) = quoted(inside) else { continue };
                let Some((english, _)) = rest.strip_prefix(',').and_then(|rest| quoted(rest.trim_start())) else {
                    panic!("{}: {key} without its English", path.display());
                };
                let english = english.replace('{', "{ $").replace('}', " }");
                if let Some(other) = all.insert(key.clone(), english.clone()) {
                    assert_eq!(other, english, "{}: {key} says two things", path.display());
                }
            }
        }
    }
    all
}

/// The texts of a language's file, by their keys.
fn of_the_file(lang: Lang) -> BTreeMap<String, String> {
    let path = format!("assets/lang/{}/mistakes.ftl", lang.code());
    let file = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(path)).unwrap();
    let lines = file.lines().filter_map(|line| line.split_once(" = "));
    lines.map(|(key, text)| (key.to_owned(), plain(text))).collect()
}

#[test]
fn code_and_english_file_say_the_same_of_every_kind_of_mistake() {
    let (code, file) = (of_the_code(), of_the_file(Lang::En));
    assert!(code.len() > 300, "{} are found in the code", code.len());
    for (key, english) in &code {
        assert_eq!(file.get(key), Some(english), "{key}");
    }
    let unused: BTreeSet<&String> = file.keys().filter(|key| !code.contains_key(*key)).collect();
    assert!(unused.is_empty(), "no detail of the code has these: {unused:?}");
}

/// A whole sentence is another one in every language; a single word may be the same, as bronze is.
#[test]
fn nothing_is_left_in_english() {
    let english = of_the_file(Lang::En);
    for lang in [Lang::De, Lang::Es, Lang::Fr] {
        let file = of_the_file(lang);
        assert_eq!(file.keys().collect::<Vec<_>>(), english.keys().collect::<Vec<_>>(), "{lang:?}");
        for (key, text) in &file {
            let words = text.split(' ').filter(|word| word.chars().all(char::is_alphabetic)).count();
            assert!(words < 2 || *text != english[key], "{lang:?}: {key} = {text}");
        }
        let all: BTreeSet<String> = keys(lang).into_iter().collect();
        assert!(file.keys().all(|key| all.contains(key)), "{lang:?}: the file is among those that are read");
    }
}

#[test]
fn a_detail_in_a_detail_is_worded_as_well_and_what_is_foreign_is_marked() {
    let why = Part::foreign(&"No such\nfile\u{1}");
    let told =
        detail!("wrong-unread", "{file} can't be read ({why})", file = what("the-folder", "the folder"), why = why);
    assert_eq!(told.english(), "the folder can't be read (No such\\nfile\\u{1})");
    let stretches = Texts::of(Lang::De).detail(&told);
    let words: Vec<(&str, bool)> =
        stretches.iter().map(|Stretch { words, is_foreign }| (words.as_str(), *is_foreign)).collect();
    let wanted = [("der Ordner lässt sich nicht lesen (", false), ("No such\\nfile\\u{1}", true), (")", false)];
    assert_eq!(words, wanted);
    assert_eq!(plain(&Texts::of(Lang::En).detail_words(&told)), told.english());
    assert_eq!(Texts::of(Lang::En).detail(&told).len(), 1, "in English nothing is foreign");
    // A text that nobody has written yet is told in English.
    let unknown: Detail = Detail::new("wrong-and-not-in-any-file", "as it is", vec![]);
    assert_eq!(Texts::of(Lang::Fr).detail_words(&unknown), "as it is");
}
