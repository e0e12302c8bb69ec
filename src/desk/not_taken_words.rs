//! Why a ticket of a tablet was not taken, in the language of whoever reads it. Tablets and ledger word it in English.

use rust_decimal::{Decimal, prelude::FromPrimitive};

use super::money_words::money_words;
use crate::{
    lang::{Lang, Texts, keys, say},
    quoting::excerpt,
    ticket::NotTaken,
};

/// The reason as the beginning of a sentence, without a full stop: by its code, or else `english` as it is.
pub(super) fn not_taken_words(texts: &Texts, why: Option<&NotTaken>, english: &str) -> String {
    let Some(why) = why else { return english.to_owned() };
    if let Some(error) = why.sum_error() {
        return money_words(texts, &error);
    }
    let mm = |mm: &f64| figure(texts, *mm);
    match why {
        NotTaken::SameId => say!(texts, "not-taken-same-id"),
        NotTaken::SameNumber => say!(texts, "not-taken-same-number"),
        NotTaken::OtherLines => say!(texts, "not-taken-other-lines"),
        NotTaken::UnknownShow => say!(texts, "not-taken-unknown-show"),
        NotTaken::OtherCurrency { found, taken } => {
            say!(texts, "not-taken-other-currency", found = excerpt(found), taken = excerpt(taken))
        }
        NotTaken::OddId { found } => say!(texts, "not-taken-odd-id", found = excerpt(found)),
        NotTaken::ManyDrops { found, most } => say!(texts, "not-taken-many-drops", n = *found, most = *most),
        NotTaken::OddLength { mm: long, least_mm, most_mm } => {
            say!(texts, "not-taken-odd-length", mm = mm(long), least = mm(least_mm), most = mm(most_mm))
        }
        NotTaken::OddNeck { mm: around, least_mm, most_mm } => {
            say!(texts, "not-taken-odd-neck", mm = mm(around), least = mm(least_mm), most = mm(most_mm))
        }
        NotTaken::OtherDigit => say!(texts, "not-taken-other-digit"),
        NotTaken::NotAsked => say!(texts, "not-taken-not-asked"),
        NotTaken::Unreadable { status, said } => {
            say!(texts, "not-taken-unreadable", status = *status, said = said_again(texts, said))
        }
        NotTaken::NoAnswer { why } => say!(texts, "not-taken-no-answer", why = excerpt(why)),
        NotTaken::Later { said } => said_again(texts, said),
        NotTaken::DeskFailed { status, said } => {
            say!(texts, "not-taken-desk-failed", status = *status, said = said_again(texts, said))
        }
        NotTaken::Price { .. } | NotTaken::TooLarge | NotTaken::Decimals { .. } | NotTaken::Sum => english.to_owned(),
    }
}

/// What a desk said to a tablet in English, in the reader's language where it is known again: its texts without places.
fn said_again(texts: &Texts, said: &str) -> String {
    let english = Texts::of(Lang::En);
    let is_refusal = |key: &String| key.starts_with("ledger-") || key.starts_with("refused-");
    let known = keys(Lang::En).into_iter().filter(is_refusal).find(|key| english.get(key) == said);
    known.map_or_else(|| excerpt(said), |key| texts.get(&key))
}

/// Millimetres as the language writes them; what is no number of a piece is shown as it is.
fn figure(texts: &Texts, mm: f64) -> String {
    match Decimal::from_f64(mm).filter(|_| mm.abs() < 1e7) {
        Some(figure) => texts.lang.number(figure.round_dp(1).normalize()),
        None => format!("{mm:e}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all() -> Vec<NotTaken> {
        let words = |text: &str| text.to_owned();
        vec![
            NotTaken::SameId,
            NotTaken::SameNumber,
            NotTaken::OtherLines,
            NotTaken::Price { id: words("key"), price: Decimal::TEN },
            NotTaken::TooLarge,
            NotTaken::Decimals { amount: Decimal::TEN },
            NotTaken::Sum,
            NotTaken::UnknownShow,
            NotTaken::OtherCurrency { found: words("CHF"), taken: words("EUR") },
            NotTaken::OddId { found: words("Ä\u{202e}") },
            NotTaken::ManyDrops { found: 1001, most: 1000 },
            NotTaken::OddLength { mm: 1e9, least_mm: 50.5, most_mm: 2000.0 },
            NotTaken::OddNeck { mm: f64::NAN, least_mm: 150.0, most_mm: 700.0 },
            NotTaken::OtherDigit,
            NotTaken::NotAsked,
            NotTaken::Unreadable { status: 422, said: words("x") },
            NotTaken::NoAnswer { why: words("timeout") },
            NotTaken::Later { said: Texts::of(Lang::En).get("refused-practice-waits") },
            NotTaken::DeskFailed { status: 507, said: Texts::of(Lang::En).get("ledger-disk-full") },
        ]
    }

    /// Every reason is said in every language, without English in it and with its facts; in English as tablets have it.
    #[test]
    fn every_reason_is_said_in_every_language() {
        for why in all() {
            let english = why.to_string();
            for lang in [Lang::De, Lang::Fr, Lang::Es] {
                let said = not_taken_words(Texts::of(lang), Some(&why), &english);
                assert!(!said.is_empty() && said != english && !said.contains("not-taken"), "{lang:?}: {said}");
                assert!(!said.contains('\u{202e}'), "{lang:?}: {said}");
            }
        }
        let de = Texts::of(Lang::De);
        let length = not_taken_words(de, Some(&NotTaken::OddLength { mm: 1e9, least_mm: 50.5, most_mm: 2000.0 }), "");
        assert!(length.contains("1e9") && length.contains("50,5") && length.contains("2.000"), "{length}");
        let full = NotTaken::DeskFailed { status: 507, said: Texts::of(Lang::En).get("ledger-disk-full") };
        assert!(not_taken_words(de, Some(&full), "").contains(&de.get("ledger-disk-full")));
        assert_eq!(not_taken_words(de, None, "of an earlier version"), "of an earlier version");
    }

    /// What a tablet keeps of a reason is read again as it was; a code without a form would be lost.
    #[test]
    fn every_reason_reads_back() {
        for why in all().into_iter().filter(|why| !matches!(why, NotTaken::OddNeck { .. })) {
            let json = serde_json::to_string(&why).unwrap();
            assert_eq!(serde_json::from_str::<NotTaken>(&json).unwrap(), why, "{json}");
        }
    }
}
