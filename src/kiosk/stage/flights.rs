//! Drops in the air: home to their compartment, or from a compartment to the base.

use bevy::prelude::*;
use bevy_egui::egui::{Pos2, pos2};

use super::{
    super::{power::Awake, tablet::Tablet, targets::Targets, theme},
    Hanger,
    in_hand::ring_over,
};
use crate::craft::{LookNumber, Token};

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
    /// How it looks, of an assortment.
    pub look: LookNumber,
    from: Pos2,
    /// It starts in its compartment, not in a hand.
    pub(super) from_home: bool,
    /// Its number among all flights there ever were.
    pub(super) number: u64,
    /// Where it goes.
    pub to: To,
    /// 0 at the start, 1 at the end; below zero while it waits for its turn.
    pub done: f32,
    /// Where it is.
    pub at: Pos2,
}

impl Flight {
    /// A drop that starts at `from`.
    pub fn new((kind, look): (String, LookNumber), from: Pos2, to: To) -> Self {
        Self { kind, look, from, from_home: false, number: 0, to, done: 0.0, at: from }
    }

    /// How far it is, from 0 to 1: slow at both ends.
    pub(super) fn eased(&self) -> f32 {
        let t = self.done.clamp(0.0, 1.0);
        t * t * (3.0 - 2.0 * t)
    }
}

/// All drops in the air.
#[derive(Resource, Debug, Default)]
pub struct Flights {
    /// Them.
    pub all: Vec<Flight>,
    /// Where drops that are going to be hung were let go, with their kinds, the earliest first.
    starts: Vec<(String, Pos2)>,
    landed: Vec<Landed>,
    /// How many there ever were.
    count: u64,
}

/// A drop that has come to the base.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Landed {
    /// The drop, by its number in the design.
    pub token: Token,
    /// Where its ring took hold, in pixels of the window.
    pub at: Pos2,
    /// From which side: −1 if it flew to the left.
    pub way: f32,
}

/// How long one drop waits for the one that is dealt before it, as a share of its flight, and how long the last waits at most.
const DEALT_APART: f32 = 0.32;
const DEALT_WITHIN: f32 = 2.6;

impl Flights {
    /// The next drop of this kind that is hung starts here, where the finger let it go.
    pub fn start_at(&mut self, kind: &str, at: Pos2) {
        self.starts.push((kind.to_owned(), at));
    }

    /// The drops that have come to the base in this frame.
    pub fn landed(&self) -> &[Landed] {
        &self.landed
    }

    /// A drop flies off.
    pub fn fly(&mut self, flight: Flight) {
        self.count += 1;
        self.all.push(Flight { number: self.count, ..flight });
    }

    /// A drop has been hung: it flies to the base from where it was let go, or else from its compartment; where many are
    /// hung at once, they are dealt one after the other.
    pub fn hung(&mut self, (kind, look): (&str, LookNumber), token: Token, targets: &Targets) {
        let home = targets.homes.get(kind).map(|rect| rect.center());
        let start = self.starts.iter().position(|(of, _)| of == kind).map(|first| self.starts.remove(first).1);
        let before = self.all.iter().filter(|flight| flight.from_home && flight.done <= 0.0).count();
        let waits = if start.is_none() { (before as f32 * DEALT_APART).min(DEALT_WITHIN) } else { 0.0 };
        if let Some(from) = start.or(home) {
            let flight = Flight::new((kind.to_owned(), look), from, To::Base(token));
            self.fly(Flight { from_home: start.is_none(), done: -waits, ..flight });
        }
    }

    /// A drop has been taken off without a finger on it: it flies home from where it hung.
    pub fn taken_off(&mut self, (kind, look): (&str, LookNumber), from: Pos2) {
        if !self.all.iter().any(|flight| flight.kind == kind && flight.to == To::Home && flight.done == 0.0) {
            self.fly(Flight::new((kind.to_owned(), look), from, To::Home));
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
            To::Home => {
                let kind = tablet.known().catalog().and_then(|catalog| catalog.drop_kind(&flight.kind));
                kind.zip(targets.homes.get(&flight.kind))
                    .map(|(kind, home)| ring_over(&kind.hung_as(flight.look), *home))
            }
            To::Base(token) => hanger.rest_ring(token),
        };
        let end = end.unwrap_or(flight.from);
        let t = flight.done.clamp(0.0, 1.0);
        let line = flight.from + (end - flight.from) * flight.eased();
        // A small arc: it is tossed, not drawn.
        let lift = (flight.from.distance(end) * 0.12).min(60.0) * (std::f32::consts::PI * t).sin();
        flight.at = pos2(line.x, line.y - lift);
        awake.stir();
    }
    for flight in flights.all.extract_if(.., |flight| flight.done >= 1.0) {
        if let To::Base(token) = flight.to {
            flights.landed.push(Landed { token, at: flight.at, way: (flight.at.x - flight.from.x).signum() });
        }
    }
}
