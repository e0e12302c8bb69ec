//! New prices by a rule.

use rust_decimal::Decimal;

use super::{AmountError, Currency, parse_price};

/// How prices become others.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PriceRule {
    /// All of them this one.
    To(Decimal),
    /// So much more, or less.
    By(Decimal),
    /// So many percent more, or less, to the nearest `step`.
    Percent {
        /// How many.
        percent: Decimal,
        /// The smallest step between two prices.
        step: Decimal,
    },
}

impl PriceRule {
    /// What `price` becomes.
    ///
    /// # Errors
    /// It would be none that a table takes: nothing, less than that, or more than any.
    pub fn of(self, price: Decimal, currency: Currency) -> Result<Decimal, AmountError> {
        let next = match self {
            Self::To(to) => Some(to),
            Self::By(more) => price.checked_add(more),
            Self::Percent { percent, step } => {
                let grown = Decimal::ONE_HUNDRED.checked_add(percent).and_then(|whole| price.checked_mul(whole));
                grown.and_then(|grown| nearest(grown / Decimal::ONE_HUNDRED, step))
            }
        };
        // What can't even be reckoned is told as an amount beyond all others.
        let mut next = next.unwrap_or(Decimal::MAX);
        if next.scale() <= currency.digits {
            next.rescale(currency.digits);
        }
        parse_price(&next.to_string(), currency)
    }
}

/// The multiple of `step` nearest to `amount`, and the greater of two that are as near.
fn nearest(amount: Decimal, step: Decimal) -> Option<Decimal> {
    let steps = amount.checked_div(step)?;
    steps.round_dp_with_strategy(0, rust_decimal::RoundingStrategy::MidpointAwayFromZero).checked_mul(step)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn decimal(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    /// By hand: 10 % more than 3.00 is 3.30, to the nearest half 3.50; 12.5 % more than 5.00 is 5.625, midway between two
    /// quarters, and a midpoint goes up.
    #[test]
    fn prices_by_a_rule() {
        let usd = Currency::from_code("USD").unwrap();
        let percent = |percent, step| PriceRule::Percent { percent: decimal(percent), step: decimal(step) };
        for (rule, price, wanted) in [
            (PriceRule::To(decimal("4")), "3.00", "4.00"),
            (PriceRule::By(decimal("0.5")), "3.00", "3.50"),
            (PriceRule::By(decimal("-0.25")), "3.00", "2.75"),
            (percent("10", "0.01"), "3.00", "3.30"),
            (percent("10", "0.5"), "3.00", "3.50"),
            (percent("-10", "0.5"), "3.00", "2.50"),
            (percent("12.5", "0.25"), "5.00", "5.75"),
            (percent("25", "1"), "2.00", "3.00"),
        ] {
            assert_eq!(rule.of(decimal(price), usd), Ok(decimal(wanted)), "{rule:?} of {price}");
        }
        for rule in [
            PriceRule::By(decimal("-3")),
            percent("-100", "0.5"),
            percent("-95", "0.5"),
            percent("1000000000000000000000000000", "0.01"),
            percent("10", "0"),
            PriceRule::To(decimal("0.005")),
            PriceRule::By(Decimal::MAX),
        ] {
            assert!(rule.of(decimal("3.00"), usd).is_err(), "{rule:?}");
        }
    }
}
