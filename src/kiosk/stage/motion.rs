//! The piece as it moves: the design hung in the simulation, fingers on it, and the breath that sways the sample.

use std::collections::HashMap;

use bevy::prelude::*;
use bevy_egui::egui::Pos2;

use super::{
    super::{
        idle::Idle,
        pointer::{Drag, Finger, Fingers},
        power::Awake,
        tablet::Tablet,
    },
    Flight, Flights, Hanger, To,
};
use crate::{
    catalog::Catalog,
    craft::{DropKind, LookNumber, Token},
    guest::{Derived, Screen, Session},
    hang::{Motion, MotionPlan, Point, back_to_front, worn_neck_mm},
};

/// The sample on Welcome sways so long after the last touch, then sleeps.
const SWAY_S: f32 = 24.0;
/// How hard it is breathed on, in mm/s², and how often, in radians a second: about its own swing.
const BREATH_MM_S2: f32 = 420.0;
const BREATH_RATE: f32 = 4.6;

/// How fast a drop that has flown to the base swings on when it lands and how hard it pulls the base down, in mm/s.
const LANDS_MM_S: f64 = 70.0;
const DIPS_MM_S: f64 = 190.0;
/// It lands so far up the chain from its rest, on the side from which it came, and slides down to its neighbours.
const LANDS_ASIDE_MM: f64 = 7.0;
/// How fast a piece swings when it comes to lie on its ticket, in mm/s.
const ARRIVES_MM_S: f64 = 150.0;
/// What is left of every speed when a drop is pulled off: a tug at one does not fling the others.
const KEPT_SPEED: f64 = 0.25;

/// The piece in motion; none while nothing hangs.
#[derive(Resource, Debug, Default)]
pub struct Moving {
    motion: Option<Motion>,
    plan: Option<MotionPlan>,
    /// What is shown, each as it hangs.
    shown: Vec<(Token, DropKind)>,
    /// What of it does not hang now: it flies, or a finger has pulled it off.
    off: Vec<Token>,
    /// Id of the base it hangs on, and the screen on which it was seen.
    seen: (Option<String>, Screen),
}

impl Moving {
    /// The piece.
    pub fn now(&self) -> Option<&Motion> {
        self.motion.as_ref()
    }

    /// A drop that is shown, as it hangs.
    pub fn kind(&self, token: Token) -> Option<&DropKind> {
        self.shown.iter().find(|(shown, _)| *shown == token).map(|(_, kind)| kind)
    }

    /// The pictures that are shown.
    pub fn pictures(&self) -> impl Iterator<Item = &str> {
        self.shown.iter().map(|(_, kind)| kind.picture.as_str())
    }

    /// Which of the shown drops is in front of which, from 0 at the back.
    pub(super) fn ranks(&self) -> HashMap<Token, usize> {
        ranks(self.shown.iter().map(|(token, kind)| (*token, kind)))
    }

    /// A guest's drops slide over to another base from where they hang.
    fn slide_over(&mut self, tablet: &Res<Tablet>, hanger: &Hanger, flights: &mut Flights) {
        if !tablet.is_changed() {
            return;
        }
        let base = tablet.derived().piece.as_ref().map(|piece| piece.base.clone());
        let before = std::mem::replace(&mut self.seen, (base, tablet.screen()));
        let another = before.0.is_some() && self.seen.0.is_some() && before.0 != self.seen.0;
        // From one guest to the next everything else is another as well.
        if !another || before.1 == Screen::Welcome || self.seen.1 == Screen::Welcome || tablet.looks().calm {
            return;
        }
        for hung in &tablet.session().history.now().drops {
            let waits = self.shown.iter().any(|(token, _)| *token == hung.token);
            if let Some(at) = hanger.ring(hung.token).filter(|_| waits) {
                flights.fly(Flight::new((hung.kind.clone(), hung.look), at, To::Base(hung.token)));
            }
        }
    }

    /// Hangs what `plan` says. What does not hang leaves everything as it is.
    fn hang(&mut self, plan: Option<MotionPlan>) {
        if self.plan == plan {
            return;
        }
        match (&plan, &mut self.motion) {
            (None, motion) => *motion = None,
            (Some(plan), Some(motion)) => {
                // What does not hang leaves the motion of the same base as it was; the guest is told of it elsewhere.
                if motion.follow(plan).is_err() && self.plan.as_ref().is_none_or(|was| was.base != plan.base) {
                    self.motion = None;
                }
            }
            (Some(plan), motion) => *motion = Motion::at_rest(plan).ok(),
        }
        self.plan = plan;
    }
}

/// Which of these drops is in front of which, from 0 at the back.
pub fn ranks<'a>(drops: impl Iterator<Item = (Token, &'a DropKind)>) -> HashMap<Token, usize> {
    let (tokens, kinds): (Vec<Token>, Vec<&DropKind>) = drops.unzip();
    back_to_front(&kinds).into_iter().enumerate().map(|(rank, place)| (tokens[place], rank)).collect()
}

/// What is shown: the guest's drops, or the sample's with numbers of their own.
fn shown(catalog: &Catalog, session: &Session, derived: &Derived) -> Vec<(Token, DropKind)> {
    let own = &session.history.now().drops;
    let hung =
        |token: Token, id: &str, look: LookNumber| Some((token, catalog.drop_kind(id)?.hung_as(look).into_owned()));
    match &derived.piece {
        Some(piece) if own.is_empty() => {
            (0..).zip(piece.hung()).filter_map(|(token, (id, look))| hung(token, id, look)).collect()
        }
        Some(_) => own.iter().filter_map(|one| hung(one.token, &one.kind, one.look)).collect(),
        None => vec![],
    }
}

/// What hangs: all that is shown but what flies or has been pulled off by a finger.
fn hanging(catalog: &Catalog, derived: &Derived, shown: &[(Token, DropKind)], off: &[Token]) -> Option<MotionPlan> {
    let (piece, _) = (derived.piece.as_ref()?, derived.places.as_ref()?);
    let base = catalog.base(&piece.base)?;
    let drops = shown.iter().filter(|(token, _)| !off.contains(token));
    let drops = drops.map(|(token, kind)| (*token, kind));
    MotionPlan::of_piece(base, piece.length, drops, worn_neck_mm(base, piece), catalog.table.rho).ok()
}

#[expect(clippy::too_many_arguments, reason = "a system's parameters are what it reads")]
pub(super) fn move_on(
    mut moving: ResMut<Moving>,
    mut hanger: ResMut<Hanger>,
    tablet: Res<Tablet>,
    fingers: Res<Fingers>,
    mut flights: ResMut<Flights>,
    idle: Res<Idle>,
    time: Res<Time<Real>>,
    awake: Res<Awake>,
    mut screen: Local<Screen>,
) {
    let Some(catalog) = tablet.known().catalog() else { return };
    hanger.carried = fingers.iter().any(|finger| finger.dragging && finger.drag == Drag::Swing);
    let pulled = fingers.iter().filter(|finger| finger.dragging && hanger.pulls_off(finger.from, finger.now));
    let held_off: Vec<Token> = pulled.filter_map(slid).collect();
    let pulled_off = held_off.iter().any(|token| !moving.off.contains(token));
    moving.slide_over(&tablet, &hanger, &mut flights);
    let off: Vec<Token> = held_off.into_iter().chain(flights.to_base()).collect();
    if tablet.is_changed() || off != moving.off {
        (moving.shown, moving.off) = (shown(catalog, tablet.session(), tablet.derived()), off);
        let plan = hanging(catalog, tablet.derived(), &moving.shown, &moving.off);
        moving.hang(plan);
    }
    let Some(motion) = &mut moving.motion else {
        hanger.take_live(None);
        return;
    };
    if pulled_off {
        motion.hush(KEPT_SPEED);
    }
    let calm = tablet.looks().calm;
    let arrived = tablet.screen() == Screen::Sent && *screen != Screen::Sent;
    *screen = tablet.screen();
    if arrived && !calm {
        // On its ticket it sways once.
        let hung: Vec<Token> = motion.rings().map(|(token, _)| token).collect();
        hung.into_iter().for_each(|token| motion.take_hold(token, None, ARRIVES_MM_S, 0.0));
    }
    for landed in flights.landed().iter().filter(|_| !calm) {
        let rest = hanger.to_mm(landed.at);
        let at = Point { x_mm: rest.x_mm - f64::from(landed.way) * LANDS_ASIDE_MM, ..rest };
        motion.take_hold(landed.token, Some(at), f64::from(landed.way) * LANDS_MM_S, DIPS_MM_S);
    }
    let place = |p: Pos2| -> Point { hanger.to_mm(p) };
    for finger in fingers.iter().filter(|finger| finger.dragging) {
        if !motion.holds(finger.id) {
            match &finger.drag {
                Drag::Swing => motion.take_base(finger.id, place(finger.from)),
                Drag::Slide { token } => motion.take_drop(finger.id, *token, place(finger.from)),
                Drag::Nothing | Drag::Carry { .. } | Drag::Scroll(_) | Drag::Corner => {}
            }
        }
        motion.pull(finger.id, place(finger.now));
    }
    motion.release_all_but(|id| fingers.iter().any(|finger| finger.id == id && finger.dragging));
    let sway_left = (1.0 - idle.quiet_s() / SWAY_S).clamp(0.0, 1.0);
    let sways = tablet.screen() == Screen::Welcome && sway_left > 0.0 && !tablet.looks().calm;
    let breath = if sways { (idle.on_screen_s() * BREATH_RATE).sin() * BREATH_MM_S2 * sway_left.sqrt() } else { 0.0 };
    motion.breathe(f64::from(breath));
    motion.advance(time.delta_secs_f64());
    if !motion.asleep() {
        awake.stir();
    }
    hanger.take_live(Some(motion));
}

fn slid(finger: &Finger) -> Option<Token> {
    match finger.drag {
        Drag::Slide { token } => Some(token),
        Drag::Nothing | Drag::Carry { .. } | Drag::Swing | Drag::Scroll(_) | Drag::Corner => None,
    }
}
