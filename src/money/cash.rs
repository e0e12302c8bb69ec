//! Cash, where the smallest coins are gone.

use rust_decimal::{Decimal, RoundingStrategy};

use super::{MoneyError, PriceRules};

/// What is paid in cash: `total` to the nearest cash step. Only the total is ever rounded, never a line.
///
/// # Errors
/// The total is too large to be counted in steps.
pub fn cash_total(rules: &PriceRules, total: Decimal) -> Result<Decimal, MoneyError> {
    let steps = total.checked_div(rules.cash_step).ok_or(MoneyError::TooLarge)?;
    let steps = steps.round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero);
    Ok(rules.currency.written(steps.checked_mul(rules.cash_step).ok_or(MoneyError::TooLarge)?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::{Currency, Rounding, TaxRule};

    fn paid(code: &str, total: Decimal) -> Decimal {
        let currency = Currency::from_code(code).unwrap();
        let (tax, rounding, cash_step) = (TaxRule::None, Rounding::HalfUp, currency.cash_step());
        cash_total(&PriceRules { currency, tax, rounding, cash_step, discounts: vec![] }, total).unwrap()
    }

    /// Sources: Canada, Budget 2012 rounding page (cents that end in 1 and 2 go down to 0, 3 and 4 up to 5, 6 and 7 down to 5,
    /// 8 and 9 up to 10); Australia, the same by secondary sources; Sweden, Lag (1970:1029) (up to 49 öre down, from 50 up).
    #[test]
    fn every_ending_is_rounded_by_its_rule() {
        const ENDINGS: [i64; 10] = [0, 0, 0, 5, 5, 5, 5, 5, 10, 10];
        for cents in 0..=2_000_i64 {
            let rounded = Decimal::new(cents - cents % 10 + ENDINGS[cents as usize % 10], 2);
            let total = Decimal::new(cents, 2);
            assert_eq!((paid("CAD", total), paid("AUD", total)), (rounded, rounded), "{total}");
            let kronor = cents / 100 + i64::from(cents % 100 >= 50);
            assert_eq!(paid("SEK", total), Decimal::from(kronor), "{total}");
        }
    }
}
