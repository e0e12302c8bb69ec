//! The kiosk's own pictures, built into the program.

use bevy::prelude::*;
use bevy_egui::{
    EguiTextureHandle, EguiUserTextures,
    egui::{Color32, TextureId},
};

use crate::craft::{Finish, LinkKind};
use crate::kiosk::pictures;

/// A picture with its relief.
#[derive(Debug, Clone)]
pub(super) struct Relief {
    pub image: Handle<Image>,
    pub relief: Handle<Image>,
}

/// The pictures of base and ground. Grey ones are tinted by the finish.
#[derive(Resource)]
pub(super) struct Art {
    links: [LinkArt; LINKS.len()],
    pub clasp: Relief,
    pub bangle: Relief,
    pub linen: Handle<Image>,
    /// For what is drawn without a picture.
    pub nothing: Relief,
}

/// The two pictures of which a chain is drawn.
#[derive(Debug, Clone)]
pub(super) struct LinkArt {
    /// A link from the front.
    pub face: Relief,
    /// A link edge on; of a curb chain, what lies over the link before it.
    pub side: Relief,
}

impl Art {
    /// The links of a chain.
    pub(super) fn link(&self, kind: LinkKind) -> &LinkArt {
        &self.links[kind as usize]
    }
}

/// The same pictures of bases for the paper, grey as well.
#[derive(Resource)]
pub struct Signs {
    links: [[TextureId; 2]; LINKS.len()],
    /// The bangle, hook upwards.
    pub bangle: TextureId,
}

impl Signs {
    /// A chain's link from the front, and edge on or what lies over the link before it.
    pub fn link(&self, kind: LinkKind) -> [TextureId; 2] {
        self.links[kind as usize]
    }
}

/// What makes a small grey picture on the paper look made of a metal: darker, since white surrounds it and no light plays.
pub fn paper_tint(finish: Finish) -> Color32 {
    let [r, g, b] = mixed(finish, 0.08).map(|part| (part * 255.0).round() as u8);
    Color32::from_rgb(r, g, b)
}

/// The colour that a finish gives to a grey picture with a pale middle tone, as sRGB from 0 to 1.
pub(super) fn tint(finish: Finish) -> [f32; 3] {
    mixed(finish, 0.66)
}

fn mixed(finish: Finish, shine: f32) -> [f32; 3] {
    let tones = finish.tones();
    std::array::from_fn(|i| (f32::from(tones.body[i]) * (1.0 - shine) + f32::from(tones.shine[i]) * shine) / 255.0)
}

/// A picture and its relief as files.
type Files = (&'static [u8], &'static [u8]);

/// The picture in a file of the house and its relief.
macro_rules! with_relief {
    ($name:literal) => {
        (
            include_bytes!(concat!("../../../assets/kiosk/", $name, ".png")).as_slice(),
            include_bytes!(concat!("../../../assets/kiosk/", $name, ".normal.png")).as_slice(),
        )
    };
}

/// In the order of [`LinkKind`].
const LINKS: [[Files; 2]; LinkKind::ALL.len()] = [
    [with_relief!("link-face"), with_relief!("link-side")],
    [with_relief!("link-flat-face"), with_relief!("link-flat-side")],
    [with_relief!("link-rolo-face"), with_relief!("link-rolo-side")],
    [with_relief!("link-curb-face"), with_relief!("link-curb-over")],
];
const CLASP: Files = with_relief!("clasp");
const BANGLE: Files = with_relief!("bangle");
const LINEN: &[u8] = include_bytes!("../../../assets/kiosk/linen.png");

/// Decodes the pictures.
pub(super) fn load(mut commands: Commands, mut images: ResMut<Assets<Image>>, mut paper: ResMut<EguiUserTextures>) {
    // They are part of the program and tested; without one its place stays empty.
    let decoded = |bytes: &[u8]| {
        image::load_from_memory(bytes).map_or_else(|_| image::RgbaImage::new(1, 1), |picture| picture.to_rgba8())
    };
    let mut both = |(picture, relief): Files| {
        let image = images.add(pictures::lit_texture(&decoded(picture)));
        Relief { image, relief: images.add(pictures::relief_map(decoded(relief))) }
    };
    let links = LINKS.map(|link| link.map(&mut both));
    let [clasp, bangle] = [CLASP, BANGLE].map(&mut both);
    let mut sign = |(picture, _): Files| {
        let image = images.add(pictures::texture(decoded(picture)));
        paper.add_image(EguiTextureHandle::Strong(image))
    };
    let signs = LINKS.map(|link| link.map(&mut sign));
    commands.insert_resource(Signs { links: signs, bangle: sign(BANGLE) });
    let links = links.map(|[face, side]| LinkArt { face, side });
    let flat = image::RgbaImage::from_pixel(1, 1, image::Rgba([128, 128, 255, 255]));
    let flat = images.add(pictures::relief_map(flat));
    let nothing = Relief { image: flat.clone(), relief: flat };
    let linen = images.add(pictures::texture(decoded(LINEN)));
    commands.insert_resource(Art { links, clasp, bangle, linen, nothing });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_built_in_pictures_decode() {
        let links = LINKS.into_iter().flatten();
        for (picture, relief) in links.chain([CLASP, BANGLE, (LINEN, LINEN)]) {
            assert!(image::load_from_memory(picture).is_ok() && image::load_from_memory(relief).is_ok());
        }
    }
}
