//! How a sheet is parted into marks.

use crate::{
    craft::Length,
    paper::document::{Sheet, mm},
    quoting::quoted,
};

/// The smallest mark on which a price is read at an arm's length, in millimetres. Common practice, no source.
const SMALLEST_MM: (f64, f64) = (20.0, 10.0);
/// No sheet is parted into more.
const MOST: (u8, u8) = (10, 28);
/// The widest margin, in millimetres.
const WIDEST_MARGIN_MM: f64 = 60.0;

/// Marks in columns and rows between the margins of a sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// Marks beside each other.
    pub columns: u8,
    /// Marks below each other. An even number lays the two marks of a compartment head to head, to be folded or cut.
    pub rows: u8,
    /// Margin above and below.
    pub above: Length,
    /// Margin left and right.
    pub beside: Length,
}

impl Grid {
    /// Marks of about 48 × 19 mm: as wide as the usual compartment of a sorting tray, and low enough for its rim. Common
    /// practice, no source.
    pub const USUAL: Self = Self { columns: 4, rows: 14, above: Length::from_mm(10.0), beside: Length::from_mm(10.0) };

    /// The same with another number of columns and rows, as in `4x14`.
    ///
    /// # Errors
    /// [`GridError::Shape`] where it is written in another way.
    pub fn with_shape(self, text: &str) -> Result<Self, GridError> {
        let read = text.trim().split_once(['x', 'X', '×']);
        let read = read.and_then(|(columns, rows)| Some((columns.trim().parse().ok()?, rows.trim().parse().ok()?)));
        let (columns, rows) = read.ok_or_else(|| GridError::Shape(text.to_owned()))?;
        Ok(Self { columns, rows, ..self })
    }

    /// The same with other margins: one for all sides as in `10mm`, or one for above and below and one for the sides, as in
    /// `12mm,8mm`.
    ///
    /// # Errors
    /// [`GridError::Margin`] where it is written in another way.
    pub fn with_margins(self, text: &str) -> Result<Self, GridError> {
        let read = |part: &str| part.trim().parse::<Length>().map_err(|_| GridError::Margin(text.to_owned()));
        match text.split_once(',') {
            None => {
                let margin = read(text)?;
                Ok(Self { above: margin, beside: margin, ..self })
            }
            Some((above, beside)) => Ok(Self { above: read(above)?, beside: read(beside)?, ..self }),
        }
    }

    /// Whether its marks can be read and cut.
    ///
    /// # Errors
    /// Too many or none, too small, or margins that are none.
    pub fn check(self, sheet: Sheet) -> Result<(), GridError> {
        if !(1..=MOST.0).contains(&self.columns) || !(1..=MOST.1).contains(&self.rows) {
            return Err(GridError::Count { columns: self.columns, rows: self.rows });
        }
        for margin in [self.above, self.beside] {
            if !(0.0..=WIDEST_MARGIN_MM).contains(&margin.mm()) {
                return Err(GridError::Margin(margin.to_string()));
            }
        }
        let (width, height) = self.mark_mm(sheet);
        if width < SMALLEST_MM.0 || height < SMALLEST_MM.1 {
            return Err(GridError::Small { width, height });
        }
        Ok(())
    }

    /// Width and height of a mark, in millimetres.
    pub fn mark_mm(self, sheet: Sheet) -> (f64, f64) {
        let (width, height) = sheet.points();
        let part = |side: f32, margin: Length, parts: u8| {
            (f64::from(side / mm(1.0)) - 2.0 * margin.mm()) / f64::from(parts.max(1))
        };
        (part(width, self.beside, self.columns), part(height, self.above, self.rows))
    }

    /// Whether the two marks of a compartment lie head to head.
    pub(super) const fn is_folded(self) -> bool {
        self.rows.is_multiple_of(2)
    }

    /// So many marks are on a sheet.
    pub(super) const fn on_a_sheet(self) -> usize {
        self.columns as usize * self.rows as usize
    }
}

/// Why a sheet can't be parted like that.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum GridError {
    /// It is not written as columns and rows.
    #[error("{} is no grid; write columns and rows, as in 4x14", quoted(.0))]
    Shape(String),
    /// It is no margin.
    #[error("{} is no margin; write up to 60 mm, as in 10mm, or above and beside, as in 12mm,8mm", quoted(.0))]
    Margin(String),
    /// More than there is room for, or none.
    #[error("{columns} columns and {rows} rows are no grid; 1 to 10 columns and 1 to 28 rows are")]
    Count {
        /// Columns.
        columns: u8,
        /// Rows.
        rows: u8,
    },
    /// Nobody could read them.
    #[error(
        "marks of {width:.1} × {height:.1} mm are too small to be read; take fewer columns or rows, for 20 × 10 mm at least"
    )]
    Small {
        /// Width in millimetres.
        width: f64,
        /// Height in millimetres.
        height: f64,
    },
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn grids_are_read_and_judged() {
        let grid = Grid::USUAL.with_shape("3 x 8").unwrap().with_margins("12mm, 0.25in").unwrap();
        assert_eq!((grid.columns, grid.rows, grid.above.mm()), (3, 8, 12.0));
        assert!((grid.beside.mm() - 6.35).abs() < 1e-9);
        for text in ["", "4", "4x", "x4", "-1x2", "4x1400", "4;14"] {
            assert!(matches!(Grid::USUAL.with_shape(text), Err(GridError::Shape(_))), "{text}");
        }
        for text in ["", "10", "10mm,", "wide", "10mm,10mm,10mm"] {
            assert!(matches!(Grid::USUAL.with_margins(text), Err(GridError::Margin(_))), "{text}");
        }
        for sheet in Sheet::ALL {
            assert_eq!(Grid::USUAL.check(sheet), Ok(()));
            let check = |shape: &str| Grid::USUAL.with_shape(shape).unwrap().check(sheet);
            assert!(matches!(check("0x4"), Err(GridError::Count { .. })));
            assert!(matches!(check("11x4"), Err(GridError::Count { .. })));
            assert!(matches!(check("10x14"), Err(GridError::Small { .. })));
            assert!(matches!(Grid::USUAL.with_margins("61mm").unwrap().check(sheet), Err(GridError::Margin(_))));
        }
        let (width, height) = Grid::USUAL.mark_mm(Sheet::A4);
        assert!((width - 47.5).abs() < 1e-4 && (height - 277.0 / 14.0).abs() < 1e-4, "{width} {height}");
    }
}
