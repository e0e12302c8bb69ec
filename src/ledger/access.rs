//! Which tablets may talk to the desk, and by which digits. Only hashes of keys are kept.

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, params};
use serde::{Deserialize, Serialize};

use super::{
    Ledger, LedgerError,
    rows::{keep_setting, note, note_by_itself, setting, time},
};

/// A paired kiosk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kiosk {
    /// The digit with which its ticket numbers begin.
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

/// The setting with the desk's own digit.
const OWN_DIGIT: &str = "desk_digit";
/// The desk's own digit, where no tablet of an earlier version has it.
const USUAL_DIGIT: u8 = 0;

/// The digit with which the desk's own numbers begin, once it has given one.
fn own_digit(db: &Connection) -> Result<Option<u8>, LedgerError> {
    Ok(setting(db, OWN_DIGIT)?.and_then(|text| text.parse().ok()))
}

/// The digit for the desk's own numbers: the one that it has, or one that no tablet has or had in this show. From then on
/// no tablet is given it.
pub(super) fn digit_for_the_desk(db: &Connection, now: Timestamp) -> Result<u8, LedgerError> {
    if let Some(digit) = own_digit(db)? {
        return Ok(digit);
    }
    let resting = resting(db)?;
    let is_paired = |digit: u8| -> rusqlite::Result<bool> {
        db.query_row("SELECT EXISTS (SELECT 1 FROM kiosks WHERE digit = ?)", [digit], |row| row.get(0))
    };
    for digit in [USUAL_DIGIT].into_iter().chain((1..=9).rev()) {
        if !resting.iter().any(|one| one.digit == digit) && !is_paired(digit)? {
            keep_setting(db, OWN_DIGIT, &digit.to_string())?;
            note_by_itself(db, now, "desk_digit", &digit)?;
            return Ok(digit);
        }
    }
    Err(LedgerError::NoDigitForTheDesk)
}

fn digit_of(db: &Connection, key_hash: &str) -> Result<Option<u8>, LedgerError> {
    Ok(db.query_row("SELECT digit FROM kiosks WHERE key_hash = ?", [key_hash], |row| row.get(0)).optional()?)
}

impl Ledger {
    /// Pairs the kiosk whose key has this hash, and gives it the smallest free digit from 1; one is the desk's own. A digit
    /// that was released in the running show rests until the show closes: its numbers may be in guests' hands. Only the
    /// kiosk that had it, which knows its key from `before`, gets it back. A key that is paired already is the same kiosk
    /// once more, which has not heard its digit.
    ///
    /// # Errors
    /// All digits are given or rest until the show closes; or the disk refuses, and nothing is entered.
    pub fn pair_kiosk(&mut self, key_hash: &str, before: Option<&str>, now: Timestamp) -> Result<u8, LedgerError> {
        let tx = self.begin()?;
        if let Some(digit) = digit_of(&tx, key_hash)? {
            return Ok(digit);
        }
        let taken: Vec<u8> = {
            let mut all = tx.prepare("SELECT digit FROM kiosks")?;
            all.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?
        };
        let still_paired = before.map(|hash| digit_of(&tx, hash)).transpose()?.flatten();
        let resting = resting(&tx)?;
        let came_back = [Some(key_hash), before].into_iter().flatten().find_map(|hash| {
            let last = resting.iter().rev().find(|one| one.key_hash.as_deref() == Some(hash))?;
            (!taken.contains(&last.digit)).then_some(last.digit)
        });
        let own = own_digit(&tx)?.unwrap_or(USUAL_DIGIT);
        let free = || {
            let rests = |digit: &u8| resting.iter().any(|one| one.digit == *digit);
            (1..=9).chain([0]).find(|digit| *digit != own && !taken.contains(digit) && !rests(digit))
        };
        let digit = still_paired.or(came_back).or_else(free).ok_or(LedgerError::NineKiosks)?;
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
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then.
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
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn kiosks(&self) -> Result<Vec<Kiosk>, LedgerError> {
        let mut all = self.db.prepare_cached("SELECT digit, paired FROM kiosks ORDER BY digit")?;
        let rows =
            all.query_map([], |row| Ok(Kiosk { digit: row.get(0)?, paired: time(&row.get::<_, String>(1)?) }))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The digit of the kiosk whose key has this hash.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn kiosk_by_key(&self, key_hash: &str) -> Result<Option<u8>, LedgerError> {
        digit_of(&self.db, key_hash)
    }
}
