//! Loads held at a place on a weightless chain: the triangle's closed form, and the slack it turns into.

use super::*;

/// One load W held at the fraction f: two straight legs. T from the balance of forces at the load.
#[test]
fn a_load_at_a_fraction() {
    for (ratio, f, x, drop, left, right) in [
        (1.2, 0.25, 0.14, 0.265329983228, 0.972374086263, 0.474880367710),
        (1.5, 0.4, 0.275, 0.533268225193, 0.815724581833, 0.464119158629),
    ] {
        let length = 100.0 * ratio;
        held(&load(length, 100.0, 0.0, &[5.0], &[]), f * length, |line, shape| {
            let shape = shape.unwrap();
            assert_eq!(line.slack_push(f * length), None);
            close(shape.rings[0].x_mm, 100.0 * x, 1e-9);
            close(shape.rings[0].y_mm, 100.0 * drop, 1e-9);
            let [one, two] = [shape.segments[0], shape.segments[1]].map(|leg| leg.h.hypot(leg.v));
            close(one, 5.0 * left, 1e-9);
            close(two, 5.0 * right, 1e-9);
        });
    }
}

/// L/S = 2 and f = 0.3: the triangle would need a push in the long leg. It hangs slack, the load straight below the
/// left hang point, 0.6 S deep; T is W in the short leg and nothing in the long one. A chain of almost no weight shows it.
#[test]
fn a_long_leg_hangs_slack() {
    held(&load(200.0, 100.0, 0.0, &[5.0], &[]), 60.0, |line, shape| {
        assert_eq!(shape.unwrap_err(), HangError::NoShape);
        // All of W pulls at the left hang point.
        assert_eq!(line.slack_push(60.0), Some(5.0));
        // The border is at l₂² = S² + l₁², which is l₁ = 75 mm here.
        assert_eq!((line.slack_push(74.9), line.slack_push(75.1)), (Some(5.0), None));
        assert_eq!((line.slack_push(125.1), line.slack_push(124.9)), (Some(-5.0), None));
    });
    held(&load(200.0, 100.0, 1e-5, &[5.0], &[]), 60.0, |_, shape| {
        let shape = shape.unwrap();
        let [one, two] = [shape.segments[0], shape.segments[1]].map(|leg| leg.h.hypot(leg.v) / 5.0);
        assert!(shape.rings[0].x_mm.abs() < 0.05 && (shape.rings[0].y_mm - 60.0).abs() < 0.01, "{:?}", shape.rings);
        assert!((one - 1.0).abs() < 1e-3 && two < 1e-3, "{one} {two}");
    });
    // With the right hang point 30 mm higher the leg has to reach up to it: l₂² = S² + (l₁ + 30)² at l₁ = 63.04 mm.
    let raised = NecklaceLoad { rise_mm: 30.0, ..load(200.0, 100.0, 0.0, &[5.0], &[]) };
    let border = (200.0f64.powi(2) - 100.0f64.powi(2) - 30.0f64.powi(2)) / (2.0 * 230.0);
    held(&raised, border - 0.1, |line, shape| {
        assert_eq!(shape.unwrap_err(), HangError::NoShape);
        assert_eq!((line.slack_push(border - 0.1), line.slack_push(border + 0.1)), (Some(5.0), None));
    });
    held(&raised, border + 0.1, |_, shape| assert!(shape.is_ok()));
}

/// Chains of no weight, long rows and short ones: each hangs with its end at the hang point, or its drops lie against an
/// end and a piece of the chain really is longer than it needs to be.
#[test]
fn without_weight_it_hangs_or_is_slack() {
    let mut seeded = Seeded(5);
    let mut slack = 0;
    for piece in 0..4000 {
        let n = 1 + seeded.next(0.0, if piece % 3 == 0 { 60.0 } else { 6.0 }) as usize;
        let masses: Vec<f64> = (0..n).map(|_| 10f64.powf(seeded.next(-1.0, 1.2))).collect();
        let widest = seeded.next(1.0, 60.0);
        let gaps: Vec<f64> = (1..n).map(|_| seeded.next(0.5, widest)).collect();
        let (width, cluster) = (seeded.next(5.0, 150.0), gaps.iter().sum::<f64>());
        let rise_mm = if piece % 2 == 0 { 0.0 } else { width * seeded.next(-1.7, 1.7).powi(3) };
        let distance = width.hypot(rise_mm);
        let length = (distance * (1.0 + 10f64.powf(seeded.next(-6.0, 0.8)))).max(cluster * 1.01 + 0.1);
        let load = NecklaceLoad { rise_mm, ..load(length, width, 0.0, &masses, &gaps) };
        match necklace(&load) {
            Ok(rest) => {
                let (x, y) = rest.point_at(length);
                assert!((x - width).hypot(y + rise_mm) < 1e-9 * length, "piece {piece} ends at {x}, {y}\n{load:?}");
            }
            Err(error) => {
                assert_eq!(error, HangError::NoShape);
                slack += 1;
                let at = |first: f64| held(&load, first, |line, _| line.slack_push(first));
                let (left, right) = (at(0.0), at(length - cluster));
                let against_left = left.is_some_and(|push| push < 0.0);
                assert!(against_left || right.is_some_and(|push| push > 0.0), "piece {piece} is not slack\n{load:?}");
            }
        }
    }
    assert!((50..400).contains(&slack), "{slack} pieces were slack");
}
