//! A base with drops on it, in order.

use serde::{Deserialize, Serialize};

use super::{Length, Wearer};

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
}
