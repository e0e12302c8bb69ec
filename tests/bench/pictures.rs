//! What a thousand drops with photos take of a tablet's memory, and how soon their pictures are there. Linux only: the
//! memory is what the system says that the process has (`VmRSS`). The same of the desk, once its pages have shown all of them.
//!
//! `cargo bench --bench pictures` prints one line for each figure; `cargo bench --bench pictures -- minutes` goes on for so
//! many minutes of seeded touches and prints the memory after each.

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
#[allow(dead_code, reason = "a desk is only looked at here")]
#[path = "../desk/kit.rs"]
mod kit;
#[allow(dead_code, reason = "places are drawn by number here")]
#[path = "../support/random.rs"]
mod random;
#[allow(dead_code, reason = "one page is read here")]
#[path = "../desk/seller.rs"]
mod seller;
#[path = "../support/mod.rs"]
mod support;

use std::{
    fmt::Write as _,
    fs,
    path::Path,
    time::{Duration, Instant},
};

use bevy::prelude::{Assets, Entity, Image, Mesh};
use chatelaine::{
    guest::Request,
    kiosk::{Pictures, offscreen},
};
use kiosk_support::{Hand, options_with, resident_mb};
use random::Random;

const SIZE: (u32, u32) = (1280, 800);
const PHOTO_PX: u32 = 640;
const TRAYS: usize = 25;
const ROWS: usize = 5;
const COLUMNS: usize = 8;

/// A photo with forms and grain, so that it is as large as photos are.
fn photo(seed: usize) -> Vec<u8> {
    let mut random = Random(seed as u64 + 1);
    let (cx, cy, r) = (random.below(200) as f32 + 220.0, random.below(200) as f32 + 220.0, 120.0 + (seed % 90) as f32);
    let picture = image::RgbImage::from_fn(PHOTO_PX, PHOTO_PX, |x, y| {
        let away = (x as f32 - cx).hypot(y as f32 - cy) / r;
        let grain = random.below(24) as f32;
        let tone = |base: f32| (base * (1.4 - away).clamp(0.2, 1.0) + grain) as u8;
        image::Rgb([tone(200.0), tone(150.0 + (seed % 60) as f32), tone(90.0)])
    });
    let mut bytes = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut bytes, image::ImageFormat::Jpeg).expect("a photo");
    bytes.into_inner()
}

/// A table of `trays` full trays, each drop with its own photo.
fn write(folder: &Path, trays: usize) {
    let demo = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/catalog"));
    for name in ["trays", "pictures"] {
        fs::create_dir_all(folder.join(name)).expect("a folder");
    }
    for name in ["table.ron", "bases.ron"] {
        fs::copy(demo.join(name), folder.join(name)).expect("a copy");
    }
    // An empty table has one drop: a catalogue without any is none.
    fs::write(folder.join("pictures/photo-0.jpg"), photo(0)).expect("written");
    for tray in 0..trays.max(1) {
        let letter = char::from(b'A' + tray as u8);
        let mut text = format!("(letter: \"{letter}\", name: \"Tray {letter}\", rows: [");
        for row in 0..if trays == 0 { 1 } else { ROWS } {
            text.push('[');
            for column in 0..if trays == 0 { 1 } else { COLUMNS } {
                let n = (tray * ROWS + row) * COLUMNS + column;
                fs::write(folder.join(format!("pictures/photo-{n}.jpg")), photo(n)).expect("written");
                write!(
                    text,
                    "(id: \"drop-{n}\", name: \"Drop {n}\", sort: Charm, finish: Gold, colours: [Golden], \
                     materials: [Brass], body: Disc(diameter: \"12mm\", thickness: \"2mm\"), width: \"12mm\", \
                     height: \"14mm\", ring: (outside: \"10mm\", wire: \"18awg\"), weight: \"3g\", price: \"4.50\", \
                     stock: 5, picture: \"photo-{n}.jpg\"),"
                )
                .expect("written");
            }
            text.push_str("],");
        }
        text.push_str("])");
        fs::write(folder.join(format!("trays/{letter}.ron")), text).expect("written");
    }
}

fn settled(hand: &mut Hand) -> Duration {
    let start = Instant::now();
    while !hand.app.world().resource::<Pictures>().are_settled() {
        hand.frames(1);
        assert!(start.elapsed() < Duration::from_secs(300), "the pictures do not come");
    }
    start.elapsed()
}

/// Asks for a tray; frames and time until all its pictures are there.
fn turn_to(hand: &mut Hand, tray: usize) -> (usize, Duration) {
    let names: Vec<String> =
        (0..ROWS * COLUMNS).map(|at| format!("photo-{}.jpg", tray * ROWS * COLUMNS + at)).collect();
    let (start, mut frames) = (Instant::now(), 0);
    hand.app.world_mut().write_message(Request::ShowTray(tray));
    loop {
        hand.frames(1);
        frames += 1;
        let pictures = hand.app.world().resource::<Pictures>();
        if names.iter().all(|name| pictures.small(name).is_some()) {
            return (frames, start.elapsed());
        }
        assert!(start.elapsed() < Duration::from_secs(60), "the tray's pictures do not come");
    }
}

fn tablet_with(trays: usize) -> (Hand, tempfile::TempDir) {
    let table = tempfile::tempdir().expect("a folder");
    write(table.path(), trays);
    let (options, around) = options_with(table.path());
    let app = offscreen(options, SIZE).expect("a graphics driver");
    (Hand::on(app, around), table)
}

/// How much of what could grow there is.
fn kept(hand: &mut Hand) -> String {
    let world = hand.app.world_mut();
    let entities = world.query::<Entity>().iter(world).count();
    format!(
        "{} textures, {} meshes, {} entities, {:.1} MB of pictures",
        world.resource::<Assets<Image>>().len(),
        world.resource::<Assets<Mesh>>().len(),
        entities,
        world.resource::<Pictures>().bytes() as f64 / 1e6
    )
}

/// A desk on a table of `trays` trays, whose pages a seller has read with every picture on them.
fn desk_with(trays: usize) -> (usize, f64) {
    let folder = tempfile::tempdir().expect("a folder");
    write(&folder.path().join("catalog"), trays);
    let desk = chatelaine::desk::Desk::start(kit::config(folder.path())).expect("the desk starts");
    let table = kit::Table { desk, dir: folder };
    let seller = table.seller();
    let mut pictures = 0;
    for path in ["/trays", "/table", "/new"] {
        let page = seller.get(path).text;
        for address in page.split(" src=\"").skip(1).filter_map(|rest| rest.split('"').next()) {
            if address.starts_with("/pictures/") {
                assert_eq!(seller.get(address).status, 200, "{address}");
                pictures += 1;
            }
        }
    }
    (pictures, resident_mb())
}

fn main() {
    // Each figure is of a process of its own: memory that was had once is not always given back.
    let arguments: Vec<String> = std::env::args().skip(1).filter(|argument| argument != "--bench").collect();
    match arguments.first().map(String::as_str) {
        Some("empty") => {
            let (mut hand, _table) = tablet_with(0);
            hand.reach_the_stage();
            settled(&mut hand);
            hand.seconds(2.0);
            println!("{:.1}", resident_mb());
        }
        Some("full") => {
            let (mut hand, _table) = tablet_with(TRAYS);
            hand.reach_the_stage();
            let (frames, time) = turn_to(&mut hand, TRAYS - 1);
            println!("a tray for the first time: {frames} frames, {:.0} ms", time.as_secs_f64() * 1000.0);
            println!("all pictures: {:.1} s", settled(&mut hand).as_secs_f64());
            let (frames, time) = turn_to(&mut hand, 3);
            println!("a tray that was seen: {frames} frames, {:.0} ms", time.as_secs_f64() * 1000.0);
            for drop in 0..30 {
                hand.ask(Request::Hang { kind: format!("drop-{}", drop * 31), at: None });
                hand.ask(Request::Close);
            }
            settled(&mut hand);
            hand.seconds(2.0);
            println!("textures: {:.1} MB", hand.app.world().resource::<Pictures>().bytes() as f64 / 1e6);
            println!("{:.1}", resident_mb());
        }
        Some(which @ ("desk-empty" | "desk-full")) => {
            let (pictures, taken) = desk_with(if which == "desk-full" { TRAYS } else { 0 });
            println!("pictures on the desk's pages: {pictures}\n{taken:.1}");
        }
        minutes => {
            let run = |which: &str| {
                let own = std::env::current_exe().expect("this program");
                let output = std::process::Command::new(own).arg(which).output().expect("it runs");
                String::from_utf8_lossy(&output.stdout).into_owned()
            };
            let last = |text: &str| text.lines().last().and_then(|line| line.parse::<f64>().ok()).unwrap_or(f64::NAN);
            let (empty, full) = (run("empty"), run("full"));
            print!("{}", full.trim_end().rsplit_once('\n').map_or("", |(figures, _)| figures));
            println!("\nempty table {:.0} MB, {} drops {:.0} MB", last(&empty), TRAYS * ROWS * COLUMNS, last(&full));
            println!("above an empty table: {:.0} MB", last(&full) - last(&empty));
            let (empty, full) = (run("desk-empty"), run("desk-full"));
            println!(
                "the desk: empty table {:.0} MB, full {:.0} MB; {}",
                last(&empty),
                last(&full),
                full.lines().next().unwrap_or_default()
            );
            let minutes: usize = minutes.and_then(|text| text.parse().ok()).unwrap_or(0);
            if minutes > 0 {
                let (mut hand, _table) = tablet_with(TRAYS);
                let mut random = Random(1);
                for minute in 1..=minutes {
                    hand.play(60 * 50, |below| random.below(below));
                    println!("after {minute} minutes of touches: {:.0} MB; {}", resident_mb(), kept(&mut hand));
                }
            }
        }
    }
}
