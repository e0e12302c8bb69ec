//! What is said of pieces with a known answer, one test for each rule of the house.

use super::table_cases::{bangle, neutral_base, neutral_drop};
use super::*;
use crate::craft::{
    Allergen, Base, BaseKind, Body, Declaration, DropKind, Facts, Finish, LeadExemption, Length, Magnet, Mass,
    Material, MetalTest, OutlineShape, Plating, Ring, Substance, Wearer,
};
use CautionCode as Code;
use Wearer::{From3To5, From6To12, From13, Under3, Unknown};

mod substances;
mod worn;

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
