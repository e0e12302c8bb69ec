//! Where does this go? Pictures of every drop over the whole width; the touched one's compartment lights up on the map.

use bevy_egui::egui::{Align2, Color32, Rect, pos2, vec2};

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
use crate::{
    catalog::{Catalog, Tray},
    craft::DropKind,
    guest::Request,
};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let bar = top_bar(b, s, layout.top);
    bar_title(b, bar, &s.t("put-back"));
    let Some(catalog) = s.catalog() else { return };
    let found = s.guest.session().whereabouts.as_ref().and_then(|id| catalog.drop_kind(id));
    let at_home = found.and_then(|kind| Some((kind, catalog.trays.iter().find(|tray| tray.letter == kind.home.tray)?)));
    let pictures_in = match at_home {
        Some((kind, tray)) => {
            home(b, s, catalog, kind, tray, layout.stage.union(layout.foot).shrink(b.gap() * 1.4));
            layout.side
        }
        None => {
            let page = Rect::from_min_max(pos2(layout.window.left(), layout.top.bottom()), layout.window.max);
            let (hint, rest) = cut_top(page, b.line(76.0));
            b.text(hint.shrink2(vec2(b.gap(), 0.0)), Align2::CENTER_CENTER, &s.t("put-back-hint"), Type::HEADING);
            rest
        }
    };
    pictures(b, s, catalog, found, pictures_in);
}

/// The compartment, in letters and on its tray.
fn home(b: &Brush, s: &Scene, catalog: &Catalog, kind: &DropKind, tray: &Tray, board: Rect) {
    let (head, rest) = cut_top(board, board.height() * 0.36);
    let (home, name) = cut_top(head, head.height() * 0.66);
    let ty = Type::NUMBER.sized(130.0).in_color(Tone::Plum);
    b.text(home, Align2::CENTER_CENTER, &kind.home.to_string(), ty);
    let words = format!("{} · {}", s.drop_name(kind), s.called(&tray.letter.to_string(), &tray.name));
    b.text(name, Align2::CENTER_CENTER, &words, Type::NAME);
    trays::map(b, s, catalog, tray, kind.home, rest.with_min_y(rest.top() + b.gap()));
}

fn pictures(b: &mut Brush, s: &Scene, catalog: &Catalog, found: Option<&DropKind>, rect: Rect) {
    b.fill(rect, 0.0, Tone::Aside);
    let gap = b.gap();
    let rect = rect.shrink(gap);
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
