//! Lengths of a necklace as the guest reads and steps them.

use rust_decimal::Decimal;

use super::{
    i18n::{Lang, Texts},
    known::{Derived, Trouble},
};
use crate::{
    catalog::Catalog,
    caution::Region,
    craft::{BAND_NECKS, BodyPlace, Length, LengthRange},
    hang::{HangError, falls, worn_neck_mm},
};

/// One step in centimetres, where lengths are in centimetres.
const STEP_CM: f64 = 2.0;

/// `length` so many steps longer, on whole steps, within what is made.
pub fn stepped(length: Length, steps: i32, range: &LengthRange, region: Region) -> Length {
    let step_mm = if region == Region::US { Length::from_inches(1.0).mm() } else { STEP_CM * 10.0 };
    let now = length.mm() / step_mm;
    // From between two steps the first step goes to the nearest one on that side.
    let whole = if steps > 0 { (now + 1e-6).floor() } else { (now - 1e-6).ceil() };
    let mm = (whole + f64::from(steps)) * step_mm;
    Length::from_mm(mm.clamp(range.shortest.mm(), range.longest.mm()))
}

/// The length in the unit of the table's region; where that is inches, also in centimetres for who reads another language.
pub fn written(length: Length, region: Region, lang: Lang) -> String {
    let number =
        |value: f64, digits| lang.number(Decimal::try_from(value).unwrap_or_default().round_dp(digits).normalize());
    let cm = |digits| format!("{}\u{a0}cm", number(length.mm() / 10.0, digits));
    match (region, lang) {
        (Region::US, Lang::En) => format!("{}\u{a0}in", number(length.inches(), 1)),
        (Region::US, _) => format!("{}\u{a0}in · {}", number(length.inches(), 1), cm(0)),
        _ => cm(1),
    }
}

/// Where the chain of the piece falls on its wearer, in the guest's words, or why it does not hang; nothing for a bangle.
pub fn falls_at(derived: &Derived, catalog: &Catalog, texts: &Texts) -> String {
    if let Some(trouble) = &derived.trouble {
        return texts.get(trouble_key(trouble));
    }
    let lowest_mm = |chain: &[crate::hang::Point]| chain.iter().map(|p| p.y_mm).reduce(f64::max);
    let depth_mm = derived.places.as_ref().and_then(|places| lowest_mm(&places.chain));
    let worn = derived.piece.as_ref().and_then(|piece| Some((catalog.base(&piece.base)?, piece)));
    let neck_mm = worn.map(|(base, piece)| worn_neck_mm(base, piece));
    let fallen = depth_mm.zip(neck_mm).and_then(|(depth, neck_mm)| falls(depth, &[], neck_mm).ok());
    let Some(fallen) = fallen else { return String::new() };
    texts.get(match fallen.chain {
        BodyPlace::Throat => "falls-throat",
        BodyPlace::NeckBase => "falls-neck",
        BodyPlace::Collarbone => "falls-collarbone",
        BodyPlace::BelowCollarbone => "falls-below-collarbone",
        BodyPlace::Breastbone => "falls-breastbone",
        BodyPlace::BelowBreastbone => "falls-low",
    })
}

/// The necks that a guest can say theirs is, in the unit of the table's region: from a small child's to a stout grown-up's.
pub fn necks(region: Region) -> Vec<Length> {
    let (smallest, largest) = (BAND_NECKS[0].1.small_mm, BAND_NECKS[3].1.large_mm + 40.0);
    let step_mm = if region == Region::US { Length::from_inches(1.0).mm() } else { STEP_CM * 10.0 };
    let steps = (smallest / step_mm).ceil() as u32..=(largest / step_mm).floor() as u32;
    steps.map(|step| Length::from_mm(f64::from(step) * step_mm)).collect()
}

/// The text that says why a piece is no piece.
pub fn trouble_key(trouble: &Trouble) -> &'static str {
    match trouble {
        Trouble::Hang(HangError::TooShortForNeck { .. }) => "trouble-too-short",
        _ => "trouble-other",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_land_on_whole_units_and_stay_within_what_is_made() {
        let inch = Length::from_inches;
        let range = LengthRange { usual: inch(24.0), shortest: inch(14.0), longest: inch(34.0) };
        let us = |from: f64, by| stepped(inch(from), by, &range, Region::US).inches();
        assert!((us(24.0, 1) - 25.0).abs() < 1e-9 && (us(24.0, -1) - 23.0).abs() < 1e-9);
        assert_eq!((us(34.0, 1), us(14.0, -1)), (34.0, 14.0));
        let eu = |from: f64, by| stepped(Length::from_mm(from), by, &range, Region::EU).mm();
        assert_eq!((eu(609.6, 1), eu(609.6, -1), eu(620.0, -1)), (620.0, 600.0, 600.0));
        assert_eq!(written(inch(24.0), Region::US, Lang::En), "24\u{a0}in");
        assert_eq!(written(Length::from_mm(605.0), Region::EU, Lang::De), "60,5\u{a0}cm");
    }
}
