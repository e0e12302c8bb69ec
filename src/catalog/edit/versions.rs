//! The last changes of a table, each a folder with the files as they were and as they became. A change is written here
//! before anything of it is done, so that one that was cut short is finished.

use std::{
    fs, io,
    path::{Path, PathBuf},
    thread,
    time::Duration,
};

use serde::{Deserialize, Serialize};

use super::refusal::EditRefusal;
use crate::disk::{FolderLock, LockError, digest::sha256_hex, durable};

/// So many changes are kept.
const MOST_KEPT: usize = 20;

/// One change as it is listed, the newest first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VersionListed {
    /// Its number.
    pub number: u64,
    /// When it was made, as the desk has written it.
    pub at: String,
    /// What was done.
    pub words: String,
    /// Whether it was undone later.
    pub is_undone: bool,
    /// Which change it took back, if it is such a one.
    pub takes_back: Option<u64>,
}

/// A file that changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Changed {
    pub file: String,
    /// As it was; none where there was no such file.
    pub before: Option<String>,
    /// As it became; none where it was taken away.
    pub after: Option<String>,
}

/// What a change's own file says.
#[derive(Debug, Serialize, Deserialize)]
struct Record {
    at: String,
    words: String,
    takes_back: Option<u64>,
    /// The changed files' names.
    files: Vec<String>,
    /// Whether all of them were written.
    done: bool,
}

/// The folder with all of them.
#[derive(Debug, Clone)]
pub(super) struct Versions(PathBuf);

const RECORD: &str = "change.json";
/// How often, and how long each time, one waits for another program that makes a change.
const TRIES: u32 = 100;
const PAUSE: Duration = Duration::from_millis(50);

impl Versions {
    pub(super) fn open(folder: PathBuf) -> io::Result<Self> {
        fs::create_dir_all(&folder)?;
        Ok(Self(folder))
    }

    /// Keeps other programs from making a change meanwhile, as a command beside a desk that is running.
    pub(super) fn alone(&self) -> io::Result<FolderLock> {
        for _ in 0..TRIES {
            match FolderLock::take(&self.0) {
                Err(LockError::InUse) => thread::sleep(PAUSE),
                Err(LockError::Disk(error)) => return Err(error),
                Ok(lock) => return Ok(lock),
            }
        }
        Err(io::Error::other("another program is making a change and does not come to its end"))
    }

    /// The numbers of all that are whole, the oldest first.
    fn numbers(&self) -> Vec<u64> {
        let entries = fs::read_dir(&self.0).into_iter().flatten().flatten();
        let mut numbers: Vec<u64> = entries
            .filter_map(|entry| entry.file_name().to_str()?.parse().ok())
            .filter(|n| self.record(*n).is_some())
            .collect();
        numbers.sort_unstable();
        numbers
    }

    fn folder(&self, number: u64) -> PathBuf {
        self.0.join(format!("{number:06}"))
    }

    fn record(&self, number: u64) -> Option<Record> {
        durable::read_json(&self.folder(number).join(RECORD))
    }

    /// Notes a change that is going to be done; its number.
    pub(super) fn begin(&self, at: &str, words: &str, takes_back: Option<u64>, files: &[Changed]) -> io::Result<u64> {
        let number = self.numbers().last().map_or(1, |last| last + 1);
        let folder = self.folder(number);
        // What is left of one that was never noted.
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder)?;
        for (i, changed) in files.iter().enumerate() {
            for (side, text) in [("before", &changed.before), ("after", &changed.after)] {
                if let Some(text) = text {
                    durable::write(&folder.join(format!("{side}-{i}.ron")), text.as_bytes())?;
                }
            }
        }
        let files = files.iter().map(|changed| changed.file.clone()).collect();
        let record = Record { at: at.to_owned(), words: words.to_owned(), takes_back, files, done: false };
        durable::write_json(&folder.join(RECORD), &record)?;
        Ok(number)
    }

    /// Notes that all of a change was written, and lets go of the oldest ones.
    pub(super) fn end(&self, number: u64) -> io::Result<()> {
        if let Some(record) = self.record(number) {
            durable::write_json(&self.folder(number).join(RECORD), &Record { done: true, ..record })?;
        }
        let numbers = self.numbers();
        for old in &numbers[..numbers.len().saturating_sub(MOST_KEPT)] {
            fs::remove_dir_all(self.folder(*old))?;
        }
        Ok(())
    }

    /// Takes the note of a change away that was not done.
    pub(super) fn forget(&self, number: u64) {
        let _ = fs::remove_dir_all(self.folder(number));
    }

    /// The files of a change.
    pub(super) fn files(&self, number: u64) -> io::Result<Vec<Changed>> {
        let record = self.record(number).ok_or(io::ErrorKind::NotFound)?;
        let folder = self.folder(number);
        let text = |side: &str, i: usize| match fs::read_to_string(folder.join(format!("{side}-{i}.ron"))) {
            Ok(text) => Ok(Some(text)),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
            Err(error) => Err(error),
        };
        let files = record.files.into_iter().enumerate();
        files.map(|(i, file)| Ok(Changed { file, before: text("before", i)?, after: text("after", i)? })).collect()
    }

    /// Every file of all of them, as it was and as it became.
    pub(super) fn texts(&self) -> io::Result<Vec<PathBuf>> {
        let mut texts = Vec::new();
        for folder in fs::read_dir(&self.0)? {
            let folder = folder?.path();
            for text in if folder.is_dir() { fs::read_dir(&folder)?.collect() } else { vec![] } {
                texts.push(text?.path());
            }
        }
        Ok(texts)
    }

    /// The change that was begun and not ended, if there is one.
    pub(super) fn cut_short(&self) -> Option<u64> {
        self.numbers().into_iter().rev().find(|number| self.record(*number).is_some_and(|record| !record.done))
    }

    /// All of them, the newest first.
    pub(super) fn list(&self) -> Vec<VersionListed> {
        let records: Vec<(u64, Record)> =
            self.numbers().into_iter().filter_map(|number| Some((number, self.record(number)?))).collect();
        let undone: Vec<u64> = records.iter().filter_map(|(_, record)| record.takes_back).collect();
        let listed = records.into_iter().rev().map(|(number, record)| VersionListed {
            number,
            at: record.at,
            words: record.words,
            is_undone: undone.contains(&number),
            takes_back: record.takes_back,
        });
        listed.collect()
    }
}

/// Writes the files of a change that are still as they were before it. Those that somebody else wrote meanwhile are left; the
/// first of them is told.
pub(super) fn write(root: &Path, changed: &[Changed]) -> io::Result<Option<String>> {
    let mut left = None;
    for one in changed {
        let path = root.join(&one.file);
        let now = match fs::read_to_string(&path) {
            Ok(text) => Some(text),
            Err(error) if error.kind() == io::ErrorKind::NotFound => None,
            Err(error) => return Err(error),
        };
        if now == one.after {
            continue;
        }
        if now != one.before {
            left.get_or_insert_with(|| one.file.clone());
            continue;
        }
        match &one.after {
            Some(text) => durable::write(&path, text.as_bytes())?,
            None => durable::remove(&path)?,
        }
    }
    Ok(left)
}

/// Refuses where a file is not as a change has left it.
pub(super) fn still_as_left(root: &Path, changed: &[Changed]) -> Result<(), EditRefusal> {
    for one in changed {
        let now = fs::read_to_string(root.join(&one.file)).ok();
        let same = |a: &Option<String>, b: &Option<String>| a.as_ref().map(sha256_hex) == b.as_ref().map(sha256_hex);
        if !same(&now, &one.after) {
            let (now, would_be) = (now.unwrap_or_default(), one.before.clone().unwrap_or_default());
            return Err(EditRefusal::WrittenSince { file: one.file.clone(), now, would_be });
        }
    }
    Ok(())
}
