//! An address as a code that a phone's camera reads.

use bevy_egui::egui::{Color32, Rect, vec2};
use qrcode::{Color, EcLevel, QrCode};

use crate::kiosk::paint::Brush;

/// Modules that stay light on every side, so that a camera finds the code. Source: ISO/IEC 18004:2015, the quiet zone (from
/// memory).
const QUIET: usize = 4;

/// Black on white whatever the screen's colours are; nothing where no code takes so long a text.
pub(super) fn paint(b: &Brush, rect: Rect, text: &str) {
    let Ok(code) = QrCode::with_error_correction_level(text, EcLevel::M) else { return };
    b.painter.rect_filled(rect, 0.0, Color32::WHITE);
    let module = rect.width() / (code.width() + 2 * QUIET) as f32;
    for (at, _) in code.to_colors().iter().enumerate().filter(|(_, color)| **color == Color::Dark) {
        let (x, y) = (at % code.width() + QUIET, at / code.width() + QUIET);
        let corner = rect.min + vec2(x as f32, y as f32) * module;
        // Rounded edges between neighbours would leave hairlines.
        let dark = Rect::from_min_size(corner, vec2(module, module)).expand(0.3);
        b.painter.rect_filled(dark, 0.0, Color32::BLACK);
    }
}
