//! A slip for whoever threads a piece: the number, the picture, the homes in walking order. It has no prices, so that it
//! goes along with a gift as well.

use super::document::{Document, Row, Sort, base_words, several};
use crate::{
    craft::{Home, Length, Wearer},
    lang::{Texts, say},
};

/// The facts of one ticket, with names in the slip's language.
#[derive(Debug, Clone, PartialEq)]
pub struct Slip {
    /// The table's name.
    pub table: String,
    /// Somebody practises.
    pub practice: bool,
    /// The ticket's number.
    pub number: String,
    /// What a scanner reads: where a phone finds the ticket at the desk, or its number alone.
    pub code: String,
    /// Who the piece is for.
    pub wearer: Wearer,
    /// It is wrapped apart.
    pub gift: bool,
    /// The base's name.
    pub base: String,
    /// How long it is; a bangle has no length.
    pub length: Option<Length>,
    /// The drops, each with its home, in the order in which they hang.
    pub drops: Vec<(Home, String)>,
    /// What else hangs on it and has no home.
    pub plain: Vec<String>,
    /// What to be careful about, each with the parts that it is about.
    pub cautions: Vec<(String, String)>,
    /// The piece, as a PNG file.
    pub picture: Option<Vec<u8>>,
}

impl Slip {
    /// The slip in the language of `texts`.
    pub fn document(&self, texts: &Texts) -> Document {
        let mut rows = vec![Row::Picture, Row::Number(self.number.clone())];
        if self.practice {
            rows.push(Row::Notice(say!(texts, "practice")));
        }
        rows.push(Row::Fact(say!(texts, "paper-for"), texts.get(&format!("wearer-{}", self.wearer.code()))));
        if self.gift {
            rows.push(Row::Fact(say!(texts, "paper-gift"), say!(texts, "paper-wrapped-apart")));
        }
        rows.push(Row::Code(self.code.clone()));
        rows.push(Row::Rule);
        rows.push(Row::Heading(say!(texts, "paper-from-homes")));
        rows.push(Row::Tick(String::new(), base_words(texts, &self.base, self.length)));
        let mut walk: Vec<&(Home, String)> = self.drops.iter().collect();
        walk.sort();
        for together in walk.chunk_by(|one, other| one == other) {
            let (home, name) = together[0];
            rows.push(Row::Tick(home.to_string(), several(texts, together.len(), name)));
        }
        if !self.plain.is_empty() {
            rows.push(Row::Heading(say!(texts, "paper-no-home")));
            rows.extend(self.plain.iter().map(|words| Row::Tick(String::new(), words.clone())));
        }
        if !self.cautions.is_empty() {
            rows.push(Row::Rule);
            rows.push(Row::Heading(say!(texts, "caution-title")));
            for (parts, words) in &self.cautions {
                rows.push(Row::Text(words.clone()));
                rows.push(Row::Small(parts.clone()));
            }
        }
        rows.push(Row::Rule);
        if !self.cautions.is_empty() {
            rows.push(Row::Small(say!(texts, "caution-deferral")));
        }
        rows.push(Row::Middle(self.table.clone()));
        let title = say!(texts, "paper-slip-title", number = self.number.as_str());
        let picture = self.picture.clone();
        Document { sort: Sort::Slip, language: texts.lang.code(), title, rows, picture }
    }
}
