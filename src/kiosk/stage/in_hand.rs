//! Drops in the hand and in the air, each swinging below its ring.

use std::borrow::Cow;

use bevy::prelude::*;
use bevy_egui::egui::{Pos2, Rect, vec2};

use super::{
    super::{
        pointer::{Drag, Finger, Fingers},
        power::Awake,
        tablet::Tablet,
        targets::Targets,
    },
    Flights, Hanger, To,
    seen::Place,
};
use crate::{
    catalog::Catalog,
    craft::{DropKind, LookNumber},
    hang::{Dangle, Hanging, Point, reach_mm},
};

/// How high a hand holds a drop over the table, and how high one flies at most, in millimetres.
const HAND_MM: f32 = 9.0;
/// What is in a hand looks a little larger: it is nearer.
const NEARER: f32 = 1.06;
/// A drop in a hand is at least so long on the screen, in pixels of a small tablet: never too small to see under a finger.
const LEAST_PX: f32 = 64.0;
/// How much of a compartment a drop that lies in it takes.
const LYING: f32 = 0.62;

/// Whose it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum By {
    Finger(u64),
    Flight(u64),
}

/// One drop that does not hang.
#[derive(Debug, Clone)]
pub struct Held {
    by: By,
    /// Id of its kind.
    pub kind: String,
    /// How it looks, of an assortment.
    pub look: LookNumber,
    /// Where its ring is.
    pub ring: Pos2,
    px_per_mm: f32,
    lifted_mm: f32,
    dangle: Dangle,
}

impl Held {
    /// Where it is.
    pub(super) fn place(&self) -> Place {
        Place {
            pivot: self.ring,
            lean_rad: self.dangle.lean_rad() as f32,
            aside_mm: 0.0,
            px_per_mm: self.px_per_mm,
            lifted_mm: self.lifted_mm,
        }
    }
}

/// All drops that do not hang.
#[derive(Resource, Debug, Default)]
pub struct InHand(Vec<Held>);

impl InHand {
    /// They, the lowest first.
    pub fn all(&self) -> &[Held] {
        &self.0
    }
}

/// Where one drop is to be in this frame.
struct Wanted<'a> {
    by: By,
    kind: Cow<'a, DropKind>,
    look: LookNumber,
    ring: Pos2,
    px_per_mm: f32,
    lifted_mm: f32,
}

/// Leads the rings of all drops that do not hang; their bodies follow.
#[expect(clippy::too_many_arguments, reason = "a system's parameters are what it reads")]
pub(super) fn lead(
    mut in_hand: ResMut<InHand>,
    fingers: Res<Fingers>,
    flights: Res<Flights>,
    hanger: Res<Hanger>,
    tablet: Res<Tablet>,
    targets: Res<Targets>,
    time: Res<Time<Real>>,
    awake: Res<Awake>,
) {
    let Some(catalog) = tablet.known().catalog() else {
        in_hand.0.clear();
        return;
    };
    let mut wanted: Vec<Wanted> =
        flights.all.iter().filter_map(|flight| in_the_air(catalog, flight, &hanger, &targets)).collect();
    wanted.extend(fingers.iter().filter_map(|finger| in_a_hand(catalog, finger, &hanger, &tablet)));
    let before = std::mem::take(&mut in_hand.0);
    let calm = tablet.looks().calm;
    for want in wanted {
        let had = before.iter().find(|held| held.by == want.by);
        // What leaves a hand flies on as it hung there.
        let had = had.or_else(|| before.iter().find(|held| held.kind == want.kind.id && held.by != want.by));
        let px = want.px_per_mm.max(0.01);
        let place = Point { x_mm: f64::from(want.ring.x / px), y_mm: f64::from(want.ring.y / px) };
        let mut dangle =
            had.map_or_else(|| Dangle::at_rest(&Hanging::new(0, &want.kind), place), |had| had.dangle.clone());
        if calm {
            dangle = Dangle::at_rest(&Hanging::new(0, &want.kind), place);
        } else {
            dangle.follow(place, time.delta_secs_f64());
            if !dangle.is_still() {
                awake.stir();
            }
        }
        let Wanted { by, kind, look, ring, px_per_mm, lifted_mm } = want;
        in_hand.0.push(Held { by, kind: kind.id.clone(), look, ring, px_per_mm, lifted_mm, dangle });
    }
}

/// The size at which a drop is held: that of the stage, but never too small.
fn held_px_per_mm(kind: &DropKind, hanger: &Hanger) -> f32 {
    (LEAST_PX / (kind.height.mm() as f32).max(1.0)).max(hanger.px_per_mm).max(0.5)
}

fn in_a_hand<'a>(catalog: &'a Catalog, finger: &Finger, hanger: &Hanger, tablet: &Tablet) -> Option<Wanted<'a>> {
    if !finger.dragging {
        return None;
    }
    let design = tablet.session().history.now();
    let (id, look, ring) = match &finger.drag {
        // As it is going to hang.
        Drag::Carry { kind } => (kind.as_str(), design.next_look(kind), finger.now),
        // What still hangs is on the stage; what has been pulled off is in the hand.
        Drag::Slide { token } if hanger.pulls_off(finger.from, finger.now) => {
            let hung = design.drops.iter().find(|hung| hung.token == *token)?;
            let grip = hanger.rest_ring(*token).map_or(vec2(0.0, 0.0), |ring| ring - finger.from);
            (hung.kind.as_str(), hung.look, finger.now + grip)
        }
        Drag::Slide { .. } | Drag::Nothing | Drag::Swing | Drag::Scroll(_) | Drag::Corner => return None,
    };
    let kind = catalog.drop_kind(id)?.hung_as(look);
    let px_per_mm = held_px_per_mm(&kind, hanger) * NEARER;
    Some(Wanted { by: By::Finger(finger.id), kind, look, ring, px_per_mm, lifted_mm: HAND_MM })
}

fn in_the_air<'a>(
    catalog: &'a Catalog,
    flight: &super::Flight,
    hanger: &Hanger,
    targets: &Targets,
) -> Option<Wanted<'a>> {
    let kind = catalog.drop_kind(&flight.kind)?.hung_as(flight.look);
    let stage = held_px_per_mm(&kind, hanger);
    let tray = targets.homes.get(&flight.kind).map_or(stage, |home| lying_px_per_mm(&kind, *home));
    let t = flight.eased();
    let (from, to) = match flight.to {
        To::Home => (stage, tray),
        To::Base(_) if flight.from_home => (tray, stage),
        To::Base(_) => (stage, hanger.px_per_mm.max(0.5)),
    };
    let lifted_mm = HAND_MM * (1.0 - (2.0 * t - 1.0).powi(4));
    let (by, px_per_mm) = (By::Flight(flight.number), from + (to - from) * t);
    Some(Wanted { by, kind, look: flight.look, ring: flight.at, px_per_mm, lifted_mm })
}

/// The size at which a drop lies in its compartment, more or less.
fn lying_px_per_mm(kind: &DropKind, home: Rect) -> f32 {
    let long = (reach_mm(kind) as f32).max(kind.width.mm() as f32).max(1.0);
    LYING * home.width().min(home.height()) / long
}

/// From the middle of its compartment up to a drop's ring, in pixels: the drop lands where it lies.
pub(super) fn ring_over(kind: &DropKind, home: Rect) -> Pos2 {
    home.center() - vec2(0.0, reach_mm(kind) as f32 * lying_px_per_mm(kind, home) / 2.0)
}
