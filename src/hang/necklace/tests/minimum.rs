//! Nothing hangs lower than the rest shape.

use super::*;
use crate::hang::necklace::descent::Links;

/// A plain search downhill over chains of straight links, started from many places, finds the same depth and nothing
/// deeper. Every such chain is a shape the real one can take, so it may never hang lower than the exact rest.
#[test]
fn brute_force_finds_nothing_deeper() {
    let mut seeded = Seeded(3);
    let mut leaning = 0;
    for piece in 0..200 {
        let n = seeded.next(0.0, 9.0) as usize;
        let heavy = seeded.next(0.3, 12.0);
        let masses: Vec<f64> = (0..n).map(|i| seeded.next(0.2, if 2 * i < n { 12.0 } else { heavy })).collect();
        let widest = seeded.next(2.0, 60.0);
        let gaps: Vec<f64> = (1..n).map(|_| seeded.next(1.0, widest)).collect();
        let cluster: f64 = gaps.iter().sum();
        let width = seeded.next(80.0, 130.0);
        // Every second piece hangs from points that are not level.
        let rise_mm = if piece % 2 == 0 { 0.0 } else { width * seeded.next(-0.8, 0.8) };
        let distance = width.hypot(rise_mm);
        let length = (distance * (1.0 + seeded.next(0.1, 1.6).powi(3))).max(cluster * 1.05 + 5.0);
        let load = NecklaceLoad { rise_mm, ..load(length, width, seeded.next(0.001, 0.03), &masses, &gaps) };
        let rest = necklace(&load).unwrap_or_else(|error| panic!("piece {piece}: {error}\n{load:?}"));
        leaning += usize::from(rest.against.is_some());
        let exact = depth_moment(&rest, &load);
        let deepest = [0.02, 0.3, 0.5, 0.7, 0.98]
            .into_iter()
            .filter_map(|share| Some(Links::bow(&load, share * (length - cluster), 3)?.settle(1500)))
            .fold(f64::NEG_INFINITY, f64::max);
        // Depths count from the left hang point, which may be the lower one: compared on the scale of the whole.
        let mass: f64 = masses.iter().sum::<f64>() + load.chain_g_per_mm * length;
        let scale = mass * length;
        assert!(deepest <= exact + 1e-10 * scale, "piece {piece} can hang lower: {deepest} {exact}\n{load:?}");
        assert!(deepest >= exact - 1e-3 * scale, "piece {piece} hangs too low: {deepest} {exact}\n{load:?}");
    }
    assert!(leaning >= 5, "only {leaning} clusters leaned against an end");
}

/// From the tautest chain to the loosest, with a speck or with sixty drops: it ends where it hangs.
#[test]
fn extremes_close() {
    let mut seeded = Seeded(99);
    for piece in 0..1000 {
        let n = seeded.next(0.0, 61.0) as usize;
        let masses: Vec<f64> = (0..n).map(|_| 10f64.powf(seeded.next(-2.0, 2.0))).collect();
        let gaps: Vec<f64> = (1..n).map(|_| seeded.next(0.0, 20.0)).collect();
        let width = seeded.next(5.0, 230.0);
        let rise_mm = if piece % 2 == 0 { 0.0 } else { width * seeded.next(-1.2, 1.2).powi(3) };
        let distance = width.hypot(rise_mm);
        let length = (distance * (1.0 + 10f64.powf(seeded.next(-7.0, 1.5)))).max(gaps.iter().sum::<f64>() * 1.01 + 0.1);
        let load = NecklaceLoad { rise_mm, ..load(length, width, 10f64.powf(seeded.next(-5.0, 0.0)), &masses, &gaps) };
        let rest = necklace(&load).unwrap_or_else(|error| panic!("piece {piece}: {error}\n{load:?}"));
        let last = rest.segments.last().unwrap();
        let (x, y) = last.at(last.length);
        assert!((x - width).hypot(y + rise_mm) < 1e-9 * length, "piece {piece} ends at {x}, {y}\n{load:?}");
        assert!(
            (rest.sag_mm > 0.0 || rise_mm != 0.0) && rest.sag_mm < length / 2.0 && rest.end_tension_mn.is_finite(),
            "{load:?}"
        );
    }
}

/// On random pieces no other place of the cluster hangs lower, and the chain keeps its length.
#[test]
fn random_pieces_rest_where_they_hang_lowest() {
    let mut seeded = Seeded(20_261_125);
    for piece in 0..200 {
        let n = 1 + seeded.next(0.0, 14.0) as usize;
        let masses: Vec<f64> = (0..n).map(|_| seeded.next(0.2, 12.0)).collect();
        let gaps: Vec<f64> = (1..n).map(|_| seeded.next(1.0, 14.0)).collect();
        let width = seeded.next(80.0, 130.0);
        let rise_mm = if piece % 2 == 0 { 0.0 } else { seeded.next(-90.0, 90.0) };
        let length = (width.hypot(rise_mm) * seeded.next(1.1, 4.0)).max(gaps.iter().sum::<f64>() * 1.3 + 10.0);
        let load = NecklaceLoad { rise_mm, ..load(length, width, seeded.next(0.002, 0.03), &masses, &gaps) };
        let rest = necklace(&load).unwrap_or_else(|error| panic!("piece {piece}: {error}\n{load:?}"));
        let first = rest.rings[0].arc_mm;
        let here = depth_moment(&rest, &load);
        if rest.against.is_none() {
            for shift in [-20.0, -5.0, -1.0, -0.1, 0.1, 1.0, 5.0, 20.0] {
                let cluster = rest.rings[n - 1].arc_mm - first;
                if first + shift > 0.1
                    && first + shift + cluster < length - 0.1
                    && let Some(there) = held(&load, first + shift, |_, shape| Some(depth_moment(&shape.ok()?, &load)))
                {
                    assert!(
                        there <= here + 1e-7 * here.abs(),
                        "piece {piece} hangs lower {shift} mm aside: {there} {here}\n{load:?}"
                    );
                }
            }
        }
        let line = rest.polyline(4001);
        let drawn: f64 = line.windows(2).map(|p| (p[1].0 - p[0].0).hypot(p[1].1 - p[0].1)).sum();
        // The drawn line cuts the corners at the rings, no more.
        close(drawn, length, 5e-4);
        let (x, y) = rest.point_at(length);
        assert!((x - width).abs() < 1e-8 && (y + rise_mm).abs() < 1e-8, "piece {piece} ends at {x}, {y}");
    }
}
