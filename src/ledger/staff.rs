//! Who works at the desk besides the seller. Of a PIN only what the desk makes of it is kept.

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, params};

use super::{
    Ledger, LedgerError,
    rows::{note, setting, time},
};
use crate::quoting::{hidden_in, quoted};

/// By this name the seller's entries are known.
pub const SELLER: &str = "Seller";

/// Characters of a name at most.
pub(crate) const LONGEST_NAME: usize = 30;
/// Helpers at one desk at most; nobody has as many behind a table.
pub(crate) const MOST_HELPERS: usize = 20;

/// What somebody at the desk may do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// Everything.
    Seller,
    /// Checking and ringing up, and what goes with it.
    Helper,
}

impl Role {
    const fn code(self) -> &'static str {
        match self {
            Self::Seller => "seller",
            Self::Helper => "helper",
        }
    }

    /// A word that nobody knows gives no rights that a helper has not.
    pub(super) fn from_code(code: &str) -> Self {
        if code == Self::Seller.code() { Self::Seller } else { Self::Helper }
    }
}

/// Somebody who works at the desk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Staff {
    /// The name by which their entries are known.
    pub name: String,
    /// What they may do.
    pub role: Role,
    /// When they were added.
    pub since: Timestamp,
}

/// Why somebody can't be entered as working here.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum StaffError {
    /// It can't be a name.
    #[error("{} can't be a name: a name has 1 to {LONGEST_NAME} characters, all of which can be seen, and no comma", quoted(.0))]
    Name(String),
    /// Somebody has the name.
    #[error("{} works here already; take another name, so that entries say who made them", quoted(.0))]
    Taken(String),
    /// The seller has it.
    #[error("{SELLER} is the seller's own name; take another, so that entries say who made them")]
    Sellers,
    /// There are as many as there can be.
    #[error("{MOST_HELPERS} people help here already; remove somebody who does not come any more")]
    Full,
    /// Nobody has the name.
    #[error("nobody called {} works here", quoted(.0))]
    Unknown(String),
}

/// The name without blanks around it, where it can be one.
fn as_name(typed: &str) -> Result<String, StaffError> {
    let name = typed.trim();
    let long = name.chars().count();
    // A comma would make "Ida, approved by the seller" a name.
    let is_name = (1..=LONGEST_NAME).contains(&long) && hidden_in(name).is_none() && !name.contains(',');
    if is_name { Ok(name.to_owned()) } else { Err(StaffError::Name(typed.to_owned())) }
}

fn is_same(one: &str, other: &str) -> bool {
    one.to_lowercase() == other.to_lowercase()
}

fn staff(db: &Connection) -> Result<Vec<Staff>, LedgerError> {
    let mut all = db.prepare_cached("SELECT name, role, since FROM staff ORDER BY name")?;
    let rows = all.query_map([], |row| {
        let (role, since): (String, String) = (row.get(1)?, row.get(2)?);
        Ok(Staff { name: row.get(0)?, role: Role::from_code(&role), since: time(&since) })
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}

impl Ledger {
    /// Who works here besides the seller, by name.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn staff(&self) -> Result<Vec<Staff>, LedgerError> {
        staff(&self.db)
    }

    /// The name of whom `typed` means, small and large letters alike; nobody's is `None`.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn who_is(&self, typed: &str) -> Result<Option<String>, LedgerError> {
        let typed = typed.trim();
        if typed.is_empty() || is_same(typed, SELLER) {
            return Ok(Some(SELLER.to_owned()));
        }
        Ok(self.staff()?.into_iter().map(|one| one.name).find(|name| is_same(name, typed)))
    }

    /// What is kept of the PIN of `who`.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn pin_of(&self, who: &str) -> Result<Option<String>, LedgerError> {
        if who == SELLER {
            return setting(&self.db, "pin");
        }
        let mut one = self.db.prepare_cached("SELECT pin FROM staff WHERE name = ?")?;
        Ok(one.query_row([who], |row| row.get(0)).optional()?)
    }

    /// Adds a helper, and gives the name as it stands.
    ///
    /// # Errors
    /// The name can't be one or is taken, there are enough helpers, or the disk refuses; nothing is entered then.
    pub fn add_helper(&mut self, typed: &str, pin: &str, now: Timestamp) -> Result<String, LedgerError> {
        let name = as_name(typed)?;
        let tx = self.begin()?;
        let all = staff(&tx)?;
        if is_same(&name, SELLER) {
            return Err(StaffError::Sellers.into());
        }
        if let Some(other) = all.iter().find(|one| is_same(&one.name, &name)) {
            return Err(StaffError::Taken(other.name.clone()).into());
        }
        if all.len() >= MOST_HELPERS {
            return Err(StaffError::Full.into());
        }
        tx.execute(
            "INSERT INTO staff (name, role, pin, since) VALUES (?, ?, ?, ?)",
            params![name, Role::Helper.code(), pin, now.to_string()],
        )?;
        note(&tx, now, None, "helper_added", &name)?;
        tx.commit()?;
        Ok(name)
    }
}
