//! Hang points that are not level, against closed-form values (30 digits where they are not algebraic).

use super::*;

/// The same piece with its right hang point higher, and its mirror image with the left one higher.
fn both_ways(piece: &NecklaceLoad, rise: f64) -> [NecklaceRest; 2] {
    let hang = |rise_mm: f64| necklace(&NecklaceLoad { rise_mm, ..piece.clone() }).unwrap();
    [hang(rise), hang(-rise)]
}

/// Heavy chain alone, from √(L² − h²) = 2a·sinh(S/2a) and h/L = tanh((S − 2x₀)/2a).
#[test]
fn bare_chains() {
    for (h, length, a, x0, drop, low, high) in [
        (0.2, 1.2, 0.489471925395, 0.41765314325, 0.189262938104, 0.678734863499, 0.878734863499),
        (0.3, 1.5, 0.316905698276, 0.435752898394, 0.349864632049, 0.666770330326, 0.966770330326),
        (0.5, 2.0, 0.235858319944, 0.439758763297, 0.543383030222, 0.779241350167, 1.27924135017),
    ] {
        let force = 0.0142 * 100.0 * G;
        let [right, left] = both_ways(&load(100.0 * length, 100.0, 0.0142, &[], &[]), 100.0 * h);
        for rest in [&right, &left] {
            close(rest.horizontal_tension_mn, a * force, 1e-9);
            close(rest.end_tension_mn, high * force, 1e-9);
            close(rest.sag_mm, 100.0 * drop, 1e-9);
        }
        close(right.lowest_mm, 100.0 * drop, 1e-9);
        close(left.lowest_mm, 100.0 * (drop + h), 1e-9);
        let whole = right.segments[0];
        close(whole.h.hypot(whole.v) * G, low * force, 1e-9);
        close(whole.at(whole.v / whole.w).0, 100.0 * x0, 1e-9);
        let whole = left.segments[0];
        close(100.0 - whole.at(whole.v / whole.w).0, 100.0 * x0, 1e-9);
    }
}

/// A weightless chain with one frictionless ring: both legs make the same angle θ, cos θ = S/L, T = W/(2 sin θ), and
/// they are (L ∓ h/sin θ)/2 long.
#[test]
fn one_sliding_ring() {
    for (h, length, theta, leg, x, drop, tension) in [
        (0.3, 1.5, 48.1896851042f64, 0.548753882025, 0.365835921350, 0.409016994375, 0.670820393250),
        (0.5, 2.0, 60.0, 0.711324865405, 0.355662432703, 0.616025403784, 0.5 / 0.75f64.sqrt()),
    ] {
        let [right, left] = both_ways(&load(100.0 * length, 100.0, 0.0, &[5.0], &[]), 100.0 * h);
        for (rest, ring_arc, ring_x) in [(&right, leg, x), (&left, length - leg, 1.0 - x)] {
            close(rest.rings[0].arc_mm, 100.0 * ring_arc, 1e-9);
            close(rest.rings[0].x_mm, 100.0 * ring_x, 1e-9);
            close(rest.sag_mm, 100.0 * drop, 1e-9);
            close(rest.end_tension_mn, 5.0 * tension * G, 1e-9);
            close(rest.horizontal_tension_mn, 5.0 * tension * G / length, 1e-9);
            let (x, y) = rest.point_at(1.0);
            close(y.atan2(x).to_degrees(), theta, 1e-9);
        }
        close(right.rings[0].y_mm, 100.0 * drop, 1e-9);
        close(left.rings[0].y_mm, 100.0 * (drop + h), 1e-9);
    }
}

/// A taut chain's lowest point is its lower hang point.
#[test]
fn a_taut_chain_does_not_sag() {
    let [right, left] = both_ways(&load(141.5, 100.0, 0.0142, &[], &[]), 100.0);
    assert_eq!((right.sag_mm, right.lowest_mm), (0.0, 0.0));
    assert!(left.sag_mm < 1e-9 && (left.lowest_mm - 100.0).abs() < 1e-9, "{left:?}");
    close(left.end_tension_mn, right.end_tension_mn, 1e-9);
}
