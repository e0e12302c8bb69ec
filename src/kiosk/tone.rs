//! Every colour of the tablet's look, in two forms: daylight, and high contrast. Nothing else in the kiosk names one.

use bevy_egui::egui::Color32;

use crate::guest::looks::Contrast;

/// A colour by what it is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Tone {
    /// Nothing is painted.
    Clear,
    /// The ground of every screen.
    Linen,
    /// Linen in shadow: wells, unlit compartments.
    LinenDeep,
    /// The ground beside the main thing.
    Aside,
    /// The strip under the stage.
    Strip,
    /// The edge of what can be touched.
    PlumLine,
    /// The line between two things on linen.
    Seam,
    /// Text.
    Ink,
    /// Text of less weight.
    InkSoft,
    /// The sign of something that can't be touched now.
    Faint,
    /// What can be touched.
    Plum,
    /// What is being touched.
    PlumPressed,
    /// A breath of plum: the ground of what is chosen.
    PlumPale,
    /// Cards.
    Paper,
    /// Paper tag.
    Tag,
    /// Brass accents.
    Brass,
    /// Brass where the light falls.
    BrassLight,
    /// The ground of cautions: calm, warm.
    Caution,
    /// The ground of what speaks against a piece.
    Grave,
    /// Signs and edges of cautions.
    CautionInk,
    /// The wood of a tray.
    Wood,
    /// Wood where the light falls: the upper edge of a rim.
    WoodLight,
    /// Wood away from the light.
    WoodDark,
    /// The floor of a compartment.
    Felt,
    /// The floor of a compartment whose drop is set aside or gone.
    FeltDim,
    /// Shadow of a card.
    Shadow,
    /// What lies over a screen under an open sheet.
    Scrim,
    /// The ring round what the keyboard has reached.
    Focus,
}

/// An opaque colour from its hexadecimal form.
const fn hex(rgb: u32) -> Color32 {
    Color32::from_rgb((rgb >> 16) as u8, (rgb >> 8) as u8, rgb as u8)
}

impl Tone {
    /// The colour, in either form.
    pub const fn color(self, contrast: Contrast) -> Color32 {
        let (daylight, high) = match self {
            Self::Clear => return Color32::TRANSPARENT,
            Self::Shadow => return Color32::from_rgba_premultiplied(14, 9, 5, 54),
            Self::Scrim => return Color32::from_rgba_premultiplied(24, 19, 16, 150),
            Self::Linen => (0xF3EBDD, 0xFFFFFF),
            Self::LinenDeep => (0xE6DAC6, 0xECE6DC),
            Self::Aside => (0xF8F3E9, 0xFFFFFF),
            Self::Strip => (0xECE1CF, 0xF4EFE6),
            Self::PlumLine => (0x9A7389, 0x5B2245),
            Self::Seam => (0xCFBFA6, 0x5E5349),
            Self::Ink => (0x2B2320, 0x000000),
            Self::InkSoft => (0x5E5149, 0x2B2320),
            Self::Faint => (0x85776A, 0x6B6058),
            Self::Plum => (0x5B2245, 0x43102F),
            Self::PlumPressed => (0x411530, 0x1E0314),
            Self::PlumPale => (0xEFE1E9, 0xF6E9F1),
            Self::Paper => (0xFFFDF8, 0xFFFFFF),
            Self::Tag => (0xFAF1DC, 0xFFFAEC),
            Self::Brass => (0xA67E3E, 0x6A4A12),
            Self::BrassLight => (0xD9B97C, 0x8A6A30),
            Self::Caution => (0xF9E3B4, 0xFFF3D0),
            Self::Grave => (0xF6D3C4, 0xFFE4DA),
            Self::CautionInk => (0x7A4A06, 0x4E2C00),
            Self::Wood => (0xD8BC92, 0xE9DCC6),
            Self::WoodLight => (0xEBD6B2, 0xFFFFFF),
            Self::WoodDark => (0xA98758, 0x5E4B30),
            Self::Felt => (0xF6EFE3, 0xFFFFFF),
            Self::FeltDim => (0xE9DFCF, 0xECE6DC),
            Self::Focus => (0x1F5E8C, 0x00407A),
        };
        hex(match contrast {
            Contrast::Daylight => daylight,
            Contrast::High => high,
        })
    }
}

/// The colour shown beside the word for a drop's colour.
pub fn swatch(colour: crate::craft::Colour) -> Color32 {
    use crate::craft::Colour::{
        Black, Blue, Brown, Clear, Coppery, Golden, Green, Orange, Pink, Red, Silvery, Violet, White, Yellow,
    };
    hex(match colour {
        Golden => 0xD6AA3C,
        Silvery => 0xBEC0C4,
        Coppery => 0xB86844,
        Clear => 0xEAF2F4,
        White => 0xFFFFFF,
        Black => 0x262426,
        Red => 0xB31F2C,
        Pink => 0xE38FA8,
        Orange => 0xDE8524,
        Yellow => 0xEECB3C,
        Green => 0x3E8456,
        Blue => 0x2B55A0,
        Violet => 0x744A96,
        Brown => 0x7A5234,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Contrast of two colours. Source: WCAG 2.2, "relative luminance" and "contrast ratio".
    fn contrast(one: Color32, other: Color32) -> f64 {
        let luminance = |color: Color32| {
            let part = |byte: u8| {
                let share = f64::from(byte) / 255.0;
                if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
            };
            0.2126 * part(color.r()) + 0.7152 * part(color.g()) + 0.0722 * part(color.b())
        };
        let (one, other) = (luminance(one), luminance(other));
        (one.max(other) + 0.05) / (one.min(other) + 0.05)
    }

    /// WCAG 2.2, success criterion 1.4.11: three to one for the edges of what can be touched.
    #[test]
    fn edges_of_what_can_be_touched_stand_out() {
        for form in Contrast::ALL {
            let edge = Tone::PlumLine.color(form);
            for ground in [Tone::Linen, Tone::Aside, Tone::Strip, Tone::Paper, Tone::Tag] {
                let ratio = contrast(edge, ground.color(form));
                assert!(ratio >= 3.0, "{form:?} {ground:?}: {ratio:.2}");
            }
        }
        // The published extremes.
        assert!((contrast(Color32::BLACK, Color32::WHITE) - 21.0).abs() < 1e-9);
    }
}
