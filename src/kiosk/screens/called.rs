//! Who is called to a seat at the table, and how long guests wait for one: a slip on Welcome.

use bevy_egui::egui::{Align2, Rect, pos2, vec2};

use super::{
    super::{paint::Brush, theme::Type, tone::Tone},
    Scene,
};
use crate::link::WaitingNews;

/// Numbers shown at once, so that each can be read from a few steps away.
const MOST: usize = 6;
/// Sizes of the numbers, the largest that fits is taken.
const LARGE: [f32; 4] = [50.0, 42.0, 36.0, 30.0];

/// The slip at the top of `place`, if somebody is called or waits. Gives where the next thing may begin.
pub(super) fn slip(b: &Brush, s: &Scene, place: Rect) -> f32 {
    // What a silent desk said last may be over: nobody is sent to the table by it.
    let heard = s.guest.known().in_reach == Some(true);
    let known = s.guest.known().snapshot.as_deref().filter(|_| heard).map(|snapshot| &snapshot.waiting);
    let Some(waiting) = known.filter(|waiting| waiting.seats > 0) else { return place.top() };
    let (pad, room) = (b.px(12.0), place.width() - b.px(28.0));
    let mut lines = Vec::new();
    if !waiting.called.is_empty() {
        lines.push((s.t("seat-come"), Type::BODY));
        lines.push(numbers(b, waiting, room));
    }
    lines.extend(wait(s, waiting).map(|wait| (wait, Type::SMALL)));
    let measured = |lines: &[(String, Type)]| -> Vec<f32> {
        lines.iter().map(|(text, ty)| b.measure(text, *ty, room).y).collect()
    };
    let mut heights = measured(&lines);
    // Where there is no room for all of it, the numbers count more than the wait.
    while heights.iter().sum::<f32>() + 2.0 * pad > place.height() && lines.pop().is_some() {
        heights = measured(&lines);
    }
    if lines.is_empty() {
        return place.top();
    }
    let slip = Rect::from_min_size(place.min, vec2(place.width(), heights.iter().sum::<f32>() + 2.0 * pad));
    b.fill(slip, b.px(12.0), Tone::Paper);
    b.outline(slip, b.px(12.0), 1.0, Tone::Seam);
    let mut top = slip.top() + pad;
    for ((text, ty), height) in lines.iter().zip(heights) {
        let line = Rect::from_min_size(pos2(slip.left() + b.px(14.0), top), vec2(room, height));
        b.text(line, Align2::LEFT_TOP, text, *ty);
        top += height;
    }
    slip.bottom() + b.gap()
}

/// The numbers that are called, the first called first, in one line: as large and as many as fit into `room`.
fn numbers(b: &Brush, waiting: &WaitingNews, room: f32) -> (String, Type) {
    let fits = |text: &str, ty: Type| b.measure(text, ty, f32::INFINITY).x <= room;
    let many = waiting.called.len().min(MOST);
    (1..=many)
        .rev()
        .flat_map(|shown| LARGE.map(|size| (shown, Type::NUMBER.sized(size))))
        .map(|(shown, ty)| (line_of(waiting, shown), ty))
        .find(|(text, ty)| fits(text, *ty))
        .unwrap_or_else(|| (line_of(waiting, 1), Type::NUMBER.sized(LARGE[LARGE.len() - 1])))
}

/// So many of the numbers, and that there are more where there are.
fn line_of(waiting: &WaitingNews, shown: usize) -> String {
    let numbers: Vec<String> = waiting.called.iter().take(shown).map(u32::to_string).collect();
    let more = if waiting.called.len() > shown { " …" } else { "" };
    format!("{}{more}", numbers.join("  ·  "))
}

/// How long a guest waits who comes now; nothing where a seat is free and nobody is before them.
fn wait(s: &Scene, waiting: &WaitingNews) -> Option<String> {
    let (from, to) = waiting.minutes.filter(|(_, to)| *to > 0)?;
    let (key, from) = if from == 0 { ("seat-up-to", 0) } else { ("seat-from-to", from) };
    Some(s.texts.with(key, &[("from", from.into()), ("to", to.into())]))
}
