//! Where a drop lives on the table: tray and compartment, written `B3`.

use std::{fmt, str::FromStr};

use serde::{Deserialize, Serialize};

use crate::quoting::quoted;

/// A compartment of a tray. Orders by tray, then by compartment, which is the walking order along the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(into = "String", try_from = "String")]
pub struct Home {
    /// Letter of the tray, `A` to `Z`.
    pub tray: char,
    /// Number of the compartment, from 1, row by row.
    pub compartment: u16,
}

/// Why a text is no home.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{} is not a home; write the tray's letter and the compartment's number, as in \"B3\"", quoted(.0))]
pub struct HomeError(String);

impl fmt::Display for Home {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}", self.tray, self.compartment)
    }
}

impl FromStr for Home {
    type Err = HomeError;
    fn from_str(text: &str) -> Result<Self, HomeError> {
        let error = || HomeError(text.to_owned());
        let mut chars = text.chars();
        let tray = chars.next().filter(char::is_ascii_uppercase).ok_or_else(error)?;
        let compartment = chars.as_str().parse().ok().filter(|n| *n > 0).ok_or_else(error)?;
        Ok(Self { tray, compartment })
    }
}

impl From<Home> for String {
    fn from(home: Home) -> Self {
        home.to_string()
    }
}

impl TryFrom<String> for Home {
    type Error = HomeError;
    fn try_from(text: String) -> Result<Self, HomeError> {
        text.parse()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn homes_read_back_and_sort_in_walking_order() {
        let mut homes: Vec<Home> = ["B10", "A2", "B9", "A12"].iter().map(|t| t.parse().unwrap()).collect();
        homes.sort();
        assert_eq!(homes.iter().map(Home::to_string).collect::<Vec<_>>(), ["A2", "A12", "B9", "B10"]);
        for text in ["", "b3", "B0", "B", "3", "B-1", "É3"] {
            assert!(text.parse::<Home>().is_err(), "{text}");
        }
    }
}
