//! The rules for each age band.

use super::*;
use crate::craft::{
    Base, BaseKind, Body, Clasp, DropKind, Finish, Length, LengthRange, LinearDensity, Magnet, Mass, Material,
    Necklace, Ring, Sort, Wearer,
};

const WEARERS: [Wearer; 5] = [Wearer::Under3, Wearer::From3To5, Wearer::From6To12, Wearer::From13, Wearer::Unknown];

fn mm(x: f64) -> Length {
    Length::from_mm(x)
}

fn chain(breakaway: bool) -> Base {
    let ring = Ring { outside: mm(5.0), wire: mm(0.8) };
    Base {
        id: "cable".into(),
        name: "Cable chain".into(),
        finish: Finish::Steel,
        materials: vec![Material::SteelMetal],
        price: 18.into(),
        stock: 3,
        kind: BaseKind::Necklace(Necklace {
            chain: LinearDensity::from_g_per_m(12.5),
            link_length: mm(4.0),
            link_width: mm(3.0),
            end_ring: ring,
            clasp: Clasp { length: mm(12.0), width: mm(6.0), thickness: mm(3.0), ring },
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
    }
}

fn small(id: &str) -> DropKind {
    DropKind { body: Body::Ball { diameter: mm(12.0) }, ring: Ring { outside: mm(10.0), wire: mm(1.0) }, ..large(id) }
}

fn judge(drops: &[&DropKind], wearer: Wearer) -> Verdict {
    cautions(&PieceFacts { base: &chain(true), length_mm: Some(400.0), drops, wearer, region: Region::Us })
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
    assert_eq!(said(&small("bead"), CautionCode::SmallPart), (vec![Under3, From3To5, Unknown], vec![Under3]));
    assert_eq!(said(&large("hoop"), CautionCode::SmallPart), (vec![], vec![]));
    assert!(judge(&[&large("hoop")], Under3).suitable);
    let ring_alone = DropKind { ring: small("bead").ring, ..large("hoop") };
    assert_eq!(said(&ring_alone, CautionCode::SmallPart).1, [Under3], "its ring alone fits");
    let body_alone = DropKind { body: Body::Ball { diameter: mm(12.0) }, ..large("hoop") };
    assert_eq!(said(&body_alone, CautionCode::SmallPart).1, [Under3], "its body alone fits");
    let outline = |width| DropKind { body: Body::Outline { thickness: mm(2.0) }, width: mm(width), ..large("leaf") };
    assert_eq!((small_part(&outline(20.0), Gauge::Inch), small_part(&outline(40.0), Gauge::Inch)), (true, false));
}

/// 16 CFR 1501.4 in inches, EN 71-1 (from memory) in the metric drawing.
#[test]
fn the_regions_cylinder_decides() {
    let vial = DropKind { body: Body::Cylinder { diameter: mm(12.0), height: mm(46.06) }, ..large("vial") };
    assert!(small_part(&vial, Gauge::Inch) && !small_part(&vial, Gauge::Metric));
    let base = chain(true);
    for (region, wanted) in [(Region::Us, false), (Region::Eu, true), (Region::Uk, true)] {
        let facts = PieceFacts { base: &base, length_mm: None, drops: &[&vial], wearer: Under3, region };
        assert_eq!(cautions(&facts).suitable, wanted, "{region:?}");
    }
}

/// 16 CFR 1262: a flux index of 50 kG²mm² or more is hazardous.
#[test]
fn a_hazardous_magnet_is_grave_for_every_child() {
    let with = |kilogauss| {
        let magnet = Some(Magnet { surface_kilogauss: kilogauss, pole_diameter: mm(5.0) });
        DropKind { magnet, ..large("clasp") }
    };
    let children = vec![Under3, From3To5, From6To12, Unknown];
    assert_eq!(said(&with(3.0), CautionCode::Magnet), (WEARERS.to_vec(), children.clone()));
    assert_eq!(said(&with(1.5), CautionCode::Magnet), (children, vec![]));
}

#[test]
fn what_a_drop_is_made_of_is_said_to_those_it_concerns() {
    let children = vec![Under3, From3To5, From6To12, Unknown];
    let made_of = |material| DropKind { materials: vec![Material::Brass, material], ..large("thing") };
    assert_eq!(said(&made_of(Material::Glass), CautionCode::Glass), (children.clone(), vec![]));
    assert_eq!(said(&made_of(Material::CrystalGlass), CautionCode::Glass), (children.clone(), vec![]));
    let unknown = made_of(Material::UnknownMetal);
    assert_eq!(said(&unknown, CautionCode::UnknownMetal), (children.clone(), vec![Under3]));
    let sharp = DropKind { sharp: true, ..large("thorn") };
    assert_eq!(said(&sharp, CautionCode::Sharp), (children, vec![Under3]));
    let cell = DropKind { coin_cell: true, ..large("lamp") };
    assert_eq!(said(&cell, CautionCode::CoinCell), (WEARERS.to_vec(), vec![Under3]));
    let sweet = DropKind { allergens: vec!["milk".into(), "wheat".into()], ..made_of(Material::Food) };
    assert_eq!(said(&sweet, CautionCode::FoodAllergen), (WEARERS.to_vec(), vec![]));
    assert!(judge(&[&sweet], From13).cautions[0].text.ends_with("It contains milk, wheat."));
    assert!(judge(&[&large("hoop")], From13).cautions.is_empty());
}

/// Breakaway: ASTM F2923. Long loops and weight: common practice, no source.
#[test]
fn a_young_child_is_warned_of_loops_and_weight() {
    let codes = |breakaway, length_mm, count, wearer| -> Vec<(CautionCode, bool)> {
        let (base, hoop) = (chain(breakaway), large("hoop"));
        let drops = vec![&hoop; count];
        let facts = PieceFacts { base: &base, length_mm, drops: &drops, wearer, region: Region::Us };
        cautions(&facts).cautions.iter().map(|caution| (caution.code, caution.grave)).collect()
    };
    let cord = CautionCode::CordLoop;
    assert_eq!(codes(false, Some(400.0), 0, Under3), [(cord, true)]);
    assert_eq!(codes(false, Some(400.0), 0, From3To5), [(cord, false)]);
    assert_eq!(codes(false, Some(400.0), 0, Unknown), [(cord, false)]);
    assert_eq!(codes(false, Some(800.0), 0, From6To12), []);
    assert_eq!(codes(true, Some(400.0), 0, Under3), []);
    assert_eq!(codes(true, Some(500.0), 0, Under3), [(cord, false)]);
    assert_eq!(codes(true, None, 0, Under3), [], "the usual length is short");
    assert_eq!(codes(true, None, 7, From3To5), [(CautionCode::HeavyOnChild, false)]);
    assert_eq!(codes(true, None, 6, From3To5), []);
    assert_eq!(codes(true, None, 7, From13), []);
}

#[test]
fn copies_are_said_once_and_each_caution_names_its_rule() {
    let glass = |id: &str| DropKind { materials: vec![Material::Glass], ..small(id) };
    let (one, two) = (glass("one"), glass("two"));
    let verdict = judge(&[&one, &two, &one, &one], Under3);
    let said: Vec<(CautionCode, Option<&str>)> =
        verdict.cautions.iter().map(|caution| (caution.code, caution.drop.as_deref())).collect();
    let (part, glass) = (CautionCode::SmallPart, CautionCode::Glass);
    assert_eq!(said, [(part, Some("one")), (part, Some("two")), (glass, Some("one")), (glass, Some("two"))]);
    assert!(!verdict.suitable);
    assert!(verdict.cautions[0].rule.starts_with("16 CFR 1501.4"));
    assert!(verdict.cautions[2].rule.ends_with("(from memory)"));
    let text = serde_json::to_string(&verdict).unwrap();
    assert!(text.contains("\"code\":\"small_part\""));
    assert_eq!(serde_json::from_str::<Verdict>(&text).unwrap(), verdict);
}
