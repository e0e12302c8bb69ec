//! A table as CSV.

use csv::{Terminator, WriterBuilder};

use super::{
    cell::{Cell, DecimalMark},
    guard::guarded,
};

/// What tells spreadsheets that the text is UTF-8.
const BYTE_ORDER_MARK: &str = "\u{feff}";

/// Why there is no table.
#[derive(Debug, thiserror::Error)]
pub enum ExportError {
    /// A row has other columns than the head.
    #[error("row {row} has {found} cells under {wanted} columns")]
    Cells {
        /// The row, from 1, the head not counted.
        row: usize,
        /// Cells of the row.
        found: usize,
        /// Columns of the head.
        wanted: usize,
    },
    /// The bytes could not be made.
    #[error("the table can't be written: {0}")]
    Write(#[from] csv::Error),
}

/// The table under `head` as CSV by RFC 4180, in UTF-8 with a byte order mark: lines end with CRLF, cells with separators,
/// quotes or breaks stand in quotes, quotes in them are doubled.
///
/// No words are read as a formula. Only who opens the table with the wrong separator sees a whole line as one cell, which
/// then begins with the first one: let it be words or a time.
///
/// # Errors
/// A row has other columns than the head.
pub fn csv<'a, R: AsRef<[Cell<'a>]>>(
    mark: DecimalMark,
    head: &[&str],
    rows: impl IntoIterator<Item = R>,
) -> Result<Vec<u8>, ExportError> {
    let bytes = BYTE_ORDER_MARK.as_bytes().to_vec();
    let mut lines = WriterBuilder::new().delimiter(mark.separator()).terminator(Terminator::CRLF).from_writer(bytes);
    lines.write_record(head.iter().map(|name| guarded(name).into_owned()))?;
    for (at, row) in rows.into_iter().enumerate() {
        let row = row.as_ref();
        if row.len() != head.len() {
            return Err(ExportError::Cells { row: at + 1, found: row.len(), wanted: head.len() });
        }
        lines.write_record(row.iter().map(|cell| written(mark, cell)))?;
    }
    Ok(lines.into_inner().map_err(|error| csv::Error::from(error.into_error()))?)
}

fn written(mark: DecimalMark, cell: &Cell<'_>) -> String {
    match cell {
        Cell::Text(text) => guarded(text).into_owned(),
        Cell::Number(number) => mark.number(*number),
        Cell::Time(moment) => moment.to_string(),
    }
}
