//! What every request works with. It names no page and no route: those name it.

use std::{
    net::SocketAddr,
    path::PathBuf,
    sync::{Arc, OnceLock},
};

use tokio::sync::watch;

use super::{
    alarms::Alarms, auth::Auth, clock::Clock, company::Company, cut_search::CutSearches, gallery::Gallery,
    kept_answers::Answers, ledger_thread::LedgerThread, live_catalog::LiveCatalog, practice::Practice,
    printing::Printing, tablets::Tablets, tray_drafts, tray_drafts::TrayDrafts,
};
use crate::{catalog::TableEditor, disk};

/// Shows the window of a kiosk.
pub(super) type WayBack = Box<dyn Fn() + Send + Sync>;

/// What every request works with.
pub(super) struct DeskState {
    pub ledger: LedgerThread,
    /// What is entered has the time that the ledger’s thread gives; this is for what is only shown.
    pub clock: Clock,
    pub editor: TableEditor,
    pub catalog: LiveCatalog,
    pub auth: Auth,
    pub alarms: Alarms,
    pub answers: Answers,
    pub gallery: Gallery,
    pub data_dir: PathBuf,
    pub tablets: Tablets,
    pub company: Arc<Company>,
    pub tray_drafts: TrayDrafts,
    pub practice: Practice,
    pub cut_searches: CutSearches,
    pub printing: Printing,
    /// Beats whenever a page may look different.
    pub pulse: watch::Sender<u64>,
    pub closing: watch::Receiver<bool>,
    pub addr: SocketAddr,
    /// Shows the window of the kiosk that runs in the same process.
    pub way_back: OnceLock<WayBack>,
}

/// Which files of the desk's folder are the desk's.
pub(super) fn is_ours(name: &str) -> bool {
    name.starts_with("ledger.")
        || name.starts_with("practice.")
        || name.starts_with("replaced-")
        || [
            "last-good",
            "last-good.new",
            "table",
            "versions",
            "backups",
            "restore-next.json",
            "restoring.sqlite",
            tray_drafts::FOLDER,
        ]
        .contains(&name)
}

impl DeskState {
    /// Lets nobody but the owner of the desk's files read new ones.
    pub(super) fn keep_data_private(&self) {
        if let Err(error) = disk::make_private(&self.data_dir, is_ours) {
            tracing::warn!("others may be able to read what lies in the desk's folder: {error}");
        }
    }

    /// Lets open pages look again.
    pub(super) fn beat(&self) {
        self.pulse.send_modify(|beat| *beat += 1);
    }
}
