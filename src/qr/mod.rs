//! Codes that a camera reads (QR): which squares of them are dark. How they are drawn is each room's own.

use qrcode::{Color, EcLevel, QrCode};

/// Squares that stay light on every side, so that a camera finds the code. Source: ISO/IEC 18004:2015, the quiet zone (from
/// memory).
const QUIET: usize = 4;

/// A code, its light border included.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Squares {
    /// How many squares it has on each side.
    pub side: usize,
    /// The dark ones, a bar for each run of them in a row.
    pub bars: Vec<Bar>,
}

/// Dark squares beside each other, from the upper left corner of the whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bar {
    /// Squares to the left of it.
    pub x: usize,
    /// Squares above it.
    pub y: usize,
    /// How many they are.
    pub long: usize,
}

impl Squares {
    /// The code of `text`; none where no code takes so long a text.
    pub fn of(text: &str) -> Option<Self> {
        // A seventh of it may be unreadable: a thumb on the screen, a scratch. Source: ISO/IEC 18004, level M (from memory).
        let code = QrCode::with_error_correction_level(text, EcLevel::M).ok()?;
        let mut bars = Vec::new();
        for (y, row) in code.to_colors().chunks(code.width()).enumerate() {
            let mut x = 0;
            for run in row.chunk_by(|one, next| one == next) {
                if run[0] == Color::Dark {
                    bars.push(Bar { x: x + QUIET, y: y + QUIET, long: run.len() });
                }
                x += run.len();
            }
        }
        Some(Self { side: code.width() + 2 * QUIET, bars })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Another library reads it (rqrr), as a camera would.
    #[test]
    fn another_reader_reads_it() {
        for text in ["http://192.168.4.1:8080", "http://192.168.4.1:8080/number/3-042-6", "Ünïcode ✂", "7"] {
            let squares = Squares::of(text).expect("a code");
            let mut dark = vec![vec![false; squares.side]; squares.side];
            for Bar { x, y, long } in squares.bars {
                dark[y][x..x + long].fill(true);
            }
            let wide = 5;
            let pixel = |x: usize, y: usize| if dark[y / wide][x / wide] { 0 } else { 255 };
            let side = squares.side * wide;
            let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side, side, pixel);
            let grids = picture.detect_grids();
            assert_eq!(grids.len(), 1, "{text}");
            assert_eq!(grids[0].decode().expect("it is read").1, text);
        }
    }

    #[test]
    fn what_is_too_long_is_no_code() {
        // Version 40 at level M takes 2331 bytes (ISO/IEC 18004, table 7; from memory).
        assert!(Squares::of(&"a".repeat(2331)).is_some());
        assert_eq!(Squares::of(&"a".repeat(2332)), None);
    }
}
