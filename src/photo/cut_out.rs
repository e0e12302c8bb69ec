//! A compartment looked at: every piece in it cut out, upright, measured, with a measure of how far to trust it.

use image::{GrayImage, Luma, RgbImage, RgbaImage, imageops};

use super::{
    find::{Found, find},
    fine::fine_mask,
    homography::Point,
    looks::{Looks, looks},
    matte::cut,
    plane::{ON, Part},
    shape::{Shape, outline},
    strokes::{MOST_STROKES, Stroke, stroked},
    tile::tile,
    tray::Compartment,
    trust::trust,
    upright::{hanging, turn_up, turned, without_ring},
};

/// A piece cut out of its compartment.
#[derive(Debug, Clone)]
pub struct CutOut {
    /// The piece upright on nothing, without a border.
    pub picture: RgbaImage,
    /// Pixels a millimetre.
    pub px_per_mm: f64,
    /// Its width as it hangs.
    pub width_mm: f64,
    /// Its height as it hangs, without a loose ring.
    pub height_mm: f64,
    /// Its outline as it hangs, in millimetres from above left.
    pub outline_mm: Vec<Point>,
    /// What it covers, without its holes.
    pub area_mm2: f64,
    /// How many holes go through it.
    pub holes: usize,
    /// The outside of a loose ring that was seen at it, and is not in the picture.
    pub ring_mm: Option<f64>,
    /// How far it was turned clockwise to hang from its eye; none where no eye was found and it is as it lay.
    pub turned_degrees: Option<f64>,
    /// Where it lies in the compartment: first column and row, and those behind the last ones.
    pub lies: [u32; 4],
    /// From 0, a guess, to 1, sure.
    pub confidence: f64,
    /// What it looks like.
    pub looks: Looks,
}

/// Below this a tile is the better picture.
pub const TRUSTED: f64 = 0.5;

/// What was seen in a compartment.
#[derive(Debug, Clone)]
pub struct Seen {
    /// Its pieces, the most trustworthy first.
    pub pieces: Vec<CutOut>,
    /// A tile of it.
    pub tile: RgbImage,
    /// Whether its floor is even enough to cut anything out.
    pub even: bool,
}

/// The picture that a compartment is best shown by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Best {
    /// Its cut-out, which is to be trusted.
    CutOut,
    /// A tile: something lies there, and where it ends is not sure.
    Tile,
    /// None: nothing lies there.
    Nothing,
}

impl Seen {
    /// The picture that the compartment is best shown by.
    pub fn best(&self) -> Best {
        match self.pieces.first() {
            Some(piece) if piece.confidence >= TRUSTED => Best::CutOut,
            None if self.even => Best::Nothing,
            _ => Best::Tile,
        }
    }
}

/// Pieces of one compartment that are cut out at most: an assortment’s few dozens.
pub const MOST_PIECES: usize = 36;

/// Pixels a millimetre at which pieces are looked for; their edges are cut as fine as the compartment is.
const LOOKED_AT: f64 = 5.0;

/// Looks at a compartment and cuts its pieces out.
pub fn look(compartment: &Compartment) -> Seen {
    let Some(found) = found_in(compartment) else {
        let (w, h) = compartment.pixels.dimensions();
        let whole = [0, 0, w as usize, h as usize];
        return Seen { pieces: Vec::new(), tile: tile(&compartment.pixels, whole), even: false };
    };
    let (found, times) = found;
    let mut by_size: Vec<(u32, Part)> = (1..).zip(found.pieces.iter().copied()).collect();
    by_size.sort_by_key(|(_, part)| std::cmp::Reverse(part.area));
    let largest = by_size.first().map_or(1, |(_, part)| part.area);
    let mut pieces: Vec<CutOut> = by_size
        .iter()
        .take(MOST_PIECES)
        .filter_map(|&(label, part)| {
            let (mask, left, top) = fine_mask(&found, label, part, times, compartment);
            // Beside a much larger piece a small one is more often a part that was torn off it.
            let beside = (3.0 * part.area as f64 / largest as f64).min(1.0);
            let confidence = beside * trust(&found, label, part, compartment.px_per_mm / times as f64);
            cut_out(compartment, &mask, (left, top), confidence)
        })
        .collect();
    pieces.sort_by(|a, b| b.confidence.total_cmp(&a.confidence));
    let even = found.is_even();
    Seen { tile: tile(&compartment.pixels, shown(&found, &by_size, times)), pieces, even }
}

/// What is found at the scale at which pieces are looked for, and how many times finer the compartment is.
fn found_in(compartment: &Compartment) -> Option<(Found, usize)> {
    let times = (compartment.px_per_mm / LOOKED_AT).round().max(1.0) as usize;
    let pixels = &compartment.pixels;
    if times == 1 {
        return find(pixels, compartment.px_per_mm).map(|found| (found, 1));
    }
    let (w, h) = (pixels.width() / times as u32, pixels.height() / times as u32);
    let exact = imageops::crop_imm(pixels, 0, 0, w * times as u32, h * times as u32);
    let small = imageops::thumbnail(&*exact, w, h);
    find(&small, compartment.px_per_mm / times as f64).map(|found| (found, times))
}

/// The part of a compartment that a tile shows: its pieces with some room, or the floor.
fn shown(found: &Found, pieces: &[(u32, Part)], times: usize) -> [usize; 4] {
    let [left, top, right, bottom] = found.floor;
    let (w, h) = (right - left, bottom - top);
    let mut shown = [right, bottom, left, top];
    for (_, part) in pieces {
        let [l, t, r, b] = part.bounds;
        shown = [shown[0].min(l), shown[1].min(t), shown[2].max(r + 1), shown[3].max(b + 1)];
    }
    if pieces.is_empty() {
        return found.floor.map(|n| n * times);
    }
    let room = w.min(h) / 12;
    let roomy = [shown[0].saturating_sub(room), shown[1].saturating_sub(room), shown[2] + room, shown[3] + room];
    [roomy[0].max(left), roomy[1].max(top), roomy[2].min(right), roomy[3].min(bottom)].map(|n| n * times)
}

/// Cuts a mask that begins at `first` out of the compartment, turns it upright and measures it.
fn cut_out(compartment: &Compartment, mask: &GrayImage, first: (u32, u32), confidence: f64) -> Option<CutOut> {
    let px = compartment.px_per_mm;
    let pixels = imageops::crop_imm(&compartment.pixels, first.0, first.1, mask.width(), mask.height()).to_image();
    let least_hole = 0.2 * px * px;
    let whole = Shape::of(mask, least_hole)?;
    let hangs = hanging(mask, &whole, px);
    let ring = hangs.and_then(|hangs| hangs.loose_outside.map(|outside| (hangs.at, outside)));
    let body_mask = ring.map(|(at, outside)| without_ring(mask, at, outside));
    let body = body_mask.as_ref().and_then(|mask| Shape::of(mask, least_hole));
    // A ring alone is a piece, not the ring of nothing.
    let (mask, shape, ring) = match (body_mask, body) {
        (Some(mask), Some(body)) if body.area > 0.3 * whole.area => (mask, body, ring),
        _ => (mask.clone(), whole, None),
    };
    let [left, top, right, bottom] = shape.bounds;
    let picture = cut(&pixels, &mask, px);
    let turn = hangs.map(|hangs| turn_up(shape.middle, hangs.at));
    let upright = turn.filter(|turn| turn.abs() >= 1.0).map_or_else(|| picture.clone(), |turn| turned(&picture, turn));
    let upright = trimmed(&upright)?;
    let shown = GrayImage::from_fn(upright.width(), upright.height(), |x, y| {
        Luma([if upright.get_pixel(x, y).0[3] > 127 { ON } else { 0 }])
    });
    let hung = Shape::of(&shown, least_hole)?;
    let corners = outline(&shown, 0.5);
    let solid = hung.area / hull_area(&corners).max(1.0);
    let (width_mm, height_mm) = (f64::from(upright.width()) / px, f64::from(upright.height()) / px);
    Some(CutOut {
        looks: looks(&upright, &hung, height_mm, solid, px),
        px_per_mm: px,
        width_mm,
        height_mm,
        outline_mm: corners.into_iter().map(|at| Point::new((at.x + 0.5) / px, (at.y + 0.5) / px)).collect(),
        area_mm2: hung.area / (px * px),
        holes: hung.holes.len(),
        ring_mm: ring.map(|(_, outside)| outside / px),
        turned_degrees: turn,
        lies: [first.0 + left, first.1 + top, first.0 + right, first.1 + bottom],
        confidence,
        picture: upright,
    })
}

/// The picture without the rows and columns in which nothing is more than half there.
fn trimmed(picture: &RgbaImage) -> Option<RgbaImage> {
    let shown = picture.enumerate_pixels().filter(|(.., pixel)| pixel.0[3] > 127);
    let edges = shown.fold(None, |edges: Option<[u32; 4]>, (x, y, _)| {
        let [l, t, r, b] = edges.unwrap_or([x, y, x, y]);
        Some([l.min(x), t.min(y), r.max(x), b.max(y)])
    });
    let [left, top, right, bottom] = edges?;
    Some(imageops::crop_imm(picture, left, top, right - left + 1, bottom - top + 1).to_image())
}

/// The area of the convex hull of an outline.
fn hull_area(corners: &[Point]) -> f64 {
    let points: Vec<imageproc::point::Point<i32>> =
        corners.iter().map(|at| imageproc::point::Point::new(at.x as i32, at.y as i32)).collect();
    if points.len() < 3 {
        return 0.0;
    }
    imageproc::geometry::contour_area(&imageproc::geometry::convex_hull(points))
}

/// The compartment's piece as its strokes say: what was found nearest to them, with what was kept and dropped by hand.
/// None where nothing is left.
pub fn mended(compartment: &Compartment, strokes: &[Stroke]) -> Option<CutOut> {
    let (w, h) = compartment.pixels.dimensions();
    let mut mask = GrayImage::new(w, h);
    if let Some((found, times)) = found_in(compartment)
        && let Some((label, part)) = (1..).zip(found.pieces.iter().copied()).max_by_key(|(_, part)| part.area)
    {
        let (fine, left, top) = fine_mask(&found, label, part, times, compartment);
        imageops::replace(&mut mask, &fine, i64::from(left), i64::from(top));
    }
    for stroke in strokes.iter().take(MOST_STROKES) {
        stroked(&mut mask, &compartment.pixels, compartment.px_per_mm, stroke);
    }
    // By hand is as sure as it gets.
    cut_out(compartment, &mask, (0, 0), 1.0)
}
