//! What every scene has at hand: the desk, its catalogue and ledger, and the folder for what is kept of the show.

use std::{fs, path::Path};

use chatelaine::{
    catalog::Loaded,
    desk::Desk,
    ledger::{LedgerError, Part, Ticket},
    link::Kept,
    money::Tender,
    portrait::portrait_png,
};
use jiff::Timestamp;

use super::{super::Told, agree};

pub(super) struct Story<'a> {
    pub(super) loaded: &'a Loaded,
    pub(super) out: &'a Path,
    pub(super) desk: &'a Desk,
}

impl Story<'_> {
    pub(super) fn on_ledger<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut chatelaine::ledger::Ledger) -> Result<T, LedgerError> + Send + 'static,
    ) -> Result<T, Told> {
        Ok(self.desk.with_ledger(work).ok_or_else(|| Told("the desk closed".into()))??)
    }

    pub(super) fn keep(&self, ticket: &Ticket) -> Result<(), Told> {
        // Numbers begin anew with every show.
        let name = format!("show-{}-{}", ticket.show, ticket.number);
        let png = portrait_png(&self.loaded.catalog, &self.loaded.pictures, &ticket.piece, 720, 900)?;
        fs::write(self.out.join(format!("{name}.png")), png)?;
        fs::write(self.out.join(format!("{name}.json")), serde_json::to_vec_pretty(ticket)?)?;
        Ok(())
    }

    /// Ticks everything off, tells the guest, takes the money. The ordinary tick does not sell a piece that is not for its
    /// wearer: each hazard is confirmed by its name.
    pub(super) fn ring_up(&self, kept: Kept, tender: Tender) -> Result<Ticket, Told> {
        let (first_try, again) = (tender.clone(), tender.clone());
        let (number, open) = self.on_ledger(move |ledger| {
            let now = Timestamp::now();
            let ticket = ledger.call(kept.id, now).or_else(|_| ledger.ticket(kept.id))?;
            ledger.tick(kept.id, Part::Base, true, false, now)?;
            for (at, _) in ticket.live_lines() {
                ledger.tick(kept.id, Part::Line(at), true, false, now)?;
            }
            let told = ledger.set_told(kept.id, true, now)?;
            match ledger.ring_up(kept.id, first_try, now) {
                Ok(_) => Ok((told.number, vec![])),
                Err(LedgerError::NotSuitable(open)) => Ok((told.number, open)),
                Err(error) => Err(error),
            }
        })?;
        if !open.is_empty() {
            let names: Vec<String> = open.iter().map(|code| code.words()).collect();
            say!(
                "  {number} is not for its wearer and is not rung up; sold for a grown-up after all: {}",
                names.join(", ")
            );
            self.on_ledger(move |ledger| {
                let now = Timestamp::now();
                for code in open {
                    ledger.confirm_hazard(kept.id, code, true, now)?;
                }
                ledger.ring_up(kept.id, again, now)
            })?;
        }
        let ticket = self.on_ledger(move |ledger| ledger.hand_over(kept.id, Timestamp::now()))?;
        let plain = |amount| ticket.quote.currency.plain(amount);
        let charged = ticket.charged.unwrap_or_default();
        say!("  {} rung up, {} {}", ticket.number, plain(charged), tender.words());
        agree(
            "what is charged by card and the sum on the ticket",
            &(tender == Tender::Cash || charged == ticket.quote.total),
            &true,
        )?;
        self.keep(&ticket)?;
        Ok(ticket)
    }
}
