//! The trays, laid out like the table: same letters, same rows, same compartments.

use bevy_egui::egui::{Align2, Color32, Rect, vec2};

use super::{
    super::{
        layout::{Layout, cut_bottom, cut_right, cut_top, grid},
        paint::{Brush, Icon, Look},
        targets::TargetKind,
        theme::Type,
        tone::Tone,
    },
    Scene,
    parts::drop_in,
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
        let x = if s.guest.settings().left_handed { layout.side.right() } else { layout.side.left() };
        b.painter.vline(x, layout.side.y_range(), edge);
    }
    let inner = layout.side.shrink(b.gap() * 0.7);
    let (tabs, rest) = cut_top(inner, b.touch_px(62.0));
    let shown = s.guest.session().tray.min(catalog.trays.len().saturating_sub(1));
    tab_row(b, s, catalog, tabs, shown);
    let Some(tray) = catalog.trays.get(shown) else { return };
    let (name, rest) = cut_top(rest.with_min_y(rest.top() + b.px(4.0)), b.line(30.0).max(19.0));
    b.text(name, Align2::LEFT_CENTER, s.called(&tray.letter.to_string(), &tray.name), Type::NAME.sized(20.0));
    compartments(b, s, catalog, tray, rest.with_min_y(rest.top() + b.px(4.0)));
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
            compartment(b, s, *place, home, kind);
        }
    }
}

fn compartment(b: &mut Brush, s: &Scene, rect: Rect, home: Home, kind: Option<&DropKind>) {
    let radius = b.px(8.0);
    let standing = kind.and_then(|kind| s.guest.derived().standing.get(&kind.id)).copied().unwrap_or(Standing::SoldOut);
    let bright = standing == Standing::Open;
    let pressed = kind.is_some() && b.pressed(rect);
    let floor = match (pressed, bright) {
        (true, _) => Tone::PlumPale,
        (_, true) => Tone::Felt,
        (_, false) => Tone::FeltDim,
    };
    // The hollow, and the rim below it, which bears the price mark.
    let (rim, hollow) = cut_bottom(rect, b.line(25.0).max(19.0));
    b.well(hollow, radius, floor);
    let (head, room) = cut_top(hollow.shrink2(vec2(b.px(7.0), b.px(4.0))), b.line(24.0).max(18.0));
    let soft = if bright { Tone::Ink } else { Tone::InkSoft };
    let name = Type::HOME.sized(16.0).in_color(soft);
    b.text(head, Align2::LEFT_CENTER, &home.to_string(), name);
    let Some(kind) = kind else { return };
    b.targets.homes.insert(kind.id.clone(), rect);
    let price = s.money(kind.price);
    if standing == Standing::SoldOut {
        b.text(room, Align2::CENTER_CENTER, &s.t("sold-out"), Type::SMALL.sized(16.0));
        let label = format!("{home} {}: {}", s.drop_name(kind), s.t("sold-out"));
        b.button_target(rect, Request::WhyNot(kind.id.clone()), label);
        return;
    }
    // Beside the letter there is room for tall drops too.
    let room = room.with_min_y(hollow.top() + b.px(8.0)).shrink2(vec2(rect.width() * 0.16, 1.0));
    if bright {
        lying(b, s, kind, room, Color32::WHITE);
    } else {
        drop_in(b, s, kind, room.shrink2(room.size() * 0.14), Color32::WHITE.gamma_multiply(0.42));
        b.hatch(hollow.shrink(2.0), Tone::Seam);
    }
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

/// A drop that lies in its hollow: its own shape, dark and a little aside, is its shadow.
fn lying(b: &Brush, s: &Scene, kind: &DropKind, room: Rect, tint: Color32) {
    if s.pictures.small(&kind.picture).is_some() {
        for (away, alpha) in [(5.0, 26), (3.0, 48)] {
            drop_in(b, s, kind, room.translate(vec2(b.px(away * 0.7), b.px(away))), Color32::from_black_alpha(alpha));
        }
    }
    drop_in(b, s, kind, room, tint);
}

/// A tray as a map with one compartment lit.
pub(super) fn map(b: &Brush, tray: &Tray, lit: Home, rect: Rect) {
    let rows = tray.rows.len().max(1);
    let columns = tray.rows.iter().map(Vec::len).max().unwrap_or(1).max(1);
    let gap = b.gap() * 0.5;
    b.board(rect, b.px(14.0));
    let places = grid(rect.shrink(b.gap()), columns, rows, gap);
    let mut number = 0;
    for (r, row) in tray.rows.iter().enumerate() {
        for c in 0..row.len() {
            number += 1;
            let Some(place) = places.get(r * columns + c) else { continue };
            let here = number == lit.compartment;
            if here {
                b.fill(*place, b.px(8.0), Tone::Plum);
            } else {
                b.well(*place, b.px(8.0), Tone::Felt);
            }
            let (ty, color) = if here { (Type::FIGURE, Tone::Paper) } else { (Type::SMALL, Tone::InkSoft) };
            let text = Home { tray: tray.letter, compartment: number }.to_string();
            b.text(place.shrink(2.0), Align2::CENTER_CENTER, &text, ty.in_color(color));
            if here {
                b.outline(place.expand(3.0), b.px(10.0), 3.0, Tone::Paper);
            }
        }
    }
}
