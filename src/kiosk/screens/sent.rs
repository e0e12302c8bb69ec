//! Sent: the number, huge; what happens next; the homes.

use bevy_egui::egui::{Align2, Rect, pos2, vec2};

use super::{
    super::{
        layout::{Layout, cut_bottom, cut_right, cut_top},
        paint::{Brush, Look, Plate},
        theme::{self, Type},
        tone::Tone,
    },
    Scene,
    parts::homes,
};
use crate::{
    catalog::ThreadedBy,
    guest::{Request, Sending},
};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let Sending::Given { kept, delivered, short } = &s.guest.session().sending else { return };
    let gap = b.gap();
    let page = layout.window.shrink(gap * 1.5);
    let (written, torn) = s.moves.ticket;
    let page = torn_off(b, page, torn);
    let inner = page.shrink(gap * 1.5);
    let (foot, rest) = cut_bottom(inner, b.touch_px(theme::TOUCH_MAIN));
    let left = 1.0 - s.idle.undisturbed_s() / theme::SENT_STAYS_S;
    let (ring, words) = cut_right(foot, foot.height() * 1.2);
    b.countdown(ring.center(), foot.height() * 0.36, left);
    let (done, _) = cut_right(words, (words.width() * 0.4).max(b.touch_px(200.0)));
    b.button(done.with_max_x(done.right() - gap), Look::Main, None, &s.t("sent-done"), Some(Request::Done));
    let rest = rest.with_max_y(rest.bottom() - gap);

    let share = if layout.portrait { 0.5 } else { 0.62 };
    let (head, below) = cut_top(rest, rest.height() * share);
    let (title, number) = cut_top(head, b.line(44.0));
    b.text(title, Align2::CENTER_CENTER, &s.t("sent-title"), Type::HEADING);
    let (next, number) = cut_bottom(number, number.height() * 0.36);
    // It is written from left to right.
    let before = b.painter.clip_rect();
    b.painter.set_clip_rect(before.intersect(number.with_max_x(number.left() + number.width() * written)));
    b.text(number, Align2::CENTER_CENTER, &kept.number.to_string(), Type::NUMBER.in_color(Tone::Plum));
    b.painter.set_clip_rect(before);
    let threaded_by = s.catalog().map(|catalog| catalog.table.threaded_by).unwrap_or_default();
    let mut text = s.t(match (*delivered, threaded_by) {
        (true, ThreadedBy::Guest) => "sent-thread",
        (true, ThreadedBy::Seller) => "sent-next",
        (false, _) => "sent-kept",
    });
    if !short.is_empty() {
        text = format!("{text} {}", s.t("sent-short"));
    }
    b.text(next.shrink2(vec2(gap, 2.0)), Align2::CENTER_CENTER, &text, Type::BODY.sized(23.0));
    let (label, list) = cut_top(below, b.line(36.0).max(22.0));
    b.text(label, Align2::LEFT_CENTER, &s.t("sent-homes"), Type::SMALL);
    if let (Some(catalog), Some(piece)) = (s.catalog(), s.guest.session().history.now().piece()) {
        homes(b, s, catalog, &piece, list);
    }
}

/// The ticket under the block it is torn from: `torn` of the way. Gives the ticket's place.
fn torn_off(b: &Brush, page: Rect, torn: f32) -> Rect {
    let (block, below) = cut_top(page, b.px(26.0));
    let gap = b.px(16.0) * torn * torn;
    b.fill(block, b.px(6.0), Tone::LinenDeep);
    let ticket = below.with_min_y(below.top() + b.px(2.0)).translate(vec2(0.0, gap));
    b.card(ticket.with_max_y(page.bottom()), Plate::Paper);
    // Holes along the edge, through block and ticket.
    let (radius, step) = (b.px(4.0), b.px(18.0));
    let count = ((page.width() - 2.0 * step) / step).floor().max(1.0) as usize;
    for i in 0..=count {
        let x = page.left() + step + (page.width() - 2.0 * step) * i as f32 / count as f32;
        for y in [block.bottom(), ticket.top()] {
            b.painter.circle_filled(pos2(x, y), radius, b.color(Tone::Linen));
        }
    }
    ticket.with_max_y(page.bottom())
}
