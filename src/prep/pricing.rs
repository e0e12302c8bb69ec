//! Prices from costs, few price points, margin and break-even.

use rust_decimal::{Decimal, prelude::ToPrimitive};

/// Why there is no price.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PriceError {
    /// A price is never below its cost, and a factor never below 1.
    #[error("{0} is no factor from cost to price; write one from 1 to 100")]
    Factor(Decimal),
    /// A step that no price can be rounded to.
    #[error("{0} is no step between prices; write one above 0")]
    Step(Decimal),
    /// No points are no prices.
    #[error("at least one price point is needed")]
    NoPoints,
    /// Amounts that no table has.
    #[error("these amounts are larger than any at a table")]
    TooLarge,
}

/// A price of `factor` times the cost, up to the next `step`: never less than that.
///
/// # Errors
/// Factor or step is none.
pub fn price_from_cost(cost: Decimal, factor: Decimal, step: Decimal) -> Result<Decimal, PriceError> {
    if factor < Decimal::ONE || factor > Decimal::ONE_HUNDRED {
        return Err(PriceError::Factor(factor));
    }
    if step <= Decimal::ZERO {
        return Err(PriceError::Step(step));
    }
    let steps = cost.checked_mul(factor).and_then(|wished| wished.checked_div(step)).ok_or(PriceError::TooLarge)?;
    steps.ceil().max(Decimal::ONE).checked_mul(step).ok_or(PriceError::TooLarge)
}

/// At most `most` price points, each a multiple of `step`, that are nearest to the `wished` prices in sum, lowest first; each
/// wished price goes to the point that is nearest to it. Few prices can be read on small marks and kept in mind.
///
/// # Errors
/// There is no step, or there are no points.
pub fn price_points(wished: &[Decimal], most: usize, step: Decimal) -> Result<Vec<Decimal>, PriceError> {
    if step <= Decimal::ZERO {
        return Err(PriceError::Step(step));
    }
    if most == 0 {
        return Err(PriceError::NoPoints);
    }
    let mut sorted = wished.to_vec();
    sorted.sort_unstable();
    let n = sorted.len();
    let mut sums = vec![Decimal::ZERO];
    for price in &sorted {
        sums.push(sums[sums.len() - 1].checked_add(*price).ok_or(PriceError::TooLarge)?);
    }
    // The best point for each run of neighbours, and how far its prices are from it in sum.
    let mut runs = vec![vec![None; n + 1]; n];
    for (from, row) in runs.iter_mut().enumerate() {
        for (to, best) in row.iter_mut().enumerate().skip(from + 1) {
            *best = point_of(&sorted, &sums, (from, to), step);
        }
    }
    // best[k][to]: the least sum for the first `to` prices with k runs, and where the last begins.
    let mut best: Vec<Vec<Option<(Decimal, usize)>>> = vec![vec![None; n + 1]; most + 1];
    best[0][0] = Some((Decimal::ZERO, 0));
    for k in 1..=most {
        for to in 1..=n {
            let ends = (0..to).filter_map(|from| Some((best[k - 1][from]?.0.checked_add(runs[from][to]?.1)?, from)));
            best[k][to] = ends.min();
        }
    }
    let Some(k) = (0..=most).filter(|k| best[*k][n].is_some()).min_by_key(|k| best[*k][n].map(|(sum, _)| sum)) else {
        return Err(PriceError::TooLarge);
    };
    let (mut points, mut to) = (Vec::new(), n);
    for runs_left in (1..=k).rev() {
        let Some((_, from)) = best[runs_left][to] else { break };
        points.extend(runs[from][to].map(|(point, _)| point));
        to = from;
    }
    points.reverse();
    points.dedup();
    Ok(points)
}

/// The multiple of `step` that is nearest to the sorted prices from one place to before another in sum, the higher of two, and
/// that sum. `sums` are those of the first prices, none to all: so each sum takes two looks and not all of the prices.
fn point_of(
    sorted: &[Decimal],
    sums: &[Decimal],
    (from, to): (usize, usize),
    step: Decimal,
) -> Option<(Decimal, Decimal)> {
    let middle = *sorted.get((from + to) / 2)?;
    let lower = *sorted.get((from + to - 1) / 2)?;
    let steps = |price: Decimal| price.checked_div(step);
    let candidates = [steps(middle)?.ceil(), steps(middle)?.floor(), steps(lower)?.ceil(), steps(lower)?.floor()];
    let far = |point: Decimal| {
        let here = from + sorted[from..to].partition_point(|price| *price < point);
        let of = |count: usize| point.checked_mul(Decimal::from(count));
        let below = of(here - from)?.checked_sub(sums[here] - sums[from])?;
        below.checked_add((sums[to] - sums[here]).checked_sub(of(to - here)?)?)
    };
    let points = candidates.into_iter().filter(|steps| *steps >= Decimal::ONE);
    let points = points.chain([Decimal::ONE]).filter_map(|steps| steps.checked_mul(step));
    points.filter_map(|point| Some((point, far(point)?))).min_by_key(|(point, far)| (*far, -*point))
}

/// What one earns: its price without the tax in it, less its cost.
pub fn margin(net_price: Decimal, cost: Decimal) -> Decimal {
    net_price.saturating_sub(cost)
}

/// How many have to be sold until `fixed` is earned, as the fee of a stall; none where nothing is earned by selling one.
pub fn break_even(fixed: Decimal, margin: Decimal) -> Option<u32> {
    if margin <= Decimal::ZERO {
        return None;
    }
    fixed.max(Decimal::ZERO).checked_div(margin)?.ceil().to_u32()
}

/// How many have to be sold at another price to earn what `sold` earn at this one; none where the other earns nothing.
pub fn sold_for_the_same(sold: u32, price: Decimal, other: Decimal, cost: Decimal) -> Option<u32> {
    break_even(margin(price, cost).checked_mul(Decimal::from(sold))?, margin(other, cost))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn d(text: &str) -> Decimal {
        text.parse().unwrap()
    }

    /// Worked by hand.
    #[test]
    fn a_price_is_never_below_its_factor() {
        let price = |cost, factor, step| price_from_cost(d(cost), d(factor), d(step)).unwrap();
        assert_eq!(price("1.71", "2.5", "0.50"), d("4.50"), "4.275 up to the next half");
        assert_eq!(price("2", "2", "0.50"), d("4"));
        assert_eq!(price("0", "2", "0.50"), d("0.50"), "nothing is free");
        assert_eq!(price_from_cost(d("1"), d("0.9"), d("1")), Err(PriceError::Factor(d("0.9"))));
        assert_eq!(price_from_cost(d("1"), d("2"), d("0")), Err(PriceError::Step(d("0"))));
        assert_eq!(price_from_cost(Decimal::MAX, d("2"), d("1")), Err(PriceError::TooLarge));
    }

    /// Break-even in units is fixed costs over contribution per unit: any textbook of cost accounting, from memory.
    #[test]
    fn a_stall_is_earned_by_whole_pieces() {
        assert_eq!(break_even(d("120"), d("9.50")), Some(13), "12.63");
        assert_eq!(break_even(d("95"), d("9.50")), Some(10));
        assert_eq!((break_even(d("1"), d("0")), break_even(d("0"), d("1"))), (None, Some(0)));
        // Twenty at 12 and a cost of 4 earn 160; at 14 it takes sixteen, at 10 twenty-seven.
        assert_eq!(sold_for_the_same(20, d("12"), d("14"), d("4")), Some(16));
        assert_eq!(sold_for_the_same(20, d("12"), d("10"), d("4")), Some(27));
        assert_eq!(sold_for_the_same(20, d("12"), d("4"), d("4")), None);
    }

    fn distance(points: &[Decimal], wished: &[Decimal]) -> Decimal {
        wished.iter().map(|price| points.iter().map(|point| (*point - *price).abs()).min().unwrap()).sum()
    }

    #[test]
    fn no_other_few_points_are_nearer() {
        let mut seed = 3_u64;
        let mut next = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (seed >> 33) as i64
        };
        for _ in 0..60 {
            let wished: Vec<Decimal> = (0..1 + next() % 7).map(|_| Decimal::new(20 + next() % 480, 2)).collect();
            let step = d(["0.50", "1", "0.25"][(next() % 3) as usize]);
            let grid: Vec<Decimal> = (1..=24).map(|n| Decimal::from(n) * step).filter(|one| *one <= d("6")).collect();
            let mut least = Decimal::MAX;
            for a in &grid {
                for b in &grid {
                    least = least.min(distance(&[*a, *b], &wished));
                }
            }
            let points = price_points(&wished, 2, step).unwrap();
            assert!(points.len() <= 2 && points.is_sorted(), "{points:?}");
            assert_eq!(distance(&points, &wished), least, "{wished:?} {step} {points:?}");
        }
        assert_eq!(price_points(&[], 3, d("1")), Ok(vec![]));
        assert_eq!(price_points(&[d("2.20")], 0, d("1")), Err(PriceError::NoPoints));
    }
}
