//! Amounts as somebody types them: with a point or a comma before the decimals, and with the marks between thousands that
//! the pages themselves write.

use rust_decimal::Decimal;

use crate::{
    desk::money_words::amount_words,
    lang::{Texts, say},
    money::{AmountError, Currency, MAX_AMOUNT, PlainLine, WantedAmount, parse_percent, parse_price},
    quoting::excerpt,
    ticket::{NumberError, TicketNumber},
};

use super::words::sentence;

/// Marks between thousands beside point and comma: spaces of three widths and two apostrophes. Source: CLDR, grouping of the
/// locales of Europe and the Americas.
const BETWEEN_THOUSANDS: [char; 5] = [' ', '\u{a0}', '\u{202f}', '\'', '’'];

/// A ticket's number as it is typed, or as a scanner types what stands in a slip's code: an address that ends with it.
pub(super) fn typed_number(typed: &str) -> Result<TicketNumber, NumberError> {
    typed.rsplit('/').next().unwrap_or_default().parse()
}

/// A price above zero.
pub(super) fn typed_price(currency: Currency, typed: &str) -> Result<Decimal, AmountError> {
    parse_price(&with_point(typed), currency).map_err(|error| as_it_stood(error, typed))
}

/// The same with as many decimals as the currency has, as the table's files write it; otherwise what is wrong with it, in words.
pub(super) fn price_for_a_file(texts: &Texts, currency: Currency, typed: &str) -> Result<Decimal, String> {
    let mut price = typed_price(currency, typed).map_err(|error| sentence(&amount_words(texts, &error)))?;
    price.rescale(currency.digits);
    Ok(price)
}

/// A measure above zero, without its unit.
pub(super) fn typed_measure(typed: &str) -> Option<Decimal> {
    let typed = with_point(typed);
    let is_plain = typed.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    let number: Decimal = typed.parse().ok().filter(|_| is_plain)?;
    (number > Decimal::ZERO && number.scale() <= 3).then(|| number.normalize())
}

/// A number that may have a sign before it, as in `-0.50`.
pub(super) fn typed_signed(typed: &str) -> Option<Decimal> {
    let typed = typed.trim();
    let (sign, rest) = match typed.strip_prefix(['-', '−']) {
        Some(rest) => (-Decimal::ONE, rest),
        None => (Decimal::ONE, typed.strip_prefix('+').unwrap_or(typed)),
    };
    typed_measure(rest).map(|number| sign * number)
}

/// A percentage from 0 to 100.
pub(super) fn typed_percent(typed: &str) -> Result<Decimal, AmountError> {
    parse_percent(&with_point(typed)).map_err(|error| as_it_stood(error, typed))
}

/// An amount that may be zero.
fn typed_from_zero(currency: Currency, typed: &str) -> Result<Decimal, AmountError> {
    match typed_price(currency, typed) {
        Err(AmountError { wanted: WantedAmount::AboveZero, .. }) => Ok(Decimal::ZERO),
        read => read,
    }
}

/// A line for what has no home; nothing is a price. What is wrong with it in plain words.
pub(super) fn plain_line(texts: &Texts, currency: Currency, words: &str, price: &str) -> Result<PlainLine, String> {
    let price = typed_from_zero(currency, price).map_err(|error| sentence(&amount_words(texts, &error)))?;
    Ok(PlainLine { words: words.trim().to_owned(), price })
}

/// What was typed into a field that may be left empty: nothing there is no mistake.
pub(super) fn unless_empty<T, E>(typed: &str, read: impl FnOnce(&str) -> Result<T, E>) -> Result<Option<T>, E> {
    let typed = typed.trim();
    if typed.is_empty() { Ok(None) } else { read(typed).map(Some) }
}

/// An amount from zero; what is wrong with it is said by the text called `wrong`.
pub(super) fn amount(
    texts: &Texts,
    wrong: &'static str,
    typed: &str,
    currency: Currency,
) -> Result<Option<Decimal>, String> {
    unless_empty(typed, |typed| typed_from_zero(currency, typed)).map_err(|error| {
        let mut like = Decimal::from(45);
        like.rescale(currency.digits);
        let number = |number| texts.lang.number(number).into();
        let found = excerpt(&error.found);
        texts.with(wrong, &[("found", found.into()), ("most", number(MAX_AMOUNT)), ("like", number(like))])
    })
}

/// The tax of a place, in percent.
pub(super) fn tax(texts: &Texts, typed: &str) -> Result<Option<Decimal>, String> {
    let read = |typed: &str| match typed_percent(typed) {
        Ok(percent) if percent.scale() <= 4 => Ok(percent),
        _ => Err(excerpt(typed)),
    };
    unless_empty(typed, read).map_err(|found| {
        let like = texts.lang.number(Decimal::new(625, 2));
        say!(texts, "typed-no-tax", found = found, like = like)
    })
}

/// How many there are of something; none where nothing was typed.
pub(super) fn count(texts: &Texts, piece: &str, typed: &str) -> Result<u32, String> {
    let typed = typed.trim();
    if typed.is_empty() {
        return Ok(0);
    }
    let counted = typed.bytes().all(|b| b.is_ascii_digit()).then(|| typed.parse().ok()).flatten();
    counted
        .filter(|count| *count <= 100_000)
        .ok_or_else(|| say!(texts, "typed-no-count", found = excerpt(typed), piece = piece))
}

/// A number as somebody would type it in the language of `texts`, for a field that shows what was told before.
pub(super) fn as_typed(texts: &Texts, number: Decimal) -> String {
    number.normalize().to_string().replace('.', texts.lang.decimal_mark())
}

/// What stood there is told as it stood.
fn as_it_stood(error: AmountError, typed: &str) -> AmountError {
    AmountError { found: typed.trim().to_owned(), ..error }
}

/// The number with a point before its decimals and nothing between its thousands. A single point or comma stands before
/// decimals, whatever the language: where it should part thousands, the amount has too many decimals and is refused.
fn with_point(typed: &str) -> String {
    let typed = typed.trim();
    let last = typed.rfind(['.', ',']).filter(|at| typed[*at..].len() > 1);
    let (whole, decimals) = match last {
        Some(at) if typed.matches(&typed[at..=at]).count() == 1 => (&typed[..at], Some(&typed[at + 1..])),
        _ => (typed, None),
    };
    match (without_marks(whole), decimals) {
        (Some(whole), Some(decimals)) => format!("{whole}.{decimals}"),
        (Some(whole), None) => whole,
        (None, _) => typed.to_owned(),
    }
}

/// Digits with one kind of mark between their thousands, or with none.
fn without_marks(whole: &str) -> Option<String> {
    let Some(mark) = whole.chars().find(|c| !c.is_ascii_digit()) else { return Some(whole.to_owned()) };
    let mut groups = whole.split(mark);
    let is_first = groups.next().is_some_and(|first| (1..=3).contains(&first.len()));
    let is_mark = BETWEEN_THOUSANDS.contains(&mark) || [',', '.'].contains(&mark);
    let is_group = |group: &str| group.len() == 3 && group.bytes().all(|b| b.is_ascii_digit());
    (is_mark && is_first && groups.all(is_group)).then(|| whole.replace(mark, ""))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lang::Lang;

    fn usd() -> Currency {
        Currency::from_code("USD").unwrap()
    }

    /// Source of the marks: CLDR, decimal and grouping signs of en, de, es, fr and de-CH.
    #[test]
    fn amounts_are_read_as_each_locale_writes_them() {
        for (typed, read) in [
            ("8.5", "8.5"),
            (" 8,50 ", "8.50"),
            ("45", "45"),
            ("1,234.50", "1234.50"),
            ("1.234,50", "1234.50"),
            ("1\u{a0}234,50", "1234.50"),
            ("1\u{202f}234,5", "1234.5"),
            ("1’234.50", "1234.50"),
            ("1.000.000", "1000000"),
            ("12 345", "12345"),
        ] {
            assert_eq!(typed_price(usd(), typed).map(|price| price.to_string()), Ok(read.to_owned()), "{typed:?}");
        }
        for lang in Lang::ALL {
            for amount in ["0.5", "999.99", "1234.5", "54321", "999999.99"] {
                let (exact, texts): (Decimal, _) = (amount.parse().unwrap(), Texts::of(lang));
                assert_eq!(typed_price(usd(), &as_typed(texts, exact)), Ok(exact), "{lang:?}");
                let mut shown = exact;
                shown.rescale(2);
                assert_eq!(typed_price(usd(), &lang.number(shown)), Ok(exact), "{lang:?}");
            }
        }
    }

    #[test]
    fn what_is_unclear_is_refused_and_told_as_it_stood() {
        for typed in [
            "0",
            "-1",
            "8.505",
            "1,000",
            "1.000",
            "1,00,000",
            "1,00.5",
            "1.2.3",
            "8,,50",
            ",5",
            "5.",
            "5,",
            "1e3",
            "$5",
            "eight",
            "1 00",
            "1000001",
            "1,000,001",
            "1234,567.00",
            "99999999999999999999999",
            "1'234’567",
        ] {
            let error = typed_price(usd(), typed).unwrap_err();
            assert_eq!(error.found, typed);
        }
        assert_eq!(typed_percent("12,5"), Ok("12.5".parse().unwrap()));
        assert!(typed_percent("101").is_err() && typed_percent("6.25 %").is_err() && typed_percent("-1").is_err());
    }

    #[test]
    fn what_may_be_left_empty_is_read_or_told() {
        let (english, german) = (Texts::of(Lang::En), Texts::of(Lang::De));
        let read = |typed| amount(english, "typed-no-fee", typed, usd()).map(|found| found.map(|fee| fee.to_string()));
        for (typed, found) in [("", None), ("  ", None), (" 45.5 ", Some("45.5")), ("45,50", Some("45.50"))] {
            assert_eq!(read(typed), Ok(found.map(str::to_owned)), "{typed:?}");
        }
        assert_eq!(read("0,00").unwrap().unwrap().parse::<Decimal>(), Ok(Decimal::ZERO));
        for typed in ["-1", "45.505", "1,000", "1000001"] {
            let words = read(typed).unwrap_err();
            assert!(words.contains(&format!("“{typed}” is no stall fee")) && words.contains("45.00"), "{words}");
        }
        let words = amount(german, "typed-no-fee", "viel", usd()).unwrap_err();
        assert!(words.contains("„viel“") && words.contains("1.000.000") && words.contains("45,00"), "{words}");
        let yen = Currency::from_code("JPY").unwrap();
        assert!(amount(english, "typed-no-float", "5000", yen).is_ok());
        assert!(amount(english, "typed-no-float", "50.5", yen).unwrap_err().contains("as 45."), "no decimals in yen");
        assert_eq!(tax(english, "8,875"), Ok(Some("8.875".parse().unwrap())));
        assert_eq!(tax(english, ""), Ok(None));
        assert!(tax(german, "101").unwrap_err().contains("6,25") && tax(english, "6.25001").is_err());
        assert_eq!((count(english, "$5", ""), count(english, "$5", " 12 ")), (Ok(0), Ok(12)));
        for typed in ["-1", "1.5", "100001"] {
            assert!(count(english, "$5", typed).unwrap_err().contains("$5"), "{typed}");
        }
    }

    #[test]
    fn a_line_without_a_home_may_cost_nothing() {
        let line = |price| plain_line(Texts::of(Lang::En), usd(), " Her own ", price);
        assert_eq!(line("0").map(|line| (line.words, line.price)), Ok(("Her own".to_owned(), Decimal::ZERO)));
        assert_eq!(line("2,50").map(|line| line.price), Ok("2.50".parse().unwrap()));
        assert!(line("-1").is_err() && line("").is_err());
    }
}
