//! What was sold at each rate of tax.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{MoneyError, TaxRule};

/// Sums by the rate of tax in percent, the lowest rate first; what is free of tax is at zero. Rates that are written
/// differently and are the same, as 6.250 and 6.25, are one.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct TaxByRate(BTreeMap<Decimal, AtRate>);

/// What was sold at one rate of tax, less what was taken back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct AtRate {
    /// Without the tax.
    pub net: Decimal,
    /// The tax.
    pub tax: Decimal,
}

impl AtRate {
    /// With the tax.
    pub fn gross(&self) -> Decimal {
        self.net + self.tax
    }
}

impl TaxByRate {
    /// Adds a sale of `total`, tax and all, with `tax` on top or inside; amounts below zero take one back.
    ///
    /// # Errors
    /// The sums are too large to be counted; then nothing was added.
    pub fn add(&mut self, rule: TaxRule, total: Decimal, tax: Decimal) -> Result<(), MoneyError> {
        let percent = match rule {
            TaxRule::None => Decimal::ZERO,
            TaxRule::Added { percent } | TaxRule::Included { percent } => percent.normalize(),
        };
        let before = self.0.get(&percent).copied().unwrap_or_default();
        let net = total.checked_sub(tax).and_then(|net| before.net.checked_add(net));
        let (Some(net), Some(tax)) = (net, before.tax.checked_add(tax)) else { return Err(MoneyError::TooLarge) };
        net.checked_add(tax).ok_or(MoneyError::TooLarge)?;
        self.0.insert(percent, AtRate { net, tax });
        Ok(())
    }

    /// The rates in percent, from the lowest, each with its sums.
    pub fn rates(&self) -> impl Iterator<Item = (Decimal, &AtRate)> {
        self.0.iter().map(|(percent, at)| (*percent, at))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    fn added(percent: &str) -> TaxRule {
        TaxRule::Added { percent: d(percent) }
    }

    /// Sources: Streamlined Sales and Use Tax Agreement §324 (10.99 and 4.95 at 6.25 %); HMRC (100 net at 20 % on top, 120 gross
    /// with 20 % inside).
    #[test]
    fn sales_are_summed_by_rate_and_taken_back() {
        let mut sums = TaxByRate::default();
        sums.add(added("20"), d("120"), d("20")).unwrap();
        sums.add(added("6.25"), d("11.68"), d("0.69")).unwrap();
        sums.add(added("6.250"), d("5.26"), d("0.31")).unwrap();
        sums.add(TaxRule::Included { percent: d("20.0") }, d("120"), d("20")).unwrap();
        sums.add(TaxRule::None, d("8"), d("0")).unwrap();
        let told = |sums: &TaxByRate| -> Vec<String> {
            sums.rates().map(|(percent, at)| format!("{percent}: {} + {} = {}", at.net, at.tax, at.gross())).collect()
        };
        assert_eq!(told(&sums), ["0: 8 + 0 = 8", "6.25: 15.94 + 1.00 = 16.94", "20: 200 + 40 = 240"]);
        sums.add(added("6.25"), d("-11.68"), d("-0.69")).unwrap();
        assert_eq!(told(&sums)[1], "6.25: 4.95 + 0.31 = 5.26");
    }

    #[test]
    fn what_is_too_large_changes_nothing() {
        let mut sums = TaxByRate::default();
        sums.add(added("10"), d("11"), d("1")).unwrap();
        let before = sums.clone();
        for (total, tax) in [(Decimal::MAX, d("-1")), (d("1"), Decimal::MAX), (Decimal::MAX, d("0"))] {
            assert_eq!(sums.add(added("10"), total, tax), Err(MoneyError::TooLarge));
            assert_eq!(sums, before);
        }
    }

    #[test]
    fn sums_are_stored_by_the_rate_as_a_text() {
        let mut sums = TaxByRate::default();
        sums.add(added("6.250"), d("11.68"), d("0.69")).unwrap();
        let stored = r#"{"6.25":{"net":"10.99","tax":"0.69"}}"#;
        assert_eq!(serde_json::to_string(&sums).unwrap(), stored);
        assert_eq!(serde_json::from_str::<TaxByRate>(stored).unwrap(), sums);
    }
}
