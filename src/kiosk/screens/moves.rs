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
/// When the number comes down on the ticket, and how long that takes, in seconds: the piece has glided there.
const STAMP_AT_S: f32 = 0.45;
const STAMP_S: f32 = 0.16;
/// How fast a tray comes in, per second.
const DRAWER_RATE: f32 = 16.0;
/// One pulse of the compartment that is looked for, and how long it pulses after the last touch, in seconds.
const PULSE_S: f32 = 1.1;
const PULSES_S: f32 = 20.0;
/// How long the ticket then takes to be torn off, in seconds.
const TORN_S: f32 = 0.35;

/// How far the motions are.
#[derive(Resource, Debug, Default)]
pub(in crate::kiosk) struct Moves {
    total: Option<Decimal>,
    /// Seconds since the sum changed; `None` when the tag is still.
    swings_s: Option<f32>,
    /// From 0 to 1 while a drop shows the way.
    pub(super) hint: Option<f32>,
    /// How far the tray that was turned to has still to come, as a share of its width; below zero from the left.
    pub(super) drawer: f32,
    /// The tray that was shown last.
    tray: usize,
    /// How strongly the compartment that is looked for shines, from 0 to 1.
    pub(super) pulse: f32,
    /// How far the ticket's number is stamped, and the ticket torn off.
    pub(super) ticket: TicketMoves,
}

/// A sent ticket's motions, each from 0 to 1.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct TicketMoves {
    /// Its number is stamped on.
    pub stamped: f32,
    /// It is torn off its block.
    pub torn: f32,
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

    let turned = tablet.session().tray;
    if turned != moves.tray {
        moves.drawer = if turned > moves.tray { 1.0 } else { -1.0 };
        moves.tray = turned;
    }
    moves.drawer *= (-DRAWER_RATE * seconds).exp();
    if tablet.looks().calm || tablet.screen() != Screen::Stage || moves.drawer.abs() < 0.002 {
        moves.drawer = 0.0;
    } else {
        awake.stir();
    }

    let looks_for = tablet.screen() == Screen::PutBack && tablet.session().whereabouts.is_some();
    let pulses = looks_for && !tablet.looks().calm && idle.quiet_s() < PULSES_S;
    moves.pulse = if pulses { 0.5 - 0.5 * (idle.quiet_s() * std::f32::consts::TAU / PULSE_S).cos() } else { 0.0 };
    if pulses {
        awake.stir();
    }

    let since =
        if tablet.screen() == Screen::Sent && !tablet.looks().calm { idle.on_screen_s() } else { f32::INFINITY };
    let part = |from: f32, long: f32| ((since - from) / long).clamp(0.0, 1.0);
    moves.ticket = TicketMoves { stamped: part(STAMP_AT_S, STAMP_S), torn: part(STAMP_AT_S + STAMP_S, TORN_S) };
}
