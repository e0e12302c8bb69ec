//! The sprites: the ground, the piece, and over the paper what is in a hand or in the air.

use bevy::{ecs::system::SystemParam, prelude::*, sprite::SpriteImageMode};

use super::{
    super::{outside::window::WindowSize, pictures::Pictures, tablet::Tablet, tone::Tone},
    Hanger, InHand,
    art::{Art, Relief},
    lit::{Kind, Lit, Materials, SQUARE},
    motion::Moving,
    over::OVER,
    seen::{Place, Seen, Shown, height_of},
};
use crate::{
    craft::BaseKind,
    guest::{Contrast, Screen},
    hang::Shadow,
};

/// The ground.
#[derive(Component)]
pub(super) struct Linen;

type OnlyLinen = (With<Linen>, Without<Part>);

/// One sprite, used anew each frame for whatever of its kind comes at its number; of the stage, or over the paper.
#[derive(Component, PartialEq, Eq, Hash, Clone, Copy)]
pub(super) struct Part {
    over: bool,
    number: usize,
    kind: Kind,
}

/// The ground lies behind everything.
const LINEN_Z: f32 = -100.0;
/// Each part lies so much nearer than the one before it.
const DEPTH_STEP: f32 = 0.01;

/// The ground fills the window.
pub(super) fn place_linen(
    mut commands: Commands,
    mut linen: Query<(&mut Sprite, &mut Visibility), OnlyLinen>,
    mut clear: ResMut<ClearColor>,
    art: Res<Art>,
    tablet: Res<Tablet>,
    size: WindowSize,
) {
    let window = size.get();
    let ground = Vec2::new(window.x, window.y);
    let plain = Tone::Linen.color(tablet.looks().contrast);
    clear.0 = Color::srgb_u8(plain.r(), plain.g(), plain.b());
    match linen.single_mut() {
        Ok((mut sprite, mut visibility)) => {
            if sprite.custom_size != Some(ground) {
                sprite.custom_size = Some(ground);
            }
            visibility.set_if_neq(if is_woven(&tablet) { Visibility::Inherited } else { Visibility::Hidden });
        }
        Err(_) => {
            let sprite = Sprite {
                image: art.linen.clone(),
                custom_size: Some(ground),
                image_mode: SpriteImageMode::Tiled { tile_x: true, tile_y: true, stretch_value: 1.0 },
                ..default()
            };
            commands.spawn((Name::new("linen"), Linen, sprite, Transform::from_xyz(0.0, 0.0, LINEN_Z)));
        }
    }
}

/// Whether the ground is linen: threads behind what has to stand out would only be in the way.
fn is_woven(tablet: &Tablet) -> bool {
    tablet.looks().contrast == Contrast::Daylight
}

/// What the sprites show.
#[derive(SystemParam)]
pub(super) struct Showing<'w> {
    art: Res<'w, Art>,
    tablet: Res<'w, Tablet>,
    pictures: Res<'w, Pictures>,
    hanger: Res<'w, Hanger>,
    moving: Res<'w, Moving>,
    in_hand: Res<'w, InHand>,
}

impl Showing<'_> {
    fn picture(&self, name: &str) -> Option<Relief> {
        self.pictures.on_stage(name).map(|picture| Relief { image: picture.image, relief: picture.relief })
    }

    fn seen(&self) -> Seen<'_> {
        let woven = is_woven(&self.tablet);
        Seen { art: &self.art, hanger: &self.hanger, woven, list: Vec::new() }
    }

    /// The piece, where the screen shows it, from back to front.
    fn piece(&self) -> Vec<Shown> {
        let (session, derived) = (self.tablet.session(), self.tablet.derived());
        let visible = match self.tablet.screen() {
            Screen::Welcome | Screen::Base | Screen::Stage | Screen::Review | Screen::Sent => true,
            Screen::Threading => session.threading.found.is_some(),
            Screen::PutBack | Screen::Seller => false,
        };
        let mut seen = self.seen();
        let (Some(catalog), Some(piece), Some(places), Some(motion)) =
            (self.tablet.known().catalog(), &derived.piece, &derived.places, self.moving.now())
        else {
            return seen.list;
        };
        let Some(base) = catalog.base(&piece.base).filter(|_| visible) else { return seen.list };
        match (&base.kind, &places.bangle) {
            (BaseKind::Necklace(necklace), _) => seen.necklace(base, necklace, places, motion),
            (BaseKind::Bangle(_), Some(bangle)) => seen.bangle(base, bangle, motion),
            _ => {}
        }
        // What a finger has pulled off and what flies is over everything, in the hand.
        let ranks = self.moving.ranks();
        let middle_mm = (places.bounds.left_mm + places.bounds.right_mm) / 2.0;
        for (token, ring) in motion.rings() {
            let Some(kind) = self.moving.kind(token) else { continue };
            let chosen = session.selected == Some(token);
            let rank = ranks.get(&token).copied().unwrap_or_default();
            let place = Place {
                pivot: self.hanger.at(ring.x_mm as f32, ring.y_mm as f32),
                lean_rad: ring.lean_rad as f32,
                aside_mm: (ring.x_mm - middle_mm) as f32,
                px_per_mm: self.hanger.px_per_mm,
                lifted_mm: Shadow::lifted_mm(rank),
            };
            let finish = kind.finish.unwrap_or(base.finish);
            seen.hung(kind, finish, self.picture(&kind.picture), &place, height_of(rank, chosen));
        }
        seen.list.sort_by(|one, other| one.z.total_cmp(&other.z));
        seen.list
    }

    /// What is in a hand or in the air, from back to front.
    fn in_hand(&self) -> Vec<Shown> {
        let mut seen = self.seen();
        let Some(catalog) = self.tablet.known().catalog() else { return seen.list };
        for (number, held) in self.in_hand.all().iter().enumerate() {
            let Some(kind) = catalog.drop_kind(&held.kind).map(|kind| kind.hung_as(held.look)) else { continue };
            seen.held(&kind, self.picture(&kind.picture), &held.place(), number);
        }
        seen.list.sort_by(|one, other| one.z.total_cmp(&other.z));
        seen.list
    }

    /// The piece on the stage, and what is over the paper: what is in a hand, and a sent piece, which lies on its ticket.
    fn stage_and_over(&self) -> (Vec<Shown>, Vec<Shown>) {
        match self.tablet.screen() {
            Screen::Sent => (Vec::new(), self.piece()),
            _ => (self.piece(), self.in_hand()),
        }
    }
}

/// Puts every sprite where the piece is.
pub(super) fn place_sprites(
    mut commands: Commands,
    mut parts: Query<(&Part, &mut MeshMaterial2d<Lit>, &mut Transform, &mut Visibility)>,
    mut materials: ResMut<Materials>,
    mut lit: ResMut<Assets<Lit>>,
    showing: Showing,
    mut known_pictures: Local<u64>,
    size: WindowSize,
) {
    let window = size.get();
    let ground = Vec2::new(window.x, window.y);
    let (stage, over) = showing.stage_and_over();
    let changed = showing.pictures.times_changed();
    if std::mem::replace(&mut *known_pictures, changed) != changed {
        materials.forget();
    }
    let mut material = |shown: &Shown| {
        MeshMaterial2d(materials.of(&mut lit, &showing.art.linen, (&shown.image, shown.color, shown.dress)))
    };
    // What is drawn keeps its depth and its kind for as long as it lives, whatever it shows: the engine sorts by depth only what
    // has got another picture, and may go on with the program of the kind before.
    let (mut drawn_stage, mut drawn_over) = (vec![false; stage.len()], vec![false; over.len()]);
    for (part, mut dressed, mut transform, mut visibility) in &mut parts {
        let (list, drawn) = if part.over { (&over, &mut drawn_over) } else { (&stage, &mut drawn_stage) };
        match list.get(part.number).filter(|shown| shown.dress.kind() == part.kind) {
            Some(shown) => {
                drawn[part.number] = true;
                dressed.set_if_neq(material(shown));
                transform.set_if_neq(shown.transform(ground, part.number));
                visibility.set_if_neq(Visibility::Inherited);
            }
            None => {
                visibility.set_if_neq(Visibility::Hidden);
            }
        }
    }
    let missing = |list: &[Shown], drawn: &[bool]| (0..list.len()).filter(|number| !drawn[*number]).collect::<Vec<_>>();
    for number in missing(&stage, &drawn_stage) {
        let shown = &stage[number];
        let part = Part { over: false, number, kind: shown.dress.kind() };
        commands.spawn((part, Mesh2d(SQUARE), material(shown), shown.transform(ground, number)));
    }
    for number in missing(&over, &drawn_over) {
        let shown = &over[number];
        let part = Part { over: true, number, kind: shown.dress.kind() };
        commands.spawn((part, Mesh2d(SQUARE), material(shown), shown.transform(ground, number), OVER));
    }
}

impl Shown {
    /// The camera's middle is the window's, its y goes up. It is the part with this number, from back to front.
    fn transform(&self, window: Vec2, number: usize) -> Transform {
        let depth = number as f32 * DEPTH_STEP;
        Transform::from_xyz(self.at.x - window.x / 2.0, window.y / 2.0 - self.at.y, depth)
            .with_rotation(Quat::from_rotation_z(-self.angle))
            .with_scale((self.size + self.dress.margin()).extend(1.0))
    }
}
