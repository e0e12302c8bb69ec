//! A copy of the ledger to practise on. Whatever is done with it, the ledger itself stays as it was; at the end the copy is
//! thrown away.

use std::{
    fs, io,
    path::{Path, PathBuf},
};

use jiff::Timestamp;
use rusqlite::{Connection, OpenFlags, params};

use super::{
    AboutShow, BackupError, Ledger, LedgerError, ShowKind, about_show,
    backup::back_up,
    rows::{current_show, keep_setting, note, setting},
    sessions,
};
use crate::money::Currency;

/// Where the copy lies, beside the ledger.
fn beside(ledger: &Path) -> PathBuf {
    ledger.with_file_name("practice.sqlite")
}

/// Removes the copy with the files that SQLite has beside it.
fn remove(ledger: &Path) -> io::Result<()> {
    for end in ["sqlite-wal", "sqlite-shm", "sqlite-journal", "sqlite"] {
        match fs::remove_file(beside(ledger).with_extension(end)) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error),
            _ => {}
        }
    }
    Ok(())
}

/// A row of the table of sessions.
type Session = (String, String, String, Option<String>);

fn signed_in(db: &Connection) -> rusqlite::Result<Vec<Session>> {
    let mut all = db.prepare("SELECT token_hash, began, used, who FROM sessions ORDER BY token_hash")?;
    let rows = all.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))?;
    rows.collect()
}

impl Ledger {
    /// Makes a copy to practise on, in which a show of practice begins where the running one stands: with its place and its
    /// tax, nothing sold yet and no ticket open. A copy that was left over is thrown away.
    ///
    /// # Errors
    /// The ledger is in memory only; or the disk refuses, and then there is no copy.
    pub fn begin_practice(&self, currency: Currency, now: Timestamp) -> Result<Self, BackupError> {
        let file = self.file.as_ref().ok_or_else(|| BackupError::NoLedger(PathBuf::new()))?;
        let copy = beside(file);
        let target = |error| BackupError::Target { file: copy.clone(), error };
        remove(file).map_err(target)?;
        back_up(file, &copy)?;
        let begun = Self::practising(&copy, currency, now);
        if begun.is_err() {
            remove(file).map_err(target)?;
        }
        Ok(begun?)
    }

    fn practising(copy: &Path, currency: Currency, now: Timestamp) -> Result<Self, LedgerError> {
        let mut ledger = Self::prepared(Connection::open(copy)?, Some(copy.to_owned()), now)?;
        let about = ledger.about_show(ledger.show()?.id)?;
        ledger.close_show(currency, now)?;
        let tx = ledger.begin()?;
        if let Some(show) = current_show(&tx)? {
            let told = AboutShow { kind: Some(ShowKind::Practice), ..about };
            about_show::keep(&tx, show.id, &told)?;
            note(&tx, now, None, "show_told", &(show.id, &told))?;
        }
        tx.commit()?;
        Ok(ledger)
    }

    /// Takes over from the copy `practised` who is signed in by now, and nothing else: nobody has to sign in again, and who
    /// was signed out stays so. A disk that refuses that keeps nobody from ending practice.
    pub fn end_practice(&mut self, practised: &Self, now: Timestamp) {
        self.take_over(&practised.db, now);
    }

    /// Throws away what an earlier run left that was ended, or broke off, while somebody practised; whether there was
    /// anything.
    pub fn practice_was_cut_short(&mut self, now: Timestamp) -> bool {
        let Some(copy) = self.file.as_deref().map(beside).filter(|copy| copy.exists()) else { return false };
        match Connection::open_with_flags(&copy, OpenFlags::SQLITE_OPEN_READ_WRITE) {
            Ok(left) => self.take_over(&left, now),
            Err(error) => tracing::warn!("the copy of the ledger for practice can't be read: {error}"),
        }
        self.throw_practice_away();
        true
    }

    /// Removes the copy. One that can't be removed is worth nothing all the same, and is removed with the next start.
    pub fn throw_practice_away(&self) {
        if let Some(Err(error)) = self.file.as_deref().map(remove) {
            tracing::warn!("the copy of the ledger for practice could not be removed: {error}");
        }
    }

    fn take_over(&mut self, from: &Connection, now: Timestamp) {
        if let Err(error) = self.take_over_sessions(from, now) {
            tracing::warn!("who signed in or out during practice could not be taken over: {error}");
        }
    }

    fn take_over_sessions(&mut self, from: &Connection, now: Timestamp) -> Result<(), LedgerError> {
        let (theirs, browsers) = (signed_in(from)?, setting(from, sessions::BROWSERS)?);
        let ours = signed_in(&self.db)?;
        if theirs == ours && browsers == setting(&self.db, sessions::BROWSERS)? {
            return Ok(());
        }
        let tx = self.begin()?;
        tx.execute("DELETE FROM sessions", [])?;
        for (token_hash, began, used, who) in &theirs {
            tx.execute(
                "INSERT INTO sessions (token_hash, began, used, who) VALUES (?, ?, ?, ?)",
                params![token_hash, began, used, who],
            )?;
        }
        if let Some(browsers) = browsers {
            keep_setting(&tx, sessions::BROWSERS, &browsers)?;
        }
        let is_in = |all: &[Session], one: &Session| all.iter().any(|other| other.0 == one.0);
        for _ in theirs.iter().filter(|one| !is_in(&ours, one)) {
            note(&tx, now, None, "signed_in", &("during practice", ""))?;
        }
        for _ in ours.iter().filter(|one| !is_in(&theirs, one)) {
            note(&tx, now, None, "signed_out", &false)?;
        }
        tx.commit()
    }
}
