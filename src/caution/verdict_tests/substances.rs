//! Lead, cadmium, nickel and paint: what a test, a supplier or nobody says.

use super::*;

fn lead(ppm: f64) -> Facts {
    let tested = Some(MetalTest { lead_ppm: Some(ppm), ..MetalTest::default() });
    Facts { tested, ..metal(Material::Brass) }
}

/// What a test found beyond any region's limit for children (US: CPSIA § 101, 100 ppm of lead; EU: REACH XVII/23, 100 ppm
/// of cadmium) is said to everybody, with the limit that applies to the wearer (California, second-hand: 500 ppm of lead).
#[test]
fn what_a_test_found_is_said_to_everybody_with_the_wearers_limit() {
    let of_lead = |ppm, wearer, region| {
        let verdict = of(&with(lead(ppm)), wearer, region);
        find(&verdict, Code::Lead)
            .map(|one| (one.form.clone(), one.grave, one.forbidden, one.limit.map(|l| l.to_string())))
    };
    let answer = |form: &str, grave, forbidden, limit: &str| Some((form.into(), grave, forbidden, Some(limit.into())));
    for wearer in WEARERS {
        assert_eq!(of_lead(100.0, wearer, Region::US), None, "at the strictest limit nothing is found");
    }
    assert_eq!(of_lead(101.0, From6To12, Region::US), answer("found", true, false, "100"));
    assert_eq!(of_lead(101.0, From13, Region::US), answer("elsewhere", false, false, "500"));
    assert_eq!(of_lead(501.0, From13, Region::US), answer("found", true, false, "500"));
    assert_eq!(of_lead(101.0, Under3, Region::EU), answer("elsewhere", false, false, "500"));
    assert_eq!(of_lead(499.0, From13, Region::EU), answer("elsewhere", false, false, "500"));
    assert_eq!(of_lead(500.0, From13, Region::EU), answer("found", true, true, "500"), "it may not be sold at all");
    let cadmium = |ppm| {
        let tested = Some(MetalTest { cadmium_ppm: Some(ppm), ..MetalTest::default() });
        with(Facts { tested, ..metal(Material::CopperMetal) })
    };
    let us = of(&cadmium(301.0), From13, Region::US);
    let one = find(&us, Code::Cadmium).unwrap();
    assert!(us.suitable && one.form == "children" && one.rule == "ASTM F2999", "{one:?}");
    assert!(!of(&cadmium(301.0), From6To12, Region::US).suitable);
    assert!(of(&cadmium(100.0), From13, Region::UK).is_forbidden() && of(&cadmium(99.0), From13, Region::UK).suitable);
    // Words after a failed test speak of a failed test.
    for (region, wearer) in [(Region::US, Under3), (Region::EU, From13)] {
        let verdict = of(&with(lead(900.0)), wearer, region);
        let one = find(&verdict, Code::Lead).unwrap();
        assert!(one.text.contains("A test found 900 ppm") && one.seller.starts_with("A test found"), "{one:?}");
        assert!(!one.text.contains("not tested") && !one.seller.contains("without a test"), "{one:?}");
    }
}

/// Brass for turning holds about 2 % of lead (one trade page); gems, pearls, wood, stainless steel, gold and sterling silver
/// are on the list of what needs no test (16 CFR 1500.91).
#[test]
fn untested_cheap_metal_counts_against_children() {
    for region in REGIONS {
        for material in [
            Material::Brass,
            Material::Bronze,
            Material::ZincAlloy,
            Material::Pewter,
            Material::UnknownMetal,
            Material::CrystalGlass,
        ] {
            assert_eq!(
                said(&metal(material), Code::Lead, region),
                (CHILDREN.to_vec(), CHILDREN.to_vec()),
                "{material:?}"
            );
        }
        for material in [
            Material::CopperMetal,
            Material::GoldMetal,
            Material::SilverMetal,
            Material::StainlessSteel,
            Material::Wood,
            Material::Stone,
            Material::Pearl,
        ] {
            assert_eq!(said(&metal(material), Code::Lead, region), (vec![], vec![]), "{material:?}");
        }
        for material in [Material::ZincAlloy, Material::Pewter, Material::UnknownMetal] {
            assert_eq!(said(&metal(material), Code::Cadmium, region).1, CHILDREN, "{material:?}");
        }
        let plated = Facts { plating: Plating::Unknown, ..metal(Material::CopperMetal) };
        assert_eq!(said(&plated, Code::Lead, region).1, CHILDREN);
        let painted = Facts { painted: true, ..metal(Material::Wood) };
        assert_eq!(said(&painted, Code::Paint, region), (CHILDREN.to_vec(), CHILDREN.to_vec()));
    }
}

/// A supplier's word stands between a test and nothing: it is said as such, with its paper for the seller.
#[test]
fn a_declaration_is_no_test_and_more_than_nothing() {
    let dated = crate::craft::Day::from_iso("2026-03-02").unwrap();
    let says = vec![Substance::Lead];
    let declared = Some(Declaration { paper: "letter 17".into(), dated, says });
    let facts = Facts { declared, ..metal(Material::ZincAlloy) };
    for region in REGIONS {
        let (heard, grave) = said(&facts, Code::Lead, region);
        assert_eq!((heard, grave), (CHILDREN.to_vec(), vec![]));
        assert_eq!(said(&facts, Code::Cadmium, region).1, CHILDREN, "the paper says nothing of cadmium");
        let verdict = of(&with(facts.clone()), Under3, region);
        let one = find(&verdict, Code::Lead).unwrap();
        assert!(one.text.contains("its supplier states") && one.text.contains("not tested"), "{}", one.text);
        assert!(one.seller.contains("letter 17, 2 March 2026"), "{}", one.seller);
        let tested = Facts { tested: lead(20.0).tested, ..facts.clone() };
        assert_eq!(said(&tested, Code::Lead, region), (vec![], vec![]), "a test ends the question");
    }
}

/// REACH XVII, entry 63: crystal glass of categories 1 to 4, enamels, natural stones and pieces from before 1961 are exempt.
#[test]
fn what_is_lawful_is_not_called_beyond_the_rule() {
    let tested = lead(240_000.0).tested;
    let crystal = Facts { tested, lead_exempt: Some(LeadExemption::CrystalGlass), ..metal(Material::CrystalGlass) };
    for region in [Region::EU, Region::UK] {
        let verdict = of(&with(crystal.clone()), From13, region);
        let one = find(&verdict, Code::Lead).unwrap();
        assert!(verdict.suitable && one.form == "exempt" && one.text.contains("exempts it"), "{one:?}");
        let untested = Facts { tested: None, ..crystal.clone() };
        assert_eq!(said(&untested, Code::Lead, region), (vec![], vec![]));
        let with_brass = Facts { materials: vec![Material::CrystalGlass, Material::Brass], ..untested };
        assert_eq!(said(&with_brass, Code::Lead, region).1, CHILDREN, "the brass is not exempt");
        // A test of the whole does not say where the lead was found, and what is not there exempts nothing.
        for materials in [vec![Material::CrystalGlass, Material::Brass], vec![Material::ZincAlloy]] {
            let claimed = Facts { materials, ..crystal.clone() };
            assert!(of(&with(claimed), From13, region).is_forbidden(), "{region}");
        }
    }
    assert!(!of(&with(crystal), Under3, Region::US).suitable, "the American rule has no such exemption");
}
