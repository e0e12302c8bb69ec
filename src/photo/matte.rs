//! The soft edge of a cut-out: how much of each pixel is the piece, and its colour without the floor's.
//!
//! A pixel at the edge is a mixture `C = a·F + (1 − a)·B`. The floor's colour `B` is the mean of the sure floor nearby, the
//! piece's `F` that of the sure piece nearby; `a` is where `C` lies on the way from one to the other.

use image::{GrayImage, Luma, RgbImage, Rgba, RgbaImage};
use imageproc::{
    distance_transform::Norm,
    morphology::{dilate, erode},
};

use super::plane::{ON, box_mean};

/// How far on both sides of the edge a pixel may be a mixture, in millimetres.
const BAND_MM: f64 = 0.26;

/// How far around the colours of piece and floor are gathered, in millimetres.
const NEAR_MM: f64 = 0.7;

/// Cuts `mask` out of `pixels`.
pub(super) fn cut(pixels: &RgbImage, mask: &GrayImage, px_per_mm: f64) -> RgbaImage {
    let (width, height) = (pixels.width() as usize, pixels.height() as usize);
    let band = (BAND_MM * px_per_mm).round().clamp(1.0, 3.0) as u8;
    let inner = erode(mask, Norm::LInf, band);
    let outer = dilate(mask, Norm::LInf, band);
    let radius = (NEAR_MM * px_per_mm).round().clamp(2.0, 9.0) as usize;
    let thin = thin_parts(mask, &inner, band);
    let sure_piece = |i: usize| inner.as_raw()[i] == ON || thin[i];
    let piece = gathered(pixels, width, height, radius, sure_piece);
    let floor = gathered(pixels, width, height, radius, |i| outer.as_raw()[i] != ON);
    let mut cut = RgbaImage::new(pixels.width(), pixels.height());
    for (i, (to, from)) in cut.pixels_mut().zip(pixels.pixels()).enumerate() {
        let on = mask.as_raw()[i] == ON;
        *to = if outer.as_raw()[i] != ON {
            continue;
        } else if inner.as_raw()[i] == ON {
            opaque(from.0)
        } else {
            mixed(from.0, piece[i], floor[i], on)
        };
    }
    cut
}

fn opaque([r, g, b]: [u8; 3]) -> Rgba<u8> {
    Rgba([r, g, b, 255])
}

/// The middle of what is so thin that nothing of it is sure: wires a few pixels across.
fn thin_parts(mask: &GrayImage, inner: &GrayImage, band: u8) -> Vec<bool> {
    let regrown = dilate(inner, Norm::LInf, band + 1);
    let core = erode(mask, Norm::LInf, 1);
    let sure = |i: usize| regrown.as_raw()[i] != ON && mask.as_raw()[i] == ON && (core.as_raw()[i] == ON || band == 1);
    (0..mask.as_raw().len()).map(sure).collect()
}

/// The mean colour of the chosen pixels around each place, and how many there are.
fn gathered(
    pixels: &RgbImage,
    width: usize,
    height: usize,
    radius: usize,
    chosen: impl Fn(usize) -> bool,
) -> Vec<[f32; 4]> {
    let of = |(i, pixel): (usize, &image::Rgb<u8>)| {
        if chosen(i) { [f32::from(pixel.0[0]), f32::from(pixel.0[1]), f32::from(pixel.0[2]), 1.0] } else { [0.0; 4] }
    };
    let mut plane: Vec<[f32; 4]> = pixels.pixels().enumerate().map(of).collect();
    for _ in 0..2 {
        box_mean(&mut plane, width, height, radius / 2 + 1);
    }
    plane
}

/// A pixel at the edge.
fn mixed(pixel: [u8; 3], piece: [f32; 4], floor: [f32; 4], on: bool) -> Rgba<u8> {
    let hard = || Rgba([pixel[0], pixel[1], pixel[2], if on { 255 } else { 0 }]);
    if piece[3] < 1e-4 || floor[3] < 1e-4 {
        return hard();
    }
    let f: [f32; 3] = std::array::from_fn(|c| piece[c] / piece[3]);
    let b: [f32; 3] = std::array::from_fn(|c| floor[c] / floor[3]);
    let way: f32 = (0..3).map(|c| (f[c] - b[c]).powi(2)).sum();
    // Piece and floor of nearly one colour tell nothing apart; the mask alone does.
    if way < 24.0 * 24.0 {
        return if on { opaque(pixel) } else { hard() };
    }
    let along = (0..3).map(|c| (f32::from(pixel[c]) - b[c]) * (f[c] - b[c])).sum::<f32>() / way;
    // What lies off the way between both is something of its own, as a glint on the rim is.
    let aside: f32 = (0..3).map(|c| (f32::from(pixel[c]) - b[c] - along * (f[c] - b[c])).powi(2)).sum();
    let share = if on && aside > 0.25 * way { 1.0 } else { along.clamp(0.0, 1.0) };
    let share = if on { share.max(0.35) } else { share.min(0.75) };
    if share < 0.04 {
        return Rgba([0, 0, 0, 0]);
    }
    let own = |c: usize| {
        let unmixed = (f32::from(pixel[c]) - (1.0 - share) * b[c]) / share;
        // The thinner a pixel is, the less its own colour is worth beside the piece's.
        (share * unmixed.clamp(0.0, 255.0) + (1.0 - share) * f[c]).round() as u8
    };
    Rgba([own(0), own(1), own(2), (255.0 * share).round() as u8])
}

/// Which pixels belong to one piece.
pub(super) fn mask_of(labels: &[u32], piece: u32, width: usize, height: usize) -> GrayImage {
    let on = |x: u32, y: u32| Luma([if labels[y as usize * width + x as usize] == piece { ON } else { 0 }]);
    GrayImage::from_fn(width as u32, height as u32, on)
}
