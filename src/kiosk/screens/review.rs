//! Review: the piece, who it is for, cautions, lines, and the sending.

use bevy_egui::egui::{Align2, Rect, pos2, vec2};

use super::{
    super::{
        layout::{Layout, cut_bottom, cut_left},
        paint::{Brush, Icon, Look, Plate},
        targets::ScrollId,
        theme::{self, Type},
        tone::Tone,
    },
    Scene,
    hazards::hazards,
    parts::{bar_title, lines, notices, top_bar},
    stage::{total_tag, view_buttons},
    suits::{unsuitable, who_chip},
};
use crate::{
    craft::Wearer,
    guest::{Overlay, Request, Sending},
};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let bar = top_bar(b, s, layout.top);
    let bar = who_chip(b, s, bar);
    bar_title(b, bar, &s.t("review-title"));
    let gap = b.gap();
    let beside = view_buttons(b, s, layout);
    notices(b, s, beside.min, beside.width());
    let (Some(catalog), Some(piece), Some(quote)) = (s.catalog(), &s.guest.derived().piece, &s.guest.derived().quote)
    else {
        return;
    };
    let card = layout.side.shrink(gap);
    b.card(card, Plate::Paper);
    let inner = card.shrink(gap * 1.2);

    let (send, rest) = cut_bottom(inner, b.touch_px(theme::TOUCH_MAIN));
    let (tag, button) = cut_left(send, send.width() * 0.4);
    total_tag(b, s, tag);
    let must_tick = s.guest.needs_grown_up();
    let may = s.guest.has_been_read() && s.guest.session().sending == Sending::No;
    let (key, icon, request) = match s.guest.session().sending {
        Sending::No if s.guest.session().history.now().wearer == Wearer::Unknown => {
            ("wearer-ask", Icon::Person, Some(Request::Open(Overlay::Wearer)))
        }
        Sending::No => ("review-send", Icon::Onward, may.then_some(Request::Send)),
        _ => ("review-sending", Icon::Onward, None),
    };
    b.button(button.with_min_x(button.left() + gap), Look::Main, Some(icon), &s.t(key), request);
    let mut rest = rest.with_max_y(rest.bottom() - gap * 0.8);
    let tick = must_tick.then(|| {
        let (tick, above) = cut_bottom(rest, b.touch_px(62.0));
        rest = above.with_max_y(above.bottom() - gap * 0.8);
        tick
    });
    // First what it is and what it costs, then what to be careful about.
    b.scroll(ScrollId::Review, rest, |b, start| {
        let width = rest.width() - b.px(12.0);
        let mut y = lines(b, s, catalog, piece, quote, start, width) + gap;
        if !s.guest.derived().verdict.suitable {
            y = unsuitable(b, s, pos2(start.x, y), width);
        }
        hazards(b, s, catalog, piece, pos2(start.x, y), width) + gap * 0.5
    });
    if let Some(tick) = tick {
        let scroll = b.scrolls.0.get(&ScrollId::Review).copied().unwrap_or_default();
        let seen = scroll.offset >= scroll.most - SEEN_TO_THE_END_PX;
        if seen || s.guest.has_been_read() {
            tick_box(b, s, tick);
        } else {
            // What was not seen can't have been read.
            let n = s.guest.derived().verdict.hazards().len() as i64;
            let label = s.texts.with("grown-up-read", &[("n", n.into())]);
            b.button(tick, Look::Plain, Some(Icon::Caution), &label, Some(Request::ReadOn));
        }
    }
}

/// So near to its end a text counts as seen, in logical pixels.
const SEEN_TO_THE_END_PX: f32 = 24.0;

fn tick_box(b: &mut Brush, s: &Scene, rect: Rect) {
    let on = s.guest.has_been_read();
    let label = s.t("grown-up");
    let radius = b.px(12.0);
    b.fill(rect, radius, if on || b.pressed(rect) { Tone::PlumPale } else { Tone::Caution });
    b.outline(rect, radius, 2.0, Tone::Plum);
    let side = (rect.height() * 0.56).min(b.px(40.0));
    let (sign, words) = cut_left(rect.shrink2(vec2(b.px(8.0), 2.0)), side + b.px(12.0));
    let square = Rect::from_center_size(sign.center(), vec2(side, side));
    b.fill(square, b.px(6.0), Tone::Paper);
    b.outline(square, b.px(6.0), 2.5, Tone::Plum);
    if on {
        b.icon(square.shrink(side * 0.12), Icon::Tick, Tone::Plum);
    }
    b.text(words, Align2::LEFT_CENTER, &label, Type::BODY.sized(19.0));
    b.choice_target(rect, Request::GrownUp(!on), label, on);
}
