//! Which way up a piece hangs: its ring above its centre of gravity, as it hangs by itself.

use image::{GrayImage, Rgba, RgbaImage};

use super::{
    homography::Point,
    plane::ON,
    shape::{Hole, Shape},
};

/// Where a piece hangs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Hanging {
    /// The middle of the eye or ring, in pixels.
    pub at: Point,
    /// The outside of a loose ring around it in pixels, where it is one and not the piece's own eye.
    pub loose_outside: Option<f64>,
}

/// A hole smaller or larger than this is no eye, in square millimetres.
const EYE_MM2: (f64, f64) = (0.3, 130.0);

/// An eye has no more than this around it on its free side, in millimetres.
const WALL_MM: f64 = 2.6;

/// Finds the eye or ring at the end of a piece.
pub(super) fn hanging(mask: &GrayImage, shape: &Shape, px: f64) -> Option<Hanging> {
    let reach = farthest(mask, shape.middle);
    let mut best: Option<(f64, Hole)> = None;
    for hole in &shape.holes {
        let area = hole.area / (px * px);
        if !(EYE_MM2.0..=EYE_MM2.1).contains(&area) {
            continue;
        }
        let away = hole.middle.to(shape.middle);
        let beyond = wall_behind(mask, shape.middle, hole.middle);
        let inner = (hole.area / std::f64::consts::PI).sqrt();
        // An eye is at the end of the piece, with nothing but its own wall behind it.
        if away < 0.45 * reach || beyond.wall > WALL_MM * px || beyond.free < 0.5 * inner {
            continue;
        }
        let score = away / reach - 0.02 * (area.sqrt() - 2.0).abs();
        if best.is_none_or(|(most, _)| score > most) {
            best = Some((score, *hole));
        }
    }
    let (_, hole) = best?;
    Some(Hanging { at: hole.middle, loose_outside: loose_ring(mask, &hole, px) })
}

fn farthest(mask: &GrayImage, from: Point) -> f64 {
    let on = mask.enumerate_pixels().filter(|(.., pixel)| pixel.0[0] == ON);
    on.map(|(x, y, _)| from.to(Point::new(f64::from(x), f64::from(y)))).fold(0.0, f64::max)
}

struct Behind {
    /// How thick it is behind the hole.
    wall: f64,
    /// How far the hole itself goes on.
    free: f64,
}

/// What lies behind a hole as seen from the middle of the piece.
fn wall_behind(mask: &GrayImage, middle: Point, hole: Point) -> Behind {
    let away = middle.to(hole).max(1e-9);
    let (dx, dy) = ((hole.x - middle.x) / away, (hole.y - middle.y) / away);
    let on = |t: f64| is_on(mask, hole.x + dx * t, hole.y + dy * t);
    let most = 4 * mask.width().max(mask.height());
    let steps = || (0..most).map(|i| f64::from(i) * 0.5);
    let free = steps().find(|&t| on(t) != Some(false)).unwrap_or(0.0);
    let last = steps().take_while(|&t| on(t).is_some()).filter(|&t| on(t) == Some(true)).last().unwrap_or(free);
    Behind { wall: last - free, free }
}

fn is_on(mask: &GrayImage, x: f64, y: f64) -> Option<bool> {
    let (x, y) = (x.round(), y.round());
    let inside = x >= 0.0 && y >= 0.0 && x < f64::from(mask.width()) && y < f64::from(mask.height());
    inside.then(|| mask.get_pixel(x as u32, y as u32).0[0] == ON)
}

/// Outsides of loose rings in millimetres. Common practice, no source: jump rings for drops have 6 to 12 mm.
const LOOSE_MM: (f64, f64) = (5.5, 13.0);

/// Wires of loose rings in millimetres, by the blur of a photo wider than they are.
const WIRE_MM: (f64, f64) = (0.4, 1.9);

/// The outside of a ring that hangs at the piece by one place: round within, a thin wire all around, and nothing of the
/// piece beyond it but where it is held.
fn loose_ring(mask: &GrayImage, hole: &Hole, px: f64) -> Option<f64> {
    const RAYS: usize = 72;
    let mut inner = Vec::new();
    let mut outer = Vec::new();
    for ray in 0..RAYS {
        let (sin, cos) = (std::f64::consts::TAU * ray as f64 / RAYS as f64).sin_cos();
        let on = |t: f64| is_on(mask, hole.middle.x + cos * t, hole.middle.y + sin * t).unwrap_or(false);
        let steps = || (0..(LOOSE_MM.1 * px) as usize * 2).map(|i| i as f64 * 0.5);
        let begins = steps().find(|&t| on(t))?;
        inner.push(begins);
        if let Some(ends) = steps().find(|&t| t > begins && !on(t)) {
            let wire = (ends - begins) / px;
            if (WIRE_MM.0..=WIRE_MM.1).contains(&wire) {
                outer.push(ends);
            }
        }
    }
    // A quarter of the rays may end where the piece is held.
    if outer.len() * 10 < RAYS * 7 {
        return None;
    }
    outer.sort_by(f64::total_cmp);
    inner.sort_by(f64::total_cmp);
    let radius = outer[outer.len() / 2];
    let round = outer[outer.len() / 10] > 0.86 * radius && outer[outer.len() * 9 / 10] < 1.14 * radius;
    let outside = 2.0 * radius;
    (round && (LOOSE_MM.0..=LOOSE_MM.1).contains(&(outside / px))).then_some(outside)
}

/// The mask without a loose ring: what is left when a disc a little larger than the ring is taken out.
pub(super) fn without_ring(mask: &GrayImage, at: Point, outside: f64) -> GrayImage {
    let radius = outside / 2.0 + 1.0;
    let mut rest = mask.clone();
    for (x, y, pixel) in rest.enumerate_pixels_mut() {
        if at.to(Point::new(f64::from(x), f64::from(y))) <= radius {
            pixel.0[0] = 0;
        }
    }
    rest
}

/// How far to turn a piece clockwise, in degrees, so that its ring comes above its middle.
pub(super) fn turn_up(middle: Point, ring: Point) -> f64 {
    (middle.x - ring.x).atan2(middle.y - ring.y).to_degrees()
}

/// A picture turned clockwise about its middle, with room for all of it.
pub(super) fn turned(picture: &RgbaImage, degrees: f64) -> RgbaImage {
    let (sin, cos) = degrees.to_radians().sin_cos();
    let (w, h) = (f64::from(picture.width()), f64::from(picture.height()));
    let wide = (w * cos.abs() + h * sin.abs() - 1e-6).ceil().max(1.0);
    let high = (w * sin.abs() + h * cos.abs() - 1e-6).ceil().max(1.0);
    RgbaImage::from_fn(wide as u32, high as u32, |x, y| {
        let (dx, dy) = (f64::from(x) + 0.5 - wide / 2.0, f64::from(y) + 0.5 - high / 2.0);
        between(picture, dx * cos + dy * sin + w / 2.0 - 0.5, -dx * sin + dy * cos + h / 2.0 - 0.5)
    })
}

/// A pixel between four, each counting by how much of it shows.
fn between(picture: &RgbaImage, x: f64, y: f64) -> Rgba<u8> {
    let (x0, y0) = (x.floor(), y.floor());
    let (fx, fy) = (x - x0, y - y0);
    let mut sum = [0.0; 4];
    for (dx, dy, share) in [
        (0.0, 0.0, (1.0 - fx) * (1.0 - fy)),
        (1.0, 0.0, fx * (1.0 - fy)),
        (0.0, 1.0, (1.0 - fx) * fy),
        (1.0, 1.0, fx * fy),
    ] {
        let (x, y) = (x0 + dx, y0 + dy);
        if x < 0.0 || y < 0.0 || x >= f64::from(picture.width()) || y >= f64::from(picture.height()) {
            continue;
        }
        let [r, g, b, a] = picture.get_pixel(x as u32, y as u32).0.map(f64::from);
        [r, g, b].into_iter().zip(&mut sum).for_each(|(n, sum)| *sum += n * a * share);
        sum[3] += a * share;
    }
    if sum[3] < 0.5 {
        return Rgba([0; 4]);
    }
    let colour = |c: usize| (sum[c] / sum[3]).round() as u8;
    Rgba([colour(0), colour(1), colour(2), sum[3].round().min(255.0) as u8])
}
