//! Round amounts that a guest chooses among: what there is to spend, and what one drop may cost.

use rust_decimal::Decimal;

use crate::money::Currency;

/// Budgets that are offered. The first is a small child's: a base for children and a charm should cost no more. Common
/// practice, no source.
pub fn budgets(currency: Currency) -> impl Iterator<Item = Decimal> {
    in_usual_units(&[5, 10, 15, 20, 30, 40, 50, 70, 100], currency)
}

/// What one drop may cost at most. Common practice, no source.
pub fn dearest_drops(currency: Currency) -> impl Iterator<Item = Decimal> {
    in_usual_units(&[3, 5, 10], currency)
}

/// So many main units of a currency with minor units, a hundredfold without.
fn in_usual_units(steps: &'static [i64], currency: Currency) -> impl Iterator<Item = Decimal> {
    let unit = if currency.digits == 0 { 100 } else { 1 };
    steps.iter().map(move |step| Decimal::from(step * unit))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_whole_and_in_the_currencys_usual_size() {
        let first = |code: &str| {
            let currency = Currency::from_code(code).unwrap();
            (budgets(currency).next().unwrap(), dearest_drops(currency).next().unwrap())
        };
        assert_eq!(first("USD"), (Decimal::from(5), Decimal::from(3)));
        assert_eq!(first("KWD"), (Decimal::from(5), Decimal::from(3)), "a thousand to a dinar");
        assert_eq!(first("JPY"), (Decimal::from(500), Decimal::from(300)), "no minor unit");
        let all: Vec<Decimal> = budgets(Currency::from_code("EUR").unwrap()).collect();
        assert!(all.is_sorted() && all.iter().all(|amount| amount.fract().is_zero()));
    }
}
