//! One file for each plugin from outside.

pub(super) mod egui;
pub(super) mod reader;
pub(super) mod window;
