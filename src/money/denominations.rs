//! The notes and coins that are usual in each currency.

use rust_decimal::Decimal;

use super::Currency;

/// What a currency is paid with, in ascending order; every coin is worth less than every note.
struct Pieces {
    code: &'static str,
    coins: &'static [Decimal],
    notes: &'static [Decimal],
}

/// `units` of ten to the minus `digits`.
const fn of(units: u32, digits: u32) -> Decimal {
    Decimal::from_parts(units, 0, 0, false, digits)
}

const fn one(units: u32) -> Decimal {
    of(units, 0)
}

const fn hundredth(units: u32) -> Decimal {
    of(units, 2)
}

const fn thousandth(units: u32) -> Decimal {
    of(units, 3)
}

/// Whose denominations they are stands at each. From memory, but for what is said to have been read. What is legal tender
/// but hardly met is left out, so that nobody is told to give it back.
const PIECES: &[Pieces] = &[
    // Federal Reserve, United States Mint. Without the 2 dollar note, half dollars and dollar coins.
    Pieces {
        code: "USD",
        coins: &[hundredth(1), hundredth(5), hundredth(10), hundredth(25)],
        notes: &[one(1), one(5), one(10), one(20), one(50), one(100)],
    },
    // European Central Bank. The 500 euro note has not been issued since 2019.
    Pieces {
        code: "EUR",
        coins: &[hundredth(1), hundredth(2), hundredth(5), hundredth(10), hundredth(20), hundredth(50), one(1), one(2)],
        notes: &[one(5), one(10), one(20), one(50), one(100), one(200)],
    },
    // Bank of England, Royal Mint.
    Pieces {
        code: "GBP",
        coins: &[hundredth(1), hundredth(2), hundredth(5), hundredth(10), hundredth(20), hundredth(50), one(1), one(2)],
        notes: &[one(5), one(10), one(20), one(50)],
    },
    // Bank of Canada, Royal Canadian Mint. No cent since 2013; without the half dollar.
    Pieces {
        code: "CAD",
        coins: &[hundredth(5), hundredth(10), hundredth(25), one(1), one(2)],
        notes: &[one(5), one(10), one(20), one(50), one(100)],
    },
    // Reserve Bank of Australia, Royal Australian Mint.
    Pieces {
        code: "AUD",
        coins: &[hundredth(5), hundredth(10), hundredth(20), hundredth(50), one(1), one(2)],
        notes: &[one(5), one(10), one(20), one(50), one(100)],
    },
    // Reserve Bank of New Zealand.
    Pieces {
        code: "NZD",
        coins: &[hundredth(10), hundredth(20), hundredth(50), one(1), one(2)],
        notes: &[one(5), one(10), one(20), one(50), one(100)],
    },
    // Swiss National Bank, Swissmint; the smallest coin by SR 941.103.3.
    Pieces {
        code: "CHF",
        coins: &[hundredth(5), hundredth(10), hundredth(20), hundredth(50), one(1), one(2), one(5)],
        notes: &[one(10), one(20), one(50), one(100), one(200), one(1000)],
    },
    // Sveriges Riksbank; read in an encyclopedia. The 1,000 kronor note is rare.
    Pieces {
        code: "SEK",
        coins: &[one(1), one(2), one(5), one(10)],
        notes: &[one(20), one(50), one(100), one(200), one(500)],
    },
    // Norges Bank; read in travel guides.
    Pieces {
        code: "NOK",
        coins: &[one(1), one(5), one(10), one(20)],
        notes: &[one(50), one(100), one(200), one(500), one(1000)],
    },
    // Danmarks Nationalbank. The 1,000 kroner note was legal tender until 31 May 2025 (read in a bank's notice).
    Pieces {
        code: "DKK",
        coins: &[hundredth(50), one(1), one(2), one(5), one(10), one(20)],
        notes: &[one(50), one(100), one(200), one(500)],
    },
    // Bank of Japan, Japan Mint. Without the 2,000 yen note.
    Pieces {
        code: "JPY",
        coins: &[one(1), one(5), one(10), one(50), one(100), one(500)],
        notes: &[one(1000), one(5000), one(10_000)],
    },
    // Reserve Bank of India: coins below 50 paise are no legal tender since 30 June 2011 (read in copies of its answers to
    // common questions). The coins of 10 and 20 rupees are worth what the notes are.
    Pieces {
        code: "INR",
        coins: &[hundredth(50), one(1), one(2), one(5)],
        notes: &[one(10), one(20), one(50), one(100), one(200), one(500)],
    },
    // Banco de México. Without coins of 5 centavos and of 20 pesos.
    Pieces {
        code: "MXN",
        coins: &[hundredth(10), hundredth(20), hundredth(50), one(1), one(2), one(5), one(10)],
        notes: &[one(20), one(50), one(100), one(200), one(500), one(1000)],
    },
    // Central Bank of Kuwait: notes as the country's news agency told of the sixth issue in 2013 (read). Without the coin of
    // one fils.
    Pieces {
        code: "KWD",
        coins: &[thousandth(5), thousandth(10), thousandth(20), thousandth(50), thousandth(100)],
        notes: &[thousandth(250), thousandth(500), one(1), one(5), one(10), one(20)],
    },
    // Central Bank of Bahrain; read in an encyclopedia, which says that the coin of 500 fils was given up.
    Pieces {
        code: "BHD",
        coins: &[thousandth(5), thousandth(10), thousandth(25), thousandth(50), thousandth(100)],
        notes: &[thousandth(500), one(1), one(5), one(10), one(20)],
    },
];

/// The usual coins of `currency`, in ascending order.
pub fn coins(currency: Currency) -> &'static [Decimal] {
    pieces(currency).map_or(&[], |pieces| pieces.coins)
}

/// The usual notes of `currency`, in ascending order.
pub fn notes(currency: Currency) -> &'static [Decimal] {
    pieces(currency).map_or(&[], |pieces| pieces.notes)
}

fn pieces(currency: Currency) -> Option<&'static Pieces> {
    PIECES.iter().find(|pieces| pieces.code == currency.code)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Where cash is rounded, the smallest coin is the step: two facts from different sources (see `currency.rs`).
    #[test]
    fn every_currency_has_its_pieces_in_order() {
        for code in Currency::codes() {
            let currency = Currency::from_code(code).unwrap();
            let all = [coins(currency), notes(currency)].concat();
            assert!(coins(currency).len() >= 4 && notes(currency).len() >= 3, "{code}");
            assert!(all.is_sorted_by(|one, next| one < next), "{code}: {all:?}");
            for piece in &all {
                assert!((piece % all[0]).is_zero(), "{code}: {piece} in coins of {}", all[0]);
                let leading = piece.normalize().mantissa().to_string().trim_end_matches('0').to_owned();
                assert!(["1", "2", "25", "5"].contains(&leading.as_str()), "{code}: nobody strikes a {piece}");
            }
            if currency.cash_step() != currency.minor_unit() {
                assert_eq!(all[0], currency.cash_step(), "{code}");
            }
        }
        assert_eq!(PIECES.len(), Currency::codes().count());
    }
}
