//! The quote: one function for the kiosk, the desk, the terminal and the receipt.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{
    Currency, Discount, MAX_AMOUNT, MoneyError, Package, PlainLine, PriceRules, PricedDrop, PricedItem, Reduction,
    lines::{added, marked_piece, marked_plain},
};

/// The sum of a piece, line by line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Quote {
    /// The currency of every amount.
    pub currency: Currency,
    /// The base with its price.
    pub base: PricedItem,
    /// The drops, left to right.
    pub drops: Vec<PricedDrop>,
    /// What else is on the ticket and has no home.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub plain: Vec<PlainLine>,
    /// Base, drops and plain lines as marked.
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
        let lines = marked(self.currency, &self.base, &self.drops, &self.plain)?;
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
            && self.plain.iter().all(|line| line.price.is_zero() || price(line.price))
            && [self.subtotal, self.discount, self.tax, self.total].into_iter().all(sum)
    }
}

/// The sums of plain lines that are sold without a piece.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlainSum {
    /// The lines as marked.
    pub subtotal: Decimal,
    /// What is taken off.
    pub discount: Decimal,
    /// The tax: on top or contained, as the rule says.
    pub tax: Decimal,
    /// What is charged.
    pub total: Decimal,
}

/// The quote for `base` and `drops` under `rules`.
///
/// # Errors
/// A price or the sum is none that a table takes.
pub fn quote(rules: &PriceRules, base: PricedItem, drops: Vec<PricedDrop>) -> Result<Quote, MoneyError> {
    quote_with(rules, base, drops, vec![], None, None)
}

/// The quote for a piece with plain lines, a package and a reduction by hand.
///
/// The table's discounts, or the package in their place, are on base and drops; plain lines cost what is marked. The
/// reduction by hand is on all that is left then. Discounts are rounded to the minor unit each, and tax once, on what is
/// left.
///
/// # Errors
/// A price or the sum is none that a table takes, or the reduction is none.
pub fn quote_with(
    rules: &PriceRules,
    base: PricedItem,
    drops: Vec<PricedDrop>,
    plain: Vec<PlainLine>,
    package: Option<&Package>,
    reduction: Option<&Reduction>,
) -> Result<Quote, MoneyError> {
    let subtotal = marked(rules.currency, &base, &drops, &plain)?;
    let off = match package {
        Some(package) => package.off(rules, &base, &drops)?,
        None => discounts(rules, &base, &drops),
    };
    let PlainSum { subtotal, discount, tax, total } = sums(rules, subtotal, off, reduction)?;
    Ok(Quote { currency: rules.currency, base, drops, plain, subtotal, discount, tax, total })
}

/// The sums of plain lines that are sold without a piece. The table's discounts are on pieces, so that only the reduction by
/// hand comes off.
///
/// # Errors
/// A price or the sum is none that a table takes, or the reduction is none.
pub fn quote_plain(
    rules: &PriceRules,
    plain: &[PlainLine],
    reduction: Option<&Reduction>,
) -> Result<PlainSum, MoneyError> {
    sums(rules, marked_plain(rules.currency, plain)?, Decimal::ZERO, reduction)
}

/// Everything as marked.
fn marked(
    currency: Currency,
    base: &PricedItem,
    drops: &[PricedDrop],
    plain: &[PlainLine],
) -> Result<Decimal, MoneyError> {
    added(marked_piece(currency, base, drops)?, marked_plain(currency, plain)?)
}

/// Takes `off` and then the reduction from `subtotal`, and makes tax and total of what is left.
fn sums(
    rules: &PriceRules,
    subtotal: Decimal,
    off: Decimal,
    reduction: Option<&Reduction>,
) -> Result<PlainSum, MoneyError> {
    let mut left = subtotal - off;
    if let Some(reduction) = reduction {
        left -= reduction.off(rules, left)?;
    }
    let (tax, total) = rules.tax_and_total(left);
    Ok(PlainSum {
        subtotal: rules.currency.written(subtotal),
        discount: rules.currency.written(subtotal - left),
        tax: rules.currency.written(tax),
        total: rules.currency.written(total),
    })
}

/// What the table's own discounts take off base and drops, one after the other.
fn discounts(rules: &PriceRules, base: &PricedItem, drops: &[PricedDrop]) -> Decimal {
    let marked = base.price + drops.iter().map(|drop| drop.price).sum::<Decimal>();
    let mut left = marked;
    for discount in &rules.discounts {
        let off = match *discount {
            Discount::Percent(percent) => rules.percent_of(percent, left),
            Discount::Amount(amount) => rules.round(amount),
            Discount::EveryNth { n } => free_drops(drops, n),
        };
        left -= off.min(left);
    }
    marked - left
}

/// The cheapest `len / n` drops together.
fn free_drops(drops: &[PricedDrop], n: u32) -> Decimal {
    let mut prices: Vec<Decimal> = drops.iter().map(|drop| drop.price).collect();
    prices.sort();
    prices.iter().take(drops.len() / n.max(1) as usize).sum()
}
