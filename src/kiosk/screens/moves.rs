//! Small motions of the paper that explain: the tag swings when the sum has changed, a drop shows once how to hang it.
//! All of them end by themselves, and none is made where the guest wants things still.

use bevy::prelude::*;
use rust_decimal::Decimal;

use crate::guest::Screen;
use crate::kiosk::{idle::Idle, power::Awake, tablet::Tablet};

/// How long the tag swings, in seconds.
const TAG_S: f32 = 1.3;
/// How far it swings at first, in radians.
const TAG_FAR: f32 = 0.06;
/// How long nobody has touched the stage before a drop shows the way, in seconds.
const HINT_AFTER_S: f32 = 1.4;
/// How long it takes to show it, in seconds.
const HINT_S: f32 = 2.2;
/// How long the ticket takes to be written, in seconds.
const WRITTEN_S: f32 = 0.6;
/// How long it then takes to be torn off, in seconds.
const TORN_S: f32 = 0.35;

/// How far the motions are.
#[derive(Resource, Debug, Default)]
pub(in crate::kiosk) struct Moves {
    total: Option<Decimal>,
    /// Seconds since the sum changed; `None` when the tag is still.
    swings_s: Option<f32>,
    /// From 0 to 1 while a drop shows the way.
    pub(super) hint: Option<f32>,
    /// How much of the ticket is written, and how far it is torn off, from 0 to 1.
    pub(super) ticket: (f32, f32),
}

impl Moves {
    /// How far the tag is turned, in radians.
    pub(super) fn tag_angle(&self) -> f32 {
        let Some(s) = self.swings_s else { return 0.0 };
        TAG_FAR * (-3.2 * s).exp() * (s * 11.0).sin() * (1.0 - s / TAG_S)
    }
}

pub(super) fn move_on(
    mut moves: ResMut<Moves>,
    tablet: Res<Tablet>,
    idle: Res<Idle>,
    time: Res<Time<Real>>,
    awake: Res<Awake>,
) {
    let seconds = time.delta_secs().min(0.1);
    let total = tablet.derived().quote.as_ref().map(|quote| quote.total);
    if moves.total != total {
        moves.swings_s = (moves.total.is_some() && total.is_some() && !tablet.looks().calm).then_some(0.0);
        moves.total = total;
    }
    moves.swings_s = moves.swings_s.map(|s| s + seconds).filter(|s| *s < TAG_S);
    if moves.swings_s.is_some() {
        awake.stir();
    }

    let untouched = idle.on_screen_s() <= idle.quiet_s() + 0.5;
    let may = tablet.screen() == Screen::Stage
        && !tablet.looks().calm
        && untouched
        && tablet.session().overlay.is_none()
        && tablet.session().history.now().drops.is_empty()
        && idle.quiet_s() < HINT_AFTER_S + HINT_S;
    moves.hint = may.then(|| (idle.quiet_s() - HINT_AFTER_S) / HINT_S).filter(|done| *done >= 0.0);
    if may {
        awake.stir();
    }

    let since =
        if tablet.screen() == Screen::Sent && !tablet.looks().calm { idle.on_screen_s() } else { f32::INFINITY };
    moves.ticket = ((since / WRITTEN_S).min(1.0), ((since - WRITTEN_S) / TORN_S).clamp(0.0, 1.0));
}
