//! Pictures as textures with all their smaller sizes, so that they do not glitter when shown small.

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

/// A normal map: directions, not colours.
pub(crate) fn relief_map(rgba: RgbaImage) -> Image {
    with_smaller_sizes(rgba, TextureFormat::Rgba8Unorm)
}

/// Bytes that a texture takes with its smaller sizes.
pub(super) fn bytes_of(size: UVec2) -> usize {
    (size.x * size.y) as usize * 4 * 4 / 3
}

/// `rgba` reduced so that no side is longer than `most` pixels.
pub(super) fn reduced(rgba: RgbaImage, most: u32) -> RgbaImage {
    let longest = rgba.width().max(rgba.height());
    if longest <= most {
        return rgba;
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

    #[test]
    fn large_pictures_are_reduced_in_proportion() {
        assert_eq!(reduced(RgbaImage::new(1000, 250), 144).dimensions(), (144, 36));
        assert_eq!(reduced(RgbaImage::new(100, 25), 144).dimensions(), (100, 25));
        assert_eq!(reduced(RgbaImage::new(9000, 3), 144).dimensions(), (144, 1));
    }
}
