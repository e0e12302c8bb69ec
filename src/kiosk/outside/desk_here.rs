//! The desk on the same machine: its pages in a browser, and the way back to the window.

use std::{
    io,
    sync::{
        Arc,
        atomic::{AtomicBool, Ordering},
    },
};

use bevy::{ecs::system::SystemParam, prelude::*, window::PrimaryWindow};

/// A desk that runs in the same process as the window.
#[derive(Resource, Debug, Clone)]
pub struct DeskHere {
    /// Where a browser on this machine finds it.
    pub address: String,
    /// Where a phone in the same network finds it, if it does.
    pub outward: Option<String>,
    /// Set by the desk when the window shall be shown again.
    pub come_back: Arc<AtomicBool>,
}

/// The window, and the desk behind it.
#[derive(SystemParam)]
pub(in crate::kiosk) struct BehindTheWindow<'w, 's> {
    desk: Option<Res<'w, DeskHere>>,
    windows: Query<'w, 's, &'static mut Window, With<PrimaryWindow>>,
}

impl BehindTheWindow<'_, '_> {
    /// Starts a browser on the desk's pages and makes room for it.
    pub(in crate::kiosk) fn open(&mut self) -> io::Result<()> {
        let desk = self.desk.as_ref().ok_or(io::ErrorKind::NotFound)?;
        open::that_detached(&desk.address)?;
        for mut window in &mut self.windows {
            window.set_minimized(true);
        }
        Ok(())
    }
}

pub(in crate::kiosk) fn plugin(app: &mut App) {
    app.add_systems(PreUpdate, come_back);
}

fn come_back(desk: Option<Res<DeskHere>>, mut windows: Query<&mut Window, With<PrimaryWindow>>) {
    if desk.is_some_and(|desk| desk.come_back.swap(false, Ordering::Relaxed)) {
        for mut window in &mut windows {
            window.set_minimized(false);
            window.focused = true;
        }
    }
}
