//! What the bench keeps beside shows and sales: a page of each kind by its id. What it said before stays among the entries.

use jiff::Timestamp;
use rusqlite::params;
use serde::{Serialize, de::DeserializeOwned};
use uuid::Uuid;

use super::{
    Ledger, LedgerError,
    rows::{note, time},
    stock::move_by,
};

/// A page of the workbook as it is now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeptPage<T> {
    /// Its id among the pages of its kind.
    pub id: String,
    /// The entry by which it became what it is.
    pub seq: i64,
    /// When that was, by the desk's clock.
    pub at: Timestamp,
    /// What it says.
    pub page: T,
}

impl Ledger {
    /// Keeps pages of the workbook as they are now, each by kind and id. `form` is the form in which it was said: sent twice,
    /// it is one entry.
    ///
    /// # Errors
    /// The disk refuses; nothing is entered then.
    pub fn keep_pages(
        &mut self,
        form: Uuid,
        pages: &[(&str, &str, serde_json::Value)],
        now: Timestamp,
    ) -> Result<(), LedgerError> {
        self.keep_pages_and_put_in(form, pages, None, now)
    }

    /// The same, while so many of a part are put into its compartment.
    ///
    /// # Errors
    /// The part is not counted here, or there would be more than any compartment holds; or the disk refuses. Nothing is
    /// entered then.
    pub fn keep_pages_and_put_in(
        &mut self,
        form: Uuid,
        pages: &[(&str, &str, serde_json::Value)],
        put_in: Option<(&str, u32)>,
        now: Timestamp,
    ) -> Result<(), LedgerError> {
        let tx = self.begin()?;
        let before: bool = tx.query_row(
            "SELECT EXISTS (SELECT 1 FROM events WHERE ticket = ? AND kind = 'workbook')",
            [form.to_string()],
            |row| row.get(0),
        )?;
        if before {
            return Ok(());
        }
        if let Some((part, more)) = put_in {
            move_by(&tx, part, more.into())?;
        }
        let seq = note(&tx, now, Some(form), "workbook", &(pages, put_in))?;
        for (kind, id, page) in pages {
            tx.execute(
                "INSERT INTO workbook (kind, id, seq, body) VALUES (?1, ?2, ?3, ?4)
                 ON CONFLICT (kind, id) DO UPDATE SET seq = ?3, body = ?4",
                params![kind, id, seq, page.to_string()],
            )?;
        }
        tx.commit()
    }

    /// Every page of a kind, in the order in which they were begun. One that can't be read is left out.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn pages<T: DeserializeOwned>(&self, kind: &str) -> Result<Vec<KeptPage<T>>, LedgerError> {
        let mut all = self.db.prepare_cached(
            "SELECT id, workbook.seq, workbook.body, at FROM workbook JOIN events ON events.seq = workbook.seq
             WHERE workbook.kind = ? ORDER BY workbook.rowid",
        )?;
        let mut rows = all.query([kind])?;
        let mut pages = Vec::new();
        while let Some(row) = rows.next()? {
            let id: String = row.get(0)?;
            match serde_json::from_str(&row.get::<_, String>(2)?) {
                Ok(page) => pages.push(KeptPage { id, seq: row.get(1)?, at: time(&row.get::<_, String>(3)?), page }),
                Err(error) => tracing::warn!("page {id} of the workbook’s {kind} can't be read: {error}"),
            }
        }
        Ok(pages)
    }
}

/// A page as it is kept.
///
/// # Errors
/// It can't be written down.
pub fn written<T: Serialize>(page: &T) -> Result<serde_json::Value, LedgerError> {
    Ok(serde_json::to_value(page)?)
}
