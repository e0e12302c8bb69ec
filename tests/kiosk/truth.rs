//! The stage beside the truth: the same pieces path-traced from the art's own recipes (`assets/art/piece.py`), in the shape in
//! which they hang here. How far the stage is from it is told by FLIP, a published measure of what an eye sees when it changes
//! between two pictures (Andersson et al., "FLIP: A Difference Evaluator for Alternating Images", HPG 2020), in its authors'
//! own implementation (`pip install flip-evaluator`); where that is not at hand it says so, and fails only if
//! `CHATELAINE_FLIP` says that it has to be. Measured at half of the stage's size.
//!
//! `CHATELAINE_TRUTH=folder` puts there what `piece.py` needs and the stage's own pictures.

use std::{fmt::Write as _, fs, path::Path, process::Command};

use bevy_egui::egui::{Pos2, Rect, vec2};
use chatelaine::{
    catalog::{Loaded, read_folder},
    craft::{BaseKind, Finish, Necklace},
    guest::Request,
    hang::seen_ring,
    kiosk::{
        Tablet, shoot,
        stage::{Hanger, Moving, ranks},
    },
    portrait::portrait_png,
};
use image::{RgbImage, RgbaImage, imageops};

use super::{
    golden::{apart, drawn},
    kiosk_support::Hand,
};

/// Name, base and drops.
const PIECES: [(&str, &str, &[&str]); 3] = [
    ("brass", "chain-brass", &["key-heart", "bead-lapis", "charm-star"]),
    ("silver", "chain-silver", &["charm-moon", "locket-round", "crystal-drop"]),
    ("copper", "chain-copper", &["charm-leaf", "vial-sand", "bead-garnet"]),
];
/// The stage's mean FLIP to the truth when rings lay flat on the chain and shadows had one hard edge, piece by piece, where the
/// two lie best on each other.
const BEFORE: [f64; 3] = [0.2024, 0.2076, 0.2193];
/// How much of that is left at most. Half is wished for; most of what is left are bodies, which mirror and shade each other in
/// the truth, and the chain, whose links it shows brighter and with darker edges.
const LEFT: f64 = 0.78;
/// How far the ticket's picture may be from the stage: the mean CIEDE2000 of places of four pixels a side. About 2 is what an eye
/// just sees between two even fields side by side; common practice, no source.
const SAME_PIECE: f64 = 2.5;
/// The part of the window that is compared, in pixels: so wide, so high, and how much of it is above the middle of the rings.
const WIDE: f32 = 440.0;
const HIGH: f32 = 400.0;
const ABOVE: f32 = 114.4;

/// The part of the window round the drops.
fn part(hand: &Hand) -> Rect {
    let hanger = hand.app.world().resource::<Hanger>();
    let drops = &hand.session().history.now().drops;
    let rings: Vec<Pos2> = drops.iter().filter_map(|hung| hanger.ring(hung.token)).collect();
    let middle = rings.iter().fold(vec2(0.0, 0.0), |sum, ring| sum + ring.to_vec2()) / rings.len() as f32;
    // Whole pixels, so that the truth is traced for just what is compared.
    Rect::from_min_size((middle - vec2(WIDE / 2.0, ABOVE)).to_pos2().floor(), vec2(WIDE, HIGH))
}

/// Where everything is, as `piece.py` reads it.
fn places(hand: &Hand, part: Rect) -> String {
    let world = hand.app.world();
    let (tablet, hanger, moving) = (world.resource::<Tablet>(), world.resource::<Hanger>(), world.resource::<Moving>());
    let catalog = tablet.known().catalog().expect("a catalogue");
    let piece = tablet.derived().piece.clone().expect("a piece");
    let base = catalog.base(&piece.base).expect("its base");
    let BaseKind::Necklace(necklace) = &base.kind else { panic!("a necklace") };
    let motion = moving.now().expect("it hangs");
    let at = |x: f64, y: f64| hanger.at(x as f32, y as f32) - part.min;
    let mut ends = String::new();
    for (a, b) in motion.links() {
        let (a, b) = (at(a.x_mm, a.y_mm), at(b.x_mm, b.y_mm));
        write!(ends, "{}[{}, {}, {}, {}]", if ends.is_empty() { "" } else { ", " }, a.x, a.y, b.x, b.y).unwrap();
    }
    let kinds: Vec<_> = motion.rings().filter_map(|(token, _)| Some((token, moving.kind(token)?))).collect();
    let ranks = ranks(kinds.iter().copied());
    let bounds = tablet.derived().places.as_ref().expect("its places").bounds;
    let middle = (bounds.left_mm + bounds.right_mm) / 2.0;
    let name = |finish: Finish| format!("{finish:?}");
    let drops: Vec<String> = motion
        .rings()
        .zip(&kinds)
        .map(|((token, ring), (_, kind))| {
            let seen = seen_ring(kind, ring.x_mm - middle, ring.lean_rad);
            let place = at(ring.x_mm, ring.y_mm);
            format!(
                r#"{{"picture": "{}", "width_mm": {}, "height_mm": {}, "hangs_mm": {}, "ring_middle_mm": {}, "wire_mm": {},
  "half_width_mm": {}, "half_height_mm": {}, "lean_rad": {}, "x": {}, "y": {}, "rank": {}, "finish": "{}"}}"#,
                kind.id,
                kind.width.mm(),
                kind.height.mm(),
                kind.ring.hangs_mm(),
                kind.ring.outside.mm() / 2.0 - kind.ring.wire.mm(),
                seen.wire_mm,
                seen.half_width_mm,
                seen.half_height_mm,
                ring.lean_rad,
                place.x,
                place.y,
                ranks[&token],
                name(kind.finish.unwrap_or(base.finish)),
            )
        })
        .collect();
    format!(
        r#"{{"px_per_mm": {}, "size": [{WIDE}, {HIGH}], "ground": [{}, {}],
 "links": {{"long_mm": {}, "wide_mm": {}, "wire_share": {}, "finish": "{}", "ends": [{ends}]}},
 "drops": [{}]}}"#,
        hanger.px_per_mm,
        part.min.x,
        part.min.y,
        necklace.link_length.mm(),
        necklace.link_width.mm(),
        Necklace::WIRE_SHARE,
        name(base.finish),
        drops.join(",\n "),
    )
}

/// The mean FLIP between two pictures, from 0 (the same) to 1; `None` where its program is not at hand.
fn flip(truth: &Path, seen: &Path) -> Option<f64> {
    let program = "import sys, flip_evaluator as f; print(f.evaluate(sys.argv[1], sys.argv[2], 'LDR')[1])";
    let said = Command::new("python3").arg("-c").arg(program).args([truth, seen]).output().ok()?;
    if !said.status.success() {
        let wanted = std::env::var_os("CHATELAINE_FLIP").is_some();
        assert!(!wanted, "{}", String::from_utf8_lossy(&said.stderr));
        eprintln!("not compared: {}", String::from_utf8_lossy(&said.stderr).lines().last().unwrap_or_default());
        return None;
    }
    String::from_utf8_lossy(&said.stdout).trim().parse().ok()
}

fn hang(hand: &mut Hand, base: &str, drops: &[&str]) {
    hand.reach_the_stage();
    hand.ask(Request::ChooseBase(base.to_owned()));
    for kind in drops {
        hand.ask(Request::Hang { kind: (*kind).to_owned(), at: None });
    }
    hand.seconds(8.0);
    hand.see_pictures();
}

#[test]
fn the_stage_comes_near_to_the_truth() {
    let folder = tempfile::tempdir().unwrap();
    let out = std::env::var_os("CHATELAINE_TRUTH").map_or(folder.path().to_owned(), Into::into);
    fs::create_dir_all(&out).unwrap();
    let mut wrong = Vec::new();
    for ((name, base, drops), before) in PIECES.into_iter().zip(BEFORE) {
        let Some(mut hand) = drawn((1280, 800)) else { return };
        hang(&mut hand, base, drops);
        let part = part(&hand);
        let places = places(&hand, part);
        fs::write(out.join(format!("{name}.json")), places).unwrap();
        let whole = shoot(&mut hand.app).expect("a picture");
        let seen =
            imageops::crop_imm(&whole, part.left() as u32, part.top() as u32, WIDE as u32, HIGH as u32).to_image();
        // The truth is kept at half of the size.
        let (width, height) = (WIDE as u32 / 2, HIGH as u32 / 2);
        let seen = imageops::resize(&seen, width, height, imageops::FilterType::Triangle);
        let seen: RgbImage = image::DynamicImage::from(seen).to_rgb8();
        let file = out.join(format!("{name}-stage.png"));
        seen.save(&file).unwrap();
        let truth = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/golden/truth-{name}.png"));
        if !truth.exists() {
            wrong.push(format!("{} is made by assets/art/piece.py", truth.display()));
        } else if let Some(far) = flip(&truth, &file) {
            println!("{name}: mean FLIP {far:.4}, before {before:.4}");
            if far > before * LEFT {
                wrong.push(format!("{name}: {far:.4} of {before:.4}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// The ticket's picture of the same piece in the same size, on the same linen, as far as it is in `part`.
fn on_the_ticket(hand: &Hand, loaded: &Loaded, part: Rect) -> RgbaImage {
    /// What the ticket's picture leaves free on each side.
    const MARGIN: f64 = 0.05;
    let world = hand.app.world();
    let (derived, hanger) = (world.resource::<Tablet>().derived(), world.resource::<Hanger>());
    let (piece, places) = (derived.piece.as_ref().expect("a piece"), derived.places.as_ref().expect("its places"));
    let bounds = &places.bounds;
    let px = f64::from(hanger.px_per_mm);
    let side = |from: f64, to: f64| ((to - from) * px / (1.0 - 2.0 * MARGIN)).round();
    let (width, height) = (side(bounds.left_mm, bounds.right_mm), side(bounds.top_mm, bounds.bottom_mm));
    let png = portrait_png(&loaded.catalog, &loaded.pictures, piece, width as u32, height as u32).expect("a picture");
    let portrait = image::load_from_memory(&png).expect("a PNG").to_rgba8();
    let linen =
        image::open(Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/kiosk/linen.png")).expect("linen").to_rgba8();
    let origin = hanger.at(0.0, 0.0);
    let begins = |at: f32, origin: f32, side: f64, low: f64, high: f64| {
        (f64::from(at - origin) + (side - (high - low) * px) / 2.0 - low * px).round() as i64
    };
    let from_x = begins(part.left(), origin.x, width, bounds.left_mm, bounds.right_mm);
    let from_y = begins(part.top(), origin.y, height, bounds.top_mm, bounds.bottom_mm);
    let (left, top) = (part.left() as u32, part.top() as u32);
    RgbaImage::from_fn(WIDE as u32, HIGH as u32, |x, y| {
        let mut ground = *linen.get_pixel((left + x) % linen.width(), (top + y) % linen.height());
        let (px, py) = (from_x + i64::from(x), from_y + i64::from(y));
        if let (Ok(px), Ok(py)) = (u32::try_from(px), u32::try_from(py))
            && let Some(over) = portrait.get_pixel_checked(px, py)
        {
            image::Pixel::blend(&mut ground, over);
        }
        ground
    })
}

#[test]
fn the_tickets_picture_is_the_piece_on_the_stage() {
    let loaded = read_folder(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/table"))).expect("a good catalogue");
    let mut wrong = Vec::new();
    for (name, base, drops) in PIECES {
        let Some(mut hand) = drawn((1280, 800)) else { return };
        hang(&mut hand, base, drops);
        let part = part(&hand);
        let ticket = on_the_ticket(&hand, &loaded, part);
        let whole = shoot(&mut hand.app).expect("a picture");
        let stage =
            imageops::crop_imm(&whole, part.left() as u32, part.top() as u32, WIDE as u32, HIGH as u32).to_image();
        if let Some(folder) = std::env::var_os("CHATELAINE_TRUTH") {
            ticket.save(Path::new(&folder).join(format!("{name}-ticket.png"))).unwrap();
            stage.save(Path::new(&folder).join(format!("{name}-stage-whole.png"))).unwrap();
        }
        let coarse =
            |of: &RgbaImage| imageops::resize(of, WIDE as u32 / 4, HIGH as u32 / 4, imageops::FilterType::Triangle);
        let far = apart(&coarse(&stage), &coarse(&ticket));
        println!("{name}: mean CIEDE2000 of stage and ticket {far:.2}");
        if far > SAME_PIECE {
            wrong.push(format!("{name}: {far:.2}"));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
