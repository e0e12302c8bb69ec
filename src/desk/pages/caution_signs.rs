//! The signs of cautions, the same on a ticket and on the printed card; each stands beside its words.

use maud::{Markup, html};

use crate::caution::{CautionCode, Verdict};

/// The sign of one caution.
pub(super) fn of(code: CautionCode) -> Markup {
    let (drawing, letters) = match code {
        CautionCode::SmallPart => ("M6 3v18l12-7V3M12 6.5a2.7 2.7 0 1 0 .01 0", ""),
        CautionCode::SmallBall => ("M12 4a8 8 0 1 0 .01 0M5 8.5c4 3 10 3 14 0M5 15.5c4-3 10-3 14 0", ""),
        CautionCode::Magnet => ("M5 4v8a7 7 0 0 0 14 0V4h-4v8a3 3 0 0 1-6 0V4zM5 8h4M15 8h4", ""),
        CautionCode::CoinCell => ("M12 4a8 8 0 1 0 .01 0zM9 12h6M12 9v6", ""),
        CautionCode::Glass => ("M7 3h10l-1 8a4 4 0 0 1-8 0zM12 15v6M8 21h8M12 3l-1.5 3.5 3 1.5-2 3", ""),
        CautionCode::Sharp => ("M12 2l4 20H8zM3 8l3 2M21 8l-3 2", ""),
        CautionCode::Breakaway => ("M10 8H7a4 4 0 0 0 0 8h3M14 8h3a4 4 0 0 1 0 8h-3M8 12h8", ""),
        CautionCode::CordLoop => ("M12 2C2 2 3 17 12 17S22 2 12 2M12 17v5M9 22h6", ""),
        CautionCode::UnknownMetal => {
            ("M3 7l9-5 9 5v10l-9 5-9-5zM9.5 9.5a2.5 2.5 0 1 1 3.5 2.4c-1 .4-1 1-1 2M12 17v.4", "")
        }
        CautionCode::Lead => ("M3 7l9-5 9 5v10l-9 5-9-5z", "Pb"),
        CautionCode::Cadmium => ("M3 7l9-5 9 5v10l-9 5-9-5z", "Cd"),
        CautionCode::Nickel => ("M3 7l9-5 9 5v10l-9 5-9-5z", "Ni"),
        CautionCode::Paint => ("M5 4h11v5H5zM16 6h3v5h-8v3M9.5 14h3v7h-3z", ""),
        CautionCode::LooksLikeFood => ("M7 10a5 5 0 0 1 10 0zM8 10l4 11 4-11M4 4l16 16", ""),
        CautionCode::Liquid => ("M12 3c4 5 6 8 6 11a6 6 0 0 1-12 0c0-3 2-6 6-11z", ""),
        CautionCode::FoodAllergen => ("M7 3v6a2.5 2.5 0 0 0 5 0V3M9.5 3v18M17 21V3c-3 2-3 9 0 9", ""),
        CautionCode::HeavyOnChild => ("M7 9h10l3 12H4zM12 9a3 3 0 1 0-.01 0", ""),
        CautionCode::BangleSize => ("M12 4a8 8 0 1 0 .01 0M8 12h8M10 10l-2 2 2 2M14 10l2 2-2 2", ""),
        CautionCode::ChainTooShort => ("M4 3c0 14 16 14 16 0M5 20h14M8 17l-3 3 3 3M16 17l3 3-3 3", ""),
    };
    html! {
        svg.sign-of viewBox="0 0 24 24" aria-hidden="true" {
            path d=(drawing) {}
            @if !letters.is_empty() { text x="12" y="15.5" text-anchor="middle" { (letters) } }
        }
    }
}

/// Whether a drop suits, by sign and `word`.
pub(super) fn standing(verdict: &Verdict, word: &str) -> Markup {
    let (class, drawing) = match (verdict.suitable, verdict.cautions.is_empty()) {
        (false, _) => ("not", "M12 3a9 9 0 1 0 .01 0zM5.6 5.6l12.8 12.8"),
        (true, false) => ("care", "M12 3l10 18H2zM12 10v5M12 18v.4"),
        (true, true) => ("fine", "M4 13l5 5L20 6"),
    };
    html! {
        span class={ "standing " (class) } {
            svg.sign-of viewBox="0 0 24 24" aria-hidden="true" { path d=(drawing) {} }
            (word)
        }
    }
}
