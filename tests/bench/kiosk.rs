//! What a frame of the tablet costs the processor, without the graphics driver.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[allow(dead_code, reason = "the hand can do more than is measured")]
#[path = "../kiosk_support/mod.rs"]
mod kiosk_support;

use bevy::input::touch::TouchPhase;
use bevy_egui::egui::vec2;
use chatelaine::guest::Request;

use criterion::Criterion;
use kiosk_support::Hand;

/// Forty drops, as many of each kind as the table has until they are enough; the narrow ones, for they have to fit.
const NARROW: [&str; 5] = ["key-tiny", "bead-jade", "bead-pearl", "bead-garnet", "charm-star"];
const DROPS: usize = 40;

fn hang_forty() -> Hand {
    let mut hand = Hand::at((1280, 800));
    hand.tap(&Request::Begin);
    hand.ask(Request::Longer(40));
    hand.tap(&Request::ToStage);
    for kind in NARROW.into_iter().cycle().take(DROPS * 4) {
        if hand.hung().len() == DROPS {
            break;
        }
        hand.app.world_mut().write_message(Request::Hang { kind: kind.into(), at: None });
        hand.frames(2);
    }
    assert_eq!(hand.hung().len(), DROPS, "forty drops hang");
    hand.seconds(8.0);
    hand
}

fn main() {
    let mut c = Criterion::default().configure_from_args();
    let mut hand = hang_forty();
    // A finger that rests keeps the guest's things on the screen.
    let (finger, middle) = (hand.finger(), hand.stage().left_center() + vec2(60.0, 0.0));
    hand.touch(finger, TouchPhase::Started, middle);
    c.bench_function("kiosk frame, 40 drops at rest", |b| {
        b.iter(|| {
            hand.touch(finger, TouchPhase::Moved, middle);
            hand.frames(1);
        });
    });
    let mut frame = 0.0f32;
    c.bench_function("kiosk frame, 40 drops swung by a finger", |b| {
        b.iter(|| {
            frame += 1.0;
            hand.touch(finger, TouchPhase::Moved, middle + vec2(160.0 * (frame / 9.0).sin(), 30.0));
            hand.frames(1);
        });
    });
    assert_eq!(hand.hung().len(), DROPS, "forty drops still hang");
    c.final_summary();
}
