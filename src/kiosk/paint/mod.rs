//! The paper: our own small widget layer over egui's painter. egui is given no input and keeps no widgets.

mod brush;
mod icon;
mod proof;
mod widgets;

pub(super) use brush::{Brush, Kept, Touch};
pub use icon::Icon;
pub use proof::{Proof, Written};
pub(super) use widgets::{Look, Plate};
