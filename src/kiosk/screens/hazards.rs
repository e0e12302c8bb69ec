//! What there is to be careful about: a card for each hazard, graver first, with the pictures of the parts it concerns.

use bevy_egui::egui::{Color32, Pos2, Rect, pos2, vec2};

use super::{
    super::{
        paint::{Brush, Icon},
        theme::Type,
        tone::Tone,
    },
    Scene,
    base_sign::base_sign,
    parts::drop_in,
};
use crate::{
    catalog::Catalog,
    caution::Hazard,
    craft::{Piece, Wearer},
};

/// All hazards with what they are worth. Gives where it ended.
pub(super) fn hazards(b: &Brush, s: &Scene, catalog: &Catalog, piece: &Piece, at: Pos2, width: f32) -> f32 {
    let all = s.guest.derived().verdict.hazards();
    let mut y = at.y;
    for hazard in &all {
        y = card(b, s, catalog, piece, hazard, pos2(at.x, y), width);
    }
    if all.is_empty() {
        y = b.paragraph(pos2(at.x, y), width, &s.t("caution-none"), Type::BODY) + b.px(6.0);
    }
    b.paragraph(pos2(at.x, y), width, &s.t("caution-deferral"), Type::SMALL) + b.px(6.0)
}

/// One hazard: its sign and one sentence, the parts as pictures with their names small, the rule smaller. Gives where the
/// next may begin.
fn card(b: &Brush, s: &Scene, catalog: &Catalog, piece: &Piece, hazard: &Hazard, at: Pos2, width: f32) -> f32 {
    let one = hazard.spokesman();
    let (words, small) = (Type::BODY.sized(19.0), Type::SMALL.sized(15.0));
    let (pad, side, gap) = (b.px(12.0), b.px(34.0).max(24.0), b.px(6.0));
    let room = width - side - 3.0 * pad;
    let text = s.texts.caution(one, catalog);
    let names = names(s, catalog, piece, hazard);
    let cited = s.texts.cited(one);
    let picture = b.px(50.0).max(34.0);
    let shown = hazard.drops().count() + usize::from(hazard.is_of_the_base());
    let a_row = ((room + gap) / (picture + gap)).floor().max(1.0) as usize;
    let rows = shown.div_ceil(a_row) as f32;
    let heights = [b.measure(&text, words, room).y, rows * (picture + gap) - gap]
        .into_iter()
        .chain([&names, &cited].map(|line| b.measure(line, small, room).y));
    let rect = Rect::from_min_size(at, vec2(width, heights.map(|height| height + gap).sum::<f32>() + 2.0 * pad - gap));
    // Before anybody said who it is for, nothing is wrong yet; and what only has to be known is said calmly.
    let grave = hazard.is_grave() && piece.wearer != Wearer::Unknown;
    let (fill, edge) = if grave { (Tone::Grave, Tone::CautionInk) } else { (Tone::Caution, Tone::BrassLight) };
    b.fill(rect, b.px(12.0), fill);
    b.outline(rect, b.px(12.0), 1.0, edge);
    let sign = Rect::from_min_size(rect.min + vec2(pad, pad), vec2(side, side));
    b.icon(sign, if grave { Icon::NotFor } else { Icon::Caution }, Tone::CautionInk);
    let left = sign.right() + pad;
    let mut y = b.paragraph(pos2(left, rect.top() + pad), room, &text, words) + gap;
    for place in 0..shown {
        let corner =
            pos2(left + (place % a_row) as f32 * (picture + gap), y + (place / a_row) as f32 * (picture + gap));
        part(b, s, catalog, piece, hazard, place, Rect::from_min_size(corner, vec2(picture, picture)));
    }
    y += rows * (picture + gap);
    y = b.paragraph(pos2(left, y), room, &names, small) + gap;
    b.paragraph(pos2(left, y), room, &cited, small);
    rect.bottom() + b.px(8.0)
}

/// The names of the parts, the base's first.
fn names(s: &Scene, catalog: &Catalog, piece: &Piece, hazard: &Hazard) -> String {
    let base = catalog.base(&piece.base).filter(|_| hazard.is_of_the_base());
    let base = base.map(|base| s.called(&base.id, &base.name));
    let drops = hazard.drops().filter_map(|id| Some(s.drop_name(catalog.drop_kind(id)?)));
    base.into_iter().chain(drops).collect::<Vec<_>>().join(", ")
}

/// The picture of one of the parts, the base's first.
fn part(b: &Brush, s: &Scene, catalog: &Catalog, piece: &Piece, hazard: &Hazard, place: usize, rect: Rect) {
    b.fill(rect, b.px(8.0), Tone::Paper);
    let inner = rect.shrink(b.px(3.0));
    let of_base = usize::from(hazard.is_of_the_base());
    if place < of_base {
        if let Some(base) = catalog.base(&piece.base) {
            base_sign(b, s, base, inner);
        }
    } else if let Some(kind) = hazard.drops().nth(place - of_base).and_then(|id| catalog.drop_kind(id)) {
        drop_in(b, s, kind, inner, Color32::WHITE);
    }
}
