//! Words in a box: as large as they fit, and never out of it.

use crate::paper::{
    marks::{Mark, Rgb},
    typeface::{Style, Typefaces},
    wrap::wrap,
};

/// From one base line to the next, in sizes.
const LEAD: f32 = 1.2;
/// From the top of a line to its base line, in sizes; what stands above capitals has room in it.
const RISE: f32 = 0.94;

/// The smallest size, in points, to which words shrink before they are parted. Common practice, no source.
const LEGIBLE: f32 = 6.5;
/// Parted words need not be larger than this.
const PARTED: f32 = 8.5;

/// A place on a page.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    pub x: f32,
    pub y: f32,
    pub width: f32,
    pub height: f32,
}

impl Place {
    /// The same without so much at every side.
    pub(super) fn inside(self, pad: f32) -> Self {
        let (width, height) = (self.width - 2.0 * pad, self.height - 2.0 * pad);
        Self { x: self.x + pad, y: self.y + pad, width, height }
    }

    /// The same without what is above.
    pub(super) fn below(self, height: f32) -> Self {
        Self { y: self.y + height, height: self.height - height, ..self }
    }
}

/// How words are written.
#[derive(Clone, Copy)]
pub(super) struct Hand {
    pub style: Style,
    pub colour: Rgb,
    /// Where there is room.
    pub largest: f32,
    /// Where there is little.
    pub smallest: f32,
}

/// Words that were fitted.
struct Fitted {
    size: f32,
    lines: Vec<String>,
}

/// Writes `text` into `place` from its upper left corner, and says how high it became.
pub(super) fn write(typefaces: &Typefaces, hand: Hand, text: &str, place: Place) -> (Vec<Mark>, f32) {
    let Fitted { size, lines } = fit(typefaces, hand, text, place.width, place.height);
    let height = lines.len() as f32 * size * LEAD;
    let mark = |(at, text): (usize, String)| {
        let y = place.y + (at as f32 * LEAD + RISE) * size;
        Mark::Words { x: place.x, y, style: hand.style, size, colour: hand.colour, text }
    };
    (lines.into_iter().enumerate().map(mark).collect(), height)
}

/// The largest size at which no word is parted, if that can be read at an arm's length; else the largest at which all of it
/// fits with parted words; at the smallest, what is left is cut short.
fn fit(typefaces: &Typefaces, hand: Hand, text: &str, width: f32, height: f32) -> Fitted {
    let measure = |size: f32| move |line: &str| typefaces.width(hand.style, size, line);
    let tried = |from: f32, to: f32, whole: bool| {
        let sizes = (0..).map(|n| from - 0.5 * n as f32).take_while(|size| *size >= to);
        sizes.map(|size| Fitted { size, lines: wrap(text, width, measure(size)) }).find(|one| {
            let fits = one.lines.len() as f32 * one.size * LEAD <= height;
            fits && (!whole || one.lines.join(" ") == plain(text))
        })
    };
    let whole = tried(hand.largest, LEGIBLE.max(hand.smallest), true);
    if let Some(found) = whole.or_else(|| tried(hand.largest.min(PARTED), hand.smallest, false)) {
        return found;
    }
    let size = hand.smallest;
    let mut lines = wrap(text, width, measure(size));
    let most = ((height / (size * LEAD)) as usize).max(1);
    if lines.len() > most {
        lines.truncate(most);
        if let Some(last) = lines.last_mut() {
            last.push('…');
            while last.chars().count() > 1 && measure(size)(last) > width {
                last.pop();
                last.pop();
                last.push('…');
            }
        }
    }
    Fitted { size, lines }
}

/// Words with one plain space between them, as [`wrap`] parts them.
fn plain(text: &str) -> String {
    text.split(' ').filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whatever the words and the box: no line is wider, and all lines together are no higher.
    #[test]
    fn nothing_runs_out_of_its_box() {
        let typefaces = Typefaces::all().unwrap();
        let hand = Hand { style: Style::Sans, colour: [0; 3], largest: 11.0, smallest: 5.0 };
        let names = [
            "Key",
            "Winziger Tagebuchschlüssel",
            "Donaudampfschifffahrtsgesellschaftskapitänsmützenanhänger",
            "é".repeat(60).leak(),
        ];
        for name in names {
            for (width, height) in [(126.0, 29.0), (50.0, 20.0), (40.0, 14.0)] {
                let Fitted { size, lines } = fit(&typefaces, hand, name, width, height);
                assert!(
                    lines.len() as f32 * size * LEAD <= height + 1e-3,
                    "{name} {width}×{height}: {lines:?} at {size}"
                );
                for line in &lines {
                    assert!(typefaces.width(hand.style, size, line) <= width, "{name}: {line}");
                }
            }
        }
        let short = fit(&typefaces, hand, "Winziger Tagebuchschlüssel", 126.0, 29.0);
        assert_eq!(short.lines, ["Winziger", "Tagebuchschlüssel"], "words are kept whole where they can be");
    }
}
