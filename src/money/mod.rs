//! What it costs: currencies, the table's price rules, and the one function that makes a quote.
//!
//! A pure room. Every amount is an exact decimal; nothing passes through binary floats.

mod amount;
mod currency;
mod quote;
mod tender;

pub use amount::{AmountError, MAX_AMOUNT, parse_percent, parse_price};
pub use currency::Currency;
pub use quote::{
    Discount, MoneyError, PriceRules, PricedDrop, PricedItem, Quote, Rounding, TaxRule, cash_total, quote,
};
pub use tender::Tender;
