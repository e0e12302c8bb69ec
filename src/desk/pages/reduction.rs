//! What is taken off by hand, as a form says it.

use rust_decimal::Decimal;
use serde::Deserialize;

use super::{
    typed::{typed_percent, typed_price},
    words::sentence,
};
use crate::{
    desk::{approval::Posted, money_words::amount_words, refusal::Refusal, seller::Seller, state::DeskState},
    lang::{Texts, message, say},
    ledger::Given,
    money::{Currency, Reduction},
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
    pub(super) fn given(&self, desk: &DeskState, texts: &Texts) -> Result<Option<Given>, String> {
        self.given_in(desk.catalog.loaded().catalog.table.prices.currency, texts)
    }

    fn given_in(&self, currency: Currency, texts: &Texts) -> Result<Option<Given>, String> {
        let words = |error| sentence(&amount_words(texts, &error));
        let price = |text: &str| typed_price(currency, text).map_err(words);
        let percent = |text: &str| typed_percent(text).map_err(words);
        let reduction = match (self.how.as_str(), self.to.trim()) {
            ("none", _) => return Ok(None),
            ("", to) if !to.is_empty() => Reduction::ToSum(price(to)?),
            ("amount", _) => Reduction::Amount(price(&self.amount)?),
            ("percent", _) => Reduction::Percent(percent(&self.percent)?),
            // Enter in a field presses the first button of a form, which may be none of those that were meant.
            _ if !self.percent.trim().is_empty() => Reduction::Percent(percent(&self.percent)?),
            _ if !self.amount.trim().is_empty() => Reduction::Amount(price(&self.amount)?),
            _ => return Err(say!(texts, "reduce-how-much")),
        };
        Ok(Some(Given { reduction, reason: self.reason.trim().to_owned() }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lang::Lang;

    fn asked(to: &str, how: &str, percent: &str, amount: &str) -> Result<Option<Reduction>, String> {
        let asked = Asked {
            to: to.into(),
            how: how.into(),
            percent: percent.into(),
            amount: amount.into(),
            reason: " a friend ".into(),
        };
        let given = asked.given_in(Currency::from_code("USD").unwrap(), Texts::of(Lang::En))?;
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
    }
}
