//! Evenings of two sellers: thousands of random acts, each held against a small model of the till.

#[path = "evening/acts.rs"]
mod acts;
#[path = "evening/arithmetic.rs"]
mod arithmetic;
#[path = "evening/bill_acts.rs"]
mod bill_acts;
#[path = "evening/model.rs"]
mod model;
#[path = "../support/random.rs"]
mod random;
#[path = "evening/read.rs"]
mod read;
#[path = "evening/shows.rs"]
mod shows;

use std::{path::PathBuf, time::Instant};

use arithmetic::{Cents, Sums};
use chatelaine::{
    catalog::Catalog,
    craft::{Piece, Wearer},
    ledger::{CloseOut, Ledger},
    money::{Discount, TaxRule},
};
use jiff::{Timestamp, ToSpan};
use model::{Life, Model};
use random::Random;
use rust_decimal::Decimal;

use crate::{
    book::{catalog, now},
    counter::{adds_up, d},
};

const SELLERS: [&str; 2] = ["Ida", "Noor"];
const BASES: [&str; 2] = ["chain-brass", "chain-silver"];
const WAYS: [&str; 3] = ["cash", "card", "Voucher"];

/// What an evening is played with.
struct Table {
    seed: u64,
    acts: usize,
    cash_step: &'static str,
    /// Whether the tax is in what is marked, and the rates of the places in percent.
    included: bool,
    rates: [&'static str; 3],
    discounts: Vec<Discount>,
    in_a_file: bool,
}

struct Evening {
    table: Table,
    ledger: Ledger,
    file: Option<PathBuf>,
    model: Model,
    /// The catalogue of each show, from the first.
    catalogs: Vec<Catalog>,
    drops: Vec<String>,
    random: Random,
    at: Timestamp,
    /// The last entry of each act, and who acted.
    made: Vec<(i64, Option<&'static str>)>,
    /// Tickets that a tablet numbered, by show.
    sent: Vec<u16>,
    closed: Vec<CloseOut>,
    /// How many acts of each kind were done, and how many were refused.
    tally: std::collections::BTreeMap<&'static str, (usize, usize)>,
    ids: u128,
}

impl Evening {
    fn new(table: Table, folder: &tempfile::TempDir) -> Self {
        let mut first = (*catalog()).clone();
        first.table.prices.cash_step = d(table.cash_step);
        first.table.prices.discounts.clone_from(&table.discounts);
        if table.included {
            first.table.prices.tax = TaxRule::Included { percent: d("20") };
        }
        let sells = |id: &String| {
            let piece = |base: &str| Piece {
                base: base.into(),
                length: None,
                wearer: Wearer::From13,
                neck: None,
                drops: vec![id.clone()],
                looks: vec![],
            };
            BASES.iter().all(|base| {
                let verdict = first.cautions(&piece(base)).expect("cautions");
                first.quote(&piece(base)).is_ok() && !verdict.cautions.iter().any(|one| one.forbidden)
            })
        };
        let mut drops: Vec<String> = first.drops.iter().map(|kind| kind.id.clone()).filter(sells).collect();
        drops.truncate(9);
        assert_eq!(drops.len(), 9, "enough to choose from");
        first.bases.iter_mut().for_each(|base| base.stock = 700);
        first.drops.iter_mut().for_each(|kind| kind.stock = 150);
        let file = table.in_a_file.then(|| folder.path().join("ledger.sqlite"));
        let mut ledger = match &file {
            Some(file) => Ledger::open(file, now()),
            None => Ledger::in_memory(now()),
        }
        .expect("a ledger");
        ledger.take_catalog(&first, "first", now()).expect("counts");
        let stock = first.bases.iter().map(|base| (base.id.clone(), i64::from(base.stock)));
        let on_hand = stock.chain(first.drops.iter().map(|kind| (kind.id.clone(), i64::from(kind.stock)))).collect();
        let model = Model {
            show: 1,
            step: cents(first.table.prices.cash_step),
            on_hand,
            pieces: vec![],
            bills: vec![],
            shows: [(1, Sums::default())].into(),
        };
        let random = Random(table.seed);
        let made = vec![(ledger.change().expect("a number"), None)];
        let mut evening = Self {
            table,
            ledger,
            file,
            model,
            catalogs: vec![],
            drops,
            random,
            at: now(),
            made,
            sent: vec![],
            closed: vec![],
            tally: Default::default(),
            ids: 0,
        };
        evening.begin_show(first);
        evening
    }

    fn catalog(&self) -> &Catalog {
        self.catalogs.last().expect("a show runs")
    }

    fn id(&mut self) -> uuid::Uuid {
        self.ids += 1;
        uuid::Uuid::from_u128(self.ids)
    }

    /// One of two sellers does something: every entry of it has their name.
    fn does<T>(&mut self, work: impl FnOnce(&mut Ledger, Timestamp) -> T) -> T {
        let who = SELLERS[self.random.of(2)];
        let at = self.at;
        let done = self.ledger.acting(Some(who.to_owned()), |ledger| work(ledger, at));
        self.made.push((self.ledger.change().expect("a number"), Some(who)));
        done
    }

    /// Who made entry `seq`.
    fn who(&self, seq: i64) -> Option<&'static str> {
        self.made[self.made.partition_point(|(last, _)| *last < seq)].1
    }

    /// Whether the ledger did what the model allows, and refused what it does not.
    fn agrees<T, E: std::fmt::Debug>(&mut self, act: &'static str, allowed: bool, done: &Result<T, E>) -> bool {
        let words = done.as_ref().err().map(|error| format!("{error:?}"));
        assert_eq!(words.is_none(), allowed, "{act}: {words:?}");
        let tally = self.tally.entry(act).or_default();
        *if allowed { &mut tally.0 } else { &mut tally.1 } += 1;
        allowed
    }

    /// One in so many times.
    fn one_in(&mut self, n: u64) -> bool {
        self.random.below(n) == 0
    }

    fn way(&mut self) -> &'static str {
        WAYS[self.random.of(3)]
    }

    /// A piece in this state; mostly one of the newest.
    fn any(&mut self, life: Life) -> Option<usize> {
        let all: Vec<usize> =
            (0..self.model.pieces.len()).rev().filter(|at| self.model.pieces[*at].life == life).collect();
        let among = if self.one_in(5) { all.len() } else { all.len().min(20) };
        (among > 0).then(|| all[self.random.of(among)])
    }

    /// The sums of the running show, and what the piece or bill just touched comes to.
    fn compare(&self) {
        let so_far = self.ledger.so_far().expect("sums");
        adds_up(&so_far);
        assert_eq!(read::sums(&so_far), self.model.shows[&self.model.show].clone().plain());
    }

    fn play(&mut self) {
        for n in 0..self.table.acts {
            self.at = now() + (n as i64 * 20).seconds();
            self.act();
            self.compare();
            if n % 40 == 0 {
                self.compare_stock();
            }
        }
        self.close();
        self.look_back();
    }
}

fn cents(amount: Decimal) -> Cents {
    let cents = (amount * Decimal::ONE_HUNDRED).normalize();
    assert_eq!(cents.scale(), 0, "{amount} is not whole cents");
    cents.try_into().expect("an amount")
}

fn decimal(cents: Cents) -> Decimal {
    Decimal::new(cents, 2)
}

fn evening(table: Table) {
    let folder = tempfile::tempdir().expect("a folder");
    let began = Instant::now();
    let seed = table.seed;
    let mut evening = Evening::new(table, &folder);
    evening.play();
    println!("seed {seed}: {} shows in {:.1?}", evening.closed.len(), began.elapsed());
    for (act, (done, refused)) in &evening.tally {
        println!("  {act}: {done} done, {refused} refused");
    }
}

#[test]
fn ten_thousand_acts_agree_with_the_model_to_the_cent() {
    let (included, discounts, in_a_file) = (false, vec![], false);
    let rates = ["6.25", "8.875", "4.5"];
    evening(Table { seed: 14, acts: 10_000, cash_step: "0.01", included, rates, discounts, in_a_file });
}

#[test]
fn so_they_do_with_cash_to_five_cents_and_a_discount_of_the_table() {
    let (included, in_a_file) = (false, false);
    let discounts = vec![Discount::EveryNth { n: 3 }];
    let rates = ["13", "5", "14.975"];
    evening(Table { seed: 2026, acts: 5_000, cash_step: "0.05", included, rates, discounts, in_a_file });
}

#[test]
fn so_they_do_with_tax_in_the_prices() {
    let (discounts, in_a_file) = (vec![], false);
    let rates = ["20", "7", "19"];
    evening(Table { seed: 77, acts: 5_000, cash_step: "0.01", included: true, rates, discounts, in_a_file });
}

#[test]
fn so_they_do_in_a_file_that_is_closed_and_opened_again() {
    let (included, discounts) = (false, vec![]);
    let rates = ["6.25", "8.875", "4.5"];
    evening(Table { seed: 5, acts: 800, cash_step: "0.05", included, rates, discounts, in_a_file: true });
}
