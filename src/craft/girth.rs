//! Necks and hands by the wearer's band, and what closes or passes round them.

use super::{Length, Wearer};

/// Circumferences of one part of the body in one band, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Girth {
    /// A small one of the band.
    pub small_mm: f64,
    /// The one that pictures are drawn for.
    pub usual_mm: f64,
    /// A large one of the band.
    pub large_mm: f64,
}

const fn girth(small_mm: f64, usual_mm: f64, large_mm: f64) -> Girth {
    Girth { small_mm, usual_mm, large_mm }
}

/// Necks by band, youngest first.
///
/// 13 or older: ANSUR II (2012), fifth percentile of women, between the medians of women and men, 95th percentile of men.
/// 6 to 12: a neck of 33 cm is a large one of a growing boy, 30 cm is reached at about ten years (abstracts of studies of
/// neck circumference); its other figures and the younger bands are from memory.
pub const BAND_NECKS: [(Wearer, Girth); 4] = [
    (Wearer::Under3, girth(200.0, 240.0, 270.0)),
    (Wearer::From3To5, girth(220.0, 260.0, 290.0)),
    (Wearer::From6To12, girth(240.0, 290.0, 330.0)),
    (Wearer::From13, girth(302.0, 360.0, 443.0)),
];

/// Hands by band round the knuckles, youngest first.
///
/// 13 or older: ANSUR II (2012), fifth percentile of women, between the medians, 95th percentile of men; that survey
/// leaves the thumb out (from memory), so a closed bangle needs a little more. Children: from memory.
pub const BAND_HANDS: [(Wearer, Girth); 4] = [
    (Wearer::Under3, girth(100.0, 115.0, 125.0)),
    (Wearer::From3To5, girth(122.0, 134.0, 145.0)),
    (Wearer::From6To12, girth(135.0, 162.0, 190.0)),
    (Wearer::From13, girth(173.0, 200.0, 230.0)),
];

/// What a necklace has to be longer than the neck it closes on: half an inch, a finger's width of slack. Common practice,
/// no source.
pub const NECK_EASE_MM: f64 = 13.0;

/// A bangle this much wider round than a hand falls off it. Common practice, no source.
const HAND_SLACK_MM: f64 = 25.0;

/// The largest neck, in millimetres, on which a necklace of this whole length closes.
pub fn closes_on_mm(length: Length) -> f64 {
    length.mm() - NECK_EASE_MM
}

/// Inside circumference, in millimetres, above which a bangle slips off a small hand of the band.
pub fn slips_over_hand_mm(hand: Girth) -> f64 {
    hand.small_mm + HAND_SLACK_MM
}

impl Wearer {
    /// The necks of the band; of who is not known, a grown-up's.
    pub fn neck(self) -> Girth {
        of_band(&BAND_NECKS, self)
    }

    /// The hands of the band; of who is not known, a grown-up's.
    pub fn hand(self) -> Girth {
        of_band(&BAND_HANDS, self)
    }
}

fn of_band(bands: &[(Wearer, Girth); 4], wearer: Wearer) -> Girth {
    bands.iter().find(|(band, _)| *band == wearer).unwrap_or(&bands[3]).1
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published percentiles of grown-ups, ANSUR II public data (2012, 1986 women and 4082 men): necks 302 (fifth, women),
    /// 328 and 395 (medians), 443 (95th, men); hands 173, 187 and 212, 230 mm.
    #[test]
    fn grown_ups_are_those_of_the_survey() {
        let (neck, hand) = (Wearer::From13.neck(), Wearer::From13.hand());
        assert_eq!((neck.small_mm, neck.large_mm), (302.0, 443.0));
        assert_eq!((hand.small_mm, hand.large_mm), (173.0, 230.0));
        assert!(neck.usual_mm > 328.0 && neck.usual_mm < 395.0 && hand.usual_mm > 187.0 && hand.usual_mm < 212.0);
        assert_eq!(Wearer::Unknown.neck(), neck);
    }

    /// 33 cm as the cut-off of a large neck in growing boys, 30 cm reached at about ten years: abstracts of two studies.
    #[test]
    fn children_grow() {
        assert_eq!(Wearer::From6To12.neck().large_mm, 330.0);
        assert!(Wearer::From6To12.neck().usual_mm <= 300.0);
        for bands in [BAND_NECKS, BAND_HANDS] {
            assert_eq!(bands.map(|(wearer, _)| wearer), Wearer::ANSWERS);
            for pair in bands.windows(2) {
                let (younger, older) = (pair[0].1, pair[1].1);
                assert!(younger.small_mm < older.small_mm && younger.usual_mm < older.usual_mm);
                assert!(younger.large_mm < older.large_mm);
            }
            assert!(bands.iter().all(|(_, one)| one.small_mm < one.usual_mm && one.usual_mm < one.large_mm));
        }
    }

    /// A 14 in chain is shorter than nearly every man's neck (95 of 100 have 360 mm or more) and closes on the necks of
    /// most women: three quarters have 342 mm or less. Source: ANSUR II (2012).
    #[test]
    fn a_choker_closes_on_most_women_and_hardly_any_man() {
        let closes = closes_on_mm(Length::from_inches(14.0));
        assert!((342.0..360.0).contains(&closes), "{closes}");
    }
}
