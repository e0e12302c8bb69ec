//! A tray in a photo: its four corners, its grid, and every compartment straightened with its true millimetres.

use image::RgbImage;

use super::{
    homography::{Homography, Point},
    read::Photo,
};

/// The tray as the seller has set it: where it lies in the photo and how it is divided.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tray {
    /// The inner corners in pixels of the photo: above left, above right, below right, below left.
    pub corners: [Point; 4],
    /// Compartments from front to back.
    pub rows: u32,
    /// Compartments side by side.
    pub columns: u32,
    /// Between its left and its right wall, in millimetres.
    pub inner_width_mm: f64,
    /// Between its back and its front wall, in millimetres; worked out from the photo where it is not known.
    pub inner_depth_mm: Option<f64>,
}

/// What makes corners and a grid no tray.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum TrayRefused {
    /// The corners do not go round a tray.
    #[error("the four corners make no tray: set them in turn around it, above left first")]
    Corners,
    /// No grid that a tray has.
    #[error("expected 1 to 30 rows and columns, and at most 300 compartments")]
    Grid,
    /// No size that a tray has.
    #[error("expected an inner width of 40 mm to 2000 mm")]
    Width,
}

/// Pixels a millimetre of a straightened compartment at most: as fine as pictures of drops are kept.
const FINEST: f64 = 10.0;

/// A longer side of a straightened compartment is not worked with, in pixels.
const LONGEST: f64 = 1000.0;

/// How far away a phone's main camera sees, in shares of the photo's longer side: 27 mm on a frame of 36 mm. Common
/// practice, no source. It decides how deep a tray is that was seen aslant, and hardly matters below 20 degrees.
const FOCAL: f64 = 0.75;

/// A compartment from above, with its scale.
#[derive(Debug, Clone)]
pub struct Compartment {
    /// What is seen of it, walls and all.
    pub pixels: RgbImage,
    /// Pixels a millimetre.
    pub px_per_mm: f64,
}

/// A tray whose corners and grid make sense in its photo.
pub struct Straightened<'p> {
    photo: &'p Photo,
    /// From millimetres of the tray to pixels of the photo.
    to_photo: Homography,
    tray: Tray,
    depth_mm: f64,
    px_per_mm: f64,
}

impl<'p> Straightened<'p> {
    /// Sets the tray on the photo.
    ///
    /// # Errors
    /// The corners make no tray, or the numbers are none that a tray has.
    pub fn new(photo: &'p Photo, tray: Tray) -> Result<Self, TrayRefused> {
        let few = |n: u32| (1..=30).contains(&n);
        if !few(tray.rows) || !few(tray.columns) || tray.rows * tray.columns > 300 {
            return Err(TrayRefused::Grid);
        }
        let known = |mm: f64| (40.0..=2000.0).contains(&mm);
        if !known(tray.inner_width_mm) || !tray.inner_depth_mm.is_none_or(known) {
            return Err(TrayRefused::Width);
        }
        if !goes_round(&tray.corners) {
            return Err(TrayRefused::Corners);
        }
        let depth_mm = tray.inner_depth_mm.or_else(|| depth(photo, &tray)).ok_or(TrayRefused::Corners)?;
        let of_tray = rectangle(tray.inner_width_mm, depth_mm);
        let to_photo = Homography::from_points(of_tray, tray.corners).ok_or(TrayRefused::Corners)?;
        let native = sides(&tray.corners, tray.inner_width_mm, depth_mm).into_iter().fold(0.0, f64::max);
        let cell_mm = (tray.inner_width_mm / f64::from(tray.columns)).max(depth_mm / f64::from(tray.rows));
        let px_per_mm = native.min(FINEST).min(LONGEST / cell_mm);
        Ok(Self { photo, to_photo, tray, depth_mm, px_per_mm })
    }

    /// The tray's inner depth, as given or as seen.
    pub fn depth_mm(&self) -> f64 {
        self.depth_mm
    }

    /// Pixels a millimetre of its compartments.
    pub fn px_per_mm(&self) -> f64 {
        self.px_per_mm
    }

    /// Where a compartment's corners lie in the photo.
    pub fn corners_of(&self, row: u32, column: u32) -> [Point; 4] {
        let (width, depth) = self.cell_mm();
        let at = Point::new(width * f64::from(column), depth * f64::from(row));
        rectangle(width, depth).map(|p| self.to_photo.at(Point::new(at.x + p.x, at.y + p.y)))
    }

    fn cell_mm(&self) -> (f64, f64) {
        (self.tray.inner_width_mm / f64::from(self.tray.columns), self.depth_mm / f64::from(self.tray.rows))
    }

    /// One compartment, counted from 0 from the back left.
    pub fn compartment(&self, row: u32, column: u32) -> Compartment {
        let (width, depth) = self.cell_mm();
        let (left, top) = (width * f64::from(column), depth * f64::from(row));
        let px = |mm: f64| ((mm * self.px_per_mm).round() as u32).max(8);
        let mut pixels = RgbImage::new(px(width), px(depth));
        let scale = 1.0 / self.px_per_mm;
        for (y, line) in pixels.rows_mut().enumerate() {
            for (x, pixel) in line.enumerate() {
                let mm = Point::new(left + (x as f64 + 0.5) * scale, top + (y as f64 + 0.5) * scale);
                pixel.0 = between(&self.photo.pixels, self.to_photo.at(mm));
            }
        }
        Compartment { pixels, px_per_mm: self.px_per_mm }
    }
}

/// A colour between four pixels.
fn between(photo: &RgbImage, at: Point) -> [u8; 3] {
    let (width, height) = photo.dimensions();
    let (x, y) = (at.x.clamp(0.0, f64::from(width - 1)), at.y.clamp(0.0, f64::from(height - 1)));
    let (x0, y0) = ((x as u32).min(width.saturating_sub(2)), (y as u32).min(height.saturating_sub(2)));
    let (fx, fy) = ((256.0 * (x - f64::from(x0))) as u32, (256.0 * (y - f64::from(y0))) as u32);
    let bytes = photo.as_raw();
    let stride = 3 * width as usize;
    let first = y0 as usize * stride + 3 * x0 as usize;
    std::array::from_fn(|c| {
        let pixel = |i: usize| u32::from(bytes.get(i + c).copied().unwrap_or(0));
        let above = pixel(first) * (256 - fx) + pixel(first + 3) * fx;
        let below = pixel(first + stride) * (256 - fx) + pixel(first + stride + 3) * fx;
        ((above * (256 - fy) + below * fy + 32_768) >> 16) as u8
    })
}

fn rectangle(width: f64, depth: f64) -> [Point; 4] {
    [Point::new(0.0, 0.0), Point::new(width, 0.0), Point::new(width, depth), Point::new(0.0, depth)]
}

/// Whether four corners go round in the same turn, with room between them.
fn goes_round(corners: &[Point; 4]) -> bool {
    (0..4).all(|i| {
        let [a, b, c] = [corners[i], corners[(i + 1) % 4], corners[(i + 2) % 4]];
        let turn = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
        // Thirty pixels along each side at least, and no corner that is nearly straight.
        let (ab, bc) = (a.to(b), b.to(c));
        ab.is_finite() && ab >= 30.0 && bc >= 30.0 && turn > 0.2 * ab * bc
    })
}

/// Pixels a millimetre along the four sides.
fn sides(corners: &[Point; 4], width_mm: f64, depth_mm: f64) -> [f64; 4] {
    let along = |i: usize| corners[i].to(corners[(i + 1) % 4]);
    [along(0) / width_mm, along(2) / width_mm, along(1) / depth_mm, along(3) / depth_mm]
}

/// How deep the tray is by how it is seen: its plane's two directions have the same measure before a camera whose focal
/// length is known (Zhang and He, "Whiteboard scanning and image enhancement", 2007, with the focal length given).
fn depth(photo: &Photo, tray: &Tray) -> Option<f64> {
    let unit = Homography::from_points(rectangle(1.0, 1.0), tray.corners)?;
    let (width, height) = (f64::from(photo.width()), f64::from(photo.height()));
    let focal = FOCAL * width.max(height);
    let measure = |column: usize| {
        let [x, y, w] = [0, 1, 2].map(|row| unit.0[row][column]);
        let (x, y) = ((x - width / 2.0 * w) / focal, (y - height / 2.0 * w) / focal);
        (x * x + y * y + w * w).sqrt()
    };
    let depth = tray.inner_width_mm * measure(1) / measure(0);
    (10.0..=4000.0).contains(&depth).then_some(depth)
}
