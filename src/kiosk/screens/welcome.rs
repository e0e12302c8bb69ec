//! Welcome: a sample piece sways; touch anywhere.

use bevy_egui::egui::{Align2, vec2};

use super::{
    super::{
        i18n::Lang,
        layout::{Layout, cut_bottom, cut_left, cut_right, cut_top, grid},
        paint::{Brush, Icon, Look},
        theme::Type,
        tone::Tone,
    },
    Scene, called,
    parts::notices,
};
use crate::guest::{Contrast, Overlay, Request};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    if b.looks.contrast == Contrast::High {
        // No weave behind the words.
        b.fill(layout.side, 0.0, Tone::Linen);
    }
    let (pad, gap) = (b.px(34.0), b.gap());
    let side = layout.side.shrink2(vec2(pad, if layout.portrait { gap } else { pad }));
    // One row of languages, or two where the names would be cramped.
    let columns = if side.width() < b.line(620.0).max(460.0) { 2 } else { 4 };
    let height = b.touch_px(58.0);
    let (languages, rest) = cut_bottom(side, if columns == 4 { height } else { 2.0 * height + gap * 0.7 });
    let (letters, languages) = cut_right(languages, height * 1.15);
    b.button(letters, Look::Plain, Some(Icon::Letters), &s.t("looks"), Some(Request::Open(Overlay::Looks)));
    let languages = languages.with_max_x(languages.right() - gap * 0.7);
    for (place, lang) in grid(languages, columns, Lang::ALL.len() / columns, gap * 0.7).into_iter().zip(Lang::ALL) {
        let look = if lang == s.texts.lang { Look::Chosen } else { Look::Plain };
        b.button(place, look, None, lang.own_name(), Some(Request::Speak(lang)));
    }
    let (put_back, rest) = cut_bottom(rest.with_max_y(rest.bottom() - gap), b.touch_px(62.0));
    let (begin, rest) = cut_bottom(rest.with_max_y(rest.bottom() - gap), b.small_hands_px(96.0));
    let words = rest.with_max_y(rest.bottom() - gap * 1.5);
    let words = words.with_min_y(notices(b, s, words.min, words.width()));
    let free = words.with_min_y(called::slip(b, s, words));
    // Who is called counts more than the name and the invitation.
    let has_room = free == words || free.height() > b.line(100.0);
    let words = free;

    let laid = s.catalog().is_some_and(|catalog| !catalog.bases.is_empty());
    let ready = s.guest.known().paired && laid;
    let name = s.catalog().map_or_else(|| s.t("welcome-unnamed"), |catalog| catalog.table.name.clone());
    // Where there is little room the words need more of it than the name.
    let share = if words.height() < b.line(340.0) { 0.32 } else { 0.56 };
    let (title, under) = cut_top(words, words.height() * share);
    if has_room {
        b.text(title.with_max_y(title.bottom() - gap), Align2::LEFT_BOTTOM, &name, Type::TITLE);
    }
    let text = match (s.guest.known().paired, ready) {
        (false, _) => s.t("welcome-not-paired"),
        (true, false) if s.catalog().is_some() => s.t("welcome-being-laid"),
        (true, false) => s.t("welcome-no-catalogue"),
        _ => s.t("welcome-invitation"),
    };
    if has_room || !ready {
        b.text(under, Align2::LEFT_TOP, &text, Type::BODY.sized(24.0));
    }
    b.button(begin, Look::Main, Some(Icon::Onward), &s.t("welcome-begin"), ready.then_some(Request::Begin));
    let (put_back, thread) = cut_left(put_back, (put_back.width() - gap) * 0.56);
    let thread = thread.with_min_x(thread.left() + gap);
    b.button(put_back, Look::Plain, Some(Icon::Compartment), &s.t("put-back"), ready.then_some(Request::PutBack));
    b.button(thread, Look::Plain, None, &s.t("thread"), ready.then_some(Request::HaveNumber));
    if ready {
        b.targets.elsewhere = Some(Request::Begin);
    }
}
