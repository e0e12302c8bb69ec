//! The paper: our own small widget layer over egui's painter. egui is given no input and keeps no widgets.

mod brush;
mod icon;
mod widgets;

pub use brush::{Brush, Touch};
pub use icon::Icon;
pub use widgets::{Look, Plate};
