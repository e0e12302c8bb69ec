//! Sums in whole cents, written down a second time: integers, half up, tax by the published rules.

use std::collections::BTreeMap;

pub type Cents = i64;

/// Percentages are in thousandths of a percent.
pub const WHOLE: i64 = 100_000;

/// `of / by`, half a cent up (Streamlined Sales and Use Tax Agreement, §324); nothing is below zero here.
pub fn half_up(of: i64, by: i64) -> i64 {
    assert!(of >= 0 && by > 0, "{of} / {by}");
    (2 * of + by) / (2 * by)
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tax {
    /// On top of what is marked.
    Added(i64),
    /// In what is marked: rate / (100 + rate) of it (HMRC, VAT fractions).
    Included(i64),
}

impl Tax {
    pub fn rate(self) -> i64 {
        match self {
            Self::Added(rate) | Self::Included(rate) => rate,
        }
    }

    /// Tax and total.
    pub fn of(self, left: Cents) -> (Cents, Cents) {
        match self {
            Self::Added(rate) => {
                let tax = half_up(left * rate, WHOLE);
                (tax, left + tax)
            }
            Self::Included(rate) => (half_up(left * rate, WHOLE + rate), left),
        }
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reduction {
    Percent(i64),
    Amount(Cents),
    ToSum(Cents),
}

/// What something comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Amounts {
    /// All that is taken off.
    pub off: Cents,
    /// What of it is taken off by hand.
    pub by_hand: Cents,
    pub tax: Cents,
    pub total: Cents,
}

impl Amounts {
    pub fn less(self, other: Self) -> Self {
        Self {
            off: self.off - other.off,
            by_hand: self.by_hand - other.by_hand,
            tax: self.tax - other.tax,
            total: self.total - other.total,
        }
    }
}

/// What `marked` comes to, of which the table takes `off`; none where it does not reach the sum that it was to be reduced to.
pub fn amounts(tax: Tax, marked: Cents, off: Cents, reduction: Option<Reduction>) -> Option<Amounts> {
    let before = marked - off;
    let left = match reduction {
        None => before,
        Some(Reduction::Percent(percent)) => before - half_up(before * percent, WHOLE),
        Some(Reduction::Amount(amount)) => (before - amount).max(0),
        Some(Reduction::ToSum(wish)) if wish > tax.of(before).1 => return None,
        // The largest sum at marked prices whose total is not above the wish, by trying.
        Some(Reduction::ToSum(wish)) => {
            (0..=before.min(wish)).rev().find(|left| tax.of(*left).1 <= wish).expect("nothing costs nothing")
        }
    };
    let (tax, total) = tax.of(left);
    Some(Amounts { off: marked - left, by_hand: before - left, tax, total })
}

/// Cash to the nearest step, half a step away from zero.
pub fn in_cash(left: Cents, step: Cents) -> Cents {
    left.signum() * half_up(left.abs(), step) * step
}

/// How many, and for how much.
pub type Lines = BTreeMap<String, (i64, Cents)>;

/// What a show came to.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Sums {
    pub sold: i64,
    pub let_go: i64,
    pub let_go_now: i64,
    pub prepaid_kept: i64,
    pub taken: BTreeMap<String, Cents>,
    pub totals: Cents,
    pub tax: Cents,
    /// Without the tax, and the tax, by rate.
    pub by_rate: BTreeMap<i64, (Cents, Cents)>,
    pub off: Cents,
    pub by_hand: BTreeMap<String, Cents>,
    pub owing: Cents,
    pub paid_out: Cents,
    pub parts: Lines,
    pub goods: Lines,
    pub back_times: i64,
    pub back_pieces: i64,
    pub back: Cents,
    pub back_tax: Cents,
    pub back_parts: Lines,
    pub late_sold: i64,
    pub late_taken: Cents,
    pub late_let_go: i64,
}

impl Sums {
    /// Something is sold; `sign` is -1 where it is taken back.
    pub fn sale(&mut self, tax: Tax, of: Amounts, reason: Option<&String>, sign: i64) {
        self.totals += sign * of.total;
        self.owing -= sign * of.total;
        self.tax += sign * of.tax;
        self.off += sign * of.off;
        let at = self.by_rate.entry(tax.rate()).or_default();
        at.0 += sign * (of.total - of.tax);
        at.1 += sign * of.tax;
        if let Some(reason) = reason {
            *self.by_hand.entry(reason.clone()).or_default() += sign * of.by_hand;
        }
    }

    pub fn money(&mut self, tender: &str, amount: Cents, settles: Cents) {
        *self.taken.entry(tender.to_owned()).or_default() += amount;
        self.owing += settles;
    }

    /// Without what comes to nothing, which may be written down or not.
    pub fn plain(mut self) -> Self {
        self.taken.retain(|_, amount| *amount != 0);
        self.by_hand.retain(|_, amount| *amount != 0);
        self.by_rate.retain(|_, at| *at != (0, 0));
        self
    }
}

pub fn add_line(lines: &mut Lines, name: &str, price: Cents) {
    let line = lines.entry(name.to_owned()).or_default();
    line.0 += 1;
    line.1 += price;
}
