//! Numbers over a plane: smoothing, and joining what lies together.

use image::{GrayImage, Luma};
use imageproc::region_labelling::{Connectivity, connected_components};

use super::colour::{Lab, seen};

/// A pixel that belongs to something, and one that does not.
pub(super) const ON: u8 = 255;

/// Seen colours of a picture, smoothed over squares of `2 radius + 1` pixels, twice: close to a Gaussian.
pub(super) fn smoothed(pixels: &image::RgbImage, radius: usize) -> Vec<Lab> {
    let (width, height) = (pixels.width() as usize, pixels.height() as usize);
    let mut lab: Vec<Lab> = pixels.pixels().map(|pixel| seen(pixel.0)).collect();
    for _ in 0..2 {
        box_mean(&mut lab, width, height, radius);
    }
    lab
}

/// The mean over a square around each place; at the sides over what there is of it.
pub(super) fn box_mean<const N: usize>(plane: &mut [[f32; N]], width: usize, height: usize, radius: usize) {
    if radius == 0 {
        return;
    }
    let mut line = Vec::new();
    for row in plane.chunks_exact_mut(width) {
        slide(row.iter().copied(), &mut line, radius);
        row.copy_from_slice(&line);
    }
    // Down the columns a whole row at a time, as it lies in memory.
    let rows = plane.to_vec();
    let row = |y: usize| &rows[y * width..(y + 1) * width];
    let mut sums = vec![[0.0f32; N]; width];
    let mut held = 0.0f32;
    let add = |sums: &mut [[f32; N]], from: &[[f32; N]], sign: f32| {
        for (sum, from) in sums.iter_mut().zip(from) {
            (0..N).for_each(|c| sum[c] += sign * from[c]);
        }
    };
    for y in 0..radius.min(height) {
        add(&mut sums, row(y), 1.0);
        held += 1.0;
    }
    for y in 0..height {
        if y + radius < height {
            add(&mut sums, row(y + radius), 1.0);
            held += 1.0;
        }
        if y > radius {
            add(&mut sums, row(y - radius - 1), -1.0);
            held -= 1.0;
        }
        for (to, sum) in plane[y * width..(y + 1) * width].iter_mut().zip(&sums) {
            *to = sum.map(|n| n / held);
        }
    }
}

fn slide<const N: usize>(line: impl Iterator<Item = [f32; N]>, into: &mut Vec<[f32; N]>, radius: usize) {
    let from: Vec<[f32; N]> = line.collect();
    into.clear();
    let mut sum = [0.0f32; N];
    let mut held = 0.0f32;
    for entering in from.iter().take(radius) {
        (0..N).for_each(|c| sum[c] += entering[c]);
        held += 1.0;
    }
    for i in 0..from.len() {
        if let Some(entering) = from.get(i + radius) {
            (0..N).for_each(|c| sum[c] += entering[c]);
            held += 1.0;
        }
        if let Some(leaving) = i.checked_sub(radius + 1).map(|i| from[i]) {
            (0..N).for_each(|c| sum[c] -= leaving[c]);
            held -= 1.0;
        }
        into.push(sum.map(|n| n / held));
    }
}

/// One connected part of a mask.
#[derive(Debug, Clone, Copy)]
pub(super) struct Part {
    /// Its pixels.
    pub area: usize,
    /// First column, first row, and the last ones.
    pub bounds: [usize; 4],
}

impl Part {
    pub(super) fn extent(&self) -> (usize, usize) {
        (self.bounds[2] - self.bounds[0] + 1, self.bounds[3] - self.bounds[1] + 1)
    }
}

/// Numbers the connected parts of a mask from 1, and measures each.
pub(super) fn parts(mask: &GrayImage, connectivity: Connectivity) -> (Vec<u32>, Vec<Part>) {
    let labels = connected_components(mask, connectivity, Luma([0u8])).into_raw();
    let width = mask.width().max(1) as usize;
    let mut parts: Vec<Part> = Vec::new();
    for (i, &label) in labels.iter().enumerate().filter(|(_, label)| **label > 0) {
        let (x, y) = (i % width, i / width);
        if parts.len() < label as usize {
            parts.resize(label as usize, Part { area: 0, bounds: [usize::MAX, usize::MAX, 0, 0] });
        }
        let part = &mut parts[label as usize - 1];
        part.area += 1;
        let [left, top, right, bottom] = part.bounds;
        part.bounds = [left.min(x), top.min(y), right.max(x), bottom.max(y)];
    }
    (labels, parts)
}

/// The mask's other side.
pub(super) fn inverted(mask: &GrayImage) -> GrayImage {
    let mut other = mask.clone();
    other.iter_mut().for_each(|on| *on = ON - *on);
    other
}
