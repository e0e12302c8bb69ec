//! An address as a code that a phone's camera reads.

use bevy_egui::egui::{Color32, Rect, vec2};

use crate::{kiosk::paint::Brush, qr::Squares};

/// Black on white whatever the screen's colours are; nothing where no code takes so long a text.
pub(super) fn paint(b: &Brush, rect: Rect, text: &str) {
    let Some(code) = Squares::of(text) else { return };
    b.painter.rect_filled(rect, 0.0, Color32::WHITE);
    let square = rect.width() / code.side as f32;
    for bar in code.bars {
        let corner = rect.min + vec2(bar.x as f32, bar.y as f32) * square;
        // Rounded edges between neighbours would leave hairlines.
        let dark = Rect::from_min_size(corner, vec2(bar.long as f32, 1.0) * square).expand(0.3);
        b.painter.rect_filled(dark, 0.0, Color32::BLACK);
    }
}
