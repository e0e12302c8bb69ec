//! Chains between level hang points against published and closed-form values.

use super::*;

/// Heavy chain alone: values computed with 30 digits from sinh(u)/u = L/S. The last row is the length whose end
/// tension is the least of all, where u·tanh u = 1.
#[test]
fn bare_chains() {
    for (ratio, a, sag, end) in [
        (1.05, 0.919639630037, 0.139304206592, 1.05894383663),
        (1.1, 0.654963947637, 0.200300790736, 0.855264738373),
        (1.2, 0.469541523127, 0.292343797601, 0.761885320727),
        (1.5, 0.308236469736, 0.502633261648, 0.810869731384),
        (2.0, 0.229640215078, 0.796388355860, 1.02602857094),
        (3.0, 0.176152702237, 1.33415513874, 1.51030784097),
        (1.2577364561681, 0.5 / 1.1996786402577, 0.33766150096868, 0.75443978076916),
    ] {
        let rest = necklace(&load(100.0 * ratio, 100.0, 0.0142, &[], &[])).unwrap();
        close(rest.horizontal_tension_mn, a * 0.0142 * 100.0 * G, 1e-9);
        close(rest.sag_mm, sag * 100.0, 1e-9);
        close(rest.end_tension_mn, end * 0.0142 * 100.0 * G, 1e-9);
    }
}

/// From a hundredth to a millionth longer than its span: sinh(u)/u − 1 as a series, which loses no digits there.
#[test]
fn taut_chains() {
    for excess in [1e-2, 1e-3, 1e-4, 1e-5, 1e-6] {
        let (span, w) = (113.7, 0.0142);
        let length = span * (1.0 + excess);
        let stretch = (length - span) / span;
        let series = |u2: f64| 1.0 + u2 / 20.0 * (1.0 + u2 / 42.0 * (1.0 + u2 / 72.0 * (1.0 + u2 / 110.0)));
        let u = (0..60).fold(6.0 * stretch, |u2, _| 6.0 * stretch / series(u2)).sqrt();
        let rest = necklace(&load(length, span, w, &[], &[])).unwrap();
        close(rest.horizontal_tension_mn, w * span / (2.0 * u) * G, 1e-9);
        close(rest.sag_mm, span / u * (u / 2.0).sinh().powi(2), 1e-9);
        close(rest.end_tension_mn, w * span / (2.0 * u) * u.cosh() * G, 1e-9);
    }
}

/// Published textbook problems, each to the digits it gives. A weight per length stands for w·g, so tensions are
/// compared in units of G.
#[test]
fn textbook_chains() {
    for (length, span, weight, sag, horizontal, end, tolerance) in [
        // Beer & Johnston, Vector Mechanics for Engineers, Problem 7.127 (answers computed).
        (25.0, 12.359, 30.0 / 25.0, 10.0, None, 15.375, 1e-4),
        // The same, Problem 7.128: c = 187.5 ft, span 2c·asinh(250/c) = 411.98 ft.
        (500.0, 375.0 * (250.0f64 / 187.5).asinh(), 2.8, 125.0, Some(2.8 * 187.5), 875.0, 1e-9),
        // Karnovsky & Lebed, Advanced Methods of Structural Analysis, Example 5.3 part 2.
        (42.0, 20.0, 1.25, 17.040062, Some(5.525078), 26.825156, 1e-6),
        // Lecture set "Cables: Catenaries", Example 1 (3 kg/m at 9.81 m/s²).
        (140.0, 120.0, 3.0 * 9.81, 31.69705, Some(61.44573 * 3.0 * 9.81), 2741.19, 3e-6),
        // Beer & Johnston, catenary sample problem (from memory, digits computed).
        (549.8591, 500.0, 3.0, 100.0, Some(983.794), 1283.794, 2e-6),
        // Hibbeler, Statics, catenary example (from memory, digits computed).
        (24.18820, 20.0, 5.0, 6.0, Some(45.94471), 75.94471, 2e-6),
        // Meriam & Kraige, Statics, cable sample problem, 12 kg/m at 9.81 m/s², in kN (from memory).
        (329.92, 300.0, 12.0 * 9.81e-3, 60.0, Some(23.16), 30.23, 3e-4),
    ] {
        let rest = necklace(&load(length, span, weight, &[], &[])).unwrap();
        close(rest.sag_mm, sag, tolerance);
        close(rest.end_tension_mn, end * G, tolerance);
        if let Some(horizontal) = horizontal {
            close(rest.horizontal_tension_mn, horizontal * G, tolerance);
        }
    }
    close(375.0 * (250.0f64 / 187.5).asinh(), 411.98, 1e-5);
}

/// Problems that give forces and ask for the span or the length; the closed form goes there and `necklace` comes back.
#[test]
fn textbook_chains_backwards() {
    // Beer & Johnston, Vector Mechanics for Engineers, Problem 7.130 (answer computed): a 50 m tape of 1.6 kg pulled
    // with 60 N at each end spans 49.8561 m at 9.81 m/s².
    let half = 1.6 * 9.81 / 2.0;
    let h = (60.0f64 * 60.0 - half * half).sqrt();
    let span = 50.0 * h / half * (half / h).asinh();
    assert!((span - 49.8561).abs() < 5e-5, "{span}");
    let tape = necklace(&load(50.0, span, 2.0 * half / 50.0, &[], &[])).unwrap();
    close(tape.end_tension_mn, 60.0 * G, 1e-9);
    close(tape.horizontal_tension_mn, h * G, 1e-9);
    // Karnovsky & Lebed, Advanced Methods of Structural Analysis, Example 5.3 part 1: 1.25 kN/m over 20 m with
    // H = 5.6 kN; sag 16.63 m in the book, exactly 16.6367 m, length 41.2721 m, end tension 26.3959 kN.
    let a = 5.6 / 1.25;
    let length = 2.0 * a * (10.0f64 / a).sinh();
    close(length, 41.2721, 2e-6);
    let cable = necklace(&load(length, 20.0, 1.25, &[], &[])).unwrap();
    close(cable.horizontal_tension_mn, 5.6 * G, 1e-9);
    close(cable.sag_mm, a * ((10.0 / a).cosh() - 1.0), 1e-9);
    close(cable.sag_mm, 16.6367, 3e-6);
    close(cable.end_tension_mn, 26.3959 * G, 2e-6);
}

/// A weightless chain with one frictionless ring, closed form: sag = ½√(L² − S²), T = W·L/(4·sag), H = W·S/(4·sag).
#[test]
fn one_sliding_ring() {
    for (ratio, sag, tension, horizontal, leg) in [
        (1.2, 0.331662479036, 0.904534033733, 0.753778361444, 33.5573097619f64),
        (1.5, 0.559016994375, 0.670820393250, 0.447213595500, 48.1896851042),
        (2.0, 0.866025403784, 0.577350269190, 0.288675134595, 60.0),
        (3.0, 2f64.sqrt(), 0.530330085890, 0.176776695297, 70.5287793655),
    ] {
        let rest = necklace(&load(100.0 * ratio, 100.0, 0.0, &[5.0], &[])).unwrap();
        close(rest.sag_mm, 100.0 * sag, 1e-9);
        close(rest.end_tension_mn, 5.0 * tension * G, 1e-9);
        close(rest.horizontal_tension_mn, 5.0 * horizontal * G, 1e-9);
        close(rest.rings[0].x_mm, 50.0, 1e-9);
        close(rest.rings[0].arc_mm, 50.0 * ratio, 1e-9);
        assert!(rest.rings[0].slope.abs() < 1e-9, "{}", rest.rings[0].slope);
        let (x, y) = rest.point_at(10.0);
        close(y.atan2(x).to_degrees(), leg, 1e-9);
        close(x.hypot(y), 10.0, 1e-9);
    }
}

/// Two equal frictionless rings that touch with gap b: sag = ½√((L−b)² − (S−b)²), T = W(L−b)/(2·sag), and they push
/// each other with N = T(1 − (S−b)/(L−b)), which is the jump from the leg's tension to the level middle's.
#[test]
fn two_touching_rings() {
    for (ratio, b, sag, tension, push) in [
        (1.5, 0.0, 0.559016994375, 1.34164078650, 0.447213595500),
        (1.5, 0.05, 0.547722557505, 1.32366284730, 0.456435464588),
        (1.5, 0.10, 0.536190264738, 1.30550673154, 0.466252404120),
        (2.0, 0.10, 0.836660026534, 1.13546717887, 0.597614304667),
    ] {
        let rest = necklace(&load(100.0 * ratio, 100.0, 0.0, &[5.0, 5.0], &[100.0 * b])).unwrap();
        close(rest.sag_mm, 100.0 * sag, 1e-9);
        close(rest.end_tension_mn, 5.0 * tension * G, 1e-9);
        if b > 0.0 {
            assert!(rest.segments[1].v.abs() < 1e-9, "the middle is level: {}", rest.segments[1].v);
            close(rest.end_tension_mn - rest.horizontal_tension_mn, 5.0 * push * G, 1e-9);
        }
    }
}

/// Two equal loads at the thirds of a weightless chain, the middle third level (closed form). A gap of a third makes
/// the sliding cluster rest there.
#[test]
fn loads_at_the_thirds() {
    for (ratio, sag, tension, horizontal) in [
        (1.2, 0.264575131106, 1.51185789204, 1.13389341903),
        (1.5, 0.433012701892, 1.15470053838, 0.577350269190),
        (2.0, 0.645497224368, 1.03279555899, 0.258198889747),
    ] {
        let rest = necklace(&load(100.0 * ratio, 100.0, 0.0, &[5.0, 5.0], &[100.0 * ratio / 3.0])).unwrap();
        close(rest.sag_mm, 100.0 * sag, 1e-9);
        close(rest.end_tension_mn, 5.0 * tension * G, 1e-9);
        close(rest.horizontal_tension_mn, 5.0 * horizontal * G, 1e-9);
    }
}

/// Heavy chain with a load in the middle; half is a catenary piece from x₀ = a·asinh(P/(2wa)) (semi-analytic values).
#[test]
fn a_heavy_chain_with_a_load() {
    for (ratio, p, h, sag, end, at_load, at_support) in [
        (1.2, 0.1, 0.554466006546, 0.304290434968, 0.861993359844, 6.176071547, 49.96638129),
        (1.2, 0.5, 0.909099343911, 0.321922576969, 1.27924259509, 18.26273174, 44.71181814),
        (1.2, 1.0, 1.35931634653, 0.327366001987, 1.81321287496, 23.81658443, 41.43795850),
        (1.2, 2.0, 2.26268225609, 0.330122759959, 2.89131993941, 27.93897577, 38.50281116),
        (1.2, 10.0, 9.49790769767, 0.331575420037, 11.5659089843, 32.28134248, 34.79504611),
        (1.5, 0.1, 0.376440146722, 0.522986585245, 0.906825332721, 11.26777312, 65.47320864),
        (1.5, 0.5, 0.653006020295, 0.547763273920, 1.30078509468, 29.86734203, 59.86698642),
        (1.5, 1.0, 0.994028909451, 0.554242049777, 1.79947033119, 37.03474393, 56.46812346),
        (1.5, 2.0, 1.66964284524, 0.557338393218, 2.80182212688, 41.93638854, 53.42223911),
        (1.5, 10.0, 7.04184006912, 0.558923026168, 10.8466590045, 46.80458247, 49.51737469),
        (2.0, 0.5, 0.546790599899, 0.855620704633, 1.59655252345, 42.44063374, 69.97183298),
        (2.0, 1.0, 0.845820828572, 0.861762431762, 2.17150014369, 49.77476284, 67.07599190),
        (2.0, 10.0, 6.05931350462, 0.865943479923, 12.5584744355, 58.78701388, 61.15197480),
        (3.0, 1.0, 0.770417182009, 1.41106373835, 3.09734444877, 62.81444845, 75.59734645),
    ] {
        let (w, length) = (0.01, 100.0 * ratio);
        let rest = necklace(&load(length, 100.0, w, &[p * w * length], &[])).unwrap();
        close(rest.horizontal_tension_mn, h * w * 100.0 * G, 1e-9);
        close(rest.sag_mm, 100.0 * sag, 1e-9);
        close(rest.end_tension_mn, end * w * 100.0 * G, 1e-9);
        let leg = rest.segments[0];
        let degrees = |v: f64| v.atan2(leg.h).to_degrees();
        close(degrees(leg.v), at_support, 1e-9);
        close(degrees(leg.v - leg.w * leg.length), at_load, 1e-9);
    }
}
