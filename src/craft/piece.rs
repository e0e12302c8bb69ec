//! A base with drops on it, in order.

use serde::{Deserialize, Serialize};

use super::{Length, Wearer};

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
