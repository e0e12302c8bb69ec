//! Counting by hand in the model and in the rush: pages that were shown a while ago, refills, reasons, strays, and what is sent
//! twice.

use std::collections::BTreeMap;

use chatelaine::ledger::{CountLine, Reason};
use uuid::Uuid;

use crate::{
    model::{Act, Model},
    rush::{BASE, DROPS, Rush},
};

/// The page on which somebody counts, and what was found missing so far.
#[derive(Debug)]
pub struct Counting {
    /// The entry at which the page was shown.
    pub seen: i64,
    /// The fewest that were free of each part since then, and the most that were there.
    spans: BTreeMap<String, (u32, u32)>,
    /// How many of each part that was counted are missing without a reason.
    pub missing: BTreeMap<String, i64>,
}

impl Counting {
    pub fn new(seen: i64) -> Self {
        Self { seen, spans: BTreeMap::new(), missing: BTreeMap::new() }
    }
}

impl Model {
    /// The page is shown as the book is now.
    pub fn look(&mut self) {
        self.counting.spans.clear();
        self.watch();
    }

    /// Something may have moved since the page was shown.
    pub fn watch(&mut self) {
        let ids: Vec<String> = self.on_hand.keys().cloned().collect();
        for id in ids {
            let (free, there) = (self.free(&id), self.on_hand[&id]);
            let span = self.counting.spans.entry(id).or_insert((free, there));
            *span = (span.0.min(free), span.1.max(there));
        }
    }

    /// For a moment one more of `to` is held than before, also where it takes the place of another one of its kind.
    pub fn about_to_swap(&mut self, act: &Act) {
        if let Act::Swap { to, .. } = act {
            let free = self.free(to).saturating_sub(1);
            let span = self.counting.spans.get_mut(to).expect("a span");
            span.0 = span.0.min(free);
        }
    }

    fn moved(&mut self, id: &str, by: i64) {
        let there = i64::from(self.on_hand[id]) + by;
        self.on_hand.insert(id.to_owned(), u32::try_from(there).expect("never below nothing"));
    }

    /// How much what was counted differs from all that there can have been since the page was shown.
    fn count(&mut self, line: &CountLine) -> i64 {
        let (low, high) = self.counting.spans[&line.part];
        let difference = match line.counted {
            Some(counted) if counted < low => i64::from(counted) - i64::from(low),
            Some(counted) if counted > high => i64::from(counted) - i64::from(high),
            _ => 0,
        };
        self.moved(&line.part, difference + i64::from(line.refilled));
        if line.counted.is_some() {
            *self.counting.missing.entry(line.part.clone()).or_default() -= difference;
        }
        difference
    }

    /// Whether so many differ without a reason; if so, they have one now.
    fn explain(&mut self, id: &str, adds: bool, many: i64) -> bool {
        let missing = self.counting.missing.get(id).copied().unwrap_or(0);
        let open = if adds { -missing } else { missing };
        let may = (1..=open).contains(&many);
        if may {
            self.counting.missing.insert(id.to_owned(), if adds { missing + many } else { missing - many });
        }
        may
    }

    /// Whether so many can come or go.
    fn change(&mut self, id: &str, adds: bool, many: u32) -> bool {
        let may = many > 0 && (adds || self.free(id) >= many);
        if may {
            self.moved(id, if adds { many.into() } else { -i64::from(many) });
        }
        may
    }

    /// Of so many strays those that had been missing are there again.
    fn stray(&mut self, id: &str, many: u32) -> u32 {
        let missing = self.counting.missing.get(id).copied().unwrap_or(0).max(0);
        let found = i64::from(many).min(missing);
        if found > 0 {
            self.moved(id, found);
            self.counting.missing.insert(id.to_owned(), missing - found);
        }
        u32::try_from(found).expect("some")
    }
}

impl Rush {
    /// Something of counting; every other form is sent twice.
    pub fn counting(&mut self) -> String {
        let id = DROPS.into_iter().chain([BASE]).nth(self.random.of(DROPS.len() + 1)).expect("a part");
        let (form, times, many) = (Uuid::now_v7(), 1 + self.random.below(2), self.random.below(4) as u32);
        let reason = Reason::ALL[self.random.of(Reason::ALL.len())];
        match self.random.below(8) {
            0 | 1 => {
                self.counting_seen();
                "the counting page is shown anew".to_owned()
            }
            2..5 => self.count(form, times),
            5 => {
                let may = self.model.explain(id, reason.adds(), many.into());
                for _ in 0..times {
                    let done = self.ledger.explain_count(form, id, reason, many, self.model.now);
                    assert_eq!(done.is_ok(), may, "{id} {reason:?} {many}: {done:?}");
                }
                format!("{many} of {id} differ: {reason:?}")
            }
            6 => {
                let may = self.model.change(id, reason.adds(), many);
                for _ in 0..times {
                    let done = self.ledger.change_stock(form, id, reason, many, self.model.now);
                    assert_eq!(done.is_ok(), may, "{id} {reason:?} {many}: {done:?}");
                }
                format!("{many} of {id}: {reason:?}")
            }
            _ => {
                let (many, before) = (many.max(1), self.model.counting.missing.get(id).copied());
                let found = self.model.stray(id, many);
                for _ in 0..times {
                    let home = self.ledger.stray_home(form, id, many, self.model.now).expect("home");
                    assert_eq!(home, found, "{id}: {many} strays, {before:?} missing");
                }
                format!("{many} strays of {id}")
            }
        }
    }

    fn counting_seen(&mut self) {
        self.model.counting.seen = self.ledger.change().expect("a number");
        self.model.look();
    }

    /// A page with up to three parts, of which some are only refilled.
    fn count(&mut self, form: Uuid, times: u64) -> String {
        let first = self.random.of(DROPS.len());
        let lines: Vec<CountLine> = (0..1 + self.random.of(3))
            .map(|n| CountLine {
                part: DROPS[(first + n) % DROPS.len()].to_owned(),
                counted: (self.random.below(5) > 0).then(|| self.random.below(8) as u32),
                refilled: self.random.below(3) as u32,
            })
            .collect();
        let wanted: Vec<i64> = lines.iter().map(|line| self.model.count(line)).collect();
        for _ in 0..times {
            let seen = self.model.counting.seen;
            let done = self.ledger.count_parts(form, seen, &lines, self.model.now).expect("counted");
            let found: Vec<i64> = done.iter().map(|one| one.difference).collect();
            assert_eq!(found, wanted, "{lines:?}: {done:?}");
        }
        format!("{lines:?} on a page of entry {}", self.model.counting.seen)
    }

    /// What is missing is what the model misses.
    pub fn look_at_counts(&self) {
        let last = self.ledger.last_counts().expect("counts");
        let found: BTreeMap<String, i64> = last.into_iter().map(|(id, last)| (id, last.missing)).collect();
        assert_eq!(found, self.model.counting.missing);
    }
}
