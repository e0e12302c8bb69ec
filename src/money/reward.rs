//! The host's reward for an evening at home.

use rust_decimal::{Decimal, prelude::ToPrimitive};
use serde::{Deserialize, Serialize};

use super::{MAX_AMOUNT, MoneyError, PriceRules};

/// What the host of a home party gets, by the seller's rule.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum RewardRule {
    /// Percent of what the evening came to, from 0 to 100.
    Percent(Decimal),
    /// Pieces for nothing.
    FreePieces {
        /// One for every full such sum.
        above: Decimal,
        /// What a free piece may be worth at most.
        up_to: Option<Decimal>,
    },
}

/// What the host gets for an evening.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Reward {
    /// So much, in whole minor units.
    Amount(Decimal),
    /// So many pieces for nothing.
    Pieces {
        /// How many.
        count: u32,
        /// What each may be worth at most.
        up_to: Option<Decimal>,
    },
}

/// The host's reward for an evening that came to `evening_total`; an evening of which more came back than was sold earns
/// nothing. A percentage is rounded to the minor unit as everything of the table is; a sum that is not full earns no piece.
///
/// # Errors
/// The rule or the total is none that there can be.
pub fn reward(rule: &RewardRule, evening_total: Decimal, rules: &PriceRules) -> Result<Reward, MoneyError> {
    let earned = evening_total.max(Decimal::ZERO);
    match *rule {
        RewardRule::Percent(percent) if percent < Decimal::ZERO || percent > Decimal::ONE_HUNDRED => {
            Err(MoneyError::RewardPercent(percent))
        }
        RewardRule::Percent(percent) => {
            let total = earned.checked_mul(percent).ok_or(MoneyError::Absurd(evening_total))?;
            Ok(Reward::Amount(rules.currency.written(rules.round(total / Decimal::ONE_HUNDRED))))
        }
        RewardRule::FreePieces { above, up_to } => {
            let sums = std::iter::once(above).chain(up_to);
            if let Some(wrong) = sums.into_iter().find(|sum| *sum <= Decimal::ZERO || *sum > MAX_AMOUNT) {
                return Err(MoneyError::RewardSum(wrong));
            }
            let full = earned.checked_div(above).and_then(|sums| sums.to_u32());
            Ok(Reward::Pieces { count: full.ok_or(MoneyError::Absurd(evening_total))?, up_to })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::{Currency, Rounding, TaxRule};

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn rules(code: &str, rounding: Rounding) -> PriceRules {
        let currency = Currency::from_code(code).unwrap();
        PriceRules { currency, tax: TaxRule::None, rounding, cash_step: currency.cash_step(), discounts: vec![] }
    }

    /// Worked by hand.
    #[test]
    fn a_percentage_of_the_evening_is_rounded_as_the_table_rounds() {
        let earned = |percent: &str, total: &str, code: &str, rounding| match reward(
            &RewardRule::Percent(d(percent)),
            d(total),
            &rules(code, rounding),
        )
        .unwrap()
        {
            Reward::Amount(amount) => amount.to_string(),
            pieces @ Reward::Pieces { .. } => panic!("{pieces:?}"),
        };
        assert_eq!(earned("10", "483.50", "USD", Rounding::HalfUp), "48.35");
        assert_eq!(earned("15", "612.30", "EUR", Rounding::HalfUp), "91.85", "91.845");
        assert_eq!(earned("15", "612.30", "EUR", Rounding::HalfEven), "91.84");
        assert_eq!(earned("12.5", "10150", "JPY", Rounding::HalfUp), "1269", "1268.75");
        assert_eq!(earned("7.5", "100.125", "KWD", Rounding::HalfUp), "7.509", "7.509375");
        assert_eq!(earned("100", "1000000", "USD", Rounding::HalfUp), "1000000.00");
        for nothing in ["0", "-0.01", "-483.50"] {
            assert_eq!(earned("10", nothing, "USD", Rounding::HalfUp), "0.00", "{nothing}");
        }
    }

    /// Worked by hand: one piece up to 30 for every full 250.
    #[test]
    fn free_pieces_are_earned_by_full_sums() {
        let rule = RewardRule::FreePieces { above: d("250"), up_to: Some(d("30")) };
        for (total, count) in [
            ("-300", 0),
            ("0", 0),
            ("249.99", 0),
            ("250", 1),
            ("250.01", 1),
            ("499.99", 1),
            ("500.00", 2),
            ("1999.99", 7),
        ] {
            let earned = reward(&rule, d(total), &rules("USD", Rounding::HalfUp));
            assert_eq!(earned, Ok(Reward::Pieces { count, up_to: Some(d("30")) }), "{total}");
        }
        let thirds = RewardRule::FreePieces { above: d("0.30"), up_to: None };
        let earned = reward(&thirds, d("0.90"), &rules("USD", Rounding::HalfUp));
        assert_eq!(earned, Ok(Reward::Pieces { count: 3, up_to: None }));
    }

    #[test]
    fn what_is_no_rule_or_no_evening_is_refused() {
        let refused =
            |rule: RewardRule, total: &str| reward(&rule, d(total), &rules("USD", Rounding::HalfUp)).unwrap_err();
        assert_eq!(refused(RewardRule::Percent(d("-1")), "5"), MoneyError::RewardPercent(d("-1")));
        assert_eq!(refused(RewardRule::Percent(d("100.1")), "5"), MoneyError::RewardPercent(d("100.1")));
        for sum in ["0", "-250", "1000001"] {
            let above = RewardRule::FreePieces { above: d(sum), up_to: None };
            let up_to = RewardRule::FreePieces { above: d("250"), up_to: Some(d(sum)) };
            assert_eq!((refused(above, "5"), refused(up_to, "5")), (wrong(sum), wrong(sum)));
        }
        let huge = "79228162514264337593543950335";
        assert_eq!(refused(RewardRule::Percent(d("10")), huge), MoneyError::Absurd(d(huge)));
        let pieces = RewardRule::FreePieces { above: d("0.01"), up_to: None };
        assert_eq!(refused(pieces, huge), MoneyError::Absurd(d(huge)));
    }

    fn wrong(sum: &str) -> MoneyError {
        MoneyError::RewardSum(d(sum))
    }
}
