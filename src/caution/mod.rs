//! Is it safe: the small-parts cylinder, the rules as data, and what to say.
//!
//! ```text
//! outline, turn, oval        plane and space: hulls, rotations, shadows of round things
//! solid, posed               a body's hull, and the hull in one orientation
//! place, simplex, refine     its best place there, and the best orientation nearby
//! cylinder, gauge            the test cylinder; the answer over all orientations
//! part, sizes                small parts, a whole catalogue of them
//! code, region, dated, rules what cautions there are, and what each region's file says of them
//! read_rules, check_rules    reading a region's file, and what it gets wrong
//! find, form, metals         what there is to be careful about, without words
//! say, verdict, hazard       its English, what to say to whom, one card for each hazard
//! table, table_cases         all of it on a page for whoever assesses it
//! ```
//!
//! A pure room. Everything said here is a guide, not a test report; see [`DEFERRAL`].

mod check_rules;
mod code;
mod cylinder;
mod dated;
mod find;
mod form;
mod gauge;
mod hazard;
mod metals;
mod outline;
mod oval;
mod part;
mod place;
mod posed;
mod read_rules;
mod refine;
mod region;
mod rules;
mod say;
mod simplex;
mod sizes;
mod solid;
mod table;
mod table_cases;
mod turn;
mod verdict;

pub use code::CautionCode;
pub use cylinder::Gauge;
pub use dated::Dated;
pub use gauge::{GaugeResult, Size, gauge};
pub use hazard::Hazard;
pub use outline::hull;
pub use part::{PartSize, flux_index_kg2mm2};
pub use region::Region;
pub use rules::{Limit, OtherLimit, Rule, Rules, Status, Within};
pub use sizes::Sizes;
pub use solid::Solid;
pub use table::table;
#[cfg(test)]
pub(crate) use table_cases::cases;
pub use verdict::{Caution, DEFERRAL, PieceFacts, Verdict, cautions, drop_cautions, drop_suits};

#[cfg(test)]
mod assortment_tests;
#[cfg(test)]
mod gauge_tests;
#[cfg(test)]
mod monotone_tests;
#[cfg(test)]
mod verdict_tests;
