//! A picture in the light of the room: shaded anew as it turns, with a glint that wanders over it.

use std::collections::HashMap;

use bevy::{
    asset::{embedded_asset, uuid_handle},
    prelude::*,
    reflect::TypePath,
    render::render_resource::AsBindGroup,
    shader::ShaderRef,
    sprite_render::{AlphaMode2d, Material2d, Material2dPlugin},
};

use super::art::Relief;

/// A picture with its relief, a tint, and how it shines.
#[derive(Asset, TypePath, AsBindGroup, Debug, Clone)]
pub(super) struct Lit {
    #[uniform(0)]
    tint: LinearRgba,
    /// Strength of the glint, 0 for what is dull, and how much the body turns about its own axis as it swings.
    #[uniform(1)]
    surface: Vec2,
    #[texture(2)]
    #[sampler(3)]
    image: Handle<Image>,
    #[texture(4)]
    #[sampler(5)]
    relief: Handle<Image>,
}

impl Material2d for Lit {
    fn fragment_shader() -> ShaderRef {
        "embedded://chatelaine/kiosk/stage/lit.wgsl".into()
    }

    fn alpha_mode(&self) -> AlphaMode2d {
        AlphaMode2d::Blend
    }
}

/// The one square that everything is drawn on, one pixel large.
pub(super) const SQUARE: Handle<Mesh> = uuid_handle!("5c6a5d0e-9a0b-4b57-9d0c-6f0c5b0a7d11");

pub(super) fn plugin(app: &mut App) {
    embedded_asset!(app, "lit.wgsl");
    app.add_plugins(Material2dPlugin::<Lit>::default()).init_resource::<Materials>();
    let square = Mesh::from(Rectangle::new(1.0, 1.0));
    // Its x axis goes along as the tangent: by that the shader knows how far it is turned.
    let square = square.with_inserted_attribute(Mesh::ATTRIBUTE_TANGENT, vec![[1.0, 0.0, 0.0, 1.0]; 4]);
    // A fixed handle always has its place.
    let _ = app.world_mut().resource_mut::<Assets<Mesh>>().insert(&SQUARE, square);
}

/// Picture, relief, and the bits of tint and surface.
type Look = (AssetId<Image>, AssetId<Image>, [u32; 6]);

/// What is drawn alike shares a material, so that it is drawn in one go.
#[derive(Resource, Default)]
pub(super) struct Materials(HashMap<Look, Handle<Lit>>);

impl Materials {
    /// The material of a picture.
    pub(super) fn of(&mut self, all: &mut Assets<Lit>, picture: &Relief, tint: Color, surface: Vec2) -> Handle<Lit> {
        let tint = tint.to_linear();
        let bits = [tint.red, tint.green, tint.blue, tint.alpha, surface.x, surface.y].map(f32::to_bits);
        let found = self.0.entry((picture.image.id(), picture.relief.id(), bits)).or_insert_with(|| {
            all.add(Lit { tint, surface, image: picture.image.clone(), relief: picture.relief.clone() })
        });
        found.clone()
    }

    /// Lets go of all of them, so that pictures which were replaced are freed.
    pub(super) fn forget(&mut self) {
        self.0.clear();
    }
}
