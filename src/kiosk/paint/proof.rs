//! What was written in the last frame, and on what: for tests that ask whether it can be read.

use bevy::prelude::Resource;
use bevy_egui::egui::{Pos2, Rect};

use super::{super::tone::Tone, Icon};

/// One text as it was written.
#[derive(Debug, Clone)]
pub struct Written {
    /// The words.
    pub text: String,
    /// The place they took, in logical pixels.
    pub rect: Rect,
    /// What could be seen there: the window, or the part of a scrolling place.
    pub clip: Rect,
    /// All of it is there, and no word is broken.
    pub whole: bool,
    /// Size in logical pixels.
    pub size: f32,
    /// In the bold face.
    pub bold: bool,
    /// Its colour.
    pub ink: Tone,
    /// What it stands on.
    pub ground: Tone,
    /// How many things to touch had been noted before it.
    pub after: usize,
}

/// The last frame's texts. Nothing is noted unless it is switched on.
#[derive(Resource, Debug, Default)]
pub struct Proof {
    /// Whether to note anything.
    pub on: bool,
    /// In writing order.
    pub texts: Vec<Written>,
    /// The signs drawn, by name, where they are.
    pub signs: Vec<(Rect, Icon)>,
    grounds: Vec<(Rect, Tone)>,
}

impl Proof {
    /// Forgets the last frame.
    pub(super) fn clear(&mut self) {
        self.texts.clear();
        self.signs.clear();
        self.grounds.clear();
    }

    /// A ground has been laid.
    pub(super) fn lay(&mut self, rect: Rect, tone: Tone) {
        if self.on && tone != Tone::Clear {
            self.grounds.push((rect, tone));
        }
    }

    /// The ground that lies on top at `p`.
    pub(super) fn ground_at(&self, p: Pos2) -> Tone {
        self.grounds.iter().rev().find(|(rect, _)| rect.contains(p)).map_or(Tone::Linen, |(_, tone)| *tone)
    }
}
