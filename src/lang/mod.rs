//! The four languages: texts from Fluent files, numbers and money as each locale writes them.

mod cautions;
mod for_seller;
mod language;
mod message;
mod texts;

pub use language::Lang;
pub use message::{Message, Place};
pub(crate) use message::{message, say};
pub use texts::{Arg, Texts, keys};

#[cfg(test)]
mod tests;
