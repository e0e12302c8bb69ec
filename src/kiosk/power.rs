//! Sleep: frames are drawn only while something moves, or once a second.

use std::time::Duration;

use bevy::{
    prelude::*,
    window::RequestRedraw,
    winit::{UpdateMode, WinitSettings},
};

/// Whether something still moves. Every system that moves something says so each frame.
#[derive(Resource, Debug, Default)]
pub struct Awake(bool);

impl Awake {
    /// Something moves: the next frame comes at once.
    pub fn stir(&mut self) {
        self.0 = true;
    }
}

pub(super) fn plugin(app: &mut App) {
    // The slowest tick is also the clock of the idle time.
    let mode = UpdateMode::reactive_low_power(Duration::from_secs(1));
    app.insert_resource(WinitSettings { focused_mode: mode, unfocused_mode: mode })
        .init_resource::<Awake>()
        .add_systems(Last, ask_for_the_next_frame);
}

fn ask_for_the_next_frame(mut awake: ResMut<Awake>, mut redraw: MessageWriter<RequestRedraw>) {
    if std::mem::take(&mut awake.0) {
        redraw.write(RequestRedraw);
    }
}
