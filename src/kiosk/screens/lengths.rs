//! Lengths of a necklace, and where it falls, in the guest's words.

use rust_decimal::Decimal;

use crate::{
    catalog::Catalog,
    caution::Region,
    craft::{BodyPlace, Length},
    guest::{Derived, Trouble, length},
    hang::HangError,
    lang::{Lang, Texts},
};

/// The length in the unit of the table's region; where that is inches, also in centimetres for who reads another language.
pub(super) fn written(length: Length, region: Region, lang: Lang) -> String {
    let number =
        |value: f64, digits| lang.number(Decimal::try_from(value).unwrap_or_default().round_dp(digits).normalize());
    let cm = |digits| format!("{}\u{a0}cm", number(length.mm() / 10.0, digits));
    match (region, lang) {
        (Region::US, Lang::En) => format!("{}\u{a0}in", number(length.inches(), 1)),
        (Region::US, _) => format!("{}\u{a0}in · {}", number(length.inches(), 1), cm(0)),
        _ => cm(1),
    }
}

/// Where the chain of the piece falls on its wearer, in the guest's words, or why it does not hang; nothing for a bangle.
pub(super) fn falls_at(derived: &Derived, catalog: &Catalog, texts: &Texts) -> String {
    if let Some(trouble) = &derived.trouble {
        return texts.get(trouble_key(trouble));
    }
    let Some(place) = length::falls_at(derived, catalog) else { return String::new() };
    texts.get(match place {
        BodyPlace::Throat => "falls-throat",
        BodyPlace::NeckBase => "falls-neck",
        BodyPlace::Collarbone => "falls-collarbone",
        BodyPlace::BelowCollarbone => "falls-below-collarbone",
        BodyPlace::Breastbone => "falls-breastbone",
        BodyPlace::BelowBreastbone => "falls-low",
    })
}

/// The text that says why a piece is no piece.
pub(super) fn trouble_key(trouble: &Trouble) -> &'static str {
    match trouble {
        Trouble::Hang(HangError::TooShortForNeck { .. }) => "trouble-too-short",
        _ => "trouble-other",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_written_in_the_unit_of_the_region() {
        assert_eq!(written(Length::from_inches(24.0), Region::US, Lang::En), "24\u{a0}in");
        assert_eq!(written(Length::from_inches(24.0), Region::US, Lang::De), "24\u{a0}in · 61\u{a0}cm");
        assert_eq!(written(Length::from_mm(605.0), Region::EU, Lang::De), "60,5\u{a0}cm");
    }
}
