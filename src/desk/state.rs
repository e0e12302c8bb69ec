//! What every request works with. It names no page and no route: those name it.

use std::{net::SocketAddr, path::PathBuf};

use tokio::sync::watch;

use super::{alarms::Alarms, auth::Auth, books::Books, gallery::Gallery, shelf::Shelf, tablets::Tablets};

/// What every request works with.
pub(super) struct DeskState {
    pub books: Books,
    pub shelf: Shelf,
    pub auth: Auth,
    pub alarms: Alarms,
    pub gallery: Gallery,
    pub data_dir: PathBuf,
    pub tablets: Tablets,
    /// Beats whenever a page may look different.
    pub pulse: watch::Sender<u64>,
    pub closing: watch::Receiver<bool>,
    pub addr: SocketAddr,
}

impl DeskState {
    /// Lets open pages look again.
    pub fn beat(&self) {
        self.pulse.send_modify(|beat| *beat += 1);
    }
}
