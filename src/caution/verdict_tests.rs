//! What is said of pieces with a known answer, one test for each rule of the house.

use super::table_cases::{bangle, neutral_base, neutral_drop};
use super::*;
use crate::craft::{
    Allergen, Base, BaseKind, Body, Declaration, DropKind, Facts, Finish, LeadExemption, Length, Magnet, Mass,
    Material, MetalTest, OutlineShape, Plating, Ring, Substance, Wearer,
};
use CautionCode as Code;
use Wearer::{From3To5, From6To12, From13, Under3, Unknown};

const WEARERS: [Wearer; 5] = [Under3, From3To5, From6To12, From13, Unknown];
const REGIONS: [Region; 3] = [Region::US, Region::EU, Region::UK];
const CHILDREN: [Wearer; 4] = [Under3, From3To5, From6To12, Unknown];

fn mm(x: f64) -> Length {
    Length::from_mm(x)
}

fn rules(region: Region) -> &'static Rules {
    Rules::of_region(region).unwrap()
}

/// The verdict on a necklace of 460 mm, which closes on every neck.
fn judge(base: &Base, drops: &[&DropKind], wearer: Wearer, region: Region) -> Verdict {
    let rules = rules(region);
    let sizes = &Sizes::empty(rules.gauge);
    cautions(&PieceFacts { base, length_mm: Some(460.0), neck_mm: None, drops, sizes, wearer, rules })
}

/// The verdict on one drop on a neutral base.
fn of(drop: &DropKind, wearer: Wearer, region: Region) -> Verdict {
    judge(&neutral_base(), &[drop], wearer, region)
}

fn with(facts: Facts) -> DropKind {
    DropKind { facts, ..neutral_drop() }
}

fn base_with(facts: Facts) -> Base {
    Base { facts, ..neutral_base() }
}

fn find(verdict: &Verdict, code: Code) -> Option<&Caution> {
    verdict.cautions.iter().find(|one| one.code == code)
}

/// The wearers to whom `code` is said of a drop or base with `facts`, and those for whom it is grave; both are the same
/// for drop and base.
fn said(facts: &Facts, code: Code, region: Region) -> (Vec<Wearer>, Vec<Wearer>) {
    let (drop, base) = (with(facts.clone()), base_with(facts.clone()));
    let (mut heard, mut grave) = (vec![], vec![]);
    for wearer in WEARERS {
        let of_drop = of(&drop, wearer, region);
        let of_base = judge(&base, &[], wearer, region);
        let (found, twin) = (find(&of_drop, code), find(&of_base, code));
        let essence = |one: &Caution| (one.grave, one.forbidden, one.form.clone(), one.text.clone());
        assert_eq!(found.map(essence), twin.map(essence), "{region} {} {wearer:?}", code.code());
        let Some(found) = found else { continue };
        heard.push(wearer);
        if found.grave {
            grave.push(wearer);
            assert!(!of_drop.suitable && !of_base.suitable);
        }
    }
    (heard, grave)
}

fn metal(material: Material) -> Facts {
    Facts::of([material])
}

fn lead(ppm: f64) -> Facts {
    let tested = Some(MetalTest { lead_ppm: Some(ppm), ..MetalTest::default() });
    Facts { tested, ..metal(Material::Brass) }
}

/// 16 CFR 1501.1 bans them under 3; 16 CFR 1500.19 asks for words up to 6; that older ones keep them away from the small:
/// common practice, no source.
#[test]
fn a_small_part_is_said_to_everybody_and_banned_under_3() {
    let ball = |diameter: f64| DropKind { body: Body::Ball { diameter: mm(diameter) }, ..neutral_drop() };
    let ring = DropKind { ring: Ring { outside: mm(10.0), wire: mm(1.0) }, ..neutral_drop() };
    let off = Facts { comes_off: vec![Body::Ball { diameter: mm(5.0) }], ..metal(Material::CopperMetal) };
    let unread = DropKind { body: Body::Outline { thickness: mm(2.0), shape: None }, ..neutral_drop() };
    for region in REGIONS {
        for drop in [&ball(12.0), &ring, &with(off.clone()), &unread] {
            for wearer in WEARERS {
                let verdict = of(drop, wearer, region);
                let part = find(&verdict, Code::SmallPart).expect("said to all");
                assert_eq!(part.grave, matches!(wearer, Under3 | Unknown), "{region} {wearer:?}");
                let away = matches!(wearer, From6To12 | From13);
                assert_eq!(part.text.contains("keep away from children under 3"), away, "{}", part.text);
            }
        }
        assert_eq!(said(&off, Code::SmallPart, region).0, WEARERS);
        assert_eq!(find(&of(&neutral_drop(), Under3, region), Code::SmallPart), None);
    }
}

/// 16 CFR 1501.4(b)(1) tests the article as delivered, without an exception for what is soft.
#[test]
fn a_soft_body_goes_through_the_gauge_as_delivered() {
    for material in [Material::Cotton, Material::Silk, Material::Wool, Material::Paper] {
        let body = |diameter: f64| DropKind { body: Body::Ball { diameter: mm(diameter) }, ..with(metal(material)) };
        let size = |diameter: f64| PartSize::of(&body(diameter), Gauge::Inch).body;
        assert_eq!((size(20.0), size(60.0)), (Size::Fits, Size::Measure), "{material:?}: its cap may be small");
        assert!(!of(&body(20.0), Under3, Region::US).suitable);
    }
}

/// A picture without anything transparent does not show where the drop ends.
#[test]
fn what_was_not_cut_out_of_its_picture_counts_as_small() {
    let hull_mm = vec![(0.0, 0.0), (60.0, 0.0), (60.0, 60.0), (0.0, 60.0)];
    let leaf = |cut_out| {
        let shape = Some(OutlineShape { hull_mm: hull_mm.clone(), area_mm2: 3600.0, cut_out });
        DropKind { body: Body::Outline { thickness: mm(3.0), shape }, ..neutral_drop() }
    };
    assert!(!PartSize::of(&leaf(true), Gauge::Inch).is_small() && PartSize::of(&leaf(false), Gauge::Inch).is_small());
}

/// The hole: 16 CFR 1500.19(a)(2), 44.45 mm; EN 71-1, 44.5 mm. 16 CFR 1500.19(a)(1) and EN 71-1 count balls on a cord.
#[test]
fn a_ball_beyond_the_cylinder_is_not_for_under_3() {
    let ball = |diameter: f64| DropKind { body: Body::Ball { diameter: mm(diameter) }, ..neutral_drop() };
    for (region, below, above) in [(Region::US, 44.44, 44.46), (Region::EU, 44.49, 44.51), (Region::UK, 44.49, 44.51)] {
        let verdict = of(&ball(below), Under3, region);
        let one = find(&verdict, Code::SmallBall).unwrap();
        assert!(one.grave && one.text.starts_with("Choking hazard: "), "{one:?}");
        assert!(!find(&of(&ball(below), From3To5, region), Code::SmallBall).unwrap().grave);
        assert_eq!(find(&of(&ball(above), Under3, region), Code::SmallBall), None, "{region}");
        // What fits the cylinder is a small part already.
        assert_eq!(find(&of(&ball(31.0), Under3, region), Code::SmallBall), None);
    }
}

/// The clasp and the end rings of a necklace, and a bangle as a whole, are rigid parts like any other.
#[test]
fn bases_are_tried_like_drops() {
    let clasp = |length: f64| {
        let mut base = neutral_base();
        if let BaseKind::Necklace(necklace) = &mut base.kind {
            (necklace.clasp.length, necklace.clasp.width, necklace.clasp.thickness) = (mm(length), mm(12.0), mm(2.0));
        }
        judge(&base, &[], Under3, Region::US)
    };
    // A block of 12 × 2 × 60 mm fits the inch cylinder by 0.005 mm: too close to call, so it counts.
    let told = |verdict: Verdict| find(&verdict, Code::SmallPart).map(|one| one.seller.clone()).unwrap_or_default();
    assert!(told(clasp(59.5)).starts_with("Clasp or end rings fit the test cylinder."));
    assert!(told(clasp(60.0)).contains("too close to call: measure them"));
    assert_eq!(told(clasp(60.5)), "");
    // A disc of 29 mm goes into a cylinder of 31.75 mm, one of 44 mm does not.
    assert!(told(judge(&bangle(25.0), &[], Under3, Region::US)).starts_with("The whole bangle fits"));
    assert_eq!(told(judge(&bangle(40.0), &[], Under3, Region::US)), "");
}

/// 16 CFR 1262: an index of 50 kG²mm² or more is hazardous (3 kG on 5 mm: 177; 1.5 kG: 44). Pacemakers: ASTM F2999.
#[test]
fn magnets_are_judged_by_strength_and_number_in_drops_and_bases() {
    let magnet = |one: Magnet| Facts { magnet: Some(one), ..metal(Material::CopperMetal) };
    let (weak, strong) = (magnet(Magnet::measured(1.5, mm(5.0))), magnet(Magnet::measured(3.0, mm(5.0))));
    for region in REGIONS {
        assert_eq!(said(&weak, Code::Magnet, region), (WEARERS.to_vec(), vec![Under3, From3To5, Unknown]));
        for facts in [&strong, &magnet(Magnet::UNKNOWN)] {
            assert_eq!(said(facts, Code::Magnet, region), (WEARERS.to_vec(), WEARERS.to_vec()));
            assert!(of(&with(facts.clone()), From13, region).is_forbidden(), "nobody may be sold it");
        }
        let drop = with(weak.clone());
        let alone = of(&drop, From6To12, region);
        assert!(!find(&alone, Code::Magnet).unwrap().grave && !alone.is_forbidden());
        let clasp = base_with(weak.clone());
        for verdict in
            [judge(&clasp, &[&drop], From6To12, region), judge(&neutral_base(), &[&drop, &drop], From6To12, region)]
        {
            let one = find(&verdict, Code::Magnet).unwrap();
            assert!(one.grave && one.form == "together", "two can draw together: {one:?}");
        }
        let adult = of(&drop, From13, region);
        assert!(find(&adult, Code::Magnet).unwrap().text.contains("pacemakers"));
    }
}

/// 13 or older never reads "nothing" of what concerns them, in any region, and nothing of it makes the piece unsuitable.
#[test]
fn grown_ups_hear_of_what_concerns_them() {
    let plain = || metal(Material::CopperMetal);
    for (code, facts) in [
        (Code::Sharp, Facts { sharp: true, ..plain() }),
        (Code::CoinCell, Facts { coin_cell: true, ..plain() }),
        (Code::UnknownMetal, metal(Material::UnknownMetal)),
        (Code::Nickel, metal(Material::SteelMetal)),
        (Code::Nickel, metal(Material::NickelSilver)),
        (Code::Nickel, metal(Material::ZincAlloy)),
        (Code::Nickel, Facts { plating: Plating::Unknown, ..plain() }),
        (Code::Magnet, Facts { magnet: Some(Magnet::measured(1.0, mm(5.0))), ..plain() }),
        (Code::LooksLikeFood, Facts { looks_like_food: true, ..plain() }),
        (Code::FoodAllergen, metal(Material::Food)),
    ] {
        for region in REGIONS {
            let (heard, grave) = said(&facts, code, region);
            assert!(heard.contains(&From13) && !grave.contains(&From13), "{region} {}", code.code());
        }
    }
}

/// 16 CFR 1500.48, 1500.49: articles for children under 8, so 6 to 12 takes the careful side. Glass: against under 3.
#[test]
fn bands_that_straddle_a_figure_take_the_careful_side() {
    for region in REGIONS {
        let sharp = Facts { sharp: true, ..metal(Material::CopperMetal) };
        assert_eq!(said(&sharp, Code::Sharp, region), (WEARERS.to_vec(), CHILDREN.to_vec()));
        for glass in [Material::Glass, Material::CrystalGlass] {
            assert_eq!(said(&metal(glass), Code::Glass, region), (CHILDREN.to_vec(), vec![Under3, Unknown]));
        }
    }
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

/// The airway of a small child shuts at a pull of 1.6 lb on the mean (Soudek and McLaughlin 2018), long before 15 lbf; neck
/// drawstrings are a hazard up to 12 (cpsc.gov). EN 71-1, 5.4: loops of 380 mm.
#[test]
fn what_lies_round_a_neck_is_said_up_to_12_and_never_silenced_for_the_small() {
    for region in REGIONS {
        let of = |apart: bool, code: Code, wearer: Wearer| {
            let mut base = neutral_base();
            if let BaseKind::Necklace(necklace) = &mut base.kind {
                necklace.breakaway = apart;
            }
            find(&judge(&base, &[], wearer, region), code).map(|one| (one.form.clone(), one.grave, one.text.clone()))
        };
        for wearer in [Under3, From3To5, Unknown] {
            let (form, grave, text) = of(true, Code::Breakaway, wearer).unwrap();
            assert!(form == "apart" && text.contains("for play and sleep"), "{text}");
            assert_eq!(grave, wearer != From3To5);
        }
        assert_eq!(of(true, Code::Breakaway, From6To12), None);
        assert!(of(false, Code::Breakaway, From6To12).is_some() && of(false, Code::Breakaway, From13).is_none());
        assert!(of(true, Code::CordLoop, From6To12).is_some() && of(true, Code::CordLoop, From13).is_none());
        let loop_of = |length: f64| {
            let rules = rules(region);
            let (sizes, base) = (&Sizes::empty(rules.gauge), &neutral_base());
            let facts =
                PieceFacts { base, length_mm: Some(length), neck_mm: None, drops: &[], sizes, wearer: Under3, rules };
            find(&cautions(&facts), Code::CordLoop).map(|one| one.grave)
        };
        let figure = if region == Region::US { 355.6 } else { 380.0 };
        assert_eq!((loop_of(figure - 0.1), loop_of(figure)), (None, Some(true)), "{region}");
        assert_eq!(loop_of(Length::from_inches(14.0).mm()).is_some(), region == Region::US);
    }
}

/// A necklace is judged for a large neck of its band: 443 mm for grown-ups (ANSUR II, 95th percentile of men), 330 mm for
/// growing boys (abstract), with half an inch of slack (common practice, no source).
#[test]
fn a_length_is_judged_for_a_large_neck_or_for_the_guests_own() {
    let of = |length: f64, neck_mm: Option<f64>, wearer: Wearer| {
        let rules = rules(Region::EU);
        let (sizes, base) = (&Sizes::empty(rules.gauge), &neutral_base());
        let facts = PieceFacts { base, length_mm: Some(length), neck_mm, drops: &[], sizes, wearer, rules };
        find(&cautions(&facts), Code::ChainTooShort).map(|one| (one.grave, one.text.clone()))
    };
    assert_eq!(of(456.0, None, From13), None);
    let (grave, text) = of(355.6, None, From13).unwrap();
    assert!(!grave && text == "It closes on necks up to 342 mm round: measure the neck.", "{text}");
    assert_eq!(of(342.0, None, From6To12).map(|(grave, _)| grave), Some(true));
    assert_eq!(of(344.0, None, From6To12).map(|(grave, _)| grave), Some(false), "it closes on this child");
    assert_eq!(of(355.6, Some(340.0), From13), None);
    let (grave, text) = of(355.6, Some(343.0), From6To12).unwrap();
    assert!(grave && text == "It closes on necks up to 342 mm round; you gave 343 mm.", "{text}");
}

/// Hands from memory; 60 mm inside are 188 mm round, far more than a small child's hand of 122 mm.
#[test]
fn bangles_are_judged_by_the_hand() {
    let of = |inside: f64, wearer: Wearer| {
        let verdict = judge(&bangle(inside), &[], wearer, Region::US);
        let all: Vec<(String, bool)> = verdict
            .cautions
            .iter()
            .filter(|one| one.code == Code::BangleSize)
            .map(|one| (one.form.clone(), one.grave))
            .collect();
        all
    };
    assert!(of(60.0, From3To5).contains(&("slips".into(), true)));
    assert!(!of(46.5, From3To5).iter().any(|(form, _)| form == "slips"), "a child's bangle stays on");
    assert!(!of(60.0, From13).iter().any(|(form, grave)| form == "slips" || *grave));
    assert_eq!(of(60.0, From13), [(String::new(), false)], "188 mm do not go over a man's hand");
}

/// Food Imitations (Safety) Regulations 1989; Regulation (EU) 2023/988, article 6(1)(f).
#[test]
fn what_looks_like_food_and_what_holds_liquid() {
    for region in REGIONS {
        let small = vec![Under3, From3To5, Unknown];
        let looks = Facts { looks_like_food: true, ..metal(Material::Resin) };
        assert_eq!(said(&looks, Code::LooksLikeFood, region), (WEARERS.to_vec(), small.clone()));
        assert_eq!(said(&metal(Material::Food), Code::LooksLikeFood, region), (WEARERS.to_vec(), small));
        let known = ["milk", "wheat"].iter().filter_map(|words| Allergen::from_words(words)).collect();
        let sweet = Facts { allergens: known, ..metal(Material::Food) };
        assert_eq!(said(&sweet, Code::FoodAllergen, region), (WEARERS.to_vec(), vec![]));
        let verdict = of(&with(sweet), From13, region);
        assert!(find(&verdict, Code::FoodAllergen).unwrap().text.contains("It contains: milk, wheat."));
        let liquid = Facts { liquid: true, ..metal(Material::Acrylic) };
        assert_eq!(said(&liquid, Code::Liquid, region), (CHILDREN.to_vec(), vec![Under3, Unknown]));
    }
    let uk = of(&with(metal(Material::Food)), Under3, Region::UK);
    assert!(find(&uk, Code::LooksLikeFood).unwrap().cited().starts_with("SI 1989/1291"));
}

#[test]
fn a_swallowed_cell_is_an_emergency() {
    let cell = Facts { coin_cell: true, ..metal(Material::CopperMetal) };
    for region in REGIONS {
        assert_eq!(said(&cell, Code::CoinCell, region), (WEARERS.to_vec(), CHILDREN.to_vec()));
        let verdict = of(&with(cell.clone()), From13, region);
        assert!(find(&verdict, Code::CoinCell).unwrap().text.contains("get medical help at once"));
    }
}

/// Weights by age: common practice, no source. 460 mm of chain weigh 4.6 g, a drop 10 g.
#[test]
fn a_piece_can_be_heavy_on_a_child() {
    let drop = DropKind { weight: Mass::from_g(10.0), ..neutral_drop() };
    let heavy = |count, wearer| {
        let verdict = judge(&neutral_base(), &vec![&drop; count], wearer, Region::US);
        find(&verdict, Code::HeavyOnChild).map(|one| one.number.unwrap().to_string())
    };
    assert_eq!((heavy(2, Under3), heavy(3, Under3)), (None, Some("35".into())));
    assert_eq!((heavy(5, From3To5), heavy(6, From3To5)), (None, Some("65".into())));
    assert_eq!((heavy(11, From6To12), heavy(12, From6To12), heavy(99, From13)), (None, Some("125".into()), None));
}

/// No advice sends a child to a metal that is itself untested: what the rules' files say to the seller names no other
/// material, base or drop. What the table has is found by the desk.
#[test]
fn the_rules_give_no_advice_that_the_table_may_not_have() {
    for rules in Rules::built_in() {
        for rule in &rules.rules {
            let within = rule.within.iter().map(|within| &within.seller);
            for words in within.chain([&rule.seller]) {
                for other in ["offer", "brass or copper", "a bangle or", "another drop"] {
                    let free = rule.code == Code::HeavyOnChild && other == "offer";
                    assert!(free || !words.to_lowercase().contains(other), "{}: {words}", rule.code.code());
                }
            }
        }
    }
}

/// One card for a hazard: parts of the same kind stand together, and what nobody knows of a metal is said once.
#[test]
fn hazards_gather_what_is_alike() {
    let ball =
        |id: &str, facts: Facts| DropKind { id: id.into(), body: Body::Ball { diameter: mm(12.0) }, ..with(facts) };
    let (one, two) = (ball("one", metal(Material::UnknownMetal)), ball("two", metal(Material::ZincAlloy)));
    let verdict = judge(&neutral_base(), &[&one, &two, &one], From3To5, Region::US);
    let hazards = verdict.hazards();
    let of = |code| {
        let found = hazards.iter().find(|hazard| hazard.code() == code).unwrap();
        (found.drops().collect::<Vec<_>>(), found.is_of_the_base(), found.is_grave())
    };
    assert_eq!(of(Code::SmallPart), (vec!["one", "two"], false, false));
    assert_eq!(of(Code::UnknownMetal), (vec!["one"], false, true));
    assert_eq!(of(Code::Lead), (vec!["two"], false, true), "the unknown metal stands on its own card");
    assert_eq!(of(Code::Breakaway).0, Vec::<&str>::new());
    assert!(of(Code::Breakaway).1, "it is about the base");
    let graves: Vec<bool> = hazards.iter().map(|hazard| hazard.is_grave()).collect();
    assert!(graves.is_sorted_by(|a, b| a >= b), "graver first: {graves:?}");
    assert!(verdict.cautions.iter().all(|one| !one.seller.is_empty() && !one.text.is_empty()));
    let text = serde_json::to_string(&verdict).unwrap();
    assert_eq!(serde_json::from_str::<Verdict>(&text).unwrap(), verdict);
}

/// A region is a file: what it says and against whom is what is said.
#[test]
fn another_regions_file_is_enough() {
    let file = include_str!("../../assets/rules/us.ron")
        .replace("region: \"US\"", "region: \"CA\"")
        .replace("gauge: Inch", "gauge: Metric")
        .replace(
            "code: glass, says: [Under3, From3To5, From6To12], against: [Under3]",
            "code: glass, says: [Under3, From3To5, From6To12, From13], against: [Under3, From3To5, From6To12, From13]",
        );
    let rules = Rules::from_ron("a region", &file).unwrap();
    let glass = with(metal(Material::Glass));
    let judged = |wearer| drop_cautions(&glass, &Sizes::empty(rules.gauge), wearer, &rules);
    assert!(!judged(From13).suitable && of(&glass, From13, Region::US).suitable);
    assert!(!drop_suits(&glass, &Sizes::empty(rules.gauge), From13, &rules));
}

/// Before the rule's date and status were kept apart, a ticket's caution had them in one English text; figures were whole.
#[test]
fn a_caution_of_an_older_ticket_is_read_and_said_as_it_was() {
    let old = r#"{"code":"small_part","drop":"bead","rule":"16 CFR 1501.4 (US small-parts rule), as of June 2026",
        "form":"","text":"Bead is a small part.","seller":"Offer another drop.","grave":true}"#;
    let caution: Caution = serde_json::from_str(old).unwrap();
    assert_eq!(caution.cited(), "16 CFR 1501.4 (US small-parts rule), as of June 2026");
    let heavy = r#"{"code":"heavy_on_child","drop":null,"rule":"","status":"Practice","number":130,"text":"Heavy.",
        "grave":false}"#;
    let heavy: Caution = serde_json::from_str(heavy).unwrap();
    assert_eq!(
        (heavy.number, heavy.forbidden, heavy.cited().as_str()),
        (Some(130.into()), false, "common practice, no source")
    );
    let bead = DropKind { body: Body::Ball { diameter: mm(12.0) }, finish: Some(Finish::Steel), ..neutral_drop() };
    assert_eq!(of(&bead, Under3, Region::US).cautions[0].cited(), caution.cited(), "the same in English");
}
