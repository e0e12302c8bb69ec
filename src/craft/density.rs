//! How heavy materials are, and a drop's weight worked out from its size where nobody weighed it.

use super::{Body, Mass, Material, Ring};

/// A density and how far it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Density {
    /// In grams per cubic centimetre.
    pub g_cm3: f64,
    /// Whether the figure was written down from memory instead of read.
    pub from_memory: bool,
}

/// Fine silver and copper. Source: PNNL-15870 Rev. 1, Compendium of Material Composition Data.
const SILVER_G_CM3: f64 = 10.50;
const COPPER_G_CM3: f64 = 8.96;
/// Typical brass. Source: as above; rolled brass is given as 8.43 to 8.73 elsewhere.
const BRASS_G_CM3: f64 = 8.07;

impl Material {
    /// Its density as a solid; `None` where what it is made of is not known.
    ///
    /// Source: PNNL-15870 Rev. 1, Compendium of Material Composition Data; sterling silver from its parts, 14 karat gold
    /// from a refiner's table, gold-filled brass by the mixture rule; the rest from memory and marked so.
    pub fn density(self) -> Option<Density> {
        let (g_cm3, from_memory) = match self {
            Self::Brass => (BRASS_G_CM3, false),
            Self::Bronze => (8.40, false),
            Self::CopperMetal => (COPPER_G_CM3, false),
            Self::SilverMetal => (alloy_g_cm3(&[(0.925, SILVER_G_CM3), (0.075, COPPER_G_CM3)]), false),
            Self::GoldMetal => (13.07, false),
            Self::GoldFilled => (alloy_g_cm3(&[(0.05, 13.07), (0.95, BRASS_G_CM3)]), false),
            Self::SteelMetal => (7.82, false),
            Self::StainlessSteel => (8.00, false),
            Self::Titanium => (4.54, false),
            Self::NickelSilver => (8.7, true),
            Self::Pewter => (7.3, true),
            Self::ZincAlloy => (6.6, true),
            Self::Aluminium => (2.6989, false),
            Self::UnknownMetal => return None,
            Self::Glass => (2.40, false),
            Self::CrystalGlass => (3.0, true),
            Self::Stone => (2.648, false),
            Self::Shell => (2.80, false),
            Self::Pearl => (2.72, true),
            Self::Acrylic => (1.19, false),
            Self::Resin => (1.15, true),
            Self::PolymerClay => (1.8, true),
            Self::Nylon => (1.14, false),
            Self::Rubber => (0.92, false),
            Self::Wood => (0.64, false),
            Self::Cork => (0.24, true),
            Self::Paper => (0.8, true),
            Self::Silk => (1.34, true),
            Self::Cotton => (1.54, true),
            Self::Wool => (1.31, true),
            Self::Leather => (0.9, true),
            Self::Bone => (1.9, true),
            Self::Ceramic => (2.4, true),
            Self::Enamel => (2.5, true),
            Self::Food => (1.5, true),
        };
        Some(Density { g_cm3, from_memory })
    }
}

/// Density of an alloy from its parts' mass shares and densities in g/cm³: 1/ρ = Σ wᵢ/ρᵢ, with Σ wᵢ taken as the whole.
pub fn alloy_g_cm3(parts: &[(f64, f64)]) -> f64 {
    let whole: f64 = parts.iter().map(|(share, _)| share).sum();
    whole / parts.iter().map(|(share, density)| share / density).sum::<f64>()
}

/// A drop's weight worked out from its body, solid and of the first of `materials`, and its ring of brass.
///
/// `None` where the body has no volume (points, a picture that was not read) or the first material no known density.
pub fn weight_of(body: &Body, ring: Ring, materials: &[Material]) -> Option<Mass> {
    let density = materials.first()?.density()?.g_cm3;
    let mg = body.volume_mm3()? * density + ring.volume_mm3() * BRASS_G_CM3;
    Some(Mass::from_g(mg / 1000.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::Length;

    /// A published gold alloy (13.33; exactly 13.3292), sterling silver, and gold-filled brass. Source: refiners' tables
    /// and the mixture rule.
    #[test]
    fn alloys_by_the_mixture_rule() {
        println!("| alloy | g/cm³ | published |");
        for (name, parts, wanted, by) in [
            ("583 gold", &[(583.0, 19.32), (104.0, 10.49), (313.0, 8.96)][..], 13.3292, 5e-5),
            ("sterling", &[(925.0, 10.5), (75.0, 8.96)], 10.36637, 5e-6),
            ("1/20 gold on brass", &[(1.0, 13.07), (19.0, 8.07)], 8.22737, 5e-6),
        ] {
            let found = alloy_g_cm3(parts);
            println!("| {name} | {found:.5} | {wanted} |");
            assert!((found - wanted).abs() < by, "{name}: {found}");
        }
        assert!((Material::SilverMetal.density().unwrap().g_cm3 - 10.36637).abs() < 5e-6);
        assert_eq!(Material::UnknownMetal.density(), None);
    }

    /// A 10 mm ball and a metre of AWG 20 wire, computed from the formula and the densities' sources.
    #[test]
    fn weights_from_dimensions() {
        println!("| body | material | g | wanted |");
        let ball = Body::Ball { diameter: Length::from_mm(10.0) };
        let wire = Body::Cylinder { diameter: "20awg".parse().unwrap(), height: Length::from_mm(1000.0) };
        for (name, body, material, wanted) in [
            ("10 mm ball", &ball, Material::Brass, 4.22544),
            ("10 mm ball", &ball, Material::Acrylic, 0.62308),
            ("10 mm ball", &ball, Material::Stone, 1.38649),
            ("1 m of 20 AWG", &wire, Material::CopperMetal, 4.63787),
            ("1 m of 20 AWG", &wire, Material::SilverMetal, 5.36564 * 10.36637 / 10.366),
            ("1 m of 20 AWG", &wire, Material::Brass, 4.17719),
        ] {
            let g = body.volume_mm3().unwrap() * material.density().unwrap().g_cm3 / 1000.0;
            println!("| {name} | {} | {g:.5} | {wanted:.5} |", material.word());
            assert!((g - wanted).abs() < 2e-5, "{name} of {}: {g}", material.word());
        }
        let fine = ball.volume_mm3().unwrap() * SILVER_G_CM3 / 1000.0;
        assert!((fine - 5.49779).abs() < 1e-5);
    }

    /// The ring is added: 22.2066 mm³ of brass, worked by hand.
    #[test]
    fn a_drops_weight_is_its_body_and_its_ring() {
        let ring = Ring::new(Length::from_mm(10.0), Length::from_mm(1.0)).unwrap();
        let ball = Body::Ball { diameter: Length::from_mm(10.0) };
        let g = |materials: &[Material]| weight_of(&ball, ring, materials).map(Mass::g);
        assert!((g(&[Material::Acrylic, Material::Brass]).unwrap() - (0.62308 + 0.17921)).abs() < 1e-4);
        assert_eq!((g(&[Material::UnknownMetal]), g(&[])), (None, None));
        assert_eq!(weight_of(&Body::Points { points_mm: vec![] }, ring, &[Material::Brass]), None);
    }
}
