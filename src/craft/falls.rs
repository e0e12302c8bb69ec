//! What the trade calls the lengths of necklaces, and where they fall on a grown-up.
//!
//! Common practice, no source: makers disagree by an inch or two, more for the long ones. Both tables are meant to be
//! edited.

use serde::{Deserialize, Serialize};

use super::{Length, quantity::MM_PER_INCH};

/// A trade name and the lengths it covers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TradeLength {
    /// The trade's name.
    pub name: &'static str,
    /// The shortest usual length, in inches.
    pub shortest_in: f64,
    /// The longest usual length, in inches.
    pub longest_in: f64,
}

const fn named(name: &'static str, shortest_in: f64, longest_in: f64) -> TradeLength {
    TradeLength { name, shortest_in, longest_in }
}

/// The trade's names, shortest first. Lengths between two of them, as from 24 to 28 in, have no agreed name.
pub const TRADE_LENGTHS: [TradeLength; 6] = [
    named("collar", 12.0, 13.0),
    named("choker", 14.0, 16.0),
    named("princess", 17.0, 19.0),
    named("matinee", 20.0, 24.0),
    named("opera", 28.0, 34.0),
    named("rope", 45.0, f64::INFINITY),
];

/// The trade's name for a whole length; half an inch to either side still counts.
pub fn trade_length(length: Length) -> Option<TradeLength> {
    let inches = length.inches();
    TRADE_LENGTHS.into_iter().find(|one| (one.shortest_in - 0.5..one.longest_in + 0.5).contains(&inches))
}

/// A height on the front of the body.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum BodyPlace {
    /// Close round the throat.
    Throat,
    /// Round the base of the neck.
    NeckBase,
    /// On the collarbone.
    Collarbone,
    /// Just below the collarbone.
    BelowCollarbone,
    /// On the breastbone.
    Breastbone,
    /// Below the breastbone.
    BelowBreastbone,
}

const fn inches(inches: f64) -> Length {
    Length::from_mm(inches * MM_PER_INCH)
}

impl BodyPlace {
    /// The length below which a bare necklace falls at each place on a grown-up, highest place first; what is longer
    /// than all of them falls below the breastbone. The borders are half an inch and more from the lengths commonly made.
    pub const BORDERS: [(Length, Self); 5] = [
        (inches(15.5), Self::Throat),
        (inches(17.5), Self::NeckBase),
        (inches(19.5), Self::Collarbone),
        (inches(23.5), Self::BelowCollarbone),
        (inches(28.5), Self::Breastbone),
    ];

    /// Where a bare necklace of this whole length falls on a grown-up.
    pub fn of_length(length: Length) -> Self {
        Self::BORDERS.into_iter().find(|(border, _)| length < *border).map_or(Self::BelowBreastbone, |(_, place)| place)
    }

    /// The place in words, for the terminal.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Throat => "throat",
            Self::NeckBase => "base of the neck",
            Self::Collarbone => "collarbone",
            Self::BelowCollarbone => "below the collarbone",
            Self::Breastbone => "breastbone",
            Self::BelowBreastbone => "below the breastbone",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Neck base circumference of grown-ups, ANSUR II (2012): 1st percentile of women 329 mm, 99th of men 502 mm, medians
    /// 370 and 433 mm. That a chain about as long as the neck's base lies there: by what the words mean.
    #[test]
    fn the_base_of_the_neck_is_where_necklaces_of_its_girth_lie() {
        let at = |mm: f64| BodyPlace::of_length(Length::from_mm(mm));
        assert_eq!(at(329.0), BodyPlace::Throat, "no longer than the slightest neck is round at its base");
        assert_eq!(at((370.0 + 433.0) / 2.0), BodyPlace::NeckBase);
        assert!(at(502.0) > BodyPlace::NeckBase, "longer than the stoutest");
    }
}
