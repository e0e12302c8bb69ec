//! The four languages: texts from Fluent files, numbers and money as each locale writes them.
//!
//! | file | look here for |
//! | --- | --- |
//! | `language` | the languages, their files, how each writes numbers and money |
//! | `texts` | the texts of a language by their keys |
//! | `message` | a text that is put into words later |
//! | `cautions`, `for_seller` | cautions in a guest's language, and what is said to the seller beside them |
//! | `names` | what one piece is called, of an assortment too |
//! | `details` | what is said of the maker's files; `detail_tests` holds it to the English in the code |

mod cautions;
mod details;
mod for_seller;
mod language;
mod message;
mod names;
mod texts;

pub use details::Stretch;
pub use language::Lang;
pub use message::{Message, Place};
pub(crate) use message::{message, say};
pub use texts::{Arg, Texts, keys};

#[cfg(test)]
mod detail_tests;
#[cfg(test)]
mod tests;
