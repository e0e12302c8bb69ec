//! What stands on a paper, out of the ledger and the catalogue.

use std::collections::BTreeSet;

use jiff::{Timestamp, tz::TimeZone};
use rust_decimal::Decimal;

use crate::{
    catalog::{Catalog, Loaded},
    craft::{Day, Piece},
    desk::{
        gallery::{PortraitSize, drawn, shows_drops},
        pages::words,
    },
    lang::Texts,
    ledger::{AboutShow, Bill, BillSum, Corrected, Correction, Payment, Ticket, Why},
    money::{PriceRules, TaxRule},
    paper::{Back, Off, OffWhy, Paid, Receipt, Slip, SoldPiece, TakenBack, TaxLine},
    ticket::State,
};

/// Reads facts for one language.
pub(super) struct Facts<'a> {
    pub texts: &'static Texts,
    pub catalog: &'a Catalog,
    pub practice: bool,
}

/// A bill with all that its receipt tells.
pub(super) struct PaidBill {
    pub bill: Bill,
    pub tickets: Vec<Ticket>,
    pub sum: BillSum,
    /// What is known of the show in which it was paid.
    pub about: AboutShow,
}

/// The show in which a bill was paid, and when; none where nothing was paid yet.
pub(super) fn paid_in(bill: &Bill) -> Option<(i64, Timestamp)> {
    let last = bill.payments.iter().rev().find(|payment| !payment.puts_right());
    bill.settled.or_else(|| last.map(|payment| (payment.show, payment.at)))
}

/// What of a bill is the guest's, or will be.
fn is_live(ticket: &Ticket) -> bool {
    !matches!(ticket.state, State::LetGo | State::TakenBack)
}

impl Facts<'_> {
    fn name(&self, id: &str) -> String {
        words::piece_name(self.texts, self.catalog, id).into_owned()
    }

    /// The receipt of a bill for which something was paid in `show`.
    pub(super) fn receipt(&self, paid: &PaidBill, (show, at): (i64, Timestamp)) -> Receipt {
        let PaidBill { bill, tickets, sum, about } = paid;
        let table = &self.catalog.table;
        let live: Vec<&Ticket> = tickets.iter().filter(|ticket| is_live(ticket)).collect();
        let goods = bill.live_goods().map(|(_, goods)| (goods.line.words.clone(), goods.line.price)).collect();
        let reason = bill.goods_given.as_ref().map(|given| given.reason.clone()).unwrap_or_default();
        let at = at.to_zoned_datetime(TimeZone::system());
        let part = |n: i8| u8::try_from(n).ok();
        Receipt {
            table: table.name.clone(),
            head: table.paper.head.clone(),
            practice: self.practice,
            number: bill.number.to_string(),
            show,
            place: about.place.clone(),
            day: Day { year: at.year().unsigned_abs(), month: part(at.month()), day: part(at.day()) },
            clock: at.strftime("%H:%M").to_string(),
            currency: bill.rules.currency,
            pieces: live.iter().map(|ticket| self.piece(ticket)).collect(),
            goods,
            goods_off: off([(OffWhy::Given(reason), sum.goods.discount)]),
            taxes: taxes(bill, &live, sum),
            total: sum.total,
            payments: payments(bill),
            left: sum.left,
            backs: bill.corrections.iter().map(|one| self.back(one, paid)).collect(),
            cautions: self.cautions(&live),
            care: table.paper.care_in(self.texts.lang.code()).map(str::to_owned),
        }
    }

    fn piece(&self, ticket: &Ticket) -> SoldPiece {
        let quote = &ticket.quote;
        let given = ticket.given_off().unwrap_or_default();
        let table = match &ticket.package {
            Some(package) => OffWhy::Package(package.name.clone()),
            None => OffWhy::Table,
        };
        let reason = ticket.given.as_ref().map(|given| given.reason.clone()).unwrap_or_default();
        SoldPiece {
            number: ticket.number.to_string(),
            base: self.name(&quote.base.id),
            length: ticket.piece.length,
            base_price: quote.base.price,
            drops: quote.drops.iter().map(|drop| (self.name(&drop.id), drop.price)).collect(),
            plain: quote.plain.iter().map(|line| (line.words.clone(), line.price)).collect(),
            off: off([(table, quote.discount - given), (OffWhy::Given(reason), given)]),
        }
    }

    fn back(&self, one: &Correction, paid: &PaidBill) -> Back {
        let ticket = |id| paid.tickets.iter().find(|ticket| ticket.id == id);
        let what = match one.what {
            Corrected::Ticket(id) => {
                TakenBack::Piece(ticket(id).map(|ticket| ticket.number.to_string()).unwrap_or_default())
            }
            Corrected::Line { ticket: id, at } => {
                let line = ticket(id).and_then(|ticket| ticket.lines.get(at));
                TakenBack::One(line.map(|line| self.name(&line.id)).unwrap_or_default())
            }
            Corrected::Goods(at) => {
                let goods = paid.bill.goods.get(at).map(|goods| goods.line.words.clone());
                TakenBack::One(goods.unwrap_or_default())
            }
            Corrected::Payment(_) => TakenBack::Way,
        };
        Back { what, reason: one.reason.clone(), worth: one.worth }
    }

    /// What was said at the sale, each sentence once.
    fn cautions(&self, tickets: &[&Ticket]) -> Vec<String> {
        let mut said = BTreeSet::new();
        let hazards = tickets.iter().flat_map(|ticket| ticket.verdict.hazards());
        let words = hazards.map(|hazard| self.texts.caution(hazard.spokesman(), self.catalog));
        words.filter(|words| said.insert(words.clone())).collect()
    }

    /// The slip of a ticket, without its picture; `address` is where a phone finds the desk.
    pub(super) fn slip(&self, ticket: &Ticket, gift: bool, address: Option<&str>) -> Slip {
        let number = ticket.number.to_string();
        let parts = |hazard: &crate::caution::Hazard<'_>| {
            let base = hazard.is_of_the_base().then(|| self.name(&ticket.piece.base));
            let names: Vec<String> = base.into_iter().chain(hazard.drops().map(|id| self.name(id))).collect();
            names.join(", ")
        };
        let hazards = ticket.verdict.hazards();
        Slip {
            table: self.catalog.table.name.clone(),
            practice: self.practice,
            code: address.map_or_else(|| number.clone(), |address| format!("{address}/number/{number}")),
            number,
            wearer: ticket.piece.wearer,
            gift,
            base: self.name(&ticket.piece.base),
            length: ticket.piece.length,
            drops: ticket.live_lines().map(|(_, line)| (line.home, self.name(&line.id))).collect(),
            plain: ticket.plain.iter().map(|line| line.words.clone()).collect(),
            cautions: hazards
                .iter()
                .map(|hazard| (parts(hazard), self.texts.caution(hazard.spokesman(), self.catalog)))
                .collect(),
            picture: None,
        }
    }
}

/// The piece's picture for a slip, its drops near enough to thread by; none where the catalogue can't make it any more.
pub(super) fn picture(loaded: &Loaded, piece: &Piece) -> Option<Vec<u8>> {
    let size = if shows_drops(loaded, piece) { PortraitSize::Close } else { PortraitSize::Large };
    drawn(loaded, piece, size)
}

/// What is taken off, as far as it is anything.
fn off(all: impl IntoIterator<Item = (OffWhy, Decimal)>) -> Vec<Off> {
    all.into_iter().filter(|(_, amount)| !amount.is_zero()).map(|(why, amount)| Off { why, amount }).collect()
}

/// The tax of all that is on the bill, by rules that are the same.
fn taxes(bill: &Bill, live: &[&Ticket], sum: &BillSum) -> Vec<TaxLine> {
    let mut taxes: Vec<TaxLine> = Vec::new();
    let goods = (bill.rules.tax, sum.goods.total, sum.goods.tax);
    let all = live.iter().map(|ticket| (ticket.rules.tax, ticket.quote.total, ticket.quote.tax)).chain([goods]);
    for (rule, total, tax) in all.filter(|(rule, total, _)| *rule != TaxRule::None && !total.is_zero()) {
        let net = total - tax;
        match taxes.iter_mut().find(|line| line.rule == rule) {
            Some(line) => (line.net, line.tax) = (line.net + net, line.tax + tax),
            None => taxes.push(TaxLine { rule, net, tax, is_rounded_apart: false }),
        }
    }
    for line in &mut taxes {
        let left = if matches!(line.rule, TaxRule::Included { .. }) { line.net + line.tax } else { line.net };
        let together = PriceRules { tax: line.rule, ..bill.rules.clone() }.tax_and_total(left).0;
        line.is_rounded_apart = together != line.tax;
    }
    taxes
}

/// Money that moved, as it is right now: what was put right stands in its right way alone, where it stood first.
fn payments(bill: &Bill) -> Vec<Paid> {
    let right = bill.payments.iter().enumerate().filter(|(at, _)| !bill.is_corrected(*at));
    let mut all: Vec<(usize, &Payment)> = right.map(|(at, payment)| (bill.first_of(at), payment)).collect();
    all.sort_by_key(|(first, _)| *first);
    let paid = |(first, payment): (usize, &Payment)| Paid {
        way: payment.tender.clone(),
        amount: payment.amount,
        settles: payment.settles,
        given: payment.given,
        part: bill.payments[first].why == Why::Part,
    };
    all.into_iter().map(paid).collect()
}
