//! A recall against a plain account: what was done is written down as it is done, and looked through one by one.

use std::collections::{BTreeMap, BTreeSet};

use chatelaine::{
    bench::{MADE, Made, recall},
    catalog::{Catalog, Workshop, read_workshop},
    ledger::{Ledger, TakeBack, written},
    money::Tender,
    ticket::SentTicket,
};
use jiff::Timestamp;
use uuid::Uuid;

use crate::{
    book::{check_all, sent},
    random::Random,
    support::demo_catalog,
};

/// The key blanks of the two lots, the first of which is looked for. Both came long before.
const LOTS: [&str; 2] = ["K-26-1", "K-26-2"];

/// One compartment as somebody who watches it knows it.
#[derive(Default, Clone)]
struct Watched {
    there: u32,
    suspect: bool,
}

/// What somebody knows who watches every compartment of `used`.
struct Watcher {
    used: BTreeSet<String>,
    compartments: BTreeMap<String, Watched>,
    /// Numbers of sold pieces, with what of each may be of the lot.
    sold: Vec<(String, BTreeSet<String>)>,
}

impl Watcher {
    fn new(catalog: &Catalog, workshop: &Workshop, ledger: &Ledger) -> Self {
        let ids = catalog.drops.iter().map(|kind| kind.id.clone());
        let needs = |id: &String| {
            let recipe = workshop.recipe(catalog, id);
            recipe.is_some_and(|recipe| recipe.needs.iter().any(|need| need.part == "key-blank"))
        };
        let used: BTreeSet<String> = ids.filter(needs).collect();
        let counts = ledger.counts().expect("counts");
        // What lies there from the beginning came nobody knows when.
        let watched = |id: &String| (id.clone(), Watched { there: counts[id].on_hand, suspect: true });
        Self { compartments: used.iter().map(watched).collect(), used, sold: vec![] }
    }

    fn comes(&mut self, id: &str, count: u32, suspect: bool) {
        if let Some(one) = self.compartments.get_mut(id) {
            one.there += count;
            one.suspect |= suspect;
        }
    }

    fn is_emptied(&mut self, id: &str) {
        if let Some(one) = self.compartments.get_mut(id) {
            *one = Watched::default();
        }
    }

    fn sells(&mut self, number: &str, drops: &[&str]) {
        let by = drops.iter().filter(|id| self.compartments.get(**id).is_some_and(|one| one.suspect));
        let by: BTreeSet<String> = by.map(|id| (*id).to_owned()).collect();
        for id in drops {
            if let Some(one) = self.compartments.get_mut(*id) {
                one.there -= 1;
                one.suspect &= one.there > 0;
            }
        }
        self.sold.push((number.to_owned(), by));
    }
}

/// Pieces are sold, some are taken back, compartments are emptied and filled with what is known to be of one lot or of nobody
/// knows which.
fn an_evening(seed: u64, ledger: &mut Ledger, catalog: &Catalog, watcher: &mut Watcher) {
    let mut random = Random(seed);
    let kinds = ["key-heart", "charm-moon", "bead-jade"];
    let now = Timestamp::now;
    for step in 0..120_u16 {
        let kind = kinds[random.of(kinds.len())];
        match random.below(6) {
            0 => {
                ledger.recount(kind, 0, now()).expect("emptied");
                watcher.is_emptied(kind);
            }
            1 => {
                ledger.restock(kind, 2, Uuid::now_v7(), now()).expect("put in");
                watcher.comes(kind, 2, true);
            }
            2 => {
                // Only these are made of blanks.
                let (kind, lot) = (kinds[0], LOTS[random.of(2)]);
                let lots = BTreeMap::from([("key-blank".to_owned(), BTreeSet::from([lot.to_owned()]))]);
                let made = Made { of: kind.into(), count: 3, lots, checks: BTreeSet::new(), note: String::new() };
                let form = Uuid::now_v7();
                let page = [(MADE, form.to_string(), written(&made).expect("written"))];
                let pages: Vec<_> = page.iter().map(|(kind, id, page)| (*kind, id.as_str(), page.clone())).collect();
                ledger.keep_pages_and_put_in(form, &pages, Some((kind, 3)), now()).expect("put in");
                watcher.comes(kind, 3, lot == LOTS[0]);
            }
            _ => {
                let counts = ledger.counts().expect("counts");
                let drops: Vec<&str> =
                    kinds.into_iter().filter(|id| random.below(3) > 0 && counts[*id].free() > 0).collect();
                ledger.restock("chain-brass", 1, Uuid::now_v7(), now()).expect("a chain");
                let ticket = SentTicket { show: ledger.show().expect("a show").id, ..sent(catalog, step, &drops) };
                ledger.receive(&ticket, false, catalog, now()).expect("entered");
                check_all(ledger, ticket.id);
                ledger.ring_up(ticket.id, Tender::Card, now()).expect("sold");
                watcher.sells(&ticket.number.to_string(), &drops);
                if random.below(8) == 0 {
                    let bill = ledger.ticket(ticket.id).expect("the ticket").bill.expect("its bill");
                    let what = chatelaine::ledger::Corrected::Ticket(ticket.id);
                    let back = TakeBack { what, parts_home: true, reason: "broken".into() };
                    ledger.take_back(bill, &back, Some(&Tender::Card), now()).expect("taken back");
                    // It lies among the others again, and nobody noted of which lot it is.
                    drops.iter().for_each(|id| watcher.comes(id, 1, true));
                }
            }
        }
    }
}

#[test]
fn a_recall_is_what_a_plain_account_says() {
    let folder = demo_catalog();
    for seed in 1..=4 {
        let catalog = crate::book::catalog();
        let mut workshop = read_workshop(&folder, &catalog).expect("no mistakes").expect("a workshop");
        let place = workshop.lots.iter().position(|lot| lot.part == "key-blank").expect("a lot of blanks");
        let mut second = workshop.lots[place].clone();
        workshop.lots[place].lot = LOTS[0].into();
        second.lot = LOTS[1].into();
        workshop.lots.push(second);
        let mut ledger = Ledger::in_memory(Timestamp::now()).expect("a ledger");
        ledger.take_catalog(&catalog, "first", Timestamp::now()).expect("counts");
        let mut watcher = Watcher::new(&catalog, &workshop, &ledger);
        an_evening(seed, &mut ledger, &catalog, &mut watcher);
        let found = recall(&catalog, &workshop, &ledger, LOTS[0]).expect("read").expect("the lot");
        assert_eq!(found.used_in, watcher.used, "seed {seed}");
        let named: Vec<(String, BTreeSet<String>)> =
            found.sold.iter().map(|one| (one.ticket.number.clone(), one.by.clone())).collect();
        let plain: Vec<_> = watcher.sold.iter().filter(|(_, by)| !by.is_empty()).cloned().collect();
        assert_eq!(named, plain, "seed {seed}");
        assert!(!plain.is_empty() && plain.len() < watcher.sold.len(), "seed {seed}: some are named and some are not");
        let there = watcher.compartments.iter().filter(|(_, one)| one.suspect && one.there > 0);
        let there: BTreeMap<String, u32> = there.map(|(id, one)| (id.clone(), one.there)).collect();
        assert_eq!(found.there, there, "seed {seed}");
        assert_eq!(found.by_show().values().sum::<usize>(), plain.len());
        assert_eq!(found.by_state().iter().map(|(_, n)| n).sum::<usize>(), plain.len());
    }
}
