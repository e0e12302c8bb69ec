//! The guest's session as the engine holds it: requests and news go in, and words and pages follow it.

mod effects;

use std::mem::{Discriminant, discriminant};

use bevy::prelude::*;

use super::{
    Phase,
    i18n::Texts,
    targets::{ScrollId, Scrolls},
};
use crate::{
    guest::{Guest, Overlay, Request, Screen},
    link::News,
};

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
        .add_systems(Update, (effects::take_in, speak, begin_at_the_top).chain().in_set(Phase::Apply));
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
