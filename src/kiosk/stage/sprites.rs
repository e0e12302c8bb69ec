//! The sprites: ground, chain or bangle, rings, bodies and their shadows.

use bevy::{prelude::*, sprite::SpriteImageMode};
use bevy_egui::egui::{Pos2, pos2};

use super::{
    super::{outside::window::WindowSize, pictures::Pictures, tablet::Tablet, tone::Tone},
    Hanger,
    art::{self, Art, Relief},
    lit::{Lit, Materials, SQUARE},
    motion::Moving,
};
use crate::{
    craft::{Base, BaseKind, DropKind, Finish, LinkKind, Necklace, Sort},
    guest::{Contrast, Screen},
    hang::{BangleAt, Motion, PiecePlaces, Point, RingAt},
};

/// The ground.
#[derive(Component)]
pub(super) struct Linen;

type OnlyLinen = (With<Linen>, Without<Part>);

/// One sprite of the piece, used anew each frame for whatever comes at its number.
#[derive(Component)]
pub(super) struct Part(usize);

/// What one sprite shows this frame. Pixels of the window, y downwards; the angle turns clockwise.
struct Shown {
    image: Relief,
    at: Pos2,
    size: Vec2,
    angle: f32,
    z: f32,
    color: Color,
    /// Its glint, and how it turns about its own axis as it swings; see [`Lit`].
    surface: Vec2,
}

/// Layers from back to front.
mod z {
    pub(super) const LINEN: f32 = -100.0;
    pub(super) const BACK: f32 = 0.0;
    pub(super) const FRONT: f32 = 10.0;
    pub(super) const SHADOW: f32 = 5.0;
    pub(super) const DROPS: f32 = 20.0;
}

/// Chain and rings glint and do not turn about themselves.
const WIRE: Vec2 = Vec2::new(0.55, 0.0);
/// Each link of a curb chain lies so much over the one before it; far less than to what lies over all of them.
const CURB_STEP: f32 = 0.0005;
/// How far a shadow falls from what casts it, to the right and down.
const SHADOW_MM: Vec2 = Vec2::new(0.9, 1.2);
/// A body that swings by some angle also turns about its own axis, by so much of it.
const TWIST: f32 = 1.2;

/// How a drop's body shines, and that it turns.
fn surface(kind: &DropKind) -> Vec2 {
    let glint = match kind.sort {
        Sort::Tassel => 0.08,
        Sort::Bead | Sort::Vial | Sort::Crystal => 0.4,
        Sort::Charm | Sort::Locket | Sort::Key | Sort::Found => 0.55,
    };
    Vec2::new(glint, TWIST)
}

/// Each part lies so much nearer than the one before it.
const DEPTH_STEP: f32 = 0.01;

/// In front or behind, as everywhere a piece is shown; the chosen drop is before all.
fn height_of(rank: usize, chosen: bool) -> f32 {
    z::DROPS + rank as f32 * 0.01 + if chosen { 40.0 } else { 0.0 }
}

fn tint(finish: Finish, dim: f32) -> Color {
    let [r, g, b] = art::tint(finish).map(|part| (part * (1.0 - dim) + 0.9 * dim).min(1.0));
    Color::srgb(r, g, b)
}

/// Puts every sprite where the piece is.
#[expect(clippy::too_many_arguments, reason = "a system's parameters are what it reads")]
pub(super) fn place_sprites(
    mut commands: Commands,
    mut parts: Query<(&Part, &mut MeshMaterial2d<Lit>, &mut Transform, &mut Visibility)>,
    mut materials: ResMut<Materials>,
    mut lit: ResMut<Assets<Lit>>,
    mut linen: Query<(&mut Sprite, &mut Visibility), OnlyLinen>,
    mut clear: ResMut<ClearColor>,
    art: Res<Art>,
    tablet: Res<Tablet>,
    mut pictures: ResMut<Pictures>,
    hanger: Res<Hanger>,
    moving: Res<Moving>,
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
            // Threads behind what has to stand out would only be in the way.
            let woven = tablet.looks().contrast == Contrast::Daylight;
            visibility.set_if_neq(if woven { Visibility::Inherited } else { Visibility::Hidden });
        }
        Err(_) => {
            let sprite = Sprite {
                image: art.linen.clone(),
                custom_size: Some(ground),
                image_mode: SpriteImageMode::Tiled { tile_x: true, tile_y: true, stretch_value: 1.0 },
                ..default()
            };
            commands.spawn((Name::new("linen"), Linen, sprite, Transform::from_xyz(0.0, 0.0, z::LINEN)));
        }
    }
    let mut list = Vec::new();
    let visible = match tablet.screen() {
        Screen::Welcome | Screen::Base | Screen::Stage | Screen::Review => true,
        Screen::Threading => tablet.session().threading.found.is_some(),
        Screen::Sent | Screen::PutBack | Screen::Seller => false,
    };
    if let (true, Some(catalog), Some(piece), Some(places), Some(motion)) =
        (visible, tablet.known().catalog(), &tablet.derived().piece, &tablet.derived().places, moving.now())
        && let Some(base) = catalog.base(&piece.base)
    {
        let see = Seen { art: &art, hanger: &hanger, motion, places };
        match (&base.kind, &places.bangle) {
            (BaseKind::Necklace(necklace), _) => see.necklace(&mut list, base, necklace),
            (BaseKind::Bangle(_), Some(bangle)) => see.bangle(&mut list, base, bangle),
            _ => {}
        }
        // What a finger has pulled off and what flies is painted over everything, by the paper.
        let ranks = moving.ranks(catalog);
        for (token, ring) in motion.rings() {
            let Some(kind) = moving.kind(token).and_then(|id| catalog.drop_kind(id)) else { continue };
            let picture =
                pictures.on_stage(&kind.picture).map(|picture| Relief { image: picture.image, relief: picture.relief });
            let chosen = tablet.session().selected == Some(token);
            let rank = ranks.get(&token).copied().unwrap_or_default();
            see.hung(&mut list, base, kind, picture, ring, height_of(rank, chosen));
        }
    }
    // What is drawn keeps its depth for as long as it lives, whatever it shows: the engine sorts by depth only what has got
    // another picture, so that something moved to the front by its depth alone stays where it was.
    list.sort_by(|one, other| one.z.total_cmp(&other.z));
    let have = parts.iter().count();
    if pictures.bypass_change_detection().take_changed() {
        materials.forget();
    }
    let mut material = |shown: &Shown| MeshMaterial2d(materials.of(&mut lit, &shown.image, shown.color, shown.surface));
    for (part, mut dressed, mut transform, mut visibility) in &mut parts {
        match list.get(part.0) {
            Some(shown) => {
                dressed.set_if_neq(material(shown));
                transform.set_if_neq(shown.transform(ground, part.0));
                visibility.set_if_neq(Visibility::Inherited);
            }
            None => {
                visibility.set_if_neq(Visibility::Hidden);
            }
        }
    }
    for (number, shown) in list.iter().enumerate().skip(have) {
        commands.spawn((Part(number), Mesh2d(SQUARE), material(shown), shown.transform(ground, number)));
    }
}

impl Shown {
    /// The camera's middle is the window's, its y goes up. It is the part with this number, from back to front.
    fn transform(&self, window: Vec2, number: usize) -> Transform {
        let depth = number as f32 * DEPTH_STEP;
        Transform::from_xyz(self.at.x - window.x / 2.0, window.y / 2.0 - self.at.y, depth)
            .with_rotation(Quat::from_rotation_z(-self.angle))
            .with_scale(self.size.extend(1.0))
    }
}

struct Seen<'a> {
    art: &'a Art,
    hanger: &'a Hanger,
    motion: &'a Motion,
    places: &'a PiecePlaces,
}

impl Seen<'_> {
    fn at(&self, p: Vec2) -> Pos2 {
        self.hanger.at(p.x, p.y)
    }

    fn necklace(&self, list: &mut Vec<Shown>, base: &Base, necklace: &Necklace) {
        let back: Vec<Vec2> = self.places.back.iter().map(|p| Vec2::new(p.x_mm as f32, p.y_mm as f32)).collect();
        let pitch = necklace.pitch_mm() as f32;
        let back = evenly(&back, pitch);
        let back_links = back.windows(2).map(|pair| (pair[0], pair[1]));
        self.links(list, necklace, back_links, tint(base.finish, 0.45), z::BACK);
        if let Some(middle) = back.get(back.len() / 2) {
            let size = Vec2::new(necklace.clasp.length.mm() as f32, necklace.clasp.width.mm() as f32);
            list.push(Shown {
                image: self.art.clasp.clone(),
                at: self.at(*middle),
                size: size * self.hanger.px_per_mm,
                angle: 0.0,
                z: z::BACK + 2.0,
                color: tint(base.finish, 0.3),
                surface: WIRE,
            });
        }
        let front = self.motion.links().map(|(a, b)| (vec(a), vec(b)));
        self.links(list, necklace, front, tint(base.finish, 0.0), z::FRONT);
    }

    /// Links along a line: one from the front, one edge on, and so forth; of a curb chain all from the front, each over the
    /// one before it.
    fn links(
        &self,
        list: &mut Vec<Shown>,
        necklace: &Necklace,
        links: impl Iterator<Item = (Vec2, Vec2)>,
        color: Color,
        z: f32,
    ) {
        let px = self.hanger.px_per_mm;
        let (long, wide) = (necklace.link_length.mm() as f32 * px, necklace.link_width.mm() as f32 * px);
        let art = self.art.link(necklace.link);
        let shadow = z - 1.0;
        for (number, (left, right)) in links.enumerate() {
            let (a, b) = (self.at(left), self.at(right));
            let along = b - a;
            let mut show = |art: &Relief, wide: f32, z: f32| {
                let link = Shown {
                    image: art.clone(),
                    at: a + along * 0.5,
                    size: Vec2::new(long, wide),
                    angle: along.y.atan2(along.x),
                    z,
                    color,
                    surface: WIRE,
                };
                list.push(self.cast(&link, shadow));
                list.push(link);
            };
            match necklace.link {
                LinkKind::Curb => {
                    show(&art.face, wide, z + number as f32 * CURB_STEP);
                    show(&art.side, wide, z + 0.5);
                }
                // Links edge on lie over those seen from the front, where they pass through them.
                _ if number % 2 == 0 => show(&art.face, wide, z),
                _ => show(&art.side, wide * Necklace::WIRE_SHARE as f32, z + 0.5),
            }
        }
    }

    /// The shadow of `thing` on what is behind it, in its own outline: the window stands up on the left.
    fn cast(&self, thing: &Shown, z: f32) -> Shown {
        let fall = SHADOW_MM * self.hanger.px_per_mm;
        Shown {
            image: thing.image.clone(),
            at: pos2(thing.at.x + fall.x, thing.at.y + fall.y),
            z,
            color: Color::srgba(0.2, 0.13, 0.08, 0.28),
            surface: Vec2::ZERO,
            ..*thing
        }
    }

    fn bangle(&self, list: &mut Vec<Shown>, base: &Base, bangle: &BangleAt) {
        let side = 2.0 * (bangle.inside_radius_mm + bangle.wire_mm) as f32 * self.hanger.px_per_mm;
        let (middle, turn) = self.motion.hoop().unwrap_or((bangle.centre, 0.0));
        let at = self.at(vec(middle));
        let hoop = Shown {
            image: self.art.bangle.clone(),
            at,
            size: Vec2::splat(side),
            angle: -turn as f32,
            z: z::FRONT,
            color: tint(base.finish, 0.0),
            surface: WIRE,
        };
        list.push(self.cast(&hoop, z::SHADOW));
        list.push(hoop);
    }

    fn hung(&self, list: &mut Vec<Shown>, base: &Base, kind: &DropKind, picture: Option<Relief>, ring: RingAt, z: f32) {
        let px = self.hanger.px_per_mm;
        let (pivot, lean) = (self.hanger.at(ring.x_mm as f32, ring.y_mm as f32), ring.lean_rad as f32);
        let (outside, wire) = (kind.ring.outside.mm() as f32 * px, kind.ring.wire.mm() as f32 * px);
        let (width, height) = (kind.width.mm() as f32 * px, kind.height.mm() as f32 * px);
        // Hangs from the pivot, `down` pixels below it along its own axis.
        let below = |down: f32| pos2(pivot.x + lean.sin() * down, pivot.y + lean.cos() * down);
        let body_middle = kind.ring.hangs_mm() as f32 * px + height / 2.0;
        let fallen = below(body_middle);
        list.push(Shown {
            image: self.art.soft.clone(),
            at: pos2(fallen.x + width * 0.1 + 2.0, fallen.y + height * 0.06 + 3.0),
            size: Vec2::new(width * 1.35, height * 1.2),
            angle: -lean,
            z: z::SHADOW,
            color: Color::srgba(0.24, 0.16, 0.1, 0.22),
            surface: Vec2::ZERO,
        });
        if let Some(image) = picture {
            let size = Vec2::new(width, height);
            let body = Shown { image, at: fallen, size, angle: -lean, z, color: Color::WHITE, surface: surface(kind) };
            list.push(self.cast(&body, z - 0.001));
            list.push(body);
        }
        let ring = Shown {
            image: self.art.ring.clone(),
            at: below(outside / 2.0 - wire),
            size: Vec2::splat(outside),
            angle: -lean,
            z: z + 0.001,
            color: tint(kind.finish.unwrap_or(base.finish), 0.0),
            surface: WIRE,
        };
        list.push(self.cast(&ring, z - 0.001));
        list.push(ring);
    }
}

fn vec(p: Point) -> Vec2 {
    Vec2::new(p.x_mm as f32, p.y_mm as f32)
}

/// Points along `line`, `pitch` apart.
fn evenly(line: &[Vec2], pitch: f32) -> Vec<Vec2> {
    let mut points: Vec<Vec2> = line.first().copied().into_iter().collect();
    let mut left = pitch;
    for pair in line.windows(2) {
        let (mut from, to) = (pair[0], pair[1]);
        while from.distance(to) >= left {
            from += (to - from).normalize_or_zero() * left;
            points.push(from);
            left = pitch;
        }
        left -= from.distance(to);
    }
    points
}
