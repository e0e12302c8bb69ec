//! Who is signed in at the desk, in which browser, and what ends that. Only hashes of keys are kept.

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, params};
use serde::{Deserialize, Serialize};

use super::{
    Ledger, LedgerError,
    rows::{keep_setting, note, setting, time},
    staff::{Role, SELLER, StaffError},
};

/// A browser from which somebody signs in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Visitor {
    /// The hash of the key by which it is known.
    pub key_hash: String,
    /// What it calls itself, shortened.
    pub name: String,
    /// Where it is in the network.
    pub address: String,
    /// The helper who signs in; none where it is the seller.
    pub who: Option<String>,
}

/// A session of somebody at the desk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Session {
    /// When it began.
    pub began: Timestamp,
    /// When it was last used.
    pub used: Timestamp,
    /// Whose it is.
    pub who: String,
    /// What they may do.
    pub role: Role,
}

/// A browser in which somebody signed in before.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Browser {
    /// The hash of the key by which it is known.
    pub key_hash: String,
    /// What it calls itself.
    pub name: String,
    /// Where it was in the network.
    pub address: String,
    /// When somebody last signed in with it.
    pub last: Timestamp,
    /// The token's hash of the session that began then; it may have ended.
    pub session: Option<String>,
    /// The helper who signed in then; none where it was the seller, and in what earlier versions wrote.
    #[serde(default)]
    pub who: Option<String>,
}

impl Browser {
    /// Who last signed in with it.
    pub fn whose(&self) -> &str {
        self.who.as_deref().unwrap_or(SELLER)
    }
}

/// The setting with the browsers.
pub(super) const BROWSERS: &str = "browsers";
/// Browsers that are remembered; nobody has as many phones.
const MOST_BROWSERS: usize = 40;

fn browsers(db: &Connection) -> Result<Vec<Browser>, LedgerError> {
    let text = setting(db, BROWSERS)?;
    // What a later version wrote may not read: then nobody is known, which only makes guessing harder.
    Ok(text.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default())
}

fn keep_browsers(db: &Connection, all: &[Browser]) -> Result<(), LedgerError> {
    keep_setting(db, BROWSERS, &serde_json::to_string(all)?)
}

/// Makes the browsers in which `who` signed in last strangers again.
fn forget_browsers_of(db: &Connection, who: &str) -> Result<(), LedgerError> {
    let mut all = browsers(db)?;
    all.retain(|browser| browser.whose() != who);
    keep_browsers(db, &all)
}

impl Ledger {
    /// Begins a session in `browser`, and ends the one that this browser had before.
    ///
    /// # Errors
    /// The helper does not work here any more, or the disk refuses; nothing is entered then.
    pub fn begin_session(&mut self, token_hash: &str, browser: &Visitor, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        if let Some(who) = &browser.who
            && !tx.query_row("SELECT EXISTS (SELECT 1 FROM staff WHERE name = ?)", [who], |row| row.get(0))?
        {
            return Err(StaffError::Unknown(who.clone()).into());
        }
        let now_text = now.to_string();
        let mut all = browsers(&tx)?;
        let before = all.iter().position(|other| other.key_hash == browser.key_hash).map(|at| all.remove(at));
        if let Some(session) = before.as_ref().and_then(|before| before.session.as_ref()) {
            tx.execute("DELETE FROM sessions WHERE token_hash = ?", [session])?;
        }
        tx.execute(
            "INSERT INTO sessions (token_hash, began, used, who) VALUES (?, ?, ?, ?)",
            params![token_hash, now_text, now_text, browser.who],
        )?;
        all.insert(
            0,
            Browser {
                key_hash: browser.key_hash.clone(),
                name: browser.name.clone(),
                address: browser.address.clone(),
                last: now,
                session: Some(token_hash.to_owned()),
                who: browser.who.clone(),
            },
        );
        all.truncate(MOST_BROWSERS);
        keep_browsers(&tx, &all)?;
        note(&tx, now, None, "signed_in", &(&browser.name, &browser.address))?;
        tx.commit()?;
        Ok(())
    }

    /// The browsers in which somebody signed in before, the last one first.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn browsers(&self) -> Result<Vec<Browser>, LedgerError> {
        browsers(&self.db)
    }

    /// Forgets the PIN, every session and every browser.
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then.
    pub fn forget_pin(&mut self, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        tx.execute("DELETE FROM settings WHERE name IN ('pin', ?)", [BROWSERS])?;
        tx.execute("DELETE FROM sessions", [])?;
        note(&tx, now, None, "pin_reset", &())?;
        tx.commit()?;
        Ok(())
    }

    /// The session with this token hash. One of a helper who does not work here any more is none.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn session(&self, token_hash: &str) -> Result<Option<Session>, LedgerError> {
        let mut one = self.db.prepare_cached(
            "SELECT began, used, who, (SELECT role FROM staff WHERE name = who) FROM sessions WHERE token_hash = ?",
        )?;
        let read = one
            .query_row([token_hash], |row| {
                let (began, used): (String, String) = (row.get(0)?, row.get(1)?);
                let (who, role): (Option<String>, Option<String>) = (row.get(2)?, row.get(3)?);
                let whose = match (who, role) {
                    (None, _) => Some((SELLER.to_owned(), Role::Seller)),
                    (Some(who), Some(role)) => Some((who, Role::from_code(&role))),
                    (Some(_), None) => None,
                };
                Ok(whose.map(|(who, role)| Session { began: time(&began), used: time(&used), who, role }))
            })
            .optional()?;
        Ok(read.flatten())
    }

    /// Notes that a session was used.
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then.
    pub fn use_session(&mut self, token_hash: &str, now: Timestamp) -> Result<(), LedgerError> {
        self.db.execute("UPDATE sessions SET used = ? WHERE token_hash = ?", [&now.to_string(), token_hash])?;
        Ok(())
    }

    /// Ends one session, or all of them.
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then.
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

    /// Keeps another PIN for `who`, and ends every session of theirs but the one in which it was changed.
    ///
    /// # Errors
    /// Nobody has that name, or the disk refuses; nothing is entered then.
    pub fn change_pin(&mut self, who: &str, pin: &str, stays: Option<&str>, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        let stays = stays.unwrap_or_default();
        if who == SELLER {
            keep_setting(&tx, "pin", pin)?;
            tx.execute("DELETE FROM sessions WHERE who IS NULL AND token_hash <> ?", [stays])?;
            note(&tx, now, None, "pin_changed", &())?;
        } else {
            if tx.execute("UPDATE staff SET pin = ? WHERE name = ?", [pin, who])? == 0 {
                return Err(StaffError::Unknown(who.to_owned()).into());
            }
            tx.execute("DELETE FROM sessions WHERE who = ? AND token_hash <> ?", [who, stays])?;
            note(&tx, now, None, "helper_pin_changed", &who)?;
        }
        tx.commit()?;
        Ok(())
    }

    /// Removes a helper: every session of theirs ends, and the browsers in which they signed in are strangers again. What
    /// they entered keeps their name.
    ///
    /// # Errors
    /// Nobody has that name, or the disk refuses; nothing is entered then.
    pub fn remove_helper(&mut self, name: &str, now: Timestamp) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        if tx.execute("DELETE FROM staff WHERE name = ?", [name])? == 0 {
            return Err(StaffError::Unknown(name.to_owned()).into());
        }
        tx.execute("DELETE FROM sessions WHERE who = ?", [name])?;
        forget_browsers_of(&tx, name)?;
        note(&tx, now, None, "helper_removed", &name)?;
        tx.commit()?;
        Ok(())
    }
}
