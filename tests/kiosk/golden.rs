//! Pictures of the screens, drawn in software. Small ones kept under tests/golden are compared by the mean CIEDE2000;
//! `CHATELAINE_GOLDEN=write` makes them anew, `CHATELAINE_PICTURES=folder` puts the same there at full size.

use std::{collections::BTreeSet, path::Path};

use chatelaine::{
    caution::{Region, Rules, Sizes},
    craft::Wearer,
    guest::{Contrast, Looks, Overlay, Request, Screen},
    kiosk::{Tablet, draw_all, i18n::Lang, offscreen, shoot, stage::Moving},
    link::{News, WaitingNews},
};
use image::{RgbaImage, imageops::FilterType};

use super::{
    colour::{ciede2000, lab, linear_rgb},
    every_screen, hang,
    kiosk_support::{Hand, options},
    news, tell,
};

/// Width of a kept picture.
const WIDTH: u32 = 160;
/// Side of the parts that are compared one by one, in pixels of a kept picture.
const PART: u32 = 16;
/// How far such a part may be apart. Common practice, no source.
const SAME_PART: f64 = 5.0;
/// How far two pictures of the same screen may be apart: another driver rounds differently. Common practice, no source.
pub const SAME: f64 = 1.0;

fn small(picture: &RgbaImage) -> RgbaImage {
    let height = picture.height() * WIDTH / picture.width();
    image::imageops::resize(picture, WIDTH, height, FilterType::Triangle)
}

/// Mean CIEDE2000 of two pictures; infinite if their sizes differ.
pub fn apart(a: &RgbaImage, b: &RgbaImage) -> f64 {
    if a.dimensions() != b.dimensions() {
        return f64::INFINITY;
    }
    let of = |p: &image::Rgba<u8>| lab(linear_rgb([p.0[0], p.0[1], p.0[2]]));
    a.pixels().zip(b.pixels()).map(|(p, q)| if p == q { 0.0 } else { ciede2000(of(p), of(q)) }).sum::<f64>()
        / f64::from(a.width() * a.height())
}

/// How far the part of two pictures of one size is apart that differs most: a lost button is little in the whole.
fn apart_at_worst(a: &RgbaImage, b: &RgbaImage) -> f64 {
    let corners =
        (0..a.height()).step_by(PART as usize).flat_map(|y| (0..a.width()).step_by(PART as usize).map(move |x| (x, y)));
    let part = |of: &RgbaImage, (x, y): (u32, u32)| image::imageops::crop_imm(of, x, y, PART, PART).to_image();
    corners.map(|corner| apart(&part(a, corner), &part(b, corner))).fold(0.0, f64::max)
}

/// Compares a small picture with the kept one of this name, or keeps it if that is asked for. Gives how far they are
/// apart, as a whole and in the part that differs most.
fn against_golden(name: &str, picture: &RgbaImage) -> (f64, f64) {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden").join(format!("{name}.png"));
    if std::env::var("CHATELAINE_GOLDEN").is_ok_and(|wish| wish == "write") {
        std::fs::create_dir_all(file.parent().unwrap()).unwrap();
        picture.save(&file).unwrap();
    }
    let golden = image::open(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display())).to_rgba8();
    (
        apart(&golden, picture),
        if golden.dimensions() == picture.dimensions() { apart_at_worst(&golden, picture) } else { f64::INFINITY },
    )
}

pub fn drawn(size: (u32, u32)) -> Option<Hand> {
    let (options, around) = options();
    match offscreen(options, size) {
        Ok(app) => {
            let mut hand = Hand::on(app, around);
            // As it usually is: the desk answers. The link tells only what is new, so this holds.
            hand.wait_for("the desk to be missed", |world| world.resource::<Tablet>().known().in_reach == Some(false));
            hand.around.news.send(News::DeskInReach(true)).unwrap();
            hand.wait_for("the desk", |world| world.resource::<Tablet>().known().in_reach == Some(true));
            draw_all(&mut hand.app, false);
            Some(hand)
        }
        Err(reason) => {
            assert!(std::env::var_os("CI").is_none(), "{reason}");
            eprintln!("pictures were not drawn: {reason}");
            None
        }
    }
}

/// Takes a picture of the screen, shows it where that is asked for, and compares it with the kept one. Gives it, small.
fn compare(hand: &mut Hand, name: &str, wrong: &mut Vec<String>) -> RgbaImage {
    hand.frames(12);
    hand.see_pictures();
    let picture = shoot(&mut hand.app).expect("a picture");
    if let Some(folder) = std::env::var_os("CHATELAINE_PICTURES") {
        std::fs::create_dir_all(&folder).unwrap();
        picture.save(Path::new(&folder).join(format!("{name}.png"))).unwrap();
    }
    let picture = small(&picture);
    let (far, worst) = against_golden(name, &picture);
    if far > SAME || worst > SAME_PART {
        wrong.push(format!("{name} by {far:.2}, at worst {worst:.2}"));
    }
    picture
}

/// A tablet in this language on which nothing sways or flies, so that its pictures do not hang on the moment.
fn set(hand: &mut Hand, lang: Lang, contrast: Contrast) {
    // To speak another language closes the sheet that is to be seen.
    if hand.app.world().resource::<Tablet>().lang() != lang {
        hand.ask(Request::Speak(lang));
    }
    hand.ask(Request::Look(Looks { contrast, calm: true, ..Looks::default() }));
    // The sample has swayed for as long as the tablet took to start.
    if hand.screen() == Screen::Welcome {
        hand.wait_for("the sample to hang still", |world| {
            world.resource::<Moving>().now().is_none_or(|motion| motion.asleep())
        });
    }
}

/// Sizes, languages and forms of the colours: every two values of different kinds meet once.
const FORMS: [((u32, u32), Lang, Contrast); 4] = [
    ((1280, 800), Lang::En, Contrast::Daylight),
    ((1280, 800), Lang::De, Contrast::High),
    ((800, 1280), Lang::En, Contrast::High),
    ((800, 1280), Lang::De, Contrast::Daylight),
];

/// What [`every_screen`] shows that is not worth a picture: nearly the same as another one.
const LEFT_OUT: [&str; 3] = ["put-back", "bare stage", "threading"];

#[test]
fn the_screens_look_as_they_did() {
    let mut before: Option<RgbaImage> = None;
    let mut wrong = Vec::new();
    for (size, lang, contrast) in FORMS {
        let Some(mut hand) = drawn(size) else { return };
        set(&mut hand, lang, contrast);
        let mut kept = BTreeSet::new();
        every_screen(&mut hand, &mut |hand, what| {
            let mut name = String::new();
            for c in what.to_lowercase().chars().take_while(|c| *c != '{') {
                name.extend(if c.is_ascii_alphanumeric() {
                    Some(c)
                } else if name.ends_with('-') {
                    None
                } else {
                    Some('-')
                });
            }
            let name = name.trim_end_matches('-');
            // Welcome comes twice.
            if LEFT_OUT.contains(&what) || !kept.insert(name.to_owned()) {
                return;
            }
            set(hand, lang, contrast);
            let form = if contrast == Contrast::High { "high" } else { "daylight" };
            let name = format!("{name}-{}-{}-{form}", size.0, lang.code());
            let picture = compare(hand, &name, &mut wrong);
            // One screen is told from the next, or the comparison would be worth nothing.
            if let Some(before) = before.replace(picture.clone()) {
                let other = apart(&before, &picture) > SAME || apart_at_worst(&before, &picture) > SAME_PART;
                assert!(other || what == "Welcome", "{name}");
            }
        });
        assert_eq!(kept.len(), 22, "{kept:?}");
    }
    assert!(wrong.is_empty(), "these differ from their kept pictures: {}", wrong.join(", "));
}

/// The same drops for a toddler, a child of six and a grown-up.
#[test]
fn the_same_drops_for_three_wearers() {
    let mut wrong = Vec::new();
    for lang in [Lang::En, Lang::De] {
        let Some(mut hand) = drawn((1280, 800)) else { return };
        set(&mut hand, lang, Contrast::Daylight);
        hand.reach_the_stage();
        set(&mut hand, lang, Contrast::Daylight);
        hang(&mut hand, &["charm-heart", "vial-stars", "crystal-violet", "key-round"]);
        hand.tap(&Request::Review);
        hand.frames(20);
        let mut all = Vec::new();
        for (wearer, who) in [(Wearer::Under3, "toddler"), (Wearer::From6To12, "child"), (Wearer::From13, "grown-up")] {
            if hand.session().overlay.is_none() {
                hand.tap(&Request::Open(Overlay::Wearer));
            }
            hand.tap(&Request::For(wearer));
            hand.frames(5);
            all.push(compare(&mut hand, &format!("wearer-{who}-{}", lang.code()), &mut wrong));
        }
        assert!(apart(&all[0], &all[1]) > SAME && apart(&all[1], &all[2]) > SAME, "the three are told apart");
    }
    assert!(wrong.is_empty(), "these differ from their kept pictures: {}", wrong.join(", "));
}

/// A piece with much to be careful about, for four wearers under three regions' rules: the sheet of cautions.
#[test]
fn one_piece_for_four_wearers_in_three_regions() {
    let mut wrong = Vec::new();
    let Some(mut hand) = drawn((1280, 800)) else { return };
    set(&mut hand, Lang::En, Contrast::Daylight);
    hand.reach_the_stage();
    set(&mut hand, Lang::En, Contrast::Daylight);
    hang(&mut hand, &["crystal-violet", "sweet-swirl", "lantern-glow", "found-gear"]);
    for region in [Region::US, Region::EU, Region::UK] {
        let rules = Rules::of_region(region).unwrap();
        news(&mut hand, region.code(), |catalog| {
            (catalog.rules, catalog.table.region) = (rules.clone(), region);
            catalog.sizes = Sizes::of_all(&catalog.drops, rules.gauge).with_bases(&catalog.bases);
        });
        for wearer in Wearer::ANSWERS {
            hand.tap(&Request::Open(Overlay::Wearer));
            hand.tap(&Request::For(wearer));
            hand.tap(&Request::Open(Overlay::Cautions));
            hand.frames(5);
            let name = format!("cautions-{}-{}", region.code().to_lowercase(), wearer.code());
            compare(&mut hand, &name, &mut wrong);
            hand.tap(&Request::Close);
        }
    }
    assert!(wrong.is_empty(), "these differ from their kept pictures: {}", wrong.join(", "));
}

/// The ribbon of practice, on the narrowest tablet and in the longest words, hides nothing that is needed.
#[test]
fn the_ribbon_of_practice_hangs_over_every_screen() {
    let mut wrong = Vec::new();
    for (size, lang) in [((800, 480), Lang::De), ((480, 800), Lang::Fr)] {
        let Some(mut hand) = drawn(size) else { return };
        set(&mut hand, lang, Contrast::Daylight);
        hand.around.news.send(News::Practice(true)).unwrap();
        hand.wait_for("practice", |world| world.resource::<Tablet>().known().practice);
        compare(&mut hand, &format!("practice-welcome-{}-{}", size.0, lang.code()), &mut wrong);
        hand.reach_the_stage();
        set(&mut hand, lang, Contrast::Daylight);
        compare(&mut hand, &format!("practice-stage-{}-{}", size.0, lang.code()), &mut wrong);
    }
    assert!(wrong.is_empty(), "these differ from their kept pictures: {}", wrong.join(", "));
}

/// Who is called to a seat stands on Welcome, in the longest words beside everything else; what a silent desk said last does not.
#[test]
fn who_is_called_to_a_seat_stands_on_welcome() {
    let mut wrong = Vec::new();
    for (size, lang) in [((1280, 800), Lang::En), ((800, 480), Lang::De), ((480, 800), Lang::Fr)] {
        let Some(mut hand) = drawn(size) else { return };
        set(&mut hand, lang, Contrast::Daylight);
        tell(&mut hand, "called", |snapshot| {
            let called = vec![12, 13, 214, 15, 16, 17, 18];
            snapshot.waiting = WaitingNews { seats: 8, free: 0, called, waiting: 5, minutes: Some((15, 40)) };
        });
        let read = hand.reads();
        assert!(read.contains("12  ·  13  ·  214  ·  15  ·  16  ·  17 …") && read.contains("40\u{a0}min"), "{read}");
        compare(&mut hand, &format!("welcome-called-{}-{}", size.0, lang.code()), &mut wrong);
        hand.around.news.send(News::DeskInReach(false)).unwrap();
        hand.wait_for("the desk to be missed", |world| world.resource::<Tablet>().known().in_reach == Some(false));
        hand.frames(3);
        assert!(!hand.reads().contains("214"), "nobody knows whether that still holds");
    }
    assert!(wrong.is_empty(), "these differ from their kept pictures: {}", wrong.join(", "));
}
