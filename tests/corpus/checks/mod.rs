//! What has to hold whatever is handed over: no panic, a message of one line that says what and where, and nothing changed.
//! The kept inputs, the spoiled ones and the fuzz targets are all held to these.

pub mod catalogue;
pub mod delivery;
pub mod desk;
pub mod tablet;
pub mod text;

use chatelaine::{
    lang::{Lang, Texts},
    ron_tree::Mistakes,
};

/// Characters of one message at most, its file and place included.
const LONGEST: usize = 1900;

/// A message is one line of a bearable length in which every character can be seen.
pub fn is_one_line(message: &str) {
    assert!(!message.trim().is_empty(), "nothing is said");
    let count = message.chars().count();
    assert!(count <= LONGEST, "a message of {count} characters: {:.200}", message);
    let hidden = |c: char| {
        c.is_control() || matches!(c, '\u{200b}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}')
    };
    if let Some(c) = message.chars().find(|c| hidden(*c)) {
        panic!("{c:?} stands in the message {message:?}");
    }
}

/// Each mistake names its file, stands in it, and says what was found and what would be right; there are some, and not
/// without end.
pub fn are_told_well(mistakes: &Mistakes, source_of: impl Fn(&str) -> Option<Vec<u8>>) {
    assert!(!mistakes.0.is_empty(), "refused without a word");
    assert!(mistakes.0.len() <= 2000, "{} mistakes", mistakes.0.len());
    for mistake in &mistakes.0 {
        is_one_line(&mistake.to_string());
        for lang in Lang::ALL {
            is_one_line(&Texts::of(lang).mistake(mistake));
        }
        let (found, expected) = (mistake.found.english(), mistake.expected.english());
        assert!(!mistake.file.is_empty() && !found.is_empty() && !expected.is_empty(), "{mistake:?}");
        if let (Some(source), line @ 1..) = (source_of(&mistake.file), mistake.line) {
            let lines = source.iter().filter(|byte| **byte == b'\n').count() + 1;
            assert!(line <= lines && mistake.column >= 1, "{mistake} stands beyond {lines} lines");
        }
    }
}
