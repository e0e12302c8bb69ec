//! What it costs: currencies, the table's price rules, and the one function that makes a quote.
//!
//! ```text
//! currency, amount   currencies by ISO 4217; reading prices and percentages
//! rules              what a table states once: tax, rounding, discounts
//! error              why there is no sum
//! lines              base, drops and plain lines with their prices
//! reduction          a party's package, and what a seller takes off by hand
//! reprice            new prices by a rule
//! reward             what the host of an evening gets
//! quote              the sum of a piece, or of plain lines alone
//! tax_by_rate        what was sold at each rate
//! cash               a sum in the coins there are
//! denominations      the usual notes and coins
//! change             what is handed over, and what is given back
//! tender             ways to pay
//! ```
//!
//! A pure room. Every amount is an exact decimal; nothing passes through binary floats.

mod amount;
mod cash;
mod change;
mod currency;
mod denominations;
mod error;
mod lines;
mod quote;
#[cfg(test)]
mod quote_tests;
mod reduction;
#[cfg(test)]
mod reduction_tests;
mod reprice;
mod reward;
mod rules;
mod tax_by_rate;
mod tender;

pub use amount::{AmountError, MAX_AMOUNT, WantedAmount, parse_percent, parse_price};
pub use cash::cash_total;
pub use change::{Change, change, given_suggestions};
pub use currency::Currency;
pub use denominations::{coins, notes};
pub use error::MoneyError;
pub use lines::{PlainLine, PricedDrop, PricedItem};
pub use quote::{PlainSum, Quote, quote, quote_plain, quote_with};
pub use reduction::{Package, Reduction};
pub use reprice::PriceRule;
pub use reward::{Reward, RewardRule, reward};
pub use rules::{Discount, PriceRules, Rounding, TaxRule};
pub use tax_by_rate::{AtRate, TaxByRate};
pub use tender::Tender;
