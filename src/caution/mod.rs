//! Is it safe: the small-parts cylinder, the rules as data, and what to say.
//!
//! A pure room. Everything said here is a guide, not a test report; see [`DEFERRAL`].

mod gauge;
mod rules;
mod solid;
mod verdict;

pub use gauge::{Gauge, fits, slack_mm};
pub use rules::{CautionCode, Region, Rule};
pub use solid::Solid;
pub use verdict::{Caution, DEFERRAL, PieceFacts, Verdict, cautions, flux_index_kg2mm2, is_small_part};
