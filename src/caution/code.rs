//! What cautions are about.

use serde::{Deserialize, Serialize};

/// What a caution is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CautionCode {
    /// Fits the test cylinder: a small child can choke on it.
    SmallPart,
    /// As large as a ball on which a small child can choke, though it does not fit the test cylinder.
    SmallBall,
    /// A magnet whose flux index makes it dangerous when swallowed.
    Magnet,
    /// A button or coin cell.
    CoinCell,
    /// Glass or crystal that can break.
    Glass,
    /// A sharp edge or point.
    Sharp,
    /// A necklace without a place that gives way when pulled.
    Breakaway,
    /// A long loop round a young child's neck.
    CordLoop,
    /// Metal that nobody tested for lead, cadmium and nickel.
    UnknownMetal,
    /// Lead: found by a test, or usual in the material.
    Lead,
    /// Cadmium: found by a test, or usual in the material.
    Cadmium,
    /// Nickel given off: found by a test, or usual in the material or plating.
    Nickel,
    /// Lead in paint or lacquer: found by a test, or possible without one.
    Paint,
    /// Food under lacquer, with allergens.
    FoodAllergen,
    /// What a child could take for food.
    LooksLikeFood,
    /// A liquid that can come out.
    Liquid,
    /// Heavy on a child's neck.
    HeavyOnChild,
    /// A necklace that may not close on the neck.
    ChainTooShort,
    /// A bangle that does not go over the hand, or slips off it.
    BangleSize,
}

impl CautionCode {
    /// Every caution there is, in the order in which they are said.
    pub const ALL: [Self; 19] = [
        Self::SmallPart,
        Self::SmallBall,
        Self::Magnet,
        Self::CoinCell,
        Self::Glass,
        Self::Sharp,
        Self::Breakaway,
        Self::CordLoop,
        Self::UnknownMetal,
        Self::Lead,
        Self::Cadmium,
        Self::Nickel,
        Self::Paint,
        Self::FoodAllergen,
        Self::LooksLikeFood,
        Self::Liquid,
        Self::HeavyOnChild,
        Self::ChainTooShort,
        Self::BangleSize,
    ];

    /// The name in words, for the seller and the terminal.
    pub fn words(self) -> String {
        self.code().replace('_', " ")
    }

    /// The name in JSON, rules and language files; never changes.
    pub const fn code(self) -> &'static str {
        match self {
            Self::SmallPart => "small_part",
            Self::SmallBall => "small_ball",
            Self::Magnet => "magnet",
            Self::CoinCell => "coin_cell",
            Self::Glass => "glass",
            Self::Sharp => "sharp",
            Self::Breakaway => "breakaway",
            Self::CordLoop => "cord_loop",
            Self::UnknownMetal => "unknown_metal",
            Self::Lead => "lead",
            Self::Cadmium => "cadmium",
            Self::Nickel => "nickel",
            Self::Paint => "paint",
            Self::FoodAllergen => "food_allergen",
            Self::LooksLikeFood => "looks_like_food",
            Self::Liquid => "liquid",
            Self::HeavyOnChild => "heavy_on_child",
            Self::ChainTooShort => "chain_too_short",
            Self::BangleSize => "bangle_size",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_are_the_names_in_json() {
        for code in CautionCode::ALL {
            assert_eq!(serde_json::to_string(&code).unwrap(), format!("{:?}", code.code()));
        }
        assert!(CautionCode::ALL.is_sorted());
    }
}
