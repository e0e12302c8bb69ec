//! Counting by hand: what lies in the compartments against what should, and why it differs. Nothing is overwritten: each
//! count and each reason is an entry, and what a page shows of them is kept beside.

use std::collections::BTreeMap;

use jiff::Timestamp;
use rusqlite::{Connection, OptionalExtension, params};
use serde::{Deserialize, Serialize, de::DeserializeOwned};
use uuid::Uuid;

use super::{
    Ledger, LedgerError,
    rows::{note, time},
    shared_commit::Change,
    stock::{count_of, move_by},
    stock_moves::between,
};

/// Nobody counts more than this in one compartment; a larger figure is a slip of the finger.
const MOST: u32 = 9999;

/// Why there is another number than the count said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reason {
    /// It broke.
    Broken,
    /// It was stolen.
    Stolen,
    /// It was given away.
    GivenAway,
    /// It was found again.
    Found,
}

impl Reason {
    /// All of them, the one that adds at last.
    pub const ALL: [Self; 4] = [Self::Broken, Self::Stolen, Self::GivenAway, Self::Found];

    /// The name in forms, files and texts.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Broken => "broken",
            Self::Stolen => "stolen",
            Self::GivenAway => "given_away",
            Self::Found => "found",
        }
    }

    /// The reason called `code`.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.code() == code)
    }

    /// Whether there is more by it.
    pub const fn adds(self) -> bool {
        matches!(self, Self::Found)
    }
}

/// Why a count can't be entered.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CountingError {
    /// The same form was entered before, with other figures.
    #[error("this form was entered before with other figures; look at the counts again, nothing was entered now")]
    EnteredOtherwise,
    /// The figure is larger than any compartment's.
    #[error("{found} is more than lies in any compartment; write a number up to {most}")]
    TooMany {
        /// The figure.
        found: u32,
        /// The largest that is taken.
        most: u32,
    },
    /// A reason is given for more than differs.
    #[error("{open} differ without a reason, and not {found}")]
    NotSoMany {
        /// For how many it was given.
        found: u32,
        /// How many differ without a reason.
        open: u32,
    },
    /// A reason for none.
    #[error("say how many it were; a number from 1")]
    None,
}

/// What was counted and put in of one part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CountLine {
    /// Id of the part.
    pub part: String,
    /// How many lay there; none where only something was put in.
    pub counted: Option<u32>,
    /// How many were put in from the box beside the tray, after counting.
    pub refilled: u32,
}

/// One part as its count was entered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Counted {
    /// What was said.
    #[serde(flatten)]
    pub line: CountLine,
    /// The fewest that should have lain there while it was counted: none of those held.
    pub low: u32,
    /// The most: all of those held.
    pub high: u32,
    /// How many there were more than that, or fewer.
    pub difference: i64,
}

/// A part as it was counted last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LastCount {
    /// When.
    pub at: Timestamp,
    /// How many lay there.
    pub counted: u32,
    /// How many are missing without a reason; negative where there are more than should be.
    pub missing: i64,
}

/// What an entry of counting says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Said {
    /// Parts were counted.
    Counted(Vec<Counted>),
    /// A reason was given for what had differed: part, reason, how many.
    Explained(String, Reason, u32),
    /// Something became of a part without a count: part, reason, how many.
    Changed(String, Reason, u32),
    /// Strays went home: part, how many, and how many of these had been missing.
    Stray(String, u32, u32),
}

/// An entry of counting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CountingEntry {
    /// Its place in the ledger.
    pub seq: i64,
    /// When, by the desk's clock.
    pub at: Timestamp,
    /// Who did it.
    pub by: Option<String>,
    /// What it says.
    pub said: Said,
}

const COUNTED: &str = "parts_counted";
const EXPLAINED: &str = "count_explained";
const CHANGED: &str = "stock_changed";
const STRAY: &str = "stray_home";

impl Ledger {
    /// Enters what was counted on a page that showed the ledger as it was at entry `seen`. What was sold, held or put in
    /// since then may have happened before or after a compartment was counted, so it makes no difference: only what lies
    /// outside of all that the count has said meanwhile does. `form` is the form in which it was said: sent twice, it counts
    /// once.
    ///
    /// # Errors
    /// A part is not counted here, a figure is larger than any compartment's, the form was entered before with other figures,
    /// or the disk refuses. Nothing is entered then; so it is with every change below.
    pub fn count_parts(
        &mut self,
        form: Uuid,
        seen: i64,
        lines: &[CountLine],
        now: Timestamp,
    ) -> Result<Vec<Counted>, LedgerError> {
        let tx = self.begin()?;
        if let Some(entered) = entered::<Vec<Counted>>(&tx, form, COUNTED)? {
            let said: Vec<&CountLine> = entered.iter().map(|one| &one.line).collect();
            return if said == lines.iter().collect::<Vec<_>>() {
                Ok(entered)
            } else {
                Err(CountingError::EnteredOtherwise.into())
            };
        }
        let all = lines.iter().map(|line| count_one(&tx, seen, line, now)).collect::<Result<Vec<_>, _>>()?;
        if !all.is_empty() {
            note(&tx, now, Some(form), COUNTED, &all)?;
        }
        tx.commit()?;
        Ok(all)
    }

    /// Says why `how_many` of what had differed did; the count itself stays as it is.
    ///
    /// # Errors
    /// Not so many differ without a reason; what else [`Ledger::count_parts`] says.
    pub fn explain_count(
        &mut self,
        form: Uuid,
        part: &str,
        reason: Reason,
        how_many: u32,
        now: Timestamp,
    ) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        let said = (part, reason, how_many);
        if is_entered(&tx, form, EXPLAINED, &said)? {
            return Ok(());
        }
        count_of(&tx, part)?;
        let missing = last_count(&tx, part)?.map_or(0, |last| last.missing);
        let open = u32::try_from(if reason.adds() { -missing } else { missing }).unwrap_or(0);
        match how_many {
            0 => return Err(CountingError::None.into()),
            found if found > open => return Err(CountingError::NotSoMany { found, open }.into()),
            _ => {}
        }
        less_missing(&tx, part, if reason.adds() { -i64::from(how_many) } else { how_many.into() })?;
        note(&tx, now, Some(form), EXPLAINED, &said)?;
        tx.commit()
    }

    /// Something became of `how_many` of a part while nobody counted: they broke, or were found again.
    ///
    /// # Errors
    /// So many are not free; what else [`Ledger::count_parts`] says.
    pub fn change_stock(
        &mut self,
        form: Uuid,
        part: &str,
        reason: Reason,
        how_many: u32,
        now: Timestamp,
    ) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        let said = (part, reason, how_many);
        if is_entered(&tx, form, CHANGED, &said)? {
            return Ok(());
        }
        in_bounds(how_many)?;
        move_by(&tx, part, if reason.adds() { how_many.into() } else { -i64::from(how_many) })?;
        note(&tx, now, Some(form), CHANGED, &said)?;
        tx.commit()
    }

    /// Strays of a part were found somewhere else and put home. Those that had been counted as missing are there again;
    /// others were never taken off the count, and change nothing. Gives how many had been missing.
    ///
    /// # Errors
    /// As for [`Ledger::count_parts`].
    pub fn stray_home(&mut self, form: Uuid, part: &str, how_many: u32, now: Timestamp) -> Result<u32, LedgerError> {
        let tx = self.begin()?;
        if let Some((before, many, found)) = entered::<(String, u32, u32)>(&tx, form, STRAY)? {
            return if (before.as_str(), many) == (part, how_many) {
                Ok(found)
            } else {
                Err(CountingError::EnteredOtherwise.into())
            };
        }
        in_bounds(how_many)?;
        count_of(&tx, part)?;
        let missing = last_count(&tx, part)?.map_or(0, |last| last.missing);
        let found = how_many.min(u32::try_from(missing).unwrap_or(0));
        if found > 0 {
            move_by(&tx, part, found.into())?;
            less_missing(&tx, part, found.into())?;
        }
        note(&tx, now, Some(form), STRAY, &(part, how_many, found))?;
        tx.commit()?;
        Ok(found)
    }

    /// When each part was counted last, and what is missing of it.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn last_counts(&self) -> Result<BTreeMap<String, LastCount>, LedgerError> {
        let mut all = self.db.prepare_cached("SELECT part, at, counted, missing FROM last_counts")?;
        let rows = all.query_map([], |row| {
            let at = time(&row.get::<_, String>(1)?);
            Ok((row.get(0)?, LastCount { at, counted: row.get(2)?, missing: row.get(3)? }))
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// The last entries of counting, the newest first. One that can't be read is left out.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn counting_entries(&self, limit: usize) -> Result<Vec<CountingEntry>, LedgerError> {
        let mut all = self.db.prepare_cached(
            "SELECT seq, at, by, kind, body FROM events
             WHERE kind IN ('parts_counted', 'count_explained', 'stock_changed', 'stray_home') ORDER BY seq DESC LIMIT ?",
        )?;
        let mut rows = all.query([i64::try_from(limit).unwrap_or(i64::MAX)])?;
        let mut entries = Vec::new();
        while let Some(row) = rows.next()? {
            if let Some(said) = said(&row.get::<_, String>(3)?, &row.get::<_, String>(4)?) {
                entries.push(CountingEntry {
                    seq: row.get(0)?,
                    at: time(&row.get::<_, String>(1)?),
                    by: row.get(2)?,
                    said,
                });
            }
        }
        Ok(entries)
    }
}

/// What an entry of this kind says.
fn said(kind: &str, body: &str) -> Option<Said> {
    match kind {
        COUNTED => serde_json::from_str(body).ok().map(Said::Counted),
        EXPLAINED => serde_json::from_str(body).ok().map(|(part, reason, many)| Said::Explained(part, reason, many)),
        CHANGED => serde_json::from_str(body).ok().map(|(part, reason, many)| Said::Changed(part, reason, many)),
        STRAY => serde_json::from_str(body).ok().map(|(part, many, found)| Said::Stray(part, many, found)),
        _ => None,
    }
}

/// Counts one part.
fn count_one(tx: &Change<'_>, seen: i64, line: &CountLine, now: Timestamp) -> Result<Counted, LedgerError> {
    for found in line.counted.into_iter().chain([line.refilled]) {
        if found > MOST {
            return Err(CountingError::TooMany { found, most: MOST }.into());
        }
    }
    let (low, high) = between(tx, &line.part, seen)?;
    let difference = line.counted.map_or(0, |counted| i64::from(counted) - i64::from(counted.clamp(low, high)));
    move_by(tx, &line.part, difference + i64::from(line.refilled))?;
    if let Some(counted) = line.counted {
        tx.prepare_cached(
            "INSERT INTO last_counts (part, at, counted, missing) VALUES (?1, ?2, ?3, ?4)
             ON CONFLICT (part) DO UPDATE SET at = ?2, counted = ?3, missing = missing + ?4",
        )?
        .execute(params![line.part, now.to_string(), counted, -difference])?;
    }
    Ok(Counted { line: line.clone(), low, high, difference })
}

fn in_bounds(found: u32) -> Result<(), CountingError> {
    match found {
        0 => Err(CountingError::None),
        found if found > MOST => Err(CountingError::TooMany { found, most: MOST }),
        _ => Ok(()),
    }
}

fn last_count(db: &Connection, part: &str) -> Result<Option<LastCount>, LedgerError> {
    let last = db
        .prepare_cached("SELECT at, counted, missing FROM last_counts WHERE part = ?")?
        .query_row([part], |row| {
            Ok(LastCount { at: time(&row.get::<_, String>(0)?), counted: row.get(1)?, missing: row.get(2)? })
        })
        .optional()?;
    Ok(last)
}

fn less_missing(db: &Connection, part: &str, by: i64) -> Result<(), LedgerError> {
    db.prepare_cached("UPDATE last_counts SET missing = missing - ? WHERE part = ?")?.execute(params![by, part])?;
    Ok(())
}

/// What was entered by this form before.
fn entered<T: DeserializeOwned>(db: &Connection, form: Uuid, kind: &str) -> Result<Option<T>, LedgerError> {
    let body: Option<String> = db
        .prepare_cached("SELECT body FROM events WHERE ticket = ? AND kind = ?")?
        .query_row(params![form.to_string(), kind], |row| row.get(0))
        .optional()?;
    Ok(body.map(|body| serde_json::from_str(&body)).transpose()?)
}

/// Whether this form was entered before, with just this.
fn is_entered(db: &Connection, form: Uuid, kind: &str, said: &(&str, Reason, u32)) -> Result<bool, LedgerError> {
    match entered::<(String, Reason, u32)>(db, form, kind)? {
        None => Ok(false),
        Some((part, reason, many)) if (part.as_str(), reason, many) == *said => Ok(true),
        Some(_) => Err(CountingError::EnteredOtherwise.into()),
    }
}
