//! RON as a tree in which every value knows its place, so that all mistakes of a file can be told at once.
//!
//! The part of RON that hand-written files use: structs with and without a name, tuples, lists, texts,
//! numbers, words and comments.

use super::detail::{Detail, detail};
use crate::quoting::{excerpt, quoted};

/// A value and where it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Node {
    /// The byte of the file at which it begins.
    pub at: usize,
    /// The byte behind it.
    pub end: usize,
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
    pub fn describe(&self) -> Detail {
        match &self.value {
            Value::Text(text) => detail!("here-text", "the text {text}", text = quoted(text)),
            Value::Number(number) => {
                detail!("here-number", "the number {number} without quotes", number = excerpt(number))
            }
            Value::Word(word) => detail!("here-word", "the word {word}", word = excerpt(word)),
            Value::Struct { name: Some(name), .. } | Value::Tuple { name: Some(name), .. } => {
                detail!("here-named", "{name}(…)", name = excerpt(name))
            }
            Value::Struct { name: None, .. } | Value::Tuple { name: None, .. } => {
                detail!("here-group", "a group in ( )")
            }
            Value::List(_) => detail!("here-list", "a list in [ ]"),
        }
    }
}
