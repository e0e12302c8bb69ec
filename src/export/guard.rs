//! Words in which a spreadsheet reads no formula.

use std::borrow::Cow;

use crate::quoting::is_never_seen;

/// What keeps a spreadsheet from reading on as a formula.
const GUARD: char = '\'';

/// `text` with an apostrophe before everything that begins a formula at the beginning of a cell. Cells can begin at the front
/// and, for who reads the file with another separator or other quotes than it was written with, after a separator, a quote or
/// a line break.
///
/// Source: OWASP, CSV Injection (`=`, `+`, `-`, `@`, tab, carriage return, line feed; separators and quotes before them);
/// OWASP ASVS 5.0, 1.2.10 (the null character). The wide signs of East Asian keyboards, which some spreadsheets take for the
/// plain ones, are from memory. Unseen characters and blanks before a sign are looked through.
pub(super) fn guarded(text: &str) -> Cow<'_, str> {
    let mut safe = String::new();
    let mut copied = 0;
    let mut may_begin = true;
    for (at, c) in text.char_indices() {
        if may_begin && (begins_formula(c) || (at == 0 && matches!(c, '\t' | '\r' | '\n' | '\0'))) {
            safe.push_str(&text[copied..at]);
            safe.push(GUARD);
            copied = at;
        }
        may_begin = ends_cell(c) || (may_begin && is_blank(c));
    }
    if copied == 0 && safe.is_empty() {
        return Cow::Borrowed(text);
    }
    safe.push_str(&text[copied..]);
    Cow::Owned(safe)
}

/// The four signs, wide (U+FF0B …) and small (U+FE62 …) ones too.
const fn begins_formula(c: char) -> bool {
    matches!(c, '=' | '+' | '-' | '@' | '＝' | '＋' | '－' | '＠' | '﹦' | '﹢' | '﹣' | '﹫')
}

const fn ends_cell(c: char) -> bool {
    matches!(c, ',' | ';' | '"' | '\t' | '\r' | '\n')
}

fn is_blank(c: char) -> bool {
    c.is_whitespace() || c.is_control() || is_never_seen(c)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The characters and examples of OWASP's page on CSV Injection; its two examples have a guard more here, where a cell could
    /// begin in the middle.
    #[test]
    fn what_owasp_lists_begins_no_cell() {
        for sign in ['=', '+', '-', '@', '\t', '\r', '\n', '\0', '＝', '＋', '－', '＠'] {
            let text = format!("{sign}1+2");
            assert_eq!(guarded(&text), format!("'{sign}1+2"));
        }
        for (input, wanted) in [
            ("=1+2\";=1+2", "'=1+2\";'=1+2"),
            ("=1+2'\" ;,=1+2", "'=1+2'\" ;,'=1+2"),
            ("=cmd|' /C calc'!A0", "'=cmd|' /C calc'!A0"),
            (";=1+2", ";'=1+2"),
            ("\"=1+2", "\"'=1+2"),
            ("\t=1", "'\t'=1"),
            ("\u{feff} \u{a0}@SUM(A1)", "\u{feff} \u{a0}'@SUM(A1)"),
            ("silver\r\n+1", "silver\r\n'+1"),
        ] {
            assert_eq!(guarded(input), wanted, "{input:?}");
        }
    }

    #[test]
    fn plain_words_stay_as_they_are_and_a_guard_is_set_once() {
        for text in
            ["", "B3", "moon & star", "8-inch", "a=b", "4 + 5", "e@f", "Zoë, clé; 3", "\"quoted\"", "it's", "−5"]
        {
            assert!(matches!(guarded(text), Cow::Borrowed(same) if same == text), "{text}");
        }
        for text in ["=1", "a;=1\n-2", "\t\t@x", "\"\"=="] {
            let once = guarded(text);
            assert_eq!(guarded(&once), once);
        }
    }
}
