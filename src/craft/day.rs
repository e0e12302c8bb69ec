//! Days of the calendar, as papers and rules carry them: a year, a month or a day.

use std::fmt;

use serde::{Deserialize, Serialize};

/// A year, a month or a day, written as ISO 8601 has it: `2023`, `2023-10` or `2023-10-23`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Day {
    /// The year, of four digits.
    pub year: u16,
    /// The month, from 1.
    pub month: Option<u8>,
    /// The day of the month, from 1.
    pub day: Option<u8>,
}

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

impl Day {
    /// The day written `text`, if there is such a day.
    pub fn from_iso(text: &str) -> Option<Self> {
        let mut parts = text.split('-');
        let mut number = |digits: usize| match parts.next() {
            Some(part) if part.len() == digits && part.bytes().all(|b| b.is_ascii_digit()) => Ok(part.parse().ok()),
            Some(_) => Err(()),
            None => Ok(None::<u16>),
        };
        let (year, month, day) = (number(4).ok()??, number(2).ok()?, number(2).ok()?);
        let last = match month {
            Some(2) if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
            Some(2) => 28,
            Some(4 | 6 | 9 | 11) => 30,
            _ => 31,
        };
        let within = |n: Option<u16>, last| n.is_none_or(|n| (1..=last).contains(&n));
        let small = |n: Option<u16>| n.and_then(|n| u8::try_from(n).ok());
        let good = parts.next().is_none() && within(month, 12) && within(day, last);
        good.then(|| Self { year, month: small(month), day: small(day) })
    }

    /// In English: `23 October 2023`.
    pub fn english(self) -> String {
        let Self { year, month, day } = self;
        let month = month.and_then(|month| MONTHS.get(usize::from(month).checked_sub(1)?));
        match (day, month) {
            (Some(day), Some(month)) => format!("{day} {month} {year}"),
            (None, Some(month)) => format!("{month} {year}"),
            (_, None) => year.to_string(),
        }
    }
}

impl TryFrom<String> for Day {
    type Error = String;
    fn try_from(text: String) -> Result<Self, String> {
        Self::from_iso(&text)
            .ok_or_else(|| format!("{text:?} is no date; write 2023, 2023-10 or 2023-10-23, as the calendar has it"))
    }
}

impl From<Day> for String {
    fn from(day: Day) -> Self {
        day.to_string()
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}", self.year)?;
        [self.month, self.day].into_iter().flatten().try_for_each(|part| write!(f, "-{part:02}"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_read_as_the_calendar_has_them() {
        for (iso, english) in [
            ("2023-10-23", "23 October 2023"),
            ("2026-06", "June 2026"),
            ("2005", "2005"),
            ("2024-02-29", "29 February 2024"),
            ("2000-02-29", "29 February 2000"),
        ] {
            let day = Day::from_iso(iso).unwrap_or_else(|| panic!("{iso}"));
            assert_eq!((day.to_string(), day.english()), (iso.to_owned(), english.to_owned()));
            assert_eq!(serde_json::from_str::<Day>(&format!("{iso:?}")).unwrap(), day);
        }
        for bad in [
            "",
            "23",
            "2023-13",
            "2023-00",
            "2023-1",
            "2023-02-29",
            "1900-02-29",
            "2023-04-31",
            "2023-10-23-1",
            "+023",
            "2023-10-",
            "June 2026",
        ] {
            assert_eq!(Day::from_iso(bad), None, "{bad}");
        }
    }
}
