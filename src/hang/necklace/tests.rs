use super::*;

fn load(length: f64, width: f64, w: f64, masses: &[f64], gaps: &[f64]) -> NecklaceLoad {
    NecklaceLoad {
        front_length_mm: length,
        width_mm: width,
        chain_g_per_mm: w,
        loads: masses.iter().map(|mass_g| Load { mass_g: *mass_g }).collect(),
        gaps_mm: gaps.into(),
    }
}

fn close(found: f64, wanted: f64, tolerance: f64) {
    assert!((found / wanted - 1.0).abs() < tolerance, "{found} is not {wanted}");
}

/// Heavy chain alone: values computed with 30 digits from sinh(u)/u = L/S.
#[test]
fn bare_chains() {
    for (ratio, a, sag, end) in [
        (1.05, 0.919639630037, 0.139304206592, 1.05894383663),
        (1.2, 0.469541523127, 0.292343797601, 0.761885320727),
        (1.5, 0.308236469736, 0.502633261648, 0.810869731384),
        (2.0, 0.229640215078, 0.796388355860, 1.02602857094),
        (3.0, 0.176152702237, 1.33415513874, 1.51030784097),
    ] {
        let rest = necklace(&load(100.0 * ratio, 100.0, 0.0142, &[], &[])).unwrap();
        close(rest.horizontal_tension_mn, a * 0.0142 * 100.0 * G, 1e-9);
        close(rest.sag_mm, sag * 100.0, 1e-9);
        close(rest.end_tension_mn, end * 0.0142 * 100.0 * G, 1e-9);
    }
}

/// Published textbook figures: lecture set "Cables: Catenaries", Example 1 (140 m over 120 m: sag 31.70 m);
/// Beer & Johnston, Vector Mechanics for Engineers, Problem 7.127 (25 ft chain, 30 lb, sag 10 ft: span 12.359 ft,
/// greatest tension 15.375 lb; answers computed).
#[test]
fn textbook_chains() {
    let rest = necklace(&load(140.0, 120.0, 3.0, &[], &[])).unwrap();
    close(rest.sag_mm, 31.69705, 1e-6);
    close(rest.end_tension_mn, 2741.19 * G / 9.81, 1e-5);
    let rest = necklace(&load(25.0, 12.359, 30.0 / 25.0, &[], &[])).unwrap();
    close(rest.sag_mm, 10.0, 1e-4);
    close(rest.end_tension_mn, 15.375 * G, 1e-4);
}

/// A weightless chain with one frictionless ring, closed form: sag = ½√(L² − S²), T = W·L/(4·sag).
#[test]
fn one_sliding_ring() {
    for (ratio, sag, tension) in [
        (1.2, 0.331662479036, 0.904534033733),
        (1.5, 0.559016994375, 0.670820393250),
        (3.0, 2f64.sqrt(), 0.530330085890),
    ] {
        let rest = necklace(&load(100.0 * ratio, 100.0, 0.0, &[5.0], &[])).unwrap();
        close(rest.sag_mm, 100.0 * sag, 1e-9);
        close(rest.end_tension_mn, 5.0 * tension * G, 1e-9);
        close(rest.rings[0].x_mm, 50.0, 1e-9);
    }
}

/// Two equal frictionless rings that touch with gap b: sag = ½√((L−b)² − (S−b)²), T = W(L−b)/(2·sag).
#[test]
fn two_touching_rings() {
    for (ratio, b, sag, tension) in [
        (1.5, 0.05, 0.547722557505, 1.32366284730),
        (1.5, 0.10, 0.536190264738, 1.30550673154),
        (2.0, 0.10, 0.836660026534, 1.13546717887),
    ] {
        let rest = necklace(&load(100.0 * ratio, 100.0, 0.0, &[5.0, 5.0], &[100.0 * b])).unwrap();
        close(rest.sag_mm, 100.0 * sag, 1e-9);
        close(rest.end_tension_mn, 5.0 * tension * G, 1e-9);
    }
}

/// Heavy chain with a load in the middle; half is a catenary piece from x₀ = a·asinh(P/(2wa)) (semi-analytic values).
#[test]
fn a_heavy_chain_with_a_load() {
    for (ratio, p, h, sag, end) in [
        (1.2, 0.1, 0.554466006546, 0.304290434968, 0.861993359844),
        (1.2, 10.0, 9.49790769767, 0.331575420037, 11.5659089843),
        (1.5, 1.0, 0.994028909451, 0.554242049777, 1.79947033119),
        (2.0, 2.0f64.recip(), 0.546790599899, 0.855620704633, 1.59655252345),
        (3.0, 1.0, 0.770417182009, 1.41106373835, 3.09734444877),
    ] {
        let (w, length) = (0.01, 100.0 * ratio);
        let rest = necklace(&load(length, 100.0, w, &[p * w * length], &[])).unwrap();
        close(rest.horizontal_tension_mn, h * w * 100.0 * G, 1e-9);
        close(rest.sag_mm, 100.0 * sag, 1e-9);
        close(rest.end_tension_mn, end * w * 100.0 * G, 1e-9);
    }
}

/// A small generator for seeded random pieces (SplitMix64, public domain algorithm by S. Vigna).
struct Seeded(u64);

impl Seeded {
    fn next(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        low + (high - low) * ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }
}

/// Centre of mass below the hang points, times mass: what a resting piece makes as large as it can.
fn depth_moment(load: &NecklaceLoad, first: f64) -> Option<f64> {
    let offsets: Vec<f64> = std::iter::once(0.0)
        .chain(load.gaps_mm.iter().scan(0.0, |sum, gap| {
            *sum += gap;
            Some(*sum)
        }))
        .collect();
    let line = Line { load, offsets: &offsets };
    let mass: f64 = load.loads.iter().map(|one| one.mass_g).sum::<f64>() + load.chain_g_per_mm * load.front_length_mm;
    let (h, v) = line.solve(first, (mass / 3.0, mass / 2.0)).ok()?;
    let rest = shape(&line, first, h, v, None);
    let drops: f64 = rest.rings.iter().zip(&load.loads).map(|(ring, one)| ring.y_mm * one.mass_g).sum();
    // Simpson's rule piece by piece; the shape is smooth within each.
    let chain: f64 = rest
        .segments
        .iter()
        .map(|segment| {
            const N: usize = 64;
            let step = segment.length / N as f64;
            let sum: f64 = (0..=N)
                .map(|i| {
                    let factor = if i == 0 || i == N {
                        1.0
                    } else if i % 2 == 1 {
                        4.0
                    } else {
                        2.0
                    };
                    factor * segment.at(step * i as f64).1
                })
                .sum();
            sum * step / 3.0 * segment.w
        })
        .sum();
    Some(drops + chain)
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
        let length = (width * seeded.next(1.1, 4.0)).max(gaps.iter().sum::<f64>() * 1.3 + 10.0);
        let load = load(length, width, seeded.next(0.002, 0.03), &masses, &gaps);
        let rest = necklace(&load).unwrap_or_else(|error| panic!("piece {piece}: {error}\n{load:?}"));
        let first = rest.rings[0].arc_mm;
        let here = depth_moment(&load, first).unwrap();
        if rest.against.is_none() {
            for shift in [-20.0, -5.0, -1.0, -0.1, 0.1, 1.0, 5.0, 20.0] {
                let cluster = rest.rings[n - 1].arc_mm - first;
                if first + shift > 0.1
                    && first + shift + cluster < length - 0.1
                    && let Some(there) = depth_moment(&load, first + shift)
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
        assert!((x - width).abs() < 1e-8 && y.abs() < 1e-8, "piece {piece} ends at {x}, {y}");
    }
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
}
