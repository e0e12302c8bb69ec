//! An assortment is judged by the smallest piece that may be in it.

use super::{CautionCode, Gauge, PartSize, PieceFacts, Region, Rules, Size, Sizes, cautions, table_cases::*};
use crate::craft::{Body, DropKind, Guess, Length, Look, OutlineShape, Wearer};

fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

/// A cut-out sheet of this width and height.
fn look(width: f64, height: f64) -> Look {
    let hull_mm = vec![(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)];
    let shape = OutlineShape { hull_mm, area_mm2: width * height * 0.9, cut_out: true };
    Look { picture: "look.png".into(), width: mm(width), height: mm(height), shape: Some(shape) }
}

fn mix(body: Body, looks: Vec<Look>) -> DropKind {
    let mut kind = neutral_drop();
    kind.body = body;
    kind.ring.outside = mm(80.0);
    kind.assortment = Some(looks);
    kind
}

/// The cylinder of 16 CFR 1501.4 is 31.7 mm wide and 57.1 mm deep at its deepest: what is 70 mm each way does not go in, a
/// sheet of 20 × 20 mm does.
#[test]
fn the_smallest_piece_decides() {
    let large = || Body::Box { width: mm(70.0), depth: mm(70.0), height: mm(70.0) };
    let body = |kind: &DropKind| PartSize::of(kind, Gauge::Inch).body;
    assert_eq!(body(&mix(large(), vec![])), Size::TooLarge);
    assert_eq!(body(&mix(large(), vec![look(70.0, 70.0), look(90.0, 60.0)])), Size::TooLarge);
    assert_eq!(body(&mix(large(), vec![look(70.0, 70.0), look(20.0, 20.0)])), Size::Fits);
    let unknown = Look { shape: None, ..look(90.0, 90.0) };
    assert_eq!(body(&mix(large(), vec![unknown])), Size::Measure, "of an unknown outline nobody knows how small it is");
    let mut whole = look(90.0, 90.0);
    whole.shape.as_mut().unwrap().cut_out = false;
    assert_eq!(body(&mix(large(), vec![whole])), Size::Measure, "where it ends is not to be seen");
    let mut guessed = mix(large(), vec![look(70.0, 70.0)]);
    guessed.guessed = vec![Guess::Body];
    assert_eq!(body(&guessed), Size::Measure, "nobody told the smallest");
    assert_eq!(body(&mix(Body::Ball { diameter: mm(10.0) }, vec![look(70.0, 70.0)])), Size::Fits);
}

/// Two assortments of the same body that differ in their looks are tried apart.
#[test]
fn looks_tell_assortments_apart() {
    let large = || Body::Box { width: mm(70.0), depth: mm(70.0), height: mm(70.0) };
    let kinds =
        [mix(large(), vec![look(70.0, 70.0)]), DropKind { id: "b".into(), ..mix(large(), vec![look(9.0, 9.0)]) }];
    let sizes = Sizes::of_all(&kinds, Gauge::Inch);
    assert_eq!([sizes.of(&kinds[0]).body, sizes.of(&kinds[1]).body], [Size::TooLarge, Size::Fits]);
}

/// Looks are laid into compartments of all sorts one after the other: nothing that was said before is unsaid.
#[test]
fn a_further_look_never_takes_a_caution_away() {
    let bodies = [
        Body::Ball { diameter: mm(38.0) },
        Body::Ball { diameter: mm(20.0) },
        Body::Box { width: mm(70.0), depth: mm(70.0), height: mm(70.0) },
        Body::Ellipsoid { width: mm(40.0), depth: mm(40.0), height: mm(70.0) },
        Body::Outline { thickness: mm(3.0), shape: None },
    ];
    let looks = [look(70.0, 70.0), look(60.0, 33.0), Look { shape: None, ..look(80.0, 80.0) }, look(12.0, 9.0)];
    let base = neutral_base();
    let mut added = 0;
    for body in bodies {
        for region in [Region::US, Region::EU, Region::UK] {
            let rules = Rules::of_region(region).unwrap();
            for wearer in Wearer::ANSWERS.into_iter().chain([Wearer::Unknown]) {
                let heard = |count: usize| {
                    let kind = mix(body.clone(), looks[..count].to_vec());
                    let sizes = Sizes::empty(rules.gauge);
                    let (length_mm, neck_mm, drops, sizes) = (None, None, &[&kind][..], &sizes);
                    let verdict =
                        cautions(&PieceFacts { base: &base, length_mm, neck_mm, drops, sizes, wearer, rules });
                    let codes = verdict.cautions.into_iter().map(|one| (one.code, one.grave));
                    codes.collect::<Vec<(CautionCode, bool)>>()
                };
                for count in 1..=looks.len() {
                    let (before, after) = (heard(count - 1), heard(count));
                    assert!(before.iter().all(|one| after.contains(one)), "{body:?} {region:?} {wearer:?} {count}");
                    added += usize::from(after.len() > before.len());
                }
            }
        }
    }
    assert!(added > 10, "some looks call for a caution: {added}");
}
