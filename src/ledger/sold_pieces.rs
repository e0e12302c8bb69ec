//! Every piece that was sold, with what is in it, for whoever looks through all of them: of each ticket no more is read than
//! its parts.

use std::{borrow::Cow, collections::HashMap};

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::{Ledger, LedgerError, rows::time};
use crate::ticket::State;

/// A piece that was sold.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SoldTicket {
    /// Id of its ticket.
    pub id: Uuid,
    /// Its number.
    pub number: String,
    /// The show in which it was sold.
    pub show: i64,
    /// The entry of the sale.
    pub seq: i64,
    /// When, by the desk's clock.
    pub at: Timestamp,
    /// Where it is now.
    pub state: State,
    /// Its base and drops, by id.
    pub parts: Vec<String>,
    /// Whether its chain was cut at the table, so that it was none of those that lie ready.
    #[serde(skip)]
    pub cut_to_length: bool,
}

/// The parts of a ticket as the ledger keeps it; whatever else it says is passed over.
#[derive(Deserialize)]
struct Parts<'a> {
    #[serde(borrow)]
    piece: OnBase<'a>,
    #[serde(borrow)]
    lines: Vec<Line<'a>>,
    #[serde(default)]
    cut_to_length: bool,
}

#[derive(Deserialize)]
struct OnBase<'a> {
    #[serde(borrow)]
    base: Cow<'a, str>,
}

#[derive(Deserialize)]
struct Line<'a> {
    #[serde(borrow)]
    id: Cow<'a, str>,
    removed: bool,
}

impl Parts<'_> {
    fn ids(self) -> Vec<String> {
        let drops = self.lines.into_iter().filter(|line| !line.removed).map(|line| line.id.into_owned());
        std::iter::once(self.piece.base.into_owned()).chain(drops).collect()
    }
}

impl Ledger {
    /// Every piece that was sold, with what is in it, in the order in which they were sold; what was taken back again
    /// included.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn sold_pieces(&self) -> Result<Vec<SoldTicket>, LedgerError> {
        let mut entries = self
            .db
            .prepare_cached("SELECT ticket, seq, at FROM events WHERE kind = 'rung_up' AND ticket IS NOT NULL")?;
        let mut rows = entries.query([])?;
        let mut sales: HashMap<Uuid, (i64, Timestamp)> = HashMap::new();
        while let Some(row) = rows.next()? {
            let Some(id) = row.get_ref(0)?.as_str().ok().and_then(|text| text.parse().ok()) else { continue };
            // The first entry of a ticket is its sale; they come in their order.
            let sale = (row.get(1)?, row.get_ref(2)?.as_str().map_or(Timestamp::UNIX_EPOCH, time));
            sales.entry(id).or_insert(sale);
        }
        let mut sold = self.db.prepare_cached(
            "SELECT id, number, coalesce(settled, show), state, ticket FROM tickets
             WHERE state IN ('rung_up', 'handed_over', 'taken_back')",
        )?;
        let mut rows = sold.query([])?;
        let mut all = Vec::with_capacity(sales.len());
        while let Some(row) = rows.next()? {
            let text = |at: usize| row.get_ref(at).ok().and_then(|value| value.as_str().ok());
            let told = (|| {
                let id: Uuid = text(0)?.parse().ok()?;
                let (seq, at) = *sales.get(&id)?;
                // One that can't be read is told where tickets are.
                let parts: Parts<'_> = serde_json::from_str(text(4)?).ok()?;
                let (number, state) = (text(1)?.to_owned(), State::from_code(text(3)?)?);
                let (show, cut_to_length) = (row.get(2).ok()?, parts.cut_to_length);
                Some(SoldTicket { id, number, show, seq, at, state, parts: parts.ids(), cut_to_length })
            })();
            all.extend(told);
        }
        all.sort_by_key(|one| one.seq);
        Ok(all)
    }
}
