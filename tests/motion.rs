//! The piece in the guest's hand, as the tablet shows it.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]
#![cfg(feature = "kiosk")]

#[allow(dead_code, reason = "each test file needs another part of the hand")]
mod kiosk_support;

use bevy::input::touch::TouchPhase;
use bevy_egui::egui::{Pos2, pos2, vec2};
use chatelaine::{guest::Request, hang::Motion, kiosk::stage::Moving};
use kiosk_support::Hand;

const KINDS: [&str; 8] =
    ["key-heart", "key-round", "key-tiny", "locket-round", "bead-jade", "charm-star", "vial-glitter", "tassel-plum"];

fn hung_piece() -> Hand {
    let mut hand = Hand::at((1280, 800));
    hand.reach_the_stage();
    for kind in KINDS {
        let at = hand.compartment(kind);
        hand.tap_at(at);
    }
    assert_eq!(hand.hung(), KINDS);
    hand.seconds(6.0);
    hand
}

fn motion(hand: &Hand) -> &Motion {
    hand.app.world().resource::<Moving>().now().expect("a piece hangs")
}

fn tokens(hand: &Hand) -> Vec<u32> {
    motion(hand).rings().map(|(token, _)| token).collect()
}

/// SplitMix64, a public domain algorithm.
fn chance(seed: &mut u64) -> f32 {
    *seed = seed.wrapping_add(0x9E37_79B9_7F4A_7C15);
    let mut z = *seed;
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    ((z ^ (z >> 31)) >> 40) as f32 / (1u64 << 24) as f32
}

/// A place of the stage with nothing to touch on it.
fn bare_place(hand: &Hand, seed: &mut u64) -> Pos2 {
    let stage = hand.stage();
    (0..500)
        .map(|_| pos2(stage.left() + chance(seed) * stage.width(), stage.top() + chance(seed) * stage.height()))
        .find(|place| hand.targets().at(*place).is_none())
        .expect("some of the stage is bare")
}

/// A minute of a child's wildest finger on the base, for a while with a second finger: all stays finite, every drop hangs
/// and none passes its neighbour, the chain does not stretch, and soon after it is let go all is asleep.
#[test]
fn a_minute_of_a_wild_finger() {
    let mut hand = hung_piece();
    assert!(motion(&hand).asleep());
    let (order, mut seed) = (tokens(&hand), 20_261_125);
    let whole: f64 = length_mm(&hand);
    let (mut one, mut longest, mut moved) = (hand.finger(), whole, 0);
    let mut at = bare_place(&hand, &mut seed);
    let (two, other) = (hand.finger(), bare_place(&hand, &mut seed));
    hand.touch(one, TouchPhase::Started, at);
    for frame in 0..3000 {
        if frame % 150 == 149 {
            // Now and then it lets go, cancelled or lifted, and takes hold elsewhere.
            let phase = if frame % 300 == 149 { TouchPhase::Ended } else { TouchPhase::Canceled };
            hand.touch(one, phase, at);
            hand.frames(1);
            one = hand.finger();
            at = bare_place(&hand, &mut seed);
            hand.touch(one, TouchPhase::Started, at);
            hand.frames(1);
        }
        let step = |seed: &mut u64| (chance(seed) - 0.5) * 500.0;
        at = pos2((at.x + step(&mut seed)).clamp(0.0, 1279.0), (at.y + step(&mut seed)).clamp(0.0, 799.0));
        hand.touch(one, TouchPhase::Moved, at);
        match frame {
            1000 => hand.touch(two, TouchPhase::Started, other),
            1001..2000 => hand.touch(two, TouchPhase::Moved, other + vec2(90.0 * (frame as f32 / 7.0).sin(), 40.0)),
            2000 => hand.touch(two, TouchPhase::Ended, other),
            _ => {}
        }
        hand.frames(1);
        moved += usize::from(!motion(&hand).asleep());
        longest = longest.max(length_mm(&hand));
        assert_eq!(tokens(&hand), order, "frame {frame}");
        let finite = motion(&hand).rings().all(|(_, ring)| (ring.x_mm + ring.y_mm + ring.lean_rad).is_finite());
        assert!(finite, "frame {frame}");
    }
    hand.touch(one, TouchPhase::Ended, at);
    assert!(moved > 2900, "it moved in {moved} frames only");
    assert!(longest < whole * 1.01, "{whole} mm became {longest} mm");
    hand.seconds(5.0);
    assert!(motion(&hand).asleep(), "still awake five seconds after");
    assert_eq!(hand.hung(), KINDS);
}

fn length_mm(hand: &Hand) -> f64 {
    motion(hand).links().map(|(a, b)| (a.x_mm - b.x_mm).hypot(a.y_mm - b.y_mm)).sum()
}

/// A drop slid slowly along the base passes its neighbours on the screen, and that is its place in the design.
#[test]
fn a_slid_drop_takes_its_new_place() {
    let mut hand = hung_piece();
    let (from, to) = (hand.hung_at(0), hand.hung_at(3));
    let finger = hand.finger();
    hand.touch(finger, TouchPhase::Started, from);
    for step in 1..=60 {
        hand.touch(finger, TouchPhase::Moved, from + (to - from) * (step as f32 / 60.0));
        hand.frames(1);
    }
    hand.frames(30);
    let first = hand.token(0);
    let passed = tokens(&hand).iter().position(|token| *token == first).expect("it hangs");
    assert!(passed >= 2, "it has come to place {passed}");
    hand.touch(finger, TouchPhase::Ended, to);
    hand.frames(2);
    hand.seconds(5.0);
    let design: Vec<u32> = hand.session().history.now().drops.iter().map(|hung| hung.token).collect();
    assert_eq!(tokens(&hand), design);
    assert!(design.iter().position(|token| *token == first) >= Some(2));
    hand.tap(&Request::Undo);
    hand.seconds(5.0);
    assert_eq!(hand.hung(), KINDS);
    assert_eq!(tokens(&hand)[0], first);
}
