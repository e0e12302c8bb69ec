//! Who may talk to the desk: paired kiosks and the seller's sessions. Only hashes of keys are kept.

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, params};
use serde::{Deserialize, Serialize};

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

/// What is noted when a kiosk is released.
#[derive(Serialize, Deserialize)]
struct Released {
    digit: u8,
    key_hash: Option<String>,
}

/// The releases of the running show, oldest first.
fn resting(db: &Connection) -> Result<Vec<Released>, LedgerError> {
    let mut all = db.prepare_cached(
        "SELECT body FROM events WHERE kind = 'kiosk_released'
         AND seq > (SELECT coalesce(max(seq), 0) FROM events WHERE kind = 'show_opened') ORDER BY seq",
    )?;
    let bodies = all.query_map([], |row| row.get::<_, String>(0))?;
    let mut released = Vec::new();
    for body in bodies {
        let body = body?;
        // Earlier versions noted the digit alone.
        released.push(match serde_json::from_str::<u8>(&body) {
            Ok(digit) => Released { digit, key_hash: None },
            Err(_) => serde_json::from_str(&body)?,
        });
    }
    Ok(released)
}

fn digit_of(db: &Connection, key_hash: &str) -> Result<Option<u8>, LedgerError> {
    Ok(db.query_row("SELECT digit FROM kiosks WHERE key_hash = ?", [key_hash], |row| row.get(0)).optional()?)
}

impl Ledger {
    /// Pairs the kiosk whose key has this hash, and gives it the smallest free digit from 1, 0 being the last. A digit
    /// that was released in the running show rests until the show closes: its numbers may be in guests' hands. Only the
    /// kiosk that had it, which knows its key from `before`, gets it back.
    pub fn pair_kiosk(&mut self, key_hash: &str, before: Option<&str>, now: Timestamp) -> Result<u8, LedgerError> {
        let tx = self.begin()?;
        let taken: Vec<u8> = {
            let mut all = tx.prepare("SELECT digit FROM kiosks")?;
            all.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?
        };
        let still_paired = before.map(|hash| digit_of(&tx, hash)).transpose()?.flatten();
        let resting = resting(&tx)?;
        let came_back = before.and_then(|hash| {
            let last = resting.iter().rev().find(|one| one.key_hash.as_deref() == Some(hash))?;
            (!taken.contains(&last.digit)).then_some(last.digit)
        });
        let free = || {
            let rests = |digit: &u8| resting.iter().any(|one| one.digit == *digit);
            (1..=9).chain([0]).find(|digit| !taken.contains(digit) && !rests(digit))
        };
        let digit = still_paired.or(came_back).or_else(free).ok_or(LedgerError::TenKiosks)?;
        tx.execute("DELETE FROM kiosks WHERE digit = ?", [digit])?;
        tx.execute(
            "INSERT INTO kiosks (digit, key_hash, paired) VALUES (?, ?, ?)",
            params![digit, key_hash, now.to_string()],
        )?;
        note(&tx, now, None, "kiosk_paired", &digit)?;
        tx.commit()?;
        Ok(digit)
    }

    /// Releases a kiosk; its key is worth nothing from now on, other than for being paired again.
    pub fn release_kiosk(&mut self, digit: u8, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        let key_hash = tx
            .query_row("SELECT key_hash FROM kiosks WHERE digit = ?", [digit], |row| row.get::<_, String>(0))
            .optional()?;
        tx.execute("DELETE FROM kiosks WHERE digit = ?", [digit])?;
        note(&tx, now, None, "kiosk_released", &Released { digit, key_hash })?;
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
        digit_of(&self.db, key_hash)
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
