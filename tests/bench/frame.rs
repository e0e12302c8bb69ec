//! What a whole frame of the tablet costs, graphics included: the processor's part, then the wait for the graphics queue.
//! Draws off screen on whatever driver there is, in software or not.
//!
//! `cargo bench --bench frame` prints a line for each size; `cargo bench --bench frame -- FRAMES` times so many. Beside the
//! frames a loop that does nothing but count is timed: what of long frames is the machine's.

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

use std::{hint::black_box, time::Instant};

use bevy::{
    input::touch::TouchPhase,
    render::{
        render_resource::PollType,
        renderer::{RenderAdapterInfo, RenderDevice},
    },
};
use bevy_egui::egui::vec2;
use chatelaine::kiosk::offscreen;
use forty::{DROPS, hang_forty};
use kiosk_support::{Hand, options};

const SIZES: [(u32, u32); 2] = [(1280, 800), (2560, 1600)];
/// A frame is long when it takes so many times the median.
const LONG: f64 = 3.0;

/// Milliseconds of one frame: of the processor, and of the wait for all that the graphics driver was given.
fn frame(hand: &mut Hand) -> (f64, f64) {
    let start = Instant::now();
    hand.app.update();
    let processor = start.elapsed().as_secs_f64() * 1e3;
    let start = Instant::now();
    // A driver that is lost shows in the times.
    let _ = hand.app.world().resource::<RenderDevice>().wgpu_device().poll(PollType::wait_indefinitely());
    (processor, start.elapsed().as_secs_f64() * 1e3)
}

fn tell(what: &str, mut times: Vec<(f64, f64)>, mut loops: Vec<f64>) {
    times.sort_by(|one, other| (one.0 + one.1).total_cmp(&(other.0 + other.1)));
    loops.sort_by(f64::total_cmp);
    let at = |share: f64| {
        let (processor, wait) = times[((times.len() - 1) as f64 * share) as usize];
        (processor + wait, processor, wait)
    };
    let (median, slow, slowest) = (at(0.5), at(0.95), at(0.99));
    let long = times.iter().filter(|(processor, wait)| processor + wait > LONG * median.0).count();
    let long_loops = loops.iter().filter(|time| **time > LONG * loops[loops.len() / 2]).count();
    println!(
        "{what}: {:.2} ms ({:.2} and {:.2} of waiting), 95 % {:.2}, 99 % {:.2}; {long} long of {}, {long_loops} of a loop beside them",
        median.0,
        median.1,
        median.2,
        slow.0,
        slowest.0,
        times.len()
    );
}

/// A loop that takes about as long as a frame.
fn idle_loop(rounds: u64) -> f64 {
    let start = Instant::now();
    (0..rounds).for_each(|round| {
        black_box(round);
    });
    start.elapsed().as_secs_f64() * 1e3
}

fn main() {
    let frames = std::env::args().filter_map(|word| word.parse().ok()).next().unwrap_or(300);
    for size in SIZES {
        let (options, around) = options();
        let app = match offscreen(options, size) {
            Ok(app) => app,
            Err(reason) => return println!("{reason}"),
        };
        let mut hand = Hand::on(app, around);
        if let Some(driver) = hand.app.world().get_resource::<RenderAdapterInfo>() {
            println!("{size:?} on {} {:?} {}", driver.name, driver.backend, driver.driver_info);
        }
        hang_forty(&mut hand, 4.0);
        let (finger, middle) = (hand.finger(), hand.stage().left_center() + vec2(60.0, 0.0));
        hand.touch(finger, TouchPhase::Started, middle);
        hand.frames(5);
        let rounds = (3e6 / idle_loop(1_000_000)) as u64;
        for (what, far) in [("at rest", 0.0), ("swung", 160.0)] {
            let (mut times, mut loops) = (Vec::new(), Vec::new());
            for at in 0..frames {
                let swung = if far > 0.0 { vec2(far * (at as f32 / 9.0).sin(), 30.0) } else { vec2(0.0, 0.0) };
                hand.touch(finger, TouchPhase::Moved, middle + swung);
                times.push(frame(&mut hand));
                loops.push(idle_loop(rounds));
            }
            tell(&format!("{size:?}, {DROPS} drops {what}"), times, loops);
        }
        assert_eq!(hand.hung().len(), DROPS, "forty drops still hang");
    }
}
