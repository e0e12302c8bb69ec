//! A paper as rows of words, before it is set on anything.

use rust_decimal::{Decimal, prelude::FromPrimitive};

use crate::{
    caution::Region,
    craft::Length,
    lang::{Texts, say},
};

/// A paper, row by row, in one language.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Document {
    /// What it is.
    pub sort: Sort,
    /// Code of its language.
    pub language: &'static str,
    /// What it is called, with its number.
    pub title: String,
    /// The rows.
    pub rows: Vec<Row>,
    /// What [`Row::Picture`] shows, as a PNG file.
    pub picture: Option<Vec<u8>>,
}

/// What a paper is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sort {
    /// For the guest, in a narrow column.
    Receipt,
    /// For the helper who threads, large.
    Slip,
    /// For the maker who sets up, or for everybody at the table: over the whole sheet.
    List,
}

/// One row of a paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Row {
    /// The table's name.
    Name(String),
    /// A small line in the middle.
    Middle(String),
    /// What nobody must overlook.
    Notice(String),
    /// The number, large.
    Number(String),
    /// A fact at the right edge, and what it is at the left.
    Fact(String, String),
    /// What the rows below are about.
    Heading(String),
    /// Words with an amount at the right edge.
    Amount(String, String),
    /// The sum of all.
    Total(String, String),
    /// A paragraph.
    Text(String),
    /// A paragraph that matters less.
    Small(String),
    /// A part to tick off, with its home.
    Tick(String, String),
    /// The piece's picture, where there is one.
    Picture,
    /// Words as a code that a camera or a scanner reads.
    Code(String),
    /// A line across.
    Rule,
}

/// The sheet that a PDF is set on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sheet {
    /// 210 × 297 mm. Source: ISO 216.
    A4,
    /// 8.5 × 11 in. Source: ANSI/ASME Y14.1, size A (from memory).
    Letter,
}

impl Sheet {
    /// The sheet that lies in the printers of a region.
    pub fn of(region: Region) -> Self {
        if region == Region::US { Self::Letter } else { Self::A4 }
    }

    /// Both of them.
    pub const ALL: [Self; 2] = [Self::A4, Self::Letter];

    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "Letter",
        }
    }

    /// The sheet of this name, in whatever letters.
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|sheet| sheet.name().eq_ignore_ascii_case(name))
    }

    /// Width and height in points, 72 to the inch.
    pub(super) fn points(self) -> (f32, f32) {
        match self {
            Self::A4 => (mm(210.0), mm(297.0)),
            Self::Letter => (612.0, 792.0),
        }
    }
}

/// Points of so many millimetres.
pub(super) fn mm(mm: f32) -> f32 {
    mm / 25.4 * 72.0
}

/// Why there is no paper.
#[derive(Debug, thiserror::Error)]
pub enum PaperError {
    /// A typeface of the program does not read.
    #[error("a typeface of this program does not read")]
    Typeface,
    /// The file could not be made.
    #[error("the PDF file could not be made: {0}")]
    Pdf(String),
}

/// A base with its length in both units, which stays in one line.
pub(super) fn base_words(texts: &Texts, base: &str, length: Option<Length>) -> String {
    let Some(length) = length else { return base.to_owned() };
    let figure = |value: f64, digits: u32| {
        let figure = Decimal::from_f64(value).unwrap_or_default().round_dp(digits).normalize();
        texts.lang.number(figure)
    };
    let (inches, cm) = (figure(length.inches(), 1), figure(length.mm() / 10.0, 0));
    let length = say!(texts, "length-both", inches = inches, cm = cm).replace(' ', "\u{a0}");
    format!("{base}, {length}")
}

/// So many of one thing.
pub(super) fn several(texts: &Texts, n: usize, name: &str) -> String {
    if n == 1 { name.to_owned() } else { say!(texts, "paper-several", n = n, name = name) }
}
