//! What a piece is made of: quantities, wires, rings, materials, bases, drops, and the piece itself.
//!
//! A pure room: no files, no clock, no engine. Every length is in millimetres, every mass in grams,
//! carried by a type or by the name of the field.

mod allergen;
mod base;
mod body;
mod day;
mod density;
mod design;
mod drop_kind;
mod facts;
mod falls;
mod fit;
mod girth;
mod home;
mod material;
mod metal_test;
mod piece;
mod quantity;
mod ring;
mod wearer;
mod wire;

pub use allergen::{Allergen, UsualAllergen};
pub use base::{Bangle, Base, BaseKind, Clasp, LengthRange, LinkKind, Necklace};
pub use body::{Body, OutlineShape};
pub use day::Day;
pub use density::{Density, alloy_g_cm3, weight_of};
pub use design::{Change, Design, History, HungDrop, Token};
pub use drop_kind::{Colour, DropKind, Sort};
pub use facts::{Declaration, Facts, LeadExemption, Magnet, Plating, Substance};
pub use falls::{BodyPlace, TRADE_LENGTHS, TradeLength, trade_length};
pub use fit::{ClosedEnd, Fit, fit_on, fit_over};
pub use girth::{BAND_HANDS, BAND_NECKS, Girth, NECK_EASE_MM, closes_on_mm, slips_over_hand_mm};
pub use home::{Home, HomeError};
pub use material::{Finish, Material, Tones};
pub use metal_test::MetalTest;
pub use piece::Piece;
pub use quantity::{Length, LinearDensity, Mass, QuantityError};
pub use ring::{Ring, RingError};
pub use wearer::Wearer;
pub use wire::{awg_mm, swg_mm};
