//! A guest who has left: first a question with a countdown, then everything of theirs is cleared.

use bevy::prelude::*;

use super::{Phase, power::Awake, tablet::Tablet, theme};
use crate::guest::{Request, Screen};

/// The least time for an answer, whatever a catalogue says. Source: WCAG 2.2, success criterion 2.2.1 (20 seconds).
const LEAST_WARNING_S: f32 = 20.0;
/// Whoever threads a piece has both hands on the table for a long while.
const THREADING_IDLE_S: f32 = 300.0;
/// Until a catalogue says otherwise: a guest walks to the trays and back.
const DEFAULT_IDLE_S: f32 = 180.0;

/// How long nobody has touched anything.
#[derive(Resource, Debug, Default)]
pub(super) struct Idle {
    quiet_s: f32,
    /// Seconds left to answer, and of how many, while the question is on the screen.
    pub asking: Option<(f32, f32)>,
    /// Seconds since the screen came up.
    on_screen_s: f32,
}

impl Idle {
    /// Somebody is there.
    pub(super) fn touched(&mut self) {
        self.quiet_s = 0.0;
    }

    /// How long the screen has been up, in seconds.
    pub(super) fn on_screen_s(&self) -> f32 {
        self.on_screen_s
    }

    /// How long this screen has been up without anybody touching it, in seconds.
    pub(super) fn undisturbed_s(&self) -> f32 {
        self.on_screen_s.min(self.quiet_s)
    }

    /// How long nobody has touched anything, in seconds.
    pub(super) fn quiet_s(&self) -> f32 {
        self.quiet_s
    }
}

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Idle>().add_systems(Update, watch_the_clock.in_set(Phase::Attend));
}

fn watch_the_clock(
    mut idle: ResMut<Idle>,
    mut last: Local<Screen>,
    tablet: Res<Tablet>,
    time: Res<Time<Real>>,
    mut requests: MessageWriter<Request>,
    awake: Res<Awake>,
) {
    if *last != tablet.screen() {
        (*last, idle.on_screen_s) = (tablet.screen(), 0.0);
    }
    idle.on_screen_s += time.delta_secs();
    idle.quiet_s += time.delta_secs();
    let table = tablet.known().catalog().map(|catalog| &catalog.table);
    let wait = table.map_or(DEFAULT_IDLE_S, |table| table.idle_seconds as f32);
    let wait = if tablet.screen() == Screen::Threading { wait.max(THREADING_IDLE_S) } else { wait };
    let warning = table.map_or(LEAST_WARNING_S, |table| table.idle_warning_seconds as f32).max(LEAST_WARNING_S);
    match tablet.screen() {
        Screen::Welcome => {
            idle.asking = None;
            // Nothing to lose: the next guest is greeted in the table's language and looks, and no sheet is left open.
            if idle.quiet_s >= wait && !tablet.is_fresh() {
                requests.write(Request::Done);
            }
        }
        Screen::Sent => {
            idle.asking = None;
            awake.stir();
            if idle.undisturbed_s() >= theme::SENT_STAYS_S {
                requests.write(Request::Done);
            }
        }
        _ if idle.quiet_s >= wait + warning => {
            idle.asking = None;
            requests.write(Request::Done);
        }
        _ if idle.quiet_s >= wait => {
            idle.asking = Some((wait + warning - idle.quiet_s, warning));
            awake.stir();
        }
        _ => idle.asking = None,
    }
}
