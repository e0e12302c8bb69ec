//! The trays, laid out like the table: same letters, same rows, same compartments.

use bevy_egui::egui::{Align2, Color32, Rect, Vec2, pos2, vec2};

use super::{
    super::{
        layout::{Layout, cut_bottom, cut_right, cut_top, grid},
        paint::{Brush, Icon, Look},
        targets::TargetKind,
        theme::Type,
        tone::{self, Tone},
    },
    Scene, lying,
    parts::{Flow, up_to, wearer},
};
use crate::{
    catalog::{Catalog, Tray},
    craft::{DropKind, Home},
    guest::{Filters, Overlay, Request, Standing},
};

pub(super) fn paint(b: &mut Brush, s: &Scene, catalog: &Catalog, layout: &Layout) {
    b.fill(layout.side, 0.0, Tone::Aside);
    let edge = b.stroke(1.0, Tone::Seam);
    if layout.portrait {
        b.painter.hline(layout.side.x_range(), layout.side.top(), edge);
    } else {
        let x = if s.guest.left_handed() { layout.side.right() } else { layout.side.left() };
        b.painter.vline(x, layout.side.y_range(), edge);
    }
    let inner = layout.side.shrink(b.gap() * 0.7);
    let (tabs, rest) = cut_top(inner, b.touch_px(62.0));
    let shown = s.guest.session().tray.min(catalog.trays.len().saturating_sub(1));
    tab_row(b, s, catalog, tabs, shown);
    let Some(tray) = catalog.trays.get(shown) else { return };
    let rest = rest.with_min_y(marks(b, s, rest));
    let (name, rest) = cut_top(rest.with_min_y(rest.top() + b.px(4.0)), b.line(30.0).max(19.0));
    b.text(name, Align2::LEFT_CENTER, s.called(&tray.letter.to_string(), &tray.name), Type::NAME.sized(20.0));
    let rest = rest.with_min_y(rest.top() + b.px(4.0));
    // Like a drawer it comes in from the side of its letter; it can be touched at once.
    let before = b.painter.clip_rect();
    b.shift = vec2(s.moves.drawer * rest.width(), 0.0);
    b.painter.set_clip_rect(before.intersect(rest.expand(b.gap())));
    compartments(b, s, catalog, tray, rest.translate(b.shift));
    b.painter.set_clip_rect(before);
    b.shift = Vec2::ZERO;
}

fn tab_row(b: &mut Brush, s: &Scene, catalog: &Catalog, rect: Rect, shown: usize) {
    let gap = b.gap() * 0.5;
    // The tabs keep their least width, the sieve gets the rest.
    let left_over = rect.width() - catalog.trays.len() as f32 * (b.least + gap) - gap;
    let (sieve, rest) = cut_right(rect, (rect.width() * 0.3).min(b.px(170.0)).min(left_over).max(b.least));
    let on = s.guest.session().filters != Filters::default();
    let look = if on { Look::Chosen } else { Look::Plain };
    b.button(sieve, look, Some(Icon::Sieve), &s.t("filters"), Some(Request::Open(Overlay::Filters)));
    let rest = rest.with_max_x(rest.right() - gap);
    let count = catalog.trays.len();
    let width = rest.width().min(count as f32 * (b.touch_px(92.0) + gap));
    let places = grid(Rect::from_min_size(rest.min, vec2(width, rest.height())), count, 1, gap);
    for (i, (tray, place)) in catalog.trays.iter().zip(places).enumerate() {
        let letter = tray.letter.to_string();
        let mut label = s.texts.with("tray", &[("letter", letter.clone().into())]);
        let radius = b.px(14.0);
        if i == shown {
            b.fill(place, radius, Tone::Plum);
        } else {
            b.fill(place, radius, if b.pressed(place) { Tone::PlumPale } else { Tone::Linen });
            b.outline(place, radius, 1.5, Tone::PlumLine);
        }
        let color = if i == shown { Tone::Paper } else { Tone::Plum };
        b.text(place, Align2::CENTER_CENTER, &letter, Type::HEADING.sized(28.0).in_color(color));
        if on {
            // Where what was asked for lies.
            let open = |id: &&str| s.guest.derived().standing.get(*id) == Some(&Standing::Open);
            let found = tray.compartments().filter_map(|(_, id)| id).filter(open).count();
            label = format!("{label}: {found}");
            if found > 0 {
                let corner = b.px(14.0).max(11.0) + 2.0;
                b.count(place.right_top() + vec2(-corner, corner), &found.to_string());
            }
        }
        b.choice_target(place, Request::ShowTray(i), label, i == shown);
        // Drops of trays that are not shown fly home behind their letter.
        for id in tray.compartments().filter_map(|(_, id)| id) {
            b.targets.homes.insert(id.to_owned(), place);
        }
    }
}

/// What is asked for now, each with a cross that ends it. Gives where the next thing may begin.
fn marks(b: &mut Brush, s: &Scene, rect: Rect) -> f32 {
    let on = &s.guest.session().filters;
    if *on == Filters::default() {
        return rect.top();
    }
    let mut flow = Flow::new(b, rect.min + vec2(0.0, b.px(6.0)), rect.width());
    let says = s.t("filters-end");
    let mut mark =
        |label: String, swatch: Option<Color32>, request: Request| flow.mark(b, &label, swatch, &says, request);
    if let Some(budget) = on.budget {
        mark(s.texts.with("filters-have", &[("sum", s.money(budget).into())]), None, Request::Budget(None));
    }
    if let Some(most) = on.up_to {
        mark(up_to(s, most), None, Request::UpTo(None));
    }
    if let Some(who) = on.suits {
        mark(wearer(s, who), None, Request::OnlySuiting(None));
    }
    if let Some(sort) = on.sort {
        mark(s.t(&format!("sort-{}", sort.name())), None, Request::OnlySort(None));
    }
    if let Some(colour) = on.colour {
        let swatch = Some(tone::swatch(colour));
        mark(s.t(&format!("colour-{}", colour.name())), swatch, Request::OnlyColour(None));
    }
    if let Some(finish) = on.finish {
        let [r, g, blue] = finish.tones().body;
        let swatch = Some(Color32::from_rgb(r, g, blue));
        mark(s.t(&format!("finish-{}", finish.name())), swatch, Request::OnlyFinish(None));
    }
    flow.bottom() + b.px(4.0)
}

fn compartments(b: &mut Brush, s: &Scene, catalog: &Catalog, tray: &Tray, rect: Rect) {
    let rows = tray.rows.len().max(1);
    let columns = tray.rows.iter().map(Vec::len).max().unwrap_or(1).max(1);
    let gap = b.gap() * 0.5;
    let least = b.small_hands_px(76.0);
    let fitting = (((rect.height() + gap) / (least + gap)).floor() as usize).clamp(1, rows);
    let mut rect = rect;
    let first = if fitting < rows {
        // More rows than fit: turned by buttons, so that a drag always carries a drop.
        let (turn, above) = cut_bottom(rect, b.touch_px(48.0));
        rect = above.with_max_y(above.bottom() - gap);
        let fitting = (((rect.height() + gap) / (least + gap)).floor() as usize).clamp(1, rows);
        let first = s.guest.session().tray_row.min(rows - fitting);
        let places = grid(turn, 2, 1, gap);
        if let [up, down] = places[..] {
            let step = fitting as i32;
            let back = (first > 0).then_some(Request::TurnTray(-step.min(first as i32)));
            let left = (rows - fitting - first) as i32;
            b.button(up, Look::Plain, Some(Icon::Up), &s.t("rows-before"), back);
            b.button(
                down,
                Look::Plain,
                Some(Icon::Down),
                &s.t("rows-after"),
                (left > 0).then_some(Request::TurnTray(step.min(left))),
            );
        }
        first
    } else {
        0
    };
    let shown = (((rect.height() + gap) / (least + gap)).floor() as usize).clamp(1, rows);
    b.board(rect, b.px(12.0));
    let places = grid(rect.shrink(gap), columns, shown, gap);
    let hollow = places.first().map_or(Rect::ZERO, |place| room_in(b, *place));
    let px_per_mm = lying::px_per_mm(catalog, tray, hollow);
    let mut number = 0;
    for (r, row) in tray.rows.iter().enumerate() {
        for (c, id) in row.iter().enumerate() {
            number += 1;
            let Some(place) = r.checked_sub(first).filter(|r| *r < shown).and_then(|r| places.get(r * columns + c))
            else {
                continue;
            };
            let home = Home { tray: tray.letter, compartment: number };
            let kind = id.as_deref().and_then(|id| catalog.drop_kind(id));
            compartment(b, s, *place, home, kind, px_per_mm);
        }
    }
}

/// The rim of a compartment, which bears the price mark, and the hollow above it.
fn rim_and_hollow(b: &Brush, rect: Rect) -> (Rect, Rect) {
    cut_bottom(rect, b.line(25.0).max(19.0))
}

/// Where drops lie in a compartment.
fn room_in(b: &Brush, rect: Rect) -> Rect {
    rim_and_hollow(b, rect).1.shrink2(vec2(b.px(6.0), b.px(6.0)))
}

fn compartment(b: &mut Brush, s: &Scene, rect: Rect, home: Home, kind: Option<&DropKind>, px_per_mm: f32) {
    let radius = b.px(8.0);
    let standing = kind.and_then(|kind| s.guest.derived().standing.get(&kind.id)).copied().unwrap_or(Standing::SoldOut);
    let bright = standing == Standing::Open;
    let pressed = kind.is_some() && b.pressed(rect);
    let floor = match (pressed, bright) {
        (true, _) => Tone::PlumPale,
        (_, true) => Tone::Felt,
        (_, false) => Tone::FeltDim,
    };
    let (rim, hollow) = rim_and_hollow(b, rect);
    b.well(hollow, radius, floor);
    let (head, words) = cut_top(hollow.shrink2(vec2(b.px(7.0), b.px(4.0))), b.line(24.0).max(18.0));
    let soft = if bright { Tone::Ink } else { Tone::InkSoft };
    let name = Type::HOME.sized(16.0).in_color(soft);
    let written = |b: &Brush| {
        let text = home.to_string();
        let size = b.measure(&text, name, f32::INFINITY) + vec2(b.px(6.0), 0.0);
        let plate = Rect::from_min_size(pos2(head.left() - b.px(3.0), head.center().y - size.y / 2.0), size);
        b.fill(plate, b.px(5.0), floor);
        b.text(head, Align2::LEFT_CENTER, &text, name);
    };
    let Some(kind) = kind else { return written(b) };
    b.targets.homes.insert(kind.id.clone(), rect.translate(-b.shift));
    let price = s.money(kind.price);
    if standing == Standing::SoldOut {
        written(b);
        b.text(words, Align2::CENTER_CENTER, &s.t("sold-out"), Type::SMALL.sized(16.0));
        let label = format!("{home} {}: {}", s.drop_name(kind), s.t("sold-out"));
        b.button_target(rect, Request::WhyNot(kind.id.clone()), label);
        return;
    }
    let room = room_in(b, rect);
    let left = s.guest.known().snapshot.as_ref().map_or(1, |snapshot| snapshot.available(&kind.id));
    let (count, tint) = match standing {
        Standing::Open => (lying::shown_of(left), Color32::WHITE),
        // Not what is asked for, but it hangs when it is touched.
        Standing::Aside => (1, Color32::WHITE.gamma_multiply(0.6)),
        _ => (1, Color32::WHITE.gamma_multiply(0.36)),
    };
    lying::some(b, s, kind, room, px_per_mm, count, tint);
    if !bright && standing != Standing::Aside {
        b.hatch(hollow.shrink(2.0), Tone::Seam);
    }
    written(b);
    let width = b.measure(&price, name, f32::INFINITY).x + b.px(16.0);
    let mark = vec2(width.min(rect.width() - 4.0), rim.height() - 1.0);
    let mark = Rect::from_center_size(rim.center() - vec2(0.0, 0.5), mark);
    b.fill(mark, b.px(4.0), Tone::Paper);
    b.outline(mark, b.px(4.0), 1.0, Tone::BrassLight);
    b.text(mark.shrink2(vec2(3.0, 0.0)), Align2::CENTER_CENTER, &price, name);
    let hung = s.guest.session().history.now().count_of(&kind.id);
    if hung > 0 {
        let corner = b.px(14.0).max(11.0) + 2.0;
        b.count(rect.right_top() + vec2(-corner, corner), &hung.to_string());
    }
    let words = format!("{home} {}, {price}", s.drop_name(kind));
    match standing {
        Standing::Open | Standing::Aside => {
            let request = Request::Hang { kind: kind.id.clone(), at: None };
            b.target(rect, request, words, TargetKind::Compartment { kind: kind.id.clone() });
        }
        _ => b.button_target(rect, Request::WhyNot(kind.id.clone()), words),
    }
}

/// A tray as a map with its drops in their compartments and one of them lit.
pub(super) fn map(b: &Brush, s: &Scene, catalog: &Catalog, tray: &Tray, lit: Home, rect: Rect) {
    b.board(rect, b.px(14.0));
    let px_per_mm =
        lying::px_per_mm(catalog, tray, places_of(b, tray, rect).first().map_or(Rect::ZERO, |place| *place));
    for (place, (home, id)) in places_of(b, tray, rect).into_iter().zip(tray.compartments()) {
        let here = home == lit;
        let radius = b.px(8.0);
        if here {
            b.fill(place, radius, Tone::Plum);
        } else {
            b.well(place, radius, Tone::Felt);
        }
        if let Some(kind) = id.and_then(|id| catalog.drop_kind(id)) {
            let tint = if here { Color32::WHITE } else { Color32::WHITE.gamma_multiply(0.7) };
            lying::one(b, s, kind, place.shrink(b.px(5.0)), px_per_mm, tint);
        }
        let (ty, color) = if here { (Type::FIGURE, Tone::Paper) } else { (Type::SMALL, Tone::InkSoft) };
        let text = home.to_string();
        let (name, _) = cut_top(place.shrink(b.px(4.0)), b.line(26.0).max(20.0));
        b.text(name, Align2::LEFT_TOP, &text, ty.sized(17.0).in_color(color));
        if here {
            // It pulses while somebody looks for it.
            let pulse = s.moves.pulse;
            b.outline(place.expand(3.0 + b.px(5.0) * pulse), b.px(11.0), 3.0 + 2.0 * pulse, Tone::Plum);
            b.outline(place.expand(1.0), b.px(9.0), 2.0, Tone::Paper);
        }
    }
}

/// A tray as a small map without pictures, the compartments that a piece needs filled and named.
pub(super) fn little_map(b: &Brush, tray: &Tray, lit: &[Home], rect: Rect) {
    b.fill(rect, b.px(8.0), Tone::Wood);
    b.outline(rect, b.px(8.0), 1.0, Tone::WoodDark);
    for (place, (home, _)) in places_of(b, tray, rect).into_iter().zip(tray.compartments()) {
        let needed = lit.contains(&home);
        b.fill(place, b.px(3.0), if needed { Tone::Plum } else { Tone::Felt });
        let has_room = place.height() >= 19.0 && b.has_room(&home.to_string(), Type::HOME, place.width());
        if needed && has_room {
            b.text(place, Align2::CENTER_CENTER, &home.to_string(), Type::HOME.sized(17.0).in_color(Tone::Paper));
        }
    }
}

/// The places of a tray's compartments on a map, in the order of their numbers.
fn places_of(b: &Brush, tray: &Tray, rect: Rect) -> Vec<Rect> {
    let rows = tray.rows.len().max(1);
    let columns = tray.rows.iter().map(Vec::len).max().unwrap_or(1).max(1);
    let gap = (b.gap() * 0.5).min(rect.width() / (columns as f32 * 6.0));
    let places = grid(rect.shrink(gap * 1.6), columns, rows, gap);
    let in_rows = tray.rows.iter().enumerate().flat_map(|(r, row)| (0..row.len()).map(move |c| r * columns + c));
    in_rows.filter_map(|place| places.get(place).copied()).collect()
}
