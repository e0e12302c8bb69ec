//! A seeded rush on the book: guests, late deliveries, a seller, sweeps, clocks that are set, shows that close, restarts.
//! After every step the book has to have done what a small model of it says. `CHATELAINE_RUSH=minutes` goes on for longer,
//! each time from another seed.

use std::{
    path::PathBuf,
    sync::Arc,
    time::{Duration, Instant},
};

use chatelaine::{
    catalog::Catalog,
    ledger::{Ledger, LedgerError, Part},
    money::Tender,
    ticket::{Receipt, SentTicket, TicketNumber},
};
use jiff::SignedDuration;
use uuid::Uuid;

use crate::{
    book::{catalog, now, sent},
    counts::Counting,
    model::{Act, Model, Slot},
    random::Random,
};

pub const DROPS: [&str; 5] = ["key-heart", "key-round", "charm-moon", "bead-jade", "locket-round"];
pub const BASE: &str = "chain-brass";

pub struct Rush {
    pub ledger: Ledger,
    file: Option<PathBuf>,
    pub catalog: Arc<Catalog>,
    pub model: Model,
    pub random: Random,
    sent: Vec<SentTicket>,
    /// The next number of each of three tablets in the show it knows, which may be over already.
    tablets: [(i64, u16); 3],
    closed: Vec<chatelaine::ledger::CloseOut>,
}

impl Rush {
    fn new(seed: u64, file: Option<PathBuf>) -> Self {
        // A region without anything to say, so that ringing up depends on the piece alone.
        let mut quiet = catalog().as_ref().clone();
        quiet.rules.rules.iter_mut().for_each(|rule| rule.says.clear());
        let catalog = Arc::new(quiet);
        let mut ledger = match &file {
            Some(file) => Ledger::open(file, now()).expect("a ledger"),
            None => Ledger::in_memory(now()).expect("a ledger"),
        };
        ledger.take_catalog(&catalog, "first", now()).expect("taken over");
        // Few of each, so that guests want the same ones.
        for id in DROPS.into_iter().chain([BASE]) {
            ledger.recount(id, 4, now()).expect("recounted");
        }
        let on_hand = ledger.counts().expect("counts").into_iter().map(|(id, count)| (id, count.on_hand)).collect();
        let counting = Counting::new(ledger.change().expect("a number"));
        let mut model = Model { now: now(), show: 1, on_hand, tickets: vec![], counting };
        model.look();
        let tablets = [(1, 0); 3];
        Self { ledger, file, catalog, model, random: Random(seed), sent: vec![], tablets, closed: vec![] }
    }

    /// A step; says what it was.
    fn step(&mut self) -> String {
        // Time goes on, by up to two minutes.
        self.model.now += SignedDuration::from_secs(self.random.below(120) as i64);
        let done = self.any_step();
        self.model.watch();
        done
    }

    fn any_step(&mut self) -> String {
        match self.random.below(100) {
            0..20 => self.send(),
            20..25 => self.deliver_again(),
            25..80 => self.act(),
            80..86 => self.counting(),
            86..91 => {
                self.model.sweep();
                self.ledger.end_holds(self.model.now).expect("a sweep");
                "a sweep".to_owned()
            }
            91..93 => self.set_clock(),
            93..96 => self.recount(),
            96..98 => self.restart(),
            _ if self.random.below(6) == 0 => self.close(),
            _ => {
                let tablet = self.random.of(3);
                self.tablets[tablet] = (self.model.show, self.first_free(tablet, self.model.show));
                format!("tablet {tablet} hears of show {}", self.model.show)
            }
        }
    }

    fn first_free(&self, tablet: usize, show: i64) -> u16 {
        let mine = self.sent.iter().filter(|one| one.show == show && usize::from(one.number.kiosk()) == tablet + 1);
        mine.map(|one| one.number.sequence() + 1).max().unwrap_or(0)
    }

    fn send(&mut self) -> String {
        let tablet = self.random.of(3);
        let (show, sequence) = self.tablets[tablet];
        if sequence >= TicketNumber::PER_KIOSK {
            return "no numbers left".to_owned();
        }
        self.tablets[tablet].1 += 1;
        let drops: Vec<&str> = (0..self.random.below(4)).map(|_| DROPS[self.random.of(DROPS.len())]).collect();
        let mut ticket = sent(&self.catalog, sequence, &drops);
        ticket.show = show;
        ticket.number = TicketNumber::new(tablet as u8 + 1, sequence).expect("a number");
        assert!(ticket.verdict.cautions.is_empty(), "{:?}", ticket.verdict);
        if self.random.below(12) == 0 {
            return self.forged(ticket);
        }
        let waits = self.random.below(2) == 0;
        let parts: Vec<_> = std::iter::once((ticket.quote.base.id.clone(), ticket.quote.base.price))
            .chain(ticket.quote.drops.iter().map(|drop| (drop.id.clone(), drop.price)))
            .collect();
        let entered = self.model.receive(ticket.id, show, &parts, waits);
        let receipt = self.ledger.receive(&ticket, waits, &self.catalog, self.model.now).expect("an answer");
        assert_eq!(matches!(receipt, Receipt::Stored { .. }), entered, "{receipt:?}");
        if entered {
            self.sent.push(ticket);
        }
        format!("tablet {tablet} sends {drops:?}, waiting: {waits}")
    }

    /// A sum that can be none is refused and leaves nothing.
    fn forged(&mut self, mut ticket: SentTicket) -> String {
        let before = self.ledger.change().expect("a number");
        match self.random.below(4) {
            0 => ticket.quote.total = rust_decimal::Decimal::MAX,
            1 => ticket.quote.total = rust_decimal::Decimal::new(1, 2),
            2 => ticket.quote.total = -ticket.quote.total,
            _ => ticket.quote.base.price = rust_decimal::Decimal::ZERO,
        }
        let receipt = self.ledger.receive(&ticket, false, &self.catalog, self.model.now).expect("an answer");
        assert!(matches!(receipt, Receipt::Refused { .. }), "{receipt:?}");
        assert_eq!(self.ledger.change().expect("a number"), before);
        "a forged sum".to_owned()
    }

    fn deliver_again(&mut self) -> String {
        if self.sent.is_empty() {
            return "nothing to deliver again".to_owned();
        }
        let ticket = self.sent[self.random.of(self.sent.len())].clone();
        let receipt = self.ledger.receive(&ticket, self.random.below(2) == 0, &self.catalog, self.model.now);
        assert!(matches!(receipt, Ok(Receipt::Stored { .. })), "{receipt:?}");
        let mut other = ticket.clone();
        other.id = Uuid::now_v7();
        let receipt = self.ledger.receive(&other, false, &self.catalog, self.model.now);
        assert!(matches!(receipt, Ok(Receipt::Refused { .. })), "its number is taken: {receipt:?}");
        format!("{} once more", ticket.number)
    }

    fn act(&mut self) -> String {
        if self.sent.is_empty() {
            return "nothing to work on".to_owned();
        }
        // Mostly on one of the newest, sometimes on an old one.
        let span = if self.random.below(10) == 0 { self.sent.len() } else { self.sent.len().min(12) };
        let n = self.sent.len() - 1 - self.random.of(span);
        let at = self.random.of(self.model.tickets[n].slots.len() + 1);
        let act = match self.random.below(20) {
            0 => Act::Call,
            1..12 => Act::Tick { at, on: self.random.below(8) != 0, found: self.random.below(6) == 0 },
            12 => {
                let kind = self.catalog.drop_kind(DROPS[self.random.of(DROPS.len())]).expect("a drop");
                Act::Swap { at, to: kind.id.clone(), price: kind.price }
            }
            13 => Act::Remove { at },
            14..18 => Act::RingUp(if self.random.below(2) == 0 { Tender::Cash } else { Tender::Card }),
            18 => Act::HandOver,
            _ => Act::LetGo,
        };
        let before = self.ledger.change().expect("a number");
        if self.model.may(n, &act) {
            self.model.about_to_swap(&act);
        }
        let wanted = self.model.act(n, &act);
        let (id, time, catalog) = (self.sent[n].id, self.model.now, Arc::clone(&self.catalog));
        let ledger = &mut self.ledger;
        let line = |at: usize| at.checked_sub(1).ok_or(LedgerError::NoLine);
        let done = match &act {
            Act::Call => ledger.call(id, time),
            Act::Tick { at, on, found } => {
                let part = if *at == 0 { Part::Base } else { Part::Line(at - 1) };
                ledger.tick(id, part, *on, *found, time)
            }
            Act::Swap { at, to, .. } => line(*at).and_then(|at| ledger.swap(id, at, to, &catalog, time)),
            Act::Remove { at } => line(*at).and_then(|at| ledger.remove(id, at, &catalog, time)),
            Act::RingUp(tender) => ledger.ring_up(id, tender.clone(), time),
            Act::HandOver => ledger.hand_over(id, time),
            Act::LetGo => ledger.let_go(id, time),
        };
        assert_eq!(done.is_ok(), wanted, "{act:?}: {done:?}");
        assert_eq!(ledger.change().expect("a number") > before, wanted, "what is refused leaves no entry");
        self.look_at(n);
        format!("{act:?} on {}", self.sent[n].number)
    }

    fn set_clock(&mut self) -> String {
        let by = SignedDuration::from_mins(self.random.below(4000) as i64 - 2000);
        if self.random.below(2) == 0 {
            self.model.set_clock(by);
            self.ledger.clock_was_set(by, self.model.now).expect("moved");
            return format!("the clock is set by {by}");
        }
        // Nobody noticed: the desk was not running.
        self.model.now += by;
        format!("the clock is {by} off")
    }

    fn recount(&mut self) -> String {
        let id = DROPS.into_iter().chain([BASE]).nth(self.random.of(DROPS.len() + 1)).expect("a part");
        let free = self.random.below(6) as u32;
        self.ledger.recount(id, free, self.model.now).expect("recounted");
        let on_hand = self.model.held(id) + free;
        self.model.on_hand.insert(id.to_owned(), on_hand);
        format!("{free} of {id} lie there")
    }

    fn restart(&mut self) -> String {
        if let Some(file) = &self.file {
            self.ledger = Ledger::in_memory(now()).expect("a ledger");
            self.ledger = Ledger::open(file, self.model.now).expect("the ledger again");
            self.ledger.take_catalog(&self.catalog, "again", self.model.now).expect("taken over");
        }
        "a restart".to_owned()
    }

    fn close(&mut self) -> String {
        let sums = self.model.close();
        let closed = self.ledger.close_show(self.catalog.table.prices.currency, self.model.now).expect("closed");
        assert_eq!(
            (closed.sold, closed.let_go, closed.cash, closed.card),
            (sums.sold, sums.let_go, sums.cash, sums.card)
        );
        assert_eq!((closed.late.sold, closed.late.let_go), (sums.late_sold, sums.late_let_go));
        self.closed.push(closed);
        format!("show {} is closed", self.model.show - 1)
    }

    /// One ticket is as the model has it.
    fn look_at(&self, n: usize) {
        let wanted = &self.model.tickets[n];
        let found = self.ledger.ticket(wanted.id).expect("a ticket");
        assert_eq!((found.state, found.settled, &found.tender), (wanted.state, wanted.settled, &wanted.paid));
        let base = Slot {
            id: found.piece.base.clone(),
            price: found.quote.base.price,
            held: found.base_held,
            ticked: found.base_ticked,
            removed: false,
        };
        let lines = found.lines.iter().map(|line| Slot {
            id: line.id.clone(),
            price: line.price,
            held: line.held,
            ticked: line.ticked,
            removed: line.removed,
        });
        let slots: Vec<Slot> = std::iter::once(base).chain(lines).collect();
        assert_eq!(slots, wanted.slots, "{}", found.number);
        assert_eq!(found.quote.total, wanted.total(), "{}", found.number);
        assert_eq!(
            found.charged,
            wanted.paid.as_ref().map(|_| wanted.total()),
            "the sum on the ticket is the sum charged"
        );
    }

    /// The whole book is as the model has it.
    fn look_at_all(&self) {
        (0..self.model.tickets.len()).for_each(|n| self.look_at(n));
        for (id, count) in self.ledger.counts().expect("counts") {
            assert_eq!((count.on_hand, count.held), (self.model.on_hand[&id], self.model.held(&id)), "{id}");
        }
        self.look_at_counts();
        let (found, wanted) = (self.ledger.so_far().expect("sums"), self.model.sums(self.model.show));
        assert_eq!(
            (found.sold, found.let_go, found.cash, found.card),
            (wanted.sold, wanted.let_go, wanted.cash, wanted.card)
        );
        for sums in &self.closed {
            assert_eq!(&self.ledger.closed_show(sums.show).expect("read").expect("a close-out").sums, sums);
        }
    }
}

fn run(seed: u64, steps: usize, file: Option<PathBuf>) {
    let mut rush = Rush::new(seed, file);
    for step in 0..steps {
        let done = rush.step();
        if step % 250 == 249 {
            println!("{seed} {step}: {done}");
            rush.look_at_all();
        }
        // So many tickets make a long show; then another table begins.
        if rush.sent.len() >= 600 {
            rush.look_at_all();
            let file = rush.file.take().map(|file| file.with_extension(format!("{step}.sqlite")));
            rush = Rush::new(seed.wrapping_add(step as u64), file);
        }
    }
    rush.look_at_all();
}

#[test]
fn the_book_does_what_its_model_says() {
    run(20_261_126, 20_000, None);
    let began = Instant::now();
    let minutes = std::env::var("CHATELAINE_RUSH").ok().and_then(|text| text.parse::<f64>().ok()).unwrap_or(0.0);
    for seed in 1.. {
        if began.elapsed() >= Duration::from_secs_f64(minutes * 60.0) {
            return;
        }
        run(seed, 100_000, None);
        println!("seed {seed}: 100000 steps");
    }
}

#[test]
fn the_book_on_disk_does_so_across_restarts() {
    let folder = tempfile::tempdir().expect("a folder");
    run(7, 1_500, Some(folder.path().join("ledger.sqlite")));
}
