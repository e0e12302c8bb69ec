//! A page with the code that leads a helper's phone to the home of a stray drop.

use super::{
    fit::{Hand, Place, write},
    table::LabelTable,
};
use crate::{
    lang::say,
    paper::{
        document::{PaperError, Sheet, mm},
        marks::{INK, Mark, PLUM, Page, SOFT},
        typeface::{Style, Typefaces},
    },
    qr::Squares,
};

/// The code's side: it is read from the other side of a table.
const SIDE_MM: f32 = 80.0;

/// The page, where there is an address that a phone reaches.
pub(super) fn page(table: &LabelTable, sheet: Sheet) -> Result<Option<Page>, PaperError> {
    let Some(address) = &table.put_back else { return Ok(None) };
    let Some(squares) = Squares::of(address) else { return Ok(None) };
    let typefaces = Typefaces::all()?;
    let (width, _) = sheet.points();
    let texts = table.texts;
    let (side, left) = (mm(SIDE_MM), mm(25.0));
    let head = Place { x: left, y: mm(25.0), width: width - 2.0 * left, height: mm(30.0) };
    let serif = Hand { style: Style::Serif, colour: PLUM, largest: 34.0, smallest: 12.0 };
    let sans = Hand { style: Style::Sans, colour: INK, largest: 14.0, smallest: 8.0 };
    let (mut page, high) = write(&typefaces, serif, &say!(texts, "put-back"), head);
    let hint = Place { y: head.y + high + mm(3.0), height: mm(18.0), ..head };
    page.extend(write(&typefaces, sans, &say!(texts, "labels-code-hint"), hint).0);
    let y = hint.y + hint.height + mm(4.0);
    page.push(Mark::Code { x: (width - side) / 2.0, y, side, squares });
    let under = Place { y: y + side + mm(4.0), height: mm(8.0), ..head };
    let soft = Hand { colour: SOFT, largest: 10.0, smallest: 6.0, ..sans };
    page.extend(write(&typefaces, soft, address, under).0);
    Ok(Some(page))
}
