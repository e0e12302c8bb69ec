//! The maker's files, written by hand in RON: read as a tree in which every value knows its place, so that all mistakes of a
//! file are told at once, each with its line and column.
//!
//! A pure room: whoever reads a file hands its text over.
//!
//! | file | look here for |
//! | --- | --- |
//! | `tree` | the tree |
//! | `parse` | reading it from a text |
//! | `look_ahead` | where an item ends, and which bracket is closed first |
//! | `edit`, `entries` | changing single entries of a file, with every other byte kept; where an entry begins and ends |
//! | `reader` | walking it: fields, lists, words, quantities, with a message for everything that is not right |
//! | `mistake` | a mistake with its place |
//! | `detail` | what is said of it, by a key and what stands in its places, so that it is worded in every language |
//! | `nearest` | what somebody may have meant who wrote an unknown word |

mod detail;
mod edit;
mod entries;
mod look_ahead;
mod mistake;
mod nearest;
mod parse;
mod reader;
mod tree;

pub(crate) use detail::detail;
pub use detail::{Detail, Part, What, what};
pub use edit::{Document, EditError, Step, in_quotes};
pub use mistake::{Mistake, Mistakes};
pub use nearest::nearest;
pub(crate) use reader::names_of;
pub use reader::{Fields, Reader, did_you_mean, either, is_id, keep_one, one_of};
pub use tree::{Field, Node, Value};
