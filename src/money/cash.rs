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
    Ok(rules.written(steps.checked_mul(rules.cash_step).ok_or(MoneyError::TooLarge)?))
}
