//! Changing single entries of a file that somebody also writes by hand: what is not changed stays byte for byte, comments
//! and all.

use super::{
    entries::{Entries, Span, comma_after, end_of_line, indent_at, line_break, with_comments_above},
    mistake::Mistakes,
    parse::parse,
    tree::{Node, Value},
};

/// One step on the way from a file's value to a place in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step<'a> {
    /// The field of this name.
    Field(&'a str),
    /// The item at this place of a list, from 0.
    Item(usize),
}

/// Why a file is not changed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum EditError {
    /// There is no such place in it.
    #[error("there is no {0} in the file")]
    NoPlace(String),
    /// Changed so it would not read any more.
    #[error("the file would not read any more: {0}")]
    WouldNotRead(Mistakes),
}

/// `words` as a text in a file. What ends a line there is written as the reader knows it.
pub fn in_quotes(words: &str) -> String {
    let mut text = String::with_capacity(words.len() + 2);
    text.push('"');
    for c in words.chars() {
        match c {
            '"' => text.push_str("\\\""),
            '\\' => text.push_str("\\\\"),
            '\n' => text.push_str("\\n"),
            '\t' => text.push_str("\\t"),
            c => text.push(c),
        }
    }
    text.push('"');
    text
}

/// A whole file, always one that reads.
#[derive(Debug, Clone, PartialEq)]
pub struct Document {
    /// What the file is called in its mistakes.
    file: String,
    source: String,
    root: Node,
}

impl Document {
    /// Reads a file.
    ///
    /// # Errors
    /// It does not read: who changed it by hand has to mend it first.
    pub fn read(file: &str, source: impl Into<String>) -> Result<Self, Mistakes> {
        let source = source.into();
        let mut mistakes = Vec::new();
        let root = parse(file, &source, &mut mistakes);
        match root {
            Some(root) if mistakes.is_empty() => Ok(Self { file: file.to_owned(), source, root }),
            _ => Err(Mistakes(mistakes)),
        }
    }

    /// The file as it is now.
    pub fn text(&self) -> &str {
        &self.source
    }

    /// Its value.
    pub const fn root(&self) -> &Node {
        &self.root
    }

    /// What stands at a place, if there is one.
    pub fn find(&self, path: &[Step<'_>]) -> Option<&Node> {
        path.iter().try_fold(&self.root, |node, step| match (step, &node.value) {
            (Step::Field(name), Value::Struct { fields, .. }) => {
                fields.iter().find(|field| field.name == *name).map(|field| &field.node)
            }
            (Step::Item(i), Value::List(items) | Value::Tuple { items, .. }) => items.get(*i),
            _ => None,
        })
    }

    /// A value as it is written, with the comments inside it.
    pub fn written(&self, path: &[Step<'_>]) -> Option<&str> {
        self.find(path).map(|node| &self.source[node.at..node.end])
    }

    /// An item of a list as it is written, with the comment lines right above it, which belong to it.
    pub fn written_with_comments(&self, list: &[Step<'_>], i: usize) -> Option<&str> {
        let span = self.dressed(list, i)?;
        Some(&self.source[span.at..span.end])
    }

    /// Writes another value in a place.
    ///
    /// # Errors
    /// There is no such place, or the file would not read any more; then it is as it was.
    pub fn replace(&mut self, path: &[Step<'_>], value: &str) -> Result<(), EditError> {
        self.is_one(value)?;
        let node = self.find(path).ok_or_else(|| no_place(path))?;
        let span = Span { at: node.at, end: node.end };
        self.put(&[(span, value.to_owned())])
    }

    /// Writes another item in the place of one, which goes with the comment lines right above it.
    ///
    /// # Errors
    /// As for [`Self::replace`].
    pub fn replace_with_comments(&mut self, list: &[Step<'_>], i: usize, value: &str) -> Result<(), EditError> {
        let span = self.dressed(list, i).ok_or_else(|| no_place(list))?;
        self.put(&[(span, value.to_owned())])
    }

    /// Writes a field of the struct at `path`: in its place, or behind the others.
    ///
    /// # Errors
    /// As for [`Self::replace`].
    pub fn set_field(&mut self, path: &[Step<'_>], name: &str, value: &str) -> Result<(), EditError> {
        self.is_one(value)?;
        let node = self.find(path).ok_or_else(|| no_place(path))?;
        let Value::Struct { fields, .. } = &node.value else { return Err(no_place(path)) };
        match fields.iter().find(|field| field.name == name) {
            Some(field) => {
                let span = Span { at: field.node.at, end: field.node.end };
                self.put(&[(span, value.to_owned())])
            }
            None => self.insert(path, fields.len(), &format!("{name}: {value}")),
        }
    }

    /// Takes a field out of the struct at `path`; where there is none of that name, nothing happens.
    ///
    /// # Errors
    /// As for [`Self::replace`].
    pub fn remove_field(&mut self, path: &[Step<'_>], name: &str) -> Result<(), EditError> {
        let node = self.find(path).ok_or_else(|| no_place(path))?;
        let Value::Struct { fields, .. } = &node.value else { return Err(no_place(path)) };
        match fields.iter().position(|field| field.name == name) {
            Some(i) => self.remove(path, i),
            None => Ok(()),
        }
    }

    /// Writes a new item before item `i` of the list at `path`, or behind the last.
    ///
    /// # Errors
    /// As for [`Self::replace`].
    pub fn insert_item(&mut self, path: &[Step<'_>], i: usize, value: &str) -> Result<(), EditError> {
        self.is_one(value)?;
        self.insert(path, i, value)
    }

    /// Takes item `i` out of the list at `path`.
    ///
    /// # Errors
    /// As for [`Self::replace`].
    pub fn remove_item(&mut self, path: &[Step<'_>], i: usize) -> Result<(), EditError> {
        self.remove(path, i)
    }

    fn dressed(&self, list: &[Step<'_>], i: usize) -> Option<Span> {
        let entries = Entries::of(&self.source, self.find(list)?)?;
        let span = *entries.spans.get(i)?;
        let behind = match i.checked_sub(1) {
            None => entries.opened,
            // The comment in the line of the entry before is that one's.
            Some(before) => {
                let end = entries.spans[before].end;
                let end = comma_after(&self.source, end).map_or(end, |comma| comma + 1);
                end_of_line(&self.source, end, span.at).unwrap_or(span.at)
            }
        };
        Some(Span { at: with_comments_above(&self.source, span.at, behind), end: span.end })
    }

    fn insert(&mut self, path: &[Step<'_>], i: usize, entry: &str) -> Result<(), EditError> {
        let node = self.find(path).ok_or_else(|| no_place(path))?;
        let entries = Entries::of(&self.source, node).ok_or_else(|| no_place(path))?;
        let count = entries.spans.len();
        if i > count {
            return Err(no_place(path));
        }
        let source = &self.source;
        let before = i.checked_sub(1);
        let next = entries.next_after(before);
        // Behind the comma of the entry before; one is written where there is none.
        let end = before.map_or(entries.opened, |before| entries.spans[before].end);
        let comma = before.and_then(|_| comma_after(source, end)).filter(|comma| *comma < entries.closed);
        let mut changes = Vec::new();
        if before.is_some() && comma.is_none() {
            changes.push((Span { at: end, end }, ",".to_owned()));
        }
        let from = comma.map_or(end, |comma| comma + 1);
        // The last entry has a comma if the one before it had one.
        let closing = if i < count || comma.is_some() || count == 0 { "," } else { "" };
        let (at, text) = match end_of_line(source, from, next) {
            Some(at) => {
                let indent = match (before, entries.spans.get(i)) {
                    (Some(before), _) => indent_at(source, entries.spans[before].at).to_owned(),
                    (None, Some(span)) => indent_at(source, span.at).to_owned(),
                    (None, None) => format!("{}    ", indent_at(source, entries.opened)),
                };
                (at, format!("{}{indent}{entry}{closing}", line_break(source)))
            }
            // In the same line, behind comments that belong to the entry before.
            None if before.is_some() => {
                let closing = if i < count || comma.is_some() { "," } else { "" };
                (from + source[from..next].trim_end().len(), format!(" {entry}{closing}"))
            }
            None => {
                let blanks = source[from..next].len() - source[from..next].trim_start().len();
                (from + blanks, format!("{entry}{}", if count > 0 { ", " } else { "" }))
            }
        };
        changes.push((Span { at, end: at }, text));
        self.put(&changes)
    }

    fn remove(&mut self, path: &[Step<'_>], i: usize) -> Result<(), EditError> {
        let node = self.find(path).ok_or_else(|| no_place(path))?;
        let entries = Entries::of(&self.source, node).ok_or_else(|| no_place(path))?;
        let span = *entries.spans.get(i).ok_or_else(|| no_place(path))?;
        let source = &self.source;
        let comma = comma_after(source, span.end).filter(|comma| *comma < entries.closed);
        let mut changes = vec![(span, String::new())];
        let end = match comma {
            // Comments between the entry and its comma stay.
            Some(comma) if !source[span.end..comma].trim().is_empty() => {
                changes.push((Span { at: comma, end: comma + 1 }, String::new()));
                comma + 1
            }
            Some(comma) => {
                changes[0].0.end = comma + 1;
                comma + 1
            }
            None => span.end,
        };
        // The blanks of a line that has nothing else in it go with it.
        let line = source[..span.at].rfind('\n').map_or(0, |newline| newline + 1);
        let rest = source[end..].find('\n').map(|newline| end + newline + 1);
        let is_alone = changes.len() == 1 && source[line..span.at].trim().is_empty();
        match rest {
            Some(rest) if is_alone && line > entries.opened && source[end..rest].trim().is_empty() => {
                changes[0].0 = Span { at: line, end: rest };
            }
            _ => {
                let blanks = source[end..].len() - source[end..].trim_start_matches([' ', '\t']).len();
                if let Some(last) = changes.last_mut() {
                    last.0.end += blanks;
                }
            }
        }
        self.put(&changes)
    }

    /// Whether what is going to be written is one value, and not a value and something beside it.
    fn is_one(&self, value: &str) -> Result<(), EditError> {
        Self::read(&self.file, value).map(|_| ()).map_err(EditError::WouldNotRead)
    }

    /// Writes texts in places, given in their order, if the file reads then.
    fn put(&mut self, changes: &[(Span, String)]) -> Result<(), EditError> {
        let mut source = self.source.clone();
        for (span, text) in changes.iter().rev() {
            source.replace_range(span.at..span.end, text);
        }
        *self = Self::read(&self.file, source).map_err(EditError::WouldNotRead)?;
        Ok(())
    }
}

/// The place as the file would have it, which every reader understands: `rows[2].price`.
fn no_place(path: &[Step<'_>]) -> EditError {
    let mut place = String::new();
    for step in path {
        match step {
            Step::Field(name) if place.is_empty() => place.push_str(name),
            Step::Field(name) => place.extend([".", name]),
            Step::Item(i) => place.push_str(&format!("[{}]", i + 1)),
        }
    }
    EditError::NoPlace(if place.is_empty() { "( )".to_owned() } else { place })
}
