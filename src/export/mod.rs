//! Tables for spreadsheets: CSV that can be opened without harm.
//!
//! A pure room: it makes bytes of typed cells and writes no files.

mod cell;
mod guard;
mod table;
#[cfg(test)]
mod table_tests;

pub use cell::{Cell, DecimalMark, Moment};
pub use table::{ExportError, csv};
