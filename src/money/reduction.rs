//! What comes off a sum beside the table's own discounts: a party's package, and a reduction by hand.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{MoneyError, PriceRules, PricedDrop, PricedItem, TaxRule, lines::check_price};

/// What a seller takes off one piece by hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Reduction {
    /// Percent of what is left after everything else, from 0 to 100.
    Percent(Decimal),
    /// An amount at marked prices; never more comes off than is left.
    Amount(Decimal),
    /// Down to this total, tax and all.
    ToSum(Decimal),
}

/// A fixed price for a base and so many drops.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Package {
    /// What the seller calls it.
    pub name: String,
    /// What base and drops cost together, at marked prices.
    pub price: Decimal,
    /// How many drops are in it.
    pub drops: u32,
}

impl Reduction {
    /// What comes off `left`, in whole minor units, from zero to all of it.
    pub(super) fn off(&self, rules: &PriceRules, left: Decimal) -> Result<Decimal, MoneyError> {
        match *self {
            Self::Percent(percent) if percent < Decimal::ZERO || percent > Decimal::ONE_HUNDRED => {
                Err(MoneyError::Percent(percent))
            }
            Self::Percent(percent) => Ok(rules.percent_of(percent, left)),
            Self::Amount(amount) => Ok(whole(rules, amount)?.min(left)),
            Self::ToSum(wish) => {
                let (_, total) = rules.tax_and_total(left);
                if whole(rules, wish)? > total {
                    return Err(MoneyError::AboveTotal { wish, total: rules.currency.written(total) });
                }
                Ok(left - left_for(rules, wish))
            }
        }
    }
}

/// Refuses an amount below zero or with more decimals than the currency.
fn whole(rules: &PriceRules, amount: Decimal) -> Result<Decimal, MoneyError> {
    if amount < Decimal::ZERO {
        Err(MoneyError::BelowZero(amount))
    } else if amount.normalize().scale() > rules.currency.digits {
        Err(MoneyError::Decimals(amount))
    } else {
        Ok(amount)
    }
}

/// The largest sum at marked prices whose total is not above `wish`.
///
/// Tax on top makes the total grow with every minor unit by one at least, so that there is one such sum. The exact quotient,
/// cut to whole units, is never too much; one unit more can still fit where its tax is rounded down, two can't.
fn left_for(rules: &PriceRules, wish: Decimal) -> Decimal {
    let TaxRule::Added { percent } = rules.tax else { return wish };
    let near = (wish * Decimal::ONE_HUNDRED / (Decimal::ONE_HUNDRED + percent)).trunc_with_scale(rules.currency.digits);
    let next = near + rules.currency.minor_unit();
    if rules.tax_and_total(next).1 <= wish { next } else { near }
}

impl Package {
    /// What comes off `base` and `drops` as marked: base and the dearest drops cost the package's price, unless they are
    /// marked with less.
    pub(super) fn off(
        &self,
        rules: &PriceRules,
        base: &PricedItem,
        drops: &[PricedDrop],
    ) -> Result<Decimal, MoneyError> {
        check_price(rules.currency, &self.name, self.price)?;
        let mut prices: Vec<Decimal> = drops.iter().map(|drop| drop.price).collect();
        prices.sort_unstable_by(|one, other| other.cmp(one));
        let inside = base.price + prices.iter().take(self.drops as usize).sum::<Decimal>();
        Ok((inside - self.price).max(Decimal::ZERO))
    }
}
