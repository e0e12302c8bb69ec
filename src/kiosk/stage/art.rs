//! The kiosk's own pictures, built into the program.

use bevy::{
    asset::RenderAssetUsages,
    prelude::*,
    render::render_resource::{Extent3d, TextureDimension, TextureFormat},
};

use super::super::pictures;

/// The pictures of base and ground. Grey ones are tinted by the finish.
#[derive(Resource)]
pub(super) struct Art {
    pub link_face: Handle<Image>,
    pub link_side: Handle<Image>,
    pub ring: Handle<Image>,
    pub clasp: Handle<Image>,
    pub bangle: Handle<Image>,
    pub linen: Handle<Image>,
    /// A soft dark disc.
    pub soft: Handle<Image>,
}

/// Decodes the pictures.
pub(super) fn load(mut commands: Commands, mut images: ResMut<Assets<Image>>) {
    let mut one = |bytes: &[u8]| {
        let rgba = image::load_from_memory(bytes).map(|picture| picture.to_rgba8());
        // They are part of the program and tested; without one its place stays empty.
        let rgba = rgba.unwrap_or_else(|_| image::RgbaImage::new(1, 1));
        images.add(pictures::with_mips(rgba, false))
    };
    let art = Art {
        link_face: one(include_bytes!("../../../assets/kiosk/link-face.png")),
        link_side: one(include_bytes!("../../../assets/kiosk/link-side.png")),
        ring: one(include_bytes!("../../../assets/kiosk/ring.png")),
        clasp: one(include_bytes!("../../../assets/kiosk/clasp.png")),
        bangle: one(include_bytes!("../../../assets/kiosk/bangle.png")),
        linen: one(include_bytes!("../../../assets/kiosk/linen.png")),
        soft: images.add(soft_disc()),
    };
    commands.insert_resource(art);
}

/// A disc that fades to its edge.
fn soft_disc() -> Image {
    const SIDE: u32 = 64;
    let half = SIDE as f32 / 2.0;
    let pixels = (0..SIDE * SIDE).flat_map(|i| {
        let (x, y) = ((i % SIDE) as f32 + 0.5 - half, (i / SIDE) as f32 + 0.5 - half);
        let away = (x.hypot(y) / half).min(1.0);
        [255, 255, 255, (255.0 * (1.0 - away).powf(1.6)) as u8]
    });
    let size = Extent3d { width: SIDE, height: SIDE, depth_or_array_layers: 1 };
    let format = TextureFormat::Rgba8UnormSrgb;
    Image::new(size, TextureDimension::D2, pixels.collect(), format, RenderAssetUsages::default())
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_built_in_pictures_decode() {
        for bytes in [
            include_bytes!("../../../assets/kiosk/link-face.png").as_slice(),
            include_bytes!("../../../assets/kiosk/link-side.png"),
            include_bytes!("../../../assets/kiosk/ring.png"),
            include_bytes!("../../../assets/kiosk/clasp.png"),
            include_bytes!("../../../assets/kiosk/bangle.png"),
            include_bytes!("../../../assets/kiosk/linen.png"),
        ] {
            assert!(image::load_from_memory(bytes).is_ok());
        }
    }
}
