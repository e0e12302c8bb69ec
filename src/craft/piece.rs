//! A base with drops on it, in order.

use serde::{Deserialize, Serialize};

use super::{
    Length, LookNumber, Wearer,
    assortment::{free_look, usual_looks},
};

/// What a piece can be long, in millimetres: from less than a ring to more than three times round the body. Which of these
/// a base is made in is its own affair.
pub const PIECE_LENGTHS_MM: std::ops::RangeInclusive<f64> = 10.0..=10_000.0;

/// What a neck can measure round, in millimetres, from the smallest child's to the stoutest grown-up's, wide enough for
/// everybody.
pub const NECKS_MM: std::ops::RangeInclusive<f64> = 150.0..=700.0;

/// Drops that a piece can have at most: more than find room on the longest chain.
pub const MOST_DROPS: usize = 1000;

/// A piece as it is sent, filed and rung up. Ids are those of the catalogue.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Piece {
    /// Id of the base.
    pub base: String,
    /// Whole length of a necklace; a bangle has none.
    pub length: Option<Length>,
    /// Who it is for.
    pub wearer: Wearer,
    /// Neck of the wearer, where they said it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub neck: Option<Length>,
    /// Ids of the drops, left to right.
    pub drops: Vec<String>,
    /// The numbers by which drops of assortments keep their looks, one for each drop; none where they are the usual ones, of
    /// drops that were hung from left to right.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub looks: Vec<LookNumber>,
}

impl Piece {
    /// The numbers of the drops' looks, one for each drop.
    pub fn look_numbers(&self) -> Vec<LookNumber> {
        if self.looks.len() == self.drops.len() { self.looks.clone() } else { usual_looks(&self.drops) }
    }

    /// The same with these drops and the numbers of their looks.
    #[must_use]
    pub fn with_drops(mut self, drops: impl IntoIterator<Item = (String, LookNumber)>) -> Self {
        (self.drops, self.looks) = drops.into_iter().unzip();
        if self.looks == usual_looks(&self.drops) {
            self.looks.clear();
        }
        self
    }

    /// The drops with the numbers of their looks.
    pub fn hung(&self) -> impl Iterator<Item = (&str, LookNumber)> {
        self.drops.iter().map(String::as_str).zip(self.look_numbers())
    }

    /// The same with a drop more as number `at` from the left; past the end means at the end.
    #[must_use]
    pub fn with(&self, kind: &str, at: usize) -> Self {
        let look = free_look(self.hung().filter(|(other, _)| *other == kind).map(|(_, look)| look));
        let mut drops: Vec<_> = self.hung().map(|(id, look)| (id.to_owned(), look)).collect();
        drops.insert(at.min(drops.len()), (kind.to_owned(), look));
        self.clone().with_drops(drops)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn piece(drops: &[&str], looks: &[LookNumber]) -> Piece {
        let drops = drops.iter().map(|id| (*id).to_owned()).collect();
        Piece { base: "chain".into(), length: None, wearer: Wearer::From13, neck: None, drops, looks: looks.to_vec() }
    }

    /// Pieces of earlier versions have no numbers, and a usual piece is written as it ever was.
    #[test]
    fn what_is_usual_is_not_written() {
        let plain = piece(&["mix", "key", "mix"], &[]);
        let written = serde_json::to_string(&plain).unwrap();
        assert!(!written.contains("looks"), "{written}");
        let read: Piece = serde_json::from_str(&written).unwrap();
        assert_eq!((&read, read.look_numbers()), (&plain, vec![0, 0, 1]));
        let same = plain.clone().with_drops(plain.hung().map(|(id, look)| (id.to_owned(), look)));
        assert_eq!(same, plain);
        let other = piece(&["mix", "key", "mix"], &[1, 0, 0]);
        let read: Piece = serde_json::from_str(&serde_json::to_string(&other).unwrap()).unwrap();
        assert_eq!(read.look_numbers(), [1, 0, 0]);
        assert_eq!(piece(&["mix"], &[7, 8]).look_numbers(), [0], "what does not fit the drops counts for nothing");
    }

    #[test]
    fn a_drop_more_leaves_the_others_as_they_look() {
        let two = piece(&["mix", "mix"], &[2, 0]);
        assert_eq!(two.with("mix", 1).hung().collect::<Vec<_>>(), [("mix", 2), ("mix", 1), ("mix", 0)]);
        assert_eq!(two.with("key", 99).hung().collect::<Vec<_>>(), [("mix", 2), ("mix", 0), ("key", 0)]);
    }
}
