//! A neat tile: a compartment's picture on a card with a passe-partout, for what is not cut out. It is opaque, so that
//! whoever judges it by its outline knows that where the piece ends is not known.

use image::{Rgb, RgbImage, imageops};

/// Paper of the card, the line around the picture, and the card's own edge.
const PAPER: [u8; 3] = [246, 240, 229];
const LINE: [u8; 3] = [150, 118, 78];
const EDGE: [u8; 3] = [214, 202, 182];

/// The card's sides in pixels.
const SIDE: u32 = 420;

/// The paper around the picture.
const MARGIN: u32 = 26;

/// A tile of what lies in `part` of the pixels: first column and row, and those behind the last ones.
pub(super) fn tile(pixels: &RgbImage, part: [usize; 4]) -> RgbImage {
    let (width, height) = (pixels.width() as usize, pixels.height() as usize);
    let [left, top, right, bottom] = part;
    // A square around the middle, as large as the part is, and no larger than there is of the compartment.
    let side = (right - left).max(bottom - top).clamp(8, width.min(height).max(8)).min(width).min(height);
    let first = |from: usize, to: usize, of: usize| ((from + to) / 2).saturating_sub(side / 2).min(of - side);
    let (x, y) = (first(left, right, width), first(top, bottom, height));
    let shown = imageops::crop_imm(pixels, x as u32, y as u32, side as u32, side as u32).to_image();
    let inner = SIDE - 2 * MARGIN;
    let shown = imageops::resize(&shown, inner, inner, imageops::FilterType::Triangle);
    RgbImage::from_fn(SIDE, SIDE, |x, y| {
        let from_edge = x.min(y).min(SIDE - 1 - x).min(SIDE - 1 - y);
        Rgb(match from_edge {
            0..2 => EDGE,
            edge if edge >= MARGIN => mount(shown.get_pixel(x - MARGIN, y - MARGIN).0, edge - MARGIN),
            edge if edge >= MARGIN - 2 => LINE,
            _ => paper(x, y),
        })
    })
}

/// Paper with a little tooth.
fn paper(x: u32, y: u32) -> [u8; 3] {
    let tooth = (x.wrapping_mul(7919) ^ y.wrapping_mul(104_729)).wrapping_mul(2_654_435_761) >> 30;
    PAPER.map(|n| n - tooth as u8)
}

/// The card's shadow on the picture beneath, next to its edge.
fn mount(pixel: [u8; 3], inside: u32) -> [u8; 3] {
    let dark = 34u32.saturating_sub(inside * 5);
    pixel.map(|n| (u32::from(n) * (100 - dark) / 100) as u8)
}
