//! The shows so far, as far as they tell how much is wanted.

use std::collections::BTreeMap;

use crate::{
    ledger::{AboutShow, CloseOut, Ledger, LedgerError, ShowEnd, ShowKind, SoldLine},
    money::Currency,
    prep::Outcome,
};

/// How small and how large a kind of show counts beside a usual one.
const SIZES: (f64, f64) = (0.2, 5.0);

/// A show that is over.
#[derive(Debug, Clone, PartialEq)]
pub struct PastShow {
    /// The number under which the ledger keeps it.
    pub show: i64,
    /// What it was.
    pub about: AboutShow,
    /// The currency of its amounts.
    pub currency: Currency,
    /// What it came to.
    pub sums: CloseOut,
    /// What was noted at its end.
    pub end: ShowEnd,
}

/// At most `limit` closed shows that count, the newest first.
///
/// # Errors
/// The ledger can't be read.
pub fn past_shows(ledger: &Ledger, limit: usize) -> Result<Vec<PastShow>, LedgerError> {
    let mut past = Vec::new();
    for listed in ledger.shows(limit)? {
        if let Some(closed) = ledger.closed_show(listed.id)?
            && closed.end.about.kind != Some(ShowKind::Practice)
        {
            let (about, currency) = (closed.end.about.clone(), closed.currency);
            past.push(PastShow { show: listed.id, about, currency, sums: closed.sums, end: closed.end });
        }
    }
    Ok(past)
}

impl PastShow {
    /// What a part did at this show; none where it was not there.
    pub(super) fn outcome(&self, id: &str, size: f64) -> Option<Outcome> {
        let count = |lines: &BTreeMap<String, SoldLine>| lines.get(id).map_or(0, |line| line.count);
        let sold = count(&self.sums.parts).saturating_sub(count(&self.sums.taken_back.parts));
        let left = self.end.left.get(id);
        // Where nothing is known of what was left, it was not sold out as far as anybody can tell.
        (sold > 0 || left.is_some_and(|left| *left > 0)).then_some(Outcome { sold, sold_out: left == Some(&0), size })
    }

    /// How large shows of its kind are beside all of them, by the pieces that were sold.
    pub(super) fn size_among(&self, all: &[Self]) -> f64 {
        size_of_kind(self.about.kind, all)
    }
}

/// How large shows of this kind are beside all of them, by the pieces that were sold; 1 where none of them was.
pub(super) fn size_of_kind(kind: Option<ShowKind>, all: &[PastShow]) -> f64 {
    let mean = |shows: &mut dyn Iterator<Item = &PastShow>| {
        let sold: Vec<f64> = shows.map(|show| f64::from(show.sums.sold)).collect();
        (!sold.is_empty()).then(|| sold.iter().sum::<f64>() / sold.len() as f64)
    };
    let (alike, usual) = (mean(&mut all.iter().filter(|show| show.about.kind == kind)), mean(&mut all.iter()));
    match (alike, usual) {
        (Some(alike), Some(usual)) if usual > 0.0 => (alike / usual).clamp(SIZES.0, SIZES.1),
        _ => 1.0,
    }
}
