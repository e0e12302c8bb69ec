//! What is seen is what is touched and what is there: who is in front, where everything is on the stage, what is said once.

use std::collections::HashMap;

use bevy_egui::egui::{self, Pos2, pos2, vec2};
use chatelaine::{
    catalog::read_folder,
    craft::{DropKind, Token, Wearer},
    guest::{Overlay, Request, Screen, Told},
    hang::{PiecePlaces, back_to_front},
    kiosk::{
        Icon, Proof, Tablet, shoot,
        stage::Hanger,
        targets::{ScrollId, Scrolls, TargetKind},
    },
    lang::{Lang, Texts},
};
use image::RgbaImage;

use super::{golden::drawn, hang, kiosk_support::Hand, stage_at};

/// Hangs the test table's drops in turn until there are `count`, as long as the base is made.
fn hang_many(hand: &mut Hand, count: usize) {
    hand.ask(Request::Longer(60));
    let catalog = hand.app.world().resource::<Tablet>().known().catalog().unwrap();
    let kinds: Vec<String> = catalog.drops.iter().map(|kind| kind.id.clone()).collect();
    for kind in kinds.iter().cycle().take(4 * count) {
        if hand.hung().len() < count {
            hand.ask(Request::Hang { kind: kind.clone(), at: None });
            hand.ask(Request::Close);
        }
    }
    assert_eq!(hand.hung().len(), count);
    hand.seconds(3.0);
}

/// The hung drops with their kinds, from the one at the back to the one in front.
fn hung_from_the_back(hand: &Hand) -> Vec<(Token, DropKind)> {
    let tablet = hand.app.world().resource::<Tablet>();
    let catalog = tablet.known().catalog().unwrap();
    let drops = &tablet.session().history.now().drops;
    let kinds: Vec<&DropKind> = drops.iter().map(|hung| catalog.drop_kind(&hung.kind).unwrap()).collect();
    back_to_front(&kinds).into_iter().map(|place| (drops[place].token, kinds[place].clone())).collect()
}

/// Where the picture of a hung drop has this place, as shares of its width and height.
fn place_on(hanger: &Hanger, token: Token, kind: &DropKind, (x, y): (f32, f32)) -> Pos2 {
    let (ring, lean) = (hanger.ring(token).unwrap(), hanger.lean(token));
    let across = hanger.px((f64::from(x - 0.5) * kind.width.mm()) as f32);
    let down = hanger.px((kind.ring.hangs_mm() + f64::from(y) * kind.height.mm()) as f32);
    ring + vec2(lean.cos() * across + lean.sin() * down, lean.cos() * down - lean.sin() * across)
}

/// The pictures as they are in the catalogue's folder decide what is opaque where, pixel by pixel.
#[test]
fn a_touch_takes_the_drop_that_is_seen_there() {
    let mut hand = stage_at((1280, 800));
    hang_many(&mut hand, 50);
    hand.see_pictures();
    let loaded = read_folder(std::path::Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/table"))).unwrap();
    let mut pictures: HashMap<String, RgbaImage> = HashMap::new();
    for (name, picture) in &loaded.pictures {
        pictures.insert(name.clone(), image::load_from_memory(&picture.read().unwrap()).unwrap().to_rgba8());
    }
    let hung = hung_from_the_back(&hand);
    let opaque = |kind: &DropKind, (x, y): (f32, f32)| {
        let picture = &pictures[&kind.picture];
        let pixel = |share: f32, side: u32| (share * side as f32).floor();
        let (column, row) = (pixel(x, picture.width()), pixel(y, picture.height()));
        let inside = (0.0..picture.width() as f32).contains(&column) && (0.0..picture.height() as f32).contains(&row);
        inside && picture.get_pixel(column as u32, row as u32).0[3] > 127
    };
    let hanger = hand.app.world().resource::<Hanger>();
    let on_picture = |token: Token, kind: &DropKind, p: Pos2| {
        let (ring, lean) = (hanger.ring(token).unwrap(), hanger.lean(token));
        let from = p - ring;
        let (across, down) = (from.x * lean.cos() - from.y * lean.sin(), from.x * lean.sin() + from.y * lean.cos());
        let (width, height) = (hanger.px(kind.width.mm() as f32), hanger.px(kind.height.mm() as f32));
        (across / width + 0.5, (down - hanger.px(kind.ring.hangs_mm() as f32)) / height)
    };
    let (mut tried, mut behind) = (0, 0);
    for (at, (token, kind)) in hung.iter().enumerate() {
        let shares = (1..10).flat_map(|x| (1..10).map(move |y| (x as f32 / 10.0, y as f32 / 10.0)));
        for share in shares {
            let p = place_on(hanger, *token, kind, share);
            // A finger's breadth of the same picture around it: what is meant is beyond doubt.
            let around = [vec2(0.0, 0.0), vec2(3.0, 0.0), vec2(-3.0, 0.0), vec2(0.0, 3.0), vec2(0.0, -3.0)];
            let shows = |other: &(Token, DropKind), all: bool| {
                let mut at = around.iter().map(|by| opaque(&other.1, on_picture(other.0, &other.1, p + *by)));
                if all { at.all(|one| one) } else { at.any(|one| one) }
            };
            let covered = hung[at + 1..].iter().any(|other| shows(other, false));
            let on_a_ring = hung.iter().any(|(token, kind)| {
                let radius = hanger.px(kind.ring.outside.mm() as f32);
                *token != hung[at].0 && hanger.ring(*token).unwrap().distance(p) < radius + 4.0
            });
            if !hand.stage().shrink(4.0).contains(p) || covered || on_a_ring || !shows(&hung[at], true) {
                continue;
            }
            tried += 1;
            behind += usize::from(hung[..at].iter().any(|other| shows(other, true)));
            let touched = hand.targets().at(p).map(|target| target.kind.clone());
            assert_eq!(touched, Some(TargetKind::Hung { token: *token }), "{} at {share:?} is {p:?}", kind.id);
        }
    }
    assert!(tried > 60 && behind > 20, "{tried} places, {behind} of them with another drop behind");
}

/// The picture of the stage at rest, seen from as near as after coming to it.
fn at_rest(hand: &mut Hand) -> RgbaImage {
    hand.ask(Request::AnotherBase);
    hand.ask(Request::ToStage);
    hand.seconds(2.0);
    hand.see_pictures();
    shoot(&mut hand.app).expect("a picture")
}

/// The share of places that clearly differ. Each is eight pixels wide, since a piece that was moved rests a pixel or two
/// beside where it did; a drop that hangs behind another one instead of before it is wider than that.
fn differing(one: &RgbaImage, other: &RgbaImage) -> f64 {
    let coarse = |picture: &RgbaImage| {
        let (width, height) = (picture.width() / 8, picture.height() / 8);
        image::imageops::resize(picture, width, height, image::imageops::FilterType::Triangle)
    };
    let (one, other) = (coarse(one), coarse(other));
    let far = |a: &image::Rgba<u8>, b: &image::Rgba<u8>| a.0.iter().zip(b.0).any(|(x, y)| x.abs_diff(y) > 40);
    let count = one.pixels().zip(other.pixels()).filter(|(a, b)| far(a, b)).count();
    count as f64 / f64::from(one.width() * one.height())
}

#[test]
fn a_drop_that_was_touched_or_moved_is_in_front_of_the_same_ones_as_before() {
    let Some(mut hand) = drawn((1000, 640)) else { return };
    let usual = chatelaine::guest::Looks { calm: true, ..Default::default() };
    hand.ask(Request::Look(usual));
    hand.reach_the_stage();
    hang(&mut hand, &["locket-oval", "key-heart", "locket-star", "vial-stars", "locket-oval"]);
    let before = at_rest(&mut hand);
    let token = hand.token(2);
    hand.ask(Request::Select(token));
    hand.seconds(1.0);
    let chosen = shoot(&mut hand.app).expect("a picture");
    assert!(differing(&before, &chosen) > 0.001, "a chosen drop is seen to be chosen");
    hand.ask(Request::Select(token));
    let after = at_rest(&mut hand);
    assert!(differing(&before, &after) < 0.001, "after it was touched: {}", differing(&before, &after));
    for to in [0, 4, 2] {
        hand.ask(Request::Slide { token, to });
        hand.seconds(0.4);
    }
    let after = at_rest(&mut hand);
    assert!(differing(&before, &after) < 0.001, "after it was moved: {}", differing(&before, &after));
    for request in [Request::Undo, Request::Undo, Request::Undo, Request::Redo, Request::Redo, Request::Redo] {
        hand.ask(request);
        hand.seconds(0.2);
    }
    let after = at_rest(&mut hand);
    assert!(differing(&before, &after) < 0.001, "after all was undone: {}", differing(&before, &after));
}

#[test]
fn bare_linen_and_the_strip_s_own_button_let_a_chosen_drop_go() {
    for size in [(800, 480), (1024, 600), (1280, 800), (800, 1280)] {
        let mut hand = stage_at(size);
        hang(&mut hand, &["key-heart", "vial-stars", "locket-star"]);
        for by_button in [false, true] {
            let at = hand.hung_at(1);
            hand.tap_at(at);
            let token = hand.session().selected.expect("a chosen drop");
            // The strip has a close, and hides neither the button for the view nor a drop.
            assert!(hand.sees(&Request::WholeView) && hand.sees(&Request::PullOff(token)), "{size:?}");
            let strip = hand.find(&Request::PullOff(token)).rect;
            for target in &hand.targets().all {
                let hung = matches!(target.kind, TargetKind::Hung { .. });
                assert!(!hung || !target.rect.intersects(strip), "{size:?}: a drop lies under the strip");
            }
            if by_button {
                let own: Vec<Pos2> = (hand.targets().all.iter())
                    .filter(|t| t.request == Request::Select(token) && t.kind == TargetKind::Button)
                    .map(|t| t.rect.center())
                    .collect();
                assert_eq!(own.len(), 1, "{size:?}");
                hand.tap_at(own[0]);
            } else {
                let stage = hand.stage();
                hand.tap_at(pos2(stage.left() + 12.0, stage.bottom() - 12.0));
            }
            assert_eq!((hand.session().selected, hand.hung().len()), (None, 3), "{size:?}");
        }
    }
}

fn places(hand: &Hand) -> PiecePlaces {
    hand.derived().places.clone().expect("it hangs")
}

#[test]
fn the_stage_shows_the_whole_bangle_and_all_of_forty_drops() {
    for size in [(800, 480), (1024, 600), (1280, 800), (800, 1280)] {
        let mut hand = Hand::at(size);
        hand.tap(&Request::Begin);
        hand.ask(Request::ChooseBase("bangle-brass".into()));
        hand.ask(Request::ToStage);
        for kind in ["key-heart", "vial-stars", "locket-star", "tassel-ivory"] {
            hand.ask(Request::Hang { kind: kind.into(), at: None });
        }
        hand.seconds(3.0);
        let bounds = places(&hand).bounds;
        let hanger = hand.app.world().resource::<Hanger>();
        for (x, y) in [(bounds.left_mm, bounds.top_mm), (bounds.right_mm, bounds.bottom_mm)] {
            let p = hanger.at(x as f32, y as f32);
            assert!(hand.stage().expand(0.5).contains(p), "{size:?}: {p:?} of the bangle is not in {:?}", hand.stage());
        }
        let mut hand = stage_at(size);
        hang_many(&mut hand, 40);
        for whole in [false, true] {
            if whole {
                hand.ask(Request::WholeView);
                hand.seconds(3.0);
            }
            let hanger = hand.app.world().resource::<Hanger>();
            for (token, kind) in hung_from_the_back(&hand) {
                for share in [(0.02, 0.02), (0.98, 0.02), (0.02, 0.98), (0.98, 0.98)] {
                    let p = place_on(hanger, token, &kind, share);
                    assert!(hand.stage().expand(2.0).contains(p), "{size:?}, whole {whole}: {} at {p:?}", kind.id);
                }
            }
        }
    }
}

#[test]
fn the_sum_stands_once_on_review_and_says_that_it_is_with_tax() {
    for lang in Lang::ALL {
        for size in [(800, 480), (1024, 600), (1280, 800), (800, 1280)] {
            let mut hand = Hand::at(size);
            hand.ask(Request::Speak(lang));
            hand.ask(Request::Look(chatelaine::guest::Looks { calm: true, ..Default::default() }));
            hand.reach_the_stage();
            hang(&mut hand, &["key-heart", "vial-stars"]);
            let with_tax = Texts::new(lang).get("tag-with-tax");
            hand.seconds(2.0);
            assert!(hand.reads().contains(&with_tax), "{lang:?} {size:?}: {}", hand.reads());
            hand.ask(Request::For(Wearer::From13));
            hand.tap(&Request::Review);
            hand.seconds(2.0);
            let currency = hand.app.world().resource::<Tablet>().known().catalog().unwrap().table.prices.currency;
            let total = lang.money(hand.derived().quote.as_ref().unwrap().total, currency);
            let text = hand.reads();
            assert_eq!(text.matches(&total).count(), 1, "{lang:?} {size:?}: {total} in {text}");
            assert!(text.contains(&with_tax), "{lang:?} {size:?}");
        }
    }
}

#[test]
fn sheets_begin_at_their_top() {
    let mut hand = stage_at((800, 480));
    let offset = |hand: &Hand| hand.app.world().resource::<Scrolls>().0.get(&ScrollId::Sheet).map_or(0.0, |s| s.offset);
    for _ in 0..2 {
        hand.ask(Request::Open(Overlay::Filters));
        assert_eq!(offset(&hand), 0.0);
        let at = hand.targets().scrolls.last().expect("a sheet that scrolls").rect.center();
        hand.drag(at, at - vec2(0.0, 150.0));
        hand.seconds(2.0);
        assert!(offset(&hand) > 60.0);
        hand.ask(Request::Close);
    }
    hand.ask(Request::Open(Overlay::Filters));
    let at = hand.targets().scrolls.last().expect("a sheet that scrolls").rect.center();
    hand.drag(at, at - vec2(0.0, 150.0));
    hand.ask(Request::StartOver);
    assert_eq!(hand.screen(), Screen::Base);
    hand.ask(Request::Open(Overlay::Filters));
    assert_eq!(offset(&hand), 0.0);
}

/// What a tick stands beside is read as well; on the smallest screens and in the largest text too.
#[test]
fn no_name_runs_under_a_tick() {
    for lang in Lang::ALL {
        let mut hand = Hand::at((1024, 600));
        hand.ask(Request::Speak(lang));
        let text = chatelaine::guest::TextSize::Largest;
        hand.ask(Request::Look(chatelaine::guest::Looks { text, ..Default::default() }));
        hand.tap(&Request::Begin);
        let catalog = hand.app.world().resource::<Tablet>().known().catalog().unwrap().clone();
        for base in &catalog.bases {
            hand.ask(Request::ChooseBase(base.id.clone()));
            hand.reads();
            let proof = hand.app.world().resource::<Proof>();
            let list = hand.targets().scrolls.iter().find(|area| area.id == ScrollId::Bases).map(|area| area.rect);
            let seen = |sign: &egui::Rect| list.is_none_or(|list| list.contains_rect(*sign));
            let ticks = proof.signs.iter().filter(|(_, icon)| *icon == Icon::Tick);
            for (sign, _) in ticks.filter(|(sign, _)| seen(sign)) {
                for one in &proof.texts {
                    let shared = one.rect.shrink(1.5).intersect(sign.shrink(1.5)).intersect(one.clip);
                    assert!(!shared.is_positive(), "{lang:?}: {:?} lies under a tick", one.text);
                }
            }
        }
    }
}

#[test]
fn a_bangle_that_is_full_is_not_called_too_short() {
    let mut hand = Hand::at((1280, 800));
    hand.tap(&Request::Begin);
    hand.ask(Request::ChooseBase("bangle-brass".into()));
    hand.ask(Request::ToStage);
    let kinds: Vec<String> = {
        let tablet = hand.app.world().resource::<Tablet>();
        tablet.known().catalog().unwrap().drops.iter().map(|kind| kind.id.clone()).collect()
    };
    for kind in kinds.iter().cycle().take(200) {
        hand.ask(Request::Hang { kind: kind.clone(), at: None });
        if matches!(hand.session().overlay, Some(Overlay::Told(Told::NoRoom { .. }))) {
            break;
        }
        hand.ask(Request::Close);
    }
    let text = hand.reads();
    assert!(text.contains("choose another base") && !text.contains("longer"), "{text}");
}

/// Systems that touch the same things have an order that somebody meant.
#[test]
fn no_two_systems_of_the_tablet_are_in_an_order_by_accident() {
    use bevy::{
        app::{Last, PostUpdate, PreUpdate, Update},
        ecs::schedule::{LogLevel, ScheduleBuildSettings, ScheduleLabel},
        prelude::default,
    };
    let (options, _around) = super::kiosk_support::options();
    let mut app = chatelaine::kiosk::headless(options, (1280, 800));
    let labels = [PreUpdate.intern(), Update.intern(), PostUpdate.intern(), Last.intern()];
    let mut by_accident = Vec::new();
    for label in labels {
        app.edit_schedule(label, |schedule| {
            let settings = ScheduleBuildSettings { ambiguity_detection: LogLevel::Error, ..default() };
            schedule.set_build_settings(settings);
        });
        let told = app.world_mut().schedule_scope(label, |world, schedule| {
            schedule.initialize(world).err().map(|error| error.to_string(schedule.graph(), world))
        });
        // What the engine's own systems leave open is not ours.
        let ours = told.iter().flat_map(|text| text.lines()).filter(|line| line.contains("chatelaine"));
        by_accident.extend(ours.map(str::to_owned));
    }
    assert!(by_accident.is_empty(), "{}", by_accident.join("\n"));
}
