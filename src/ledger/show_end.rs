//! What is noted beside the sums when a show is closed: what it was, what lay in the cash box, what is left of the stock.

use std::collections::BTreeMap;

use rusqlite::Connection;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{AboutShow, CloseOut, LedgerError, facts};
use crate::{
    craft::{Base, DropKind, Home, Sort},
    money::{Currency, PriceRules, Reward, RewardRule, reward},
};

/// How a show is closed.
#[derive(Debug, Clone, PartialEq)]
pub struct Closing {
    /// The currency of its amounts, unless something was taken in another.
    pub currency: Currency,
    /// What was counted in the cash box, if somebody counted.
    pub counted: Option<Decimal>,
    /// What its host earns, and by which rules amounts are rounded.
    pub reward: Option<(RewardRule, PriceRules)>,
}

impl Closing {
    /// Without counting, and without a reward.
    pub fn uncounted(currency: Currency) -> Self {
        Self { currency, counted: None, reward: None }
    }
}

/// The end of a show. An earlier version noted nothing of it.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct ShowEnd {
    /// What the show was.
    pub about: AboutShow,
    /// What was counted in the cash box; nothing where nobody counted.
    pub counted: Option<Decimal>,
    /// What the host earned, where there is one and the table has a rule.
    pub reward: Option<Reward>,
    /// How many of each part are left, by id.
    pub left: BTreeMap<String, u32>,
    /// What the parts were that are sold or left, by id.
    pub parts: BTreeMap<String, PartThen>,
}

/// What a part was when the show was closed; the catalogue may say something else by now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PartThen {
    /// Its name.
    pub name: String,
    /// Where it lived; a base has no compartment.
    pub home: Option<Home>,
    /// Its sort; none for a base.
    pub sort: Option<Sort>,
}

impl ShowEnd {
    /// The end of a show that comes to `sums` now.
    pub(super) fn of(
        db: &Connection,
        about: AboutShow,
        closing: &Closing,
        sums: &CloseOut,
    ) -> Result<Self, LedgerError> {
        let earned = closing.reward.as_ref().and_then(|(rule, rules)| reward_of(&about, sums, rule, rules));
        let left: BTreeMap<String, u32> = {
            let mut all = db.prepare_cached("SELECT id, on_hand FROM stock")?;
            let rows = all.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
            rows.collect::<Result<_, _>>()?
        };
        let mut parts = BTreeMap::new();
        for id in sums.parts.keys().chain(left.keys()) {
            if !parts.contains_key(id)
                && let Some(part) = part_now(db, id)?
            {
                parts.insert(id.clone(), part);
            }
        }
        Ok(Self { about, counted: closing.counted, reward: earned, left, parts })
    }

    /// What should lie in the cash box: what lay in it before, and what came in since, less what was given back.
    pub fn should_be(&self, sums: &CloseOut) -> Option<Decimal> {
        self.about.float.unwrap_or_default().checked_add(sums.cash)
    }

    /// What was counted more than there should be, or less.
    pub fn difference(&self, sums: &CloseOut) -> Option<Decimal> {
        self.counted?.checked_sub(self.should_be(sums)?)
    }
}

/// What the host of a show has earned by what it came to, without the tax; nothing where it has no host. An evening too large
/// to be added up earns nothing either.
pub fn reward_of(about: &AboutShow, sums: &CloseOut, rule: &RewardRule, rules: &PriceRules) -> Option<Reward> {
    let evening = about.has_a_host().then(|| sums.totals.checked_sub(sums.tax)).flatten()?;
    reward(rule, evening, rules).ok()
}

/// What the catalogue last said of a part.
pub(super) fn part_now(db: &Connection, id: &str) -> Result<Option<PartThen>, LedgerError> {
    if let Some(kind) = facts::part::<DropKind>(db, id)? {
        return Ok(Some(PartThen { name: kind.name, home: Some(kind.home), sort: Some(kind.sort) }));
    }
    let base = facts::part::<Base>(db, id)?;
    Ok(base.map(|base| PartThen { name: base.name, home: None, sort: None }))
}
