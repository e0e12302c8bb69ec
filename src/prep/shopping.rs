//! What a batch needs beyond the drawers, in whole lots; what stops when a part is gone.

use std::collections::BTreeMap;

use rust_decimal::{Decimal, prelude::ToPrimitive};
use serde::{Deserialize, Serialize};

use super::costs::Recipe;

/// A lot that can be bought.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Offer {
    /// How many pieces, or millimetres, are in it.
    pub amount: Decimal,
    /// What it costs.
    pub price: Decimal,
}

/// What to buy of a part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Purchase {
    /// How many of each offer.
    pub lots: Vec<u32>,
    /// What all of them hold.
    pub amount: Decimal,
    /// What all of them cost.
    pub price: Decimal,
}

/// Ways of buying that are looked at.
const MOST_STEPS: u32 = 100_000;
/// More lots of one kind than anybody orders.
const MOST_LOTS: u32 = 10_000;

/// The whole lots that hold at least what is `short` for the least money, and of these the ones that hold least; none where
/// nothing is offered or it would be more lots than anybody orders.
pub fn whole_lots(short: Decimal, offers: &[Offer]) -> Option<Purchase> {
    let mut by_rate: Vec<usize> = (0..offers.len()).filter(|at| offers[*at].amount > Decimal::ZERO).collect();
    by_rate.sort_by_key(|at| offers[*at].price.checked_div(offers[*at].amount));
    let nothing = vec![0; offers.len()];
    if short <= Decimal::ZERO {
        return Some(Purchase { lots: nothing, amount: Decimal::ZERO, price: Decimal::ZERO });
    }
    let mut buying = Buying { offers, by_rate, best: None, steps: 0 };
    buying.from(0, short, nothing, Decimal::ZERO, Decimal::ZERO);
    buying.best
}

struct Buying<'a> {
    offers: &'a [Offer],
    /// The cheapest by the piece first.
    by_rate: Vec<usize>,
    best: Option<Purchase>,
    steps: u32,
}

impl Buying<'_> {
    fn from(&mut self, at: usize, short: Decimal, lots: Vec<u32>, amount: Decimal, price: Decimal) {
        self.steps += 1;
        let better = |best: &Purchase| (price, amount) < (best.price, best.amount);
        if short <= Decimal::ZERO {
            if self.best.as_ref().is_none_or(better) {
                self.best = Some(Purchase { lots, amount, price });
            }
            return;
        }
        let Some(&offer) = self.by_rate.get(at) else { return };
        let one = self.offers[offer];
        // What is still short costs at least this rate.
        let least = short.checked_mul(one.price).and_then(|sum| sum.checked_div(one.amount));
        let least = least.and_then(|rest| price.checked_add(rest)).unwrap_or(Decimal::MAX);
        if self.steps > MOST_STEPS || self.best.as_ref().is_some_and(|best| least > best.price) {
            return;
        }
        let most = short.checked_div(one.amount).and_then(|lots| lots.ceil().to_u32());
        let Some(most) = most.filter(|most| *most <= MOST_LOTS) else { return };
        for n in (0..=most).rev() {
            let count = Decimal::from(n);
            let mut with = lots.clone();
            with[offer] = n;
            let (held, paid) = (one.amount.saturating_mul(count), one.price.saturating_mul(count));
            self.from(at + 1, short - held, with, amount.saturating_add(held), price.saturating_add(paid));
        }
    }
}

/// What a batch takes of each part, by id.
pub fn needs_of<'a>(batch: impl IntoIterator<Item = (&'a Recipe, u32)>) -> BTreeMap<String, Decimal> {
    let mut needs = BTreeMap::<String, Decimal>::new();
    for (recipe, count) in batch {
        for need in &recipe.needs {
            let sum = needs.entry(need.part.clone()).or_default();
            *sum = sum.saturating_add(need.amount.saturating_mul(Decimal::from(count)));
        }
    }
    needs
}

/// How many can be made of what is in the drawers.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Makeable {
    /// How many.
    pub count: u32,
    /// The part that is gone first.
    pub until: String,
}

/// How many of a recipe can be made from the drawers alone; none where it takes no parts.
pub fn can_be_made(recipe: &Recipe, drawers: &BTreeMap<String, Decimal>) -> Option<Makeable> {
    let mut needs = BTreeMap::<&str, Decimal>::new();
    for need in recipe.needs.iter().filter(|need| need.amount > Decimal::ZERO) {
        *needs.entry(&need.part).or_default() += need.amount;
    }
    let each = needs.into_iter().map(|(part, amount)| {
        let there = drawers.get(part).copied().unwrap_or_default().max(Decimal::ZERO);
        let count = there.checked_div(amount).and_then(|count| count.floor().to_u32()).unwrap_or(u32::MAX);
        Makeable { count, until: part.to_owned() }
    });
    each.min_by_key(|one| one.count)
}

/// Which of the recipes stop when `part` is gone, by their ids.
pub fn stopped_by<'a>(part: &str, recipes: impl IntoIterator<Item = (&'a str, &'a Recipe)>) -> Vec<&'a str> {
    let needs_it = |recipe: &Recipe| recipe.needs.iter().any(|need| need.part == part && need.amount > Decimal::ZERO);
    recipes.into_iter().filter(|(_, recipe)| needs_it(recipe)).map(|(id, _)| id).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::prep::costs::Need;

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn recipe(needs: &[(&str, &str)]) -> Recipe {
        let need = |(part, amount): &(&str, &str)| Need { part: (*part).to_owned(), amount: d(amount) };
        Recipe { needs: needs.iter().map(need).collect(), minutes: Decimal::ZERO }
    }

    #[test]
    fn no_other_lots_cost_less() {
        let mut seed = 11_u64;
        let mut next = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (seed >> 33) as i64
        };
        for _ in 0..300 {
            let offers: Vec<Offer> = (0..1 + next() % 3)
                .map(|_| Offer { amount: Decimal::from(1 + next() % 20), price: Decimal::new(1 + next() % 300, 2) })
                .collect();
            let short = Decimal::from(1 + next() % 60);
            let mut least = (Decimal::MAX, Decimal::MAX);
            for a in 0..=60 {
                for b in 0..=if offers.len() > 1 { 60 } else { 0 } {
                    for c in 0..=if offers.len() > 2 { 12 } else { 0 } {
                        let counts = [a, b, c].map(Decimal::from);
                        let held: Decimal = offers.iter().zip(counts).map(|(one, n)| one.amount * n).sum();
                        let paid: Decimal = offers.iter().zip(counts).map(|(one, n)| one.price * n).sum();
                        if held >= short {
                            least = least.min((paid, held));
                        }
                    }
                }
            }
            let found = whole_lots(short, &offers).unwrap();
            assert!((found.price, found.amount) <= least, "{short} {offers:?} {found:?} {least:?}");
            let held: Decimal = offers.iter().zip(&found.lots).map(|(one, n)| one.amount * Decimal::from(*n)).sum();
            assert!(held == found.amount && held >= short);
        }
        assert_eq!(whole_lots(d("3"), &[]), None);
        assert_eq!(whole_lots(d("0"), &[]).unwrap().price, d("0"));
        assert_eq!(whole_lots(Decimal::MAX, &[Offer { amount: d("1"), price: d("1") }]), None);
    }

    #[test]
    fn recipes_are_seen_from_both_sides() {
        let bead = recipe(&[("head-pin", "1"), ("ring-10", "1")]);
        let vial = recipe(&[("ring-10", "2"), ("ribbon", "60"), ("ring-10", "1")]);
        let needs = needs_of([(&bead, 10), (&vial, 3)]);
        assert_eq!(needs["ring-10"], d("19"));
        assert_eq!((needs["head-pin"], needs["ribbon"]), (d("10"), d("180")));
        let drawers = [("ring-10", "20"), ("ribbon", "290.5"), ("head-pin", "0")];
        let drawers = drawers.iter().map(|(part, n)| ((*part).to_owned(), d(n))).collect();
        assert_eq!(can_be_made(&vial, &drawers), Some(Makeable { count: 4, until: "ribbon".to_owned() }));
        assert_eq!(can_be_made(&bead, &drawers).unwrap().count, 0);
        assert_eq!(can_be_made(&recipe(&[]), &drawers), None);
        let all = [("bead-jade", &bead), ("vial-sand", &vial)];
        assert_eq!(stopped_by("head-pin", all), ["bead-jade"]);
        assert_eq!(stopped_by("ring-10", all), ["bead-jade", "vial-sand"]);
        assert!(stopped_by("cork", all).is_empty());
    }
}
