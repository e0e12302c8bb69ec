//! Rows for a receipt printer, in the command set that most of them understand, ESC/POS: bytes that are sent as they are.
//! No drivers, no shell. What the commands do is written from memory of their published reference.

use super::{
    code_page::{encoded, printable},
    document::{Document, Row, Sort},
    raster::{Raster, code, raster},
    wrap::wrap,
};
use crate::{catalog::Columns, qr::Squares};

const ESC: u8 = 0x1b;
const GS: u8 = 0x1d;
const LF: u8 = 0x0a;

/// ESC @: everything as it was when the printer was switched on.
const BEGIN: [u8; 2] = [ESC, b'@'];
/// ESC R 0: the signs below 0x80 are those of ASCII, whatever the printer's switches say.
const ASCII: [u8; 3] = [ESC, b'R', 0];
/// ESC t 19: the letters from 0x80 are those of code page 858.
const CODE_PAGE: [u8; 3] = [ESC, b't', 19];
/// ESC d 3: lets the paper out, so that the last line comes past the edge where it is torn.
const FEED: [u8; 3] = [ESC, b'd', 3];
/// GS V 66 0: feeds to the knife, where there is one, and cuts all but a tab.
const CUT: [u8; 4] = [GS, b'V', 66, 0];
/// Dots of a letter of the usual typeface.
const LETTER_DOTS: u16 = 12;

/// How something is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Way {
    /// In the middle of the line.
    middle: bool,
    /// Bold.
    bold: bool,
    /// So many times as wide, and as high.
    wide: u8,
    high: u8,
}

const PLAIN: Way = Way { middle: false, bold: false, wide: 1, high: 1 };
const BOLD: Way = Way { bold: true, ..PLAIN };
const MIDDLE: Way = Way { middle: true, ..PLAIN };

struct Roll {
    bytes: Vec<u8>,
    columns: usize,
    way: Way,
}

/// `document` for a receipt printer of that width. The picture is on it only where `with_picture` says so.
pub fn roll(document: &Document, columns: Columns, with_picture: bool) -> Vec<u8> {
    let bytes = [&BEGIN[..], &ASCII, &CODE_PAGE].concat();
    let mut roll = Roll { bytes, columns: usize::from(columns.count()), way: PLAIN };
    for row in &document.rows {
        match row {
            Row::Picture => {
                if let Some(png) = document.picture.as_ref().filter(|_| with_picture) {
                    roll.picture(png, columns);
                }
            }
            row => roll.row(row, document.sort),
        }
    }
    roll.bytes.extend(FEED);
    roll.bytes.extend(CUT);
    roll.bytes
}

impl Roll {
    fn row(&mut self, row: &Row, sort: Sort) {
        match row {
            Row::Name(words) => self.words(Way { high: 2, bold: true, ..MIDDLE }, words),
            Row::Middle(words) => self.words(MIDDLE, words),
            Row::Notice(words) => self.words(Way { bold: true, ..MIDDLE }, words),
            Row::Number(words) => {
                let times = if sort == Sort::Slip { 4 } else { 2 };
                self.words(Way { wide: times, high: times, bold: true, ..MIDDLE }, words);
            }
            Row::Fact(what, value) => self.pair(PLAIN, what, value),
            Row::Heading(words) => self.words(BOLD, words),
            Row::Amount(words, amount) => self.pair(PLAIN, words, amount),
            Row::Total(words, amount) => self.pair(Way { high: 2, ..BOLD }, words, amount),
            Row::Text(words) | Row::Small(words) => self.words(PLAIN, words),
            Row::Tick(home, words) => self.tick(home, words),
            Row::Rule => self.line(PLAIN, &"-".repeat(self.columns)),
            Row::Picture => {}
            // As dots: not every printer draws codes itself.
            Row::Code(text) => {
                if let Some(squares) = Squares::of(text) {
                    self.dots(&code(&squares));
                }
            }
        }
    }

    /// Prints from now on in this way.
    fn go(&mut self, way: Way) {
        if way.middle != self.way.middle {
            // ESC a: 0 to the left, 1 in the middle.
            self.bytes.extend([ESC, b'a', u8::from(way.middle)]);
        }
        if way.bold != self.way.bold {
            // ESC E: 1 bold, 0 not.
            self.bytes.extend([ESC, b'E', u8::from(way.bold)]);
        }
        if (way.wide, way.high) != (self.way.wide, self.way.high) {
            // GS !: times as wide less one in the upper half of the byte, times as high less one in the lower.
            self.bytes.extend([GS, b'!', (way.wide - 1) << 4 | (way.high - 1)]);
        }
        self.way = way;
    }

    /// One line of letters that the printer has.
    fn line(&mut self, way: Way, printable: &str) {
        self.go(way);
        self.bytes.extend(encoded(printable));
        self.bytes.push(LF);
    }

    fn wrapped(&self, text: &str, columns: usize) -> Vec<String> {
        wrap(text, columns as f32, |line| line.chars().count() as f32)
    }

    fn words(&mut self, way: Way, words: &str) {
        for line in self.wrapped(&printable(words), self.columns / usize::from(way.wide)) {
            self.line(way, &line);
        }
    }

    /// Words, and at the right edge beside their last line an amount; where there is no room, below.
    fn pair(&mut self, way: Way, words: &str, amount: &str) {
        let (words, amount) = (printable(words), printable(amount));
        let wide = amount.chars().count();
        let for_words = self.columns.saturating_sub(wide + 1);
        if for_words < self.columns / 3 {
            for line in self.wrapped(&words, self.columns) {
                self.line(way, &line);
            }
            for line in self.wrapped(&amount, self.columns) {
                self.line(way, &format!("{line:>0$}", self.columns));
            }
            return;
        }
        let lines = self.wrapped(&words, for_words);
        let last = lines.len() - 1;
        for (at, line) in lines.into_iter().enumerate() {
            if at == last {
                let room = self.columns - wide;
                self.line(way, &format!("{line:<room$}{amount}"));
            } else {
                self.line(way, &line);
            }
        }
    }

    /// A box to tick, the home, and the words beside it.
    fn tick(&mut self, home: &str, words: &str) {
        let head = if home.is_empty() { "[ ] ".to_owned() } else { format!("[ ] {:<4}", printable(home)) };
        let indent = head.chars().count();
        for (at, line) in self.wrapped(&printable(words), self.columns - indent).into_iter().enumerate() {
            let before = if at == 0 { head.clone() } else { " ".repeat(indent) };
            self.line(if at == 0 { BOLD } else { PLAIN }, &format!("{before}{line}"));
        }
    }

    fn picture(&mut self, png: &[u8], columns: Columns) {
        if let Some(raster) = raster(png, columns.count() * LETTER_DOTS * 3 / 4) {
            self.dots(&raster);
        }
    }

    /// GS v 0: dots in rows, their bytes across and their number down, each with its lower byte first.
    fn dots(&mut self, raster: &Raster) {
        self.go(MIDDLE);
        self.bytes.extend([GS, b'v', b'0', 0]);
        self.bytes.extend(raster.across.to_le_bytes());
        self.bytes.extend(raster.down.to_le_bytes());
        self.bytes.extend(&raster.bits);
        self.bytes.push(LF);
    }
}
