//! The seller’s part of the tablet, and what it settles.

use super::*;

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
    hand.frames(185);
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

/// From the question for the PIN to the seller's menu.
pub fn reach_the_menu(hand: &mut Hand) {
    hand.play_the_desk();
    hand.ask(Request::Key('1'));
    hand.ask(Request::EnterKeys);
    hand.around.news.send(News::Pin(Some(PinAnswer::Right))).unwrap();
    hand.wait_for("the menu", |world| world.resource::<Tablet>().seller().step == SellerStep::Menu);
}
