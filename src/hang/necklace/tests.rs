use super::{descent::Links, *};

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

/// Two equal frictionless rings that touch with gap b: sag = ½√((L−b)² − (S−b)²), T = W(L−b)/(2·sag).
#[test]
fn two_touching_rings() {
    for (ratio, b, sag, tension) in [
        (1.5, 0.0, 0.559016994375, 1.34164078650),
        (1.5, 0.05, 0.547722557505, 1.32366284730),
        (1.5, 0.10, 0.536190264738, 1.30550673154),
        (2.0, 0.10, 0.836660026534, 1.13546717887),
    ] {
        let rest = necklace(&load(100.0 * ratio, 100.0, 0.0, &[5.0, 5.0], &[100.0 * b])).unwrap();
        close(rest.sag_mm, 100.0 * sag, 1e-9);
        close(rest.end_tension_mn, 5.0 * tension * G, 1e-9);
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
    for (ratio, p, h, sag, end) in [
        (1.2, 0.1, 0.554466006546, 0.304290434968, 0.861993359844),
        (1.2, 0.5, 0.909099343911, 0.321922576969, 1.27924259509),
        (1.2, 1.0, 1.35931634653, 0.327366001987, 1.81321287496),
        (1.2, 2.0, 2.26268225609, 0.330122759959, 2.89131993941),
        (1.2, 10.0, 9.49790769767, 0.331575420037, 11.5659089843),
        (1.5, 0.1, 0.376440146722, 0.522986585245, 0.906825332721),
        (1.5, 0.5, 0.653006020295, 0.547763273920, 1.30078509468),
        (1.5, 1.0, 0.994028909451, 0.554242049777, 1.79947033119),
        (1.5, 2.0, 1.66964284524, 0.557338393218, 2.80182212688),
        (1.5, 10.0, 7.04184006912, 0.558923026168, 10.8466590045),
        (2.0, 0.5, 0.546790599899, 0.855620704633, 1.59655252345),
        (2.0, 1.0, 0.845820828572, 0.861762431762, 2.17150014369),
        (2.0, 10.0, 6.05931350462, 0.865943479923, 12.5584744355),
        (3.0, 1.0, 0.770417182009, 1.41106373835, 3.09734444877),
    ] {
        let (w, length) = (0.01, 100.0 * ratio);
        let rest = necklace(&load(length, 100.0, w, &[p * w * length], &[])).unwrap();
        close(rest.horizontal_tension_mn, h * w * 100.0 * G, 1e-9);
        close(rest.sag_mm, 100.0 * sag, 1e-9);
        close(rest.end_tension_mn, end * w * 100.0 * G, 1e-9);
    }
}

/// A small generator for seeded random pieces (SplitMix64, a public domain algorithm).
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

/// Mass times depth below the hang points, which a resting piece makes as large as it can.
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

/// The same with the cluster held at `first`.
fn depth_moment_at(load: &NecklaceLoad, first: f64) -> Option<f64> {
    let offsets: Vec<f64> = std::iter::once(0.0)
        .chain(load.gaps_mm.iter().scan(0.0, |sum, gap| {
            *sum += gap;
            Some(*sum)
        }))
        .collect();
    let line = Line { load, offsets: &offsets };
    let mass: f64 = load.loads.iter().map(|one| one.mass_g).sum::<f64>() + load.chain_g_per_mm * load.front_length_mm;
    let (h, v) = line.solve(first, (mass / 3.0, mass / 2.0)).ok()?;
    Some(depth_moment(&shape(&line, first, h, v, None), load))
}

/// A plain search downhill over chains of straight links, started from many places, finds the same depth and nothing
/// deeper. Every such chain is a shape the real one can take, so it may never hang lower than the exact rest.
#[test]
fn brute_force_finds_nothing_deeper() {
    let mut seeded = Seeded(3);
    let mut leaning = 0;
    for piece in 0..90 {
        let n = seeded.next(0.0, 9.0) as usize;
        let heavy = seeded.next(0.3, 12.0);
        let masses: Vec<f64> = (0..n).map(|i| seeded.next(0.2, if 2 * i < n { 12.0 } else { heavy })).collect();
        let widest = seeded.next(2.0, 60.0);
        let gaps: Vec<f64> = (1..n).map(|_| seeded.next(1.0, widest)).collect();
        let cluster: f64 = gaps.iter().sum();
        let width = seeded.next(80.0, 130.0);
        let length = (width * (1.0 + seeded.next(0.1, 1.6).powi(3))).max(cluster * 1.05 + 5.0);
        let load = load(length, width, seeded.next(0.001, 0.03), &masses, &gaps);
        let rest = necklace(&load).unwrap_or_else(|error| panic!("piece {piece}: {error}\n{load:?}"));
        leaning += usize::from(rest.against.is_some());
        let exact = depth_moment(&rest, &load);
        let deepest = [0.02, 0.3, 0.5, 0.7, 0.98]
            .into_iter()
            .filter_map(|share| Some(Links::bow(&load, share * (length - cluster), 3)?.settle(1500)))
            .fold(f64::NEG_INFINITY, f64::max);
        assert!(deepest <= exact * (1.0 + 1e-10), "piece {piece} can hang lower: {deepest} {exact}\n{load:?}");
        assert!(deepest >= exact * (1.0 - 2e-3), "piece {piece} hangs too low: {deepest} {exact}\n{load:?}");
    }
    assert!(leaning >= 5, "only {leaning} clusters leaned against an end");
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

/// From the tautest chain to the loosest, with a speck or with sixty drops: it ends where it hangs.
#[test]
fn extremes_close() {
    let mut seeded = Seeded(99);
    for piece in 0..1000 {
        let n = seeded.next(0.0, 61.0) as usize;
        let masses: Vec<f64> = (0..n).map(|_| 10f64.powf(seeded.next(-2.0, 2.0))).collect();
        let gaps: Vec<f64> = (1..n).map(|_| seeded.next(0.0, 20.0)).collect();
        let width = seeded.next(5.0, 230.0);
        let length = (width * (1.0 + 10f64.powf(seeded.next(-7.0, 1.5)))).max(gaps.iter().sum::<f64>() * 1.01 + 0.1);
        let load = load(length, width, 10f64.powf(seeded.next(-5.0, 0.0)), &masses, &gaps);
        let rest = necklace(&load).unwrap_or_else(|error| panic!("piece {piece}: {error}\n{load:?}"));
        let last = rest.segments.last().unwrap();
        let (x, y) = last.at(last.length);
        assert!((x - width).hypot(y) < 1e-9 * length, "piece {piece} ends at {x}, {y}\n{load:?}");
        assert!(rest.sag_mm > 0.0 && rest.sag_mm < length / 2.0 && rest.end_tension_mn.is_finite(), "{load:?}");
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
        let length = (width * seeded.next(1.1, 4.0)).max(gaps.iter().sum::<f64>() * 1.3 + 10.0);
        let load = load(length, width, seeded.next(0.002, 0.03), &masses, &gaps);
        let rest = necklace(&load).unwrap_or_else(|error| panic!("piece {piece}: {error}\n{load:?}"));
        let first = rest.rings[0].arc_mm;
        let here = depth_moment(&rest, &load);
        if rest.against.is_none() {
            for shift in [-20.0, -5.0, -1.0, -0.1, 0.1, 1.0, 5.0, 20.0] {
                let cluster = rest.rings[n - 1].arc_mm - first;
                if first + shift > 0.1
                    && first + shift + cluster < length - 0.1
                    && let Some(there) = depth_moment_at(&load, first + shift)
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
