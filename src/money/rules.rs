//! What a table states once about money: currency, tax, rounding, discounts.

use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Serialize};

use super::Currency;

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

impl PriceRules {
    /// `amount` in whole minor units.
    pub(super) fn round(&self, amount: Decimal) -> Decimal {
        let strategy = match self.rounding {
            Rounding::HalfUp => RoundingStrategy::MidpointAwayFromZero,
            Rounding::HalfEven => RoundingStrategy::MidpointNearestEven,
        };
        amount.round_dp_with_strategy(self.currency.digits, strategy)
    }

    /// `percent` of `amount`, in whole minor units.
    pub(super) fn percent_of(&self, percent: Decimal, amount: Decimal) -> Decimal {
        self.round(amount * percent / Decimal::ONE_HUNDRED)
    }

    /// The tax and the total for `left` at marked prices. Contained tax is r/(100 + r) of the gross sum (source: HMRC, VAT
    /// fractions).
    pub fn tax_and_total(&self, left: Decimal) -> (Decimal, Decimal) {
        match self.tax {
            TaxRule::None => (Decimal::ZERO, left),
            TaxRule::Added { percent } => {
                let tax = self.percent_of(percent, left);
                (tax, left + tax)
            }
            TaxRule::Included { percent } => (self.round(left * percent / (Decimal::ONE_HUNDRED + percent)), left),
        }
    }
}
