//! Amounts as somebody types them into a form.

use rust_decimal::Decimal;

use crate::{
    money::{Currency, MAX_AMOUNT},
    quoting::excerpt,
};

/// An amount from zero, with a point or a comma before its decimals; nothing where nothing was typed.
pub(super) fn amount(what: &str, typed: &str, currency: Currency) -> Result<Option<Decimal>, String> {
    match number(typed, currency.digits) {
        Some(found) if found.is_none_or(|amount| amount <= MAX_AMOUNT) => Ok(found),
        _ => {
            let like = format!("{:.digits$}", Decimal::from(45), digits = currency.digits as usize);
            Err(format!("“{}” is no {what}; write an amount up to {MAX_AMOUNT}, as {like}.", excerpt(typed.trim())))
        }
    }
}

/// A percentage from 0 to 100; nothing where nothing was typed.
pub(super) fn percent(what: &str, typed: &str) -> Result<Option<Decimal>, String> {
    match number(typed, 4) {
        Some(found) if found.is_none_or(|percent| percent <= Decimal::ONE_HUNDRED) => Ok(found),
        _ => Err(format!("“{}” is no {what}; write a percentage from 0 to 100, as 6.25.", excerpt(typed.trim()))),
    }
}

/// How many there are of something; none where nothing was typed.
pub(super) fn count(what: &str, typed: &str) -> Result<u32, String> {
    let typed = typed.trim();
    if typed.is_empty() {
        return Ok(0);
    }
    let counted = typed.bytes().all(|b| b.is_ascii_digit()).then(|| typed.parse().ok()).flatten();
    counted
        .filter(|count| *count <= 100_000)
        .ok_or_else(|| format!("“{}” is no count of {what}; write a whole number.", excerpt(typed)))
}

/// Digits with one point or comma at most and so many decimals at most; `Some(None)` where nothing was typed.
fn number(typed: &str, decimals: u32) -> Option<Option<Decimal>> {
    let text = typed.trim().replace(',', ".");
    if text.is_empty() {
        return Some(None);
    }
    let edges = text.starts_with(|c: char| c.is_ascii_digit()) && text.ends_with(|c: char| c.is_ascii_digit());
    let plain = edges && text.len() <= 20 && text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    let number: Decimal = if plain { text.parse().ok()? } else { return None };
    (number.scale() <= decimals).then_some(Some(number))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_read_as_they_are_typed() {
        let usd = Currency::from_code("USD").unwrap();
        let read = |typed| amount("stall fee", typed, usd).map(|found| found.map(|amount| amount.to_string()));
        for (typed, found) in [
            ("", None),
            ("  ", None),
            ("45", Some("45")),
            (" 45.5 ", Some("45.5")),
            ("45,50", Some("45.50")),
            ("0", Some("0")),
        ] {
            assert_eq!(read(typed), Ok(found.map(str::to_owned)), "{typed:?}");
        }
        for typed in
            ["-1", "45.505", "1,000", "1.000,50", "1e3", ".5", "5.", "$5", "1000001", "99999999999999999999999"]
        {
            let words = read(typed).unwrap_err();
            assert!(words.contains("no stall fee") && words.contains("45.00"), "{typed:?}: {words}");
        }
        let yen = Currency::from_code("JPY").unwrap();
        assert!(amount("float", "5000", yen).is_ok());
        assert!(amount("float", "50.5", yen).unwrap_err().contains("as 45."), "no decimals in yen");
        assert_eq!(percent("tax", "8,875"), Ok(Some("8.875".parse().unwrap())));
        assert_eq!((count("notes", ""), count("notes", " 12 ")), (Ok(0), Ok(12)));
        assert!(count("notes", "-1").is_err() && count("notes", "1.5").is_err() && count("notes", "100001").is_err());
        assert!(percent("tax", "101").is_err() && percent("tax", "6.25 %").is_err());
    }
}
