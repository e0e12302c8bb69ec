//! The keyboard and the mouse do what a finger does.

use super::*;

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
