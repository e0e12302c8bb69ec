//! What a piece consists of when it is drawn: chain or bangle, threaded rings, bodies, and the shadow of each.

use std::f32::consts::PI;

use bevy::prelude::*;
use bevy_egui::egui::{Pos2, pos2};

use super::{
    Hanger,
    art::{self, Art, Relief},
    lit::{Dress, SHADOW_ROOM, WIRE_ROOM},
};
use crate::{
    craft::{Base, DropKind, Finish, LinkKind, Necklace, Sort},
    hang::{BangleAt, Motion, PiecePlaces, Point, Shadow, seen_ring},
};

/// What one sprite shows this frame. Pixels of the window, y downwards; the angle turns clockwise.
pub(super) struct Shown {
    pub image: Relief,
    pub at: Pos2,
    pub size: Vec2,
    pub angle: f32,
    pub z: f32,
    pub color: Color,
    pub dress: Dress,
}

/// Layers from back to front.
mod z {
    pub(super) const BACK: f32 = 0.0;
    pub(super) const SHADOW: f32 = 5.0;
    /// The halves of rings that are behind the base.
    pub(super) const FAR: f32 = 8.0;
    pub(super) const FRONT: f32 = 10.0;
    pub(super) const DROPS: f32 = 20.0;
}

/// How strongly metal wire glints.
const GLINT: f32 = 0.55;
/// Chain and rings glint and do not turn about themselves.
const WIRE: Dress = Dress::grey(GLINT);
/// Each link of a curb chain lies so much over the one before it; far less than to what lies over all of them.
const CURB_STEP: f32 = 0.0005;
/// A body that swings by some angle also turns about its own axis, by so much of it.
const TWIST: f32 = 1.2;
/// What is behind the base, beside what is before it.
const IN_THE_SHADE: f32 = 0.78;

/// How a drop's body shines, that it turns, and whether the ground is seen through it where that is woven.
fn surface(kind: &DropKind, woven: bool) -> Dress {
    let glint = match kind.sort {
        Sort::Tassel => 0.08,
        Sort::Bead | Sort::Vial | Sort::Crystal => 0.4,
        Sort::Charm | Sort::Locket | Sort::Key | Sort::Found => GLINT,
    };
    let dress = Dress::picture(glint, TWIST);
    let index = kind.facts.materials.iter().find_map(|material| material.refractive_index());
    index.filter(|_| woven).map_or(dress, |index| dress.clear(index as f32))
}

/// In front or behind, as everywhere a piece is shown; the chosen drop is before all.
pub(super) fn height_of(rank: usize, chosen: bool) -> f32 {
    z::DROPS + rank as f32 * 0.01 + if chosen { 40.0 } else { 0.0 }
}

/// The finish's colour on a screen beside what the metal itself throws back, red, green and blue: as the art has it
/// (`METALS` in `assets/art/materials.py`).
const BARE: [f32; 3] = [1.07, 0.98, 0.93];

/// What wire of a finish throws back of the light that falls on it, whitened by `dim`.
fn metal(finish: Finish, dim: f32) -> LinearRgba {
    let [r, g, b] = art::tint(finish).map(|part| (part * (1.0 - dim) + 0.9 * dim).min(1.0));
    let light = Color::srgb(r, g, b).to_linear();
    LinearRgba::rgb(light.red * BARE[0], light.green * BARE[1], light.blue * BARE[2])
}

/// Links mirror each other and the linen close by: a chain is so much brighter than the picture of one link alone. Path-traced
/// ones (`assets/art/piece.py`) are brighter still, and have darker edges, which a picture so small can't have as well.
const SMALL_LINK: f32 = 1.6;
/// The same for bangle and clasp, which are seen nearly as large as they were painted.
const LARGE_WIRE: f32 = 1.2;

/// The same as a colour to draw with, so many times as bright.
fn stain(finish: Finish, dim: f32, brighter: f32) -> Color {
    (metal(finish, dim) * brighter).with_alpha(1.0).into()
}

/// Where a drop is: its ring round what it hangs on.
pub(super) struct Place {
    /// The base's middle under the ring, in pixels.
    pub pivot: Pos2,
    /// To the right, in radians.
    pub lean_rad: f32,
    /// To the right of where it is looked at from, in millimetres.
    pub aside_mm: f32,
    pub px_per_mm: f32,
    /// How much higher it is over what is behind it than what hangs, in millimetres.
    pub lifted_mm: f32,
}

/// What is drawn of a piece, and with what.
pub(super) struct Seen<'a> {
    pub art: &'a Art,
    pub hanger: &'a Hanger,
    /// Whether the ground is linen; else it is of one colour.
    pub woven: bool,
    pub list: Vec<Shown>,
}

impl Seen<'_> {
    fn at(&self, p: Vec2) -> Pos2 {
        self.hanger.at(p.x, p.y)
    }

    /// The chain, behind the neck and before it.
    pub(super) fn necklace(&mut self, base: &Base, necklace: &Necklace, places: &PiecePlaces, motion: &Motion) {
        let back: Vec<Vec2> = places.back.iter().map(|p| Vec2::new(p.x_mm as f32, p.y_mm as f32)).collect();
        let pitch = necklace.pitch_mm() as f32;
        let back = evenly(&back, pitch);
        let back_links = back.windows(2).map(|pair| (pair[0], pair[1]));
        self.links(necklace, back_links, stain(base.finish, 0.45, SMALL_LINK), z::BACK);
        if let Some(middle) = back.get(back.len() / 2) {
            let size = Vec2::new(necklace.clasp.length.mm() as f32, necklace.clasp.width.mm() as f32);
            self.list.push(Shown {
                image: self.art.clasp.clone(),
                at: self.at(*middle),
                size: size * self.hanger.px_per_mm,
                angle: 0.0,
                z: z::BACK + 2.0,
                color: stain(base.finish, 0.3, LARGE_WIRE),
                dress: WIRE,
            });
        }
        let front = motion.links().map(|(a, b)| (vec(a), vec(b)));
        self.links(necklace, front, stain(base.finish, 0.0, SMALL_LINK), z::FRONT);
    }

    /// Links along a line: one from the front, one edge on, and so forth; of a curb chain all from the front, each over the
    /// one before it.
    fn links(&mut self, necklace: &Necklace, links: impl Iterator<Item = (Vec2, Vec2)>, color: Color, z: f32) {
        let px = self.hanger.px_per_mm;
        let (long, wide) = (necklace.link_length.mm() as f32 * px, necklace.link_width.mm() as f32 * px);
        let thick = Necklace::WIRE_SHARE as f32 * wide;
        let art = self.art.link(necklace.link);
        // From the front its hole lets the light through.
        let face_px2 = PI / 4.0 * (long * wide - (long - 2.0 * thick).max(0.0) * (wide - 2.0 * thick).max(0.0));
        let two_px2 = face_px2 + if necklace.link == LinkKind::Curb { face_px2 } else { long * thick };
        for (number, (left, right)) in links.enumerate() {
            let (a, b) = (self.at(left), self.at(right));
            let along = b - a;
            let angle = along.y.atan2(along.x);
            let mut show = |art: &Relief, wide: f32, z: f32| {
                self.list.push(Shown {
                    image: art.clone(),
                    at: a + along * 0.5,
                    size: Vec2::new(long, wide),
                    angle,
                    z,
                    color,
                    dress: WIRE,
                });
            };
            match necklace.link {
                LinkKind::Curb => {
                    show(&art.face, wide, z + number as f32 * CURB_STEP);
                    show(&art.side, wide, z + 0.5);
                }
                // Links edge on lie over those seen from the front, where they pass through them.
                _ if number % 2 == 0 => show(&art.face, wide, z),
                _ => show(&art.side, thick, z + 0.5),
            }
            if number % 2 == 0 {
                self.list.push(self.patch(b, angle, Vec2::new(2.0 * long, wide), two_px2, z - 1.0));
            }
        }
    }

    /// The shadow of a part of the base that covers so many square pixels and is smaller than its shadow's edge is wide: a
    /// patch, whatever its outline.
    fn patch(&self, at: Pos2, angle: f32, size: Vec2, covers_px2: f32, z: f32) -> Shown {
        let (px, shadow) = (self.hanger.px_per_mm, Shadow::from(Shadow::OF_BASE_MM));
        let (fall, size) = (Vec2::from(shadow.fall_mm) * px, size + shadow.edge_mm * px);
        Shown {
            image: self.art.nothing.clone(),
            at: pos2(at.x + fall.x, at.y + fall.y),
            size,
            angle,
            z,
            color: Color::WHITE,
            dress: Dress::patch(covers_px2 / (size.x * size.y)),
        }
    }

    /// The bangle as it is turned now.
    pub(super) fn bangle(&mut self, base: &Base, bangle: &BangleAt, motion: &Motion) {
        let px = self.hanger.px_per_mm;
        let side = 2.0 * (bangle.inside_radius_mm + bangle.wire_mm) as f32 * px;
        let (middle, turn) = motion.hoop().unwrap_or((bangle.centre, 0.0));
        let hoop = Shown {
            image: self.art.bangle.clone(),
            at: self.at(vec(middle)),
            size: Vec2::splat(side),
            angle: -turn as f32,
            z: z::FRONT,
            color: stain(base.finish, 0.0, LARGE_WIRE),
            dress: WIRE,
        };
        self.list.push(cast(&hoop, Shadow::OF_BASE_MM, px, z::SHADOW));
        self.list.push(hoop);
    }

    /// A drop: half of its ring behind the base, then its body, then the other half before both.
    pub(super) fn hung(&mut self, kind: &DropKind, finish: Finish, picture: Option<Relief>, place: &Place, z: f32) {
        self.drop(kind, finish, picture, place, z, (z::SHADOW, z::FAR));
    }

    /// The same in a hand: there is no base between the halves of its ring. It is the drop with this number.
    pub(super) fn held(&mut self, kind: &DropKind, picture: Option<Relief>, place: &Place, number: usize) {
        let z = number as f32;
        self.drop(kind, kind.finish.unwrap_or(Finish::AntiqueBrass), picture, place, z + 0.5, (z, z + 0.2));
    }

    fn drop(
        &mut self,
        kind: &DropKind,
        finish: Finish,
        picture: Option<Relief>,
        place: &Place,
        z: f32,
        (shadow_z, far_z): (f32, f32),
    ) {
        let (px, pivot, lean) = (place.px_per_mm, place.pivot, place.lean_rad);
        let (width, height) = (kind.width.mm() as f32 * px, kind.height.mm() as f32 * px);
        // Hangs from the pivot, `down` pixels below it along its own axis.
        let below = |down: f32| pos2(pivot.x + lean.sin() * down, pivot.y + lean.cos() * down);
        let ring = seen_ring(kind, f64::from(place.aside_mm), f64::from(lean));
        let (half_width, half_height) = (ring.half_width_mm as f32 * px, ring.half_height_mm as f32 * px);
        let (wire, near_right) = (ring.wire_mm as f32 * px, half_width >= 0.0);
        let thick = wire / (2.0 * half_height);
        let round = |room: f32| {
            Vec2::new(2.0 * half_width.abs() + wire * (1.0 + room), 2.0 * half_height + wire * (1.0 + room))
        };
        let middle = below((kind.ring.outside.mm() / 2.0 - kind.ring.wire.mm()) as f32 * px);
        let half = |right: bool, share: f32, z: f32, art: &Art| Shown {
            image: art.nothing.clone(),
            at: middle,
            size: round(WIRE_ROOM),
            angle: -lean,
            z,
            color: stain(finish, 0.0, share),
            dress: Dress::wire(thick, right, near_right, GLINT * share),
        };
        let shadow = Shadow::from(Shadow::OF_BASE_MM + place.lifted_mm);
        let soft = shadow.edge_mm / (ring.wire_mm as f32);
        let fall = Vec2::from(shadow.fall_mm) * px;
        self.list.push(Shown {
            size: round(soft),
            at: pos2(middle.x + fall.x, middle.y + fall.y),
            z: shadow_z,
            color: Color::WHITE,
            dress: Dress::wire_shadow(thick, soft),
            ..half(near_right, 1.0, 0.0, self.art)
        });
        self.list.push(half(!near_right, IN_THE_SHADE, far_z, self.art));
        if let Some(image) = picture {
            let at = below(kind.ring.hangs_mm() as f32 * px + height / 2.0);
            let size = Vec2::new(width, height);
            let body =
                Shown { image, at, size, angle: -lean, z, color: Color::WHITE, dress: surface(kind, self.woven) };
            self.list.push(cast(&body, Shadow::OF_BODY_MM + place.lifted_mm, px, z - 0.001));
            self.list.push(body);
        }
        self.list.push(half(near_right, 1.0, z + 0.001, self.art));
    }
}

/// The shadow of `thing`, `height_mm` over what is behind it, in its own outline.
fn cast(thing: &Shown, height_mm: f32, px: f32, z: f32) -> Shown {
    let shadow = Shadow::from(height_mm);
    let (fall, edge) = (Vec2::from(shadow.fall_mm) * px, shadow.edge_mm * px);
    Shown {
        image: thing.image.clone(),
        at: pos2(thing.at.x + fall.x, thing.at.y + fall.y),
        size: thing.size + 2.0 * SHADOW_ROOM * edge,
        z,
        color: Color::WHITE,
        dress: Dress::shadow(thing.size / px, shadow.edge_mm),
        ..*thing
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
