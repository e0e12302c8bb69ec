//! A compartment of unlike pieces in a file that is also written by hand: read, refused where it is wrong, changed, and seen.

use std::fs;

use chatelaine::{
    catalog::{Act, Fields, read_folder},
    caution::{PartSize, Size},
    craft::{Guess, Length, LookNumber, MOST_LOOKS, Material, Piece, Sort, Wearer},
    portrait::portrait_png,
};
use image::{Rgb, RgbImage, Rgba, RgbaImage};

use super::acts::{Bench, home};

/// A tray with a mix of three looks in A1, as somebody writes it by hand, and something usual in A2.
const TRAY: &str = r#"// the trays from the attic
(letter: "A", name: "Found", rows: [
    [
        // all from one estate
        (
            id: "odd", name: "Odd keys", sort: Key, price: "6.00", stock: 9, picture: "mix.png", // by the door
            assortment: [
                (picture: "red.png", width: "20mm", height: "30mm"), // the rusty one
                (picture: "green.png", width: "12mm", height: "40mm"),
                (picture: "blue.png"),
            ],
        ),
        (id: "plain", price: "3.00", picture: "mix.png"),
        Empty,
    ],
])
"#;

const RED: [u8; 3] = [250, 0, 0];
const GREEN: [u8; 3] = [0, 250, 0];
const BLUE: [u8; 3] = [0, 0, 250];

fn mixed() -> Bench {
    let bench = Bench::empty();
    let base = Act::NewBase {
        form: "Necklace",
        fields: Fields::new().text("id", "chain").text("name", "Chain").text("price", "12.00"),
    };
    let tray = Act::NewTray { letter: 'A', name: "Found".into(), rows: 1, columns: 3 };
    bench.does(&[base, tray]).unwrap();
    let pictures = bench.editor.root().join("pictures");
    fs::create_dir_all(&pictures).unwrap();
    for (name, [r, g, b]) in [("red", RED), ("green", GREEN), ("blue", BLUE)] {
        let shows = |x: u32| if (4..36).contains(&x) { 255 } else { 0 };
        let picture = RgbaImage::from_fn(40, 60, |x, _| Rgba([r, g, b, shows(x)]));
        picture.save(pictures.join(format!("{name}.png"))).unwrap();
    }
    RgbImage::from_pixel(50, 50, Rgb([90, 90, 90])).save(pictures.join("mix.png")).unwrap();
    bench.by_hand("trays/a.ron", TRAY);
    bench
}

#[test]
fn a_mix_is_read_with_its_looks_and_counts_as_the_worst() {
    let bench = mixed();
    let loaded = read_folder(bench.editor.root()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    let kind = loaded.catalog.drop_kind("odd").unwrap();
    let looks: Vec<(&str, f64, f64)> =
        kind.looks().iter().map(|look| (look.picture.as_str(), look.width.mm(), look.height.mm())).collect();
    // Of the one without a size it is the usual one of a key, as its picture is wide.
    assert_eq!(looks, [("red.png", 20.0, 30.0), ("green.png", 12.0, 40.0), ("blue.png", 30.0, 45.0)]);
    assert_eq!((kind.width.mm(), kind.height.mm()), (30.0, 45.0), "as large as the largest");
    for name in ["mix.png", "red.png", "green.png", "blue.png"] {
        assert!(loaded.pictures.contains_key(name), "{name}");
    }
    assert!(kind.is_assortment() && !loaded.catalog.drop_kind("plain").unwrap().is_assortment());
    // It says that it is keys, but unlike pieces may be anything.
    assert!(kind.facts.sharp && kind.facts.materials.contains(&Material::Glass), "{:?}", kind.facts);
    let heaviest = [kind.weight.g(), loaded.catalog.drop_kind("plain").unwrap().weight.g()];
    assert!(heaviest[0] > heaviest[1], "the block round the largest: {heaviest:?}");
    assert!(kind.guessed.contains(&Guess::Weight) && PartSize::of(kind, loaded.catalog.rules.gauge).is_small());
    // Its counts are one figure, as of any kind.
    assert_eq!(kind.stock, 9);
}

/// With the smallest piece told, it is that, or a look that is smaller.
#[test]
fn a_small_look_is_a_small_part_though_the_body_is_large() {
    let bench = mixed();
    let told = TRAY.replace(
        "sort: Key,",
        "sort: Key, body: Box(width: \"70mm\", depth: \"70mm\", height: \"70mm\"), materials: [Brass], large: true,",
    );
    let size = |text: &str| {
        bench.by_hand("trays/a.ron", text);
        let catalog = bench.catalog();
        PartSize::of(catalog.drop_kind("odd").unwrap(), catalog.rules.gauge).body
    };
    assert_eq!(size(&told), Size::Fits, "the look of 20 × 30 mm goes in");
    let large = told
        .replace("width: \"20mm\", height: \"30mm\"", "width: \"90mm\", height: \"120mm\"")
        .replace("width: \"12mm\", height: \"40mm\"", "width: \"90mm\", height: \"120mm\"");
    assert_eq!(size(&large), Size::Measure, "of the blue one nobody told the size");
    let large = large.replace("                (picture: \"blue.png\"),\n", "");
    assert_eq!(size(&large), Size::TooLarge);
}

#[test]
fn a_slip_in_a_look_is_told_with_its_place() {
    let bench = mixed();
    let many = format!("assortment: [{}],", "(picture: \"red.png\"), ".repeat(MOST_LOOKS + 1));
    for (wrong, by, said) in [
        ("red.png", "rde.png", "did you mean \"red.png\"?"),
        ("(picture: \"blue.png\")", "(width: \"3mm\")", "picture"),
        ("(picture: \"blue.png\")", "(picture: \"blue.png\", colour: Blue)", "colour"),
        ("(picture: \"blue.png\")", "\"blue.png\"", "a look of an assortment"),
        ("height: \"40mm\"", "height: \"4m\"", "height"),
        ("assortment: [", "assortments: [", "did you mean assortment?"),
    ] {
        bench.by_hand("trays/a.ron", &TRAY.replace(wrong, by));
        let mistakes = read_folder(bench.editor.root()).unwrap_err().to_string();
        assert!(mistakes.contains("trays/a.ron") && mistakes.contains(said), "{by}: {mistakes}");
    }
    let start = TRAY.find("assortment: [").unwrap();
    let end = TRAY.find("            ],\n").unwrap() + "            ],".len();
    bench.by_hand("trays/a.ron", &format!("{}{many}{}", &TRAY[..start], &TRAY[end..]));
    let mistakes = read_folder(bench.editor.root()).unwrap_err().to_string();
    assert!(mistakes.contains("25 looks"), "{mistakes}");
}

#[test]
fn an_act_leaves_looks_and_comments_as_they_were() {
    let bench = mixed();
    bench.does(&[Act::Tell { home: home("A1"), fields: Fields::new().text("price", "7.00") }]).unwrap();
    assert_eq!(bench.text("trays/a.ron"), TRAY.replace("6.00", "7.00"));
    bench.does(&[Act::Move { from: home("A1"), to: home("A3") }]).unwrap();
    let moved = bench.catalog();
    assert_eq!(moved.drop_at(home("A3")).map(|kind| kind.looks().len()), Some(3));
    assert!(bench.text("trays/a.ron").contains("// the rusty one"));
    bench.editor.undo("t").unwrap();
    bench.editor.undo("t").unwrap();
    assert_eq!(bench.text("trays/a.ron"), TRAY);
    // It is a mix no more, and another one becomes one that hangs plain.
    let acts = [
        Act::Tell { home: home("A1"), fields: Fields::new().without("assortment") },
        Act::Tell { home: home("A2"), fields: Fields::new().written("assortment", "[]") },
    ];
    bench.does(&acts).unwrap();
    let catalog = bench.catalog();
    assert!(!catalog.drop_kind("odd").unwrap().is_assortment());
    let plain = catalog.drop_kind("plain").unwrap();
    assert!(plain.is_assortment() && plain.looks().is_empty());
    assert_eq!((plain.hung_as(3).picture.as_str(), plain.sort), ("mix.png", Sort::Charm));
}

/// How many pixels of a piece's picture have this colour.
fn seen(bench: &Bench, piece: &Piece, [r, g, b]: [u8; 3]) -> usize {
    let loaded = read_folder(bench.editor.root()).unwrap();
    let png = portrait_png(&loaded.catalog, &loaded.pictures, piece, 300, 400).unwrap();
    let picture = image::load_from_memory(&png).unwrap().into_rgba8();
    let near = |a: u8, b: u8| a.abs_diff(b) < 12;
    picture.pixels().filter(|p| p.0[3] > 250 && near(p.0[0], r) && near(p.0[1], g) && near(p.0[2], b)).count()
}

#[test]
fn a_piece_shows_each_of_a_mix_as_it_hangs_there() {
    let bench = mixed();
    let piece = |drops: &[(&str, LookNumber)]| {
        let (base, length) = ("chain".into(), Some(Length::from_mm(600.0)));
        let bare = Piece { base, length, wearer: Wearer::From13, neck: None, drops: vec![], looks: vec![] };
        bare.with_drops(drops.iter().map(|(id, look)| ((*id).to_owned(), *look)))
    };
    let colours = |piece: &Piece| [RED, GREEN, BLUE].map(|colour| seen(&bench, piece, colour) > 20);
    assert_eq!(colours(&piece(&[("odd", 0)])), [true, false, false]);
    assert_eq!(colours(&piece(&[("odd", 1)])), [false, true, false]);
    assert_eq!(colours(&piece(&[("plain", 0), ("odd", 1), ("plain", 1)])), [false, true, false]);
    assert_eq!(colours(&piece(&[("odd", 2), ("odd", 0)])), [true, false, true]);
    assert_eq!(colours(&piece(&[("odd", 3)])), [true, false, false], "the numbers go round");
    // A piece of an earlier version has no numbers: the looks come in their order.
    let mut old = piece(&[("odd", 0), ("odd", 1)]);
    old.looks.clear();
    assert_eq!(colours(&old), [true, true, false]);
    let catalog = bench.catalog();
    let (_, hung) = catalog.hung(&piece(&[("odd", 1)])).unwrap();
    let sizes: Vec<(f64, f64)> = hung.iter().map(|kind| (kind.width.mm(), kind.height.mm())).collect();
    assert_eq!(sizes, [(12.0, 40.0)]);
    // What it costs and what has to be said of it is that of the compartment.
    let sums: Vec<String> =
        [0, 1, 2].iter().map(|look| catalog.quote(&piece(&[("odd", *look)])).unwrap().total.to_string()).collect();
    assert!(sums.iter().all(|sum| *sum == sums[0]));
    let said = |look| catalog.cautions(&piece(&[("odd", look)])).unwrap();
    assert!(said(0) == said(1) && said(1) == said(2) && !said(0).cautions.is_empty());
}
