//! What a sum is made of: base, drops and plain lines, each with its price.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{Currency, MAX_AMOUNT, MoneyError};
use crate::craft::Home;

/// A base with its price.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PricedItem {
    /// Id in the catalogue.
    pub id: String,
    /// Price of one, in the currency of the quote.
    pub price: Decimal,
}

/// A drop with its price and home.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PricedDrop {
    /// Id in the catalogue.
    pub id: String,
    /// Price of one, in the currency of the quote.
    pub price: Decimal,
    /// Where it lives on the table.
    pub home: Home,
}

/// A line with a price and words, for what has no home; its price may be zero.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlainLine {
    /// What it is, as the seller calls it.
    pub words: String,
    /// Its price, in the currency of the quote.
    pub price: Decimal,
}

/// Refuses what can't be the price of a part.
pub(super) fn check_price(currency: Currency, name: &str, price: Decimal) -> Result<(), MoneyError> {
    if price.is_zero() {
        return Err(MoneyError::Price { id: name.to_owned(), price });
    }
    check_plain_price(currency, name, price)
}

/// Refuses what can't be the price of a plain line, which may be zero.
fn check_plain_price(currency: Currency, name: &str, price: Decimal) -> Result<(), MoneyError> {
    if price < Decimal::ZERO || price > MAX_AMOUNT {
        return Err(MoneyError::Price { id: name.to_owned(), price });
    }
    if price.normalize().scale() > currency.digits { Err(MoneyError::Decimals(price)) } else { Ok(()) }
}

/// Base and drops as marked.
pub(super) fn marked_piece(currency: Currency, base: &PricedItem, drops: &[PricedDrop]) -> Result<Decimal, MoneyError> {
    let parts = std::iter::once((&base.id, base.price)).chain(drops.iter().map(|drop| (&drop.id, drop.price)));
    let mut sum = Decimal::ZERO;
    for (id, price) in parts {
        check_price(currency, id, price)?;
        sum = added(sum, price)?;
    }
    Ok(sum)
}

/// The plain lines together.
pub(super) fn marked_plain(currency: Currency, plain: &[PlainLine]) -> Result<Decimal, MoneyError> {
    let mut sum = Decimal::ZERO;
    for line in plain {
        check_plain_price(currency, &line.words, line.price)?;
        sum = added(sum, line.price)?;
    }
    Ok(sum)
}

/// The sum of two amounts, if a table takes as much.
pub(super) fn added(one: Decimal, other: Decimal) -> Result<Decimal, MoneyError> {
    Some(one + other).filter(|sum| *sum <= MAX_AMOUNT).ok_or(MoneyError::TooLarge)
}
