//! What every check of the rest shape uses, and how it behaves at its borders.

mod held;
mod links;
mod minimum;
mod references;
mod rises;

use super::*;
use crate::hang::seeded::Seeded;

fn load(length: f64, width: f64, w: f64, masses: &[f64], gaps: &[f64]) -> NecklaceLoad {
    NecklaceLoad {
        front_length_mm: length,
        width_mm: width,
        rise_mm: 0.0,
        chain_g_per_mm: w,
        loads: masses.iter().map(|mass_g| Load { mass_g: *mass_g }).collect(),
        gaps_mm: gaps.into(),
    }
}

fn close(found: f64, wanted: f64, tolerance: f64) {
    assert!((found / wanted - 1.0).abs() < tolerance, "{found} is not {wanted}");
}

/// Mass times depth below the left hang point, which a resting piece makes as large as it can.
fn depth_moment(rest: &NecklaceRest, load: &NecklaceLoad) -> f64 {
    let drops: f64 = rest.rings.iter().zip(&load.loads).map(|(ring, one)| ring.y_mm * one.mass_g).sum();
    // Simpson's rule piece by piece; the shape is smooth within each.
    const HALVES: usize = 1000;
    let chain = |segment: &Segment| {
        let step = segment.length / (2 * HALVES) as f64;
        let y = |i: usize| segment.at(step * i as f64).1;
        let sum: f64 = (0..HALVES).map(|i| y(2 * i) + 4.0 * y(2 * i + 1) + y(2 * i + 2)).sum();
        sum * step / 3.0 * segment.w
    };
    drops + rest.segments.iter().map(chain).sum::<f64>()
}

/// The shape with the cluster held at `first`, and with its line whatever else is to be asked of it.
fn held<T>(load: &NecklaceLoad, first: f64, ask: impl FnOnce(&Line<'_>, Result<NecklaceRest, HangError>) -> T) -> T {
    let mut offsets: Vec<f64> = load.loads.iter().map(|_| 0.0).collect();
    for (i, gap) in load.gaps_mm.iter().enumerate() {
        offsets[i + 1] = offsets[i] + gap;
    }
    let line = Line { load, offsets: &offsets };
    let mass: f64 = load.loads.iter().map(|one| one.mass_g).sum::<f64>() + load.chain_g_per_mm * load.front_length_mm;
    let solved = Follow::new(&line, load.width_mm.hypot(load.rise_mm), mass).solve(first);
    ask(&line, solved.map(|(h, v)| shape(&line, first, h, v, None)))
}

/// Heavy drops at one end of a long cluster pull it along until its other end is at the hang point.
#[test]
fn a_cluster_against_an_end() {
    let masses = [0.5, 0.5, 0.5, 9.0, 9.0];
    let one = load(150.0, 110.0, 0.01, &masses, &[30.0; 4]);
    let rest = necklace(&one).unwrap();
    assert_eq!((rest.against, rest.rings[0].arc_mm), (Some(Side::Left), 0.0));
    assert!(rest.rings[0].x_mm == 0.0 && rest.rings[0].y_mm == 0.0);
    let mirrored = necklace(&load(150.0, 110.0, 0.01, &[9.0, 9.0, 0.5, 0.5, 0.5], &[30.0; 4])).unwrap();
    assert_eq!(mirrored.against, Some(Side::Right));
    close(mirrored.rings[4].x_mm, 110.0, 1e-12);
    for (a, b) in rest.rings.iter().zip(mirrored.rings.iter().rev()) {
        assert!((a.x_mm + b.x_mm - 110.0).abs() < 1e-8 && (a.y_mm - b.y_mm).abs() < 1e-8, "{a:?} {b:?}");
    }
}

/// A weightless chain goes slack where l₂² > S² + l₁²; unlike drops still find their balance from there, and a
/// slack stretch between two drops is refused.
#[test]
fn slack_without_weight() {
    let rest = necklace(&load(430.0, 60.0, 0.0, &[9.0, 0.5, 0.5, 0.5], &[30.0; 3])).unwrap();
    // The balance by its definition: the tension is the same at both hang points, so the end slopes are.
    let (x, y) = rest.point_at(1.0);
    let (x_end, y_end) = rest.point_at(429.0);
    assert!((x - (60.0 - x_end)).abs() < 1e-8 && (y - y_end).abs() < 1e-8);
    assert_eq!(necklace(&load(120.0, 50.0, 0.0, &[5.0, 5.0], &[100.0])), Err(HangError::NoShape));
}

#[test]
fn nonsense_is_refused() {
    assert!(matches!(necklace(&load(100.0, 100.0, 0.01, &[], &[])), Err(HangError::TooShort { .. })));
    assert!(matches!(necklace(&load(120.0, 100.0, 0.0, &[], &[])), Err(HangError::Nonsense { .. })));
    assert!(matches!(necklace(&load(120.0, 100.0, 0.01, &[f64::NAN], &[])), Err(HangError::Nonsense { .. })));
    assert!(matches!(necklace(&load(120.0, 100.0, 0.01, &[-1.0], &[])), Err(HangError::Nonsense { .. })));
    assert!(matches!(
        necklace(&load(120.0, 100.0, 0.01, &[1.0; 3], &[70.0; 2])),
        Err(HangError::NoRoom { fits: 2, .. })
    ));
    assert!(matches!(necklace(&load(120.0, 100.0, 0.01, &[1.0; 3], &[70.0])), Err(HangError::Gaps { .. })));
    let rise = |rise_mm: f64| necklace(&NecklaceLoad { rise_mm, ..load(120.0, 100.0, 0.01, &[], &[]) });
    for nonsense in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert!(matches!(rise(nonsense), Err(HangError::Nonsense { .. })));
    }
    // √(120² − 100²) = 66.33: a rise below it is reached, one above it is not.
    assert!(rise(-66.3).is_ok() && rise(66.3).is_ok());
    let refused = rise(-66.4).unwrap_err();
    assert!(matches!(refused, HangError::TooShort { .. }));
    assert_eq!(refused.to_string(), "a chain of 120.0 mm does not reach across 120.0 mm");
}

/// Figures no jeweller has: an answer of finite numbers or a refusal, and soon.
#[test]
fn absurd_figures_end_in_words() {
    let sizes = [1e-300, 1e-9, 1.0, 1e9, 1e300];
    let mut refused = 0;
    for length in sizes {
        for width in sizes {
            for rise_mm in [-1e300, 0.0, 1e-9] {
                for (w, mass) in sizes.into_iter().flat_map(|w| sizes.map(|mass| (w, mass))) {
                    let piece = NecklaceLoad { rise_mm, ..load(length, width, w, &[mass, 1.0], &[width / 9.0]) };
                    match necklace(&piece) {
                        Ok(rest) => {
                            let numbers = [rest.sag_mm, rest.end_tension_mn, rest.rings[0].x_mm, rest.rings[1].y_mm];
                            assert!(numbers.iter().all(|number| number.is_finite()), "{piece:?} {rest:?}");
                        }
                        Err(error) => refused += usize::from(!error.to_string().is_empty()),
                    }
                }
            }
        }
    }
    assert!(refused > 1000, "{refused}");
}
