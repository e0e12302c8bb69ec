//! What a picture shows without what is transparent: the outline of a drop that is given by its picture.

use image::DynamicImage;

use crate::{
    caution::hull,
    craft::{Length, OutlineShape},
};

/// The outline of a picture, as shares of its width and height.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    /// Corners of the convex hull of all that shows, each from 0 to 1, x to the right and y downwards.
    pub hull: Vec<(f64, f64)>,
    /// Share of the picture that shows.
    pub cover: f64,
}

/// No corner that is left out stands out of the rest by more than this share of the picture: a hundredth of a millimetre
/// on a drop of 66 mm. Larger ones do not fit the test cylinder, whose longest straight line is 65.4 mm. Stretching the
/// picture to the drop's size stretches what stands out by the longer side at most. The hull only grows smaller by it,
/// which is the careful side, and the margin in the cylinder by no more. (The picture itself is as fine as its pixels.)
const FINE: f64 = 0.000_15;

impl Outline {
    /// What shows: every pixel that is more than half opaque, with its edges. A picture without transparency shows whole.
    pub(super) fn of(picture: DynamicImage) -> Self {
        if !picture.color().has_alpha() {
            return Self { hull: vec![(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)], cover: 1.0 };
        }
        let picture = picture.into_rgba8();
        let (width, height) = (f64::from(picture.width()), f64::from(picture.height()));
        let mut corners = Vec::new();
        let mut shown = 0usize;
        for (y, row) in picture.rows().enumerate() {
            let mut ends: Option<(usize, usize)> = None;
            for (x, _) in row.enumerate().filter(|(_, pixel)| pixel.0[3] > 127) {
                shown += 1;
                ends = Some((ends.map_or(x, |(first, _)| first), x + 1));
            }
            if let Some((first, last)) = ends {
                let at = |x: usize, y: usize| (x as f64 / width, y as f64 / height);
                corners.extend([at(first, y), at(last, y), at(first, y + 1), at(last, y + 1)]);
            }
        }
        Self { hull: thinned(&hull(&corners)), cover: shown as f64 / (width * height) }
    }

    /// At a drop's width and height.
    pub(super) fn at_size(&self, width: Length, height: Length) -> OutlineShape {
        let hull_mm = self.hull.iter().map(|(x, y)| (x * width.mm(), y * height.mm())).collect();
        OutlineShape { hull_mm, area_mm2: self.cover * width.mm() * height.mm(), cut_out: self.cover < 1.0 }
    }
}

/// A convex outline without the corners that hardly stand out: from each corner kept to the farthest one that leaves all
/// between within [`FINE`] of the straight line.
fn thinned(corners: &[(f64, f64)]) -> Vec<(f64, f64)> {
    if corners.len() <= 4 {
        return corners.to_vec();
    }
    let at = |i: usize| corners[i % corners.len()];
    let mut kept = Vec::new();
    let mut from = 0;
    while from < corners.len() {
        kept.push(at(from));
        // The corner it began with ends it, so that the last line is held to the same.
        let within = |to: &usize| (from + 1..*to).all(|i| off(at(i), at(from), at(*to)) <= FINE);
        from = (from + 1..=corners.len()).take_while(within).last().unwrap_or(from + 1);
    }
    kept
}

/// How far a point is from the straight line between two others.
fn off((x, y): (f64, f64), (ax, ay): (f64, f64), (bx, by): (f64, f64)) -> f64 {
    let (dx, dy) = (bx - ax, by - ay);
    let along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy).max(f64::MIN_POSITIVE);
    let t = along.clamp(0.0, 1.0);
    (x - ax - t * dx).hypot(y - ay - t * dy)
}

#[cfg(test)]
mod tests {
    use image::{Rgba, RgbaImage};

    use super::*;

    fn drawn(width: u32, height: u32, shows: impl Fn(f64, f64) -> bool) -> Outline {
        let pixel = |x, y| {
            let at = |n: u32, of: u32| (f64::from(n) + 0.5) / f64::from(of);
            Rgba([200, 160, 60, if shows(at(x, width), at(y, height)) { 255 } else { 60 }])
        };
        Outline::of(RgbaImage::from_fn(width, height, pixel).into())
    }

    /// A disc, a ring and a frame, held to their areas and widths by hand.
    #[test]
    fn outlines_have_the_sizes_that_were_drawn() {
        let from_middle = |x: f64, y: f64| (x - 0.5).hypot(y - 0.5);
        let disc = drawn(400, 400, |x, y| from_middle(x, y) < 0.4);
        let ring = drawn(400, 400, |x, y| (0.3..0.4).contains(&from_middle(x, y)));
        assert!((disc.cover - std::f64::consts::PI * 0.16).abs() < 1e-3);
        assert!((ring.cover - std::f64::consts::PI * 0.07).abs() < 1e-3);
        assert!(ring.hull.len() < 150 && ring.hull.len() >= 24, "{}", ring.hull.len());
        for &(x, y) in &ring.hull {
            assert!((from_middle(x, y) - 0.4).abs() < 0.003, "{x} {y}");
        }
        let frame = drawn(200, 100, |x, y| !(0.1..0.9).contains(&x) || !(0.1..0.9).contains(&y));
        assert_eq!(frame.hull, [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)]);
        let shape = frame.at_size(Length::from_mm(20.0), Length::from_mm(10.0));
        assert_eq!(shape.hull_mm[2], (20.0, 10.0));
        assert!((shape.area_mm2 - 200.0 * 0.36).abs() < 1e-9);
    }

    /// Long round outlines, where one left-out corner after the other adds up: the whole hull and the thinned one differ by
    /// at most a hundredth of a millimetre on a drop of 66 mm.
    #[test]
    fn thinning_takes_no_more_than_a_hundredth_of_a_millimetre() {
        let ellipse = |n: usize, long: f64, short: f64| -> Vec<(f64, f64)> {
            let turn = |i: usize| std::f64::consts::TAU * i as f64 / n as f64;
            (0..n).map(|i| (0.5 + long * turn(i).cos(), 0.5 + short * turn(i).sin())).collect()
        };
        println!("| corners | kept | taken away, mm on 66 mm |");
        for whole in [ellipse(60, 0.5, 0.5), ellipse(400, 0.5, 0.5), ellipse(5000, 0.5, 0.12), ellipse(3000, 0.4, 0.5)]
        {
            let kept = thinned(&whole);
            let nearest = |corner: &(f64, f64)| {
                let sides = (0..kept.len()).map(|i| off(*corner, kept[i], kept[(i + 1) % kept.len()]));
                sides.fold(f64::INFINITY, f64::min)
            };
            let taken_mm = 66.0 * whole.iter().map(nearest).fold(0.0, f64::max);
            println!("| {} | {} | {taken_mm:.4} |", whole.len(), kept.len());
            assert!(taken_mm <= 0.01, "{} corners: {taken_mm} mm", whole.len());
            assert!(kept.len() <= whole.len().min(150), "{}", kept.len());
        }
    }

    #[test]
    fn a_picture_without_transparency_is_whole_and_an_empty_one_nothing() {
        let whole = Outline::of(image::RgbImage::new(3, 5).into());
        assert_eq!((whole.hull.len(), whole.cover), (4, 1.0));
        let empty = drawn(10, 10, |_, _| false);
        assert_eq!((empty.hull.len(), empty.cover), (0, 0.0));
    }
}
