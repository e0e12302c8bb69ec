//! How long it takes to work out how a piece hangs and how it moves, side by side with a general-purpose rigid-body
//! library on the same chain.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "../support/peer.rs"]
mod peer;

use std::{hint::black_box, path::PathBuf};

use chatelaine::hang::{Load, Motion, MotionPlan, MovingBase, NecklaceLoad, Point, necklace};
use criterion::Criterion;
use peer::{Peer, scene};

const FRAME_S: f64 = 1.0 / 60.0;
const ITERATIONS: [usize; 4] = [4, 16, 64, 512];

/// A 24 in necklace on a neck of 360 mm with twelve drops of unlike weight.
fn twelve_drops(chain_g_per_mm: f64) -> NecklaceLoad {
    NecklaceLoad {
        front_length_mm: 429.6,
        width_mm: 114.6,
        rise_mm: 0.0,
        chain_g_per_mm,
        loads: (0..12).map(|i| Load { mass_g: 1.0 + f64::from(i * 7 % 5) }).collect(),
        gaps_mm: vec![9.0; 11],
    }
}

/// 300 points of chain and 30 drops.
fn moving() -> Motion {
    let (chain, drops) = scene(300, 30);
    Motion::at_rest(&MotionPlan { base: MovingBase::Chain(chain), drops, rho: 0.6 }).expect("the scene hangs")
}

fn place(x_mm: f64, y_mm: f64) -> Point {
    Point { x_mm, y_mm }
}

/// How far a piece that was swung and let go comes to rest from the exact shape at most, in millimetres.
fn off_at_rest_mm() -> f64 {
    let mut motion = moving();
    let points = |motion: &Motion| motion.links().map(|(_, right)| right).collect::<Vec<_>>();
    let exact = points(&motion);
    motion.take_base(1, place(57.0, 190.0));
    motion.pull(1, place(130.0, 150.0));
    for frame in 0..900 {
        if frame == 30 {
            motion.release(1);
        }
        motion.advance(FRAME_S);
    }
    assert!(motion.asleep(), "it has come to rest");
    points(&motion).iter().zip(&exact).map(|(a, b)| (a.x_mm - b.x_mm).hypot(a.y_mm - b.y_mm)).fold(0.0, f64::max)
}

/// The middle estimate of a benchmark, in nanoseconds; none where it was not measured.
fn median_ns(id: &str) -> Option<f64> {
    let text = std::fs::read_to_string(folder(id).join("estimates.json")).ok()?;
    let estimates: serde_json::Value = serde_json::from_str(&text).ok()?;
    estimates["median"]["point_estimate"].as_f64()
}

/// Where a benchmark's last estimates lie.
fn folder(id: &str) -> PathBuf {
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| PathBuf::from("target"), PathBuf::from);
    let root = std::env::var_os("CRITERION_HOME").map_or_else(|| target.join("criterion"), PathBuf::from);
    root.join(id).join("new")
}

const OURS: &str = "motion 300 points 30 drops";

fn peers(iterations: usize) -> String {
    format!("peer 300 links 30 drops {iterations} iterations")
}

fn main() {
    // What an earlier run has left is not this run's.
    for id in ITERATIONS.map(peers).iter().map(String::as_str).chain([OURS]) {
        let _ = std::fs::remove_dir_all(folder(id));
    }
    let mut c = Criterion::default().configure_from_args();
    for (id, weight) in [("rest 12 drops", 0.0142), ("rest 12 drops, chain without weight", 0.0)] {
        let load = twelve_drops(weight);
        c.bench_function(id, |b| b.iter(|| necklace(black_box(&load))));
    }
    c.bench_function(OURS, |b| {
        let mut motion = moving();
        motion.take_base(1, place(57.0, 190.0));
        let mut frame = 0.0;
        b.iter(|| {
            frame += 1.0;
            motion.pull(1, place(57.0 + 70.0 * (frame / 8.0f64).sin(), 160.0));
            motion.advance(FRAME_S);
        });
    });
    let mut off_mm = Vec::new();
    for iterations in ITERATIONS {
        let (chain, drops) = scene(300, 30);
        let mut peer = Peer::at_rest(&chain, &drops, iterations);
        (0..600).for_each(|_| peer.frame());
        off_mm.push(peer.off_mm());
        c.bench_function(&peers(iterations), |b| b.iter(|| peer.frame()));
    }
    c.final_summary();
    // Under a filter there is nothing to compare.
    let Some(ours) = median_ns(OURS) else { return };
    println!("\n| a frame of 300 links and 30 drops | time | ours in it | off at rest |\n| --- | --- | --- | --- |");
    println!("| ours, swung by a finger | {:.2} ms | 1 | {:.2} mm |", ours / 1e6, off_at_rest_mm());
    for (iterations, off) in ITERATIONS.into_iter().zip(off_mm) {
        let Some(peer) = median_ns(&peers(iterations)) else { continue };
        println!("| peer, {iterations} iterations | {:.2} ms | {:.2} | {off:.2} mm |", peer / 1e6, peer / ours);
    }
}
