//! Opening the ledger and looking whether it is whole: a damaged one is refused in words, before anything is changed in it.

use std::{
    fs, io,
    path::{Path, PathBuf},
};

use jiff::Timestamp;
use rusqlite::{Connection, OpenFlags, OptionalExtension};

use super::{Ledger, LedgerError, Ticket, close::open_show, reserve, rows::current_show, schema, sums};
use crate::disk::durable;

/// What the file beside a ledger says; that it is there says that there was one.
const BEGUN: &[u8] =
    b"A ledger was begun in this folder. To begin a new one, move every file named ledger.* elsewhere.\n";

impl Ledger {
    /// Opens or makes the ledger at `path`, with a show running.
    ///
    /// # Errors
    /// The file is damaged, or empty or gone where there was a ledger; the message says what to do. The disk may refuse.
    pub fn open(path: &Path, now: Timestamp) -> Result<Self, LedgerError> {
        // Room is reserved beside every ledger, also by versions that made no mark.
        let begun = mark(path).exists() || reserve::is_taken(path);
        if begun && fs::metadata(path).map_or(0, |file| file.len()) == 0 {
            return Err(LedgerError::Emptied(path.to_owned()));
        }
        let open = || -> Result<Self, LedgerError> {
            let db = Connection::open(path)?;
            look_over(&db, path, begun)?;
            Self::prepared(db, Some(path.to_owned()), now)
        };
        let opened = match open() {
            Err(LedgerError::DiskFull) if reserve::give_up(path) => open(),
            // On the room that was given up the seller works first.
            opened => opened.inspect(|_| reserve::take(path)),
        };
        match opened {
            Ok(ledger) => {
                if let Err(error) = make_mark(path) {
                    tracing::warn!("no mark could be made beside the ledger: {error}");
                }
                Ok(ledger)
            }
            Err(LedgerError::FoundDamaged) => Err(LedgerError::DamagedFile {
                file: path.to_owned(),
                why: "it is no SQLite file, or parts of it are".into(),
            }),
            Err(error) => Err(error),
        }
    }

    /// A ledger in memory only, for trying things out.
    ///
    /// # Errors
    /// SQLite refuses, as where its version can lose an entry.
    pub fn in_memory(now: Timestamp) -> Result<Self, LedgerError> {
        Self::prepared(Connection::open_in_memory()?, None, now)
    }

    pub(super) fn prepared(mut db: Connection, file: Option<PathBuf>, now: Timestamp) -> Result<Self, LedgerError> {
        schema::prepare(&mut db)?;
        let mut ledger = Self { db, file, by: None };
        let tx = ledger.begin()?;
        match current_show(&tx)? {
            // An earlier version kept no sums.
            Some(show) => sums::begin(&tx, show.id)?,
            None => open_show(&tx, now)?,
        }
        tx.commit()?;
        Ok(ledger)
    }

    /// Opens the file anew after something went wrong in the middle of a change; what was not committed is gone. A ledger in
    /// memory stays as it is.
    ///
    /// # Errors
    /// The file can't be opened again.
    pub fn reopen(&mut self) -> Result<(), LedgerError> {
        self.by = None;
        if let Some(file) = &self.file {
            let db = Connection::open(file)?;
            schema::connect(&db)?;
            self.db = db;
        }
        Ok(())
    }

    /// A second connection to the file, to look only: it sees everything that is committed, and waits for nobody.
    ///
    /// # Errors
    /// The ledger is in memory only, or the file can't be opened again.
    pub fn to_look_at(&self) -> Result<Self, LedgerError> {
        let Some(file) = &self.file else { return Err(rusqlite::Error::InvalidPath(PathBuf::new()).into()) };
        let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
        let db = Connection::open_with_flags(file, flags)?;
        schema::be_patient(&db)?;
        Ok(Self { db, file: None, by: None })
    }

    /// What `work` finds in the ledger as it is at one moment, whatever is entered meanwhile.
    ///
    /// # Errors
    /// What `work` gives; or the ledger can't be read.
    pub fn at_one_moment<T>(&self, work: impl FnOnce(&Self) -> Result<T, LedgerError>) -> Result<T, LedgerError> {
        let _moment = self.db.unchecked_transaction()?;
        work(self)
    }

    /// Brings what lies in the write-ahead file into the ledger's own: then that file alone is the whole ledger.
    ///
    /// # Errors
    /// The disk refuses; what lies in the write-ahead file stays there.
    pub fn merge(&self) -> Result<(), LedgerError> {
        self.db.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(()))?;
        Ok(())
    }

    /// Whether the file reads without fault (SQLite's own integrity check).
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn is_sound(&self) -> Result<bool, LedgerError> {
        let answer: String = self.db.query_row("PRAGMA integrity_check", [], |row| row.get(0))?;
        Ok(answer == "ok")
    }

    /// Reads the whole ledger and gives everything that is wrong with it, in words.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn faults(&self) -> Result<Vec<String>, LedgerError> {
        faults_in(&self.db)
    }
}

/// Everything that is wrong with the ledger behind `db`, of whichever layout, in words.
pub(super) fn faults_in(db: &Connection) -> Result<Vec<String>, LedgerError> {
    let mut faults = check(db, "PRAGMA integrity_check")?;
    let strays: Option<String> = db.query_row("PRAGMA foreign_key_check", [], |row| row.get(0)).optional()?;
    faults.extend(strays.map(|table| format!("an entry of {table} belongs to nothing")));
    let mut tickets = db.prepare("SELECT number, show, ticket FROM tickets ORDER BY arrival")?;
    let mut rows = tickets.query([])?;
    while let Some(row) = rows.next()? {
        if let Err(why) = serde_json::from_str::<Ticket>(&row.get::<_, String>(2)?) {
            let (number, show): (String, i64) = (row.get(0)?, row.get(1)?);
            faults.push(format!("ticket {number} of show {show} can't be read: {why}"));
        }
    }
    Ok(faults)
}

/// The quick look at every start. Nothing is written before it is over.
fn look_over(db: &Connection, path: &Path, begun: bool) -> Result<(), LedgerError> {
    if begun && schema::layout(db)? == 0 {
        return Err(LedgerError::Emptied(path.to_owned()));
    }
    match check(db, "PRAGMA quick_check(1)")?.pop() {
        Some(why) => Err(LedgerError::DamagedFile { file: path.to_owned(), why }),
        None => Ok(()),
    }
}

/// What one of SQLite's checks found.
fn check(db: &Connection, pragma: &str) -> Result<Vec<String>, LedgerError> {
    let mut lines = db.prepare(pragma)?;
    let found = lines.query_map([], |row| row.get::<_, String>(0))?.collect::<Result<Vec<_>, _>>()?;
    Ok(found.into_iter().filter(|line| line != "ok").collect())
}

fn mark(ledger: &Path) -> PathBuf {
    ledger.with_extension("begun")
}

fn make_mark(ledger: &Path) -> io::Result<()> {
    let path = mark(ledger);
    if path.exists() {
        return Ok(());
    }
    durable::write(&path, BEGUN)
}
