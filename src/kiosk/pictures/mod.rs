//! The drops' pictures, as textures for sprites and for the paper.

mod relief;

use std::collections::HashMap;

use bevy::{
    asset::RenderAssetUsages,
    prelude::*,
    render::render_resource::{Extent3d, TextureDimension, TextureFormat},
};
use bevy_egui::{EguiTextureHandle, EguiUserTextures, egui};
use image::{RgbaImage, imageops::FilterType};

use crate::catalog::relief_name;

/// Larger pictures are reduced to this many pixels a side: no drop is shown larger.
const MOST_PX: u32 = 640;

/// One picture.
#[derive(Debug, Clone)]
pub struct DropPicture {
    /// For sprites: straight alpha.
    pub sprite: Handle<Image>,
    /// How its surface leans, for the light.
    pub relief: Handle<Image>,
    /// For the paper: premultiplied alpha.
    pub paper: egui::TextureId,
    paper_image: Handle<Image>,
    /// Its size in pixels; only the proportion counts.
    pub size: egui::Vec2,
}

/// All pictures, by file name.
#[derive(Resource, Default)]
pub struct Pictures {
    drops: HashMap<String, DropPicture>,
    /// The reliefs that came with the catalogue, by their file names.
    reliefs: HashMap<String, Handle<Image>>,
}

impl Pictures {
    /// The picture called `name`, once it has arrived and if it is one.
    pub fn get(&self, name: &str) -> Option<&DropPicture> {
        self.drops.get(name)
    }

    /// Takes in a picture's file. One that does not decode is left out; its drop is shown by its name.
    pub fn take_in(&mut self, name: String, bytes: &[u8], images: &mut Assets<Image>, paper: &mut EguiUserTextures) {
        let rgba = match image::load_from_memory(bytes) {
            Ok(picture) => picture.to_rgba8(),
            Err(error) => {
                warn!("the picture {name} does not decode: {error}");
                return;
            }
        };
        let rgba = reduced(rgba);
        if name.ends_with(".normal.png") {
            self.take_in_relief(name, rgba, images);
            return;
        }
        let size = egui::vec2(rgba.width() as f32, rgba.height() as f32);
        let given = self.reliefs.get(&relief_name(&name)).cloned();
        let relief = given.unwrap_or_else(|| images.add(relief_map(relief::estimated(&rgba))));
        let sprite = images.add(with_mips(rgba.clone(), false));
        let paper_image = images.add(with_mips(rgba, true));
        let id = paper.add_image(EguiTextureHandle::Strong(paper_image.clone()));
        let picture = DropPicture { sprite, relief, paper: id, paper_image, size };
        if let Some(old) = self.drops.insert(name, picture) {
            paper.remove_image(&old.paper_image);
        }
    }

    fn take_in_relief(&mut self, name: String, rgba: RgbaImage, images: &mut Assets<Image>) {
        let relief = images.add(relief_map(rgba));
        for (picture, drop) in &mut self.drops {
            if relief_name(picture) == name {
                drop.relief = relief.clone();
            }
        }
        self.reliefs.insert(name, relief);
    }
}

/// A normal map as a texture.
pub fn relief_map(rgba: RgbaImage) -> Image {
    let mut image = with_mips(rgba, false);
    // Directions, not colours.
    image.texture_descriptor.format = TextureFormat::Rgba8Unorm;
    image
}

fn reduced(rgba: RgbaImage) -> RgbaImage {
    let most = rgba.width().max(rgba.height());
    if most <= MOST_PX {
        return rgba;
    }
    let side = |n: u32| (n * MOST_PX / most).max(1);
    image::imageops::resize(&rgba, side(rgba.width()), side(rgba.height()), FilterType::Triangle)
}

/// A texture with all its smaller sizes, so that it does not glitter when shown small.
pub fn with_mips(rgba: RgbaImage, premultiplied: bool) -> Image {
    let (width, height) = (rgba.width().max(1), rgba.height().max(1));
    let mut level = rgba;
    for pixel in level.pixels_mut() {
        let alpha = u16::from(pixel.0[3]);
        for channel in &mut pixel.0[..3] {
            *channel = ((u16::from(*channel) * alpha + 127) / 255) as u8;
        }
    }
    let mut data = Vec::new();
    let mut levels = 0;
    loop {
        for pixel in level.pixels() {
            let [r, g, b, a] = pixel.0;
            let straight = |c: u8| ((u16::from(c) * 255 + u16::from(a) / 2) / u16::from(a.max(1))).min(255) as u8;
            if premultiplied || a == 0 {
                data.extend([r, g, b, a]);
            } else {
                data.extend([straight(r), straight(g), straight(b), a]);
            }
        }
        levels += 1;
        if level.width() == 1 && level.height() == 1 {
            break;
        }
        let (w, h) = ((level.width() / 2).max(1), (level.height() / 2).max(1));
        level = image::imageops::resize(&level, w, h, FilterType::Triangle);
    }
    let size = Extent3d { width, height, depth_or_array_layers: 1 };
    let format = TextureFormat::Rgba8UnormSrgb;
    let first = (width * height * 4) as usize;
    let mut image =
        Image::new(size, TextureDimension::D2, data[..first].to_vec(), format, RenderAssetUsages::default());
    image.texture_descriptor.mip_level_count = levels;
    image.data = Some(data);
    image
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_smaller_size_is_there() {
        let image = with_mips(RgbaImage::from_pixel(6, 4, image::Rgba([200, 100, 50, 128])), false);
        assert_eq!(image.texture_descriptor.mip_level_count, 3);
        let data = image.data.unwrap();
        assert_eq!(data.len(), (6 * 4 + 3 * 2 + 1) * 4);
        let near = |a: u8, b: u8| a.abs_diff(b) <= 2;
        assert!(near(data[0], 200) && near(data[1], 100) && near(data[2], 50), "{:?}", &data[..4]);
    }
}
