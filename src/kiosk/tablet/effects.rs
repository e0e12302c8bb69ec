//! What a request or a piece of news asks to be carried out beyond the session: flights, pages, the line, the way out.

use bevy::{ecs::system::SystemParam, prelude::*};

use super::{Heard, Tablet};
use crate::{
    guest::{Effect, Request},
    kiosk::{
        bridge::Line,
        idle::Idle,
        stage::{Flights, Hanger},
        targets::{ScrollId, Scrolls, Targets},
    },
};

/// How much of what is seen a page turns, so that a line stays in view.
const PAGE: f32 = 0.8;

/// What effects reach.
#[derive(SystemParam)]
pub(super) struct Outside<'w> {
    scrolls: ResMut<'w, Scrolls>,
    flights: ResMut<'w, Flights>,
    idle: ResMut<'w, Idle>,
    exit: MessageWriter<'w, AppExit>,
    hanger: Res<'w, Hanger>,
    targets: Res<'w, Targets>,
    line: Res<'w, Line>,
}

pub(super) fn take_in(
    mut requests: MessageReader<Request>,
    mut news: MessageReader<Heard>,
    mut tablet: ResMut<Tablet>,
    mut outside: Outside,
) {
    let paired = outside.line.link.is_paired();
    if tablet.known().paired != paired {
        tablet.0.set_paired(paired);
    }
    for request in requests.read() {
        let effects = tablet.0.apply(request.clone());
        outside.carry_out(effects);
    }
    for Heard(news) in news.read() {
        let effects = tablet.0.hear(news.clone());
        outside.carry_out(effects);
    }
}

impl Outside<'_> {
    fn carry_out(&mut self, effects: Vec<Effect>) {
        for effect in effects {
            match effect {
                Effect::Hung { kind, token } => self.flights.hung(&kind, token, &self.targets),
                Effect::TakenOff { kind, token } => {
                    if let Some(from) = self.hanger.ring(token) {
                        self.flights.taken_off(&kind, from);
                    }
                }
                Effect::Send(draft) => self.line.link.send_aside(*draft),
                Effect::AskPin(pin) => self.line.link.ask_pin(pin),
                Effect::LookUp(number) => self.line.link.look_up(number),
                Effect::Pair { desk, code } => self.line.link.pair(desk, code),
                Effect::ReadOn => self.read_on(),
                Effect::Attended => self.idle.touched(),
                Effect::Cleared => {
                    *self.scrolls = Scrolls::default();
                    *self.flights = Flights::default();
                }
                Effect::Leave => {
                    self.exit.write(AppExit::Success);
                }
            }
        }
    }

    fn read_on(&mut self) {
        let area = self.targets.scrolls.iter().find(|area| area.id == ScrollId::Review);
        let Some(page) = area.map(|area| area.rect.height() * PAGE) else { return };
        self.scrolls.0.entry(ScrollId::Review).or_default().by(page);
    }
}
