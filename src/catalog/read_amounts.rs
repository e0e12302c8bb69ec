//! Amounts of money in the files: prices and percentages, in quotes.

use rust_decimal::Decimal;

use crate::{
    money::{Currency, parse_percent, parse_price},
    ron_tree::{Node, Reader},
};

/// A price in quotes.
pub(super) fn price(reader: &mut Reader<'_>, node: &Node, currency: Currency) -> Option<Decimal> {
    let text = reader.text(node, "a price")?;
    match parse_price(text, currency) {
        Ok(price) => Some(price),
        Err(error) => reader.unlike(node, &error.wanted.to_string()),
    }
}

/// A percentage in quotes.
pub(super) fn percent(reader: &mut Reader<'_>, node: &Node) -> Option<Decimal> {
    let text = reader.text(node, "a percentage")?;
    match parse_percent(text) {
        Ok(percent) => Some(percent),
        Err(error) => reader.unlike(node, &error.wanted.to_string()),
    }
}
