//! Materials, as what is said of a file names them.

use crate::{
    craft::Material,
    ron_tree::{What, what},
};

/// A material without an article, as in "a drop of brass".
pub(super) const fn of_material(material: Material) -> What {
    match material {
        Material::Brass => what("of-Brass", "brass"),
        Material::Bronze => what("of-Bronze", "bronze"),
        Material::CopperMetal => what("of-CopperMetal", "copper"),
        Material::SilverMetal => what("of-SilverMetal", "silver"),
        Material::GoldMetal => what("of-GoldMetal", "gold"),
        Material::GoldFilled => what("of-GoldFilled", "gold-filled brass"),
        Material::SteelMetal => what("of-SteelMetal", "steel"),
        Material::StainlessSteel => what("of-StainlessSteel", "stainless steel"),
        Material::Titanium => what("of-Titanium", "titanium"),
        Material::NickelSilver => what("of-NickelSilver", "nickel silver"),
        Material::Pewter => what("of-Pewter", "pewter"),
        Material::ZincAlloy => what("of-ZincAlloy", "zinc alloy"),
        Material::Aluminium => what("of-Aluminium", "aluminium"),
        Material::UnknownMetal => what("of-UnknownMetal", "unknown metal"),
        Material::Glass => what("of-Glass", "glass"),
        Material::CrystalGlass => what("of-CrystalGlass", "crystal glass"),
        Material::Stone => what("of-Stone", "stone"),
        Material::Shell => what("of-Shell", "shell"),
        Material::Pearl => what("of-Pearl", "pearl"),
        Material::Acrylic => what("of-Acrylic", "acrylic"),
        Material::Resin => what("of-Resin", "resin"),
        Material::PolymerClay => what("of-PolymerClay", "polymer clay"),
        Material::Nylon => what("of-Nylon", "nylon"),
        Material::Rubber => what("of-Rubber", "rubber"),
        Material::Wood => what("of-Wood", "wood"),
        Material::Cork => what("of-Cork", "cork"),
        Material::Paper => what("of-Paper", "paper"),
        Material::Silk => what("of-Silk", "silk"),
        Material::Cotton => what("of-Cotton", "cotton"),
        Material::Wool => what("of-Wool", "wool"),
        Material::Leather => what("of-Leather", "leather"),
        Material::Bone => what("of-Bone", "bone"),
        Material::Ceramic => what("of-Ceramic", "ceramic"),
        Material::Enamel => what("of-Enamel", "enamel"),
        Material::Food => what("of-Food", "food"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ron_tree::Detail;

    #[test]
    fn a_material_is_called_as_it_calls_itself() {
        for material in Material::ALL {
            let said = Detail::from(of_material(*material));
            assert_eq!((said.english(), said.key()), (material.word(), format!("of-{}", material.name()).as_str()));
        }
    }
}
