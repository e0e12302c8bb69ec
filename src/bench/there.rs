//! What lies in a drawer or on the bench now: as the maker's file says, or as cuts and sales have left it since.

use serde::{Deserialize, Serialize};

use crate::{
    catalog::{PartCount, There, Workshop},
    ledger::{KeptPage, Ledger, LedgerError},
    prep::cuts::Tenths,
};

/// The kind of these pages in the workbook; their ids are those of the parts.
pub const SPOOLS: &str = "spools";
/// So many earlier states are kept of a part, as many as changes of the files are.
const MOST_EARLIER: usize = 20;

/// What there was under one state of the file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Earlier {
    /// What the file said.
    pub file: PartCount,
    /// What there was.
    pub now: PartCount,
}

/// What there is of a part since something was taken that the file does not know of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PartNow {
    /// What `parts.ron` said then: where it says something else by now, it was counted anew.
    pub file: PartCount,
    /// What there is now.
    #[serde(alias = "lengths")]
    pub now: PartCount,
    /// What there was under earlier states of the file, the newest last: taking a change of the file back needs it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub earlier: Vec<Earlier>,
}

/// Something of what a change of the file brought was used since, so that the change can't be taken back: there would be less
/// than nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UsedSince {
    /// The part's name.
    pub part: String,
}

/// What there is `now`, without what came when `before` became `after`; none where some of that is not there any more.
fn without_what_came(now: &PartCount, before: &PartCount, after: &PartCount) -> Option<PartCount> {
    match (now, before, after) {
        (PartCount::Pieces(now), PartCount::Pieces(before), PartCount::Pieces(after)) => {
            let left = i64::from(*now) - (i64::from(*after) - i64::from(*before));
            u32::try_from(left).ok().map(PartCount::Pieces)
        }
        (PartCount::Spools(now), PartCount::Spools(before), PartCount::Spools(after)) => {
            let mut left = now.clone();
            for came in differing(after, before) {
                // What came last lies behind the others.
                left.remove(left.iter().rposition(|one| *one == came)?);
            }
            left.extend(differing(before, after));
            Some(PartCount::Spools(left))
        }
        // It goes by another measure now: what the file says is all there is to know.
        _ => Some(before.clone()),
    }
}

/// What is among `all` beyond what is in `known`, each as often as that.
fn differing(all: &[Tenths], known: &[Tenths]) -> Vec<Tenths> {
    let mut known = known.to_vec();
    let is_other = |one: &Tenths| match known.iter().position(|other| other == one) {
        Some(at) => {
            known.remove(at);
            false
        }
        None => true,
    };
    all.iter().copied().filter(is_other).collect()
}

impl PartNow {
    /// A part as it is now, by its page where that is of what the file says.
    pub fn of(workshop: &Workshop, part: &str, pages: &[KeptPage<Self>]) -> Option<Self> {
        let file = PartCount::of(&workshop.part(part)?.there);
        let page = pages.iter().find(|kept| kept.id == part).map(|kept| &kept.page);
        Some(match page {
            Some(page) if page.file == file => page.clone(),
            Some(page) => Self { now: file.clone(), file, earlier: page.passed() },
            None => Self { now: file.clone(), file, earlier: vec![] },
        })
    }

    /// The earlier states, with this one as the newest.
    fn passed(&self) -> Vec<Earlier> {
        let this = Earlier { file: self.file.clone(), now: self.now.clone() };
        let all: Vec<Earlier> = self.earlier.iter().cloned().chain([this]).collect();
        all[all.len().saturating_sub(MOST_EARLIER)..].to_vec()
    }

    /// The spools, where it goes by the length.
    pub fn spools(&self) -> &[Tenths] {
        match &self.now {
            PartCount::Spools(lengths) => lengths,
            PartCount::Pieces(_) => &[],
        }
    }
}

/// The workshop with its drawers and spools as they are now.
pub fn carried_on(mut workshop: Workshop, pages: &[KeptPage<PartNow>]) -> Workshop {
    let all: Vec<_> = workshop.parts.iter().map(|part| PartNow::of(&workshop, &part.id, pages)).collect();
    for (part, now) in workshop.parts.iter_mut().zip(all) {
        match (&mut part.there, now.map(|now| now.now)) {
            (There::Pieces(count), Some(PartCount::Pieces(now))) => *count = now,
            (There::Spools { lengths, .. }, Some(PartCount::Spools(now))) => *lengths = now,
            _ => {}
        }
    }
    workshop
}

/// The pages by which a part is what it is now.
///
/// # Errors
/// The ledger can't be read.
pub fn parts_now(ledger: &Ledger) -> Result<Vec<KeptPage<PartNow>>, LedgerError> {
    ledger.pages(SPOOLS)
}

/// What has to be kept of which part when a change of the file is taken back, so that the file says what `before` says in place
/// of `after`: what was used since stays used, and nothing that was used lies there again.
///
/// # Errors
/// Something of what came by that change was used since.
pub fn taken_back(
    before: &Workshop,
    after: &Workshop,
    pages: &[KeptPage<PartNow>],
) -> Result<Vec<(String, PartNow)>, UsedSince> {
    let mut keep = Vec::new();
    for part in &after.parts {
        let (Some(was), Some(now)) = (before.part(&part.id), PartNow::of(after, &part.id, pages)) else { continue };
        let file = PartCount::of(&was.there);
        if file == now.file {
            continue;
        }
        // What there was when the change was made: the newest that is known under that file, or what the file said.
        let then =
            now.earlier.iter().rev().find(|one| one.file == file).map_or_else(|| file.clone(), |one| one.now.clone());
        let left = without_what_came(&now.now, &then, &now.file);
        let left = left.ok_or_else(|| UsedSince { part: part.name.clone() })?;
        // Where nothing was used since, the page of that time says it still.
        let page = pages.iter().find(|kept| kept.id == part.id).map(|kept| &kept.page);
        let is_kept = page.map_or(left == file, |page| page.file == file && page.now == left);
        if !is_kept {
            keep.push((part.id.clone(), PartNow { file, now: left, earlier: now.passed() }));
        }
    }
    Ok(keep)
}
