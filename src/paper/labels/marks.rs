//! Price marks and tags in their grid. The two marks of a compartment lie head to head where that goes up: folded between them
//! they hang over a rim and read from both sides of the table; cut there, each is for one rim.

use super::{
    fit::{Hand, Place, write},
    grid::Grid,
    table::Labelled,
};
use crate::{
    lang::{Texts, say},
    paper::{
        document::{PaperError, Sheet, mm},
        marks::{INK, Mark, PLUM, Page, SOFT, Stroke},
        typeface::{Style, Typefaces},
    },
};

/// The line by which it is seen whether a printer keeps the size, in millimetres.
const RULER_MM: f32 = 50.0;
/// A margin below it has no room for that line, in millimetres; most printers leave 5 mm of it white.
const LEAST_FOR_RULER_MM: f64 = 9.0;

/// What stands on one mark.
pub(super) struct Sign<'a> {
    home: Option<String>,
    name: &'a str,
    note: Option<&'a str>,
    price: &'a str,
}

impl<'a> Sign<'a> {
    pub(super) fn of(one: &'a Labelled) -> Self {
        let home = one.home.map(|home| home.to_string());
        Self { home, name: &one.name, note: one.note.as_deref(), price: &one.price }
    }

    /// The mark in its place.
    fn marks(&self, typefaces: &Typefaces, place: Place) -> Vec<Mark> {
        // Scissors are not as exact as paper.
        let inner = place.inside((place.height * 0.08).clamp(mm(1.2), mm(2.5)));
        let price = place.height * 0.4;
        let home = self.home.as_deref().unwrap_or_default();
        let wide = |size: f32, text: &str| typefaces.width(Style::Serif, size, text);
        // A tag keeps the middle free for its hole.
        let between = if self.home.is_some() { mm(2.0) } else { inner.width / 2.0 + mm(2.5) };
        let all = wide(price * 0.86, home) + wide(price, self.price);
        let scale = ((inner.width - between) / all.max(1.0)).min(1.0);
        let (price, home_size) = (price * scale, price * 0.86 * scale);
        // Figures and capitals are about this share of their size high.
        let line = inner.y + price * 0.7;
        let mut marks = vec![
            words(inner.x, line, home_size, PLUM, home),
            words(inner.x + inner.width - wide(price, self.price), line, price, INK, self.price),
        ];
        if self.home.is_none() {
            let (x, y) = (place.x + place.width / 2.0, place.y + mm(4.0));
            marks.push(Mark::Ring { x, y, across: mm(3.0), pen: Stroke::CUT });
        }
        let head = (price * 0.95).max(if self.home.is_none() { mm(4.6) } else { 0.0 });
        let mut rest = inner.below(head);
        let hand = Hand { style: Style::Sans, colour: INK, largest: (place.height * 0.22).min(16.0), smallest: 4.5 };
        if let Some(note) = self.note {
            let low = (rest.height * 0.36).min(hand.largest * 1.2);
            let foot = Place { y: rest.y + rest.height - low, height: low, ..rest };
            let small = Hand { colour: SOFT, largest: hand.largest * 0.8, smallest: 4.0, ..hand };
            marks.extend(write(typefaces, small, note, foot).0);
            rest.height -= low;
        }
        marks.extend(write(typefaces, hand, self.name, rest).0);
        marks
    }
}

fn words(x: f32, y: f32, size: f32, colour: [u8; 3], text: &str) -> Mark {
    Mark::Words { x, y, style: Style::Serif, size, colour, text: text.to_owned() }
}

/// The pages of `signs`, each twice; `title` is said at the foot of each page.
pub(super) fn pages(
    signs: &[Sign<'_>],
    grid: Grid,
    sheet: Sheet,
    (texts, title): (&Texts, &str),
) -> Result<Vec<Page>, PaperError> {
    let typefaces = Typefaces::all()?;
    let (width, height) = sheet.points();
    let (beside, above) = (mm(grid.beside.mm() as f32), mm(grid.above.mm() as f32));
    let mark = ((width - 2.0 * beside) / f32::from(grid.columns), (height - 2.0 * above) / f32::from(grid.rows));
    let columns = usize::from(grid.columns);
    let place = |column: usize, row: usize| Place {
        x: beside + column as f32 * mark.0,
        y: above + row as f32 * mark.1,
        width: mark.0,
        height: mark.1,
    };
    let sheets: Vec<&[Sign<'_>]>;
    let twice: Vec<&Sign<'_>>;
    let mut pages: Vec<Page> = vec![];
    if grid.is_folded() {
        sheets = signs.chunks(grid.on_a_sheet() / 2).collect();
        for signs in sheets {
            let mut page = vec![];
            for (at, sign) in signs.iter().enumerate() {
                let (upper, lower) = (place(at % columns, at / columns * 2), place(at % columns, at / columns * 2 + 1));
                pair(&mut page, &typefaces, sign, upper, lower);
            }
            pages.push(page);
        }
    } else {
        twice = signs.iter().flat_map(|sign| [sign, sign]).collect();
        for signs in twice.chunks(grid.on_a_sheet()) {
            let mut page = vec![];
            for (at, sign) in signs.iter().enumerate() {
                let place = place(at % columns, at / columns);
                page.push(outline(place, place.height));
                page.extend(sign.marks(&typefaces, place));
            }
            pages.push(page);
        }
    }
    let all = pages.len();
    if grid.above.mm() >= LEAST_FOR_RULER_MM {
        for (at, page) in pages.iter_mut().enumerate() {
            let words = say!(texts, "labels-foot", title = title, n = at + 1, all = all);
            page.extend(foot(&typefaces, (beside.max(mm(6.0)), height - above * 0.45, width), &words, texts));
        }
    }
    Ok(pages)
}

/// Two marks head to head.
fn pair(page: &mut Page, typefaces: &Typefaces, sign: &Sign<'_>, upper: Place, lower: Place) {
    page.push(outline(upper, upper.height + lower.height));
    let (from, to) = ((lower.x, lower.y), (lower.x + lower.width, lower.y));
    page.push(Mark::Line { from, to, pen: Stroke::FOLD });
    page.extend(sign.marks(typefaces, lower));
    // The lower one turned about the middle of the fold lies where the upper one is.
    let about = (lower.x + lower.width / 2.0, lower.y);
    page.push(Mark::Turned { about, marks: sign.marks(typefaces, lower) });
}

fn outline(place: Place, height: f32) -> Mark {
    Mark::Box { x: place.x, y: place.y, width: place.width, height, pen: Stroke::CUT }
}

/// In the margin below: a line of a known length, and which page it is.
fn foot(typefaces: &Typefaces, (x, y, width): (f32, f32, f32), words: &str, texts: &Texts) -> Vec<Mark> {
    let (end, tick) = (x + mm(RULER_MM), mm(1.0));
    let line = |from, to| Mark::Line { from, to, pen: Stroke { colour: INK, width: 0.4, dashed: false } };
    let small = Hand { style: Style::Sans, colour: SOFT, largest: 7.0, smallest: 4.5 };
    let room = width - mm(6.0) - end - mm(3.0);
    let words = format!("{} {words}", say!(texts, "labels-ruler", mm = RULER_MM));
    let place = Place { x: end + mm(3.0), y: y - small.largest * 0.75, width: room, height: small.largest * 1.3 };
    let mut marks =
        vec![line((x, y), (end, y)), line((x, y - tick), (x, y + tick)), line((end, y - tick), (end, y + tick))];
    marks.extend(write(typefaces, small, &words, place).0);
    marks
}
