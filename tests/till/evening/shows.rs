//! Shows one after the other, each with the tax of its place; and looking back on all of it.

use std::collections::BTreeSet;

use chatelaine::{
    catalog::Catalog,
    ledger::{AboutShow, Closing, Ledger, ShowKind},
    money::{Reward, RewardRule, TaxRule},
    ticket::State,
};
use rust_decimal::Decimal;

use super::{
    Evening,
    arithmetic::{Tax, WHOLE, half_up},
    cents, decimal,
    model::Life,
    read,
};
use crate::{book::now, counter::d};

pub fn tax_of(catalog: &Catalog) -> Tax {
    let rate = |percent: Decimal| (percent * Decimal::ONE_THOUSAND).normalize().try_into().expect("a rate");
    match catalog.table.prices.tax {
        TaxRule::Added { percent } => Tax::Added(rate(percent)),
        TaxRule::Included { percent } => Tax::Included(rate(percent)),
        TaxRule::None => Tax::Added(0),
    }
}

impl Evening {
    /// Tells what the running show is; its catalogue has the tax of the place.
    pub fn begin_show(&mut self, mut catalog: Catalog) {
        let percent = d(self.table.rates[self.random.of(3)]);
        let about = AboutShow {
            kind: Some(ShowKind::HomeParty),
            host: Some("Host of the evening".into()),
            tax: Some(TaxRule::Added { percent }),
            ..AboutShow::default()
        };
        let currency = catalog.table.prices.currency;
        self.ledger.set_about(self.model.show, &about, currency, self.at).expect("told");
        catalog.table.prices.tax = about.tax_over(catalog.table.prices.tax);
        self.ledger.take_catalog(&catalog, "of the place", self.at).expect("taken over");
        self.made.push((self.ledger.change().expect("a number"), None));
        self.catalogs.push(catalog);
        self.sent.push(0);
        self.model.sums();
    }

    pub fn close(&mut self) {
        let rules = self.catalog().table.prices.clone();
        let percent = 10_000 + 125 * self.random.below(40) as i64;
        let above = 5_000 + 100 * self.random.below(200) as i64;
        let by_percent = self.one_in(2);
        let rule = if by_percent {
            RewardRule::Percent(Decimal::new(percent, 3))
        } else {
            RewardRule::FreePieces { above: decimal(above), up_to: None }
        };
        let closing = Closing { currency: rules.currency, counted: None, reward: Some((rule, rules)) };
        let show = self.model.show;
        let sums = self.does(|ledger, at| ledger.close_counted(&closing, at)).expect("closed");
        self.model.close();
        let model = self.model.shows[&show].clone();
        assert_eq!(read::sums(&sums), model.clone().plain(), "show {show}");
        let earned = (model.totals - model.tax).max(0);
        let reward = if by_percent {
            Reward::Amount(decimal(half_up(earned * percent, WHOLE)))
        } else {
            Reward::Pieces { count: (earned / above) as u32, up_to: None }
        };
        assert_eq!(self.ledger.closed_show(show).expect("read").expect("closed").end.reward, Some(reward));
        self.closed.push(sums);
        let next = self.catalogs[0].clone();
        self.begin_show(next);
        let open: BTreeSet<_> = self.ledger.open_bills().expect("bills").into_iter().map(|bill| bill.id).collect();
        let model = &self.model;
        let waits = (0..model.bills.len()).filter(|at| model.waits(*at) || model.left(*at) != 0);
        assert_eq!(open, waits.map(|at| model.bills[at].id).collect(), "what waits to be paid or paid out");
        self.compare();
        self.compare_stock();
    }

    pub fn compare_stock(&self) {
        let held = self.model.held();
        for (id, count) in self.ledger.counts().expect("counts") {
            let held = held.get(id.as_str()).copied().unwrap_or_default();
            let found = (i64::from(count.on_hand), i64::from(count.held));
            assert_eq!(found, (self.model.on_hand[&id], held), "{id}");
        }
    }

    /// The desk is closed and opened again: everything is as it was.
    pub fn reopen(&mut self) {
        let Some(file) = self.file.clone() else { return };
        drop(std::mem::replace(&mut self.ledger, Ledger::in_memory(now()).expect("a ledger")));
        self.ledger = Ledger::open(&file, self.at).expect("opened again");
        assert_eq!(self.ledger.faults().expect("read"), Vec::<String>::new());
        self.tally.entry("opened again").or_default().0 += 1;
        self.compare_stock();
    }

    /// Everything that was ever done is still there, by whom it was done, and adds up over all shows.
    pub fn look_back(&self) {
        for (show, sums) in self.closed.iter().enumerate() {
            let kept = self.ledger.closed_show(show as i64 + 1).expect("read").expect("closed");
            assert_eq!(kept.sums, *sums, "what is closed stays");
        }
        for piece in &self.model.pieces {
            let ticket = self.ledger.ticket(piece.id).expect("a ticket");
            let life = match ticket.state {
                State::Sent | State::Called | State::Checked => Life::Open,
                State::RungUp | State::HandedOver => Life::Sold,
                State::LetGo => Life::LetGo,
                State::TakenBack => Life::Back,
            };
            assert_eq!((life, cents(ticket.quote.total)), (piece.life, piece.amounts().total), "{}", ticket.number);
            let paid = ticket.tender.zip(ticket.charged).map(|(way, amount)| (way.name().to_owned(), cents(amount)));
            assert_eq!(paid, piece.paid, "how {} was paid", ticket.number);
            self.compare_names(piece.id);
        }
        let mut worth = 0;
        for (at, bill) in self.model.bills.iter().enumerate() {
            self.compare_bill(at);
            self.compare_names(bill.id);
            let sold = bill.pieces.iter().map(|at| &self.model.pieces[*at]).filter(|piece| piece.life == Life::Sold);
            let goods = bill.goods_sum(|one| one.sold).expect("a sum").total;
            let settled: i64 = bill.payments.iter().map(|one| one.settles).sum();
            worth += settled - sold.map(|piece| piece.amounts().total).sum::<i64>() - goods;
        }
        let owing: i64 = self.closed.iter().map(|sums| cents(sums.owing)).sum();
        assert_eq!(owing, worth, "over all shows: what was paid and is not sold, less what is to be paid out");
        assert_eq!(self.ledger.faults().expect("read"), Vec::<String>::new());
    }

    fn compare_names(&self, id: uuid::Uuid) {
        let mut names = BTreeSet::new();
        for event in self.ledger.history(id).expect("its entries") {
            assert_eq!(event.by.as_deref(), self.who(event.seq), "{} of entry {}", event.kind, event.seq);
            names.extend(event.by);
        }
        assert!(names.iter().all(|name| super::SELLERS.contains(&name.as_str())), "{names:?}");
    }
}
