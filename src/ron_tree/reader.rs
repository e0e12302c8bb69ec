//! Walking a tree: fields, quantities and words, with a message for everything that is not right.

use std::{fmt::Display, str::FromStr};

use super::{
    mistake::{MOST, Mistake, tell},
    nearest::nearest,
    parse::parse,
    tree::{Field, Node, Value},
};
use crate::quoting::{excerpt, hidden_in};

/// A file being read.
pub struct Reader<'a> {
    file: &'a str,
    source: &'a str,
    /// What was wrong so far.
    pub mistakes: Vec<Mistake>,
}

/// The fields of one struct.
pub struct Fields<'n> {
    at: usize,
    what: &'static str,
    fields: &'n [Field],
}

impl<'n> Fields<'n> {
    /// Where the struct begins.
    pub const fn at(&self) -> usize {
        self.at
    }

    /// The value of a field, if it is there.
    pub fn get(&self, name: &str) -> Option<&'n Node> {
        self.fields.iter().find(|field| field.name == name).map(|field| &field.node)
    }
}

impl<'a> Reader<'a> {
    /// Reads the file's tree.
    pub fn open(file: &'a str, source: &'a str) -> (Self, Option<Node>) {
        let mut mistakes = Vec::new();
        let node = parse(file, source, &mut mistakes);
        (Self { file, source, mistakes }, node)
    }

    /// Says that something is wrong at byte `at` of the file.
    pub fn wrong(&mut self, at: usize, found: impl Into<String>, expected: impl Into<String>) {
        tell(&mut self.mistakes, || Mistake::at(self.file, self.source, at, found, expected));
    }

    /// Says that `node` is not what was wanted.
    pub fn unlike<T>(&mut self, node: &Node, wanted: &str) -> Option<T> {
        self.wrong(node.at, node.describe(), format!("expected {wanted}"));
        None
    }

    /// The fields of a struct whose allowed names are `names`; unknown and doubled ones are mistakes.
    pub fn fields<'n>(&mut self, node: &'n Node, what: &'static str, names: &[&str]) -> Option<Fields<'n>> {
        let Value::Struct { fields, .. } = &node.value else {
            return self.unlike(node, &format!("{what} with its fields in ( )"));
        };
        for (n, field) in fields.iter().enumerate() {
            if self.mistakes.len() >= MOST {
                break;
            }
            if !names.contains(&field.name.as_str()) {
                let like = nearest(&field.name, names.iter().copied());
                let hint = match like {
                    Some(like) => format!("did you mean {like}?"),
                    None => format!("{what} has the fields {}", names.join(", ")),
                };
                self.wrong(field.at, format!("unknown field {}", excerpt(&field.name)), hint);
            } else if fields[..n].iter().any(|earlier| earlier.name == field.name) {
                self.wrong(field.at, format!("the field {} a second time", field.name), "keep one of them");
            }
        }
        Some(Fields { at: node.at, what, fields })
    }

    /// A field that has to be there.
    pub fn required<'n>(&mut self, fields: &Fields<'n>, name: &str) -> Option<&'n Node> {
        let node = fields.get(name);
        if node.is_none() {
            self.wrong(fields.at, format!("{} without {name}", fields.what), format!("add the field {name}"));
        }
        node
    }

    /// The items of a list of `of`.
    pub fn list<'n>(&mut self, node: &'n Node, of: &str) -> Option<&'n [Node]> {
        match &node.value {
            Value::List(items) => Some(items),
            _ => self.unlike(node, &format!("a list of {of} in [ ]")),
        }
    }

    /// A text; `what` it should be, for the message.
    pub fn text<'n>(&mut self, node: &'n Node, what: &str) -> Option<&'n str> {
        match &node.value {
            Value::Text(text) => match hidden_in(&text.replace(['\n', '\t'], " ")) {
                None => Some(text),
                Some(hidden) => {
                    let found = format!("{hidden} in {}", node.describe());
                    self.wrong(node.at, found, "take it out: nobody can see it there");
                    None
                }
            },
            _ => self.unlike(node, &format!("{what} in quotes")),
        }
    }

    /// A required text that is not blank.
    pub fn name(&mut self, fields: &Fields<'_>, name: &str) -> Option<String> {
        let node = self.required(fields, name)?;
        let text = self.text(node, "a name")?.trim().to_owned();
        if text.is_empty() || text.chars().count() > 60 || text.contains(['\n', '\t']) {
            return self.unlike(node, "a name of 1 to 60 letters in one line");
        }
        Some(text)
    }

    /// A required id: small letters, digits and hyphens.
    pub fn id(&mut self, fields: &Fields<'_>) -> Option<(String, usize)> {
        let node = self.required(fields, "id")?;
        let text = self.text(node, "an id")?;
        if is_id(text) {
            Some((text.to_owned(), node.at))
        } else {
            self.unlike(node, "an id of 1 to 40 small letters, digits and hyphens, as in \"key-heart\"")
        }
    }

    /// A text that `T` reads, as in `"24in"`.
    pub fn parsed<T: FromStr<Err: Display>>(&mut self, node: &Node, what: &str) -> Option<T> {
        let text = self.text(node, what)?;
        match text.parse() {
            Ok(value) => Some(value),
            Err(error) => {
                let message = error.to_string();
                match message.split_once("; ") {
                    Some((found, expected)) => self.wrong(node.at, found, expected),
                    None => self.wrong(node.at, node.describe(), message),
                }
                None
            }
        }
    }

    /// A required quantity between `low` and `high`, as `size` measures it.
    pub fn quantity<T: FromStr<Err: Display>>(
        &mut self,
        fields: &Fields<'_>,
        name: &str,
        size: impl Fn(&T) -> f64,
        (low, high, unit): (f64, f64, &str),
    ) -> Option<T> {
        let node = self.required(fields, name)?;
        let value: T = self.parsed(node, "a quantity with its unit")?;
        if (low..=high).contains(&size(&value)) {
            Some(value)
        } else {
            self.unlike(node, &format!("{name} from {low} {unit} to {high} {unit}"))
        }
    }

    /// A word out of a fixed set.
    pub fn word<T: Copy>(&mut self, node: &Node, what: &str, all: &[(&str, T)]) -> Option<T> {
        if let Value::Word(word) = &node.value {
            if let Some((_, value)) = all.iter().find(|(name, _)| name == word) {
                return Some(*value);
            }
            let like = nearest(word, all.iter().map(|(name, _)| *name));
            let expected = match like {
                Some(like) => format!("did you mean {like}?"),
                None => format!("expected one of {}", all.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ")),
            };
            self.wrong(node.at, format!("{} is not {what}", excerpt(word)), expected);
            return None;
        }
        let names = all.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ");
        self.unlike(node, &format!("{what}, without quotes: one of {names}"))
    }

    /// A whole number from `low` to `high`, written without quotes.
    pub fn whole(&mut self, node: &Node, low: u32, high: u32) -> Option<u32> {
        if let Value::Number(number) = &node.value
            && let Ok(value) = number.parse()
            && (low..=high).contains(&value)
        {
            return Some(value);
        }
        self.unlike(node, &format!("a whole number from {low} to {high}, without quotes"))
    }

    /// A number from `low` to `high`, written without quotes.
    pub fn number(&mut self, node: &Node, low: f64, high: f64) -> Option<f64> {
        if let Value::Number(number) = &node.value
            && let Ok(value) = number.parse()
            && (low..=high).contains(&value)
        {
            return Some(value);
        }
        self.unlike(node, &format!("a number from {low} to {high}, without quotes"))
    }

    /// `true` or `false`.
    pub fn flag(&mut self, node: &Node) -> Option<bool> {
        self.word(node, "yes or no", &[("true", true), ("false", false)])
    }
}

/// Whether `text` can be an id in a catalogue: 1 to 40 small letters, digits and hyphens.
pub fn is_id(text: &str) -> bool {
    (1..=40).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-')
}

/// Pairs every value of one of craft's word lists with its name.
macro_rules! names_of {
    ($t:ty) => {
        &<$t>::ALL.iter().map(|one| (one.name(), *one)).collect::<Vec<_>>()
    };
}
pub(crate) use names_of;
