//! The dates of rules: what they say, and of which day, month or year.

use serde::{Deserialize, Serialize};

use crate::craft::Day;

/// What a rule's date says.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Dated {
    /// Neither date nor edition was noted.
    #[default]
    NotNoted,
    /// Its text as it stood then.
    AsOf(Day),
    /// It was made then.
    Of(Day),
    /// In force since then.
    InForce(Day),
    /// It applies from then on, whenever it came into force.
    Applies(Day),
    /// For what is made after this.
    MadeAfter(Day),
    /// An edition, by its name.
    Edition(String),
}

impl Dated {
    /// The name in language files.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NotNoted => "not_noted",
            Self::AsOf(_) => "as_of",
            Self::Of(_) => "of",
            Self::InForce(_) => "in_force",
            Self::Applies(_) => "applies",
            Self::MadeAfter(_) => "made_after",
            Self::Edition(_) => "edition",
        }
    }

    /// The day in it.
    pub const fn day(&self) -> Option<Day> {
        match self {
            Self::AsOf(day) | Self::Of(day) | Self::InForce(day) | Self::Applies(day) | Self::MadeAfter(day) => {
                Some(*day)
            }
            Self::NotNoted | Self::Edition(_) => None,
        }
    }

    /// In English, to stand after the rule.
    pub fn english(&self) -> String {
        let day = self.day().map(Day::english).unwrap_or_default();
        match self {
            Self::NotNoted => "date not noted".to_owned(),
            Self::AsOf(_) => format!("as of {day}"),
            Self::Of(_) => format!("of {day}"),
            Self::InForce(_) => format!("in force since {day}"),
            Self::Applies(_) => format!("applies from {day}"),
            Self::MadeAfter(_) => format!("for what is made after {day}"),
            Self::Edition(edition) => format!("edition {edition}"),
        }
    }
}
