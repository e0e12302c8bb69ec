//! What is taken off by hand, as a form says it; and a line for what has no home.

use rust_decimal::Decimal;
use serde::Deserialize;

use super::{
    paying::{typed_price, with_point},
    words::sentence,
};
use crate::{
    desk::{approval::Posted, refusal::Refusal, seller::Seller, state::DeskState},
    lang::message,
    ledger::Given,
    money::{AmountError, Currency, PlainLine, Reduction, parse_percent},
};

/// What the form says.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct Asked {
    /// Down to this round sum.
    to: String,
    /// Which of the fields below counts; `none` takes nothing off any more.
    how: String,
    percent: String,
    amount: String,
    reason: String,
}

/// Who takes off so much: a helper up to the table's limit, and beyond it the seller, who approves where a helper asks.
pub(super) async fn who_takes_off(
    desk: &DeskState,
    posted: &Posted<Asked>,
    percent: Decimal,
) -> Result<Seller, Refusal> {
    if percent <= desk.catalog.loaded().catalog.table.till.helper_reduction_percent {
        return Ok(posted.seller.clone());
    }
    posted.by_the_seller(desk, message!("act-reduce")).await
}

impl Asked {
    /// What is taken off; what is wrong with it in plain words.
    pub(super) fn given(&self, desk: &DeskState) -> Result<Option<Given>, String> {
        self.given_in(desk.catalog.loaded().catalog.table.prices.currency)
    }

    fn given_in(&self, currency: Currency) -> Result<Option<Given>, String> {
        let words = |error: AmountError| sentence(&error.to_string());
        let price = |text: &str| typed_price(currency, text).map_err(words);
        let percent = |text: &str| parse_percent(&with_point(text)).map_err(words);
        let reduction = match (self.how.as_str(), self.to.trim()) {
            ("none", _) => return Ok(None),
            ("", to) if !to.is_empty() => Reduction::ToSum(price(to)?),
            ("amount", _) => Reduction::Amount(price(&self.amount)?),
            ("percent", _) => Reduction::Percent(percent(&self.percent)?),
            // Enter in a field presses the first button of a form, which may be none of those that were meant.
            _ if !self.percent.trim().is_empty() => Reduction::Percent(percent(&self.percent)?),
            _ if !self.amount.trim().is_empty() => Reduction::Amount(price(&self.amount)?),
            _ => return Err("Say how much is taken off: a round sum, percent or an amount.".to_owned()),
        };
        Ok(Some(Given { reduction, reason: self.reason.trim().to_owned() }))
    }
}

/// A line for what has no home; nothing is a price. What is wrong with it in plain words.
pub(super) fn plain_line(currency: Currency, words: &str, price: &str) -> Result<PlainLine, String> {
    let is_nothing = with_point(price).parse::<Decimal>().is_ok_and(|price| price.is_zero());
    let price = if is_nothing {
        Decimal::ZERO
    } else {
        typed_price(currency, price).map_err(|error| sentence(&error.to_string()))?
    };
    Ok(PlainLine { words: words.trim().to_owned(), price })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(to: &str, how: &str, percent: &str, amount: &str) -> Result<Option<Reduction>, String> {
        let asked = Asked {
            to: to.into(),
            how: how.into(),
            percent: percent.into(),
            amount: amount.into(),
            reason: " a friend ".into(),
        };
        let given = asked.given_in(Currency::from_code("USD").unwrap())?;
        assert!(given.as_ref().is_none_or(|given| given.reason == "a friend"));
        Ok(given.map(|given| given.reduction))
    }

    #[test]
    fn a_form_says_one_reduction() {
        let d = |text: &str| text.parse::<Decimal>().unwrap();
        assert_eq!(asked("20", "", "10", "2"), Ok(Some(Reduction::ToSum(d("20")))), "the button that was touched");
        assert_eq!(asked("", "percent", "12,5", ""), Ok(Some(Reduction::Percent(d("12.5")))));
        assert_eq!(asked("", "amount", "10", "2.50"), Ok(Some(Reduction::Amount(d("2.50")))));
        assert_eq!(asked("", "none", "10", ""), Ok(None));
        assert_eq!(asked("", "", "10", ""), Ok(Some(Reduction::Percent(d("10")))));
        for (percent, amount) in [("", ""), ("ten", ""), ("101", ""), ("-5", "")] {
            assert!(asked("", "percent", percent, amount).is_err(), "{percent}");
        }
        let usd = Currency::from_code("USD").unwrap();
        assert_eq!(plain_line(usd, " Her own ", "0").unwrap().price, Decimal::ZERO);
        assert_eq!(plain_line(usd, "Box", "2,50").unwrap().price, d("2.50"));
        assert!(plain_line(usd, "Box", "-1").is_err() && plain_line(usd, "Box", "").is_err());
    }
}
