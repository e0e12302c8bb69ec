//! The till of the rehearsal: what a seller does with a piece and a bill, each entered in the running account.

use std::collections::BTreeMap;

use chatelaine::{
    craft::{Piece, Wearer},
    ledger::{Bill, Corrected, Ledger, LedgerError, Paying, Seen, TakeBack, Ticket},
    money::Tender,
};
use jiff::Timestamp;
use rust_decimal::Decimal;
use uuid::Uuid;

use super::{
    super::Told,
    account::{self, Account},
    agree,
    story::Story,
};

/// A seller at the till.
pub(super) struct Till<'a> {
    pub(super) story: &'a Story<'a>,
    pub(super) account: Account,
    /// The running show.
    pub(super) show: i64,
    /// How many of each part were put back into their homes.
    pub(super) back_home: BTreeMap<String, u32>,
    /// The bases and drops to choose from.
    pub(super) bases: Vec<String>,
    pub(super) drops: Vec<String>,
}

impl Till<'_> {
    /// What there is most of, so that no pile is emptied by a rehearsal.
    fn most(&self, of: &[String], count: usize) -> Result<Vec<String>, Told> {
        let counts = self.story.on_ledger(|ledger| ledger.counts())?;
        let mut parts: Vec<&String> = of.iter().collect();
        parts.sort_by_key(|id| std::cmp::Reverse(counts.get(*id).map_or(0, |count| count.free())));
        Ok(parts.into_iter().take(count).cloned().collect())
    }

    /// Opens a ticket for a piece with so many drops that was threaded by hand; the guest is told what there is to say.
    pub(super) fn threads(&self, who: &str, drops: usize) -> Result<Ticket, Told> {
        let base = self.most(&self.bases, 1)?.concat();
        let piece = Piece {
            base,
            length: None,
            wearer: Wearer::From13,
            neck: None,
            drops: self.most(&self.drops, drops)?,
            looks: vec![],
        };
        let catalog = self.story.loaded.catalog.clone();
        let ticket = self.story.on_ledger(move |ledger| {
            let (id, now) = (Uuid::now_v7(), Timestamp::now());
            ledger.open_by_hand(id, &piece, false, &catalog, now)?;
            told(ledger, id)
        })?;
        say!("  {who}: ticket {}, {}", ticket.number, plain(&ticket, ticket.quote.total));
        Ok(ticket)
    }

    fn looks_at(&self, bill: Uuid) -> Result<account::Seen, Told> {
        self.story.on_ledger(move |ledger| ledger.bill(bill))
    }

    pub(super) fn bill_for(&self, ticket: &Ticket) -> Result<Uuid, Told> {
        let id = ticket.id;
        Ok(self.story.on_ledger(move |ledger| ledger.bill_for(id, Timestamp::now()))?.id)
    }

    pub(super) fn puts_on(&self, bill: Uuid, ticket: &Ticket) -> Result<(), Told> {
        let id = ticket.id;
        self.story.on_ledger(move |ledger| ledger.put_on_bill(bill, id, Timestamp::now()))?;
        Ok(())
    }

    /// Does something with a bill, and enters in the account what changed by it.
    pub(super) fn at_bill(
        &mut self,
        bill: Uuid,
        work: impl FnOnce(&mut Ledger) -> Result<Bill, LedgerError> + Send + 'static,
    ) -> Result<Bill, Told> {
        let before = self.looks_at(bill)?;
        self.story.on_ledger(work)?;
        let after = self.looks_at(bill)?;
        self.account.saw(&before, &after, self.show);
        for ticket in &after.1 {
            self.story.keep(ticket)?;
        }
        Ok(after.0)
    }

    pub(super) fn left(&self, bill: Uuid) -> Result<Decimal, Told> {
        Ok(self.looks_at(bill)?.2.left)
    }

    /// Pays a bill as it is now; touched twice, it is paid once.
    pub(super) fn pays(&mut self, bill: Uuid, paying: Paying) -> Result<Bill, Told> {
        let (before, _, sum) = self.looks_at(bill)?;
        let seen = Seen { left: sum.left, payments: before.payments.len() };
        let paid = self.at_bill(bill, move |ledger| {
            ledger.pay(bill, &paying, seen, Timestamp::now())?;
            ledger.pay(bill, &paying, seen, Timestamp::now())
        })?;
        let moved = paid.payments.get(seen.payments..).unwrap_or_default();
        agree("that a bill is paid once by two touches", &(moved.len() <= 1), &true)?;
        for payment in moved {
            let amount = paid.rules.currency.plain(payment.amount);
            say!("  bill {}: {amount} {}", paid.number, payment.tender.words());
        }
        Ok(paid)
    }

    /// Takes something back and pays out at once where `out` says how.
    pub(super) fn takes_back(
        &mut self,
        bill: Uuid,
        what: Corrected,
        parts_home: bool,
        out: Option<Tender>,
    ) -> Result<Bill, Told> {
        if parts_home {
            let (_, tickets, _) = self.looks_at(bill)?;
            for ticket in &tickets {
                let drops = ticket.live_lines().map(|(at, line)| (at, line.id.clone()));
                let parts: Vec<String> = match what {
                    Corrected::Ticket(id) if id == ticket.id => {
                        drops.map(|(_, id)| id).chain([ticket.piece.base.clone()]).collect()
                    }
                    Corrected::Line { ticket: id, at } if id == ticket.id => {
                        drops.filter(|(place, _)| *place == at).map(|(_, id)| id).collect()
                    }
                    _ => vec![],
                };
                parts.into_iter().for_each(|part| *self.back_home.entry(part).or_default() += 1);
            }
        }
        let back = TakeBack { what, parts_home, reason: "changed her mind".to_owned() };
        self.at_bill(bill, move |ledger| ledger.take_back(bill, &back, out.as_ref(), Timestamp::now()))
    }
}

/// Tells the guest of the cautions; each hazard is confirmed by its name.
pub(super) fn told(ledger: &mut Ledger, id: Uuid) -> Result<Ticket, LedgerError> {
    let now = Timestamp::now();
    let ticket = ledger.set_told(id, true, now)?;
    for code in ticket.unconfirmed() {
        ledger.confirm_hazard(id, code, true, now)?;
    }
    ledger.ticket(id)
}

fn plain(ticket: &Ticket, amount: Decimal) -> String {
    ticket.quote.currency.plain(amount)
}
