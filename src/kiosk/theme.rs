//! Every size and duration of the tablet's look; its colours are in [`tone`](super::tone).

use bevy_egui::egui::{FontFamily, FontId};

use super::tone::Tone;

/// Smallest side of anything to touch where the screen's size is not known, in logical pixels.
pub(super) const TOUCH: f32 = 48.0;
/// Not smaller than this however coarse the screen. Source: WCAG 2.2, success criterion 2.5.5.
const TOUCH_LEAST: f32 = 44.0;
/// Smallest side of anything to touch, in millimetres.
const TOUCH_MM: f32 = 12.0;
/// Smallest side of what small children touch, in millimetres.
const TOUCH_SMALL_HANDS_MM: f32 = 15.0;
/// Side of the main things to touch, at scale 1.
pub(super) const TOUCH_MAIN: f32 = 68.0;
/// Gap between neighbours, at scale 1.
pub(super) const GAP: f32 = 12.0;
/// Height of a notice of one line with the gap after it, at scale 1.
pub(super) const NOTICE: f32 = 46.0;
/// How far a finger may wander and still tap: about 4 mm at the usual density of a tablet.
pub(super) const SLOP_PX: f32 = 18.0;
/// How far a drop is pulled from its base before it comes off, in millimetres of the piece and in pixels at least.
pub(super) const PULL_OFF_MM: f32 = 25.0;
/// See [`PULL_OFF_MM`].
pub(super) const PULL_OFF_PX: f32 = 64.0;
/// How near to the base a drop takes hold, in logical pixels.
pub(super) const HOLD_PX: f32 = 110.0;
/// How long the seller's corner is held, in seconds.
pub(super) const CORNER_HOLD_S: f32 = 1.5;
/// Side of the seller's corner.
pub(super) const CORNER_PX: f32 = 84.0;
/// How long the number stays on the screen, in seconds.
pub(super) const SENT_STAYS_S: f32 = 30.0;
/// How long a drop flies, in seconds.
pub(super) const FLIGHT_S: f32 = 0.38;

/// Smallest text, in logical pixels.
const TEXT_LEAST: f32 = 13.5;

/// The two typefaces and the weight for emphasis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Face {
    /// Names, headings, sums.
    Serif,
    /// Everything else.
    Sans,
    /// What stands out in the sans.
    Bold,
}

impl Face {
    /// As egui knows it.
    pub(super) fn family(self) -> FontFamily {
        match self {
            Self::Serif => FontFamily::Name("serif".into()),
            Self::Sans => FontFamily::Proportional,
            Self::Bold => FontFamily::Name("bold".into()),
        }
    }
}

/// How a text looks: size at scale 1 in logical pixels, typeface, colour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Type {
    /// Size at scale 1.
    pub size: f32,
    /// Typeface.
    pub face: Face,
    /// Colour.
    pub color: Tone,
}

impl Type {
    const fn new(size: f32, face: Face, color: Tone) -> Self {
        Self { size, face, color }
    }
    /// A ticket's number. Figures are in the sans: the serif's old-style 0 and 1 pass for letters.
    pub(super) const NUMBER: Self = Self::new(150.0, Face::Bold, Tone::Ink);
    /// A sum, a length, seconds.
    pub(super) const FIGURE: Self = Self::new(30.0, Face::Bold, Tone::Ink);
    /// A screen's name.
    pub(super) const TITLE: Self = Self::new(52.0, Face::Serif, Tone::Ink);
    /// A heading.
    pub(super) const HEADING: Self = Self::new(32.0, Face::Serif, Tone::Ink);
    /// A name of something.
    pub(super) const NAME: Self = Self::new(23.0, Face::Serif, Tone::Ink);
    /// Running text.
    pub(super) const BODY: Self = Self::new(21.0, Face::Sans, Tone::Ink);
    /// Text that helps.
    pub(super) const SMALL: Self = Self::new(17.0, Face::Sans, Tone::InkSoft);
    /// The words on a button.
    pub(super) const BUTTON: Self = Self::new(22.0, Face::Bold, Tone::Paper);
    /// A home, as in B3.
    pub(super) const HOME: Self = Self::new(17.0, Face::Bold, Tone::Ink);

    /// The same in another colour.
    pub(super) const fn in_color(self, color: Tone) -> Self {
        Self { color, ..self }
    }
    /// The same in another size.
    pub(super) const fn sized(self, size: f32) -> Self {
        Self { size, ..self }
    }
    /// The font at scale `u`.
    pub(super) fn font(self, u: f32) -> FontId {
        FontId::new((self.size * u).max(TEXT_LEAST).round(), self.face.family())
    }
}

/// The smallest side of anything to touch and of what small children touch, in logical pixels, on a screen of
/// `px_per_mm` whose shorter side has `short` pixels. On a very small screen they are held to a share of it, so that
/// the keypad's four rows still have room.
pub(super) fn least_sides(px_per_mm: Option<f32>, short: f32) -> (f32, f32) {
    let Some(px) = px_per_mm else { return (TOUCH, TOUCH) };
    let side = |mm: f32, most: f32| (mm * px).min(short * most).max(TOUCH_LEAST).ceil() + 1.0;
    (side(TOUCH_MM, 0.135), side(TOUCH_SMALL_HANDS_MM, 0.17))
}

/// The scale of everything on a window of this size: 1 where the shorter side has 800 pixels.
pub(super) fn scale(width: f32, height: f32) -> f32 {
    (width.min(height) / 800.0).clamp(0.62, 1.6)
}
