//! A sent piece is threaded: its number typed, then the piece as it hangs beside its homes, each to be ticked.

use bevy_egui::egui::{Align2, Color32, Rect, pos2, vec2};

use super::{
    super::{
        layout::{Layout, cut_bottom, cut_left, cut_right},
        paint::{Brush, Icon, Look, Plate},
        targets::ScrollId,
        theme::{self, Type},
        tone::Tone,
    },
    Scene,
    keypad::{self, Keypad},
    lengths::written,
    parts::{bar_title, drop_in, notices, top_bar},
    stage::view_buttons,
};
use crate::{
    craft::{DropKind, Home},
    guest::{Request, ThreadingNote, walking_order},
};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let threading = &s.guest.session().threading;
    let bar = top_bar(b, s, layout.top);
    let Some(number) = threading.found else {
        bar_title(b, bar, &s.t("thread"));
        let rest = Rect::from_min_max(pos2(layout.window.left(), layout.top.bottom()), layout.window.max);
        let said = match (threading.asked, threading.note) {
            (Some(_), _) => "thread-asking",
            (None, Some(ThreadingNote::NoNumber)) => "thread-no-number",
            (None, Some(ThreadingNote::Unknown)) => "thread-unknown",
            (None, Some(ThreadingNote::Away)) => "thread-away",
            (None, None) => "thread-ask",
        };
        keypad::paint(b, s, rest, &Keypad { said: s.t(said), typed: threading.typed.clone(), more: &[] });
        return;
    };
    bar_title(b, bar, &number.to_string());
    let beside = view_buttons(b, s, layout);
    notices(b, s, beside.min, beside.width());
    to_collect(b, s, layout.side);
}

/// One thing to collect.
enum Stop<'a> {
    Base(&'a str, String),
    Drop(Home, &'a DropKind, usize),
}

fn to_collect(b: &mut Brush, s: &Scene, side: Rect) {
    let (Some(catalog), Some(piece)) = (s.catalog(), &s.guest.derived().piece) else { return };
    let gap = b.gap();
    let card = side.shrink(gap);
    b.card(card, Plate::Paper);
    let inner = card.shrink(gap * 1.2);
    let (foot, rest) = cut_bottom(inner, b.touch_px(theme::TOUCH_MAIN));
    let all = s.guest.to_collect();
    let done = s.guest.session().threading.collected.len();
    let (button, count) = cut_right(foot, (foot.width() * 0.45).max(b.touch_px(150.0)));
    b.button(button, Look::Main, Some(Icon::Tick), &s.t("thread-done"), Some(Request::Done));
    let words = s.texts.with("thread-collected", &[("n", (done as i64).into()), ("of", (all as i64).into())]);
    b.text(count.with_max_x(count.right() - gap), Align2::LEFT_CENTER, &words, Type::NAME);
    let told = b.paragraph(rest.min, rest.width(), &s.t("thread-collect"), Type::SMALL);
    let list = Rect::from_min_max(pos2(rest.left(), told + gap * 0.6), pos2(rest.right(), rest.bottom() - gap * 0.8));
    let base = catalog.base(&piece.base);
    let length = piece.length.map(|length| written(length, catalog.table.region, s.texts.lang)).unwrap_or_default();
    let name = base.map_or(piece.base.as_str(), |base| s.called(&base.id, &base.name));
    let drops = walking_order(catalog, piece).into_iter().map(|(home, kind, count)| Stop::Drop(home, kind, count));
    let stops: Vec<Stop> = std::iter::once(Stop::Base(name, length)).chain(drops).collect();
    let (height, gap) = (b.small_hands_px(74.0), gap * 0.7);
    let columns = ((list.width() / b.px(300.0).max(250.0)).floor() as usize).clamp(1, 2);
    let width = (list.width() - gap * (columns - 1) as f32 - b.px(10.0)) / columns as f32;
    b.scroll(ScrollId::Homes, list, |b, start| {
        let mut bottom = start.y;
        for (i, stop) in stops.iter().enumerate() {
            let corner = start + vec2((i % columns) as f32 * (width + gap), (i / columns) as f32 * (height + gap));
            let place = Rect::from_min_size(corner, vec2(width, height));
            self::stop(b, s, stop, i, place);
            bottom = place.bottom();
        }
        bottom
    });
}

/// A card with a box to tick: where it lies, its picture, its name.
fn stop(b: &mut Brush, s: &Scene, stop: &Stop, number: usize, card: Rect) {
    let on = s.guest.session().threading.collected.contains(&number);
    let radius = b.px(12.0);
    b.fill(card, radius, if on || b.pressed(card) { Tone::PlumPale } else { Tone::Paper });
    b.outline(card, radius, if on { 2.5 } else { 1.5 }, if on { Tone::Plum } else { Tone::PlumLine });
    let side = (card.height() * 0.5).min(b.px(38.0));
    let (sign, rest) = cut_left(card.shrink(b.px(6.0)), side + b.px(10.0));
    let square = Rect::from_center_size(sign.center(), vec2(side, side));
    b.fill(square, b.px(6.0), Tone::Paper);
    b.outline(square, b.px(6.0), 2.5, Tone::Plum);
    if on {
        b.icon(square.shrink(side * 0.12), Icon::Tick, Tone::Plum);
    }
    let label = match stop {
        Stop::Base(name, length) => {
            b.text(rest, Align2::LEFT_CENTER, &format!("{name} {length}"), Type::BODY.sized(19.0));
            format!("{name} {length}")
        }
        Stop::Drop(home, kind, count) => {
            let (badge, rest) = cut_left(rest, b.px(58.0));
            b.home_badge(badge.center(), &home.to_string(), 24.0);
            let (picture, words) = cut_left(rest, card.height() * 0.8);
            drop_in(b, s, kind, picture.shrink(2.0), Color32::WHITE);
            let times = if *count > 1 { format!(" × {count}") } else { String::new() };
            let name = format!("{}{times}", s.piece_name(kind));
            b.text(words, Align2::LEFT_CENTER, &name, Type::BODY.sized(19.0));
            format!("{home}: {name}")
        }
    };
    b.choice_target(card, Request::Collect(number), label, on);
}
