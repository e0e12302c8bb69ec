//! A base as its card shows it: a bight of its own chain, or the bangle, from the pictures the stage is drawn with.

use bevy_egui::egui::{Color32, Mesh, Pos2, Rect, Shape, TextureId, Vec2, emath::Rot2, pos2, vec2};

use super::{
    super::{paint::Brush, stage::paper_tint},
    Scene,
};
use crate::craft::{Base, BaseKind, LinkKind, Necklace};

/// So many links hang in a bight, an odd number: the lowest one is seen from the front.
const LINKS: usize = 13;
/// The bight's depth, as a share of its width.
const DEPTH: f32 = 0.85;

/// Paints `base` into `rect`.
pub(super) fn base_sign(b: &Brush, s: &Scene, base: &Base, rect: Rect) {
    let color = paper_tint(base.finish);
    match &base.kind {
        BaseKind::Bangle(_) => {
            let side = rect.width().min(rect.height());
            b.picture(rect, s.signs.bangle, vec2(side, side), color);
        }
        BaseKind::Necklace(necklace) => bight(b, s.signs.link(necklace.link), necklace, rect, color),
    }
}

fn bight(b: &Brush, [face, side]: [TextureId; 2], necklace: &Necklace, rect: Rect, color: Color32) {
    let joints = joints(rect.shrink(rect.height() * 0.08));
    let pitch = joints.windows(2).map(|pair| pair[0].distance(pair[1])).sum::<f32>() / LINKS as f32;
    let px_per_mm = pitch / necklace.pitch_mm() as f32;
    let long = necklace.link_length.mm() as f32 * px_per_mm;
    let wide = necklace.link_width.mm() as f32 * px_per_mm;
    let put = |number: usize, texture: TextureId, wide: f32| {
        let (from, to) = (joints[number], joints[number + 1]);
        turned(b, texture, from + (to - from) / 2.0, vec2(long, wide), (to - from).angle(), color);
    };
    // What passes through the links seen from the front lies over them.
    match necklace.link {
        LinkKind::Curb => {
            (0..LINKS).for_each(|number| put(number, face, wide));
            (0..LINKS).for_each(|number| put(number, side, wide));
        }
        LinkKind::Cable | LinkKind::FlatCable | LinkKind::Rolo => {
            (0..LINKS).step_by(2).for_each(|number| put(number, face, wide));
            (1..LINKS).step_by(2).for_each(|number| put(number, side, wide * Necklace::WIRE_SHARE as f32));
        }
    }
}

/// Where the links meet: evenly along a parabola, which a chain this deep is near enough to for a sign.
fn joints(rect: Rect) -> Vec<Pos2> {
    const STEPS: usize = 240;
    let width = rect.width().min(rect.height() / DEPTH);
    let (depth, top) = (width * DEPTH, rect.center().y - width * DEPTH / 2.0);
    let at = |step: usize| {
        let x = step as f32 / STEPS as f32 * 2.0 - 1.0;
        pos2(rect.center().x + x * width / 2.0, top + depth * (1.0 - x * x))
    };
    let line: Vec<Pos2> = (0..=STEPS).map(at).collect();
    let length: f32 = line.windows(2).map(|pair| pair[0].distance(pair[1])).sum();
    let mut found = vec![line[0]];
    let mut gone = 0.0;
    for pair in line.windows(2) {
        gone += pair[0].distance(pair[1]);
        if found.len() < LINKS && gone >= length * found.len() as f32 / LINKS as f32 {
            found.push(pair[1]);
        }
    }
    found.push(line[STEPS]);
    found
}

/// A picture turned about its middle.
fn turned(b: &Brush, texture: TextureId, middle: Pos2, size: Vec2, angle: f32, color: Color32) {
    let mut mesh = Mesh::with_texture(texture);
    let whole = Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0));
    mesh.add_rect_with_uv(Rect::from_center_size(middle, size), whole, color);
    mesh.rotate(Rot2::from_angle(angle), middle);
    b.painter.add(Shape::mesh(mesh));
}
