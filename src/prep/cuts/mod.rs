//! Cuts: chains, ribbon and wire of mixed lengths from spools, part spools and remnants.
//!
//! ```text
//! job        what is wanted, what lies there, and what a pattern of cuts costs
//! plan       which piece is cut into what, and what of it is lost
//! quick      a good plan at once
//! knapsack   the best filling of one piece, of every capacity at once
//! bound      what no plan can cost less than, and the patterns that come close
//! filled     where rests are lost: the fewest pieces, filled to the brim
//! dive       whole numbers by and by, the rest planned anew
//! whole      whole numbers of these patterns
//! better     the quick plan made better, as long as it may go on
//! ```
//!
//! A pattern says how often each length is cut from one piece. Which patterns are worth looking at is found by their dual
//! prices (column generation, Gilmore and Gomory 1961), how often each is cut by an integer program over them.

mod better;
mod bound;
mod dive;
mod filled;
mod job;
mod knapsack;
mod plan;
#[cfg(test)]
mod published_tests;
mod quick;
#[cfg(test)]
mod tests;
mod whole;

pub use better::{BetterPlan, Progress, better_plan};
pub use job::{CutError, CutJob, Stock, Tenths, Wanted};
pub use plan::{CutPlan, StockCut};
pub use quick::quick_plan;
