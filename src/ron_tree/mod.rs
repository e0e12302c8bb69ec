//! The maker's files, written by hand in RON: read as a tree in which every value knows its place, so that all mistakes of a
//! file are told at once, each with its line and column.
//!
//! A pure room: whoever reads a file hands its text over.
//!
//! | file | look here for |
//! | --- | --- |
//! | `tree` | the tree, and reading it from a text |
//! | `reader` | walking it: fields, lists, words, quantities, with a message for everything that is not right |
//! | `mistake` | a mistake with its place |
//! | `nearest` | what somebody may have meant who wrote an unknown word |

mod mistake;
mod nearest;
mod reader;
mod tree;

pub use mistake::{Mistake, Mistakes};
pub use nearest::nearest;
pub(crate) use reader::names_of;
pub use reader::{Fields, Reader};
pub use tree::{Field, Node, Value};
