//! What lies on a compartment's floor: where the floor ends, what is not floor, and which of that belongs together.

use image::{GrayImage, RgbImage};
use imageproc::{
    contrast::otsu_level,
    distance_transform::Norm,
    morphology::{close, open},
    region_labelling::Connectivity,
};

use super::{
    ground::{Ground, median},
    plane::{ON, Part, inverted, parts, smoothed},
};

/// What was found on the floor of a compartment.
pub(super) struct Found {
    /// Which piece each pixel belongs to, from 1; 0 is floor and wall.
    pub labels: Vec<u32>,
    pub pieces: Vec<Part>,
    /// How far each pixel is from the floor, in usual distances.
    pub off: Vec<f32>,
    /// From where on it is no floor.
    pub threshold: f32,
    /// Where the floor is: first column, first row, and behind the last ones.
    pub floor: [usize; 4],
    pub ground: Ground,
    pub width: usize,
    pub height: usize,
}

/// A piece is no smaller than this, in square millimetres.
const LEAST_AREA_MM2: f64 = 4.0;

/// What lies nearer together than this belongs together, in millimetres.
const TOGETHER_MM: f64 = 0.5;

/// Holes smaller than this are closed, in square millimetres: a glint, not an eye.
const LEAST_HOLE_MM2: f64 = 0.35;

/// Half the width of a bay between sure parts, in millimetres.
const BAY_MM: f64 = 1.2;

/// Between these the threshold is taken from the compartment, in usual distances from the floor.
const THRESHOLDS: (f32, f32) = (3.6, 8.0);

/// Finds what lies in a compartment, given at five pixels a millimetre or so; none where its floor has no colour of its own.
pub(super) fn find(pixels: &RgbImage, px: f64) -> Option<Found> {
    let (width, height) = (pixels.width() as usize, pixels.height() as usize);
    let lab = smoothed(pixels, (0.12 * px).round() as usize);
    let ring = |x: usize, y: usize| {
        let from = |at: usize, of: usize| at.min(of - 1 - at) as f32 / of as f32;
        (0.04..0.2).contains(&from(x, width).min(from(y, height)))
    };
    let ground = Ground::find(&lab, width, height, ring)?;
    let mut off = vec![0.0f32; width * height];
    for (i, (off, lab)) in off.iter_mut().zip(&lab).enumerate() {
        *off = ground.off_in_shade(i % width, i / width, *lab);
    }
    let floor = floor(&off, width, height, px);
    let threshold = threshold(&off, width, floor);
    let inside = |x: usize, y: usize| (floor[0]..floor[2]).contains(&x) && (floor[1]..floor[3]).contains(&y);
    let on = |x: u32, y: u32| {
        let (x, y) = (x as usize, y as usize);
        image::Luma([if inside(x, y) && off[y * width + x] > threshold { ON } else { 0 }])
    };
    let mask = GrayImage::from_fn(width as u32, height as u32, on);
    let mask = tidied(mask, &off, threshold, px);
    let (labels, pieces) = pieces(&mask, floor, px);
    Some(Found { labels, pieces, off, threshold, floor, ground, width, height })
}

/// The walls and what they hide lie outside the first line, from each side, that is half floor.
fn floor(off: &[f32], width: usize, height: usize, px: f64) -> [usize; 4] {
    let is_floor = |x: usize, y: usize| off[y * width + x] < 4.0;
    let column =
        |x: usize| (height / 10..height - height / 10).filter(|&y| is_floor(x, y)).count() * 2 > height * 4 / 5;
    let row = |y: usize| (width / 10..width - width / 10).filter(|&x| is_floor(x, y)).count() * 2 > width * 4 / 5;
    // Two lines of three, so that one line of wall in the wall's shadow does not end it.
    let settled = |line: &dyn Fn(usize) -> bool, at: [usize; 3]| at.into_iter().filter(|&i| line(i)).count() >= 2;
    let margin = (0.4 * px).ceil() as usize;
    let first = |line: &dyn Fn(usize) -> bool, of: usize| {
        let most = of * 15 / 100;
        (0..most)
            .find(|&i| settled(line, [i, i + 1, i + 2]))
            .map_or(of * 3 / 100, |i| if i == 0 { 0 } else { i + margin })
    };
    let left = first(&column, width);
    let top = first(&row, height);
    let right = width - first(&|i| column(width - 1 - i), width);
    let bottom = height - first(&|i| row(height - 1 - i), height);
    [left, top, right, bottom]
}

/// Otsu's threshold between floor and pieces, on a scale on which ten usual distances are not ten times one.
fn threshold(off: &[f32], width: usize, floor: [usize; 4]) -> f32 {
    const FULL: f32 = 4.2;
    let level = |off: f32| (255.0 * off.ln_1p() / FULL).min(255.0) as u8;
    let (w, h) = ((floor[2] - floor[0]) as u32, (floor[3] - floor[1]) as u32);
    let at = |x: u32, y: u32| image::Luma([level(off[(floor[1] + y as usize) * width + floor[0] + x as usize])]);
    let otsu = f32::from(otsu_level(&GrayImage::from_fn(w, h, at)));
    ((otsu / 255.0 * FULL).exp() - 1.0).clamp(THRESHOLDS.0, THRESHOLDS.1)
}

/// Without specks, with cracks and glints closed, and with those holes through which the floor shows.
fn tidied(mask: GrayImage, off: &[f32], threshold: f32, px: f64) -> GrayImage {
    let before = mask.clone();
    let closed = close(&mask, Norm::LInf, 1);
    let mut mask = open(&closed, Norm::LInf, 1);
    // Opening takes wires that are two pixels thin; what was there and touches what stayed comes back.
    let (labels, found) = parts(&before, Connectivity::Eight);
    let mut stays = vec![false; found.len() + 1];
    labels
        .iter()
        .zip(mask.iter())
        .filter(|(label, on)| **label > 0 && **on == ON)
        .for_each(|(&label, _)| stays[label as usize] = true);
    mask.iter_mut()
        .zip(&labels)
        .filter(|(_, label)| stays[**label as usize] && **label > 0)
        .for_each(|(on, _)| *on = ON);
    // What is doubtful between sure parts belongs to them: a bay of a piece that shines like the floor.
    let bays = close(&mask, Norm::LInf, (BAY_MM * px).round().clamp(1.0, 20.0) as u8);
    for ((on, bay), off) in mask.iter_mut().zip(bays.iter()).zip(off) {
        if *bay == ON && *off > 0.6 * threshold {
            *on = ON;
        }
    }
    let width = mask.width() as usize;
    let (labels, holes) = parts(&inverted(&mask), Connectivity::Four);
    let least = (LEAST_HOLE_MM2 * px * px) as usize;
    let mut offs: Vec<Vec<f32>> = vec![Vec::new(); holes.len()];
    let (w, h) = (width - 1, mask.height() as usize - 1);
    let outside =
        |part: &Part| part.bounds[0] == 0 || part.bounds[1] == 0 || part.bounds[2] == w || part.bounds[3] == h;
    for (&label, &off) in labels.iter().zip(off) {
        if let Some(hole) = (label as usize).checked_sub(1).filter(|&hole| !outside(&holes[hole])) {
            offs[hole].push(off);
        }
    }
    let fill: Vec<bool> = holes
        .iter()
        .zip(&mut offs)
        .map(|(part, offs)| !outside(part) && (part.area < least || median(offs) > 0.62 * threshold))
        .collect();
    for (on, &label) in mask.iter_mut().zip(&labels) {
        if label > 0 && fill[label as usize - 1] {
            *on = ON;
        }
    }
    mask
}

/// Which parts of the mask are pieces: parts close together are one, specks and strips along the walls are none.
fn pieces(mask: &GrayImage, floor: [usize; 4], px: f64) -> (Vec<u32>, Vec<Part>) {
    let reach = (TOGETHER_MM * px / 2.0).round().clamp(1.0, 20.0) as u8;
    let near = imageproc::morphology::dilate(mask, Norm::LInf, reach);
    let (together, _) = parts(&near, Connectivity::Eight);
    let most = together.iter().copied().max().unwrap_or(0) as usize;
    let mut found = vec![Part { area: 0, bounds: [usize::MAX, usize::MAX, 0, 0] }; most + 1];
    let width = mask.width() as usize;
    for (i, (&label, on)) in together.iter().zip(mask.iter()).enumerate() {
        if *on == ON {
            let (x, y) = (i % width, i / width);
            let part = &mut found[label as usize];
            let [left, top, right, bottom] = part.bounds;
            *part = Part { area: part.area + 1, bounds: [left.min(x), top.min(y), right.max(x), bottom.max(y)] };
        }
    }
    let least = (LEAST_AREA_MM2 * px * px) as usize;
    let strip = |part: &Part| {
        let (w, h) = part.extent();
        let thin = (2.0 * px) as usize;
        let at_side = part.bounds[0] <= floor[0] + 1 || part.bounds[2] + 2 >= floor[2];
        let at_end = part.bounds[1] <= floor[1] + 1 || part.bounds[3] + 2 >= floor[3];
        (at_side && w < thin) || (at_end && h < thin)
    };
    let largest = found.iter().map(|part| part.area).max().unwrap_or(0);
    let kept: Vec<usize> =
        (1..found.len()).filter(|&i| found[i].area >= least.max(largest / 40) && !strip(&found[i])).collect();
    let mut number = vec![0u32; found.len()];
    kept.iter().enumerate().for_each(|(n, &i)| number[i] = n as u32 + 1);
    let labels = together
        .iter()
        .zip(mask.iter())
        .map(|(&label, &on)| if on == ON { number[label as usize] } else { 0 })
        .collect();
    (labels, kept.into_iter().map(|i| found[i]).collect())
}
