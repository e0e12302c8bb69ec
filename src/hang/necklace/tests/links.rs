//! Chains of equal rigid links, each link's weight at its middle: they approach the exact rest at the order 1/N², and
//! the plain search downhill finds them.

use super::*;
use crate::hang::necklace::descent::Links;

/// H and sag of N links for S = 1 and w = 1, from the balance of every link: its slope is V/H at its middle.
fn links(length: f64, n: u32) -> (f64, f64) {
    let link = length / f64::from(n);
    let slopes = |h: f64| (0..n).map(move |j| (length / 2.0 - link * (f64::from(j) + 0.5)) / h);
    let span = |h: f64| slopes(h).map(|slope| link / slope.hypot(1.0)).sum::<f64>();
    let (mut low, mut high) = (1e-6, 1e3);
    for _ in 0..200 {
        let h: f64 = (low + high) / 2.0;
        if span(h) < 1.0 { low = h } else { high = h }
    }
    let falling = slopes(low).filter(|slope| *slope > 0.0);
    (low, falling.map(|slope| link * slope / slope.hypot(1.0)).sum())
}

/// Values of a separate computation, to 1e-10.
#[test]
fn links_converge_at_their_order() {
    for (length, table) in [
        (
            1.2,
            [
                (4, 0.4611530349, 0.3023156297),
                (10, 0.4681667795, 0.2938642493),
                (20, 0.4691972043, 0.2927214753),
                (100, 0.4695277424, 0.2923588741),
            ],
        ),
        (
            1.5,
            [
                (4, 0.3074311802, 0.5243196132),
                (10, 0.3076576521, 0.5059459316),
                (20, 0.3080909242, 0.5034466343),
                (100, 0.3082306396, 0.5026656270),
            ],
        ),
        (
            2.0,
            [
                (4, 0.2410166570, 0.8359859579),
                (10, 0.2294770719, 0.8043709983),
                (20, 0.2295667632, 0.7982731089),
                (100, 0.2296372691, 0.7964624555),
            ],
        ),
    ] {
        let rest = necklace(&load(100.0 * length, 100.0, 0.01, &[], &[])).unwrap();
        let (exact_h, exact_sag) = (rest.horizontal_tension_mn / G, rest.sag_mm / 100.0);
        for (n, h, sag) in table {
            let found = links(length, n);
            assert!((found.0 - h).abs() < 1e-10 && (found.1 - sag).abs() < 1e-10, "{n} links: {found:?}");
        }
        // Twice the links, a quarter of the error.
        let errors = [200, 400, 800].map(|n| links(length, n)).map(|(h, sag)| (h - exact_h, sag - exact_sag));
        for pair in errors.windows(2) {
            let (h, sag) = (pair[0].0 / pair[1].0, pair[0].1 / pair[1].1);
            assert!((h - 4.0).abs() < 0.01 && (sag - 4.0).abs() < 0.01, "{h} {sag}");
        }
    }
}

/// The search downhill knows no tension; with the same links it comes to the same depth.
#[test]
fn the_search_downhill_finds_the_links() {
    for (per_piece, n) in [(1, 8), (3, 24)] {
        let length = 1.5;
        let piece = load(100.0 * length, 100.0, 0.01, &[], &[]);
        let found = Links::bow(&piece, 0.0, per_piece).unwrap().settle(4000);
        let (h, _) = links(length, n);
        let link = length / f64::from(n);
        let (mut y, mut moment) = (0.0, 0.0);
        for j in 0..n {
            let slope = (length / 2.0 - link * (f64::from(j) + 0.5)) / h;
            let dy = link * slope / slope.hypot(1.0);
            moment += link * (y + dy / 2.0);
            y += dy;
        }
        // Millimetres and grams: 100 mm to the span, 0.01 g to the millimetre.
        close(found, moment * 100.0 * 100.0 * 0.01, 1e-9);
    }
}
