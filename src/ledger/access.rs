//! Who may talk to the desk: paired kiosks and the seller's sessions. Only hashes of keys are kept.

use jiff::Timestamp;
use rusqlite::{OptionalExtension, params};

use super::{
    Ledger, LedgerError,
    store::{note, time},
};

/// A paired kiosk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kiosk {
    /// Its digit.
    pub digit: u8,
    /// When it was paired.
    pub paired: Timestamp,
}

impl Ledger {
    /// Pairs the kiosk whose key has this hash, and gives it the smallest free digit from 1, 0 being the last.
    pub fn pair_kiosk(&mut self, key_hash: &str, now: Timestamp) -> Result<u8, LedgerError> {
        let tx = self.begin()?;
        let taken: Vec<u8> = {
            let mut all = tx.prepare("SELECT digit FROM kiosks")?;
            all.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?
        };
        let digit = (1..=9).chain([0]).find(|digit| !taken.contains(digit)).ok_or(LedgerError::TenKiosks)?;
        tx.execute(
            "INSERT INTO kiosks (digit, key_hash, paired) VALUES (?, ?, ?)",
            params![digit, key_hash, now.to_string()],
        )?;
        note(&tx, now, None, "kiosk_paired", &digit)?;
        tx.commit()?;
        Ok(digit)
    }

    /// Releases a kiosk; its key is worth nothing from now on.
    pub fn release_kiosk(&mut self, digit: u8, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        tx.execute("DELETE FROM kiosks WHERE digit = ?", [digit])?;
        note(&tx, now, None, "kiosk_released", &digit)?;
        tx.commit()?;
        Ok(())
    }

    /// The paired kiosks, by digit.
    pub fn kiosks(&self) -> Result<Vec<Kiosk>, LedgerError> {
        let mut all = self.db.prepare_cached("SELECT digit, paired FROM kiosks ORDER BY digit")?;
        let rows =
            all.query_map([], |row| Ok(Kiosk { digit: row.get(0)?, paired: time(&row.get::<_, String>(1)?) }))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The digit of the kiosk whose key has this hash.
    pub fn kiosk_by_key(&self, key_hash: &str) -> Result<Option<u8>, LedgerError> {
        let mut of = self.db.prepare_cached("SELECT digit FROM kiosks WHERE key_hash = ?")?;
        Ok(of.query_row([key_hash], |row| row.get(0)).optional()?)
    }

    /// Begins a session of the seller.
    pub fn begin_session(&mut self, token_hash: &str, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        let now_text = now.to_string();
        tx.execute(
            "INSERT INTO sessions (token_hash, began, used) VALUES (?, ?, ?)",
            [token_hash, &now_text, &now_text],
        )?;
        note(&tx, now, None, "signed_in", &())?;
        tx.commit()?;
        Ok(())
    }

    /// When the session with this token hash began and was last used.
    pub fn session(&self, token_hash: &str) -> Result<Option<(Timestamp, Timestamp)>, LedgerError> {
        Ok(self
            .db
            .query_row("SELECT began, used FROM sessions WHERE token_hash = ?", [token_hash], |row| {
                Ok((time(&row.get::<_, String>(0)?), time(&row.get::<_, String>(1)?)))
            })
            .optional()?)
    }

    /// Notes that a session was used.
    pub fn use_session(&mut self, token_hash: &str, now: Timestamp) -> Result<(), LedgerError> {
        self.db.execute("UPDATE sessions SET used = ? WHERE token_hash = ?", [&now.to_string(), token_hash])?;
        Ok(())
    }

    /// Ends one session, or all of them.
    pub fn end_sessions(&mut self, token_hash: Option<&str>, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        match token_hash {
            Some(hash) => tx.execute("DELETE FROM sessions WHERE token_hash = ?", [hash])?,
            None => tx.execute("DELETE FROM sessions", [])?,
        };
        note(&tx, now, None, "signed_out", &token_hash.is_none())?;
        tx.commit()?;
        Ok(())
    }
}
