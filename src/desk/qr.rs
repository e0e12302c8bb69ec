//! QR codes as drawings in a page.

use std::fmt::Write;

use maud::{Markup, html};
use qrcode::{Color, EcLevel, QrCode};

/// Modules that stay light on every side, so that a camera finds the code. Source: ISO/IEC 18004:2015, the quiet zone (from
/// memory).
const QUIET: usize = 4;

/// The code of `text`, called `label` for who can't see it; nothing where no code takes so long a text.
pub(super) fn drawing(text: &str, label: &str) -> Markup {
    // A fifteenth of it may be unreadable: a thumb on the screen, a scratch.
    let Ok(code) = QrCode::with_error_correction_level(text, EcLevel::M) else { return html! {} };
    let side = code.width() + 2 * QUIET;
    html! {
        svg.qr viewBox={ "0 0 " (side) " " (side) } role="img" aria-label=(label) shape-rendering="crispEdges" {
            rect width=(side) height=(side) fill="#fff" {}
            path d=(dark(&code)) fill="#000" {}
        }
    }
}

/// The dark modules, a bar for each run of them in a row.
fn dark(code: &QrCode) -> String {
    let mut bars = String::new();
    for (y, row) in code.to_colors().chunks(code.width()).enumerate() {
        let mut x = 0;
        for run in row.chunk_by(|one, next| one == next) {
            if run[0] == Color::Dark {
                let long = run.len();
                // Writing into a text never fails.
                let _ = write!(bars, "M{} {}h{long}v1h-{long}z", x + QUIET, y + QUIET);
            }
            x += run.len();
        }
    }
    bars
}
