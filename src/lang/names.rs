//! What a single piece is called.

use std::borrow::Cow;

use super::{Texts, say};
use crate::{catalog::Catalog, craft::DropKind};

impl Texts {
    /// What one piece of a kind is called on a ticket: of an assortment, that it is one from its compartment.
    pub fn piece_name<'a>(&self, catalog: &'a Catalog, kind: &'a DropKind) -> Cow<'a, str> {
        let name = catalog.called(self.lang.code(), &kind.id, &kind.name);
        if kind.is_assortment() {
            Cow::Owned(say!(self, "mix-named", name = name, home = kind.home.to_string()))
        } else {
            Cow::Borrowed(name)
        }
    }

    /// What has to be said of the assortments among `kinds`: that the piece may look different.
    pub fn mix_note<'a>(&self, kinds: impl IntoIterator<Item = &'a DropKind>) -> Option<String> {
        let homes: Vec<String> =
            kinds.into_iter().filter(|kind| kind.is_assortment()).map(|kind| kind.home.to_string()).collect();
        (!homes.is_empty()).then(|| say!(self, "mix-note", homes = homes.join(", ")))
    }
}
