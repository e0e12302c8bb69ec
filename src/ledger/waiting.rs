//! Guests who wait for a seat: the steps of the running show's line, which are entries like all others. The line follows from
//! them, so nothing of it is kept besides.

use std::collections::BTreeSet;

use jiff::Timestamp;
use rusqlite::{Connection, params};
use serde::{Deserialize, Serialize};

use super::{Ledger, LedgerError, rows::note};
use crate::waiting::{Line, Step};

/// The kind of these entries.
const KIND: &str = "waiting";

/// What an entry of the line holds. The show stands first, so that the entries of one show are found by how they begin.
#[derive(Serialize, Deserialize)]
struct Entry {
    show: i64,
    /// Tells a form that is sent twice from two that are alike.
    form: String,
    steps: Vec<Step>,
}

impl Ledger {
    /// The line of the running show.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn waiting(&self) -> Result<Line, LedgerError> {
        Ok(line_of(&self.db, self.show()?.id)?.0)
    }

    /// Takes steps in the line of the running show, all or none of them. The same `form` once more changes nothing.
    ///
    /// # Errors
    /// A step is none as the line stands, or the disk refuses.
    pub fn take_steps(&mut self, form: &str, steps: &[Step], now: Timestamp) -> Result<Line, LedgerError> {
        let show = self.show()?.id;
        let tx = self.begin()?;
        let (mut line, forms) = line_of(&tx, show)?;
        if forms.contains(form) {
            return Ok(line);
        }
        for step in steps {
            line.take(*step, now.as_millisecond())?;
        }
        note(&tx, now, None, KIND, &Entry { show, form: form.to_owned(), steps: steps.to_vec() })?;
        tx.commit()?;
        Ok(line)
    }
}

/// The line of a show, and the forms by which it came about.
fn line_of(db: &Connection, show: i64) -> Result<(Line, BTreeSet<String>), LedgerError> {
    // The signs before and behind the comma that follows the show's number.
    let (from, to) = (format!("{{\"show\":{show},"), format!("{{\"show\":{show}-"));
    let mut entries = db.prepare_cached(
        "SELECT at, body FROM events WHERE ticket IS NULL AND kind = ?1 AND body >= ?2 AND body < ?3 ORDER BY seq",
    )?;
    let mut rows = entries.query(params![KIND, from, to])?;
    let (mut line, mut forms) = (Line::default(), BTreeSet::new());
    while let Some(row) = rows.next()? {
        let at: Timestamp = row.get_ref(0)?.as_str().ok().and_then(|at| at.parse().ok()).unwrap_or_default();
        let entry: Entry = serde_json::from_str(&row.get::<_, String>(1)?)?;
        for step in entry.steps {
            // What was entered was a step then.
            line.take(step, at.as_millisecond())?;
        }
        forms.insert(entry.form);
    }
    Ok((line, forms))
}
