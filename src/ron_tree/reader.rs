//! Walking a tree: fields, quantities and words, with a message for everything that is not right.

use super::{
    detail::{Detail, Part, What, detail, what},
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
    what: What,
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
    pub fn wrong(&mut self, at: usize, found: impl Into<Detail>, expected: impl Into<Detail>) {
        tell(&mut self.mistakes, || Mistake::at(self.file, self.source, at, found, expected));
    }

    /// Says that `node` is not what was wanted.
    pub fn unlike<T>(&mut self, node: &Node, wanted: impl Into<Detail>) -> Option<T> {
        let expected = detail!("right-wanted", "expected {wanted}", wanted = wanted.into());
        self.wrong(node.at, detail!("wrong-here", "{here}", here = node.describe()), expected);
        None
    }

    /// The fields of a struct whose allowed names are `names`; unknown and doubled ones are mistakes.
    pub fn fields<'n>(&mut self, node: &'n Node, what: What, names: &[&str]) -> Option<Fields<'n>> {
        let Value::Struct { fields, .. } = &node.value else {
            return self.unlike(node, detail!("right-with-fields", "{what} with its fields in ( )", what = what));
        };
        for (n, field) in fields.iter().enumerate() {
            if self.mistakes.len() >= MOST {
                break;
            }
            if !names.contains(&field.name.as_str()) {
                let like = nearest(&field.name, names.iter().copied());
                let hint = match like {
                    Some(like) => did_you_mean(like),
                    None => {
                        let names = names.join(", ");
                        detail!("right-has-fields", "{what} has the fields {names}", what = what, names = names)
                    }
                };
                let name = excerpt(&field.name);
                self.wrong(field.at, detail!("wrong-field", "unknown field {name}", name = name), hint);
            } else if fields[..n].iter().any(|earlier| earlier.name == field.name) {
                let found = detail!("wrong-field-twice", "the field {name} a second time", name = &field.name);
                self.wrong(field.at, found, keep_one());
            }
        }
        Some(Fields { at: node.at, what, fields })
    }

    /// A field that has to be there.
    pub fn required<'n>(&mut self, fields: &Fields<'n>, name: &str) -> Option<&'n Node> {
        let node = fields.get(name);
        if node.is_none() {
            let found = detail!("wrong-without-field", "{what} without {name}", what = fields.what, name = name);
            self.wrong(fields.at, found, detail!("right-add-field", "add the field {name}", name = name));
        }
        node
    }

    /// The items of a list of `of`.
    pub fn list<'n>(&mut self, node: &'n Node, of: impl Into<Part>) -> Option<&'n [Node]> {
        match &node.value {
            Value::List(items) => Some(items),
            _ => self.unlike(node, detail!("right-list", "a list of {of} in [ ]", of = of.into())),
        }
    }

    /// A text; `what` it should be, for the message.
    pub fn text<'n>(&mut self, node: &'n Node, what: What) -> Option<&'n str> {
        match &node.value {
            Value::Text(text) => match hidden_in(&text.replace(['\n', '\t'], " ")) {
                None => Some(text),
                Some(hidden) => {
                    let code = format!("U+{:04X}", u32::from(hidden.0));
                    let found = detail!(
                        "wrong-hidden",
                        "the hidden character {code} in {here}",
                        code = code,
                        here = node.describe()
                    );
                    self.wrong(node.at, found, detail!("right-visible", "take it out: nobody can see it there"));
                    None
                }
            },
            _ => self.unlike(node, detail!("right-in-quotes", "{what} in quotes", what = what)),
        }
    }

    /// A required text that is not blank.
    pub fn name(&mut self, fields: &Fields<'_>, name: &str) -> Option<String> {
        let node = self.required(fields, name)?;
        let text = self.text(node, what("a-name", "a name"))?.trim().to_owned();
        if text.is_empty() || text.chars().count() > 60 || text.contains(['\n', '\t']) {
            return self.unlike(node, what("a-name-in-one-line", "a name of 1 to 60 letters in one line"));
        }
        Some(text)
    }

    /// A required id: small letters, digits and hyphens.
    pub fn id(&mut self, fields: &Fields<'_>) -> Option<(String, usize)> {
        let node = self.required(fields, "id")?;
        let text = self.text(node, what("an-id", "an id"))?;
        if is_id(text) {
            Some((text.to_owned(), node.at))
        } else {
            let wanted =
                detail!("an-id-of-letters", "an id of 1 to 40 small letters, digits and hyphens, as in \"key-heart\"");
            self.unlike(node, wanted)
        }
    }

    /// A word out of a fixed set.
    pub fn word<T: Copy>(&mut self, node: &Node, what: What, all: &[(&str, T)]) -> Option<T> {
        if let Value::Word(word) = &node.value {
            if let Some((_, value)) = all.iter().find(|(name, _)| name == word) {
                return Some(*value);
            }
            let like = nearest(word, all.iter().map(|(name, _)| *name));
            let expected = like.map_or_else(|| one_of(all.iter().map(|(name, _)| *name)), did_you_mean);
            let found = detail!("wrong-word", "{word} is not {what}", word = excerpt(word), what = what);
            self.wrong(node.at, found, expected);
            return None;
        }
        let names = all.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ");
        self.unlike(node, detail!("right-word", "{what}, without quotes: one of {names}", what = what, names = names))
    }

    /// A whole number from `low` to `high`, written without quotes.
    pub fn whole(&mut self, node: &Node, low: u32, high: u32) -> Option<u32> {
        if let Value::Number(number) = &node.value
            && let Ok(value) = number.parse()
            && (low..=high).contains(&value)
        {
            return Some(value);
        }
        self.unlike(
            node,
            detail!("right-whole", "a whole number from {low} to {high}, without quotes", low = low, high = high),
        )
    }

    /// A number from `low` to `high`, written without quotes.
    pub fn number(&mut self, node: &Node, low: f64, high: f64) -> Option<f64> {
        if let Value::Number(number) = &node.value
            && let Ok(value) = number.parse()
            && (low..=high).contains(&value)
        {
            return Some(value);
        }
        self.unlike(
            node,
            detail!("right-number", "a number from {low} to {high}, without quotes", low = low, high = high),
        )
    }

    /// `true` or `false`.
    pub fn flag(&mut self, node: &Node) -> Option<bool> {
        self.word(node, what("yes-or-no", "yes or no"), &[("true", true), ("false", false)])
    }
}

/// What is right where something stands there twice.
pub fn keep_one() -> Detail {
    detail!("right-keep-one", "keep one of them")
}

/// What may stand there, where there is little of it.
pub fn either(some: &str, other: &str) -> Detail {
    detail!("right-either", "{some} or {other}", some = some, other = other)
}

/// What may have been meant; a text is given in its quotes.
pub fn did_you_mean(like: impl Into<Part>) -> Detail {
    detail!("right-like", "did you mean {like}?", like = like.into())
}

/// The words that may stand there.
pub fn one_of<'w>(names: impl Iterator<Item = &'w str>) -> Detail {
    let names = names.collect::<Vec<_>>().join(", ");
    detail!("right-one-of", "expected one of {names}", names = names)
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
