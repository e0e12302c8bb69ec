//! What letting go of something means.

use bevy::{ecs::system::SystemParam, prelude::*};
use bevy_egui::egui::{Pos2, Vec2};

use super::{
    super::{
        power::Awake,
        stage::{Flight, Flights, Hanger, To},
        tablet::Tablet,
        targets::{Scrolls, Targets},
    },
    Drag,
    fingers::Felt,
};
use crate::guest::{Request, Standing};

/// A finger that is faster than this when it lets go throws, in pixels a second.
const THROWN_PX_S: f32 = 250.0;

/// What a released thing can meet.
#[derive(SystemParam)]
pub(super) struct Released<'w> {
    scrolls: ResMut<'w, Scrolls>,
    flights: ResMut<'w, Flights>,
    tablet: Res<'w, Tablet>,
    hanger: Res<'w, Hanger>,
}

impl Released<'_> {
    /// Turns what a finger did into requests, scrolling, or a flight home.
    pub(super) fn take(&mut self, felt: Felt, targets: &Targets, requests: &mut MessageWriter<Request>) {
        match felt {
            Felt::Tap(request) => {
                requests.write(request);
            }
            Felt::Scrolled(id, dy) => {
                let scroll = self.scrolls.0.entry(id).or_default();
                scroll.speed = 0.0;
                scroll.by(dy);
            }
            Felt::Widened(by) => {
                let most_px = targets.window.map_or(f32::INFINITY, |window| window.width());
                requests.write(Request::WidenCard { by_px: by, most_px });
            }
            Felt::Released { drag: Drag::Scroll(id), speed, .. } => {
                // Where things stay still, pages stay where they are let go.
                self.scrolls.0.entry(id).or_default().speed = if self.tablet.looks().calm { 0.0 } else { -speed.y };
            }
            Felt::Released { drag: Drag::Carry { kind }, at, .. } => self.carried(kind, at, targets, requests),
            Felt::Released { drag: Drag::Slide { token }, from, at, speed } => {
                if self.hanger.pulls_off(from, at) {
                    if let Some(hung) =
                        self.tablet.session().history.now().drops.iter().find(|hung| hung.token == token)
                    {
                        // It flies from where the hand shows it: by where it was taken, not by its ring.
                        let grip = self.hanger.rest_ring(token).map_or(Vec2::ZERO, |ring| ring - from);
                        self.flights.fly(Flight::new((hung.kind.clone(), hung.look), at + grip, To::Home));
                    }
                    requests.write(Request::PullOff(token));
                } else {
                    // A drop that is slid goes where it is seen to be; one that is thrown, where it was thrown to.
                    let design = self.tablet.session().history.now().drops.iter().map(|hung| hung.token);
                    let slid = self.hanger.number_of(token, design).filter(|_| speed.length() < THROWN_PX_S);
                    let to = slid.unwrap_or_else(|| self.hanger.thrown_to(at, token));
                    requests.write(Request::Slide { token, to });
                }
            }
            Felt::Lost { drag: Drag::Carry { kind }, at, .. } => self.home(kind, at),
            // What had been pulled off glides back to its place.
            Felt::Lost { drag: Drag::Slide { token }, from, at } if self.hanger.pulls_off(from, at) => {
                let drops = &self.tablet.session().history.now().drops;
                if let Some(hung) = drops.iter().find(|hung| hung.token == token) {
                    self.flights.fly(Flight::new((hung.kind.clone(), hung.look), at, To::Base(token)));
                }
            }
            // A slid drop is still on the base and settles by itself; a tugged base too.
            Felt::Lost { .. } | Felt::Released { .. } => {}
        }
    }

    fn carried(&mut self, kind: String, at: Pos2, targets: &Targets, requests: &mut MessageWriter<Request>) {
        let on_stage = targets.stage.is_some_and(|stage| stage.contains(at));
        let open = matches!(self.tablet.derived().standing.get(&kind), Some(Standing::Open | Standing::Aside));
        if on_stage && open && self.hanger.takes_hold(at) {
            let number = self.hanger.number_at(at);
            self.flights.start_at(&kind, at);
            requests.write(Request::Hang { kind, at: Some(number) });
        } else {
            self.home(kind, at);
        }
    }

    /// What was carried from its compartment flies back, as it would have hung.
    fn home(&mut self, kind: String, at: Pos2) {
        let look = self.tablet.session().history.now().next_look(&kind);
        self.flights.fly(Flight::new((kind, look), at, To::Home));
    }
}

/// Lets flung pages run out.
pub(in crate::kiosk) fn fling(mut scrolls: ResMut<Scrolls>, time: Res<Time<Real>>, awake: Res<Awake>) {
    let seconds = time.delta_secs().min(0.1);
    if scrolls.0.values().all(|scroll| scroll.speed == 0.0) {
        return;
    }
    for scroll in scrolls.0.values_mut().filter(|scroll| scroll.speed != 0.0) {
        scroll.by(scroll.speed * seconds);
        scroll.speed *= (-3.2 * seconds).exp();
        if scroll.speed.abs() < 12.0 || scroll.offset <= 0.0 || scroll.offset >= scroll.most {
            scroll.speed = 0.0;
        }
        awake.stir();
    }
}
