//! Why an amount is none, and why there is no sum, in the language of whoever reads it.

use crate::{
    lang::{Message, Texts, message},
    money::{AmountError, MAX_AMOUNT, MoneyError, WantedAmount},
    quoting::excerpt,
};

/// Why a text is no amount, as the beginning of a sentence, without a full stop.
pub(super) fn amount_message(error: &AmountError) -> Message {
    let found = excerpt(&error.found);
    match error.wanted {
        WantedAmount::Price => message!("amount-no-price", found = found),
        WantedAmount::AboveZero => message!("amount-not-above-zero", found = found),
        WantedAmount::UpToMost => message!("amount-above-most", found = found, most = MAX_AMOUNT),
        WantedAmount::In(currency) => {
            message!("amount-decimals", found = found, currency = currency.code, n = currency.digits)
        }
        WantedAmount::Percent => message!("amount-no-percent", found = found),
    }
}

/// The same in words.
pub(super) fn amount_words(texts: &Texts, error: &AmountError) -> String {
    texts.say(&amount_message(error))
}

/// Why there is no sum, as the beginning of a sentence, without a full stop.
pub(super) fn money_words(texts: &Texts, error: &MoneyError) -> String {
    texts.say(&match error {
        MoneyError::Price { id, price } => {
            message!("money-price", price = *price, id = excerpt(id), most = MAX_AMOUNT)
        }
        MoneyError::TooLarge => message!("money-too-large", most = MAX_AMOUNT),
        MoneyError::Decimals(amount) => message!("money-decimals", amount = *amount),
        MoneyError::Absurd(amount) => message!("money-absurd", amount = *amount),
        MoneyError::Lines => message!("money-lines"),
        MoneyError::Percent(percent) => message!("money-percent", percent = *percent),
        MoneyError::BelowZero(amount) => message!("money-below-zero", amount = *amount),
        MoneyError::AboveTotal { wish, total } => message!("money-above-total", wish = *wish, total = *total),
        MoneyError::TooLittle { given, missing } => message!("money-too-little", given = *given, missing = *missing),
        MoneyError::RewardPercent(percent) => message!("money-reward-percent", percent = *percent),
        MoneyError::RewardSum(amount) => message!("money-reward-sum", amount = *amount, most = MAX_AMOUNT),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{lang::Lang, money::Currency};
    use rust_decimal::Decimal;

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn amounts() -> Vec<AmountError> {
        let [yen, dinar] = ["JPY", "KWD"].map(|code| WantedAmount::In(Currency::from_code(code).unwrap()));
        let price = [WantedAmount::Price, WantedAmount::AboveZero, WantedAmount::UpToMost];
        let all = price.into_iter().chain([yen, dinar, WantedAmount::Percent]);
        all.map(|wanted| AmountError { found: "8.5 or so".to_owned(), wanted }).collect()
    }

    fn sums() -> Vec<MoneyError> {
        let (less, more) = (d("-0.05"), d("1234567.5"));
        vec![
            MoneyError::Price { id: "key-heart".to_owned(), price: more },
            MoneyError::TooLarge,
            MoneyError::Decimals(d("0.005")),
            MoneyError::Absurd(more),
            MoneyError::Lines,
            MoneyError::Percent(d("100.5")),
            MoneyError::BelowZero(less),
            MoneyError::AboveTotal { wish: d("20"), total: d("19.50") },
            MoneyError::TooLittle { given: d("5.00"), missing: d("1.50") },
            MoneyError::RewardPercent(d("100.5")),
            MoneyError::RewardSum(more),
        ]
    }

    /// How the program's own messages write what the page writes in the reader's way.
    fn as_logged(words: &str) -> String {
        words.replace('\u{2212}', "-").replace("1,000,000", "1000000").replace("1,234,567", "1234567")
    }

    #[test]
    fn english_says_what_the_terminal_says_and_every_language_says_all_of_it() {
        let english = Texts::of(Lang::En);
        let mut all: Vec<(String, [String; 4])> = vec![];
        for error in amounts() {
            all.push((error.to_string(), Lang::ALL.map(|lang| amount_words(Texts::of(lang), &error))));
        }
        for error in sums() {
            all.push((error.to_string(), Lang::ALL.map(|lang| money_words(Texts::of(lang), &error))));
        }
        for (logged, [said, others @ ..]) in &all {
            assert_eq!(&as_logged(said), logged);
            for (other, lang) in others.iter().zip(&Lang::ALL[1..]) {
                assert_ne!(other, said, "{lang:?}");
                assert!(!other.contains(['{', '$']) && other.contains(' '), "{lang:?}: {other}");
                let key = other.starts_with("amount-") || other.starts_with("money-");
                assert!(!key && !other.ends_with('.'), "{lang:?}: {other}");
            }
        }
        let too_much = MoneyError::Absurd(d("1234567.5"));
        assert!(money_words(Texts::of(Lang::De), &too_much).contains("1.234.567,5"), "as German writes it (CLDR)");
        assert!(money_words(english, &too_much).contains("1,234,567.5"), "as English writes it (CLDR)");
    }
}
