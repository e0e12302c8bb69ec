//! How far a cut-out is to be trusted: is the floor even, is the edge clear all around, is nothing doubtful within, and does
//! all of it lie in the compartment.

use imageproc::{
    distance_transform::Norm,
    morphology::{close, dilate, erode},
};

use super::{
    find::Found,
    matte::mask_of,
    plane::{ON, Part},
};

/// From 0 to 1.
pub(super) fn trust(found: &Found, label: u32, part: Part, px: f64) -> f64 {
    let mask = mask_of(&found.labels, label, found.width, found.height);
    evenness(found) * clear_edge(found, &mask) * undoubted(found, &mask, part, px) * inside(found, part)
}

impl Found {
    /// Whether the floor is even enough to cut anything out.
    pub(super) fn is_even(&self) -> bool {
        evenness(self) > 0.4
    }
}

/// A floor that varies is told apart from a piece by less.
fn evenness(found: &Found) -> f64 {
    let varies = f64::from(found.ground.spread[0]);
    let covered = f64::from(found.ground.cover);
    (1.0 - (varies - 0.02).max(0.0) / 0.026).clamp(0.0, 1.0) * ((covered - 0.12) / 0.2).clamp(0.0, 1.0)
}

/// The share of the edge inside which something is clearly not floor.
fn clear_edge(found: &Found, mask: &image::GrayImage) -> f64 {
    let inner = erode(mask, Norm::LInf, 1);
    let mut edge = 0usize;
    let mut clear = 0usize;
    for (i, _) in mask.iter().zip(inner.iter()).enumerate().filter(|(_, (on, inner))| **on == ON && **inner != ON) {
        let (x, y) = (i % found.width, i / found.width);
        let around = |d: usize| {
            let rows = y.saturating_sub(d)..(y + d + 1).min(found.height);
            rows.flat_map(move |y| {
                (x.saturating_sub(d)..(x + d + 1).min(found.width)).map(move |x| y * found.width + x)
            })
        };
        edge += 1;
        let most = around(2).filter(|&i| mask.as_raw()[i] == ON).map(|i| found.off[i]).fold(0.0, f32::max);
        clear += usize::from(most > 2.0 * found.threshold);
    }
    let share = clear as f64 / edge.max(1) as f64;
    ((share - 0.45) / 0.5).clamp(0.0, 1.0)
}

/// Less, the more there is in and around a piece that could be either.
fn undoubted(found: &Found, mask: &image::GrayImage, part: Part, px: f64) -> f64 {
    let reach = (1.5 * px).round().clamp(1.0, 20.0) as u8;
    let bays = close(mask, Norm::LInf, reach);
    let near = dilate(mask, Norm::LInf, 1);
    let (low, high) = (0.55 * found.threshold, 1.25 * found.threshold);
    let mut doubtful = 0.0;
    for (((on, bay), near), off) in mask.iter().zip(bays.iter()).zip(near.iter()).zip(&found.off) {
        let within = *on == ON && *off < high;
        let beside = *bay == ON && *near != ON && (low..high).contains(off);
        doubtful += f64::from(u8::from(within)) + 2.0 * f64::from(u8::from(beside));
    }
    (1.25 - 1.6 * doubtful / part.area.max(1) as f64).clamp(0.0, 1.0)
}

/// Half where a piece touches a wall: the rest of it may be hidden.
fn inside(found: &Found, part: Part) -> f64 {
    let [left, top, right, bottom] = found.floor;
    let touches = part.bounds[0] <= left + 1
        || part.bounds[1] <= top + 1
        || part.bounds[2] + 2 >= right
        || part.bounds[3] + 2 >= bottom;
    if touches { 0.5 } else { 1.0 }
}
