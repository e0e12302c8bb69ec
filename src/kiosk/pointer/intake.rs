//! From window events to requests.

use bevy::{
    input::{ButtonState, keyboard::Key, mouse::MouseScrollUnit, touch::TouchPhase},
    prelude::*,
    window::WindowEvent,
};
use bevy_egui::egui::{Pos2, Rect, pos2, vec2};

use super::{
    super::{idle::Idle, tablet::Tablet, targets::Targets, theme},
    Fingers, Focus, MOUSE,
    fingers::Felt,
    release::Released,
};
use crate::guest::{Request, Screen};

/// Pixels a notch of the wheel scrolls.
const NOTCH_PX: f32 = 60.0;
/// How much of what is seen a page turns, so that a line stays in view.
const PAGE: f32 = 0.8;

fn at(position: Vec2) -> Pos2 {
    pos2(position.x, position.y)
}

/// Reads what the window reports, in order, and writes what it asks for.
#[expect(clippy::too_many_arguments, reason = "the one place where all input comes together")]
pub(super) fn read_window_events(
    mut events: MessageReader<WindowEvent>,
    mut fingers: ResMut<Fingers>,
    mut focus: ResMut<Focus>,
    mut idle: ResMut<Idle>,
    mut released: Released,
    targets: Res<Targets>,
    tablet: Res<Tablet>,
    time: Res<Time<Real>>,
    mut requests: MessageWriter<Request>,
) {
    let now = time.elapsed_secs_f64();
    for event in events.read() {
        let felt = match event {
            WindowEvent::TouchInput(touch) => {
                idle.touched();
                focus.hide();
                match touch.phase {
                    TouchPhase::Started => fingers.comes_down(touch.id, at(touch.position), now, &targets),
                    TouchPhase::Moved => fingers.moves(touch.id, at(touch.position), now).into_iter().collect(),
                    TouchPhase::Ended => fingers.leaves(touch.id, at(touch.position), now),
                    TouchPhase::Canceled => fingers.cancelled(touch.id),
                }
            }
            WindowEvent::CursorMoved(moved) => {
                let place = at(moved.position);
                let really = fingers.mouse.replace(place).is_some_and(|before| before != place);
                if really && fingers.mouse_counts(now) {
                    idle.touched();
                }
                fingers.moves(MOUSE, place, now).into_iter().collect()
            }
            WindowEvent::MouseButtonInput(input) if input.button == MouseButton::Left => {
                let Some(place) = fingers.mouse else { continue };
                match input.state {
                    ButtonState::Pressed if fingers.mouse_counts(now) => {
                        idle.touched();
                        focus.hide();
                        fingers.comes_down(MOUSE, place, now, &targets)
                    }
                    ButtonState::Pressed => vec![],
                    ButtonState::Released => fingers.leaves(MOUSE, place, now),
                }
            }
            WindowEvent::MouseWheel(wheel) => {
                idle.touched();
                let pixels = match wheel.unit {
                    MouseScrollUnit::Line => wheel.y * NOTCH_PX,
                    MouseScrollUnit::Pixel => wheel.y,
                };
                let area = fingers.mouse.and_then(|place| targets.scroll_at(place));
                area.map(|area| Felt::Scrolled(area.id, -pixels)).into_iter().collect()
            }
            WindowEvent::WindowFocused(focused) if !focused.focused => {
                focus.lift_keys();
                fingers.all_cancelled()
            }
            WindowEvent::KeyboardInput(key) => {
                idle.touched();
                requests.write_batch(focus.key(key, &targets));
                // The seller's corner for those who have no finger to hold it: the key that opens menus elsewhere.
                if key.logical_key == Key::F10
                    && key.state == ButtonState::Pressed
                    && tablet.screen() == Screen::Welcome
                {
                    requests.write(Request::AskSeller);
                }
                let page = Focus::pages(key).zip(targets.scrolls.last());
                page.map(|(by, area)| Felt::Scrolled(area.id, by * area.rect.height() * PAGE)).into_iter().collect()
            }
            _ => continue,
        };
        for one in felt {
            released.take(one, &targets, &mut requests);
        }
    }
    // The seller's corner is on Welcome, where no guest has anything to lose.
    if tablet.screen() == Screen::Welcome {
        let corner = Rect::from_min_size(Pos2::ZERO, vec2(theme::CORNER_PX, theme::CORNER_PX));
        if fingers.held_in(corner, f64::from(theme::CORNER_HOLD_S), now) {
            requests.write(Request::AskSeller);
        }
    }
}
