//! What follows from a change.

use bevy::prelude::*;

use super::super::{
    known::{Derived, Known},
    session::{Screen, Session},
    surprise::surprise,
};
use crate::{
    craft::{BaseKind, Length, Piece, Wearer},
    link::Snapshot,
};

/// Works out sum, cautions, places and standings after a change, and the sample on Welcome.
pub(super) fn work_out(
    session: Res<Session>,
    known: Res<Known>,
    screen: Res<State<Screen>>,
    mut derived: ResMut<Derived>,
) {
    if !(session.is_changed() || known.is_changed() || screen.is_changed()) {
        return;
    }
    let Some(snapshot) = &known.snapshot else { return };
    let own = session.history.now().piece();
    let piece = own.or_else(|| (*screen.get() == Screen::Welcome).then(|| sample(snapshot)).flatten());
    derived.renew(snapshot, piece, &session.filters);
}

/// The piece that sways on Welcome.
fn sample(snapshot: &Snapshot) -> Option<Piece> {
    /// Any number; this one gives the demo table a handsome piece.
    const SEED: u64 = 0x5EED_0007;
    /// Inches.
    const SAMPLE_IN: f64 = 16.0;
    let bases = &snapshot.catalog.bases;
    let base = bases.iter().find(|base| matches!(base.kind, BaseKind::Necklace(_))).or(bases.first())?;
    // A short one: its drops are seen from near.
    let length = match &base.kind {
        BaseKind::Necklace(n) => {
            let near = SAMPLE_IN.clamp(n.lengths.shortest.inches(), n.lengths.longest.inches());
            Some(Length::from_inches(near))
        }
        BaseKind::Bangle(_) => None,
    };
    let bare = Piece { base: base.id.clone(), length, wearer: Wearer::From13, neck: None, drops: vec![] };
    let drops = surprise(snapshot, &bare, &default(), SEED);
    Some(Piece { drops, ..bare })
}
