//! Bodies at random: the pose that the gauge found, against poses tried by chance.

use super::*;

/// Numbers from a fixed seed. Source: D. Knuth's constants for a linear congruential generator, MMIX.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        low + (high - low) * (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    /// A body near the size of the cylinder.
    fn body(&mut self, form: usize) -> Body {
        let mut size = |low, high| mm(self.roll(low, high));
        match form % FORMS.len() {
            0 => Body::Box { width: size(5.0, 30.0), depth: size(1.0, 25.0), height: size(25.0, 60.0) },
            1 => Body::Cylinder { diameter: size(4.0, 32.0), height: size(1.0, 60.0) },
            2 => Body::Cone { diameter: size(15.0, 36.0), height: size(15.0, 55.0) },
            3 => Body::Ellipsoid { width: size(20.0, 36.0), depth: size(5.0, 40.0), height: size(30.0, 62.0) },
            4 => {
                let (diameter, more) = (size(2.0, 30.0), size(5.0, 35.0));
                Body::Rod { diameter, length: mm(diameter.mm() + more.mm()) }
            }
            5 => Body::Ball { diameter: size(25.0, 38.0) },
            6 => Body::Disc { diameter: size(25.0, 38.0), thickness: size(0.5, 8.0) },
            7 => {
                let (a, b, lean) = (self.roll(10.0, 30.0), self.roll(35.0, 62.0), self.roll(-0.5, 0.5));
                let egg = |i: u32| {
                    let (s, c) = (f64::from(i) * std::f64::consts::TAU / 40.0).sin_cos();
                    (a / 2.0 * c * (1.0 + lean * s), b / 2.0 * s)
                };
                let shape = Some(OutlineShape { hull_mm: (0..40).map(egg).collect(), area_mm2: 0.0, cut_out: true });
                Body::Outline { thickness: mm(self.roll(1.0, 6.0)), shape }
            }
            _ => {
                let [a, b, c] = [self.roll(5.0, 30.0), self.roll(5.0, 30.0), self.roll(35.0, 60.0)];
                let mut point = || [self.roll(0.0, a), self.roll(0.0, b), self.roll(0.0, c)];
                Body::Points { points_mm: (0..10).map(|_| point()).collect() }
            }
        }
    }
}

/// The forms that are rolled.
const FORMS: [&str; 9] = ["box", "cylinder", "cone", "ellipsoid", "rod", "ball", "disc", "outline", "points"];

/// Points all over the body's surface, and the radius of the ball round each.
fn surface(body: &Body) -> (Vec<[f64; 3]>, f64) {
    let rim = |radius: f64, z: f64| {
        (0..90).map(move |i| {
            let (s, c) = (f64::from(i) * std::f64::consts::TAU / 90.0).sin_cos();
            [radius * c, radius * s, z]
        })
    };
    match body {
        Body::Box { width, depth, height } => {
            let sign = |i: u8, bit: u8| if i >> bit & 1 == 0 { -0.5 } else { 0.5 };
            (
                (0..8).map(|i| [sign(i, 0) * width.mm(), sign(i, 1) * depth.mm(), sign(i, 2) * height.mm()]).collect(),
                0.0,
            )
        }
        Body::Cylinder { diameter, height } | Body::Disc { diameter, thickness: height } => {
            let (r, h) = (diameter.mm() / 2.0, height.mm() / 2.0);
            (rim(r, -h).chain(rim(r, h)).collect(), 0.0)
        }
        Body::Cone { diameter, height } => {
            let (r, h) = (diameter.mm() / 2.0, height.mm() / 2.0);
            (rim(r, -h).chain([[0.0, 0.0, h]]).collect(), 0.0)
        }
        Body::Ellipsoid { width, depth, height } => {
            let bands = (0..=40).map(|i| f64::from(i) * std::f64::consts::PI / 40.0);
            let points = bands.flat_map(|polar| rim(polar.sin(), polar.cos()));
            let half = [width, depth, height].map(|axis| axis.mm() / 2.0);
            (points.map(|[x, y, z]| [x * half[0], y * half[1], z * half[2]]).collect(), 0.0)
        }
        Body::Rod { diameter, length } => {
            let h = (length.mm() - diameter.mm()) / 2.0;
            (vec![[0.0, 0.0, -h], [0.0, 0.0, h]], diameter.mm() / 2.0)
        }
        Body::Points { points_mm } => (points_mm.clone(), 0.0),
        Body::Ball { diameter } => (vec![[0.0; 3]], diameter.mm() / 2.0),
        Body::Outline { thickness, shape } => {
            let h = thickness.mm() / 2.0;
            let corners = shape.iter().flat_map(|shape| &shape.hull_mm);
            (corners.flat_map(|&(x, y)| [[x, y, -h], [x, y, h]]).collect(), 0.0)
        }
    }
}

/// Least distance of points to wall, rim plane and floor after the rotation of a quaternion (any length) and a shift.
fn distance(points: &[[f64; 3]], q: [f64; 4], shift: [f64; 3], r: f64, m: f64) -> f64 {
    let n = 1.0 / q.iter().map(|x| x * x).sum::<f64>().sqrt();
    let [w, i, j, k] = q.map(|x| x * n);
    let rows = [
        [1.0 - 2.0 * (j * j + k * k), 2.0 * (i * j - k * w), 2.0 * (i * k + j * w)],
        [2.0 * (i * j + k * w), 1.0 - 2.0 * (i * i + k * k), 2.0 * (j * k - i * w)],
        [2.0 * (i * k - j * w), 2.0 * (j * k + i * w), 1.0 - 2.0 * (i * i + j * j)],
    ];
    let least = |p: &[f64; 3]| {
        let [x, y, z]: [f64; 3] =
            std::array::from_fn(|a| rows[a].iter().zip(p).map(|(c, x)| c * x).sum::<f64>() + shift[a]);
        (r - x.hypot(y)).min(z).min((m + x - z) / 2f64.sqrt())
    };
    points.iter().map(least).fold(f64::INFINITY, f64::min)
}

/// The best of many poses at random, the better ones followed uphill by chance.
fn tried(dice: &mut Dice, points: &[[f64; 3]], r: f64, m: f64) -> f64 {
    let middle: [f64; 3] = std::array::from_fn(|a| points.iter().map(|p| p[a]).sum::<f64>() / points.len() as f64);
    let points: Vec<[f64; 3]> = points.iter().map(|p| std::array::from_fn(|a| p[a] - middle[a])).collect();
    let mut poses: Vec<(f64, [f64; 4], [f64; 3])> = (0..600)
        .map(|_| {
            let q = std::array::from_fn(|_| (0..6).map(|_| dice.roll(-1.0, 1.0)).sum());
            let shift = [dice.roll(-4.0, 8.0), dice.roll(-2.0, 2.0), dice.roll(12.0, 36.0)];
            (distance(&points, q, shift, r, m), q, shift)
        })
        .collect();
    poses.sort_by(|a, b| b.0.total_cmp(&a.0));
    poses.truncate(10);
    for (best, q, shift) in &mut poses {
        let n = q.iter().map(|x| x * x).sum::<f64>().sqrt();
        *q = q.map(|x| x / n);
        let mut step = 0.3;
        for _ in 0..700 {
            let near: [f64; 4] = std::array::from_fn(|a| q[a] + step * dice.roll(-1.0, 1.0));
            let moved: [f64; 3] = std::array::from_fn(|a| shift[a] + 20.0 * step * dice.roll(-1.0, 1.0));
            let there = distance(&points, near, moved, r, m);
            if there > *best {
                (*best, *q, *shift) = (there, near, moved);
                step *= 1.5;
            } else {
                step = (step * 0.97).max(1e-4);
            }
        }
    }
    poses.iter().map(|pose| pose.0).fold(f64::NEG_INFINITY, f64::max)
}

/// Bodies rolled: eleven of each form.
const BODIES: usize = 99;

/// Two proofs for each body: the pose that the gauge found leaves what it says (no smaller margin is true), and no pose
/// of an independent search by chance leaves more. Surface points fall short of round forms by up to 0.04 mm.
#[test]
fn bodies_at_random_against_poses_at_random() {
    let mut dice = Dice(1501);
    let (mut fitting, mut close) = (0, 0);
    let mut table = FORMS.map(|form| (form, 0, 0.0_f64, 0.0_f64, 0));
    for n in 0..BODIES {
        let body = dice.body(n);
        let which = BOTH[n % 2];
        let (r, m) = if which == Gauge::Inch { (15.875, 41.275) } else { (15.85, 41.25) };
        let solid = solid(&body);
        let said = gauge(&solid, which).margin_mm;
        let (points, round) = surface(&body);

        let pose = best_pose(&solid, which.room(), f64::INFINITY);
        let [low, high] = [f64::min as fn(f64, f64) -> f64, f64::max]
            .map(|pick| -> [f64; 3] { std::array::from_fn(|a| points.iter().map(|p| p[a]).reduce(pick).unwrap()) });
        let least = |p: &[f64; 3]| {
            let [x, y, z] =
                turn::sum(pose.turn.apply(std::array::from_fn(|a| p[a] - (low[a] + high[a]) / 2.0)), pose.shift);
            (r - x.hypot(y)).min(z).min((m + x - z) / 2f64.sqrt())
        };
        let shown = points.iter().map(least).fold(f64::INFINITY, f64::min) - round;
        assert!(shown >= said - 1e-6, "{body:?} in {which:?}: said {said}, the pose leaves {shown}");

        let found = tried(&mut dice, &points, r, m) - round;
        assert!(found <= said + 0.05, "{body:?} in {which:?}: said {said}, a pose leaves {found}");
        // Where neither is near the limit, both decide alike.
        let near_limit = said.abs() <= 0.05 || found.abs() <= 0.05 || found <= said - 0.5;
        assert!(near_limit || (said > 0.0) == (found > 0.0), "{body:?} in {which:?}: said {said}, found {found}");
        let row = &mut table[n % FORMS.len()];
        *row = (row.0, row.1 + 1, row.2.max(found - said), row.3.max(said - shown), row.4 + usize::from(said >= 0.0));
        fitting += usize::from(said >= 0.0);
        close += usize::from(found > said - 0.5);
    }
    println!("| form | bodies | of them fit | a tried pose leaves more by | the gauge's pose leaves less by |");
    for (form, bodies, more, less, fit) in table {
        println!("| {form} | {bodies} | {fit} | {more:.4} mm | {less:.6} mm |");
    }
    assert!(
        (BODIES / 5..=BODIES * 4 / 5).contains(&fitting),
        "{fitting} of {BODIES} fit: the bodies should lie on both sides"
    );
    assert!(close >= BODIES * 5 / 6, "the search by chance comes near in only {close} of {BODIES}: it proves little");
}
