//! What is said of a file, for whoever words it in a reader's language: the key of a text with what stands in its places.
//!
//! The English stands beside its key, since the terminal speaks it without knowing of any texts; a test of `lang` holds the
//! two to each other.

use std::fmt;

use crate::quoting::one_line;

/// What something is called, in a text about it: the key of its name, and that in English.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct What {
    key: &'static str,
    english: &'static str,
}

/// What is called `english` in English; `key` names it in every language.
pub const fn what(key: &'static str, english: &'static str) -> What {
    What { key, english }
}

/// A text with what stands in its places. Its English is one line, however the file is written.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Detail(Box<Told>);

/// What a detail is made of; apart, so that whoever passes on a mistake passes on little.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Told {
    english: String,
    key: &'static str,
    places: Vec<(&'static str, Part)>,
}

/// What stands in a place of a text.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// What is the same in every language: words and figures of the file, names of fields.
    Words(String),
    /// What is worded in the reader's language as well.
    Detail(Detail),
    /// What a library or the system says, in English.
    Foreign(String),
}

impl Detail {
    /// The text called `key`, which is `english` in English, with what stands in its `places`.
    pub fn new(key: &'static str, english: &str, places: Vec<(&'static str, Part)>) -> Self {
        Self(Box::new(Told { english: one_line(english), key, places }))
    }

    /// The key of the text.
    pub fn key(&self) -> &'static str {
        self.0.key
    }

    /// What stands in its places, by their names.
    pub fn places(&self) -> &[(&'static str, Part)] {
        &self.0.places
    }

    /// The text in English.
    pub fn english(&self) -> &str {
        &self.0.english
    }
}

impl Part {
    /// What a library or the system says.
    pub fn foreign(says: &impl ToString) -> Self {
        Self::Foreign(one_line(&says.to_string()))
    }
}

impl fmt::Display for Detail {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0.english)
    }
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Words(words) | Self::Foreign(words) => f.write_str(words),
            Self::Detail(detail) => detail.fmt(f),
        }
    }
}

impl From<What> for Detail {
    fn from(what: What) -> Self {
        Self::new(what.key, what.english, vec![])
    }
}

impl From<What> for Part {
    fn from(what: What) -> Self {
        Self::Detail(what.into())
    }
}

impl From<Detail> for Part {
    fn from(detail: Detail) -> Self {
        Self::Detail(detail)
    }
}

impl From<&str> for Part {
    fn from(words: &str) -> Self {
        Self::Words(one_line(words))
    }
}

macro_rules! as_words {
    ($($kind:ty)*) => { $(
        impl From<$kind> for Part {
            fn from(words: $kind) -> Self {
                Self::Words(one_line(&words.to_string()))
            }
        }
    )* };
}
// Figures stand in a message as they stand in the file.
as_words!(String &String char u32 usize f64);

/// A [`Detail`] by its key and its English, in which each place is named:
/// `detail!("wrong-field-twice", "the field {name} a second time", name = name)`.
macro_rules! detail {
    ($key:literal, $english:literal) => {
        $crate::ron_tree::Detail::from($crate::ron_tree::what($key, $english))
    };
    ($key:literal, $english:literal, $($name:ident = $value:expr),+ $(,)?) => {
        match ($($crate::ron_tree::Part::from($value),)+) {
            ($($name,)+) => {
                let english = format!($english, $($name = $name),+);
                $crate::ron_tree::Detail::new($key, &english, vec![$((stringify!($name), $name)),+])
            }
        }
    };
}
pub(crate) use detail;
