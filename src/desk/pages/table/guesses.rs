//! What is guessed, in words, the gravest first.

use maud::{Markup, html};

use crate::{
    catalog::Catalog,
    craft::{Guess, Home},
    lang::{Texts, say},
};

/// A part of which something is guessed.
pub(super) struct Guessed<'a> {
    pub home: Option<Home>,
    pub id: &'a str,
    pub guesses: &'a [Guess],
}

/// All of them, those first of which the gravest is guessed, and most.
pub(super) fn all(catalog: &Catalog) -> Vec<Guessed<'_>> {
    let bases = catalog.bases.iter().map(|base| Guessed { home: None, id: &base.id, guesses: &base.guessed });
    let drops =
        catalog.drops.iter().map(|kind| Guessed { home: Some(kind.home), id: &kind.id, guesses: &kind.guessed });
    let mut all: Vec<_> = bases.chain(drops).filter(|one| !one.guesses.is_empty()).collect();
    all.sort_by_key(|one| (one.guesses.first().copied(), std::cmp::Reverse(grave(one.guesses)), one.home));
    all
}

/// How many of them the cautions go by.
fn grave(guesses: &[Guess]) -> usize {
    guesses.iter().filter(|guess| guess.is_of_safety()).count()
}

/// Guesses as a list in one line.
pub(super) fn words(texts: &Texts, guesses: &[Guess]) -> String {
    let names: Vec<String> = guesses.iter().map(|guess| texts.get(&format!("guess-{}", guess.field()))).collect();
    names.join(", ")
}

/// What of one part is guessed, and what follows from it.
pub(super) fn note(texts: &Texts, guesses: &[Guess]) -> Markup {
    html! {
        @if !guesses.is_empty() {
            p.guessed {
                span.sign aria-hidden="true" { "≈ " }
                (say!(texts, "table-guessed", what = words(texts, guesses)))
                @if grave(guesses) > 0 { " " (say!(texts, "table-guessed-careful")) }
            }
        }
    }
}
