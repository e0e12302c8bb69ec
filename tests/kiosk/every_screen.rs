//! Every screen and sheet, at every size: everything can be touched and has its words.

use super::*;

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
pub fn every_screen(hand: &mut Hand, look: &mut dyn FnMut(&mut Hand, &str)) {
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
    hand.frames(185);
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
    thread_the_piece(hand, &mut look);
    hand.ask(Request::AskSeller);
    look(hand, "seller, PIN");
    reach_the_menu(hand);
    look(hand, "seller, menu");
    hand.ask(Request::StartPairing);
    look(hand, "seller, address");
    hand.ask(Request::MatchCard);
    look(hand, "seller, bank card");
}

/// From the number on the screen to the last tick of its piece.
fn thread_the_piece(hand: &mut Hand, look: &mut dyn FnMut(&mut Hand, &str)) {
    let Sending::Given { kept, .. } = &hand.session().sending else { panic!("no number") };
    let number = kept.number.to_string();
    hand.tap(&Request::Done);
    hand.tap(&Request::HaveNumber);
    look(hand, "threading, number");
    for digit in number.chars().filter(char::is_ascii_digit) {
        hand.tap(&Request::Key(digit));
    }
    hand.wait_for("the piece", |world| world.resource::<Tablet>().session().threading.found.is_some());
    hand.seconds(1.0);
    look(hand, "threading");
    for stop in 0..3 {
        hand.tap(&Request::Collect(stop));
    }
    look(hand, "threading, some collected");
    hand.tap(&Request::Done);
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

#[test]
fn every_screen_says_that_it_is_practice_for_as_long_as_it_is() {
    for (lang, word) in [("en", "Practice"), ("de", "Übung")] {
        let (mut options, around) = kiosk_support::options();
        options.language = Some(lang.into());
        let mut hand = Hand::on(chatelaine::kiosk::headless(options, SIZES[0]), around);
        assert!(!hand.reads().contains(word), "it is not yet");
        hand.around.news.send(News::Practice(true)).expect("told");
        hand.wait_for("practice", |world| world.resource::<Tablet>().known().practice);
        every_screen(&mut hand, &mut |hand, what| {
            assert!(hand.reads().contains(word), "{what} in {lang}: {}", hand.reads());
        });
        hand.around.news.send(News::Practice(false)).expect("told");
        hand.wait_for("its end", |world| !world.resource::<Tablet>().known().practice);
        hand.frames(2);
        assert!(!hand.reads().contains(word), "it is over");
    }
}
