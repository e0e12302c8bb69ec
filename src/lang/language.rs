//! The languages, and how each writes numbers and money.

use rust_decimal::Decimal;

use crate::money::Currency;

/// A no-break space: it keeps a number with what belongs to it.
pub(super) const NBSP: &str = "\u{a0}";

/// The texts of a language: one file of the tablet's, and the desk's.
macro_rules! files {
    ($code:literal) => {
        &[
            include_str!(concat!("../../assets/lang/", $code, ".ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/frame.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/tickets.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/bills.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/people.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/shows.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/ledger.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/table.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/tray_photo.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/cautions.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/paper.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/bench.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/labels.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/refusals.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/waiting.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/counting.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/making.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/mistakes.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/bases.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/lots.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/drawers.ftl")),
            include_str!(concat!("../../assets/lang/", $code, "/prices.ftl")),
        ]
    };
}

/// A language of tablet, desk and paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Lang {
    /// English.
    #[default]
    En,
    /// Spanish.
    Es,
    /// French.
    Fr,
    /// German.
    De,
}

impl Lang {
    /// All languages, in the order of the chooser.
    pub const ALL: [Self; 4] = [Self::En, Self::Es, Self::Fr, Self::De];

    /// The code, as in settings and file names.
    pub const fn code(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::Es => "es",
            Self::Fr => "fr",
            Self::De => "de",
        }
    }

    /// The language called `code`.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|lang| lang.code() == code)
    }

    /// Its name in itself.
    pub const fn own_name(self) -> &'static str {
        match self {
            Self::En => "English",
            Self::Es => "Español",
            Self::Fr => "Français",
            Self::De => "Deutsch",
        }
    }

    /// Its Fluent files: the tablet's, and the desk's by their pages.
    pub const fn sources(self) -> &'static [&'static str] {
        match self {
            Self::En => files!("en"),
            Self::Es => files!("es"),
            Self::Fr => files!("fr"),
            Self::De => files!("de"),
        }
    }

    /// The first of the languages that a browser asks for which there is here (RFC 9110, section 12.5.4). Browsers send
    /// them in the order of their weights.
    pub fn asked_for(accepted: &str) -> Option<Self> {
        accepted.split(',').find_map(|one| Self::from_code(&one.trim().get(..2)?.to_ascii_lowercase()))
    }

    /// Decimal mark and thousands mark. Source: CLDR; the French group is its no-break space, wide because the
    /// narrow one is missing from many fonts.
    const fn marks(self) -> (&'static str, &'static str) {
        match self {
            Self::En => (".", ","),
            Self::Fr => (",", NBSP),
            Self::Es | Self::De => (",", "."),
        }
    }

    /// What stands before the decimals.
    pub const fn decimal_mark(self) -> &'static str {
        self.marks().0
    }

    /// A number with exactly the decimals it carries.
    pub fn number(self, value: Decimal) -> String {
        let plain = value.abs().to_string();
        let (whole, fraction) = plain.split_once('.').unwrap_or((&plain, ""));
        let (decimal, thousand) = self.marks();
        // Spanish groups from five digits on (CLDR, minimum grouping digits 2).
        let least = if self == Self::Es { 5 } else { 4 };
        let mut text = String::new();
        if value.is_sign_negative() && !value.is_zero() {
            text.push('−');
        }
        for (i, digit) in whole.chars().enumerate() {
            if i > 0 && whole.len() >= least && (whole.len() - i) % 3 == 0 {
                text.push_str(thousand);
            }
            text.push(digit);
        }
        if !fraction.is_empty() {
            text.push_str(decimal);
            text.push_str(fraction);
        }
        text
    }

    /// An amount with all minor digits and its sign where the locale puts it.
    pub fn money(self, amount: Decimal, currency: Currency) -> String {
        let mut exact = amount;
        exact.rescale(currency.digits);
        let number = self.number(exact);
        match self {
            Self::En => {
                let (minus, digits) = number.strip_prefix('−').map_or(("", number.as_str()), |rest| ("−", rest));
                let gap = if currency.symbol.len() > 1 && currency.symbol.is_ascii() { NBSP } else { "" };
                format!("{minus}{}{gap}{digits}", currency.symbol)
            }
            _ => format!("{number}{NBSP}{}", currency.symbol),
        }
    }
}
