//! A piece's picture, drawn on the CPU from the same places as the stage.

mod draw;
mod metal;
mod shadow;

use std::collections::BTreeMap;

use tiny_skia::Pixmap;

use crate::{
    catalog::{Catalog, Picture, PieceError},
    craft::{DropKind, Piece},
    hang::{HangError, place_piece, worn_neck_mm},
};

/// Why there is no picture.
#[derive(Debug, thiserror::Error)]
pub enum PortraitError {
    /// The catalogue can't make the piece.
    #[error(transparent)]
    Piece(#[from] PieceError),
    /// The piece does not hang.
    #[error(transparent)]
    Hang(#[from] HangError),
    /// A size of nothing, or beyond what a page shows.
    #[error("a picture of {0} × {1} pixels can't be made; ask for 16 to 4096 each way")]
    Size(u32, u32),
    /// The PNG could not be written.
    #[error("the picture could not be encoded: {0}")]
    Encode(String),
}

/// The picture of `piece` on transparent ground, `width_px` × `height_px`, as a PNG file.
///
/// A drop whose picture does not decode is drawn as its ring alone.
///
/// # Errors
/// The piece is none of the catalogue's, it does not hang, or the size is nothing or too large.
pub fn portrait_png(
    catalog: &Catalog,
    pictures: &BTreeMap<String, Picture>,
    piece: &Piece,
    width_px: u32,
    height_px: u32,
) -> Result<Vec<u8>, PortraitError> {
    paint(catalog, pictures, piece, width_px, height_px)?
        .encode_png()
        .map_err(|error| PortraitError::Encode(error.to_string()))
}

fn paint(
    catalog: &Catalog,
    pictures: &BTreeMap<String, Picture>,
    piece: &Piece,
    width_px: u32,
    height_px: u32,
) -> Result<Pixmap, PortraitError> {
    let sides = 16..=4096;
    let canvas =
        if sides.contains(&width_px) && sides.contains(&height_px) { Pixmap::new(width_px, height_px) } else { None };
    let mut canvas = canvas.ok_or(PortraitError::Size(width_px, height_px))?;
    let (base, hung) = catalog.hung(piece)?;
    let kinds: Vec<&DropKind> = hung.iter().map(AsRef::as_ref).collect();
    let places = place_piece(base, piece.length, &kinds, worn_neck_mm(base, piece), catalog.table.rho)?;
    draw::piece(&mut canvas, base, &kinds, &places, pictures);
    Ok(canvas)
}
