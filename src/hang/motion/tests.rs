mod fingers;

use super::*;
use crate::hang::seeded::Seeded;

fn at(x_mm: f64, y_mm: f64) -> Point {
    Point { x_mm, y_mm }
}

fn drops(n: usize, seeded: &mut Seeded) -> Vec<Hanging> {
    let one = |token| Hanging {
        token,
        mass_g: seeded.next(0.6, 8.0),
        wire_mm: 1.02,
        width_mm: seeded.next(7.0, 22.0),
        swing_mm: seeded.next(16.0, 44.0),
    };
    (0..n as Token).map(one).collect()
}

/// A 24 in necklace of 14.2 g/m on a neck of 360 mm.
fn chain(drops: Vec<Hanging>) -> MotionPlan {
    let base = ChainPlan { front_length_mm: 429.6, width_mm: 114.6, g_per_mm: 0.0142, links: 150 };
    MotionPlan { base: MovingBase::Chain(base), drops, rho: 0.6 }
}

fn hoop(drops: Vec<Hanging>) -> MotionPlan {
    let base = HoopPlan { inside_mm: 65.0, wire_mm: 2.4, mass_g: 9.3, hook_g: 1.2, free_arc_deg: 240.0 };
    MotionPlan { base: MovingBase::Hoop(base), drops, rho: 0.6 }
}

fn settle(motion: &mut Motion, most_s: f64) -> f64 {
    let mut seconds = 0.0;
    while !motion.asleep() {
        assert!(seconds < most_s, "not asleep after {seconds} s");
        motion.advance(1.0 / 60.0);
        seconds += 1.0 / 60.0;
    }
    seconds
}

fn shape(motion: &Motion) -> Vec<(f64, f64)> {
    let links = motion.links().flat_map(|(a, b)| [a, b]);
    let drops = motion.rings().map(|(_, ring)| at(ring.x_mm, ring.y_mm));
    links.chain(drops).map(|p| (p.x_mm, p.y_mm)).collect()
}

/// How far two shapes of the same piece are from each other at most.
fn apart(a: &[(f64, f64)], b: &[(f64, f64)]) -> f64 {
    assert_eq!(a.len(), b.len());
    a.iter().zip(b).map(|(a, b)| (a.0 - b.0).hypot(a.1 - b.1)).fold(0.0, f64::max)
}

/// Dragged, swung and let go, a piece comes to rest where the exact solution has it, within 0.5 % of the chain.
#[test]
fn it_rests_where_the_exact_shape_is() {
    let mut seeded = Seeded(5);
    for n in [0, 1, 2, 5, 12, 30] {
        let plan = chain(drops(n, &mut seeded));
        let mut motion = Motion::at_rest(&plan).unwrap();
        let exact = shape(&motion);
        assert!(motion.asleep());
        motion.take_base(1, at(57.0, 190.0));
        for i in 0..45 {
            motion.pull(1, at(57.0 + 90.0 * (f64::from(i) / 7.0).sin(), 150.0));
            motion.advance(1.0 / 60.0);
        }
        motion.release(1);
        let seconds = settle(&mut motion, 8.0);
        let off = apart(&shape(&motion), &exact);
        println!("{n} drops: asleep after {seconds:.2} s, {off:.2} mm off, {:.3} % of the chain", off / 4.296);
        assert!(off < 0.005 * 429.6, "{n} drops rest {off} mm off");
    }
}

/// Sixty seconds of a seeded finger, as wild as can be, at every frame rate: everything stays finite, rings keep their
/// order, the chain its length, and five seconds after it lets go all is asleep.
#[test]
fn a_wild_finger_breaks_nothing() {
    for (seed, n, hz) in [(1, 12, 60.0), (2, 30, 20.0), (3, 7, 120.0), (4, 1, 30.0)] {
        let mut seeded = Seeded(seed);
        let plan = chain(drops(n, &mut seeded));
        let mut motion = Motion::at_rest(&plan).unwrap();
        let (mut longest, mut shortest) = (0.0f64, f64::INFINITY);
        let mut finger = at(57.0, 190.0);
        for frame in 0..(60.0 * hz) as usize {
            if frame % 37 == 0 {
                motion.release(1);
                motion.take_base(1, at(seeded.next(-20.0, 140.0), seeded.next(0.0, 210.0)));
                finger = at(seeded.next(-400.0, 500.0), seeded.next(-300.0, 500.0));
            }
            finger.x_mm += seeded.next(-120.0, 120.0);
            finger.y_mm += seeded.next(-120.0, 120.0);
            motion.pull(1, finger);
            motion.advance(1.0 / hz);
            let Moving::Chain(moving) = &motion.moving else { unreachable!() };
            let length: f64 = moving.points().0.windows(2).map(|pair| (pair[1] - pair[0]).length()).sum();
            assert!(length.is_finite());
            (longest, shortest) = (longest.max(length / 429.6), shortest.min(length / 429.6));
            let order: Vec<Token> = motion.rings().map(|(token, _)| token).collect();
            assert!(order.iter().copied().eq(0..n as Token), "{order:?}");
            for (token, ring) in motion.rings() {
                assert!(ring.x_mm.is_finite() && ring.y_mm.is_finite() && ring.lean_rad.is_finite(), "{token}");
            }
        }
        motion.release(1);
        let asleep = settle(&mut motion, 5.0);
        println!("{n} drops at {hz} Hz: length {shortest:.4} to {longest:.4}, asleep after {asleep:.2} s");
    }
}

/// The bangle alike: finite, in order, and at rest where the exact balance is.
#[test]
fn a_bangle_swings_turns_and_settles() {
    let mut seeded = Seeded(8);
    for n in [0, 1, 5, 9] {
        let plan = hoop(drops(n, &mut seeded));
        let mut motion = Motion::at_rest(&plan).unwrap();
        let exact = shape(&motion);
        let mut finger = at(30.0, 10.0);
        motion.take_base(1, finger);
        motion.take_base(2, at(-33.0, 0.0));
        for frame in 0..1200 {
            finger = at(finger.x_mm + seeded.next(-30.0, 30.0), finger.y_mm + seeded.next(-30.0, 30.0));
            motion.pull(1, finger);
            motion.pull(2, at(-33.0, 20.0 * (f64::from(frame) / 9.0).sin()));
            motion.advance(1.0 / 60.0);
            assert!(motion.rings().map(|(token, _)| token).eq(0..n as Token));
            assert!(motion.rings().all(|(_, ring)| ring.x_mm.is_finite() && ring.lean_rad.is_finite()));
            let (middle, turn) = motion.hoop().unwrap();
            assert!(middle.x_mm.hypot(middle.y_mm) < 60.0 && turn.is_finite());
        }
        motion.release(1);
        motion.release(2);
        settle(&mut motion, 5.0);
        let off = apart(&shape(&motion), &exact);
        assert!(off < 0.005 * 204.0, "{n} drops rest {off} mm off");
    }
}

/// A finger that goes round the wire turns the bangle with it.
#[test]
fn a_finger_turns_the_bangle() {
    let mut motion = Motion::at_rest(&hoop(vec![])).unwrap();
    motion.take_base(1, at(33.0, 0.0));
    for i in 0..60 {
        let angle = f64::from(i) / 60.0 * 1.2;
        motion.pull(1, at(33.0 * angle.cos(), -33.0 * angle.sin()));
        motion.advance(1.0 / 60.0);
    }
    let (_, turn) = motion.hoop().unwrap();
    assert!((0.9..1.25).contains(&turn), "{turn}");
    motion.release(1);
    settle(&mut motion, 5.0);
    assert!(motion.hoop().unwrap().1.abs() < 0.05);
}

/// A drop that swings from a fixed place: the time of its first quarter, four times, in seconds.
fn period_s(swing_mm: f64, amplitude_deg: f64) -> f64 {
    let one = Hanging { token: 0, mass_g: 3.0, wire_mm: 1.0, width_mm: 8.0, swing_mm };
    let mut motion = Motion::at_rest(&chain(vec![one])).unwrap();
    // Without air, and stuck at the left hang point.
    motion.feel = Feel { air_per_s: 0.0, dry_mm_s2: 0.0, slide_per_s: 1e9 };
    let angle = amplitude_deg.to_radians();
    let body = &mut motion.hung[0];
    (body.at, body.place) = (0.0, v(angle.sin(), angle.cos()) * swing_mm);
    let (mut steps, mut before) = (0.0, angle);
    motion.still_s = 0.0;
    loop {
        motion.step();
        let lean = motion.rings().next().unwrap().1.lean_rad;
        if lean <= 0.0 {
            return 4.0 * (steps + before / (before - lean)) * STEP_S;
        }
        (steps, before) = (steps + 1.0, lean);
    }
}

/// T₀ = 2π√(l/g), and T/T₀ of large swings: NIST Digital Library of Mathematical Functions §22.19(i) (from memory),
/// values computed from the complete elliptic integral. A time-stepped motion is held to 1 %. From
/// above its ring a drop falls freely, as it does in life.
#[test]
fn drops_swing_as_pendulums_do() {
    for (swing_mm, t0) in [(20.0, 0.2837491233), (50.0, 0.4486467569), (100.0, 0.6344823283)] {
        for (degrees, ratio) in [
            (5.0, 1.000476172486),
            (20.0, 1.007669025792),
            (45.0, 1.039973343197),
            (60.0, 1.073182007149),
            (90.0, 1.180340599016),
        ] {
            let found = period_s(swing_mm, degrees);
            println!("{swing_mm} mm from {degrees}°: {found:.5} s, {:.3} % off", 100.0 * (found / (t0 * ratio) - 1.0));
            assert!((found / (t0 * ratio) - 1.0).abs() < 0.01, "{swing_mm} mm from {degrees}°: {found}");
        }
    }
}

/// A uniform rod of 50 mm that hangs by its end swings as a point 2/3 down: 0.366318543 s.
#[test]
fn a_body_swings_as_a_rod() {
    let body = crate::craft::Length::from_mm;
    let thin = crate::craft::Ring::new(body(1e-9 + 1.5e-9), body(1e-9)).unwrap();
    let kind: crate::craft::DropKind = serde_json::from_value(serde_json::json!({
        "id": "rod", "name": "Rod", "sort": "Charm", "finish": null, "colours": [], "materials": [],
        "body": { "Rod": { "diameter": body(1.0), "length": body(50.0) } },
        "width": body(1.0), "height": body(50.0), "ring": thin, "weight": crate::craft::Mass::from_g(2.0),
        "price": "1", "stock": 1, "home": "A1", "picture": "", "magnet": null,
        "coin_cell": false, "sharp": false, "allergens": [], "tested": null,
    }))
    .unwrap();
    let l = Hanging::new(0, &kind).swing_mm;
    assert!((2.0 * std::f64::consts::PI * (l / GRAVITY).sqrt() - 0.366318543).abs() < 1e-8, "{l}");
}

/// The same input gives the same motion to the last bit, however it is cut into frames.
#[test]
fn motion_repeats_itself_and_does_not_depend_on_the_frame_rate() {
    let plan = chain(drops(6, &mut Seeded(4)));
    let run = |hz: usize| {
        let mut motion = Motion::at_rest(&plan).unwrap();
        motion.take_base(9, at(60.0, 195.0));
        motion.pull(9, at(150.0, 120.0));
        for i in 0..hz {
            if i == hz / 2 {
                motion.release(9);
            }
            motion.advance(1.0 / hz as f64);
        }
        shape(&motion)
    };
    for hz in [60, 20, 30, 120] {
        assert!(run(hz) == run(60), "at {hz} frames a second it is elsewhere");
    }
}

/// A held drop passes its neighbours on the way, and they make room where it rests.
#[test]
fn a_drop_slides_past_its_neighbours() {
    for plan in [chain(drops(5, &mut Seeded(7))), hoop(drops(5, &mut Seeded(7)))] {
        let mut motion = Motion::at_rest(&plan).unwrap();
        let places: Vec<RingAt> = motion.rings().map(|(_, ring)| ring).collect();
        let from = at(places[0].x_mm, places[0].y_mm + plan.drops[0].swing_mm);
        motion.take_drop(3, 0, from);
        let to = at(places[3].x_mm + 4.0, places[3].y_mm + plan.drops[0].swing_mm - 4.0);
        for i in 0..90 {
            let share = (f64::from(i) / 40.0).min(1.0);
            let between = |a: f64, b: f64| a + (b - a) * share;
            motion.pull(3, at(between(from.x_mm, to.x_mm), between(from.y_mm, to.y_mm)));
            motion.advance(1.0 / 60.0);
        }
        let order: Vec<Token> = motion.rings().map(|(token, _)| token).collect();
        let place = order.iter().position(|token| *token == 0).unwrap();
        assert!(place >= 2, "{order:?}");
        motion.release(3);
        settle(&mut motion, 5.0);
        let after: Vec<Token> = motion.rings().map(|(token, _)| token).collect();
        assert_eq!(after, order);
        assert!(order.iter().filter(|token| **token != 0).copied().eq(1..5), "{order:?}");
    }
}

/// What hangs goes on as it is when the design changes; what is new finds room.
#[test]
fn the_piece_follows_its_design() {
    let all = drops(6, &mut Seeded(10));
    let mut motion = Motion::at_rest(&chain(all[..3].to_vec())).unwrap();
    let new = vec![all[0], all[4], all[1], all[2]];
    motion.follow(&chain(new.clone())).unwrap();
    assert!(!motion.asleep());
    settle(&mut motion, 5.0);
    let order = |motion: &Motion| motion.rings().map(|(token, _)| token).collect::<Vec<_>>();
    assert_eq!(order(&motion), [0, 4, 1, 2]);
    assert!(apart(&shape(&motion), &shape(&Motion::at_rest(&chain(new.clone())).unwrap())) < 2.0);
    // The same once more changes nothing.
    let before = shape(&motion);
    motion.follow(&chain(new)).unwrap();
    assert!(motion.asleep() && shape(&motion) == before);
    // Another order, less, and what does not hang.
    motion.follow(&chain(vec![all[2], all[0]])).unwrap();
    settle(&mut motion, 5.0);
    assert_eq!(order(&motion), [2, 0]);
    let heavy = Hanging { mass_g: f64::NAN, ..all[1] };
    assert!(motion.follow(&chain(vec![heavy])).is_err());
    assert_eq!(order(&motion), [2, 0]);
    motion.follow(&hoop(vec![all[2]])).unwrap();
    assert!(motion.asleep() && motion.hoop().is_some());
}

/// On a ring that can't give, a push swings a drop v²/(2 g) up: cos φ = 1 − v²/(2 g l). A ring that slides gives way, so
/// the drop leans less, but it does lean.
#[test]
fn a_push_swings_a_drop_and_it_settles() {
    let swing_mm = 30.0;
    let drop = Hanging { token: 7, mass_g: 1.0, wire_mm: 1.02, width_mm: 10.0, swing_mm };
    let mut plan = hoop(vec![drop]);
    if let MovingBase::Hoop(hoop) = &mut plan.base {
        hoop.mass_g = 900.0;
    }
    let mut motion = Motion::at_rest(&plan).unwrap();
    let rest = shape(&motion);
    motion.take_hold(8, None, 160.0, 0.0);
    assert!(motion.asleep(), "nobody of that number hangs");
    motion.take_hold(7, None, 160.0, 0.0);
    let mut most = 0.0_f64;
    for _ in 0..30 {
        motion.advance(1.0 / 120.0);
        most = most.max(motion.rings().next().unwrap().1.lean_rad);
    }
    let fixed = (1.0 - 160.0_f64.powi(2) / (2.0 * 9810.0 * swing_mm)).acos();
    assert!((0.4 * fixed..fixed).contains(&most), "{most} of {fixed}");
    settle(&mut motion, 8.0);
    assert!(apart(&rest, &shape(&motion)) < 0.5);
}
