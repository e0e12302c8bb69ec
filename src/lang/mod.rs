//! The four languages: texts from Fluent files, numbers and money as each locale writes them.

mod cautions;
mod language;
mod texts;

pub use language::Lang;
pub use texts::{Arg, Texts, keys};

#[cfg(test)]
mod tests;
