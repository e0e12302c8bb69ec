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
#[path = "kiosk/frames.rs"]
mod frames;
#[path = "kiosk/golden.rs"]
mod golden;
mod kiosk_support;
#[path = "kiosk/reader.rs"]
mod reader;
#[path = "kiosk/reading.rs"]
mod reading;
#[path = "kiosk/seen.rs"]
mod seen;
#[path = "kiosk/suits.rs"]
mod suits;

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
use kiosk_support::{Hand, SOLD_OUT, options_beside};

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
    let known = hand.app.world().resource::<Tablet>().known().snapshot.clone().unwrap();
    let mut catalog = (*known.catalog).clone();
    change(&mut catalog);
    let snapshot = Snapshot { catalog: Arc::new(catalog), revision: revision.into(), ..(*known).clone() };
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
        catalog_dir: concat!(env!("CARGO_MANIFEST_DIR"), "/catalog").into(),
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
fn a_cancelled_touch_puts_the_drop_back() {
    let mut hand = stage_at((1280, 800));
    let (from, to, finger) = (hand.compartment("key-heart"), hand.stage().center(), hand.finger());
    hand.press_and_carry(finger, from, to);
    hand.touch(finger, TouchPhase::Canceled, to);
    hand.seconds(1.0);
    assert!(hand.hung().is_empty());
    // The end that comes after it, as some screens send it, hangs nothing either.
    hand.touch(finger, TouchPhase::Ended, to);
    hand.seconds(1.0);
    assert!(hand.hung().is_empty());
    // A hung drop stays where it was.
    hang(&mut hand, &["key-heart", "key-tiny"]);
    let (from, finger) = (hand.hung_at(0), hand.finger());
    hand.press_and_carry(finger, from, hand.stage().right_bottom());
    hand.lose_the_window();
    hand.touch(finger, TouchPhase::Ended, pos2(5.0, 5.0));
    hand.frames(5);
    assert_eq!(hand.hung(), ["key-heart", "key-tiny"]);
}

#[test]
fn two_children_drag_at_once() {
    let mut hand = stage_at((1280, 800));
    let centre = hand.stage().center_bottom() - vec2(0.0, 150.0);
    let (a, b) = (hand.compartment("key-heart"), hand.compartment("key-round"));
    let (one, two) = (hand.finger(), hand.finger());
    hand.touch(one, TouchPhase::Started, a);
    hand.touch(two, TouchPhase::Started, b);
    for step in 1..=10 {
        hand.touch(one, TouchPhase::Moved, a + (centre - a) * (step as f32 / 10.0));
        hand.touch(two, TouchPhase::Moved, b + (centre - b) * (step as f32 / 10.0));
        hand.frames(1);
    }
    hand.touch(two, TouchPhase::Ended, centre);
    hand.touch(one, TouchPhase::Ended, centre);
    hand.seconds(1.0);
    let mut hung = hand.hung();
    hung.sort();
    assert_eq!(hung, ["key-heart", "key-round"]);
}

#[test]
fn each_of_two_drops_flies_from_the_finger_that_let_it_go() {
    let mut hand = stage_at((1280, 800));
    let line = hand.nearest_on_the_base(hand.stage().center());
    let (a, b) = (hand.compartment("key-heart"), hand.compartment("key-round"));
    let (to_a, to_b) = (line - vec2(60.0, 0.0), line + vec2(60.0, 0.0));
    let (one, two) = (hand.finger(), hand.finger());
    hand.press_and_carry(one, a, to_a);
    hand.press_and_carry(two, b, to_b);
    hand.touch(two, TouchPhase::Ended, to_b);
    hand.touch(one, TouchPhase::Ended, to_a);
    hand.frames(1);
    let flights = &hand.app.world().resource::<Flights>().all;
    let near = |kind: &str| flights.iter().find(|flight| flight.kind == kind).map(|flight| flight.at);
    let (key, round) = (near("key-heart").expect("it flies"), near("key-round").expect("it flies"));
    assert!(key.distance(to_a) < 40.0 && round.distance(to_b) < 40.0, "{key:?} {round:?}");
    hand.seconds(1.0);
    assert_eq!(hand.hung(), ["key-heart", "key-round"]);
}

#[test]
fn a_lost_end_of_a_touch_does_no_harm() {
    let mut hand = stage_at((1280, 800));
    let (from, to, lost) = (hand.compartment("key-heart"), hand.stage().center(), hand.finger());
    hand.press_and_carry(lost, from, to);
    hand.seconds(20.5);
    let next = hand.compartment("key-round");
    hand.tap_at(next);
    hand.seconds(1.0);
    assert_eq!(hand.hung(), ["key-round"], "the silent finger's drop flew home, the next tap counts");
    hand.touch(lost, TouchPhase::Ended, to);
    hand.seconds(1.0);
    assert_eq!(hand.hung(), ["key-round"]);
}

#[test]
fn a_touch_that_comes_and_goes_within_one_frame_counts() {
    let mut hand = stage_at((1280, 800));
    let (from, finger) = (hand.compartment("key-heart"), hand.finger());
    for phase in [TouchPhase::Started, TouchPhase::Ended] {
        hand.touch(finger, phase, from);
    }
    hand.frames(2);
    assert_eq!(hand.hung(), ["key-heart"]);
    let (from, to) = (hand.compartment("key-round"), hand.hung_at(0));
    for (phase, at) in [(TouchPhase::Started, from), (TouchPhase::Moved, to), (TouchPhase::Ended, to)] {
        hand.touch(finger, phase, at);
    }
    hand.frames(2);
    assert_eq!(hand.hung().len(), 2);
}

#[test]
fn drops_are_reordered_by_sliding_and_by_tapping() {
    let mut hand = stage_at((1280, 800));
    hang(&mut hand, &["key-heart", "key-round", "key-trefoil"]);
    let (first, last) = (hand.hung_at(0), hand.hung_at(2));
    hand.drag(first, pos2(last.x + 40.0, first.y));
    hand.seconds(1.0);
    assert_eq!(hand.hung(), ["key-round", "key-trefoil", "key-heart"]);
    let (at, token) = (hand.hung_at(0), hand.token(0));
    hand.tap_at(at);
    assert_eq!(hand.session().selected, Some(token));
    hand.tap(&Request::Shift { token, by: 1 });
    assert_eq!(hand.hung(), ["key-trefoil", "key-round", "key-heart"]);
    hand.tap(&Request::PullOff(token));
    assert_eq!(hand.hung(), ["key-trefoil", "key-heart"]);
    assert_eq!(hand.session().selected, None);
}

#[test]
fn undo_and_redo_by_touch_and_keyboard() {
    let mut hand = stage_at((1280, 800));
    hang(&mut hand, &["key-heart", "key-round"]);
    hand.tap(&Request::Undo);
    assert_eq!(hand.hung(), ["key-heart"]);
    hand.control("z");
    assert!(hand.hung().is_empty());
    hand.control("y");
    hand.tap(&Request::Redo);
    assert_eq!(hand.hung(), ["key-heart", "key-round"]);
    // Start over asks first.
    hand.tap(&Request::Open(Overlay::StartOver));
    hand.tap(&Request::Close);
    assert_eq!(hand.hung().len(), 2);
    hand.tap(&Request::Open(Overlay::StartOver));
    hand.tap(&Request::StartOver);
    assert!(hand.hung().is_empty());
    assert_eq!(hand.screen(), Screen::Base);
}

#[test]
fn the_keyboard_reaches_and_touches_everything() {
    let mut hand = Hand::at((1280, 800));
    all_by_tab(&mut hand, "Welcome");
    by_keys(&mut hand, &Request::PutBack);
    all_by_tab(&mut hand, "put-back");
    let far = |hand: &Hand| hand.app.world().resource::<Scrolls>().0[&ScrollId::Pictures].offset;
    hand.key(Key::PageDown);
    assert!(far(&hand) > 100.0, "what is scrolled away comes with the page keys");
    all_by_tab(&mut hand, "the second page");
    hand.key(Key::Escape);
    assert_eq!(hand.screen(), Screen::Welcome);
    by_keys(&mut hand, &Request::Begin);
    all_by_tab(&mut hand, "base");
    by_keys(&mut hand, &Request::ToStage);
    for _ in 0..2 {
        by_keys(&mut hand, &Request::Hang { kind: "key-heart".into(), at: None });
    }
    assert_eq!(hand.hung().len(), 2);
    let token = hand.token(0);
    by_keys(&mut hand, &Request::Select(token));
    all_by_tab(&mut hand, "a chosen drop");
    by_keys(&mut hand, &Request::Shift { token, by: 1 });
    assert_eq!(hand.token(1), token);
    by_keys(&mut hand, &Request::PullOff(token));
    for sheet in [Overlay::Lines, Overlay::Filters, Overlay::Wearer, Overlay::Languages, Overlay::Looks] {
        hand.ask(Request::Open(sheet.clone()));
        all_by_tab(&mut hand, &format!("{sheet:?}"));
        by_keys(&mut hand, &Request::Close);
    }
    by_keys(&mut hand, &Request::Review);
    by_keys(&mut hand, &Request::For(Wearer::Under3));
    // Two ways back and two ways to who it is for: all of them are reached.
    all_by_tab(&mut hand, "review");
    by_keys(&mut hand, &Request::Open(Overlay::Wearer));
    by_keys(&mut hand, &Request::For(Wearer::From13));
    by_keys(&mut hand, &Request::Send);
    hand.wait_for("the number", |world| world.resource::<Tablet>().screen() == Screen::Sent);
    by_keys(&mut hand, &Request::Done);
    everything_is_gone(&hand);
}

/// Tab goes round all targets, each once, and back again with Shift.
fn all_by_tab(hand: &mut Hand, what: &str) {
    hand.frames(3);
    let count = hand.targets().all.len();
    let mut seen: Vec<usize> = (0..count)
        .map(|_| {
            hand.key(Key::Tab);
            hand.targets().ring.unwrap_or_else(|| panic!("{what}: no ring"))
        })
        .collect();
    seen.sort_unstable();
    assert_eq!(seen, (0..count).collect::<Vec<_>>(), "{what}");
}

/// Goes with Tab to the target with this request and presses Enter.
fn by_keys(hand: &mut Hand, request: &Request) {
    hand.frames(3);
    for _ in 0..=hand.targets().all.len() {
        if hand.targets().ring.is_some_and(|index| hand.targets().all[index].request == *request) {
            hand.key(Key::Enter);
            hand.frames(3);
            return;
        }
        hand.key(Key::Tab);
    }
    panic!("{request:?} is not reached by Tab");
}

#[test]
fn the_mouse_works_and_is_deaf_after_a_touch() {
    let mut hand = Hand::at((1280, 800));
    let begin = hand.find(&Request::Begin).rect.center();
    hand.click(begin);
    assert_eq!(hand.screen(), Screen::Base);
    hand.tap(&Request::ToStage);
    let at = hand.compartment("key-heart");
    hand.tap_at(at);
    hand.click(at);
    assert_eq!(hand.hung().len(), 1, "the screen's own mouse click after the touch does not count");
    hand.seconds(0.5);
    hand.click(at);
    assert_eq!(hand.hung().len(), 2);
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
    hand.frames(95);
    assert!(hand.sees(&Request::StillHere));
    assert_eq!(hand.targets().all.len(), 1, "nothing under the question can be touched");
    hand.tap(&Request::StillHere);
    assert!(!hand.sees(&Request::StillHere) && hand.hung().len() == 2);
    hand.frames(115);
    everything_is_gone(&hand);
    assert_eq!(hand.find(&Request::Begin).label, "Touch to begin", "the next guest is greeted in the table's language");
}

/// A sheet that is left open on Welcome is not the next guest's.
#[test]
fn a_sheet_left_open_on_welcome_is_closed() {
    let mut hand = Hand::at((1280, 800));
    hand.tap(&Request::Open(Overlay::Looks));
    hand.app.insert_resource(TimeUpdateStrategy::ManualDuration(std::time::Duration::from_secs(1)));
    hand.frames(95);
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
fn the_seller_gets_in_with_the_pin_only() {
    let mut hand = Hand::at((1280, 800));
    hand.play_the_desk();
    let finger = hand.finger();
    hand.touch(finger, TouchPhase::Started, pos2(20.0, 20.0));
    hand.seconds(1.7);
    hand.touch(finger, TouchPhase::Ended, pos2(20.0, 20.0));
    hand.frames(3);
    assert_eq!(hand.screen(), Screen::Seller);
    let step = |hand: &Hand| hand.app.world().resource::<Tablet>().seller().step.clone();
    for (answer, wanted) in [(PinAnswer::Wrong, SellerStep::Pin), (PinAnswer::Right, SellerStep::Menu)] {
        for digit in "1234".chars() {
            hand.tap(&Request::Key(digit));
        }
        hand.tap(&Request::EnterKeys);
        hand.around.news.send(News::Pin(Some(answer))).unwrap();
        hand.wait_for("the answer", |world| world.resource::<Tablet>().seller().step != SellerStep::Checking);
        assert_eq!(step(&hand), wanted);
    }
    hand.tap(&Request::LeftHanded(true));
    hand.tap(&Request::Back);
    hand.reach_the_stage();
    assert!(hand.stage().left() > 300.0, "the trays are on the left now");
}

#[test]
fn the_seller_s_part_has_a_key_on_welcome_only() {
    let mut hand = Hand::at((1280, 800));
    hand.play_the_desk();
    hand.key(Key::F10);
    assert_eq!(hand.screen(), Screen::Seller);
    assert_eq!(hand.app.world().resource::<Tablet>().seller().step, SellerStep::Pin, "the PIN is asked as ever");
    for digit in ["1", "2", "3", "4"] {
        hand.key(Key::Character(digit.into()));
    }
    hand.key(Key::Enter);
    assert_eq!(hand.app.world().resource::<Tablet>().seller().step, SellerStep::Checking);
    let mut hand = stage_at((1280, 800));
    hand.key(Key::F10);
    assert_eq!(hand.screen(), Screen::Stage);
}

#[test]
fn a_guest_s_looks_are_the_guest_s_alone() {
    let mut hand = Hand::at((1280, 800));
    let usual = Looks::default();
    let large = Looks { text: TextSize::Largest, ..usual };
    hand.tap(&Request::Open(Overlay::Looks));
    hand.tap(&Request::Look(large));
    let both = Looks { contrast: Contrast::High, ..large };
    hand.tap(&Request::Look(both));
    assert_eq!(hand.app.world().resource::<Tablet>().looks(), both);
    hand.tap(&Request::Close);
    // Starting over is still the same guest.
    hand.reach_the_stage();
    hang(&mut hand, &["key-heart"]);
    hand.tap(&Request::Open(Overlay::StartOver));
    hand.tap(&Request::StartOver);
    assert_eq!(hand.app.world().resource::<Tablet>().looks(), both);
    hand.tap(&Request::Back);
    assert_eq!(hand.app.world().resource::<Tablet>().looks(), usual, "the next guest begins as the seller has settled");
    // A guest who has only touched Welcome and left is forgotten as well.
    hand.tap(&Request::Speak(Lang::Fr));
    hand.app.world_mut().write_message(Request::Look(both));
    hand.app.insert_resource(TimeUpdateStrategy::ManualDuration(std::time::Duration::from_secs(1)));
    hand.frames(95);
    assert_eq!(hand.app.world().resource::<Tablet>().looks(), usual);
    assert_eq!(hand.find(&Request::Begin).label, "Touch to begin");
}

#[test]
fn the_seller_matches_a_bank_card_and_the_tablet_keeps_it() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("kiosk.json");
    let (mut options, around) = kiosk_support::options();
    options.settings_file = Some(file.clone());
    let mut hand = Hand::on(chatelaine::kiosk::headless(options, (1280, 800)), around);
    hand.ask(Request::AskSeller);
    reach_the_menu(&mut hand);
    hand.ask(Request::MatchCard);
    for _ in 0..3 {
        hand.tap(&Request::SizeCard { steps: -10, most_px: 1280.0 });
    }
    hand.tap(&Request::SizeCard { steps: 1, most_px: 1280.0 });
    // By its corner as well: half a pixel to the millimetre larger, and back again.
    let drawn = |hand: &Hand| match hand.app.world().resource::<Tablet>().seller().step {
        SellerStep::Card { px_per_mm } => px_per_mm,
        ref other => panic!("{other:?}"),
    };
    let before = drawn(&hand);
    for (by, wanted) in [(42.8, before + 0.5), (-42.8, before)] {
        let corner = hand.targets().corner.expect("a corner to take").center();
        hand.drag(corner, corner + vec2(by, 10.0));
        assert!((drawn(&hand) - wanted).abs() < 1e-3, "{} for {wanted}", drawn(&hand));
    }
    hand.tap(&Request::KeepCard);
    hand.ask(Request::DefaultLooks(Looks { calm: true, ..Looks::default() }));
    // 29 half percents smaller than 150 pixels to the inch.
    let wanted = 150.0 / 25.4 * 1.005_f32.powi(-29);
    let kept = Settings::open(Some(file), None);
    assert!((kept.px_per_mm.unwrap() - wanted).abs() < 1e-3, "{kept:?}");
    assert!(kept.looks.calm);
    hand.tap(&Request::Back);
    // Now the piece can be seen as large as it is.
    hand.reach_the_stage();
    hang(&mut hand, &["key-heart"]);
    hand.tap(&Request::TrueSize);
    hand.seconds(2.0);
    let shown = hand.app.world().resource::<Hanger>().px_per_mm;
    assert!((shown - wanted).abs() < 0.01, "{shown} pixels to the millimetre instead of {wanted}");
    hand.tap(&Request::TrueSize);
    hand.seconds(2.0);
    assert!((hand.app.world().resource::<Hanger>().px_per_mm - wanted).abs() > 0.1);
}

#[test]
fn every_screen_can_be_touched_at_every_size() {
    for size in SIZES {
        for lang in ["en", "de"] {
            let (mut options, around) = kiosk_support::options();
            options.language = Some(lang.into());
            let mut hand = Hand::on(chatelaine::kiosk::headless(options, size), around);
            every_screen(&mut hand, &mut |hand, what| sound(hand, &format!("{what} at {size:?} in {lang}")));
        }
    }
}

/// Goes through every screen and sheet, and looks at each.
fn every_screen(hand: &mut Hand, look: &mut dyn FnMut(&mut Hand, &str)) {
    let mut look = |hand: &mut Hand, what: &str| {
        hand.frames(4);
        look(hand, what);
    };
    hand.see_pictures();
    look(hand, "Welcome");
    hand.tap(&Request::PutBack);
    look(hand, "put-back");
    let first = hand.targets().all.iter().find(|t| matches!(t.request, Request::Where(_))).unwrap().request.clone();
    hand.tap(&first);
    look(hand, "put-back, found");
    hand.tap(&Request::Back);
    look(hand, "Welcome");
    hand.tap(&Request::Begin);
    look(hand, "base");
    hand.tap(&Request::ToStage);
    look(hand, "bare stage");
    hang(hand, &["key-heart", "vial-stars", "bead-lapis"]);
    look(hand, "stage");
    let at = hand.hung_at(1);
    hand.tap_at(at);
    look(hand, "stage with a chosen drop");
    for sheet in [
        Overlay::Lines,
        Overlay::Cautions,
        Overlay::Filters,
        Overlay::Wearer,
        Overlay::StartOver,
        Overlay::Languages,
        Overlay::Looks,
        Overlay::Told(Told::NoSurprise),
    ] {
        hand.ask(Request::Open(sheet.clone()));
        look(hand, &format!("{sheet:?}"));
    }
    hand.ask(Request::Close);
    // Nobody touches anything for as long as it takes.
    hand.app.insert_resource(TimeUpdateStrategy::ManualDuration(std::time::Duration::from_secs(1)));
    hand.frames(95);
    hand.app.insert_resource(TimeUpdateStrategy::ManualDuration(std::time::Duration::from_millis(20)));
    look(hand, "still there");
    hand.tap(&Request::StillHere);
    hand.tap(&Request::Review);
    hand.tap(&Request::For(Wearer::Under3));
    look(hand, "review");
    read_and_tick(hand);
    hand.tap(&Request::Send);
    hand.wait_for("the number", |world| world.resource::<Tablet>().screen() == Screen::Sent);
    hand.seconds(1.5);
    look(hand, "sent");
    hand.tap(&Request::Done);
    hand.ask(Request::AskSeller);
    look(hand, "seller, PIN");
    reach_the_menu(hand);
    look(hand, "seller, menu");
    hand.ask(Request::StartPairing);
    look(hand, "seller, address");
    hand.ask(Request::MatchCard);
    look(hand, "seller, bank card");
}

/// From the question for the PIN to the seller's menu.
fn reach_the_menu(hand: &mut Hand) {
    hand.play_the_desk();
    hand.ask(Request::Key('1'));
    hand.ask(Request::EnterKeys);
    hand.around.news.send(News::Pin(Some(PinAnswer::Right))).unwrap();
    hand.wait_for("the menu", |world| world.resource::<Tablet>().seller().step == SellerStep::Menu);
}

/// Nothing outside the window, nothing over something else, nothing without words, nothing too small.
fn sound(hand: &Hand, what: &str) {
    let targets = hand.targets();
    let window = targets.window.unwrap();
    assert!(!targets.all.is_empty(), "{what}: nothing to touch");
    let scrolled = |rect: Rect| targets.scrolls.iter().any(|area| area.rect.expand(1.0).contains_rect(rect));
    for (i, one) in targets.all.iter().enumerate() {
        assert!(!one.label.trim().is_empty(), "{what}: {:?} has no words", one.request);
        assert!(window.expand(0.5).contains_rect(one.rect), "{what}: {} lies outside: {:?}", one.label, one.rect);
        let hung = matches!(one.kind, TargetKind::Hung { .. });
        // What is half scrolled away is as small as what is seen of it.
        if !hung && !scrolled(one.rect) {
            let Vec2 { x, y } = one.rect.size();
            assert!(x >= 43.9 && y >= 43.9, "{what}: {} is {x} × {y}", one.label);
        }
        for other in &targets.all[i + 1..] {
            let both_hung = hung && matches!(other.kind, TargetKind::Hung { .. });
            let stage_things = hung != matches!(other.kind, TargetKind::Hung { .. });
            let shared = one.rect.shrink(0.6).intersect(other.rect.shrink(0.6));
            // Buttons may float over the stage; hung neighbours overlap as roof tiles.
            assert!(
                both_hung || stage_things || !shared.is_positive(),
                "{what}: {} {:?} and {} {:?} overlap",
                one.label,
                one.rect,
                other.label,
                other.rect
            );
        }
    }
}
