//! A drag, a release and the settling, frame by frame: the pictures of it are kept for the eye, and compared.

use std::{path::Path, time::Duration};

use bevy::{input::touch::TouchPhase, time::TimeUpdateStrategy};
use bevy_egui::egui::vec2;
use chatelaine::kiosk::shoot;
use image::{RgbImage, RgbaImage, imageops};

use super::{
    golden::{SAME, apart, drawn},
    kiosk_support::Hand,
};

/// Frames of a fiftieth of a second after the finger has come down; it lets go at [`RELEASED`].
const SHOWN: [usize; 18] = [1, 4, 8, 12, 16, 20, 24, 28, 31, 34, 37, 40, 45, 52, 60, 75, 100, 250];
const RELEASED: usize = 28;
/// Width of one picture, and how many are in a row.
const WIDTH: u32 = 200;
const ROW: usize = 6;

/// The stage as it is now; no time goes by meanwhile.
fn still(hand: &mut Hand) -> RgbaImage {
    let stage = hand.stage();
    hand.app.insert_resource(TimeUpdateStrategy::ManualDuration(Duration::ZERO));
    let whole = shoot(&mut hand.app).expect("a picture");
    hand.app.insert_resource(TimeUpdateStrategy::ManualDuration(Duration::from_millis(20)));
    let (x, y) = (stage.left() as u32, stage.top() as u32);
    let part = imageops::crop_imm(&whole, x, y, stage.width() as u32, stage.height() as u32).to_image();
    let height = part.height() * WIDTH / part.width();
    imageops::resize(&part, WIDTH, height, imageops::FilterType::Triangle)
}

#[test]
fn a_drag_a_release_and_the_settling() {
    let Some(mut hand) = drawn((1280, 800)) else { return };
    hand.reach_the_stage();
    for kind in ["key-heart", "locket-round", "bead-lapis", "tassel-teal", "key-tiny", "charm-star", "vial-stars"] {
        let at = hand.compartment(kind);
        hand.tap_at(at);
    }
    hand.seconds(6.0);
    let (finger, from) = (hand.finger(), hand.stage().left_center() + vec2(90.0, 30.0));
    hand.touch(finger, TouchPhase::Started, from);
    let mut frames = Vec::new();
    for frame in 1..=SHOWN[SHOWN.len() - 1] {
        if frame <= RELEASED {
            let along = (frame as f32 / RELEASED as f32).min(0.7) / 0.7;
            hand.touch(finger, TouchPhase::Moved, from + vec2(330.0 * along, -70.0 * along));
        } else if frame == RELEASED + 1 {
            hand.touch(finger, TouchPhase::Ended, from + vec2(330.0, -70.0));
        }
        hand.frames(1);
        if SHOWN.contains(&frame) {
            frames.push(still(&mut hand));
        }
    }
    let (first, last) = (&frames[0], &frames[frames.len() - 1]);
    assert!(apart(first, &frames[8]) > 2.0 * SAME, "it is dragged away");
    assert!(apart(first, last) < SAME, "and comes to rest where it was");
    let height = frames[0].height();
    let mut sheet = RgbaImage::new(WIDTH * ROW as u32, height * frames.len().div_ceil(ROW) as u32);
    for (i, frame) in frames.iter().enumerate() {
        let (column, row) = ((i % ROW) as u32, (i / ROW) as u32);
        imageops::replace(&mut sheet, frame, i64::from(column * WIDTH), i64::from(row * height));
    }
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/pictures/motion.jpg");
    if std::env::var("CHATELAINE_GOLDEN").is_ok_and(|wish| wish == "write") {
        let opaque = RgbImage::from_fn(sheet.width(), sheet.height(), |x, y| {
            let [r, g, b, _] = sheet.get_pixel(x, y).0;
            image::Rgb([r, g, b])
        });
        opaque.save(&file).expect("written");
    }
    let kept = image::open(&file).expect("the kept frames").to_rgba8();
    let far = apart(&kept, &sheet);
    assert!(far < 2.0 * SAME, "the frames differ from the kept ones by {far:.2}");
}
