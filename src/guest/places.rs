//! Where everything of a piece hangs, or why it is no piece.

use crate::{
    catalog::{Catalog, PieceError},
    craft::{DropKind, Piece},
    hang::{HangError, PiecePlaces, place_piece, worn_neck_mm},
};

/// Why a piece is no piece.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Trouble {
    /// The catalogue does not make it.
    #[error(transparent)]
    Piece(#[from] PieceError),
    /// It does not hang.
    #[error(transparent)]
    Hang(#[from] HangError),
}

/// Where everything of `piece` hangs.
///
/// # Errors
/// The catalogue does not make it, or there is no room on the base.
pub fn places_of(catalog: &Catalog, piece: &Piece) -> Result<PiecePlaces, Trouble> {
    let (base, hung) = catalog.hung(piece)?;
    let kinds: Vec<&DropKind> = hung.iter().map(AsRef::as_ref).collect();
    Ok(place_piece(base, piece.length, &kinds, worn_neck_mm(base, piece), catalog.table.rho)?)
}
