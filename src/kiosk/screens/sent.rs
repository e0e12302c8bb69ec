//! Sent: the piece on its ticket, the number, huge; the sum; what happens next; the homes on a little map.

use bevy_egui::egui::{Align2, Rect, Stroke, StrokeKind, pos2, vec2};

use super::{
    super::{
        layout::{Layout, cut_bottom, cut_left, cut_right, cut_top},
        paint::{Brush, Look, Plate},
        theme::{self, Type},
        tone::Tone,
    },
    Scene,
    parts::homes,
    trays,
};
use crate::{
    catalog::{Catalog, ThreadedBy},
    craft::{Home, Piece},
    guest::{Request, Sending, walking_order},
};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let Sending::Given { .. } = &s.guest.session().sending else { return };
    let (ticket, torn) = (layout.ticket(), s.moves.ticket.torn);
    torn_off(b, ticket, torn);
    let gap = b.gap();
    let inner = ticket.shrink(gap * 1.5);
    let (foot, rest) = cut_bottom(inner, b.touch_px(theme::TOUCH_MAIN));
    let left = 1.0 - s.idle.undisturbed_s() / theme::SENT_STAYS_S;
    let (ring, words) = cut_right(foot, foot.height() * 1.2);
    b.countdown(ring.center(), foot.height() * 0.36, left);
    let (done, _) = cut_right(words, (words.width() * 0.4).max(b.touch_px(200.0)));
    b.button(done.with_max_x(done.right() - gap), Look::Main, None, &s.t("sent-done"), Some(Request::Done));
    let rest = rest.with_max_y(rest.bottom() - gap);
    keepsake(b, s, layout.keepsake());
    let words = if layout.portrait {
        rest.with_min_y(layout.keepsake().bottom() + gap)
    } else {
        rest.with_min_x(layout.keepsake().right() + gap * 1.5)
    };
    if let (Some(catalog), Some(piece)) = (s.catalog(), s.guest.session().history.now().piece()) {
        told(b, s, catalog, &piece, words);
    }
}

/// The picture to take home: the ground on which the stage's piece hangs, and the table's name under it.
fn keepsake(b: &Brush, s: &Scene, rect: Rect) {
    let radius = b.px(10.0);
    b.fill(rect, radius, Tone::Linen);
    let name = s.catalog().map(|catalog| catalog.table.name.as_str()).unwrap_or_default();
    let (foot, _) = cut_bottom(rect.shrink(b.px(8.0)), b.line(40.0));
    b.text(foot, Align2::CENTER_CENTER, name, Type::NAME);
    b.outline(rect, radius, 1.0, Tone::Seam);
}

/// Number, sum, what happens next, and the way from home to home.
fn told(b: &mut Brush, s: &Scene, catalog: &Catalog, piece: &Piece, rect: Rect) {
    let Sending::Given { kept, delivered, short } = &s.guest.session().sending else { return };
    let gap = b.gap();
    // Where there is little room the words need more of it; the homes can be scrolled.
    let share = if rect.height() < b.line(480.0) { 0.66 } else { 0.5 };
    let (head, below) = cut_top(rect, rect.height() * share);
    let (title, head) = cut_top(head, b.line(40.0));
    b.text(title, Align2::CENTER_CENTER, &s.t("sent-title"), Type::HEADING);
    let (number, head) = cut_top(head, head.height() * 0.5);
    stamped(b, number, &kept.number.to_string(), s.moves.ticket.stamped);
    let (sum, next) = cut_top(head, b.line(40.0).min(head.height() * 0.4));
    if let Some(quote) = &s.guest.derived().quote {
        b.text(sum, Align2::CENTER_CENTER, &s.money(quote.total), Type::FIGURE.sized(30.0));
    }
    let mut text = s.t(match (*delivered, catalog.table.threaded_by) {
        (true, ThreadedBy::Guest) => "sent-thread",
        (true, ThreadedBy::Seller) => "sent-next",
        (false, _) => "sent-kept",
    });
    if !short.is_empty() {
        text = format!("{text} {}", s.t("sent-short"));
    }
    b.text(next.shrink2(vec2(gap * 0.5, 2.0)), Align2::CENTER_CENTER, &text, Type::BODY.sized(21.0));
    let (label, list) = cut_top(below, b.line(32.0).max(20.0));
    b.text(label, Align2::LEFT_CENTER, &s.t("sent-homes"), Type::SMALL);
    let list = way(b, catalog, piece, list);
    homes(b, s, catalog, piece, list);
}

/// The number as it is stamped on: it comes down, and ink is round it.
fn stamped(b: &Brush, rect: Rect, number: &str, done: f32) {
    let shown = rect.translate(vec2(0.0, -b.px(26.0) * (1.0 - done)));
    if done > 0.0 {
        b.text(shown.shrink(b.px(6.0)), Align2::CENTER_CENTER, number, Type::NUMBER.in_color(Tone::Plum));
    }
    // The stamp's edge is pressed on hard, then dries.
    let wet = (1.0 - done) * 8.0 + 2.0;
    let edge = b.color(Tone::Plum).gamma_multiply(done.min(1.0) * 0.8);
    b.painter.rect_stroke(rect.shrink(b.px(3.0)), b.px(12.0), Stroke::new(wet, edge), StrokeKind::Inside);
}

/// The trays that hold the piece's drops, as little maps with their compartments lit, in walking order. Gives what is left
/// of `rect`; where there is hardly room, all of it.
fn way(b: &Brush, catalog: &Catalog, piece: &Piece, rect: Rect) -> Rect {
    let stops = walking_order(catalog, piece);
    let lit: Vec<Home> = stops.iter().map(|(home, ..)| *home).collect();
    let trays: Vec<_> = catalog.trays.iter().filter(|tray| lit.iter().any(|home| home.tray == tray.letter)).collect();
    let (gap, height) = (b.gap(), b.px(118.0));
    if trays.is_empty() || rect.height() < height + b.line(80.0) {
        return rect;
    }
    let (maps, rest) = cut_top(rect, height);
    let width = ((maps.width() - gap * (trays.len() - 1) as f32) / trays.len() as f32).min(height * 1.5);
    let mut left = maps;
    for tray in trays {
        let (place, after) = cut_left(left, width);
        trays::little_map(b, tray, &lit, place.with_max_y(place.bottom() - gap * 0.5));
        left = after.with_min_x(after.left() + gap);
    }
    rest
}

/// The ticket under the block it is torn from: `torn` of the way.
fn torn_off(b: &Brush, ticket: Rect, torn: f32) {
    let gap = b.px(16.0) * torn * torn;
    let block = Rect::from_min_max(
        pos2(ticket.left(), ticket.top() - b.px(26.0) - gap),
        pos2(ticket.right(), ticket.top() - gap),
    );
    b.fill(block, b.px(6.0), Tone::LinenDeep);
    b.card(ticket, Plate::Paper);
    // Holes along the edge, through block and ticket.
    let (radius, step) = (b.px(4.0), b.px(18.0));
    let count = ((ticket.width() - 2.0 * step) / step).floor().max(1.0) as usize;
    for i in 0..=count {
        let x = ticket.left() + step + (ticket.width() - 2.0 * step) * i as f32 / count as f32;
        for y in [block.bottom(), ticket.top()] {
            b.painter.circle_filled(pos2(x, y), radius, b.color(Tone::Linen));
        }
    }
}
