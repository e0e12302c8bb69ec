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

/// Corners of a hull that stand out by less than this share of the picture are left out: a fiftieth of a millimetre on a
/// large drop. The hull only grows smaller by it, which is the careful side.
const FINE: f64 = 0.0003;

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
        OutlineShape { hull_mm, area_mm2: self.cover * width.mm() * height.mm() }
    }
}

/// A convex outline without the corners that hardly stand out.
fn thinned(corners: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut kept: Vec<(f64, f64)> = Vec::new();
    for (i, &(x, y)) in corners.iter().enumerate() {
        let (ax, ay) = kept.last().copied().unwrap_or(corners[corners.len() - 1]);
        let (bx, by) = corners[(i + 1) % corners.len()];
        let (dx, dy) = (bx - ax, by - ay);
        let out = (dx * (y - ay) - dy * (x - ax)).abs() / dx.hypot(dy).max(f64::MIN_POSITIVE);
        if out > FINE || corners.len() <= 4 {
            kept.push((x, y));
        }
    }
    kept
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

    #[test]
    fn a_picture_without_transparency_is_whole_and_an_empty_one_nothing() {
        let whole = Outline::of(image::RgbImage::new(3, 5).into());
        assert_eq!((whole.hull.len(), whole.cover), (4, 1.0));
        let empty = drawn(10, 10, |_, _| false);
        assert_eq!((empty.hull.len(), empty.cover), (0, 0.0));
    }
}
