//! Materials and finishes.

use serde::{Deserialize, Serialize};

macro_rules! words {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $word:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        pub enum $name { $($(#[$vdoc])* $variant),+ }
        impl $name {
            /// Every one of them.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];
            /// The name as it stands in a catalogue file.
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => stringify!($variant)),+ }
            }
            /// Plain English, for lists and messages.
            pub const fn word(self) -> &'static str {
                match self { $(Self::$variant => $word),+ }
            }
            /// The one written `name` in a catalogue file.
            pub fn from_name(name: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.name() == name)
            }
        }
    };
}
pub(super) use words;

words! {
    /// The colour and treatment of a metal's surface.
    Finish {
        /// Darkened, polished on the high places.
        AntiqueBrass = "antique brass",
        /// Darkened silver plate or silver-coloured alloy.
        AntiqueSilver = "antique silver",
        /// Copper, bare or lacquered.
        Copper = "copper",
        /// Bright yellow gold plate.
        Gold = "gold",
        /// Bright silver.
        Silver = "silver",
        /// Dark grey plate.
        Gunmetal = "gunmetal",
        /// Stainless steel.
        Steel = "steel",
    }
}

words! {
    /// What a part is made of, as far as the maker knows.
    Material {
        /// Brass.
        Brass = "brass",
        /// Bronze.
        Bronze = "bronze",
        /// Copper.
        CopperMetal = "copper",
        /// Silver or sterling silver.
        SilverMetal = "silver",
        /// Steel, carbon or stainless.
        SteelMetal = "steel",
        /// Zinc casting alloy.
        ZincAlloy = "zinc alloy",
        /// Aluminium.
        Aluminium = "aluminium",
        /// A metal nobody tested: old jewellery, found parts.
        UnknownMetal = "unknown metal",
        /// Soda-lime or borosilicate glass.
        Glass = "glass",
        /// Crystal glass.
        CrystalGlass = "crystal glass",
        /// Quartz and other stones.
        Stone = "stone",
        /// Shell and mother-of-pearl.
        Shell = "shell",
        /// Freshwater or imitation pearl.
        Pearl = "pearl",
        /// Acrylic.
        Acrylic = "acrylic",
        /// Cast resin.
        Resin = "resin",
        /// Wood.
        Wood = "wood",
        /// Cork.
        Cork = "cork",
        /// Paper.
        Paper = "paper",
        /// Silk.
        Silk = "silk",
        /// Cotton.
        Cotton = "cotton",
        /// Leather.
        Leather = "leather",
        /// Ceramic and porcelain.
        Ceramic = "ceramic",
        /// A sweet or another food under lacquer.
        Food = "food",
    }
}
