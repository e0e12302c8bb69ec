//! Amounts of money in the files: prices and percentages, in quotes.

use rust_decimal::Decimal;

use crate::{
    money::{Currency, MAX_AMOUNT, WantedAmount, parse_percent, parse_price},
    ron_tree::{Detail, Node, Reader, detail, what},
};

/// A price in quotes.
pub(super) fn price(reader: &mut Reader<'_>, node: &Node, currency: Currency) -> Option<Decimal> {
    let text = reader.text(node, what("a-price", "a price"))?;
    match parse_price(text, currency) {
        Ok(price) => Some(price),
        Err(error) => reader.unlike(node, wanted(error.wanted)),
    }
}

/// A percentage in quotes.
pub(super) fn percent(reader: &mut Reader<'_>, node: &Node) -> Option<Decimal> {
    let text = reader.text(node, what("a-percentage", "a percentage"))?;
    match parse_percent(text) {
        Ok(percent) => Some(percent),
        Err(error) => reader.unlike(node, wanted(error.wanted)),
    }
}

fn wanted(amount: WantedAmount) -> Detail {
    match amount {
        WantedAmount::Price => detail!("a-price-as-in", "a price; write \"8.50\""),
        WantedAmount::AboveZero => detail!("a-price-above-zero", "a price above zero"),
        WantedAmount::UpToMost => detail!("a-price-up-to", "a price up to {most}", most = MAX_AMOUNT.to_string()),
        WantedAmount::In(currency) => detail!(
            "a-price-in",
            "a price in {currency} with at most {digits} decimals",
            currency = currency.code,
            digits = currency.digits
        ),
        WantedAmount::Percent => detail!("a-percentage-as-in", "a percentage from 0 to 100; write \"6.25\""),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An amount says the same of itself in the terminal as a file's mistake does.
    #[test]
    fn a_mistake_says_what_the_amount_itself_says() {
        let dollars = WantedAmount::In(Currency::from_code("USD").unwrap());
        let others = [WantedAmount::Price, WantedAmount::AboveZero, WantedAmount::UpToMost, WantedAmount::Percent];
        for amount in others.into_iter().chain([dollars]) {
            assert_eq!(wanted(amount).english(), amount.to_string());
        }
    }
}
