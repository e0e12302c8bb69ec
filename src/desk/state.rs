//! What every request works with. It names no page and no route: those name it.

use std::{net::SocketAddr, path::PathBuf};

use tokio::sync::watch;

use super::{
    alarms::Alarms, auth::Auth, clock::Clock, gallery::Gallery, ledger_thread::LedgerThread, live_catalog::LiveCatalog,
    tablets::Tablets,
};

/// What every request works with.
pub(super) struct DeskState {
    pub ledger: LedgerThread,
    /// What is entered has the time that the ledger’s thread gives; this is for what is only shown.
    pub clock: Clock,
    pub catalog: LiveCatalog,
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
    pub(super) fn beat(&self) {
        self.pulse.send_modify(|beat| *beat += 1);
    }
}
