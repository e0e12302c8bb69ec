//! The quote: one function for the kiosk, the desk, the terminal and the receipt.

use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Serialize};

use super::{Currency, MAX_AMOUNT};
use crate::{craft::Home, quoting::quoted};

/// How half a minor unit is rounded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Rounding {
    /// Away from zero. Also the rule of the US Streamlined Sales and Use Tax Agreement, §324.
    #[default]
    HalfUp,
    /// To the even digit.
    HalfEven,
}

/// The table's tax rule; `percent` is of the net price.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum TaxRule {
    /// No tax is shown.
    None,
    /// The marked prices are net; tax comes on top.
    Added {
        /// Percent of the net price.
        percent: Decimal,
    },
    /// The marked prices contain the tax.
    Included {
        /// Percent of the net price.
        percent: Decimal,
    },
}

/// A price reduction of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Discount {
    /// Percent off the whole piece.
    Percent(Decimal),
    /// An amount off the whole piece, never more than the piece costs.
    Amount(Decimal),
    /// Of every `n` drops the cheapest is free.
    EveryNth {
        /// Of so many drops one is free.
        n: u32,
    },
}

/// Everything about money that a table states once.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PriceRules {
    /// The currency of every price.
    pub currency: Currency,
    /// The tax rule.
    pub tax: TaxRule,
    /// How the tax and percentages are rounded, once per ticket.
    pub rounding: Rounding,
    /// The step in which cash is paid.
    pub cash_step: Decimal,
    /// The reductions, applied one after the other.
    pub discounts: Vec<Discount>,
}

/// A base with its price.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PricedItem {
    /// Id in the catalogue.
    pub id: String,
    /// Price of one, in the currency of the quote.
    pub price: Decimal,
}

/// A drop with its price and home.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PricedDrop {
    /// Id in the catalogue.
    pub id: String,
    /// Price of one, in the currency of the quote.
    pub price: Decimal,
    /// Where it lives on the table.
    pub home: Home,
}

/// The sum of a piece, line by line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Quote {
    /// The currency of every amount.
    pub currency: Currency,
    /// The base with its price.
    pub base: PricedItem,
    /// The drops, left to right.
    pub drops: Vec<PricedDrop>,
    /// Base and drops as marked.
    pub subtotal: Decimal,
    /// What is taken off.
    pub discount: Decimal,
    /// The tax: on top or contained, as the rule says.
    pub tax: Decimal,
    /// What is charged.
    pub total: Decimal,
}

impl Quote {
    /// Looks whether this can be a quote at all, whatever the prices and rules were: prices within their bounds, amounts in
    /// whole minor units, lines, discount and tax making up the total.
    ///
    /// # Errors
    /// What can't be.
    pub fn check(&self) -> Result<(), MoneyError> {
        let mut lines = Decimal::ZERO;
        let priced = std::iter::once((&self.base.id, self.base.price));
        for (id, price) in priced.chain(self.drops.iter().map(|drop| (&drop.id, drop.price))) {
            if price <= Decimal::ZERO || price > MAX_AMOUNT {
                return Err(MoneyError::Price { id: id.clone(), price });
            }
            if price.normalize().scale() > self.currency.digits {
                return Err(MoneyError::Decimals(price));
            }
            lines += price;
            if lines > MAX_AMOUNT {
                return Err(MoneyError::TooLarge);
            }
        }
        let Self { subtotal, discount, tax, total, .. } = *self;
        let sums = [subtotal, discount, tax, total];
        if sums.iter().any(|sum| *sum > MAX_AMOUNT * Decimal::TWO) {
            return Err(MoneyError::TooLarge);
        }
        if let Some(sum) = sums.iter().find(|sum| sum.normalize().scale() > self.currency.digits) {
            return Err(MoneyError::Decimals(*sum));
        }
        if discount > subtotal || sums.iter().any(|sum| *sum < Decimal::ZERO) {
            return Err(MoneyError::Lines);
        }
        let left = subtotal - discount;
        // Tax is contained or comes on top; contained, it can't be more than what it is contained in.
        let adds_up = total == left + tax || (total == left && tax <= left);
        if subtotal != lines || !adds_up { Err(MoneyError::Lines) } else { Ok(()) }
    }

    /// Whether every amount lies where amounts at a jewellery table can lie. With tax a sum may be twice the largest price.
    pub fn is_plausible(&self) -> bool {
        let price = |price: Decimal| price > Decimal::ZERO && price <= MAX_AMOUNT;
        let sum = |amount: Decimal| amount >= Decimal::ZERO && amount <= MAX_AMOUNT * Decimal::TWO;
        price(self.base.price)
            && self.drops.iter().all(|drop| price(drop.price))
            && [self.subtotal, self.discount, self.tax, self.total].into_iter().all(sum)
    }
}

/// Why there is no quote.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum MoneyError {
    /// A price is zero, negative or larger than any price here.
    #[error("the price {price} of {} is not between 0 and {MAX_AMOUNT}", quoted(.id))]
    Price {
        /// Id of the part whose price it is.
        id: String,
        /// The price that was found.
        price: Decimal,
    },
    /// The sum is larger than any sum here.
    #[error("the sum is larger than {MAX_AMOUNT}")]
    TooLarge,
    /// An amount has more decimals than its currency.
    #[error("{0} has more decimals than its currency")]
    Decimals(Decimal),
    /// No jewellery table takes that.
    #[error("no table takes {0}")]
    Absurd(Decimal),
    /// The sum does not follow from its lines.
    #[error("the sum is not that of its lines")]
    Lines,
}

/// The quote for `base` and `drops` under `rules`.
///
/// Discounts are rounded to the minor unit each, and tax once, on what is left. Contained tax is
/// r/(100 + r) of the gross sum (source: HMRC, VAT fractions).
///
/// # Errors
/// A price or the sum is none that a table takes.
pub fn quote(rules: &PriceRules, base: PricedItem, drops: Vec<PricedDrop>) -> Result<Quote, MoneyError> {
    let priced = std::iter::once((&base.id, base.price)).chain(drops.iter().map(|drop| (&drop.id, drop.price)));
    let mut subtotal = Decimal::ZERO;
    for (id, price) in priced {
        if price <= Decimal::ZERO || price > MAX_AMOUNT {
            return Err(MoneyError::Price { id: id.clone(), price });
        }
        subtotal += price;
        if subtotal > MAX_AMOUNT {
            return Err(MoneyError::TooLarge);
        }
    }
    let round = |amount: Decimal| {
        let strategy = match rules.rounding {
            Rounding::HalfUp => RoundingStrategy::MidpointAwayFromZero,
            Rounding::HalfEven => RoundingStrategy::MidpointNearestEven,
        };
        amount.round_dp_with_strategy(rules.currency.digits, strategy)
    };
    let mut left = subtotal;
    for discount in &rules.discounts {
        let off = match *discount {
            Discount::Percent(percent) => round(left * percent / Decimal::ONE_HUNDRED),
            Discount::Amount(amount) => amount,
            Discount::EveryNth { n } => free_drops(&drops, n),
        };
        left -= off.min(left);
    }
    let (tax, total) = match rules.tax {
        TaxRule::None => (Decimal::ZERO, left),
        TaxRule::Added { percent } => {
            let tax = round(left * percent / Decimal::ONE_HUNDRED);
            (tax, left + tax)
        }
        TaxRule::Included { percent } => (round(left * percent / (Decimal::ONE_HUNDRED + percent)), left),
    };
    let exact = |amount: Decimal| {
        let mut amount = amount;
        amount.rescale(rules.currency.digits);
        amount
    };
    Ok(Quote {
        currency: rules.currency,
        base,
        drops,
        subtotal: exact(subtotal),
        discount: exact(subtotal - left),
        tax: exact(tax),
        total: exact(total),
    })
}

/// What is paid in cash: `total` to the nearest cash step. Only the total is ever rounded, never a line.
///
/// # Errors
/// The total is too large to be counted in steps.
pub fn cash_total(rules: &PriceRules, total: Decimal) -> Result<Decimal, MoneyError> {
    let steps = total.checked_div(rules.cash_step).ok_or(MoneyError::TooLarge)?;
    let steps = steps.round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero);
    let mut cash = steps.checked_mul(rules.cash_step).ok_or(MoneyError::TooLarge)?;
    cash.rescale(rules.currency.digits);
    Ok(cash)
}

/// The cheapest `len / n` drops together.
fn free_drops(drops: &[PricedDrop], n: u32) -> Decimal {
    let mut prices: Vec<Decimal> = drops.iter().map(|drop| drop.price).collect();
    prices.sort();
    prices.iter().take(drops.len() / n.max(1) as usize).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn rules(code: &str, tax: TaxRule) -> PriceRules {
        let currency = Currency::from_code(code).unwrap();
        PriceRules { currency, tax, rounding: Rounding::HalfUp, cash_step: currency.cash_step(), discounts: vec![] }
    }

    fn drops(prices: &[&str]) -> Vec<PricedDrop> {
        let home = "A1".parse().unwrap();
        prices.iter().map(|price| PricedDrop { id: "x".into(), price: d(price), home }).collect()
    }

    fn base(price: &str) -> PricedItem {
        PricedItem { id: "base".into(), price: d(price) }
    }

    fn sums(rules: &PriceRules, first: &str, rest: &[&str]) -> (String, String) {
        let quote = quote(rules, base(first), drops(rest)).unwrap();
        (quote.tax.to_string(), quote.total.to_string())
    }

    /// Sources: HMRC, VAT-exclusive examples; Streamlined Sales and Use Tax Agreement §324
    /// (10.99, 19.99 and 4.95 computed by its rule); Canada, Budget 2012 (1.83 + 2.86 at 5 %).
    #[test]
    fn tax_on_top_as_published() {
        let added = |code: &str, percent: &str| rules(code, TaxRule::Added { percent: d(percent) });
        assert_eq!(sums(&added("GBP", "20"), "100", &[]), ("20.00".into(), "120.00".into()));
        assert_eq!(sums(&added("GBP", "5"), "100", &[]), ("5.00".into(), "105.00".into()));
        assert_eq!(sums(&added("USD", "6.25"), "10.99", &[]), ("0.69".into(), "11.68".into()));
        assert_eq!(sums(&added("USD", "6.25"), "0.24", &[]).0, "0.02");
        assert_eq!(sums(&added("USD", "6.5"), "19.99", &[]).0, "1.30");
        assert_eq!(sums(&added("USD", "6.25"), "1.65", &["1.65", "1.65"]).0, "0.31", "once per ticket, not by line");
        let cad = added("CAD", "5");
        assert_eq!(sums(&cad, "1.83", &["2.86"]).1, "4.92");
        assert_eq!(cash_total(&cad, d("4.92")), Ok(d("4.90")));
    }

    /// Source: HMRC, VAT fractions (1/6 at 20 %, 7/47 at 17.5 %, 3/23 at 15 %).
    #[test]
    fn tax_inside_as_published() {
        for (gross, percent, tax) in
            [("120", "20", "20.00"), ("117.50", "17.5", "17.50"), ("115", "15", "15.00"), ("9.99", "20", "1.67")]
        {
            let included = rules("GBP", TaxRule::Included { percent: d(percent) });
            assert_eq!(sums(&included, gross, &[]).0, tax, "{gross}");
        }
        let even = PriceRules { rounding: Rounding::HalfEven, ..rules("GBP", TaxRule::Included { percent: d("20") }) };
        assert_eq!(sums(&even, "9.99", &[]).0, "1.66");
    }

    /// Sources: Canada, Budget 2012 rounding page; Québec consumer office; Sweden, Lag (1970:1029); Switzerland, common practice.
    #[test]
    fn cash_is_rounded_as_published() {
        let table = [
            ("CAD", "1.01", "1.00"),
            ("CAD", "1.02", "1.00"),
            ("CAD", "1.03", "1.05"),
            ("CAD", "1.04", "1.05"),
            ("CAD", "1.06", "1.05"),
            ("CAD", "1.07", "1.05"),
            ("CAD", "1.08", "1.10"),
            ("CAD", "1.09", "1.10"),
            ("CAD", "5.98", "6.00"),
            ("CAD", "5.97", "5.95"),
            ("CAD", "0.06", "0.05"),
            ("SEK", "223.20", "223.00"),
            ("SEK", "223.49", "223.00"),
            ("SEK", "223.50", "224.00"),
            ("CHF", "12.32", "12.30"),
            ("CHF", "12.33", "12.35"),
            ("CHF", "12.375", "12.40"),
            ("NZD", "12.34", "12.30"),
            ("NZD", "12.36", "12.40"),
            ("USD", "12.34", "12.34"),
        ];
        for (code, total, cash) in table {
            let paid = cash_total(&rules(code, TaxRule::None), d(total)).unwrap();
            assert_eq!(paid.to_string(), cash, "{code} {total}");
        }
    }

    #[test]
    fn discounts_come_off_before_tax_and_never_below_zero() {
        let mut r = rules("USD", TaxRule::Added { percent: d("10") });
        r.discounts = vec![Discount::EveryNth { n: 3 }, Discount::Percent(d("10"))];
        let q = quote(&r, base("10"), drops(&["5", "2", "4"])).unwrap();
        assert_eq!((q.subtotal, q.discount, q.tax, q.total), (d("21.00"), d("3.90"), d("1.71"), d("18.81")));
        r.discounts = vec![Discount::Amount(d("50"))];
        assert_eq!(quote(&r, base("10"), vec![]).unwrap().total, Decimal::ZERO);
    }

    #[test]
    fn what_can_be_no_quote_is_told() {
        let r = rules("USD", TaxRule::Added { percent: d("10") });
        let good = quote(&r, base("10"), drops(&["5", "2.50"])).unwrap();
        assert_eq!(good.check(), Ok(()));
        let included = rules("USD", TaxRule::Included { percent: d("10") });
        assert_eq!(quote(&included, base("10"), drops(&["5"])).unwrap().check(), Ok(()));
        let with = |change: &dyn Fn(&mut Quote)| {
            let mut other = good.clone();
            change(&mut other);
            other.check()
        };
        let huge = d("79228162514264337593543950335");
        for amount in [huge, -huge] {
            assert!(with(&|q| q.total = amount).is_err() && with(&|q| q.tax = amount).is_err());
            assert!(with(&|q| q.subtotal = amount).is_err() && with(&|q| q.base.price = amount).is_err());
            assert!(with(&|q| q.discount = amount).is_err() && with(&|q| q.drops[0].price = amount).is_err());
        }
        assert_eq!(with(&|q| q.total = d("0.01")), Err(MoneyError::Lines));
        assert_eq!(with(&|q| q.total = d("-50")), Err(MoneyError::Lines));
        assert_eq!(with(&|q| q.discount = d("-1")), Err(MoneyError::Lines));
        assert!(matches!(with(&|q| q.drops[1].price = d("0")), Err(MoneyError::Price { .. })));
        assert_eq!(with(&|q| (q.tax, q.total) = (d("1.751"), d("19.251"))), Err(MoneyError::Decimals(d("1.751"))));
        let gift = rules("USD", TaxRule::None);
        let gift = PriceRules { discounts: vec![Discount::Amount(d("50"))], ..gift };
        assert_eq!(quote(&gift, base("10"), vec![]).unwrap().check(), Ok(()), "a piece that is free");
        assert_eq!(cash_total(&r, huge), Err(MoneyError::TooLarge));
    }

    #[test]
    fn absurd_amounts_are_refused() {
        let r = rules("USD", TaxRule::None);
        for price in ["0", "-1", "1000001", "79228162514264337593543950335"] {
            assert!(matches!(quote(&r, base(price), vec![]), Err(MoneyError::Price { .. })), "{price}");
        }
        assert_eq!(quote(&r, base("1000000"), drops(&["1"])), Err(MoneyError::TooLarge));
    }
}
