//! A year for the tax return: what moved in each quarter, by place. Shows of practice are not in it.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use serde::Serialize;

use super::{Ledger, LedgerError, Moved, ShowKind, close::currency_of, moved::day_of, sums};
use crate::money::Currency;

/// What moved in one show in one quarter.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ShowInQuarter {
    /// The show's number.
    pub show: i64,
    /// The quarter, from 1.
    pub quarter: u8,
    /// Where it was, as it was told.
    pub place: Option<String>,
    /// The currency of its amounts.
    pub currency: Currency,
    /// Whether a part of it is known for the show as a whole only, as an earlier version kept it: that stands on the day on
    /// which the show was closed.
    pub by_closing: bool,
    /// What moved.
    pub moved: Moved,
}

/// A year.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Year {
    /// Which one.
    pub year: i16,
    /// Its quarters by show.
    pub shows: Vec<ShowInQuarter>,
}

/// The tax of one quarter at one place and rate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TaxLine {
    /// The quarter, from 1.
    pub quarter: u8,
    /// Where; none where nobody told.
    pub place: Option<String>,
    /// The currency's code.
    pub currency: &'static str,
    /// The rate in percent; none where an earlier version did not keep it.
    pub rate: Option<Decimal>,
    /// Sold without the tax, less what was taken back.
    pub net: Decimal,
    /// The tax.
    pub tax: Decimal,
    /// Both.
    pub gross: Decimal,
}

/// What was taken in a quarter in one way.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PaymentLine {
    /// The quarter, from 1.
    pub quarter: u8,
    /// The currency's code.
    pub currency: &'static str,
    /// Cash, card or another of the table's ways.
    pub way: String,
    /// Taken, less what was paid out.
    pub amount: Decimal,
}

/// What was taken off or put right in a quarter.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReductionLine {
    /// The quarter, from 1.
    pub quarter: u8,
    /// The currency's code.
    pub currency: &'static str,
    /// What it is.
    pub what: Off,
    /// The reason that was given, where it has one.
    pub reason: String,
    /// The amount.
    pub amount: Decimal,
}

/// What is taken off, or put right.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Off {
    /// By the table's discounts and by hand, in all.
    Reductions,
    /// By hand, for a reason.
    ByHand,
    /// Taken back, tax and all.
    TakenBack,
    /// The tax in what was taken back.
    TaxTakenBack,
    /// Paid out.
    PaidOut,
    /// What cash rounding added.
    CashRounding,
    /// Paid for what is not sold yet.
    Deposits,
}

impl Off {
    /// The name in files and texts.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Reductions => "reductions",
            Self::ByHand => "by_hand",
            Self::TakenBack => "taken_back",
            Self::TaxTakenBack => "tax_taken_back",
            Self::PaidOut => "paid_out",
            Self::CashRounding => "cash_rounding",
            Self::Deposits => "deposits",
        }
    }
}

impl Ledger {
    /// What moved in `year`, by this machine's calendar, in every show that counts.
    ///
    /// # Errors
    /// The ledger can't be read.
    pub fn year(&self, year: i16) -> Result<Year, LedgerError> {
        let mut days = self.days_of_shows()?;
        let mut shows = Vec::new();
        for listed in self.shows(usize::MAX)? {
            if listed.about.kind == Some(ShowKind::Practice) {
                continue;
            }
            let closed = self.closed_show(listed.id)?;
            let (sums, known) = match &closed {
                Some(closed) => (closed.sums.clone(), Some(closed.currency)),
                None => sums::of(&self.db, listed.id).map(|sums| (sums.clone(), sums.currency))?,
            };
            let Some(currency) = known.map_or_else(|| currency_of(&self.db, listed.id), |known| Ok(Some(known)))?
            else {
                continue;
            };
            let mut of_show = days.remove(&listed.id).unwrap_or_default();
            let mut rest = Moved::between(&super::CloseOut::of_show(listed.id), &sums).unwrap_or_default();
            let told = of_show.iter().try_for_each(|(_, moved)| rest.add(moved, -Decimal::ONE)).is_some();
            let by_closing = told && !rest.is_nothing();
            if by_closing {
                of_show.push((day_of(listed.closed.unwrap_or(listed.opened)), rest));
            }
            let mut quarters = BTreeMap::<u8, Moved>::new();
            for (day, moved) in of_show {
                if let Some(quarter) = quarter_of(&day, year)
                    && quarters.entry(quarter).or_default().add(&moved, Decimal::ONE).is_none()
                {
                    tracing::warn!("what moved on {day} is too large to be added to its quarter");
                }
            }
            let place = listed.about.place.clone();
            shows.extend(quarters.into_iter().map(|(quarter, moved)| ShowInQuarter {
                show: listed.id,
                quarter,
                place: place.clone(),
                currency,
                by_closing,
                moved,
            }));
        }
        shows.sort_by_key(|one| (one.quarter, one.show));
        Ok(Year { year, shows })
    }

    /// What moved on each day, by show.
    fn days_of_shows(&self) -> Result<BTreeMap<i64, Vec<(String, Moved)>>, LedgerError> {
        let mut all = self.db.prepare_cached("SELECT show, day, body FROM moved ORDER BY day")?;
        let mut rows = all.query([])?;
        let mut days = BTreeMap::<i64, Vec<(String, Moved)>>::new();
        while let Some(row) = rows.next()? {
            let moved = serde_json::from_str(&row.get::<_, String>(2)?)?;
            days.entry(row.get(0)?).or_default().push((row.get(1)?, moved));
        }
        Ok(days)
    }
}

/// The quarter of a day in `year`.
fn quarter_of(day: &str, year: i16) -> Option<u8> {
    let mut parts = day.split('-');
    let of: i16 = parts.next()?.parse().ok()?;
    let month: u8 = parts.next()?.parse().ok()?;
    (of == year && (1..=12).contains(&month)).then(|| (month - 1) / 3 + 1)
}

impl Year {
    /// The tax by quarter, place and rate.
    pub fn tax(&self) -> Vec<TaxLine> {
        type Key = (u8, Option<String>, &'static str, Option<Decimal>);
        let mut lines = BTreeMap::<Key, (Decimal, Decimal)>::new();
        for one in &self.shows {
            let (moved, code) = (&one.moved, one.currency.code);
            let mut add = |rate, net: Decimal, tax: Decimal| {
                let sum = lines.entry((one.quarter, one.place.clone(), code, rate)).or_default();
                *sum = (sum.0.saturating_add(net), sum.1.saturating_add(tax));
            };
            let (mut net, mut tax) = (moved.totals - moved.tax, moved.tax);
            for (rate, at) in &moved.rates {
                add(Some(*rate), at.net, at.tax);
                (net, tax) = (net - at.net, tax - at.tax);
            }
            if !net.is_zero() || !tax.is_zero() {
                add(None, net, tax);
            }
        }
        let told = lines.into_iter().map(|((quarter, place, currency, rate), (net, tax))| TaxLine {
            quarter,
            place,
            currency,
            rate,
            net,
            tax,
            gross: net.saturating_add(tax),
        });
        told.collect()
    }

    /// What was taken in each way, by quarter.
    pub fn payments(&self) -> Vec<PaymentLine> {
        let mut lines = BTreeMap::<(u8, &'static str, &str), Decimal>::new();
        for one in &self.shows {
            for (way, amount) in &one.moved.ways {
                let sum = lines.entry((one.quarter, one.currency.code, way)).or_default();
                *sum = sum.saturating_add(*amount);
            }
        }
        let line = |((quarter, currency, way), amount): ((u8, &'static str, &str), Decimal)| PaymentLine {
            quarter,
            currency,
            way: way.to_owned(),
            amount,
        };
        lines.into_iter().map(line).collect()
    }

    /// What was taken off and put right, by quarter.
    pub fn reductions(&self) -> Vec<ReductionLine> {
        let mut lines = Vec::new();
        let mut quarters = BTreeMap::<(u8, &'static str), Moved>::new();
        for one in &self.shows {
            let sums = quarters.entry((one.quarter, one.currency.code)).or_default();
            if sums.add(&one.moved, Decimal::ONE).is_none() {
                tracing::warn!("the sums of show {} are too large to be added", one.show);
            }
        }
        for ((quarter, currency), moved) in quarters {
            let rounding = moved.cash_rounding().unwrap_or_default();
            let by_hand = moved.given.iter().map(|(reason, amount)| (Off::ByHand, reason.clone(), *amount));
            let all = std::iter::once((Off::Reductions, String::new(), moved.discounts)).chain(by_hand).chain(
                [
                    (Off::TakenBack, moved.back_totals),
                    (Off::TaxTakenBack, moved.back_tax),
                    (Off::PaidOut, moved.paid_out),
                    (Off::CashRounding, rounding),
                    (Off::Deposits, moved.owing),
                ]
                .map(|(what, amount)| (what, String::new(), amount)),
            );
            lines.extend(all.filter(|(.., amount)| !amount.is_zero()).map(|(what, reason, amount)| ReductionLine {
                quarter,
                currency,
                what,
                reason,
                amount,
            }));
        }
        lines
    }

    /// All of it for one JSON file: what moved in each show and quarter, and the three tables.
    pub fn whole(&self) -> serde_json::Value {
        serde_json::json!({
            "year": self.year, "shows": self.shows, "tax": self.tax(), "payments": self.payments(),
            "reductions": self.reductions(),
        })
    }

    /// What could not be added to the sums, with the show's number.
    pub fn set_apart(&self) -> impl Iterator<Item = (i64, &super::SetApart)> {
        self.shows.iter().flat_map(|one| one.moved.set_apart.iter().map(|apart| (one.show, apart)))
    }
}
