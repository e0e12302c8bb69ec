//! What was made of which lots, with the bench check.

use std::collections::{BTreeMap, BTreeSet};

use serde::{Deserialize, Serialize};

/// The kind of these pages in the workbook.
pub const MADE: &str = "made";

/// What is looked at before a piece leaves the bench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BenchCheck {
    /// Every loop and ring is closed.
    LoopsClosed,
    /// Wire ends are trimmed and turned in.
    WireTrimmed,
    /// Corks are glued.
    CorksGlued,
    /// The chain's end rings hold.
    EndRings,
    /// Each was pulled by hand, and nothing came off.
    Pull,
}

impl BenchCheck {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::LoopsClosed, Self::WireTrimmed, Self::CorksGlued, Self::EndRings, Self::Pull];

    /// The name in forms, files and texts.
    pub const fn code(self) -> &'static str {
        match self {
            Self::LoopsClosed => "loops_closed",
            Self::WireTrimmed => "wire_trimmed",
            Self::CorksGlued => "corks_glued",
            Self::EndRings => "end_rings",
            Self::Pull => "pull",
        }
    }

    /// The check called `code`.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.code() == code)
    }
}

/// Pieces that were made and checked together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Made {
    /// What they are, by id.
    pub of: String,
    /// How many were made together.
    pub count: u32,
    /// The lots that went into them, by the id of the part. A part that is not told can be of any lot.
    #[serde(default)]
    pub lots: BTreeMap<String, BTreeSet<String>>,
    /// What was checked.
    #[serde(default)]
    pub checks: BTreeSet<BenchCheck>,
    /// Anything else, in the maker's words.
    #[serde(default)]
    pub note: String,
}
