//! The relief of a picture that has none of its own: bevelled at its outline, and as rough as its tones.

use image::{GrayImage, Luma, Rgba, RgbaImage};

/// How wide the bevel is, as a share of the picture's shorter side.
const BEVEL_SHARE: f32 = 0.22;
/// How much the tones count: a step from black to white, in pixels of height.
const TONE_PX: f32 = 5.0;

/// A normal map for `rgba`: x to the right, y up, z towards the viewer, each as 0 to 255 for −1 to 1.
pub(super) fn estimated(rgba: &RgbaImage) -> RgbaImage {
    let (width, height) = rgba.dimensions();
    let bevel = (BEVEL_SHARE * width.min(height) as f32).max(2.0);
    let depth = distance_to_edge(rgba);
    // Blurred tones: a relief follows forms, not print.
    let tones = image::imageops::blur(&image::imageops::grayscale(rgba), 1.5);
    let tones = GrayImage::from_fn(width, height, |x, y| Luma([tones.get_pixel(x, y).0[0]]));
    let at = |x: i64, y: i64| {
        let (x, y) = (x.clamp(0, i64::from(width) - 1) as u32, y.clamp(0, i64::from(height) - 1) as u32);
        let inside = (depth[(y * width + x) as usize] / bevel).min(1.0);
        let dome = bevel * (1.0 - (1.0 - inside).powi(2)).sqrt();
        dome + TONE_PX * f32::from(tones.get_pixel(x, y).0[0]) / 255.0
    };
    RgbaImage::from_fn(width, height, |x, y| {
        let (column, row) = (i64::from(x), i64::from(y));
        let across = (at(column + 1, row) - at(column - 1, row)) / 2.0;
        let down = (at(column, row + 1) - at(column, row - 1)) / 2.0;
        let length = (across * across + down * down + 1.0).sqrt();
        let byte = |part: f32| ((part / length * 0.5 + 0.5) * 255.0).round() as u8;
        // The picture's rows go down, the map's y goes up.
        Rgba([byte(-across), byte(down), byte(1.0), rgba.get_pixel(x, y).0[3]])
    })
}

/// How far each pixel is from the nearest one outside, in pixels; two passes of the 1, √2 chamfer distance. Source:
/// Borgefors, "Distance transformations in digital images", 1986.
fn distance_to_edge(rgba: &RgbaImage) -> Vec<f32> {
    let (width, height) = (rgba.width() as i64, rgba.height() as i64);
    let place = |x: i64, y: i64| (y * width + x) as usize;
    let mut far: Vec<f32> = rgba.pixels().map(|pixel| if pixel.0[3] > 127 { f32::INFINITY } else { 0.0 }).collect();
    let diagonal = std::f32::consts::SQRT_2;
    let before = [(-1, 0, 1.0), (0, -1, 1.0), (-1, -1, diagonal), (1, -1, diagonal)];
    for pass in [1, -1] {
        let rows: Vec<i64> = if pass == 1 { (0..height).collect() } else { (0..height).rev().collect() };
        for y in rows {
            for step in 0..width {
                let x = if pass == 1 { step } else { width - 1 - step };
                for (dx, dy, more) in before {
                    let (nx, ny) = (x + dx * pass, y + dy * pass);
                    // Beyond the picture is outside.
                    let inside = (0..width).contains(&nx) && (0..height).contains(&ny);
                    let there = if inside { far[place(nx, ny)] } else { 0.0 };
                    far[place(x, y)] = far[place(x, y)].min(there + more);
                }
            }
        }
    }
    far
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_disc_is_flat_in_the_middle_and_leans_outwards_at_its_rim() {
        let disc = RgbaImage::from_fn(80, 80, |x, y| {
            let away = (x as f32 - 39.5).hypot(y as f32 - 39.5);
            Rgba([120, 120, 120, if away < 36.0 { 255 } else { 0 }])
        });
        let map = estimated(&disc);
        let normal = |x, y| map.get_pixel(x, y).0.map(|byte| f32::from(byte) / 127.5 - 1.0);
        assert!(normal(40, 40)[2] > 0.99);
        assert!(normal(70, 40)[0] > 0.3 && normal(9, 40)[0] < -0.3, "{:?} {:?}", normal(70, 40), normal(9, 40));
        assert!(normal(40, 9)[1] > 0.3 && normal(40, 70)[1] < -0.3, "{:?} {:?}", normal(40, 9), normal(40, 70));
    }
}
