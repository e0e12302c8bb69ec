//! What the parts and the work in what was sold cost.

use std::collections::BTreeSet;

use rust_decimal::Decimal;
use serde::Serialize;

use super::prices::{Priced, prices};
use crate::{
    catalog::{Catalog, Workshop},
    ledger::CloseOut,
};

/// What is in everything that was sold, at today's recipes and lots.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct SoldCosts {
    /// What the parts cost. It is below zero where more came back from earlier shows than was sold.
    pub parts: Decimal,
    /// What the work counts.
    pub labour: Decimal,
    /// How many bases, drops and goods without a home are in neither, since what they cost is not known.
    pub without_cost: u32,
}

impl SoldCosts {
    /// What is in `sums`: what was sold, less what came back into its home.
    pub(super) fn of(priced: &[Priced], sums: &CloseOut) -> Self {
        let back = &sums.taken_back;
        let came_back = |name: &str| back.parts.get(name).map_or(0, |line| line.count);
        let mut costs = Self::default();
        let ids: BTreeSet<&String> = sums.parts.keys().chain(back.parts.keys()).collect();
        for id in ids.into_iter().filter(|id| !sums.goods.contains_key(*id)) {
            let sold = sums.parts.get(id).map_or(0, |line| line.count);
            let home = came_back(id).saturating_sub(back.lost.get(id).copied().unwrap_or_default());
            let known = priced.iter().find(|one| one.id == *id).filter(|one| one.is_known());
            match known.and_then(|one| one.cost.as_ref()) {
                Some(cost) => {
                    let spent = Decimal::from(sold) - Decimal::from(home);
                    costs.parts = costs.parts.saturating_add(cost.parts.saturating_mul(spent));
                    costs.labour = costs.labour.saturating_add(cost.labour.saturating_mul(spent));
                }
                None => costs.without_cost = costs.without_cost.saturating_add(sold.saturating_sub(home)),
            }
        }
        for (name, line) in &sums.goods {
            costs.without_cost = costs.without_cost.saturating_add(line.count.saturating_sub(came_back(name)));
        }
        costs
    }

    /// What is left of `net` after these parts, the stall's fee and the host's reward in money, before the maker's own hours;
    /// none where that is too large to be reckoned.
    pub fn left_of(&self, net: Decimal, fee: Decimal, reward: Decimal) -> Option<Decimal> {
        net.checked_sub(self.parts)?.checked_sub(fee)?.checked_sub(reward)
    }
}

/// What was sold in `sums` costs by today's recipes and lots; none where the catalogue has no workshop.
pub fn sold_costs(catalog: &Catalog, workshop: Option<&Workshop>, sums: &CloseOut) -> Option<SoldCosts> {
    workshop.map(|workshop| SoldCosts::of(&prices(catalog, Some(workshop), Decimal::ZERO), sums))
}
