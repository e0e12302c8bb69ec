//! A compartment that holds many unlike pieces at one price, and which of them a hung drop looks like.
//!
//! Which one is no matter of chance or of place: each hung drop has a number, the lowest that no other one of its kind on the
//! piece has when it is hung, and keeps it. The number goes round among the looks that there are.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::{DropKind, Length, OutlineShape};

/// Looks that an assortment has at most.
pub const MOST_LOOKS: usize = 24;

/// The number by which a hung drop of an assortment keeps its look.
pub type LookNumber = u16;

/// One of the pieces of an assortment, as a hung drop can look.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Look {
    /// Its picture's file name under `pictures/`.
    pub picture: String,
    /// Its width as it hangs.
    pub width: Length,
    /// Its height as it hangs, from where the ring holds it to its lowest point.
    pub height: Length,
    /// What its picture's outline comes to; a catalogue fills it in where that can decide a caution.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shape: Option<OutlineShape>,
}

impl DropKind {
    /// Whether its compartment holds many unlike pieces.
    pub const fn is_assortment(&self) -> bool {
        self.assortment.is_some()
    }

    /// How its pieces can look; nothing for a kind whose pieces are all alike, and for an assortment that hangs plain.
    pub fn looks(&self) -> &[Look] {
        self.assortment.as_deref().unwrap_or_default()
    }

    /// The picture with which the one with this number hangs.
    pub fn picture_as(&self, number: LookNumber) -> &str {
        self.look(number).map_or(&self.picture, |look| &look.picture)
    }

    fn look(&self, number: LookNumber) -> Option<&Look> {
        let looks = self.looks();
        usize::from(number).checked_rem(looks.len()).and_then(|i| looks.get(i))
    }

    /// It as the one with this number hangs: with the picture and the size of that look.
    pub fn hung_as(&self, number: LookNumber) -> Cow<'_, Self> {
        let Some(look) = self.look(number) else { return Cow::Borrowed(self) };
        let mut one = self.clone();
        one.picture.clone_from(&look.picture);
        (one.width, one.height) = (look.width, look.height);
        Cow::Owned(one)
    }

    /// The names of all of its pictures, that of its compartment first.
    pub fn pictures(&self) -> impl Iterator<Item = &str> {
        std::iter::once(self.picture.as_str()).chain(self.looks().iter().map(|look| look.picture.as_str()))
    }
}

/// The lowest number that none of `others`, the numbers of those of the same kind, is.
pub fn free_look(others: impl Iterator<Item = LookNumber>) -> LookNumber {
    let others: Vec<LookNumber> = others.collect();
    (0..LookNumber::MAX).find(|number| !others.contains(number)).unwrap_or_default()
}

/// The numbers of drops of these kinds that were hung from left to right and never changed.
pub(super) fn usual_looks(kinds: &[String]) -> Vec<LookNumber> {
    let before = |i: usize| kinds.iter().take(i).filter(|other| **other == kinds[i]).count();
    (0..kinds.len()).map(|i| LookNumber::try_from(before(i)).unwrap_or_default()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_the_lowest_that_are_free() {
        assert_eq!(free_look([].into_iter()), 0);
        assert_eq!(free_look([0, 1, 3].into_iter()), 2);
        assert_eq!(free_look([2, 1].into_iter()), 0);
        let kinds = ["key", "moon", "key", "key", "moon"].map(str::to_owned);
        assert_eq!(usual_looks(&kinds), [0, 0, 1, 2, 1]);
    }
}
