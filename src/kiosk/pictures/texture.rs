//! Pictures as textures with all their smaller sizes, so that they do not glitter when shown small: for the paper, which adds
//! colours as they are written, and for the stage, which adds light.

use bevy::{
    asset::RenderAssetUsages,
    prelude::*,
    render::render_resource::{Extent3d, TextureDimension, TextureFormat},
};
use image::{RgbaImage, imageops::FilterType};

/// A picture, premultiplied by its opacity as the paper needs it; the stage's shader takes that into account. Once the
/// graphics driver has it, no other copy is kept.
pub(crate) fn texture(rgba: RgbaImage) -> Image {
    let mut rgba = rgba;
    for pixel in rgba.pixels_mut() {
        let alpha = u16::from(pixel.0[3]);
        for channel in &mut pixel.0[..3] {
            *channel = ((u16::from(*channel) * alpha + 127) / 255) as u8;
        }
    }
    with_smaller_sizes(rgba, TextureFormat::Rgba8UnormSrgb)
}

/// A picture for the stage: light, premultiplied by the opacity, in every smaller size as well, so that edges stay what they
/// are however small it is shown.
pub(crate) fn lit_texture(rgba: &RgbaImage) -> Image {
    let light = (0..=255u8).map(|byte| srgb_to_linear(f32::from(byte) / 255.0)).collect::<Vec<_>>();
    let (mut width, mut height) = (rgba.width().max(1) as usize, rgba.height().max(1) as usize);
    let mut level: Vec<[f32; 4]> = rgba
        .pixels()
        .map(|pixel| {
            let [r, g, b, alpha] = pixel.0;
            let opaque = f32::from(alpha) / 255.0;
            [light[r as usize] * opaque, light[g as usize] * opaque, light[b as usize] * opaque, opaque]
        })
        .collect();
    let size = Extent3d { width: width as u32, height: height as u32, depth_or_array_layers: 1 };
    level.resize(width * height, [0.0; 4]);
    let written = written_tones();
    let (mut data, mut levels) = (Vec::new(), 0);
    loop {
        let tone = |light: f32| written[(light.clamp(0.0, 1.0) * (written.len() - 1) as f32 + 0.5) as usize];
        data.extend(level.iter().flat_map(|[r, g, b, a]| [tone(*r), tone(*g), tone(*b), (a * 255.0 + 0.5) as u8]));
        levels += 1;
        if width <= 1 && height <= 1 {
            break;
        }
        let (half_width, half_height) = ((width / 2).max(1), (height / 2).max(1));
        level = (0..half_width * half_height)
            .map(|i| {
                let (x, y) = (i % half_width * 2, i / half_width * 2);
                let (right, below) = ((x + 1).min(width - 1), (y + 1).min(height - 1));
                let four = [(x, y), (right, y), (x, below), (right, below)].map(|(x, y)| level[y * width + x]);
                std::array::from_fn(|part| four.iter().map(|pixel| pixel[part]).sum::<f32>() / 4.0)
            })
            .collect();
        (width, height) = (half_width, half_height);
    }
    let format = TextureFormat::Rgba8UnormSrgb;
    let mut image = Image::new_uninit(size, TextureDimension::D2, format, RenderAssetUsages::RENDER_WORLD);
    image.texture_descriptor.mip_level_count = levels;
    image.data = Some(data);
    image
}

/// How a screen's tone is written for each of many steps of light.
fn written_tones() -> Vec<u8> {
    (0..4096).map(|step| (linear_to_srgb(step as f32 / 4095.0) * 255.0 + 0.5) as u8).collect()
}

/// Light of a tone as it is written, both from 0 to 1. Source: IEC 61966-2-1 (sRGB).
fn srgb_to_linear(tone: f32) -> f32 {
    if tone <= 0.040_45 { tone / 12.92 } else { ((tone + 0.055) / 1.055).powf(2.4) }
}

fn linear_to_srgb(light: f32) -> f32 {
    if light <= 0.003_130_8 { light * 12.92 } else { 1.055 * light.powf(1.0 / 2.4) - 0.055 }
}

/// A normal map: directions, not colours.
pub(crate) fn relief_map(rgba: RgbaImage) -> Image {
    with_smaller_sizes(rgba, TextureFormat::Rgba8Unorm)
}

/// Bytes that a texture takes with its smaller sizes.
pub(super) fn bytes_of(size: UVec2) -> usize {
    (size.x * size.y) as usize * 4 * 4 / 3
}

/// `rgba` reduced so that no side is longer than `most` pixels. A photo is averaged to twice that size first, which is fast, so
/// that a tray of photos need not be waited for.
pub(super) fn reduced(rgba: RgbaImage, most: u32) -> RgbaImage {
    let longest = rgba.width().max(rgba.height());
    if longest <= most {
        return rgba;
    }
    if longest > 3 * most {
        let twice = |n: u32| (n * 2 * most / longest).max(1);
        let averaged = image::imageops::thumbnail(&rgba, twice(rgba.width()), twice(rgba.height()));
        return reduced(averaged, most);
    }
    let side = |n: u32| (n * most / longest).max(1);
    image::imageops::resize(&rgba, side(rgba.width()), side(rgba.height()), FilterType::Triangle)
}

fn with_smaller_sizes(rgba: RgbaImage, format: TextureFormat) -> Image {
    let size = Extent3d { width: rgba.width().max(1), height: rgba.height().max(1), depth_or_array_layers: 1 };
    let mut level = rgba;
    let mut data = Vec::new();
    let mut levels = 0;
    loop {
        data.extend_from_slice(level.as_raw());
        levels += 1;
        if level.width() <= 1 && level.height() <= 1 {
            break;
        }
        let (w, h) = ((level.width() / 2).max(1), (level.height() / 2).max(1));
        level = image::imageops::resize(&level, w, h, FilterType::Triangle);
    }
    let mut image = Image::new_uninit(size, TextureDimension::D2, format, RenderAssetUsages::RENDER_WORLD);
    image.texture_descriptor.mip_level_count = levels;
    image.data = Some(data);
    image
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_smaller_size_is_there_and_opacity_is_multiplied_in() {
        let image = texture(RgbaImage::from_pixel(6, 4, image::Rgba([200, 100, 50, 128])));
        assert_eq!(image.texture_descriptor.mip_level_count, 3);
        let data = image.data.unwrap();
        assert_eq!(data.len(), (6 * 4 + 3 * 2 + 1) * 4);
        for pixel in data.chunks_exact(4) {
            let near = |at: usize, wanted: u8| pixel[at].abs_diff(wanted) <= 2;
            assert!(near(0, 100) && near(1, 50) && near(2, 25) && near(3, 128), "{pixel:?}");
        }
    }

    /// Half of a white picture is clear: every smaller size of it, light over opacity, is white still. 118 is sRGB's tone for
    /// a grey that gives back 18 % of the light (the usual middle grey; from IEC 61966-2-1).
    #[test]
    fn edges_keep_their_tone_in_every_smaller_size() {
        let rgba = RgbaImage::from_fn(8, 8, |x, _| image::Rgba([255, 255, 255, if x < 3 { 255 } else { 0 }]));
        let image = lit_texture(&rgba);
        assert_eq!(image.texture_descriptor.mip_level_count, 4);
        let data = image.data.unwrap();
        assert_eq!(data.len(), (64 + 16 + 4 + 1) * 4);
        for pixel in data.chunks_exact(4).filter(|pixel| pixel[3] > 0) {
            let (light, opaque) = (srgb_to_linear(f32::from(pixel[0]) / 255.0), f32::from(pixel[3]) / 255.0);
            assert!((light / opaque - 1.0).abs() < 0.02, "{pixel:?}");
        }
        assert!((linear_to_srgb(0.18) * 255.0 - 118.0).abs() < 0.6);
    }

    #[test]
    fn large_pictures_are_reduced_in_proportion() {
        assert_eq!(reduced(RgbaImage::new(1000, 250), 144).dimensions(), (144, 36));
        assert_eq!(reduced(RgbaImage::new(100, 25), 144).dimensions(), (100, 25));
        assert_eq!(reduced(RgbaImage::new(9000, 3), 144).dimensions(), (144, 1));
    }
}
