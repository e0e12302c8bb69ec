//! Pictures of the screens, drawn in software. Small ones kept under tests/golden are compared by the mean CIEDE2000;
//! `CHATELAINE_GOLDEN=write` makes them anew. `CHATELAINE_PICTURES=folder` puts all screens there at full size, with
//! `CHATELAINE_PICTURES_OF=1280x800-en` only those.

use std::{path::Path, time::Duration};

use bevy::time::TimeUpdateStrategy;
use chatelaine::kiosk::{
    act::Act,
    i18n::{Lang, Texts},
    looks::Looks,
    offscreen, shoot,
    tone::Contrast,
};
use image::{RgbaImage, imageops::FilterType};

use super::{
    colour::{ciede2000, lab, linear_rgb},
    every_screen,
    kiosk_support::{Hand, options},
};

/// Width of a kept picture.
const WIDTH: u32 = 320;
/// How far two pictures of the same screen may be apart: another driver rounds differently. Common practice, no source.
const SAME: f64 = 1.0;

fn small(picture: &RgbaImage) -> RgbaImage {
    let height = picture.height() * WIDTH / picture.width();
    image::imageops::resize(picture, WIDTH, height, FilterType::Triangle)
}

/// Mean CIEDE2000 of two pictures; infinite if their sizes differ.
fn apart(a: &RgbaImage, b: &RgbaImage) -> f64 {
    if a.dimensions() != b.dimensions() {
        return f64::INFINITY;
    }
    let of = |p: &image::Rgba<u8>| lab(linear_rgb([p.0[0], p.0[1], p.0[2]]));
    a.pixels().zip(b.pixels()).map(|(p, q)| if p == q { 0.0 } else { ciede2000(of(p), of(q)) }).sum::<f64>()
        / f64::from(a.width() * a.height())
}

/// Compares a picture with the kept one of this name, or keeps it if that is asked for.
fn against_golden(name: &str, picture: &RgbaImage) {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden").join(format!("{name}.png"));
    if std::env::var("CHATELAINE_GOLDEN").is_ok_and(|wish| wish == "write") {
        std::fs::create_dir_all(file.parent().unwrap()).unwrap();
        small(picture).save(&file).unwrap();
    } else if file.exists() {
        let golden = image::open(&file).unwrap().to_rgba8();
        let far = apart(&golden, &small(picture));
        assert!(far < SAME * 2.0, "{name} differs from its kept picture by {far:.2}");
    }
}

fn drawn(size: (u32, u32)) -> Option<Hand> {
    let (options, around) = options();
    match offscreen(options, size) {
        Ok(app) => Some(Hand::on(app, around)),
        Err(reason) => {
            assert!(std::env::var_os("CI").is_none(), "{reason}");
            eprintln!("pictures were not drawn: {reason}");
            None
        }
    }
}

fn show(hand: &mut Hand) -> RgbaImage {
    hand.frames(12);
    shoot(&mut hand.app).expect("a picture")
}

#[test]
fn the_screens_look_as_they_did() {
    if let Some(folder) = std::env::var_os("CHATELAINE_PICTURES") {
        pictures_into(Path::new(&folder));
    }
    let Some(mut hand) = drawn((1280, 800)) else { return };
    // The sample has swayed out after half a minute; the sways of the test are taken in large steps.
    let steps = |hand: &mut Hand, step: Duration, count: usize| {
        hand.app.insert_resource(TimeUpdateStrategy::ManualDuration(step));
        hand.frames(count);
    };
    steps(&mut hand, Duration::from_secs(1), 28);
    steps(&mut hand, Duration::from_millis(50), 60);
    let welcome = show(&mut hand);
    against_golden("welcome", &welcome);
    let again = show(&mut hand);
    assert!(apart(&small(&welcome), &small(&again)) < SAME, "a still screen stays as it is");
    hand.reach_the_stage();
    steps(&mut hand, Duration::from_millis(50), 100);
    let stage = show(&mut hand);
    against_golden("stage", &stage);
    assert!(apart(&small(&welcome), &small(&stage)) > 3.0 * SAME, "another screen is told from it");
    hand.app.world_mut().write_message(Act::Look(Looks { contrast: Contrast::High, ..Looks::default() }));
    let high = show(&mut hand);
    against_golden("stage-high-contrast", &high);
    assert!(apart(&small(&stage), &small(&high)) > SAME, "high contrast is another picture");
}

/// All screens at full size, for the eye.
fn pictures_into(folder: &Path) {
    std::fs::create_dir_all(folder).unwrap();
    let wanted = std::env::var("CHATELAINE_PICTURES_OF").unwrap_or_default();
    for size in [(1280, 800), (800, 1280), (800, 480)] {
        for (lang, contrast) in [(Lang::En, Contrast::Daylight), (Lang::De, Contrast::High)] {
            let set = format!("{}x{}-{}", size.0, size.1, lang.code());
            let Some(mut hand) = set.contains(&wanted).then(|| drawn(size)).flatten() else { continue };
            let mut number = 0;
            every_screen(&mut hand, &mut |hand, what| {
                *hand.app.world_mut().resource_mut::<Texts>() = Texts::new(lang);
                *hand.app.world_mut().resource_mut::<Looks>() = Looks { contrast, ..Looks::default() };
                number += 1;
                let name: String = what.chars().filter(|c| c.is_alphanumeric()).take(20).collect();
                show(hand).save(folder.join(format!("{set}-{number:02}-{name}.png"))).unwrap();
            });
        }
    }
}
