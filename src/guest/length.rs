//! Lengths of a necklace as the guest steps them.

use super::derived::Derived;
use crate::{
    catalog::Catalog,
    caution::Region,
    craft::{BAND_NECKS, BodyPlace, Length, LengthRange},
    hang::{falls, worn_neck_mm},
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

/// Where the chain of the piece falls on its wearer; nothing for a bangle, or for what does not hang.
pub fn falls_at(derived: &Derived, catalog: &Catalog) -> Option<BodyPlace> {
    let piece = derived.piece.as_ref().filter(|_| derived.trouble.is_none())?;
    let depth_mm = derived.places.as_ref()?.chain.iter().map(|p| p.y_mm).reduce(f64::max)?;
    let neck_mm = worn_neck_mm(catalog.base(&piece.base)?, piece);
    Some(falls(depth_mm, &[], neck_mm).ok()?.chain)
}

/// The necks that a guest can say theirs is, in the unit of the table's region: from a small child's to a stout grown-up's.
pub fn necks(region: Region) -> Vec<Length> {
    let (smallest, largest) = (BAND_NECKS[0].1.small_mm, BAND_NECKS[3].1.large_mm + 40.0);
    let step_mm = if region == Region::US { Length::from_inches(1.0).mm() } else { STEP_CM * 10.0 };
    let steps = (smallest / step_mm).ceil() as u32..=(largest / step_mm).floor() as u32;
    steps.map(|step| Length::from_mm(f64::from(step) * step_mm)).collect()
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
    }
}
