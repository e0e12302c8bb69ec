//! What a frame of the tablet costs the processor, without the graphics driver, and how many frames are far longer than
//! the others.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "forty.rs"]
mod forty;
#[allow(dead_code, reason = "the hand can do more than is measured")]
#[path = "../kiosk_support/mod.rs"]
mod kiosk_support;

use std::{
    hint::black_box,
    time::{Duration, Instant},
};

use bevy::input::touch::TouchPhase;
use bevy_egui::egui::{Pos2, vec2};
use chatelaine::{
    guest::{Overlay, Request},
    kiosk::Tablet,
    link::{News, Snapshot},
};
use criterion::Criterion;
use forty::{DROPS, hang_forty};
use kiosk_support::Hand;

/// So many frames of a busy evening are timed.
const FRAMES: usize = 10_000;
/// A frame is long when it takes so many times the median.
const LONG: u32 = 3;

/// What a guest and the desk do in frame `at`: a finger swings the piece; drops are hung and taken back, trays and sheets
/// opened and closed, and the desk sends another catalogue now and then.
fn busy(hand: &mut Hand, finger: u64, middle: Pos2, at: usize) {
    let swung = vec2(160.0 * (at as f32 / 9.0).sin(), 30.0);
    hand.touch(finger, TouchPhase::Moved, middle + swung);
    let mut ask = |request: Request| {
        hand.app.world_mut().write_message(request);
    };
    match at % 120 {
        10 => ask(Request::Undo),
        25 => ask(Request::Redo),
        40 | 50 => ask(Request::TurnTray(if at.is_multiple_of(240) { 1 } else { -1 })),
        60 => ask(Request::ShowTray(at / 120 % 5)),
        70 => ask(Request::Open(Overlay::Lines)),
        85 => ask(Request::Close),
        100 if (at / 120).is_multiple_of(4) => {
            let known = hand.app.world().resource::<Tablet>().known().snapshot.clone().expect("a catalogue");
            let next = Snapshot { revision: format!("another-{at}"), ..Snapshot::clone(&known) };
            hand.around.news.send(News::Snapshot(next.into())).expect("the tablet listens");
        }
        _ => {}
    }
}

/// How many of `times` are long, their median and the longest.
fn long(mut times: Vec<Duration>) -> (usize, Duration, Duration) {
    times.sort();
    let median = times[times.len() / 2];
    (times.iter().filter(|time| **time > median * LONG).count(), median, times[times.len() - 1])
}

/// Times frames, and beside each a loop that does nothing but count and takes about as long: what of long frames is the
/// machine's.
fn long_frames(hand: &mut Hand, finger: u64, middle: Pos2) {
    let mut frames = Vec::with_capacity(FRAMES);
    let mut loops = Vec::with_capacity(FRAMES);
    let count = |rounds: u64| {
        let start = Instant::now();
        (0..rounds).for_each(|round| {
            black_box(round);
        });
        start.elapsed()
    };
    let rounds_a_ms = (1e6 / count(1_000_000).as_secs_f64() / 1e3).max(1.0);
    let mut rounds = 1_000_000;
    for at in 0..FRAMES {
        busy(hand, finger, middle, at);
        let start = Instant::now();
        hand.frames(1);
        frames.push(start.elapsed());
        if at == 100 {
            rounds = (long(frames.clone()).1.as_secs_f64() * 1e3 * rounds_a_ms) as u64;
        }
        loops.push(count(rounds));
    }
    for (what, times) in [("frames", frames), ("loops", loops.split_off(101))] {
        let (long, median, longest) = long(times);
        println!("{what}: {long} longer than {LONG} times the median of {median:.2?}, the longest {longest:.2?}");
    }
}

fn main() {
    let mut c = Criterion::default().configure_from_args();
    let mut hand = Hand::at((1280, 800));
    hang_forty(&mut hand, 8.0);
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
    long_frames(&mut hand, finger, middle);
}
