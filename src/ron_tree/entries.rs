//! Where the entries of a bracket stand with what belongs to them: the comma behind one, the comment above it, the rest of its
//! line.

use super::{
    look_ahead::{past, past_blanks},
    tree::{Node, Value},
};

/// Where an entry stands: a field with its name, or an item of a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Span {
    pub at: usize,
    pub end: usize,
}

/// The entries of a bracket in their order, and where the bracket itself opens and closes.
pub(super) struct Entries {
    pub spans: Vec<Span>,
    /// The byte behind the opening bracket.
    pub opened: usize,
    /// The byte of the closing one.
    pub closed: usize,
}

impl Entries {
    /// Those of `node`; `None` where it is no bracket.
    pub(super) fn of(source: &str, node: &Node) -> Option<Self> {
        let spans = match &node.value {
            Value::Struct { fields, .. } => {
                fields.iter().map(|field| Span { at: field.at, end: field.node.end }).collect()
            }
            Value::List(items) | Value::Tuple { items, .. } => {
                items.iter().map(|item| Span { at: item.at, end: item.end }).collect()
            }
            Value::Text(_) | Value::Number(_) | Value::Word(_) => return None,
        };
        let mut opened = node.at;
        // A name may stand before the bracket, and a comment behind that.
        while !source[opened..].starts_with(['(', '[']) {
            opened = past(source, opened);
        }
        Some(Self { spans, opened: opened + 1, closed: node.end - 1 })
    }

    /// Where the next entry begins behind entry `i`, or the closing bracket stands.
    pub(super) fn next_after(&self, i: Option<usize>) -> usize {
        let next = i.map_or(0, |i| i + 1);
        self.spans.get(next).map_or(self.closed, |span| span.at)
    }
}

/// The byte of the comma that follows at `from`, behind nothing but blanks and comments.
pub(super) fn comma_after(source: &str, from: usize) -> Option<usize> {
    let at = past_blanks(source, from);
    source[at..].starts_with(',').then_some(at)
}

/// Where the line ends that goes on at `from`, over comments, before `until`; `None` where `until` stands in the same line.
pub(super) fn end_of_line(source: &str, from: usize, until: usize) -> Option<usize> {
    let mut at = from;
    while at < until {
        if source[at..].starts_with('\n') {
            let has_return = source[from..at].ends_with('\r');
            return Some(at - usize::from(has_return));
        }
        at = past(source, at);
    }
    None
}

/// What parts the lines of a file.
pub(super) fn line_break(source: &str) -> &'static str {
    if source.contains("\r\n") { "\r\n" } else { "\n" }
}

/// The blanks with which the line begins in which byte `at` stands.
pub(super) fn indent_at(source: &str, at: usize) -> &str {
    let begins = source[..at].rfind('\n').map_or(0, |newline| newline + 1);
    let line = &source[begins..];
    &line[..line.find(|c: char| !matches!(c, ' ' | '\t')).unwrap_or(line.len())]
}

/// Where an entry begins with the comment lines that stand right above it: those belong to it and go where it goes.
pub(super) fn with_comments_above(source: &str, at: usize, not_before: usize) -> usize {
    let mut begins = at;
    loop {
        let line = source[..begins].rfind('\n').map_or(0, |newline| newline + 1);
        let is_first_of_line = source[line..begins].trim().is_empty();
        if !is_first_of_line || line <= not_before {
            return begins;
        }
        let above = source[..line - 1].rfind('\n').map_or(0, |newline| newline + 1);
        let words = source[above..line].trim();
        let is_remark =
            words.starts_with("//") || (words.starts_with("/*") && words.find("*/") == Some(words.len() - 2));
        if !is_remark || above < not_before {
            return begins;
        }
        begins = above + source[above..line].find('/').unwrap_or(0);
    }
}
