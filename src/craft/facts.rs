//! What is known of a part: the same for a drop and for a base, so that one judge looks at both.

use serde::{Deserialize, Serialize};

use super::{Allergen, Body, Day, Finish, Length, Material, MetalTest, material::words};

/// Everything about a part by which its cautions follow. What is not known counts as the worst that is usual, so the
/// defaults of what nobody said are the careful ones.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Facts {
    /// Everything it is made of.
    pub materials: Vec<Material>,
    /// What lies over its metal.
    #[serde(default)]
    pub plating: Plating,
    /// Whether it is painted or lacquered in colour.
    #[serde(default)]
    pub painted: bool,
    /// What a laboratory found in its metal, crystal or paint.
    #[serde(default)]
    pub tested: Option<MetalTest>,
    /// What its supplier states in writing without a test report.
    #[serde(default)]
    pub declared: Option<Declaration>,
    /// Why its lead is lawful where a rule has such exemptions.
    #[serde(default)]
    pub lead_exempt: Option<LeadExemption>,
    /// A magnet in it.
    #[serde(default)]
    pub magnet: Option<Magnet>,
    /// Whether it holds a button or coin cell.
    #[serde(default)]
    pub coin_cell: bool,
    /// Whether it has a sharp edge or point.
    #[serde(default)]
    pub sharp: bool,
    /// Allergens in a food it is made of.
    #[serde(default)]
    pub allergens: Vec<Allergen>,
    /// Whether a child could take it for food.
    #[serde(default)]
    pub looks_like_food: bool,
    /// Whether a liquid is in it.
    #[serde(default)]
    pub liquid: bool,
    /// What can come off: a cork, a stone, a clapper, a filling. Each of them may be a small part.
    #[serde(default)]
    pub comes_off: Vec<Body>,
}

words! {
    /// What lies over a part's metal.
    #[derive(Default)]
    Plating {
        /// Nobody said: it may be nickel, which is usual under silver-coloured and gold-coloured plate.
        #[default]
        Unknown = "unknown plating",
        /// The metal is bare.
        None = "no plating",
        /// Plated without nickel.
        NickelFree = "nickel-free plating",
        /// Nickel, or nickel under the visible layer.
        Nickel = "nickel plating",
    }
}

words! {
    /// What a test or a supplier's statement is about.
    Substance {
        /// Lead in the part itself.
        Lead = "lead",
        /// Cadmium in the part itself.
        Cadmium = "cadmium",
        /// Nickel given off to the skin.
        Nickel = "nickel",
        /// Lead in paint and lacquer.
        Paint = "lead in paint",
    }
}

/// What a supplier states in writing, without a test report: more than nothing, less than a test.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Declaration {
    /// What the paper is called, for the seller to find it again.
    pub paper: String,
    /// The date on the paper.
    pub dated: Day,
    /// What it says to be within the limits.
    pub says: Vec<Substance>,
}

words! {
    /// Why lead in a part is lawful. Source: REACH, Annex XVII, entry 63, by two public summaries.
    LeadExemption {
        /// Crystal glass of the categories 1 to 4 of Directive 69/493/EEC.
        CrystalGlass = "crystal glass of category 1 to 4",
        /// Vitreous enamel.
        Enamel = "enamel",
        /// Stones that were not treated with lead.
        NaturalStone = "natural stone",
        /// A piece made before 1961.
        Before1961 = "a piece from before 1961",
    }
}

impl LeadExemption {
    /// Whether it is about `material`.
    pub fn covers(self, material: Material) -> bool {
        match self {
            Self::CrystalGlass => material == Material::CrystalGlass,
            Self::Enamel => material == Material::Enamel,
            Self::NaturalStone => material == Material::Stone,
            Self::Before1961 => true,
        }
    }
}

/// A magnet, by the two figures its hazard is judged from; what is not known of them counts as beyond every limit.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct Magnet {
    /// Peak flux density at the surface, in kilogauss.
    pub surface_kilogauss: Option<f64>,
    /// Diameter of the pole.
    pub pole_diameter: Option<Length>,
}

impl Magnet {
    /// One whose figures nobody knows.
    pub const UNKNOWN: Self = Self { surface_kilogauss: None, pole_diameter: None };

    /// One that was measured.
    pub const fn measured(surface_kilogauss: f64, pole_diameter: Length) -> Self {
        Self { surface_kilogauss: Some(surface_kilogauss), pole_diameter: Some(pole_diameter) }
    }
}

impl Facts {
    /// A part of bare `materials` of which nothing else is to be said.
    pub fn of(materials: impl Into<Vec<Material>>) -> Self {
        Self { materials: materials.into(), plating: Plating::None, ..Self::default() }
    }

    /// What lies over the metal of a part of this finish, where nobody said: nothing when one of its metals is of that
    /// colour by itself, else nobody knows what.
    pub fn usual_plating(finish: Option<Finish>, materials: &[Material]) -> Plating {
        match finish {
            Some(finish) if !materials.iter().any(|one| finish.is_own_colour_of(*one)) => Plating::Unknown,
            _ => Plating::None,
        }
    }

    /// Whether its supplier states in writing that `substance` is within the limits.
    pub fn declares(&self, substance: Substance) -> bool {
        self.declared.as_ref().is_some_and(|declared| declared.says.contains(&substance))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A tablet's or ledger's stored part of before these facts had fewer fields and a magnet with plain figures.
    #[test]
    fn parts_stored_by_an_earlier_version_are_read_the_careful_way() {
        let old = r#"{"materials":["Brass"],"magnet":{"surface_kilogauss":3.0,"pole_diameter":5.0},"coin_cell":true,
            "sharp":false,"allergens":["Milk"],"tested":{"lead_ppm":20.0,"cadmium_ppm":null,"nickel_ug_cm2_week":null}}"#;
        let facts: Facts = serde_json::from_str(old).unwrap();
        assert_eq!(facts.magnet, Some(Magnet::measured(3.0, Length::from_mm(5.0))));
        assert_eq!((facts.plating, facts.coin_cell, facts.liquid), (Plating::Unknown, true, false));
        let again: Facts = serde_json::from_str(&serde_json::to_string(&facts).unwrap()).unwrap();
        assert_eq!(again, facts);
    }

    /// Which metals have which colour: common practice, no source.
    #[test]
    fn a_finish_that_is_not_the_metals_own_is_plating_nobody_knows() {
        for (finish, material, wanted) in [
            (Finish::AntiqueBrass, Material::Brass, Plating::None),
            (Finish::AntiqueSilver, Material::Brass, Plating::Unknown),
            (Finish::AntiqueSilver, Material::SilverMetal, Plating::None),
            (Finish::Gold, Material::ZincAlloy, Plating::Unknown),
            (Finish::Gold, Material::GoldFilled, Plating::None),
            (Finish::Copper, Material::CopperMetal, Plating::None),
            (Finish::Gunmetal, Material::SteelMetal, Plating::Unknown),
            (Finish::Steel, Material::StainlessSteel, Plating::None),
        ] {
            assert_eq!(Facts::usual_plating(Some(finish), &[material]), wanted, "{finish:?} {material:?}");
        }
        assert_eq!(Facts::usual_plating(None, &[Material::Wood]), Plating::None);
    }
}
