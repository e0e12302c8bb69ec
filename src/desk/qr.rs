//! QR codes as drawings in a page.

use std::fmt::Write;

use maud::{Markup, html};

use crate::qr::{Bar, Squares};

/// The code of `text`, called `label` for who can't see it; nothing where no code takes so long a text.
pub(super) fn drawing(text: &str, label: &str) -> Markup {
    let Some(Squares { side, bars }) = Squares::of(text) else { return html! {} };
    let mut dark = String::new();
    for Bar { x, y, long } in bars {
        // Writing into a text never fails.
        let _ = write!(dark, "M{x} {y}h{long}v1h-{long}z");
    }
    html! {
        svg.qr viewBox={ "0 0 " (side) " " (side) } role="img" aria-label=(label) shape-rendering="crispEdges" {
            rect width=(side) height=(side) fill="#fff" {}
            path d=(dark) fill="#000" {}
        }
    }
}
