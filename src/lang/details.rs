//! What is said of the maker's files, in a reader's language.

use super::{Arg, Lang, Texts};
use crate::{
    quoting::one_line,
    ron_tree::{Detail, Mistake, Part},
};

/// Stands on both sides of what is foreign, while a text is put together. What stands in a place is free of it.
const EDGE: char = '\u{1}';

/// A stretch of a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stretch {
    /// Its words.
    pub words: String,
    /// Whether they are English in a text of another language: a library or the system says them.
    pub is_foreign: bool,
}

impl Texts {
    /// A detail in this language: its English where there is no such text.
    pub fn detail(&self, detail: &Detail) -> Vec<Stretch> {
        let marked = self.marked(detail);
        let stretches = marked.split(EDGE).enumerate().filter(|(_, words)| !words.is_empty());
        stretches.map(|(i, words)| Stretch { words: one_line(words), is_foreign: i % 2 == 1 }).collect()
    }

    /// The same as one text.
    pub fn detail_words(&self, detail: &Detail) -> String {
        self.detail(detail).into_iter().map(|stretch| stretch.words).collect()
    }

    /// A mistake with its place in one line, as the terminal has it in English.
    pub fn mistake(&self, mistake: &Mistake) -> String {
        let (found, expected) = (self.detail_words(&mistake.found), self.detail_words(&mistake.expected));
        format!("{}: {found}; {expected}", mistake.place())
    }

    fn marked(&self, detail: &Detail) -> String {
        let part = |part: &Part| match part {
            Part::Words(words) => words.clone(),
            Part::Detail(detail) => self.marked(detail),
            Part::Foreign(words) if self.lang == Lang::En => words.clone(),
            Part::Foreign(words) => format!("{EDGE}{words}{EDGE}"),
        };
        let places: Vec<Arg<'_>> = detail.places().iter().map(|(name, found)| (*name, part(found).into())).collect();
        self.find(detail.key(), &places).unwrap_or_else(|| detail.english().to_owned())
    }
}
