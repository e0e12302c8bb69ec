//! A text that is put into words later, by somebody who knows the reader's language.

use rust_decimal::Decimal;

use super::{Arg, Lang};

/// The key of a text, and what stands in its places.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Message {
    pub(super) key: &'static str,
    places: Vec<(&'static str, Place)>,
}

/// What stands in a place: words as they are, a number that decides about plurals, or one as the language writes it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// Words.
    Words(String),
    /// A number.
    Number(i64),
    /// A number with its decimals.
    Exact(Decimal),
}

impl From<&str> for Place {
    fn from(words: &str) -> Self {
        Self::Words(words.to_owned())
    }
}

impl From<Decimal> for Place {
    fn from(number: Decimal) -> Self {
        Self::Exact(number)
    }
}

impl From<String> for Place {
    fn from(words: String) -> Self {
        Self::Words(words)
    }
}

macro_rules! number {
    ($($kind:ty)*) => { $(
        impl From<$kind> for Place {
            fn from(number: $kind) -> Self {
                // No table counts that far; what would is shown as the most there is.
                Self::Number(i64::try_from(number).unwrap_or(i64::MAX))
            }
        }
    )* };
}
number!(u8 u16 u32 u64 usize i32 i64);

impl Message {
    /// The text called `key` with nothing in its places.
    pub const fn new(key: &'static str) -> Self {
        Self { key, places: Vec::new() }
    }

    /// The same with `value` in the place called `name`.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<Place>) -> Self {
        self.places.push((name, value.into()));
        self
    }

    /// What stands in the places, as the texts take it.
    pub(super) fn args(&self, lang: Lang) -> Vec<Arg<'_>> {
        let value = |place: &Place| match place {
            Place::Words(words) => words.clone().into(),
            Place::Number(number) => (*number).into(),
            Place::Exact(number) => lang.number(*number).into(),
        };
        self.places.iter().map(|(name, place)| (*name, value(place))).collect()
    }
}

/// The text called `key` in the language of `texts`, with values in its places: `say!(texts, "count-drops", n = 3)`.
macro_rules! say {
    ($texts:expr, $key:literal $(, $name:ident = $value:expr)* $(,)?) => {
        $texts.with($key, &[$((stringify!($name), ($value).into())),*])
    };
}

/// A [`Message`], to be put into words later: `message!("refused-no-group", name = name)`.
macro_rules! message {
    ($key:literal $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::lang::Message::new($key)$(.with(stringify!($name), $value))*
    };
}

pub(crate) use {message, say};
