//! `chatelaine backup` and `chatelaine verify`: the ledger in a safe place, and whether it is whole.

use std::path::{Path, PathBuf};

use chatelaine::{
    disk::{FolderLock, LockError},
    ledger::{back_up, read_through, restore_at_next_start, restore_now},
};
use jiff::Timestamp;

use serde_json::json;

use super::{Told, answers::print, data_dir};

#[derive(clap::Args)]
pub(super) struct Backup {
    /// The file to make; it must not exist yet.
    #[arg(long)]
    to: PathBuf,
    /// Print one JSON object.
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    place: Place,
}

#[derive(clap::Args)]
pub(super) struct Restore {
    /// The backup that takes the ledger's place.
    #[arg(long)]
    from: PathBuf,
    /// Print one JSON object.
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    place: Place,
}

#[derive(clap::Args)]
pub(super) struct Verify {
    /// A ledger or a backup; the desk's ledger otherwise.
    #[arg(conflicts_with = "data")]
    file: Option<PathBuf>,
    /// Print one JSON object.
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    place: Place,
}

#[derive(clap::Args)]
pub(super) struct Place {
    /// The folder with the ledger; your own data folder otherwise.
    #[arg(long)]
    data: Option<PathBuf>,
}

impl Place {
    pub(super) fn ledger(&self) -> Result<PathBuf, Told> {
        let folder = data_dir(self.data.clone(), "desk")?;
        // Where a tablet's window runs with the desk, the folder that was named has one for each.
        let beside = folder.join("desk");
        let in_it = |folder: &Path| folder.join("ledger.sqlite").exists();
        let folder = if !in_it(&folder) && in_it(&beside) { beside } else { folder };
        Ok(folder.join("ledger.sqlite"))
    }
}

pub(super) fn backup(options: Backup) -> Result<(), Told> {
    let from = options.place.ledger()?;
    let copied = back_up(&from, &options.to)?;
    let object = json!({
        "to": options.to, "from": from, "tickets": copied.tickets, "entries": copied.entries, "faults": copied.faults,
    });
    print(options.json, &object, || {
        let mut words = format!(
            "{} has all of {}: {} tickets, {} entries, copied and read back.",
            options.to.display(),
            from.display(),
            copied.tickets,
            copied.entries
        );
        for fault in &copied.faults {
            words += &format!("\nAs in the ledger itself: {fault}");
        }
        words
    })
}

pub(super) fn restore(options: Restore) -> Result<(), Told> {
    let ledger = options.place.ledger()?;
    let folder = ledger.parent().unwrap_or(&ledger);
    std::fs::create_dir_all(folder).map_err(|error| Told(format!("{} can't be made: {error}", folder.display())))?;
    let _lock = FolderLock::take(folder).map_err(|error| match error {
        LockError::InUse => {
            Told(format!("a desk is running on {}; end it first, nothing was changed", folder.display()))
        }
        LockError::Disk(error) => Told(format!("{} can't be used: {error}", folder.display())),
    })?;
    restore_at_next_start(&options.from, &ledger, Timestamp::now())?;
    let kept = restore_now(&ledger)?;
    let object = json!({ "from": options.from, "ledger": ledger, "kept": kept });
    print(options.json, &object, || {
        let mut words = format!("{} has taken the place of {}.", options.from.display(), ledger.display());
        if let Some(kept) = &kept {
            words += &format!("\nWhat was there lies in {}.", kept.display());
        }
        words
    })
}

pub(super) fn verify(options: Verify) -> Result<(), Told> {
    let file = match options.file {
        Some(file) => file,
        None => options.place.ledger()?,
    };
    let faults = read_through(&file)?;
    if faults.is_empty() {
        let words = || format!("{} is whole: all of it was read.", file.display());
        return print(options.json, &json!({ "file": file, "whole": true }), words);
    }
    Err(Told(format!("{} is not whole:\n- {}", file.display(), faults.join("\n- "))))
}
