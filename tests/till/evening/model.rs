//! A small model of the till: pieces, bills, stock, and what each show comes to.

use std::collections::BTreeMap;

use uuid::Uuid;

use super::arithmetic::{Amounts, Cents, Reduction, Sums, Tax, add_line, amounts, in_cash};

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Life {
    Open,
    Sold,
    LetGo,
    Back,
}

#[derive(Debug, Clone)]
pub struct Line {
    pub id: String,
    pub price: Cents,
    pub live: bool,
}

/// Something taken off by hand, with its reason.
pub type Given = Option<(Reduction, String)>;

#[derive(Debug, Clone)]
pub struct Piece {
    pub id: Uuid,
    /// The show in which it was sent.
    pub show: i64,
    pub tax: Tax,
    /// Of so many drops the cheapest is free.
    pub every: Option<usize>,
    pub base: (String, Cents),
    pub lines: Vec<Line>,
    pub plain: Vec<(String, Cents)>,
    pub package: Option<(Cents, usize)>,
    pub given: Given,
    pub life: Life,
    /// Everything is ticked off and told.
    pub ready: bool,
    pub prepaid: bool,
    pub bill: Option<usize>,
    /// How it was paid where nothing else was paid with it.
    pub paid: Option<(String, Cents)>,
}

impl Piece {
    pub fn live(&self) -> impl Iterator<Item = &Line> {
        self.lines.iter().filter(|line| line.live)
    }

    pub fn parts(&self) -> impl Iterator<Item = (&String, Cents)> {
        std::iter::once((&self.base.0, self.base.1)).chain(self.live().map(|line| (&line.id, line.price)))
    }

    pub fn with(&self, reduction: Option<Reduction>) -> Option<Amounts> {
        let mut drops: Vec<Cents> = self.live().map(|line| line.price).collect();
        drops.sort_unstable();
        let marked = self.base.1 + drops.iter().sum::<Cents>();
        let off = match (self.package, self.every) {
            (Some((price, count)), _) => {
                let inside = self.base.1 + drops.iter().rev().take(count).sum::<Cents>();
                (inside - price).max(0)
            }
            (None, Some(every)) => drops.iter().take(drops.len() / every).sum(),
            (None, None) => 0,
        };
        amounts(self.tax, marked + self.plain.iter().map(|line| line.1).sum::<Cents>(), off, reduction)
    }

    pub fn amounts(&self) -> Amounts {
        self.with(self.given.as_ref().map(|given| given.0)).expect("a sum that can be reached")
    }

    /// After a change; a sum that is no longer reached is no wish any more.
    pub fn changed(&mut self) {
        self.ready = false;
        if self.with(self.given.as_ref().map(|given| given.0)).is_none() {
            self.given = None;
        }
    }
}

#[derive(Debug, Clone)]
pub struct Goods {
    pub words: String,
    pub price: Cents,
    pub sold: bool,
    pub gone: bool,
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Paid {
    pub tender: String,
    pub amount: Cents,
    pub settles: Cents,
    /// It was put right, or is itself the counterpart of such a payment.
    pub corrected: bool,
    /// The payment in the place of which it stands.
    pub instead_of: Option<usize>,
}

#[derive(Debug, Clone)]
pub struct Bill {
    pub id: Uuid,
    pub tax: Tax,
    pub pieces: Vec<usize>,
    pub goods: Vec<Goods>,
    pub given: Given,
    pub payments: Vec<Paid>,
    /// It was paid in full once.
    pub settled: bool,
}

impl Bill {
    pub fn new(id: Uuid, tax: Tax, pieces: Vec<usize>) -> Self {
        Self { id, tax, pieces, goods: vec![], given: None, payments: vec![], settled: false }
    }

    pub fn goods_sum(&self, wanted: impl Fn(&Goods) -> bool) -> Option<Amounts> {
        let live: Vec<&Goods> = self.goods.iter().filter(|one| !one.gone && wanted(one)).collect();
        if live.is_empty() {
            return Some(Amounts::default());
        }
        let reduction = self.given.as_ref().map(|given| given.0);
        amounts(self.tax, live.iter().map(|one| one.price).sum(), 0, reduction)
    }

    fn sold_goods(&self) -> Amounts {
        self.goods_sum(|one| one.sold).expect("what is sold has its sum")
    }
}

#[derive(Debug, Clone, Copy)]
pub enum Back {
    Piece(usize),
    Line(usize, usize),
    Goods(usize),
}

#[derive(Debug)]
pub struct Model {
    pub show: i64,
    pub step: Cents,
    pub on_hand: BTreeMap<String, i64>,
    pub pieces: Vec<Piece>,
    pub bills: Vec<Bill>,
    pub shows: BTreeMap<i64, Sums>,
}

impl Model {
    pub fn sums(&mut self) -> &mut Sums {
        self.shows.entry(self.show).or_default()
    }

    pub fn held(&self) -> BTreeMap<&str, i64> {
        let mut held = BTreeMap::new();
        for (part, _) in self.pieces.iter().filter(|piece| piece.life == Life::Open).flat_map(Piece::parts) {
            *held.entry(part.as_str()).or_default() += 1;
        }
        held
    }

    /// Whether the stock has these parts, or they were found on the table all the same.
    pub fn may_hold(&mut self, parts: &[String], found: bool) -> bool {
        let mut free: BTreeMap<&String, i64> = BTreeMap::new();
        let held = self.held();
        let mut more: Vec<&String> = vec![];
        for part in parts {
            let left = free
                .entry(part)
                .or_insert_with(|| self.on_hand[part] - held.get(part.as_str()).copied().unwrap_or_default());
            if *left > 0 {
                *left -= 1;
            } else if found {
                more.push(part);
            } else {
                return false;
            }
        }
        for part in more {
            *self.on_hand.get_mut(part).expect("a count") += 1;
        }
        true
    }

    pub fn total(&self, bill: usize) -> Cents {
        let bill = &self.bills[bill];
        let counts = |piece: &&Piece| matches!(piece.life, Life::Open | Life::Sold);
        let pieces = bill.pieces.iter().map(|at| &self.pieces[*at]).filter(counts);
        pieces.map(|piece| piece.amounts().total).sum::<Cents>() + bill.goods_sum(|_| true).expect("a sum").total
    }

    pub fn left(&self, bill: usize) -> Cents {
        self.total(bill) - self.bills[bill].payments.iter().map(|one| one.settles).sum::<Cents>()
    }

    pub fn open_on(&self, bill: usize) -> Vec<usize> {
        let on = self.bills[bill].pieces.iter().copied();
        on.filter(|at| self.pieces[*at].life == Life::Open).collect()
    }

    pub fn waits(&self, bill: usize) -> bool {
        !self.open_on(bill).is_empty() || self.bills[bill].goods.iter().any(|one| !one.gone && !one.sold)
    }

    pub fn due(&self, left: Cents, tender: &str) -> Cents {
        if tender == "cash" { in_cash(left, self.step) } else { left }
    }

    /// What is paid and what that settles where `amount` was said; none where that can't be paid.
    pub fn payment(&self, bill: usize, tender: &str, amount: Option<Cents>) -> Option<(Cents, Cents)> {
        let left = self.left(bill);
        let due = self.due(left, tender);
        match amount {
            None => Some((due, left)),
            Some(amount) if amount == due || amount == left => Some((due, left)),
            Some(amount) => {
                let whole = self.due(amount, tender) == amount;
                (amount > 0 && amount < left && whole).then_some((amount, amount))
            }
        }
    }

    /// Whether it is paid; a bill that was paid before stays so.
    pub fn pay(&mut self, bill: usize, tender: &str, amount: Option<Cents>) -> bool {
        let left = self.left(bill);
        if left == 0 && !self.waits(bill) {
            return self.bills[bill].settled;
        }
        let Some((amount, settles)) = self.payment(bill, tender, amount) else { return false };
        let open = self.open_on(bill);
        if settles == left && open.iter().any(|at| !self.pieces[*at].ready) {
            return false;
        }
        if (amount, settles) != (0, 0) {
            self.moves(bill, tender, amount, settles, None);
            if amount < 0 {
                self.sums().paid_out -= amount;
            }
        }
        if settles != left {
            open.iter().for_each(|at| self.pieces[*at].prepaid = true);
            return true;
        }
        let of = &self.bills[bill];
        let alone = of.pieces.len() == 1 && of.goods.iter().all(|one| one.gone) && of.payments.len() <= 1;
        for at in open {
            self.sell(at);
            if alone {
                self.pieces[at].paid = Some((tender.to_owned(), amount));
            }
        }
        self.sell_goods(bill);
        self.bills[bill].settled = true;
        true
    }

    pub fn moves(&mut self, bill: usize, tender: &str, amount: Cents, settles: Cents, instead_of: Option<usize>) {
        self.sums().money(tender, amount, settles);
        let tender = tender.to_owned();
        self.bills[bill].payments.push(Paid { tender, amount, settles, corrected: false, instead_of });
    }

    fn sell(&mut self, at: usize) {
        let piece = self.pieces[at].clone();
        let late = piece.show < self.show;
        let of = piece.amounts();
        let sums = self.sums();
        sums.sold += 1;
        sums.sale(piece.tax, of, piece.given.as_ref().map(|given| &given.1), 1);
        if late {
            sums.late_sold += 1;
            sums.late_taken += of.total;
        }
        piece.parts().for_each(|(part, price)| add_line(&mut sums.parts, part, price));
        piece.plain.iter().for_each(|(words, price)| add_line(&mut sums.goods, words, *price));
        piece.parts().for_each(|(part, _)| *self.on_hand.get_mut(part).expect("a count") -= 1);
        self.pieces[at].life = Life::Sold;
    }

    fn sell_goods(&mut self, bill: usize) {
        let mut of = self.bills[bill].clone();
        let before = of.sold_goods();
        let waiting = of.goods.iter_mut().filter(|one| !one.gone && !one.sold);
        let waiting: Vec<&mut Goods> = waiting.collect();
        if waiting.is_empty() {
            return;
        }
        for one in waiting {
            add_line(&mut self.sums().goods, &one.words, one.price);
            one.sold = true;
        }
        let after = of.sold_goods();
        self.sums().sale(of.tax, after.less(before), of.given.as_ref().map(|given| &given.1), 1);
        // A round sum was for these.
        if let Some((reduction @ Reduction::ToSum(_), _)) = &mut of.given {
            *reduction = Reduction::Amount(after.off);
        }
        self.bills[bill] = of;
    }

    /// Whether it is taken back.
    pub fn take_back(&mut self, bill: usize, back: Back, home: bool) -> bool {
        let (before, after, tax, given, parts) = match back {
            Back::Piece(at) if self.pieces[at].life == Life::Sold => {
                let piece = &mut self.pieces[at];
                piece.life = Life::Back;
                let mut parts: Vec<(String, Cents)> = piece.parts().map(|(id, price)| (id.clone(), price)).collect();
                parts.extend(piece.plain.clone());
                (piece.amounts(), Amounts::default(), piece.tax, piece.given.clone(), parts)
            }
            Back::Line(at, line) if self.pieces[at].life == Life::Sold && self.pieces[at].lines[line].live => {
                let piece = &mut self.pieces[at];
                let before = piece.amounts();
                if let Some((reduction @ Reduction::ToSum(_), _)) = &mut piece.given {
                    *reduction = Reduction::Amount(before.by_hand);
                }
                piece.lines[line].live = false;
                let part = (piece.lines[line].id.clone(), piece.lines[line].price);
                (before, piece.amounts(), piece.tax, piece.given.clone(), vec![part])
            }
            Back::Goods(at) if self.bills[bill].goods[at].sold && !self.bills[bill].goods[at].gone => {
                let of = &mut self.bills[bill];
                let before = of.sold_goods();
                of.goods[at].gone = true;
                let part = (of.goods[at].words.clone(), of.goods[at].price);
                (before, of.sold_goods(), of.tax, of.given.clone(), vec![part])
            }
            _ => return false,
        };
        let less = before.less(after);
        for (part, _) in parts.iter().filter(|_| home) {
            self.on_hand.entry(part.clone()).and_modify(|count| *count += 1);
        }
        let sums = self.sums();
        sums.sale(tax, less, given.as_ref().map(|given| &given.1), -1);
        sums.back_times += 1;
        sums.back_pieces += i64::from(matches!(back, Back::Piece(_)));
        sums.back += less.total;
        sums.back_tax += less.tax;
        parts.iter().for_each(|(part, price)| add_line(&mut sums.back_parts, part, *price));
        true
    }

    /// Whether payment `at` was in another way: a counter-entry and the right one.
    pub fn other_tender(&mut self, bill: usize, at: usize, to: &str) -> bool {
        let was = self.bills[bill].payments[at].clone();
        if was.corrected || was.tender == to {
            return false;
        }
        let right = self.due(was.settles, to);
        self.moves(bill, &was.tender, -was.amount, -was.settles, None);
        self.moves(bill, to, right, was.settles, Some(at));
        let payments = &mut self.bills[bill].payments;
        let counterpart = payments.len() - 2;
        (payments[at].corrected, payments[counterpart].corrected) = (true, true);
        let first = |at: &usize| payments[*at].instead_of;
        let first = std::iter::successors(Some(at), first).last();
        for at in self.bills[bill].pieces.clone() {
            let paid = &mut self.pieces[at].paid;
            if first == Some(0) && *paid == Some((was.tender.clone(), was.amount)) {
                *paid = Some((to.to_owned(), right));
            }
        }
        true
    }

    pub fn let_go(&mut self, at: usize) {
        let late = i64::from(self.pieces[at].show < self.show);
        self.pieces[at].life = Life::LetGo;
        self.sums().let_go += 1;
        self.sums().late_let_go += late;
    }

    /// Closes the show: what is not paid in part is let go.
    pub fn close(&mut self) {
        let open: Vec<usize> = (0..self.pieces.len()).filter(|at| self.pieces[*at].life == Life::Open).collect();
        for at in open {
            if self.pieces[at].prepaid {
                self.sums().prepaid_kept += 1;
            } else {
                self.let_go(at);
                self.sums().let_go_now += 1;
            }
        }
        self.show += 1;
    }
}
