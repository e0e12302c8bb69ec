//! Cash handed over and change given back.

use std::collections::BTreeSet;

use rust_decimal::{Decimal, prelude::ToPrimitive};

use super::{
    Currency, MAX_AMOUNT, MoneyError,
    denominations::{coins, notes},
};

/// More buttons than this can't be taken in at a glance.
const MOST_SUGGESTIONS: usize = 6;

/// What is given back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// All of it.
    pub amount: Decimal,
    /// Notes and coins from the largest, each with how many of it: as few together as there can be.
    pub pieces: Vec<(Decimal, u32)>,
    /// What no coin gives: less than the smallest, and nothing where the sum was rounded to the cash step.
    pub rest: Decimal,
}

/// What is given back of `given` for `due`.
///
/// # Errors
/// Less is given than is due, or an amount is none that a table takes.
pub fn change(due: Decimal, given: Decimal, currency: Currency) -> Result<Change, MoneyError> {
    for amount in [due, given] {
        if amount < Decimal::ZERO || amount > MAX_AMOUNT * Decimal::TWO {
            return Err(MoneyError::Absurd(amount));
        }
        if amount.normalize().scale() > currency.digits {
            return Err(MoneyError::Decimals(amount));
        }
    }
    if given < due {
        return Err(MoneyError::TooLittle { given: currency.written(given), missing: currency.written(due - given) });
    }
    let amount = given - due;
    let (pieces, rest) = fewest(amount, currency);
    Ok(Change { amount: currency.written(amount), pieces, rest: currency.written(rest) })
}

/// What a customer usually hands over for `due`, in ascending order: the sum itself, and the next sums in each note and in
/// the largest coin. Where that is too many, the largest are left out as long as they are more than five times what is due,
/// then those of the most pieces. Each can be paid in notes and coins. Common practice, no source.
///
/// Empty where nothing is due, or more than any table takes.
pub fn given_suggestions(due: Decimal, currency: Currency) -> Vec<Decimal> {
    let (coins, notes) = (coins(currency), notes(currency));
    let (Some(smallest), Some(largest)) = (coins.first(), coins.last()) else { return vec![] };
    if due <= Decimal::ZERO || due > MAX_AMOUNT * Decimal::TWO {
        return vec![];
    }
    let exact = next_multiple(due, *smallest);
    let rounder = std::iter::once(largest).chain(notes).map(|piece| next_multiple(due, *piece));
    let mut sums = BTreeSet::from_iter(rounder);
    sums.remove(&exact);
    while sums.len() >= MOST_SUGGESTIONS {
        let large = sums.last().filter(|sum| **sum > due * Decimal::from(5));
        let unhandy = large.or_else(|| sums.iter().max_by_key(|sum| number_of_pieces(**sum, currency))).copied();
        sums.retain(|sum| Some(*sum) != unhandy);
    }
    std::iter::once(exact).chain(sums).map(|sum| currency.written(sum)).collect()
}

/// The smallest multiple of `step` that is not below `amount`.
fn next_multiple(amount: Decimal, step: Decimal) -> Decimal {
    let over = amount % step;
    if over.is_zero() { amount } else { amount - over + step }
}

fn number_of_pieces(amount: Decimal, currency: Currency) -> u32 {
    fewest(amount, currency).0.iter().map(|(_, count)| count).sum()
}

/// `amount` in as few notes and coins as there can be, and what no coin gives. Taking the largest that fits, again and
/// again, leads there in these currencies, though not in all that one could think of: a test holds it.
fn fewest(amount: Decimal, currency: Currency) -> (Vec<(Decimal, u32)>, Decimal) {
    let mut left = amount;
    let mut pieces = Vec::new();
    for piece in coins(currency).iter().chain(notes(currency)).rev() {
        let rest = left % piece;
        if let Some(count) = ((left - rest) / piece).to_u32().filter(|count| *count > 0) {
            pieces.push((*piece, count));
            left = rest;
        }
    }
    (pieces, left)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn currency(code: &str) -> Currency {
        Currency::from_code(code).unwrap()
    }

    fn all() -> impl Iterator<Item = Currency> {
        Currency::codes().map(currency)
    }

    /// In each currency, the change of every amount against the best of all ways to give it, in whole coins of the smallest
    /// kind. Taking the largest that fits is the best for all amounts if it is for those below the two largest pieces together
    /// (Kozen and Zaks, Optimal bounds for the change-making problem, 1994; from memory), so that far is tried.
    #[test]
    fn change_is_as_few_pieces_as_there_can_be() {
        for currency in all() {
            let pieces = [coins(currency), notes(currency)].concat();
            let unit = pieces[0];
            let worth: Vec<usize> = pieces.iter().map(|piece| (piece / unit).to_usize().unwrap()).collect();
            let most = worth[worth.len() - 2] + worth[worth.len() - 1];
            assert!(most >= 700, "{} is tried to {most}", currency.code);
            let mut best = vec![0_u32; most + 1];
            for amount in 1..=most {
                let ways = worth.iter().filter(|worth| **worth <= amount).map(|worth| best[amount - worth] + 1);
                best[amount] = ways.min().unwrap();
                let change = change(d("0"), Decimal::from(amount) * unit, currency).unwrap();
                let count: u32 = change.pieces.iter().map(|(_, count)| count).sum();
                let sum: Decimal = change.pieces.iter().map(|(piece, count)| piece * Decimal::from(*count)).sum();
                assert_eq!(
                    (count, sum, change.rest),
                    (best[amount], change.amount, d("0")),
                    "{}: {sum}",
                    currency.code
                );
            }
        }
    }

    /// Worked by hand.
    #[test]
    fn change_is_told_in_notes_and_coins() {
        let told = |due: &str, given: &str, code: &str| {
            let change = change(d(due), d(given), currency(code)).unwrap();
            let pieces = change.pieces.iter().map(|(piece, count)| format!("{count}x{piece}"));
            (change.amount.to_string(), pieces.collect::<Vec<_>>().join(" "), change.rest.to_string())
        };
        let all = |amount: &str, pieces: &str, rest: &str| (amount.to_owned(), pieces.to_owned(), rest.to_owned());
        assert_eq!(told("23.50", "50", "USD"), all("26.50", "1x20 1x5 1x1 2x0.25", "0.00"));
        assert_eq!(told("23.49", "50", "EUR"), all("26.51", "1x20 1x5 1x1 1x0.50 1x0.01", "0.00"));
        assert_eq!(told("4.90", "20", "CAD"), all("15.10", "1x10 1x5 1x0.10", "0.00"));
        assert_eq!(told("1850", "10000", "JPY"), all("8150", "1x5000 3x1000 1x100 1x50", "0"));
        assert_eq!(told("1.70", "5", "KWD"), all("3.300", "3x1 1x0.250 1x0.050", "0.000"));
        assert_eq!(told("12.34", "12.34", "GBP"), all("0.00", "", "0.00"));
        assert_eq!(told("12.34", "20", "INR"), all("7.66", "1x5 1x2 1x0.50", "0.16"), "no coin gives 16 paise");
    }

    #[test]
    fn what_is_not_enough_or_no_amount_is_refused() {
        let usd = currency("USD");
        let short = change(d("23.5"), d("20"), usd).unwrap_err();
        assert_eq!(short, MoneyError::TooLittle { given: d("20"), missing: d("3.5") });
        assert_eq!(short.to_string(), "20.00 is given, which is 3.50 less than what is due");
        assert_eq!(change(d("-1"), d("20"), usd), Err(MoneyError::Absurd(d("-1"))));
        assert_eq!(change(d("1"), d("2000001"), usd), Err(MoneyError::Absurd(d("2000001"))));
        assert_eq!(change(d("1"), d("1.001"), usd), Err(MoneyError::Decimals(d("1.001"))));
        assert_eq!(change(d("1"), Decimal::MAX, usd), Err(MoneyError::Absurd(Decimal::MAX)));
    }

    /// Worked by hand from the notes of each currency.
    #[test]
    fn what_is_usually_handed_over_is_offered() {
        let offered = |due: &str, code: &str| {
            let sums = given_suggestions(d(due), currency(code));
            sums.iter().map(Decimal::to_string).collect::<Vec<_>>().join(" ")
        };
        assert_eq!(offered("23.50", "USD"), "23.50 25.00 30.00 40.00 50.00 100.00", "24 is five notes");
        assert_eq!(offered("23.50", "EUR"), "23.50 25.00 30.00 40.00 50.00 100.00");
        assert_eq!(offered("3.20", "USD"), "3.20 3.25 4.00 5.00 10.00 20.00", "hardly with 50 or 100");
        assert_eq!(offered("60", "GBP"), "60.00 100.00");
        assert_eq!(offered("130", "USD"), "130.00 140.00 150.00 200.00");
        assert_eq!(offered("100", "USD"), "100.00");
        assert_eq!(offered("1850", "JPY"), "1850 2000 5000 10000");
        assert_eq!(offered("187", "SEK"), "187.00 190.00 200.00 500.00");
        assert_eq!(offered("2.6", "KWD"), "2.600 2.750 3.000 5.000 10.000 20.000");
        assert_eq!(offered("12.34", "INR"), "12.50 15.00 20.00 50.00 100.00 200.00", "what can be paid in coins");
        for nothing in ["0", "-5", "2000000.01", "79228162514264337593543950335"] {
            assert_eq!(offered(nothing, "USD"), "", "{nothing}");
        }
    }

    #[test]
    fn every_sum_offered_can_be_paid_and_is_enough() {
        for currency in all() {
            let unit = coins(currency)[0];
            for due in (1..=400).chain((401..60_000).step_by(37)).map(|units| Decimal::from(units) * unit) {
                let sums = given_suggestions(due, currency);
                let what = format!("{} {due}: {sums:?}", currency.code);
                assert!(sums[0] == due && sums.len() <= 6 && sums.is_sorted_by(|one, next| one < next), "{what}");
                for sum in sums {
                    assert!(change(due, sum, currency).is_ok(), "{what}");
                    assert_eq!(fewest(sum, currency).1, Decimal::ZERO, "{what}");
                    // Paid in pieces of one kind, with one of them less it is not enough.
                    let kinds = [coins(currency), notes(currency)].concat();
                    assert!(kinds.iter().any(|piece| (sum % piece).is_zero() && sum - piece < due), "{what}");
                }
            }
        }
    }
}
