//! Reading RON as a tree. A place that does not parse is told and skipped up to the next comma; a bracket that is never
//! closed is told where it was opened.

use super::{
    detail::{Detail, Part, detail, what},
    look_ahead::{Opened, closes_first, end_of_item, past, past_blanks},
    mistake::{MOST, Mistake, tell},
    tree::{Field, Node, Value},
};
use crate::quoting::{excerpt, quoted};

/// Deeper nesting than any catalogue has; a file beyond it is damaged or hostile.
const MAX_DEPTH: usize = 32;

/// Reads `source`; what does not parse is added to `mistakes`.
pub(super) fn parse(file: &str, source: &str, mistakes: &mut Vec<Mistake>) -> Option<Node> {
    let mut parser = Parser {
        file,
        source,
        at: 0,
        opened: vec![],
        left_open: false,
        lost_brackets: false,
        is_over: false,
        mistakes,
    };
    let node = parser.value();
    if node.is_some() && !parser.is_over {
        parser.space();
        if parser.at < source.len() {
            parser.wrong(
                detail!("wrong-after-the-end", "something after the end of the file's value"),
                detail!("right-nothing-after", "remove it, or a bracket was closed too early"),
            );
        }
    }
    node
}

struct Parser<'a> {
    file: &'a str,
    source: &'a str,
    at: usize,
    /// The brackets around this place, the outermost first.
    opened: Vec<Opened>,
    /// Whether the last item ended where another begins, since its bracket was never closed.
    left_open: bool,
    /// Whether a text without its closing quote has taken brackets along: then nobody can tell which are never closed.
    lost_brackets: bool,
    /// Whether nothing more is read: there are too many mistakes, or too many brackets.
    is_over: bool,
    mistakes: &'a mut Vec<Mistake>,
}

fn is_of_word(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}

impl Parser<'_> {
    fn rest(&self) -> &str {
        &self.source[self.at..]
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    fn wrong(&mut self, found: Detail, expected: Detail) {
        self.wrong_at(self.at, found, expected);
    }

    fn wrong_at(&mut self, at: usize, found: Detail, expected: Detail) {
        tell(self.mistakes, || Mistake::at(self.file, self.source, at, found, expected));
        self.is_over |= self.mistakes.len() >= MOST;
    }

    /// Skips blanks and comments.
    fn space(&mut self) {
        loop {
            let blank = self.rest().len() - self.rest().trim_start().len();
            self.at += blank;
            let trimmed = &self.source[self.at..];
            if trimmed.starts_with("//") {
                self.at += trimmed.find('\n').unwrap_or(trimmed.len());
            } else if trimmed.starts_with("/*") {
                match trimmed.find("*/") {
                    Some(end) => self.at += end + 2,
                    None => {
                        self.wrong(
                            detail!("wrong-comment", "a comment /* that never ends"),
                            detail!("right-comment", "end it with */"),
                        );
                        self.at = self.source.len();
                    }
                }
            } else {
                return;
            }
        }
    }

    fn eat(&mut self, c: char) -> bool {
        let found = self.rest().starts_with(c);
        if found {
            self.at += c.len_utf8();
        }
        found
    }

    fn here(&self) -> Detail {
        detail!("wrong-here", "{here}", here = self.stands_here())
    }

    fn stands_here(&self) -> Part {
        match self.peek() {
            None => what("here-end", "the end of the file").into(),
            Some(c) if is_of_word(c) => Part::from(quoted(self.word_here())),
            Some(c) => Part::from(quoted(&c.to_string())),
        }
    }

    /// The word that begins here; empty where none does.
    fn word_here(&self) -> &str {
        let rest = self.rest();
        &rest[..rest.find(|c| !is_of_word(c)).unwrap_or(rest.len())]
    }

    fn value(&mut self) -> Option<Node> {
        self.space();
        let at = self.at;
        // A word ends before the blanks behind it, in which a bracket may be looked for.
        let mut end_of_word = None;
        let value = match self.peek() {
            Some('"') => self.text().map(Value::Text),
            Some('[') => self.list(),
            Some('(') => self.group(None),
            Some(c) if c.is_ascii_digit() || matches!(c, '-' | '+' | '.') => Some(Value::Number(self.number())),
            Some(c) if c.is_alphabetic() || c == '_' => {
                let word = self.word();
                end_of_word = Some(self.at);
                self.space();
                if self.peek() == Some('(') {
                    end_of_word = None;
                    self.group(Some(word))
                } else {
                    Some(Value::Word(word))
                }
            }
            _ => {
                let found = self.here();
                let expected = detail!(
                    "right-value",
                    "expected a value: a text in quotes, a word, a group in ( ) or a list in [ ]"
                );
                self.wrong(found, expected);
                None
            }
        };
        value.map(|value| Node { at, end: end_of_word.unwrap_or(self.at), value })
    }

    fn word(&mut self) -> String {
        let word = self.word_here().to_owned();
        self.at += word.len();
        word
    }

    fn number(&mut self) -> String {
        let rest = self.rest();
        let end = rest.find(|c: char| !c.is_ascii_alphanumeric() && !matches!(c, '-' | '+' | '.' | '_'));
        let number = rest[..end.unwrap_or(rest.len())].to_owned();
        self.at += number.len();
        number
    }

    fn text(&mut self) -> Option<String> {
        let start = self.at;
        let mut text = String::new();
        let mut chars = self.source[start + 1..].char_indices();
        while let Some((i, c)) = chars.next() {
            match c {
                '"' => {
                    self.at = start + 1 + i + 1;
                    return Some(text);
                }
                '\n' => break,
                '\\' => match chars.next() {
                    Some((_, c @ ('"' | '\\'))) => text.push(c),
                    Some((_, 'n')) => text.push('\n'),
                    Some((_, 't')) => text.push('\t'),
                    _ => {
                        let found = detail!("wrong-backslash", "a backslash before a character that needs none");
                        let expected = detail!("right-backslash", "write \\\\ for a backslash");
                        self.wrong_at(start + 1 + i, found, expected);
                        self.at = past(self.source, start);
                        return None;
                    }
                },
                c => text.push(c),
            }
        }
        self.wrong(
            detail!("wrong-quote", "a text whose closing quote is missing"),
            detail!("right-quote", "end it with \" on the same line"),
        );
        // The rest of the line belongs to the broken text.
        let rest = &self.source[start..];
        let taken = &rest[..rest.find('\n').unwrap_or(rest.len())];
        self.lost_brackets |= taken.contains([')', ']', '(', '[']);
        self.at = start + taken.len();
        None
    }

    /// `[ … ]`. What could be read of one that is never closed is kept: its mistake is told.
    fn list(&mut self) -> Option<Value> {
        self.open(']')?;
        let mut items = Vec::new();
        self.separated(|parser| parser.item(&mut items));
        Some(Value::List(items))
    }

    fn item(&mut self, items: &mut Vec<Node>) -> bool {
        let node = self.value();
        let is_read = node.is_some();
        items.extend(node);
        is_read
    }

    /// `( … )` after its optional name: a struct if it holds `name: value`, else a tuple.
    fn group(&mut self, name: Option<String>) -> Option<Value> {
        self.open(')')?;
        self.space();
        let has_fields = self.is_field();
        if let Some(opened) = self.opened.last_mut() {
            opened.has_fields = has_fields;
        }
        if has_fields {
            let mut fields = Vec::new();
            let is_closed = self.separated(|parser| parser.field(&mut fields));
            return is_closed.then_some(Value::Struct { name, fields });
        }
        let mut items = Vec::new();
        let is_closed = self.separated(|parser| parser.item(&mut items));
        is_closed.then_some(match items.is_empty() {
            true => Value::Struct { name, fields: vec![] },
            false => Value::Tuple { name, items },
        })
    }

    fn field(&mut self, fields: &mut Vec<Field>) -> bool {
        let at = self.at;
        let name = self.word();
        if name.is_empty() {
            let found = self.here();
            self.wrong(found, detail!("right-field", "expected a field, as in {example}", example = "name: \"…\""));
            return false;
        }
        self.space();
        if !self.eat(':') {
            let found = self.here();
            self.wrong(found, detail!("right-colon", "expected a colon after {name}", name = excerpt(&name)));
            return false;
        }
        let node = self.value();
        let is_read = node.is_some();
        fields.extend(node.map(|node| Field { at, name, node }));
        is_read
    }

    /// Whether `name:` stands here.
    fn is_field(&self) -> bool {
        let word = self.word_here().len();
        word > 0 && self.source[past_blanks(self.source, self.at + word)..].starts_with(':')
    }

    /// Goes into the bracket that stands here.
    fn open(&mut self, close: char) -> Option<()> {
        if self.opened.len() >= MAX_DEPTH {
            self.wrong(
                detail!("wrong-too-deep", "brackets nested too deeply"),
                detail!("right-less-deep", "a catalogue needs far fewer"),
            );
            self.is_over = true;
            return None;
        }
        self.opened.push(Opened { at: self.at, close, has_fields: false });
        self.at += 1;
        Some(())
    }

    /// Items up to what closes the innermost bracket, parted by commas; `item` says whether it could read one. Whether the
    /// bracket was closed.
    fn separated(&mut self, mut item: impl FnMut(&mut Self) -> bool) -> bool {
        let Some(opened) = self.opened.last().copied() else { return false };
        let outer = self.opened[..self.opened.len() - 1].to_vec();
        let is_closed = loop {
            self.space();
            if self.is_over {
                break false;
            }
            match self.peek() {
                Some(c) if c == opened.close => {
                    self.at += 1;
                    break true;
                }
                Some(c @ (')' | ']')) if !outer.iter().any(|one| one.close == c) => {
                    self.wrong(
                        detail!("wrong-here", "{here}", here = format!("{c:?}")),
                        detail!("right-bracket", "expected {bracket}", bracket = opened.close),
                    );
                    self.at += 1;
                    continue;
                }
                Some(')' | ']') | None => {
                    self.never_closed(opened);
                    break false;
                }
                Some(_)
                    if self.is_field() != opened.has_fields
                        && closes_first(self.source, self.at, &outer, opened.close) =>
                {
                    self.never_closed(opened);
                    break false;
                }
                Some(_) => {}
            }
            let is_read = item(self);
            if !self.is_over {
                self.pass_to_next(is_read);
            }
        };
        self.opened.pop();
        is_closed
    }

    /// Over the comma behind an item to where the next one begins.
    fn pass_to_next(&mut self, is_read: bool) {
        if std::mem::take(&mut self.left_open) {
            self.space();
            self.eat(',');
            return;
        }
        if !is_read {
            // A text without its closing quote has taken its line with it, comma included.
            if self.rest().starts_with('\n') {
                return;
            }
            self.at = end_of_item(self.source, self.at);
        }
        let behind_a_text = self.source[..self.at].ends_with('"');
        self.space();
        if self.eat(',') || matches!(self.peek(), None | Some(')' | ']')) {
            return;
        }
        let found = self.here();
        let expected = if behind_a_text {
            detail!("right-comma-or-quote", "expected a comma before it, or a quote is missing earlier in this line")
        } else {
            detail!("right-comma", "expected a comma before it")
        };
        self.wrong(found, expected);
        if !is_read || !self.peek().is_some_and(|c| is_of_word(c) || matches!(c, '"' | '(' | '[')) {
            self.at = end_of_item(self.source, self.at);
            self.eat(',');
        }
    }

    /// Says where a bracket was opened that is not closed where it has to be.
    fn never_closed(&mut self, opened: Opened) {
        self.left_open = true;
        if self.lost_brackets {
            return;
        }
        let close = opened.close;
        let expected = match self.peek() {
            None => {
                detail!("right-close-before-end", "close it with {close} before the end of the file", close = close)
            }
            Some(_) => {
                let line = self.source[..self.at].matches('\n').count() + 1;
                detail!(
                    "right-close-before",
                    "close it with {close} before {here} in line {line}",
                    close = close,
                    here = self.stands_here(),
                    line = line
                )
            }
        };
        let bracket = if close == ')' { '(' } else { '[' };
        let found =
            detail!("wrong-open", "the bracket {bracket} that is opened here is never closed", bracket = bracket);
        self.wrong_at(opened.at, found, expected);
    }
}

#[cfg(test)]
mod tests;
