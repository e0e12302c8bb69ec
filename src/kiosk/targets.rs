//! What can be touched on the screen as it was last painted.

use std::{collections::HashMap, sync::Arc};

use bevy::prelude::Resource;
use bevy_egui::egui::{Pos2, Rect, Vec2, vec2};

use super::pictures::Silhouette;
use crate::{craft::Token, guest::Request};

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
    /// A drop on the base: touch, slide, or pull off. Neighbours overlap; the one that is seen there counts.
    Hung {
        /// Which.
        token: Token,
    },
}

/// How a hung drop is seen: its ring and, below it, its body.
#[derive(Debug, Clone)]
pub struct HungShape {
    /// Where its ring hangs, in logical pixels of the window.
    pub ring: Pos2,
    /// How far it leans, in radians; positive to the right.
    pub lean: f32,
    /// How wide its ring is outside: what a finger has to touch, however it is turned.
    pub ring_width: f32,
    /// Half of the ring's outside as it is seen, turned: an oval.
    pub ring_oval: Vec2,
    /// From the ring's place down to the body.
    pub body_top: f32,
    /// Width and height of its body.
    pub body: Vec2,
    /// Which of the hung drops it is, from 0 at the back.
    pub rank: usize,
    /// What of its body shows; all of it until its picture has come.
    pub silhouette: Option<Arc<Silhouette>>,
}

impl HungShape {
    /// Where a place of the drop is on the window: `across` to its right of the ring, `down` below it.
    pub fn on_window(&self, across: f32, down: f32) -> Pos2 {
        let (sin, cos) = self.lean.sin_cos();
        self.ring + vec2(cos * across + sin * down, cos * down - sin * across)
    }

    /// Whether it is seen at `p`, if nothing is in front of it.
    pub fn shows_at(&self, p: Pos2) -> bool {
        let (sin, cos) = self.lean.sin_cos();
        let from = p - self.ring;
        let (across, down) = (from.x * cos - from.y * sin, from.x * sin + from.y * cos);
        let radius = self.ring_width / 2.0;
        if across.hypot(down - radius) <= radius {
            return true;
        }
        let (x, y) = (across / self.body.x.max(1.0) + 0.5, (down - self.body_top) / self.body.y.max(1.0));
        let inside = (0.0..1.0).contains(&x) && (0.0..1.0).contains(&y);
        inside && self.silhouette.as_ref().is_none_or(|silhouette| silhouette.shows(x, y))
    }

    /// Whether it is seen within `reach` logical pixels of `p`.
    fn shows_near(&self, p: Pos2, reach: f32) -> bool {
        (0..8).any(|i| {
            let angle = i as f32 * std::f32::consts::FRAC_PI_4;
            self.shows_at(p + vec2(angle.cos(), angle.sin()) * reach)
        })
    }

    /// The smallest upright rectangle round it.
    pub fn bounds(&self) -> Rect {
        let half = self.body.x / 2.0;
        let bottom = self.body_top + self.body.y;
        let corners = [(-half, self.body_top), (half, self.body_top), (-half, bottom), (half, bottom)];
        let ring = self.ring_width / 2.0;
        let round = [(-ring, 0.0), (ring, 0.0)];
        let all = corners.into_iter().chain(round).map(|(across, down)| self.on_window(across, down));
        all.fold(Rect::NOTHING, |rect, p| rect.union(Rect::from_min_max(p, p)))
    }
}

/// One thing to touch.
#[derive(Debug, Clone)]
pub struct Target {
    /// Where, in logical pixels of the window.
    pub rect: Rect,
    /// What it asks for.
    pub request: Request,
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
    pub elsewhere: Option<Request>,
    /// The sheet that lies over the screen.
    pub sheet: Option<Rect>,
    /// The bare stage, where the base can be swung.
    pub stage: Option<Rect>,
    /// The corner of the drawn bank card, by which it is made larger and smaller.
    pub corner: Option<Rect>,
    /// How the hung drops are seen.
    pub hung: HashMap<Token, HungShape>,
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
        let hung = self.all.iter().filter(|t| t.rect.contains(p));
        let mut shaped: Vec<(&Target, &HungShape)> = hung.filter_map(|t| Some((t, self.shape_of(t)?))).collect();
        shaped.sort_by_key(|(_, shape)| std::cmp::Reverse(shape.rank));
        let seen = |reach: f32| {
            let touched = |shape: &HungShape| if reach == 0.0 { shape.shows_at(p) } else { shape.shows_near(p, reach) };
            shaped.iter().find(|(_, shape)| touched(shape)).map(|(target, _)| *target)
        };
        // A finger that meets none of them takes the one it comes nearest to.
        let near = [0.0, 5.0, 10.0, 15.0].into_iter().find_map(seen);
        let middle = |target: &Target| target.rect.center().distance_sq(p);
        near.or_else(|| shaped.iter().map(|(target, _)| *target).min_by(|a, b| middle(a).total_cmp(&middle(b))))
    }

    fn shape_of(&self, target: &Target) -> Option<&HungShape> {
        match target.kind {
            TargetKind::Hung { token } => self.hung.get(&token),
            TargetKind::Button | TargetKind::Compartment { .. } => None,
        }
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
        self.hung.clear();
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
