//! What a show came to for the maker: what sold by home and by sort, and what is left of it after parts, fee and reward.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use serde::Serialize;

use super::{costs::SoldCosts, history::PastShow, prices::prices};
use crate::{
    catalog::{Catalog, Workshop},
    craft::{Home, Sort},
    money::Reward,
};

/// One base or drop that was sold.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SoldHere {
    /// The id that it has in the catalogue.
    pub id: String,
    /// Where it lay; a base has no compartment.
    pub home: Option<Home>,
    /// How many were sold, less what was taken back.
    pub sold: u32,
    /// How many are left; none where that was not noted.
    pub left: Option<u32>,
    /// What they earn over parts and work, where their cost is known.
    pub margin: Option<Decimal>,
}

/// All of one sort.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SoldOfSort {
    /// The sort; none for bases.
    pub sort: Option<Sort>,
    /// How many were sold.
    pub sold: u32,
    /// What they earn, as far as it is known.
    pub margin: Decimal,
}

/// What a show came to.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AfterShow {
    /// What was sold, most first.
    pub parts: Vec<SoldHere>,
    /// The same by sort, most first.
    pub sorts: Vec<SoldOfSort>,
    /// What was sold for, without the tax; none where that is too large to be added.
    pub net: Option<Decimal>,
    /// What is in it, by today's recipes and lots.
    pub costs: SoldCosts,
    /// The stall's fee, as it was told.
    pub fee: Decimal,
    /// The host's reward in money.
    pub reward: Decimal,
    /// What is left for the work: net less parts, fee and reward.
    pub left_for_work: Option<Decimal>,
}

/// What `past` came to. Costs are today's: what a lot cost then is not told of each sale.
pub fn after_show(catalog: &Catalog, workshop: Option<&Workshop>, past: &PastShow) -> AfterShow {
    let priced = prices(catalog, workshop, Decimal::ZERO);
    let costs = SoldCosts::of(&priced, &past.sums);
    let mut parts = Vec::new();
    let mut sorts = BTreeMap::<Option<Sort>, (u32, Decimal)>::new();
    for id in past.sums.parts.keys() {
        let Some(outcome) = past.outcome(id, 1.0) else { continue };
        let sold = Decimal::from(outcome.sold);
        let known = priced.iter().find(|one| one.id == *id).filter(|one| one.is_known());
        let then = past.end.parts.get(id);
        let now = catalog.drop_kind(id);
        let margin = known.and_then(|one| one.margin).map(|margin| margin.saturating_mul(sold));
        let of_sort = sorts.entry(then.map_or_else(|| now.map(|kind| kind.sort), |then| then.sort)).or_default();
        of_sort.0 += outcome.sold;
        of_sort.1 = of_sort.1.saturating_add(margin.unwrap_or_default());
        parts.push(SoldHere {
            id: id.clone(),
            home: then.map_or_else(|| now.map(|kind| kind.home), |then| then.home),
            sold: outcome.sold,
            left: past.end.left.get(id).copied(),
            margin,
        });
    }
    parts.sort_by(|a, b| b.sold.cmp(&a.sold).then_with(|| a.home.cmp(&b.home)));
    let mut sorts: Vec<SoldOfSort> =
        sorts.into_iter().map(|(sort, (sold, margin))| SoldOfSort { sort, sold, margin }).collect();
    sorts.sort_by_key(|one| std::cmp::Reverse(one.sold));
    let net = past.sums.totals.checked_sub(past.sums.tax);
    let fee = past.about.fee.unwrap_or_default();
    let reward = match past.end.reward {
        Some(Reward::Amount(amount)) => amount,
        _ => Decimal::ZERO,
    };
    let left_for_work = net.and_then(|net| costs.left_of(net, fee, reward));
    AfterShow { parts, sorts, net, costs, fee, reward, left_for_work }
}
