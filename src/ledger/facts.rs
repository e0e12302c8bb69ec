//! What the catalogue last said of each part. A ticket may outlive its parts in the catalogue, and is judged all the same.

use rusqlite::{Connection, OptionalExtension, params};
use serde::{Deserialize, Serialize, de::DeserializeOwned};

use super::LedgerError;
use crate::{catalog::Catalog, craft::Day};

/// Notes what `catalog` says of its parts.
pub(super) fn remember(db: &Connection, catalog: &Catalog) -> Result<(), LedgerError> {
    catalog.bases.iter().try_for_each(|base| keep(db, &base.id, base))?;
    catalog.drops.iter().try_for_each(|kind| keep(db, &kind.id, kind))
}

fn keep(db: &Connection, id: &str, part: &impl Serialize) -> Result<(), LedgerError> {
    db.prepare_cached(
        "INSERT INTO facts (id, part) VALUES (?1, ?2)
         ON CONFLICT (id) DO UPDATE SET part = ?2 WHERE part <> ?2",
    )?
    .execute(params![id, serde_json::to_string(part)?])?;
    Ok(())
}

/// When the catalogue last said that this part was counted.
pub(super) fn counted(db: &Connection, id: &str) -> Result<Option<Day>, LedgerError> {
    #[derive(Deserialize)]
    struct Counted {
        #[serde(default)]
        counted: Option<Day>,
    }
    Ok(part::<Counted>(db, id)?.and_then(|part| part.counted))
}

/// A base or drop as the catalogue last had it; none also where the id was another kind of part, or an earlier version
/// wrote it down otherwise.
pub(super) fn part<T: DeserializeOwned>(db: &Connection, id: &str) -> Result<Option<T>, LedgerError> {
    let text: Option<String> =
        db.prepare_cached("SELECT part FROM facts WHERE id = ?")?.query_row([id], |row| row.get(0)).optional()?;
    Ok(text.and_then(|text| serde_json::from_str(&text).ok()))
}
