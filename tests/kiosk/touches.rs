//! What fingers do: cancelled, lost, two at once, within one frame; sliding, undo.

use super::*;

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
