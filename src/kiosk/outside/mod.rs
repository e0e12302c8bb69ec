//! One file for each plugin from outside.

pub(super) mod awake;
pub(super) mod desk_here;
pub(super) mod egui;
pub(super) mod reader;
pub(super) mod window;
