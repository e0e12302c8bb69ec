//! What sellers do with a bill.

use chatelaine::{
    ledger::{Corrected, LedgerError, Paying, Seen, TakeBack},
    money::{PlainLine, Tender},
};

use super::{
    Evening,
    acts::told,
    arithmetic::{Cents, Reduction},
    cents, decimal,
    model::{Back, Bill, Goods, Life},
    shows::tax_of,
};

impl Evening {
    /// The bill of a piece; one is begun where there is none.
    fn bill_of(&mut self, at: usize) -> usize {
        let id = self.model.pieces[at].id;
        let bill = self.does(|ledger, now| ledger.bill_for(id, now)).expect("a bill");
        if let Some(bill) = self.model.pieces[at].bill {
            return bill;
        }
        self.model.bills.push(Bill::new(bill.id, self.model.pieces[at].tax, vec![at]));
        self.model.pieces[at].bill = Some(self.model.bills.len() - 1);
        self.model.bills.len() - 1
    }

    /// A bill, mostly one of the newest; or one on which something is left to do.
    fn some_bill(&mut self, to_pay: bool) -> Option<usize> {
        let model = &self.model;
        let all = (0..model.bills.len()).rev().filter(|at| !to_pay || model.waits(*at) || model.left(*at) != 0);
        let all: Vec<usize> = all.take(30).collect();
        (!all.is_empty()).then(|| all[self.random.of(all.len())])
    }

    pub fn compare_bill(&self, at: usize) {
        let (bill, _, sum) = self.ledger.bill(self.model.bills[at].id).expect("a bill");
        let of = &self.model.bills[at];
        assert_eq!([sum.total, sum.left].map(cents), [self.model.total(at), self.model.left(at)], "{bill:#?}");
        let payments = bill.payments.iter().map(|one| (one.tender.name(), cents(one.amount), cents(one.settles)));
        assert!(payments.eq(of.payments.iter().map(|one| (one.tender.as_str(), one.amount, one.settles))), "{of:?}");
    }

    pub fn begins_a_bill(&mut self) {
        let (id, rules) = (self.id(), self.catalog().table.prices.clone());
        for _ in 0..2 {
            self.does(|ledger, now| ledger.begin_bill(id, &rules, now)).expect("a bill, once");
        }
        let tax = tax_of(self.catalog());
        self.model.bills.push(Bill::new(id, tax, vec![]));
    }

    pub fn puts_together(&mut self) {
        let Some(at) = self.any(Life::Open) else { return };
        let bill = if self.one_in(4) { Some(self.bill_of(at)) } else { self.some_bill(false) };
        let Some(bill) = bill else { return };
        if self.one_in(4) {
            let (id, piece) = (self.model.bills[bill].id, self.model.pieces[at].id);
            let on_it = self.model.pieces[at].bill == Some(bill);
            let done = self.does(|ledger, now| ledger.take_off_bill(id, piece, now));
            if self.agrees("off a bill", on_it && !self.model.pieces[at].prepaid, &done) {
                self.model.bills[bill].pieces.retain(|on| *on != at);
                self.model.pieces[at].bill = None;
            }
        } else {
            self.puts_on(bill, at);
        }
        self.compare_bill(bill);
    }

    fn puts_on(&mut self, bill: usize, at: usize) -> bool {
        let (id, piece) = (self.model.bills[bill].id, self.model.pieces[at].id);
        let before = self.model.pieces[at].bill;
        let free = before.is_none() || !self.model.pieces[at].prepaid;
        let done = self.does(|ledger, now| ledger.put_on_bill(id, piece, now));
        let allowed = self.agrees("onto a bill", before == Some(bill) || free, &done);
        if allowed && before != Some(bill) {
            before.inspect(|before| self.model.bills[*before].pieces.retain(|on| *on != at));
            self.model.bills[bill].pieces.push(at);
            self.model.pieces[at].bill = Some(bill);
        }
        allowed
    }

    pub fn goods(&mut self) {
        let waits = |bill: &Bill| bill.goods.iter().any(|one| !one.gone && !one.sold);
        let waiting: Vec<usize> =
            (0..self.model.bills.len()).rev().filter(|at| waits(&self.model.bills[*at])).take(12).collect();
        let bill = if waiting.is_empty() || self.one_in(2) {
            self.some_bill(false)
        } else {
            Some(waiting[self.random.of(waiting.len())])
        };
        let Some(bill) = bill else { return };
        let id = self.model.bills[bill].id;
        let count = self.model.bills[bill].goods.len();
        match self.random.below(4) {
            0 if count > 0 => {
                let at = self.random.of(count);
                let one = &self.model.bills[bill].goods[at];
                let allowed = !one.gone && !one.sold;
                let done = self.does(|ledger, now| ledger.remove_goods(id, at, now));
                if self.agrees("goods off", allowed, &done) {
                    let of = &mut self.model.bills[bill];
                    of.goods[at].gone = true;
                    let none = of.goods.iter().all(|one| one.gone);
                    // A round sum for goods is none for others.
                    let to_sum = matches!(of.given, Some((Reduction::ToSum(_), _)));
                    if of.goods_sum(|_| true).is_none() || (none && to_sum) {
                        of.given = None;
                    }
                }
            }
            1 if self.model.bills[bill].goods.iter().any(|one| !one.gone) => {
                let before = self.model.bills[bill].given.clone();
                let given = self.reduction(self.model.total(bill));
                let of = &mut self.model.bills[bill];
                of.given.clone_from(&given);
                let allowed = of.goods.iter().all(|one| !one.sold) && of.goods_sum(|_| true).is_some();
                let noted = told(&given);
                let done = self.does(|ledger, now| ledger.reduce_goods(id, noted, now));
                if !self.agrees("reduce goods", allowed, &done) {
                    self.model.bills[bill].given = before;
                }
            }
            _ if count < 8 => {
                let price = self.random.below(3_000) as Cents;
                let words = ["Gift box", "Ear wires", "Mending"][self.random.of(3)].to_owned();
                let line = PlainLine { words: words.clone(), price: decimal(price) };
                let done = self.does(|ledger, now| ledger.add_goods(id, &line, now));
                self.agrees("goods", true, &done);
                self.model.bills[bill].goods.push(Goods { words, price, sold: false, gone: false });
            }
            _ => {}
        }
        self.compare_bill(bill);
    }

    /// Pays, and touches the button again now and then.
    fn pays(&mut self, bill: usize, tender: &'static str, amount: Option<Cents>) {
        let payment = self.model.payment(bill, tender, amount);
        let cash = payment.map(|payment| payment.0).filter(|amount| tender == "cash" && *amount > 0);
        let given = cash.filter(|_| self.one_in(2)).map(|amount| amount + self.random.below(2_100) as Cents - 100);
        let enough = given.zip(cash).is_none_or(|(given, amount)| given >= amount);
        let seen = Seen { left: decimal(self.model.left(bill)), payments: self.model.bills[bill].payments.len() };
        let paying = Paying { tender: Tender::called(tender), amount: amount.map(decimal), given: given.map(decimal) };
        let id = self.model.bills[bill].id;
        let allowed = enough && self.model.pay(bill, tender, amount);
        let done = self.does(|ledger, now| ledger.pay(id, &paying, seen, now));
        let who = self.made.last().and_then(|made| made.1);
        if self.agrees(if amount.is_some() { "pay a part" } else { "pay" }, allowed, &done) {
            let paid = done.expect("paid");
            if let Some(last) = paid.payments.get(seen.payments) {
                assert_eq!((last.by.as_deref(), last.given), (who, given.map(decimal)));
                if self.one_in(3) {
                    let again = self.does(|ledger, now| ledger.pay(id, &paying, seen, now));
                    assert_eq!(again.expect("once"), paid, "a second touch pays nothing");
                    self.tally.entry("touch twice").or_default().0 += 1;
                }
            }
        }
        self.compare_bill(bill);
    }

    pub fn pays_a_part(&mut self) {
        let Some(bill) = self.a_bill_to_pay() else { return };
        let (left, way) = (self.model.left(bill), self.way());
        if left < 2 {
            return;
        }
        let mut part = 1 + self.random.below(left as u64) as Cents;
        if way == "cash" && !self.one_in(5) {
            part -= part % self.model.step;
        }
        self.pays(bill, way, Some(part));
    }

    fn a_bill_to_pay(&mut self) -> Option<usize> {
        if self.one_in(2) {
            let at = self.any(Life::Open)?;
            return Some(self.bill_of(at));
        }
        self.some_bill(true)
    }

    pub fn pays_all(&mut self) {
        let bill = if self.one_in(12) { self.some_bill(false) } else { self.a_bill_to_pay() };
        let Some(bill) = bill else { return };
        self.model.open_on(bill).into_iter().for_each(|at| self.checks(at));
        let way = self.way();
        self.pays(bill, way, None);
    }

    /// Somebody else changed the bill meanwhile, or so it looks.
    pub fn pays_what_was_not_seen(&mut self) {
        let Some(bill) = self.some_bill(true) else { return };
        let left = decimal(self.model.left(bill) + 1);
        let seen = Seen { left, payments: self.model.bills[bill].payments.len() };
        let id = self.model.bills[bill].id;
        let done = self.does(|ledger, now| ledger.pay(id, &Paying::all(Tender::Card), seen, now));
        assert!(matches!(done, Err(LedgerError::BillChanged(_))), "{done:?}");
        self.compare_bill(bill);
    }

    pub fn takes_back(&mut self) {
        let out = if self.one_in(3) { None } else { Some(self.way()) };
        if self.one_in(3) {
            let Some(bill) = self.some_bill(false) else { return };
            let count = self.model.bills[bill].goods.len();
            if count > 0 {
                let at = self.random.of(count);
                self.takes(bill, Back::Goods(at), out);
            }
            return;
        }
        let life = if self.one_in(12) { Life::Back } else { Life::Sold };
        let Some(at) = self.any(life) else { return };
        let bill = self.model.pieces[at].bill.expect("what is sold is on a bill");
        let line = self.random.of(self.model.pieces[at].lines.len());
        let back = if self.one_in(2) { Back::Piece(at) } else { Back::Line(at, line) };
        self.takes(bill, back, out);
    }

    fn takes(&mut self, bill: usize, back: Back, out: Option<&'static str>) -> bool {
        // What waits on the bill becomes the guest's where money is paid out.
        self.model.open_on(bill).into_iter().for_each(|at| self.checks(at));
        let what = match back {
            Back::Piece(at) => Corrected::Ticket(self.model.pieces[at].id),
            Back::Line(at, line) => Corrected::Line { ticket: self.model.pieces[at].id, at: line },
            Back::Goods(at) => Corrected::Goods(at),
        };
        let (id, parts_home) = (self.model.bills[bill].id, self.one_in(2));
        let act = TakeBack { what, parts_home, reason: "changed her mind".into() };
        let allowed = self.model.take_back(bill, back, parts_home);
        if let Some(out) = out.filter(|_| allowed && self.model.left(bill) < 0) {
            assert!(self.model.pay(bill, out, None));
        }
        let out = out.map(Tender::called);
        let done = self.does(|ledger, now| ledger.take_back(id, &act, out.as_ref(), now));
        let who = self.made.last().and_then(|made| made.1);
        if self.agrees("take back", allowed, &done) {
            let last = done.expect("taken back").corrections.pop().expect("a correction");
            assert_eq!((last.by.as_deref(), last.what), (who, what));
            let again = self.does(|ledger, now| ledger.take_back(id, &act, out.as_ref(), now));
            assert!(again.is_err(), "a second touch takes nothing back");
        }
        self.compare_bill(bill);
        allowed
    }

    /// Another piece in the place of one that was paid; the difference is paid, or paid out.
    pub fn exchanges(&mut self) {
        let Some(at) = self.any(Life::Sold) else { return };
        let bill = self.model.pieces[at].bill.expect("what is sold is on a bill");
        let Some(other) = self.opens() else { return };
        assert!(self.takes(bill, Back::Piece(at), None));
        if self.puts_on(bill, other) {
            self.model.open_on(bill).into_iter().for_each(|at| self.checks(at));
            let way = self.way();
            self.pays(bill, way, None);
            self.tally.entry("exchange").or_default().0 += 1;
        }
    }

    /// A payment was in another way.
    pub fn puts_the_way_right(&mut self) {
        let Some(bill) = self.some_bill(false) else { return };
        let payments = self.model.bills[bill].payments.len();
        if payments == 0 {
            return;
        }
        let (at, to, id) = (self.random.of(payments), self.way(), self.model.bills[bill].id);
        let allowed = self.model.other_tender(bill, at, to);
        let done =
            self.does(|ledger, now| ledger.other_tender(id, at, &Tender::called(to), "touched the wrong one", now));
        let who = self.made.last().and_then(|made| made.1);
        if self.agrees("another way", allowed, &done) {
            let bill = done.expect("put right");
            assert!(bill.payments.iter().rev().take(2).all(|one| one.by.as_deref() == who && one.puts_right()));
        }
        self.compare_bill(bill);
    }
}
