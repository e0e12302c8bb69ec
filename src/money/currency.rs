//! Currencies by ISO 4217.

use rust_decimal::Decimal;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error as _};

/// A currency a table can price in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Currency {
    /// The alphabetic code.
    pub code: &'static str,
    /// Decimal digits of the minor unit.
    pub digits: u32,
    /// The usual sign.
    pub symbol: &'static str,
    /// The smallest step in which cash is paid, as a text, where coins of the minor unit are gone.
    cash_step: Option<&'static str>,
}

const fn c(code: &'static str, digits: u32, symbol: &'static str, cash_step: Option<&'static str>) -> Currency {
    Currency { code, digits, symbol, cash_step }
}

/// Source of codes and digits: ISO 4217 list one, 2024-06-25.
/// Source of cash steps: Sweden, Lag (1970:1029); Canada, Budget 2012; Switzerland, SR 941.103.3 and common practice;
/// Australia and New Zealand, common practice (secondary sources).
const CURRENCIES: &[Currency] = &[
    c("USD", 2, "$", None),
    c("EUR", 2, "€", None),
    c("GBP", 2, "£", None),
    c("CAD", 2, "$", Some("0.05")),
    c("AUD", 2, "$", Some("0.05")),
    c("NZD", 2, "$", Some("0.10")),
    c("CHF", 2, "CHF", Some("0.05")),
    c("SEK", 2, "kr", Some("1")),
    c("NOK", 2, "kr", Some("1")),
    c("DKK", 2, "kr", Some("0.50")),
    c("JPY", 0, "¥", None),
    c("INR", 2, "₹", None),
    c("MXN", 2, "$", None),
    c("KWD", 3, "KWD", None),
    c("BHD", 3, "BHD", None),
];

impl Currency {
    /// The currency with this alphabetic code.
    pub fn from_code(code: &str) -> Option<Self> {
        CURRENCIES.iter().copied().find(|currency| currency.code == code)
    }

    /// Every known code, for messages.
    pub fn codes() -> impl Iterator<Item = &'static str> {
        CURRENCIES.iter().map(|currency| currency.code)
    }

    /// One minor unit.
    pub fn minor_unit(self) -> Decimal {
        Decimal::new(1, self.digits)
    }

    /// The step in which cash is paid.
    pub fn cash_step(self) -> Decimal {
        self.cash_step.and_then(|step| step.parse().ok()).unwrap_or_else(|| self.minor_unit())
    }

    /// `amount` with all minor digits.
    pub(super) fn written(self, mut amount: Decimal) -> Decimal {
        amount.rescale(self.digits);
        amount
    }

    /// Plain text with all minor digits and the sign, as the desk and the terminal write it.
    pub fn plain(self, amount: Decimal) -> String {
        let digits = self.digits as usize;
        let sign = if amount.is_sign_negative() && !amount.is_zero() { "-" } else { "" };
        let gap = if self.symbol.len() > 1 && self.symbol.is_ascii() { " " } else { "" };
        format!("{sign}{}{gap}{:.digits$}", self.symbol, amount.abs())
    }
}

impl Serialize for Currency {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.code)
    }
}

impl<'de> Deserialize<'de> for Currency {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let code = String::deserialize(deserializer)?;
        Self::from_code(&code).ok_or_else(|| D::Error::custom(format!("{code:?} is not a currency code known here")))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Digits: ISO 4217 list one, published 2024-06-25; those of NOK, DKK and MXN by CLDR, read through Babel 2.18. Cash
    /// steps: CLDR has 0.05 for CAD and CHF, 0.50 for DKK and whole units for SEK and NOK; those of AUD and NZD by secondary
    /// sources.
    #[test]
    fn every_currency_is_as_published() {
        let published = [
            ("USD", 2, "0.01"),
            ("EUR", 2, "0.01"),
            ("GBP", 2, "0.01"),
            ("CAD", 2, "0.05"),
            ("AUD", 2, "0.05"),
            ("NZD", 2, "0.10"),
            ("CHF", 2, "0.05"),
            ("SEK", 2, "1"),
            ("NOK", 2, "1"),
            ("DKK", 2, "0.50"),
            ("JPY", 0, "1"),
            ("INR", 2, "0.01"),
            ("MXN", 2, "0.01"),
            ("KWD", 3, "0.001"),
            ("BHD", 3, "0.001"),
        ];
        assert_eq!(published.map(|(code, ..)| code).to_vec(), Currency::codes().collect::<Vec<_>>(), "each is checked");
        for (code, digits, cash_step) in published {
            let currency = Currency::from_code(code).unwrap();
            assert_eq!((currency.digits, currency.cash_step()), (digits, cash_step.parse().unwrap()), "{code}");
        }
        assert_eq!(Currency::from_code("usd"), None);
    }

    #[test]
    fn plain_amounts_show_every_minor_digit() {
        let plain = |code: &str, amount: &str| Currency::from_code(code).unwrap().plain(amount.parse().unwrap());
        assert_eq!(plain("USD", "8.5"), "$8.50");
        assert_eq!(plain("JPY", "850"), "¥850");
        assert_eq!(plain("CHF", "-0.05"), "-CHF 0.05");
    }
}
