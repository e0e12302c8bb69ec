//! A backup takes the ledger's place. What it replaces is kept beside it. Cut short at any moment, it is finished at the next
//! start: a note beside the ledger says from which file, and goes only when all of it is done.

use std::{
    fs, io,
    path::{Path, PathBuf},
};

use jiff::Timestamp;
use serde::{Deserialize, Serialize};

use super::{BackupError, Ledger, back_up, read_through};
use crate::disk::durable;

/// The note's name beside the ledger.
const NOTE: &str = "restore-next.json";
/// The copy's name before it takes the ledger's place.
const COMING: &str = "restoring.sqlite";

/// What is to take the ledger's place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
struct Note {
    from: PathBuf,
    /// The folder, beside the ledger, that takes in what was there.
    kept: String,
}

fn note_beside(ledger: &Path) -> PathBuf {
    ledger.with_file_name(NOTE)
}

/// Whether, and which, backup takes the ledger's place at the next start.
pub fn restore_waits(ledger: &Path) -> Option<PathBuf> {
    durable::read_json::<Note>(&note_beside(ledger)).map(|note| note.from)
}

/// Notes that backup `from` takes the place of `ledger` at the next start. It is read through before.
///
/// # Errors
/// It can't be read, or is not whole, or of another version; or the disk refuses. Nothing is noted then.
pub fn restore_at_next_start(from: &Path, ledger: &Path, now: Timestamp) -> Result<(), BackupError> {
    let faults = read_through(from)?;
    if !faults.is_empty() {
        return Err(BackupError::NotTheSame(faults.join("; ")));
    }
    Ledger::is_a_ledger(from)?;
    let folder = ledger.parent().unwrap_or(ledger);
    let named = format!("replaced-{}", now.strftime("%Y%m%d-%H%M%S"));
    // That the folder is there says how far a restore came, so each has one of its own.
    let others = (2_u32..).map(|n| format!("{named}-{n}"));
    let kept = std::iter::once(named.clone()).chain(others).find(|name| !folder.join(name).exists()).unwrap_or(named);
    let from = fs::canonicalize(from).unwrap_or_else(|_| from.to_owned());
    let note = Note { from, kept };
    durable::write_json(&note_beside(ledger), &note)
        .map_err(|error| BackupError::Target { file: note_beside(ledger), error })
}

/// Takes such a note back; whether there was one.
///
/// # Errors
/// The disk refuses.
pub fn restore_not_after_all(ledger: &Path) -> io::Result<bool> {
    match durable::remove(&note_beside(ledger)) {
        Ok(()) => Ok(true),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(false),
        Err(error) => Err(error),
    }
}

/// Does what was noted, before the ledger is opened; where what was there lies now, if there was a note. Nobody else may work
/// in the folder meanwhile.
///
/// # Errors
/// The backup can't be read any more, or the disk refuses: then the note stays, and what was there is there still or lies in
/// the folder that the message names.
pub fn restore_now(ledger: &Path) -> Result<Option<PathBuf>, BackupError> {
    let Some(note) = durable::read_json::<Note>(&note_beside(ledger)) else { return Ok(None) };
    let folder = ledger.parent().unwrap_or(ledger);
    let (kept, coming) = (folder.join(&note.kept), folder.join(COMING));
    let target = |error| BackupError::Target { file: ledger.to_owned(), error };
    // Once the copy is whole under its own name, the backup itself is not needed any more.
    if !(kept.exists() && coming.exists()) {
        match fs::remove_file(&coming) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(target(error)),
            _ => {}
        }
        // Where an earlier try came as far as the last step but one, the ledger is the backup already.
        if !(kept.exists() && ledger.exists()) {
            back_up(&note.from, &coming)?;
        }
    }
    fs::create_dir_all(&kept).map_err(target)?;
    if coming.exists() {
        for entry in fs::read_dir(folder).map_err(target)?.flatten() {
            let name = entry.file_name();
            if name.to_str().is_some_and(|name| name.starts_with("ledger.")) {
                fs::rename(entry.path(), kept.join(&name)).map_err(target)?;
            }
        }
        fs::rename(&coming, ledger).map_err(target)?;
    }
    durable::remove(&note_beside(ledger)).map_err(target)?;
    Ok(Some(kept))
}
