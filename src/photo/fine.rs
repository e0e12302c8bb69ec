//! A piece's mask at the full scale of its compartment: its edge to the pixel, and the small holes that the first look
//! does not see.

use image::{GrayImage, Luma, imageops};
use imageproc::{
    distance_transform::Norm,
    morphology::{dilate, erode},
    region_labelling::Connectivity,
};

use super::{
    find::Found,
    ground::median,
    plane::{ON, Part, inverted, parts, smoothed},
    tray::Compartment,
};

/// Room around a piece within which its edge is worked out, in millimetres.
const ROOM_MM: f64 = 1.6;

/// Smaller holes are glints, in square millimetres.
const LEAST_HOLE_MM2: f64 = 0.2;

/// The mask of one piece with room around it, and where its first pixel lies in the compartment, which is `times` finer
/// than what was found.
pub(super) fn fine_mask(
    found: &Found,
    label: u32,
    part: Part,
    times: usize,
    compartment: &Compartment,
) -> (GrayImage, u32, u32) {
    let px = compartment.px_per_mm;
    let room = (ROOM_MM * px / times as f64).ceil() as usize;
    let [left, top, right, bottom] = part.bounds;
    let (left, top) = (left.saturating_sub(room), top.saturating_sub(room));
    let (right, bottom) = ((right + room + 1).min(found.width), (bottom + room + 1).min(found.height));
    let coarse = GrayImage::from_fn((right - left) as u32, (bottom - top) as u32, |x, y| {
        let at = (top + y as usize) * found.width + left + x as usize;
        Luma([if found.labels[at] == label { ON } else { 0 }])
    });
    if times == 1 {
        return (coarse, left as u32, top as u32);
    }
    let (sure, possible) = (erode(&coarse, Norm::LInf, 1), dilate(&coarse, Norm::LInf, 1));
    let (w, h) = (coarse.width() * times as u32, coarse.height() * times as u32);
    let (x0, y0) = ((left * times) as u32, (top * times) as u32);
    let pixels = imageops::crop_imm(&compartment.pixels, x0, y0, w, h).to_image();
    let lab = smoothed(&pixels, (0.06 * px).round().max(1.0) as usize);
    let off: Vec<f32> = lab
        .iter()
        .enumerate()
        .map(|(i, lab)| {
            let (x, y) = (left + i % w as usize / times, top + i / w as usize / times);
            found.ground.off_in_shade(x, y, *lab)
        })
        .collect();
    let is = |mask: &GrayImage, x: u32, y: u32| mask.get_pixel(x / times as u32, y / times as u32).0[0] == ON;
    let mut mask = GrayImage::from_fn(w, h, |x, y| {
        let beyond = off[(y * w + x) as usize] > found.threshold;
        Luma([if is(&sure, x, y) || beyond && is(&possible, x, y) { ON } else { 0 }])
    });
    let deep: Vec<f32> = lab
        .iter()
        .zip(mask.iter())
        .enumerate()
        .map(|(i, (lab, on))| match *on {
            ON => found.ground.off_in_deep_shade(left + i % w as usize / times, top + i / w as usize / times, *lab),
            _ => 0.0,
        })
        .collect();
    if has_another_colour(&mask, &deep, found.threshold) {
        out_of_the_shade(&mut mask, &deep, found.threshold, px);
    }
    holes(&mut mask, &off, found.threshold, px);
    (one(mask), x0, y0)
}

/// Whether most of a piece has a colour that no shade gives the floor.
fn has_another_colour(mask: &GrayImage, deep: &[f32], threshold: f32) -> bool {
    let mut offs: Vec<f32> = mask.iter().zip(deep).filter(|(on, _)| **on == ON).map(|(_, off)| *off).collect();
    median(&mut offs) > 1.5 * threshold
}

/// Takes away what is floor in the shade of such a piece, along its edge and within its openings.
fn out_of_the_shade(mask: &mut GrayImage, deep: &[f32], threshold: f32, px: f64) {
    let shade = GrayImage::from_fn(mask.width(), mask.height(), |x, y| {
        let i = (y * mask.width() + x) as usize;
        Luma([if mask.as_raw()[i] == ON && deep[i] < 0.8 * threshold { ON } else { 0 }])
    });
    let beside = dilate(&inverted(mask), Norm::LInf, 1);
    let (labels, found) = parts(&shade, Connectivity::Four);
    let mut goes: Vec<bool> = found.iter().map(|part| part.area as f64 >= LEAST_HOLE_MM2 * px * px).collect();
    // Along the edge however thin it is.
    for (&label, _) in labels.iter().zip(beside.iter()).filter(|(label, beside)| **label > 0 && **beside == ON) {
        goes[label as usize - 1] = true;
    }
    for (on, &label) in mask.iter_mut().zip(&labels) {
        if label > 0 && goes[label as usize - 1] {
            *on = 0;
        }
    }
}

/// Opens the mask where the floor is plainly seen through it.
fn holes(mask: &mut GrayImage, off: &[f32], threshold: f32, px: f64) {
    // What the floor's colour has, and what is its edge, blurred over a pixel or two.
    let plain = GrayImage::from_fn(mask.width(), mask.height(), |x, y| {
        let seen = off[(y * mask.width() + x) as usize] < 0.62 * threshold;
        Luma([if seen && mask.get_pixel(x, y).0[0] == ON { ON } else { 0 }])
    });
    let (labels, found) = parts(&plain, Connectivity::Four);
    let least = LEAST_HOLE_MM2 * px * px;
    // The edge of the piece itself may look like the floor; a hole is wider than such a seam.
    let wide =
        |part: &Part| part.area as f64 >= least && part.area as f64 > 0.3 * (part.extent().0 * part.extent().1) as f64;
    let edge = erode(mask, Norm::LInf, 2);
    let mut inside = vec![true; found.len()];
    for (i, &label) in labels.iter().enumerate().filter(|(_, label)| **label > 0) {
        inside[label as usize - 1] &= edge.as_raw()[i] == ON;
    }
    let open = GrayImage::from_fn(mask.width(), mask.height(), |x, y| {
        let label = labels[(y * mask.width() + x) as usize] as usize;
        let opens = label > 0 && inside[label - 1] && wide(&found[label - 1]);
        Luma([if opens { ON } else { 0 }])
    });
    for ((on, open), off) in mask.iter_mut().zip(dilate(&open, Norm::LInf, 1).iter()).zip(off) {
        if *open == ON && *off < threshold {
            *on = 0;
        }
    }
}

/// The largest part of a mask.
fn one(mut mask: GrayImage) -> GrayImage {
    let (labels, found) = parts(&mask, Connectivity::Eight);
    let specks = found.iter().map(|part| part.area).max().unwrap_or(0) / 40;
    for (on, &label) in mask.iter_mut().zip(&labels) {
        if label > 0 && found[label as usize - 1].area < specks {
            *on = 0;
        }
    }
    mask
}
