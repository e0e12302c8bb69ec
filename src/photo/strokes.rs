//! Mending by finger: what is stroked to be kept or dropped, and what looks alike around it.

use image::{GrayImage, RgbImage};
use serde::{Deserialize, Serialize};
use std::collections::VecDeque;

use super::{
    colour::{Lab, seen},
    homography::Point,
    plane::ON,
};

/// One stroke of a finger.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Stroke {
    /// Whether what is stroked belongs to the piece.
    pub keep: bool,
    /// Where it went, in pixels of the compartment.
    pub points: Vec<Point>,
    /// Half its breadth, in millimetres.
    pub radius_mm: f64,
}

/// How far beyond a stroke what looks alike goes with it, in millimetres.
const SPREADS_MM: f64 = 3.0;

/// Colours this near look alike, in Oklab.
const ALIKE: f32 = 0.045;

/// Strokes of a finger at most, and points of one: more than any hand makes.
pub const MOST_STROKES: usize = 60;
/// Points of a stroke at most.
pub const MOST_POINTS: usize = 400;

/// The mask after one stroke.
pub(super) fn stroked(mask: &mut GrayImage, pixels: &RgbImage, px: f64, stroke: &Stroke) {
    let (width, height) = (mask.width() as usize, mask.height() as usize);
    let radius = (stroke.radius_mm.clamp(0.1, 10.0) * px).max(1.0);
    let mut reached = vec![false; width * height];
    let mut queue = VecDeque::new();
    let points: Vec<Point> = stroke.points.iter().take(MOST_POINTS).copied().collect();
    for (i, from) in points.iter().enumerate() {
        let to = points.get(i + 1).unwrap_or(from);
        let steps = (from.to(*to).min(4000.0) / radius).ceil().max(1.0) as usize;
        for step in 0..steps {
            let t = step as f64 / steps as f64;
            let at = Point::new(from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t);
            disc(at, radius, width, height, |i| {
                if !reached[i] {
                    reached[i] = true;
                    queue.push_back((i, i));
                }
            });
        }
    }
    let lab = |i: usize| seen(pixels.get_pixel((i % width) as u32, (i / width) as u32).0);
    let within = radius + SPREADS_MM * px;
    // From each stroked pixel to its neighbours, as long as they look like the one where it began and lie near it.
    while let Some((i, began)) = queue.pop_front() {
        let (x, y) = (i % width, i / width);
        let neighbours = [
            (x > 0).then(|| i - 1),
            (x + 1 < width).then_some(i + 1),
            (y > 0).then(|| i - width),
            (y + 1 < height).then_some(i + width),
        ];
        for next in neighbours.into_iter().flatten() {
            if reached[next] {
                continue;
            }
            let far =
                ((next % width) as f64 - (began % width) as f64).hypot((next / width) as f64 - (began / width) as f64);
            // What the mask already says is not gone over again: a stroke changes what it finds wrong.
            let wrong = (mask.as_raw()[next] == ON) != stroke.keep;
            reached[next] = wrong && far <= within && alike(lab(next), lab(began));
            if reached[next] {
                queue.push_back((next, began));
            }
        }
    }
    for (on, _) in mask.iter_mut().zip(&reached).filter(|(_, reached)| **reached) {
        *on = if stroke.keep { ON } else { 0 };
    }
}

fn alike(one: Lab, other: Lab) -> bool {
    (0..3).map(|c| (one[c] - other[c]).powi(2)).sum::<f32>() <= ALIKE * ALIKE
}

fn disc(at: Point, radius: f64, width: usize, height: usize, mut each: impl FnMut(usize)) {
    let span = |middle: f64, of: usize| {
        let first = (middle - radius).ceil().max(0.0) as usize;
        let behind = ((middle + radius).floor() + 1.0).clamp(0.0, of as f64) as usize;
        first.min(of)..behind
    };
    for y in span(at.y, height) {
        for x in span(at.x, width) {
            if at.to(Point::new(x as f64, y as f64)) <= radius {
                each(y * width + x);
            }
        }
    }
}
