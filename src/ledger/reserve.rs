//! A file of nothing beside the ledger. SQLite needs a little room even to open a ledger for reading, so that a desk
//! could not start on a full disk; this room is given up then, and taken again when there is some.

use std::{
    fs,
    path::{Path, PathBuf},
};

use crate::disk::durable;

/// Enough for the ledger's index in memory and the entries that a start makes.
const RESERVE_BYTES: usize = 1024 * 1024;

fn beside(ledger: &Path) -> PathBuf {
    ledger.with_extension("reserve")
}

/// Whether the room is taken.
pub(super) fn is_taken(ledger: &Path) -> bool {
    beside(ledger).exists()
}

/// Gives the room up; whether there was any.
pub(super) fn give_up(ledger: &Path) -> bool {
    fs::remove_file(beside(ledger)).is_ok()
}

/// Takes the room if it is not taken. A disk that has none is no reason not to start.
pub(super) fn take(ledger: &Path) {
    let path = beside(ledger);
    if path.exists() {
        return;
    }
    // Written, not only made longer: a file with holes takes no room.
    if let Err(error) = durable::write(&path, &vec![0; RESERVE_BYTES]) {
        tracing::warn!("no room could be reserved beside the ledger: {error}");
    }
}
