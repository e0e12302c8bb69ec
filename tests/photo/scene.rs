//! Photos of trays that never were: known shapes on floors of linen, velvet, felt and wood, in light that is not even, seen
//! aslant by a camera with blur and noise, and kept as JPEG.

use std::path::Path;

use image::{Rgb, RgbImage, Rgba, RgbaImage, codecs::jpeg::JpegEncoder, imageops};

use crate::photo::{Homography, Point};

/// What a tray is laid out with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Floor {
    /// Light woven linen.
    Linen,
    /// Dark velvet with its sheen.
    Velvet,
    /// Grey felt.
    Felt,
    /// Wood with its grain.
    Wood,
    /// White card.
    Card,
}

/// Numbers as chance throws them, the same each time.
pub struct Dice(pub u64);

impl Dice {
    /// From 0 to 1.
    pub fn next(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Near 0, with a spread of 1: the sum of twelve.
    pub fn bell(&mut self) -> f64 {
        (0..12).map(|_| self.next()).sum::<f64>() - 6.0
    }
}

/// Something that lies in a compartment.
#[derive(Clone)]
pub struct Lying {
    /// What it looks like, straight from above.
    pub picture: RgbaImage,
    /// Its height as in its picture, in millimetres.
    pub height_mm: f64,
    /// Its middle, in millimetres from the inner corner of the tray.
    pub at: Point,
    /// How far it is turned, clockwise.
    pub degrees: f64,
}

/// A tray, what lies in it, and how it is photographed.
pub struct Scene {
    pub floor: Floor,
    pub rows: u32,
    pub columns: u32,
    pub inner_mm: (f64, f64),
    pub lying: Vec<Lying>,
    /// Pixels of the photo.
    pub photo: (u32, u32),
    /// How far the camera leans to the front and to the right, and how far the tray is turned, in degrees.
    pub lean: (f64, f64),
    pub turned: f64,
    /// Spread of the blur in pixels, of the noise in steps of 256.
    pub blur: f32,
    pub noise: f64,
    /// How much brighter one end is than the other, as a share.
    pub uneven: f64,
    /// How bright a lamp's glare is, from 0 to 1.
    pub glare: f64,
    /// Grade of the JPEG.
    pub grade: u8,
    pub seed: u64,
}

/// A photo and what is true of it.
pub struct Taken {
    pub jpeg: Vec<u8>,
    /// The inner corners as they are in the photo.
    pub corners: [Point; 4],
    /// From millimetres of the tray to pixels.
    pub to_photo: Homography,
}

/// Pixels a millimetre of the drawn scene.
const FINE: f64 = 12.0;
const RIM_MM: f64 = 8.0;
const AROUND_MM: f64 = 45.0;
const WALL_MM: f64 = 2.0;

/// A picture of the demo's catalogue.
pub fn picture(name: &str) -> RgbaImage {
    let folder = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/catalog/pictures"));
    image::open(folder.join(format!("{name}.png"))).expect("a picture of the demo").into_rgba8()
}

/// A coin of plain metal with a raised rim, as large as its mint says.
pub fn coin(diameter_mm: f64, metal: [f64; 3]) -> RgbaImage {
    let side = (diameter_mm * 20.0).round() as u32;
    RgbaImage::from_fn(side, side, |x, y| {
        let (x, y) = ((f64::from(x) + 0.5) / f64::from(side) - 0.5, (f64::from(y) + 0.5) / f64::from(side) - 0.5);
        let r = x.hypot(y);
        let relief = (31.0 * x).sin() * (27.0 * y).cos() * 0.06;
        let light = if r > 0.46 { 1.1 - 0.8 * (x + y) } else { 0.95 + 0.3 * (x - y) + relief };
        let alpha = ((0.5 - r) * f64::from(side) + 0.5).clamp(0.0, 1.0);
        let [r, g, b] = metal.map(|m| (m * light).clamp(0.0, 255.0) as u8);
        Rgba([r, g, b, (255.0 * alpha) as u8])
    })
}

impl Scene {
    /// A tray of four by four on linen, seen nearly from above.
    pub fn new(floor: Floor) -> Self {
        Self {
            floor,
            rows: 4,
            columns: 4,
            inner_mm: (280.0, 200.0),
            lying: Vec::new(),
            photo: (4000, 3000),
            lean: (4.0, -3.0),
            turned: 2.0,
            blur: 0.8,
            noise: 3.0,
            uneven: 0.25,
            glare: 0.0,
            grade: 88,
            seed: 7,
        }
    }

    /// The middle of a compartment.
    pub fn middle(&self, row: u32, column: u32) -> Point {
        let of = |i: u32, n: u32, mm: f64| (f64::from(i) + 0.5) * mm / f64::from(n);
        Point::new(of(column, self.columns, self.inner_mm.0), of(row, self.rows, self.inner_mm.1))
    }

    /// Draws it, photographs it and keeps it as JPEG.
    pub fn taken(&self) -> Taken {
        let drawn = self.drawn();
        let to_photo = self.camera();
        let back = to_photo.inverse().expect("a camera");
        let mut dice = Dice(self.seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1);
        let (width, height) = self.photo;
        let mut pixels = RgbImage::from_fn(width, height, |x, y| {
            let mm = back.at(Point::new(f64::from(x), f64::from(y)));
            let sum = sampled(&drawn, (mm.x + AROUND_MM) * FINE - 0.5, (mm.y + AROUND_MM) * FINE - 0.5);
            let (u, v) = (f64::from(x) / f64::from(width) - 0.5, f64::from(y) / f64::from(height) - 0.5);
            let light = 1.0 + self.uneven * (0.8 * u + 0.5 * v - 0.6 * (u * u + v * v));
            let lamp = 190.0 * self.glare * (-((u - 0.12).powi(2) + (v + 0.1).powi(2)) / 0.02).exp();
            Rgb(sum.map(|n| (n * light + lamp).clamp(0.0, 255.0) as u8))
        });
        if self.blur > 0.0 {
            pixels = imageops::fast_blur(&pixels, self.blur);
        }
        for pixel in pixels.pixels_mut() {
            let common = dice.bell() * self.noise * 0.7;
            pixel.0 = pixel
                .0
                .map(|n| (f64::from(n) + common + (dice.next() - 0.5) * self.noise * 2.0).clamp(0.0, 255.0) as u8);
        }
        let mut jpeg = Vec::new();
        JpegEncoder::new_with_quality(&mut jpeg, self.grade).encode_image(&pixels).expect("a JPEG");
        Taken { jpeg, corners: self.corners(), to_photo }
    }

    /// The inner corners as the camera sees them.
    pub fn corners(&self) -> [Point; 4] {
        let (w, d) = self.inner_mm;
        [(0.0, 0.0), (w, 0.0), (w, d), (0.0, d)].map(|(x, y)| self.camera().at(Point::new(x, y)))
    }

    /// A pinhole camera above the middle of the tray, leaning, that sees all of it.
    fn camera(&self) -> Homography {
        let (width, height) = (f64::from(self.photo.0), f64::from(self.photo.1));
        let focal = 0.75 * width.max(height);
        let (mm_w, mm_d) = (self.inner_mm.0 + 2.0 * RIM_MM + 24.0, self.inner_mm.1 + 2.0 * RIM_MM + 24.0);
        let away = (mm_w / width).max(mm_d / height) * focal * 1.08;
        let (ax, ay, az) = (self.lean.0.to_radians(), self.lean.1.to_radians(), self.turned.to_radians());
        let seen = |x: f64, y: f64| {
            let (x, y) = (x - self.inner_mm.0 / 2.0, y - self.inner_mm.1 / 2.0);
            let (x, y) = (x * az.cos() - y * az.sin(), x * az.sin() + y * az.cos());
            let (y, z) = (y * ax.cos(), y * ax.sin());
            let (x, z) = (x * ay.cos() + z * ay.sin(), -x * ay.sin() + z * ay.cos());
            let far = z + away;
            Point::new(width / 2.0 + focal * x / far, height / 2.0 + focal * y / far)
        };
        let (w, d) = self.inner_mm;
        let from = [(0.0, 0.0), (w, 0.0), (w, d), (0.0, d)];
        let to = from.map(|(x, y)| seen(x, y));
        Homography::from_points(from.map(|(x, y)| Point::new(x, y)), to).expect("a camera")
    }

    /// Table, rim, floor, walls, shadows and pieces straight from above.
    fn drawn(&self) -> RgbImage {
        let (w, d) = self.inner_mm;
        let px = |mm: f64| (mm * FINE) as u32;
        let mut dice = Dice(self.seed.wrapping_mul(77) + 13);
        let grain = Grain::new(&mut dice);
        let mut drawn = RgbImage::from_fn(px(w + 2.0 * AROUND_MM), px(d + 2.0 * AROUND_MM), |x, y| {
            let (x, y) = (f64::from(x) / FINE - AROUND_MM, f64::from(y) / FINE - AROUND_MM);
            Rgb(self.bare(x, y, &grain).map(|n| n.clamp(0.0, 255.0) as u8))
        });
        let mut shade = image::GrayImage::new(drawn.width(), drawn.height());
        for piece in &self.lying {
            laid(piece, |x, y, pixel| {
                let (x, y) = (x + 9, y + 13);
                if x < shade.width() && y < shade.height() {
                    let dark = shade.get_pixel_mut(x, y);
                    dark.0[0] = dark.0[0].max(pixel[3]);
                }
            });
        }
        let shade = imageops::fast_blur(&shade, 8.0);
        for (pixel, dark) in drawn.pixels_mut().zip(shade.pixels()) {
            let light = 1.0 - 0.42 * f64::from(dark.0[0]) / 255.0;
            pixel.0 = pixel.0.map(|n| (f64::from(n) * light) as u8);
        }
        for piece in &self.lying {
            laid(piece, |x, y, pixel| {
                if x < drawn.width() && y < drawn.height() {
                    let to = drawn.get_pixel_mut(x, y);
                    let a = f64::from(pixel[3]) / 255.0;
                    to.0 = std::array::from_fn(|c| {
                        (f64::from(pixel[c]) * a + f64::from(to.0[c]) * (1.0 - a)).round() as u8
                    });
                }
            });
        }
        drawn
    }

    fn bare(&self, x: f64, y: f64, grain: &Grain) -> [f64; 3] {
        let (w, d) = self.inner_mm;
        let outside = (-x).max(x - w).max(-y).max(y - d);
        if outside > RIM_MM {
            let n = grain.at(x * 0.02, y * 0.6) * 14.0;
            return [92.0 + n, 74.0 + n, 62.0 + n];
        }
        if outside > 0.0 {
            let n = grain.at(x * 0.05 + 9.0, y * 0.4) * 10.0;
            let edge = if outside < 1.0 { -35.0 } else { 0.0 };
            return [176.0 + n + edge, 132.0 + n + edge, 88.0 + n + edge];
        }
        let (cw, cd) = (w / f64::from(self.columns), d / f64::from(self.rows));
        let near = |at: f64, of: f64, whole: f64| {
            let line = (at / of).round() * of;
            if line < 1.0 || line > whole - 1.0 { f64::INFINITY } else { at - line }
        };
        let (nx, ny) = (near(x, cw, w), near(y, cd, d));
        if nx.abs() < WALL_MM / 2.0 || ny.abs() < WALL_MM / 2.0 {
            let n = grain.at(x * 0.3, y * 0.3) * 6.0;
            return [188.0 + n, 146.0 + n, 102.0 + n];
        }
        let shadow =
            |n: f64| if n.is_finite() && n > 0.0 { 1.0 - 0.35 * (-(n - WALL_MM / 2.0) / 1.6).exp() } else { 1.0 };
        let dark = shadow(nx) * shadow(ny) * shadow(x + WALL_MM) * shadow(y + WALL_MM);
        self.cloth(x, y, grain).map(|n| n * dark)
    }

    fn cloth(&self, x: f64, y: f64, grain: &Grain) -> [f64; 3] {
        match self.floor {
            Floor::Linen => {
                let weave = 7.0 * (x * 9.0).sin() * (y * 9.0).sin()
                    + 9.0 * grain.at(x * 1.7, y * 0.25)
                    + 9.0 * grain.at(x * 0.25, y * 1.7);
                [214.0 + weave, 203.0 + weave, 184.0 + weave * 0.9]
            }
            Floor::Velvet => {
                let sheen = 7.0 * grain.at(x * 0.06, y * 0.08) + 5.0 * grain.at(x * 2.1, y * 2.3);
                [34.0 + sheen, 26.0 + sheen * 0.8, 44.0 + sheen * 1.1]
            }
            Floor::Felt => {
                let fibre = 8.0 * grain.at(x * 1.1, y * 1.3) + 6.0 * grain.at(x * 2.9, y * 2.7);
                [128.0 + fibre, 130.0 + fibre, 132.0 + fibre]
            }
            Floor::Wood => {
                let ring = (y * 0.9 + 3.0 * grain.at(x * 0.03, y * 0.2)).sin();
                let n = 12.0 * ring + 9.0 * grain.at(x * 0.08, y * 2.4);
                [186.0 + n, 148.0 + n * 0.95, 104.0 + n * 0.8]
            }
            Floor::Card => [236.0, 235.0, 231.0].map(|n| n + 2.0 * grain.at(x * 3.0, y * 3.0)),
        }
    }
}

/// Calls with every pixel of the drawn scene that a piece covers.
fn laid(piece: &Lying, mut put: impl FnMut(u32, u32, [u8; 4])) {
    let (w, h) = (f64::from(piece.picture.width()), f64::from(piece.picture.height()));
    let scale = h / piece.height_mm;
    let reach = (w.hypot(h) / scale / 2.0 * FINE) as i64 + 2;
    let (sin, cos) = piece.degrees.to_radians().sin_cos();
    let (cx, cy) = (((piece.at.x + AROUND_MM) * FINE) as i64, ((piece.at.y + AROUND_MM) * FINE) as i64);
    for y in -reach..=reach {
        for x in -reach..=reach {
            let (u, v) = (x as f64 / FINE, y as f64 / FINE);
            let (u, v) = (u * cos + v * sin, -u * sin + v * cos);
            let (u, v) = (u * scale + w / 2.0 - 0.5, v * scale + h / 2.0 - 0.5);
            if u < -0.5 || v < -0.5 || u > w - 0.5 || v > h - 0.5 {
                continue;
            }
            let pixel = mixed(&piece.picture, u, v);
            if pixel[3] > 0 && cx + x >= 0 && cy + y >= 0 {
                put((cx + x) as u32, (cy + y) as u32, pixel);
            }
        }
    }
}

/// A picture turned clockwise about its middle, with room for all of it.
pub fn turned(picture: &RgbaImage, degrees: f64) -> RgbaImage {
    let (sin, cos) = degrees.to_radians().sin_cos();
    let (w, h) = (f64::from(picture.width()), f64::from(picture.height()));
    let side = w.hypot(h).ceil() as u32 + 2;
    RgbaImage::from_fn(side, side, |x, y| {
        let (x, y) = (f64::from(x) + 0.5 - f64::from(side) / 2.0, f64::from(y) + 0.5 - f64::from(side) / 2.0);
        Rgba(mixed(picture, x * cos + y * sin + w / 2.0 - 0.5, -x * sin + y * cos + h / 2.0 - 0.5))
    })
}

/// A pixel between four, weighed by how much of them shows.
fn mixed(picture: &RgbaImage, u: f64, v: f64) -> [u8; 4] {
    let (w, h) = (i64::from(picture.width()), i64::from(picture.height()));
    let (x, y) = (u.floor(), v.floor());
    let (fx, fy) = (u - x, v - y);
    let mut sum = [0.0; 4];
    for (dx, dy, share) in
        [(0, 0, (1.0 - fx) * (1.0 - fy)), (1, 0, fx * (1.0 - fy)), (0, 1, (1.0 - fx) * fy), (1, 1, fx * fy)]
    {
        let (x, y) = (x as i64 + dx, y as i64 + dy);
        if (0..w).contains(&x) && (0..h).contains(&y) {
            let pixel = picture.get_pixel(x as u32, y as u32).0;
            let alpha = f64::from(pixel[3]) * share;
            (0..3).for_each(|c| sum[c] += f64::from(pixel[c]) * alpha);
            sum[3] += alpha;
        }
    }
    if sum[3] < 0.5 {
        return [0; 4];
    }
    [(sum[0] / sum[3]) as u8, (sum[1] / sum[3]) as u8, (sum[2] / sum[3]) as u8, sum[3].min(255.0) as u8]
}

fn sampled(drawn: &RgbImage, x: f64, y: f64) -> [f64; 3] {
    let (w, h) = (drawn.width() - 2, drawn.height() - 2);
    // Beyond what is drawn the table goes on as in a mirror.
    let fold = |n: f64, of: f64| {
        let n = n.rem_euclid(2.0 * of);
        if n > of { 2.0 * of - n } else { n }
    };
    let (x, y) = (fold(x, f64::from(w)), fold(y, f64::from(h)));
    let (x0, y0) = ((x as u32).min(w), (y as u32).min(h));
    let (fx, fy) = (x - f64::from(x0), y - f64::from(y0));
    let at = |dx: u32, dy: u32| drawn.get_pixel(x0 + dx, y0 + dy).0;
    let (a, b, c, d) = (at(0, 0), at(1, 0), at(0, 1), at(1, 1));
    std::array::from_fn(|i| {
        let above = f64::from(a[i]) * (1.0 - fx) + f64::from(b[i]) * fx;
        let below = f64::from(c[i]) * (1.0 - fx) + f64::from(d[i]) * fx;
        above * (1.0 - fy) + below * fy
    })
}

/// Smooth unevenness: values at a grid's corners, eased between them.
struct Grain(Vec<f64>);

impl Grain {
    const SIDE: usize = 256;

    fn new(dice: &mut Dice) -> Self {
        Self((0..Self::SIDE * Self::SIDE).map(|_| dice.next() * 2.0 - 1.0).collect())
    }

    /// From -1 to 1.
    fn at(&self, x: f64, y: f64) -> f64 {
        let ease = |t: f64| t * t * (3.0 - 2.0 * t);
        let (fx, fy) = (ease(x - x.floor()), ease(y - y.floor()));
        let corner = |dx: i64, dy: i64| {
            let fold = |n: f64, d: i64| (n.floor() as i64 + d).rem_euclid(Self::SIDE as i64) as usize;
            self.0[fold(y, dy) * Self::SIDE + fold(x, dx)]
        };
        let above = corner(0, 0) * (1.0 - fx) + corner(1, 0) * fx;
        let below = corner(0, 1) * (1.0 - fx) + corner(1, 1) * fx;
        above * (1.0 - fy) + below * fy
    }
}
