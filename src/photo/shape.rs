//! What a mask measures: area, middle, axes, holes, and its outline.

use image::GrayImage;
use imageproc::{
    contours::{BorderType, find_contours},
    geometry::approximate_polygon_dp,
    region_labelling::Connectivity,
};

use super::{
    homography::Point,
    plane::{ON, inverted, parts},
};

/// The measures of a mask, in its pixels.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// How many pixels it has.
    pub area: f64,
    /// Their middle.
    pub middle: Point,
    /// The lengths of the axes of the ellipse with the same second moments of the pixels' middles, longest first.
    pub axes: (f64, f64),
    /// The direction of the longer one, in degrees from the right towards below.
    pub lies_degrees: f64,
    /// First column and row, and those behind the last ones.
    pub bounds: [u32; 4],
    /// Its holes, without those of a few pixels that only noise makes.
    pub holes: Vec<Hole>,
}

/// A hole in a shape.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hole {
    /// How many pixels it has.
    pub area: f64,
    /// Their middle.
    pub middle: Point,
}

impl Shape {
    /// Measures a mask in which what belongs to the shape is not 0; none where nothing is. Holes of fewer than
    /// `least_hole` pixels are none.
    pub fn of(mask: &GrayImage, least_hole: f64) -> Option<Self> {
        let on = mask.enumerate_pixels().filter(|(.., pixel)| pixel.0[0] != 0);
        let mut n = 0.0;
        let (mut x1, mut y1, mut xx, mut yy, mut xy) = (0.0, 0.0, 0.0, 0.0, 0.0);
        let mut bounds = [u32::MAX, u32::MAX, 0, 0];
        for (x, y, _) in on {
            bounds = [bounds[0].min(x), bounds[1].min(y), bounds[2].max(x + 1), bounds[3].max(y + 1)];
            let (x, y) = (f64::from(x), f64::from(y));
            n += 1.0;
            x1 += x;
            y1 += y;
            xx += x * x;
            yy += y * y;
            xy += x * y;
        }
        if n == 0.0 {
            return None;
        }
        let middle = Point::new(x1 / n, y1 / n);
        let (xx, yy, xy) = (xx / n - middle.x * middle.x, yy / n - middle.y * middle.y, xy / n - middle.x * middle.y);
        let root = ((xx - yy).powi(2) + 4.0 * xy * xy).sqrt();
        let axis = |sign: f64| (8.0 * (xx + yy + sign * root)).max(0.0).sqrt();
        let lies_degrees = 0.5 * (2.0 * xy).atan2(xx - yy).to_degrees();
        let holes = holes(mask, least_hole);
        Some(Self { area: n, middle, axes: (axis(1.0), axis(-1.0)), lies_degrees, bounds, holes })
    }
}

/// What is enclosed and does not belong to it.
fn holes(mask: &GrayImage, least: f64) -> Vec<Hole> {
    let mut binary = mask.clone();
    binary.iter_mut().for_each(|pixel| *pixel = if *pixel == 0 { 0 } else { ON });
    let (labels, found) = parts(&inverted(&binary), Connectivity::Four);
    let (w, h) = (mask.width() as usize - 1, mask.height() as usize - 1);
    let inside: Vec<bool> = found
        .iter()
        .map(|part| part.bounds[0] > 0 && part.bounds[1] > 0 && part.bounds[2] < w && part.bounds[3] < h)
        .collect();
    let mut sums = vec![(0.0, 0.0, 0.0); found.len()];
    for (i, &label) in labels.iter().enumerate().filter(|(_, label)| **label > 0) {
        let sum = &mut sums[label as usize - 1];
        *sum = (sum.0 + 1.0, sum.1 + (i % (w + 1)) as f64, sum.2 + (i / (w + 1)) as f64);
    }
    let holes = sums.into_iter().zip(inside).filter(|((n, ..), inside)| *inside && *n >= least);
    holes.map(|((n, x, y), _)| Hole { area: n, middle: Point::new(x / n, y / n) }).collect()
}

/// The longest outer outline of a mask in pixels, without corners that stand out by less than `fine` pixels.
pub(super) fn outline(mask: &GrayImage, fine: f64) -> Vec<Point> {
    let outer = find_contours::<i32>(mask).into_iter().filter(|contour| contour.border_type == BorderType::Outer);
    let Some(longest) = outer.max_by_key(|contour| contour.points.len()) else { return Vec::new() };
    let corners = if longest.points.len() > 4 && fine > 0.0 {
        approximate_polygon_dp(&longest.points, fine, true)
    } else {
        longest.points
    };
    corners.into_iter().map(|point| Point::new(f64::from(point.x), f64::from(point.y))).collect()
}
