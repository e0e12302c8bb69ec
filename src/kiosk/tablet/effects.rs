//! What a request or a piece of news asks to be carried out beyond the session: flights, pages, the line, the way out.

use bevy::{ecs::system::SystemParam, prelude::*};

use super::{Heard, Tablet};
use crate::{
    guest::{Effect, Request},
    kiosk::{
        bridge::Line,
        idle::Idle,
        outside::desk_here::BehindTheWindow,
        stage::{Flights, Hanger},
        targets::{ScrollId, Scrolls, Targets},
    },
};

/// How much of what is seen a page turns, so that a line stays in view.
const PAGE: f32 = 0.8;

/// What effects reach.
#[derive(SystemParam)]
pub(super) struct Outside<'w, 's> {
    scrolls: ResMut<'w, Scrolls>,
    flights: ResMut<'w, Flights>,
    idle: ResMut<'w, Idle>,
    exit: MessageWriter<'w, AppExit>,
    hanger: Res<'w, Hanger>,
    targets: Res<'w, Targets>,
    line: Res<'w, Line>,
    behind: BehindTheWindow<'w, 's>,
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
        outside.carry_out(effects, &mut tablet);
    }
    for Heard(news) in news.read() {
        let effects = tablet.0.hear(news.clone());
        outside.carry_out(effects, &mut tablet);
    }
}

impl Outside<'_, '_> {
    fn carry_out(&mut self, effects: Vec<Effect>, tablet: &mut Tablet) {
        for effect in effects {
            match effect {
                Effect::Hung { kind, look, token } => self.flights.hung((&kind, look), token, &self.targets),
                Effect::TakenOff { kind, look, token } => {
                    if let Some(from) = self.hanger.ring(token) {
                        self.flights.taken_off((&kind, look), from);
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
                Effect::OpenDesk => self.open_desk(tablet),
                Effect::Leave => {
                    self.exit.write(AppExit::Success);
                }
            }
        }
    }

    /// The guest's side is left for the desk; whoever comes meanwhile finds Welcome.
    fn open_desk(&mut self, tablet: &mut Tablet) {
        match self.behind.open() {
            Ok(()) => {
                let effects = tablet.0.apply(Request::Done);
                self.carry_out(effects, tablet);
            }
            Err(error) => {
                warn!("no browser could be started: {error}");
                tablet.0.desk_not_opened();
            }
        }
    }

    fn read_on(&mut self) {
        let area = self.targets.scrolls.iter().find(|area| area.id == ScrollId::Review);
        let Some(page) = area.map(|area| area.rect.height() * PAGE) else { return };
        self.scrolls.0.entry(ScrollId::Review).or_default().by(page);
    }
}
