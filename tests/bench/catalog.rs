//! A catalogue of 5,000 drops read and checked, the test cylinder included, and single bodies in the cylinder.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{fmt::Write, fs, hint::black_box, path::Path};

use chatelaine::{
    catalog::read_folder,
    caution::{Gauge, Sizes, Solid, gauge},
    craft::{Body, DropKind, Wearer},
};
use criterion::{Criterion, criterion_group, criterion_main};

const TRAYS: usize = 10;
const DROPS_A_TRAY: usize = 500;

/// A body as a tray's file writes it; `shapes` different ones of six forms, most of them near the size of the cylinder.
fn body(n: usize, shapes: usize) -> String {
    let n = n % shapes;
    let size = |low: f64, high: f64, step: usize| low + (high - low) * ((n * step) % 997) as f64 / 997.0;
    let (a, b, c) = (size(4.0, 30.0, 17), size(1.0, 12.0, 29), size(20.0, 64.0, 37));
    match n % 6 {
        0 => format!("Ball(diameter: \"{c:.3}mm\")"),
        1 => format!("Disc(diameter: \"{c:.3}mm\", thickness: \"{b:.3}mm\")"),
        2 => format!("Box(width: \"{a:.3}mm\", depth: \"{b:.3}mm\", height: \"{c:.3}mm\")"),
        3 => format!("Cone(diameter: \"{a:.3}mm\", height: \"{c:.3}mm\")"),
        4 => format!("Ellipsoid(width: \"{a:.3}mm\", depth: \"{b:.3}mm\", height: \"{c:.3}mm\")"),
        _ => "Outline(thickness: \"2mm\")".to_owned(),
    }
}

/// Writes the catalogue: ten trays, one picture for every sixth drop's outline.
fn write(folder: &Path, demo: &Path, shapes: usize) {
    for name in ["trays", "pictures"] {
        fs::create_dir_all(folder.join(name)).expect("a folder");
    }
    for name in ["table.ron", "bases.ron", "pictures/charm-leaf.png"] {
        fs::copy(demo.join(name), folder.join(name)).expect("a copy");
    }
    for tray in 0..TRAYS {
        let letter = char::from(b'A' + tray as u8);
        let mut text = format!("(letter: \"{letter}\", name: \"Tray {letter}\", rows: [");
        for i in 0..DROPS_A_TRAY {
            let n = tray * DROPS_A_TRAY + i;
            let (open, close) = (if i % 20 == 0 { "[" } else { "" }, if i % 20 == 19 { "]," } else { "" });
            let body = body(n, shapes);
            // Sizes that make every outline another one.
            let height = 20.0 + (n % shapes) as f64 * 0.008;
            write!(
                text,
                "{open}(id: \"drop-{n}\", name: \"Drop {n}\", sort: Charm, finish: Gold, colours: [Golden], materials: [Brass], \
                 body: {body}, width: \"20mm\", height: \"{height:.3}mm\", ring: (outside: \"10mm\", wire: \"18awg\"), \
                 weight: \"3g\", price: \"4.50\", stock: 5, picture: \"charm-leaf.png\"),{close}"
            )
            .expect("written");
        }
        text.push_str("])");
        fs::write(folder.join(format!("trays/{letter}.ron")), text).expect("written");
    }
}

fn catalogues(c: &mut Criterion) {
    let demo = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/catalog"));
    let mut group = c.benchmark_group("catalogue of 5000 drops");
    group.sample_size(10);
    for (name, shapes) in [("every shape another", TRAYS * DROPS_A_TRAY), ("300 shapes", 300)] {
        let dir = tempfile::tempdir().expect("a folder");
        write(dir.path(), demo, shapes);
        group.bench_function(format!("read and checked, {name}"), |b| {
            b.iter(|| read_folder(black_box(dir.path())).map(|loaded| loaded.catalog.drops.len()));
        });
        let catalog = read_folder(dir.path()).expect("a whole catalogue").catalog;
        assert_eq!(catalog.drops.len(), TRAYS * DROPS_A_TRAY);
        group.bench_function(format!("the test cylinder alone, {name}"), |b| {
            b.iter(|| Sizes::of_all(black_box(&catalog.drops), Gauge::Inch));
        });
        // What the tablet asks of every drop at each change while it shows only what suits an age.
        group.bench_function(format!("which suit a child under 3, {name}"), |b| {
            b.iter(|| catalog.drops.iter().filter(|kind| catalog.suits(black_box(kind), Wearer::Under3)).count());
        });
        group.bench_function(format!("the same with all words, {name}"), |b| {
            let suits = |kind: &&DropKind| catalog.drop_cautions(black_box(kind), Wearer::Under3).suitable;
            b.iter(|| catalog.drops.iter().filter(suits).count());
        });
    }
}

fn bodies(c: &mut Criterion) {
    let mut group = c.benchmark_group("one body in the test cylinder");
    let form = |name, sizes: &[f64]| {
        let sizes: Vec<_> = sizes.iter().map(|mm| chatelaine::craft::Length::from_mm(*mm)).collect();
        Body::from_form(name, &sizes).expect("a body")
    };
    let spiral = |i: u32| {
        let t = f64::from(i);
        [9.0 * t.cos(), 9.0 * t.sin(), 0.9 * t]
    };
    for (name, body) in [
        ("ball", form("Ball", &[31.0])),
        ("rod", form("Rod", &[6.0, 55.0])),
        ("disc", form("Disc", &[31.0, 3.0])),
        ("cylinder", form("Cylinder", &[12.0, 46.0])),
        ("cone", form("Cone", &[25.0, 40.0])),
        ("box", form("Box", &[20.0, 5.0, 51.0])),
        ("ellipsoid", form("Ellipsoid", &[28.0, 10.0, 50.0])),
        ("40 points", Body::Points { points_mm: (0..40).map(spiral).collect() }),
    ] {
        let solid = Solid::of_body(&body);
        group.bench_function(name, |b| b.iter(|| gauge(black_box(&solid), Gauge::Inch)));
    }
}

criterion_group!(benches, bodies, catalogues);
criterion_main!(benches);
