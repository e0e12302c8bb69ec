//! What is drawn, in the light of the room: pictures shaded anew as they turn, with a glint that wanders over them; the wire
//! of rings; and shadows.

use std::{collections::HashMap, f32::consts::PI};

use bevy::{
    asset::{embedded_asset, uuid_handle},
    mesh::MeshVertexBufferLayoutRef,
    prelude::*,
    reflect::TypePath,
    render::render_resource::{
        AsBindGroup, BlendComponent, BlendFactor, BlendOperation, BlendState, RenderPipelineDescriptor,
        SpecializedMeshPipelineError,
    },
    shader::ShaderRef,
    sprite_render::{AlphaMode2d, Material2d, Material2dKey, Material2dPlugin},
};

use super::art::Relief;
use crate::hang::Shadow;

/// A picture with its relief, a tint, and how it is drawn.
#[derive(Asset, TypePath, AsBindGroup, Debug, Clone)]
#[bind_group_data(Kind)]
pub(super) struct Lit {
    kind: Kind,
    #[uniform(0)]
    tint: LinearRgba,
    /// Of pictures and wire: strength of the glint, 0 for what is dull; how much the body turns about its own axis as it swings;
    /// how deep the ground lies behind what is clear, beside the picture's width; 1 by its refractive index. Of shadows:
    /// [`Shadow::FIRST_LOST`] and [`Shadow::ALL_LOST`].
    #[uniform(1)]
    surface: Vec4,
    #[texture(2)]
    #[sampler(3)]
    image: Handle<Image>,
    #[texture(4)]
    #[sampler(5)]
    relief: Handle<Image>,
    /// Shares of what is drawn on the square; see [`Dress`].
    #[uniform(6)]
    form: Vec4,
    /// The ground, which is seen bent through what is clear.
    #[texture(7)]
    #[sampler(8)]
    ground: Handle<Image>,
}

impl Material2d for Lit {
    fn fragment_shader() -> ShaderRef {
        "embedded://chatelaine/kiosk/stage/lit.wgsl".into()
    }

    fn alpha_mode(&self) -> AlphaMode2d {
        AlphaMode2d::Blend
    }

    fn specialize(
        descriptor: &mut RenderPipelineDescriptor,
        _layout: &MeshVertexBufferLayoutRef,
        key: Material2dKey<Self>,
    ) -> Result<(), SpecializedMeshPipelineError> {
        if let Some(fragment) = &mut descriptor.fragment {
            let kind = key.bind_group_data;
            fragment.shader_defs.extend(kind.shader_def().map(Into::into));
            if kind.is_shadow() {
                for target in fragment.targets.iter_mut().flatten() {
                    target.blend = Some(LESS_LIGHT);
                }
            }
        }
        Ok(())
    }
}

/// A shadow leaves a share of the light that is there, each colour's own.
const LESS_LIGHT: BlendState = BlendState {
    color: BlendComponent {
        src_factor: BlendFactor::Dst,
        dst_factor: BlendFactor::Zero,
        operation: BlendOperation::Add,
    },
    alpha: BlendComponent {
        src_factor: BlendFactor::Zero,
        dst_factor: BlendFactor::One,
        operation: BlendOperation::Add,
    },
};

/// What is drawn on a square. Each has a program of its own: where one program decides by a branch, a software driver reckons
/// all of its ways for every pixel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum Kind {
    Picture,
    GreyPicture,
    ClearPicture,
    ShadowOfPicture,
    Wire,
    ShadowOfWire,
    ShadowPatch,
}

impl Kind {
    const fn is_shadow(self) -> bool {
        matches!(self, Self::ShadowOfPicture | Self::ShadowOfWire | Self::ShadowPatch)
    }

    /// What the shader calls it; a picture is what nothing is said of.
    const fn shader_def(self) -> Option<&'static str> {
        match self {
            Self::Picture => None,
            Self::GreyPicture => Some("GREY_PICTURE"),
            Self::ClearPicture => Some("CLEAR_PICTURE"),
            Self::ShadowOfPicture => Some("SHADOW_OF_PICTURE"),
            Self::Wire => Some("WIRE"),
            Self::ShadowOfWire => Some("SHADOW_OF_WIRE"),
            Self::ShadowPatch => Some("SHADOW_PATCH"),
        }
    }
}

impl From<&Lit> for Kind {
    fn from(lit: &Lit) -> Self {
        lit.kind
    }
}

/// What is drawn on a square. All sizes are shares, so that a square that grows or glides keeps its dress.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Dress {
    kind: Kind,
    surface: Vec4,
    form: Vec4,
}

impl Dress {
    /// The picture, with a glint of this strength, turning about its own axis by `twist` of what it leans.
    pub(super) const fn picture(glint: f32, twist: f32) -> Self {
        Self { kind: Kind::Picture, surface: Vec4::new(glint, twist, 0.0, 0.0), form: Vec4::ZERO }
    }

    /// A grey picture of wire, stained by its metal, with a glint of this strength.
    pub(super) const fn grey(glint: f32) -> Self {
        Self { kind: Kind::GreyPicture, ..Self::picture(glint, 0.0) }
    }

    /// What is clear in the picture shows the ground, bent by this refractive index.
    pub(super) fn clear(self, refractive_index: f32) -> Self {
        let surface = self.surface.truncate().truncate().extend(GROUND_BELOW).extend(1.0 / refractive_index.max(1.0));
        Self { kind: Kind::ClearPicture, surface, ..self }
    }

    /// What is drawn on the square.
    pub(super) const fn kind(self) -> Kind {
        self.kind
    }

    /// How much larger the square is than what is drawn on it, in pixels: a picture's own edges need room to be smooth.
    pub(super) fn margin(self) -> f32 {
        if matches!(self.kind, Kind::Picture | Kind::GreyPicture | Kind::ClearPicture) { 2.0 } else { 0.0 }
    }

    /// The picture's shadow, blurred over `blur`, on a square that has [`SHADOW_ROOM`] for that round `size`; lengths in one
    /// unit.
    pub(super) fn shadow(size: Vec2, blur: f32) -> Self {
        let grown = Vec2::ONE + 2.0 * SHADOW_ROOM * blur / size.max(Vec2::splat(0.001));
        let form = Vec4::new(grown.x, grown.y, blur / size.x.max(0.001), 0.0);
        Self { kind: Kind::ShadowOfPicture, surface: LOST, form }
    }

    /// The right half of a ring's wire, or the left one; `thick` is the wire's diameter beside the ring's at its middle line,
    /// and which of its sides is nearer to the eye.
    pub(super) fn wire(thick: f32, right: bool, right_is_near: bool, glint: f32) -> Self {
        let side = |right: bool| if right { 1.0 } else { -1.0 };
        let surface = Vec4::new(glint, 0.0, 0.0, 0.0);
        Self { kind: Kind::Wire, surface, form: Vec4::new(thick, WIRE_ROOM, side(right), side(right_is_near)) }
    }

    /// A ring's shadow; its edge is blurred over `soft` times half of the wire's thickness.
    pub(super) fn wire_shadow(thick: f32, soft: f32) -> Self {
        Self { kind: Kind::ShadowOfWire, surface: LOST, form: Vec4::new(thick, soft, soft, 0.0) }
    }

    /// The shadow of what is smaller than its edge is wide: `hidden` of the window on average over the square, most of it in
    /// the middle.
    pub(super) fn patch(hidden: f32) -> Self {
        // The mean over its square of the patch that the shader draws, which has 1 in the middle.
        const MEAN: f32 = PI / 12.0;
        Self { kind: Kind::ShadowPatch, surface: LOST, form: Vec4::new((hidden / MEAN).min(1.0), 0.0, 0.0, 0.0) }
    }
}

/// What a shadow takes of the light.
const LOST: Vec4 = Vec4::new(Shadow::FIRST_LOST[0], Shadow::FIRST_LOST[1], Shadow::FIRST_LOST[2], Shadow::ALL_LOST);

/// How deep the ground lies behind the front of a clear body, beside its picture's width: a body is about half as deep as it is
/// wide, and lies a little over the ground.
const GROUND_BELOW: f32 = 0.6;

/// Room round a picture for its shadow's edge, beside how wide that is: half of it is outside, and a little for the blur's steps.
pub(super) const SHADOW_ROOM: f32 = 0.6;

/// Room round a wire for its smooth edge, in halves of its thickness.
pub(super) const WIRE_ROOM: f32 = 2.0;

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

/// What is drawn, its picture and relief, and the bits of tint and dress.
type Look = (Kind, AssetId<Image>, AssetId<Image>, [u32; 12]);

/// What is drawn alike shares a material, so that it is drawn in one go.
#[derive(Resource, Default)]
pub(super) struct Materials(HashMap<Look, Handle<Lit>>);

/// More than this many are not kept; what is drawn keeps its own.
const MOST: usize = 512;

/// The nearest of 256 steps to one.
fn stepped(share: f32) -> f32 {
    (share * 256.0).round() / 256.0
}

impl Materials {
    /// The material of a picture over `ground`, which is one for all of them.
    pub(super) fn of(
        &mut self,
        all: &mut Assets<Lit>,
        ground: &Handle<Image>,
        (picture, tint, dress): (&Relief, Color, Dress),
    ) -> Handle<Lit> {
        // What swings or flies changes a little in every frame; steps that no eye sees keep the materials few.
        let tint = tint.to_linear();
        let tint = tint.with_alpha(stepped(tint.alpha));
        let (surface, form) = (dress.surface, Vec4::from_array(dress.form.to_array().map(stepped)));
        if self.0.len() >= MOST {
            self.0.clear();
        }
        let mut bits = [0; 12];
        let parts = tint.to_f32_array().into_iter().chain(surface.to_array()).chain(form.to_array());
        for (bit, part) in bits.iter_mut().zip(parts) {
            *bit = part.to_bits();
        }
        let look = (dress.kind, picture.image.id(), picture.relief.id(), bits);
        let found = self.0.entry(look).or_insert_with(|| {
            let (image, relief) = (picture.image.clone(), picture.relief.clone());
            all.add(Lit { kind: dress.kind, tint, surface, form, image, relief, ground: ground.clone() })
        });
        found.clone()
    }

    /// Lets go of all of them, so that pictures which were replaced are freed.
    pub(super) fn forget(&mut self) {
        self.0.clear();
    }
}

#[cfg(test)]
mod tests {
    use super::Kind;

    /// A software driver reckons all ways of a branch for every pixel, and builds its program anew for all values of a material
    /// that decide one: with a tint among them the tablet's memory grew by gigabytes within a minute.
    #[test]
    fn no_value_of_a_material_decides_a_branch() {
        let code = include_str!("lit.wgsl").lines().map(str::trim_start);
        let code = code.filter(|line| !line.starts_with("//") && !line.starts_with('#'));
        let branches: Vec<&str> = code.filter(|line| line.contains("if ") || line.contains("switch ")).collect();
        assert!(branches.is_empty(), "{branches:#?}");
    }

    /// What the shader does not know would be drawn as a picture.
    #[test]
    fn the_shader_knows_every_kind() {
        let named = [
            Kind::GreyPicture,
            Kind::ClearPicture,
            Kind::ShadowOfPicture,
            Kind::Wire,
            Kind::ShadowOfWire,
            Kind::ShadowPatch,
        ];
        for kind in named {
            let asked = format!("ifdef {}\n", kind.shader_def().expect("a name"));
            assert!(include_str!("lit.wgsl").contains(&asked), "{asked}");
        }
    }
}
