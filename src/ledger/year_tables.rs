//! A year as tables for spreadsheets.

use rust_decimal::Decimal;

use super::Year;
use crate::{
    export::{Cell, DecimalMark, ExportError, csv},
    money::Currency,
};

/// One of the tables of a year.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum YearTable {
    /// The tax by quarter, place and rate.
    Tax,
    /// What was taken, by quarter and kind of payment.
    Payments,
    /// Reductions, what was taken back, and counter-entries, in the quarter in which they were made.
    Reductions,
}

impl YearTable {
    /// Every one of them.
    pub const ALL: [Self; 3] = [Self::Tax, Self::Payments, Self::Reductions];

    /// The name in addresses and at the terminal.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Tax => "tax",
            Self::Payments => "payments",
            Self::Reductions => "reductions",
        }
    }

    /// The table called `name`.
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|table| table.name() == name)
    }
}

impl Year {
    /// A table of it for a spreadsheet.
    ///
    /// # Errors
    /// The table can't be written.
    pub fn table(&self, table: YearTable, mark: DecimalMark) -> Result<Vec<u8>, ExportError> {
        let quarter = |n: u8| format!("{}-Q{n}", self.year);
        let (head, rows): (&[&str], Vec<Row>) = match table {
            YearTable::Tax => (
                &["quarter", "place", "currency", "rate in percent", "net", "tax", "gross"],
                self.tax()
                    .into_iter()
                    .map(|line| {
                        let rate = line.rate.map_or_else(|| "not kept".to_owned(), |rate| rate.normalize().to_string());
                        let words =
                            vec![quarter(line.quarter), line.place.unwrap_or_default(), line.currency.to_owned(), rate];
                        (words, amounts(line.currency, &[line.net, line.tax, line.gross]))
                    })
                    .collect(),
            ),
            YearTable::Payments => (
                &["quarter", "currency", "way", "taken less paid out"],
                self.payments()
                    .into_iter()
                    .map(|line| {
                        let words = vec![quarter(line.quarter), line.currency.to_owned(), line.way];
                        (words, amounts(line.currency, &[line.amount]))
                    })
                    .collect(),
            ),
            YearTable::Reductions => (
                &["quarter", "currency", "what", "reason", "amount"],
                self.reductions()
                    .into_iter()
                    .map(|line| {
                        let what = line.what.code().replace('_', " ");
                        let words = vec![quarter(line.quarter), line.currency.to_owned(), what, line.reason];
                        (words, amounts(line.currency, &[line.amount]))
                    })
                    .collect(),
            ),
        };
        written(mark, head, &rows)
    }
}

/// Words, and the numbers behind them.
type Row = (Vec<String>, Vec<Decimal>);

fn written(mark: DecimalMark, head: &[&str], rows: &[Row]) -> Result<Vec<u8>, ExportError> {
    let cells = rows.iter().map(|(words, numbers)| {
        let words = words.iter().map(|words| Cell::Text(words));
        words.chain(numbers.iter().map(|number| Cell::Number(*number))).collect::<Vec<_>>()
    });
    csv(mark, head, cells)
}

/// Amounts with all minor digits of their currency.
fn amounts(currency: &str, all: &[Decimal]) -> Vec<Decimal> {
    let digits = Currency::from_code(currency).map_or(2, |currency| currency.digits);
    let shown = |amount: &Decimal| {
        let mut amount = *amount;
        amount.rescale(digits.max(amount.normalize().scale()));
        amount
    };
    all.iter().map(shown).collect()
}
