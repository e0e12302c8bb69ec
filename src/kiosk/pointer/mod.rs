//! Fingers, mouse and keys: our own layer, which decides what is a tap and what a drag.
//!
//! It reads window events in their order, so that a finger that comes down, moves and leaves within one frame is
//! understood; it knows any number of fingers; a slow tap is a tap; a cancelled or lost finger puts things back.

mod fingers;
mod intake;
mod keys;
mod release;

use bevy::prelude::*;

pub(super) use fingers::{Drag, Finger, Fingers, MOUSE};
pub(super) use keys::Focus;
pub(super) use release::fling;

use super::Phase;

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Fingers>()
        .init_resource::<Focus>()
        .add_systems(Update, (intake::read_window_events, fling).chain().in_set(Phase::Intake));
}
