//! What a screen reader is told, and what its user can do, without seeing or touching anything.

use accesskit::{Action, ActionRequest, Node, NodeId, Role, Toggled, TreeId};
use bevy::{
    a11y::{AccessibilityNode, AccessibilityRequested, ActionRequest as Asked},
    input_focus::InputFocus,
    prelude::*,
};
use chatelaine::{
    craft::Wearer,
    guest::{Overlay, Request, Screen},
    kiosk::{Proof, Tablet, i18n::Lang, targets::ScrollId},
};

use super::{every_screen, hang, kiosk_support::Hand, stage_at};

fn read_aloud(hand: &mut Hand) {
    hand.app.world().resource::<AccessibilityRequested>().set(true);
    hand.frames(3);
}

/// The nodes in reading order, the page itself first.
fn nodes(hand: &mut Hand) -> Vec<(Entity, Node)> {
    let world = hand.app.world_mut();
    let mut pages = world.query_filtered::<(Entity, &AccessibilityNode, Option<&Children>), Without<ChildOf>>();
    let pages: Vec<_> = pages
        .iter(world)
        .map(|(entity, node, children)| (entity, node.0.clone(), children.map(|all| all.to_vec()).unwrap_or_default()))
        .collect();
    let [(page, node, children)] = &pages[..] else { panic!("{} pages", pages.len()) };
    let mut all = vec![(*page, node.clone())];
    for child in children {
        all.push((*child, world.get::<AccessibilityNode>(*child).expect("a child is a node").0.clone()));
    }
    let mut every = world.query::<&AccessibilityNode>();
    assert_eq!(every.iter(world).count(), all.len(), "nothing is left of what was there before");
    all
}

fn said(node: &Node) -> &str {
    node.label().or(node.value()).unwrap_or_default()
}

fn the_one(hand: &mut Hand, role: Role, words: &str) -> (Entity, Node) {
    let all = nodes(hand);
    let found = all.iter().find(|(_, node)| node.role() == role && said(node).contains(words));
    found.cloned().unwrap_or_else(|| {
        panic!("no {role:?} {words:?} among {:?}", all.iter().map(|(_, n)| said(n)).collect::<Vec<_>>())
    })
}

fn ask(hand: &mut Hand, (entity, _): &(Entity, Node), action: Action) {
    let request =
        ActionRequest { action, target_tree: TreeId::ROOT, target_node: NodeId(entity.to_bits()), data: None };
    hand.app.world_mut().write_message(Asked(request));
    hand.frames(4);
}

#[test]
fn nothing_is_told_while_nobody_listens() {
    let mut hand = stage_at((1280, 800));
    let world = hand.app.world_mut();
    assert_eq!(world.query::<&AccessibilityNode>().iter(world).count(), 0);
    assert!(!world.resource::<Proof>().on);
}

#[test]
fn a_piece_is_made_and_sent_by_ear() {
    let mut hand = Hand::at((1280, 800));
    read_aloud(&mut hand);
    let begin = the_one(&mut hand, Role::Button, "Touch to begin");
    ask(&mut hand, &begin, Action::Click);
    hand.frames(20);
    assert_eq!(hand.screen(), Screen::Base);
    let onward = the_one(&mut hand, Role::Button, "On to charms and beads");
    ask(&mut hand, &onward, Action::Focus);
    let focus = hand.app.world().resource::<InputFocus>().get();
    assert_eq!(focus, Some(onward.0), "the keyboard's ring and the reader are at the same place");
    ask(&mut hand, &onward, Action::Click);
    hand.frames(20);
    for home in ["A1", "A2"] {
        let drop = nodes(&mut hand).into_iter().find(|(_, node)| said(node).contains(home)).expect("a compartment");
        ask(&mut hand, &drop, Action::Click);
        hand.frames(30);
    }
    assert_eq!(hand.hung().len(), 2);
    let onward = the_one(&mut hand, Role::Button, "Look it over");
    ask(&mut hand, &onward, Action::Click);
    hand.frames(20);
    let child = the_one(&mut hand, Role::Button, "3 to 5");
    ask(&mut hand, &child, Action::Click);
    // What lies below is turned to before the box can be ticked.
    let reads_on = |hand: &mut Hand| nodes(hand).into_iter().find(|(_, node)| said(node).starts_with("Read the"));
    while let Some(on) = reads_on(&mut hand) {
        ask(&mut hand, &on, Action::Click);
    }
    let tick = the_one(&mut hand, Role::CheckBox, "grown-up");
    assert_eq!(tick.1.toggled(), Some(Toggled::False));
    ask(&mut hand, &tick, Action::Click);
    let ticked = the_one(&mut hand, Role::CheckBox, "grown-up");
    assert_eq!((ticked.0, ticked.1.toggled()), (tick.0, Some(Toggled::True)), "the same box");
    let send = the_one(&mut hand, Role::Button, "Send");
    ask(&mut hand, &send, Action::Click);
    hand.wait_for("the number", |world| world.resource::<Tablet>().screen() == Screen::Sent);
    hand.seconds(2.0);
    the_one(&mut hand, Role::Label, "3-");
}

#[test]
fn every_screen_is_told_whole_and_in_its_order() {
    for (size, lang) in [((1280, 800), Lang::En), ((800, 1280), Lang::De)] {
        let mut hand = Hand::at(size);
        read_aloud(&mut hand);
        hand.ask(Request::Speak(lang));
        every_screen(&mut hand, &mut |hand, what| {
            hand.frames(3);
            let all = nodes(hand);
            let touchable: Vec<String> = all
                .iter()
                .filter(|(_, node)| node.supports_action(Action::Click))
                .map(|(_, n)| said(n).to_owned())
                .collect();
            let labels: Vec<String> = hand.targets().all.iter().map(|target| target.label.clone()).collect();
            assert_eq!(touchable, labels, "{what}");
            assert!(
                all.iter().all(|(_, node)| node.role() == Role::ScrollView || !said(node).trim().is_empty()),
                "{what}"
            );
            // Every text is told by itself or stands on something that tells what it is.
            let targets = hand.targets().all.clone();
            for text in &hand.app.world().resource::<Proof>().texts {
                let middle = text.rect.center();
                let hidden = !text.clip.contains(middle) || targets.iter().any(|target| target.rect.contains(middle));
                assert!(
                    hidden || all.iter().any(|(_, node)| node.value() == Some(&text.text)),
                    "{what}: {}",
                    text.text
                );
            }
        });
    }
}

#[test]
fn a_sheet_hides_what_lies_under_it_and_pages_turn() {
    let mut hand = stage_at((800, 480));
    hang(&mut hand, &["key-heart", "vial-stars", "bead-lapis"]);
    read_aloud(&mut hand);
    let chip = the_one(&mut hand, Role::Button, "caution");
    ask(&mut hand, &chip, Action::Click);
    assert_eq!(hand.session().overlay, Some(Overlay::Cautions));
    let all = nodes(&mut hand);
    assert_eq!(all[0].1.role(), Role::Dialog);
    assert!(all.iter().all(|(_, node)| !said(node).contains("Undo")));
    let deep = all.iter().find(|(_, node)| node.role() == Role::ScrollView).cloned();
    let deep = deep.expect("so many cautions do not fit the sheet");
    let before = hand.app.world().resource::<chatelaine::kiosk::targets::Scrolls>().0[&ScrollId::Sheet].offset;
    ask(&mut hand, &deep, Action::ScrollDown);
    let after = hand.app.world().resource::<chatelaine::kiosk::targets::Scrolls>().0[&ScrollId::Sheet].offset;
    assert!(after > before + 20.0, "{before} {after}");
    hand.tap(&Request::Close);
    hand.frames(3);
    hand.tap(&Request::Open(Overlay::Wearer));
    let older = the_one(&mut hand, Role::Button, "13 or older");
    ask(&mut hand, &older, Action::Click);
    assert_eq!(hand.session().history.now().wearer, Wearer::From13);
}
