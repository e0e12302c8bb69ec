//! The rules for each age band.

use std::collections::BTreeSet;

use super::*;
use crate::craft::{
    Allergen, Bangle, Base, BaseKind, Body, Clasp, DropKind, Finish, Length, LengthRange, LinearDensity, LinkKind,
    Magnet, Mass, Material, MetalTest, Necklace, OutlineShape, Ring, Sort, Wearer,
};

const WEARERS: [Wearer; 5] = [Wearer::Under3, Wearer::From3To5, Wearer::From6To12, Wearer::From13, Wearer::Unknown];

fn mm(x: f64) -> Length {
    Length::from_mm(x)
}

fn chain(breakaway: bool) -> Base {
    // As large as no chain has them, so that only what is asked about is a small part.
    let ring = Ring { outside: mm(34.0), wire: mm(0.8) };
    Base {
        id: "cable".into(),
        name: "Cable chain".into(),
        finish: Finish::Steel,
        materials: vec![Material::Brass],
        price: 18.into(),
        stock: 3,
        tested: None,
        kind: BaseKind::Necklace(Necklace {
            chain: LinearDensity::from_g_per_m(12.5),
            link: LinkKind::Cable,
            link_length: mm(4.0),
            link_width: mm(3.0),
            end_ring: ring,
            clasp: Clasp { length: mm(70.0), width: mm(6.0), thickness: mm(3.0), ring },
            lengths: LengthRange { usual: mm(450.0), shortest: mm(350.0), longest: mm(900.0) },
            breakaway,
        }),
    }
}

/// Larger than the cylinder in every way, ring included.
fn large(id: &str) -> DropKind {
    DropKind {
        id: id.into(),
        name: "The hoop".into(),
        sort: Sort::Charm,
        finish: None,
        colours: vec![],
        materials: vec![Material::Brass],
        body: Body::Disc { diameter: mm(40.0), thickness: mm(2.0) },
        width: mm(40.0),
        height: mm(40.0),
        ring: Ring { outside: mm(34.0), wire: mm(2.0) },
        weight: Mass::from_g(10.0),
        price: 4.into(),
        stock: 5,
        home: "A1".parse().unwrap(),
        picture: "hoop.png".into(),
        magnet: None,
        coin_cell: false,
        sharp: false,
        allergens: vec![],
        tested: None,
    }
}

fn small(id: &str) -> DropKind {
    DropKind { body: Body::Ball { diameter: mm(12.0) }, ring: Ring { outside: mm(10.0), wire: mm(1.0) }, ..large(id) }
}

fn rules(region: Region) -> &'static Rules {
    Rules::of_region(region).unwrap()
}

/// The verdict on a 400 mm chain that comes apart.
fn judge_in(region: Region, drops: &[&DropKind], wearer: Wearer) -> Verdict {
    on(&chain(true), Some(400.0), drops, wearer, region)
}

fn judge(drops: &[&DropKind], wearer: Wearer) -> Verdict {
    judge_in(Region::US, drops, wearer)
}

fn on(base: &Base, length_mm: Option<f64>, drops: &[&DropKind], wearer: Wearer, region: Region) -> Verdict {
    let (rules, short_by_mm) = (rules(region), None);
    let sizes = &Sizes::empty(rules.gauge);
    cautions(&PieceFacts { base, length_mm, short_by_mm, drops, sizes, wearer, rules })
}

fn small_part(kind: &DropKind, gauge: Gauge) -> bool {
    PartSize::of(kind, gauge).is_small()
}

/// The wearers for whom `code` is said, and those for whom it is grave.
fn said(drop: &DropKind, code: CautionCode) -> (Vec<Wearer>, Vec<Wearer>) {
    let verdict = |wearer: &Wearer| judge(&[drop], *wearer);
    let with = |wearer: &Wearer, grave: bool| {
        verdict(wearer).cautions.iter().any(|caution| caution.code == code && (caution.grave || !grave))
    };
    let grave: Vec<Wearer> = WEARERS.into_iter().filter(|wearer| with(wearer, true)).collect();
    for wearer in WEARERS {
        assert_eq!(verdict(&wearer).suitable, !verdict(&wearer).cautions.iter().any(|caution| caution.grave));
    }
    (WEARERS.into_iter().filter(|wearer| with(wearer, false)).collect(), grave)
}

use Wearer::{From3To5, From6To12, From13, Under3, Unknown};

/// 16 CFR 1501.1: banned under 3; 16 CFR 1500.19 (from memory): a label from 3 to under 6; nothing at 8.
#[test]
fn a_small_part_is_banned_under_3_and_said_under_6() {
    assert_eq!(said(&small("bead"), CautionCode::SmallPart), (vec![Under3, From3To5, Unknown], vec![Under3, Unknown]));
    assert_eq!(said(&large("hoop"), CautionCode::SmallPart), (vec![], vec![]));
    assert!(judge(&[&large("hoop")], Under3).suitable);
    let ring_alone = DropKind { ring: small("bead").ring, ..large("hoop") };
    assert_eq!(said(&ring_alone, CautionCode::SmallPart).1, [Under3, Unknown], "its ring alone fits");
    let body_alone = DropKind { body: Body::Ball { diameter: mm(12.0) }, ..large("hoop") };
    assert_eq!(said(&body_alone, CautionCode::SmallPart).1, [Under3, Unknown], "its body alone fits");
    let outline = |width: f64| {
        let hull_mm = vec![(0.0, 0.0), (width, 0.0), (width, 40.0), (0.0, 40.0)];
        let shape = Some(OutlineShape { hull_mm, area_mm2: 40.0 * width, cut_out: true });
        DropKind { body: Body::Outline { thickness: mm(2.0), shape }, ..large("leaf") }
    };
    assert_eq!((small_part(&outline(20.0), Gauge::Inch), small_part(&outline(40.0), Gauge::Inch)), (true, false));
    let unread = DropKind { body: Body::Outline { thickness: mm(2.0), shape: None }, ..large("leaf") };
    assert!(small_part(&unread, Gauge::Inch), "not known: the careful answer");
}

/// The hole: 16 CFR 1500.19(a)(2), 1.75 in = 44.45 mm; EN 71-1, 44.5 mm (from memory). The cylinder: 31.75 mm across
/// (31.7 in the metric drawing, from memory). The rule is for balls to play with, so it never speaks against a piece.
#[test]
fn a_round_drop_between_cylinder_and_hole_is_said_to_be_as_large_as_a_small_ball() {
    let with = |body: Body| DropKind { body, ..large("globe") };
    let ball = |diameter: f64| with(Body::Ball { diameter: mm(diameter) });
    let all = vec![Under3, Unknown];
    for (diameter, wanted) in [(31.7, &vec![]), (31.9, &all), (44.44, &all), (44.46, &vec![])] {
        let found = said(&ball(diameter), CautionCode::SmallBall);
        assert_eq!(found, (wanted.clone(), vec![]), "{diameter} mm");
        println!("| {diameter} | {found:?} |");
    }
    assert_eq!(said(&ball(31.9), CautionCode::SmallPart), (vec![], vec![]));
    // The label of 16 CFR 1500.19(b) begins with CHOKING HAZARD (from memory).
    let text = &judge(&[&ball(31.9)], Under3).cautions[0].text;
    assert!(text.starts_with("Choking hazard: ") && text.contains("can choke on it"), "{text}");
    let in_region = |region, drop: &DropKind| {
        judge_in(region, &[drop], Under3).cautions.iter().any(|caution| caution.code == CautionCode::SmallBall)
    };
    for region in [Region::EU, Region::UK] {
        assert!(in_region(region, &ball(44.49)) && !in_region(region, &ball(44.51)), "{region}");
    }
    let egg = |width, height| with(Body::Ellipsoid { width: mm(width), depth: mm(40.0), height: mm(height) });
    assert!(in_region(Region::US, &egg(44.44, 60.0)) && !in_region(Region::US, &egg(44.46, 60.0)));
    let rod = |length| with(Body::Rod { diameter: mm(40.0), length: mm(length) });
    assert!(in_region(Region::US, &rod(39.0)) && !in_region(Region::US, &rod(60.0)), "a rod is no ball");
    assert!(!in_region(Region::US, &with(Body::Disc { diameter: mm(40.0), thickness: mm(40.0) })));
}

/// 16 CFR 1501.4(b)(2): paper, fabric, yarn and string are left out; what is tied to them is not.
#[test]
fn fabric_and_yarn_are_left_out() {
    let of = |materials: &[Material]| DropKind { materials: materials.to_vec(), ..small("tassel") };
    let size = |drop: &DropKind| PartSize::of(drop, Gauge::Inch);
    assert_eq!(size(&of(&[Material::Silk, Material::Cotton])), PartSize { ring: Size::Fits, body: Size::LeftOut });
    let large_ring = |drop: DropKind| DropKind { ring: large("hoop").ring, ..drop };
    assert!(!size(&large_ring(of(&[Material::Silk]))).is_small());
    assert!(size(&large_ring(of(&[Material::Brass]))).is_small());
    let long = DropKind { body: large("hoop").body, ..large_ring(of(&[Material::Silk, Material::Brass])) };
    assert_eq!(size(&long).body, Size::Measure, "nobody knows how small its cap is");
    assert!(size(&long).is_small() && size(&long).words().contains("measure it"));
}

/// The clasp and the end rings of a necklace are rigid parts like any other.
#[test]
fn the_ends_of_a_necklace_count() {
    let codes = |base: &Base, wearer| -> Vec<(CautionCode, bool)> {
        on(base, Some(400.0), &[], wearer, Region::US).cautions.iter().map(|one| (one.code, one.grave)).collect()
    };
    let mut base = chain(true);
    assert_eq!(codes(&base, Under3), []);
    if let BaseKind::Necklace(necklace) = &mut base.kind {
        necklace.clasp.length = mm(12.0);
    }
    assert_eq!(codes(&base, Under3), [(CautionCode::SmallPart, true)]);
    assert_eq!(codes(&base, From3To5), [(CautionCode::SmallPart, false)]);
    assert_eq!(codes(&base, From6To12), []);
    let said = on(&base, Some(400.0), &[], Under3, Region::US);
    assert_eq!((said.cautions[0].form.as_str(), &said.cautions[0].drop), ("base", &None));
    // A block of 12 × 2 × 60 mm fits the inch cylinder by 0.005 mm: too close to call, so it counts.
    let judged = |length| {
        if let BaseKind::Necklace(necklace) = &mut base.kind {
            necklace.clasp = Clasp { length: mm(length), width: mm(12.0), thickness: mm(2.0), ..necklace.clasp };
        }
        let verdict = on(&base, Some(400.0), &[], Under3, Region::US);
        verdict.cautions.first().map(|one| one.seller.clone()).unwrap_or_default()
    };
    let told = [59.5, 60.0, 60.05, 60.5].map(judged);
    assert!(told[0].starts_with("Clasp or end rings fit the test cylinder."), "{told:?}");
    assert!(told[1..3].iter().all(|told| told.contains("too close to call: measure them")), "{told:?}");
    assert_eq!(told[3], "");
}

/// 16 CFR 1501.4 in inches, EN 71-1 (from memory) in the metric drawing.
#[test]
fn the_regions_cylinder_decides() {
    // A plate 12 × 60 × 2: it fits the inch cylinder by 0.005 mm and misses the metric one by 0.03.
    let plate =
        |length| DropKind { body: Body::Box { width: mm(12.0), depth: mm(2.0), height: mm(length) }, ..large("plate") };
    let body = |length, gauge| PartSize::of(&plate(length), gauge).body;
    assert_eq!((body(60.0, Gauge::Inch), body(60.0, Gauge::Metric)), (Size::Measure, Size::Measure));
    assert_eq!((body(59.5, Gauge::Inch), body(60.5, Gauge::Inch)), (Size::Fits, Size::TooLarge));
    assert_eq!((body(59.5, Gauge::Metric), body(60.5, Gauge::Metric)), (Size::Fits, Size::TooLarge));
    // A ball of 31.83 mm lacks 0.04 mm in the inch cylinder, so it has to be measured, and 0.065 mm in the metric one.
    let between = DropKind { body: Body::Ball { diameter: mm(31.83) }, ..large("ball") };
    for (region, wanted) in [(Region::US, false), (Region::EU, true), (Region::UK, true)] {
        assert_eq!(judge_in(region, &[&between], Under3).suitable, wanted, "{region:?}");
    }
    let seller = &judge(&[&plate(60.0)], Under3).cautions[0].seller;
    assert!(seller.contains("the body is too close to call: measure it"), "{seller}");
}

/// What a test found against the region's limit: CPSIA section 101, REACH Annex XVII entries 23, 27 and 63.
#[test]
fn metals_are_judged_by_their_test() {
    let said = |region, tested: MetalTest, wearer| -> Vec<(CautionCode, bool)> {
        let drop = DropKind { tested: Some(tested), materials: vec![Material::CrystalGlass], ..large("gem") };
        let verdict = judge_in(region, &[&drop], wearer);
        let metal = |one: &&Caution| one.code >= CautionCode::Lead && one.code <= CautionCode::Nickel;
        verdict.cautions.iter().filter(metal).map(|one| (one.code, one.grave)).collect()
    };
    let lead = |ppm| MetalTest { lead_ppm: Some(ppm), ..MetalTest::default() };
    let cadmium = |ppm| MetalTest { cadmium_ppm: Some(ppm), lead_ppm: Some(0.0), ..MetalTest::default() };
    let nickel = |release| MetalTest { nickel_ug_cm2_week: Some(release), lead_ppm: Some(0.0), ..MetalTest::default() };
    assert_eq!(said(Region::US, lead(100.0), From6To12), []);
    assert_eq!(said(Region::US, lead(101.0), From6To12), [(CautionCode::Lead, true)]);
    assert_eq!(said(Region::US, lead(101.0), From13), []);
    assert_eq!(said(Region::EU, lead(499.0), From13), []);
    assert_eq!(said(Region::EU, lead(500.0), From13), [(CautionCode::Lead, true)]);
    assert_eq!(said(Region::EU, cadmium(99.0), From13), []);
    assert_eq!(said(Region::UK, cadmium(100.0), From13), [(CautionCode::Cadmium, true)]);
    assert_eq!(said(Region::EU, nickel(0.5), From13), []);
    assert_eq!(said(Region::EU, nickel(0.51), From13), [(CautionCode::Nickel, true)]);
    let crystal = DropKind { materials: vec![Material::CrystalGlass], ..large("gem") };
    // What the seller is told not to sell is not suitable either.
    let children = vec![Under3, From3To5, From6To12, Unknown];
    assert_eq!(self::said(&crystal, CautionCode::Lead), (children.clone(), children));
    for region in [Region::US, Region::EU, Region::UK] {
        let verdict = judge_in(region, &[&crystal], From6To12);
        let lead = verdict.cautions.iter().find(|one| one.code == CautionCode::Lead).unwrap();
        assert!(lead.grave && lead.seller.contains("do not sell it for a child"), "{region}: {lead:?}");
    }
    let mut steel = chain(true);
    steel.materials = vec![Material::SteelMetal];
    let codes = |wearer, region| -> Vec<CautionCode> {
        on(&steel, None, &[], wearer, region).cautions.iter().map(|one| one.code).collect()
    };
    assert_eq!(codes(From13, Region::EU), [CautionCode::Nickel]);
    assert_eq!(codes(From13, Region::US), []);
    assert_eq!(codes(From6To12, Region::US), [CautionCode::Nickel]);
    assert!(on(&steel, None, &[], From6To12, Region::US).suitable, "nickel that may be there is said, no more");
}

/// A region is a file: what it says and against whom is what is said.
#[test]
fn another_regions_file_is_enough() {
    let file = include_str!("../../assets/rules/us.ron")
        .replace("region: \"US\"", "region: \"CA\"")
        .replace("gauge: Inch", "gauge: Metric")
        .replace(
            "code: glass, says: [Under3, From3To5, From6To12], against: []",
            "code: glass, says: [From13], against: [From13]",
        );
    let rules = Rules::from_ron(&file).unwrap();
    let glass = DropKind { materials: vec![Material::Glass], ..large("gem") };
    let judged = |wearer| drop_cautions(&glass, &Sizes::empty(rules.gauge), wearer, &rules);
    assert!(judged(From6To12).suitable && !judged(From13).suitable);
    assert_eq!(judged(From13).cautions[0].code, CautionCode::Glass);
}

/// 16 CFR 1262: a flux index of 50 kG²mm² or more is hazardous.
#[test]
fn a_hazardous_magnet_is_grave_for_everybody() {
    let with = |kilogauss| {
        let magnet = Some(Magnet { surface_kilogauss: kilogauss, pole_diameter: mm(5.0) });
        DropKind { magnet, ..large("clasp") }
    };
    let children = vec![Under3, From3To5, From6To12, Unknown];
    assert_eq!(said(&with(3.0), CautionCode::Magnet), (WEARERS.to_vec(), WEARERS.to_vec()));
    assert_eq!(said(&with(1.5), CautionCode::Magnet), (children, vec![Under3, From3To5, Unknown]));
    let weak = &judge(&[&with(1.5)], Under3).cautions[0];
    assert!(weak.cited() == "common practice, no source" && weak.seller.contains("no magnet belongs"), "{weak:?}");
    let strong = &judge(&[&with(3.0)], Under3).cautions[0];
    assert!(strong.cited().starts_with("16 CFR 1262") && strong.seller.starts_with("At 50 or more"), "{strong:?}");
}

#[test]
fn what_a_drop_is_made_of_is_said_to_those_it_concerns() {
    let children = vec![Under3, From3To5, From6To12, Unknown];
    let made_of = |material| DropKind { materials: vec![Material::Brass, material], ..large("thing") };
    assert_eq!(said(&made_of(Material::Glass), CautionCode::Glass), (children.clone(), vec![]));
    assert_eq!(said(&made_of(Material::CrystalGlass), CautionCode::Glass), (children.clone(), vec![]));
    let unknown = made_of(Material::UnknownMetal);
    assert_eq!(said(&unknown, CautionCode::UnknownMetal), (children.clone(), children.clone()));
    let sharp = DropKind { sharp: true, ..large("thorn") };
    assert_eq!(said(&sharp, CautionCode::Sharp), (children.clone(), vec![Under3, From3To5, Unknown]));
    let cell = DropKind { coin_cell: true, ..large("lamp") };
    assert_eq!(said(&cell, CautionCode::CoinCell), (WEARERS.to_vec(), children));
    let sweet = DropKind {
        allergens: ["milk", "wheat"].iter().filter_map(|words| Allergen::from_words(words)).collect(),
        ..made_of(Material::Food)
    };
    assert_eq!(said(&sweet, CautionCode::FoodAllergen), (WEARERS.to_vec(), vec![]));
    assert!(judge(&[&sweet], From13).cautions[0].text.contains("It contains: milk, wheat."));
    assert!(judge(&[&large("hoop")], From13).cautions.is_empty());
}

/// A young child is possible while nobody said otherwise: whoever is not known hears of all that anybody hears of, and
/// what speaks against one wearer speaks against them.
#[test]
fn who_is_not_known_is_judged_as_the_most_careful_case() {
    let made_of = |material| DropKind { materials: vec![material], ..large("thing") };
    let magnet = |surface_kilogauss| DropKind {
        magnet: Some(Magnet { surface_kilogauss, pole_diameter: mm(5.0) }),
        ..large("clasp")
    };
    let metal = |nickel| MetalTest { nickel_ug_cm2_week: Some(nickel), ..MetalTest::default() };
    let drops = [
        small("bead"),
        large("hoop"),
        made_of(Material::Glass),
        made_of(Material::UnknownMetal),
        made_of(Material::CrystalGlass),
        made_of(Material::Food),
        magnet(1.5),
        magnet(3.0),
        DropKind { coin_cell: true, ..large("lamp") },
        DropKind { sharp: true, ..large("thorn") },
        DropKind { tested: Some(metal(9.0)), ..large("steel") },
    ];
    for region in [Region::US, Region::EU, Region::UK] {
        for (drop, count) in drops.iter().flat_map(|drop| [(drop, 1), (drop, 5)]) {
            for (breakaway, length_mm) in [(true, 400.0), (false, 700.0)] {
                let by = |wearer| on(&chain(breakaway), Some(length_mm), &vec![drop; count], wearer, region);
                let codes = |verdict: &Verdict| -> BTreeSet<CautionCode> {
                    verdict.cautions.iter().map(|caution| caution.code).collect()
                };
                let unknown = by(Unknown);
                for wearer in Wearer::ANSWERS {
                    let verdict = by(wearer);
                    assert!(codes(&unknown).is_superset(&codes(&verdict)), "{region} {} {wearer:?}", drop.id);
                    assert!(verdict.suitable || !unknown.suitable, "{region} {} {wearer:?}", drop.id);
                }
            }
        }
    }
}

/// A picture without anything transparent does not show where the drop ends, and paper tied to metal hides how large
/// the metal is: neither is said to be too large.
#[test]
fn what_nobody_knows_counts_as_small() {
    let shape = |cut_out| OutlineShape {
        hull_mm: vec![(0.0, 0.0), (60.0, 0.0), (60.0, 60.0), (0.0, 60.0)],
        area_mm2: 3600.0,
        cut_out,
    };
    let leaf =
        |cut_out| DropKind { body: Body::Outline { thickness: mm(3.0), shape: Some(shape(cut_out)) }, ..large("leaf") };
    assert!(!small_part(&leaf(true), Gauge::Inch) && small_part(&leaf(false), Gauge::Inch));
    let scroll = |materials| DropKind { materials, ..large("scroll") };
    assert!(small_part(&scroll(vec![Material::Paper, Material::Brass]), Gauge::Inch));
    assert!(!small_part(&scroll(vec![Material::Brass]), Gauge::Inch));
}

/// A bangle for a doll goes into the cylinder, one for a child's wrist does not. Worked out by hand: a disc of 31.6 mm
/// is below the inch cylinder's 31.75 mm, and lies above its floor.
#[test]
fn a_bangle_is_tried_as_a_whole() {
    let hoop = |inside: f64| {
        let kind = BaseKind::Bangle(Bangle {
            inside: mm(inside),
            wire: mm(0.8),
            weight: Mass::from_g(2.0),
            hook_width: mm(2.0),
            hook_thickness: mm(1.0),
            hook_weight: Mass::from_g(0.1),
            free_arc_deg: 240.0,
        });
        on(&Base { kind, ..chain(true) }, None, &[], Under3, Region::US)
    };
    let doll = hoop(30.0);
    assert_eq!((doll.suitable, doll.cautions[0].code), (false, CautionCode::SmallPart));
    assert!(doll.cautions[0].seller.starts_with("The whole bangle fits"), "{doll:?}");
    assert!(hoop(40.0).suitable);
}

/// Breakaway: ASTM F2923. Long loops, weight, short chains: common practice, no source.
#[test]
fn a_young_child_is_warned_of_loops_and_weight() {
    let codes = |breakaway, length_mm, count, wearer| -> Vec<(CautionCode, bool)> {
        let (base, hoop) = (chain(breakaway), large("hoop"));
        let verdict = on(&base, length_mm, &vec![&hoop; count], wearer, Region::US);
        verdict.cautions.iter().map(|caution| (caution.code, caution.grave)).collect()
    };
    let (breakaway, cord, heavy) = (CautionCode::Breakaway, CautionCode::CordLoop, CautionCode::HeavyOnChild);
    assert_eq!(codes(false, Some(400.0), 0, Under3), [(breakaway, true)]);
    assert_eq!(codes(false, Some(400.0), 0, From3To5), [(breakaway, false)]);
    assert_eq!(codes(false, Some(400.0), 0, Unknown), [(breakaway, true)]);
    assert_eq!(codes(false, Some(500.0), 0, Unknown), [(breakaway, true), (cord, false)]);
    assert_eq!(codes(false, Some(800.0), 0, From6To12), []);
    assert_eq!(codes(true, Some(400.0), 0, Under3), []);
    assert_eq!(codes(true, Some(459.9), 0, Under3), []);
    assert_eq!(codes(true, Some(460.0), 0, Under3), [(cord, false)]);
    assert_eq!(codes(true, None, 0, Under3), [], "the usual length is short");
    // 400 mm of chain weigh 5 g, a hoop 10 g.
    assert_eq!(codes(true, Some(400.0), 6, From3To5), [(heavy, false)]);
    assert_eq!(codes(true, Some(400.0), 5, From3To5), []);
    assert_eq!(codes(true, Some(400.0), 3, Under3), [(heavy, false)]);
    assert_eq!(codes(true, Some(400.0), 3, Unknown), [(heavy, false)]);
    assert_eq!(codes(true, Some(400.0), 12, From6To12), [(heavy, false)]);
    assert_eq!(codes(true, Some(400.0), 12, From13), []);
}

#[test]
fn a_chain_that_does_not_go_round_the_neck_is_said_with_what_is_missing() {
    let base = chain(true);
    let (rules, sizes) = (rules(Region::US), Sizes::empty(Gauge::Inch));
    let verdict = |short_by_mm, wearer| {
        let (length_mm, drops) = (Some(350.0), &[][..]);
        cautions(&PieceFacts { base: &base, length_mm, short_by_mm, drops, sizes: &sizes, wearer, rules })
    };
    let short = verdict(Some(12.4), From13);
    assert!(short.suitable && short.cautions[0].code == CautionCode::ChainTooShort);
    assert!(short.cautions[0].text.contains("12 mm too short"));
    assert!(!verdict(Some(12.4), From6To12).suitable);
    assert!(verdict(Some(-5.0), From13).cautions.is_empty() && verdict(None, From13).cautions.is_empty());
}

#[test]
fn copies_are_said_once_and_each_caution_names_its_rule() {
    let glass = |id: &str| DropKind { materials: vec![Material::Glass], weight: Mass::from_g(2.0), ..small(id) };
    let (one, two) = (glass("one"), glass("two"));
    let verdict = judge(&[&one, &two, &one, &one], Under3);
    let said: Vec<(CautionCode, Option<&str>)> =
        verdict.cautions.iter().map(|caution| (caution.code, caution.drop.as_deref())).collect();
    let (part, glass) = (CautionCode::SmallPart, CautionCode::Glass);
    assert_eq!(said, [(part, Some("one")), (part, Some("two")), (glass, Some("one")), (glass, Some("two"))]);
    assert!(!verdict.suitable);
    assert!(verdict.cautions[0].cited().starts_with("16 CFR 1501.4"));
    assert!(verdict.cautions[2].cited().ends_with("(from memory)"));
    assert!(verdict.cautions.iter().all(|caution| !caution.seller.is_empty()));
    let text = serde_json::to_string(&verdict).unwrap();
    assert!(text.contains("\"code\":\"small_part\""));
    assert_eq!(serde_json::from_str::<Verdict>(&text).unwrap(), verdict);
}

/// Before the rule's date and status were kept apart, a ticket's caution had them in one English text.
#[test]
fn a_caution_of_an_older_ticket_is_read_and_said_as_it_was() {
    let old = r#"{"code":"small_part","drop":"bead","rule":"16 CFR 1501.4 (US small-parts rule), as of June 2026",
        "form":"","text":"Bead is a small part.","seller":"Offer another drop.","grave":true}"#;
    let caution: Caution = serde_json::from_str(old).unwrap();
    assert_eq!(caution.cited(), "16 CFR 1501.4 (US small-parts rule), as of June 2026");
    let older = r#"{"code":"glass","drop":null,"rule":"16 CFR 1500.49","text":"It is glass.","grave":false}"#;
    assert_eq!(serde_json::from_str::<Caution>(older).unwrap().cited(), "16 CFR 1500.49");
    let now = &judge(&[&small("bead")], Under3).cautions[0];
    assert_eq!(now.cited(), caution.cited(), "the same in English");
    assert_eq!((now.rule.as_str(), now.title.as_str()), ("16 CFR 1501.4", "US small-parts rule"));
    assert_eq!((now.dated.day().map(|day| day.to_string()), now.status), (Some("2026-06".into()), Some(Status::Read)));
}
