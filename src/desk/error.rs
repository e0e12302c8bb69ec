//! Why the desk does not start.

use std::{io, net::SocketAddr, path::PathBuf};

use crate::{
    ledger::{BackupError, LedgerError},
    ron_tree::Mistakes,
};

/// Why the desk does not start.
#[derive(Debug, thiserror::Error)]
pub enum DeskError {
    /// The address is taken or not ours.
    #[error("the desk can't answer at {0}: {1}; close the other desk or choose another address with --listen")]
    Listen(SocketAddr, io::Error),
    /// Another desk uses the folder.
    #[error("another desk is running on {0}; close it first or choose another folder with --data")]
    InUse(PathBuf),
    /// The folder can't be used.
    #[error("the desk's folder {0} can't be used: {1}")]
    Data(PathBuf, io::Error),
    /// The catalogue has mistakes and there is no earlier good one.
    #[error("the catalogue in {0} has mistakes:\n{1}")]
    Catalog(PathBuf, Mistakes),
    /// The ledger does not open.
    #[error(transparent)]
    Ledger(#[from] LedgerError),
    /// A backup that was to take the ledger's place did not.
    #[error(
        "the backup that was to take the ledger's place did not: {0}. What was entered is safe; put the backup back where it \
         was, or remove restore-next.json from the desk's folder to go on with the ledger that is there"
    )]
    Restore(Box<BackupError>),
    /// The system refuses a thread or a watch.
    #[error("the desk can't start: {0}")]
    System(String),
}
