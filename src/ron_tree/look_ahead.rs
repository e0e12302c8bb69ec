//! What comes further on in a file: where an item ends, and which bracket is closed first.

/// How far is looked for the bracket that closes, in bytes: more than the files of a large table have.
const LOOK_AHEAD: usize = 100_000;

/// A bracket that is not closed yet.
#[derive(Clone, Copy)]
pub(super) struct Opened {
    /// The byte at which it stands.
    pub at: usize,
    /// What closes it.
    pub close: char,
    /// Whether what stands in it are fields.
    pub has_fields: bool,
}

/// Whether, from byte `from` on, a bracket of `outer` or the end of the file comes before one that closes with `own`. Where
/// neither comes for a long way, nothing is known of it.
pub(super) fn closes_first(source: &str, from: usize, outer: &[Opened], own: char) -> bool {
    let mut at = from;
    let mut depth = 0usize;
    while let Some(c) = source[at..].chars().next() {
        if at - from > LOOK_AHEAD {
            return false;
        }
        match c {
            '(' | '[' => depth += 1,
            ')' | ']' if depth > 0 => depth -= 1,
            ')' | ']' => return c != own && outer.iter().any(|one| one.close == c),
            _ => {}
        }
        at = past(source, at);
    }
    true
}

/// The next comma or closing bracket of this level, over texts, comments and nested brackets; the end where there is none.
pub(super) fn end_of_item(source: &str, from: usize) -> usize {
    let mut at = from;
    let mut depth = 0usize;
    while let Some(c) = source[at..].chars().next() {
        match c {
            '(' | '[' => depth += 1,
            ')' | ']' if depth > 0 => depth -= 1,
            ',' | ')' | ']' if depth == 0 => break,
            _ => {}
        }
        at = past(source, at);
    }
    at
}

/// The byte behind all blanks and comments at byte `from`.
pub(super) fn past_blanks(source: &str, from: usize) -> usize {
    let mut at = from;
    loop {
        let rest = &source[at..];
        let is_blank = rest.starts_with(char::is_whitespace) || rest.starts_with("//") || rest.starts_with("/*");
        if !is_blank {
            return at;
        }
        at = past(source, at);
    }
}

/// The byte behind the text, the comment or the character at byte `at`. A text without its closing quote ends with its line.
pub(super) fn past(source: &str, at: usize) -> usize {
    let rest = &source[at..];
    let first = rest.chars().next();
    at + if first == Some('"') {
        let mut is_escaped = false;
        let closing = rest[1..].find(|c| {
            let ends = c == '\n' || (c == '"' && !is_escaped);
            is_escaped = c == '\\' && !is_escaped;
            ends
        });
        closing.map_or(rest.len(), |end| end + 2)
    } else if rest.starts_with("//") {
        rest.find('\n').unwrap_or(rest.len())
    } else if rest.starts_with("/*") {
        rest.find("*/").map_or(rest.len(), |end| end + 2)
    } else {
        first.map_or(0, char::len_utf8)
    }
}
