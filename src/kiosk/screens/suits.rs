//! Who it is for, whether the piece suits them, and what leads out where it does not.

use bevy_egui::egui::{Align2, Pos2, Rect, pos2, vec2};

use super::{
    super::{
        layout::{cut_left, cut_right, grid},
        paint::{Brush, Icon, Look, Plate},
        theme::{Face, Type},
        tone::Tone,
    },
    Scene,
    parts::wearer,
};
use crate::{
    craft::Wearer,
    guest::{Overlay, Request, Sending},
};

/// Who it is for, at the right end of a bar. Gives what is left of the bar.
pub(super) fn who_chip(b: &mut Brush, s: &Scene, bar: Rect) -> Rect {
    let (chip, rest) = cut_right(bar, (bar.width() * 0.36).min(b.px(300.0)).max(b.least));
    let who = s.guest.session().history.now().wearer;
    let (look, label) = match who {
        Wearer::Unknown => (Look::Plain, s.t("wearer-ask-short")),
        _ => (Look::Chosen, wearer(s, who)),
    };
    let may = s.guest.session().sending == Sending::No;
    b.button(chip, look, Some(Icon::Person), &label, may.then_some(Request::Open(Overlay::Wearer)));
    rest.with_max_x(rest.right() - b.gap() * 0.5)
}

/// How many cautions there are, and whether one speaks against the piece; a touch opens them.
pub(super) fn cautions_chip(b: &mut Brush, s: &Scene, rect: Rect) {
    let verdict = &s.guest.derived().verdict;
    let count = verdict.hazards().len();
    if count == 0 {
        return;
    }
    let radius = b.px(14.0);
    // Before anybody said who it is for, nothing is wrong yet.
    let (fill, edge, icon) = if verdict.suitable || s.guest.session().history.now().wearer == Wearer::Unknown {
        (Tone::Caution, Tone::Brass, Icon::Caution)
    } else {
        (Tone::Grave, Tone::CautionInk, Icon::NotFor)
    };
    b.fill(rect, radius, if b.pressed(rect) { Tone::Paper } else { fill });
    b.outline(rect, radius, 1.5, edge);
    let label = s.texts.with("caution-count", &[("n", (count as i64).into())]);
    let side = b.px(28.0).max(20.0);
    let (sign, words) = cut_left(rect.shrink(b.px(6.0)), side + b.px(6.0));
    b.icon(Rect::from_center_size(sign.center(), vec2(side, side)), icon, Tone::CautionInk);
    let ty = Type { size: 18.0, face: Face::Bold, color: Tone::Ink };
    b.text(words, Align2::CENTER_CENTER, &label, ty);
    b.button_target(rect, Request::Open(Overlay::Cautions), label);
}

/// Plain words that the piece is not for the wearer, with ways out. Gives where it ended.
pub(super) fn unsuitable(b: &mut Brush, s: &Scene, at: Pos2, width: f32) -> f32 {
    let who = s.guest.session().history.now().wearer;
    let ways = s.guest.derived().ways_out;
    let nothing = who != Wearer::Unknown && !ways.drops && !ways.base;
    let mut text = s.t(match who {
        _ if s.guest.derived().verdict.is_forbidden() => "unsuitable-forbidden",
        Wearer::Under3 => "unsuitable-under3",
        Wearer::From3To5 | Wearer::From6To12 => "unsuitable-child",
        Wearer::From13 => "unsuitable-anyone",
        Wearer::Unknown => "unsuitable-unknown",
    });
    if nothing && !s.guest.derived().verdict.is_forbidden() {
        text = format!("{text} {}", s.t("unsuitable-nothing"));
    }
    // Until somebody is named there is nothing that suits them.
    let (change, named) = match who {
        Wearer::Unknown => ("wearer-ask", false),
        _ => ("unsuitable-change", true),
    };
    let show = (ways.drops && named).then_some(("unsuitable-show", Request::OnlySuiting(Some(who))));
    let base = (ways.base && named).then_some(("unsuitable-base", Request::AnotherBase));
    let mut out: Vec<(&str, Request)> = show.into_iter().chain(base).collect();
    if out.is_empty() && named {
        out.push(("unsuitable-back", Request::Back));
    }
    let main = out.len();
    out.push((change, Request::Open(Overlay::Wearer)));

    let (pad, gap, button) = (b.px(14.0), b.gap() * 0.7, b.touch_px(54.0));
    let ty = Type::NAME;
    let room = width - 2.0 * pad;
    let size = b.measure(&text, ty, room);
    let columns = if room < b.line(230.0) * 2.0 + gap { 1 } else { 2 };
    let rows = out.len().div_ceil(columns);
    let buttons = button * rows as f32 + gap * (rows - 1) as f32;
    let rect = Rect::from_min_size(at, vec2(width, size.y + buttons + 3.0 * pad));
    b.card(rect, if named { Plate::Grave } else { Plate::Paper });
    let y = b.paragraph(rect.min + vec2(pad, pad), room, &text, ty) + pad;
    let places = grid(Rect::from_min_size(pos2(rect.left() + pad, y), vec2(room, buttons)), columns, rows, gap);
    for (i, (place, (key, request))) in places.into_iter().zip(out).enumerate() {
        b.button(place, if i < main { Look::Main } else { Look::Plain }, None, &s.t(key), Some(request));
    }
    rect.bottom() + b.gap()
}
