//! Decoding of pictures, off the frame.

use std::{fs, path::Path, sync::Arc};

use bevy::prelude::*;
use bevy_egui::egui;

use super::{
    Silhouette, relief,
    texture::{lit_texture, reduced, relief_map, texture},
};

/// Longest side of the small pictures of trays and lists, in pixels.
pub(super) const SMALL_PX: u32 = 144;
/// Longest side of a picture on the stage or in the hand, in pixels: no drop is shown larger.
pub(super) const LARGE_PX: u32 = 512;

/// A small picture, ready to be shown.
pub(super) struct Small {
    pub image: Image,
    /// Size of the picture itself in pixels; only the proportion counts.
    pub size: egui::Vec2,
    pub silhouette: Arc<Silhouette>,
}

/// A large picture with its relief, ready to be shown.
pub(super) struct Large {
    pub image: Image,
    pub relief: Image,
}

/// What came of a file.
pub(super) enum Decoded {
    Small(Box<Small>),
    Large(Box<Large>),
}

fn read(file: &Path) -> Result<image::RgbaImage, String> {
    let bytes = fs::read(file).map_err(|error| error.to_string())?;
    Ok(image::load_from_memory(&bytes).map_err(|error| error.to_string())?.to_rgba8())
}

/// The small picture of a file.
pub(super) fn small(file: &Path) -> Result<Decoded, String> {
    let rgba = read(file)?;
    let size = egui::vec2(rgba.width() as f32, rgba.height() as f32);
    let silhouette = Arc::new(Silhouette::of(&rgba));
    Ok(Decoded::Small(Box::new(Small { image: texture(reduced(rgba, SMALL_PX)), size, silhouette })))
}

/// The large picture of a file, with the relief of another one, or else one estimated from the picture itself.
pub(super) fn large(file: &Path, relief_file: Option<&Path>) -> Result<Decoded, String> {
    let rgba = reduced(read(file)?, LARGE_PX);
    let given = relief_file.map(read).transpose();
    if let Err(error) = &given {
        warn!("a relief does not decode: {error}");
    }
    let relief = match given.ok().flatten() {
        Some(given) => reduced(given, LARGE_PX),
        None => relief::estimated(&rgba),
    };
    Ok(Decoded::Large(Box::new(Large { image: lit_texture(&rgba), relief: relief_map(relief) })))
}
