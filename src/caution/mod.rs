//! Is it safe: the small-parts cylinder, the rules as data, and what to say.
//!
//! ```text
//! outline, turn, oval        plane and space: hulls, rotations, shadows of round things
//! solid, posed               a body's hull, and the hull in one orientation
//! place, simplex, refine     its best place there, and the best orientation nearby
//! gauge                      the answer over all orientations
//! part, rules, verdict       small parts, whose rules, what to say to whom
//! ```
//!
//! A pure room. Everything said here is a guide, not a test report; see [`DEFERRAL`].

mod gauge;
mod outline;
mod oval;
mod part;
mod place;
mod posed;
mod refine;
mod rules;
mod simplex;
mod solid;
mod turn;
mod verdict;

pub use gauge::{Gauge, GaugeResult, fits, gauge};
pub use part::{flux_index_kg2mm2, is_hazardous, small_part};
pub use rules::{CautionCode, Region, Rule};
pub use solid::Solid;
pub use verdict::{Caution, DEFERRAL, PieceFacts, Verdict, cautions};

#[cfg(test)]
mod gauge_tests;
#[cfg(test)]
mod verdict_tests;
