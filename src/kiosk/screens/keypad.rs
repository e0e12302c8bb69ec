//! A keypad on the screen, with what was typed above its keys.

use bevy_egui::egui::{Align2, Rect, vec2};

use super::{
    super::{
        layout::{cut_top, grid},
        paint::{Brush, Icon, Look, Plate},
        theme::Type,
        tone::Tone,
    },
    Scene,
};
use crate::guest::Request;

/// What stands on it.
pub(super) struct Keypad<'a> {
    /// What is asked, or what was wrong.
    pub said: String,
    /// What is typed, as it may be seen.
    pub typed: String,
    /// Keys beside the digits, in a column of their own.
    pub more: &'a [char],
}

pub(super) fn paint(b: &mut Brush, s: &Scene, rest: Rect, keypad: &Keypad) {
    let gap = b.gap() * 0.7;
    let size = vec2(rest.width().min(b.px(560.0).max(330.0)), rest.height().min(b.px(700.0)));
    let card = Rect::from_center_size(rest.center(), size - vec2(2.0 * gap, 2.0 * gap));
    b.card(card, Plate::Paper);
    let inner = card.shrink(gap * 1.5);
    let (head, rest) = cut_top(inner, b.line(44.0).max(26.0));
    b.text(head, Align2::CENTER_CENTER, &keypad.said, Type::NAME);
    let (shown, keys) = cut_top(rest.with_min_y(rest.top() + gap * 0.5), b.line(58.0).max(34.0));
    b.fill(shown, b.px(10.0), Tone::Linen);
    b.outline(shown, b.px(10.0), 1.0, Tone::Seam);
    b.text(shown.shrink2(vec2(gap, 2.0)), Align2::CENTER_CENTER, &keypad.typed, Type::FIGURE);
    let columns = if keypad.more.is_empty() { 3 } else { 4 };
    let places = grid(keys.with_min_y(keys.top() + gap), columns, 4, gap);
    let key = |row: usize, column: usize| places.get(row * columns + column).copied();
    for digit in 0..=9u8 {
        let c = char::from(b'0' + digit);
        let (row, column) = if digit == 0 { (3, 1) } else { ((digit as usize - 1) / 3, (digit as usize - 1) % 3) };
        if let Some(place) = key(row, column) {
            b.button(place, Look::Plain, None, &c.to_string(), Some(Request::Key(c)));
        }
    }
    for (row, c) in keypad.more.iter().enumerate() {
        if let Some(place) = key(row, 3) {
            b.button(place, Look::Plain, None, &c.to_string(), Some(Request::Key(*c)));
        }
    }
    if let (Some(erase), Some(enter)) = (key(3, 0), key(3, 2)) {
        let some = !keypad.typed.is_empty();
        b.button(erase, Look::Plain, Some(Icon::Back), &s.t("key-erase"), some.then_some(Request::EraseKey));
        b.button(enter, Look::Main, Some(Icon::Tick), &s.t("key-enter"), some.then_some(Request::EnterKeys));
    }
}
