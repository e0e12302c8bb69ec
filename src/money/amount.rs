//! Reading prices and percentages.

use rust_decimal::Decimal;

use super::Currency;
use crate::quoting::quoted;

/// No single price or sum at a jewellery table is larger; a figure above it is a slip of the finger.
pub const MAX_AMOUNT: Decimal = Decimal::from_parts(1_000_000, 0, 0, false, 0);

/// Why a text is no price or percentage.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{} is not {wanted}", quoted(.found))]
pub struct AmountError {
    /// The text as it stood.
    pub found: String,
    /// What it should have been.
    pub wanted: WantedAmount,
}

/// What a text should have been.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum WantedAmount {
    /// Digits of a price.
    #[error("a price; write \"8.50\"")]
    Price,
    /// More than nothing.
    #[error("a price above zero")]
    AboveZero,
    /// No more than there is at any table.
    #[error("a price up to {MAX_AMOUNT}")]
    UpToMost,
    /// No smaller part than the currency has.
    #[error("a price in {} with at most {} decimals", .0.code, .0.digits)]
    In(Currency),
    /// A percentage.
    #[error("a percentage from 0 to 100; write \"6.25\"")]
    Percent,
}

/// Reads a price: above zero, at most [`MAX_AMOUNT`], with no more decimals than the currency has.
///
/// # Errors
/// What was found and what it should have been.
pub fn parse_price(text: &str, currency: Currency) -> Result<Decimal, AmountError> {
    let error = |wanted| AmountError { found: text.to_owned(), wanted };
    let price = plain(text).ok_or_else(|| error(WantedAmount::Price))?;
    if price.is_zero() {
        Err(error(WantedAmount::AboveZero))
    } else if price > MAX_AMOUNT {
        Err(error(WantedAmount::UpToMost))
    } else if price.scale() > currency.digits {
        Err(error(WantedAmount::In(currency)))
    } else {
        Ok(price)
    }
}

/// Reads a percentage from 0 to 100.
///
/// # Errors
/// What was found and what it should have been.
pub fn parse_percent(text: &str) -> Result<Decimal, AmountError> {
    plain(text)
        .filter(|percent| *percent <= Decimal::ONE_HUNDRED)
        .ok_or_else(|| AmountError { found: text.to_owned(), wanted: WantedAmount::Percent })
}

/// Digits with at most one point: no sign, no exponent, no grouping.
fn plain(text: &str) -> Option<Decimal> {
    let digits = text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    let edges = text.starts_with(|c: char| c.is_ascii_digit()) && text.ends_with(|c: char| c.is_ascii_digit());
    if digits && edges && text.len() <= 20 { text.parse().ok() } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_price_is_refused() {
        let usd = Currency::from_code("USD").unwrap();
        assert_eq!(parse_price("8.50", usd).unwrap().to_string(), "8.50");
        for text in [
            "",
            "0",
            "0.00",
            "-1",
            "+1",
            "1e3",
            "8,50",
            "8.505",
            ".5",
            "5.",
            "1.2.3",
            "1000001",
            "99999999999999999999",
            "NaN",
            "٣",
        ] {
            assert!(parse_price(text, usd).is_err(), "{text:?}");
        }
        assert!(parse_price("850.5", Currency::from_code("JPY").unwrap()).is_err());
        assert!(parse_percent("6.25").is_ok() && parse_percent("100.01").is_err());
    }
}
