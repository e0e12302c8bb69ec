use rust_decimal::Decimal;

use super::*;
use crate::{
    craft::{Body, Clasp, Facts, Finish, LengthRange, LinearDensity, LinkKind, Mass, Ring, Sort, Wearer},
    hang::reach_mm,
};

const RHO: f64 = 0.6;

fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

fn base(kind: BaseKind) -> Base {
    let (id, name) = ("base".into(), "Base".into());
    Base {
        id,
        name,
        finish: Finish::Copper,
        facts: Facts::of([]),
        price: Decimal::ONE,
        stock: 1,
        kind,
        counted: None,
        guessed: vec![],
    }
}

fn chain() -> Base {
    let ring = Ring::new(mm(5.0), mm(0.8)).unwrap();
    base(BaseKind::Necklace(Necklace {
        chain: LinearDensity::from_g_per_m(14.2),
        link: LinkKind::Cable,
        link_length: mm(4.2),
        link_width: mm(3.1),
        end_ring: ring,
        clasp: Clasp { length: mm(12.0), width: mm(6.0), thickness: mm(3.0), ring },
        lengths: LengthRange { usual: mm(610.0), shortest: mm(250.0), longest: mm(860.0) },
        breakaway: false,
    }))
}

fn bangle_of(hook_g: f64) -> Base {
    base(BaseKind::Bangle(Bangle {
        inside: mm(65.0),
        wire: mm(2.4),
        weight: Mass::from_g(9.3),
        hook_width: mm(5.0),
        hook_thickness: mm(3.0),
        hook_weight: Mass::from_g(hook_g),
        free_arc_deg: 240.0,
    }))
}

fn drop_kind(weight_g: f64, width_mm: f64) -> DropKind {
    DropKind {
        id: "bead".into(),
        name: "Bead".into(),
        sort: Sort::Bead,
        finish: None,
        colours: vec![],
        facts: Facts::of([]),
        body: Body::Ball { diameter: mm(width_mm) },
        width: mm(width_mm),
        height: mm(width_mm + 3.0),
        ring: Ring::new(mm(8.0), mm(1.0)).unwrap(),
        weight: Mass::from_g(weight_g),
        price: Decimal::ONE,
        stock: 1,
        home: "A1".parse().unwrap(),
        picture: "bead.png".into(),
        assortment: None,
        counted: None,
        guessed: vec![],
    }
}

fn place(base: &Base, kinds: &[DropKind], length_mm: f64) -> Result<PiecePlaces, HangError> {
    let kinds: Vec<&DropKind> = kinds.iter().collect();
    place_piece(base, Some(mm(length_mm)), &kinds, Wearer::From13.neck().usual_mm, RHO)
}

/// The stage's places are the rest shape's, between the hang points the neck gives.
#[test]
fn a_necklace_is_where_it_rests() {
    let kinds = [drop_kind(4.0, 12.0), drop_kind(1.0, 8.0), drop_kind(2.5, 20.0)];
    let places = place(&chain(), &kinds, 610.0).unwrap();
    let width = 360.0 / std::f64::consts::PI;
    let loads = kinds.iter().map(|kind| Load { mass_g: kind.weight.g() }).collect();
    let load = NecklaceLoad {
        front_length_mm: 430.0,
        width_mm: width,
        rise_mm: 0.0,
        chain_g_per_mm: 0.0142,
        loads,
        // 0.6 · (12 + 8)/2 and 0.6 · (8 + 20)/2
        gaps_mm: vec![6.0, 8.4],
    };
    let rest = necklace(&load).unwrap();
    for (ring, exact) in places.rings.iter().zip(&rest.rings) {
        assert!((ring.x_mm - exact.x_mm).abs() < 1e-9 && (ring.y_mm - exact.y_mm).abs() < 1e-9, "{ring:?} {exact:?}");
    }
    let (first, last) = (places.chain[0], places.chain[places.chain.len() - 1]);
    assert!(first.x_mm.hypot(first.y_mm) < 1e-9 && (last.x_mm - width).hypot(last.y_mm) < 1e-7);
    // The lowest point is a drop's: 8 − 3 mm of ring below the chain, where its eye begins, then the body.
    let reach = |i: usize| rest.rings[i].y_mm + 5.0 + kinds[i].height.mm();
    assert!((places.lowest_mm - reach(0).max(reach(1)).max(reach(2))).abs() < 1e-9, "{}", places.lowest_mm);
    assert_eq!((places.against, places.turn_deg, places.bangle), (None, 0.0, None));
}

#[test]
fn a_row_against_a_hang_point_is_told() {
    let mut kinds = vec![drop_kind(0.4, 40.0); 6];
    kinds.extend([drop_kind(30.0, 40.0), drop_kind(30.0, 40.0)]);
    let places = place(&chain(), &kinds, 400.0).unwrap();
    assert_eq!((places.against, places.rings[0].x_mm), (Some(Side::Left), 0.0));
}

#[test]
fn what_does_not_go_is_refused() {
    let refused = place(&chain(), &[], 290.0).unwrap_err();
    assert!(matches!(refused, HangError::TooShortForNeck { .. }), "{refused}");
    // 240° of a ring 65 mm across are 136.1 mm: eleven gaps of 12 mm.
    let refused = place(&bangle_of(1.2), &vec![drop_kind(2.0, 20.0); 15], 0.0).unwrap_err();
    assert!(matches!(refused, HangError::NoRoom { fits: 12, .. }), "{refused}");
}

/// The wire's centre line is 33.7 mm from the middle; a usual hook stays up, one as heavy as it gets comes down.
#[test]
fn a_bangle_is_where_it_rests() {
    let kinds = [drop_kind(4.0, 12.0), drop_kind(1.0, 8.0)];
    let places = place(&bangle_of(1.2), &kinds, 0.0).unwrap();
    let moment: f64 = places.rings.iter().zip(&kinds).map(|(ring, kind)| ring.x_mm * kind.weight.g()).sum();
    assert!(moment.abs() < 1e-9 && places.turn_deg == 0.0, "{places:?}");
    assert!(places.rings.iter().all(|ring| (ring.x_mm.hypot(ring.y_mm) - 33.7).abs() < 1e-9));
    let turned = place(&bangle_of(9.0), &kinds, 0.0).unwrap();
    assert!(turned.turn_deg.abs() > 90.0 && turned.against.is_some(), "{turned:?}");
    assert!((reach_mm(&kinds[0]) - 20.0).abs() < 1e-12);
}
