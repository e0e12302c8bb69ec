//! Prices as a maker thinks of them: few points that read well on a small mark, what each of them earns, how many pieces earn
//! the stall, and what another price would do.

use std::collections::BTreeMap;

use rust_decimal::{Decimal, prelude::ToPrimitive};
use serde::Serialize;

use super::{
    history::PastShow,
    prices::{Priced, net_of, prices, wished},
};
use crate::{
    catalog::{Catalog, There, Workshop},
    craft::BaseKind,
    money::PriceRules,
    prep::{Recipe, break_even, cost_of, margin, price_points, sold_for_the_same},
};

/// What a show costs before anything is sold, and over how many pieces that is spread.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct StallCosts {
    /// Stall, travel, whatever else is paid for being there.
    pub all: Decimal,
    /// How many pieces, bases and drops counted one by one, are expected to be sold; as many as so far, where that is not told.
    pub pieces: Option<u32>,
}

/// One base or drop with its price, and the one that it could have.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PriceRow {
    /// What it costs and earns, with its share of the stall.
    pub priced: Priced,
    /// How many are sold at a show, on average.
    pub sold: Decimal,
    /// The nearest of the points that its cost suggests; none where that is not known.
    pub point: Option<Decimal>,
    /// What a chain costs in its longest length, which goes at the same price.
    pub longest: Option<Decimal>,
    /// How many have to be sold to earn the stall, were nothing else sold.
    pub stall_earned_by: Option<u32>,
}

/// Everything that is sold at one price.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct AtPrice {
    /// What each of them costs, in the table's currency.
    pub price: Decimal,
    /// How many bases and drops have it.
    pub kinds: u32,
    /// How many of these are sold at a show, on average.
    pub sold: Decimal,
    /// What one earns: by what is sold, or else on average over the kinds; none where no cost is known.
    pub margin: Option<Decimal>,
    /// What that of them earns that earns least.
    pub least: Option<Decimal>,
}

/// How many pieces earn the stall.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct BreakEven {
    /// What has to be earned.
    pub stall: Decimal,
    /// What a piece earns before its share of that, by what is sold, or else on average over the kinds.
    pub earned: Decimal,
    /// How many pieces; none where nothing is earned.
    pub pieces: Option<u32>,
}

/// All of it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PriceList {
    /// Bases and drops in the catalogue's order.
    pub rows: Vec<PriceRow>,
    /// The prices as they are, lowest first.
    pub prices: Vec<AtPrice>,
    /// The few prices that the costs suggest, lowest first.
    pub points: Vec<Decimal>,
    /// How many pieces earn the stall; none where no cost is known.
    pub break_even: Option<BreakEven>,
}

/// What another price of one thing would do.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PriceChange {
    /// The id of the base or drop, as the catalogue has it.
    pub id: String,
    /// Its price now.
    pub from: Decimal,
    /// The other price.
    pub to: Decimal,
    /// What one earns now.
    pub margin_now: Decimal,
    /// What one would earn.
    pub margin_then: Decimal,
    /// How many are sold at a show now; one where none was sold so far.
    pub sold: u32,
    /// What these earn.
    pub earned: Decimal,
    /// How many have to be sold at the other price to earn the same; none where it earns nothing.
    pub sold_for_the_same: Option<u32>,
}

/// The price list with at most `most` points.
pub fn price_list(
    catalog: &Catalog,
    workshop: Option<&Workshop>,
    past: &[PastShow],
    stall: StallCosts,
    most: usize,
) -> PriceList {
    let sold = sold_per_show(past);
    let of = |id: &str| sold.get(id).copied().unwrap_or_default();
    let usual: Decimal = sold.values().sum();
    let pieces = stall.pieces.map(Decimal::from).unwrap_or(usual);
    let share = if pieces > Decimal::ZERO { stall.all / pieces } else { Decimal::ZERO };
    let priced = prices(catalog, workshop, share);
    let rules = &catalog.table.prices;
    let points = workshop.map(|workshop| points_of(&priced, workshop, rules, most)).unwrap_or_default();
    let rows: Vec<PriceRow> = priced
        .into_iter()
        .map(|one| PriceRow {
            sold: of(&one.id),
            point: workshop.and_then(|workshop| point_for(&one, workshop, rules, &points)),
            longest: workshop.and_then(|workshop| longest(catalog, workshop, &one.id, share)),
            stall_earned_by: one.margin.and_then(|margin| break_even(stall.all, margin + share)),
            priced: one,
        })
        .collect();
    let earned = average(rows.iter().filter_map(|row| Some((row.priced.margin? + share, row.sold))));
    let break_even = earned.map(|earned| BreakEven { stall: stall.all, earned, pieces: break_even(stall.all, earned) });
    PriceList { prices: at_prices(&rows), rows, points, break_even }
}

/// How many of each base and drop are sold at a show, on average.
fn sold_per_show(past: &[PastShow]) -> BTreeMap<String, Decimal> {
    let mut sold = BTreeMap::<String, Decimal>::new();
    for show in past {
        for id in show.sums.parts.keys() {
            let count = show.outcome(id, 1.0).map_or(0, |outcome| outcome.sold);
            *sold.entry(id.clone()).or_default() += Decimal::from(count);
        }
    }
    let shows = Decimal::from(past.len().max(1));
    sold.values_mut().for_each(|sold| *sold /= shows);
    sold
}

/// The mean by the weights beside, or of all alike where these are nothing.
fn average(all: impl Iterator<Item = (Decimal, Decimal)>) -> Option<Decimal> {
    let all: Vec<(Decimal, Decimal)> = all.collect();
    let weight: Decimal = all.iter().map(|(_, weight)| weight).sum();
    let sum = |of: &dyn Fn(&(Decimal, Decimal)) -> Option<Decimal>| {
        all.iter().try_fold(Decimal::ZERO, |sum, one| sum.checked_add(of(one)?))
    };
    if weight > Decimal::ZERO {
        return sum(&|(value, weight)| value.checked_mul(*weight))?.checked_div(weight);
    }
    sum(&|(value, _)| Some(*value))?.checked_div(Decimal::from(all.len()))
}

/// The few prices that the costs suggest.
fn points_of(priced: &[Priced], workshop: &Workshop, rules: &PriceRules, most: usize) -> Vec<Decimal> {
    let all: Vec<Decimal> = priced.iter().filter_map(|one| wished(one, workshop, rules.tax)).collect();
    price_points(&all, most, workshop.price_step).unwrap_or_default()
}

/// The point nearest to what the cost suggests, the higher of two; none that does not pay the cost.
fn point_for(one: &Priced, workshop: &Workshop, rules: &PriceRules, points: &[Decimal]) -> Option<Decimal> {
    let wished = wished(one, workshop, rules.tax)?;
    let cost = one.cost.as_ref()?.total();
    let pays = points.iter().filter(|point| net_of(**point, rules.tax) >= cost);
    pays.min_by_key(|point| ((**point - wished).abs(), -**point)).copied()
}

/// What a chain costs in its longest length: lengths cut at the table go at the chain's one price, and come off the spool.
fn longest(catalog: &Catalog, workshop: &Workshop, id: &str, share: Decimal) -> Option<Decimal> {
    let BaseKind::Necklace(necklace) = &catalog.base(id)?.kind else { return None };
    let more = Decimal::try_from(necklace.lengths.longest.mm() - necklace.lengths.usual.mm()).ok()?;
    let mut recipe: Recipe = workshop.recipe(catalog, id)?.clone();
    let by_length = |part: &str| matches!(workshop.part(part).map(|part| &part.there), Some(There::Spools { .. }));
    // The chain itself is the longest of what goes by the length.
    let chain = recipe.needs.iter_mut().filter(|need| by_length(&need.part)).max_by_key(|need| need.amount)?;
    chain.amount += more.round_dp(1).max(Decimal::ZERO);
    let cost = cost_of(&recipe, &workshop.unit_costs(), &workshop.rates(share));
    cost.unknown.is_empty().then(|| cost.total())
}

fn at_prices(rows: &[PriceRow]) -> Vec<AtPrice> {
    let mut by_price = BTreeMap::<Decimal, Vec<&PriceRow>>::new();
    for row in rows {
        by_price.entry(row.priced.price).or_default().push(row);
    }
    let told = by_price.into_iter().map(|(price, rows)| AtPrice {
        price,
        kinds: rows.len() as u32,
        sold: rows.iter().map(|row| row.sold).sum(),
        margin: average(rows.iter().filter_map(|row| Some((row.priced.margin?, row.sold)))),
        least: rows.iter().filter_map(|row| row.priced.margin).min(),
    });
    told.collect()
}

/// What price `to` of `id` would do; none where it is nothing that is sold here, or its cost is not known.
pub fn price_change(catalog: &Catalog, list: &PriceList, id: &str, to: Decimal) -> Option<PriceChange> {
    let row = list.rows.iter().find(|row| row.priced.id == id)?;
    let cost = row.priced.cost.as_ref().filter(|cost| cost.unknown.is_empty())?.total();
    let (now, then) = (row.priced.net_price, net_of(to, catalog.table.prices.tax));
    let sold = row.sold.ceil().to_u32().unwrap_or(u32::MAX).max(1);
    Some(PriceChange {
        id: id.to_owned(),
        from: row.priced.price,
        to,
        margin_now: margin(now, cost),
        margin_then: margin(then, cost),
        sold,
        earned: margin(now, cost).saturating_mul(Decimal::from(sold)),
        sold_for_the_same: sold_for_the_same(sold, now, then, cost),
    })
}
