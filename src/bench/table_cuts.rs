//! Lengths that are cut at the table: they come off the spool and not off the chains that lie ready, and what else such a chain
//! takes comes out of the drawers.

use jiff::Timestamp;
use rust_decimal::prelude::ToPrimitive;
use serde::{Deserialize, Serialize};

use super::{
    cut_lists::{CUT_LISTS, CutList, without_promised},
    there::{PartNow, SPOOLS, carried_on, parts_now},
};
use crate::{
    catalog::{Catalog, PartCount, There, Workshop},
    craft::{BaseKind, Length},
    ledger::{KeptPage, Ledger, LedgerError, Ticket, written},
    prep::{Need, cuts::Tenths},
};

/// The kind of these pages in the workbook; their ids are those of the tickets.
pub const TABLE_CUTS: &str = "table-cuts";

/// A piece that was cut off a spool.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CutOff {
    /// Id of the part.
    pub part: String,
    /// How long the spool or remnant was.
    pub from: Tenths,
    /// What came off it, with the cut.
    pub cut: Tenths,
    /// What is left of it.
    pub left: Tenths,
    /// Whether that is worth keeping.
    pub kept: bool,
}

/// What one sold piece took from the bench.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TableCut {
    /// The ticket's number.
    pub number: String,
    /// Id of the base.
    pub base: String,
    /// How long the whole of it is.
    pub length: Length,
    /// What came off spools.
    pub off: Vec<CutOff>,
    /// What came out of drawers: parts by id, and how many.
    pub pieces: Vec<(String, u32)>,
    /// Of what there was not enough by the count, by id, so that nothing was taken off it: it has to be counted.
    pub missing: Vec<String>,
}

/// The bases whose chain comes off a spool, by their recipes.
pub fn bases_on_spools(catalog: &Catalog, workshop: &Workshop) -> Vec<String> {
    let is_cut = |need: &Need| matches!(workshop.part(&need.part).map(|part| &part.there), Some(There::Spools { .. }));
    let on_spool = |id: &str| workshop.recipe(catalog, id).is_some_and(|recipe| recipe.needs.iter().any(is_cut));
    let necklaces = catalog.bases.iter().filter(|base| matches!(base.kind, BaseKind::Necklace(_)));
    necklaces.filter(|base| on_spool(&base.id)).map(|base| base.id.clone()).collect()
}

/// Counts what those of `tickets` took that are sold and were cut to length. Counted twice, each is counted once; nothing comes
/// back when a piece does.
///
/// # Errors
/// The ledger can't be read, or the disk refuses; what was counted before stays so.
pub fn count_cuts(
    ledger: &mut Ledger,
    catalog: &Catalog,
    workshop: &Workshop,
    tickets: &[Ticket],
    now: Timestamp,
) -> Result<(), LedgerError> {
    for ticket in tickets.iter().filter(|ticket| ticket.state.is_sold() && ticket.cut_to_length) {
        let (pages, lists) = (parts_now(ledger)?, ledger.pages::<CutList>(CUT_LISTS)?);
        let lists: Vec<CutList> = lists.into_iter().map(|kept| kept.page).collect();
        let Some((cut, parts)) = cut_of(catalog, workshop, &pages, &lists, ticket) else { continue };
        let id = ticket.id.to_string();
        let mut kept = vec![(TABLE_CUTS, id.as_str(), written(&cut)?)];
        for (part, page) in &parts {
            kept.push((SPOOLS, part.as_str(), written(page)?));
        }
        // The form is the ticket's own id: it is entered once, among the ticket's entries.
        ledger.keep_pages(ticket.id, &kept, now)?;
    }
    Ok(())
}

/// What a ticket takes, and what there is of each part afterwards.
fn cut_of(
    catalog: &Catalog,
    workshop: &Workshop,
    pages: &[KeptPage<PartNow>],
    lists: &[CutList],
    ticket: &Ticket,
) -> Option<(TableCut, Vec<(String, PartNow)>)> {
    let (base, length) = (catalog.base(&ticket.piece.base)?, ticket.piece.length?);
    let recipe = workshop.recipe(catalog, &base.id)?;
    let usual = base.usual_length()?;
    let mut cut = TableCut {
        number: ticket.number.to_string(),
        base: base.id.clone(),
        length,
        off: vec![],
        pieces: vec![],
        missing: vec![],
    };
    let mut parts = Vec::new();
    for need in &recipe.needs {
        let (Some(part), Some(mut now)) = (workshop.part(&need.part), PartNow::of(workshop, &need.part, pages)) else {
            continue;
        };
        let taken = match (&part.there, &mut now.now) {
            (There::Spools { kerf, keep_from, .. }, PartCount::Spools(spools)) => {
                let amount = Tenths(length_for(need, length, usual).0.saturating_add(kerf.0));
                let there = carried_on(workshop.clone(), pages);
                let (free, _) = without_promised(there, lists, &part.id);
                let free = free.part(&part.id).map(|part| PartCount::of(&part.there));
                take_off(spools, free.as_ref(), amount, *keep_from).map(|(from, left, kept)| {
                    cut.off.push(CutOff { part: part.id.clone(), from, cut: amount, left, kept });
                })
            }
            (There::Pieces(_), PartCount::Pieces(count)) => {
                let wanted = need.amount.to_u32().unwrap_or(u32::MAX);
                count.checked_sub(wanted).map(|left| {
                    *count = left;
                    cut.pieces.push((part.id.clone(), wanted));
                })
            }
            _ => None,
        };
        match taken {
            Some(()) => parts.push((part.id.clone(), now)),
            None => cut.missing.push(part.id.clone()),
        }
    }
    Some((cut, parts))
}

/// How much of a part by the length goes into a chain of this length: what the recipe says of the usual one, and as many strands
/// of the difference as it has of the chain. What is no strand, as a short end of wire, is the same for every length.
fn length_for(need: &Need, length: Length, usual: Length) -> Tenths {
    let usual_need = need.amount.to_f64().unwrap_or_default();
    let strands = (usual_need / usual.mm()).round();
    Tenths::no_shorter(Length::from_mm((usual_need + strands * (length.mm() - usual.mm())).max(0.0)))
}

/// Takes a length off the shortest piece that is long enough (common practice, no source), rather off one that no list is going
/// to cut: how long it was, what is left of it, and whether that is kept. None where no piece is long enough.
fn take_off(
    spools: &mut Vec<Tenths>,
    free: Option<&PartCount>,
    amount: Tenths,
    keep_from: Tenths,
) -> Option<(Tenths, Tenths, bool)> {
    let long_enough = |all: &[Tenths]| all.iter().copied().filter(|one| *one >= amount).min();
    let of_free = match free {
        Some(PartCount::Spools(free)) => long_enough(free),
        _ => None,
    };
    let from = of_free.or_else(|| long_enough(spools))?;
    spools.remove(spools.iter().position(|one| *one == from)?);
    let left = Tenths(from.0 - amount.0);
    let kept = left >= keep_from && left.0 > 0;
    if kept {
        spools.push(left);
        spools.sort_by(|a, b| b.cmp(a));
    }
    Some((from, left, kept))
}

#[cfg(test)]
mod tests {
    use rust_decimal::Decimal;

    use super::*;

    fn need(mm: i64) -> Need {
        Need { part: "chain".into(), amount: Decimal::from(mm) }
    }

    #[test]
    fn a_chain_takes_the_difference_once_for_every_strand() {
        let (usual, short) = (Length::from_mm(600.0), Length::from_mm(450.0));
        for (needs, takes) in [(600, 450), (585, 435), (1200, 900), (100, 100), (0, 0)] {
            assert_eq!(length_for(&need(needs), short, usual), Tenths(takes * 10), "{needs}");
        }
        assert_eq!(length_for(&need(600), Length::from_mm(762.0), usual), Tenths(7620));
    }

    #[test]
    fn the_shortest_that_is_long_enough_is_cut_and_never_more_than_there_is() {
        let all = [9_000, 5_000, 4_600, 1_000].map(Tenths).to_vec();
        let free = PartCount::Spools([9_000, 5_000, 1_000].map(Tenths).to_vec());
        let mut spools = all.clone();
        let taken = take_off(&mut spools, Some(&free), Tenths(4_550), Tenths(400));
        assert_eq!(taken, Some((Tenths(5_000), Tenths(450), true)), "what a list is going to cut is left");
        assert_eq!(spools, [9_000, 4_600, 1_000, 450].map(Tenths));
        let mut spools = all.clone();
        assert_eq!(
            take_off(&mut spools, Some(&PartCount::Spools(vec![])), Tenths(4_550), Tenths(400)),
            Some((Tenths(4_600), Tenths(50), false)),
            "where there is no other, that is cut"
        );
        assert_eq!(spools, [9_000, 5_000, 1_000].map(Tenths), "what is lost lies nowhere");
        let mut spools = all.clone();
        assert_eq!(take_off(&mut spools, None, Tenths(9_001), Tenths(0)), None);
        assert_eq!(spools, all);
        assert_eq!(take_off(&mut spools, None, Tenths(9_000), Tenths(0)), Some((Tenths(9_000), Tenths(0), false)));
    }
}
