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

impl Material {
    /// Whether the small-parts test leaves pieces of it out: paper, fabric, yarn, string. Source: 16 CFR 1501.4(b)(2).
    pub const fn is_left_out(self) -> bool {
        matches!(self, Self::Paper | Self::Silk | Self::Cotton)
    }
}

/// The colours in which a finish is drawn, as 8-bit sRGB.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tones {
    /// In the recesses and at the lower edge.
    pub shade: [u8; 3],
    /// The metal itself.
    pub body: [u8; 3],
    /// Where the light falls.
    pub shine: [u8; 3],
}

impl Finish {
    /// The colours in which it is drawn, the same on every screen and picture.
    pub const fn tones(self) -> Tones {
        let (shade, body, shine) = match self {
            Self::AntiqueBrass => ([74, 52, 22], [166, 126, 62], [240, 214, 150]),
            Self::AntiqueSilver => ([58, 58, 62], [150, 150, 152], [238, 238, 236]),
            Self::Copper => ([92, 40, 22], [184, 104, 68], [250, 196, 160]),
            Self::Gold => ([122, 84, 12], [214, 170, 60], [255, 240, 172]),
            Self::Silver => ([92, 94, 100], [190, 192, 196], [255, 255, 255]),
            Self::Gunmetal => ([26, 28, 32], [82, 86, 94], [176, 182, 190]),
            Self::Steel => ([70, 74, 80], [162, 168, 176], [240, 244, 248]),
        };
        Tones { shade, body, shine }
    }
}
