//! Why there is no sum.

use rust_decimal::Decimal;

use super::MAX_AMOUNT;
use crate::quoting::quoted;

/// Why there is no quote.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum MoneyError {
    /// A price is negative or larger than any price here, or zero where only a plain line may be.
    #[error("the price {price} of {} is not between 0 and {MAX_AMOUNT}", quoted(.id))]
    Price {
        /// Id of the part, or name of the package or plain line, whose price it is.
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
    /// A reduction of less than nothing or more than all.
    #[error("a reduction of {0} percent is not between 0 and 100 percent")]
    Percent(Decimal),
    /// A reduction below zero, or to a sum below zero.
    #[error("{0} is below zero; a reduction takes off zero or more, and leaves zero or more")]
    BelowZero(Decimal),
    /// A round sum that is no reduction.
    #[error("{wish} is more than the sum of {total}; a reduction only takes off")]
    AboveTotal {
        /// The sum that was wished for.
        wish: Decimal,
        /// The sum without the reduction.
        total: Decimal,
    },
    /// Less is given than is due.
    #[error("{given} is given, which is {missing} less than what is due")]
    TooLittle {
        /// What was given.
        given: Decimal,
        /// What is still missing.
        missing: Decimal,
    },
    /// A reward of less than nothing or more than all.
    #[error("a reward of {0} percent is not between 0 and 100 percent")]
    RewardPercent(Decimal),
    /// A sum by which free pieces are earned, or what they may be worth, that is none.
    #[error("{0} is no sum for free pieces; write one above 0 and up to {MAX_AMOUNT}")]
    RewardSum(Decimal),
}
