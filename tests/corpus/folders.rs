//! A catalogue's folder with files without end, of nothing but mistakes, or with a bracket too few.

use std::{
    fs,
    path::Path,
    sync::mpsc,
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    catalog::{Loaded, read_folder},
    ron_tree::Mistakes,
};

use crate::checks::{are_told_well, catalogue::write_good};

/// Reads a folder, and gives up on a reader that waits for good.
fn read_soon(folder: &Path) -> Result<Loaded, Mistakes> {
    let (tell, told) = mpsc::channel();
    let folder = folder.to_owned();
    thread::spawn(move || tell.send(read_folder(&folder)));
    told.recv_timeout(Duration::from_secs(20)).expect("the folder is read before long")
}

pub fn good() -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    write_good(dir.path());
    dir
}

/// The one mistake of a folder begins and ends so.
pub fn says(folder: &Path, file: &str, words: &str) {
    let mistakes = read_soon(folder).expect_err(file);
    are_told_well(&mistakes, |_| None);
    let told =
        |mistake: &chatelaine::ron_tree::Mistake| mistake.file == file && mistake.found.english().contains(words);
    assert!(mistakes.0.iter().any(told), "{file} should say {words:?}, told was {mistakes}");
}

#[test]
fn files_without_end_are_told_with_the_limit() {
    let dir = good();
    let path = dir.path().join("bases.ron");
    let whole = fs::read_to_string(&path).expect("a file");
    fs::write(&path, whole.clone() + &" ".repeat(4 << 20)).expect("written");
    says(dir.path(), "bases.ron", "the file is larger than 4 MB");
    fs::write(&path, &whole).expect("written");
    let picture = dir.path().join("pictures/key.png");
    let mut bytes = fs::read(&picture).expect("a picture");
    bytes.resize((16 << 20) + 1, 0);
    fs::write(&picture, bytes).expect("written");
    says(dir.path(), "trays/a.ron", "pictures/key.png is larger than 16 MB");
}

/// A file as long as it may be, of nothing but mistakes: told with a hundred of them, before long.
#[test]
fn a_file_of_nothing_but_mistakes_is_told_soon() {
    let most = (4 << 20) - 10;
    for piece in [",", "(,", "\"\n", "a:", "x ", "[", "\"\",", "(x:1,", "x:1,", "(x:1),", "\u{202e}", "/*", "\\"] {
        let dir = good();
        let text = format!("[({}", piece.repeat(most / piece.len()));
        fs::write(dir.path().join("trays/a.ron"), text).expect("written");
        let began = Instant::now();
        let mistakes = read_soon(dir.path()).expect_err(piece);
        are_told_well(&mistakes, |_| None);
        assert!(mistakes.0.len() <= 110, "{piece:?}: {} mistakes", mistakes.0.len());
        println!("{piece:?}: {} mistakes in {:.2} s", mistakes.0.len(), began.elapsed().as_secs_f64());
    }
}

/// A decoder that breaks its words into lines breaks no message: here of a JPEG with a marker that is none.
#[test]
fn what_a_decoder_says_is_one_line() {
    let dir = good();
    let picture = dir.path().join("pictures/leaf.jpg");
    let whole = fs::read(&picture).expect("a picture");
    for at in 0..whole.len() {
        for byte in [0x00, 0xff, 0x01] {
            let mut spoiled = whole.clone();
            spoiled[at] = byte;
            fs::write(&picture, &spoiled).expect("written");
            if let Err(mistakes) = read_folder(dir.path()) {
                are_told_well(&mistakes, |_| None);
            }
        }
    }
}

/// Where a bracket of a whole file is taken away, a message stands at a bracket that is open there.
#[test]
fn a_bracket_that_is_missing_is_told_where_it_was_opened() {
    let mut exact = 0;
    let mut all = 0;
    for file in ["bases.ron", "trays/a.ron", "table.ron"] {
        let text = String::from_utf8(crate::checks::catalogue::good(file).to_vec()).expect("a text");
        for (at, _) in text.match_indices([')', ']']).filter(|(at, _)| !is_in_a_text(&text, *at)) {
            let open = open_brackets(&text[..at]);
            let broken = format!("{}{}", &text[..at], &text[at + 1..]);
            let mistakes = crate::checks::catalogue::with_file(file, broken.as_bytes()).expect_err("it is broken");
            let places: Vec<(usize, usize)> = open.iter().map(|at| place(&text, *at)).collect();
            let told = mistakes.0.iter().filter(|mistake| mistake.found.english().contains("is never closed"));
            let told: Vec<(usize, usize)> = told.map(|mistake| (mistake.line, mistake.column)).collect();
            assert!(told.iter().any(|at| places.contains(at)), "{file} without byte {at}: {mistakes}");
            all += 1;
            exact += usize::from(places.last().is_some_and(|last| told.contains(last)));
        }
    }
    println!("{exact} of {all} at the very bracket");
    assert!(all > 30 && exact * 10 >= all * 6, "{exact} of {all}");
}

fn is_in_a_text(text: &str, at: usize) -> bool {
    let line = text[..at].rfind('\n').map_or(0, |newline| newline + 1);
    text[line..at].matches('"').count() % 2 == 1 || text[line..at].contains("//")
}

/// The brackets that are open at the end of `text`.
fn open_brackets(text: &str) -> Vec<usize> {
    let mut open = Vec::new();
    for (at, bracket) in text.match_indices(['(', '[', ')', ']']).filter(|(at, _)| !is_in_a_text(text, *at)) {
        if matches!(bracket, "(" | "[") {
            open.push(at);
        } else {
            open.pop();
        }
    }
    open
}

/// Line and column, from 1.
fn place(text: &str, at: usize) -> (usize, usize) {
    let line = text[..at].rfind('\n').map_or(0, |newline| newline + 1);
    (text[..at].matches('\n').count() + 1, text[line..at].chars().count() + 1)
}
