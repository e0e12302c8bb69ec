//! What a piece is made of: quantities, wires, rings, materials, bases, drops, and the piece itself.
//!
//! A pure room: no files, no clock, no engine. Every length is in millimetres, every mass in grams,
//! carried by a type or by the name of the field.
//!
//! | file | look here for |
//! | --- | --- |
//! | `quantity`, `day` | lengths and masses with their units; days of the calendar |
//! | `wire`, `ring` | wire gauges; jump rings and bails |
//! | `material`, `density`, `clear` | materials, platings and finishes; how heavy they are, how they bend light |
//! | `body` | the solid shape of a drop |
//! | `base`, `drop_kind`, `home` | what drops hang on; what hangs; where it lies on the table |
//! | `assortment` | many unlike pieces in one compartment, and which of them a hung drop looks like |
//! | `facts`, `allergen`, `metal_test` | what is known of a part: food in it, what a laboratory found |
//! | `guess`, `usual` | what nobody has told of a part; what is usual of each sort, taken the careful way |
//! | `fit` | whether a ring passes over the closed end of a base |
//! | `wearer`, `girth`, `falls` | who wears it; necks and hands; where a length falls |
//! | `piece`, `design` | a base with its drops; the piece while a guest works on it, with the way back |

mod allergen;
mod assortment;
mod base;
mod body;
mod clear;
mod day;
mod density;
mod design;
mod drop_kind;
mod facts;
mod falls;
mod fit;
mod girth;
mod guess;
mod home;
mod material;
mod metal_test;
mod piece;
mod quantity;
mod ring;
mod usual;
mod wearer;
mod wire;

pub use allergen::{Allergen, UsualAllergen};
pub use assortment::{Look, LookNumber, MOST_LOOKS, free_look};
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
pub use guess::Guess;
pub use home::{Home, HomeError};
pub use material::{Finish, Material, Tones};
pub use metal_test::MetalTest;
pub use piece::{MOST_DROPS, NECKS_MM, PIECE_LENGTHS_MM, Piece};
pub use quantity::{
    HEAVIEST_KG, HEAVIEST_KG_PER_M, LONGEST_M, Length, LinearDensity, Mass, QuantityError, WantedQuantity,
};
pub use ring::{Ring, RingError};
pub use usual::{
    USUAL_BANGLE, USUAL_END_RING, USUAL_FINISH, USUAL_FREE_ARC_DEG, USUAL_HOOK, USUAL_RING, USUAL_STOCK, UnknownSort,
    UsualChain, bangle_weight, chain_g_per_m, heaviest_g,
};
pub use wearer::Wearer;
pub use wire::{awg_mm, swg_mm};
