//! Several fingers on one piece.

use super::*;

fn length(motion: &Motion) -> f64 {
    let Moving::Chain(moving) = &motion.moving else { unreachable!() };
    moving.points().0.windows(2).map(|pair| (pair[1] - pair[0]).length()).sum()
}

#[test]
fn two_fingers_hold_two_places() {
    let mut motion = Motion::at_rest(&chain(drops(4, &mut Seeded(6)))).unwrap();
    motion.take_base(1, at(20.0, 100.0));
    motion.take_base(2, at(95.0, 100.0));
    motion.pull(1, at(-40.0, 80.0));
    motion.pull(2, at(150.0, 90.0));
    for _ in 0..120 {
        motion.advance(1.0 / 60.0);
    }
    let Moving::Chain(moving) = &motion.moving else { unreachable!() };
    let near = |p: Point| (moving.at(moving.nearest(p.into())) - p.into()).length();
    assert!(near(at(-40.0, 80.0)) < 8.0 && near(at(150.0, 90.0)) < 8.0);
    assert!(motion.holds(1) && motion.holds(2) && !motion.holds(3));
    // Held still it sleeps, and wakes when it is let go.
    settle(&mut motion, 5.0);
    motion.release(1);
    assert!(!motion.asleep());
    motion.release(2);
    settle(&mut motion, 5.0);
}

/// A finger on the base and one on a drop pull apart: the chain between them does not stretch, and nothing is thrown
/// about when drops change their order.
#[test]
fn two_fingers_do_not_stretch_the_chain() {
    let all = drops(4, &mut Seeded(12));
    let mut motion = Motion::at_rest(&chain(all.clone())).unwrap();
    let body = motion.hung[3].place;
    motion.take_base(1, at(20.0, 100.0));
    motion.take_drop(2, 3, body.into());
    for i in 0..120 {
        motion.pull(1, at(20.0 - 3.0 * f64::from(i), 60.0));
        motion.pull(2, at(body.x + 4.0 * f64::from(i), body.y));
        motion.advance(1.0 / 60.0);
        assert!(length(&motion) < 1.01 * 429.6, "{}", length(&motion));
    }
    motion.release(1);
    motion.release(2);
    settle(&mut motion, 5.0);
    motion.follow(&chain(vec![all[3], all[1], all[2], all[0]])).unwrap();
    let fastest = (0..60).map(|_| {
        motion.advance(1.0 / 60.0);
        motion.hung.iter().map(|one| one.velocity.length()).fold(0.0, f64::max)
    });
    let fastest = fastest.fold(0.0, f64::max);
    assert!(fastest < 1500.0, "{fastest} mm/s");
    settle(&mut motion, 5.0);
}

/// Two fingers that take hold next to each other and pull apart: the chain gives nothing, the fingers slip.
#[test]
fn fingers_close_together_do_not_stretch_the_chain() {
    for apart in [0.5, 5.0, 20.0] {
        let mut motion = Motion::at_rest(&chain(drops(4, &mut Seeded(12)))).unwrap();
        motion.take_base(1, at(60.0, 100.0));
        motion.take_base(2, at(60.0 + apart, 100.0));
        for i in 0..120 {
            motion.pull(1, at(60.0 - 5.0 * f64::from(i), 100.0 - f64::from(i)));
            motion.pull(2, at(60.0 + apart + 6.0 * f64::from(i), 100.0 + 3.0 * f64::from(i)));
            motion.advance(1.0 / 60.0);
            assert!(length(&motion) < 1.01 * 429.6, "{apart} mm apart, frame {i}: {} mm", length(&motion));
        }
    }
}

/// Two children want the same drop: the first one has it, and the other's pulling does nothing.
#[test]
fn one_drop_follows_one_finger() {
    let plan = chain(drops(3, &mut Seeded(6)));
    let mut motion = Motion::at_rest(&plan).unwrap();
    let body = motion.hung[1].place;
    let mut alone = motion.clone();
    for moving in [&mut motion, &mut alone] {
        moving.take_drop(1, 1, body.into());
        moving.pull(1, at(body.x + 10.0, body.y));
    }
    for _ in 0..60 {
        motion.take_drop(2, 1, body.into());
        motion.pull(2, at(500.0, 500.0));
        motion.take_base(3, at(f64::NAN, 0.0));
        motion.advance(1.0 / 60.0);
        alone.advance(1.0 / 60.0);
    }
    assert!(motion.holds(1) && !motion.holds(2) && !motion.holds(3));
    assert!(shape(&motion) == shape(&alone));
}
