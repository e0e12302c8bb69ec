//! Every colour, size and duration of the tablet's look. Nothing else in the kiosk names one.

use bevy_egui::egui::{Color32, FontFamily, FontId};

/// Linen, the ground of every screen.
pub const LINEN: Color32 = Color32::from_rgb(0xF3, 0xEB, 0xDD);
/// Linen in shadow: wells, unlit compartments.
pub const LINEN_DEEP: Color32 = Color32::from_rgb(0xE6, 0xDA, 0xC6);
/// The ground beside the main thing.
pub const ASIDE: Color32 = Color32::from_rgb(0xF8, 0xF3, 0xE9);
/// The strip under the stage.
pub const STRIP: Color32 = Color32::from_rgb(0xEC, 0xE1, 0xCF);
/// A plum line that does not shout.
pub const PLUM_LINE: Color32 = Color32::from_rgb(0xB9, 0x9A, 0xAC);
/// The line between two things on linen.
pub const SEAM: Color32 = Color32::from_rgb(0xCF, 0xBF, 0xA6);
/// Text.
pub const INK: Color32 = Color32::from_rgb(0x2B, 0x23, 0x20);
/// Text of less weight; still 7:1 on paper.
pub const INK_SOFT: Color32 = Color32::from_rgb(0x5E, 0x51, 0x49);
/// What can be touched.
pub const PLUM: Color32 = Color32::from_rgb(0x5B, 0x22, 0x45);
/// What is being touched.
pub const PLUM_PRESSED: Color32 = Color32::from_rgb(0x41, 0x15, 0x30);
/// A breath of plum: the ground of what is chosen.
pub const PLUM_PALE: Color32 = Color32::from_rgb(0xEF, 0xE1, 0xE9);
/// Cards.
pub const PAPER: Color32 = Color32::from_rgb(0xFF, 0xFD, 0xF8);
/// Paper tag.
pub const TAG: Color32 = Color32::from_rgb(0xFA, 0xF1, 0xDC);
/// Brass accents.
pub const BRASS: Color32 = Color32::from_rgb(0xA6, 0x7E, 0x3E);
/// Brass where the light falls.
pub const BRASS_LIGHT: Color32 = Color32::from_rgb(0xD9, 0xB9, 0x7C);
/// The ground of cautions: calm, warm.
pub const CAUTION: Color32 = Color32::from_rgb(0xF9, 0xE3, 0xB4);
/// The ground of what speaks against a piece.
pub const GRAVE: Color32 = Color32::from_rgb(0xF6, 0xD3, 0xC4);
/// Signs and edges of cautions.
pub const CAUTION_INK: Color32 = Color32::from_rgb(0x7A, 0x4A, 0x06);
/// Shadow of a card.
pub const SHADOW: Color32 = Color32::from_rgba_premultiplied(14, 9, 5, 54);
/// What lies over a screen under an open sheet.
pub const SCRIM: Color32 = Color32::from_rgba_premultiplied(24, 19, 16, 150);
/// The ring round what the keyboard has reached.
pub const FOCUS: Color32 = Color32::from_rgb(0x1F, 0x5E, 0x8C);

/// Smallest side of anything to touch, in logical pixels.
pub const TOUCH: f32 = 48.0;
/// Side of the main things to touch, at scale 1.
pub const TOUCH_MAIN: f32 = 68.0;
/// Gap between neighbours, at scale 1.
pub const GAP: f32 = 12.0;
/// How far a finger may wander and still tap: about 4 mm at the usual density of a tablet.
pub const SLOP_PX: f32 = 18.0;
/// How far a drop is pulled from its base before it comes off, in millimetres of the piece and in pixels at least.
pub const PULL_OFF_MM: f32 = 25.0;
/// See [`PULL_OFF_MM`].
pub const PULL_OFF_PX: f32 = 64.0;
/// How near to the base a drop takes hold, in logical pixels.
pub const HOLD_PX: f32 = 110.0;
/// How long the seller's corner is held, in seconds.
pub const CORNER_HOLD_S: f32 = 1.5;
/// Side of the seller's corner.
pub const CORNER_PX: f32 = 84.0;
/// How long the number stays on the screen, in seconds.
pub const SENT_STAYS_S: f32 = 30.0;
/// How long a drop flies, in seconds.
pub const FLIGHT_S: f32 = 0.38;

/// Smallest text, in logical pixels.
const TEXT_LEAST: f32 = 13.5;

/// The two typefaces and the weight for emphasis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Face {
    /// Names, headings, sums.
    Serif,
    /// Everything else.
    Sans,
    /// What stands out in the sans.
    Bold,
}

impl Face {
    /// As egui knows it.
    pub fn family(self) -> FontFamily {
        match self {
            Self::Serif => FontFamily::Name("serif".into()),
            Self::Sans => FontFamily::Proportional,
            Self::Bold => FontFamily::Name("bold".into()),
        }
    }
}

/// How a text looks: size at scale 1 in logical pixels, typeface, colour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Type {
    /// Size at scale 1.
    pub size: f32,
    /// Typeface.
    pub face: Face,
    /// Colour.
    pub color: Color32,
}

impl Type {
    const fn new(size: f32, face: Face, color: Color32) -> Self {
        Self { size, face, color }
    }
    /// A ticket's number. Figures are in the sans: the serif's old-style 0 and 1 pass for letters.
    pub const NUMBER: Self = Self::new(150.0, Face::Bold, INK);
    /// A sum, a length, seconds.
    pub const FIGURE: Self = Self::new(30.0, Face::Bold, INK);
    /// A screen's name.
    pub const TITLE: Self = Self::new(52.0, Face::Serif, INK);
    /// A heading.
    pub const HEADING: Self = Self::new(32.0, Face::Serif, INK);
    /// A name of something.
    pub const NAME: Self = Self::new(23.0, Face::Serif, INK);
    /// Running text.
    pub const BODY: Self = Self::new(21.0, Face::Sans, INK);
    /// Text that helps.
    pub const SMALL: Self = Self::new(17.0, Face::Sans, INK_SOFT);
    /// The words on a button.
    pub const BUTTON: Self = Self::new(22.0, Face::Bold, PAPER);
    /// A home, as in B3.
    pub const HOME: Self = Self::new(17.0, Face::Bold, INK);

    /// The same in another colour.
    pub const fn in_color(self, color: Color32) -> Self {
        Self { color, ..self }
    }
    /// The same in another size.
    pub const fn sized(self, size: f32) -> Self {
        Self { size, ..self }
    }
    /// The font at scale `u`.
    pub fn font(self, u: f32) -> FontId {
        FontId::new((self.size * u).max(TEXT_LEAST).round(), self.face.family())
    }
}

/// The scale of everything on a window of this size: 1 where the shorter side has 800 pixels.
pub fn scale(width: f32, height: f32) -> f32 {
    (width.min(height) / 800.0).clamp(0.62, 1.6)
}

/// The colour shown beside the word for a drop's colour.
pub fn swatch(colour: crate::craft::Colour) -> Color32 {
    use crate::craft::Colour::{
        Black, Blue, Brown, Clear, Coppery, Golden, Green, Orange, Pink, Red, Silvery, Violet, White, Yellow,
    };
    let (r, g, b) = match colour {
        Golden => (0xD6, 0xAA, 0x3C),
        Silvery => (0xBE, 0xC0, 0xC4),
        Coppery => (0xB8, 0x68, 0x44),
        Clear => (0xEA, 0xF2, 0xF4),
        White => (0xFF, 0xFF, 0xFF),
        Black => (0x26, 0x24, 0x26),
        Red => (0xB3, 0x1F, 0x2C),
        Pink => (0xE3, 0x8F, 0xA8),
        Orange => (0xDE, 0x85, 0x24),
        Yellow => (0xEE, 0xCB, 0x3C),
        Green => (0x3E, 0x84, 0x56),
        Blue => (0x2B, 0x55, 0xA0),
        Violet => (0x74, 0x4A, 0x96),
        Brown => (0x7A, 0x52, 0x34),
    };
    Color32::from_rgb(r, g, b)
}
