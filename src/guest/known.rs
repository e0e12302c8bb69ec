//! What the tablet knows of the desk.

use std::sync::Arc;

use crate::{catalog::Catalog, link::Snapshot};

/// News of the desk.
#[derive(Debug, Clone, Default)]
pub struct Known {
    /// The last good catalogue and counts.
    pub snapshot: Option<Arc<Snapshot>>,
    /// Whether the desk answers; `None` before the first try.
    pub in_reach: Option<bool>,
    /// The desk does not know this tablet any more: it can give no numbers.
    pub let_go: bool,
    /// The desk practises: nothing that is sent counts.
    pub practice: bool,
    /// Whether this tablet's disk is nearly full.
    pub disk_nearly_full: bool,
    /// Whether this tablet belongs to a desk.
    pub paired: bool,
}

/// Something about the tablet itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Notice {
    /// The desk does not answer.
    DeskAway,
    /// The desk does not know this tablet any more.
    LetGo,
    /// There is hardly room on its disk.
    DiskNearlyFull,
}

impl Known {
    /// What whoever stands before the tablet has to be told of it.
    pub fn notices(&self) -> impl Iterator<Item = Notice> {
        // Of the two the graver one: with a desk that has let the tablet go nobody can go on.
        let away = (self.in_reach == Some(false)).then_some(Notice::DeskAway);
        let line = if self.let_go { Some(Notice::LetGo) } else { away };
        let full = self.disk_nearly_full.then_some(Notice::DiskNearlyFull);
        line.into_iter().chain(full)
    }

    /// The catalogue.
    pub fn catalog(&self) -> Option<&Catalog> {
        self.snapshot.as_ref().map(|snapshot| snapshot.catalog.as_ref())
    }
}
