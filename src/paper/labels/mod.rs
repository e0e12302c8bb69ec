//! Paper for the table itself: price marks for both rims of every compartment, tags for the bases, maps of the trays, a sheet
//! to set up by, the price list, and the code that leads helpers to where a stray drop belongs.
//!
//! | file | look here for |
//! | --- | --- |
//! | `table` | what of a catalogue stands on labels, in one language |
//! | `grid` | how a sheet is parted into marks: columns, rows, margins |
//! | `fit` | words in a box: as large as they fit, and never out of it |
//! | `marks` | price marks and tags in their grid |
//! | `maps` | a tray as it lies on the table |
//! | `lists` | the sheet to set up by, the price list |
//! | `code` | the page with the code |

mod code;
mod fit;
mod grid;
mod lists;
mod maps;
mod marks;
mod table;

use std::collections::BTreeSet;

use super::{
    document::{PaperError, Sheet},
    layout,
    marks::Page,
    pdf::{file, read_picture},
};
use crate::lang::say;
pub use grid::{Grid, GridError};
use marks::Sign;
pub use table::LabelTable;
use table::Labelled;

/// What can be asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LabelPart {
    /// Two marks for every compartment that has something in it, one for each rim.
    Marks,
    /// A tag for every base.
    Tags,
    /// A page for each tray, as it lies on the table.
    Maps,
    /// What lies where, to tick off while the table is laid.
    SetUp,
    /// What everything costs.
    Prices,
    /// The code that leads to where a stray drop belongs.
    Code,
}

impl LabelPart {
    /// All of them, in the order in which they come out.
    pub const ALL: [Self; 6] = [Self::Marks, Self::Tags, Self::Maps, Self::SetUp, Self::Prices, Self::Code];

    /// Its name on the command line and in addresses.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Marks => "marks",
            Self::Tags => "tags",
            Self::Maps => "maps",
            Self::SetUp => "set-up",
            Self::Prices => "prices",
            Self::Code => "code",
        }
    }

    /// The one of this name.
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|part| part.name() == name)
    }
}

/// What is to be printed, and how.
#[derive(Debug, Clone)]
pub struct LabelOrder {
    /// What of it.
    pub parts: Vec<LabelPart>,
    /// On which sheets.
    pub sheet: Sheet,
    /// How marks and tags lie on them.
    pub grid: Grid,
    /// Of one tray only; bases and lists of the whole table are then left out.
    pub tray: Option<char>,
    /// Only what has one of these keys (see [`LabelTable::words`]); what is about the whole table comes if there is any.
    pub only: Option<BTreeSet<String>>,
}

/// Paper that was made.
#[derive(Debug, Clone)]
pub struct Labels {
    /// The PDF file.
    pub pdf: Vec<u8>,
    /// How many pages it has.
    pub pages: usize,
    /// The keys of what has its marks or its tag on them (see [`LabelTable::words`]).
    pub printed: BTreeSet<String>,
}

impl LabelOrder {
    fn wants(&self, part: LabelPart) -> bool {
        self.parts.contains(&part)
    }

    fn is_asked(&self, one: &Labelled) -> bool {
        let in_tray = self.tray.is_none_or(|tray| one.home.is_some_and(|home| home.tray == tray));
        in_tray && self.only.as_ref().is_none_or(|only| only.contains(&one.key))
    }

    /// Whether anything is asked of what is about the whole table.
    fn is_of_all(&self) -> bool {
        self.tray.is_none() && self.only.as_ref().is_none_or(|only| !only.is_empty())
    }
}

/// Makes the paper; none where nothing of what is asked for is there.
///
/// # Errors
/// The grid is none for these sheets, or the file can't be made.
pub fn labels(table: &LabelTable, order: &LabelOrder) -> Result<Option<Labels>, LabelError> {
    order.grid.check(order.sheet)?;
    let texts = table.texts;
    let (drops, bases) = (table.drops.iter(), table.bases.iter());
    let drops: Vec<&Labelled> = drops.filter(|one| order.is_asked(one)).collect();
    let bases: Vec<&Labelled> = bases.filter(|one| order.is_asked(one)).collect();
    let mut pages: Vec<Page> = vec![];
    for (part, asked, title) in
        [(LabelPart::Marks, &drops, say!(texts, "labels-marks")), (LabelPart::Tags, &bases, say!(texts, "labels-tags"))]
    {
        if order.wants(part) {
            let signs: Vec<Sign<'_>> = asked.iter().map(|one| Sign::of(one)).collect();
            pages.extend(marks::pages(&signs, order.grid, order.sheet, (texts, &title))?);
        }
    }
    if order.wants(LabelPart::Maps) {
        for tray in &table.trays {
            let is_asked = order.tray.is_none_or(|letter| letter == tray.letter);
            let has_news = order.only.is_none() || drops.iter().any(|one| one.is_in(tray.letter));
            if is_asked && has_news {
                pages.push(maps::page(table, tray, order.sheet)?);
            }
        }
    }
    if order.is_of_all() {
        if order.wants(LabelPart::SetUp) {
            pages.extend(layout::pages(&lists::set_up(table), order.sheet, None)?);
        }
        if order.wants(LabelPart::Prices) {
            pages.extend(layout::pages(&lists::prices(table), order.sheet, None)?);
        }
        // Where a stray drop belongs is asked at the same address, whatever the prices are.
        if order.wants(LabelPart::Code) && order.only.is_none() {
            pages.extend(code::page(table, order.sheet)?);
        }
    }
    if pages.is_empty() {
        return Ok(None);
    }
    let pictures = table.pictures.iter().filter_map(|png| read_picture(png)).collect::<Vec<_>>();
    let (count, title) = (pages.len(), say!(texts, "labels-title", table = table.name.as_str()));
    let pdf = file(pages, &pictures, order.sheet, (&title, texts.lang.code()))?;
    Ok(Some(Labels { pdf, pages: count, printed: table.marked(order) }))
}

/// Why there is no paper for the table.
#[derive(Debug, thiserror::Error)]
pub enum LabelError {
    /// The sheet can't be parted like that.
    #[error(transparent)]
    Grid(#[from] GridError),
    /// The file could not be made.
    #[error(transparent)]
    Paper(#[from] PaperError),
}
