//! A tray by one photo: twelve megapixels with sixteen compartments, from the bytes of the JPEG to every cut-out.

#![allow(
    unreachable_pub,
    dead_code,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a bench may end in a panic and prints what it measured"
)]

use std::fs;

use chatelaine::photo::{self, Photo, Straightened, Tray, find_corners, look};
use criterion::Criterion;

#[path = "../photo/scene.rs"]
mod scene;

use scene::{Dice, Floor, Lying, Scene, picture};

const PIECES: [&str; 16] = [
    "charm-moon",
    "charm-star",
    "charm-sun",
    "charm-leaf",
    "charm-feather",
    "charm-anchor",
    "charm-heart",
    "charm-acorn",
    "bead-amber",
    "bead-pearl",
    "bead-lapis",
    "key-heart",
    "locket-oval",
    "found-gear",
    "tassel-teal",
    "crystal-cube",
];

/// No more memory than this beside what the program has, in megabytes.
const MOST_MEGABYTES: u64 = 400;

/// A tray of four by four on linen, at twelve megapixels.
fn taken() -> Vec<u8> {
    let mut scene = Scene::new(Floor::Linen);
    let mut dice = Dice(99);
    for (i, name) in PIECES.iter().enumerate() {
        let picture = picture(name);
        let height_mm = f64::from(picture.height()) / 10.0;
        let at = scene.middle(i as u32 / 4, i as u32 % 4);
        scene.lying.push(Lying { picture, height_mm, at, degrees: (dice.next() - 0.5) * 40.0 });
    }
    scene.taken().jpeg
}

/// All of it, as the desk does it; gives how many pieces were cut out.
fn all(jpeg: &[u8]) -> usize {
    let photo = Photo::read(jpeg).expect("a photo");
    let corners = find_corners(&photo).expect("a tray");
    let tray = Tray { corners, rows: 4, columns: 4, inner_width_mm: 280.0, inner_depth_mm: None };
    let straight = Straightened::new(&photo, tray).expect("a tray");
    (0..16).map(|i| look(&straight.compartment(i / 4, i % 4)).pieces.len()).sum()
}

/// The most memory this process has held since it was last asked to forget it, in megabytes (Linux).
fn peak_megabytes() -> Option<u64> {
    let status = fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    line.split_whitespace().nth(1)?.parse::<u64>().ok().map(|kilobytes| kilobytes / 1024)
}

/// Seconds that this thread has been on a core, however busy the machine is (Linux).
fn on_a_core() -> Option<f64> {
    let held = fs::read_to_string("/proc/thread-self/schedstat").ok()?;
    held.split(' ').next()?.parse::<f64>().ok().map(|nanoseconds| nanoseconds / 1e9)
}

fn main() {
    let jpeg = taken();
    // Forgets the peak of drawing the scene.
    let forgot = fs::write("/proc/self/clear_refs", "5").is_ok();
    let before = on_a_core();
    let pieces = all(&jpeg);
    let (seconds, peak) = (before.zip(on_a_core()).map(|(before, after)| after - before), peak_megabytes());
    println!("12 megapixels, 16 compartments: {pieces} pieces, {seconds:?} s on a core, peak {peak:?} MB");
    assert!(!forgot || peak.is_none_or(|peak| peak < MOST_MEGABYTES), "{peak:?} MB");
    let mut criterion = Criterion::default().sample_size(10).configure_from_args();
    criterion.bench_function("tray of 16 by one photo of 12 megapixels", |bench| bench.iter(|| all(&jpeg)));
    criterion.final_summary();
}
