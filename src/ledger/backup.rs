//! A copy of the ledger while a desk works on it, made with SQLite's own backup interface and read back.
//! Source: SQLite, "Online Backup API", <https://sqlite.org/backup.html>.

use std::{
    fs, io,
    path::{Path, PathBuf},
    time::Duration,
};

use rusqlite::{
    Connection, OpenFlags,
    backup::{Backup, StepResult},
};

use super::{Ledger, LedgerError, open::faults_in, schema};
use crate::disk::durable::NewFile;

/// So often a copy is tried again while a desk closes or a show is entered.
const TRIES: u32 = 100;
const PAUSE: Duration = Duration::from_millis(100);

/// What was copied.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Copied {
    /// Tickets in the copy.
    pub tickets: i64,
    /// Entries in the copy.
    pub entries: i64,
    /// What is wrong in it as in the ledger, in words.
    pub faults: Vec<String>,
}

/// Why there is no copy.
#[derive(Debug, thiserror::Error)]
pub enum BackupError {
    /// There is nothing to copy.
    #[error("there is no ledger {}; name the desk's folder with --data", .0.display())]
    NoLedger(PathBuf),
    /// The target is taken.
    #[error("{} exists already and is not overwritten; name another file", .0.display())]
    Exists(PathBuf),
    /// The target can't be written.
    #[error("{} can't be written: {error}", file.display())]
    Target {
        /// The file to make.
        file: PathBuf,
        /// What the system says.
        error: io::Error,
    },
    /// A desk wrote all the time.
    #[error("the ledger was busy all the time; try again")]
    Busy,
    /// The copy does not read back as the ledger reads.
    #[error("the copy does not read back as it should, so it was not kept: {0}")]
    NotTheSame(String),
    /// The ledger can't be read.
    #[error(transparent)]
    Ledger(#[from] LedgerError),
}

impl From<rusqlite::Error> for BackupError {
    fn from(error: rusqlite::Error) -> Self {
        Self::Ledger(error.into())
    }
}

/// Opens an existing ledger beside the desk that may be working on it.
fn beside_the_desk(file: &Path) -> Result<Connection, BackupError> {
    if fs::metadata(file).map_or(0, |found| found.len()) == 0 {
        return Err(BackupError::NoLedger(file.to_owned()));
    }
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let db = Connection::open_with_flags(file, flags)?;
    db.busy_timeout(Duration::from_secs(5))?;
    Ok(db)
}

impl Ledger {
    /// Looks at an existing ledger beside the desk that may be working on it.
    ///
    /// # Errors
    /// There is none, or another version of this program wrote it: a desk brings an older one up to date when it starts.
    pub fn beside_the_desk(file: &Path) -> Result<Self, BackupError> {
        let db = beside_the_desk(file)?;
        schema::is_of_today(&db)?;
        Ok(Self { db, file: None, by: None })
    }
}

impl Ledger {
    /// Refuses a file that is no ledger, or one of a later version: an earlier one is brought up to date when it is opened.
    pub(super) fn is_a_ledger(file: &Path) -> Result<(), BackupError> {
        let db = beside_the_desk(file)?;
        match schema::is_of_today(&db) {
            Err(LedgerError::Older { found, .. }) if found > 0 => Ok(()),
            judged => Ok(judged?),
        }
    }
}

/// How many tickets and entries there are, and the number of the last entry.
fn figures(db: &Connection) -> rusqlite::Result<(i64, i64, i64)> {
    db.query_row(
        "SELECT (SELECT count(*) FROM tickets), (SELECT count(*) FROM events), (SELECT coalesce(max(seq), 0) FROM events)",
        [],
        |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)),
    )
}

/// Copies the ledger `from` into the new file `to`: as it is at one moment, in one file, read back before it gets its name.
///
/// # Errors
/// There is no ledger, the target is taken or can't be written, or the copy does not read back.
pub fn back_up(from: &Path, to: &Path) -> Result<Copied, BackupError> {
    let source = beside_the_desk(from)?;
    let target = |error| BackupError::Target { file: to.to_owned(), error };
    if to.exists() {
        return Err(BackupError::Exists(to.to_owned()));
    }
    let fresh = NewFile::begin(to).map_err(target)?;
    // Everything is read within one transaction: what a desk enters meanwhile is not in the copy, nor half of it.
    let snapshot = source.unchecked_transaction()?;
    let wanted = figures(&snapshot)?;
    let faults = {
        let mut copy = Connection::open(fresh.unfinished())?;
        copy_pages(&snapshot, &mut copy)?;
        // In one file, without a write-ahead file beside it.
        copy.pragma_update_and_check(None, "journal_mode", "DELETE", |_| Ok(()))?;
        let found = figures(&copy)?;
        if found != wanted {
            return Err(BackupError::NotTheSame(format!("{found:?} in place of {wanted:?}")));
        }
        let (faults, before) = (faults_in(&copy)?, faults_in(&snapshot)?);
        if faults != before {
            return Err(BackupError::NotTheSame(faults.join("; ")));
        }
        faults
    };
    fresh.keep().map_err(|error| match error.kind() {
        io::ErrorKind::AlreadyExists => BackupError::Exists(to.to_owned()),
        _ => target(error),
    })?;
    Ok(Copied { tickets: wanted.0, entries: wanted.1, faults })
}

fn copy_pages(source: &Connection, copy: &mut Connection) -> Result<(), BackupError> {
    let pages = Backup::new(source, copy)?;
    for _ in 0..TRIES {
        match pages.step(-1)? {
            StepResult::Done => return Ok(()),
            _ => std::thread::sleep(PAUSE),
        }
    }
    Err(BackupError::Busy)
}

/// Reads the whole ledger `file`, which a desk may be using, and gives everything that is wrong with it, in words.
///
/// # Errors
/// There is none, or it is no ledger at all.
pub fn read_through(file: &Path) -> Result<Vec<String>, BackupError> {
    match faults_in(&beside_the_desk(file)?) {
        Err(LedgerError::FoundDamaged) => Ok(vec!["it is no SQLite file, or its first page is damaged".to_owned()]),
        found => Ok(found?),
    }
}
