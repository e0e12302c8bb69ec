//! The guest's session as the engine holds it: requests and news go in, and what has to be carried out is carried out here.

use std::mem::{Discriminant, discriminant};

use bevy::{ecs::system::SystemParam, prelude::*};

use super::{
    Phase,
    bridge::Line,
    i18n::Texts,
    idle::Idle,
    stage::{Flights, Hanger},
    targets::{ScrollId, Scrolls, Targets},
};
use crate::{
    guest::{Effect, Guest, Overlay, Request, Screen},
    link::News,
};

/// How much of what is seen a page turns, so that a line stays in view.
const PAGE: f32 = 0.8;

impl Message for Request {}

/// One piece of news for the guest's session.
#[derive(Message)]
pub(super) struct Heard(pub News);

/// The guest's session. Everybody reads it; only requests and news change it.
#[derive(Resource, Deref)]
pub struct Tablet(Guest);

impl Tablet {
    /// A tablet that holds this session.
    pub(super) fn new(guest: Guest) -> Self {
        Self(guest)
    }
}

pub(super) fn plugin(app: &mut App) {
    app.add_message::<Request>()
        .add_message::<Heard>()
        .add_systems(Update, (take_in, speak, begin_at_the_top).chain().in_set(Phase::Apply));
}

/// What effects reach.
#[derive(SystemParam)]
struct Outside<'w> {
    scrolls: ResMut<'w, Scrolls>,
    flights: ResMut<'w, Flights>,
    idle: ResMut<'w, Idle>,
    exit: MessageWriter<'w, AppExit>,
    hanger: Res<'w, Hanger>,
    targets: Res<'w, Targets>,
    line: Res<'w, Line>,
}

fn take_in(
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

/// Words are in the guest's language.
fn speak(tablet: Res<Tablet>, mut texts: ResMut<Texts>) {
    if texts.lang != tablet.lang() {
        *texts = Texts::new(tablet.lang());
    }
}

/// A sheet or a screen that comes up is read from its beginning; only the bases stay where the guest left them.
fn begin_at_the_top(
    tablet: Res<Tablet>,
    mut scrolls: ResMut<Scrolls>,
    mut before: Local<(Screen, Option<Discriminant<Overlay>>)>,
) {
    let now = (tablet.screen(), tablet.session().overlay.as_ref().map(discriminant));
    let (screen, sheet) = std::mem::replace(&mut *before, now);
    if screen != now.0 {
        scrolls.0.retain(|id, _| *id == ScrollId::Bases);
    } else if sheet != now.1 {
        scrolls.0.remove(&ScrollId::Sheet);
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
