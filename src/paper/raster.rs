//! A picture in black dots, as a receipt printer burns them.

use image::{RgbaImage, imageops::FilterType};

use crate::qr::{Bar, Squares};

/// Dots in rows of whole bytes, the leftmost dot in the highest bit; a dot that is set is black.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Raster {
    /// Bytes in a row.
    pub across: u16,
    /// Rows.
    pub down: u16,
    /// The rows.
    pub bits: Vec<u8>,
}

/// No picture is longer than this, in dots: a hand's length of paper.
const LONGEST: u32 = 700;

/// A PNG file on white paper, `dots` wide; none where it is no picture.
pub(super) fn raster(png: &[u8], dots: u16) -> Option<Raster> {
    let picture = trimmed(&image::load_from_memory(png).ok()?.into_rgba8())?;
    let (width, height) = (u32::from(dots / 8 * 8).max(8), picture.height());
    let height = (height * width).div_ceil(picture.width()).clamp(1, LONGEST);
    let small = image::imageops::resize(&picture, width, height, FilterType::Triangle);
    let grey = small.pixels().map(|pixel| {
        let [red, green, blue, alpha] = pixel.0.map(f32::from);
        // Rec. 709 luma (from memory), on white. A little lighter than it is: dots of a thermal head run together.
        let luma = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
        let on_white = 255.0 + (luma - 255.0) * alpha / 255.0;
        255.0 * (on_white / 255.0).powf(0.8)
    });
    Some(dithered(grey.collect(), width as usize, height as usize))
}

/// Dots on each side of a square of a code: half a millimetre of a usual head, and as few bytes as a slow line takes soon.
const SQUARE: usize = 4;

/// A code with its light border.
pub(super) fn code(squares: &Squares) -> Raster {
    let side = squares.side * SQUARE;
    let across = side.div_ceil(8);
    let mut bits = vec![0; across * side];
    for Bar { x, y, long } in &squares.bars {
        for row in y * SQUARE..(y + 1) * SQUARE {
            for dot in x * SQUARE..(x + long) * SQUARE {
                bits[row * across + dot / 8] |= 0x80 >> (dot % 8);
            }
        }
    }
    // No code has more than 177 squares on a side (ISO/IEC 18004; from memory).
    Raster { across: across as u16, down: side as u16, bits }
}

/// The picture without the empty ground around it.
fn trimmed(picture: &RgbaImage) -> Option<RgbaImage> {
    let filled = || picture.enumerate_pixels().filter(|(.., pixel)| pixel.0[3] > 24);
    let left = filled().map(|(x, ..)| x).min()?;
    let right = filled().map(|(x, ..)| x).max()?;
    let top = filled().map(|(_, y, _)| y).min()?;
    let bottom = filled().map(|(_, y, _)| y).max()?;
    Some(image::imageops::crop_imm(picture, left, top, right - left + 1, bottom - top + 1).to_image())
}

/// Black or white by what is nearer, and the error handed on to the neighbours. Source: Floyd and Steinberg, An Adaptive
/// Algorithm for Spatial Grey Scale, 1976 (from memory).
fn dithered(mut grey: Vec<f32>, width: usize, height: usize) -> Raster {
    let across = width.div_ceil(8);
    let mut bits = vec![0; across * height];
    for y in 0..height {
        for x in 0..width {
            let was = grey[y * width + x];
            let black = was < 128.0;
            if black {
                bits[y * across + x / 8] |= 0x80 >> (x % 8);
            }
            let error = was - if black { 0.0 } else { 255.0 };
            let mut hand_on = |dx: isize, dy: usize, sixteenths: f32| {
                let to = x.checked_add_signed(dx).filter(|to| *to < width);
                if let (Some(to), true) = (to, y + dy < height) {
                    grey[(y + dy) * width + to] += error * sixteenths / 16.0;
                }
            };
            hand_on(1, 0, 7.0);
            hand_on(-1, 1, 3.0);
            hand_on(0, 1, 5.0);
            hand_on(1, 1, 1.0);
        }
    }
    Raster { across: across as u16, down: height as u16, bits }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A share of black dots is the darkness of the grey: what the method is for.
    #[test]
    fn grey_becomes_as_many_dots_as_it_is_dark() {
        for (grey, share) in [(0.0, 1.0), (64.0, 0.75), (127.5, 0.5), (191.0, 0.25), (255.0, 0.0)] {
            let made = dithered(vec![grey; 64 * 64], 64, 64);
            let black = made.bits.iter().map(|byte| byte.count_ones()).sum::<u32>();
            let found = f64::from(black) / (64.0 * 64.0);
            assert!((found - share).abs() < 0.02, "{grey}: {found}");
        }
        assert_eq!((dithered(vec![0.0; 9], 9, 1).bits), [0xff, 0x80], "the leftmost dot is the highest bit");
    }

    #[test]
    fn a_picture_keeps_its_shape_and_what_is_none_is_none() {
        let mut picture = RgbaImage::new(40, 60);
        for y in 20..40 {
            for x in 10..20 {
                picture.put_pixel(x, y, image::Rgba([0, 0, 0, 255]));
            }
        }
        let mut png = std::io::Cursor::new(Vec::new());
        picture.write_to(&mut png, image::ImageFormat::Png).unwrap();
        let made = raster(png.get_ref(), 100).unwrap();
        assert_eq!((made.across, made.down), (12, 192), "96 dots, twice as long");
        assert!(made.bits.iter().all(|byte| *byte == 0xff));
        assert_eq!(raster(b"no picture", 100), None);
    }
}
