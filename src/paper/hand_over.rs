//! A card that goes along with a piece, a gift as well: who made it, what it is made of, how to care for it, and what to be
//! careful about. It has no prices.

use super::document::{Document, Row, Sort, base_words};
use crate::{
    craft::Length,
    lang::{Texts, say},
};

/// The facts of one piece, with names in the card's language.
#[derive(Debug, Clone, PartialEq)]
pub struct HandOver {
    /// The maker, as the table is called.
    pub table: String,
    /// What stands below: where the maker can be reached.
    pub head: Vec<String>,
    /// Somebody practises.
    pub practice: bool,
    /// The ticket's number, by which the maker finds the lots in the piece.
    pub number: String,
    /// The base's name.
    pub base: String,
    /// How long it is; a bangle has no length.
    pub length: Option<Length>,
    /// What the base is made of; none where nobody told.
    pub base_materials: Option<String>,
    /// The drops, each once, with what they are made of, where that was told.
    pub drops: Vec<(String, Option<String>)>,
    /// How to care for it, in the maker's words.
    pub care: Option<String>,
    /// What to be careful about, each with the parts that it is about.
    pub cautions: Vec<(String, String)>,
}

impl HandOver {
    /// The card in the language of `texts`.
    pub fn document(&self, texts: &Texts) -> Document {
        let mut rows = vec![Row::Name(self.table.clone())];
        rows.extend(self.head.iter().cloned().map(Row::Middle));
        if self.practice {
            rows.push(Row::Notice(say!(texts, "practice")));
        }
        rows.push(Row::Rule);
        rows.push(Row::Heading(say!(texts, "hand-over-piece", number = self.number.as_str())));
        // What nobody told is not known, and the card says so.
        let made_of = |materials: &Option<String>| materials.clone().unwrap_or_else(|| say!(texts, "card-not-known"));
        rows.push(Row::Text(base_words(texts, &self.base, self.length)));
        rows.push(Row::Small(made_of(&self.base_materials)));
        for (name, materials) in &self.drops {
            rows.push(Row::Text(name.clone()));
            rows.push(Row::Small(made_of(materials)));
        }
        if let Some(care) = &self.care {
            rows.push(Row::Rule);
            rows.push(Row::Heading(say!(texts, "paper-care")));
            rows.push(Row::Text(care.clone()));
        }
        if !self.cautions.is_empty() {
            rows.push(Row::Rule);
            rows.push(Row::Heading(say!(texts, "caution-title")));
            for (parts, words) in &self.cautions {
                rows.push(Row::Text(words.clone()));
                rows.push(Row::Small(parts.clone()));
            }
            rows.push(Row::Small(say!(texts, "caution-deferral")));
        }
        rows.push(Row::Small(say!(texts, "card-keep")));
        let title = say!(texts, "hand-over-title", number = self.number.as_str());
        Document { sort: Sort::Receipt, language: texts.lang.code(), title, rows, picture: None }
    }
}
