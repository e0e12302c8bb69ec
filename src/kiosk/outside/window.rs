//! The window, or the picture that stands in for it.

use bevy::{ecs::system::SystemParam, prelude::*, window::PrimaryWindow};
use bevy_egui::egui::{Vec2, vec2};

/// A size without a window, for pictures of the screen.
#[derive(Resource, Debug, Clone, Copy)]
pub(in crate::kiosk) struct FixedSize(pub u32, pub u32);

/// The size of what is drawn on, in logical pixels.
#[derive(SystemParam)]
pub(in crate::kiosk) struct WindowSize<'w, 's> {
    fixed: Option<Res<'w, FixedSize>>,
    windows: Query<'w, 's, &'static Window, With<PrimaryWindow>>,
}

impl WindowSize<'_, '_> {
    /// In logical pixels; a window that is closing counts as small.
    pub(in crate::kiosk) fn get(&self) -> Vec2 {
        match (&self.fixed, self.windows.single()) {
            (Some(size), _) => vec2(size.0 as f32, size.1 as f32),
            (None, Ok(window)) => vec2(window.width(), window.height()),
            (None, Err(_)) => vec2(64.0, 64.0),
        }
    }

    /// Pixels of the screen for each logical one.
    pub(in crate::kiosk) fn scale(&self) -> f32 {
        match (&self.fixed, self.windows.single()) {
            (None, Ok(window)) => window.scale_factor(),
            _ => 1.0,
        }
    }
}
