//! A tray as it lies on the table, on a page of its own.

use super::{
    fit::{Hand, Place, write},
    table::{LabelTable, Labelled},
};
use crate::{
    catalog::Tray,
    craft::Home,
    lang::say,
    paper::{
        document::{PaperError, Sheet, mm},
        marks::{INK, Mark, PLUM, Page, SOFT, Stroke},
        typeface::{Style, Typefaces},
    },
};

/// Margin of the page.
const MARGIN_MM: f32 = 12.0;
/// No compartment is drawn higher than this, so that a tray of one row is no row of towers.
const HIGHEST_MM: f32 = 52.0;

/// The page of a tray.
pub(super) fn page(table: &LabelTable, tray: &Tray, sheet: Sheet) -> Result<Page, PaperError> {
    let typefaces = Typefaces::all()?;
    let (width, height) = sheet.points();
    let margin = mm(MARGIN_MM);
    let letter = tray.letter.to_string();
    let heading = format!("{}: {}", say!(table.texts, "tray", letter = letter.as_str()), table.tray_name(tray.letter));
    let head = Place { x: margin, y: margin, width: width - 2.0 * margin, height: mm(14.0) };
    let serif = Hand { style: Style::Serif, colour: PLUM, largest: 24.0, smallest: 9.0 };
    let (mut page, high) = write(&typefaces, serif, &heading, head);
    let about = format!("{} · {}", table.name, say!(table.texts, "labels-map-hint"));
    let soft = Hand { style: Style::Sans, colour: SOFT, largest: 9.0, smallest: 5.0 };
    let under = Place { y: head.y + high, height: mm(5.0), ..head };
    page.extend(write(&typefaces, soft, &about, under).0);
    let top = under.y + mm(8.0);
    let columns = tray.rows.iter().map(Vec::len).max().unwrap_or(1).max(1);
    let rows = tray.rows.len().max(1);
    let cell = (head.width / columns as f32, ((height - margin - top) / rows as f32).min(mm(HIGHEST_MM)));
    let mut homes = tray.compartments();
    for (row, cells) in tray.rows.iter().enumerate() {
        for (column, (home, _)) in homes.by_ref().take(cells.len()).enumerate() {
            let place = Place {
                x: margin + column as f32 * cell.0,
                y: top + row as f32 * cell.1,
                width: cell.0,
                height: cell.1,
            };
            compartment(&mut page, &typefaces, place, home, table.at(home));
        }
    }
    Ok(page)
}

fn compartment(page: &mut Page, typefaces: &Typefaces, place: Place, home: Home, what: Option<&Labelled>) {
    let Place { x, y, width, height } = place;
    page.push(Mark::Box { x, y, width, height, pen: Stroke { width: 0.8, ..Stroke::RULE } });
    let inner = place.inside(mm(1.2));
    let colour = if what.is_some() { PLUM } else { SOFT };
    let size = (place.height * 0.16).min(15.0).min(place.width * 0.2);
    let serif = Hand { style: Style::Serif, colour, largest: size, smallest: 5.0 };
    let half = Place { width: inner.width * 0.42, height: size * 1.2, ..inner };
    page.extend(write(typefaces, serif, &home.to_string(), half).0);
    let Some(what) = what else { return };
    let largest = size * 0.85;
    let scale = (inner.width * 0.56 / typefaces.width(Style::Bold, largest, &what.price).max(1.0)).min(1.0);
    let price = typefaces.width(Style::Bold, largest * scale, &what.price);
    page.push(Mark::Words {
        x: inner.x + inner.width - price,
        y: inner.y + size * 0.9,
        style: Style::Bold,
        size: largest * scale,
        colour: INK,
        text: what.price.clone(),
    });
    let rest = inner.below(size * 1.25);
    let foot = (rest.height * 0.42).min(mm(11.0));
    let name = Place { y: rest.y + rest.height - foot, height: foot, ..rest };
    let sans = Hand { style: Style::Sans, colour: INK, largest: 9.5, smallest: 4.5 };
    page.extend(write(typefaces, sans, &what.noted(), name).0);
    let room = Place { height: rest.height - foot - mm(1.0), ..rest };
    if let Some((of, across, down)) = what.picture.filter(|_| room.height > mm(4.0)) {
        let scale = (room.width / across).min(room.height / down);
        let (width, height) = (across * scale, down * scale);
        page.push(Mark::Picture { of, x: room.x + (room.width - width) / 2.0, y: room.y, width, height });
    }
}
