//! What a screen reader is told: everything that can be touched and everything that is written, in painting order.
//!
//! The screens are painted, not built of widgets, so the tree is made of what painting noted. Nothing is done until a
//! reader asks.

use std::collections::HashMap;

use accesskit::{Action, Live, Node, NodeId, Role, Toggled};
use bevy::{
    a11y::{AccessibilityNode, AccessibilityRequested, AccessibilitySystems, ActionRequest},
    input_focus::{FocusCause, InputFocus},
    prelude::*,
    window::PrimaryWindow,
};
use bevy_egui::{EguiPostUpdateSet, egui::Rect};

use crate::guest::{Overlay, Request, Screen};
use crate::kiosk::{
    Phase,
    idle::Idle,
    paint::{Proof, Written},
    pointer::{Focus, fling},
    power::Awake,
    tablet::Tablet,
    targets::{ScrollArea, ScrollId, Scrolls, Target, Targets},
};

/// How much of what is seen a reader's scrolling turns, so that a line stays in view.
const PAGE: f32 = 0.8;
/// So many of the first texts of a sheet, or of the screen with the number, are said as they come up: the heading and what
/// it is about.
const AT_ONCE: usize = 2;

pub(in crate::kiosk) fn plugin(app: &mut App) {
    // Bevy's own plugin adds it only where there is a window's event loop.
    app.add_message::<ActionRequest>()
        .init_resource::<Told>()
        .init_resource::<InputFocus>()
        .add_systems(Update, answer.after(fling).in_set(Phase::Intake))
        .add_systems(PostUpdate, tell.after(EguiPostUpdateSet::EndPass).before(AccessibilitySystems::Update));
}

/// What a node stands for, whatever its place on the screen: the same thing stays the same node.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
enum Thing {
    /// The one with this request (as written for people who debug), and which of those.
    Touch(String, usize),
    /// These words, and which of those.
    Words(String, usize),
    /// A place that scrolls.
    Scrolls(ScrollId),
}

/// The nodes there are.
#[derive(Resource, Default)]
struct Told {
    /// All others are its children, in reading order.
    page: Option<Entity>,
    nodes: HashMap<Thing, Entity>,
    /// What a request of the reader about a node means.
    requests: HashMap<Entity, Answers>,
}

enum Answers {
    /// The target's place in the last painting.
    Touch(usize),
    Scroll(ScrollArea),
}

#[expect(clippy::too_many_arguments, reason = "a system's parameters are what it reads")]
fn tell(
    requested: Res<AccessibilityRequested>,
    targets: Res<Targets>,
    tablet: Res<Tablet>,
    idle: Res<Idle>,
    window: Query<&Window, With<PrimaryWindow>>,
    mut proof: ResMut<Proof>,
    mut told: ResMut<Told>,
    mut focus: ResMut<InputFocus>,
    mut nodes: Query<&mut AccessibilityNode>,
    mut commands: Commands,
    awake: Res<Awake>,
) {
    if !requested.get() {
        return;
    }
    if !proof.on {
        // Texts are noted from the next painting on.
        proof.on = true;
        awake.stir();
    }
    let factor = window.single().map_or(1.0, Window::scale_factor);
    let mut page = Node::new(if tablet.session().overlay.is_some() { Role::Dialog } else { Role::Main });
    let said_at_once = tablet.session().overlay.is_some() || tablet.screen() == Screen::Sent || idle.asking.is_some();
    let all = things(&targets, &proof, said_at_once, factor);

    if let Some(heading) = all.iter().find_map(|(_, node, _)| node.value()) {
        page.set_label(heading);
    }

    let told = &mut *told;
    let mut changed = put(&mut told.page, page, &mut nodes, &mut commands);
    let mut order = Vec::with_capacity(all.len());
    let mut kept = HashMap::with_capacity(all.len());
    told.requests.clear();
    let mut focused = None;
    for (thing, node, answers) in all {
        let mut entity = told.nodes.remove(&thing);
        changed |= put(&mut entity, node, &mut nodes, &mut commands);
        let Some(entity) = entity else { continue };
        if matches!(answers, Some(Answers::Touch(index)) if targets.ring == Some(index)) {
            focused = Some(entity);
        }
        told.requests.extend(answers.map(|answers| (entity, answers)));
        order.push(entity);
        kept.insert(thing, entity);
    }
    for (_, gone) in told.nodes.drain() {
        commands.entity(gone).despawn();
        changed = true;
    }
    told.nodes = kept;
    if changed && let Some(page) = told.page {
        commands.entity(page).replace_children(&order);
        // What is new reaches the reader with the next frame.
        awake.stir();
    }
    let focused = focused.or(told.page);
    if focus.get() != focused
        && let Some(entity) = focused
    {
        focus.set(entity, FocusCause::Navigated);
        awake.stir();
    }
}

/// Puts `node` on the entity, a new one if there is none yet. Tells whether anything is different.
fn put(
    entity: &mut Option<Entity>,
    node: Node,
    nodes: &mut Query<&mut AccessibilityNode>,
    commands: &mut Commands,
) -> bool {
    match entity.and_then(|entity| nodes.get_mut(entity).ok()) {
        Some(mut before) if before.0 == node => {
            before.bypass_change_detection();
            false
        }
        Some(mut before) => {
            before.0 = node;
            true
        }
        None => {
            *entity = Some(commands.spawn(AccessibilityNode(node)).id());
            true
        }
    }
}

/// All things on the screen in painting order, with the node and what a reader can ask of it.
fn things(targets: &Targets, proof: &Proof, said_at_once: bool, factor: f32) -> Vec<(Thing, Node, Option<Answers>)> {
    let mut all = Vec::new();
    let mut seen: HashMap<Thing, usize> = HashMap::new();
    let mut nth = |thing: Thing| {
        let count = seen.entry(thing.clone()).or_default();
        *count += 1;
        match thing {
            Thing::Touch(request, _) => Thing::Touch(request, *count),
            Thing::Words(text, _) => Thing::Words(text, *count),
            scrolls => scrolls,
        }
    };
    // What stands on something to touch is what that says.
    let free = |text: &&Written| {
        let middle = text.rect.center();
        text.clip.contains(middle) && !targets.all.iter().any(|target| target.rect.contains(middle))
    };
    let mut texts = proof.texts.iter().filter(free).peekable();
    for index in 0..=targets.all.len() {
        while let Some(text) = texts.next_if(|text| text.after <= index) {
            let node = words(text, said_at_once && all.len() < AT_ONCE, factor);
            all.push((nth(Thing::Words(text.text.clone(), 0)), node, None));
        }
        if let Some(target) = targets.all.get(index) {
            let request = match target.request {
                // Ticked or not, it is the same box.
                Request::GrownUp(_) => "GrownUp".to_owned(),
                ref request => format!("{request:?}"),
            };
            let thing = nth(Thing::Touch(request, 0));
            all.push((thing, touchable(target, factor), Some(Answers::Touch(index))));
        }
    }
    all.extend(
        targets
            .scrolls
            .iter()
            .map(|area| (Thing::Scrolls(area.id), scrolling(area, factor), Some(Answers::Scroll(*area)))),
    );
    all
}

fn bounds(rect: Rect, factor: f32) -> accesskit::Rect {
    let [x0, y0, x1, y1] = [rect.left(), rect.top(), rect.right(), rect.bottom()].map(|v| f64::from(v * factor));
    accesskit::Rect { x0, y0, x1, y1 }
}

fn words(text: &Written, at_once: bool, factor: f32) -> Node {
    let mut node = Node::new(Role::Label);
    node.set_value(text.text.clone());
    node.set_bounds(bounds(text.rect, factor));
    if at_once {
        node.set_live(Live::Polite);
    }
    node
}

fn touchable(target: &Target, factor: f32) -> Node {
    let tick = matches!(target.request, Request::GrownUp(_));
    let mut node = Node::new(if tick { Role::CheckBox } else { Role::Button });
    node.set_label(target.label.clone());
    node.set_bounds(bounds(target.rect, factor));
    node.add_action(Action::Click);
    node.add_action(Action::Focus);
    if tick || target.chosen {
        node.set_toggled(if target.chosen { Toggled::True } else { Toggled::False });
    }
    // The sum and the cautions change by what is done elsewhere on the screen.
    if matches!(target.request, Request::Open(Overlay::Lines | Overlay::Cautions)) {
        node.set_live(Live::Polite);
    }
    node
}

fn scrolling(area: &ScrollArea, factor: f32) -> Node {
    let mut node = Node::new(Role::ScrollView);
    node.set_bounds(bounds(area.rect, factor));
    node.add_action(Action::ScrollUp);
    node.add_action(Action::ScrollDown);
    node
}

/// Does what the reader's user asks for.
fn answer(
    mut wishes: MessageReader<ActionRequest>,
    told: Res<Told>,
    targets: Res<Targets>,
    mut focus: ResMut<Focus>,
    mut idle: ResMut<Idle>,
    mut scrolls: ResMut<Scrolls>,
    mut requests: MessageWriter<Request>,
) {
    for wish in wishes.read() {
        let NodeId(bits) = wish.target_node;
        let Some(answers) = Entity::try_from_bits(bits).and_then(|entity| told.requests.get(&entity)) else { continue };
        idle.touched();
        match (answers, wish.action) {
            (Answers::Touch(index), Action::Click) => {
                requests.write_batch(targets.all.get(*index).map(|target| target.request.clone()));
            }
            (Answers::Touch(index), Action::Focus) => focus.put_on(&targets, *index),
            (Answers::Scroll(area), Action::ScrollUp | Action::ScrollDown) => {
                let way = if wish.action == Action::ScrollDown { PAGE } else { -PAGE };
                scrolls.0.entry(area.id).or_default().by(way * area.rect.height());
            }
            _ => {}
        }
    }
}
