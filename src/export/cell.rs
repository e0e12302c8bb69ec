//! What stands in one cell.

use std::fmt;

use rust_decimal::Decimal;

use crate::craft::Day;

/// The decimal mark of who opens the table. Where it is a comma, spreadsheets expect semicolons between cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DecimalMark {
    /// 8.50, and commas between cells.
    #[default]
    Point,
    /// 8,50, and semicolons between cells.
    Comma,
}

impl DecimalMark {
    /// What stands between cells.
    pub(super) const fn separator(self) -> u8 {
        match self {
            Self::Point => b',',
            Self::Comma => b';',
        }
    }

    /// `number` without grouping, with all the decimals that it carries.
    pub(super) fn number(self, number: Decimal) -> String {
        let number = if number.is_zero() { number.abs() } else { number };
        let plain = number.to_string();
        match self {
            Self::Point => plain,
            Self::Comma => plain.replace('.', ","),
        }
    }
}

/// A time by the clock at the place, to the second.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Moment {
    day: Day,
    clock: [u8; 3],
}

impl Moment {
    /// Year, month and day of the calendar; hour, minute and second of the clock. None where there is no such time.
    pub fn new([year, month, day]: [u16; 3], clock: [u8; 3]) -> Option<Self> {
        let day = Day::from_iso(&format!("{year:04}-{month:02}-{day:02}"))?;
        let [hour, minute, second] = clock;
        (hour < 24 && minute < 60 && second < 60).then_some(Self { day, clock })
    }
}

/// As ISO 8601 has it, with a blank in the middle: spreadsheets of every language read it as a time.
impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [hour, minute, second] = self.clock;
        write!(f, "{} {hour:02}:{minute:02}:{second:02}", self.day)
    }
}

/// One cell of a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cell<'a> {
    /// Words, whoever wrote them. A spreadsheet reads no formula in them.
    Text(&'a str),
    /// A number of ours. It stays a number, below zero too.
    Number(Decimal),
    /// A time of ours.
    Time(Moment),
}
