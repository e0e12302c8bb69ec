//! How many to take along, by what a sale and a leftover are worth.

use rust_decimal::{Decimal, prelude::ToPrimitive};
use serde::{Deserialize, Serialize};

use super::demand::Forecast;

/// However little a leftover costs, nobody makes enough for more than this share of all shows.
const MOST_SHARE: f64 = 0.98;

/// What one is worth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Worth {
    /// What it brings when it is sold.
    pub price: Decimal,
    /// What it costs to make.
    pub cost: Decimal,
    /// What is left of the cost when it is not sold: most of it where it is taken to the next show.
    pub leftover: Decimal,
}

impl Worth {
    /// The share of shows at which enough should be there (critical ratio): what a sale earns, over that and what a leftover
    /// loses.
    pub fn enough_in(&self) -> f64 {
        let earned = self.price.saturating_sub(self.cost);
        let lost = self.cost.saturating_sub(self.leftover).max(Decimal::ZERO);
        if earned <= Decimal::ZERO {
            return 0.0;
        }
        let share = earned.checked_div(earned.saturating_add(lost)).and_then(|share| share.to_f64());
        share.unwrap_or(0.0).min(MOST_SHARE)
    }
}

/// How many of a drop to make for a show.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct HowMany {
    /// How many should lie there when the show begins.
    pub take: u32,
    /// How many of these have to be made.
    pub make: u32,
    /// In eight of ten shows so many are wanted, from …
    pub usually_from: u32,
    /// … to.
    pub usually_to: u32,
    /// The chance that all of them are sold.
    pub chance_sold_out: f64,
    /// How many are sold on average.
    pub sold: f64,
    /// How many are left on average.
    pub left: f64,
}

/// How many to take along to a show and to make for it, where `on_hand` are there.
pub fn how_many(next: &Forecast, worth: &Worth, on_hand: u32) -> HowMany {
    let share = worth.enough_in();
    let take = if share <= 0.0 { 0 } else { next.enough_for(share) };
    // Those that are there come along in any case.
    let there = take.max(on_hand);
    let (usually_from, usually_to) = next.plain_range();
    let sold = next.sold_of(there);
    HowMany {
        take,
        make: take.saturating_sub(on_hand),
        usually_from,
        usually_to,
        chance_sold_out: if there == 0 { 0.0 } else { next.chance_sold_out(there) },
        sold,
        left: f64::from(there) - sold,
    }
}

#[cfg(test)]
mod tests {
    use statrs::distribution::{ContinuousCDF, Normal};

    use super::*;
    use crate::prep::demand::{Prior, Sureness, forecast};

    fn worth(price: &str, cost: &str, leftover: &str) -> Worth {
        let amount = |text: &str| text.parse().unwrap();
        Worth { price: amount(price), cost: amount(cost), leftover: amount(leftover) }
    }

    fn poisson(mean: f64) -> Forecast {
        forecast(Prior { shape: mean * 1e10, rate: 1e10 }, &[], 1.0).unwrap()
    }

    /// What `count` of them earn on average.
    fn profit(next: &Forecast, one: &Worth, count: u32) -> f64 {
        let amount = |amount: Decimal| amount.to_f64().unwrap();
        let sold = next.sold_of(count);
        amount(one.price) * sold + amount(one.leftover) * (f64::from(count) - sold)
            - amount(one.cost) * f64::from(count)
    }

    /// Textbooks: Hillier and Lieberman (the news vendor), Nahmias (the news stand), Cachon and Terwiesch (wetsuits, parkas),
    /// and an exercise in which price and cost are easily put the wrong way round; titles quoted from memory, quantities
    /// worked out once more with a scientific library.
    #[test]
    fn the_share_is_that_of_the_textbooks() {
        for (one, share, normal) in [
            (worth("2.50", "1.50", "0.50"), 0.5, None),
            (worth("0.75", "0.25", "0.10"), 0.769_230_769, Some((11.73, 4.74, 15.22))),
            (worth("190", "110", "90"), 0.8, Some((3192.0, 1181.0, 4185.95))),
            (worth("22", "10", "0"), 0.545_454_545, Some((2100.0, 1200.0, 2237.02))),
            (worth("140", "100", "90"), 0.8, Some((1000.0, 200.0, 1168.32))),
            (worth("600", "120", "60"), 0.888_888_889, Some((200.0, 60.0, 273.24))),
            (worth("10", "8", "5"), 0.4, None),
        ] {
            assert!((one.enough_in() - share).abs() < 1e-9, "{one:?}");
            if let Some((mean, deviation, quantity)) = normal {
                let found = Normal::new(mean, deviation).unwrap().inverse_cdf(one.enough_in());
                assert!((found - quantity).abs() < 0.01, "{found} instead of {quantity}");
            }
        }
    }

    /// Cachon and Terwiesch, the magazine (quoted from memory): enough in 99.6 % of the weeks, mean 4.25.
    #[test]
    fn so_many_are_enough_and_so_many_are_sold() {
        let magazine = poisson(4.25);
        assert_eq!(magazine.enough_for(0.996), 11);
        assert!((magazine.sold_of(6) - 3.995_868_52).abs() < 1e-6);
        // Worked out with a scientific library: mean 48 at a price of 18, a cost of 6 and 2 for a leftover.
        let (next, one) = (poisson(48.0), worth("18", "6", "2"));
        let advice = how_many(&next, &one, 0);
        assert_eq!(advice.take, 53);
        for (count, earned, sold) in
            [(52, 540.156_43, 46.759_777), (53, 540.212_54, 47.013_284), (54, 539.588_12, 47.224_257)]
        {
            assert!((profit(&next, &one, count) - earned).abs() < 1e-4, "{count}");
            assert!((next.sold_of(count) - sold).abs() < 1e-5, "{count}");
        }
    }

    #[test]
    fn no_other_number_earns_more() {
        for mean in [0.4, 3.0, 17.0] {
            for (price, cost, leftover) in [("8", "2", "1.50"), ("3", "2.50", "0"), ("12", "1", "0.10")] {
                let next = forecast(Prior::about(mean, Sureness::Hardly), &[], 1.0).unwrap();
                let one = worth(price, cost, leftover);
                let best = (0..200).map(|count| profit(&next, &one, count)).fold(f64::MIN, f64::max);
                let advice = how_many(&next, &one, 0);
                assert!(profit(&next, &one, advice.take) > best - 1e-9, "{mean} {price}");
            }
        }
    }

    #[test]
    fn what_is_there_is_not_made_again_and_what_earns_nothing_is_not_made() {
        let next = forecast(Prior::about(9.0, Sureness::Fairly), &[], 1.0).unwrap();
        let one = worth("8", "2", "1.50");
        let (all, some, enough) = (how_many(&next, &one, 0), how_many(&next, &one, 4), how_many(&next, &one, 90));
        assert_eq!((all.take, all.make), (some.take, some.make + 4));
        assert_eq!((enough.make, enough.chance_sold_out < 1e-3), (0, true));
        assert!(all.usually_from < 9 && all.usually_to > 9 && all.usually_to <= all.take);
        assert!((all.sold + all.left - f64::from(all.take)).abs() < 1e-9);
        let dear = how_many(&next, &worth("2", "2", "1"), 0);
        assert_eq!((dear.take, dear.make, dear.chance_sold_out), (0, 0, 0.0));
        assert!(how_many(&next, &worth("8", "2", "5"), 0).take < 40, "a leftover that earns has its limit too");
    }
}
