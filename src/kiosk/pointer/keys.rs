//! The keyboard: a ring that goes from target to target, and keys for the usual requests.

use std::collections::HashSet;

use bevy::{
    input::{
        ButtonState,
        keyboard::{Key, KeyboardInput},
    },
    prelude::*,
};
use bevy_egui::egui::{Rect, Vec2};

use crate::guest::Request;
use crate::kiosk::targets::Targets;

/// Where the keyboard is.
#[derive(Resource, Debug, Default)]
pub(crate) struct Focus {
    /// The request of the target with the ring, and which of those with the same request it is; its rect may move between
    /// paintings.
    on: Option<(Request, usize)>,
    /// Where it was last.
    rect: Option<Rect>,
    held: HashSet<&'static str>,
}

impl Focus {
    /// Where the ring is drawn.
    pub(crate) fn ring(&self, targets: &Targets) -> Option<Rect> {
        Some(targets.all[self.index(targets)?].rect)
    }

    /// The number of the target with the ring, if it is still on the screen.
    pub(crate) fn index(&self, targets: &Targets) -> Option<usize> {
        let (request, nth) = self.on.as_ref()?;
        let same = targets.all.iter().enumerate().filter(|(_, target)| target.request == *request);
        same.map(|(index, _)| index).nth(*nth)
    }

    /// A finger has come: the ring goes.
    pub(crate) fn hide(&mut self) {
        (self.on, self.rect) = (None, None);
    }

    /// The window is no longer in front: no key counts as held.
    pub(crate) fn lift_keys(&mut self) {
        self.held.clear();
    }

    /// What a key asks for.
    pub(crate) fn key(&mut self, input: &KeyboardInput, targets: &Targets) -> Option<Request> {
        let down = input.state == ButtonState::Pressed;
        let modifier = match input.logical_key {
            Key::Control => Some("control"),
            Key::Shift => Some("shift"),
            _ => None,
        };
        if let Some(name) = modifier {
            if down {
                self.held.insert(name)
            } else {
                self.held.remove(name)
            };
            return None;
        }
        if !down {
            return None;
        }
        match &input.logical_key {
            Key::Character(c) if self.held.contains("control") => match c.to_lowercase().as_str() {
                "z" if self.held.contains("shift") => Some(Request::Redo),
                "z" => Some(Request::Undo),
                "y" => Some(Request::Redo),
                _ => None,
            },
            // Digits go to the keypad when one is on the screen.
            Key::Character(c) => {
                let request = Request::Key(c.chars().next()?);
                targets.all.iter().any(|target| target.request == request).then_some(request)
            }
            Key::Backspace => targets.all.iter().any(|t| t.request == Request::EraseKey).then_some(Request::EraseKey),
            Key::Escape => Some(Request::Back),
            Key::Enter | Key::Space => match self.index(targets) {
                Some(index) => Some(targets.all[index].request.clone()),
                // What was typed on a keypad.
                None => targets.all.iter().any(|t| t.request == Request::EnterKeys).then_some(Request::EnterKeys),
            },
            Key::Tab => {
                self.step(targets, if self.held.contains("shift") { -1 } else { 1 });
                None
            }
            Key::ArrowRight => self.towards(targets, Vec2::new(1.0, 0.0)),
            Key::ArrowLeft => self.towards(targets, Vec2::new(-1.0, 0.0)),
            Key::ArrowDown => self.towards(targets, Vec2::new(0.0, 1.0)),
            Key::ArrowUp => self.towards(targets, Vec2::new(0.0, -1.0)),
            _ => None,
        }
    }

    /// How many pages a key turns in whatever scrolls.
    pub(crate) fn pages(input: &KeyboardInput) -> Option<f32> {
        match (&input.logical_key, input.state) {
            (Key::PageDown, ButtonState::Pressed) => Some(1.0),
            (Key::PageUp, ButtonState::Pressed) => Some(-1.0),
            _ => None,
        }
    }

    /// Puts the ring on the target with this number.
    pub(crate) fn put_on(&mut self, targets: &Targets, index: usize) {
        if let Some(target) = targets.all.get(index) {
            let nth = targets.all[..index].iter().filter(|before| before.request == target.request).count();
            (self.on, self.rect) = (Some((target.request.clone(), nth)), Some(target.rect));
        }
    }

    fn step(&mut self, targets: &Targets, by: isize) {
        let count = targets.all.len() as isize;
        if count == 0 {
            return;
        }
        let next = match self.index(targets) {
            Some(here) => (here as isize + by).rem_euclid(count),
            None if by < 0 => count - 1,
            None => 0,
        };
        self.put_on(targets, next as usize);
    }

    /// Moves the ring to the nearest target in a direction.
    fn towards(&mut self, targets: &Targets, way: Vec2) -> Option<Request> {
        let Some(from) = self.ring(targets).or(self.rect) else {
            self.step(targets, 1);
            return None;
        };
        let cost = |rect: Rect| {
            let d = rect.center() - from.center();
            let (along, across) = (d.dot(way), (d - way * d.dot(way)).length());
            (along > 4.0).then_some(along + 2.5 * across)
        };
        let best = targets.all.iter().enumerate().filter_map(|(i, target)| Some((cost(target.rect)?, i)));
        if let Some((_, index)) = best.min_by(|a, b| a.0.total_cmp(&b.0)) {
            self.put_on(targets, index);
        }
        None
    }
}
