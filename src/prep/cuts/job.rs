//! What is wanted, what lies there, and what a pattern of cuts costs.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::craft::Length;

/// More kinds of spools and remnants than any bench has.
const MOST_STOCK: usize = 200;
/// More lengths than any maker sells.
const MOST_LENGTHS: usize = 100;
/// More pieces of one length, or spools of one kind, than are cut for any show.
const MOST_PIECES: u32 = 10_000;
/// The longest spool, in tenths of a millimetre: 1 km.
const LONGEST: u32 = 10_000_000;

/// A length in tenths of a millimetre: nobody cuts chain or ribbon finer, and whole numbers add up exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Tenths(pub u32);

impl Tenths {
    /// The next tenth that is no shorter: what is wanted is never cut too short.
    pub fn no_shorter(length: Length) -> Self {
        Self((length.mm() * 10.0 - 1e-6).ceil().clamp(0.0, f64::from(u32::MAX)) as u32)
    }

    /// The next tenth that is no longer: what lies there is never counted longer than it is.
    pub fn no_longer(length: Length) -> Self {
        Self((length.mm() * 10.0 + 1e-6).floor().clamp(0.0, f64::from(u32::MAX)) as u32)
    }

    /// In millimetres.
    pub fn mm(self) -> f64 {
        f64::from(self.0) / 10.0
    }
}

impl fmt::Display for Tenths {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", Length::from_mm(self.mm()))
    }
}

/// Spools or remnants that are alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stock {
    /// How long each is.
    pub length: Tenths,
    /// How many there are.
    pub count: u32,
    /// How much may be lost rather than beginning one: nothing for a remnant or a spool that is begun anyway.
    pub opening: Tenths,
}

/// Pieces of one length.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Wanted {
    /// How long each is.
    pub length: Tenths,
    /// How many are wanted.
    pub count: u32,
}

/// Why nothing can be planned.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CutError {
    /// Nothing is wanted.
    #[error("no lengths are wanted; say how many of which length")]
    NothingWanted,
    /// A length is none.
    #[error("{0} is no length to cut; write one above 0 mm and up to 1 km")]
    Length(Tenths),
    /// More kinds than are planned for.
    #[error("{found} {what} are more than are planned at once; at most {most} can be")]
    TooMany {
        /// Lengths or spools.
        what: &'static str,
        /// How many there are.
        found: usize,
        /// How many there may be.
        most: usize,
    },
    /// A count that is none.
    #[error("{0} pieces are not between 1 and {MOST_PIECES}")]
    Count(u32),
    /// The solver could not work with the figures.
    #[error("the plan could not be made better: {0}")]
    Solver(String),
}

/// What is cut from what.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CutJob {
    pub(super) stock: Vec<Stock>,
    pub(super) wanted: Vec<Wanted>,
    pub(super) kerf: Tenths,
    pub(super) keep_from: Option<Tenths>,
}

impl CutJob {
    /// A job. `kerf` is lost with each cut, as the link that is opened; what is left of a piece is kept for later where it is
    /// `keep_from` or longer, and lost where it is shorter. Without `keep_from` whatever is left is lost.
    ///
    /// # Errors
    /// What can't be cut, or is more than is planned at once.
    pub fn new(
        stock: Vec<Stock>,
        wanted: &[Wanted],
        kerf: Tenths,
        keep_from: Option<Tenths>,
    ) -> Result<Self, CutError> {
        if wanted.is_empty() {
            return Err(CutError::NothingWanted);
        }
        let too_many = |what, found, most| Err(CutError::TooMany { what, found, most });
        if wanted.len() > MOST_LENGTHS {
            return too_many("lengths", wanted.len(), MOST_LENGTHS);
        }
        if stock.len() > MOST_STOCK {
            return too_many("kinds of spools", stock.len(), MOST_STOCK);
        }
        let lengths = wanted.iter().map(|one| one.length).chain(stock.iter().map(|one| one.length));
        if let Some(wrong) = lengths.into_iter().find(|length| length.0 == 0 || length.0 > LONGEST) {
            return Err(CutError::Length(wrong));
        }
        if kerf.0 > LONGEST {
            return Err(CutError::Length(kerf));
        }
        let mut counts = wanted.iter().map(|one| one.count).chain(stock.iter().map(|one| one.count));
        if let Some(wrong) = counts.find(|count| *count == 0 || *count > MOST_PIECES) {
            return Err(CutError::Count(wrong));
        }
        // Longest first, each length once: what is planned does not depend on how it was written down.
        let mut once: Vec<Wanted> = Vec::new();
        for one in wanted {
            match once.iter_mut().find(|known| known.length == one.length) {
                Some(known) => known.count = (known.count + one.count).min(MOST_PIECES),
                None => once.push(*one),
            }
        }
        once.sort_by_key(|one| std::cmp::Reverse(one.length));
        Ok(Self { stock, wanted: once, kerf, keep_from })
    }

    /// The lengths, longest first, as the counts of a pattern follow each other.
    pub fn wanted(&self) -> &[Wanted] {
        &self.wanted
    }

    /// The kinds of spools and remnants.
    pub fn stock(&self) -> &[Stock] {
        &self.stock
    }

    /// What a length takes from a piece with its cut.
    pub(super) fn weight(&self, item: usize) -> u32 {
        self.wanted[item].length.0 + self.kerf.0
    }

    /// What a pattern takes from a piece, a cut behind each length.
    pub(super) fn used(&self, counts: &[u32]) -> u64 {
        counts.iter().enumerate().map(|(item, n)| u64::from(*n) * u64::from(self.weight(item))).sum()
    }

    /// How much a piece holds: behind the last length nothing has to be cut where nothing is left.
    pub(super) fn capacity(&self, stock: usize) -> u32 {
        self.stock[stock].length.0 + self.kerf.0
    }

    /// What is left of a piece.
    pub(super) fn left(&self, stock: usize, counts: &[u32]) -> u32 {
        u64::from(self.stock[stock].length.0).saturating_sub(self.used(counts)) as u32
    }

    /// Whether what is left is worth keeping.
    pub(super) fn is_kept(&self, left: u32) -> bool {
        self.keep_from.is_some_and(|from| left >= from.0 && left > 0)
    }

    /// What cutting a pattern costs in tenths of a millimetre: all that can't be kept of the piece, and beginning it.
    pub(super) fn cost(&self, stock: usize, counts: &[u32]) -> u64 {
        if counts.iter().all(|n| *n == 0) {
            return 0;
        }
        let left = self.left(stock, counts);
        let kept = if self.is_kept(left) { left } else { 0 };
        u64::from(self.stock[stock].length.0 - kept + self.stock[stock].opening.0)
    }

    /// What a length that is missing counts: more than any piece that it could be cut from.
    pub(super) fn cost_of_missing(&self) -> u64 {
        let most = self.stock.iter().map(|one| u64::from(one.length.0) + u64::from(one.opening.0)).max();
        (2 * most.unwrap_or_default() + u64::from(self.weight(0))).next_multiple_of(self.step())
    }

    /// The smallest step between the costs of two plans.
    pub(super) fn step(&self) -> u64 {
        let whole = self.stock.iter().map(|one| u64::from(one.length.0) + u64::from(one.opening.0));
        if self.keep_from.is_some() { 1 } else { whole.fold(0, gcd).max(1) }
    }
}

/// The greatest common divisor.
pub(super) fn gcd(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { gcd(b, a % b) }
}
