//! Closing a show: what it came to is written down and compared with the running account and the counts.

use std::{collections::BTreeMap, fs};

use chatelaine::{
    ledger::{CloseOut, Closing, Count},
    money::reward,
};
use jiff::Timestamp;

use super::{
    super::Told,
    account::{Account, counts_agree},
    agree,
    till::Till,
};

/// Closes the running show under this file's name; gives its sums, and the counts at its end. `held` is what stays held.
pub(super) fn close(
    till: &mut Till<'_>,
    file: &str,
    before: &BTreeMap<String, Count>,
    held: &BTreeMap<String, u32>,
) -> Result<BTreeMap<String, Count>, Told> {
    let table = &till.story.loaded.catalog.table;
    let rule = table.till.reward.clone();
    let closing = Closing {
        currency: table.prices.currency,
        counted: None,
        reward: rule.clone().map(|rule| (rule, table.prices.clone())),
    };
    let show = till.show;
    let close: CloseOut = till.story.on_ledger(move |ledger| ledger.close_counted(&closing, Timestamp::now()))?;
    fs::write(till.story.out.join(file), serde_json::to_vec_pretty(&close)?)?;
    let taken = close.taken().unwrap_or_default();
    say!(
        "The show closes: {} rung up, {} let go, {} taken, {} taken back",
        close.sold,
        close.let_go,
        table.prices.currency.plain(taken),
        close.taken_back.times
    );
    till.account.agrees_with(&close)?;
    let after = till.story.on_ledger(|ledger| ledger.counts())?;
    counts_agree(before, &after, &close, &till.back_home, held)?;
    let end =
        till.story.on_ledger(move |ledger| ledger.closed_show(show))?.ok_or_else(|| Told("no close-out".into()))?;
    agree("the close-out that is kept", &end.sums, &close)?;
    if let (Some(rule), true) = (rule, end.end.about.has_a_host()) {
        let earned = reward(&rule, till.account.net(), &table.prices)?;
        agree("the host's reward", &end.end.reward, &Some(earned))?;
    }
    (till.account, till.show) = (Account::default(), show + 1);
    till.back_home.clear();
    Ok(after)
}
