//! The cylinder against published and computed figures, and against poses tried at random.

use super::{
    gauge::{best_pose, decide, gauge},
    solid::{Form, Solid},
    *,
};
use crate::craft::{Body, Length, OutlineShape, Ring};

mod random_poses;

const BOTH: [Gauge; 2] = [Gauge::Inch, Gauge::Metric];

fn mm(x: f64) -> Length {
    Length::from_mm(x)
}

fn solid(body: &Body) -> Solid {
    Solid::from_body(body).unwrap()
}

fn ball(d: f64) -> Solid {
    solid(&Body::Ball { diameter: mm(d) })
}

fn rod(d: f64, l: f64) -> Solid {
    solid(&Body::Rod { diameter: mm(d), length: mm(l) })
}

fn cylinder(d: f64, h: f64) -> Solid {
    solid(&Body::Cylinder { diameter: mm(d), height: mm(h) })
}

fn block(a: f64, b: f64, c: f64) -> Solid {
    solid(&Body::Box { width: mm(a), depth: mm(b), height: mm(c) })
}

/// `make` fits up to `critical` and not beyond, tested `by` to either side in the gauge and its quick form.
fn turns(make: impl Fn(f64) -> Solid, critical: f64, by: f64, which: Gauge, what: &str) {
    for (size, wanted) in [(critical - by, true), (critical + by, false)] {
        let result = gauge(&make(size), which);
        assert_eq!(result.fits, wanted, "{what} {size}, {which:?}: {result:?}");
        let contrary = if wanted { Size::TooLarge } else { Size::Fits };
        assert_ne!(decide(&make(size), which), contrary, "{what} {size}, {which:?}");
        assert_eq!(result.fits, result.margin_mm >= 0.0);
        assert_eq!(result.certain, result.margin_mm.abs() >= 0.05);
    }
}

/// The size at which `make` just fits, by halving around `near`, in millimetres.
fn critical(make: impl Fn(f64) -> Solid, near: f64, which: Gauge) -> f64 {
    let (mut low, mut high) = (near - 0.1, near + 0.1);
    for _ in 0..13 {
        let middle = (low + high) / 2.0;
        if gauge(&make(middle), which).fits {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

/// Critical sizes in closed form, from the drawing of 16 CFR 1501.4 (inch) and SOR/2011-17 Schedule 1 (metric).
#[test]
fn critical_sizes_in_closed_form() {
    for (which, r, m) in [(Gauge::Inch, 15.875, 41.275), (Gauge::Metric, 15.85, 41.25)] {
        let deep: f64 = m + r;
        turns(ball, 2.0 * r, 0.01, which, "ball");
        turns(|l| rod(0.0, l), (2.0 * r).hypot(deep), 0.01, which, "thin rod");
        for thickness in [0.0, 0.5, 1.0, 2.0, 10.0, 25.0] {
            turns(|d| cylinder(d, thickness), 2.0 * r, 0.01, which, "disc");
        }
        turns(|s| block(s, 0.0, s), 2.0 * r, 0.01, which, "square plate");
        turns(|s| block(s, s, s), r * 2f64.sqrt(), 0.01, which, "cube");
        turns(|d| cylinder(d, d), deep / 2.0, 0.01, which, "cylinder as high as wide");
        let ring = |d| Solid::of_ring(Ring { outside: mm(d), wire: mm(1.0) }).unwrap();
        turns(ring, 2.0 * r, 0.01, which, "ring");
        for d in [14.0, 15.0, 20.0, 25.0, 30.0] {
            turns(|h| cylinder(d, h), deep - d, 0.01, which, "upright cylinder");
        }
        for w in [5.0, 10.0, 15.0, 20.0, 25.0, 30.0_f64] {
            let half = (r * r - w * w / 4.0).sqrt();
            turns(|l| block(w, 0.0, l), (2.0 * half).hypot(m + half), 0.01, which, "thin plate");
        }
        for d in [1.0, 5.0, 10.0, 20.0, 30.0_f64] {
            let inner = r - d / 2.0;
            let l = d + (2.0 * inner).hypot(m + inner - d / 2.0 * (1.0 + 2f64.sqrt()));
            turns(|l| rod(d, l), l, 0.01, which, "rounded rod");
        }
    }
}

/// Critical lengths, computed by closed forms and an independent optimiser, good to 0.01 mm.
#[test]
fn critical_lengths_of_rods_plates_and_boxes() {
    let rods = [
        (1.0, [63.76, 63.70], [64.40, 64.33]),
        (2.0, [62.15, 62.08], [63.42, 63.35]),
        (3.0, [60.54, 60.47], [62.44, 62.38]),
        (5.0, [57.32, 57.25], [60.49, 60.42]),
        (6.0, [55.71, 55.64], [59.51, 59.44]),
        (8.0, [52.50, 52.43], [57.56, 57.49]),
        (10.0, [49.29, 49.22], [55.60, 55.53]),
        (12.0, [46.09, 46.03], [53.65, 53.58]),
        (15.0, [42.15, 42.10], [50.71, 50.65]),
        (20.0, [37.15, 37.10], [45.83, 45.77]),
        (25.0, [32.15, 32.10], [40.97, 40.90]),
        (30.0, [27.15, 27.10], [36.19, 36.13]),
    ];
    let boxes = [
        (5.0, 0.0, [65.01, 64.94]),
        (10.0, 0.0, [63.89, 63.82]),
        (15.0, 0.0, [61.95, 61.87]),
        (20.0, 0.0, [59.00, 58.93]),
        (25.0, 0.0, [54.68, 54.59]),
        (30.0, 0.0, [47.62, 47.49]),
        (10.0, 2.0, [60.68, 60.61]),
        (15.0, 3.0, [57.15, 57.08]),
        (20.0, 2.0, [55.84, 55.76]),
        (20.0, 5.0, [51.14, 51.07]),
        (25.0, 2.0, [51.62, 51.53]),
        (25.0, 5.0, [47.13, 47.05]),
        (15.0, 10.0, [46.09, 46.02]),
        (20.0, 20.0, [33.60, 33.55]),
    ];
    println!("| body | inch: found | wanted | metric: found | wanted |");
    let row = |what: String, make: &dyn Fn(f64) -> Solid, wanted: [f64; 2]| {
        let found = [0, 1].map(|i| critical(make, wanted[i], BOTH[i]));
        println!("| {what} | {:.3} | {} | {:.3} | {} |", found[0], wanted[0], found[1], wanted[1]);
        for i in [0, 1] {
            assert!((found[i] - wanted[i]).abs() <= 0.0105, "{what}, {:?}: {}, not {}", BOTH[i], found[i], wanted[i]);
            turns(make, wanted[i], 0.015, BOTH[i], &what);
        }
    };
    for (d, flat, round) in rods {
        row(format!("rod {d}, flat ends"), &|l| cylinder(d, l), flat);
        row(format!("rod {d}, round ends"), &|l| rod(d, l), round);
    }
    for (w, t, wanted) in boxes {
        row(format!("box {w} × {t}"), &|l| block(w, t, l), wanted);
    }
}

/// Largest scale at which a box still fits, computed by an independent optimiser, good to 0.0005.
#[test]
fn largest_scales_of_boxes() {
    let cases = [
        ([23.0, 23.0, 23.0], [0.9761, 0.9746]),
        ([60.0, 12.0, 2.0], [1.00015, 0.99910]),
        ([30.0, 20.0, 10.0], [1.2700, 1.2688]),
        ([30.0, 30.0, 5.0], [1.0439, 1.0423]),
        ([40.0, 25.0, 10.0], [1.0160, 1.0150]),
        ([45.0, 20.0, 5.0], [1.0917, 1.0906]),
        ([50.0, 20.0, 3.0], [1.0618, 1.0607]),
        ([55.0, 15.0, 4.0], [1.0081, 1.0071]),
        ([31.0, 31.0, 3.0], [1.0194, 1.0178]),
        ([25.0, 25.0, 20.0], [0.9917, 0.9901]),
        ([35.0, 20.0, 20.0], [0.9778, 0.9769]),
    ];
    println!("| box | inch: largest scale | wanted | metric | wanted |");
    for ([a, b, c], wanted) in cases {
        let make = |s: f64| block(a * s, b * s, c * s);
        let found = [0, 1].map(|i| critical(make, wanted[i], BOTH[i]));
        println!("| {a} × {b} × {c} | {:.4} | {} | {:.4} | {} |", found[0], wanted[0], found[1], wanted[1]);
    }
    for (i, which) in BOTH.into_iter().enumerate() {
        for ([a, b, c], scale) in cases {
            turns(|s| block(a * s, b * s, c * s), scale[i], 0.0005, which, &format!("box {a} {b} {c} times"));
        }
    }
}

/// Whole cases, decided by the same closed forms and optimiser.
#[test]
fn cases_of_the_table() {
    let cases = [
        (ball(31.70), Some(true), None),
        (ball(31.74), Some(true), Some(false)),
        (ball(31.76), Some(false), Some(false)),
        (ball(30.0), Some(true), Some(true)),
        (rod(0.0, 65.30), Some(true), Some(true)),
        (rod(0.0, 65.32), Some(true), Some(false)),
        (rod(0.0, 65.39), Some(false), Some(false)),
        (cylinder(31.0, 2.0), Some(true), Some(true)),
        (cylinder(32.0, 1.0), Some(false), Some(false)),
        (block(22.44, 22.44, 22.44), Some(true), Some(false)),
        (block(22.46, 22.46, 22.46), Some(false), Some(false)),
        (cylinder(28.57, 28.57), Some(true), Some(false)),
        (cylinder(28.58, 28.58), Some(false), Some(false)),
        (cylinder(10.0, 49.0), Some(true), Some(true)),
        (cylinder(10.0, 50.0), Some(false), Some(false)),
        (cylinder(12.0, 46.06), Some(true), Some(false)),
        (block(25.0, 2.0, 51.0), Some(true), Some(true)),
        (block(25.0, 2.0, 52.0), Some(false), Some(false)),
        (block(60.0, 12.0, 2.0), Some(true), Some(false)),
        (cylinder(31.7, 1.0), Some(true), None),
        (cylinder(31.8, 1.0), Some(false), Some(false)),
    ];
    println!("| body | inch | metric |");
    for (solid, inch, metric) in cases {
        let said = BOTH.map(|which| gauge(&solid, which));
        let word = |said: GaugeResult| format!("{} {:+.3} mm", if said.fits { "fits" } else { "no" }, said.margin_mm);
        println!("| {:?} + {} | {} | {} |", solid.form, solid.round_mm, word(said[0]), word(said[1]));
        for (which, wanted) in [(Gauge::Inch, inch), (Gauge::Metric, metric)] {
            if let Some(wanted) = wanted {
                assert_eq!(gauge(&solid, which).fits, wanted, "{which:?} {solid:?}");
            }
        }
    }
}

/// A ball's margin is the same on all sides: R − r. A ball outside has a negative one.
#[test]
fn margins_are_distances() {
    for d in [10.0, 30.0, 40.0] {
        assert!((gauge(&ball(d), Gauge::Inch).margin_mm - (15.875 - d / 2.0)).abs() < 1e-6);
    }
    assert!(!gauge(&ball(31.70), Gauge::Inch).certain && gauge(&ball(31.60), Gauge::Inch).certain);
}

#[test]
fn an_outline_is_a_prism_of_its_hull_and_bad_sizes_are_none() {
    let outline = |corners: &[(f64, f64)]| {
        let shape = OutlineShape { hull_mm: corners.to_vec(), area_mm2: 0.0, cut_out: true };
        Body::Outline { thickness: mm(2.0), shape: Some(shape) }
    };
    let star: Vec<(f64, f64)> = (0..10)
        .map(|i| {
            let (s, c) = (f64::from(i) * 0.2 * std::f64::consts::PI).sin_cos();
            let r = if i % 2 == 0 { 15.0 } else { 6.0 };
            (100.0 + r * c, r * s)
        })
        .collect();
    let prism = Solid::from_body(&outline(&star)).unwrap();
    assert!(matches!(&prism.form, Form::Points { points, .. } if points.len() == 10), "inner corners are left out");
    let corners = [(0.0, 0.0), (25.0, 0.0), (25.0, 51.5), (0.0, 51.5)];
    let rectangle = gauge(&Solid::from_body(&outline(&corners)).unwrap(), Gauge::Inch);
    assert!((rectangle.margin_mm - gauge(&block(25.0, 2.0, 51.5), Gauge::Inch).margin_mm).abs() < 1e-3);
    let unread = Body::Outline { thickness: mm(2.0), shape: None };
    for body in [unread, outline(&[]), outline(&[(0.0, f64::NAN)])] {
        assert_eq!(Solid::from_body(&body), None);
        assert!(gauge(&Solid::of_body(&body), Gauge::Inch).fits, "not known: the careful answer");
    }
    for bad in [f64::NAN, -1.0] {
        for body in [
            Body::Ball { diameter: mm(bad) },
            Body::Rod { diameter: mm(1.0), length: mm(bad) },
            Body::Cone { diameter: mm(1.0), height: mm(bad) },
            Body::Box { width: mm(1.0), depth: mm(bad), height: mm(1.0) },
            Body::Ellipsoid { width: mm(bad), depth: mm(1.0), height: mm(1.0) },
            Body::Outline {
                thickness: mm(bad),
                shape: Some(OutlineShape { hull_mm: corners.to_vec(), area_mm2: 0.0, cut_out: true }),
            },
        ] {
            assert_eq!(Solid::from_body(&body), None, "{body:?}");
        }
    }
    assert_eq!(Solid::from_body(&Body::Points { points_mm: vec![] }), None);
    assert_eq!(Solid::from_body(&Body::Points { points_mm: vec![[0.0, f64::NAN, 0.0]] }), None);
    for huge in [1e4, 1e9, 1e160, f64::MAX, f64::INFINITY] {
        let points_mm = vec![[huge, 0.0, 0.0], [-huge, 1.0, 0.0], [0.0, huge, 2.0]];
        for solid in [ball(huge), rod(1.0, huge), cylinder(huge, 1.0), block(huge, 1.0, 1.0)]
            .into_iter()
            .chain([solid(&Body::Points { points_mm })])
        {
            let result = gauge(&solid, Gauge::Inch);
            let quick = decide(&solid, Gauge::Inch);
            assert!(
                !result.fits && result.margin_mm.is_finite() && quick == Size::TooLarge,
                "{solid:?}: {result:?}, {quick:?}"
            );
        }
    }
}
