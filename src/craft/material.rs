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
        /// The colour of darkened silver, whatever the metal.
        AntiqueSilver = "antique silver-coloured",
        /// Copper, bare or lacquered.
        Copper = "copper",
        /// The colour of bright yellow gold, whatever the metal.
        Gold = "gold-coloured",
        /// The colour of bright silver, whatever the metal.
        Silver = "silver-coloured",
        /// Dark grey plate.
        Gunmetal = "gunmetal",
        /// The colour of bare steel.
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
        /// Gold of 10 karat or more.
        GoldMetal = "gold",
        /// A layer of gold bonded to brass.
        GoldFilled = "gold-filled brass",
        /// Steel of which nobody says that it is stainless.
        SteelMetal = "steel",
        /// Stainless steel.
        StainlessSteel = "stainless steel",
        /// Titanium.
        Titanium = "titanium",
        /// Copper, nickel and zinc; no silver is in it.
        NickelSilver = "nickel silver",
        /// Tin alloy for casting.
        Pewter = "pewter",
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
        /// Modelling clay of plastic, hardened in the oven.
        PolymerClay = "polymer clay",
        /// Nylon.
        Nylon = "nylon",
        /// Rubber and silicone.
        Rubber = "rubber",
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
        /// Wool and felt.
        Wool = "wool",
        /// Leather.
        Leather = "leather",
        /// Bone and horn.
        Bone = "bone",
        /// Ceramic and porcelain, with its glaze.
        Ceramic = "ceramic",
        /// Glass melted onto metal.
        Enamel = "enamel",
        /// A sweet or another food under lacquer.
        Food = "food",
    }
}

impl Material {
    /// Whether it is soft: paper, fabric, yarn. What is rigid in a part of it, such as a tassel's cap, is smaller than
    /// the whole.
    pub const fn is_soft(self) -> bool {
        matches!(self, Self::Paper | Self::Silk | Self::Cotton | Self::Wool)
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

    /// Whether `material` has this colour by itself, darkened or polished, without another metal over it. Common
    /// practice, no source.
    pub const fn is_own_colour_of(self, material: Material) -> bool {
        use Material::*;
        match self {
            Self::AntiqueBrass => matches!(material, Brass | Bronze),
            Self::AntiqueSilver | Self::Silver => {
                matches!(material, SilverMetal | NickelSilver | Pewter | Aluminium | StainlessSteel | Titanium)
            }
            Self::Copper => matches!(material, CopperMetal),
            Self::Gold => matches!(material, GoldMetal | GoldFilled),
            Self::Gunmetal => matches!(material, Titanium),
            Self::Steel => matches!(material, SteelMetal | StainlessSteel | Titanium),
        }
    }
}
