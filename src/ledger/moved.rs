//! What moved in a show on one day: money when it moved, goods when they became the guest's, what was put right when it was.
//! A show may stand open over the end of a quarter, so its sums alone don't tell in which of them something was.

use std::collections::BTreeMap;

use jiff::{Timestamp, tz::TimeZone};
use rusqlite::{Connection, OptionalExtension, params};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{CloseOut, LedgerError, SetApart};
use crate::money::AtRate;

/// Sums of what moved. All of them can be below zero, as on a day on which more was taken back than sold.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Moved {
    /// How many pieces were sold.
    pub sold: i64,
    /// Taken in each way, less what was paid out in it; cash and card by these names.
    pub ways: BTreeMap<String, Decimal>,
    /// Totals of what was sold, less what was taken back.
    pub totals: Decimal,
    /// Tax in them.
    pub tax: Decimal,
    /// The same by the rate of tax in percent.
    pub rates: BTreeMap<Decimal, AtRate>,
    /// What was taken off, by discounts and by hand.
    pub discounts: Decimal,
    /// What of it was taken off by hand, by the reason.
    pub given: BTreeMap<String, Decimal>,
    /// Paid for what is not sold yet, less what was sold of it.
    pub owing: Decimal,
    /// Paid out again.
    pub paid_out: Decimal,
    /// How often something was taken back.
    pub back_times: i64,
    /// What all of that had cost, tax and all.
    pub back_totals: Decimal,
    /// The tax in that.
    pub back_tax: Decimal,
    /// What could not be added to the others.
    pub set_apart: Vec<SetApart>,
}

/// The names of cash and card among the ways.
pub(super) const CASH: &str = "cash";
pub(super) const CARD: &str = "card";

impl Moved {
    /// What moved between two states of a show's sums; none where that is too large to be told.
    pub(super) fn between(before: &CloseOut, after: &CloseOut) -> Option<Self> {
        let mut moved = Self {
            sold: i64::from(after.sold) - i64::from(before.sold),
            totals: after.totals.checked_sub(before.totals)?,
            tax: after.tax.checked_sub(before.tax)?,
            discounts: after.discounts.checked_sub(before.discounts)?,
            owing: after.owing.checked_sub(before.owing)?,
            paid_out: after.paid_out.checked_sub(before.paid_out)?,
            back_times: i64::from(after.taken_back.times) - i64::from(before.taken_back.times),
            back_totals: after.taken_back.totals.checked_sub(before.taken_back.totals)?,
            back_tax: after.taken_back.tax.checked_sub(before.taken_back.tax)?,
            set_apart: after.set_apart.get(before.set_apart.len()..).unwrap_or_default().to_vec(),
            ..Self::default()
        };
        for (sums, sign) in [(after, Decimal::ONE), (before, -Decimal::ONE)] {
            let ways = [(CASH, &sums.cash), (CARD, &sums.card)].into_iter();
            for (way, amount) in ways.chain(sums.other_ways.iter().map(|(way, amount)| (way.as_str(), amount))) {
                add(&mut moved.ways, way.to_owned(), sign * *amount)?;
            }
            for (reason, amount) in &sums.given {
                add(&mut moved.given, reason.clone(), sign * *amount)?;
            }
            for (rate, at) in sums.tax_by_rate.rates() {
                add_rate(&mut moved.rates, rate, &AtRate { net: sign * at.net, tax: sign * at.tax })?;
            }
        }
        moved.ways.retain(|_, amount| !amount.is_zero());
        moved.given.retain(|_, amount| !amount.is_zero());
        moved.rates.retain(|_, at| !at.net.is_zero() || !at.tax.is_zero());
        Some(moved)
    }

    /// Adds `other`, or takes it off where `sign` is below zero; none where the sums are too large.
    pub(super) fn add(&mut self, other: &Self, sign: Decimal) -> Option<()> {
        let mut sums = self.clone();
        let times = if sign < Decimal::ZERO { -1 } else { 1 };
        sums.sold += times * other.sold;
        sums.back_times += times * other.back_times;
        for (to, amount) in [
            (&mut sums.totals, other.totals),
            (&mut sums.tax, other.tax),
            (&mut sums.discounts, other.discounts),
            (&mut sums.owing, other.owing),
            (&mut sums.paid_out, other.paid_out),
            (&mut sums.back_totals, other.back_totals),
            (&mut sums.back_tax, other.back_tax),
        ] {
            *to = to.checked_add(sign * amount)?;
        }
        for (way, amount) in &other.ways {
            add(&mut sums.ways, way.clone(), sign * *amount)?;
        }
        for (reason, amount) in &other.given {
            add(&mut sums.given, reason.clone(), sign * *amount)?;
        }
        for (rate, at) in &other.rates {
            add_rate(&mut sums.rates, *rate, &AtRate { net: sign * at.net, tax: sign * at.tax })?;
        }
        if times > 0 {
            sums.set_apart.extend(other.set_apart.iter().cloned());
        } else {
            sums.set_apart.retain(|one| !other.set_apart.contains(one));
        }
        *self = sums;
        Some(())
    }

    /// Whether nothing of it is left.
    pub(super) fn is_nothing(&self) -> bool {
        let left = |amounts: &BTreeMap<String, Decimal>| amounts.values().any(|amount| !amount.is_zero());
        let amounts =
            [self.totals, self.tax, self.discounts, self.owing, self.paid_out, self.back_totals, self.back_tax];
        let rates = self.rates.values().any(|at| !at.net.is_zero() || !at.tax.is_zero());
        self.sold == 0
            && self.back_times == 0
            && amounts.iter().all(Decimal::is_zero)
            && !left(&self.ways)
            && !left(&self.given)
            && !rates
            && self.set_apart.is_empty()
    }

    /// What cash rounding added to the totals, or took from them.
    pub fn cash_rounding(&self) -> Option<Decimal> {
        let taken = self.ways.values().try_fold(Decimal::ZERO, |sum, one| sum.checked_add(*one))?;
        taken.checked_sub(self.totals)?.checked_sub(self.owing)
    }
}

fn add(to: &mut BTreeMap<String, Decimal>, name: String, amount: Decimal) -> Option<()> {
    let sum = to.entry(name).or_default();
    *sum = sum.checked_add(amount)?;
    Some(())
}

fn add_rate(to: &mut BTreeMap<Decimal, AtRate>, rate: Decimal, at: &AtRate) -> Option<()> {
    let sum = to.entry(rate).or_default();
    *sum = AtRate { net: sum.net.checked_add(at.net)?, tax: sum.tax.checked_add(at.tax)? };
    Some(())
}

/// The day by this machine's clock, as ISO 8601 has it.
pub(super) fn day_of(at: Timestamp) -> String {
    at.to_zoned_datetime(TimeZone::system()).date().to_string()
}

/// Notes what moved in `show` on the day of `now`, between two states of its sums.
pub(super) fn note_moved(
    db: &Connection,
    show: i64,
    now: Timestamp,
    before: &CloseOut,
    after: &CloseOut,
) -> Result<(), LedgerError> {
    // What is too large to be told stays in the show's own sums.
    let Some(moved) = Moved::between(before, after).filter(|moved| !moved.is_nothing()) else { return Ok(()) };
    let day = day_of(now);
    let kept: Option<String> = db
        .prepare_cached("SELECT body FROM moved WHERE show = ? AND day = ?")?
        .query_row(params![show, day], |row| row.get(0))
        .optional()?;
    let mut sums: Moved = kept.and_then(|body| serde_json::from_str(&body).ok()).unwrap_or_default();
    if sums.add(&moved, Decimal::ONE).is_none() {
        return Ok(());
    }
    db.prepare_cached(
        "INSERT INTO moved (show, day, body) VALUES (?1, ?2, ?3) ON CONFLICT (show, day) DO UPDATE SET body = ?3",
    )?
    .execute(params![show, day, serde_json::to_string(&sums)?])?;
    Ok(())
}
