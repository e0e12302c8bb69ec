//! Sleep: frames are drawn only while something moves, or at a slow tick.

use std::{
    sync::atomic::{AtomicBool, Ordering},
    time::Duration,
};

use super::tablet::Tablet;
use crate::guest::Screen;
use bevy::{
    a11y::AccessibilityRequested,
    prelude::*,
    window::RequestRedraw,
    winit::{UpdateMode, WinitSettings},
};

/// The slowest tick: the clock of the idle time and of the number on the screen.
const TICK: Duration = Duration::from_secs(1);
/// The slowest tick on Welcome, where nothing hangs on half a minute; touches and the desk's news wake it at once.
const WELCOME_TICK: Duration = Duration::from_secs(30);
/// The slowest tick while a screen reader listens: what its user asks for does not wake the screen by itself.
const READER_TICK: Duration = Duration::from_millis(100);

/// Whether something still moves. Every system that moves something says so each frame.
#[derive(Resource, Debug, Default)]
pub(super) struct Awake(AtomicBool);

impl Awake {
    /// Something moves: the next frame comes at once.
    pub(super) fn stir(&self) {
        self.0.store(true, Ordering::Relaxed);
    }
}

pub(super) fn plugin(app: &mut App) {
    app.insert_resource(ticking(TICK))
        .init_resource::<Awake>()
        .add_systems(Last, (set_the_tick, ask_for_the_next_frame));
}

/// In front or not, the tablet ticks alike.
fn ticking(tick: Duration) -> WinitSettings {
    let mode = UpdateMode::reactive_low_power(tick);
    WinitSettings { focused_mode: mode, unfocused_mode: mode }
}

fn set_the_tick(
    tablet: Res<Tablet>,
    reader: Res<AccessibilityRequested>,
    mut before: Local<Option<(Screen, bool)>>,
    mut settings: ResMut<WinitSettings>,
) {
    let now = (tablet.screen(), reader.get());
    if before.replace(now) != Some(now) {
        *settings = ticking(match now {
            (_, true) => READER_TICK,
            (Screen::Welcome, false) => WELCOME_TICK,
            _ => TICK,
        });
    }
}

fn ask_for_the_next_frame(awake: Res<Awake>, mut redraw: MessageWriter<RequestRedraw>) {
    if awake.0.swap(false, Ordering::Relaxed) {
        redraw.write(RequestRedraw);
    }
}
