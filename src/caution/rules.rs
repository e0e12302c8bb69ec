//! The rules behind the cautions, as data.

use serde::{Deserialize, Serialize};

use super::Gauge;

/// Whose rules a table follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Region {
    /// United States.
    #[serde(rename = "US")]
    Us,
    /// European Union.
    #[serde(rename = "EU")]
    Eu,
    /// United Kingdom.
    #[serde(rename = "UK")]
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
    /// The rule with its number, and its date where one was read.
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

    /// The name in JSON and in language files; never changes.
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

    /// The rule it rests on in `region`: the whole table.
    pub const fn rule(self, region: Region) -> Rule {
        use Region::{Eu, Uk, Us};
        match (self, region) {
            (Self::SmallPart, Us) => read("16 CFR 1501.4 (US small-parts rule, as of June 2026)"),
            (Self::SmallPart, Eu) => remembered("EN 71-1 clause 8.2 (small parts cylinder)"),
            (Self::SmallPart, Uk) => remembered("BS EN 71-1 clause 8.2 (small parts cylinder)"),
            (Self::Magnet, Us) => read("16 CFR 1262 (magnets, since October 2022): flux index below 50 kG²mm²"),
            (Self::Magnet, Eu | Uk) => remembered("EN 71-1 (magnets): flux index below 50 kG²mm²"),
            (Self::CoinCell, Us) => read("16 CFR 1263 (button and coin cells, since October 2023)"),
            (Self::CoinCell, Eu) => {
                remembered("Regulation (EU) 2023/988 (general product safety): button and coin cells")
            }
            (Self::CoinCell, Uk) => remembered("General Product Safety Regulations 2005 (UK): button and coin cells"),
            (Self::Glass, Us) => remembered("16 CFR 1500.49 (sharp edges, articles for children under 8)"),
            (Self::Glass, Eu | Uk) => remembered("EN 71-1 (glass and sharp edges)"),
            (Self::Sharp, Us) => remembered("16 CFR 1500.48 (sharp points, articles for children under 8)"),
            (Self::Sharp, Eu | Uk) => remembered("EN 71-1 (sharp points)"),
            (Self::CordLoop, Us) => read("ASTM F2923 (children's jewellery): breakaway at 15 lbf"),
            (Self::CordLoop, Eu | Uk) => remembered("EN 71-1 (cords and loops round the neck)"),
            (Self::UnknownMetal, Us) => read("CPSIA (lead 100 ppm) and ASTM F2923 (cadmium, nickel)"),
            (Self::UnknownMetal, Eu) => read("REACH Annex XVII entries 23, 27 and 63 (cadmium, nickel, lead)"),
            (Self::UnknownMetal, Uk) => remembered("UK REACH Annex XVII entries 23, 27 and 63 (cadmium, nickel, lead)"),
            (Self::FoodAllergen, Us) => read("FASTER Act, Public Law 117-11 (2021): nine major food allergens"),
            (Self::FoodAllergen, Eu) => remembered("Regulation (EU) 1169/2011 Annex II (allergens)"),
            (Self::FoodAllergen, Uk) => remembered("Food Information Regulations 2014 (UK): allergens"),
            (Self::HeavyOnChild, _) => remembered("common practice, no source"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_are_the_names_in_json_and_regions_read_back() {
        for code in CautionCode::ALL {
            assert_eq!(serde_json::to_string(&code).unwrap(), format!("{:?}", code.code()));
        }
        for region in [Region::Us, Region::Eu, Region::Uk] {
            assert_eq!(Region::from_code(region.code()), Some(region));
            assert_eq!(serde_json::to_string(&region).unwrap(), format!("{:?}", region.code()));
        }
        assert_eq!(Region::from_code("us"), None);
    }

    #[test]
    fn each_region_has_its_own_small_parts_rule() {
        let rule = |region| CautionCode::SmallPart.rule(region);
        assert!(rule(Region::Us).name.contains("16 CFR 1501.4") && !rule(Region::Us).from_memory);
        assert!(rule(Region::Eu).name.contains("EN 71-1 clause 8.2") && rule(Region::Eu).from_memory);
        assert_eq!((Region::Us.gauge(), Region::Uk.gauge()), (Gauge::Inch, Gauge::Metric));
    }
}
