//! The rules behind the cautions, as data.

use serde::{Deserialize, Serialize};

use super::Gauge;

/// Whose rules a table follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Region {
    /// United States.
    Us,
    /// European Union.
    Eu,
    /// United Kingdom.
    Uk,
}

impl Region {
    /// The code in catalogue files and in the terminal.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Us => "US",
            Self::Eu => "EU",
            Self::Uk => "UK",
        }
    }

    /// The region written `code`.
    pub fn from_code(code: &str) -> Option<Self> {
        [Self::Us, Self::Eu, Self::Uk].into_iter().find(|region| region.code() == code)
    }

    /// The drawing of the test cylinder that the region's rule uses.
    pub const fn gauge(self) -> Gauge {
        match self {
            Self::Us => Gauge::Inch,
            Self::Eu | Self::Uk => Gauge::Metric,
        }
    }
}

/// What a caution is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CautionCode {
    /// Fits the test cylinder: a small child can choke on it.
    SmallPart,
    /// A magnet whose flux index makes it dangerous when swallowed.
    Magnet,
    /// A button or coin cell.
    CoinCell,
    /// Glass or crystal that can break.
    Glass,
    /// A sharp edge or point.
    Sharp,
    /// A long loop round a young child's neck without a place that gives way.
    CordLoop,
    /// Metal that nobody tested for lead, cadmium and nickel.
    UnknownMetal,
    /// Food under lacquer, with allergens.
    FoodAllergen,
    /// Heavy on a child's neck.
    HeavyOnChild,
}

/// Where a caution comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rule {
    /// The rule with its number and date.
    pub name: &'static str,
    /// Whether number or figure were written down from memory.
    pub from_memory: bool,
}

const fn read(name: &'static str) -> Rule {
    Rule { name, from_memory: false }
}

const fn remembered(name: &'static str) -> Rule {
    Rule { name, from_memory: true }
}

impl CautionCode {
    /// Every caution there is.
    pub const ALL: [Self; 9] = [
        Self::SmallPart,
        Self::Magnet,
        Self::CoinCell,
        Self::Glass,
        Self::Sharp,
        Self::CordLoop,
        Self::UnknownMetal,
        Self::FoodAllergen,
        Self::HeavyOnChild,
    ];

    /// The name in JSON and in language files.
    pub const fn code(self) -> &'static str {
        match self {
            Self::SmallPart => "small_part",
            Self::Magnet => "magnet",
            Self::CoinCell => "coin_cell",
            Self::Glass => "glass",
            Self::Sharp => "sharp",
            Self::CordLoop => "cord_loop",
            Self::UnknownMetal => "unknown_metal",
            Self::FoodAllergen => "food_allergen",
            Self::HeavyOnChild => "heavy_on_child",
        }
    }

    /// The rule it rests on in `region`.
    pub const fn rule(self, region: Region) -> Rule {
        use Region::{Eu, Uk, Us};
        match (self, region) {
            (Self::SmallPart, Us) => read("16 CFR 1501.4, small parts for children under 3"),
            (Self::SmallPart, Eu | Uk) => remembered("EN 71-1 clause 8.2, small parts cylinder"),
            (Self::Magnet, Us) => read("16 CFR 1262 (2022), magnets: flux index below 50 kG²mm²"),
            (Self::Magnet, Eu | Uk) => remembered("EN 71-1, magnets: flux index below 50 kG²mm²"),
            (Self::CoinCell, Us) => read("16 CFR 1263 (2023), button and coin cells, Reese's Law"),
            (Self::CoinCell, Eu | Uk) => remembered("General product safety rules on button and coin cells"),
            (Self::Glass, _) => remembered("16 CFR 1500.49 and EN 71-1, sharp edges of broken glass"),
            (Self::Sharp, _) => remembered("16 CFR 1500.48 and EN 71-1, sharp points"),
            (Self::CordLoop, _) => read("ASTM F2923, children's jewellery: breakaway at 15 lbf"),
            (Self::UnknownMetal, Us) => read("CPSIA, 100 ppm lead; ASTM F2923, cadmium and nickel"),
            (Self::UnknownMetal, Eu | Uk) => read("REACH Annex XVII entries 23, 27 and 63: cadmium, nickel, lead"),
            (Self::FoodAllergen, Us) => read("FASTER Act (2021), nine major food allergens"),
            (Self::FoodAllergen, Eu | Uk) => remembered("Regulation (EU) 1169/2011 Annex II, allergens"),
            (Self::HeavyOnChild, _) => remembered("common practice, no source"),
        }
    }
}
