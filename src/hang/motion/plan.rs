//! What moves.

use super::{ChainPlan, Hanging, HoopPlan};
use crate::{
    craft::{Base, BaseKind, DropKind, Length, Token},
    hang::{HangError, front_of_body, piece::links_in},
};

/// A base with its drops, as it moves.
#[derive(Debug, Clone, PartialEq)]
pub struct MotionPlan {
    /// What the drops hang on, as it moves.
    pub base: MovingBase,
    /// The drops, left to right.
    pub drops: Vec<Hanging>,
    /// How far neighbouring bodies overlap; see [`crate::hang::cluster_gaps`].
    pub rho: f64,
}

/// A base that moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MovingBase {
    /// A necklace's front.
    Chain(ChainPlan),
    /// A bangle, which swings as a whole.
    Hoop(HoopPlan),
}

impl MotionPlan {
    /// The piece that [`crate::hang::place_piece`] places, each of its drops with its token.
    ///
    /// # Errors
    /// The necklace is too short for the neck.
    pub fn of_piece<'a>(
        base: &Base,
        length: Option<Length>,
        drops: impl IntoIterator<Item = (Token, &'a DropKind)>,
        neck_mm: f64,
        rho: f64,
    ) -> Result<Self, HangError> {
        let moving = match &base.kind {
            BaseKind::Necklace(necklace) => {
                let length = length.unwrap_or(necklace.lengths.usual);
                let (front_length_mm, width_mm) = front_of_body(length.mm(), neck_mm)?;
                let links = links_in(necklace, front_length_mm);
                let g_per_mm = necklace.chain.g_per_mm();
                MovingBase::Chain(ChainPlan { front_length_mm, width_mm, g_per_mm, links })
            }
            BaseKind::Bangle(bangle) => MovingBase::Hoop(HoopPlan {
                inside_mm: bangle.inside.mm(),
                wire_mm: bangle.wire.mm(),
                mass_g: bangle.weight.g(),
                free_arc_deg: bangle.free_arc_deg,
                hook_g: bangle.hook_weight.g(),
            }),
        };
        let drops = drops.into_iter().map(|(token, kind)| Hanging::new(token, kind)).collect();
        Ok(Self { base: moving, drops, rho })
    }
}
