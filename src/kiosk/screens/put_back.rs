//! Where does this go? Pictures of every drop; the touched one's compartment lights up.

use bevy_egui::egui::{Align2, Color32, Rect, vec2};

use super::{
    super::{
        layout::{Layout, cut_top},
        paint::Brush,
        targets::ScrollId,
        theme::Type,
        tone::Tone,
    },
    Scene,
    parts::{bar_title, drop_in, top_bar},
    trays,
};
use crate::guest::Request;

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let bar = top_bar(b, s, layout.top);
    bar_title(b, bar, &s.t("put-back"));
    let Some(catalog) = s.catalog() else { return };
    let gap = b.gap();
    let board = layout.stage.shrink(gap * 1.4);
    let found = s.guest.session().whereabouts.as_ref().and_then(|id| catalog.drop_kind(id));
    match found.and_then(|kind| Some((kind, catalog.trays.iter().find(|tray| tray.letter == kind.home.tray)?))) {
        Some((kind, tray)) => {
            let (head, rest) = cut_top(board, board.height() * 0.36);
            let (home, name) = cut_top(head, head.height() * 0.66);
            let ty = Type::NUMBER.sized(130.0).in_color(Tone::Plum);
            b.text(home, Align2::CENTER_CENTER, &kind.home.to_string(), ty);
            let words = format!("{} · {}", s.drop_name(kind), s.called(&tray.letter.to_string(), &tray.name));
            b.text(name, Align2::CENTER_CENTER, &words, Type::NAME);
            trays::map(b, tray, kind.home, rest.with_min_y(rest.top() + gap));
        }
        None => {
            b.text(board, Align2::CENTER_CENTER, &s.t("put-back-hint"), Type::HEADING);
        }
    }
    b.fill(layout.side, 0.0, Tone::Aside);
    let rect = layout.side.shrink(gap);
    let side = b.small_hands_px(104.0);
    let columns = ((rect.width() / (side + gap * 0.6)).floor() as usize).max(1);
    let width = (rect.width() - b.px(10.0) - gap * 0.6 * (columns - 1) as f32) / columns as f32;
    b.scroll(ScrollId::Pictures, rect, |b, start| {
        let mut bottom = start.y;
        for (i, kind) in catalog.drops.iter().enumerate() {
            let step = vec2(width, width * 1.1) + vec2(gap, gap) * 0.6;
            let corner = start + vec2((i % columns) as f32 * step.x, (i / columns) as f32 * step.y);
            let card = Rect::from_min_size(corner, vec2(width, width * 1.1));
            bottom = card.bottom();
            if !card.intersects(rect) {
                continue;
            }
            let chosen = found.is_some_and(|found| found.id == kind.id);
            b.fill(card, b.px(12.0), if chosen || b.pressed(card) { Tone::PlumPale } else { Tone::Linen });
            let (line, edge) = if chosen { (3.0, Tone::Plum) } else { (1.0, Tone::Seam) };
            b.outline(card, b.px(12.0), line, edge);
            drop_in(b, s, kind, card.shrink(b.px(12.0)), Color32::WHITE);
            b.button_target(card, Request::Where(kind.id.clone()), s.drop_name(kind));
        }
        bottom
    });
}
