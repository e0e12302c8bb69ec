//! Who it is for: that nothing is sent before it is known, that what does not suit is said, and that the ways out work.

use bevy_egui::egui::{Pos2, vec2};
use chatelaine::{
    catalog::Catalog,
    caution::CautionCode,
    craft::{BaseKind, Length, Wearer},
    guest::{Overlay, Request, Screen, Sending, Standing},
    kiosk::{
        Proof, Tablet,
        i18n::{Lang, Texts},
    },
    link::News,
};

use super::{hang, kiosk_support::Hand, read_and_tick, stage_at};

fn says(hand: &Hand, words: &str) -> bool {
    hand.targets().all.iter().any(|target| target.label.contains(words))
}

#[test]
fn an_unsuitable_piece_is_said_plainly_and_every_way_out_works() {
    let mut hand = stage_at((800, 480));
    hand.app.world_mut().resource_mut::<Proof>().on = true;
    // Plated steel and cut crystal that nobody tested.
    hand.app.world_mut().write_message(Request::ChooseBase("chain-gunmetal".into()));
    hang(&mut hand, &["crystal-cube"]);
    hand.tap(&Request::Review);
    hand.tap(&Request::For(Wearer::From3To5));
    assert!(!hand.derived().verdict.suitable && !hand.sees(&Request::Send));
    // Chain and crystal both speak against it: another base and other drops are offered, and both can be had.
    assert!(hand.derived().ways_out.base && hand.derived().ways_out.drops);
    see(&mut hand, &Request::AnotherBase);
    assert!(hand.sees(&Request::Open(Overlay::Wearer)) && says(&hand, "Change who it is for"));
    hand.tap(&Request::AnotherBase);
    hand.frames(20);
    assert_eq!((hand.screen(), hand.hung().len()), (Screen::Base, 1));
    let label = |hand: &mut Hand, id: &str| hand.find(&Request::ChooseBase(id.into())).label.clone();
    assert!(label(&mut hand, "chain-gunmetal").ends_with("Not for this age"));
    let unfit = &hand.derived().unfit_bases;
    assert!(unfit.contains("bangle-brass"), "it slips off a small hand, and is no way out");
    assert!(!unfit.contains("bangle-child") && !unfit.contains("chain-apart"));
    hand.app.world_mut().write_message(Request::ChooseBase("bangle-child".into()));
    hand.frames(5);
    let grave =
        |hand: &Hand| hand.derived().verdict.cautions.iter().filter(|one| one.grave && one.drop.is_none()).count();
    assert_eq!(grave(&hand), 0, "a bangle of its size has no clasp, and no loop that can catch");
    hand.tap(&Request::ToStage);
    hand.frames(20);
    hand.tap(&Request::Review);
    hand.frames(20);
    assert!(!hand.derived().ways_out.base, "only the drop is left to blame");
    hand.tap(&Request::Open(Overlay::Wearer));
    hand.tap(&Request::For(Wearer::From13));
    assert!(hand.derived().verdict.suitable && hand.sees(&Request::Send));
    // Nothing on this table is for a child under 3, and it says so.
    hand.tap(&Request::Open(Overlay::Wearer));
    hand.tap(&Request::For(Wearer::Under3));
    let ways_out = hand.derived().ways_out;
    assert!(!ways_out.base && !ways_out.drops);
    see(&mut hand, &Request::Open(Overlay::Wearer));
    let nothing = Texts::new(Lang::En).get("unsuitable-nothing");
    let proof = hand.app.world().resource::<Proof>();
    assert!(proof.texts.iter().any(|text| text.text.contains(&nothing)));
    hand.tap(&Request::Back);
    assert_eq!(hand.screen(), Screen::Stage);
}

/// Scrolls Review until `request` can be touched.
fn see(hand: &mut Hand, request: &Request) {
    for _ in 0..20 {
        if hand.sees(request) || !hand.sees(&Request::ReadOn) {
            return;
        }
        hand.tap(&Request::ReadOn);
    }
}

/// "Surprise me" chooses what suits the wearer that was given.
#[test]
fn a_surprise_suits_its_wearer() {
    let mut hand = stage_at((1280, 800));
    hand.tap(&Request::Open(Overlay::Wearer));
    hand.tap(&Request::For(Wearer::From6To12));
    for _ in 0..12 {
        hand.ask(Request::Surprise);
        let catalog = hand.app.world().resource::<Tablet>().known().snapshot.clone().unwrap().catalog.clone();
        assert!(hand.hung().len() >= 2);
        for id in hand.hung() {
            assert!(catalog.suits(catalog.drop_kind(&id).unwrap(), Wearer::From6To12), "{id}");
        }
    }
}

/// A neck that was measured: the chain is judged by it, and hung on it; a reset forgets it.
#[test]
fn a_guest_can_say_the_neck() {
    let mut hand = Hand::at((1280, 800));
    hand.app.world_mut().resource_mut::<Proof>().on = true;
    hand.tap(&Request::Begin);
    hand.frames(20);
    hand.tap(&Request::Open(Overlay::Wearer));
    hand.tap(&Request::For(Wearer::From13));
    let written = |hand: &Hand, words: &str| {
        hand.app.world().resource::<Proof>().texts.iter().any(|text| text.text.contains(words))
    };
    // 24 in of chain close on 596 mm of neck with half an inch of slack.
    assert!(written(&hand, "closes on necks up to 23.5"), "the base's page tells the largest neck");
    for _ in 0..10 {
        hand.app.world_mut().write_message(Request::Longer(-1));
        hand.frames(1);
    }
    let short = |hand: &Hand| {
        hand.derived().verdict.cautions.iter().find(|one| one.code == CautionCode::ChainTooShort).cloned()
    };
    assert!(short(&hand).is_some_and(|one| one.form.is_empty()), "14 in do not close on every neck");
    hand.tap(&Request::Open(Overlay::Neck));
    hand.tap(&Request::Neck(Some(Length::from_inches(13.0))));
    assert_eq!(short(&hand), None, "13 in of neck are within it");
    assert!(says(&hand, "Neck: 13"));
    hand.tap(&Request::Open(Overlay::Neck));
    hand.tap(&Request::Neck(Some(Length::from_inches(15.0))));
    let own = short(&hand).expect("15 in are not");
    assert_eq!((own.form.as_str(), own.number, own.limit), ("own", Some(342.into()), Some(381.into())));
    assert!(hand.derived().places.is_some(), "it is still shown, on the largest neck it closes on");
    hand.ask(Request::Done);
    assert_eq!(hand.session().history.now().neck, None);
}

/// The desk sends another catalogue.
fn news(hand: &mut Hand, change: impl FnOnce(&mut Catalog)) {
    super::news(hand, "another", change);
}

#[test]
fn a_chain_too_short_for_a_child_is_said_and_can_be_made_longer() {
    let mut hand = Hand::at((1280, 800));
    hand.app.world_mut().resource_mut::<Proof>().on = true;
    news(&mut hand, |catalog| {
        catalog.bases.retain(|base| base.id == "chain-brass");
        let BaseKind::Necklace(chain) = &mut catalog.bases[0].kind else { panic!("a chain") };
        chain.lengths.shortest = Length::from_inches(10.0);
    });
    hand.tap(&Request::Begin);
    hand.frames(20);
    hand.tap(&Request::Open(Overlay::Wearer));
    hand.tap(&Request::For(Wearer::From6To12));
    for _ in 0..14 {
        hand.app.world_mut().write_message(Request::Longer(-1));
        hand.frames(1);
    }
    hand.frames(3);
    assert!(!hand.derived().verdict.suitable && hand.derived().ways_out.base && !hand.derived().ways_out.drops);
    // 254 mm less half an inch of slack: 241 mm, which are 9.5 in.
    let closes = "closes on necks up to 9.5";
    assert!(hand.app.world().resource::<Proof>().texts.iter().any(|text| text.text.contains(closes)));
    for _ in 0..4 {
        hand.tap(&Request::Longer(1));
    }
    assert!(hand.derived().verdict.suitable, "14 inches go round it");
    // For a toddler the only base there is speaks against itself, however long: no way leads there.
    hand.tap(&Request::Open(Overlay::Wearer));
    hand.tap(&Request::For(Wearer::Under3));
    assert!(!hand.derived().verdict.suitable && !hand.derived().ways_out.base);
}

/// A child's neck is smaller, and what hangs on it hangs lower on the body than on a grown-up.
#[test]
fn where_a_chain_falls_is_told_for_its_wearer() {
    let mut hand = Hand::at((1280, 800));
    hand.app.world_mut().resource_mut::<Proof>().on = true;
    hand.tap(&Request::Begin);
    hand.frames(20);
    let mut fallen = Vec::new();
    for wearer in [Wearer::From13, Wearer::Under3] {
        hand.tap(&Request::Open(Overlay::Wearer));
        hand.tap(&Request::For(wearer));
        hand.frames(3);
        let proof = hand.app.world().resource::<Proof>();
        let all = [
            "falls-throat",
            "falls-neck",
            "falls-collarbone",
            "falls-below-collarbone",
            "falls-breastbone",
            "falls-low",
        ];
        let english = Texts::new(Lang::En);
        let found = all.iter().position(|key| proof.texts.iter().any(|text| text.text == english.get(key)));
        fallen.push(found.expect("where it falls is written"));
    }
    assert!(fallen[0] < fallen[1], "24 inches: {fallen:?}");
}

#[test]
fn nothing_is_sent_before_it_is_known_who_it_is_for() {
    let mut hand = stage_at((1280, 800));
    hang(&mut hand, &["key-heart"]);
    hand.tap(&Request::Review);
    hand.tap(&Request::Close);
    assert!(!hand.sees(&Request::Send), "the button asks who it is for instead");
    assert!(says(&hand, "Who is it for?"));
    hand.app.world_mut().write_message(Request::Send);
    hand.frames(5);
    assert_eq!((&hand.session().sending, &hand.session().overlay), (&Sending::No, &Some(Overlay::Wearer)));
    hand.tap(&Request::For(Wearer::From13));
    assert!(hand.sees(&Request::Send));
}

/// A quick look for parents: only what suits an age, from the filters and as the way out of a piece that does not suit.
#[test]
fn only_what_suits_an_age_can_be_asked_for() {
    let mut hand = stage_at((1280, 800));
    hang(&mut hand, &["key-heart", "lantern-glow"]);
    hand.tap(&Request::Open(Overlay::Filters));
    for wearer in Wearer::ANSWERS {
        assert!(hand.sees(&Request::OnlySuiting(Some(wearer))), "{wearer:?}");
    }
    hand.tap(&Request::OnlySuiting(Some(Wearer::From3To5)));
    assert_eq!(hand.session().overlay, Some(Overlay::Filters), "the sheet stays open");
    hand.tap(&Request::Close);
    let stands = |hand: &Hand, kind: &str| hand.derived().standing[kind];
    assert_eq!((stands(&hand, "lantern-glow"), stands(&hand, "key-round")), (Standing::NotFor, Standing::Open));
    assert!(!hand.sees(&Request::Hang { kind: "lantern-glow".into(), at: None }));
    hand.tap(&Request::WhyNot("lantern-glow".into()));
    assert_eq!(hand.hung().len(), 2, "what does not suit is not hung");
    let text = hand.reads();
    assert!(text.contains("Not for this age") && text.contains("button cell"), "{text}");
    assert!(text.contains("qualified safety assessment"), "{text}");
    hand.tap(&Request::Close);
    hand.tap(&Request::Open(Overlay::Filters));
    hand.tap(&Request::ClearFilters);
    hand.tap(&Request::Close);
    assert_eq!(stands(&hand, "lantern-glow"), Standing::Open);

    // Who asked for what suits a child has said who it is for: nobody asks again.
    hand.tap(&Request::Review);
    assert_eq!((hand.screen(), &hand.session().overlay), (Screen::Review, &None));
    hand.ask(Request::For(Wearer::From6To12));
    assert!(!hand.derived().verdict.suitable, "a button cell");
    hand.tap(&Request::OnlySuiting(Some(Wearer::From6To12)));
    assert_eq!((hand.screen(), stands(&hand, "lantern-glow")), (Screen::Stage, Standing::NotFor));
    for lang in Lang::ALL {
        let texts = Texts::new(lang);
        for key in ["filters-price", "why-not-for-title", "unsuitable-show"] {
            assert_ne!(texts.get(key), key, "{lang:?}");
        }
    }
}

/// Names come from the catalogue in the guest's language; what is not translated is called as the seller calls it.
#[test]
fn a_german_guest_reads_german_names() {
    let mut hand = stage_at((1280, 800));
    hand.app.world_mut().resource_mut::<Proof>().on = true;
    hand.ask(Request::Speak(Lang::De));
    hang(&mut hand, &["key-heart"]);
    let written = |hand: &Hand, words: &str| {
        hand.app.world().resource::<Proof>().texts.iter().any(|text| text.text.contains(words))
    };
    assert!(says(&hand, "A1 Herzschlüssel") && written(&hand, "Schlüssel und Medaillons"));
    hand.tap(&Request::Open(Overlay::Lines));
    assert!(written(&hand, "Herzschlüssel") && written(&hand, "Ankerkette") && !written(&hand, "Heart-bow"));
    hand.tap(&Request::Close);
    hand.tap(&Request::Open(Overlay::Wearer));
    hand.tap(&Request::For(Wearer::Under3));
    hand.tap(&Request::Open(Overlay::Cautions));
    assert!(written(&hand, "Kleinteile") && written(&hand, "Herzschlüssel"));
    hand.tap(&Request::Close);
    news(&mut hand, |catalog| catalog.names = Default::default());
    assert!(says(&hand, "A1 Heart-bow key"));
}

#[test]
fn what_is_ticked_does_not_outlive_a_change() {
    let mut hand = stage_at((1280, 800));
    hang(&mut hand, &["vial-stars"]);
    hand.tap(&Request::Review);
    hand.tap(&Request::For(Wearer::From6To12));
    read_and_tick(&mut hand);
    assert!(hand.sees(&Request::Send));
    hand.tap(&Request::Open(Overlay::Wearer));
    hand.tap(&Request::For(Wearer::From3To5));
    assert!(!hand.sees(&Request::Send));
}

#[test]
fn a_caution_that_arises_at_the_desk_has_to_be_read_as_well() {
    let mut hand = stage_at((1280, 800));
    hang(&mut hand, &["key-heart", "vial-stars"]);
    hand.tap(&Request::Review);
    hand.tap(&Request::For(Wearer::From6To12));
    read_and_tick(&mut hand);
    assert!(hand.sees(&Request::Send));
    news(&mut hand, |catalog| catalog.drops.iter_mut().find(|kind| kind.id == "key-heart").unwrap().facts.sharp = true);
    assert!(!hand.sees(&Request::Send), "the tick was for other cautions");
    read_and_tick(&mut hand);
    assert!(hand.sees(&Request::Send));
}

#[test]
fn what_is_sent_stays_as_it_is() {
    let mut hand = stage_at((1280, 800));
    hand.play_the_desk();
    hang(&mut hand, &["key-heart", "bead-lapis"]);
    hand.tap(&Request::Review);
    hand.tap(&Request::For(Wearer::From13));
    hand.tap(&Request::Send);
    assert!(matches!(hand.session().sending, Sending::Asked(_)));
    let before = hand.session().history.now().clone();
    hand.control("z");
    for request in
        [Request::Undo, Request::For(Wearer::Under3), Request::StartOver, Request::AnotherBase, Request::Surprise]
    {
        hand.app.world_mut().write_message(request);
        hand.frames(2);
    }
    assert_eq!((hand.session().history.now(), hand.screen()), (&before, Screen::Review));
}

#[test]
fn the_number_stays_while_somebody_is_there() {
    let mut hand = stage_at((1280, 800));
    hang(&mut hand, &["key-heart"]);
    hand.tap(&Request::Review);
    hand.tap(&Request::For(Wearer::From13));
    hand.tap(&Request::Send);
    hand.wait_for("the number", |world| world.resource::<Tablet>().screen() == Screen::Sent);
    for _ in 0..3 {
        hand.seconds(20.0);
        let middle = hand.targets().window.unwrap().center();
        hand.tap_at(middle);
        assert_eq!(hand.screen(), Screen::Sent);
    }
    hand.seconds(31.0);
    assert_eq!(hand.screen(), Screen::Welcome);
}

#[test]
fn a_tablet_with_a_full_disk_keeps_the_piece_on_the_screen() {
    let mut hand = stage_at((1280, 800));
    hand.app.world_mut().resource_mut::<Proof>().on = true;
    hand.around.news.send(News::DiskNearlyFull(true)).unwrap();
    hand.wait_for("the warning", |world| world.resource::<Tablet>().known().disk_nearly_full);
    hang(&mut hand, &["key-heart", "bead-lapis"]);
    let texts = Texts::new(Lang::En);
    let warned = texts.get("disk-nearly-full");
    assert!(hand.app.world().resource::<Proof>().texts.iter().any(|text| text.text == warned));
    hand.tap(&Request::Review);
    hand.tap(&Request::For(Wearer::From13));
    // Nothing can be written where a file lies in the outbox's place.
    let outbox = hand.around.folder.path().join("outbox");
    std::fs::remove_dir(&outbox).unwrap();
    std::fs::write(&outbox, "").unwrap();
    hand.tap(&Request::Send);
    hand.wait_for("the refusal", |world| world.resource::<Tablet>().session().overlay.is_some());
    let read = hand.reads();
    assert!(read.contains(&texts.get("send-failed-title")) && read.contains(&texts.get("send-disk")), "{read}");
    assert_eq!(hand.session().sending, Sending::No);
    assert_eq!(hand.hung(), ["key-heart", "bead-lapis"]);
    std::fs::remove_file(&outbox).unwrap();
    std::fs::create_dir(&outbox).unwrap();
    hand.tap(&Request::Close);
    hand.tap(&Request::Send);
    hand.wait_for("the number", |world| matches!(world.resource::<Tablet>().session().sending, Sending::Given { .. }));
}

#[test]
fn a_near_miss_on_a_sheet_leaves_it_open() {
    let mut hand = stage_at((1280, 800));
    hand.tap(&Request::Open(Overlay::Filters));
    let sheet = hand.targets().sheet.expect("a sheet");
    let bare = |p: &Pos2| !hand.targets().all.iter().any(|target| target.rect.contains(*p));
    let grid = (1..40).flat_map(|x| (1..40).map(move |y| sheet.lerp_inside(vec2(x as f32, y as f32) / 40.0)));
    let between: Vec<Pos2> = grid.filter(bare).step_by(97).collect();
    assert!(between.len() > 3, "{between:?}");
    for p in between {
        hand.tap_at(p);
        assert_eq!(hand.session().overlay, Some(Overlay::Filters), "{p:?}");
    }
    hand.tap_at(sheet.left_center() - vec2(20.0, 0.0));
    assert_eq!(hand.session().overlay, None, "beside it");
}
