//! Rows onto pages: where each word, line and box stands, in points from the upper left corner.

use super::{
    document::{Document, PaperError, Row, Sheet, Sort, mm},
    marks::{INK, Mark, PLUM, Page, Rgb, SOFT, Stroke},
    typeface::{Style, Typefaces},
    wrap::wrap,
};
use crate::qr::Squares;

/// A way to write words.
#[derive(Clone, Copy)]
struct Pen {
    style: Style,
    size: f32,
    colour: Rgb,
    /// From one base line to the next.
    lead: f32,
}

const fn pen(style: Style, size: f32, colour: Rgb) -> Pen {
    Pen { style, size, colour, lead: size * 1.42 }
}

/// Which edge words keep to.
#[derive(Clone, Copy)]
enum To {
    Left,
    Middle,
}

/// What differs between a receipt and a slip.
struct Look {
    /// Width of the column.
    column: f32,
    /// The usual size.
    size: f32,
    number: f32,
    /// The part of the column that the picture takes, at the right.
    picture: f32,
}

impl Look {
    fn of(sort: Sort) -> Self {
        match sort {
            Sort::Receipt => Self { column: mm(92.0), size: 9.5, number: 24.0, picture: mm(40.0) },
            Sort::List => Self { column: mm(170.0), size: 11.0, number: 24.0, picture: mm(40.0) },
            Sort::Slip => Self { column: mm(170.0), size: 13.0, number: 64.0, picture: mm(74.0) },
        }
    }
}

/// Room above and below what is set.
const MARGIN: f32 = 48.0;
/// A code's side: squares of more than half a millimetre, which a phone's camera reads at an arm's length (by trial).
const CODE: f32 = 71.0;
/// Room below for the number of the page.
const FOOT: f32 = 22.0;

/// Sets rows one below the other.
struct Setter<'d> {
    document: &'d Document,
    typefaces: &'d Typefaces,
    look: Look,
    left: f32,
    bottom: f32,
    y: f32,
    /// What stands at the right: how wide it is and where it ends.
    beside: Option<(f32, f32)>,
    pages: Vec<Page>,
}

/// The pages of a document; `picture` is the picture's width and height in dots.
pub(super) fn pages(document: &Document, sheet: Sheet, picture: Option<(u32, u32)>) -> Result<Vec<Page>, PaperError> {
    let (width, height) = sheet.points();
    let look = Look::of(document.sort);
    let typefaces = Typefaces::all()?;
    let left = (width - look.column) / 2.0;
    let bottom = height - MARGIN - FOOT;
    let (y, beside, pages) = (MARGIN, None, vec![vec![]]);
    let mut setter = Setter { document, typefaces: &typefaces, look, left, bottom, y, beside, pages };
    for (at, row) in document.rows.iter().enumerate() {
        setter.row(row, document.rows.get(at + 1), picture);
    }
    setter.number_pages(width, height);
    Ok(setter.pages)
}

impl Setter<'_> {
    fn row(&mut self, row: &Row, next: Option<&Row>, picture: Option<(u32, u32)>) {
        let size = self.look.size;
        match row {
            Row::Name(words) => self.words(words, pen(Style::Serif, size * 2.1, PLUM), To::Middle),
            Row::Middle(words) => self.words(words, pen(Style::Sans, size * 0.95, SOFT), To::Middle),
            Row::Notice(words) => {
                self.gap(3.0);
                let to = if self.document.sort == Sort::Receipt { To::Middle } else { To::Left };
                self.words(words, pen(Style::Bold, size * 1.2, INK), to);
            }
            Row::Number(words) => {
                let pen = Pen { lead: self.look.number * 1.2, ..pen(Style::Serif, self.look.number, PLUM) };
                self.words(words, pen, To::Left);
            }
            Row::Fact(what, value) => self.pair(what, value, pen(Style::Sans, size, SOFT)),
            Row::Heading(words) => {
                let pen = pen(Style::Serif, size * 1.25, INK);
                // What it is about stands on the same page.
                self.room_for(pen.lead + 5.0 + next.map_or(0.0, |_| size * 3.0));
                self.gap(5.0);
                self.words(words, pen, To::Left);
                self.gap(1.0);
            }
            Row::Amount(words, amount) => self.pair(words, amount, pen(Style::Sans, size, INK)),
            Row::Total(words, amount) => {
                self.gap(2.0);
                self.pair(words, amount, pen(Style::Serif, size * 1.6, INK));
                self.gap(1.0);
            }
            Row::Text(words) => {
                self.words(words, pen(Style::Sans, size, INK), To::Left);
                self.gap(2.0);
            }
            Row::Small(words) => {
                self.words(words, pen(Style::Sans, size * 0.85, SOFT), To::Left);
                self.gap(2.0);
            }
            Row::Tick(home, words) => self.tick(home, words),
            Row::Picture => self.picture(picture),
            Row::Code(text) => self.code(text),
            Row::Rule => self.rule(),
        }
    }

    /// Begins another page unless so much fits on this one.
    fn room_for(&mut self, height: f32) {
        if self.y + height > self.bottom && self.y > MARGIN {
            self.pages.push(vec![]);
            (self.y, self.beside) = (MARGIN, None);
        }
    }

    fn put(&mut self, mark: Mark) {
        if let Some(page) = self.pages.last_mut() {
            page.push(mark);
        }
    }

    /// How wide a row is here.
    fn width(&self) -> f32 {
        match self.beside {
            Some((width, end)) if self.y < end => self.look.column - width,
            _ => self.look.column,
        }
    }

    fn gap(&mut self, height: f32) {
        self.y += height;
    }

    /// Writes one line from `x`.
    fn write(&mut self, pen: Pen, x: f32, text: String) {
        // Letters stand in the middle of their line, by eye.
        let y = self.y + pen.lead * 0.5 + pen.size * 0.34;
        self.put(Mark::Words { x, y, style: pen.style, size: pen.size, colour: pen.colour, text });
    }

    fn measured(&self, pen: Pen, text: &str) -> f32 {
        self.typefaces.width(pen.style, pen.size, text)
    }

    fn wrapped(&self, pen: Pen, text: &str, width: f32) -> Vec<String> {
        wrap(text, width, |line| self.measured(pen, line))
    }

    fn words(&mut self, text: &str, pen: Pen, to: To) {
        let width = self.width();
        for line in self.wrapped(pen, text, width) {
            self.room_for(pen.lead);
            let x = match to {
                To::Left => self.left,
                To::Middle => self.left + (width - self.measured(pen, &line)) / 2.0,
            };
            self.write(pen, x, line);
            self.y += pen.lead;
        }
    }

    /// Words, and at the right edge beside their last line an amount.
    fn pair(&mut self, words: &str, amount: &str, pen: Pen) {
        let (width, amount_width) = (self.width(), self.measured(pen, amount));
        let lines = self.wrapped(pen, words, (width - amount_width - 14.0).max(width * 0.4));
        self.room_for(pen.lead * lines.len() as f32);
        let last = lines.len() - 1;
        for (at, line) in lines.into_iter().enumerate() {
            self.write(pen, self.left, line);
            if at == last {
                let colour = if pen.style == Style::Serif { PLUM } else { INK };
                self.write(Pen { colour, ..pen }, self.left + width - amount_width, amount.to_owned());
            }
            self.y += pen.lead;
        }
    }

    fn tick(&mut self, home: &str, words: &str) {
        let (home_pen, pen) = (pen(Style::Serif, self.look.size * 1.35, PLUM), pen(Style::Sans, self.look.size, INK));
        let side = self.look.size * 1.1;
        let indent = side + 12.0 + if home.is_empty() { 0.0 } else { self.look.size * 3.6 };
        let lines = self.wrapped(pen, words, self.width() - indent);
        let lead = home_pen.lead * 1.05;
        self.room_for(lead + pen.lead * (lines.len() - 1) as f32);
        self.put(Mark::Box {
            x: self.left,
            y: self.y + (lead - side) / 2.0,
            width: side,
            height: side,
            pen: Stroke::TICK,
        });
        self.write(Pen { lead, ..home_pen }, self.left + side + 12.0, home.to_owned());
        for (at, line) in lines.into_iter().enumerate() {
            let lead = if at == 0 { lead } else { pen.lead };
            self.write(Pen { lead, ..pen }, self.left + indent, line);
            self.y += lead;
        }
    }

    /// At the right, so that the rows that follow stand beside it.
    fn picture(&mut self, dots: Option<(u32, u32)>) {
        let Some((across, down)) = dots.filter(|(across, down)| *across > 0 && *down > 0) else { return };
        let width = self.look.picture;
        let height = width * down as f32 / across as f32;
        let (x, y) = (self.left + self.look.column - width, self.y);
        self.put(Mark::Picture { of: 0, x, y, width, height });
        self.beside = Some((width + mm(6.0), self.y + height));
    }

    /// Nothing where no code takes so long a text.
    fn code(&mut self, text: &str) {
        let Some(squares) = Squares::of(text) else { return };
        self.room_for(CODE);
        let (x, y) = (self.left, self.y);
        self.put(Mark::Code { x, y, side: CODE, squares });
        self.gap(CODE);
    }

    fn rule(&mut self) {
        self.gap(6.0);
        let (left, right, y) = (self.left, self.left + self.width(), self.y);
        self.put(Mark::Line { from: (left, y), to: (right, y), pen: Stroke::RULE });
        self.gap(6.0);
    }

    /// Where there is more than one page, each says which it is.
    fn number_pages(&mut self, width: f32, height: f32) {
        let (pen, all) = (pen(Style::Sans, 8.5, SOFT), self.pages.len());
        if all < 2 {
            return;
        }
        for at in 0..all {
            let text = format!("{} · {} / {all}", self.document.title, at + 1);
            let x = (width - self.measured(pen, &text)) / 2.0;
            let Pen { style, size, colour, .. } = pen;
            self.pages[at].push(Mark::Words { x, y: height - MARGIN, style, size, colour, text });
        }
    }
}
