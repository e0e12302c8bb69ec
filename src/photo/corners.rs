//! Finding the tray in a photo: what differs from the table around it and has four corners.
//!
//! The table's colour is found as a compartment's floor is, from what lies along the photo's sides. What is left in the
//! middle is brought to four straight sides; each is then moved to where the photo changes most, and inwards over the
//! tray's rim to where the inside begins.

use image::{GrayImage, Luma, RgbImage};
use imageproc::{
    contrast::otsu_level,
    distance_transform::Norm,
    geometry::{approximate_polygon_dp, contour_area, convex_hull},
    morphology::{close, open},
    point::Point as Corner,
    region_labelling::Connectivity,
};

use super::{
    colour::Lab,
    ground::{Ground, median},
    homography::Point,
    plane::{ON, parts, smoothed},
    read::Photo,
};

/// The longer side of the photo in which a tray is looked for.
const LOOKED_AT: u32 = 480;

/// A tray covers more of the photo than this.
const LEAST_SHARE: f64 = 0.15;

/// The tray's inner corners in pixels of the photo, above left first; none where it can't be told from what it lies on.
pub fn find_corners(photo: &Photo) -> Option<[Point; 4]> {
    let finer = photo.at_most(3 * LOOKED_AT);
    let small = Photo::of(finer.clone()).at_most(LOOKED_AT);
    let lab = smoothed(&small, 1);
    let quad = outer(&small, &lab)?;
    let (w, h) = (small.width() as usize, small.height() as usize);
    let quad = inner(&lab, w, h, refined(&lab, w, h, quad)?)?;
    // Once more where a pixel is a third as large.
    let lab = smoothed(&finer, 1);
    let quad = quad.map(|p| scaled(p, f64::from(finer.width()) / f64::from(small.width())));
    let quad = sharpened(&lab, finer.width() as usize, finer.height() as usize, quad)?;
    Some(quad.map(|p| scaled(p, f64::from(photo.width()) / f64::from(finer.width()))))
}

/// A point of one picture in a picture `times` as large.
fn scaled(p: Point, times: f64) -> Point {
    Point::new((p.x + 0.5) * times - 0.5, (p.y + 0.5) * times - 0.5)
}

/// Corners to begin with where none are found: an eighth inside the photo.
pub fn usual_corners(photo: &Photo) -> [Point; 4] {
    let (w, h) = (f64::from(photo.width()), f64::from(photo.height()));
    [(0.125, 0.125), (0.875, 0.125), (0.875, 0.875), (0.125, 0.875)].map(|(x, y)| Point::new(x * w, y * h))
}

/// Four corners around what is not table.
fn outer(small: &RgbImage, lab: &[Lab]) -> Option<[Point; 4]> {
    let (w, h) = (small.width() as usize, small.height() as usize);
    let at_side = |x: usize, y: usize| x.min(w - 1 - x).min(y).min(h - 1 - y) * 100 < 4 * w.min(h);
    let table = Ground::find(lab, w, h, at_side)?;
    let level = |x: u32, y: u32| {
        let off = table.off_in_shade(x as usize, y as usize, lab[y as usize * w + x as usize]);
        (255.0 * off.ln_1p() / 4.2).min(255.0) as u8
    };
    let levels = GrayImage::from_fn(small.width(), small.height(), |x, y| Luma([level(x, y)]));
    let threshold = otsu_level(&levels).clamp(85, 140);
    let mut mask = levels;
    mask.iter_mut().for_each(|level| *level = if *level > threshold { ON } else { 0 });
    // What is open between the parts of a tray's rim is closed, what sticks out at it is taken off.
    let mask = open(&close(&mask, Norm::LInf, 4), Norm::LInf, 4);
    let (labels, found) = parts(&mask, Connectivity::Eight);
    let (largest, part) = (1u32..).zip(&found).max_by_key(|(_, part)| part.extent().0 * part.extent().1)?;
    let on = labels.iter().enumerate().filter(|(_, label)| **label == largest);
    let hull = convex_hull(on.map(|(i, _)| Corner::new((i % w) as i32, (i / w) as i32)).collect::<Vec<_>>());
    if hull.len() < 4 {
        return None;
    }
    let area = contour_area(&hull);
    let whole = (w * h) as f64;
    let touches = part.bounds[0] == 0 || part.bounds[1] == 0 || part.bounds[2] + 1 == w || part.bounds[3] + 1 == h;
    if area < LEAST_SHARE * whole || touches {
        return None;
    }
    let corners = four(&hull)?;
    // Four sides that leave much of the hull out, or take much in, are no tray's.
    (contour_area(&corners) / area > 0.9).then(|| in_turn(corners.map(|c| Point::new(f64::from(c.x), f64::from(c.y)))))
}

/// The four corners of the hull with the most between them.
fn four(hull: &[Corner<i32>]) -> Option<[Corner<i32>; 4]> {
    let coarse = (1..20).map(|coarse| approximate_polygon_dp(hull, f64::from(coarse), true));
    let few = coarse.into_iter().find(|corners| corners.len() <= 24)?;
    let mut most = (0.0, None);
    let n = few.len();
    for a in 0..n {
        for b in a + 1..n {
            for c in b + 1..n {
                for d in c + 1..n {
                    let corners = [few[a], few[b], few[c], few[d]];
                    let area = contour_area(&corners);
                    if area > most.0 {
                        most = (area, Some(corners));
                    }
                }
            }
        }
    }
    most.1
}

/// Corners from above left, clockwise.
fn in_turn(mut corners: [Point; 4]) -> [Point; 4] {
    let middle =
        Point::new(corners.iter().map(|p| p.x).sum::<f64>() / 4.0, corners.iter().map(|p| p.y).sum::<f64>() / 4.0);
    corners.sort_by(|a, b| {
        let angle = |p: &Point| (p.y - middle.y).atan2(p.x - middle.x);
        angle(a).total_cmp(&angle(b))
    });
    let first = (0..4).min_by(|&a, &b| (corners[a].x + corners[a].y).total_cmp(&(corners[b].x + corners[b].y)));
    corners.rotate_left(first.unwrap_or(0));
    corners
}

/// A point this near to a line lies on it, in pixels.
const NEAR_PX: f64 = 1.2;

/// A straight line: points `p` with `p · normal = off`.
#[derive(Clone, Copy)]
struct Line {
    normal: Point,
    off: f64,
}

impl Line {
    /// The line on which most of the points lie, fitted to these; none where they do not lie on one.
    fn through(points: &[Point]) -> Option<Self> {
        let apart = points.len() / 4;
        let mut most: (usize, Option<Self>) = (0, None);
        for (i, a) in points.iter().enumerate() {
            for b in points.iter().skip(i + apart.max(1)) {
                let long = a.to(*b);
                if long < 1.0 {
                    continue;
                }
                let normal = Point::new(-(b.y - a.y) / long, (b.x - a.x) / long);
                let line = Self { normal, off: a.x * normal.x + a.y * normal.y };
                let near = points.iter().filter(|p| line.from(**p).abs() <= NEAR_PX).count();
                if near > most.0 {
                    most = (near, Some(line));
                }
            }
        }
        let (near, line) = most;
        let line = line.filter(|_| near >= 6 && near * 3 >= points.len())?;
        let near: Vec<Point> = points.iter().filter(|p| line.from(**p).abs() <= NEAR_PX).copied().collect();
        Some(Self::fitted(&near))
    }

    /// The line with the least squares of distances.
    fn fitted(points: &[Point]) -> Self {
        let n = points.len() as f64;
        let (mx, my) = (points.iter().map(|p| p.x).sum::<f64>() / n, points.iter().map(|p| p.y).sum::<f64>() / n);
        let (mut xx, mut yy, mut xy) = (0.0, 0.0, 0.0);
        for p in points {
            xx += (p.x - mx).powi(2);
            yy += (p.y - my).powi(2);
            xy += (p.x - mx) * (p.y - my);
        }
        let lies = 0.5 * (2.0 * xy).atan2(xx - yy);
        let normal = Point::new(-lies.sin(), lies.cos());
        Self { normal, off: mx * normal.x + my * normal.y }
    }

    fn from(&self, p: Point) -> f64 {
        p.x * self.normal.x + p.y * self.normal.y - self.off
    }

    fn meets(&self, other: &Self) -> Option<Point> {
        let cross = self.normal.x * other.normal.y - self.normal.y * other.normal.x;
        (cross.abs() > 0.2).then(|| {
            Point::new(
                (self.off * other.normal.y - other.off * self.normal.y) / cross,
                (other.off * self.normal.x - self.off * other.normal.x) / cross,
            )
        })
    }
}

/// How much colours differ.
fn differ(a: Lab, b: Lab) -> f32 {
    (0..3).map(|c| (a[c] - b[c]).powi(2)).sum::<f32>().sqrt()
}

fn colour_at(lab: &[Lab], w: usize, h: usize, p: Point) -> Option<Lab> {
    let (x, y) = (p.x.round(), p.y.round());
    let inside = x >= 0.0 && y >= 0.0 && x < w as f64 && y < h as f64;
    inside.then(|| lab[y as usize * w + x as usize])
}

/// The point a share of the way along side `i`, moved inwards by some pixels.
fn on_side(quad: &[Point; 4], i: usize, share: f64, inwards: f64) -> Point {
    let (a, b) = (quad[i], quad[(i + 1) % 4]);
    let long = a.to(b).max(1e-9);
    // Corners go clockwise, so that the inside lies to the right of each side.
    let (nx, ny) = (-(b.y - a.y) / long, (b.x - a.x) / long);
    Point::new(a.x + (b.x - a.x) * share + nx * inwards, a.y + (b.y - a.y) * share + ny * inwards)
}

/// Places along a side at which it is looked at.
const LOOKS: usize = 60;

fn shares() -> impl Iterator<Item = f64> {
    (0..LOOKS).map(|i| 0.04 + 0.92 * i as f64 / (LOOKS - 1) as f64)
}

/// Each side moved to where the photo changes most, to a fraction of a pixel.
fn refined(lab: &[Lab], w: usize, h: usize, quad: [Point; 4]) -> Option<[Point; 4]> {
    let reach = (0.015 * w.max(h) as f64).max(4.0) as i32;
    let mut lines = Vec::new();
    for i in 0..4 {
        let mut points = Vec::new();
        for share in shares() {
            let change = |t: f64| {
                let at = |t: f64| colour_at(lab, w, h, on_side(&quad, i, share, t));
                at(t - 1.0).zip(at(t + 1.0)).map_or(0.0, |(a, b)| differ(a, b))
            };
            let steps: Vec<f32> = (-reach * 2..=reach * 2).map(|t| change(f64::from(t) * 0.5)).collect();
            let most = (0..steps.len()).max_by(|&a, &b| steps[a].total_cmp(&steps[b]))?;
            if steps[most] > 0.02 {
                points.push(on_side(&quad, i, share, f64::from(most as i32 - reach * 2) * 0.5));
            }
        }
        lines.push(Line::through(&points)?);
    }
    cornered(&lines)
}

fn cornered(lines: &[Line]) -> Option<[Point; 4]> {
    let corner = |i: usize| lines[(i + 3) % 4].meets(&lines[i]);
    Some([corner(0)?, corner(1)?, corner(2)?, corner(3)?])
}

/// A rim is no broader than this share of the tray's smaller side.
const BROADEST_RIM: f64 = 0.09;

/// A change as great as this, seen all along a side, is where a rim ends.
const RIM_ENDS: f32 = 0.035;

/// Moves each side inwards over the rim: to the last place near it where all along the side one colour becomes another.
fn inner(lab: &[Lab], w: usize, h: usize, quad: [Point; 4]) -> Option<[Point; 4]> {
    let smaller = (0..4).map(|i| quad[i].to(quad[(i + 1) % 4])).fold(f64::INFINITY, f64::min);
    let reach = (BROADEST_RIM * smaller * 2.0) as usize;
    let mut lines = Vec::new();
    for i in 0..4 {
        let mean = |t: f64| -> Lab {
            let seen: Vec<Lab> =
                shares().filter_map(|share| colour_at(lab, w, h, on_side(&quad, i, share, t))).collect();
            std::array::from_fn(|c| median(&mut seen.iter().map(|lab| lab[c]).collect::<Vec<_>>()))
        };
        let steps: Vec<f32> =
            (0..reach).map(|t| 0.5 * t as f64).map(|t| differ(mean(t - 1.0), mean(t + 1.0))).collect();
        let peak = |t: usize| {
            let around = t.saturating_sub(3)..(t + 4).min(steps.len());
            steps[t] >= RIM_ENDS && around.into_iter().all(|other| steps[other] <= steps[t])
        };
        // The first two pixels are the outer edge itself. A shadow along the rim ends less sharply than the rim does.
        let greatest = steps.iter().skip(5).copied().fold(0.0, f32::max);
        let inwards = (5..reach).rev().find(|&t| peak(t) && steps[t] > 0.6 * greatest).map_or(0.0, |t| 0.5 * t as f64);
        let a = on_side(&quad, i, 0.0, inwards);
        let b = on_side(&quad, i, 1.0, inwards);
        let moved: Vec<Point> = (0..8)
            .map(|k| f64::from(k) / 7.0)
            .map(|t| Point::new(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t))
            .collect();
        lines.push(Line::through(&moved)?);
    }
    cornered(&lines)
}

/// Each side once more to where the photo changes most next to it.
fn sharpened(lab: &[Lab], w: usize, h: usize, quad: [Point; 4]) -> Option<[Point; 4]> {
    let mut lines = Vec::new();
    for i in 0..4 {
        let mut points = Vec::new();
        for share in shares() {
            let at = |t: f64| colour_at(lab, w, h, on_side(&quad, i, share, t));
            let change = |t: f64| at(t - 1.0).zip(at(t + 1.0)).map_or(0.0, |(a, b)| differ(a, b));
            let most = (-8..=8).map(|t| 0.5 * f64::from(t)).max_by(|a, b| change(*a).total_cmp(&change(*b)))?;
            if change(most) > 0.02 {
                points.push(on_side(&quad, i, share, most));
            }
        }
        match Line::through(&points) {
            Some(line) => lines.push(line),
            None => return Some(quad),
        }
    }
    cornered(&lines)
}
