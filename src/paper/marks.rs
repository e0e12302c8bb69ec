//! What stands on a page: each word, line and box with its place, in points from the upper left corner.

use super::typeface::Style;
use crate::qr::Squares;

/// A colour.
pub(super) type Rgb = [u8; 3];

/// For reading: nearly black, and warm.
pub(super) const INK: Rgb = [43, 35, 32];
/// For what matters less.
pub(super) const SOFT: Rgb = [95, 84, 76];
/// For the table's name, homes and the number.
pub(super) const PLUM: Rgb = [91, 34, 69];
/// For lines across.
pub(super) const LINE: Rgb = [200, 183, 152];
/// For lines that scissors follow: seen on white, and not missed where one stays.
const CUT: Rgb = [130, 122, 114];

/// Something that stands on a page.
pub(super) enum Mark {
    /// Words in one line, from their left end on their base line.
    Words { x: f32, y: f32, style: Style, size: f32, colour: Rgb, text: String },
    /// A line from one point to another.
    Line { from: (f32, f32), to: (f32, f32), pen: Stroke },
    /// A box without a ground.
    Box { x: f32, y: f32, width: f32, height: f32, pen: Stroke },
    /// A ring, as where a hole is punched.
    Ring { x: f32, y: f32, across: f32, pen: Stroke },
    /// One of the file's pictures.
    Picture { of: usize, x: f32, y: f32, width: f32, height: f32 },
    /// A code that a camera reads, its light border included.
    Code { x: f32, y: f32, side: f32, squares: Squares },
    /// Marks that stand on their heads, turned about a point.
    Turned { about: (f32, f32), marks: Vec<Mark> },
}

/// How a line is drawn.
#[derive(Clone, Copy)]
pub(super) struct Stroke {
    pub colour: Rgb,
    pub width: f32,
    /// In dashes, as where paper is folded.
    pub dashed: bool,
}

impl Stroke {
    /// Across a page.
    pub(super) const RULE: Self = Self { colour: LINE, width: 0.6, dashed: false };
    /// A box to tick.
    pub(super) const TICK: Self = Self { colour: INK, width: 0.9, dashed: false };
    /// Where scissors go.
    pub(super) const CUT: Self = Self { colour: CUT, width: 0.25, dashed: false };
    /// Where paper is folded.
    pub(super) const FOLD: Self = Self { colour: CUT, width: 0.25, dashed: true };
}

/// What stands on one page.
pub(super) type Page = Vec<Mark>;
