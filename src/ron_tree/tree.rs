//! RON as a tree in which every value knows its place, so that all mistakes of a file can be told at once.
//!
//! The part of RON that hand-written files use: structs with and without a name, tuples, lists, texts,
//! numbers, words and comments. A place that does not parse is reported and skipped up to the next comma.

use super::mistake::Mistake;

/// A value and the byte at which it begins.
#[derive(Debug, Clone, PartialEq)]
pub struct Node {
    /// The byte of the file at which it begins.
    pub at: usize,
    /// What it is.
    pub value: Value,
}

/// What a value is.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A text in quotes, without them.
    Text(String),
    /// A number as it is written.
    Number(String),
    /// A word without quotes.
    Word(String),
    /// Fields in ( ), perhaps after a name; also empty brackets.
    Struct {
        /// The name before the brackets.
        name: Option<String>,
        /// The fields in their order.
        fields: Vec<Field>,
    },
    /// Values without field names in ( ), perhaps after a name.
    Tuple {
        /// The name before the brackets.
        name: Option<String>,
        /// The values in their order.
        items: Vec<Node>,
    },
    /// Values in [ ].
    List(Vec<Node>),
}

/// One `name: value` of a struct.
#[derive(Debug, Clone, PartialEq)]
pub struct Field {
    /// The byte of the file at which its name begins.
    pub at: usize,
    /// Its name.
    pub name: String,
    /// Its value.
    pub node: Node,
}

impl Node {
    /// What stands here, for a message.
    pub fn describe(&self) -> String {
        match &self.value {
            Value::Text(text) => format!("the text {text:?}"),
            Value::Number(number) => format!("the number {number} without quotes"),
            Value::Word(word) => format!("the word {word}"),
            Value::Struct { name: Some(name), .. } | Value::Tuple { name: Some(name), .. } => format!("{name}(…)"),
            Value::Struct { name: None, .. } | Value::Tuple { name: None, .. } => "a group in ( )".into(),
            Value::List(_) => "a list in [ ]".into(),
        }
    }
}

/// Reads `source`; what does not parse is added to `mistakes`.
pub(super) fn parse(file: &str, source: &str, mistakes: &mut Vec<Mistake>) -> Option<Node> {
    let mut parser = Parser { file, source, at: 0, depth: 0, mistakes };
    let node = parser.value();
    if node.is_some() {
        parser.space();
        if parser.at < source.len() {
            parser.wrong("something after the end of the file's value", "remove it, or a bracket was closed too early");
        }
    }
    node
}

struct Parser<'a> {
    file: &'a str,
    source: &'a str,
    at: usize,
    depth: usize,
    mistakes: &'a mut Vec<Mistake>,
}

/// Deeper nesting than any catalogue has; a file beyond it is damaged or hostile.
const MAX_DEPTH: usize = 32;

impl Parser<'_> {
    fn rest(&self) -> &str {
        &self.source[self.at..]
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    fn wrong(&mut self, found: impl Into<String>, expected: impl Into<String>) {
        self.mistakes.push(Mistake::at(self.file, self.source, self.at, found, expected));
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
                        self.wrong("a comment /* that never ends", "end it with */");
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

    fn here(&self) -> String {
        match self.peek() {
            None => "the end of the file".into(),
            Some(_) => {
                let word: String = self.rest().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
                let shown = if word.is_empty() { self.rest().chars().take(1).collect() } else { word };
                format!("{shown:?}")
            }
        }
    }

    fn value(&mut self) -> Option<Node> {
        self.space();
        let at = self.at;
        if self.depth >= MAX_DEPTH {
            self.wrong("brackets nested too deeply", "a catalogue needs far fewer");
            self.at = self.source.len();
            return None;
        }
        self.depth += 1;
        let value = match self.peek() {
            Some('"') => self.text().map(Value::Text),
            Some('[') => {
                self.at += 1;
                self.items(']').map(Value::List)
            }
            Some('(') => self.group(None),
            Some(c) if c.is_ascii_digit() || matches!(c, '-' | '+' | '.') => Some(Value::Number(self.number())),
            Some(c) if c.is_alphabetic() || c == '_' => {
                let word = self.word();
                self.space();
                if self.peek() == Some('(') { self.group(Some(word)) } else { Some(Value::Word(word)) }
            }
            _ => {
                let found = self.here();
                self.wrong(found, "expected a value: a text in quotes, a word, a group in ( ) or a list in [ ]");
                None
            }
        };
        self.depth -= 1;
        value.map(|value| Node { at, value })
    }

    fn word(&mut self) -> String {
        let word: String = self.rest().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
        self.at += word.len();
        word
    }

    fn number(&mut self) -> String {
        let number: String = self
            .rest()
            .chars()
            .take_while(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '+' | '.' | '_'))
            .collect();
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
                        self.at = start + 1 + i;
                        self.wrong("a backslash before a character that needs none", "write \\\\ for a backslash");
                        return None;
                    }
                },
                c => text.push(c),
            }
        }
        self.wrong("a text whose closing quote is missing", "end it with \" on the same line");
        // The rest of the line belongs to the broken text.
        let rest = &self.source[start..];
        self.at = start + rest.find('\n').unwrap_or(rest.len());
        None
    }

    /// `( … )` after its optional name: a struct if it holds `name: value`, else a tuple.
    fn group(&mut self, name: Option<String>) -> Option<Value> {
        self.at += 1;
        self.space();
        let word: usize =
            self.rest().chars().take_while(|c| c.is_alphanumeric() || *c == '_').map(char::len_utf8).sum();
        let is_struct = word > 0 && self.rest()[word..].trim_start().starts_with(':');
        if !is_struct {
            let items = self.items(')')?;
            return Some(match items.is_empty() {
                true => Value::Struct { name, fields: vec![] },
                false => Value::Tuple { name, items },
            });
        }
        let mut fields = Vec::new();
        self.separated(')', |parser| {
            let at = parser.at;
            let name = parser.word();
            if name.is_empty() {
                let found = parser.here();
                parser.wrong(found, "expected a field, as in name: \"…\"");
                return false;
            }
            parser.space();
            if !parser.eat(':') {
                let found = parser.here();
                parser.wrong(found, format!("expected a colon after {name}"));
                return false;
            }
            match parser.value() {
                Some(node) => fields.push(Field { at, name, node }),
                None => return false,
            }
            true
        });
        Some(Value::Struct { name, fields })
    }

    fn items(&mut self, close: char) -> Option<Vec<Node>> {
        let mut items = Vec::new();
        self.separated(close, |parser| {
            let node = parser.value();
            let good = node.is_some();
            items.extend(node);
            good
        });
        Some(items)
    }

    /// Items up to `close`, parted by commas; `item` says whether it could read one.
    fn separated(&mut self, close: char, mut item: impl FnMut(&mut Self) -> bool) {
        let open = self.at.saturating_sub(1);
        loop {
            self.space();
            if self.eat(close) {
                return;
            }
            if self.at >= self.source.len() {
                self.at = open;
                let bracket = self.peek().unwrap_or(close);
                self.wrong(format!("a bracket {bracket} that is never closed"), format!("close it with {close}"));
                self.at = self.source.len();
                return;
            }
            let good = item(self);
            if !good {
                // A text without its closing quote has taken its line with it, comma included.
                if self.rest().starts_with('\n') {
                    continue;
                }
                self.skip(close);
            }
            self.space();
            if self.eat(',') || self.rest().starts_with(close) || self.at >= self.source.len() {
                continue;
            }
            let found = self.here();
            let wrong_bracket = matches!(self.peek(), Some(')' | ']'));
            self.wrong(
                found,
                if wrong_bracket { format!("expected {close}") } else { "expected a comma before it".into() },
            );
            if wrong_bracket {
                self.at += 1;
            } else if !good
                || matches!(self.peek(), Some(c) if !(c.is_alphanumeric() || matches!(c, '"' | '(' | '[' | '_')))
            {
                self.skip(close);
                self.eat(',');
            }
        }
    }

    /// To the next comma or `close` of this level, over texts and nested brackets.
    fn skip(&mut self, close: char) {
        let mut depth = 0usize;
        while let Some(c) = self.peek() {
            match c {
                '"' => {
                    let closing = self.rest()[1..].find(['"', '\n']).map_or(self.rest().len(), |i| i + 2);
                    self.at += closing.min(self.rest().len());
                    continue;
                }
                '(' | '[' => depth += 1,
                ')' | ']' if depth > 0 => depth -= 1,
                ',' if depth == 0 => return,
                c if depth == 0 && c == close => return,
                _ => {}
            }
            self.at += c.len_utf8();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parsed(source: &str) -> (Option<Node>, Vec<String>) {
        let mut mistakes = Vec::new();
        let node = parse("f", source, &mut mistakes);
        (node, mistakes.iter().map(ToString::to_string).collect())
    }

    #[test]
    fn structs_tuples_lists_words_and_comments() {
        let (node, mistakes) = parsed("// a\n( a: \"x\\\"y\", b: [Ring(1), Two], /* c */ c: Deep(d: Empty()), )");
        assert_eq!(mistakes, Vec::<String>::new());
        let Some(Node { value: Value::Struct { fields, .. }, .. }) = node else { panic!("a struct") };
        assert_eq!(fields.iter().map(|f| f.name.as_str()).collect::<Vec<_>>(), ["a", "b", "c"]);
        assert_eq!(fields[0].node.value, Value::Text("x\"y".into()));
    }

    #[test]
    fn several_broken_places_are_all_told() {
        let (_, mistakes) = parsed("(\n a: ,\n b: \"open\n c 3,\n d: \"fine\" e: \"too\",\n)");
        assert_eq!(mistakes.len(), 4, "{mistakes:#?}");
        assert!(mistakes[0].starts_with("f:2:5"), "{}", mistakes[0]);
        assert!(mistakes[1].starts_with("f:3:5"), "{}", mistakes[1]);
    }

    #[test]
    fn damaged_files_end_in_a_message_not_in_a_panic() {
        let whole = "( a: [\"x\", Ring(outside: \"5mm\", /* é */ wire: \"1mm\")], b: Two )";
        for end in (0..whole.len()).filter(|end| whole.is_char_boundary(*end)) {
            assert!(!parsed(&whole[..end]).1.is_empty(), "{}", &whole[..end]);
        }
        assert!(!parsed(&"(".repeat(10_000)).1.is_empty());
        assert!(!parsed(&"[".repeat(10_000)).1.is_empty());
    }
}
