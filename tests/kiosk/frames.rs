//! What moves, frame by frame: a drag with its settling, a drop pulled off, one that takes hold, a surprise. The pictures of
//! it are kept for the eye, and compared.

use std::{
    path::{Path, PathBuf},
    time::Duration,
};

use bevy::{input::touch::TouchPhase, time::TimeUpdateStrategy};
use bevy_egui::egui::vec2;
use chatelaine::{guest::Request, kiosk::shoot};
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
    keep(&frames, ROW, "motion");
}

/// Puts the frames side by side, so many in a row, and keeps them in their file where that is wished.
fn sheet(frames: &[RgbaImage], row: usize, name: &str) -> (RgbaImage, PathBuf) {
    let height = frames[0].height();
    let mut sheet = RgbaImage::new(WIDTH * row as u32, height * frames.len().div_ceil(row) as u32);
    for (i, frame) in frames.iter().enumerate() {
        let (column, row) = ((i % row) as u32, (i / row) as u32);
        imageops::replace(&mut sheet, frame, i64::from(column * WIDTH), i64::from(row * height));
    }
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("assets/pictures/{name}.jpg"));
    if std::env::var("CHATELAINE_GOLDEN").is_ok_and(|wish| wish == "write") {
        let opaque = RgbImage::from_fn(sheet.width(), sheet.height(), |x, y| {
            let [r, g, b, _] = sheet.get_pixel(x, y).0;
            image::Rgb([r, g, b])
        });
        opaque.save(&file).expect("written");
    }
    (sheet, file)
}

/// Compares the frames with those that are kept.
fn keep(frames: &[RgbaImage], row: usize, name: &str) {
    let (sheet, file) = sheet(frames, row, name);
    let kept = image::open(&file).expect("the kept frames").to_rgba8();
    let far = apart(&kept, &sheet);
    assert!(far < 2.0 * SAME, "the frames of {name} differ from the kept ones by {far:.2}");
}

/// A stage with five drops that hang still; `None` where nothing can be drawn.
fn five_drops() -> Option<Hand> {
    let mut hand = drawn((1280, 800))?;
    hand.reach_the_stage();
    for kind in ["key-heart", "charm-moon", "bead-lapis", "charm-star", "vial-stars"] {
        hand.ask(Request::Hang { kind: kind.to_owned(), at: None });
    }
    hand.see_pictures();
    hand.seconds(6.0);
    Some(hand)
}

/// The frames at `shown`, while `act` does something before each frame.
fn frames_of(hand: &mut Hand, shown: &[usize], mut act: impl FnMut(&mut Hand, usize)) -> Vec<RgbaImage> {
    let mut frames = Vec::new();
    for frame in 1..=shown[shown.len() - 1] {
        act(hand, frame);
        hand.frames(1);
        if shown.contains(&frame) {
            frames.push(still(hand));
        }
    }
    frames
}

#[test]
fn a_drop_is_pulled_off_and_flies_back_where_it_is_let_go_too_soon() {
    let Some(mut hand) = five_drops() else { return };
    let before = still(&mut hand);
    let (finger, from) = (hand.finger(), hand.hung_at(2));
    hand.touch(finger, TouchPhase::Started, from);
    let shown = [1, 6, 10, 14, 18, 22, 24, 27, 30, 34, 40, 200];
    let (down, canceled) = (20, 23);
    let frames = frames_of(&mut hand, &shown, |hand, frame| {
        if frame <= down {
            hand.touch(finger, TouchPhase::Moved, from + vec2(60.0, 190.0) * (frame as f32 / down as f32));
        } else if frame == canceled {
            hand.touch(finger, TouchPhase::Canceled, from + vec2(60.0, 190.0));
        }
    });
    assert!(apart(&before, &frames[4]) > SAME, "it is in the hand");
    assert!(apart(&before, &frames[frames.len() - 1]) < SAME, "it hangs where it hung");
    keep(&frames, 6, "pulled-off");
}

#[test]
fn a_drop_that_is_let_go_over_the_chain_takes_hold_and_dips_it() {
    let Some(mut hand) = five_drops() else { return };
    let (finger, from) = (hand.finger(), hand.compartment("locket-round"));
    let to = hand.nearest_on_the_base(hand.stage().center() + vec2(-120.0, 0.0)) + vec2(0.0, 40.0);
    let before = still(&mut hand);
    hand.touch(finger, TouchPhase::Started, from);
    let shown = [4, 10, 16, 20, 22, 24, 26, 29, 33, 40, 60, 200];
    let (there, let_go) = (18, 20);
    let frames = frames_of(&mut hand, &shown, |hand, frame| {
        if frame <= there {
            hand.touch(finger, TouchPhase::Moved, from + (to - from) * (frame as f32 / there as f32));
        } else if frame == let_go {
            hand.touch(finger, TouchPhase::Ended, to);
        }
    });
    assert_eq!(hand.hung().len(), 6);
    assert!(apart(&before, &frames[frames.len() - 1]) > SAME, "it hangs there");
    keep(&frames, 6, "taking-hold");
}

#[test]
fn a_surprise_is_dealt_drop_by_drop() {
    let Some(mut hand) = drawn((1280, 800)) else { return };
    hand.reach_the_stage();
    hand.see_pictures();
    hand.seconds(2.0);
    let bare = still(&mut hand);
    hand.app.world_mut().write_message(Request::Surprise);
    let shown = [4, 8, 12, 16, 20, 24, 28, 34, 42, 52, 70, 250];
    let frames = frames_of(&mut hand, &shown, |_, _| {});
    assert!(hand.hung().len() > 2, "{:?}", hand.hung());
    let different = frames.windows(2).filter(|pair| apart(&pair[0], &pair[1]) > SAME / 4.0).count();
    assert!(different > 4, "one by one: {different}");
    assert!(apart(&bare, &frames[frames.len() - 1]) > SAME, "it is full");
    // When a large picture comes is not told by frames, so the kept ones are for the eye alone.
    sheet(&frames, 6, "surprise");
}
