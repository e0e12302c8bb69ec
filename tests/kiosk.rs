//! The tablet as a guest meets it: touches in, screens and tickets out. No window, no graphics driver.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]
#![cfg(feature = "kiosk")]

#[path = "kiosk/colour.rs"]
mod colour;
#[path = "kiosk/every_screen.rs"]
mod every_screen;
#[path = "kiosk/frames.rs"]
mod frames;
#[path = "kiosk/golden.rs"]
mod golden;
#[path = "kiosk/keys.rs"]
mod keys;
mod kiosk_support;
#[allow(dead_code, reason = "places are drawn by number here")]
#[path = "support/random.rs"]
mod random;
#[path = "kiosk/reader.rs"]
mod reader;
#[path = "kiosk/reading.rs"]
mod reading;
#[path = "kiosk/seen.rs"]
mod seen;
#[path = "kiosk/seller.rs"]
mod seller;
#[path = "kiosk/suits.rs"]
mod suits;
#[path = "kiosk/touches.rs"]
mod touches;
#[path = "kiosk/touches_for_long.rs"]
mod touches_for_long;
#[path = "kiosk/truth.rs"]
mod truth;

use std::sync::Arc;

use bevy::{
    input::{keyboard::Key, touch::TouchPhase},
    time::TimeUpdateStrategy,
};
use bevy_egui::egui::{Rect, Vec2, pos2, vec2};
use chatelaine::{
    catalog::Catalog,
    craft::Wearer,
    desk::{Desk, DeskConfig},
    guest::{
        Contrast, Looks, Overlay, Request, Screen, SellerStep, Sending, Session, Settings, Standing, TextSize, Told,
        WhyNot, places_of,
    },
    kiosk::{
        Tablet,
        i18n::Lang,
        stage::{Flights, Hanger},
        targets::{ScrollId, Scrolls, TargetKind},
    },
    link::{Kept, News, PinAnswer, Snapshot},
    ticket::TicketNumber,
};
use every_screen::every_screen;
use kiosk_support::{Hand, SOLD_OUT, options_beside};
use seller::reach_the_menu;

const SIZES: [(u32, u32); 4] = [(800, 480), (1280, 800), (1920, 1200), (800, 1280)];

fn stage_at(size: (u32, u32)) -> Hand {
    let mut hand = Hand::at(size);
    hand.reach_the_stage();
    hand
}

/// Reads the cautions on Review to their end, as a grown-up has to, and says so.
fn read_and_tick(hand: &mut Hand) {
    assert!(!hand.sees(&Request::Send), "not before they were read");
    while hand.sees(&Request::ReadOn) {
        hand.tap(&Request::ReadOn);
        hand.frames(2);
    }
    hand.tap(&Request::GrownUp(true));
}

/// The desk sends another catalogue.
fn news(hand: &mut Hand, revision: &str, change: impl FnOnce(&mut Catalog)) {
    tell(hand, revision, |snapshot| {
        let mut catalog = (*snapshot.catalog).clone();
        change(&mut catalog);
        snapshot.catalog = Arc::new(catalog);
    });
}

/// The desk tells something else than before.
fn tell(hand: &mut Hand, revision: &str, change: impl FnOnce(&mut Snapshot)) {
    let known = hand.app.world().resource::<Tablet>().known().snapshot.clone().unwrap();
    let mut snapshot = Snapshot { revision: revision.into(), ..(*known).clone() };
    change(&mut snapshot);
    hand.around.news.send(News::Snapshot(snapshot.into())).unwrap();
    hand.wait_for("the news", |world| {
        world.resource::<Tablet>().known().snapshot.as_ref().unwrap().revision == revision
    });
    hand.frames(3);
}

fn hang(hand: &mut Hand, kinds: &[&str]) {
    for kind in kinds {
        let at = hand.compartment(kind);
        hand.tap_at(at);
    }
    hand.seconds(1.0);
    assert_eq!(hand.hung(), kinds);
}

fn everything_is_gone(hand: &Hand) {
    assert_eq!(hand.screen(), Screen::Welcome);
    assert_eq!(format!("{:?}", hand.session()), format!("{:?}", Session::default()));
    let scrolls = &hand.app.world().resource::<Scrolls>().0;
    assert!(scrolls.values().all(|scroll| scroll.offset == 0.0 && scroll.speed == 0.0), "{scrolls:?}");
}

#[test]
fn a_guest_goes_the_whole_way() {
    let mut hand = stage_at((1280, 800));
    // Two by tapping, three by dragging: onto the drops, to the left of them, to the right of them.
    hang(&mut hand, &["key-heart", "bead-lapis"]);
    for (kind, aside, place) in [("tassel-plum", 0.0, 1), ("vial-stars", -400.0, 0), ("locket-oval", 400.0, 4)] {
        let (from, near) = (hand.compartment(kind), hand.hung_at(0).lerp(hand.hung_at(1), 0.5));
        let to = hand.nearest_on_the_base(near + vec2(aside, -60.0));
        hand.drag(from, to);
        hand.seconds(1.0);
        assert_eq!(hand.hung()[place], kind, "{:?}", hand.hung());
    }
    assert_eq!(hand.hung().len(), 5);
    // One comes off again: pulled away far enough.
    let (from, gone) = (hand.hung_at(4), hand.hung()[4].clone());
    hand.drag(from, pos2(from.x, hand.stage().bottom() + 40.0));
    hand.seconds(1.0);
    assert_eq!(hand.hung().len(), 4);
    assert!(!hand.hung().contains(&gone));
    // The tag agrees with the quote to the cent.
    let piece = hand.session().history.now().piece().unwrap();
    let quote = hand.app.world().resource::<Tablet>().known().catalog().unwrap().quote(&piece).unwrap();
    assert_eq!(hand.derived().quote.as_ref(), Some(&quote));
    assert!(hand.find(&Request::Open(Overlay::Lines)).label.contains(&quote.total.to_string()));

    hand.tap(&Request::Review);
    assert_eq!(hand.session().overlay, Some(Overlay::Wearer), "who it is for is asked at the latest here");
    hand.tap(&Request::For(Wearer::From6To12));
    assert!(!hand.derived().verdict.cautions.is_empty());
    assert!(!hand.sees(&Request::Send), "a grown-up has to read the cautions first");
    read_and_tick(&mut hand);
    hand.tap(&Request::Send);
    hand.wait_for("the number", |world| world.resource::<Tablet>().screen() == Screen::Sent);
    let Sending::Given { kept, delivered, .. } = hand.session().sending.clone() else { panic!("no number") };
    assert_eq!((kept.number.kiosk(), delivered), (3, false));
    hand.seconds(31.0);
    everything_is_gone(&hand);
}

#[test]
fn the_desk_has_what_the_tag_said() {
    let dir = tempfile::tempdir().unwrap();
    let config = DeskConfig {
        catalog_dir: concat!(env!("CARGO_MANIFEST_DIR"), "/tests/table").into(),
        data_dir: dir.path().into(),
        listen: ([127, 0, 0, 1], 0).into(),
    };
    let desk = Desk::start(config).unwrap_or_else(|error| panic!("{error}"));
    let (options, around) = options_beside(&desk);
    let mut hand = Hand::on(chatelaine::kiosk::headless(options, (1280, 800)), around);
    hand.reach_the_stage();
    hang(&mut hand, &["key-heart", "bead-lapis", "vial-stars"]);
    for (kind, aside) in [("tassel-plum", -400.0), ("locket-oval", 400.0)] {
        let (from, near) = (hand.compartment(kind), hand.hung_at(0).lerp(hand.hung_at(1), 0.5));
        let to = hand.nearest_on_the_base(near + vec2(aside, -60.0));
        hand.drag(from, to);
        hand.seconds(1.0);
        assert!(hand.hung().iter().any(|hung| hung == kind), "{:?}", hand.hung());
    }
    let from = hand.hung_at(4);
    hand.drag(from, pos2(from.x, hand.stage().bottom() + 40.0));
    hand.seconds(1.0);
    let hung = hand.hung();
    assert_eq!(hung.len(), 4);
    let tag = hand.find(&Request::Open(Overlay::Lines)).label.clone();
    hand.tap(&Request::Review);
    hand.tap(&Request::For(Wearer::From13));
    hand.tap(&Request::Send);
    hand.wait_for("the number", |world| world.resource::<Tablet>().screen() == Screen::Sent);
    let Sending::Given { kept, delivered, .. } = hand.session().sending.clone() else { panic!("no number") };
    assert!(delivered, "the desk was there");
    let ticket = desk.with_ledger(move |ledger| ledger.ticket(kept.id)).unwrap().unwrap();
    let lines: Vec<String> = ticket.lines.iter().map(|line| line.id.clone()).collect();
    assert_eq!((lines, ticket.number), (hung, kept.number));
    assert!(tag.contains(&ticket.quote.total.to_string()), "the tag said {tag}, the desk says {}", ticket.quote.total);
    assert_eq!(ticket.not_held(), Vec::<&str>::new());
    assert_eq!(ticket.total_by_catalog, None, "the desk's own catalogue comes to the same sum");
}

#[test]
fn what_is_sold_out_too_dear_or_hung_up_cannot_be_picked() {
    let mut hand = stage_at((1280, 800));
    assert_eq!(hand.derived().standing[SOLD_OUT], Standing::SoldOut);
    assert!(!hand.sees(&Request::Hang { kind: SOLD_OUT.into(), at: None }));
    hand.tap(&Request::WhyNot(SOLD_OUT.into()));
    let why = Told::WhyNot { kind: SOLD_OUT.into(), why: WhyNot::SoldOut };
    assert_eq!(hand.session().overlay, Some(Overlay::Told(why)));
    hand.tap(&Request::Close);
    hand.tap(&Request::Open(Overlay::Filters));
    hand.tap(&Request::Budget(Some(20.into())));
    hand.tap(&Request::Close);
    assert_eq!(hand.derived().standing["locket-book"], Standing::TooDear);
    hand.tap(&Request::WhyNot("locket-book".into()));
    hand.tap(&Request::Close);
    assert!(hand.hung().is_empty());
    // The last one of a kind: once it hangs, its compartment is empty.
    let one_left = hand.app.world().resource::<Tablet>().known().snapshot.clone().unwrap();
    let mut snapshot = Snapshot::clone(&one_left);
    snapshot.available.insert("key-tiny".into(), 1);
    hand.around.news.send(News::Snapshot(snapshot.into())).unwrap();
    hand.frames(3);
    hang(&mut hand, &["key-tiny"]);
    assert!(!hand.sees(&Request::Hang { kind: "key-tiny".into(), at: None }));
}

#[test]
fn a_full_base_says_so() {
    let mut hand = Hand::at((1280, 800));
    hand.tap(&Request::Begin);
    hand.ask(Request::ChooseBase("bangle-silver".into()));
    hand.tap(&Request::ToStage);
    let mut snapshot = Snapshot::clone(hand.app.world().resource::<Tablet>().known().snapshot.as_ref().unwrap());
    snapshot.available.insert("key-heart".into(), 1000);
    hand.around.news.send(News::Snapshot(snapshot.into())).unwrap();
    hand.frames(3);
    let at = hand.compartment("key-heart");
    for _ in 0..60 {
        if hand.session().overlay.is_none() {
            hand.tap_at(at);
        }
    }
    let Some(Overlay::Told(Told::NoRoom { fits, .. })) = hand.session().overlay else { panic!("nothing is said") };
    assert!(hand.reads().contains("No more room"));
    assert!(hand.hung().len() > 3 && hand.hung().len() == fits);
    let piece = hand.session().history.now().piece().unwrap();
    let catalog = hand.app.world().resource::<Tablet>().known().catalog().unwrap();
    assert!(places_of(catalog, &piece).is_ok(), "what hangs has room");
}

#[test]
fn surprise_is_a_piece_that_can_be_had_within_the_budget() {
    let mut hand = stage_at((1280, 800));
    hand.tap(&Request::Open(Overlay::Filters));
    hand.tap(&Request::Budget(Some(40.into())));
    hand.tap(&Request::Close);
    for _ in 0..5 {
        hand.tap(&Request::Surprise);
        assert!(!hand.hung().is_empty() && !hand.hung().contains(&SOLD_OUT.to_owned()));
        assert!(hand.derived().quote.as_ref().unwrap().total <= 40.into());
        assert!(hand.derived().trouble.is_none());
    }
}

#[test]
fn somebody_else_was_quicker() {
    let mut hand = stage_at((1280, 800));
    hand.play_the_desk();
    hang(&mut hand, &["key-heart", "key-round"]);
    hand.tap(&Request::Review);
    hand.tap(&Request::For(Wearer::From13));
    hand.tap(&Request::Send);
    let Sending::Asked(id) = hand.session().sending else { panic!("not asked: {:?}", hand.session().sending) };
    let kept = Kept { id, number: TicketNumber::new(3, 0).unwrap() };
    hand.around.news.send(News::Short { kept, parts: vec!["key-round".into()] }).unwrap();
    hand.frames(4);
    assert_eq!(hand.screen(), Screen::Stage);
    assert_eq!(hand.hung(), ["key-heart"]);
    let text = hand.reads();
    assert!(text.contains("Wheel-bow key"), "{text}");
}

#[test]
fn a_guest_who_leaves_leaves_nothing() {
    let mut hand = stage_at((1280, 800));
    hand.tap(&Request::Open(Overlay::Languages));
    hand.tap(&Request::Speak(Lang::De));
    hang(&mut hand, &["key-heart", "vial-stars"]);
    hand.tap(&Request::Open(Overlay::Filters));
    hand.tap(&Request::Budget(Some(50.into())));
    hand.tap(&Request::Close);
    let second = std::time::Duration::from_secs(1);
    hand.app.insert_resource(TimeUpdateStrategy::ManualDuration(second));
    hand.frames(185);
    assert!(hand.sees(&Request::StillHere));
    assert_eq!(hand.targets().all.len(), 1, "nothing under the question can be touched");
    hand.tap(&Request::StillHere);
    assert!(!hand.sees(&Request::StillHere) && hand.hung().len() == 2);
    hand.frames(250);
    everything_is_gone(&hand);
    assert_eq!(hand.find(&Request::Begin).label, "Touch to begin", "the next guest is greeted in the table's language");
}

/// A sheet that is left open on Welcome is not the next guest's.
#[test]
fn a_sheet_left_open_on_welcome_is_closed() {
    let mut hand = Hand::at((1280, 800));
    hand.tap(&Request::Open(Overlay::Looks));
    hand.app.insert_resource(TimeUpdateStrategy::ManualDuration(std::time::Duration::from_secs(1)));
    hand.frames(185);
    everything_is_gone(&hand);
}

#[test]
fn put_back_shows_the_home() {
    let mut hand = Hand::at((1280, 800));
    hand.tap(&Request::PutBack);
    let first = hand.find(&Request::Where("locket-round".into())).rect.center();
    // The page scrolls under a finger without touching a picture.
    hand.drag(first + vec2(0.0, 200.0), first);
    assert!(hand.session().whereabouts.is_none());
    assert!(hand.app.world().resource::<Scrolls>().0[&ScrollId::Pictures].offset > 100.0);
    let last = hand.targets().all.iter().rev().find(|t| matches!(t.request, Request::Where(_))).unwrap().clone();
    hand.tap_at(last.rect.center());
    assert_eq!(Request::Where(hand.session().whereabouts.clone().unwrap()), last.request);
    hand.tap(&Request::Back);
    everything_is_gone(&hand);
}

#[test]
fn a_stray_drop_is_looked_up_from_the_stage_in_two_touches_and_the_piece_stays() {
    let mut hand = Hand::at((1280, 800));
    hand.reach_the_stage();
    let at = hand.compartment("key-heart");
    hand.tap_at(at);
    let piece = hand.session().history.now().clone();
    hand.tap(&Request::PutBack);
    hand.tap(&Request::Where("locket-round".into()));
    assert_eq!((hand.screen(), hand.session().whereabouts.as_deref()), (Screen::PutBack, Some("locket-round")));
    hand.tap(&Request::Back);
    assert_eq!((hand.screen(), hand.session().history.now()), (Screen::Stage, &piece));
    assert!(hand.session().whereabouts.is_none());
}
