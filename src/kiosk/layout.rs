//! Where the parts of a screen lie, for every size of window and either hand.

use bevy_egui::egui::{Rect, Vec2, pos2, vec2};

use super::theme;
use crate::guest::{Guest, Screen};

/// Height of the band of practice.
const RIBBON: f32 = 24.0;

/// The parts of one screen, in logical pixels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Layout {
    /// The window.
    pub window: Rect,
    /// The scale of everything.
    pub u: f32,
    /// Smallest side of anything to touch.
    pub least: f32,
    /// Smallest side of what small children touch.
    pub least_small_hands: f32,
    /// Higher than wide.
    pub portrait: bool,
    /// The band at the upper edge that says that it is practice; nothing else lies there. Flat where it is none.
    pub ribbon: Rect,
    /// The bar at the top.
    pub top: Rect,
    /// Where the piece hangs.
    pub stage: Rect,
    /// The strip under the stage: tag, cautions and way onwards; on the base screen cautions alone.
    pub foot: Rect,
    /// Trays, bases or lines: beside the stage, or below it.
    pub side: Rect,
}

impl Layout {
    /// The parts of this guest's screen on a window of `size`.
    pub(super) fn new(size: Vec2, guest: &Guest) -> Self {
        let (screen, left_handed, practice) = (guest.screen(), guest.left_handed(), guest.known().practice);
        let (least, least_small_hands) = theme::least_sides(guest.settings().px_per_mm, size.x.min(size.y));
        let size = vec2(size.x.max(64.0), size.y.max(64.0));
        let window = Rect::from_min_size(pos2(0.0, 0.0), size);
        let u = theme::scale(size.x, size.y);
        let portrait = size.y > size.x;
        let bar = if matches!(screen, Screen::Welcome | Screen::Sent) { 0.0 } else { (72.0 * u).max(least + 6.0) };
        let (ribbon, below) = cut_top(window, if practice { RIBBON * u.max(1.0) } else { 0.0 });
        let (top, rest) = cut_top(below, bar);
        let with_foot = matches!(screen, Screen::Base | Screen::Stage);
        let foot_height = if with_foot { (88.0 * u).max(least + 12.0) } else { 0.0 };
        let share = match (screen, portrait) {
            (Screen::Welcome, true) => 0.46,
            (Screen::Stage, false) => 0.44,
            (Screen::Stage, true) => 0.45,
            (Screen::Review, true) => 0.64,
            (_, true) => 0.58,
            (_, false) => 0.5,
        };
        let (main, side) = if portrait {
            let (main, side) = cut_top(rest, rest.height() * (1.0 - share));
            (main, side)
        } else if left_handed {
            let split = rest.left() + rest.width() * share;
            (
                Rect::from_min_max(pos2(split, rest.top()), rest.max),
                Rect::from_min_max(rest.min, pos2(split, rest.bottom())),
            )
        } else {
            let split = rest.right() - rest.width() * share;
            (
                Rect::from_min_max(rest.min, pos2(split, rest.bottom())),
                Rect::from_min_max(pos2(split, rest.top()), rest.max),
            )
        };
        let (stage, foot) = cut_top(main, main.height() - foot_height);
        Self { window, u, least, least_small_hands, portrait, ribbon, top, stage, foot, side }
    }

    /// A sent piece's ticket, under the block it is torn from.
    pub(super) fn ticket(&self) -> Rect {
        let page = self.window.with_min_y(self.ribbon.bottom()).shrink(theme::GAP * self.u * 1.5);
        page.with_min_y(page.top() + 44.0 * self.u)
    }

    /// Where the piece hangs on its ticket.
    pub(super) fn keepsake(&self) -> Rect {
        let inner = self.ticket().shrink(theme::GAP * self.u * 1.5);
        if self.portrait { cut_top(inner, inner.height() * 0.4).0 } else { cut_left(inner, inner.width() * 0.4).0 }
    }

    /// The button for near or whole, in the upper right corner of the stage.
    pub(super) fn glass(&self) -> Rect {
        let (gap, side) = (theme::GAP * self.u, (58.0 * self.u).max(self.least));
        Rect::from_min_size(self.stage.right_top() + vec2(-gap - side, gap), vec2(side, side))
    }

    /// The name and the buttons of a chosen drop, at the top of the stage beside the buttons for the view.
    pub(super) fn strip(&self) -> Rect {
        let gap = theme::GAP * self.u;
        let height = (60.0 * self.u).max(self.least) + 1.2 * gap;
        Rect::from_min_max(
            self.stage.min + vec2(gap, gap),
            pos2(self.glass().left() - gap, self.stage.top() + gap + height),
        )
    }
}

/// The upper `height` of `rect` and the rest.
pub(super) fn cut_top(rect: Rect, height: f32) -> (Rect, Rect) {
    let y = (rect.top() + height.clamp(0.0, rect.height().max(0.0))).round();
    (Rect::from_min_max(rect.min, pos2(rect.right(), y)), Rect::from_min_max(pos2(rect.left(), y), rect.max))
}

/// The lower `height` of `rect` and the rest above it.
pub(super) fn cut_bottom(rect: Rect, height: f32) -> (Rect, Rect) {
    let (rest, bottom) = cut_top(rect, rect.height() - height);
    (bottom, rest)
}

/// The left `width` of `rect` and the rest.
pub(super) fn cut_left(rect: Rect, width: f32) -> (Rect, Rect) {
    let x = (rect.left() + width.clamp(0.0, rect.width().max(0.0))).round();
    (Rect::from_min_max(rect.min, pos2(x, rect.bottom())), Rect::from_min_max(pos2(x, rect.top()), rect.max))
}

/// The right `width` of `rect` and the rest.
pub(super) fn cut_right(rect: Rect, width: f32) -> (Rect, Rect) {
    let (rest, right) = cut_left(rect, rect.width() - width);
    (right, rest)
}

/// `columns` × `rows` equal places in `rect`, row by row, `gap` apart.
pub(super) fn grid(rect: Rect, columns: usize, rows: usize, gap: f32) -> Vec<Rect> {
    let (columns, rows) = (columns.max(1), rows.max(1));
    let width = (rect.width() - gap * (columns - 1) as f32) / columns as f32;
    let height = (rect.height() - gap * (rows - 1) as f32) / rows as f32;
    (0..rows)
        .flat_map(|row| (0..columns).map(move |column| (row, column)))
        .map(|(row, column)| {
            let corner = rect.min + vec2((width + gap) * column as f32, (height + gap) * row as f32);
            Rect::from_min_size(corner, vec2(width.max(1.0), height.max(1.0)))
        })
        .collect()
}
