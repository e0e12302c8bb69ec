//! What sellers do with a piece.

use chatelaine::{
    craft::{Piece as Threaded, Wearer},
    ledger::{Given as LedgerGiven, LedgerError, Part},
    money::{MoneyError, Package, PlainLine, Reduction as Off},
    ticket::{Receipt, SentTicket, TicketNumber},
};

use super::{
    BASES, Evening,
    arithmetic::{Cents, Reduction},
    cents, decimal,
    model::{Given, Life, Line, Piece},
    shows::tax_of,
};

const REASONS: [&str; 3] = ["a friend", "a scratch", "rounded down"];

/// What the ledger calls a reduction by hand.
pub fn told(given: &Given) -> Option<LedgerGiven> {
    given.as_ref().map(|(reduction, reason)| LedgerGiven {
        reduction: match *reduction {
            Reduction::Percent(percent) => Off::Percent(rust_decimal::Decimal::new(percent, 3)),
            Reduction::Amount(amount) => Off::Amount(decimal(amount)),
            Reduction::ToSum(wish) => Off::ToSum(decimal(wish)),
        },
        reason: reason.clone(),
    })
}

impl Evening {
    pub fn act(&mut self) {
        match self.random.below(200) {
            0..=35 => drop(self.opens()),
            36..=41 => self.tablet_sends(),
            42..=55 => self.edits(),
            56..=65 => self.reduces(),
            66..=71 => self.packages(),
            72..=77 => self.plain_lines(),
            78..=87 => self.puts_together(),
            88..=99 => self.goods(),
            100..=102 => self.begins_a_bill(),
            103..=115 => self.pays_a_part(),
            116..=149 => self.pays_all(),
            150..=163 => self.takes_back(),
            164..=171 => self.exchanges(),
            172..=180 => self.puts_the_way_right(),
            181..=184 => self.lets_go(),
            185..=187 => self.hands_over(),
            188..=192 => self.unticks(),
            193..=195 => self.pays_what_was_not_seen(),
            196..=198 => self.reopen(),
            _ if self.one_in(2) => self.close(),
            _ => self.lets_go(),
        }
    }

    fn price(&self, id: &str) -> Cents {
        let catalog = self.catalog();
        let base = catalog.base(id).map(|base| base.price);
        cents(base.or_else(|| catalog.drop_kind(id).map(|kind| kind.price)).expect("a part"))
    }

    fn threaded(&mut self) -> Threaded {
        let count = 1 + self.random.of(5);
        let drops = (0..count).map(|_| self.drops[self.random.of(self.drops.len())].clone()).collect();
        let base = BASES[self.random.of(2)].into();
        Threaded { base, length: None, wearer: Wearer::From13, neck: None, drops, looks: vec![] }
    }

    fn in_the_model(&mut self, id: uuid::Uuid, show: i64, piece: &Threaded) -> usize {
        let line = |id: &String| Line { id: id.clone(), price: self.price(id), live: true };
        let catalog = &self.catalogs[show as usize - 1];
        let piece = Piece {
            id,
            show,
            tax: tax_of(catalog),
            every: self.table.discounts.first().map(|_| 3),
            base: (piece.base.clone(), self.price(&piece.base)),
            lines: piece.drops.iter().map(line).collect(),
            plain: vec![],
            package: None,
            given: None,
            life: Life::Open,
            ready: false,
            prepaid: false,
            bill: None,
            paid: None,
        };
        self.model.pieces.push(piece);
        self.model.pieces.len() - 1
    }

    /// A piece that was threaded by hand.
    pub fn opens(&mut self) -> Option<usize> {
        let (id, piece, found) = (self.id(), self.threaded(), self.one_in(2));
        let parts: Vec<String> = std::iter::once(piece.base.clone()).chain(piece.drops.clone()).collect();
        let allowed = self.model.may_hold(&parts, found);
        let catalog = self.catalog().clone();
        let done = self.does(|ledger, at| ledger.open_by_hand(id, &piece, found, &catalog, at));
        if !self.agrees("open", allowed, &done) {
            assert!(matches!(done, Err(LedgerError::NoneLeft(_))), "{done:?}");
            return None;
        }
        if self.one_in(4) {
            let again = self.does(|ledger, at| ledger.open_by_hand(id, &piece, found, &catalog, at));
            assert_eq!(again.expect("the same"), done.expect("a ticket"), "a second touch opens nothing");
        }
        let at = self.in_the_model(id, self.model.show, &piece);
        self.compare_piece(at);
        Some(at)
    }

    /// A tablet's ticket, also one that was made in an earlier show, with the sum of that place.
    fn tablet_sends(&mut self) {
        let show = (self.model.show - self.random.below(3) as i64).max(1);
        let (id, piece) = (self.id(), self.threaded());
        let parts: Vec<String> = std::iter::once(piece.base.clone()).chain(piece.drops.clone()).collect();
        let sequence = self.sent[show as usize - 1];
        self.sent[show as usize - 1] += 1;
        let then = &self.catalogs[show as usize - 1];
        let sent = SentTicket {
            id,
            show,
            number: TicketNumber::new(1, sequence).expect("a number"),
            quote: then.quote(&piece).expect("a sum"),
            verdict: then.cautions(&piece).expect("cautions"),
            piece: piece.clone(),
            grown_up_confirmed: false,
            practice: false,
        };
        let allowed = self.model.may_hold(&parts, false);
        let catalog = self.catalog().clone();
        let receipt = self.does(|ledger, at| ledger.receive(&sent, true, &catalog, at)).expect("an answer");
        let stored = receipt == Receipt::Stored { short: vec![] };
        let done = if stored { Ok(()) } else { Err(receipt) };
        if self.agrees(if show < self.model.show { "send late" } else { "send" }, allowed, &done) {
            let again = self.does(|ledger, at| ledger.receive(&sent, true, &catalog, at)).expect("an answer");
            assert_eq!(again, Receipt::Stored { short: vec![] });
            let at = self.in_the_model(id, show, &piece);
            self.compare_piece(at);
        }
    }

    /// A drop more, one less, another one, another base.
    fn edits(&mut self) {
        let Some(at) = self.any(Life::Open) else { return };
        let (id, catalog, found) = (self.model.pieces[at].id, self.catalog().clone(), self.one_in(2));
        let kind = self.drops[self.random.of(self.drops.len())].clone();
        let lines = self.model.pieces[at].lines.len();
        let line = self.random.of(lines);
        let live = self.model.pieces[at].lines[line].live;
        let price = self.price(&kind);
        match self.random.below(4) {
            0 if lines < 12 => {
                let allowed = self.model.may_hold(std::slice::from_ref(&kind), found);
                let done = self.does(|ledger, now| ledger.add_drop(id, &kind, found, &catalog, now));
                if self.agrees("add a drop", allowed, &done) {
                    self.model.pieces[at].lines.push(Line { id: kind, price, live: true });
                }
            }
            1 => {
                let done = self.does(|ledger, now| ledger.remove(id, line, &catalog, now));
                if self.agrees("remove a drop", live, &done) {
                    self.model.pieces[at].lines[line].live = false;
                }
            }
            2 => {
                let allowed = live && self.model.may_hold(std::slice::from_ref(&kind), false);
                let done = self.does(|ledger, now| ledger.swap(id, line, &kind, &catalog, now));
                if self.agrees("swap", allowed, &done) {
                    self.model.pieces[at].lines[line] = Line { id: kind, price, live: true };
                }
            }
            _ => {
                let base = BASES[self.random.of(2)].to_owned();
                let same = self.model.pieces[at].base.0 == base;
                let allowed = same || self.model.may_hold(std::slice::from_ref(&base), false);
                let done = self.does(|ledger, now| ledger.set_base(id, &base, &catalog, now));
                if self.agrees("another base", allowed, &done) && !same {
                    self.model.pieces[at].base = (base.clone(), self.price(&base));
                }
            }
        }
        self.model.pieces[at].changed();
        self.compare_piece(at);
    }

    /// Something to take off what comes to `total`.
    pub fn reduction(&mut self, total: Cents) -> Given {
        let reduction = match self.random.below(4) {
            0 => Reduction::Percent([5_000, 10_000, 12_500, 33_333, 100_000][self.random.of(5)]),
            1 => Reduction::Amount(self.random.below(900) as Cents),
            2 => Reduction::ToSum(self.random.below(total as u64 * 11 / 10 + 1) as Cents),
            _ => return None,
        };
        Some((reduction, REASONS[self.random.of(3)].to_owned()))
    }

    fn reduces(&mut self) {
        let sold = self.one_in(10);
        let Some(at) = self.any(if sold { Life::Sold } else { Life::Open }) else { return };
        let given = self.reduction(self.model.pieces[at].amounts().total);
        let reached = self.model.pieces[at].with(given.as_ref().map(|given| given.0)).is_some();
        let (id, noted) = (self.model.pieces[at].id, told(&given));
        let done = self.does(|ledger, now| ledger.reduce(id, noted, now));
        if self.agrees("reduce", reached && !sold, &done) {
            self.model.pieces[at].given = given;
        } else if !sold {
            assert!(matches!(done, Err(LedgerError::Money(MoneyError::AboveTotal { .. }))), "{done:?}");
        }
        self.compare_piece(at);
    }

    fn packages(&mut self) {
        let Some(at) = self.any(Life::Open) else { return };
        let package = [Some((2_400, 3)), Some((1_050, 2)), None][self.random.of(3)];
        let told = package.map(|(price, drops)| Package {
            name: "Party piece".into(),
            price: decimal(price),
            drops: drops as u32,
        });
        let id = self.model.pieces[at].id;
        let done = self.does(|ledger, now| ledger.set_package(id, told, now));
        self.agrees("package", true, &done);
        let ready = self.model.pieces[at].ready;
        self.model.pieces[at].package = package;
        self.model.pieces[at].changed();
        self.model.pieces[at].ready = ready;
        self.compare_piece(at);
    }

    fn plain_lines(&mut self) {
        let Some(at) = self.any(Life::Open) else { return };
        let (id, catalog) = (self.model.pieces[at].id, self.catalog().clone());
        if self.one_in(3) {
            let there = !self.model.pieces[at].plain.is_empty();
            let done = self.does(|ledger, now| ledger.remove_plain(id, 0, &catalog, now));
            if self.agrees("take a plain line off", there, &done) {
                self.model.pieces[at].plain.remove(0);
            }
        } else {
            let price = self.random.below(600) as Cents;
            let words = ["From the mixed tray", "Her own charm"][self.random.of(2)].to_owned();
            let line = PlainLine { words: words.clone(), price: decimal(price) };
            let done = self.does(|ledger, now| ledger.add_plain(id, &line, &catalog, now));
            self.agrees("plain line", true, &done);
            self.model.pieces[at].plain.push((words, price));
        }
        self.model.pieces[at].changed();
        self.compare_piece(at);
    }

    /// Everything is here, and the guest was told.
    pub fn checks(&mut self, at: usize) {
        let id = self.model.pieces[at].id;
        self.does(|ledger, now| {
            ledger.tick_all(id, now)?;
            let ticket = ledger.set_told(id, true, now)?;
            for code in ticket.unconfirmed() {
                ledger.confirm_hazard(id, code, true, now)?;
            }
            Ok::<_, LedgerError>(())
        })
        .expect("checked");
        self.model.pieces[at].ready = true;
    }

    fn unticks(&mut self) {
        let Some(at) = self.any(Life::Open) else { return };
        let id = self.model.pieces[at].id;
        self.does(|ledger, now| ledger.tick(id, Part::Base, false, false, now)).expect("unticked");
        self.model.pieces[at].ready = false;
        let tender = chatelaine::money::Tender::Card;
        let done = self.does(|ledger, now| ledger.ring_up(id, tender, now));
        self.agrees("ring up what is not checked", false, &done);
    }

    fn lets_go(&mut self) {
        let life = if self.one_in(6) { Life::Sold } else { Life::Open };
        let Some(at) = self.any(life) else { return };
        let id = self.model.pieces[at].id;
        let done = self.does(|ledger, now| ledger.let_go(id, now));
        if self.agrees("let go", life == Life::Open, &done) {
            self.model.let_go(at);
        }
    }

    fn hands_over(&mut self) {
        let Some(at) = self.any(Life::Sold) else { return };
        let id = self.model.pieces[at].id;
        // Handed over already, it stays so.
        let _ = self.does(|ledger, now| ledger.hand_over(id, now));
    }

    pub fn compare_piece(&self, at: usize) {
        let (piece, of) = (&self.model.pieces[at], self.model.pieces[at].amounts());
        let quote = self.ledger.ticket(piece.id).expect("a ticket").quote;
        let found = [quote.discount, quote.tax, quote.total].map(cents);
        assert_eq!(found, [of.off, of.tax, of.total], "{piece:?}");
    }
}
