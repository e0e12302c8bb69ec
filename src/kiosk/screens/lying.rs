//! Drops as they lie in their compartments: in true proportion to each other, at ease, and fewer as they are sold.

use bevy_egui::egui::{Color32, Mesh, Pos2, Rect, Shape, Vec2, emath::Rot2, pos2, vec2};

use super::{super::paint::Brush, Scene, parts::drop_in};
use crate::{
    catalog::{Catalog, Tray},
    craft::DropKind,
};

/// However small a drop is beside the others, so much of its compartment's shorter side it takes: to be seen at all.
const LEAST_SHARE: f32 = 0.3;
/// So much of its compartment the longest drop of a tray takes, lying aslant.
const LONGEST_SHARE: f32 = 0.98;
/// Several of a kind are drawn smaller by this: they share the room.
const SEVERAL: f32 = 0.84;
/// What is longer than broad by this lies aslant.
const LONG: f64 = 1.7;

/// How many pixels a millimetre is in a tray whose compartments have this room: its longest drop just fits.
pub(super) fn px_per_mm(catalog: &Catalog, tray: &Tray, room: Rect) -> f32 {
    let kinds = tray.compartments().filter_map(|(_, id)| catalog.drop_kind(id?)).filter(|kind| !kind.is_assortment());
    let fits = kinds.map(|kind| {
        let needed = spread(kind, angle(kind, 0, room));
        (room.width() / needed.x.max(1.0)).min(room.height() / needed.y.max(1.0)) * LONGEST_SHARE
    });
    fits.fold(f32::INFINITY, f32::min).clamp(0.05, 40.0)
}

/// How many are shown of so many that there are: a compartment thins out.
pub(super) fn shown_of(left: u32) -> usize {
    match left {
        0..=2 => 1,
        3..=7 => 2,
        _ => 3,
    }
}

/// `count` drops of a kind, the upper one in the middle.
pub(super) fn some(b: &Brush, s: &Scene, kind: &DropKind, room: Rect, px_per_mm: f32, count: usize, tint: Color32) {
    if kind.is_assortment() {
        return one(b, s, kind, room, px_per_mm, tint);
    }
    // Several lie closer together.
    let px_per_mm = if count > 1 { px_per_mm * SEVERAL } else { px_per_mm };
    for below in (1..count).rev() {
        let (across, up) = if below == 1 { (-0.24, 0.05) } else { (0.24, 0.09) };
        let middle = room.center() + vec2(across * room.width(), -up * room.height());
        lay(b, s, kind, room, px_per_mm, below, middle, tint);
    }
    let down = if count > 1 { 0.08 } else { 0.0 };
    lay(b, s, kind, room, px_per_mm, 0, room.center() + vec2(0.0, down * room.height()), tint);
}

/// One drop; of an assortment, the picture of its mix.
pub(super) fn one(b: &Brush, s: &Scene, kind: &DropKind, room: Rect, px_per_mm: f32, tint: Color32) {
    if kind.is_assortment() {
        return drop_in(b, s, kind, room, tint);
    }
    lay(b, s, kind, room, px_per_mm, 0, room.center(), tint);
}

#[expect(clippy::too_many_arguments, reason = "what lies where, how large, and as which of several")]
fn lay(b: &Brush, s: &Scene, kind: &DropKind, room: Rect, px_per_mm: f32, number: usize, middle: Pos2, tint: Color32) {
    let Some(picture) = s.pictures.small(&kind.picture) else {
        if number == 0 {
            drop_in(b, s, kind, room, tint);
        }
        return;
    };
    let size = vec2(kind.width.mm() as f32, kind.height.mm() as f32);
    let least = LEAST_SHARE * room.width().min(room.height()) / size.x.max(size.y).max(1.0);
    // What is small keeps its proportion as far as it can be seen; nothing is larger than its compartment.
    let angle = angle(kind, number, room);
    let needed = spread(kind, angle);
    let most = (room.width() / needed.x.max(1.0)).min(room.height() / needed.y.max(1.0));
    let size = size * px_per_mm.max(least).min(most);
    let half = spread_of(size, angle) / 2.0;
    // It stays within its compartment.
    let within = |at: f32, from: f32, to: f32, half: f32| {
        at.clamp((from + half).min((from + to) / 2.0), (to - half).max((from + to) / 2.0))
    };
    let middle =
        pos2(within(middle.x, room.left(), room.right(), half.x), within(middle.y, room.top(), room.bottom(), half.y));
    for (away, alpha) in [(4.0, 30), (2.0, 50)] {
        let fallen = middle + vec2(b.px(away * 0.7), b.px(away));
        turned(b, picture.texture, fallen, size, angle, Color32::from_black_alpha(alpha));
    }
    turned(b, picture.texture, middle, size, angle, tint);
}

fn turned(b: &Brush, texture: bevy_egui::egui::TextureId, middle: Pos2, size: Vec2, angle: f32, tint: Color32) {
    let mut mesh = Mesh::with_texture(texture);
    mesh.add_rect_with_uv(
        Rect::from_center_size(middle, size),
        Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0)),
        tint,
    );
    mesh.rotate(Rot2::from_angle(angle), middle);
    b.painter.add(Shape::mesh(mesh));
}

/// How a drop lies in its compartment, in radians clockwise: what is long along a diagonal, each kind and each of several in
/// its own way.
fn angle(kind: &DropKind, number: usize, room: Rect) -> f32 {
    let own: u32 =
        kind.id.bytes().fold(number as u32 * 97 + 7, |sum, byte| sum.wrapping_mul(31).wrapping_add(u32::from(byte)));
    let share = (own % 1000) as f32 / 500.0 - 1.0;
    let side = if (own / 1000).is_multiple_of(2) { 1.0 } else { -1.0 };
    if kind.height.mm() > LONG * kind.width.mm() {
        side * (room.width().atan2(room.height().max(1.0)) + 0.1 * share)
    } else {
        0.34 * share + 0.2 * side
    }
}

/// The room that a drop takes when it lies so, in millimetres.
fn spread(kind: &DropKind, angle: f32) -> Vec2 {
    spread_of(vec2(kind.width.mm() as f32, kind.height.mm() as f32), angle)
}

fn spread_of(size: Vec2, angle: f32) -> Vec2 {
    let (sin, cos) = (angle.sin().abs(), angle.cos().abs());
    vec2(size.x * cos + size.y * sin, size.x * sin + size.y * cos)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_compartment_thins_out_as_its_drops_are_sold() {
        let shown: Vec<usize> = (0..12).map(shown_of).collect();
        assert!(shown.windows(2).all(|pair| pair[0] <= pair[1]) && shown[1] == 1 && shown[11] == 3);
    }

    #[test]
    fn what_lies_aslant_takes_the_room_of_its_corners() {
        let size = vec2(10.0, 40.0);
        for angle in [0.0_f32, 0.4, 0.9, -0.9, 1.5] {
            let turn = Rot2::from_angle(angle);
            let corners = [(-5.0, -20.0), (5.0, -20.0), (5.0, 20.0), (-5.0, 20.0)].map(|(x, y)| turn * vec2(x, y));
            let most = |of: fn(&Vec2) -> f32| corners.iter().map(of).fold(f32::MIN, f32::max) * 2.0;
            let room = spread_of(size, angle);
            assert!((room.x - most(|c| c.x)).abs() < 1e-3 && (room.y - most(|c| c.y)).abs() < 1e-3);
        }
    }
}
