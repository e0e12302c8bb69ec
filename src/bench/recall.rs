//! Which sold pieces may have a lot in them, and where else it may be.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use jiff::Timestamp;
use serde::Serialize;

use super::{
    lots::{MADE, Made},
    parts::parts,
};
use crate::{
    catalog::{BoughtLot, Catalog, Workshop},
    export::{Cell, DecimalMark, ExportError, csv},
    ledger::{KeptPage, Ledger, LedgerError, SoldTicket, StockMove},
    ticket::State,
};

/// A sold piece that may have the lot in it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Suspect {
    /// The ticket by which the piece was sold.
    #[serde(flatten)]
    pub ticket: SoldTicket,
    /// Which of its base and drops may be of the lot, by id.
    pub by: BTreeSet<String>,
}

/// Where a lot may be.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Recall {
    /// The lot's name, as the supplier calls it.
    pub lot: String,
    /// The parts that came in it, by id.
    pub parts: BTreeSet<String>,
    /// The drops and bases that are made of these parts, by id.
    pub used_in: BTreeSet<String>,
    /// How many of these may lie there still, by id.
    pub there: BTreeMap<String, u32>,
    /// Sold pieces, oldest first.
    pub sold: Vec<Suspect>,
}

/// What may become of a count, in its order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Step {
    /// So many came, of the lot or perhaps of it, or surely of others.
    Came { suspect: bool },
    /// None was left.
    Empty,
    /// One was sold.
    Sold,
}

/// For each sale in `steps` whether that piece may be of the lot, and whether one that lies there at the end may. Pieces of
/// one compartment can't be told apart: once one of the lot lies among them, each that is sold may be it until all are gone.
pub(super) fn may_be_of_the_lot(steps: &[Step]) -> (Vec<bool>, bool) {
    let (mut sold, mut suspect) = (Vec::new(), false);
    for step in steps {
        match step {
            Step::Came { suspect: came } => suspect |= *came,
            Step::Empty => suspect = false,
            Step::Sold => sold.push(suspect),
        }
    }
    (sold, suspect)
}

/// One drop or base, with what is known of it.
struct Item<'a> {
    moves: Vec<StockMove>,
    made: Vec<&'a KeptPage<Made>>,
}

impl Item<'_> {
    /// The steps of its count up to the sales at `sold`, entries in their order. What came before the lot was there is not of
    /// it; whatever came since `since` and was not told otherwise may be. Where that is none, only what was told is.
    fn steps(
        &self,
        parts: &BTreeSet<String>,
        lot: &str,
        since: Option<Timestamp>,
        sold: &[(i64, Timestamp)],
    ) -> Vec<Step> {
        let may_be = |at: Timestamp| since.is_some_and(|since| at >= since);
        let mut steps = Vec::new();
        let mut sales = sold.iter().peekable();
        let mut there = 0;
        // What was there before moves were kept, or sold before, came nobody knows when.
        let mut first = true;
        for one in &self.moves {
            while let Some((_, at)) = sales.next_if(|(seq, _)| *seq <= one.seq && (first || one.on_hand < there)) {
                if first {
                    steps.push(Step::Came { suspect: may_be(*at) });
                }
                steps.push(Step::Sold);
            }
            if one.on_hand > there {
                let made = self.made.iter().find(|made| made.seq == one.seq);
                let suspect = match made {
                    // A part whose lots were not told can be of any.
                    Some(made) => parts
                        .iter()
                        .any(|part| made.page.lots.get(part).map_or(since.is_some(), |lots| lots.contains(lot))),
                    None => may_be(one.at),
                };
                steps.push(Step::Came { suspect });
            }
            if one.on_hand == 0 {
                steps.push(Step::Empty);
            }
            (there, first) = (one.on_hand, false);
        }
        for (_, at) in sales {
            if self.moves.is_empty() {
                steps.push(Step::Came { suspect: may_be(*at) });
            }
            steps.push(Step::Sold);
        }
        steps
    }
}

/// The earliest moment at which a lot can have been there: the beginning of the day on which it came, in whichever zone.
fn came_at(lot: &BoughtLot) -> Timestamp {
    let day = lot.day;
    let (month, of_month) = (day.month.unwrap_or(1), day.day.unwrap_or(1));
    // The zone farthest ahead of UTC begins its day 14 hours earlier (IANA time zone database, from memory).
    let text = format!("{:04}-{month:02}-{of_month:02}T00:00:00+14:00", day.year);
    text.parse().unwrap_or(Timestamp::UNIX_EPOCH)
}

/// Where lot `lot` may be, by what was bought, made and sold; none where no such lot was bought. What is not known counts as
/// the worst: pieces without a note of their lots may be of any that was there.
///
/// # Errors
/// The ledger can't be read.
pub fn recall(
    catalog: &Catalog,
    workshop: &Workshop,
    ledger: &Ledger,
    lot: &str,
) -> Result<Option<Recall>, LedgerError> {
    let bought: Vec<&BoughtLot> = workshop.lots.iter().filter(|one| one.lot.eq_ignore_ascii_case(lot)).collect();
    let Some(since) = bought.iter().map(|lot| came_at(lot)).min() else { return Ok(None) };
    let lot = bought[0].lot.as_str();
    let of_lot: BTreeSet<String> = bought.iter().map(|one| one.part.clone()).collect();
    let made: Vec<KeptPage<Made>> = ledger.pages(MADE)?;
    let sold = ledger.sold_pieces()?;
    let counts = ledger.counts()?;
    // Whatever is on the table or was sold, with the places of its sales among all of them.
    let mut sales: HashMap<&str, Vec<usize>> = parts(catalog).map(|part| (part.id, vec![])).collect();
    for (at, ticket) in sold.iter().enumerate() {
        for part in &ticket.parts {
            sales.entry(part).or_default().push(at);
        }
    }
    let (mut used_in, mut there) = (BTreeSet::new(), BTreeMap::new());
    let mut by: Vec<BTreeSet<String>> = vec![BTreeSet::new(); sold.len()];
    for (id, all) in sales {
        let of_it: Vec<&KeptPage<Made>> = made.iter().filter(|made| made.page.of == id).collect();
        let told = of_it
            .iter()
            .any(|made| made.page.lots.iter().any(|(part, lots)| of_lot.contains(part) && lots.contains(lot)));
        let needs = workshop.recipe(catalog, id).map(|recipe| {
            let parts = recipe.needs.iter().map(|need| need.part.clone());
            parts.filter(|part| of_lot.contains(part)).collect::<BTreeSet<_>>()
        });
        // What needs no part of the lot has it only where that was told; without a recipe nothing is known but that.
        let is_needed = needs.as_ref().is_some_and(|needs| !needs.is_empty());
        if !is_needed && !told {
            continue;
        }
        let parts = needs.filter(|needs| !needs.is_empty()).unwrap_or_else(|| of_lot.clone());
        // What was cut at the table came from spool and drawers that day, and not from what lies ready.
        let (cut, ready): (Vec<usize>, Vec<usize>) =
            all.into_iter().partition(|at| sold[*at].cut_to_length && sold[*at].parts[0] == id);
        let item = Item { moves: ledger.moves_of(id)?, made: of_it };
        let steps: Vec<(i64, Timestamp)> = ready.iter().map(|at| (sold[*at].seq, sold[*at].at)).collect();
        let (flags, at_the_end) = may_be_of_the_lot(&item.steps(&parts, lot, is_needed.then_some(since), &steps));
        let of_ready = ready.iter().zip(flags).filter(|(_, flag)| *flag).map(|(at, _)| *at);
        for at in of_ready.chain(cut.into_iter().filter(|at| is_needed && sold[*at].at >= since)) {
            by[at].insert(id.to_owned());
        }
        let count = counts.get(id).map_or(0, |count| count.on_hand);
        if at_the_end && count > 0 {
            there.insert(id.to_owned(), count);
        }
        used_in.insert(id.to_owned());
    }
    let sold = sold.into_iter().zip(by).filter(|(_, by)| !by.is_empty());
    let sold = sold.map(|(ticket, by)| Suspect { ticket, by }).collect();
    Ok(Some(Recall { lot: lot.to_owned(), parts: of_lot, used_in, there, sold }))
}

impl Recall {
    /// How many of the sold pieces were sold in each show, the oldest first.
    pub fn by_show(&self) -> BTreeMap<i64, usize> {
        let mut shows = BTreeMap::new();
        for one in &self.sold {
            *shows.entry(one.ticket.show).or_default() += 1;
        }
        shows
    }

    /// How many of them are where: paid and waiting here, in their guests' hands, taken back.
    pub fn by_state(&self) -> Vec<(State, usize)> {
        let count = |state| self.sold.iter().filter(|one| one.ticket.state == state).count();
        let all = [State::HandedOver, State::RungUp, State::TakenBack].map(|state| (state, count(state)));
        all.into_iter().filter(|(_, count)| *count > 0).collect()
    }

    /// Every sold piece as a table for a spreadsheet.
    ///
    /// # Errors
    /// The table can't be written.
    pub fn table(&self) -> Result<Vec<u8>, ExportError> {
        let rows = self.sold.iter().map(|one| {
            let by: Vec<&str> = one.by.iter().map(String::as_str).collect();
            let ticket = &one.ticket;
            [
                ticket.number.clone(),
                ticket.show.to_string(),
                ticket.at.to_string(),
                ticket.state.code().to_owned(),
                by.join(" "),
            ]
        });
        let rows: Vec<[String; 5]> = rows.collect();
        let cells = rows.iter().map(|row| row.each_ref().map(|text| Cell::Text(text)));
        csv(DecimalMark::Point, &["ticket", "show", "sold at", "state", "may be of the lot"], cells)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every way in which pieces can have been taken out, tried one by one, as a second account: a compartment holds pieces
    /// of the lot and others, and whoever takes one takes any.
    fn tried(steps: &[(bool, u8)]) -> (Vec<bool>, bool) {
        // A state is how many of the lot, and how many others, lie there.
        let mut states = BTreeSet::from([(0_u8, 0_u8)]);
        let (mut sold, mut end) = (Vec::new(), false);
        for (is_sale, kind) in steps {
            if *is_sale {
                let mut next = BTreeSet::new();
                let mut may_be = false;
                for (lot, others) in &states {
                    if *lot > 0 {
                        may_be = true;
                        next.insert((lot - 1, *others));
                    }
                    if *others > 0 {
                        next.insert((*lot, others - 1));
                    }
                }
                sold.push(may_be);
                states = next;
            } else {
                states = states
                    .into_iter()
                    .map(|(lot, others)| if *kind == 1 { (lot + 1, others) } else { (lot, others + 1) })
                    .collect();
            }
            end = states.iter().any(|(lot, _)| *lot > 0);
        }
        (sold, end)
    }

    /// All orders of six things that come and go. Where the last of the lot must have left before the compartment was empty is
    /// more than the rule knows, so it may name a piece too many, and never one too few.
    #[test]
    fn no_piece_that_can_be_of_the_lot_is_left_out() {
        let mut cases = 0;
        for code in 0..3_u32.pow(7) {
            let all: Vec<u32> = (0..7).map(|n| code / 3_u32.pow(n) % 3).collect();
            let (mut steps, mut plain, mut there) = (Vec::new(), Vec::new(), 0_i32);
            for one in all {
                match one {
                    0 if there == 0 => continue,
                    0 => {
                        there -= 1;
                        steps.push(Step::Sold);
                        plain.push((true, 0));
                        if there == 0 {
                            steps.push(Step::Empty);
                        }
                    }
                    kind => {
                        there += 1;
                        steps.push(Step::Came { suspect: kind == 1 });
                        plain.push((false, u8::from(kind == 1)));
                    }
                }
            }
            let (named, left) = may_be_of_the_lot(&steps);
            let (can_be, can_be_left) = tried(&plain);
            assert_eq!(named.len(), can_be.len());
            assert!(can_be.iter().zip(&named).all(|(can, named)| !can || *named), "{steps:?}: {named:?}, {can_be:?}");
            assert!(!can_be_left || left, "{steps:?}");
            // Nobody is named before one of the lot came.
            let first = plain.iter().position(|one| *one == (false, 1)).unwrap_or(plain.len());
            let before = plain[..first].iter().filter(|(sale, _)| *sale).count();
            assert!(named[..before].iter().all(|named| !named), "{steps:?}");
            cases += 1;
        }
        assert_eq!(cases, 2187);
    }
}
