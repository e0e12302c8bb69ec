//! The screens, painted anew each frame from what is known; painting also notes what can be touched.
//!
//! | file | look here for |
//! | --- | --- |
//! | `called` | who is called to a seat, on Welcome |
//! | `welcome`, `base`, `stage`, `review`, `sent` | the guest's way, screen by screen |
//! | `put_back` | where a drop that lies about belongs |
//! | `threading` | a sent piece collected and threaded, with its homes to tick |
//! | `sheets`, `seller`, `keypad` | what lies over a screen; the seller's PIN, menu and pairing; keys on the screen |
//! | `qr` | an address as a code that a phone's camera reads |
//! | `trays`, `lying`, `base_sign`, `lengths`, `hand` | drops in their compartments; a base on its card; lengths and where they fall; where a drop takes hold |
//! | `suits`, `hazards`, `told` | who it is for and what leads out; the cautions; what guest and seller are told, in words |
//! | `parts`, `moves` | what several screens share; small motions that explain |

mod base;
mod base_sign;
mod called;
mod hand;
mod hazards;
mod keypad;
mod lengths;
mod lying;
mod moves;
mod parts;
mod put_back;
mod qr;
mod review;
mod seller;
mod sent;
mod sheets;
mod stage;
mod suits;
mod threading;
mod told;
mod trays;
mod welcome;

use std::borrow::Cow;

use bevy::{ecs::system::SystemParam, prelude::*};
use bevy_egui::{
    EguiContexts,
    egui::{self, Rect},
};
use rust_decimal::Decimal;

use super::{
    Phase,
    bridge::Line,
    i18n::Texts,
    idle::Idle,
    layout::Layout,
    outside::{desk_here::DeskHere, window::WindowSize},
    paint::{Brush, Kept, Proof},
    pictures::Pictures,
    pointer::{Fingers, Focus},
    stage::{Hanger, Signs},
    tablet::Tablet,
    targets::{Scrolls, Targets},
    theme,
    tone::Tone,
};
use crate::{catalog::Catalog, craft::DropKind, guest::Screen};

use moves::Moves;

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Moves>().add_systems(Update, moves::move_on.in_set(Phase::Present));
}

/// Everything a screen reads.
#[derive(SystemParam)]
pub(super) struct Scene<'w, 's> {
    guest: Res<'w, Tablet>,
    texts: Res<'w, Texts>,
    pictures: Res<'w, Pictures>,
    signs: Res<'w, Signs>,
    hanger: Res<'w, Hanger>,
    fingers: Res<'w, Fingers>,
    focus: Res<'w, Focus>,
    idle: Res<'w, Idle>,
    line: Res<'w, Line>,
    desk_here: Option<Res<'w, DeskHere>>,
    moves: Res<'w, Moves>,
    size: WindowSize<'w, 's>,
}

impl Scene<'_, '_> {
    fn layout(&self) -> Layout {
        Layout::new(self.size.get(), &self.guest)
    }

    fn catalog(&self) -> Option<&Catalog> {
        self.guest.known().catalog()
    }

    /// Where a phone in the same network finds the desk; none where only this machine does.
    fn address_for_a_phone(&self) -> Option<String> {
        match &self.desk_here {
            Some(here) => here.outward.clone(),
            // What the tablet itself calls by its own number, a phone does not find.
            None => self.line.link.desk().filter(|desk| !desk.contains("127.0.0.1") && !desk.contains("localhost")),
        }
    }

    /// The text called `key`.
    fn t(&self, key: &str) -> String {
        self.texts.get(key)
    }

    /// What a drop, base or tray is called in the guest's language; `own` is the seller's name.
    fn called<'a>(&'a self, id: &str, own: &'a str) -> &'a str {
        self.catalog().map_or(own, |catalog| catalog.called(self.texts.lang.code(), id, own))
    }

    /// A drop's name.
    fn drop_name<'a>(&'a self, kind: &'a DropKind) -> &'a str {
        self.called(&kind.id, &kind.name)
    }

    /// What one of a kind is called on a piece: of an assortment, one from its compartment.
    fn piece_name<'a>(&'a self, kind: &'a DropKind) -> Cow<'a, str> {
        self.catalog().map_or(Cow::Borrowed(kind.name.as_str()), |catalog| self.texts.piece_name(catalog, kind))
    }

    /// An amount as the guest's language writes it.
    fn money(&self, amount: Decimal) -> String {
        let currency = self.catalog().map(|catalog| catalog.table.prices.currency);
        currency.map(|currency| self.texts.lang.money(amount, currency)).unwrap_or_default()
    }
}

/// Paints the screen, the sheet over it, the question to a guest who may have left, and what fingers hold.
pub(super) fn paint_screen(
    mut contexts: EguiContexts,
    scene: Scene,
    mut targets: ResMut<Targets>,
    mut scrolls: ResMut<Scrolls>,
    mut proof: ResMut<Proof>,
) -> Result {
    let context = contexts.ctx_mut()?;
    // egui uses new typefaces from the next frame on, and knows no others.
    if !context.fonts(|fonts| fonts.definitions().families.contains_key(&theme::Face::Serif.family())) {
        return Ok(());
    }
    let layout = scene.layout();
    let touches = scene.fingers.touches();
    targets.clear();
    targets.window = Some(layout.window);
    let painter = context.layer_painter(egui::LayerId::background()).with_clip_rect(Rect::EVERYTHING);
    let kept = Kept { targets: &mut targets, scrolls: &mut scrolls, proof: &mut proof };
    let brush = &mut Brush::new(painter, &layout, scene.guest.looks(), &touches, kept);
    match scene.guest.screen() {
        Screen::Welcome => welcome::paint(brush, &scene, &layout),
        Screen::Base => base::paint(brush, &scene, &layout),
        Screen::Stage => stage::paint(brush, &scene, &layout),
        Screen::Review => review::paint(brush, &scene, &layout),
        Screen::Sent => sent::paint(brush, &scene, &layout),
        Screen::PutBack => put_back::paint(brush, &scene, &layout),
        Screen::Threading => threading::paint(brush, &scene, &layout),
        Screen::Seller => seller::paint(brush, &scene, &layout),
    }
    if let Some(sheet) = &scene.guest.session().overlay {
        sheets::paint(brush, &scene, sheet);
    }
    hand::paint(brush, &scene, &layout);
    if let Some((left, of)) = scene.idle.asking {
        sheets::still_there(brush, &scene, left, of);
    }
    if scene.guest.known().practice {
        parts::practice_ribbon(brush, layout.ribbon, &scene.t("practice"));
    }
    brush.targets.ring = scene.focus.index(brush.targets);
    if let Some(ring) = brush.targets.ring.and_then(|index| Some(brush.targets.all.get(index)?.rect)) {
        brush.outline(ring.expand(3.0), 12.0 * layout.u, 4.0, Tone::Focus);
        brush.outline(ring.expand(5.0), 13.0 * layout.u, 2.0, Tone::Paper);
    }
    Ok(())
}
