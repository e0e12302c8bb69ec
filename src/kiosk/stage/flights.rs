//! Drops in the air: home to their compartment, or from a compartment to the base.

use bevy::prelude::*;
use bevy_egui::egui::{Pos2, pos2};

use super::{
    super::{power::Awake, tablet::Tablet, targets::Targets, theme},
    Hanger,
};
use crate::craft::Token;

/// Where a drop flies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum To {
    /// Its compartment.
    Home,
    /// Its place on the base.
    Base(Token),
}

/// One drop in the air.
#[derive(Debug, Clone)]
pub struct Flight {
    /// Id of its kind.
    pub kind: String,
    from: Pos2,
    /// Where it goes.
    pub to: To,
    /// 0 at the start, 1 at the end.
    pub done: f32,
    /// Where it is.
    pub at: Pos2,
}

impl Flight {
    /// A drop that starts at `from`.
    pub fn new(kind: String, from: Pos2, to: To) -> Self {
        Self { kind, from, to, done: 0.0, at: from }
    }
}

/// All drops in the air.
#[derive(Resource, Debug, Default)]
pub struct Flights {
    /// Them.
    pub all: Vec<Flight>,
    /// Where drops that are going to be hung were let go, with their kinds, the earliest first.
    starts: Vec<(String, Pos2)>,
    landed: Vec<(Token, f32)>,
}

impl Flights {
    /// The next drop of this kind that is hung starts here, where the finger let it go.
    pub fn start_at(&mut self, kind: &str, at: Pos2) {
        self.starts.push((kind.to_owned(), at));
    }

    /// The drops that have come to the base in this frame, and from which side: −1 for those that flew to the left.
    pub fn landed(&self) -> impl Iterator<Item = (Token, f32)> + '_ {
        self.landed.iter().copied()
    }

    /// A drop has been hung: it flies to the base from where it was let go, or else from its compartment.
    pub fn hung(&mut self, kind: &str, token: Token, targets: &Targets) {
        let home = targets.homes.get(kind).map(|rect| rect.center());
        let start = self.starts.iter().position(|(of, _)| of == kind).map(|first| self.starts.remove(first).1);
        if let Some(from) = start.or(home) {
            self.all.push(Flight::new(kind.to_owned(), from, To::Base(token)));
        }
    }

    /// A drop has been taken off without a finger on it: it flies home from where it hung.
    pub fn taken_off(&mut self, kind: &str, from: Pos2) {
        if !self.all.iter().any(|flight| flight.kind == kind && flight.to == To::Home && flight.done == 0.0) {
            self.all.push(Flight::new(kind.to_owned(), from, To::Home));
        }
    }

    /// The hung drops that are still on their way to the base.
    pub fn to_base(&self) -> impl Iterator<Item = Token> + '_ {
        self.all.iter().filter_map(|flight| match flight.to {
            To::Base(token) => Some(token),
            To::Home => None,
        })
    }
}

/// Moves everything that flies.
pub(super) fn fly_on(
    mut flights: ResMut<Flights>,
    hanger: Res<Hanger>,
    targets: Res<Targets>,
    tablet: Res<Tablet>,
    time: Res<Time<Real>>,
    awake: Res<Awake>,
) {
    let flights = &mut *flights;
    flights.starts.clear();
    flights.landed.clear();
    if tablet.looks().calm {
        // Whoever wants things still sees them where they belong.
        flights.all.clear();
    }
    let step = time.delta_secs().min(0.1) / theme::FLIGHT_S;
    for flight in &mut flights.all {
        flight.done += step;
        let end = match flight.to {
            To::Home => targets.homes.get(&flight.kind).map(|rect| rect.center()),
            To::Base(token) => hanger.rest_ring(token),
        };
        let end = end.unwrap_or(flight.from);
        let t = flight.done.clamp(0.0, 1.0);
        let eased = t * t * (3.0 - 2.0 * t);
        let line = flight.from + (end - flight.from) * eased;
        // A small arc: it is tossed, not drawn.
        let lift = (flight.from.distance(end) * 0.12).min(60.0) * (std::f32::consts::PI * t).sin();
        flight.at = pos2(line.x, line.y - lift);
        awake.stir();
    }
    for flight in flights.all.extract_if(.., |flight| flight.done >= 1.0) {
        if let To::Base(token) = flight.to {
            flights.landed.push((token, (flight.at.x - flight.from.x).signum()));
        }
    }
}
