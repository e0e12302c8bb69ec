//! What can be touched on the screen as it was last painted.

use std::collections::HashMap;

use bevy::prelude::Resource;
use bevy_egui::egui::{Pos2, Rect};

use super::act::Act;
use crate::craft::Token;

/// The family of a target: how fingers and the keyboard treat it.
#[derive(Debug, Clone, PartialEq)]
pub enum TargetKind {
    /// Touch and let go.
    Button,
    /// A compartment: touch, or drag the drop out of it.
    Compartment {
        /// Id of the drop.
        kind: String,
    },
    /// A drop on the base: touch, slide, or pull off. Neighbours overlap; the nearest middle counts.
    Hung {
        /// Which.
        token: Token,
    },
}

/// One thing to touch.
#[derive(Debug, Clone)]
pub struct Target {
    /// Where, in logical pixels of the window.
    pub rect: Rect,
    /// What it asks for.
    pub act: Act,
    /// What it says, for readers and tests.
    pub label: String,
    /// Its family.
    pub kind: TargetKind,
    /// One of several that is chosen, or a box that is ticked.
    pub chosen: bool,
}

/// Something that scrolls up and down.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ScrollId {
    /// The bases.
    Bases,
    /// The lines of the review.
    Review,
    /// The homes on the last screen.
    Homes,
    /// The pictures of the put-back screen.
    Pictures,
    /// The sheet.
    Sheet,
}

/// A scrolling place on the screen.
#[derive(Debug, Clone, Copy)]
pub struct ScrollArea {
    /// Which.
    pub id: ScrollId,
    /// What is seen of it.
    pub rect: Rect,
    /// How far it can be scrolled.
    pub most: f32,
}

/// Everything of the last painted frame.
#[derive(Resource, Default)]
pub struct Targets {
    /// In painting order: later ones lie over earlier ones.
    pub all: Vec<Target>,
    /// The scrolling places.
    pub scrolls: Vec<ScrollArea>,
    /// What a touch asks for that hits nothing else, outside the sheet that lies over the screen.
    pub elsewhere: Option<Act>,
    /// The sheet that lies over the screen.
    pub sheet: Option<Rect>,
    /// The bare stage, where the base can be swung.
    pub stage: Option<Rect>,
    /// The corner of the drawn bank card, by which it is made larger and smaller.
    pub corner: Option<Rect>,
    /// Where each drop's compartment or its tray's tab is seen.
    pub homes: HashMap<String, Rect>,
    /// The number of the one the keyboard has reached.
    pub ring: Option<usize>,
    /// The window.
    pub window: Option<Rect>,
}

impl Targets {
    /// The one a finger at `p` touches.
    pub fn at(&self, p: Pos2) -> Option<&Target> {
        let hit = self.all.iter().rev().find(|target| target.rect.contains(p))?;
        if !matches!(hit.kind, TargetKind::Hung { .. }) {
            return Some(hit);
        }
        let hung = self.all.iter().filter(|t| matches!(t.kind, TargetKind::Hung { .. }) && t.rect.contains(p));
        hung.min_by(|a, b| a.rect.center().distance_sq(p).total_cmp(&b.rect.center().distance_sq(p)))
    }

    /// The scrolling place under `p`.
    pub fn scroll_at(&self, p: Pos2) -> Option<ScrollArea> {
        self.scrolls.iter().rev().copied().find(|area| area.rect.contains(p))
    }

    /// Forgets everything, for the next painting.
    pub fn clear(&mut self) {
        self.all.clear();
        self.scrolls.clear();
        self.homes.clear();
        (self.elsewhere, self.sheet, self.stage, self.corner, self.ring) = (None, None, None, None, None);
    }
}

/// How far everything is scrolled.
#[derive(Resource, Debug, Default, PartialEq)]
pub struct Scrolls(pub HashMap<ScrollId, Scroll>);

/// How far one place is scrolled.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Scroll {
    /// Logical pixels from the top.
    pub offset: f32,
    /// Logical pixels a second, from the last fling.
    pub speed: f32,
    /// The end, as last painted.
    pub most: f32,
}

impl Scroll {
    /// Scrolls by `dy`, not beyond the ends.
    pub fn by(&mut self, dy: f32) {
        self.offset = (self.offset + dy).clamp(0.0, self.most.max(0.0));
    }
}
